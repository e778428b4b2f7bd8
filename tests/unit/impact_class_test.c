/* The impact class of ASTM E989 against a plain search, and the rule of 8 dB on both sides. */
#include "acoustics/impact_class.h"
#include "assert_within.h"
#include "suites.h"
#include "unit/random_numbers.h"

/* The contour relative to its value at 500 Hz, as ASTM E989 draws it (from memory). */
static const int contour[USC_RATED_BANDS] = {2, 2, 2, 2, 2, 2, 1, 0, -1, -2, -3, -6, -9, -12, -15, -18};

static struct usc_impact_class plain_class(const usc_tenths level[USC_RATED_BANDS])
{
    int whole[USC_RATED_BANDS];

    for (int i = 0; i < USC_RATED_BANDS; i++)
        whole[i] = (int)floor(level[i] / 10.0 + 0.5);
    for (int at_500 = -400;; at_500++) {
        int sum = 0, most = 0;
        for (int i = 0; i < USC_RATED_BANDS; i++) {
            int deficiency = whole[i] - (at_500 + contour[i]);
            sum += deficiency > 0 ? deficiency : 0;
            most = deficiency > most ? deficiency : most;
        }
        if (sum <= 32 && most <= 8)
            return (struct usc_impact_class){110 - at_500, sum, most, false};
    }
}

/* A hundred thousand spectra in twenty tests. Few bands stand out in every other one, so that the 8 dB rule governs. */
START_TEST(class_like_a_plain_search)
{
    uint64_t state = 5 + (uint64_t)_i;
    usc_tenths level[USC_RATED_BANDS];
    struct usc_impact_class class;
    int by_single_band = 0;

    for (int round = 0; round < 5000; round++) {
        int spread = round % 5 == 0 ? 2000 : 60 * (round % 5);
        for (int i = 0; i < USC_RATED_BANDS; i++)
            level[i] = (usc_tenths)(600 + 10 * contour[i] + random_integer(&state, -spread, spread));
        level[random_integer(&state, 0, USC_RATED_BANDS - 1)] += (usc_tenths)(round % 2 * 90);
        struct usc_impact_class plain = plain_class(level);
        int status = usc_rate_impact_class(level, &class);
        ck_assert_msg(status == 0 && class.value == plain.value &&
                          class.unfavourable_sum_dB == plain.unfavourable_sum_dB &&
                          class.largest_deficiency_dB == plain.largest_deficiency_dB,
                      "spectrum %d: status %d, class %d, plainly %d", round, status, class.value, plain.value);
        by_single_band += class.by_single_band;
    }
    ck_assert_int_gt(by_single_band, 500);
    ck_assert_int_lt(by_single_band, 4500);
}
END_TEST

static void contour_at(usc_tenths level[USC_RATED_BANDS], int at_500_dB)
{
    for (int i = 0; i < USC_RATED_BANDS; i++)
        level[i] = (usc_tenths)(10 * (at_500_dB + contour[i]));
}

/* One band over a silent rest: 8 dB stay, 9 dB move the contour although the sum is far from 32. */
START_TEST(single_deficiency_of_8_dB_is_permitted_and_9_is_not)
{
    usc_tenths level[USC_RATED_BANDS];
    struct usc_impact_class class;

    for (int excess = 8; excess <= 9; excess++) {
        contour_at(level, 60);
        for (int i = 0; i < 3; i++) /* these hold the contour at 60: 3 times 8 and the one below make 32 */
            level[(_i + 1 + i) % USC_RATED_BANDS] += 80;
        level[_i] = (usc_tenths)(level[_i] + 10 * excess);
        ck_assert_int_eq(usc_rate_impact_class(level, &class), 0);
        ck_assert_int_eq(class.value, excess == 8 ? 50 : 49);
        ck_assert_int_eq(class.largest_deficiency_dB, 8);
        ck_assert_int_eq(class.unfavourable_sum_dB, excess == 8 ? 32 : 29);
        ck_assert(!class.by_single_band); /* the sum of 33 moves it as well */

        contour_at(level, 20);
        level[_i] = (usc_tenths)(10 * (60 + contour[_i] + excess));
        ck_assert_int_eq(usc_rate_impact_class(level, &class), 0);
        ck_assert_int_eq(class.value, excess == 8 ? 50 : 49);
        ck_assert_int_eq(class.unfavourable_sum_dB, 8);
        ck_assert(class.by_single_band); /* the sum alone would let the contour down to 36 */
    }
}
END_TEST

/* 16 times 2 dB is 32; 33 moves the contour. */
START_TEST(sum_of_32_is_permitted_and_33_is_not)
{
    usc_tenths level[USC_RATED_BANDS];
    struct usc_impact_class class;

    contour_at(level, 62);
    ck_assert_int_eq(usc_rate_impact_class(level, &class), 0);
    ck_assert_int_eq(class.value, 50);
    ck_assert_int_eq(class.unfavourable_sum_dB, 32);
    level[_i] += 10;
    ck_assert_int_eq(usc_rate_impact_class(level, &class), 0);
    ck_assert_int_eq(class.value, 49);
    ck_assert_int_eq(class.unfavourable_sum_dB, 33 - 16);
    ck_assert(!class.by_single_band);
}
END_TEST

/* Levels are rounded before the contour is moved: 2.4 dB count as 2, 2.5 as 3. */
START_TEST(levels_are_rounded_half_up)
{
    usc_tenths level[USC_RATED_BANDS];
    struct usc_impact_class class;

    contour_at(level, 62);
    level[_i] += 4;
    ck_assert_int_eq(usc_rate_impact_class(level, &class), 0);
    ck_assert_int_eq(class.value, 50);
    level[_i] += 1;
    ck_assert_int_eq(usc_rate_impact_class(level, &class), 0);
    ck_assert_int_eq(class.value, 49);
    contour_at(level, -60);
    level[_i] += 5;
    ck_assert_int_eq(usc_rate_impact_class(level, &class), 0);
    ck_assert_int_eq(class.value, plain_class(level).value);
}
END_TEST

START_TEST(class_beyond_300_dB_is_refused)
{
    usc_tenths level[USC_RATED_BANDS] = {0};
    struct usc_impact_class class = {1, 2, 3, true};

    for (int sign = -1; sign <= 1; sign += 2) {
        level[_i] = (usc_tenths)(sign * 3001);
        ck_assert_int_lt(usc_rate_impact_class(level, &class), 0);
    }
    level[_i] = INT16_MAX;
    ck_assert_int_lt(usc_rate_impact_class(level, &class), 0);
    level[_i] = INT16_MIN;
    ck_assert_int_lt(usc_rate_impact_class(level, &class), 0);
    ck_assert(class.value == 1 && class.by_single_band);
}
END_TEST

START_TEST(class_is_named_by_what_was_measured)
{
    ck_assert_str_eq(usc_impact_class_name(USC_CLASS_OF_LABORATORY), "IIC");
    ck_assert_str_eq(usc_impact_class_name(USC_CLASS_OF_NORMALISED), "AIIC");
    ck_assert_str_eq(usc_impact_class_name(USC_CLASS_OF_STANDARDISED), "NISR");
    ck_assert_str_eq(usc_impact_class_name(USC_CLASS_OF_UNCORRECTED), "ISR");
}
END_TEST

Suite *impact_class_suite(void)
{
    Suite *suite = suite_create("impact class");
    TCase *search = tcase_create("search"), *edges = tcase_create("edges");

    tcase_add_loop_test(search, class_like_a_plain_search, 0, 20);
    suite_add_tcase(suite, search);
    tcase_add_loop_test(edges, single_deficiency_of_8_dB_is_permitted_and_9_is_not, 0, USC_RATED_BANDS);
    tcase_add_loop_test(edges, sum_of_32_is_permitted_and_33_is_not, 0, USC_RATED_BANDS);
    tcase_add_loop_test(edges, levels_are_rounded_half_up, 0, USC_RATED_BANDS);
    tcase_add_loop_test(edges, class_beyond_300_dB_is_refused, 0, USC_RATED_BANDS);
    tcase_add_test(edges, class_is_named_by_what_was_measured);
    suite_add_tcase(suite, edges);
    return suite;
}
