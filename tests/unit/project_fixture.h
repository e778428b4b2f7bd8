/* The built-in data and an arena, for tests that read projects or look into the data. */
#ifndef USC_TESTS_PROJECT_FIXTURE_H
#define USC_TESTS_PROJECT_FIXTURE_H

#include <check.h>
#include <stdlib.h>

#include "project/data_store.h"

struct project_fixture {
    struct arena *arena;
    struct problems problems;
    struct data data;
};

static inline void project_fixture_exhausted(void *context)
{
    (void)context;
    abort();
}

static inline void project_fixture_open(struct project_fixture *fixture)
{
    const char *culprit = NULL;
    fixture->arena = arena_new(project_fixture_exhausted, NULL);
    fixture->problems = (struct problems){.arena = fixture->arena};
    ck_assert_int_eq(data_load(NULL, fixture->arena, &fixture->problems, &fixture->data, &culprit), DATA_READ);
    ck_assert_ptr_null(fixture->problems.first);
}

static inline void project_fixture_close(struct project_fixture *fixture)
{
    arena_release(fixture->arena);
}

#endif
