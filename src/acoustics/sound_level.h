/* From what is measured in the receiving room to L'n and L'nT in one band. Levels dB, volume m3, time s.
 * Source: ISO 16283-2 (field) and ISO 10140-4 (laboratory, background); windows and the low-frequency procedure from
 * memory. */
#ifndef USC_ACOUSTICS_SOUND_LEVEL_H
#define USC_ACOUSTICS_SOUND_LEVEL_H

#include <math.h>

#include "base/formula.h"

/* Energy mean of the levels at several positions; NaN when there is none. */
double usc_energy_mean_dB(const double level_dB[], int count);
extern const struct formula usc_energy_mean_formula; /* a list of L */

/* Energy difference of a level and a background `distance_dB` below it. */
static inline double usc_without_background_dB(double level_dB, double distance_dB)
{
    return level_dB + 10.0 * log10(1.0 - pow(10.0, -distance_dB / 10.0));
}
extern const struct formula usc_background_formula; /* given Lsb, Lsb - Lb = dLb */

/* Where the background is too near: L - 1.3 */
static inline double usc_background_limit_dB(double level_dB)
{
    return level_dB - 1.3;
}
extern const struct formula usc_background_limit_formula; /* given Lsb */

/* Whose window of distances calls for the correction. */
enum usc_background_method {
    USC_BACKGROUND_FIELD,      /* above 6 up to 10 dB */
    USC_BACKGROUND_LABORATORY, /* above 6 up to 15 dB */
};

enum usc_background_case {
    USC_BACKGROUND_NEGLIGIBLE, /* beyond the window: nothing is subtracted */
    USC_BACKGROUND_CORRECTED,  /* within it: subtracted by energy */
    USC_BACKGROUND_LIMIT,      /* 6 dB or nearer: 1.3 dB off, and the true level is at most that */
};

/* Given the level with background and the background alone, each at most 1500 dB in amount. The distance is decided on
 * its tenth. Returns 0; positive when the result is a limit; negative, nothing set, when a level is none. */
int usc_correct_background(double level_dB, double background_dB, enum usc_background_method method,
                           double *corrected_dB, enum usc_background_case *which);
/* The formula of a case; NULL for the negligible background. */
const struct formula *usc_background_formula_of(enum usc_background_case which);

/* A = 0.16 V/T */
static inline double usc_absorption_m2(double volume_m3, double reverberation_s)
{
    return 0.16 * volume_m3 / reverberation_s;
}
extern const struct formula usc_absorption_formula; /* given V, T */

/* L'n = Li + 10 lg(A/10) */
static inline double usc_L_prime_n_dB(double level_dB, double absorption_m2)
{
    return level_dB + 10.0 * log10(absorption_m2 / 10.0);
}
extern const struct formula usc_L_prime_n_formula; /* given Li, A */

/* L'nT = Li - 10 lg(T/0.5) */
static inline double usc_L_prime_nT_dB(double level_dB, double reverberation_s)
{
    return level_dB - 10.0 * log10(reverberation_s / 0.5);
}
extern const struct formula usc_L_prime_nT_formula; /* given Li, T */

/* The low-frequency procedure, 50..80 Hz, belongs to rooms below this volume. */
static inline bool usc_low_frequency_procedure_applies(double volume_m3)
{
    return volume_m3 < 25.0;
}

/* L_LF = 10 lg((10^(Lcorner/10) + 2 10^(L/10))/3) */
static inline double usc_low_frequency_level_dB(double corner_level_dB, double level_dB)
{
    return 10.0 * log10((pow(10.0, corner_level_dB / 10.0) + 2.0 * pow(10.0, level_dB / 10.0)) / 3.0);
}
extern const struct formula usc_low_frequency_formula; /* given Lcorner, L */

#endif
