#include "acoustics/floating_floor.h"

#define UNLIMITED -INFINITY, INFINITY

#define EQUATION_22_69                                                                                                 \
    {                                                                                                                  \
        "Lehrbuch der Bauphysik, ch. 22", "eq. 22.69", STANDING_PUBLISHED                                              \
    }
#define EQUATION_22_70                                                                                                 \
    {                                                                                                                  \
        "Lehrbuch der Bauphysik, ch. 22", "eq. 22.70", STANDING_FROM_MEMORY                                            \
    }

/* Mass per area
 * Purpose:   the mass of a layer from its thickness.
 * Given:     thickness in mm, density in kg/m3.
 * Returned:  mass per area in kg/m2.
 * Validity:  any layer of even thickness. For sound take the dry density: it is the lower one and so on the safe side;
 *            for the load on the structure the wet one.
 * Source:    definition of mass per area. */
static double mass(const double given[], int count)
{
    (void)count;
    return usc_mass_kg_m2(given[0], given[1]);
}

const struct formula usc_mass_formula = {
    .id = "mass-per-area",
    .title = "Mass per area of a layer",
    .expression = "{d} {ρ}/1000",
    .result = {"m'", "mass_kg_m2", "kg/m2", UNLIMITED},
    .given =
        (const struct quantity[]){{"d", "thickness_mm", "mm", UNLIMITED}, {"ρ", "density_kg_m3", "kg/m3", UNLIMITED}},
    .given_count = 2,
    .source = {"definition of mass per area", "", STANDING_DERIVED},
    .note = "Dry density for sound, wet density for the load.",
    .value = mass,
};

/* Stiffness in series
 * Purpose:   one dynamic stiffness for resilient layers that lie on one another.
 * Given:     dynamic stiffness of each layer, MN/m3; count of at least 1.
 * Returned:  dynamic stiffness of the stack, MN/m3; NaN when there is no layer.
 * Validity:  each layer covers the full area, unbroken.
 * Source:    Lehrbuch der Bauphysik, ch. 22; handbook Schallschutz - Bauakustik. */
double usc_stiffness_in_series_MN_m3(const double stiffness_MN_m3[], int count)
{
    double compliance_m3_MN = 0;

    for (int i = 0; i < count; i++)
        compliance_m3_MN += 1.0 / stiffness_MN_m3[i];
    return count > 0 ? 1.0 / compliance_m3_MN : NAN;
}

const struct formula usc_stiffness_in_series_formula = {
    .id = "stiffness-in-series",
    .title = "Dynamic stiffness of stacked resilient layers",
    .expression = "1/sum(1/{s'})",
    .result = {"s'", "stiffness_MN_m3", "MN/m3", UNLIMITED},
    .given = (const struct quantity[]){{"s'", "stiffness_MN_m3", "MN/m3", UNLIMITED}},
    .given_count = 1,
    .list = true,
    .source = {"Lehrbuch der Bauphysik, ch. 22", "", STANDING_PUBLISHED},
    .note = "Each layer covers the full area and is unbroken.",
    .value = usc_stiffness_in_series_MN_m3,
};

/* Resonance frequency
 * Purpose:   the frequency above which the floating floor improves.
 * Given:     dynamic stiffness in MN/m3, mass of the screed in kg/m2 and, for airborne sound, that of the slab.
 * Returned:  f0 in Hz.
 * Validity:  a rigid plate on a spring. 160 is kept as printed; 1000/(2 pi) is 159.155.
 * Source:    EN ISO 12354-2 as quoted by the building regulation of Comacchio, requirement 5.2 (one mass);
 *            Lehrbuch der Bauphysik, ch. 22 (two masses). */
static double resonance(const double given[], int count)
{
    (void)count;
    return usc_resonance_Hz(given[0], given[1]);
}

const struct formula usc_resonance_formula = {
    .id = "resonance-frequency",
    .title = "Resonance frequency of the floating floor",
    .expression = "160 sqrt({s'}/{m'})",
    .result = {"f0", "f0_Hz", "Hz", UNLIMITED},
    .given = (const struct quantity[]){{"s'", "stiffness_MN_m3", "MN/m3", UNLIMITED},
                                       {"m'", "mass_kg_m2", "kg/m2", UNLIMITED}},
    .given_count = 2,
    .source = {"EN ISO 12354-2", "as quoted by the building regulation of Comacchio, requirement 5.2",
               STANDING_PUBLISHED},
    .note = "160 as printed; the exact factor is 159.155.",
    .value = resonance,
};

static double resonance_two_masses(const double given[], int count)
{
    (void)count;
    return usc_resonance_two_masses_Hz(given[0], given[1], given[2]);
}

const struct formula usc_resonance_two_masses_formula = {
    .id = "resonance-frequency-two-masses",
    .title = "Resonance frequency of screed and slab, for airborne sound",
    .expression = "160 sqrt({s'} (1/{m'1} + 1/{m'2}))",
    .result = {"f0", "f0_two_masses_Hz", "Hz", UNLIMITED},
    .given = (const struct quantity[]){{"s'", "stiffness_MN_m3", "MN/m3", UNLIMITED},
                                       {"m'1", "mass_kg_m2", "kg/m2", UNLIMITED},
                                       {"m'2", "slab_mass_kg_m2", "kg/m2", UNLIMITED}},
    .given_count = 3,
    .source = {"Lehrbuch der Bauphysik, ch. 22", "", STANDING_PUBLISHED},
    .value = resonance_two_masses,
};

/* Improvement per band
 * Purpose:   the reduction of impact sound pressure level at one frequency.
 * Given:     frequency in Hz, f0 in Hz.
 * Returned:  dL in dB, 0 up to f0.
 * Validity:  simple form of the standard. At f0 a real floor is worse than the bare slab; it improves from about
 *            1.4 f0 on.
 * Source:    mineral screeds: Vigran, Building Acoustics, 2008; asphalt and dry floors: EN ISO 12354-2, Annex C,
 *            from memory. */
static double improvement_mineral(const double given[], int count)
{
    (void)count;
    return usc_improvement_dB(usc_improvement_slope_dB(USC_LAW_MINERAL), given[0], given[1]);
}

static double improvement_light(const double given[], int count)
{
    (void)count;
    return usc_improvement_dB(usc_improvement_slope_dB(USC_LAW_DRY), given[0], given[1]);
}

static const struct quantity frequency_and_f0[] = {{"f", "frequency_Hz", "Hz", UNLIMITED},
                                                   {"f0", "f0_Hz", "Hz", UNLIMITED}};

const struct formula usc_improvement_mineral_formula = {
    .id = "improvement-mineral",
    .title = "Improvement per band, mineral screed",
    .expression = "max(0, 30 lg({f}/{f0}))",
    .result = {"ΔL", "delta_L_dB", "dB", UNLIMITED},
    .given = frequency_and_f0,
    .given_count = 2,
    .source = {"Vigran, Building Acoustics, 2008", "", STANDING_PUBLISHED},
    .note = "Cement, calcium sulphate and other mineral screeds. At f0 a real floor is worse than the bare slab.",
    .value = improvement_mineral,
};

const struct formula usc_improvement_light_formula = {
    .id = "improvement-asphalt-and-dry",
    .title = "Improvement per band, asphalt screed and dry floor",
    .expression = "max(0, 40 lg({f}/{f0}))",
    .result = {"ΔL", "delta_L_dB", "dB", UNLIMITED},
    .given = frequency_and_f0,
    .given_count = 2,
    .source = {"EN ISO 12354-2", "Annex C", STANDING_FROM_MEMORY},
    .note = "At f0 a real floor is worse than the bare slab.",
    .value = improvement_light,
};

/* Weighted improvement
 * Purpose:   dLw of the floating floor without its spectrum.
 * Given:     mass per area of the screed in kg/m2, dynamic stiffness in MN/m3.
 * Returned:  dLw in dB.
 * Validity:  mineral m' 60..160, s' 6..50; asphalt m' 58..87, s' 15..50; dry floor m' 15..40, s' 15..40. Thin rolls
 *            with s' above 50 lie outside: take a test report.
 * Source:    Lehrbuch der Bauphysik, ch. 22, eq. 22.69 and 22.70 (the brackets of 22.70 from memory). */
static double delta_Lw_mineral(const double given[], int count)
{
    (void)count;
    return usc_delta_Lw_mineral_dB(given[0], given[1]);
}

static double delta_Lw_light(const double given[], int count)
{
    (void)count;
    return usc_delta_Lw_light_dB(given[0], given[1]);
}

#define DELTA_LW                                                                                                       \
    {                                                                                                                  \
        "ΔLw", "delta_Lw_dB", "dB", UNLIMITED                                                                          \
    }
#define MASS_RANGE(LOWEST, HIGHEST)                                                                                    \
    {                                                                                                                  \
        "m'", "mass_kg_m2", "kg/m2", LOWEST, HIGHEST                                                                   \
    }
#define STIFFNESS_RANGE(LOWEST, HIGHEST)                                                                               \
    {                                                                                                                  \
        "s'", "stiffness_MN_m3", "MN/m3", LOWEST, HIGHEST                                                              \
    }
#define LIGHT_EXPRESSION "(-0.21 {m'} - 5.45) lg({s'}) + 0.46 {m'} + 23.8"
#define LIGHT_NOTE "Coefficients as printed; how they are bracketed is from memory."

const struct formula usc_delta_Lw_mineral_formula = {
    .id = "weighted-improvement-mineral",
    .title = "Weighted improvement, mineral screed",
    .expression = "13 lg({m'}) - 14.2 lg({s'}) + 20.8",
    .result = DELTA_LW,
    .given = (const struct quantity[]){MASS_RANGE(60, 160), STIFFNESS_RANGE(6, 50)},
    .given_count = 2,
    .source = EQUATION_22_69,
    .note = "Thin rolls above 50 MN/m3 lie outside the range: take a test report.",
    .value = delta_Lw_mineral,
};

const struct formula usc_delta_Lw_asphalt_formula = {
    .id = "weighted-improvement-asphalt",
    .title = "Weighted improvement, asphalt screed",
    .expression = LIGHT_EXPRESSION,
    .result = DELTA_LW,
    .given = (const struct quantity[]){MASS_RANGE(58, 87), STIFFNESS_RANGE(15, 50)},
    .given_count = 2,
    .source = EQUATION_22_70,
    .note = LIGHT_NOTE,
    .value = delta_Lw_light,
};

const struct formula usc_delta_Lw_dry_formula = {
    .id = "weighted-improvement-dry",
    .title = "Weighted improvement, dry floor",
    .expression = LIGHT_EXPRESSION,
    .result = DELTA_LW,
    .given = (const struct quantity[]){MASS_RANGE(15, 40), STIFFNESS_RANGE(15, 40)},
    .given_count = 2,
    .source = EQUATION_22_70,
    .note = LIGHT_NOTE,
    .value = delta_Lw_light,
};

const struct formula *usc_improvement_formula_of(enum usc_improvement_law law)
{
    return law == USC_LAW_MINERAL ? &usc_improvement_mineral_formula : &usc_improvement_light_formula;
}

const struct formula *usc_delta_Lw_formula_of(enum usc_improvement_law law)
{
    switch (law) {
    case USC_LAW_ASPHALT:
        return &usc_delta_Lw_asphalt_formula;
    case USC_LAW_DRY:
        return &usc_delta_Lw_dry_formula;
    case USC_LAW_MINERAL:
        break;
    }
    return &usc_delta_Lw_mineral_formula;
}
