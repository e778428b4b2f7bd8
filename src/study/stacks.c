#include "study/stacks.h"

#include <string.h>

#include "study/stack_names.h"

static bool is_among(const struct texts *list, const char *id)
{
    for (size_t i = 0; i < list->count; i++)
        if (!strcmp(list->at[i], id))
            return true;
    return false;
}

bool is_allowed(const struct texts *allowed, const char *id)
{
    return allowed->count == 0 || is_among(allowed, id);
}

static void add(struct stacks *stacks, const struct underlay *const layer[], int count, struct arena *arena)
{
    stack_of(layer, count, &stacks->at[stacks->count], NULL);
    stacks->names[stacks->count++] = stack_names(layer, (size_t)count, arena);
}

/* Allowed rows of the catalogue, packed. */
static const struct underlay **allowed_underlays(const struct catalogue *catalogue, const struct texts *allowed,
                                                 struct arena *arena, size_t *count)
{
    const struct underlay *rows = catalogue->underlays.at;
    const struct underlay **kept = arena_take_many(arena, catalogue->underlays.count, sizeof *kept);
    *count = 0;
    for (size_t i = 0; i < catalogue->underlays.count; i++)
        if (is_allowed(allowed, rows[i].id))
            kept[(*count)++] = &rows[i];
    return kept;
}

struct stacks stacks_of(const struct catalogue *catalogue, const struct texts *allowed, struct arena *arena)
{
    size_t single, most;
    const struct underlay **rows = allowed_underlays(catalogue, allowed, arena, &single);
    most = single;
    for (size_t i = 0; i < single; i++)
        most += rows[i]->may_lie_under.count;
    struct stacks stacks = {.at = arena_take_many(arena, most, sizeof *stacks.at),
                            .names = arena_take_many(arena, most, sizeof *stacks.names)};
    for (size_t i = 0; i < single; i++)
        add(&stacks, &rows[i], 1, arena);
    for (size_t lower = 0; lower < single; lower++)
        for (size_t upper = 0; rows[lower]->may_lie_under.count > 0 && upper < single; upper++)
            if (is_among(&rows[lower]->may_lie_under, rows[upper]->id))
                add(&stacks, (const struct underlay *const[]){rows[upper], rows[lower]}, 2, arena);
    return stacks;
}
