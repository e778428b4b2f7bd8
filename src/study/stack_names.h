/* The name of a stack: the ids of its layers, top to bottom. */
#ifndef USC_STUDY_STACK_NAMES_H
#define USC_STUDY_STACK_NAMES_H

#include "base/arena.h"
#include "project/catalogue.h"

/* Joined with " + "; in the arena unless there is one layer. */
const char *stack_names(const struct underlay *const layer[], size_t count, struct arena *arena);

#endif
