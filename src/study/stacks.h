/* The stacks of one or two resilient layers that a design may choose from. */
#ifndef USC_STUDY_STACKS_H
#define USC_STUDY_STACKS_H

#include "study/prediction.h"

struct stacks {
    struct stack *at;
    const char **names;
    size_t count;
};

/* In catalogue order: first every underlay alone, then for every lower layer those that may lie on it.
 * allowed: ids, or empty for all; both layers of a pair must be allowed. */
struct stacks stacks_of(const struct catalogue *catalogue, const struct texts *allowed, struct arena *arena);

/* Is the id in the list, or the list empty? */
bool is_allowed(const struct texts *allowed, const char *id);

#endif
