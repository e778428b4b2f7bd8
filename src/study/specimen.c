/* The dynamic stiffness of a laid layer from its specimens. */
#include "study/specimen.h"

#include "acoustics/floating_floor.h"

static const struct {
    const char *name;
    const struct formula *formula;
} cases[] = {
    [USC_STIFFNESS_AIRTIGHT] = {"airtight", &usc_stiffness_airtight_formula},
    [USC_STIFFNESS_MIDDLE] = {"middle", &usc_stiffness_middle_formula},
    [USC_STIFFNESS_OPEN] = {"open", &usc_stiffness_open_formula},
};

/* s't of each specimen, its mean, and the means of what was measured beside it. */
static void average(const struct specimens *specimens, double apparent_MN_m3[], struct stiffness_result *result)
{
    double const count = (double)specimens->count;
    double sum_MN_m3 = 0, sum_mm = 0;
    result->load_mass_kg_m2 = specimens->at[0].load_mass_kg_m2;
    for (size_t i = 0; i < specimens->count; i++) {
        const struct specimen *one = &specimens->at[i];
        double const given[] = {one->load_mass_kg_m2, one->resonance_Hz};
        apparent_MN_m3[i] =
            formula_apply(&usc_apparent_stiffness_formula, given, specimens->count == 1 ? &result->working : NULL);
        sum_MN_m3 += apparent_MN_m3[i];
        sum_mm += one->thickness_mm;
        if (one->load_mass_kg_m2 != result->load_mass_kg_m2)
            result->load_mass_kg_m2 = NAN;
    }
    result->apparent_MN_m3 = sum_MN_m3 / count;
    result->thickness_mm = sum_mm / count;
}

static struct stiffness_spread *spread_of(const double value[], size_t count, double mean, struct arena *arena)
{
    struct stiffness_spread *spread = arena_take(arena, sizeof *spread);
    double squares = 0;
    *spread = (struct stiffness_spread){NAN, value[0], value[0]};
    for (size_t i = 0; i < count; i++) {
        squares += (value[i] - mean) * (value[i] - mean);
        spread->smallest_MN_m3 = fmin(spread->smallest_MN_m3, value[i]);
        spread->largest_MN_m3 = fmax(spread->largest_MN_m3, value[i]);
    }
    if (count > 1)
        spread->standard_deviation_MN_m3 = sqrt(squares / (double)(count - 1));
    return spread;
}

/* From the specimen, whose edges are open, to the laid layer; false when indeterminable. */
static bool lay(struct stiffness_result *result)
{
    if (!isnan(result->thickness_mm))
        result->gas_MN_m3 = formula_apply(&usc_gas_stiffness_formula, &result->thickness_mm, &result->working);
    if (isnan(result->flow_resistivity_kPa_s_m2)) {
        result->to_measure = "the flow resistivity of the material, sideways; without it s't is not yet s'";
        return true;
    }
    enum usc_stiffness_case const found =
        usc_stiffness_case_of(result->apparent_MN_m3, result->flow_resistivity_kPa_s_m2, result->thickness_mm);
    if (found != USC_STIFFNESS_AIRTIGHT && isnan(result->thickness_mm)) {
        result->to_measure = "the thickness under load; without it the stiffness of the enclosed air is not known";
        return true;
    }
    if (found == USC_STIFFNESS_INDETERMINABLE) {
        result->to_measure = "the flow resistivity once more, or the resonance of specimens with sealed edges";
        return false;
    }
    result->case_name = cases[found].name;
    result->laid_by = cases[found].formula;
    double const given[] = {result->apparent_MN_m3, result->gas_MN_m3};
    result->dynamic_stiffness_MN_m3 = formula_apply(result->laid_by, given, &result->working);
    return true;
}

static void stack(const struct numbers *others, struct arena *arena, struct stiffness_result *result)
{
    if (others->count == 0 || isnan(result->dynamic_stiffness_MN_m3))
        return;
    double *all = arena_take_many(arena, others->count + 1, sizeof *all);
    all[0] = result->dynamic_stiffness_MN_m3;
    for (size_t i = 0; i < others->count; i++)
        all[i + 1] = others->at[i];
    result->in_series_MN_m3 =
        formula_apply_list(&usc_stiffness_in_series_formula, all, (int)others->count + 1, &result->working);
}

static void compress(const struct stiffness_options *options, struct stiffness_result *result)
{
    double const given[] = {options->unloaded_thickness_mm, options->thickness_after_load_mm};
    if (isnan(given[0]) || isnan(given[1]))
        return;
    result->compressibility_mm = formula_apply(&usc_compressibility_formula, given, &result->working);
    const struct usc_compressibility_level *level = usc_compressibility_level_of(result->compressibility_mm);
    if (!level)
        return;
    result->compressibility_level = level->name;
    result->compressibility_load_kPa = level->imposed_load_kPa;
}

bool study_stiffness(const struct specimens *specimens, bool spread, const struct stiffness_options *options,
                     struct arena *arena, struct stiffness_result *result)
{
    double *apparent_MN_m3 = arena_take_many(arena, specimens->count, sizeof *apparent_MN_m3);
    record_defaults(&stiffness_result_record, result);
    result->working = (struct working){.arena = arena};
    result->count = (int)specimens->count;
    result->flow_resistivity_kPa_s_m2 = options->flow_resistivity_kPa_s_m2;
    average(specimens, apparent_MN_m3, result);
    if (spread)
        result->spread = spread_of(apparent_MN_m3, specimens->count, result->apparent_MN_m3, arena);
    if (!lay(result))
        return false;
    stack(&options->in_series_MN_m3, arena, result);
    compress(options, result);
    return true;
}
