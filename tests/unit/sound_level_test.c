/* From measured levels to those of a common room, the uncertainty beside them, and the levels of compressibility. */
#include "acoustics/sound_level.h"

#include "acoustics/dynamic_stiffness.h"
#include "acoustics/measurement_uncertainty.h"
#include "assert_within.h"
#include "suites.h"
#include "unit/random_numbers.h"

/* cost_dB: by hand, 10 lg(1 - 10^(-distance/10)). */
static const struct {
    double distance_dB;
    enum usc_background_method method;
    enum usc_background_case which;
    double cost_dB;
} windows[] = {
    {-5, USC_BACKGROUND_FIELD, USC_BACKGROUND_LIMIT, 1.3},
    {0, USC_BACKGROUND_FIELD, USC_BACKGROUND_LIMIT, 1.3},
    {6.0, USC_BACKGROUND_FIELD, USC_BACKGROUND_LIMIT, 1.3},
    {6.1, USC_BACKGROUND_FIELD, USC_BACKGROUND_CORRECTED, 1.2232},
    {10.0, USC_BACKGROUND_FIELD, USC_BACKGROUND_CORRECTED, 0.4576},
    {10.1, USC_BACKGROUND_FIELD, USC_BACKGROUND_NEGLIGIBLE, 0},
    {15.0, USC_BACKGROUND_FIELD, USC_BACKGROUND_NEGLIGIBLE, 0},
    {6.0, USC_BACKGROUND_LABORATORY, USC_BACKGROUND_LIMIT, 1.3},
    {6.1, USC_BACKGROUND_LABORATORY, USC_BACKGROUND_CORRECTED, 1.2232},
    {10.1, USC_BACKGROUND_LABORATORY, USC_BACKGROUND_CORRECTED, 0.4466},
    {15.0, USC_BACKGROUND_LABORATORY, USC_BACKGROUND_CORRECTED, 0.1396},
    {15.1, USC_BACKGROUND_LABORATORY, USC_BACKGROUND_NEGLIGIBLE, 0},
};
enum { WINDOWS = sizeof windows / sizeof windows[0] };

/* At many levels, since 56.3 - 50.2 is not 6.1 in binary. */
START_TEST(background_window_on_both_sides)
{
    for (int tenths = 100; tenths <= 900; tenths++) {
        const double background_dB = tenths / 10.0, level_dB = (tenths + 10 * windows[_i].distance_dB) / 10.0;
        enum usc_background_case which;
        double corrected_dB = NAN;
        int status = usc_correct_background(level_dB, background_dB, windows[_i].method, &corrected_dB, &which);
        ck_assert_int_eq(status, windows[_i].which == USC_BACKGROUND_LIMIT);
        ck_assert_int_eq(which, windows[_i].which);
        assert_within(corrected_dB, level_dB - windows[_i].cost_dB, 1e-4);
    }
}
END_TEST

START_TEST(background_that_is_no_level_is_refused)
{
    static const double odd[] = {NAN, INFINITY, -INFINITY, 1501, -1501};
    enum usc_background_case which = USC_BACKGROUND_CORRECTED;
    double corrected_dB = 7;

    for (size_t i = 0; i < sizeof odd / sizeof odd[0]; i++) {
        ck_assert_int_lt(usc_correct_background(odd[i], 30, USC_BACKGROUND_FIELD, &corrected_dB, &which), 0);
        ck_assert_int_lt(usc_correct_background(60, odd[i], USC_BACKGROUND_FIELD, &corrected_dB, &which), 0);
    }
    ck_assert(corrected_dB == 7 && which == USC_BACKGROUND_CORRECTED);
    ck_assert_int_eq(usc_correct_background(1500, -1500, USC_BACKGROUND_FIELD, &corrected_dB, &which), 0);
}
END_TEST

START_TEST(background_case_has_its_formula)
{
    ck_assert_ptr_eq(usc_background_formula_of(USC_BACKGROUND_CORRECTED), &usc_background_formula);
    ck_assert_ptr_eq(usc_background_formula_of(USC_BACKGROUND_LIMIT), &usc_background_limit_formula);
    ck_assert_ptr_null(usc_background_formula_of(USC_BACKGROUND_NEGLIGIBLE));
}
END_TEST

/* What was put on a level by energy comes off again. */
START_TEST(background_that_was_added_comes_off)
{
    uint64_t state = 21;

    for (int round = 0; round < 1000; round++) {
        double level_dB = random_between(&state, 20, 90), background_dB = level_dB - random_between(&state, 6, 14);
        double both_dB = 10 * log10(pow(10, level_dB / 10) + pow(10, background_dB / 10));
        assert_within(usc_without_background_dB(both_dB, both_dB - background_dB), level_dB, 1e-9);
    }
}
END_TEST

/* The mean lies between the arithmetic mean and the loudest, follows a shift, and knows no order. */
START_TEST(energy_mean_lies_above_the_plain_mean)
{
    uint64_t state = 22;
    double level_dB[6], turned_dB[6], louder_dB[6];

    for (int round = 0; round < 1000; round++) {
        double sum = 0, loudest = -INFINITY;
        for (int i = 0; i < 6; i++) {
            level_dB[i] = turned_dB[5 - i] = random_between(&state, 20, 90);
            louder_dB[i] = level_dB[i] + 7;
            sum += level_dB[i];
            loudest = fmax(loudest, level_dB[i]);
        }
        double mean_dB = usc_energy_mean_dB(level_dB, 6);
        ck_assert(mean_dB >= sum / 6 && mean_dB <= loudest && mean_dB >= loudest - 10 * log10(6) - 1e-9);
        assert_within(usc_energy_mean_dB(turned_dB, 6), mean_dB, 1e-9);
        assert_within(usc_energy_mean_dB(louder_dB, 6), mean_dB + 7, 1e-9);
    }
    assert_within(usc_energy_mean_dB(level_dB, 1), level_dB[0], 1e-9);
    ck_assert(isnan(usc_energy_mean_dB(level_dB, 0)));
}
END_TEST

/* L'n and L'nT of one measurement differ by 10 lg(0.032 V). */
START_TEST(two_levels_of_one_room_differ_by_its_volume)
{
    uint64_t state = 23;

    for (int round = 0; round < 1000; round++) {
        double volume = random_between(&state, 10, 200), reverberation = random_between(&state, 0.2, 3);
        double level = random_between(&state, 20, 90);
        double normalised = usc_L_prime_n_dB(level, usc_absorption_m2(volume, reverberation));
        assert_within(normalised - usc_L_prime_nT_dB(level, reverberation), 10 * log10(0.032 * volume), 1e-9);
    }
    ck_assert(usc_low_frequency_procedure_applies(24.9));
    ck_assert(!usc_low_frequency_procedure_applies(25));
    ck_assert(!usc_low_frequency_procedure_applies(NAN));
}
END_TEST

/* ISO 12999-1, from memory. */
START_TEST(uncertainty_is_as_tabulated)
{
    assert_within(usc_standard_uncertainty_dB(USC_SITUATION_A), 1.5, 0);
    assert_within(usc_standard_uncertainty_dB(USC_SITUATION_B), 1.0, 0);
    assert_within(usc_standard_uncertainty_dB(USC_SITUATION_C), 0.5, 0);
    assert_within(usc_coverage_factor(USC_ONE_SIDED, 95), 1.65, 0);
    assert_within(usc_coverage_factor(USC_ONE_SIDED, 84), 1.00, 0);
    assert_within(usc_coverage_factor(USC_TWO_SIDED, 95), 1.96, 0);
    ck_assert(isnan(usc_coverage_factor(USC_TWO_SIDED, 84)));
    ck_assert(isnan(usc_coverage_factor(USC_ONE_SIDED, NAN)));
    ck_assert(isnan(usc_standard_uncertainty_dB((enum usc_measurement_situation)3)));
}
END_TEST

/* Every factor is the normal distribution's, to the printed digits and the rounded percentages. */
START_TEST(coverage_is_that_of_a_normal_distribution)
{
    static const double two_sided[] = {68, 80, 90, 95, 99}, one_sided[] = {84, 90, 95, 97.5, 99.5};

    for (int i = 0; i < 5; i++) {
        double two = usc_coverage_factor(USC_TWO_SIDED, two_sided[i]);
        double one = usc_coverage_factor(USC_ONE_SIDED, one_sided[i]);
        assert_within(100 * erf(two / sqrt(2)), two_sided[i], 0.3);
        assert_within(50 * (1 + erf(one / sqrt(2))), one_sided[i], 0.15);
    }
}
END_TEST

START_TEST(compressibility_level_on_both_sides)
{
    static const struct {
        double c_mm;
        const char *name;
    } known[] = {{0, "CP2"},   {2, "CP2"}, {2.04, "CP2"}, {2.1, "CP3"}, {3, "CP3"},   {3.1, "CP4"}, {4.0, "CP4"},
                 {4.1, "CP5"}, {5, "CP5"}, {5.04, "CP5"}, {5.1, NULL},  {-0.1, NULL}, {NAN, NULL},  {1e300, NULL}};
    const struct usc_compressibility_level *level = usc_compressibility_level_of(known[_i].c_mm);

    if (!known[_i].name) {
        ck_assert_ptr_null(level);
        return;
    }
    ck_assert_ptr_nonnull(level);
    ck_assert_str_eq(level->name, known[_i].name);
    assert_within(level->most_mm + level->imposed_load_kPa, 7, 0); /* 5/4/3/2 mm for 2/3/4/5 kPa */
}
END_TEST

Suite *sound_level_suite(void)
{
    Suite *suite = suite_create("sound level");
    TCase *levels = tcase_create("levels"), *uncertainty = tcase_create("uncertainty"), *layer = tcase_create("layer");

    tcase_add_loop_test(levels, background_window_on_both_sides, 0, WINDOWS);
    tcase_add_test(levels, background_that_is_no_level_is_refused);
    tcase_add_test(levels, background_case_has_its_formula);
    tcase_add_test(levels, background_that_was_added_comes_off);
    tcase_add_test(levels, energy_mean_lies_above_the_plain_mean);
    tcase_add_test(levels, two_levels_of_one_room_differ_by_its_volume);
    suite_add_tcase(suite, levels);
    tcase_add_test(uncertainty, uncertainty_is_as_tabulated);
    tcase_add_test(uncertainty, coverage_is_that_of_a_normal_distribution);
    suite_add_tcase(suite, uncertainty);
    tcase_add_loop_test(layer, compressibility_level_on_both_sides, 0, 14);
    suite_add_tcase(suite, layer);
    return suite;
}
