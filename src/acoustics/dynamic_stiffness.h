/* From the apparent dynamic stiffness of a specimen to that of the laid material.
 * Source: ISO 9052-1 / EN 29052-1, case logic; see the descriptors. */
#ifndef USC_ACOUSTICS_DYNAMIC_STIFFNESS_H
#define USC_ACOUSTICS_DYNAMIC_STIFFNESS_H

#include "base/formula.h"

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

#endif
