#include "acoustics/reference_floor.h"

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

/* Weighted improvement
 * Purpose:   one number for an improvement in third octaves.
 * Given:     dL 100..3150 Hz in dB; each is rounded to its tenth first, as a spectrum is stated.
 * Returned:  dLw = 78 - Ln,r,w in dB, Ln,r = Ln,r,0 - dL; NaN on a value that is no level.
 * Validity:  heavy floors.
 * Source:    ISO 717-2:2013, 5. */
enum { HEAVY_FLOOR_RATES = 780 }; /* tenths of a dB */
/* Far above any improvement, and such that the tenths fit their type; the rating checks the level itself. */
static const double IMPROVEMENT_MOST_DB = 3000;

typedef int rate_function(const usc_tenths level[USC_RATED_BANDS], struct usc_rating *rating);

static double delta_Lw_of_level_dB(const usc_tenths level[USC_RATED_BANDS], rate_function *rate)
{
    struct usc_rating rating;

    if (rate(level, &rating) < 0)
        return NAN;
    return (HEAVY_FLOOR_RATES - rating.value) / 10.0;
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
