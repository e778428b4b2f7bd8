#include "acoustics/measurement_uncertainty.h"

#include <math.h>

#define UNLIMITED -INFINITY, INFINITY

/* Uncertainty of a measured level
 * Purpose:   how far a measured single number may be off, for a statement against a limit.
 * Given:     the situation of the measurement, the confidence and whether one side or both sides count.
 * Returned:  standard uncertainty u, coverage factor k, expanded uncertainty U = k u, dB.
 * Validity:  L'n,w and L'nT,w without adaptation terms; a normal distribution. One-sided factors belong to a limit:
 *            95 % of them is 1.65, where both sides ask for 1.96.
 * Source:    ISO 12999-1, from memory. */
double usc_standard_uncertainty_dB(enum usc_measurement_situation situation)
{
    switch (situation) {
    case USC_SITUATION_A:
        return 1.5;
    case USC_SITUATION_B:
        return 1.0;
    case USC_SITUATION_C:
        return 0.5;
    }
    return NAN;
}

static const struct {
    double factor, two_sided_percent, one_sided_percent;
} coverage[] = {{1.00, 68, 84}, {1.28, 80, 90}, {1.65, 90, 95}, {1.96, 95, 97.5}, {2.58, 99, 99.5}};

double usc_coverage_factor(enum usc_sides sides, double confidence_percent)
{
    for (size_t i = 0; i < sizeof coverage / sizeof coverage[0]; i++) {
        const double percent = sides == USC_ONE_SIDED ? coverage[i].one_sided_percent : coverage[i].two_sided_percent;
        if (percent == confidence_percent)
            return coverage[i].factor;
    }
    return NAN;
}

static double expanded(const double given[], int count)
{
    (void)count;
    return usc_expanded_uncertainty_dB(given[0], given[1]);
}

const struct formula usc_expanded_uncertainty_formula = {
    .id = "expanded-uncertainty",
    .title = "Expanded uncertainty of a measured weighted level",
    .expression = "{k} {u}",
    .result = {"U", "expanded_uncertainty_dB", "dB", UNLIMITED},
    .given = (const struct quantity[]){{"k", "coverage_factor", "", UNLIMITED},
                                       {"u", "standard_uncertainty_dB", "dB", UNLIMITED}},
    .given_count = 2,
    .source = {"ISO 12999-1", "", STANDING_FROM_MEMORY},
    .note = "u in situation A 1.5, B 1.0, C 0.5 dB. k for 95 %: one-sided, against a limit, 1.65; two-sided 1.96.",
    .value = expanded,
};
