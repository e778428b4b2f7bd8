/* Improvements on the three kinds of reference floor, and the equivalent level of a bare floor. */
#include "acoustics/rating.h"
#include "acoustics/reference_floor.h"
#include "assert_within.h"
#include "suites.h"
#include "unit/random_numbers.h"

/* The bare floors rate 78 (-11), 72 (0), 75 (-3): so nothing on them improves by nothing. */
START_TEST(no_improvement_is_0_on_every_floor)
{
    const usc_tenths nothing[USC_RATED_BANDS] = {0};
    struct usc_improvement_rating rating = {NAN, 99, NAN};

    ck_assert_int_eq(usc_rate_improvement(nothing, (enum usc_reference_floor)_i, &rating), 0);
    assert_within(rating.delta_Lw_dB, 0, 0);
    ck_assert_int_eq(rating.C_I_delta_dB, 0);
    assert_within(rating.delta_L_lin_dB, 0, 0);
}
END_TEST

/* The same improvement in every band passes through whole, the shape being unchanged. */
START_TEST(even_improvement_passes_through)
{
    usc_tenths even[USC_RATED_BANDS];
    struct usc_improvement_rating rating;

    for (int dB = -20; dB <= 40; dB++) {
        for (int i = 0; i < USC_RATED_BANDS; i++)
            even[i] = (usc_tenths)(10 * dB);
        ck_assert_int_eq(usc_rate_improvement(even, (enum usc_reference_floor)_i, &rating), 0);
        assert_within(rating.delta_Lw_dB, dB, 0);
        ck_assert_int_eq(rating.C_I_delta_dB, 0);
        assert_within(rating.delta_L_lin_dB, dB, 0);
    }
}
END_TEST

/* By hand: the covered floor has 67 67.5 68 66.5 63 59.5 56 52.5 49 45.5 42 42 42 42 42 42. At a value of 59 the
 * deviations are 6 6.5 7 5.5 2 and 1 at 3150 Hz, 28.0 in all; at 58 they would be 34.0. Its energy sum is 73.99, so
 * C_I,r = 74 - 15 - 59 = 0 and C_I,delta = -11 - 0. */
START_TEST(reference_covering_is_19_dB)
{
    struct usc_improvement_rating rating;
    double improvement_dB[USC_RATED_BANDS], equivalent = NAN;

    ck_assert_int_eq(usc_rate_improvement(usc_reference_covering, USC_REFERENCE_HEAVY, &rating), 0);
    assert_within(rating.delta_Lw_dB, 19, 0);
    ck_assert_int_eq(rating.C_I_delta_dB, -11);
    assert_within(rating.delta_L_lin_dB, 8, 0);
    for (int i = 0; i < USC_RATED_BANDS; i++)
        improvement_dB[i] = usc_dB_from_tenths(usc_reference_covering[i]);
    assert_within(usc_delta_Lw_rated_dB(improvement_dB), rating.delta_Lw_dB, 0);
    ck_assert_int_eq(usc_Ln_eq_0_w_of_bare_floor(usc_heavy_reference_floor, &equivalent), 0);
    assert_within(equivalent, 78, 0);
}
END_TEST

/* C_I,delta by its definition, from the two ratings. */
START_TEST(adaptation_term_is_the_difference_of_the_floors)
{
    static const usc_tenths *const floors[] = {usc_heavy_reference_floor, usc_light_reference_floor_1_2,
                                               usc_light_reference_floor_3};
    uint64_t state = 8 + (uint64_t)_i;
    usc_tenths improvement[USC_RATED_BANDS], level[USC_RATED_BANDS];
    struct usc_improvement_rating rating;
    struct usc_rating bare, improved;

    for (int round = 0; round < 2000; round++) {
        for (int i = 0; i < USC_RATED_BANDS; i++) {
            improvement[i] = (usc_tenths)random_integer(&state, -100, 20 * i + 100);
            level[i] = (usc_tenths)(floors[_i][i] - improvement[i]);
        }
        ck_assert_int_eq(usc_rate_improvement(improvement, (enum usc_reference_floor)_i, &rating), 0);
        ck_assert_int_eq(usc_rate_impact(floors[_i], &bare), 0);
        ck_assert_int_eq(usc_rate_impact(level, &improved), 0);
        assert_within(rating.delta_Lw_dB, (bare.value - improved.value) / 10.0, 0);
        ck_assert_int_eq(rating.C_I_delta_dB, bare.C_I_dB - improved.C_I_dB);
        assert_within(rating.delta_L_lin_dB, rating.delta_Lw_dB + rating.C_I_delta_dB, 0);
    }
}
END_TEST

START_TEST(improvement_out_of_range_is_refused)
{
    static const usc_tenths odd[] = {INT16_MIN, -2400, 3790, INT16_MAX};
    usc_tenths improvement[USC_RATED_BANDS] = {0};
    struct usc_improvement_rating rating = {1, 2, 3};
    double equivalent = 4;

    ck_assert_int_lt(usc_rate_improvement(improvement, (enum usc_reference_floor)3, &rating), 0);
    ck_assert_int_lt(usc_rate_improvement(improvement, (enum usc_reference_floor) - 1, &rating), 0);
    for (size_t i = 0; i < sizeof odd / sizeof odd[0]; i++) {
        improvement[_i] = odd[i];
        ck_assert_int_lt(usc_rate_improvement(improvement, USC_REFERENCE_HEAVY, &rating), 0);
    }
    improvement[_i] = INT16_MIN;
    ck_assert_int_lt(usc_Ln_eq_0_w_of_bare_floor(improvement, &equivalent), 0);
    ck_assert(rating.delta_Lw_dB == 1 && rating.C_I_delta_dB == 2 && rating.delta_L_lin_dB == 3 && equivalent == 4);
}
END_TEST

Suite *reference_floor_suite(void)
{
    Suite *suite = suite_create("reference floor");
    TCase *floors = tcase_create("floors");

    tcase_add_loop_test(floors, no_improvement_is_0_on_every_floor, USC_REFERENCE_HEAVY, USC_REFERENCE_LIGHT_3 + 1);
    tcase_add_loop_test(floors, even_improvement_passes_through, USC_REFERENCE_HEAVY, USC_REFERENCE_LIGHT_3 + 1);
    tcase_add_test(floors, reference_covering_is_19_dB);
    tcase_add_loop_test(floors, adaptation_term_is_the_difference_of_the_floors, USC_REFERENCE_HEAVY,
                        USC_REFERENCE_LIGHT_3 + 1);
    tcase_add_loop_test(floors, improvement_out_of_range_is_refused, 0, USC_RATED_BANDS);
    suite_add_tcase(suite, floors);
    return suite;
}
