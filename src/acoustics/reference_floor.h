/* Reference floors of ISO 717-2 and the weighted improvement on the heavy one.
 * Source: ISO 717-2:2013, 5 and Table 4 (heavy floor); lightweight floors 1..3 from memory, checked by their ratings. */
#ifndef USC_ACOUSTICS_REFERENCE_FLOOR_H
#define USC_ACOUSTICS_REFERENCE_FLOOR_H

#include "acoustics/bands.h"
#include "base/tenths.h"

extern const usc_tenths usc_heavy_reference_floor[USC_RATED_BANDS];          /* rates 78 (-11) */
extern const usc_tenths usc_light_reference_floor_1_2[USC_RATED_BANDS];      /* rates 72 (0) */
extern const usc_tenths usc_light_reference_floor_3[USC_RATED_BANDS];        /* rates 75 (-3) */

/* improvement: dL 100..3150 Hz, dB (16 values). Returns dLw in dB in whole dB: 78 - Ln,r,w; NaN on a level out of range. */
double usc_delta_Lw_rated_dB(const double improvement_dB[USC_RATED_BANDS]);
/* The same in steps of 0.1 dB. */
double usc_delta_Lw_rated_fine_dB(const double improvement_dB[USC_RATED_BANDS]);
/* The fast form for a dL = slope lg(f/f0), 0 below f0: in steps of 0.1 dB, same result as the one above. */
double usc_delta_Lw_rated_of_resonance_dB(double slope_dB, double f0_Hz);

#endif
