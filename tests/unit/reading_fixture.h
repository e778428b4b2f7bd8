/* What a test of a reader needs: memory, a list for problems, and the problems as text. Each test file has its own. */
#ifndef USC_TESTS_READING_FIXTURE_H
#define USC_TESTS_READING_FIXTURE_H

#include <stdlib.h>

#include "unit/problem_lines.h"

static struct arena *arena;
static struct problems problems;

static void memory_ended(void *context)
{
    (void)context;
    abort();
}

static void set_up(void)
{
    arena = arena_new(memory_ended, NULL);
    problems = (struct problems){.arena = arena};
}

static void tear_down(void)
{
    arena_release(arena);
}

#endif
