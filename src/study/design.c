/* Chooses build-ups: every candidate in every room, or one for all rooms, and what is told about them. */
#include "study/design.h"

#include "base/parallel.h"
#include "study/search.h"

/* Rooms are searched in blocks, so that the fronts of one block serve the next. */
enum { BLOCK_ROOMS = 64, FIRST_FRONT = 256, FRONT_GROWTH = 8 };

struct study {
    const struct project *project;
    const struct practice *practice;
    const struct design_options *options;
    struct search search;
    struct room_terms *terms; /* of every room */
    struct arena *arena;
};

static bool any_heated(const struct group *group)
{
    for (size_t i = 0; i < group->room_count; i++)
        if (group->rooms[i].heating_pipe_mm > 0)
            return true;
    return false;
}

static void describe_choice(const struct study *study, const struct group *group, size_t order,
                            const struct flooring *flooring, struct design_choice *choice)
{
    const struct search *search = &study->search;
    size_t const stack_index = order / search->pour_count;
    const struct stack *stack = &search->stacks.at[stack_index];
    const struct pour *pour = &search->pours[order % search->pour_count];
    struct judged const judged = search_judge(search, group, order);
    struct floor_effect floating;
    floating_floor_of(stack, pour->screed, pour->thickness_mm,
                      practice_number(study->practice, PRACTICE_TEST_REPORT_MASS_PERCENT), NULL, &floating);
    *choice = (struct design_choice){
        .underlay = search->stacks.names[stack_index],
        .screed = pour->screed->id,
        .screed_kind = screed_kind_names[pour->screed->kind],
        .thickness_mm = pour->thickness_mm,
        .height_mm = judged.height_mm,
        .mass_kg_m2 = judged.mass_kg_m2,
        .wet_load_kN_m2 = judged.wet_load_kN_m2,
        .stiffness_MN_m3 = stack->stiffness_MN_m3,
        .f0_Hz = floating.f0_Hz,
        .delta_Lw_dB = judged.delta_Lw_dB,
        .L_prime_n_w_dB = judged.level.L_prime_n_w_dB,
        .L_prime_nT_w_dB = judged.level.L_prime_nT_w_dB,
        .margin_dB = judged.verdict.margin_dB,
        .cost_per_m2 = candidate_cost_per_m2(stack, pour->screed, pour->thickness_mm),
        .upstand_mm = candidate_upstand_mm(study->practice, stack, pour->thickness_mm, flooring),
        .screed_mass_kg_m2 = floating.screed_mass_kg_m2,
        .in_published_range = !floating.out_of_range,
        .turned_up = stack->layer[0]->form == FORM_ROLL,
        .edge_strip_needed = candidate_edge_strip_needed(study->practice, stack, any_heated(group)),
        .stack_index = (int)stack_index,
        .screed_index = pour->screed_index,
        .order = (int)order,
    };
}

/* The thickest flooring decides the upstand. */
static const struct flooring *thickest_flooring(const struct room rooms[], size_t count)
{
    const struct flooring *thickest = NULL;
    for (size_t i = 0; i < count; i++) {
        const struct flooring *flooring = flooring_of(&rooms[i]);
        if (flooring && (!thickest || flooring->thickness_mm > thickest->thickness_mm))
            thickest = flooring;
    }
    return thickest;
}

static struct nearest_miss *describe_nearest(const struct study *study, const struct near_miss *near, int reason)
{
    const struct search *search = &study->search;
    const struct pour *pour = &search->pours[near->order % search->pour_count];
    struct nearest_miss *nearest = arena_take(study->arena, sizeof *nearest);
    *nearest = (struct nearest_miss){
        .underlay = search->stacks.names[near->order / search->pour_count],
        .screed = pour->screed->id,
        .unit = reason_units[reason],
        .text = reason_told(reason, near->shortfall, study->arena),
        .thickness_mm = pour->thickness_mm,
        .shortfall = *reason_units[reason] ? near->shortfall : NAN,
    };
    return nearest;
}

static struct objects describe_rejected(const struct study *study, const struct group *group)
{
    struct design_rejected *rejected = arena_take_many(study->arena, REASON_COUNT, sizeof *rejected);
    size_t count = 0;
    for (int i = 0; i < REASON_COUNT; i++)
        if (group->rejected[i] > 0)
            rejected[count++] = (struct design_rejected){
                .reason = reason_names[i],
                .count = group->rejected[i],
                .nearest = group->nearest[i].any ? describe_nearest(study, &group->nearest[i], i) : NULL,
            };
    return (struct objects){rejected, count};
}

/* rooms: those of the group. */
static void describe_group(const struct study *study, const struct group *group, const struct room rooms[],
                           const char *name, struct design_room *record)
{
    size_t const count = group->front.count;
    const struct flooring *flooring = thickest_flooring(rooms, group->room_count);
    struct design_choice *choices = arena_take_many(study->arena, count, sizeof *choices);
    for (size_t i = 0; i < count; i++)
        describe_choice(study, group, group->front.at[i].order, flooring, &choices[i]);
    choices_rank(choices, count, study->options->rank_by, study->arena);
    *record = (struct design_room){
        .name = name,
        .examined = group->examined,
        .beaten = group->front.beaten,
        .choices = {choices, count},
        .rejected = describe_rejected(study, group),
        .drawn_margin_dB = NAN,
        .meets = count > 0 ? ANSWER_YES : ANSWER_NO,
    };
}

/* A build-up without a floating floor has no thickness, stack or screed that a rule could speak of: sound alone. */
static unsigned judge_drawn_bare(const struct room_terms *terms, double shortfall[REASON_COUNT], double *margin_dB)
{
    struct level_below const level = level_below_of(&terms->bare, terms->covering_dB);
    struct verdict const verdict =
        verdict_of(terms->is_held ? &terms->held : NULL, level.L_prime_n_w_dB, level.L_prime_nT_w_dB);
    *margin_dB = verdict.margin_dB;
    if (verdict.answer != ANSWER_NO)
        return 0;
    shortfall[REASON_SOUND] = -verdict.margin_dB;
    return 1u << REASON_SOUND;
}

static unsigned judge_drawn(const struct study *study, const struct room *room, double shortfall[REASON_COUNT],
                            double *margin_dB)
{
    const struct build_up *build_up = room->found_build_up;
    struct candidate const candidate = {
        .layer = build_up->found_underlay,
        .layer_count = (int)build_up->underlays.count,
        .screed = build_up->screed->found,
        .thickness_mm = build_up->screed->thickness_mm,
        .flooring = flooring_of(room),
    };
    struct examined examined;
    candidate_examine(study->project, room, study->practice, study->options, &candidate, &examined);
    for (int i = 0; i < REASON_COUNT; i++)
        shortfall[i] = examined.shortfall[i];
    *margin_dB = examined.verdict.margin_dB;
    return examined.fails;
}

static void describe_drawn(const struct study *study, const struct room *room, const struct room_terms *terms,
                           struct design_room *record)
{
    if (!room->found_build_up)
        return;
    double shortfall[REASON_COUNT] = {0};
    unsigned const fails = floats(room->found_build_up) ? judge_drawn(study, room, shortfall, &record->drawn_margin_dB)
                                                        : judge_drawn_bare(terms, shortfall, &record->drawn_margin_dB);
    record->drawn = room->found_build_up->id;
    if (!fails)
        return;
    record->drawn_fails.at = arena_take_many(study->arena, REASON_COUNT, sizeof *record->drawn_fails.at);
    for (int i = 0; i < REASON_COUNT; i++)
        if (fails >> i & 1)
            record->drawn_fails.at[record->drawn_fails.count++] = reason_told(i, shortfall[i], study->arena);
}

struct block {
    const struct search *search;
    struct group *groups;
    bool done[BLOCK_ROOMS];
};

static void search_one(void *context, size_t index)
{
    struct block *block = context;
    if (block->done[index])
        return;
    search_group(block->search, &block->groups[index]);
    block->done[index] = !block->groups[index].front.full;
}

/* Inside the parallel loop nothing may allocate; groups whose front grew full get more room and go again. */
static void search_block(const struct study *study, struct group groups[], size_t count)
{
    struct block block = {.search = &study->search, .groups = groups};
    for (bool again = true; again;) {
        parallel_for(count, search_one, &block);
        again = false;
        for (size_t i = 0; i < count; i++) {
            if (block.done[i])
                continue;
            struct front *front = &groups[i].front;
            front->room *= FRONT_GROWTH;
            front->at = arena_take_many(study->arena, front->room, sizeof *front->at);
            again = true;
        }
    }
}

static struct group *make_groups(const struct study *study, size_t count, size_t room_count)
{
    struct group *groups = arena_take_many(study->arena, count, sizeof *groups);
    for (size_t i = 0; i < count; i++) {
        groups[i].room_count = room_count;
        groups[i].pairs = arena_take_many(study->arena, room_count, sizeof *groups[i].pairs);
        groups[i].front.room = FIRST_FRONT;
        groups[i].front.at = arena_take_many(study->arena, FIRST_FRONT, sizeof *groups[i].front.at);
    }
    return groups;
}

static struct objects design_rooms(const struct study *study)
{
    const struct room *room = study->project->rooms.at;
    size_t const count = study->project->rooms.count;
    struct design_room *records = arena_take_many(study->arena, count, sizeof *records);
    struct group *groups = make_groups(study, count < BLOCK_ROOMS ? count : BLOCK_ROOMS, 1);
    for (size_t first = 0; first < count; first += BLOCK_ROOMS) {
        size_t const block = count - first < BLOCK_ROOMS ? count - first : BLOCK_ROOMS;
        for (size_t i = 0; i < block; i++)
            groups[i].rooms = &study->terms[first + i];
        search_block(study, groups, block);
        for (size_t i = 0; i < block; i++) {
            struct design_room *record = &records[first + i];
            describe_group(study, &groups[i], &room[first + i], room[first + i].name, record);
            describe_drawn(study, &room[first + i], groups[i].rooms, record);
        }
    }
    return (struct objects){records, count};
}

static struct objects design_together(const struct study *study)
{
    struct design_room *record = arena_take(study->arena, sizeof *record);
    if (study->project->rooms.count == 0)
        return (struct objects){NULL, 0};
    struct group *group = make_groups(study, 1, study->project->rooms.count);
    group->rooms = study->terms;
    search_block(study, group, 1);
    describe_group(study, group, study->project->rooms.at, "all rooms", record);
    return (struct objects){record, 1};
}

static enum answer all_meet(const struct objects *rooms)
{
    const struct design_room *record = rooms->at;
    for (size_t i = 0; i < rooms->count; i++)
        if (record[i].meets != ANSWER_YES)
            return ANSWER_NO;
    return rooms->count > 0 ? ANSWER_YES : ANSWER_NONE;
}

void study_design(const struct project *project, const struct catalogue *catalogue, const struct practice *practice,
                  const struct design_options *options, struct arena *arena, struct design *design)
{
    const struct room *room = project->rooms.at;
    struct study study = {.project = project, .practice = practice, .options = options, .arena = arena};
    search_prepare(project, catalogue, practice_number(practice, PRACTICE_TEST_REPORT_MASS_PERCENT), arena,
                   &study.search);
    study.terms = arena_take_many(arena, project->rooms.count, sizeof *study.terms);
    for (size_t i = 0; i < project->rooms.count; i++)
        room_terms_of(project, &room[i], practice, options, flooring_of(&room[i]), &study.terms[i]);
    design->rooms = options->one_build_up ? design_together(&study) : design_rooms(&study);
    design->meets = all_meet(&design->rooms);
}
