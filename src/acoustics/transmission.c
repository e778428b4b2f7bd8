#include "acoustics/transmission.h"

#include <math.h>

#define UNLIMITED -INFINITY, INFINITY
#define SLAB_MASS                                                                                                      \
    {                                                                                                                  \
        "m's", "slab_mass_kg_m2", "kg/m2", 100, 900                                                                    \
    }
#define FLANKING_MASS                                                                                                  \
    {                                                                                                                  \
        "m'f,m", "mean_flanking_mass_kg_m2", "kg/m2", 100, 500                                                         \
    }
#define CORRECTION                                                                                                     \
    {                                                                                                                  \
        "K", "K_dB", "dB", UNLIMITED                                                                                   \
    }

/* Mean mass of the flanking elements
 * Purpose:   one mass for all walls around the receiving room.
 * Given:     mass per area of each massive flanking element that carries no lining, kg/m2; count of at least 1.
 * Returned:  m'f,m in kg/m2, the plain arithmetic mean; NaN when there is no such element.
 * Validity:  linings in front of a wall take it out of the mean.
 * Source:    DIN 4109-2:2018 as printed in Lehrbuch der Bauphysik, ch. 22. */
static double mean_flanking_mass(const double mass_kg_m2[], int count)
{
    double sum_kg_m2 = 0;

    for (int i = 0; i < count; i++)
        sum_kg_m2 += mass_kg_m2[i];
    return count > 0 ? sum_kg_m2 / count : NAN;
}

const struct formula usc_mean_flanking_mass_formula = {
    .id = "mean-flanking-mass",
    .title = "Mean mass per area of the massive flanking elements without lining",
    .expression = "mean({m'f})",
    .result = {"m'f,m", "mean_flanking_mass_kg_m2", "kg/m2", UNLIMITED},
    .given = (const struct quantity[]){{"m'f", "flanking_mass_kg_m2", "kg/m2", UNLIMITED}},
    .given_count = 1,
    .list = true,
    .source = {"DIN 4109-2:2018", "as printed in Lehrbuch der Bauphysik, ch. 22", STANDING_PUBLISHED},
    .note = "Elements behind a lining do not count.",
    .value = mean_flanking_mass,
};

/* Flanking correction by formula
 * Purpose:   what the flanking walls add to the direct transmission, rooms one above the other.
 * Given:     mass of the slab and mean mass of the flanking elements, kg/m2.
 * Returned:  K in dB; 0 when the flanking elements are heavier than the slab.
 * Validity:  m's 100..900, m'f,m 100..500. At equal masses the formula holds and gives 0.6.
 * Source:    DIN 4109-2:2018 as printed in Lehrbuch der Bauphysik, ch. 22. */
static double correction_dB(double slab_mass_kg_m2, double mean_flanking_mass_kg_m2)
{
    return 0.6 + 5.5 * log10(slab_mass_kg_m2 / mean_flanking_mass_kg_m2);
}

static double correction(const double given[], int count)
{
    (void)count;
    return correction_dB(given[0], given[1]);
}

static double no_correction(const double given[], int count)
{
    (void)count;
    return isnan(given[0]) || isnan(given[1]) ? NAN : 0;
}

double usc_K_dB(double slab_mass_kg_m2, double mean_flanking_mass_kg_m2)
{
    return mean_flanking_mass_kg_m2 > slab_mass_kg_m2 ? 0 : correction_dB(slab_mass_kg_m2, mean_flanking_mass_kg_m2);
}

const struct formula usc_K_formula = {
    .id = "flanking-correction",
    .title = "Correction for flanking transmission",
    .expression = "0.6 + 5.5 lg({m's}/{m'f,m})",
    .result = CORRECTION,
    .given = (const struct quantity[]){SLAB_MASS, FLANKING_MASS},
    .given_count = 2,
    .source = {"DIN 4109-2:2018", "as printed in Lehrbuch der Bauphysik, ch. 22", STANDING_PUBLISHED},
    .note = "Rooms one above the other, flanking elements not heavier than the slab.",
    .value = correction,
};

const struct formula usc_K_zero_formula = {
    .id = "flanking-correction-zero",
    .title = "Correction for flanking transmission, flanking elements heavier than the slab",
    .expression = "0",
    .result = CORRECTION,
    .given = (const struct quantity[]){SLAB_MASS, FLANKING_MASS},
    .given_count = 2,
    .source = {"DIN 4109-2:2018", "as printed in Lehrbuch der Bauphysik, ch. 22", STANDING_PUBLISHED},
    .note = "Rooms one above the other, flanking elements heavier than the slab.",
    .value = no_correction,
};

const struct formula *usc_K_formula_of(double slab_mass_kg_m2, double mean_flanking_mass_kg_m2)
{
    return mean_flanking_mass_kg_m2 > slab_mass_kg_m2 ? &usc_K_zero_formula : &usc_K_formula;
}

/* Flanking correction by table
 * Purpose:   the older way to K, still asked for by some authorities. Not the formula rounded: never mix the two.
 * Given:     mass of the slab (rows) and mean mass of the flanking elements (columns), kg/m2.
 * Returned:  K in whole dB with the row and column that it was read from.
 * Validity:  m's 100..900, m'f,m 100..500.
 * Source:    EN 12354-2:2000, Table 1, as reprinted in the building regulation of Comacchio, requirement 5.2, and in
 *            handbook Schallschutz - Bauakustik. First cell of row 800: one reprint has 5; 6 from memory. */
const double usc_K_row_kg_m2[USC_K_ROWS] = {100, 150, 200, 250, 300, 350, 400, 450, 500, 600, 700, 800, 900};
const double usc_K_column_kg_m2[USC_K_COLUMNS] = {100, 150, 200, 250, 300, 350, 400, 450, 500};
const signed char usc_K_cell_dB[USC_K_ROWS][USC_K_COLUMNS] = {
    {1, 0, 0, 0, 0, 0, 0, 0, 0}, {1, 1, 0, 0, 0, 0, 0, 0, 0}, {2, 1, 1, 0, 0, 0, 0, 0, 0}, {2, 1, 1, 1, 0, 0, 0, 0, 0},
    {3, 2, 1, 1, 1, 0, 0, 0, 0}, {3, 2, 1, 1, 1, 1, 0, 0, 0}, {4, 2, 2, 1, 1, 1, 1, 0, 0}, {4, 3, 2, 2, 1, 1, 1, 1, 1},
    {4, 3, 2, 2, 1, 1, 1, 1, 1}, {5, 4, 3, 2, 2, 1, 1, 1, 1}, {5, 4, 3, 3, 2, 2, 1, 1, 1}, {6, 4, 4, 3, 2, 2, 2, 1, 1},
    {6, 5, 4, 3, 3, 2, 2, 2, 2},
};

/* Index of the nearest of the ascending values; a tie takes the upper one if so asked, else the lower. */
static int nearest(const double value[], int count, double wanted, bool upper_on_tie)
{
    int best = 0;

    for (int i = 1; i < count; i++) {
        double closer = fabs(wanted - value[best]) - fabs(wanted - value[i]);
        if (closer > 0 || (closer == 0 && upper_on_tie))
            best = i;
    }
    return best;
}

struct usc_K_cell usc_K_by_table(double slab_mass_kg_m2, double mean_flanking_mass_kg_m2)
{
    if (isnan(slab_mass_kg_m2) || isnan(mean_flanking_mass_kg_m2))
        return (struct usc_K_cell){NAN, NAN, NAN};

    /* Clamped, since an infinite mass is equally far from every row. K grows with the slab and falls with the flanking
     * mass: that decides which neighbour of a tie has the larger K. */
    double slab_kg_m2 = fmin(slab_mass_kg_m2, usc_K_row_kg_m2[USC_K_ROWS - 1]);
    double flanking_kg_m2 = fmin(mean_flanking_mass_kg_m2, usc_K_column_kg_m2[USC_K_COLUMNS - 1]);
    int row = nearest(usc_K_row_kg_m2, USC_K_ROWS, slab_kg_m2, true);
    int column = nearest(usc_K_column_kg_m2, USC_K_COLUMNS, flanking_kg_m2, false);
    return (struct usc_K_cell){usc_K_cell_dB[row][column], usc_K_row_kg_m2[row], usc_K_column_kg_m2[column]};
}

static double correction_by_table(const double given[], int count)
{
    (void)count;
    return usc_K_by_table(given[0], given[1]).K_dB;
}

const struct formula usc_K_table_formula = {
    .id = "flanking-correction-table",
    .title = "Correction for flanking transmission, by table",
    .expression = "table",
    .result = CORRECTION,
    .given = (const struct quantity[]){SLAB_MASS, FLANKING_MASS},
    .given_count = 2,
    .source = {"EN 12354-2:2000", "Table 1", STANDING_PUBLISHED},
    .note = "Nearest row and column; a tie takes the larger K. Not the formula rounded.",
    .value = correction_by_table,
};

/* Correction for other positions
 * Purpose:   how much quieter it is in a room that is not directly below.
 * Given:     position of the receiving room, numbered as in enum usc_room_position.
 * Returned:  KT in dB, 0 directly below; NaN for a number that is no position.
 * Validity:  massive buildings; the screed is cut at the walls.
 * Source:    handbook Schallschutz - Bauakustik, after DIN 4109. */
double usc_KT_dB(enum usc_room_position position)
{
    switch (position) {
    case USC_POSITION_BELOW:
        return 0;
    case USC_POSITION_BESIDE:
        return 5;
    case USC_POSITION_ROOM_BETWEEN:
    case USC_POSITION_ABOVE_WALLS:
        return 10;
    case USC_POSITION_ABOVE_FRAME:
        return 20;
    case USC_POSITION_BEYOND_JOINT:
        return 15;
    }
    return NAN;
}

static double position_correction(const double given[], int count)
{
    (void)count;
    for (int position = USC_POSITION_BELOW; position <= USC_POSITION_BEYOND_JOINT; position++)
        if (given[0] == position)
            return usc_KT_dB((enum usc_room_position)position);
    return NAN;
}

const struct formula usc_KT_formula = {
    .id = "position-correction",
    .title = "Correction for the position of the receiving room",
    .expression = "table",
    .result = {"KT", "KT_dB", "dB", UNLIMITED},
    .given = (const struct quantity[]){{"position", "position", "", UNLIMITED}},
    .given_count = 1,
    .source = {"handbook Schallschutz - Bauakustik", "after DIN 4109", STANDING_PUBLISHED},
    .note = "0 directly below, 1 beside or diagonally below, 2 the same with a room between, 3 above with load-bearing "
            "walls, 4 above in a skeleton frame, 5 beyond a house joint of at least 50 mm.",
    .value = position_correction,
};
