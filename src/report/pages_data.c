/* The pages of limits, catalogue and practice. */
#include <math.h>

#include "report/pages.h"
#include "report/phrase.h"

static void fact_text(struct page_facts *facts, const char *label, const char *text)
{
    if (text && *text)
        page_fact(facts, label, "", "%s", text);
}

static void fact_number(struct page_facts *facts, const char *label, double value, const char *unit)
{
    if (!isnan(value) && !isinf(value))
        page_fact(facts, label, phrase_short(facts->arena, value, unit), NULL);
}

static void limit_in_full(struct page *page, const struct limit *limit)
{
    struct arena *arena = page->arena;
    page_heading(page, 2, "%s", limit->id);
    struct page_facts *facts = page_facts_begin(page);
    fact_text(facts, "country", limit->country);
    fact_text(facts, "for", limit->building);
    page_fact(facts, "limit", "", "%s %s %s", descriptor_symbols[limit->descriptor],
              limit->sense == SENSE_AT_LEAST ? "at least" : "at most", phrase_short(arena, limit->value_dB, "dB"));
    if (!isnan(limit->allowance_dB))
        page_fact(facts, "allowance", "", "%s added to a prediction", phrase_short(arena, limit->allowance_dB, "dB"));
    if (limit->volume_rule == VOLUME_V_30)
        fact_text(facts, "volume rule", "10 lg(V/30)");
    fact_text(facts, "thickness", limit->thickness_rules);
    fact_text(facts, "edition", limit->edition);
    fact_text(facts, "source", limit->source);
    fact_text(facts, "status", row_status_names[limit->status]);
    fact_text(facts, "note", limit->note);
    if (!descriptor_is_single_number((enum descriptor)limit->descriptor))
        fact_text(facts, "model", "needs a spectrum: beyond the simplified model");
    for (size_t i = 0; i < limit->rules.count; i++)
        page_bullet(page, "%s", limit->rules.at[i]);
}

void page_of_limits(struct page *page, const struct limits *limits, bool in_full)
{
    static const char *const headings[] = {"id", "", "limit", "dB", "for", "status"};
    static const bool right[] = {false, false, false, true, false, false};
    struct arena *arena = page->arena;
    const struct limit *limit = limits->limits.at;
    page_heading(page, 1, "Limits for impact sound");
    if (in_full) {
        for (size_t i = 0; i < limits->limits.count; i++)
            limit_in_full(page, &limit[i]);
        return;
    }
    struct page_table *table = page_table(page, 6, headings, right);
    for (size_t i = 0; i < limits->limits.count; i++) {
        const char *cells[] = {limit[i].id,
                               limit[i].country,
                               arena_printf(arena, "%s %s", descriptor_symbols[limit[i].descriptor],
                                            limit[i].sense == SENSE_AT_LEAST ? ">=" : "<="),
                               phrase_short(arena, limit[i].value_dB, ""),
                               limit[i].building,
                               row_status_names[limit[i].status]};
        page_row(table, cells);
    }
    page_paragraph(page, "Regulations change; the text in force where you build decides.");
}

static void underlay_in_full(struct page *page, const struct underlay *row)
{
    struct arena *arena = page->arena;
    page_heading(page, 2, "%s", row->id);
    struct page_facts *facts = page_facts_begin(page);
    fact_text(facts, "name", row->name);
    fact_text(facts, "material", row->material);
    fact_number(facts, "s'", row->dynamic_stiffness_MN_m3, "MN/m3");
    fact_number(facts, "s't", row->apparent_stiffness_MN_m3, "MN/m3");
    fact_number(facts, "flow resistivity", row->flow_resistivity_kPa_s_m2, "kPa s/m2");
    fact_number(facts, "thickness", row->thickness_mm, "mm");
    fact_number(facts, "under load", row->loaded_thickness_mm, "mm");
    fact_number(facts, "compressibility", row->compressibility_mm, "mm");
    fact_number(facts, "imposed load up to", row->imposed_load_limit_kN_m2, "kN/m2");
    page_fact(facts, "form", "", "%s, %s", underlay_form_names[row->form], underlay_joint_names[row->joint]);
    fact_number(facts, "length", row->length_m, "m");
    fact_number(facts, "width", row->width_m, "m");
    fact_number(facts, "edge yields", row->edge_yield_mm, "mm");
    fact_number(facts, "mass", row->mass_kg_m2, "kg/m2");
    fact_number(facts, "cost", row->cost_per_m2, "per m2");
    for (size_t i = 0; i < row->may_lie_under.count; i++)
        fact_text(facts, i ? "" : "may lie under", row->may_lie_under.at[i]);
    if (row->test_report)
        page_fact(facts, "test report", "", "%s%swith a screed of %s%s%s",
                  row->test_report->reference ? row->test_report->reference : "",
                  row->test_report->reference ? ", " : "",
                  phrase_short(arena, row->test_report->screed_mass_kg_m2, "kg/m2"),
                  isnan(row->test_report->delta_Lw_dB) ? ": a spectrum" : ": ΔLw ",
                  isnan(row->test_report->delta_Lw_dB) ? "" : phrase_short(arena, row->test_report->delta_Lw_dB, "dB"));
    fact_text(facts, "source", row->source);
    fact_text(facts, "status", row_status_names[row->status]);
    fact_text(facts, "note", row->note);
}

static void screed_in_full(struct page *page, const struct screed *row)
{
    page_heading(page, 2, "%s", row->id);
    struct page_facts *facts = page_facts_begin(page);
    fact_text(facts, "name", row->name);
    page_fact(facts, "kind, class", "", "%s %s", screed_kind_names[row->kind], row->strength_class);
    fact_text(facts, "improvement", improvement_law_names[row->law]);
    fact_number(facts, "dry density", row->dry_density_kg_m3, "kg/m3, for sound");
    fact_number(facts, "wet density", row->wet_density_kg_m3, "kg/m3, for load");
    page_fact(facts, "examined", "", "%s to %s in steps of %s", phrase_short(page->arena, row->thinnest_mm, ""),
              phrase_short(page->arena, row->thickest_mm, "mm"), phrase_short(page->arena, row->step_mm, "mm"));
    fact_number(facts, "cost", row->cost_per_m3, "per m3");
    fact_text(facts, "source", row->source);
    fact_text(facts, "status", row_status_names[row->status]);
    fact_text(facts, "note", row->note);
}

static void flooring_in_full(struct page *page, const struct flooring *row)
{
    page_heading(page, 2, "%s", row->id);
    struct page_facts *facts = page_facts_begin(page);
    fact_text(facts, "name", row->name);
    page_fact(facts, "kind", "", "%s%s", flooring_kind_names[row->kind], row->tiles ? ", tiles" : "");
    fact_number(facts, "thickness", row->thickness_mm, "mm");
    fact_number(facts, "mass", row->mass_kg_m2, "kg/m2");
    fact_number(facts, "ΔLw", row->delta_Lw_dB, "dB");
    fact_number(facts, "cost", row->cost_per_m2, "per m2");
    fact_text(facts, "source", row->source);
    fact_text(facts, "status", row_status_names[row->status]);
    fact_text(facts, "note", row->note);
}

static void underlay_table(struct page *page, const struct objects *rows)
{
    static const char *const headings[] = {"underlay", "s' MN/m3", "mm", "loaded", "form", "status"};
    static const bool right[] = {false, true, true, true, false, false};
    struct arena *arena = page->arena;
    const struct underlay *row = rows->at;
    struct page_table *table = page_table(page, 6, headings, right);
    for (size_t i = 0; i < rows->count; i++) {
        const char *cells[] = {row[i].id,
                               phrase_fixed(arena, row[i].dynamic_stiffness_MN_m3, 1, ""),
                               phrase_short(arena, row[i].thickness_mm, ""),
                               phrase_short(arena, row[i].loaded_thickness_mm, ""),
                               underlay_form_names[row[i].form],
                               row_status_names[row[i].status]};
        page_row(table, cells);
    }
}

static void screed_table(struct page *page, const struct objects *rows)
{
    static const char *const headings[] = {"screed", "kind", "dry kg/m3", "wet kg/m3", "mm", "status"};
    static const bool right[] = {false, false, true, true, true, false};
    struct arena *arena = page->arena;
    const struct screed *row = rows->at;
    struct page_table *table = page_table(page, 6, headings, right);
    for (size_t i = 0; i < rows->count; i++) {
        const char *cells[] = {row[i].id,
                               arena_printf(arena, "%s %s", screed_kind_names[row[i].kind], row[i].strength_class),
                               phrase_short(arena, row[i].dry_density_kg_m3, ""),
                               phrase_short(arena, row[i].wet_density_kg_m3, ""),
                               arena_printf(arena, "%s-%s", phrase_short(arena, row[i].thinnest_mm, ""),
                                            phrase_short(arena, row[i].thickest_mm, "")),
                               row_status_names[row[i].status]};
        page_row(table, cells);
    }
}

static void flooring_table(struct page *page, const struct objects *rows)
{
    static const char *const headings[] = {"flooring", "kind", "mm", "ΔLw dB", "status"};
    static const bool right[] = {false, false, true, true, false};
    struct arena *arena = page->arena;
    const struct flooring *row = rows->at;
    struct page_table *table = page_table(page, 5, headings, right);
    for (size_t i = 0; i < rows->count; i++) {
        const char *cells[] = {row[i].id, flooring_kind_names[row[i].kind],
                               phrase_short(arena, row[i].thickness_mm, ""),
                               phrase_short(arena, row[i].delta_Lw_dB, ""), row_status_names[row[i].status]};
        page_row(table, cells);
    }
}

void page_of_catalogue(struct page *page, const struct catalogue *catalogue, bool in_full)
{
    page_heading(page, 1, "Catalogue");
    if (!in_full) {
        underlay_table(page, &catalogue->underlays);
        screed_table(page, &catalogue->screeds);
        flooring_table(page, &catalogue->floorings);
        return;
    }
    for (size_t i = 0; i < catalogue->underlays.count; i++)
        underlay_in_full(page, (const struct underlay *)catalogue->underlays.at + i);
    for (size_t i = 0; i < catalogue->screeds.count; i++)
        screed_in_full(page, (const struct screed *)catalogue->screeds.at + i);
    for (size_t i = 0; i < catalogue->floorings.count; i++)
        flooring_in_full(page, (const struct flooring *)catalogue->floorings.at + i);
}

static void thickness_table(struct page *page, const struct thickness_rules *rules)
{
    static const char *const headings[] = {"kind", "class", "kN/m2", "kN", "c mm", "least mm", "status"};
    static const bool right[] = {false, false, true, true, true, true, false};
    struct arena *arena = page->arena;
    const struct usc_thickness_row *row = rules->rows.at;
    page_heading(page, 2, "%s", rules->id);
    page_paragraph(page, "%s", rules->name ? rules->name : "");
    if (rules->note)
        page_paragraph(page, "%s", rules->note);
    struct page_table *table = page_table(page, 7, headings, right);
    for (size_t i = 0; i < rules->rows.count; i++) {
        const char *cells[] = {row[i].kind,
                               row[i].strength_class,
                               phrase_short(arena, row[i].area_load_kN_m2, ""),
                               phrase_short(arena, row[i].point_load_kN, ""),
                               phrase_short(arena, row[i].compressibility_mm, ""),
                               phrase_short(arena, row[i].thickness_mm, ""),
                               row_status_names[row[i].status]};
        page_row(table, cells);
    }
}

void page_of_practice(struct page *page, const struct practice *practice)
{
    static const char *const headings[] = {"rule", "value", "in words", "status"};
    static const bool right[] = {false, true, false, false};
    struct arena *arena = page->arena;
    const struct practice_rule *rule = practice->rules.at;
    page_heading(page, 1, "Rules of practice");
    struct page_table *table = page_table(page, 4, headings, right);
    for (size_t i = 0; i < practice->rules.count; i++) {
        const char *cells[] = {rule[i].id, phrase_short(arena, rule[i].value, rule[i].unit ? rule[i].unit : ""),
                               rule[i].text, row_status_names[rule[i].status]};
        page_row(table, cells);
    }
    for (size_t i = 0; i < practice->thickness.count; i++)
        thickness_table(page, (const struct thickness_rules *)practice->thickness.at + i);
}
