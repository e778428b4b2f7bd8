/* A measurement against the prediction of a room of a project. */
#include "study/compare_project.h"

#include <string.h>

#include "base/problem.h"
#include "study/level_below.h"

const struct room *compare_find_room(const struct project *project, const char *name, struct arena *arena,
                                     const char **complaint)
{
    const struct room *room = project->rooms.at, *found = NULL;
    size_t const count = project->rooms.count;
    if (!name && count == 1)
        return room;
    if (!name) {
        *complaint = arena_printf(arena, "the project has %zu rooms; --room names the one that was measured", count);
        return NULL;
    }
    const char **known = arena_take_many(arena, count, sizeof *known);
    for (size_t i = 0; i < count; i++) {
        known[i] = room[i].name;
        if (!strcmp(name, room[i].name))
            found = &room[i];
    }
    const char *near = found ? NULL : nearest_name(name, known, count);
    if (!found)
        *complaint = arena_printf(arena, "--room: the project has no room \"%s\"%s%s%s", name,
                                  near ? "; did you mean \"" : "", near ? near : "", near ? "\"?" : "");
    return found;
}

/* Why this measurement cannot be compared; NULL when it can. */
static const char *unfit(const struct measurement *measurement, const struct room *room)
{
    if (measurement->octave)
        return "octaves are too coarse to tell causes apart: measure in third octaves";
    if (measurement->quantity == MEASURED_DELTA_L)
        return "an improvement says nothing of a room: L'n or L'nT is needed";
    if (measurement->quantity == MEASURED_LN)
        return "a laboratory level Ln says nothing of a room: L_prime_n_dB or L_prime_nT_dB is needed";
    if (measurement->quantity == MEASURED_L_PRIME_NT && isnan(receiving_volume_m3(room->below)))
        return "L'nT is compared with the room's volume: give below.volume_m3 in the project";
    return NULL;
}

static void add_evidence(struct comparison *comparison, struct arena *arena, const char *sentence)
{
    struct texts *evidence = &comparison->evidence;
    const char **longer = arena_take_many(arena, evidence->count + 1, sizeof *longer);
    if (evidence->count)
        memcpy(longer, evidence->at, evidence->count * sizeof *longer);
    longer[evidence->count] = sentence;
    *evidence = (struct texts){longer, evidence->count + 1};
}

bool compare_room_with(const struct project *project, const struct room *room, const struct practice *practice,
                       enum K_by K_by, const struct measurement *measurement, struct arena *arena,
                       struct comparison *comparison, const char **complaint)
{
    struct held_to held = {.volume_rule = VOLUME_0_032_V};
    struct stack stack;
    struct floor_effect effect;
    struct measured_bands bands = {.quantity = measurement->quantity == MEASURED_L_PRIME_N ? COMPARE_L_PRIME_N
                                                                                           : COMPARE_L_PRIME_NT};
    *complaint = unfit(measurement, room);
    if (*complaint)
        return false;
    held_to_of(project, room, &held);
    struct bare_room const building = bare_room_of(room, K_by, (enum volume_rule)held.volume_rule, NULL);
    struct compare_room factors = {.building = &building, .law = USC_LAW_MINERAL};
    const struct build_up *build_up = room->found_build_up;
    if (floats(build_up)) {
        stack_of(build_up->found_underlay, (int)build_up->underlays.count, &stack, NULL);
        floor_effect_of(&stack, build_up->screed->found, build_up->screed->thickness_mm, build_up->found_flooring,
                        practice_number(practice, PRACTICE_TEST_REPORT_MASS_PERCENT), NULL, &effect);
        factors.effect = &effect;
        factors.law = (enum usc_improvement_law)build_up->screed->found->law;
    }
    memcpy(bands.level_dB, measurement->value_dB, sizeof bands.level_dB);
    memcpy(bands.has, measurement->has, sizeof bands.has);
    if (study_compare(&factors, &bands, NULL, arena, comparison) < 0) {
        *complaint = "the measurement lacks a band between 100 and 3150 Hz";
        return false;
    }
    if (factors.effect && effect.delta_Lw_by == DELTA_LW_BY_COVERING)
        add_evidence(comparison, arena,
                     "The soft covering governs the predicted single number; the bands hold the floating floor alone.");
    return true;
}
