/* Flanking correction K, its table, and KT for rooms not one above the other.
 * Source: DIN 4109-2:2018 (formula); EN 12354-2:2000 Table 1; DIN 4109 (KT). */
#ifndef USC_ACOUSTICS_TRANSMISSION_H
#define USC_ACOUSTICS_TRANSMISSION_H

#include "base/formula.h"

/* m'f,m: arithmetic mean of the massive flanking elements that carry no lining. */
extern const struct formula usc_mean_flanking_mass_formula; /* list */

/* K = 0.6 + 5.5 lg(m's/m'f,m); 0 when m'f,m > m's. m's 100..900, m'f,m 100..500. */
double usc_K_dB(double slab_mass_kg_m2, double mean_flanking_mass_kg_m2);
extern const struct formula usc_K_formula;      /* m'f,m <= m's */
extern const struct formula usc_K_zero_formula; /* m'f,m > m's */
const struct formula *usc_K_formula_of(double slab_mass_kg_m2, double mean_flanking_mass_kg_m2);

/* The table, nearest row and column (a tie takes the one with the larger K); masses beyond its ends take the end. */
enum { USC_K_ROWS = 13, USC_K_COLUMNS = 9 };
extern const double usc_K_row_kg_m2[USC_K_ROWS], usc_K_column_kg_m2[USC_K_COLUMNS];
extern const signed char usc_K_cell_dB[USC_K_ROWS][USC_K_COLUMNS];
struct usc_K_cell {
    double K_dB, row_kg_m2, column_kg_m2;
};
struct usc_K_cell usc_K_by_table(double slab_mass_kg_m2, double mean_flanking_mass_kg_m2);
extern const struct formula usc_K_table_formula; /* given m's, m'f,m; expression "table" */

/* Where the receiving room lies, seen from the room whose floor is walked on. */
enum usc_room_position {
    USC_POSITION_BELOW,        /* directly below: K */
    USC_POSITION_BESIDE,       /* beside or diagonally below: KT 5 */
    USC_POSITION_ROOM_BETWEEN, /* the same with a room between: 10 */
    USC_POSITION_ABOVE_WALLS,  /* receiving room above, load-bearing walls: 10 */
    USC_POSITION_ABOVE_FRAME,  /* receiving room above, skeleton frame: 20 */
    USC_POSITION_BEYOND_JOINT, /* separated by a house joint of >= 50 mm: 15 */
};
/* KT in dB, 0 for directly below. */
double usc_KT_dB(enum usc_room_position position);
extern const struct formula usc_KT_formula; /* no given quantity checks: given position number; expression "table" */

#endif
