/* From a table of measured levels to the single number, by hand-made tables. */
#include <stdlib.h>
#include <string.h>

#include "study/measured.h"

#include "assert_within.h"
#include "suites.h"
#include "unit/reading_fixture.h"

static struct rated rated;
static struct raw_measurement raw;
static struct measurement level;
static enum band_flag flag[USC_BANDS];
static double low_frequency_bands;

static const struct rate_options situation_B = {.situation = USC_SITUATION_B, .confidence_percent = 95};

/* Measured floor of a site report, England 2022: L'nT,w 52 dB, C_I -1, sum 25.6 dB. */
static const double floor_dB[USC_RATED_BANDS] = {56.6, 58.8, 60.6, 59.9, 58.3, 52.6, 47.4, 46.7,
                                                 43.5, 42.3, 39.5, 40.1, 38.3, 38.6, 37.1, 35.3};

static struct measurement third_octaves(enum measured_quantity quantity, const double value_dB[USC_RATED_BANDS])
{
    struct measurement measurement = {.quantity = quantity};
    for (int i = 0; i < USC_RATED_BANDS; i++) {
        measurement.has[USC_FIRST_RATED + i] = true;
        measurement.value_dB[USC_FIRST_RATED + i] = value_dB[i];
    }
    return measurement;
}

static void rate_floor(enum measured_quantity quantity, const struct limit *limit)
{
    struct rate_options options = situation_B;
    struct measurement const measurement = third_octaves(quantity, floor_dB);
    options.limit = limit;
    study_rate(&measurement, NULL, &options, arena, &rated);
}

START_TEST(a_measured_floor)
{
    rate_floor(MEASURED_L_PRIME_NT, NULL);
    ck_assert_str_eq(rated.descriptor, "L_prime_nT_w");
    assert_within(rated.value_dB, 52, 0);
    assert_within(rated.C_I_dB, -1, 0);
    assert_within(rated.unfavourable_sum_dB, 25.6, 1e-9);
    ck_assert(isnan(rated.C_I_50_2500_dB) && isnan(rated.delta_Lw_dB) && isnan(rated.Ln_eq_0_w_dB));
    ck_assert_ptr_null(rated.limit);
    ck_assert_int_eq(rated.meets_limit, ANSWER_NONE);
}
END_TEST

/* The lowest tenth that keeps the sum at 32.0 dB. */
START_TEST(steps_of_a_tenth)
{
    rate_floor(MEASURED_L_PRIME_NT, NULL);
    ck_assert(rated.value_fine_dB <= rated.value_dB && rated.value_fine_dB > rated.value_dB - 1);
    double const shift_dB = rated.value_fine_dB - 60; /* the curve at 500 Hz */
    static const double curve_dB[] = {62, 62, 62, 62, 62, 62, 61, 60, 59, 58, 57, 54, 51, 48, 45, 42};
    double sum_dB = 0, lower_sum_dB = 0;
    for (int i = 0; i < USC_RATED_BANDS; i++) {
        sum_dB += fmax(0, floor_dB[i] - curve_dB[i] - shift_dB);
        lower_sum_dB += fmax(0, floor_dB[i] - curve_dB[i] - shift_dB + 0.1);
    }
    ck_assert(sum_dB <= 32.0 + 1e-9 && lower_sum_dB > 32.0 + 1e-9);
}
END_TEST

/* 52 dB at 500 Hz, where the reference is 60: moved by -8, so 54 at 100 Hz. */
START_TEST(bands_with_the_shifted_curve)
{
    rate_floor(MEASURED_L_PRIME_NT, NULL);
    const struct rated_bands *bands = rated.bands;
    double sum_dB = 0;
    ck_assert_uint_eq(bands->frequency_Hz.count, USC_RATED_BANDS);
    for (size_t i = 0; i < bands->unfavourable_dB.count; i++)
        sum_dB += bands->unfavourable_dB.at[i];
    assert_within(bands->reference_dB.at[0], 54, 1e-9);
    assert_within(bands->unfavourable_dB.at[0], 2.6, 1e-9);
    assert_within(bands->unfavourable_dB.at[1], 4.8, 1e-9);
    assert_within(bands->unfavourable_dB.at[6], 0, 0);
    assert_within(sum_dB, 25.6, 1e-9);
}
END_TEST

static const struct {
    double level_dB[USC_RATED_BANDS];
    double value_dB, C_I_dB;
} reference_floors[] = {
    {{67, 67.5, 68, 68.5, 69, 69.5, 70, 70.5, 71, 71.5, 72, 72, 72, 72, 72, 72}, 78, -11},
    {{78, 78, 78, 78, 78, 78, 76, 74, 72, 69, 66, 63, 60, 57, 54, 51}, 72, 0},
    {{69, 72, 75, 78, 78, 78, 78, 78, 78, 76, 74, 72, 69, 66, 63, 60}, 75, -3},
};

START_TEST(reference_floor)
{
    struct measurement const measurement = third_octaves(MEASURED_LN, reference_floors[_i].level_dB);
    struct rated_briefly brief;
    study_rate(&measurement, NULL, &situation_B, arena, &rated);
    assert_within(rated.value_dB, reference_floors[_i].value_dB, 0);
    assert_within(rated.C_I_dB, reference_floors[_i].C_I_dB, 0);
    ck_assert(isnan(rated.expanded_uncertainty_dB)); /* of field levels only */
    ck_assert(rate_briefly(&measurement, &brief));
    assert_within(brief.value_dB, rated.value_dB, 0);
    assert_within(brief.C_I_dB, rated.C_I_dB, 0);
    assert_within(brief.unfavourable_sum_dB, rated.unfavourable_sum_dB, 0);
}
END_TEST

START_TEST(improvement_of_the_reference_covering)
{
    static const double delta_L_dB[USC_RATED_BANDS] = {0, 0, 0, 2, 6, 10, 14, 18, 22, 26, 30, 30, 30, 30, 30, 30};
    struct measurement const measurement = third_octaves(MEASURED_DELTA_L, delta_L_dB);
    study_rate(&measurement, NULL, &situation_B, arena, &rated);
    assert_within(rated.delta_Lw_dB, 19, 0);
    assert_within(rated.value_dB, 19, 0);
    assert_within(rated.delta_L_lin_dB, rated.delta_Lw_dB + rated.C_I_delta_dB, 0);
    ck_assert(isnan(rated.C_I_dB) && isnan(rated.expanded_uncertainty_dB));
    ck_assert_ptr_null(rated.impact_class_name);
}
END_TEST

START_TEST(an_improvement_in_octaves_has_no_number)
{
    struct measurement measurement = {.quantity = MEASURED_DELTA_L, .octave = true};
    struct rated_briefly brief;
    study_rate(&measurement, NULL, &situation_B, arena, &rated);
    ck_assert(isnan(rated.value_dB) && isnan(rated.delta_Lw_dB) && !rate_briefly(&measurement, &brief));
}
END_TEST

/* 78 - 19 = 59 measured with the covering on the heavy reference floor. */
START_TEST(bare_floor_from_a_covered_one)
{
    static const double covered_dB[USC_RATED_BANDS] = {67, 67.5, 68, 66.5, 63, 59.5, 56, 52.5,
                                                       49, 45.5, 42, 42,   42, 42,   42, 42};
    struct rate_options options = situation_B;
    struct measurement measurement = third_octaves(MEASURED_LN, covered_dB);
    options.covered = true;
    study_rate(&measurement, NULL, &options, arena, &rated);
    assert_within(rated.value_dB, 59, 0);
    assert_within(rated.Ln_eq_0_w_dB, 78, 0);
    measurement.quantity = MEASURED_L_PRIME_N; /* a field level is none of the floor alone */
    study_rate(&measurement, NULL, &options, arena, &rated);
    ck_assert(isnan(rated.Ln_eq_0_w_dB));
}
END_TEST

/* Verdicts on 52 (-1) dB with an expanded uncertainty of 1.65 dB. */
static const struct {
    enum measured_quantity quantity;
    struct limit limit;
    double margin_dB; /* NaN: left open */
    enum answer meets, beyond_doubt;
} verdicts[] = {
    {MEASURED_L_PRIME_NT, {.descriptor = DESCRIPTOR_L_PRIME_NT_W, .value_dB = 54}, 2, ANSWER_YES, ANSWER_YES},
    {MEASURED_L_PRIME_NT, {.descriptor = DESCRIPTOR_L_PRIME_NT_W, .value_dB = 53}, 1, ANSWER_YES, ANSWER_NO},
    {MEASURED_L_PRIME_NT, {.descriptor = DESCRIPTOR_L_PRIME_NT_W, .value_dB = 52}, 0, ANSWER_YES, ANSWER_NO},
    {MEASURED_L_PRIME_NT, {.descriptor = DESCRIPTOR_L_PRIME_NT_W, .value_dB = 51}, -1, ANSWER_NO, ANSWER_NO},
    {MEASURED_L_PRIME_NT, {.descriptor = DESCRIPTOR_L_PRIME_NT_W_C_I, .value_dB = 51}, 0, ANSWER_YES, ANSWER_NO},
    {MEASURED_L_PRIME_NT, {.descriptor = DESCRIPTOR_L_PRIME_N_W, .value_dB = 60}, NAN, ANSWER_NONE, ANSWER_NONE},
    {MEASURED_L_PRIME_NT,
     {.descriptor = DESCRIPTOR_L_PRIME_NT_W_C_I_50_2500, .value_dB = 60},
     NAN,
     ANSWER_NONE,
     ANSWER_NONE}, /* 50..80 Hz were not measured */
    {MEASURED_L_PRIME_N, {.descriptor = DESCRIPTOR_L_PRIME_N_W, .value_dB = 50}, -2, ANSWER_NO, ANSWER_NO},
    {MEASURED_DELTA_L, {.descriptor = DESCRIPTOR_L_PRIME_N_W, .value_dB = 50}, NAN, ANSWER_NONE, ANSWER_NONE},
};

START_TEST(verdict)
{
    rate_floor(verdicts[_i].quantity, &verdicts[_i].limit);
    ck_assert_ptr_nonnull(rated.limit);
    if (isnan(verdicts[_i].margin_dB))
        ck_assert(isnan(rated.margin_dB));
    else
        assert_within(rated.margin_dB, verdicts[_i].margin_dB, 0);
    ck_assert_int_eq(rated.meets_limit, verdicts[_i].meets);
    ck_assert_int_eq(rated.meets_beyond_doubt, verdicts[_i].beyond_doubt);
}
END_TEST

/* A class is good when it is high; a laboratory level has no uncertainty in situ, so no statement with it. */
START_TEST(verdict_on_a_class)
{
    struct limit limit = {.descriptor = DESCRIPTOR_IIC, .sense = SENSE_AT_LEAST, .value_dB = 50};
    rate_floor(MEASURED_LN, &limit);
    ck_assert_str_eq(rated.impact_class_name, "IIC");
    assert_within(rated.margin_dB, rated.IIC - 50, 0);
    ck_assert_int_eq(rated.meets_limit, ANSWER_YES);
    ck_assert_int_eq(rated.meets_beyond_doubt, ANSWER_NONE);
    limit.value_dB = rated.IIC;
    rate_floor(MEASURED_LN, &limit);
    ck_assert_int_eq(rated.meets_limit, ANSWER_YES);
    limit.value_dB = rated.IIC + 1;
    rate_floor(MEASURED_LN, &limit);
    ck_assert_int_eq(rated.meets_limit, ANSWER_NO);
}
END_TEST

static const struct {
    enum usc_measurement_situation situation;
    double confidence_percent, standard_dB, factor, expanded_dB;
} uncertainties[] = {
    {USC_SITUATION_A, 95, 1.5, 1.65, 2.475},  {USC_SITUATION_B, 95, 1.0, 1.65, 1.65},
    {USC_SITUATION_C, 95, 0.5, 1.65, 0.825},  {USC_SITUATION_B, 84, 1.0, 1.00, 1.00},
    {USC_SITUATION_B, 97.5, 1.0, 1.96, 1.96},
};

START_TEST(uncertainty)
{
    struct rate_options const options = {.situation = uncertainties[_i].situation,
                                         .confidence_percent = uncertainties[_i].confidence_percent};
    struct measurement const measurement = third_octaves(MEASURED_L_PRIME_N, floor_dB);
    study_rate(&measurement, NULL, &options, arena, &rated);
    assert_within(rated.standard_uncertainty_dB, uncertainties[_i].standard_dB, 0);
    assert_within(rated.coverage_factor, uncertainties[_i].factor, 0);
    assert_within(rated.expanded_uncertainty_dB, uncertainties[_i].expanded_dB, 1e-12);
}
END_TEST

/* Readings */

#define RATED_FROM_160                                                                                                 \
    "160;60;;0.5;\n200;60;;0.5;\n250;60;;0.5;\n315;60;;0.5;\n400;60;;0.5;\n500;60;;0.5;\n630;60;;0.5;\n"               \
    "800;60;;0.5;\n1000;60;;0.5;\n1250;60;;0.5;\n1600;60;;0.5;\n2000;60;;0.5;\n2500;60;;0.5;\n3150;60;;0.5;\n"
#define HEADER "frequency_Hz;level_dB;background_dB;reverberation_time_s;corner_dB\n"

static bool levels_of(const char *rows, struct level_options options)
{
    const char *text = arena_printf(arena, "%s%s%s", HEADER, rows, RATED_FROM_160);
    ck_assert_msg(raw_measurement_read(&raw, arena, &problems, "t.csv", text, strlen(text)), "%s",
                  problem_lines(&problems));
    return measured_levels(&raw, &options, "t.csv", &problems, &level, flag, &low_frequency_bands);
}

/* 10 lg((1e6 + 1e7)/2) = 67.404 dB; mean time 1 s: less 3.010 dB. At 125 Hz 60 dB and 0.5 s stay 60. */
START_TEST(positions_and_reverberation_time)
{
    ck_assert(levels_of("100;60;;0.8;\n100;70;;1.2;\n125;60;;0.5;\n", (struct level_options){.volume_m3 = NAN}));
    ck_assert_int_eq(level.quantity, MEASURED_L_PRIME_NT);
    assert_within(level.value_dB[3], 64.393327, 1e-6);
    assert_within(level.value_dB[4], 60, 1e-12);
    ck_assert(!level.has[2]);
}
END_TEST

/* A = 0.16 * 50/0.8 = 10 m2 leaves 60 dB; 0.16 * 50/0.4 = 20 m2 adds 3.010 dB. */
START_TEST(absorption)
{
    ck_assert(
        levels_of("100;60;;0.8;\n125;60;;0.4;\n", (struct level_options){.level = FIELD_L_PRIME_N, .volume_m3 = 50}));
    ck_assert_int_eq(level.quantity, MEASURED_L_PRIME_N);
    assert_within(level.value_dB[3], 60, 1e-9);
    assert_within(level.value_dB[4], 63.0103, 1e-4);
}
END_TEST

/* Of a level of 60 dB: 10 lg(10^6 - 10^(Lb/10)) within the window; 6 dB and nearer 1.3 dB off. */
static const struct {
    enum usc_background_method method;
    const char *background;
    double level_dB;
    enum band_flag flag;
} backgrounds[] = {
    {USC_BACKGROUND_FIELD, "49.9", 60, BAND_FINE},
    {USC_BACKGROUND_FIELD, "50", 59.542425, BAND_BACKGROUND_CORRECTED},
    {USC_BACKGROUND_FIELD, "53.9", 58.776760, BAND_BACKGROUND_CORRECTED},
    {USC_BACKGROUND_FIELD, "54", 58.7, BAND_BACKGROUND_LIMIT},
    {USC_BACKGROUND_FIELD, "61", 58.7, BAND_BACKGROUND_LIMIT},
    {USC_BACKGROUND_LABORATORY, "49.9", 59.553395, BAND_BACKGROUND_CORRECTED},
    {USC_BACKGROUND_LABORATORY, "45", 59.860446, BAND_BACKGROUND_CORRECTED},
    {USC_BACKGROUND_LABORATORY, "44.9", 60, BAND_FINE},
};

START_TEST(background)
{
    const char *rows = arena_printf(arena, "100;60;%s;0.5;\n125;60;;0.5;\n", backgrounds[_i].background);
    ck_assert(levels_of(rows, (struct level_options){.background = backgrounds[_i].method, .volume_m3 = NAN}));
    assert_within(level.value_dB[3], backgrounds[_i].level_dB, 1e-6);
    ck_assert_int_eq(flag[3], backgrounds[_i].flag);
    ck_assert_int_eq(flag[4], BAND_FINE);
}
END_TEST

/* A limit stands in the result beside its band. */
START_TEST(flags_are_remarks)
{
    ck_assert(levels_of("100;60;55;0.5;\n125;60;52;0.5;\n", (struct level_options){.volume_m3 = NAN}));
    study_rate(&level, flag, &situation_B, arena, &rated);
    ck_assert_str_eq(rated.bands->remark.at[0], "upper limit");
    ck_assert_str_eq(rated.bands->remark.at[1], "background corrected");
    ck_assert_str_eq(rated.bands->remark.at[2], "");
}
END_TEST

/* 10 lg((10^7 + 2 * 10^6)/3) = 66.0206 dB, below 25 m3 and below 100 Hz only. */
static const struct {
    double volume_m3, level_dB, bands;
} small_rooms[] = {{24.9, 66.0206, 1}, {25, 60, 0}, {NAN, 60, 0}};

START_TEST(low_frequency_procedure)
{
    ck_assert(levels_of("50;60;;0.5;70\n63;60;;0.5;\n80;60;;0.5;\n100;60;;0.5;70\n125;60;;0.5;\n",
                        (struct level_options){.volume_m3 = small_rooms[_i].volume_m3}));
    assert_within(level.value_dB[0], small_rooms[_i].level_dB, 1e-4);
    assert_within(level.value_dB[1], 60, 1e-9); /* no corner was read there */
    assert_within(level.value_dB[3], 60, 1e-9);
    assert_within(low_frequency_bands, small_rooms[_i].bands, 0);
}
END_TEST

START_TEST(what_readings_need)
{
    ck_assert(
        !levels_of("100;60;;0.5;\n125;60;;0.5;\n", (struct level_options){.level = FIELD_L_PRIME_N, .volume_m3 = NAN}));
    ck_assert_ptr_nonnull(strstr(problem_lines(&problems), "--volume"));
    raw.has_reverberation_time = false;
    ck_assert(!measured_levels(&raw, &(struct level_options){.volume_m3 = 30}, "t.csv", &problems, &level, flag,
                               &low_frequency_bands));
    ck_assert_ptr_nonnull(strstr(problem_lines(&problems), "reverberation_time_s"));
}
END_TEST

#define COUNT_OF(ARRAY) ((int)(sizeof(ARRAY) / sizeof(ARRAY)[0]))

Suite *measured_suite(void);

Suite *measured_suite(void)
{
    Suite *suite = suite_create("measured");
    TCase *rating = tcase_create("single number"), *readings = tcase_create("readings");
    tcase_add_checked_fixture(rating, set_up, tear_down);
    tcase_add_test(rating, a_measured_floor);
    tcase_add_test(rating, steps_of_a_tenth);
    tcase_add_test(rating, bands_with_the_shifted_curve);
    tcase_add_loop_test(rating, reference_floor, 0, COUNT_OF(reference_floors));
    tcase_add_test(rating, improvement_of_the_reference_covering);
    tcase_add_test(rating, an_improvement_in_octaves_has_no_number);
    tcase_add_test(rating, bare_floor_from_a_covered_one);
    tcase_add_loop_test(rating, verdict, 0, COUNT_OF(verdicts));
    tcase_add_test(rating, verdict_on_a_class);
    tcase_add_loop_test(rating, uncertainty, 0, COUNT_OF(uncertainties));
    suite_add_tcase(suite, rating);
    tcase_add_checked_fixture(readings, set_up, tear_down);
    tcase_add_test(readings, positions_and_reverberation_time);
    tcase_add_test(readings, absorption);
    tcase_add_loop_test(readings, background, 0, COUNT_OF(backgrounds));
    tcase_add_test(readings, flags_are_remarks);
    tcase_add_loop_test(readings, low_frequency_procedure, 0, COUNT_OF(small_rooms));
    tcase_add_test(readings, what_readings_need);
    suite_add_tcase(suite, readings);
    return suite;
}
