/* Field tables of a dynamic stiffness from specimens. */
#include <limits.h>

#include "study/specimen.h"

#define FIGURE(S, M, UNIT, HEADING) NUMBER_FIELD(S, M, UNIT, -INFINITY, INFINITY, NONE, HEADING)

static const struct field spread_fields[] = {
    FIGURE(stiffness_spread, standard_deviation_MN_m3, "MN/m3", "of a sample; null for a single specimen"),
    FIGURE(stiffness_spread, smallest_MN_m3, "MN/m3", "smallest s't"),
    FIGURE(stiffness_spread, largest_MN_m3, "MN/m3", "largest s't"),
};
static const struct record spread_record = RECORD("spread", stiffness_spread, spread_fields);

static const struct field stiffness_fields[] = {
    INTEGER_FIELD(stiffness_result, count, 1, INT_MAX, NONE, "specimens"),
    FIGURE(stiffness_result, load_mass_kg_m2, "kg/m2", "load of the test; null where the specimens differ"),
    FIGURE(stiffness_result, thickness_mm, "mm", "thickness under load, mean"),
    FIGURE(stiffness_result, flow_resistivity_kPa_s_m2, "kPa s/m2", "as given"),
    FIGURE(stiffness_result, apparent_MN_m3, "MN/m3", "apparent dynamic stiffness s't, mean"),
    OBJECT_FIELD(stiffness_result, spread, &spread_record, false, "of s't, for a table of specimens"),
    FIGURE(stiffness_result, gas_MN_m3, "MN/m3", "stiffness s'a of the enclosed air"),
    FIGURE(stiffness_result, dynamic_stiffness_MN_m3, "MN/m3", "dynamic stiffness s' of the laid layer"),
    /* the member cannot have the key's name, a word of the language */
    {.key = "case",
     .offset = offsetof(struct stiffness_result, case_name),
     .kind = FIELD_TEXT,
     .unit = "",
     .heading = "airtight, middle or open"},
    FIGURE(stiffness_result, in_series_MN_m3, "MN/m3", "s' together with the further layers"),
    FIGURE(stiffness_result, compressibility_mm, "mm", "compressibility c"),
    TEXT_FIELD(stiffness_result, compressibility_level, false, "strictest level that c keeps"),
    FIGURE(stiffness_result, compressibility_load_kPa, "kPa", "imposed load which that level permits"),
    TEXT_FIELD(stiffness_result, to_measure, false, "what lacks for s'"),
};
const struct record stiffness_result_record = RECORD("stiffness", stiffness_result, stiffness_fields);
