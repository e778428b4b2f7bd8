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

/* Apparent dynamic stiffness
 * Purpose:   the stiffness of a specimen from the resonance of a load plate on it.
 * Given:     total load during the test in kg/m2, normally 200; resonance frequency in Hz, extrapolated to no force.
 * Returned:  s't in MN/m3.
 * Validity:  the load is that of the test, not of the later screed.
 * Source:    ISO 9052-1 / EN 29052-1, from memory; a mass on a spring. */
static double apparent(const double given[], int count)
{
    (void)count;
    return usc_apparent_stiffness_MN_m3(given[0], given[1]);
}

const struct formula usc_apparent_stiffness_formula = {
    .id = "apparent-stiffness",
    .title = "Apparent dynamic stiffness of a specimen",
    .expression = "4 pi^2 {m't} {fr}^2/1000000",
    .result = APPARENT,
    .given = (const struct quantity[]){{"m't", "load_mass_kg_m2", "kg/m2", UNLIMITED},
                                       {"fr", "resonance_Hz", "Hz", UNLIMITED}},
    .given_count = 2,
    .source = {STANDARD, "", STANDING_FROM_MEMORY},
    .note = "The load of the test is normally 200 kg/m2: 8 kg on 0.2 m x 0.2 m.",
    .value = apparent,
};

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

/* Compressibility
 * Purpose:   how much thinner a resilient layer stays under the screed and its load.
 * Given:     dL and dB in mm, thickness under 250 Pa, and under 2 kPa after a short load of 50 kPa.
 * Returned:  c in mm; for stacked layers add their c.
 * Validity:  the levels hold for the imposed load named with each.
 * Source:    Baukonstruktionslehre 1, ch. 17.6; levels of EN 13163 and loads of the measurement from memory. */
static double compressibility(const double given[], int count)
{
    (void)count;
    return usc_compressibility_mm(given[0], given[1]);
}

const struct formula usc_compressibility_formula = {
    .id = "compressibility",
    .title = "Compressibility of a resilient layer",
    .expression = "{dL} - {dB}",
    .result = {"c", "compressibility_mm", "mm", UNLIMITED},
    .given = (const struct quantity[]){{"dL", "unloaded_thickness_mm", "mm", UNLIMITED},
                                       {"dB", "thickness_after_load_mm", "mm", UNLIMITED}},
    .given_count = 2,
    .source = {"Baukonstruktionslehre 1, ch. 17.6", "", STANDING_PUBLISHED},
    .note = "Stacked layers: the sum of their compressibilities.",
    .value = compressibility,
};

const struct usc_compressibility_level usc_compressibility_levels[USC_COMPRESSIBILITY_LEVELS] = {
    {"CP5", 5, 2}, {"CP4", 4, 3}, {"CP3", 3, 4}, {"CP2", 2, 5}};

const struct usc_compressibility_level *usc_compressibility_level_of(double compressibility_mm)
{
    const double tenth_mm = floor(compressibility_mm * 10.0 + 0.5 + 1e-7) / 10.0;

    if (!(tenth_mm >= 0))
        return NULL;
    for (int i = USC_COMPRESSIBILITY_LEVELS - 1; i >= 0; i--)
        if (tenth_mm <= usc_compressibility_levels[i].most_mm)
            return &usc_compressibility_levels[i];
    return NULL;
}
