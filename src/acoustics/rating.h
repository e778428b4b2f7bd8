/* Single-number rating of impact sound in third octaves and in octaves.
 * Source: ISO 717-2:2013, 4.3.1 (reference curves, shift, sum of unfavourable deviations), Annex A (C_I). */
#ifndef USC_ACOUSTICS_RATING_H
#define USC_ACOUSTICS_RATING_H

#include "acoustics/bands.h"
#include "base/tenths.h"

/* A level beyond this in amount, tenths of a dB, is refused. */
enum { USC_RATED_LEVEL_MOST = 3000 };

/* value: the weighted level in tenths (whole dB unless rated in 0.1 dB steps). unfavourable_sum: in tenths, at most
 * 320, in octaves 100. C_I_dB: spectrum adaptation term 100..2500 Hz, in octaves 125..2000 Hz, whole dB; 0 from the
 * fine forms. */
struct usc_rating {
    usc_tenths value;
    int16_t unfavourable_sum;
    int C_I_dB;
};

/* Reference curves 100..3150 Hz and 125..2000 Hz in tenths of a dB. */
extern const usc_tenths usc_impact_reference[USC_RATED_BANDS];
extern const usc_tenths usc_impact_reference_octave[USC_OCTAVE_BANDS];

/* Given 16 levels 100..3150 Hz in tenths. Rated in steps of 1 dB, with C_I.
 * Returns 0; negative, nothing set, when a level lies outside +-300 dB. */
int usc_rate_impact(const usc_tenths level[USC_RATED_BANDS], struct usc_rating *rating);

/* The same in steps of 0.1 dB, for statements of uncertainty and comparison with formulas; C_I_dB is set to 0. */
int usc_rate_impact_fine(const usc_tenths level[USC_RATED_BANDS], struct usc_rating *rating);

/* Given 5 octave levels 125..2000 Hz in tenths. In steps of 1 dB with C_I, and of 0.1 dB. Status as above. */
int usc_rate_impact_octave(const usc_tenths level[USC_OCTAVE_BANDS], struct usc_rating *rating);
int usc_rate_impact_octave_fine(const usc_tenths level[USC_OCTAVE_BANDS], struct usc_rating *rating);

/* Given 19 levels 50..3150 Hz in tenths (3150 Hz does not count, but is checked) and the whole value rated from the
 * last 16. Sets C_I,50-2500. Status as above. */
int usc_C_I_50_2500_dB(const usc_tenths level[USC_ENLARGED_BANDS], int rated_value_dB, int *C_I_dB);

/* Given levels that were rated and their value, both in tenths. Returned: how far each level is above the shifted
 * curve, 0 where it is not. */
void usc_unfavourable_deviations(const usc_tenths level[USC_RATED_BANDS], usc_tenths value,
                                 usc_tenths deviation[USC_RATED_BANDS]);
void usc_unfavourable_deviations_octave(const usc_tenths level[USC_OCTAVE_BANDS], usc_tenths value,
                                        usc_tenths deviation[USC_OCTAVE_BANDS]);

#endif
