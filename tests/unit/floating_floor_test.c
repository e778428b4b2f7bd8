/* What must hold of floors, walls and positions beside the printed values. */
#include "acoustics/bare_slab.h"
#include "acoustics/dynamic_stiffness.h"
#include "acoustics/floating_floor.h"
#include "acoustics/reference_floor.h"
#include "acoustics/transmission.h"
#include "assert_within.h"
#include "suites.h"

START_TEST(stiffer_is_never_better_and_heavier_never_worse)
{
    for (double mass = 60; mass <= 160; mass += 2.5)
        for (double stiffness = 6; stiffness <= 50; stiffness += 0.5) {
            double here = usc_delta_Lw_mineral_dB(mass, stiffness);
            double rated = usc_delta_Lw_rated_of_resonance_dB(30, usc_resonance_Hz(stiffness, mass));
            double rated_stiffer = usc_delta_Lw_rated_of_resonance_dB(30, usc_resonance_Hz(stiffness + 0.5, mass));
            double rated_heavier = usc_delta_Lw_rated_of_resonance_dB(30, usc_resonance_Hz(stiffness, mass + 2.5));
            ck_assert(usc_delta_Lw_mineral_dB(mass, stiffness + 0.5) < here);
            ck_assert(usc_delta_Lw_mineral_dB(mass + 2.5, stiffness) > here);
            ck_assert(rated_stiffer <= rated);
            ck_assert(rated_heavier >= rated);
        }
    for (double mass = 15; mass <= 87; mass += 1)
        for (double stiffness = 15; stiffness <= 50; stiffness += 1)
            ck_assert(usc_delta_Lw_light_dB(mass, stiffness + 1) < usc_delta_Lw_light_dB(mass, stiffness));
}
END_TEST

START_TEST(law_chooses_its_formulas)
{
    ck_assert_ptr_eq(usc_delta_Lw_formula_of(USC_LAW_MINERAL), &usc_delta_Lw_mineral_formula);
    ck_assert_ptr_eq(usc_delta_Lw_formula_of(USC_LAW_ASPHALT), &usc_delta_Lw_asphalt_formula);
    ck_assert_ptr_eq(usc_delta_Lw_formula_of(USC_LAW_DRY), &usc_delta_Lw_dry_formula);
    ck_assert_ptr_eq(usc_improvement_formula_of(USC_LAW_MINERAL), &usc_improvement_mineral_formula);
    ck_assert_ptr_eq(usc_improvement_formula_of(USC_LAW_ASPHALT), &usc_improvement_light_formula);
    ck_assert_ptr_eq(usc_improvement_formula_of(USC_LAW_DRY), &usc_improvement_light_formula);
    assert_within(usc_improvement_slope_dB(USC_LAW_MINERAL), 30, 0);
    assert_within(usc_improvement_slope_dB(USC_LAW_ASPHALT), 40, 0);
    assert_within(usc_improvement_slope_dB(USC_LAW_DRY), 40, 0);
}
END_TEST

START_TEST(correction_changes_its_branch_above_equal_masses)
{
    double heavier = nextafter(300, 301);

    ck_assert_ptr_eq(usc_K_formula_of(300, 300), &usc_K_formula);
    ck_assert_ptr_eq(usc_K_formula_of(300, heavier), &usc_K_zero_formula);
    assert_within(usc_K_dB(300, 300), 0.6, 1e-12);
    assert_within(usc_K_dB(300, heavier), 0, 0);
    assert_within(usc_K_dB(900, 100), 0.6 + 5.5 * 0.9542425094, 1e-9);
    ck_assert(isnan(usc_K_dB(NAN, 300)));
    ck_assert(isnan(usc_K_dB(300, NAN)));
}
END_TEST

static void check_cell(double slab, double flanking, double row, double column, double K)
{
    struct usc_K_cell cell = usc_K_by_table(slab, flanking);

    assert_within(cell.row_kg_m2, row, 0);
    assert_within(cell.column_kg_m2, column, 0);
    assert_within(cell.K_dB, K, 0);
}

START_TEST(correction_table_takes_the_nearest_cell)
{
    check_cell(432, 292, 450, 300, 1);
    check_cell(424.9, 100, 400, 100, 4);
    check_cell(425, 125, 450, 100, 4); /* both tie: the row with the larger K, the column with the larger K */
    check_cell(550, 125.1, 600, 150, 4);
    check_cell(650, 175, 700, 150, 4);
    check_cell(20, 20, 100, 100, 1);
    check_cell(2000, 5000, 900, 500, 2);
    check_cell(INFINITY, INFINITY, 900, 500, 2);
    ck_assert(isnan(usc_K_by_table(NAN, 300).K_dB));
    ck_assert(isnan(usc_K_by_table(300, NAN).K_dB));
}
END_TEST

/* On which the choice at a tie relies. */
START_TEST(correction_table_grows_with_the_slab_and_falls_with_the_walls)
{
    for (int row = 0; row < USC_K_ROWS; row++)
        for (int column = 0; column < USC_K_COLUMNS; column++) {
            ck_assert(row == 0 || usc_K_cell_dB[row][column] >= usc_K_cell_dB[row - 1][column]);
            ck_assert(column == 0 || usc_K_cell_dB[row][column] <= usc_K_cell_dB[row][column - 1]);
        }
}
END_TEST

START_TEST(position_that_is_none_has_no_correction)
{
    const double none[] = {-1, 6, 0.5, 1e300, NAN};

    for (size_t i = 0; i < sizeof none / sizeof none[0]; i++)
        ck_assert(isnan(formula_apply(&usc_KT_formula, &none[i], NULL)));
}
END_TEST

START_TEST(airborne_gain_joins_formula_and_table)
{
    ck_assert_ptr_eq(usc_delta_Rw_formula_of(199.9), &usc_delta_Rw_low_formula);
    ck_assert_ptr_eq(usc_delta_Rw_formula_of(200), &usc_delta_Rw_high_formula);
    ck_assert(isnan(usc_delta_Rw_dB(29.99, 50)));
    ck_assert(isnan(usc_delta_Rw_dB(NAN, 50)));
    ck_assert(isnan(usc_delta_Rw_dB(50, NAN)));
    assert_within(usc_delta_Rw_dB(30, 50), 74.4 - 29.5424 - 25, 1e-4);
    assert_within(usc_delta_Rw_dB(100, 50), 9.4, 1e-9);
    assert_within(usc_delta_Rw_dB(199.9, 60), 0, 0);
    assert_within(usc_delta_Rw_dB(200, 60), -1, 0);
    assert_within(usc_delta_Rw_dB(1600, 60), -10, 0);
    assert_within(usc_delta_Rw_dB(2000, 60), -5, 0);
    for (double f0 = 200; f0 < 1590; f0 += 5)
        ck_assert(usc_delta_Rw_dB(f0 + 5, 60) <= usc_delta_Rw_dB(f0, 60) + 1e-12);
}
END_TEST

START_TEST(stiffness_without_what_it_needs_is_nan)
{
    ck_assert(isnan(usc_dynamic_stiffness_MN_m3(10, NAN, 20)));
    ck_assert(isnan(usc_dynamic_stiffness_MN_m3(10, 50, NAN)));
    ck_assert(isnan(usc_dynamic_stiffness_MN_m3(NAN, 50, 20)));
    ck_assert(isnan(usc_dynamic_stiffness_MN_m3(10, -1, 20)));
    assert_within(usc_dynamic_stiffness_MN_m3(10, 200, NAN), 10, 0); /* airtight: thickness does not matter */
}
END_TEST

START_TEST(stack_is_softer_than_its_softest_layer)
{
    const double layer[] = {10, 12.5, 80};

    assert_within(usc_stiffness_in_series_MN_m3(layer, 1), 10, 1e-12);
    ck_assert(usc_stiffness_in_series_MN_m3(layer, 2) < 10);
    ck_assert(usc_stiffness_in_series_MN_m3(layer, 3) < usc_stiffness_in_series_MN_m3(layer, 2));
}
END_TEST

Suite *floating_floor_suite(void)
{
    Suite *suite = suite_create("floating floor");
    TCase *tcase = tcase_create("properties");

    tcase_add_test(tcase, stiffer_is_never_better_and_heavier_never_worse);
    tcase_add_test(tcase, law_chooses_its_formulas);
    tcase_add_test(tcase, correction_changes_its_branch_above_equal_masses);
    tcase_add_test(tcase, correction_table_takes_the_nearest_cell);
    tcase_add_test(tcase, correction_table_grows_with_the_slab_and_falls_with_the_walls);
    tcase_add_test(tcase, position_that_is_none_has_no_correction);
    tcase_add_test(tcase, airborne_gain_joins_formula_and_table);
    tcase_add_test(tcase, stiffness_without_what_it_needs_is_nan);
    tcase_add_test(tcase, stack_is_softer_than_its_softest_layer);
    suite_add_tcase(suite, tcase);
    return suite;
}
