/* Published cases of the acoustics: one test a row of each table. */
#include <stdio.h>
#include <string.h>

#include "acoustics/acoustic_formulas.h"
#include "acoustics/bare_slab.h"
#include "acoustics/dynamic_stiffness.h"
#include "acoustics/field_level.h"
#include "acoustics/floating_floor.h"
#include "acoustics/rating.h"
#include "acoustics/reference_floor.h"
#include "acoustics/transmission.h"
#include "assert_within.h"
#include "published/table.h"
#include "suites.h"

static struct table formula_values, flanking_table, ratings, design_table, stiffness_cases;

static const struct formula *formula_named(const char *id)
{
    for (int i = 0; i < usc_acoustic_formula_count; i++)
        if (strcmp(usc_acoustic_formulas[i]->id, id) == 0)
            return usc_acoustic_formulas[i];
    ck_abort_msg("no formula is called %s", id);
    return NULL;
}

START_TEST(formula_gives_the_printed_value)
{
    const struct formula *formula = formula_named(table_text(&formula_values, _i, "formula"));
    double given[16];
    int count = table_numbers(&formula_values, _i, "given", given, 16);

    ck_assert_str_eq(table_text(&formula_values, _i, "unit"), formula->result.unit);
    if (!formula->list)
        ck_assert_int_eq(count, formula->given_count);
    double result =
        formula->list ? formula_apply_list(formula, given, count, NULL) : formula_apply(formula, given, NULL);
    assert_within(result, table_number(&formula_values, _i, "expected"),
                  table_number(&formula_values, _i, "tolerance"));
}
END_TEST

START_TEST(flanking_table_has_the_printed_cell)
{
    double slab = table_number(&flanking_table, _i, "slab_mass_kg_m2");
    double flanking = table_number(&flanking_table, _i, "mean_flanking_mass_kg_m2");
    struct usc_K_cell cell = usc_K_by_table(slab, flanking);

    assert_within(cell.K_dB, table_number(&flanking_table, _i, "expected"),
                  table_number(&flanking_table, _i, "tolerance"));
    assert_within(cell.row_kg_m2, slab, 0);
    assert_within(cell.column_kg_m2, flanking, 0);
}
END_TEST

START_TEST(flanking_table_is_whole)
{
    ck_assert_int_eq(flanking_table.row_count, USC_K_ROWS * USC_K_COLUMNS);
}
END_TEST

static int whole_tenths(double level_dB)
{
    return usc_tenths_from_dB(level_dB);
}

START_TEST(spectrum_has_the_printed_rating)
{
    double spectrum[USC_RATED_BANDS];
    usc_tenths level[USC_RATED_BANDS];
    struct usc_rating rating;
    double value = table_number(&ratings, _i, "value_dB");

    ck_assert_int_eq(table_numbers(&ratings, _i, "spectrum_dB", spectrum, USC_RATED_BANDS), USC_RATED_BANDS);
    if (strcmp(table_text(&ratings, _i, "kind"), "improvement") == 0) {
        assert_within(usc_delta_Lw_rated_dB(spectrum), value, table_number(&ratings, _i, "tolerance"));
        return;
    }
    for (int i = 0; i < USC_RATED_BANDS; i++)
        level[i] = usc_tenths_from_dB(spectrum[i]);
    ck_assert_int_eq(usc_rate_impact(level, &rating), 0);
    ck_assert_int_eq(rating.value, whole_tenths(value));
    ck_assert_int_eq(rating.C_I_dB, (int)table_number(&ratings, _i, "C_I_dB"));
    if (*table_text(&ratings, _i, "unfavourable_sum_dB"))
        ck_assert_int_eq(rating.unfavourable_sum, whole_tenths(table_number(&ratings, _i, "unfavourable_sum_dB")));
}
END_TEST

START_TEST(design_table_is_near_the_formula)
{
    double formula_dB = usc_delta_Lw_mineral_dB(table_number(&design_table, _i, "mass_kg_m2"),
                                                table_number(&design_table, _i, "stiffness_MN_m3"));

    assert_within(formula_dB, table_number(&design_table, _i, "expected"),
                  table_number(&design_table, _i, "tolerance"));
}
END_TEST

START_TEST(stiffness_case_is_as_printed)
{
    static const char *const name[] = {"airtight", "middle", "open", "indeterminable"};
    double apparent = table_number(&stiffness_cases, _i, "apparent_MN_m3");
    double resistivity = table_number(&stiffness_cases, _i, "flow_resistivity_kPa_s_m2");
    double thickness = table_number(&stiffness_cases, _i, "loaded_thickness_mm");
    double stiffness = usc_dynamic_stiffness_MN_m3(apparent, resistivity, thickness);

    ck_assert_str_eq(name[usc_stiffness_case_of(apparent, resistivity, thickness)],
                     table_text(&stiffness_cases, _i, "case"));
    if (*table_text(&stiffness_cases, _i, "expected"))
        assert_within(stiffness, table_number(&stiffness_cases, _i, "expected"),
                      table_number(&stiffness_cases, _i, "tolerance"));
    else
        ck_assert(isnan(stiffness));
}
END_TEST

static void assert_printed(double value, const char *printed)
{
    char text[32];

    snprintf(text, sizeof text, "%.1f", usc_round_to_tenth_dB(value));
    ck_assert_str_eq(text, printed);
}

/* Lehrbuch der Bauphysik, ch. 22, Table 22.22: nothing is rounded on the way, and every printed digit agrees. */
START_TEST(worked_example_digit_for_digit)
{
    const double flanking[] = {308, 216, 216, 428};
    double slab = usc_mass_kg_m2(180, 2400), screed = usc_mass_kg_m2(45, 2000);
    double level = usc_Ln_eq_w_dB(slab), improvement = usc_delta_Lw_mineral_dB(screed, 10);
    double mean = formula_apply_list(&usc_mean_flanking_mass_formula, flanking, 4, NULL);
    double K = usc_K_dB(slab, mean);
    double below = usc_L_prime_n_w_dB(level, improvement, K);

    assert_printed(level, "71.8");
    assert_printed(improvement, "32.0");
    assert_printed(mean, "292.0");
    assert_printed(K, "1.5");
    assert_printed(below, "41.3");
    assert_printed(usc_standardised_dB(below, 14.2 * 2.5), "40.7");
    assert_printed(below + 3, "44.3");
}
END_TEST

/* Lehrbuch der Bauphysik, ch. 22, Table 22.6. */
START_TEST(worked_example_airborne)
{
    double f0 = usc_resonance_two_masses_Hz(10, 90, 432), Rw = usc_slab_Rw_dB(432);

    assert_printed(f0, "58.6");
    assert_printed(Rw, "59.2");
    assert_printed(usc_delta_Rw_dB(f0, Rw), "9.4");
}
END_TEST

Suite *acoustics_suite(void)
{
    Suite *suite = suite_create("published acoustics");
    TCase *tables = tcase_create("tables"), *examples = tcase_create("worked examples");

    table_read(&formula_values, "formula_values.csv");
    table_read(&flanking_table, "flanking_table.csv");
    table_read(&ratings, "ratings.csv");
    table_read(&design_table, "design_table.csv");
    table_read(&stiffness_cases, "dynamic_stiffness.csv");
    tcase_add_loop_test(tables, formula_gives_the_printed_value, 0, formula_values.row_count);
    tcase_add_loop_test(tables, flanking_table_has_the_printed_cell, 0, flanking_table.row_count);
    tcase_add_test(tables, flanking_table_is_whole);
    tcase_add_loop_test(tables, spectrum_has_the_printed_rating, 0, ratings.row_count);
    tcase_add_loop_test(tables, design_table_is_near_the_formula, 0, design_table.row_count);
    tcase_add_loop_test(tables, stiffness_case_is_as_printed, 0, stiffness_cases.row_count);
    suite_add_tcase(suite, tables);
    tcase_add_test(examples, worked_example_digit_for_digit);
    tcase_add_test(examples, worked_example_airborne);
    suite_add_tcase(suite, examples);
    return suite;
}
