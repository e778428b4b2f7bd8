/* Single-number rating of impact sound in third octaves.
 * Source: ISO 717-2:2013, 4.3.1 (reference curve, shift, sum of unfavourable deviations), Annex A (C_I). */
#ifndef USC_ACOUSTICS_RATING_H
#define USC_ACOUSTICS_RATING_H

#include "acoustics/bands.h"
#include "base/tenths.h"

/* value: the weighted level in tenths (whole dB unless rated in 0.1 dB steps). unfavourable_sum: in tenths, at most
 * 320. C_I_dB: spectrum adaptation term 100..2500 Hz, whole dB; only set by usc_rate_impact. */
struct usc_rating {
    usc_tenths value;
    int16_t unfavourable_sum;
    int C_I_dB;
};

/* Reference curve 100..3150 Hz in tenths of a dB. */
extern const usc_tenths usc_impact_reference[USC_RATED_BANDS];

/* Given 16 levels 100..3150 Hz in tenths. Rated in steps of 1 dB, with C_I.
 * Returns 0; negative, nothing set, when a level lies outside +-300 dB. */
int usc_rate_impact(const usc_tenths level[USC_RATED_BANDS], struct usc_rating *rating);

/* The same in steps of 0.1 dB, for statements of uncertainty and comparison with formulas; C_I_dB is set to 0. */
int usc_rate_impact_fine(const usc_tenths level[USC_RATED_BANDS], struct usc_rating *rating);

#endif
