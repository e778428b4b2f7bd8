/* The floating floor: mass-spring resonance, improvement per band and as a single number.
 *
 * Each formula is here once, as a typed function; the descriptor beside it carries text, ranges and source.
 * Units: stiffness MN/m3, mass kg/m2, thickness mm, density kg/m3, frequency Hz, levels dB. */
#ifndef USC_ACOUSTICS_FLOATING_FLOOR_H
#define USC_ACOUSTICS_FLOATING_FLOOR_H

#include <math.h>

#include "base/formula.h"

/* How the improvement grows above the resonance. */
enum usc_improvement_law { USC_LAW_MINERAL, USC_LAW_ASPHALT, USC_LAW_DRY };

/* m' = d rho / 1000 */
static inline double usc_mass_kg_m2(double thickness_mm, double density_kg_m3)
{
    return thickness_mm * density_kg_m3 / 1000.0;
}
extern const struct formula usc_mass_formula;

/* 1/s' = sum 1/s'i over resilient layers, each full-area and unbroken. */
double usc_stiffness_in_series_MN_m3(const double stiffness_MN_m3[], int count);
extern const struct formula usc_stiffness_in_series_formula;

/* f0 = 160 sqrt(s'/m'), EN ISO 12354-2; 160 as printed. */
static inline double usc_resonance_Hz(double stiffness_MN_m3, double mass_kg_m2)
{
    return 160.0 * sqrt(stiffness_MN_m3 / mass_kg_m2);
}
extern const struct formula usc_resonance_formula;

/* f0 = 160 sqrt(s'(1/m'1 + 1/m'2)): screed and slab, for airborne sound. */
static inline double usc_resonance_two_masses_Hz(double stiffness_MN_m3, double mass_1_kg_m2, double mass_2_kg_m2)
{
    return 160.0 * sqrt(stiffness_MN_m3 * (1.0 / mass_1_kg_m2 + 1.0 / mass_2_kg_m2));
}
extern const struct formula usc_resonance_two_masses_formula;

/* Slope of dL above f0 in dB per decade: 30 mineral, 40 asphalt and dry. */
static inline double usc_improvement_slope_dB(enum usc_improvement_law law)
{
    return law == USC_LAW_MINERAL ? 30.0 : 40.0;
}
/* dL(f) = slope lg(f/f0), 0 below f0. */
static inline double usc_improvement_dB(double slope_dB, double frequency_Hz, double f0_Hz)
{
    return frequency_Hz <= f0_Hz ? 0.0 : slope_dB * log10(frequency_Hz / f0_Hz);
}
/* What a factor on s'/m' takes off dL well above both resonances: slope lg(f0'/f0), f0 growing with its root. */
static inline double usc_spring_loss_dB(double slope_dB, double stiffness_mass_factor)
{
    return slope_dB / 2.0 * log10(stiffness_mass_factor);
}
extern const struct formula usc_improvement_mineral_formula; /* given f, f0 */
extern const struct formula usc_improvement_light_formula;   /* given f, f0; asphalt and dry */

/* dLw of mineral screeds: 13 lg m' - 14.2 lg s' + 20.8; m' 60..160, s' 6..50. */
static inline double usc_delta_Lw_mineral_dB(double mass_kg_m2, double stiffness_MN_m3)
{
    return 13.0 * log10(mass_kg_m2) - 14.2 * log10(stiffness_MN_m3) + 20.8;
}
/* dLw of asphalt and dry floors: (-0.21 m' - 5.45) lg s' + 0.46 m' + 23.8. */
static inline double usc_delta_Lw_light_dB(double mass_kg_m2, double stiffness_MN_m3)
{
    return (-0.21 * mass_kg_m2 - 5.45) * log10(stiffness_MN_m3) + 0.46 * mass_kg_m2 + 23.8;
}
extern const struct formula usc_delta_Lw_mineral_formula; /* all three: given m', s' */
extern const struct formula usc_delta_Lw_asphalt_formula; /* m' 58..87, s' 15..50 */
extern const struct formula usc_delta_Lw_dry_formula;     /* m' 15..40, s' 15..40 */

/* The descriptors that belong to a law. */
const struct formula *usc_improvement_formula_of(enum usc_improvement_law law);
const struct formula *usc_delta_Lw_formula_of(enum usc_improvement_law law);

#endif
