/* The shapes that a fault can give to the difference between measurement and prediction, and their fit. */
#ifndef USC_STUDY_COMPARE_TEMPLATES_H
#define USC_STUDY_COMPARE_TEMPLATES_H

#include <stdbool.h>

#include "acoustics/bands.h"

enum cause { CAUSE_NONE, CAUSE_SPRING, CAUSE_BUILDING, CAUSE_EDGE, CAUSE_POINTS, CAUSE_HALVING, CAUSE_MODES, CAUSES };

/* Measured bands only, from low to high. */
struct difference {
    int count, low_count; /* low: below 100 Hz */
    double frequency_Hz[USC_BANDS], difference_dB[USC_BANDS], standard_deviation_dB[USC_BANDS];
    double delta_L_dB[USC_BANDS]; /* predicted improvement */
    double f0_Hz;                 /* NaN: no floating floor */
    double slope_dB;              /* of the improvement per decade */
    double agrees_within_dB;
};

struct fit {
    bool possible;
    double size;         /* factor on s'/m', offset in dB, dB per decade, dB lost to points, share lost, rms in dB */
    double frequency_Hz; /* resonance, start of the edge's growth, end of the bridges' reach; NaN without one */
    double hump_dB;      /* at the resonance */
    double misfit;       /* with the penalty of the hump */
    double residual_dB;
    int parameters;
};

void fit_cause(enum cause cause, const struct difference *difference, struct fit *fit);

#endif
