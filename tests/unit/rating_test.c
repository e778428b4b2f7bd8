/* The rating against a plain search, at its edges, and the improvement on the reference floor. */
#include <string.h>

#include "acoustics/floating_floor.h"
#include "acoustics/rating.h"
#include "acoustics/reference_floor.h"
#include "assert_within.h"
#include "suites.h"
#include "unit/random_numbers.h"

/* Every shift from far below on, until the sum is permitted. */
static struct usc_rating plain_rating(const usc_tenths level[USC_RATED_BANDS], int step)
{
    int lowest = level[0];

    for (int i = 1; i < USC_RATED_BANDS; i++)
        lowest = level[i] < lowest ? level[i] : lowest;
    for (int shift = (lowest - 1000) / 10 * 10;; shift += step) {
        int sum = 0;
        for (int i = 0; i < USC_RATED_BANDS && sum <= 320; i++) {
            int deviation = level[i] - (usc_impact_reference[i] + shift);
            sum += deviation > 0 ? deviation : 0;
        }
        if (sum <= 320)
            return (struct usc_rating){(usc_tenths)(600 + shift), (int16_t)sum, 0};
    }
}

static int plain_C_I_dB(const usc_tenths level[USC_RATED_BANDS], int value)
{
    double energy = 0;

    for (int i = 0; i < 15; i++)
        energy += pow(10, level[i] / 100.0);
    return (int)floor(10 * log10(energy) + 0.5 + 1e-7) - 15 - value / 10;
}

static void random_spectrum(usc_tenths level[USC_RATED_BANDS], uint64_t *state)
{
    int spread = random_integer(state, 0, 3) * 100, middle = random_integer(state, 100, 900);
    int fall = random_integer(state, -20, 40);

    for (int i = 0; i < USC_RATED_BANDS; i++)
        level[i] = (usc_tenths)(middle - fall * i + random_integer(state, -spread, spread));
}

/* A million spectra in a hundred tests. One assertion a spectrum: each one costs more than the rating. */
START_TEST(whole_steps_like_a_plain_search)
{
    uint64_t state = 1 + (uint64_t)_i;
    usc_tenths level[USC_RATED_BANDS];
    struct usc_rating rating;

    for (int round = 0; round < 10000; round++) {
        random_spectrum(level, &state);
        struct usc_rating plain = plain_rating(level, 10);
        int status = usc_rate_impact(level, &rating);
        ck_assert_msg(status == 0 && rating.value == plain.value && rating.unfavourable_sum == plain.unfavourable_sum &&
                          rating.C_I_dB == plain_C_I_dB(level, plain.value),
                      "spectrum %d: status %d, value %d, sum %d, C_I %d; plainly %d and %d", round, status,
                      rating.value, rating.unfavourable_sum, rating.C_I_dB, plain.value, plain.unfavourable_sum);
    }
}
END_TEST

START_TEST(fine_steps_like_a_plain_search)
{
    uint64_t state = 1000 + (uint64_t)_i;
    usc_tenths level[USC_RATED_BANDS];
    struct usc_rating rating;

    for (int round = 0; round < 1000; round++) {
        random_spectrum(level, &state);
        struct usc_rating plain = plain_rating(level, 1);
        ck_assert_int_eq(usc_rate_impact_fine(level, &rating), 0);
        ck_assert_int_eq(rating.value, plain.value);
        ck_assert_int_eq(rating.unfavourable_sum, plain.unfavourable_sum);
        ck_assert_int_eq(rating.C_I_dB, 0);
    }
}
END_TEST

/* Levels anywhere between -300 and 300 dB, where the 16 bits are tightest. */
START_TEST(wild_spectra_like_a_plain_search)
{
    uint64_t state = 31;
    usc_tenths level[USC_RATED_BANDS];
    struct usc_rating rating;

    for (int round = 0; round < 3000; round++) {
        for (int i = 0; i < USC_RATED_BANDS; i++) {
            int kind = random_integer(&state, 0, 2);
            level[i] = (usc_tenths)(kind == 0 ? -3000 : kind == 1 ? 3000 : random_integer(&state, -3000, 3000));
        }
        ck_assert_int_eq(usc_rate_impact(level, &rating), 0);
        struct usc_rating plain = plain_rating(level, 10);
        ck_assert_int_eq(rating.value, plain.value);
        ck_assert_int_eq(rating.unfavourable_sum, plain.unfavourable_sum);
        ck_assert_int_eq(usc_rate_impact_fine(level, &rating), 0);
        ck_assert_int_eq(rating.value, plain_rating(level, 1).value);
    }
}
END_TEST

/* What is shown band by band adds up to the sum that was rated. */
START_TEST(deviations_add_up_to_the_sum)
{
    uint64_t state = 17;
    usc_tenths level[USC_RATED_BANDS], deviation[USC_RATED_BANDS];
    struct usc_rating rating;

    for (int round = 0; round < 2000; round++) {
        random_spectrum(level, &state);
        ck_assert_int_eq(usc_rate_impact(level, &rating), 0);
        usc_unfavourable_deviations(level, rating.value, deviation);
        int sum = 0;
        for (int i = 0; i < USC_RATED_BANDS; i++) {
            int above = level[i] - usc_impact_reference[i] - (rating.value - 600);
            ck_assert_int_eq(deviation[i], above > 0 ? above : 0);
            sum += deviation[i];
        }
        ck_assert_int_eq(sum, rating.unfavourable_sum);
    }
}
END_TEST

/* 50, 63 and 80 Hz raise the sum, 3150 Hz does not; a level out of range is refused and sets nothing. */
START_TEST(enlarged_range_takes_in_three_bands)
{
    usc_tenths level[USC_ENLARGED_BANDS];
    int C_I = 99;

    for (int i = 0; i < USC_ENLARGED_BANDS; i++)
        level[i] = -3000;
    for (int band = 0; band < 18; band++) {
        level[band] = 605; /* alone: rounded to 61 */
        ck_assert_int_eq(usc_C_I_50_2500_dB(level, 40, &C_I), 0);
        ck_assert_int_eq(C_I, 61 - 15 - 40);
        level[band] = 604;
        ck_assert_int_eq(usc_C_I_50_2500_dB(level, 40, &C_I), 0);
        ck_assert_int_eq(C_I, 60 - 15 - 40);
        level[band] = -3000;
    }
    level[0] = level[1] = level[2] = level[3] = 600; /* 66.02 */
    level[18] = 900;
    ck_assert_int_eq(usc_C_I_50_2500_dB(level, 50, &C_I), 0);
    ck_assert_int_eq(C_I, 66 - 15 - 50);
    for (int band = 0; band < USC_ENLARGED_BANDS; band++) {
        const usc_tenths before = level[band];
        level[band] = 3001;
        ck_assert_int_lt(usc_C_I_50_2500_dB(level, 50, &C_I), 0);
        level[band] = before;
    }
    ck_assert_int_eq(C_I, 1);
}
END_TEST

static void reference_plus(usc_tenths level[USC_RATED_BANDS], int each)
{
    for (int i = 0; i < USC_RATED_BANDS; i++)
        level[i] = (usc_tenths)(usc_impact_reference[i] + each);
}

/* 16 times 2.0 dB is 32.0 and stays; a tenth more in one band moves the curve. */
START_TEST(sum_of_32_0_is_permitted_and_32_1_is_not)
{
    usc_tenths level[USC_RATED_BANDS];
    struct usc_rating rating;

    reference_plus(level, 20);
    ck_assert_int_eq(usc_rate_impact(level, &rating), 0);
    ck_assert_int_eq(rating.value, 600);
    ck_assert_int_eq(rating.unfavourable_sum, 320);
    ck_assert_int_eq(usc_rate_impact_fine(level, &rating), 0);
    ck_assert_int_eq(rating.value, 600);

    level[5]++;
    ck_assert_int_eq(usc_rate_impact(level, &rating), 0);
    ck_assert_int_eq(rating.value, 610);
    ck_assert_int_eq(rating.unfavourable_sum, 321 - 160);
    ck_assert_int_eq(usc_rate_impact_fine(level, &rating), 0);
    ck_assert_int_eq(rating.value, 601);
    ck_assert_int_eq(rating.unfavourable_sum, 321 - 16);
}
END_TEST

START_TEST(levels_beyond_300_dB_are_refused)
{
    usc_tenths level[USC_RATED_BANDS];
    struct usc_rating rating = {1, 2, 3};

    for (int band = 0; band < USC_RATED_BANDS; band++) {
        for (int sign = -1; sign <= 1; sign += 2) {
            reference_plus(level, 0);
            level[band] = (usc_tenths)(sign * 3001);
            ck_assert_int_lt(usc_rate_impact(level, &rating), 0);
            ck_assert_int_lt(usc_rate_impact_fine(level, &rating), 0);
            ck_assert(rating.value == 1 && rating.unfavourable_sum == 2 && rating.C_I_dB == 3);
            level[band] = (usc_tenths)(sign * 3000);
            struct usc_rating set = rating;
            ck_assert_int_eq(usc_rate_impact(level, &set), 0);
        }
    }
    level[3] = INT16_MIN;
    ck_assert_int_lt(usc_rate_impact(level, &rating), 0);
}
END_TEST

/* Another level all over moves the value by the same whole decibels and leaves C_I. */
START_TEST(rating_follows_the_level)
{
    uint64_t state = 12;
    usc_tenths level[USC_RATED_BANDS], louder[USC_RATED_BANDS];
    struct usc_rating before, after;

    for (int round = 0; round < 2000; round++) {
        random_spectrum(level, &state);
        int by = random_integer(&state, -30, 30);
        for (int i = 0; i < USC_RATED_BANDS; i++)
            louder[i] = (usc_tenths)(level[i] + 10 * by);
        usc_rate_impact(level, &before);
        usc_rate_impact(louder, &after);
        ck_assert_int_eq(after.value, before.value + 10 * by);
        ck_assert_int_eq(after.C_I_dB, before.C_I_dB);
        louder[random_integer(&state, 0, USC_RATED_BANDS - 1)] += 37;
        int one_band_more = after.value;
        usc_rate_impact(louder, &after);
        ck_assert_int_ge(after.value, one_band_more);
    }
}
END_TEST

/* ISO 717-2, Annex A: the sum is rounded before 15 and Ln,w are taken off, and 3150 Hz is not in it. */
START_TEST(adaptation_term_rounds_the_sum_first)
{
    usc_tenths level[USC_RATED_BANDS];
    struct usc_rating rating;

    for (int i = 0; i < USC_RATED_BANDS; i++)
        level[i] = -3000;
    level[7] = 605; /* 60.5 alone at 500 Hz, rounded to 61; rated 60.5 - 32.0, the next whole decibel up */
    ck_assert_int_eq(usc_rate_impact(level, &rating), 0);
    ck_assert_int_eq(rating.value, 290);
    ck_assert_int_eq(rating.C_I_dB, 61 - 15 - 29);
    level[7] = 604;
    ck_assert_int_eq(usc_rate_impact(level, &rating), 0);
    ck_assert_int_eq(rating.value, 290);
    ck_assert_int_eq(rating.C_I_dB, 60 - 15 - 29);
    level[7] = -3000;
    level[15] = 600;
    ck_assert_int_eq(usc_rate_impact(level, &rating), 0);
    ck_assert_int_eq(rating.C_I_dB, -288 - 15 - rating.value / 10); /* 15 bands of -300 */
}
END_TEST

START_TEST(halves_are_rounded_up)
{
    ck_assert_int_eq(usc_tenths_from_dB(60.05), 601);
    ck_assert_int_eq(usc_tenths_from_dB(60.0499), 600);
    ck_assert_int_eq(usc_tenths_from_dB(60.15), 602);
    ck_assert_int_eq(usc_tenths_from_dB(60.149999), 601);
    ck_assert_int_eq(usc_tenths_from_dB(-0.05), 0);
    ck_assert_int_eq(usc_tenths_from_dB(-0.0501), -1);
    ck_assert_int_eq(usc_tenths_from_dB(-3000), -30000);
    assert_within(usc_round_to_tenth_dB(60.05), 60.1, 1e-12);
    assert_within(usc_round_to_tenth_dB(60.0499), 60.0, 1e-12);
}
END_TEST

static void spectrum_of(double slope_dB, double f0_Hz, double improvement_dB[USC_RATED_BANDS])
{
    for (int i = 0; i < USC_RATED_BANDS; i++)
        improvement_dB[i] = usc_improvement_dB(slope_dB, usc_band_Hz[USC_FIRST_RATED + i], f0_Hz);
}

static void check_fast_form(double slope_dB, double f0_Hz)
{
    double improvement_dB[USC_RATED_BANDS];

    spectrum_of(slope_dB, f0_Hz, improvement_dB);
    double plain = usc_delta_Lw_rated_fine_dB(improvement_dB),
           fast = usc_delta_Lw_rated_of_resonance_dB(slope_dB, f0_Hz);
    ck_assert_msg(fast == plain || (isnan(fast) && isnan(plain)), "slope %g, f0 %.17g: fast %.17g, plain %.17g",
                  slope_dB, f0_Hz, fast, plain);
}

START_TEST(fast_form_is_the_rating_of_the_spectrum)
{
    uint64_t state = 4711;

    for (int i = 0; i < 40000; i++) {
        check_fast_form(30, pow(10, random_between(&state, 0.5, 4)));
        check_fast_form(40, random_between(&state, 20, 400));
        check_fast_form(random_between(&state, -50, 2000), random_between(&state, 1, 5000));
    }
    for (int band = 0; band < USC_BANDS; band++) {
        check_fast_form(30, usc_band_Hz[band]);
        check_fast_form(40, nextafter(usc_band_Hz[band], 0));
        check_fast_form(40, nextafter(usc_band_Hz[band], 1e9));
    }
}
END_TEST

/* f0 at which one band of the improvement is a half of a tenth, as near as binary can: the rounding edge. */
START_TEST(fast_form_agrees_on_rounding_edges)
{
    for (int band = USC_FIRST_RATED; band < USC_FIRST_RATED + USC_RATED_BANDS; band++)
        for (int tenths = 0; tenths < 400; tenths++) {
            double f0 = usc_band_Hz[band] / pow(10, (tenths + 0.5 - 1e-7) / 10 / 30);
            for (int step = -3; step <= 3; step++)
                check_fast_form(30, f0 * (1 + step * 2.3e-16));
        }
}
END_TEST

START_TEST(odd_input_gives_nan_or_nothing_odd)
{
    const double odd[] = {NAN, INFINITY, -INFINITY, 0, -0.0, -50, 1e-300, 1e300, 5e-324};
    double improvement_dB[USC_RATED_BANDS] = {0};

    for (size_t i = 0; i < sizeof odd / sizeof odd[0]; i++) {
        check_fast_form(30, odd[i]);
        check_fast_form(odd[i], 50);
        check_fast_form(odd[i], odd[i]);
        check_fast_form(0, odd[i]);
    }
    ck_assert(isnan(usc_delta_Lw_rated_of_resonance_dB(30, NAN)));
    ck_assert(isnan(usc_delta_Lw_rated_of_resonance_dB(30, 0)));
    assert_within(usc_delta_Lw_rated_of_resonance_dB(30, INFINITY), 0, 0.95);
    for (int band = 0; band < USC_RATED_BANDS; band++) {
        improvement_dB[band] = NAN;
        ck_assert(isnan(usc_delta_Lw_rated_dB(improvement_dB)));
        improvement_dB[band] = 1e9;
        ck_assert(isnan(usc_delta_Lw_rated_fine_dB(improvement_dB)));
        improvement_dB[band] = 500;
        ck_assert(isnan(usc_delta_Lw_rated_fine_dB(improvement_dB)));
        improvement_dB[band] = 0;
    }
}
END_TEST

/* The two ways to dLw of a mineral screed, over the whole range of the formula. */
START_TEST(rating_of_the_spectrum_and_the_formula_are_near)
{
    double least = INFINITY, most = -INFINITY;

    for (int mass = 60; mass <= 160; mass++)
        for (int stiffness = 60; stiffness <= 500; stiffness++) {
            double f0 = usc_resonance_Hz(stiffness / 10.0, mass);
            double difference =
                usc_delta_Lw_rated_of_resonance_dB(30, f0) - usc_delta_Lw_mineral_dB(mass, stiffness / 10.0);
            least = fmin(least, difference);
            most = fmax(most, difference);
        }
    ck_assert_msg(least >= -0.2 && most <= 1.35, "from %g to %g", least, most);
    ck_assert_msg(least < 0 && most > 1, "from %g to %g: narrower than known", least, most);
}
END_TEST

Suite *rating_suite(void)
{
    Suite *suite = suite_create("rating");
    TCase *search = tcase_create("search"), *edges = tcase_create("edges"), *floor = tcase_create("reference floor");

    tcase_add_loop_test(search, whole_steps_like_a_plain_search, 0, 100);
    tcase_add_loop_test(search, fine_steps_like_a_plain_search, 0, 10);
    tcase_add_test(search, wild_spectra_like_a_plain_search);
    suite_add_tcase(suite, search);
    tcase_add_test(edges, sum_of_32_0_is_permitted_and_32_1_is_not);
    tcase_add_test(edges, levels_beyond_300_dB_are_refused);
    tcase_add_test(edges, deviations_add_up_to_the_sum);
    tcase_add_test(edges, enlarged_range_takes_in_three_bands);
    tcase_add_test(edges, rating_follows_the_level);
    tcase_add_test(edges, adaptation_term_rounds_the_sum_first);
    tcase_add_test(edges, halves_are_rounded_up);
    suite_add_tcase(suite, edges);
    tcase_add_test(floor, fast_form_is_the_rating_of_the_spectrum);
    tcase_add_test(floor, fast_form_agrees_on_rounding_edges);
    tcase_add_test(floor, odd_input_gives_nan_or_nothing_odd);
    tcase_add_test(floor, rating_of_the_spectrum_and_the_formula_are_near);
    suite_add_tcase(suite, floor);
    return suite;
}
