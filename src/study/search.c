#include "study/search.h"

static double override(double own, double given)
{
    return isnan(given) ? own : given;
}

/* Thicknesses are counted, not added up, so that 30 + 3 x 0.1 is the same number everywhere. */
static size_t thickness_count(double thinnest_mm, double thickest_mm, double step_mm)
{
    if (!(thickest_mm + 1e-9 >= thinnest_mm))
        return 0;
    return step_mm > 0 ? (size_t)floor((thickest_mm - thinnest_mm) / step_mm + 1e-9) + 1 : 1;
}

struct range {
    double thinnest_mm, thickest_mm, step_mm;
};

static struct range range_of(const struct screed *screed, const struct candidates *candidates)
{
    struct range range = {screed->thinnest_mm, screed->thickest_mm, screed->step_mm};
    if (candidates) {
        range.thinnest_mm = override(range.thinnest_mm, candidates->thinnest_mm);
        range.thickest_mm = override(range.thickest_mm, candidates->thickest_mm);
        range.step_mm = override(range.step_mm, candidates->step_mm);
    }
    return range;
}

static const struct texts none_named;

static void list_pours(const struct project *project, const struct catalogue *catalogue, struct arena *arena,
                       struct search *search)
{
    const struct screed *screeds = catalogue->screeds.at;
    const struct texts *allowed = project->candidates ? &project->candidates->screeds : &none_named;
    size_t room = 0;
    int screed_index = 0;
    for (size_t i = 0; i < catalogue->screeds.count; i++) {
        if (!is_allowed(allowed, screeds[i].id))
            continue;
        struct range const range = range_of(&screeds[i], project->candidates);
        size_t const count = thickness_count(range.thinnest_mm, range.thickest_mm, range.step_mm);
        for (size_t j = 0; j < count; j++) {
            if (search->pour_count == room)
                search->pours = arena_grow(arena, search->pours, search->pour_count, &room, sizeof *search->pours);
            search->pours[search->pour_count++] =
                (struct pour){&screeds[i], range.thinnest_mm + (double)j * range.step_mm, screed_index};
        }
        screed_index++;
    }
}

static bool every_cost_known(const struct search *search)
{
    for (size_t i = 0; i < search->stacks.count; i++)
        if (isnan(search->stacks.at[i].cost_per_m2))
            return false;
    for (size_t i = 0; i < search->pour_count; i++)
        if (isnan(search->pours[i].screed->cost_per_m3))
            return false;
    return true;
}

void search_prepare(const struct project *project, const struct catalogue *catalogue, double report_mass_percent,
                    struct arena *arena, struct search *search)
{
    *search = (struct search){0};
    search->stacks = stacks_of(catalogue, project->candidates ? &project->candidates->underlays : &none_named, arena);
    list_pours(project, catalogue, arena, search);
    search->by_cost = every_cost_known(search);
    struct floating *floating = arena_take_many(arena, search->stacks.count, search->pour_count * sizeof *floating);
    search->floating = floating;
    for (size_t i = 0; i < search->stacks.count; i++)
        for (size_t j = 0; j < search->pour_count; j++) {
            struct floor_effect effect;
            floating_floor_of(&search->stacks.at[i], search->pours[j].screed, search->pours[j].thickness_mm,
                              report_mass_percent, NULL, &effect);
            *floating++ = (struct floating){effect.delta_Lw_dB, effect.out_of_range};
        }
}

/* Takes what a further room says of the same candidate. */
static void join(struct judged *all, const struct judged *one)
{
    all->fails |= one->fails;
    for (int i = 0; i < REASON_COUNT; i++)
        all->excess[i] = fmax(all->excess[i], one->excess[i]);
    all->height_mm = fmax(all->height_mm, one->height_mm);
    all->mass_kg_m2 = fmax(all->mass_kg_m2, one->mass_kg_m2);
    all->wet_load_kN_m2 = fmax(all->wet_load_kN_m2, one->wet_load_kN_m2);
    all->delta_Lw_dB = fmin(all->delta_Lw_dB, one->delta_Lw_dB);
    all->level.L_prime_n_w_dB = fmax(all->level.L_prime_n_w_dB, one->level.L_prime_n_w_dB);
    all->level.L_prime_nT_w_dB = fmax(all->level.L_prime_nT_w_dB, one->level.L_prime_nT_w_dB);
    all->verdict.margin_dB = fmin(all->verdict.margin_dB, one->verdict.margin_dB);
}

/* The pairs of the group are those of this candidate's stack and screed. */
static inline void judge_in_all(const struct search *search, const struct group *group, size_t order,
                                struct judged *judged)
{
    const struct stack *stack = &search->stacks.at[order / search->pour_count];
    const struct pour *pour = &search->pours[order % search->pour_count];
    for (size_t i = 0; i < group->room_count; i++) {
        struct judged one;
        candidate_judge(&group->rooms[i], &group->pairs[i], stack, pour->screed, pour->thickness_mm,
                        search->floating[order], i == 0 ? judged : &one);
        if (i > 0)
            join(judged, &one);
    }
}

static void take_pairs(const struct search *search, const struct group *group, size_t order)
{
    const struct stack *stack = &search->stacks.at[order / search->pour_count];
    for (size_t i = 0; i < group->room_count; i++)
        pair_terms_of(&group->rooms[i], stack, search->pours[order % search->pour_count].screed, &group->pairs[i]);
}

struct judged search_judge(const struct search *search, const struct group *group, size_t order)
{
    struct judged judged;
    take_pairs(search, group, order);
    judge_in_all(search, group, order, &judged);
    return judged;
}

static void reject(struct group *group, const struct judged *judged, size_t order)
{
    int const reason = __builtin_ctz(judged->fails);
    group->rejected[reason]++;
    if ((judged->fails & (judged->fails - 1)) != 0)
        return; /* fails something else too */
    struct near_miss *nearest = &group->nearest[reason];
    double const shortfall = *reason_units[reason] ? judged->excess[reason] : 0;
    if (!isnan(shortfall) && (!nearest->any || shortfall < nearest->shortfall))
        *nearest = (struct near_miss){true, shortfall, order};
}

/* An unknown height is no better than any, an unknown margin (no requirement) is the same for all. */
static void pass(const struct search *search, struct group *group, const struct judged *judged, size_t order)
{
    const struct pour *pour = &search->pours[order % search->pour_count];
    struct passing const passing = {
        .height_mm = isnan(judged->height_mm) ? INFINITY : judged->height_mm,
        .mass_kg_m2 = judged->mass_kg_m2,
        .loss_dB = isnan(judged->verdict.margin_dB) ? 0 : -judged->verdict.margin_dB,
        .cost_per_m2 =
            candidate_cost_per_m2(&search->stacks.at[order / search->pour_count], pour->screed, pour->thickness_mm),
        .order = order,
    };
    front_add(&group->front, &passing);
}

void search_group(const struct search *search, struct group *group)
{
    size_t const candidates = search->stacks.count * search->pour_count;
    for (int i = 0; i < REASON_COUNT; i++) {
        group->rejected[i] = 0;
        group->nearest[i] = (struct near_miss){0};
    }
    group->examined = (double)candidates;
    group->front.count = 0;
    group->front.beaten = 0;
    group->front.full = false;
    group->front.by_cost = search->by_cost;
    const struct screed *screed = NULL;
    for (size_t order = 0; order < candidates && !group->front.full; order++) {
        size_t const pour = order % search->pour_count;
        if (pour == 0 || search->pours[pour].screed != screed)
            take_pairs(search, group, order);
        screed = search->pours[pour].screed;
        struct judged judged;
        judge_in_all(search, group, order, &judged);
        if (judged.fails)
            reject(group, &judged, order);
        else
            pass(search, group, &judged, order);
    }
}
