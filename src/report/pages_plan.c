/* The page of rate --plan. */
#include <math.h>

#include "report/pages.h"
#include "report/phrase.h"

static void overview(struct page *page, const struct measurement_plan *plan)
{
    static const char *const headings[] = {"", "room", "L'n,w dB", "L'nT,w dB", "margin dB", "volume m3"};
    static const bool right[] = {true, false, true, true, true, true};
    struct arena *arena = page->arena;
    const struct planned_room *room = plan->plan.at;
    struct page_table *table = page_table(page, 6, headings, right);
    for (size_t i = 0; i < plan->plan.count; i++) {
        const char *cells[] = {arena_printf(arena, "%d", room[i].rank),
                               room[i].name,
                               phrase_fixed(arena, room[i].L_prime_n_w_dB, 1, ""),
                               phrase_fixed(arena, room[i].L_prime_nT_w_dB, 1, ""),
                               phrase_fixed(arena, room[i].margin_dB, 1, ""),
                               phrase_fixed(arena, room[i].volume_m3, 1, "")};
        page_row(table, cells);
    }
}

static void page_of_room(struct page *page, const struct planned_room *room)
{
    struct arena *arena = page->arena;
    page_heading(page, 2, "%d. %s", room->rank, room->name);
    struct page_facts *facts = page_facts_begin(page);
    if (room->receiving_room)
        page_fact(facts, "receiving room", room->receiving_room, NULL);
    page_fact(facts, "build-up", room->build_up ? room->build_up : "none: the bare slab", NULL);
    if (room->flooring)
        page_fact(facts, "flooring", room->flooring, NULL);
    for (size_t i = 0; i < room->why.count; i++)
        page_fact(facts, i ? "" : "why", room->why.at[i], NULL);
    page_fact(facts, "tapping machine", arena_printf(arena, "%d positions", room->machine_positions),
              isnan(room->floor_area_m2) ? NULL : "floor %s", phrase_fixed(arena, room->floor_area_m2, 1, "m2"));
    page_fact(facts, "microphone", arena_printf(arena, "%d positions", room->microphone_positions), NULL);
    page_fact(facts, "background", arena_printf(arena, "%d readings", room->background_readings), NULL);
    page_fact(facts, "reverberation", arena_printf(arena, "%d decays", room->decays), NULL);
    if (room->corner_positions)
        page_fact(facts, "corners", arena_printf(arena, "%d positions", room->corner_positions), "50, 63 and 80 Hz");
    for (size_t i = 0; i < room->remarks.count; i++)
        page_bullet(page, "%s", room->remarks.at[i]);
}

void page_of_plan(struct page *page, const struct project *project, const struct measurement_plan *plan)
{
    const struct planned_room *room = plan->plan.at;
    const struct numbers *band = &plan->frequency_Hz;
    page_heading(page, 1, "%s: rooms to measure", project->name ? project->name : "Project");
    overview(page, plan);
    page_paragraph(
        page,
        "The first is to be measured first. All positions and readings are the least number; bands %s to %s, in "
        "third octaves.",
        phrase_short(page->arena, band->at[0], ""), phrase_short(page->arena, band->at[band->count - 1], "Hz"));
    for (size_t i = 0; i < plan->plan.count; i++)
        page_of_room(page, &room[i]);
    page_heading(page, 2, "In every room");
    for (size_t i = 0; i < plan->procedure.count; i++)
        page_bullet(page, "%s", plan->procedure.at[i]);
    if (plan->left_out.count)
        page_heading(page, 2, "Rooms that others stand for");
    for (size_t i = 0; i < plan->left_out.count; i++)
        page_bullet(page, "%s", plan->left_out.at[i]);
}
