#include "acoustics/reference_floor.h"

#include <stdbool.h>

#include "acoustics/floating_floor.h"
#include "acoustics/rating.h"

/* Reference floors
 * Purpose:   the bare floors on which an improvement is rated.
 * Returned:  normalised impact levels 100..3150 Hz in tenths of a dB.
 * Source:    ISO 717-2:2013, Table 4 (heavy); lightweight floors from memory, checked by their ratings. */
const usc_tenths usc_heavy_reference_floor[USC_RATED_BANDS] = {670, 675, 680, 685, 690, 695, 700, 705,
                                                               710, 715, 720, 720, 720, 720, 720, 720};
const usc_tenths usc_light_reference_floor_1_2[USC_RATED_BANDS] = {780, 780, 780, 780, 780, 780, 760, 740,
                                                                   720, 690, 660, 630, 600, 570, 540, 510};
const usc_tenths usc_light_reference_floor_3[USC_RATED_BANDS] = {690, 720, 750, 780, 780, 780, 780, 780,
                                                                 780, 760, 740, 720, 690, 660, 630, 600};

static const double EXTENSION_STEP_DB = 0.5;

double usc_heavy_reference_floor_extended_dB(int band)
{
    int const rated = band - USC_FIRST_RATED;

    if (rated < 0)
        return usc_dB_from_tenths(usc_heavy_reference_floor[0]) + EXTENSION_STEP_DB * rated;
    return usc_dB_from_tenths(usc_heavy_reference_floor[rated < USC_RATED_BANDS ? rated : USC_RATED_BANDS - 1]);
}

/* value: in tenths of a dB. */
struct floor {
    const usc_tenths *level;
    usc_tenths value;
    int C_I_dB;
};

static const struct floor reference_floors[] = {
    [USC_REFERENCE_HEAVY] = {usc_heavy_reference_floor, 780, -11},
    [USC_REFERENCE_LIGHT_1_2] = {usc_light_reference_floor_1_2, 720, 0},
    [USC_REFERENCE_LIGHT_3] = {usc_light_reference_floor_3, 750, -3},
};

/* Weighted improvement
 * Purpose:   one number for an improvement in third octaves.
 * Given:     dL 100..3150 Hz in dB; each is rounded to its tenth first, as a spectrum is stated.
 * Returned:  dLw = 78 - Ln,r,w in dB, Ln,r = Ln,r,0 - dL; NaN on a value that is no level. C_I,delta is the C_I of the
 *            bare reference floor minus that of the improved one, dLlin = dLw + C_I,delta.
 * Validity:  heavy floors; on lightweight ones 72 (floors 1 and 2) or 75 (floor 3) in place of 78.
 * Source:    ISO 717-2:2013, 5 (heavy) and Annex B (lightweight, from memory). */
/* Far above any improvement, and such that the tenths fit their type; the rating checks the level itself. */
static const double IMPROVEMENT_MOST_DB = 3000;

typedef int rate_function(const usc_tenths level[USC_RATED_BANDS], struct usc_rating *rating);

static double delta_Lw_of_level_dB(const usc_tenths level[USC_RATED_BANDS], rate_function *rate)
{
    struct usc_rating rating;

    if (rate(level, &rating) < 0)
        return NAN;
    return (reference_floors[USC_REFERENCE_HEAVY].value - rating.value) / 10.0;
}

static double delta_Lw_dB(const double improvement_dB[USC_RATED_BANDS], rate_function *rate)
{
    usc_tenths level[USC_RATED_BANDS];

    for (int i = 0; i < USC_RATED_BANDS; i++) {
        if (!(fabs(improvement_dB[i]) <= IMPROVEMENT_MOST_DB))
            return NAN;
        level[i] = (usc_tenths)(usc_heavy_reference_floor[i] - usc_tenths_from_dB(improvement_dB[i]));
    }
    return delta_Lw_of_level_dB(level, rate);
}

double usc_delta_Lw_rated_dB(const double improvement_dB[USC_RATED_BANDS])
{
    return delta_Lw_dB(improvement_dB, usc_rate_impact);
}

double usc_delta_Lw_rated_fine_dB(const double improvement_dB[USC_RATED_BANDS])
{
    return delta_Lw_dB(improvement_dB, usc_rate_impact_fine);
}

/* Levels with tenths taken off; false when one of these is too large to stay in its type (the rating checks the rest).
 */
static bool lowered(const usc_tenths level[USC_RATED_BANDS], const usc_tenths by[USC_RATED_BANDS],
                    usc_tenths result[USC_RATED_BANDS])
{
    bool fits = true;

    for (int i = 0; i < USC_RATED_BANDS; i++) {
        int difference = level[i] - by[i];
        fits &= difference >= INT16_MIN && difference <= INT16_MAX;
        result[i] = (usc_tenths)difference;
    }
    return fits;
}

int usc_rate_improvement(const usc_tenths improvement[USC_RATED_BANDS], enum usc_reference_floor floor,
                         struct usc_improvement_rating *rating)
{
    usc_tenths level[USC_RATED_BANDS];
    struct usc_rating improved;

    if ((unsigned)floor >= sizeof reference_floors / sizeof reference_floors[0])
        return -1;
    const struct floor *bare = &reference_floors[floor];
    if (!lowered(bare->level, improvement, level) || usc_rate_impact(level, &improved) < 0)
        return -1;
    rating->delta_Lw_dB = (bare->value - improved.value) / 10.0;
    rating->C_I_delta_dB = bare->C_I_dB - improved.C_I_dB;
    rating->delta_L_lin_dB = rating->delta_Lw_dB + rating->C_I_delta_dB;
    return 0;
}

/* Equivalent level of a bare heavy floor
 * Purpose:   one number for a bare floor from which the dLw of any covering may be taken off.
 * Given:     levels Ln,0 of the bare floor 100..3150 Hz, or Ln,1,w, the value with the reference covering.
 * Returned:  Ln,eq,0,w in dB; Ln,1 = Ln,0 - dLr, Ln,eq,0,w = Ln,1,w + 19.
 * Validity:  heavy floors.
 * Source:    ISO 717-2:2013, from memory: the bands of the covering; its 19 dB also in a Swiss building-construction
 *            reference. */
const usc_tenths usc_reference_covering[USC_RATED_BANDS] = {0,   0,   0,   20,  60,  100, 140, 180,
                                                            220, 260, 300, 300, 300, 300, 300, 300};

static double Ln_eq_0_w(const double given[], int count)
{
    (void)count;
    return usc_Ln_eq_0_w_dB(given[0]);
}

const struct formula usc_Ln_eq_0_w_formula = {
    .id = "equivalent-level-measured",
    .title = "Equivalent weighted level of a bare heavy floor, from a measurement",
    .expression = "{Ln,1,w} + 19",
    .result = {"Ln,eq,0,w", "Ln_eq_0_w_dB", "dB", -INFINITY, INFINITY},
    .given = (const struct quantity[]){{"Ln,1,w", "Ln_1_w_dB", "dB", -INFINITY, INFINITY}},
    .given_count = 1,
    .source = {"ISO 717-2:2013", "reference covering", STANDING_FROM_MEMORY},
    .note = "Ln,1 is the floor with the reference covering, or the bare floor with the covering's improvement taken "
            "off band by band.",
    .value = Ln_eq_0_w,
};

int usc_Ln_eq_0_w_of_bare_floor(const usc_tenths level[USC_RATED_BANDS], double *Ln_eq_0_w_dB)
{
    usc_tenths covered[USC_RATED_BANDS];
    struct usc_rating rating;

    if (!lowered(level, usc_reference_covering, covered) || usc_rate_impact(covered, &rating) < 0)
        return -1;
    *Ln_eq_0_w_dB = usc_Ln_eq_0_w_dB(usc_dB_from_tenths(rating.value));
    return 0;
}

/* lg of the nominal frequencies 100..3150 Hz. */
static const double lg_frequency[USC_RATED_BANDS] = {2.0,
                                                     2.0969100130080564,
                                                     2.2041199826559248,
                                                     2.3010299956639812,
                                                     2.3979400086720376,
                                                     2.4983105537896004,
                                                     2.6020599913279624,
                                                     2.6989700043360188,
                                                     2.7993405494535817,
                                                     2.9030899869919436,
                                                     3.0,
                                                     3.0969100130080564,
                                                     3.2041199826559248,
                                                     3.3010299956639812,
                                                     3.3979400086720376,
                                                     3.4983105537896004};

static double delta_Lw_by_spectrum_dB(double slope_dB, double f0_Hz)
{
    double improvement_dB[USC_RATED_BANDS];

    for (int i = 0; i < USC_RATED_BANDS; i++)
        improvement_dB[i] = usc_improvement_dB(slope_dB, usc_band_Hz[USC_FIRST_RATED + i], f0_Hz);
    return usc_delta_Lw_rated_fine_dB(improvement_dB);
}

/* One logarithm instead of sixteen. lg f - lg f0 differs from lg(f/f0) in the last bits, which matters only beside a
 * rounding edge: there, and for unusual input, the plain way decides. */
double usc_delta_Lw_rated_of_resonance_dB(double slope_dB, double f0_Hz)
{
    const double edge = 1e-9;                          /* tenths; a thousand times the difference in the last bits */
    const double steepest_dB = 1000, largest_dB = 300; /* these keep that difference small and the levels ratable */
    const double lowest_Hz = 1e-3;
    const double lg_f0 = log10(f0_Hz);
    usc_tenths level[USC_RATED_BANDS];
    int near_edge = 0;

    if (!(slope_dB >= 0 && slope_dB <= steepest_dB && f0_Hz >= lowest_Hz &&
          slope_dB * (lg_frequency[USC_RATED_BANDS - 1] - lg_f0) <= largest_dB))
        return delta_Lw_by_spectrum_dB(slope_dB, f0_Hz);
    for (int i = 0; i < USC_RATED_BANDS; i++) {
        double lg_ratio = lg_frequency[i] - lg_f0;
        double tenths = slope_dB * (lg_ratio > 0 ? lg_ratio : 0) * 10.0 + 0.5 + 1e-7; /* as usc_tenths_from_dB */
        int whole = (int)tenths;
        double part = tenths - whole;
        near_edge |= (part < edge) | (part > 1 - edge);
        level[i] = (usc_tenths)(usc_heavy_reference_floor[i] - whole);
    }
    if (near_edge)
        return delta_Lw_by_spectrum_dB(slope_dB, f0_Hz);
    return delta_Lw_of_level_dB(level, usc_rate_impact_fine);
}
