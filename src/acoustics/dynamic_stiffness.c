#include "acoustics/dynamic_stiffness.h"

#include <math.h>

#define UNLIMITED -INFINITY, INFINITY
#define APPARENT                                                                                                       \
    {                                                                                                                  \
        "s't", "apparent_MN_m3", "MN/m3", UNLIMITED                                                                    \
    }
#define LAID                                                                                                           \
    {                                                                                                                  \
        "s'", "dynamic_stiffness_MN_m3", "MN/m3", UNLIMITED                                                            \
    }
#define STANDARD "ISO 9052-1"
#define CASE_CLAUSE "cases after Schiavi et al. 2011, limits of flow resistivity from memory"

/* Limits of the lateral flow resistivity, kPa s/m2 (ISO 9052-1, from memory). */
static const double AIRTIGHT_FROM_KPA_S_M2 = 100, MIDDLE_FROM_KPA_S_M2 = 10;
/* The part of s't below which s'a counts as negligible. Common practice; the standard gives no figure. */
static const double NEGLIGIBLE_PART = 0.1;

/* Stiffness of the enclosed air
 * Purpose:   what the air in an open-pored layer adds when it cannot escape sideways.
 * Given:     thickness under load in mm.
 * Returned:  s'a in MN/m3.
 * Validity:  air at 0.1 MPa and a porosity of 0.9.
 * Source:    ISO 9052-1 / EN 29052-1, from memory. */
static double gas_stiffness(const double given[], int count)
{
    (void)count;
    return usc_gas_stiffness_MN_m3(given[0]);
}

const struct formula usc_gas_stiffness_formula = {
    .id = "gas-stiffness",
    .title = "Dynamic stiffness of the enclosed air",
    .expression = "111/{d}",
    .result = {"s'a", "gas_MN_m3", "MN/m3", UNLIMITED},
    .given = (const struct quantity[]){{"d", "loaded_thickness_mm", "mm", UNLIMITED}},
    .given_count = 1,
    .source = {STANDARD, "", STANDING_FROM_MEMORY},
    .note = "Thickness under load.",
    .value = gas_stiffness,
};

/* From specimen to laid material
 * Purpose:   the dynamic stiffness of the laid layer from that of the specimen, whose edges are open.
 * Given:     apparent dynamic stiffness s't and, in the middle case, s'a in MN/m3.
 * Returned:  s' in MN/m3.
 * Validity:  flow resistivity r in kPa s/m2: airtight r >= 100, middle 10 <= r < 100, open r < 10 and s'a negligible.
 *            Open with an s'a that is not negligible: s' cannot be determined this way.
 * Source:    ISO 9052-1 / EN 29052-1; cases after Schiavi et al. 2011, numbers from memory. */
static double unchanged(const double given[], int count)
{
    (void)count;
    return given[0];
}

static double with_gas_MN_m3(double apparent_MN_m3, double gas_MN_m3)
{
    return apparent_MN_m3 + gas_MN_m3;
}

static double with_gas(const double given[], int count)
{
    (void)count;
    return with_gas_MN_m3(given[0], given[1]);
}

const struct formula usc_stiffness_airtight_formula = {
    .id = "stiffness-airtight",
    .title = "Dynamic stiffness, flow resistivity of 100 kPa s/m2 or more",
    .expression = "{s't}",
    .result = LAID,
    .given = (const struct quantity[]){APPARENT},
    .given_count = 1,
    .source = {STANDARD, CASE_CLAUSE, STANDING_FROM_MEMORY},
    .value = unchanged,
};

const struct formula usc_stiffness_middle_formula = {
    .id = "stiffness-middle",
    .title = "Dynamic stiffness, flow resistivity from 10 to below 100 kPa s/m2",
    .expression = "{s't} + {s'a}",
    .result = LAID,
    .given = (const struct quantity[]){APPARENT, {"s'a", "gas_MN_m3", "MN/m3", UNLIMITED}},
    .given_count = 2,
    .source = {STANDARD, CASE_CLAUSE, STANDING_FROM_MEMORY},
    .value = with_gas,
};

const struct formula usc_stiffness_open_formula = {
    .id = "stiffness-open",
    .title = "Dynamic stiffness, flow resistivity below 10 kPa s/m2 and negligible air stiffness",
    .expression = "{s't}",
    .result = LAID,
    .given = (const struct quantity[]){APPARENT},
    .given_count = 1,
    .source = {STANDARD, CASE_CLAUSE, STANDING_FROM_MEMORY},
    .note = "Air counts as negligible below a tenth of the apparent stiffness: common practice.",
    .value = unchanged,
};

enum usc_stiffness_case usc_stiffness_case_of(double apparent_MN_m3, double flow_resistivity_kPa_s_m2,
                                              double loaded_thickness_mm)
{
    if (flow_resistivity_kPa_s_m2 >= AIRTIGHT_FROM_KPA_S_M2)
        return USC_STIFFNESS_AIRTIGHT;
    if (flow_resistivity_kPa_s_m2 >= MIDDLE_FROM_KPA_S_M2)
        return USC_STIFFNESS_MIDDLE;
    if (flow_resistivity_kPa_s_m2 >= 0 &&
        usc_gas_stiffness_MN_m3(loaded_thickness_mm) < NEGLIGIBLE_PART * apparent_MN_m3)
        return USC_STIFFNESS_OPEN;
    return USC_STIFFNESS_INDETERMINABLE;
}

double usc_dynamic_stiffness_MN_m3(double apparent_MN_m3, double flow_resistivity_kPa_s_m2, double loaded_thickness_mm)
{
    switch (usc_stiffness_case_of(apparent_MN_m3, flow_resistivity_kPa_s_m2, loaded_thickness_mm)) {
    case USC_STIFFNESS_AIRTIGHT:
    case USC_STIFFNESS_OPEN:
        return apparent_MN_m3;
    case USC_STIFFNESS_MIDDLE:
        return with_gas_MN_m3(apparent_MN_m3, usc_gas_stiffness_MN_m3(loaded_thickness_mm));
    case USC_STIFFNESS_INDETERMINABLE:
        break;
    }
    return NAN;
}
