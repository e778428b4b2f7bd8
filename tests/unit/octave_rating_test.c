/* The octave rating against a plain search and at its edges. */
#include "acoustics/rating.h"
#include "assert_within.h"
#include "suites.h"
#include "unit/random_numbers.h"

/* ISO 717-2 as in GOST R 56770-2015, Table 3, written out again so that a slip in the table shows. */
static const int reference[USC_OCTAVE_BANDS] = {670, 670, 650, 620, 490};

static struct usc_rating plain_rating(const usc_tenths level[USC_OCTAVE_BANDS], int step)
{
    for (int shift = -4000;; shift += step) {
        int sum = 0;
        for (int i = 0; i < USC_OCTAVE_BANDS; i++) {
            int deviation = level[i] - (reference[i] + shift);
            sum += deviation > 0 ? deviation : 0;
        }
        if (sum <= 100)
            return (struct usc_rating){(usc_tenths)(650 - 50 + shift), (int16_t)sum, 0};
    }
}

static int plain_C_I_dB(const usc_tenths level[USC_OCTAVE_BANDS], int value)
{
    double energy = 0;

    for (int i = 0; i < USC_OCTAVE_BANDS; i++)
        energy += pow(10, level[i] / 100.0);
    return (int)floor(10 * log10(energy) + 0.5 + 1e-7) - 15 - value / 10;
}

static void random_octaves(usc_tenths level[USC_OCTAVE_BANDS], uint64_t *state, int spread)
{
    for (int i = 0; i < USC_OCTAVE_BANDS; i++)
        level[i] = (usc_tenths)(reference[i] + random_integer(state, -spread, spread));
}

/* A hundred thousand spectra in twenty tests, from near the curve to all over the range. */
START_TEST(octaves_like_a_plain_search)
{
    static const int spread[] = {20, 100, 400, 2300};
    uint64_t state = 3 + (uint64_t)_i;
    usc_tenths level[USC_OCTAVE_BANDS], deviation[USC_OCTAVE_BANDS];
    struct usc_rating rating;

    for (int round = 0; round < 5000; round++) {
        random_octaves(level, &state, spread[round % 4]);
        struct usc_rating plain = plain_rating(level, 10);
        int status = usc_rate_impact_octave(level, &rating), sum = 0;
        usc_unfavourable_deviations_octave(level, plain.value, deviation);
        for (int i = 0; i < USC_OCTAVE_BANDS; i++)
            sum += deviation[i];
        ck_assert_msg(status == 0 && rating.value == plain.value && rating.unfavourable_sum == plain.unfavourable_sum &&
                          rating.C_I_dB == plain_C_I_dB(level, plain.value) && sum == plain.unfavourable_sum,
                      "spectrum %d: status %d, value %d, sum %d, C_I %d; plainly %d and %d", round, status,
                      rating.value, rating.unfavourable_sum, rating.C_I_dB, plain.value, plain.unfavourable_sum);
    }
}
END_TEST

START_TEST(fine_octaves_like_a_plain_search)
{
    uint64_t state = 300 + (uint64_t)_i;
    usc_tenths level[USC_OCTAVE_BANDS];
    struct usc_rating rating;

    for (int round = 0; round < 1000; round++) {
        random_octaves(level, &state, 400);
        struct usc_rating plain = plain_rating(level, 1);
        int status = usc_rate_impact_octave_fine(level, &rating);
        ck_assert_msg(status == 0 && rating.value == plain.value && rating.unfavourable_sum == plain.unfavourable_sum &&
                          rating.C_I_dB == 0,
                      "spectrum %d: value %d, plainly %d", round, rating.value, plain.value);
    }
}
END_TEST

/* 5 times 2.0 dB is 10.0 and stays; a tenth more in one band moves the curve. */
START_TEST(sum_of_10_0_is_permitted_and_10_1_is_not)
{
    usc_tenths level[USC_OCTAVE_BANDS];
    struct usc_rating rating;

    for (int i = 0; i < USC_OCTAVE_BANDS; i++)
        level[i] = (usc_tenths)(reference[i] + 20);
    ck_assert_int_eq(usc_rate_impact_octave(level, &rating), 0);
    ck_assert_int_eq(rating.value, 600);
    ck_assert_int_eq(rating.unfavourable_sum, 100);
    ck_assert_int_eq(usc_rate_impact_octave_fine(level, &rating), 0);
    ck_assert_int_eq(rating.value, 600);

    level[_i]++;
    ck_assert_int_eq(usc_rate_impact_octave(level, &rating), 0);
    ck_assert_int_eq(rating.value, 610);
    ck_assert_int_eq(rating.unfavourable_sum, 101 - 50);
    ck_assert_int_eq(usc_rate_impact_octave_fine(level, &rating), 0);
    ck_assert_int_eq(rating.value, 601);
}
END_TEST

START_TEST(octaves_beyond_300_dB_are_refused)
{
    usc_tenths level[USC_OCTAVE_BANDS] = {0};
    struct usc_rating rating = {1, 2, 3};

    for (int sign = -1; sign <= 1; sign += 2) {
        level[_i] = (usc_tenths)(sign * 3001);
        ck_assert_int_lt(usc_rate_impact_octave(level, &rating), 0);
        ck_assert_int_lt(usc_rate_impact_octave_fine(level, &rating), 0);
        ck_assert(rating.value == 1 && rating.unfavourable_sum == 2 && rating.C_I_dB == 3);
        struct usc_rating set;
        level[_i] = (usc_tenths)(sign * 3000);
        ck_assert_int_eq(usc_rate_impact_octave(level, &set), 0);
        ck_assert_int_eq(set.value, plain_rating(level, 10).value);
    }
}
END_TEST

Suite *octave_rating_suite(void)
{
    Suite *suite = suite_create("octave rating");
    TCase *search = tcase_create("search"), *edges = tcase_create("edges");

    tcase_add_loop_test(search, octaves_like_a_plain_search, 0, 20);
    tcase_add_loop_test(search, fine_octaves_like_a_plain_search, 0, 10);
    suite_add_tcase(suite, search);
    tcase_add_loop_test(edges, sum_of_10_0_is_permitted_and_10_1_is_not, 0, USC_OCTAVE_BANDS);
    tcase_add_loop_test(edges, octaves_beyond_300_dB_are_refused, 0, USC_OCTAVE_BANDS);
    suite_add_tcase(suite, edges);
    return suite;
}
