/* From element values to the level in the room below. Levels dB, volume m3.
 * Source: EN ISO 12354-2 simplified model; ISO 16283-2 (T0 0.5 s, A0 10 m2). */
#ifndef USC_ACOUSTICS_FIELD_LEVEL_H
#define USC_ACOUSTICS_FIELD_LEVEL_H

#include <math.h>

#include "base/formula.h"

/* L'n,w = Ln,w,eq - dLw + K */
static inline double usc_L_prime_n_w_dB(double Ln_eq_w_dB, double delta_Lw_dB, double K_dB)
{
    return Ln_eq_w_dB - delta_Lw_dB + K_dB;
}
extern const struct formula usc_L_prime_n_w_formula;    /* given Ln,w,eq, dLw, K */
extern const struct formula usc_L_prime_n_w_KT_formula; /* given Ln,w,eq, dLw, KT: Ln,w,eq - dLw - KT */

/* L'nT,w = L'n,w - 10 lg(0.032 V) */
static inline double usc_standardised_dB(double L_prime_n_w_dB, double volume_m3)
{
    return L_prime_n_w_dB - 10.0 * log10(0.032 * volume_m3);
}
extern const struct formula usc_standardised_formula; /* given L'n,w, V */

/* The Italian regional rule: - 10 lg(V/30) */
static inline double usc_standardised_V30_dB(double L_prime_n_w_dB, double volume_m3)
{
    return L_prime_n_w_dB - 10.0 * log10(volume_m3 / 30.0);
}
extern const struct formula usc_standardised_V30_formula;

#endif
