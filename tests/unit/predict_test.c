/* Prediction of a room from structs made by hand. */
#include <stdbool.h>
#include <string.h>

#include "assert_within.h"
#include "suites.h"
#include "unit/study_fixture.h"

Suite *predict_suite(void);

static struct house house;
static struct arena *arena;
static struct prediction prediction;

static void setup(void)
{
    arena = arena_new(out_of_memory, NULL);
    house_w1(&house);
}

static void teardown(void)
{
    arena_release(arena);
}

static const struct room_prediction *predict(struct predict_options options)
{
    study_predict(&house.project, &house.practice, &options, arena, &prediction);
    ck_assert_uint_eq(prediction.rooms.count, house.project.rooms.count);
    return prediction.rooms.at;
}

static bool has_note(const struct room_prediction *room, const char *part)
{
    for (size_t i = 0; i < room->notes.count; i++)
        if (strstr(room->notes.at[i], part))
            return true;
    return false;
}

/* Printed to one decimal in the book. */
START_TEST(the_printed_example)
{
    const struct room_prediction *room = predict((struct predict_options){.working = true});
    assert_within(room->slab_mass_kg_m2, 432, 1e-9);
    assert_within(room->screed_mass_kg_m2, 90, 1e-9);
    assert_within(room->Ln_eq_w_dB, 71.8, 0.05);
    assert_within(room->delta_Lw_dB, 32.0, 0.05);
    assert_within(room->mean_flanking_mass_kg_m2, 292, 1e-9);
    assert_within(room->K_dB, 1.5, 0.05);
    assert_within(room->L_prime_n_w_dB, 41.3, 0.05);
    assert_within(room->L_prime_nT_w_dB, 40.7, 0.05);
    assert_within(room->margin_dB, 5.7, 1e-9); /* 50 - (41.3 + 3) */
    ck_assert_int_eq(room->meets_limit, ANSWER_YES);
    ck_assert_int_eq(prediction.meets, ANSWER_YES);
    ck_assert_uint_eq(prediction.warnings.count, 0);
    assert_within(room->height_mm, 73, 1e-9);
    assert_within(room->wet_load_kN_m2, 45 * 2.3 * 9.81 / 1000, 1e-9);
    ck_assert_ptr_nonnull(room->working.first_step);
}
END_TEST

START_TEST(working_changes_no_number)
{
    struct room_prediction const with = *predict((struct predict_options){.working = true});
    const struct room_prediction *without = predict((struct predict_options){.working = false});
    ck_assert(with.L_prime_nT_w_dB == without->L_prime_nT_w_dB && with.delta_Rw_dB == without->delta_Rw_dB);
    ck_assert_ptr_null(without->working.first_step);
}
END_TEST

/* EN 12354-2:2000 Table 1: row 450 kg/m2, column 300 kg/m2. */
START_TEST(K_by_table_names_its_cell)
{
    const struct room_prediction *room = predict((struct predict_options){.K_by = K_BY_TABLE});
    assert_within(room->K_dB, 1, 0);
    ck_assert(has_note(room, "nearest row 450 kg/m2, nearest column 300 kg/m2"));
}
END_TEST

START_TEST(without_massive_walls_K_is_0)
{
    for (int i = 0; i < 4; i++)
        house.flanking[i].lined = true;
    const struct room_prediction *room = predict((struct predict_options){0});
    assert_within(room->K_dB, 0, 0);
    ck_assert(has_note(room, "no massive unlined flanking wall: K = 0"));
}
END_TEST

START_TEST(beside_takes_KT)
{
    house.below.position = USC_POSITION_BESIDE;
    const struct room_prediction *room = predict((struct predict_options){.working = true});
    assert_within(room->KT_dB, 5, 0);
    assert_within(room->L_prime_n_w_dB, room->Ln_eq_w_dB - room->delta_Lw_dB - 5, 1e-12);
}
END_TEST

START_TEST(bare_slab_without_a_build_up)
{
    house.room.found_build_up = NULL;
    const struct room_prediction *room = predict((struct predict_options){0});
    assert_within(room->delta_Lw_dB, 0, 0);
    ck_assert_int_eq(room->delta_Lw_by, DELTA_LW_NO_FLOOR);
    ck_assert(isnan(room->f0_Hz));
    ck_assert_int_eq(prediction.meets, ANSWER_NO);
}
END_TEST

/* 90 kg/m2 laid; the rule of practice in this house is 10 %. */
START_TEST(a_test_report_governs_near_its_mass)
{
    struct test_report report = {.screed_mass_kg_m2 = 100, .delta_Lw_dB = 27, .law = USC_LAW_MINERAL};
    house.underlay.test_report = &report;
    const struct room_prediction *room = predict((struct predict_options){0});
    assert_within(room->delta_Lw_dB, 27, 0);
    ck_assert_int_eq(room->delta_Lw_by, DELTA_LW_BY_TEST_REPORT);
    report.screed_mass_kg_m2 = 101;
    room = predict((struct predict_options){0});
    ck_assert_int_eq(room->delta_Lw_by, DELTA_LW_BY_FORMULA);
    ck_assert(has_note(room, "test report was not used"));
}
END_TEST

START_TEST(a_reported_spectrum_is_rated_and_filled)
{
    double spectrum[USC_RATED_BANDS];
    for (int i = 0; i < USC_RATED_BANDS; i++)
        spectrum[i] = 20;
    struct test_report report = {
        .screed_mass_kg_m2 = 90, .delta_Lw_dB = NAN, .delta_L_dB = {spectrum, USC_RATED_BANDS}, .law = USC_LAW_MINERAL};
    house.underlay.test_report = &report;
    const struct room_prediction *room = predict((struct predict_options){0});
    assert_within(room->delta_Lw_dB, 20, 0); /* a shift of the whole floor */
    assert_within(room->bands->delta_L_dB.at[0], 0, 0);
    assert_within(room->bands->delta_L_dB.at[USC_BANDS - 1], 20, 0);
}
END_TEST

START_TEST(only_the_larger_of_floor_and_covering_counts)
{
    struct flooring carpet = {.id = "carpet", .kind = FLOORING_SOFT, .thickness_mm = 8, .delta_Lw_dB = 35};
    house.room.found_flooring = &carpet;
    const struct room_prediction *room = predict((struct predict_options){0});
    assert_within(room->delta_Lw_dB, 35, 0);
    ck_assert_int_eq(room->delta_Lw_by, DELTA_LW_BY_COVERING);
    carpet.delta_Lw_dB = 25;
    room = predict((struct predict_options){0});
    ck_assert_int_eq(room->delta_Lw_by, DELTA_LW_BY_FORMULA);
}
END_TEST

START_TEST(a_stiff_roll_warns_once_and_fails_strictly)
{
    struct room rooms[2] = {house.room, house.room};
    rooms[1].name = "bedroom";
    house.project.rooms = (struct objects){rooms, 2};
    house.underlay.dynamic_stiffness_MN_m3 = 80;
    house.underlay.form = FORM_ROLL;
    const struct room_prediction *room = predict((struct predict_options){0});
    ck_assert(has_note(room, "UNCERTAIN"));
    ck_assert_int_eq(prediction.meets, ANSWER_NO); /* 32.0 dB fall by 14.2 lg 8 */
    ck_assert_uint_eq(prediction.warnings.count, 1);
    const struct warning_record *warning = prediction.warnings.at;
    assert_within(warning->value, 80, 0);
    assert_within(warning->highest, 50, 0);
    ck_assert_uint_eq(warning->rooms.count, 2);
    house.requirement.value_dB = 60;
    predict((struct predict_options){0});
    ck_assert_int_eq(prediction.meets, ANSWER_YES);
    predict((struct predict_options){.strict = true});
    ck_assert_int_eq(prediction.meets, ANSWER_NO);
}
END_TEST

/* The printed tenth decides: 44.34 + 0 is 44.3. */
START_TEST(verdict_on_the_printed_tenth)
{
    struct held_to held = {.descriptor = DESCRIPTOR_L_PRIME_N_W, .sense = SENSE_AT_MOST, .value_dB = 44.3};
    ck_assert_int_eq(verdict_of(&held, 44.34, NAN).answer, ANSWER_YES);
    ck_assert_int_eq(verdict_of(&held, 44.35, NAN).answer, ANSWER_NO);
    assert_within(verdict_of(&held, 44.35, NAN).margin_dB, -0.1, 0);
    held.sense = SENSE_AT_LEAST;
    ck_assert_int_eq(verdict_of(&held, 44.25, NAN).answer, ANSWER_YES);
    ck_assert_int_eq(verdict_of(&held, 44.24, NAN).answer, ANSWER_NO);
    ck_assert_int_eq(verdict_of(NULL, 44, NAN).answer, ANSWER_NONE);
}
END_TEST

static size_t errors_of_model(const char *path)
{
    struct problems problems = {.arena = arena};
    study_check_model(&house.project, "house.json", &problems);
    if (path)
        ck_assert_str_eq(problems.first->place.path, path);
    return problems.count[SEVERITY_ERROR];
}

START_TEST(the_model_refuses_what_it_cannot_serve)
{
    ck_assert_uint_eq(errors_of_model(NULL), 0);
    house.requirement.descriptor = DESCRIPTOR_L_PRIME_NT_W;
    house.below.area_m2 = NAN;
    ck_assert_uint_eq(errors_of_model("rooms[0].below"), 1);
    house.requirement.descriptor = DESCRIPTOR_IIC;
    ck_assert_uint_eq(errors_of_model("requirement"), 1);
    house.requirement.descriptor = DESCRIPTOR_L_PRIME_N_W;
    house.room.flanking.count = 0;
    ck_assert_uint_eq(errors_of_model("rooms[0].flanking"), 1);
    house.room.flanking.count = 4;
    house.slab.construction = SLAB_RIBBED;
    ck_assert_uint_eq(errors_of_model("rooms[0].slab.construction"), 1);
    house.slab.Ln_w_eq_dB = 75;
    ck_assert_uint_eq(errors_of_model(NULL), 0);
    house.slab.thickness_mm = NAN;
    ck_assert_uint_eq(errors_of_model("rooms[0].slab"), 1);
    house.slab.construction = SLAB_HOMOGENEOUS;
    house.slab.Ln_w_eq_dB = NAN;
    ck_assert_uint_eq(errors_of_model("rooms[0].slab"), 1);
}
END_TEST

Suite *predict_suite(void)
{
    Suite *suite = suite_create("predict");
    TCase *tests = tcase_create("rooms");
    tcase_add_checked_fixture(tests, setup, teardown);
    tcase_add_test(tests, the_printed_example);
    tcase_add_test(tests, working_changes_no_number);
    tcase_add_test(tests, K_by_table_names_its_cell);
    tcase_add_test(tests, without_massive_walls_K_is_0);
    tcase_add_test(tests, beside_takes_KT);
    tcase_add_test(tests, bare_slab_without_a_build_up);
    tcase_add_test(tests, a_test_report_governs_near_its_mass);
    tcase_add_test(tests, a_reported_spectrum_is_rated_and_filled);
    tcase_add_test(tests, only_the_larger_of_floor_and_covering_counts);
    tcase_add_test(tests, a_stiff_roll_warns_once_and_fails_strictly);
    tcase_add_test(tests, verdict_on_the_printed_tenth);
    tcase_add_test(tests, the_model_refuses_what_it_cannot_serve);
    suite_add_tcase(suite, tests);
    return suite;
}
