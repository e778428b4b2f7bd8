/* From the resonance of specimens to the dynamic stiffness of the laid layer, alone and with others in series.
 * Source: ISO 9052-1 / EN 29052-1 (from memory); each formula names its own. */
#ifndef USC_STUDY_SPECIMEN_H
#define USC_STUDY_SPECIMEN_H

#include "acoustics/dynamic_stiffness.h"
#include "base/field.h"
#include "base/formula.h"
#include "project/specimens.h"

/* NaN: not known. */
struct stiffness_options {
    double flow_resistivity_kPa_s_m2;
    double unloaded_thickness_mm, thickness_after_load_mm; /* dL and dB of the compressibility */
    struct numbers in_series_MN_m3;                        /* s' of the other layers */
};

/* Of s't over the specimens; the deviation is that of a sample, NaN for a single one. */
struct stiffness_spread {
    double standard_deviation_MN_m3, smallest_MN_m3, largest_MN_m3;
};

/* Keys as the JSON result has them; NaN or NULL where a figure was not asked for or cannot be known. */
struct stiffness_result {
    int count;
    double load_mass_kg_m2; /* NaN when the specimens differ */
    double thickness_mm, flow_resistivity_kPa_s_m2;
    double apparent_MN_m3; /* mean */
    struct stiffness_spread *spread;
    double gas_MN_m3, dynamic_stiffness_MN_m3;
    const char *case_name;
    double in_series_MN_m3;
    double compressibility_mm, compressibility_load_kPa;
    const char *compressibility_level;
    const char *to_measure; /* what lacks for s', NULL when nothing does */
    const struct formula *laid_by;
    struct working working;
};
extern const struct record stiffness_result_record;

/* False when s' is indeterminable: to_measure then tells what to measure, and the rest after s'a is not filled in.
 * spread: wanted, as for a table of specimens. */
bool study_stiffness(const struct specimens *specimens, bool spread, const struct stiffness_options *options,
                     struct arena *arena, struct stiffness_result *result);

#endif
