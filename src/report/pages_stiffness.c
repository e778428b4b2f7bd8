/* The page of stiffness. */
#include <math.h>

#include "report/pages.h"
#include "report/phrase.h"

static void given(struct page_facts *facts, const struct stiffness_result *result)
{
    struct arena *arena = facts->arena;
    page_fact(facts, "specimens", phrase_short(arena, result->count, ""), NULL);
    if (isnan(result->load_mass_kg_m2))
        page_fact(facts, "load", "differs", "between the specimens");
    else
        page_fact(facts, "load", phrase_short(arena, result->load_mass_kg_m2, "kg/m2"), "of the test, not of a screed");
    if (!isnan(result->thickness_mm))
        page_fact(facts, "d", phrase_short(arena, result->thickness_mm, "mm"), "thickness under load");
    if (!isnan(result->flow_resistivity_kPa_s_m2))
        page_fact(facts, "r", phrase_short(arena, result->flow_resistivity_kPa_s_m2, "kPa s/m2"), "flow resistivity");
}

static void spread_facts(struct page_facts *facts, const struct stiffness_result *result)
{
    struct arena *arena = facts->arena;
    const struct stiffness_spread *spread = result->spread;
    if (result->count > 1)
        page_fact(facts, "s't", phrase_fixed(arena, result->apparent_MN_m3, 2, "MN/m3"), "mean; %s",
                  phrase_source(arena, &usc_apparent_stiffness_formula.source));
    if (!spread)
        return;
    if (!isnan(spread->standard_deviation_MN_m3))
        page_fact(facts, "deviation", phrase_fixed(arena, spread->standard_deviation_MN_m3, 2, "MN/m3"),
                  "standard deviation of the specimens");
    page_fact(facts, "smallest", phrase_fixed(arena, spread->smallest_MN_m3, 2, "MN/m3"), NULL);
    page_fact(facts, "largest", phrase_fixed(arena, spread->largest_MN_m3, 2, "MN/m3"), NULL);
}

static void steps(struct page_facts *facts, const struct stiffness_result *result)
{
    struct arena *arena = facts->arena;
    for (const struct step *step = result->working.first_step; step; step = step->next) {
        const struct formula *formula = step->formula;
        const char *label = formula->list ? "s' of all" : formula->result.symbol;
        page_fact(facts, label, phrase_fixed(arena, step->result, 2, formula->result.unit), "%s = %s; %s",
                  formula->result.symbol, step_with_numbers(arena, step), phrase_source(arena, &formula->source));
    }
}

void page_of_stiffness(struct page *page, const char *name, const struct stiffness_result *result)
{
    struct arena *arena = page->arena;
    page_heading(page, 1, "%s", name);
    struct page_facts *facts = page_facts_begin(page);
    given(facts, result);
    spread_facts(facts, result);
    steps(facts, result);
    if (result->case_name)
        page_fact(facts, "case", result->case_name, "%s", result->laid_by->title);
    if (result->compressibility_level)
        page_fact(facts, "level", result->compressibility_level, "for an imposed load up to %s",
                  phrase_short(arena, result->compressibility_load_kPa, "kPa"));
    else if (!isnan(result->compressibility_mm))
        page_warning(page, "The compressibility keeps none of the levels: too soft for a screed by these classes.");
    if (result->to_measure)
        page_warning(page, "s' is not known yet. Measure %s.", result->to_measure);
    page_paragraph(page, "A test of specimens holds for the batch they were cut from.");
}
