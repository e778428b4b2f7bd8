/* The page of design. */
#include <math.h>
#include <string.h>

#include "report/pages.h"
#include "report/phrase.h"

static const char *reason_text_of(const char *name)
{
    for (int i = 0; i < REASON_COUNT; i++)
        if (!strcmp(reason_names[i], name))
            return reason_texts[i];
    return name;
}

/* As drawn, and what is wrong with it. */
static void drawn_paragraph(struct page *page, const struct design_room *room)
{
    const char *fails = "";
    if (!room->drawn)
        return;
    for (size_t i = 0; i < room->drawn_fails.count; i++)
        fails = arena_printf(page->arena, "%s%s%s", fails, i ? "; " : "", room->drawn_fails.at[i]);
    if (room->drawn_fails.count)
        page_paragraph(page, "As drawn (%s): FAILS: %s.", room->drawn, fails);
    else if (isnan(room->drawn_margin_dB))
        page_paragraph(page, "As drawn (%s): passes.", room->drawn);
    else
        page_paragraph(page, "As drawn (%s): passes, %s to spare.", room->drawn,
                       phrase_dB(page->arena, room->drawn_margin_dB));
}

static void choices_table(struct page *page, const struct design_room *room, int most, bool costs)
{
    static const char *const headings[] = {"",          "underlay",   "screed",    "screed mm",
                                           "height mm", "load kN/m2", "margin dB", "cost"};
    static const bool right[] = {true, false, false, true, true, true, true, true};
    struct arena *arena = page->arena;
    const struct design_choice *choice = room->choices.at;
    struct page_table *table = page_table(page, costs ? 8 : 7, headings, right);
    bool outside = false;
    for (size_t i = 0; i < room->choices.count && i < (size_t)most; i++) {
        outside |= !choice[i].in_published_range;
        const char *cells[] = {arena_printf(arena, "%zu", i + 1),
                               choice[i].underlay,
                               choice[i].screed,
                               phrase_short(arena, choice[i].thickness_mm, ""),
                               phrase_short(arena, choice[i].height_mm, ""),
                               phrase_fixed(arena, choice[i].wet_load_kN_m2, 2, ""),
                               arena_printf(arena, "%s%s", choice[i].in_published_range ? "" : "* ",
                                            phrase_fixed(arena, choice[i].margin_dB, 1, "")),
                               phrase_fixed(arena, choice[i].cost_per_m2, 2, "")};
        page_row(table, cells);
    }
    if (outside)
        page_warning(page, "* outside the published range of the formula for ΔLw: uncertain; --strict leaves it out.");
}

static void best_paragraph(struct page *page, const struct design_room *room)
{
    struct arena *arena = page->arena;
    const struct design_choice *best = room->choices.at;
    page_paragraph(
        page,
        "The first: %s under %s of %s, %s in all. s' %s on %s gives f0 %s and ΔLw %s; L'n,w %s%s%s. %s "
        "at least %s above the slab%s.",
        best->underlay, phrase_short(arena, best->thickness_mm, "mm"), best->screed,
        phrase_short(arena, best->height_mm, "mm"), phrase_fixed(arena, best->stiffness_MN_m3, 1, "MN/m3"),
        phrase_short(arena, best->screed_mass_kg_m2, "kg/m2"), phrase_fixed(arena, best->f0_Hz, 1, "Hz"),
        phrase_dB(arena, best->delta_Lw_dB), phrase_dB(arena, best->L_prime_n_w_dB),
        isnan(best->L_prime_nT_w_dB) ? "" : ", L'nT,w ",
        isnan(best->L_prime_nT_w_dB) ? "" : phrase_dB(arena, best->L_prime_nT_w_dB),
        best->turned_up ? "Turn the underlay up" : "Set an edge strip", phrase_short(arena, best->upstand_mm, "mm"),
        best->turned_up && best->edge_strip_needed ? "; it yields too little to be the edge strip, so set one as well"
                                                   : "");
    if (!strcmp(best->screed_kind, "AS"))
        page_warning(page,
                     "Mastic asphalt is laid at over 200 °C: it burns, gives off fumes and can set fire to what it "
                     "touches; only trained crews, and only on underlays that bear the heat.");
}

static void rejected_table(struct page *page, const struct design_room *room)
{
    static const char *const headings[] = {"not chosen because", "count", "nearest miss"};
    static const bool right[] = {false, true, false};
    struct arena *arena = page->arena;
    const struct design_rejected *rejected = room->rejected.at;
    struct page_table *table = page_table(page, 3, headings, right);
    for (size_t i = 0; i < room->rejected.count; i++) {
        const struct nearest_miss *miss = rejected[i].nearest;
        const char *nearest = "each fails something else too";
        if (miss) /* a reason without a measure says nothing that the first column does not */
            nearest = arena_printf(arena, "%s%s%s, %s %s", *miss->unit ? miss->text : "", *miss->unit ? ": " : "",
                                   miss->underlay, miss->screed, phrase_short(arena, miss->thickness_mm, "mm"));
        const char *cells[] = {reason_text_of(rejected[i].reason), phrase_short(arena, rejected[i].count, ""), nearest};
        page_row(table, cells);
    }
    if (room->beaten > 0) {
        const char *cells[] = {"another choice beats it", phrase_short(arena, room->beaten, ""), ""};
        page_row(table, cells);
    }
}

void page_of_design(struct page *page, const struct project *project, const struct design_options *options,
                    const struct design *design, int most)
{
    struct arena *arena = page->arena;
    const struct design_room *room = design->rooms.at;
    page_heading(page, 1, "%s", project->name ? project->name : "Choice of floating floors");
    if (project->note)
        page_paragraph(page, "%s", project->note);
    page_paragraph(page, "Simplified model of EN ISO 12354-2, K by %s. Best first by %s%s.", K_by_names[options->K_by],
                   rank_by_names[options->rank_by],
                   options->strict ? "; formulas only within their published range" : "");
    for (size_t i = 0; i < design->rooms.count; i++) {
        bool costs = room[i].choices.count && !isnan(((const struct design_choice *)room[i].choices.at)->cost_per_m2);
        page_heading(page, 2, "%s", room[i].name);
        drawn_paragraph(page, &room[i]);
        if (room[i].choices.count) {
            page_paragraph(page, "%zu choices that no other beats, of %s examined:", room[i].choices.count,
                           phrase_short(arena, room[i].examined, ""));
            choices_table(page, &room[i], most, costs);
            best_paragraph(page, &room[i]);
        } else {
            page_warning(page, "NO build-up meets every constraint (%s examined).",
                         phrase_short(arena, room[i].examined, ""));
        }
        rejected_table(page, &room[i]);
    }
}
