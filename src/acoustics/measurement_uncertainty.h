/* Uncertainty of a measured weighted impact level.
 * Source: ISO 12999-1, from memory. */
#ifndef USC_ACOUSTICS_MEASUREMENT_UNCERTAINTY_H
#define USC_ACOUSTICS_MEASUREMENT_UNCERTAINTY_H

#include "base/formula.h"

enum usc_measurement_situation {
    USC_SITUATION_A, /* another laboratory or another building of the same make: reproducibility */
    USC_SITUATION_B, /* the same rooms, another team or equipment: in situ, the usual case */
    USC_SITUATION_C, /* the same rooms, team and equipment, soon after: repeatability */
};

enum usc_sides {
    USC_ONE_SIDED, /* against a limit */
    USC_TWO_SIDED, /* an interval about the value */
};

/* Standard uncertainty of L'n,w and L'nT,w in dB; NaN for no situation. */
double usc_standard_uncertainty_dB(enum usc_measurement_situation situation);

/* Coverage factor k. Given the confidence in percent, one of the printed ones: two-sided 68 80 90 95 99, one-sided
 * 84 90 95 97.5 99.5. NaN for another. */
double usc_coverage_factor(enum usc_sides sides, double confidence_percent);

/* U = k u */
static inline double usc_expanded_uncertainty_dB(double coverage_factor, double standard_uncertainty_dB)
{
    return coverage_factor * standard_uncertainty_dB;
}
extern const struct formula usc_expanded_uncertainty_formula; /* given k, u */

#endif
