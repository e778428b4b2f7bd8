#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/field.h"
#include "base/problem.h"

#include "../suites.h"

static void memory_ended(void *context)
{
    (void)context;
    abort();
}

START_TEST(problems_keep_order_and_copies)
{
    struct problems problems = {.arena = arena_new(memory_ended, NULL)};
    char path[] = "rooms[2].slab", hint[] = "did you mean slab?";
    ck_assert(!problems_any_error(&problems));
    problem_add(&problems, SEVERITY_WARNING, "flat.json", path, hint, "%d is high", 7);
    problem_add(&problems, SEVERITY_ERROR, NULL, "", NULL, "second");
    path[0] = hint[0] = 'X';
    const struct problem *first = problems.first;
    ck_assert_str_eq(first->place.file, "flat.json");
    ck_assert_str_eq(first->place.path, "rooms[2].slab");
    ck_assert_str_eq(first->hint, "did you mean slab?");
    ck_assert_str_eq(first->text, "7 is high");
    ck_assert_int_eq(first->place.line, 0);
    ck_assert_ptr_eq(first->next, problems.last);
    ck_assert_ptr_null(problems.last->hint);
    ck_assert_ptr_null(problems.last->next);
    ck_assert(problems_any_error(&problems));
    arena_release(problems.arena);
}
END_TEST

START_TEST(problems_beyond_a_thousand_are_counted)
{
    struct problems problems = {.arena = arena_new(memory_ended, NULL)};
    size_t listed = 0;
    for (int i = 0; i < 1500; i++)
        ck_assert_ptr_nonnull(problem_add(&problems, SEVERITY_NOTE, NULL, "", NULL, "note %d", i));
    problem_add(&problems, SEVERITY_ERROR, NULL, "", NULL, "not crowded out by notes");
    for (const struct problem *problem = problems.first; problem; problem = problem->next)
        listed++;
    ck_assert_uint_eq(listed, 1001);
    ck_assert_uint_eq(problems.count[SEVERITY_NOTE], 1500);
    ck_assert_str_eq(problems.last->text, "not crowded out by notes");
    arena_release(problems.arena);
}
END_TEST

static const struct {
    const char *name, *nearest;
} guesses[] = {
    {"mas_kg_m2", "mass_kg_m2"},
    {"mass_gk_m2", "mass_kg_m2"},
    {"thicknes_mm", "thickness_mm"},
    {"slba", "slab"},
    {"slab", "slab"},
    {"xxxx", NULL},
    {"sl", NULL},
    {"", NULL},
    {"thickness", "thickness_mm"},
    {"a-name-that-is-far-longer-than-any-name-in-the-table-could-ever-be-and-so-is-not-compared-at-all", NULL},
};

START_TEST(nearest_name_is_the_one_of_the_row)
{
    static const char *const known[] = {"slab", "mass_kg_m2", "thickness_mm", "id"};
    const char *nearest = nearest_name(guesses[_i].name, known, 4);
    if (guesses[_i].nearest)
        ck_assert_pstr_eq(nearest, guesses[_i].nearest);
    else
        ck_assert_ptr_null(nearest);
}
END_TEST

struct sample {
    double mass_kg_m2, given_m;
    int storeys, unset;
    bool heated, plain;
    int kind, other;
    const char *name;
    struct numbers levels;
    void *inner;
};

START_TEST(defaults_fill_every_field)
{
    static const char *const kinds[] = {"CT", "CA", NULL};
    static const struct field fields[] = {
        NUMBER_FIELD(sample, mass_kg_m2, "kg/m2", 0, 1000, NONE, "mass"),
        NUMBER_FIELD(sample, given_m, "m", 0, 10, 2.5, "length"),
        INTEGER_FIELD(sample, storeys, 0, 9, 3, "storeys"),
        INTEGER_FIELD(sample, unset, 0, 9, NONE, "unset"),
        FLAG_FIELD(sample, heated, 1, "heated"),
        FLAG_FIELD(sample, plain, NONE, "plain"),
        CHOICE_FIELD(sample, kind, kinds, 1, false, "kind"),
        CHOICE_FIELD(sample, other, kinds, NONE, false, "other"),
        TEXT_FIELD(sample, name, false, "name"),
        NUMBERS_FIELD(sample, levels, "dB", 0, 1, "levels"),
        OBJECT_FIELD(sample, inner, NULL, false, "inner"),
    };
    static const struct record record = RECORD("sample", sample, fields);
    struct sample sample;
    memset(&sample, 0xa5, sizeof sample);
    record_defaults(&record, &sample);
    ck_assert(isnan(sample.mass_kg_m2));
    ck_assert(sample.given_m == 2.5);
    ck_assert_int_eq(sample.storeys, 3);
    ck_assert_int_eq(sample.unset, 0);
    ck_assert(sample.heated && !sample.plain);
    ck_assert_int_eq(sample.kind, 1);
    ck_assert_int_eq(sample.other, -1);
    ck_assert_ptr_null(sample.name);
    ck_assert_uint_eq(sample.levels.count, 0);
    ck_assert_ptr_null(sample.inner);
    ck_assert_ptr_eq(record_field(&record, "heated"), &fields[4]);
    ck_assert_ptr_null(record_field(&record, "Heated"));
}
END_TEST

Suite *problem_suite(void)
{
    Suite *suite = suite_create("problem");
    TCase *tests = tcase_create("problem");
    tcase_add_test(tests, problems_keep_order_and_copies);
    tcase_add_test(tests, problems_beyond_a_thousand_are_counted);
    tcase_add_loop_test(tests, nearest_name_is_the_one_of_the_row, 0, (int)(sizeof guesses / sizeof guesses[0]));
    tcase_add_test(tests, defaults_fill_every_field);
    suite_add_tcase(suite, tests);
    return suite;
}
