/* The bare homogeneous slab as a single number. Source: EN ISO 12354-2; DIN 4109-32. */
#ifndef USC_ACOUSTICS_BARE_SLAB_H
#define USC_ACOUSTICS_BARE_SLAB_H

#include <math.h>

#include "base/formula.h"

/* Ln,w,eq = 164 - 35 lg m', 100..600 kg/m2 */
static inline double usc_Ln_eq_w_dB(double slab_mass_kg_m2)
{
    return 164.0 - 35.0 * log10(slab_mass_kg_m2);
}
extern const struct formula usc_Ln_eq_w_formula;

/* Rw = 30.9 lg m' - 22.2, 65..720 kg/m2 */
static inline double usc_slab_Rw_dB(double slab_mass_kg_m2)
{
    return 30.9 * log10(slab_mass_kg_m2) - 22.2;
}
extern const struct formula usc_slab_Rw_formula;

/* dRw of the same floating floor for airborne sound. Below 200 Hz: max(0, 74.4 - 20 lg f0 - Rw/2), f0 30..160 Hz;
 * from 200 Hz on the tabulated values, interpolated over lg f0. EN ISO 12354-1:2017. NaN below 30 Hz. */
double usc_delta_Rw_dB(double f0_Hz, double slab_Rw_dB);
extern const struct formula usc_delta_Rw_low_formula;  /* given f0, Rw; f0 30..160 */
extern const struct formula usc_delta_Rw_high_formula; /* given f0, from 200: the table, expression "table" */
const struct formula *usc_delta_Rw_formula_of(double f0_Hz);

#endif
