/* From the resonance of a specimen to the dynamic stiffness of the laid material; compressibility and its levels.
 * Source: ISO 9052-1 / EN 29052-1, case logic; see the descriptors. */
#ifndef USC_ACOUSTICS_DYNAMIC_STIFFNESS_H
#define USC_ACOUSTICS_DYNAMIC_STIFFNESS_H

#include "base/formula.h"

/* s't = 4 pi^2 m't fr^2, in MN/m3; m't the total load in kg/m2 (normally 200), fr in Hz. */
static inline double usc_apparent_stiffness_MN_m3(double load_mass_kg_m2, double resonance_Hz)
{
    const double angular_1_s = 2.0 * 3.14159265358979323846 * resonance_Hz;
    return load_mass_kg_m2 * angular_1_s * angular_1_s / 1e6;
}
extern const struct formula usc_apparent_stiffness_formula; /* given m't, fr */

enum usc_stiffness_case {
    USC_STIFFNESS_AIRTIGHT,       /* r >= 100 kPa s/m2: s' = s't */
    USC_STIFFNESS_MIDDLE,         /* 10 <= r < 100: s' = s't + s'a */
    USC_STIFFNESS_OPEN,           /* r < 10 and s'a negligible: s' = s't */
    USC_STIFFNESS_INDETERMINABLE, /* r < 10 and s'a not negligible */
};

/* s'a = 111/d, d the thickness under load in mm, MN/m3. */
static inline double usc_gas_stiffness_MN_m3(double loaded_thickness_mm)
{
    return 111.0 / loaded_thickness_mm;
}
extern const struct formula usc_gas_stiffness_formula;
extern const struct formula usc_stiffness_airtight_formula; /* given s't */
extern const struct formula usc_stiffness_middle_formula;   /* given s't, s'a */
extern const struct formula usc_stiffness_open_formula;     /* given s't */

/* The case by flow resistivity; s'a counts as negligible below a tenth of s't. */
enum usc_stiffness_case usc_stiffness_case_of(double apparent_MN_m3, double flow_resistivity_kPa_s_m2,
                                              double loaded_thickness_mm);
/* s' in MN/m3; NaN when indeterminable. */
double usc_dynamic_stiffness_MN_m3(double apparent_MN_m3, double flow_resistivity_kPa_s_m2, double loaded_thickness_mm);

/* c = dL - dB in mm: thickness under 250 Pa, and under 2 kPa after a short load of 50 kPa. */
static inline double usc_compressibility_mm(double dL_mm, double dB_mm)
{
    return dL_mm - dB_mm;
}
extern const struct formula usc_compressibility_formula; /* given dL, dB */

/* A level of compressibility: the most c in mm and the imposed load in kPa it permits. */
struct usc_compressibility_level {
    const char *name;
    double most_mm, imposed_load_kPa;
};

/* CP5, CP4, CP3, CP2. */
enum { USC_COMPRESSIBILITY_LEVELS = 4 };
extern const struct usc_compressibility_level usc_compressibility_levels[USC_COMPRESSIBILITY_LEVELS];

/* The strictest level that c keeps; NULL above 5 mm, below 0 and for NaN. Decided on the tenth of a millimetre. */
const struct usc_compressibility_level *usc_compressibility_level_of(double compressibility_mm);

#endif
