/* The floor without the building: stack of underlays, resonance, improvement per band and as a single number.
 * Source: EN ISO 12354-2, Annex C; single numbers Lehrbuch der Bauphysik, ch. 22. Of floating floor and soft covering
 * only the larger improvement counts (same source). */
#include "study/prediction.h"

#include <string.h>

#include "acoustics/floating_floor.h"
#include "acoustics/reference_floor.h"
#include "study/range.h"

const char *const delta_Lw_by_names[] = {"formula", "test report", "soft covering", "no floating floor", NULL};

static double zero_when_unknown(double value)
{
    return isnan(value) ? 0 : value;
}

double underlay_loaded_mm(const struct underlay *underlay)
{
    return isnan(underlay->loaded_thickness_mm)
               ? underlay->thickness_mm - zero_when_unknown(underlay->compressibility_mm)
               : underlay->loaded_thickness_mm;
}

static double compressibility_of(const struct underlay *underlay)
{
    if (!isnan(underlay->compressibility_mm))
        return underlay->compressibility_mm;
    return zero_when_unknown(underlay->thickness_mm - underlay->loaded_thickness_mm);
}

void stack_of(const struct underlay *const layer[], int count, struct stack *stack, struct working *working)
{
    double stiffness[STACK_LAYERS_MOST];
    *stack = (struct stack){.count = count, .imposed_load_limit_kN_m2 = INFINITY};
    for (int i = 0; i < count; i++) {
        if (i < 2)
            stack->layer[i] = layer[i];
        if (i < STACK_LAYERS_MOST)
            stiffness[i] = layer[i]->dynamic_stiffness_MN_m3;
        stack->thickness_mm += layer[i]->thickness_mm;
        stack->loaded_thickness_mm += underlay_loaded_mm(layer[i]);
        stack->compressibility_mm += compressibility_of(layer[i]);
        stack->mass_kg_m2 += zero_when_unknown(layer[i]->mass_kg_m2);
        stack->cost_per_m2 += layer[i]->cost_per_m2;
        if (layer[i]->imposed_load_limit_kN_m2 < stack->imposed_load_limit_kN_m2)
            stack->imposed_load_limit_kN_m2 = layer[i]->imposed_load_limit_kN_m2;
    }
    int const resilient = count < STACK_LAYERS_MOST ? count : STACK_LAYERS_MOST;
    stack->stiffness_MN_m3 = resilient == 1
                                 ? stiffness[0]
                                 : formula_apply_list(&usc_stiffness_in_series_formula, stiffness, resilient, working);
}

bool report_governs(const struct stack *stack, const struct screed *screed, double screed_mass_kg_m2,
                    double report_mass_percent)
{
    const struct test_report *report = stack->count == 1 ? stack->layer[0]->test_report : NULL;
    if (!report || report->law != screed->law)
        return false;
    double const tested_kg_m2 = report->screed_mass_kg_m2;
    return fabs(screed_mass_kg_m2 - tested_kg_m2) <= report_mass_percent / 100.0 * tested_kg_m2 + 1e-9;
}

double covering_improvement_dB(const struct flooring *flooring)
{
    return flooring && flooring->kind == FLOORING_SOFT ? zero_when_unknown(flooring->delta_Lw_dB) : 0;
}

/* The report's 100..3150 Hz, whether it has 16 or 21 values; NULL when it has no spectrum. */
static const double *rated_bands_of(const struct test_report *report)
{
    const struct numbers *spectrum = &report->delta_L_dB;
    if (spectrum->count == USC_BANDS)
        return spectrum->at + USC_FIRST_RATED;
    return spectrum->count == USC_RATED_BANDS ? spectrum->at : NULL;
}

/* A laboratory spectrum over all 21 bands. One of 16 values says nothing below 100 Hz (counted as no improvement) and
 * above 3150 Hz (counted as its last value). */
static void take_report_spectrum(const struct test_report *report, double delta_L_dB[USC_BANDS])
{
    const double *rated = rated_bands_of(report);
    if (report->delta_L_dB.count == USC_BANDS) {
        memcpy(delta_L_dB, report->delta_L_dB.at, USC_BANDS * sizeof *delta_L_dB);
        return;
    }
    for (int i = 0; i < USC_BANDS; i++) {
        int const band = i - USC_FIRST_RATED;
        delta_L_dB[i] = band < 0 ? 0 : rated[band < USC_RATED_BANDS ? band : USC_RATED_BANDS - 1];
    }
}

static double report_delta_Lw_dB(const struct test_report *report)
{
    return isnan(report->delta_Lw_dB) ? usc_delta_Lw_rated_dB(rated_bands_of(report)) : report->delta_Lw_dB;
}

void floating_floor_of(const struct stack *stack, const struct screed *screed, double thickness_mm,
                       double report_mass_percent, struct working *working, struct floor_effect *effect)
{
    const double mass_given[] = {thickness_mm, screed->dry_density_kg_m3};
    *effect = (struct floor_effect){.stiffness_MN_m3 = stack->stiffness_MN_m3, .delta_Lw_rated_dB = NAN};
    effect->screed_mass_kg_m2 = apply_in_range(&usc_mass_formula, mass_given, working, &effect->out_of_range);
    const double f0_given[] = {stack->stiffness_MN_m3, effect->screed_mass_kg_m2};
    effect->f0_Hz = apply_in_range(&usc_resonance_formula, f0_given, working, &effect->out_of_range);
    if (report_governs(stack, screed, effect->screed_mass_kg_m2, report_mass_percent)) {
        effect->delta_Lw_by = DELTA_LW_BY_TEST_REPORT;
        effect->delta_Lw_dB = report_delta_Lw_dB(stack->layer[0]->test_report);
        return;
    }
    const double given[] = {effect->screed_mass_kg_m2, stack->stiffness_MN_m3};
    effect->delta_Lw_by = DELTA_LW_BY_FORMULA;
    effect->delta_Lw_dB = apply_in_range(usc_delta_Lw_formula_of(screed->law), given, working, &effect->out_of_range);
}

static void spectrum_of(const struct stack *stack, const struct screed *screed, struct working *working,
                        struct floor_effect *effect)
{
    const struct test_report *report = stack->layer[0]->test_report;
    if (effect->delta_Lw_by == DELTA_LW_BY_TEST_REPORT && rated_bands_of(report)) {
        take_report_spectrum(report, effect->delta_L_dB);
    } else {
        const double given[] = {usc_band_Hz[0], effect->f0_Hz};
        formula_apply_along(usc_improvement_formula_of(screed->law), given, 0, usc_band_Hz, USC_BANDS,
                            effect->delta_L_dB, working);
    }
    effect->delta_Lw_rated_dB = usc_delta_Lw_rated_fine_dB(effect->delta_L_dB + USC_FIRST_RATED);
}

void floor_effect_of(const struct stack *stack, const struct screed *screed, double thickness_mm,
                     const struct flooring *flooring, double report_mass_percent, struct working *working,
                     struct floor_effect *effect)
{
    floating_floor_of(stack, screed, thickness_mm, report_mass_percent, working, effect);
    spectrum_of(stack, screed, working, effect);
    double const covering_dB = covering_improvement_dB(flooring);
    if (covering_dB > effect->delta_Lw_dB)
        effect->delta_Lw_by = DELTA_LW_BY_COVERING;
    effect->delta_Lw_dB = counting_improvement_dB(effect->delta_Lw_dB, covering_dB);
}
