/* Reference floors of ISO 717-2, the weighted improvement on them, the equivalent level of a bare heavy floor.
 * Source: ISO 717-2:2013, 5 and Table 4 (heavy floor); lightweight floors 1..3 from memory, checked by their ratings.
 */
#ifndef USC_ACOUSTICS_REFERENCE_FLOOR_H
#define USC_ACOUSTICS_REFERENCE_FLOOR_H

#include "acoustics/bands.h"
#include "base/formula.h"
#include "base/tenths.h"

extern const usc_tenths usc_heavy_reference_floor[USC_RATED_BANDS];     /* rates 78 (-11) */
extern const usc_tenths usc_light_reference_floor_1_2[USC_RATED_BANDS]; /* rates 72 (0) */
extern const usc_tenths usc_light_reference_floor_3[USC_RATED_BANDS];   /* rates 75 (-3) */

/* The heavy floor in any band 50..5000 Hz (index into usc_band_Hz), dB. The standard has 100..3150 Hz only; the
 * extension is judgement: the slope of 0.5 dB a band goes on downward, the flat end upward. */
double usc_heavy_reference_floor_extended_dB(int band);

/* improvement: dL 100..3150 Hz, dB (16 values). Returns dLw in dB in whole dB: 78 - Ln,r,w; NaN on a level out of
 * range. */
double usc_delta_Lw_rated_dB(const double improvement_dB[USC_RATED_BANDS]);
/* The same in steps of 0.1 dB. */
double usc_delta_Lw_rated_fine_dB(const double improvement_dB[USC_RATED_BANDS]);
/* The fast form for a dL = slope lg(f/f0), 0 below f0: in steps of 0.1 dB, same result as the one above. */
double usc_delta_Lw_rated_of_resonance_dB(double slope_dB, double f0_Hz);

enum usc_reference_floor {
    USC_REFERENCE_HEAVY,
    USC_REFERENCE_LIGHT_1_2, /* lightweight floors 1 and 2 */
    USC_REFERENCE_LIGHT_3,   /* lightweight floor 3 */
};

/* delta_Lw_dB: dLw, on lightweight floors dLt,w. C_I_delta_dB: C_I,delta, on them C_I,t,delta. delta_L_lin_dB: the sum
 * of both. Whole dB. */
struct usc_improvement_rating {
    double delta_Lw_dB;
    int C_I_delta_dB;
    double delta_L_lin_dB;
};

/* Given dL 100..3150 Hz in tenths of a dB. Returns 0; negative, nothing set, when a level on the reference floor would
 * lie outside +-300 dB or floor is none of the three. */
int usc_rate_improvement(const usc_tenths improvement[USC_RATED_BANDS], enum usc_reference_floor floor,
                         struct usc_improvement_rating *rating);

/* The improvement of the reference covering, 100..3150 Hz in tenths of a dB; its dLw is 19 dB. */
extern const usc_tenths usc_reference_covering[USC_RATED_BANDS];

/* Ln,eq,0,w = Ln,1,w + 19 */
static inline double usc_Ln_eq_0_w_dB(double Ln_1_w_dB)
{
    return Ln_1_w_dB + 19.0;
}
extern const struct formula usc_Ln_eq_0_w_formula; /* given Ln,1,w */

/* The same from the levels Ln,0 of the bare floor 100..3150 Hz in tenths: the reference covering is taken off, the rest
 * is rated in whole dB. Returns 0; negative, nothing set, when a level lies outside +-300 dB after that. */
int usc_Ln_eq_0_w_of_bare_floor(const usc_tenths level[USC_RATED_BANDS], double *Ln_eq_0_w_dB);

#endif
