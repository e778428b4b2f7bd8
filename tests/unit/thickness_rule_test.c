/* The logic of the thickness rules, on small rules made for the purpose. */
#include "screed/thickness_rule.h"

#include <math.h>

#include "assert_within.h"
#include "suites.h"

#define MADE_UP "made up for the test", 0
static const struct usc_thickness_row row[] = {
    {"CT", "F5", 2, 1, INFINITY, 40, MADE_UP},        {"CT", "F4", 2, 1, INFINITY, 45, MADE_UP},
    {"CT", "F4", 3, 2, INFINITY, 65, MADE_UP},        {"AS", "*", 3, 2, 3, 30, MADE_UP},
    {"dry", "*", INFINITY, INFINITY, 2, 18, MADE_UP}, {"dry", "*", INFINITY, INFINITY, 4, 25, MADE_UP},
};
static const struct usc_compressibility_row compressibility[] = {
    {"CT", 2, 1, 5, 0, MADE_UP}, {"CT", 2, 1, 10, 5, MADE_UP}, {"CT", 3, 2, 3, 0, MADE_UP},
    {"AS", 3, 2, 8, 0, MADE_UP}, {"dry", 2, 1, 4, 0, MADE_UP},
};
static const struct usc_thin_insulation_row thin[] = {{"CT", 40, 5, 42, MADE_UP}, {"AS", 40, 5, 35, MADE_UP}};
static const struct usc_cover_row cover[] = {{"CT", "F4", 45, MADE_UP}, {"*", "*", 30, MADE_UP}};
static const struct usc_tile_row tile[] = {{"CT", 45, MADE_UP}};
static const struct usc_single_place_row place[] = {{50, 5, MADE_UP}, {75, 10, MADE_UP}};
#define LIST(NAME) NAME, sizeof NAME / sizeof NAME[0]
static const struct usc_thickness_rules rules = {
    "made-up", "made up", LIST(row), LIST(compressibility), LIST(thin), LIST(cover), LIST(tile), LIST(place),
};

/* CT F4 under the least load on thick, firm insulation. */
static const struct usc_thickness_case plain = {"CT", "F4", 2, 1, 3, 100, 0, false};

static struct usc_thickness_answer answer;

static enum usc_thickness_status ask(struct usc_thickness_case given)
{
    return usc_least_nominal_thickness(&rules, &given, &answer);
}

START_TEST(stricter_load_decides)
{
    struct usc_thickness_case given = plain;

    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.base_mm, 45, 0);
    assert_within(answer.increment_mm, 0, 0);
    assert_within(answer.reduction_mm, 0, 0);
    assert_within(answer.heated_mm, 0, 0);
    assert_within(answer.tile_mm, 0, 0);
    assert_within(answer.least_mm, 45, 0);
    given.point_load_kN = 1.01;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.least_mm, 65, 0);
    given = plain;
    given.area_load_kN_m2 = 2.01;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.least_mm, 65, 0);
    given.area_load_kN_m2 = 0;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.least_mm, 45, 0);
}
END_TEST

START_TEST(class_and_kind_decide)
{
    struct usc_thickness_case given = plain;

    given.strength_class = "F5";
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.base_mm, 40, 0);
    given.strength_class = "F7";
    ck_assert_int_eq(ask(given), USC_THICKNESS_NO_KIND);
    given.strength_class = NULL;
    ck_assert_int_eq(ask(given), USC_THICKNESS_NO_KIND);
    given.kind = "AS"; /* any class */
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    given.kind = "MA";
    ck_assert_int_eq(ask(given), USC_THICKNESS_NO_KIND);
    ck_assert(isnan(answer.least_mm) && isnan(answer.base_mm) && isnan(answer.compressibility_limit_mm));
}
END_TEST

START_TEST(load_beyond_every_row_is_told)
{
    struct usc_thickness_case given = plain;

    given.area_load_kN_m2 = 3;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    given.area_load_kN_m2 = 3.01;
    ck_assert_int_eq(ask(given), USC_THICKNESS_LOAD_BEYOND);
    given = plain;
    given.point_load_kN = 2.01;
    ck_assert_int_eq(ask(given), USC_THICKNESS_LOAD_BEYOND);
    given.point_load_kN = NAN;
    ck_assert_int_eq(ask(given), USC_THICKNESS_LOAD_BEYOND);
    ck_assert(isnan(answer.least_mm));
}
END_TEST

START_TEST(compressible_underlay_adds_or_is_refused)
{
    struct usc_thickness_case given = plain;

    given.compressibility_mm = 5;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.increment_mm, 0, 0);
    given.compressibility_mm = 5.01;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.increment_mm, 5, 0);
    assert_within(answer.least_mm, 50, 0);
    given.compressibility_mm = 10.01;
    ck_assert_int_eq(ask(given), USC_THICKNESS_TOO_COMPRESSIBLE);
    assert_within(answer.compressibility_limit_mm, 10, 0);
    assert_within(answer.base_mm, 45, 0);
    ck_assert(isnan(answer.least_mm));
    given.area_load_kN_m2 = 3; /* the other load permits less */
    given.compressibility_mm = 3.01;
    ck_assert_int_eq(ask(given), USC_THICKNESS_TOO_COMPRESSIBLE);
    assert_within(answer.compressibility_limit_mm, 3, 0);
}
END_TEST

/* 0.2 + 2.2 + 0.6 is more than 3 by the last bit. */
START_TEST(sum_of_decimals_counts_as_its_decimal)
{
    struct usc_thickness_case given = plain;

    given.area_load_kN_m2 = 3;
    given.compressibility_mm = 0.2 + 2.2 + 0.6;
    ck_assert(given.compressibility_mm > 3);
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    given.compressibility_mm = 3.0001;
    ck_assert_int_eq(ask(given), USC_THICKNESS_TOO_COMPRESSIBLE);
}
END_TEST

START_TEST(rows_limit_compressibility_themselves)
{
    struct usc_thickness_case given = {"AS", "IC10", 2, 1, 3, 100, 0, false};

    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.compressibility_limit_mm, 3, 0); /* the smaller of 3 in the row and 8 in the list */
    given.compressibility_mm = 3.1;
    ck_assert_int_eq(ask(given), USC_THICKNESS_TOO_COMPRESSIBLE);
    assert_within(answer.compressibility_limit_mm, 3, 0);

    given = (struct usc_thickness_case){"dry", NULL, 2, 1, 2, 100, 0, false};
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.base_mm, 18, 0);
    given.compressibility_mm = 2.1;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.base_mm, 25, 0);
    given.area_load_kN_m2 = 2.1; /* the list has no row for this load: no compressible underlay at all */
    ck_assert_int_eq(ask(given), USC_THICKNESS_TOO_COMPRESSIBLE);
    assert_within(answer.compressibility_limit_mm, 0, 0);
}
END_TEST

START_TEST(without_a_list_the_rows_decide_alone)
{
    struct usc_thickness_rules bare = {"bare", "bare", LIST(row), NULL, 0, NULL, 0, NULL, 0, NULL, 0, NULL, 0};
    struct usc_thickness_case given = plain;

    given.compressibility_mm = 1000;
    given.insulation_mm = 20;
    given.heating_pipe_mm = 16;
    given.tiles = true;
    ck_assert_int_eq(usc_least_nominal_thickness(&bare, &given, &answer), USC_THICKNESS_KNOWN);
    assert_within(answer.increment_mm, 0, 0);
    assert_within(answer.reduction_mm, 0, 0);
    assert_within(answer.heated_mm, 61, 0);
    assert_within(answer.tile_mm, 0, 0);
    assert_within(answer.least_mm, 61, 0);
    ck_assert(isinf(answer.compressibility_limit_mm));
    given.kind = "AS";
    ck_assert_int_eq(usc_least_nominal_thickness(&bare, &given, &answer), USC_THICKNESS_TOO_COMPRESSIBLE);
    assert_within(usc_least_single_thickness_mm(&bare, 45), 45, 0);
}
END_TEST

START_TEST(thin_insulation_saves_but_not_below_the_least)
{
    struct usc_thickness_case given = plain;

    given.insulation_mm = 40;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.reduction_mm, 3, 0); /* 5, but 42 is the least */
    assert_within(answer.least_mm, 42, 0);
    given.insulation_mm = 40.01;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.reduction_mm, 0, 0);
    given.insulation_mm = 40;
    given.point_load_kN = 2;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.reduction_mm, 5, 0);
    assert_within(answer.least_mm, 60, 0);
    given = (struct usc_thickness_case){"AS", NULL, 2, 1, 1, 20, 0, false}; /* already below that row's least */
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.reduction_mm, 0, 0);
    assert_within(answer.least_mm, 30, 0);
}
END_TEST

START_TEST(heated_screed_takes_thickness_or_cover_and_the_pipe)
{
    struct usc_thickness_case given = plain;

    given.heating_pipe_mm = 16;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.heated_mm, 61, 0);
    assert_within(answer.least_mm, 61, 0);
    given.insulation_mm = 30; /* 42 unheated, but 45 above the pipe */
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.heated_mm, 61, 0);
    given.point_load_kN = 2;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.heated_mm, 76, 0);
    given = plain;
    given.strength_class = "F5"; /* the row for any class: 30 above the pipe */
    given.heating_pipe_mm = 20;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.heated_mm, 60, 0);
}
END_TEST

START_TEST(tiles_ask_for_their_own)
{
    struct usc_thickness_case given = plain;

    given.strength_class = "F5";
    given.tiles = true;
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.tile_mm, 45, 0);
    assert_within(answer.base_mm, 40, 0);
    assert_within(answer.least_mm, 45, 0);
    given.kind = "AS";
    ck_assert_int_eq(ask(given), USC_THICKNESS_KNOWN);
    assert_within(answer.tile_mm, 0, 0);
}
END_TEST

START_TEST(single_place_by_nominal_thickness)
{
    assert_within(usc_least_single_thickness_mm(&rules, 45), 40, 0);
    assert_within(usc_least_single_thickness_mm(&rules, 50), 45, 0);
    assert_within(usc_least_single_thickness_mm(&rules, 50.1), 40.1, 1e-12);
    assert_within(usc_least_single_thickness_mm(&rules, 75), 65, 0);
    assert_within(usc_least_single_thickness_mm(&rules, 76), 76, 0);
}
END_TEST

Suite *thickness_rule_suite(void)
{
    Suite *suite = suite_create("thickness rule");
    TCase *tcase = tcase_create("made-up rules");

    tcase_add_test(tcase, stricter_load_decides);
    tcase_add_test(tcase, class_and_kind_decide);
    tcase_add_test(tcase, load_beyond_every_row_is_told);
    tcase_add_test(tcase, compressible_underlay_adds_or_is_refused);
    tcase_add_test(tcase, sum_of_decimals_counts_as_its_decimal);
    tcase_add_test(tcase, rows_limit_compressibility_themselves);
    tcase_add_test(tcase, without_a_list_the_rows_decide_alone);
    tcase_add_test(tcase, thin_insulation_saves_but_not_below_the_least);
    tcase_add_test(tcase, heated_screed_takes_thickness_or_cover_and_the_pipe);
    tcase_add_test(tcase, tiles_ask_for_their_own);
    tcase_add_test(tcase, single_place_by_nominal_thickness);
    suite_add_tcase(suite, tcase);
    return suite;
}
