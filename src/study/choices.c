#include "study/choices.h"

#include <math.h>
#include <stdlib.h>

const char *const rank_by_names[] = {"height", "mass", "margin", "cost", NULL};

static bool at_least_as_good(const struct passing *one, const struct passing *other, bool by_cost)
{
    return one->height_mm <= other->height_mm && one->mass_kg_m2 <= other->mass_kg_m2 &&
           one->loss_dB <= other->loss_dB && (!by_cost || one->cost_per_m2 <= other->cost_per_m2);
}

/* Halfway forward for a member that beat another: those that beat many come to be asked first. */
static void promote(struct front *front, size_t member)
{
    if (member == 0)
        return;
    size_t const ahead = member / 2;
    struct passing const moved = front->at[member];
    front->at[member] = front->at[ahead];
    front->at[ahead] = moved;
}

void front_add(struct front *front, const struct passing *passing)
{
    for (size_t i = 0; i < front->count; i++)
        if (at_least_as_good(&front->at[i], passing, front->by_cost)) {
            front->beaten++;
            promote(front, i);
            return;
        }
    size_t kept = 0;
    for (size_t i = 0; i < front->count; i++)
        if (!at_least_as_good(passing, &front->at[i], front->by_cost))
            front->at[kept++] = front->at[i];
    front->beaten += (double)(front->count - kept);
    front->count = kept;
    if (front->count == front->room)
        front->full = true;
    else
        front->at[front->count++] = *passing;
}

enum { KEYS = 5 };

struct ranked {
    double key[KEYS]; /* ascending */
    int order;
    size_t index;
};

static int compare_ranked(const void *one, const void *other)
{
    const struct ranked *a = one, *b = other;
    for (int i = 0; i < KEYS; i++)
        if (a->key[i] != b->key[i])
            return a->key[i] < b->key[i] ? -1 : 1;
    return a->order < b->order ? -1 : a->order > b->order;
}

static double known_or_last(double value)
{
    return isnan(value) ? INFINITY : value;
}

static struct ranked ranked_of(const struct design_choice *choice, size_t index, enum rank_by rank_by)
{
    const double by[] = {
        [RANK_BY_HEIGHT] = known_or_last(choice->height_mm),
        [RANK_BY_MASS] = known_or_last(choice->mass_kg_m2),
        [RANK_BY_MARGIN] = known_or_last(-choice->margin_dB),
        [RANK_BY_COST] = known_or_last(choice->cost_per_m2),
    };
    return (struct ranked){
        .key = {by[rank_by], by[RANK_BY_HEIGHT], by[RANK_BY_MASS], by[RANK_BY_MARGIN], by[RANK_BY_COST]},
        .order = choice->order,
        .index = index,
    };
}

void choices_rank(struct design_choice choices[], size_t count, enum rank_by rank_by, struct arena *arena)
{
    struct ranked *ranked = arena_take_many(arena, count, sizeof *ranked);
    struct design_choice *before = arena_take_many(arena, count, sizeof *before);
    for (size_t i = 0; i < count; i++) {
        ranked[i] = ranked_of(&choices[i], i, rank_by);
        before[i] = choices[i];
    }
    qsort(ranked, count, sizeof *ranked, compare_ranked);
    for (size_t i = 0; i < count; i++)
        choices[i] = before[ranked[i].index];
}
