/* The descriptors: what formula_apply() checks and records, and that the text of every formula says what its function
 * does. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "acoustics/acoustic_formulas.h"
#include "acoustics/bare_slab.h"
#include "acoustics/floating_floor.h"
#include "acoustics/transmission.h"
#include "assert_within.h"
#include "base/formula.h"
#include "suites.h"
#include "unit/expression.h"
#include "unit/random_numbers.h"

enum { LIST_MOST = 8 };

static struct working working;

static void no_memory(void *context)
{
    (void)context;
    abort();
}

static void open_working(void)
{
    working = (struct working){.arena = arena_new(no_memory, NULL)};
}

static void close_working(void)
{
    arena_release(working.arena);
}

static int excursions(void)
{
    int count = 0;

    for (const struct excursion *excursion = working.first_excursion; excursion; excursion = excursion->next)
        count++;
    return count;
}

static bool is_table(const struct formula *formula)
{
    return strcmp(formula->expression, "table") == 0;
}

/* A value of the range; where a side is open, one within 1..1000. Positions are small whole numbers. */
static double within(const struct quantity *quantity, uint64_t *state)
{
    if (strcmp(quantity->key, "position") == 0)
        return random_integer(state, USC_POSITION_BELOW, USC_POSITION_BEYOND_JOINT);
    double low = isfinite(quantity->lowest) ? quantity->lowest : 1;
    double high = isfinite(quantity->highest) ? quantity->highest : 1000;
    return random_between(state, low, high);
}

static int fill(const struct formula *formula, double given[LIST_MOST], uint64_t *state)
{
    int count = formula->list ? random_integer(state, 1, LIST_MOST) : formula->given_count;

    for (int i = 0; i < count; i++)
        given[i] = within(&formula->given[formula->list ? 0 : i], state);
    return count;
}

static double apply(const struct formula *formula, const double given[], int count, struct working *into)
{
    return formula->list ? formula_apply_list(formula, given, count, into) : formula_apply(formula, given, into);
}

START_TEST(descriptor_is_complete)
{
    const struct formula *formula = usc_acoustic_formulas[_i];

    ck_assert(formula->id[0] && formula->title[0] && formula->expression[0] && formula->source.work[0]);
    ck_assert(strspn(formula->id, "abcdefghijklmnopqrstuvwxyz0123456789-") == strlen(formula->id));
    ck_assert_int_ge(formula->given_count, 1);
    ck_assert_int_le(formula->given_count, FORMULA_GIVEN_MOST);
    ck_assert(!formula->list || formula->given_count == 1);
    ck_assert(formula->result.symbol[0] && formula->result.key[0]);
    for (int i = 0; i < formula->given_count; i++) {
        ck_assert(formula->given[i].symbol[0] && formula->given[i].key[0]);
        ck_assert(formula->given[i].lowest < formula->given[i].highest);
    }
    for (int other = 0; other < _i; other++)
        ck_assert_str_ne(formula->id, usc_acoustic_formulas[other]->id);
}
END_TEST

START_TEST(text_says_what_the_function_does)
{
    const struct formula *formula = usc_acoustic_formulas[_i];
    uint64_t state = 0x9e3779b97f4a7c15u + (uint64_t)_i;

    if (is_table(formula))
        return;
    for (int round = 0; round < 1000; round++) {
        double given[LIST_MOST], expected;
        const char *reason;
        int count = fill(formula, given, &state);
        ck_assert_msg(expression_value(formula, given, count, &expected, &reason), "%s: %s: %s", formula->id,
                      formula->expression, reason);
        double result = apply(formula, given, count, NULL);
        ck_assert_msg(fabs(result - expected) <= 1e-11 * fmax(1, fabs(expected)), "%s: %s gives %.17g, function %.17g",
                      formula->id, formula->expression, expected, result);
    }
}
END_TEST

/* The tables, whose text cannot be computed, are those three and no more. */
START_TEST(tables_are_the_only_texts_left_out)
{
    int tables = 0;

    for (int i = 0; i < usc_acoustic_formula_count; i++)
        tables += is_table(usc_acoustic_formulas[i]);
    ck_assert_int_eq(tables, 3);
    ck_assert(is_table(&usc_K_table_formula));
    ck_assert(is_table(&usc_KT_formula));
    ck_assert(is_table(&usc_delta_Rw_high_formula));
}
END_TEST

static double twice(const double given[], int count)
{
    (void)count;
    return 2 * given[0];
}

/* Not a formula of the trade: its result has a range, too. */
static const struct formula doubled = {
    .id = "doubled",
    .expression = "2 {a} {b}^0",
    .result = {"c", "c", "", 0, 10},
    .given = (const struct quantity[]){{"a", "a", "", -100, 100}, {"b", "b", "", -INFINITY, INFINITY}},
    .given_count = 2,
    .value = twice,
};

START_TEST(text_with_a_mistake_is_refused)
{
    static const char *const text[] = {"2 {x}", "2 {a",      "lg {a}",  "(2 {a}", "2 {a})",
                                       "2 +",   "mean({a})", "ln({a})", ""};
    struct formula wrong = doubled;
    const double given[] = {1, 1};
    const char *reason;
    double value;

    wrong.expression = text[_i];
    ck_assert(!expression_value(&wrong, given, 2, &value, &reason));
    ck_assert_ptr_nonnull(reason);
}
END_TEST

START_TEST(text_follows_the_rules_of_arithmetic)
{
    static const struct {
        const char *text;
        double value;
    } known[] = {{"2 + 3 {b}", 17},     {"-{a}^2 + 1", -8},         {"2^3^2", 512},     {"10 - 4 - 3", 3},
                 {"12/2/3", 2},         {"2 {a} {b}", 30},          {"12/{a} 2", 8},    {"(1 + {a}) (2 + {b})", 28},
                 {"max(1, {a}, 2)", 3}, {"min({b}, lg(100))", 2},   {"sqrt({a} 3)", 3}, {"1.5*{a}", 4.5},
                 {"2(3)", 6},           {"10 lg({b}/5) - {a}", -3}, {"{b}/{a}^2*9", 5}};
    struct formula formula = doubled;
    const double given[] = {3, 5};

    for (size_t i = 0; i < sizeof known / sizeof known[0]; i++) {
        const char *reason = "";
        double value = NAN;
        formula.expression = known[i].text;
        ck_assert_msg(expression_value(&formula, given, 2, &value, &reason), "%s: %s", known[i].text, reason);
        assert_within(value, known[i].value, 1e-12);
    }
}
END_TEST

/* One quantity on its limit and just beyond; everything else well inside. */
static void check_side(const struct formula *formula, int which, double limit, double outward)
{
    uint64_t state = 77;
    double given[LIST_MOST], plain;

    if (!isfinite(limit))
        return;
    for (int beyond = 0; beyond <= 1; beyond++) {
        open_working();
        int count = fill(formula, given, &state);
        given[which] = beyond ? nextafter(limit, outward) : limit;
        plain = apply(formula, given, count, NULL);
        double result = apply(formula, given, count, &working);
        ck_assert_msg(excursions() == beyond, "%s: %s = %.17g: %d excursions", formula->id,
                      formula->given[which].symbol, given[which], excursions());
        ck_assert_msg(isfinite(result) && result == plain, "%s is not computed", formula->id);
        if (beyond) {
            ck_assert_ptr_eq(working.first_excursion->formula, formula);
            ck_assert_ptr_eq(working.first_excursion->quantity, &formula->given[which]);
            ck_assert(working.first_excursion->value == given[which]);
        }
        close_working();
    }
}

START_TEST(limit_is_inside_and_the_next_number_outside)
{
    const struct formula *formula = usc_acoustic_formulas[_i];

    for (int which = 0; which < formula->given_count; which++) {
        check_side(formula, which, formula->given[which].lowest, -INFINITY);
        check_side(formula, which, formula->given[which].highest, INFINITY);
    }
}
END_TEST

/* An own list of the published ranges: the test above would pass with any. */
static const struct {
    const char *id, *symbol;
    double lowest, highest;
} published_range[] = {
    {"equivalent-level-bare-slab", "m'", 100, 600},  {"reduction-index-slab", "m'", 65, 720},
    {"airborne-improvement-low", "f0", 30, 160},     {"airborne-improvement-table", "f0", 200, INFINITY},
    {"flanking-correction", "m's", 100, 900},        {"flanking-correction", "m'f,m", 100, 500},
    {"flanking-correction-zero", "m's", 100, 900},   {"flanking-correction-zero", "m'f,m", 100, 500},
    {"flanking-correction-table", "m's", 100, 900},  {"flanking-correction-table", "m'f,m", 100, 500},
    {"weighted-improvement-mineral", "m'", 60, 160}, {"weighted-improvement-mineral", "s'", 6, 50},
    {"weighted-improvement-asphalt", "m'", 58, 87},  {"weighted-improvement-asphalt", "s'", 15, 50},
    {"weighted-improvement-dry", "m'", 15, 40},      {"weighted-improvement-dry", "s'", 15, 40},
    {"background-correction", "ΔLb", 6, 15},
};
enum { PUBLISHED_RANGES = sizeof published_range / sizeof published_range[0] };

START_TEST(ranges_are_the_published_ones)
{
    int limited = 0;

    for (int i = 0; i < usc_acoustic_formula_count; i++) {
        const struct formula *formula = usc_acoustic_formulas[i];
        for (int k = 0; k < formula->given_count; k++) {
            const struct quantity *quantity = &formula->given[k];
            if (!isfinite(quantity->lowest) && !isfinite(quantity->highest))
                continue;
            limited++;
            bool found = false;
            for (int row = 0; row < PUBLISHED_RANGES; row++)
                found |= strcmp(published_range[row].id, formula->id) == 0 &&
                         strcmp(published_range[row].symbol, quantity->symbol) == 0 &&
                         published_range[row].lowest == quantity->lowest &&
                         published_range[row].highest == quantity->highest;
            ck_assert_msg(found, "%s: range of %s", formula->id, quantity->symbol);
        }
    }
    ck_assert_int_eq(limited, PUBLISHED_RANGES);
}
END_TEST

START_TEST(result_outside_its_range_is_noted)
{
    open_working();
    assert_within(formula_apply(&doubled, (double[]){5, 0}, &working), 10, 0);
    ck_assert_int_eq(excursions(), 0);
    assert_within(formula_apply(&doubled, (double[]){5.5, 0}, &working), 11, 0);
    ck_assert_int_eq(excursions(), 1);
    ck_assert_ptr_eq(working.first_excursion->quantity, &doubled.result);
    assert_within(working.first_excursion->value, 11, 0);
    assert_within(formula_apply(&doubled, (double[]){-101, 0}, &working), -202, 0);
    ck_assert_int_eq(excursions(), 3);
    close_working();
}
END_TEST

START_TEST(step_keeps_its_own_copy)
{
    double given[] = {10, 90};

    open_working();
    double f0 = formula_apply(&usc_resonance_formula, given, &working);
    given[0] = given[1] = 0;
    double mass = formula_apply(&usc_mass_formula, (double[]){45, 2000}, &working);
    const struct step *step = working.first_step;
    ck_assert_ptr_eq(step->formula, &usc_resonance_formula);
    ck_assert_int_eq(step->given_count, 2);
    ck_assert_int_eq(step->result_count, 1);
    assert_within(step->given[0], 10, 0);
    assert_within(step->given[1], 90, 0);
    assert_within(step->result, f0, 0);
    ck_assert_ptr_eq(step->next, working.last_step);
    assert_within(working.last_step->result, mass, 0);
    ck_assert_ptr_null(working.last_step->next);
    close_working();
}
END_TEST

START_TEST(list_is_one_step)
{
    const double mass[] = {308, 216, 216, 428};

    open_working();
    assert_within(formula_apply_list(&usc_mean_flanking_mass_formula, mass, 4, &working), 292, 1e-9);
    ck_assert_int_eq(working.first_step->given_count, 4);
    assert_within(working.first_step->given[3], 428, 0);
    ck_assert_ptr_null(working.first_step->next);
    ck_assert(isnan(formula_apply_list(&usc_mean_flanking_mass_formula, mass, 0, &working)));
    ck_assert(isnan(formula_apply_list(&usc_stiffness_in_series_formula, mass, 0, &working)));
    close_working();
}
END_TEST

START_TEST(spectrum_is_one_step_and_warns_once)
{
    const double at[] = {50, 100, 1000}, mass[] = {50, 90, 170, 200};
    double result[4];

    open_working();
    formula_apply_along(&usc_improvement_mineral_formula, (double[]){0, 50}, 0, at, 3, result, &working);
    assert_within(result[0], 0, 0);
    assert_within(result[1], 9.03, 0.005);
    assert_within(result[2], 39.03, 0.005);
    ck_assert_ptr_eq(working.first_step, working.last_step);
    ck_assert_int_eq(working.first_step->result_count, 3);
    assert_within(working.first_step->given[0], 1000, 0);
    assert_within(working.first_step->given[1], 50, 0);
    assert_within(working.first_step->result, result[2], 0);
    ck_assert_int_eq(excursions(), 0);

    formula_apply_along(&usc_delta_Lw_mineral_formula, (double[]){0, 5}, 0, mass, 4, result, &working);
    ck_assert_int_eq(excursions(), 2); /* m' once although it leaves the range three times, and s' */
    assert_within(working.first_excursion->value, 50, 0);
    formula_apply_along(&usc_delta_Lw_mineral_formula, (double[]){0, 10}, 0, mass, 0, result, &working);
    ck_assert_int_eq(excursions(), 2);
    close_working();
    formula_apply_along(&usc_delta_Lw_mineral_formula, (double[]){0, 10}, 0, mass, 4, result, NULL);
    assert_within(result[1], usc_delta_Lw_mineral_dB(90, 10), 0);
}
END_TEST

/* NaN is an absent value: it is passed on, and nobody is told that it lies outside 6..50. */
START_TEST(nan_is_passed_on)
{
    const struct formula *formula = usc_acoustic_formulas[_i];
    uint64_t state = 5;
    double given[LIST_MOST];

    for (int which = 0; which < formula->given_count; which++) {
        open_working();
        int count = fill(formula, given, &state);
        given[which] = NAN;
        ck_assert_msg(isnan(apply(formula, given, count, &working)), "%s: %s", formula->id,
                      formula->given[which].symbol);
        ck_assert_int_eq(excursions(), 0);
        close_working();
    }
}
END_TEST

START_TEST(standing_has_a_name)
{
    ck_assert_str_eq(standing_name(STANDING_PUBLISHED), "published");
    ck_assert_str_eq(standing_name(STANDING_COMMON_PRACTICE), "common practice");
    ck_assert_str_eq(standing_name(STANDING_FROM_MEMORY), "from memory");
    ck_assert_str_eq(standing_name(STANDING_DERIVED), "derived");
}
END_TEST

Suite *formula_suite(void)
{
    Suite *suite = suite_create("formula");
    TCase *every = tcase_create("every formula"), *apply_case = tcase_create("apply"), *text = tcase_create("text");

    tcase_add_loop_test(every, descriptor_is_complete, 0, usc_acoustic_formula_count);
    tcase_add_loop_test(every, text_says_what_the_function_does, 0, usc_acoustic_formula_count);
    tcase_add_loop_test(every, limit_is_inside_and_the_next_number_outside, 0, usc_acoustic_formula_count);
    tcase_add_loop_test(every, nan_is_passed_on, 0, usc_acoustic_formula_count);
    tcase_add_test(every, tables_are_the_only_texts_left_out);
    tcase_add_test(every, ranges_are_the_published_ones);
    suite_add_tcase(suite, every);
    tcase_add_test(apply_case, result_outside_its_range_is_noted);
    tcase_add_test(apply_case, step_keeps_its_own_copy);
    tcase_add_test(apply_case, list_is_one_step);
    tcase_add_test(apply_case, spectrum_is_one_step_and_warns_once);
    tcase_add_test(apply_case, standing_has_a_name);
    suite_add_tcase(suite, apply_case);
    tcase_add_loop_test(text, text_with_a_mistake_is_refused, 0, 9);
    tcase_add_test(text, text_follows_the_rules_of_arithmetic);
    suite_add_tcase(suite, text);
    return suite;
}
