/* Levels in integer tenths of a decibel.
 *
 * Purpose: rating, verdict and print all use the same tenth. A sum of deviations "<= 32.0 dB" is `<= 320`, exact with
 * every compiler; printing goes through the same integer, so what is shown is what was compared.
 * Source: ISO 717-2:2013, 4.3.1 (input to one decimal, half up).
 */
#ifndef USC_BASE_TENTHS_H
#define USC_BASE_TENTHS_H

#include <math.h>
#include <stdint.h>

typedef int16_t usc_tenths;

/* Given a level in dB of at most 3000 dB in amount. Returns it in tenths of a dB, halves rounded up.
 * The small addend lets a decimal half that binary stores a little low (60.05) round as the decimal it stands for. */
static inline usc_tenths usc_tenths_from_dB(double level_dB)
{
    return (usc_tenths)floor(level_dB * 10.0 + 0.5 + 1e-7);
}

static inline double usc_dB_from_tenths(usc_tenths level)
{
    return level / 10.0;
}

/* Given a level in dB. Returns it rounded to the printed tenth, in dB. */
static inline double usc_round_to_tenth_dB(double level_dB)
{
    return floor(level_dB * 10.0 + 0.5 + 1e-7) / 10.0;
}

#endif
