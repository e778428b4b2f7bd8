/* The page of rate. */
#include <math.h>
#include <string.h>

#include "report/pages.h"
#include "report/phrase.h"

static const char *symbol_of(const char *descriptor)
{
    static const char *const pairs[][2] = {
        {"Ln_w", "Ln,w"}, {"L_prime_n_w", "L'n,w"}, {"L_prime_nT_w", "L'nT,w"}, {"delta_Lw", "ΔLw"}};
    for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++)
        if (descriptor && !strcmp(pairs[i][0], descriptor))
            return pairs[i][1];
    return "";
}

static void fact_if(struct page_facts *facts, const char *label, double value, const char *unit, const char *remark)
{
    if (!isnan(value))
        page_fact(facts, label, phrase_short(facts->arena, value, unit), "%s", remark);
}

static void figures(struct page *page, const struct rated *rated)
{
    struct page_facts *facts = page_facts_begin(page);
    const char *fine =
        arena_printf(page->arena, "rated in steps of 0.1 dB: %s", phrase_dB(page->arena, rated->value_fine_dB));
    fact_if(facts, symbol_of(rated->descriptor), rated->value_dB, "dB", fine);
    fact_if(facts, "C_I", rated->C_I_dB, "dB", "100..2500 Hz");
    fact_if(facts, "C_I,50-2500", rated->C_I_50_2500_dB, "dB", "");
    fact_if(facts, "sum", rated->unfavourable_sum_dB, "dB", "of unfavourable deviations");
    fact_if(facts, "C_I,Δ", rated->C_I_delta_dB, "dB", "");
    fact_if(facts, "ΔLlin", rated->delta_L_lin_dB, "dB", "ΔLw + C_I,Δ");
    fact_if(facts, "ΔLt,w 1, 2", rated->delta_Lt_1_2_w_dB, "dB", "on lightweight reference floors 1 and 2");
    fact_if(facts, "ΔLt,w 3", rated->delta_Lt_3_w_dB, "dB", "on lightweight reference floor 3");
    fact_if(facts, "Ln,eq,0,w", rated->Ln_eq_0_w_dB, "dB", "bare floor, from the covered measurement");
    if (rated->impact_class_name)
        fact_if(facts, rated->impact_class_name, rated->IIC, "", "whole dB, sum at most 32, no band above 8");
    if (!isnan(rated->expanded_uncertainty_dB))
        page_fact(facts, "uncertainty", phrase_dB(page->arena, rated->expanded_uncertainty_dB),
                  "one-sided, %s times %s (ISO 12999-1, from memory)",
                  phrase_short(page->arena, rated->coverage_factor, ""),
                  phrase_dB(page->arena, rated->standard_uncertainty_dB));
    if (rated->low_frequency_bands > 0)
        fact_if(facts, "low bands", rated->low_frequency_bands, "", "formed by the low-frequency procedure");
}

static void verdict(struct page *page, const struct rated *rated)
{
    struct arena *arena = page->arena;
    const struct limit_record *limit = rated->limit;
    if (!limit)
        return;
    const char *sense = strcmp(limit->sense, "at_least") ? "at most" : "at least";
    if (rated->meets_limit == ANSWER_NONE) {
        page_warning(page, "The limit %s speaks of %s; this measurement does not give it.", limit->id,
                     limit->descriptor);
        return;
    }
    page_paragraph(page, "%s: %s %s %s, %s %s.%s", rated->meets_limit == ANSWER_YES ? "Met" : "NOT met", limit->id,
                   sense, phrase_short(arena, limit->value_dB, "dB"), phrase_short(arena, fabs(rated->margin_dB), "dB"),
                   rated->margin_dB < 0 ? "beyond it" : "to spare",
                   isnan(rated->expanded_uncertainty_dB)                ? ""
                   : rated->meets_beyond_doubt == ANSWER_YES            ? " Met beyond the uncertainty too."
                   : rated->margin_dB < -rated->expanded_uncertainty_dB ? " Failed beyond the uncertainty too."
                                                                        : " Within the uncertainty: neither certain.");
}

static void spectrum(struct page *page, const struct rated *rated)
{
    const struct rated_bands *bands = rated->bands;
    int const count = (int)bands->frequency_Hz.count;
    bool const curve = bands->reference_dB.count > 0;
    struct page_figure *figure =
        page_figure(page, curve ? "measured" : "improvement", curve ? "shifted reference curve" : NULL, "dB", count);
    for (int i = 0; i < count; i++) {
        figure->label[i] = phrase_short(page->arena, bands->frequency_Hz.at[i], "Hz");
        figure->value[i] = bands->level_dB.at[i];
        figure->mark[i] = curve ? bands->reference_dB.at[i] : NAN;
    }
    for (int i = 0; i < count && bands->remark.count; i++)
        if (*bands->remark.at[i])
            page_bullet(page, "%s: %s", figure->label[i], bands->remark.at[i]);
}

void page_of_rating(struct page *page, const char *name, const struct rated *rated)
{
    page_heading(page, 1, "%s", name);
    figures(page, rated);
    verdict(page, rated);
    if (rated->bands)
        spectrum(page, rated);
    page_paragraph(page, "Rated by ISO 717-2. A measurement holds for the rooms and the day it was made in.");
}
