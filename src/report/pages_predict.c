/* The page of predict. */
#include <ctype.h>
#include <math.h>
#include <string.h>

#include "report/pages.h"
#include "report/phrase.h"

static const char *bounds_phrase(struct arena *arena, const struct warning_record *warning)
{
    struct quantity range = {"", "", warning->unit, isnan(warning->lowest) ? -INFINITY : warning->lowest,
                             isnan(warning->highest) ? INFINITY : warning->highest};
    return range_phrase(arena, &range);
}

static void floor_facts(struct page_facts *facts, struct arena *arena, const struct room_prediction *room)
{
    const char *under = room->flooring ? arena_printf(arena, ", under %s", room->flooring) : "";
    if (!room->screed) {
        page_fact(facts, "floor", "bare slab", "no floating floor%s", under);
        return;
    }
    page_fact(facts, "screed", phrase_short(arena, room->screed_thickness_mm, "mm"), "%s, %s dry%s", room->screed,
              phrase_short(arena, room->screed_mass_kg_m2, "kg/m2"), under);
    page_fact(facts, "underlay", phrase_fixed(arena, room->stiffness_MN_m3, 1, "MN/m3"), "%s",
              room->underlay ? room->underlay : "");
    if (!isnan(room->height_mm))
        page_fact(facts, "height", phrase_short(arena, room->height_mm, "mm"), "with an added wet load of %s",
                  phrase_fixed(arena, room->wet_load_kN_m2, 2, "kN/m2"));
    page_fact(facts, "f0", phrase_fixed(arena, room->f0_Hz, 1, "Hz"), "mass-spring resonance");
}

static void level_facts(struct page_facts *facts, struct arena *arena, const struct room_prediction *room)
{
    const char *slab = isnan(room->slab_mass_kg_m2) ? "measured" : phrase_short(arena, room->slab_mass_kg_m2, "kg/m2");
    page_fact(facts, "Ln,w,eq", phrase_dB(arena, room->Ln_eq_w_dB), "bare slab, %s", slab);
    if (isnan(room->delta_Lw_rated_dB))
        page_fact(facts, "ΔLw", phrase_dB(arena, room->delta_Lw_dB), "%s", delta_Lw_by_names[room->delta_Lw_by]);
    else
        page_fact(facts, "ΔLw", phrase_dB(arena, room->delta_Lw_dB), "by %s; %s by rating of the spectrum",
                  delta_Lw_by_names[room->delta_Lw_by], phrase_dB(arena, room->delta_Lw_rated_dB));
    if (room->KT_dB > 0)
        page_fact(facts, "KT", phrase_dB(arena, room->KT_dB), "position of the receiving room");
    else if (isnan(room->mean_flanking_mass_kg_m2))
        page_fact(facts, "K", phrase_dB(arena, room->K_dB), "no massive wall without lining");
    else
        page_fact(facts, "K", phrase_dB(arena, room->K_dB), "by %s, mean flanking mass %s", K_by_names[room->K_by],
                  phrase_up_to(arena, room->mean_flanking_mass_kg_m2, 1, "kg/m2"));
    page_fact(facts, "L'n,w", phrase_dB(arena, room->L_prime_n_w_dB), NULL);
    if (!isnan(room->L_prime_nT_w_dB))
        page_fact(facts, "L'nT,w", phrase_dB(arena, room->L_prime_nT_w_dB), "receiving room of %s",
                  phrase_short(arena, room->volume_m3, "m3"));
    if (!isnan(room->delta_Rw_dB))
        page_fact(facts, "ΔRw", phrase_dB(arena, room->delta_Rw_dB), "of the same floor for airborne sound");
}

static const char *descriptor_symbol(const char *name)
{
    for (int i = 0; i < DESCRIPTOR_COUNT; i++)
        if (!strcmp(descriptor_names[i], name))
            return descriptor_symbols[i];
    return name;
}

static void verdict_line(struct page *page, const struct room_prediction *room)
{
    struct arena *arena = page->arena;
    if (!room->limit) {
        page_paragraph(page, "No requirement is stated for this room.");
        return;
    }
    const char *allowance = room->allowance_dB > 0
                                ? arena_printf(arena, " with an allowance of %s", phrase_dB(arena, room->allowance_dB))
                                : "";
    page_paragraph(page, "%s: %s %s %s%s (%s), %s %s.", room->meets_limit == ANSWER_YES ? "Met" : "NOT met",
                   descriptor_symbol(room->limit->descriptor),
                   !strcmp(room->limit->sense, "at_most") ? "at most" : "at least",
                   phrase_short(arena, room->limit->value_dB, "dB"), allowance,
                   room->limit->id ? room->limit->id : "own requirement", phrase_dB(arena, fabs(room->margin_dB)),
                   room->margin_dB < 0 ? "too loud" : "to spare");
}

/* What the model assumed; a word in capitals at the head marks what must not be overlooked. */
static void notes(struct page *page, const struct texts *notes)
{
    for (size_t i = 0; i < notes->count; i++) {
        if (isupper((unsigned char)notes->at[i][0]))
            page_warning(page, "%s.", notes->at[i]);
        else
            page_bullet(page, "%s", notes->at[i]);
    }
}

static void working_list(struct page *page, const struct working *working)
{
    struct arena *arena = page->arena;
    for (const struct step *step = working->first_step; step; step = step->next) {
        const struct formula *formula = step->formula;
        const char *where = step->result_count > 1 ? " (shown at the last band)" : "";
        page_bullet(page, "%s = %s = %s%s. %s", formula->result.symbol, step_with_numbers(arena, step),
                    phrase_fixed(arena, step->result, 2, formula->result.unit), where,
                    phrase_source(arena, &formula->source));
    }
}

static void spectrum_table(struct page *page, const struct band_record *bands)
{
    static const char *const headings[] = {"f, Hz", "ΔL, dB", "f, Hz", "ΔL, dB", "f, Hz", "ΔL, dB"};
    static const bool right[] = {true, true, true, true, true, true};
    size_t rows = (bands->frequency_Hz.count + 2) / 3;
    struct page_table *table = page_table(page, 6, headings, right);
    for (size_t i = 0; i < rows; i++) {
        const char *cells[6] = {"", "", "", "", "", ""};
        for (size_t j = 0; j < 3 && i + j * rows < bands->frequency_Hz.count; j++) {
            cells[2 * j] = phrase_short(page->arena, bands->frequency_Hz.at[i + j * rows], "");
            cells[2 * j + 1] = phrase_fixed(page->arena, bands->delta_L_dB.at[i + j * rows], 1, "");
        }
        page_row(table, cells);
    }
}

static void summary_table(struct page *page, const struct prediction *prediction)
{
    static const char *const headings[] = {"room", "build-up", "L'n,w", "L'nT,w", "margin", ""};
    static const bool right[] = {false, false, true, true, true, false};
    const struct room_prediction *room = prediction->rooms.at;
    if (prediction->rooms.count < 2)
        return;
    struct page_table *table = page_table(page, 6, headings, right);
    for (size_t i = 0; i < prediction->rooms.count; i++) {
        const char *cells[] = {room[i].name,
                               room[i].build_up ? room[i].build_up : "bare slab",
                               phrase_fixed(page->arena, room[i].L_prime_n_w_dB, 1, ""),
                               phrase_fixed(page->arena, room[i].L_prime_nT_w_dB, 1, ""),
                               phrase_fixed(page->arena, room[i].margin_dB, 1, ""),
                               room[i].meets_limit == ANSWER_YES  ? "met"
                               : room[i].meets_limit == ANSWER_NO ? "NOT met"
                                                                  : ""};
        page_row(table, cells);
    }
}

static void warnings(struct page *page, const struct prediction *prediction)
{
    const struct warning_record *warning = prediction->warnings.at;
    for (size_t i = 0; i < prediction->warnings.count; i++) {
        const char *rooms = "";
        for (size_t j = 0; j < warning[i].rooms.count && j < 4; j++)
            rooms = arena_printf(page->arena, "%s%s%s", rooms, j ? ", " : "", warning[i].rooms.at[j]);
        if (warning[i].rooms.count > 4)
            rooms = arena_printf(page->arena, "%s and %zu more", rooms, warning[i].rooms.count - 4);
        page_warning(page, "%s: %s = %s lies outside the published range, %s (%s).", warning[i].formula,
                     warning[i].quantity, phrase_short(page->arena, warning[i].value, warning[i].unit),
                     bounds_phrase(page->arena, &warning[i]), rooms);
    }
}

void page_of_prediction(struct page *page, const struct project *project, const struct predict_options *options,
                        const struct prediction *prediction)
{
    const struct room_prediction *room = prediction->rooms.at;
    page_heading(page, 1, "%s", project->name ? project->name : "Prediction of impact sound");
    if (project->note)
        page_paragraph(page, "%s", project->note);
    page_paragraph(page, "Simplified model of EN ISO 12354-2, K by %s.", K_by_names[options->K_by]);
    for (size_t i = 0; i < prediction->rooms.count; i++) {
        page_heading(page, 2, "%s", room[i].name);
        struct page_facts *facts = page_facts_begin(page);
        floor_facts(facts, page->arena, &room[i]);
        level_facts(facts, page->arena, &room[i]);
        verdict_line(page, &room[i]);
        notes(page, &room[i].notes);
        if (options->working) {
            page_heading(page, 3, "Working");
            working_list(page, &room[i].working);
            if (room[i].bands)
                spectrum_table(page, room[i].bands);
        }
    }
    if (prediction->rooms.count > 1)
        page_heading(page, 2, "All rooms");
    summary_table(page, prediction);
    warnings(page, prediction);
}

void page_of_cautions(struct page *page)
{
    page_paragraph(page, "A prediction is not a measurement; workmanship decides. The added load needs a structural "
                         "engineer's word. Local codes and licensed practice come before anything printed here.");
}

void page_of_data(struct page *page, const struct data *data)
{
    const struct data_document *document = data->documents.at;
    for (size_t i = 0; i < data->documents.count; i++)
        if (strcmp(document[i].origin, "built in"))
            page_paragraph(page, "Data from %s stand before what is built in.", document[i].origin);
}
