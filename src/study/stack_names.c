#include "study/stack_names.h"

#include <string.h>

const char *stack_names(const struct underlay *const layer[], size_t count, struct arena *arena)
{
    if (count == 1)
        return layer[0]->id;
    size_t length = 1;
    for (size_t i = 0; i < count; i++)
        length += strlen(layer[i]->id) + strlen(" + ");
    char *names = arena_take(arena, length), *end = names;
    for (size_t i = 0; i < count; i++)
        end = stpcpy(stpcpy(end, i > 0 ? " + " : ""), layer[i]->id);
    return names;
}
