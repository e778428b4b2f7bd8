/* Which rooms are chosen for measuring, in what order, and what is asked of each. */
#include <string.h>

#include "assert_within.h"
#include "study/measurement_plan.h"
#include "suites.h"
#include "unit/study_fixture.h"

Suite *measurement_plan_suite(void);

enum { ROOMS = 4 };

static struct house house;
static struct room room[ROOMS];
static struct receiving_room below[ROOMS];
static struct arena *arena;
static struct measurement_plan plan;

/* The first `count` rooms are alike but for their names; held to L'nT, receiving volumes as given. */
static void lay_rooms(size_t count, const double volume_m3[])
{
    house.requirement.descriptor = DESCRIPTOR_L_PRIME_NT_W;
    for (size_t i = 0; i < count; i++) {
        static const char *const names[ROOMS] = {"A", "B", "C", "D"};
        room[i] = house.room;
        room[i].name = names[i];
        below[i] = (struct receiving_room){
            .volume_m3 = volume_m3[i], .area_m2 = NAN, .height_m = NAN, .position = USC_POSITION_BELOW};
        room[i].below = &below[i];
    }
    house.project.rooms = (struct objects){room, count};
}

static void setup(void)
{
    arena = arena_new(out_of_memory, NULL);
    house_w1(&house);
}

static void teardown(void)
{
    arena_release(arena);
}

static const struct planned_room *make_plan(void)
{
    study_measurement_plan(&house.project, &house.practice, arena, &plan);
    ck_assert_uint_eq(plan.plan.count + plan.left_out.count, house.project.rooms.count);
    return plan.plan.at;
}

static bool has(const struct texts *texts, const char *part)
{
    for (size_t i = 0; i < texts->count; i++)
        if (strstr(texts->at[i], part))
            return true;
    return false;
}

/* L'nT = L'n - 10 lg(0.032 V): of rooms alike the smallest volume has the highest level, so one room serves both. */
START_TEST(the_smallest_volume_stands_for_rooms_alike)
{
    const struct planned_room *planned = (lay_rooms(3, (const double[]){60, 30, 45}), make_plan());
    ck_assert_uint_eq(plan.plan.count, 1);
    ck_assert_str_eq(planned->name, "B");
    ck_assert_int_eq(planned->rank, 1);
    ck_assert(has(&planned->why, "smallest margin"));
    ck_assert(has(&planned->why, "smallest volume"));
    assert_within(planned->L_prime_nT_w_dB, planned->L_prime_n_w_dB - 10 * log10(0.032 * 30), 1e-9);
    ck_assert_str_eq(plan.left_out.at[0], "C");
    ck_assert_str_eq(plan.left_out.at[1], "A");
}
END_TEST

START_TEST(a_worse_slab_above_a_large_room_is_measured_too)
{
    struct slab thin = house.slab;
    thin.thickness_mm = 120;
    lay_rooms(3, (const double[]){60, 30, 45});
    room[0].slab = &thin;
    const struct planned_room *planned = make_plan();
    ck_assert_uint_eq(plan.plan.count, 2);
    ck_assert_str_eq(planned[0].name, "A");
    ck_assert(has(&planned[0].why, "smallest margin") && !has(&planned[0].why, "smallest volume"));
    ck_assert_str_eq(planned[1].name, "B");
    ck_assert(has(&planned[1].why, "smallest volume") && !has(&planned[1].why, "smallest margin"));
    ck_assert(planned[0].margin_dB < planned[1].margin_dB);
}
END_TEST

/* Neither L'n nor a room that lies diagonally makes the small volume govern. */
START_TEST(a_volume_that_does_not_count)
{
    struct slab thin = house.slab;
    thin.thickness_mm = 120;
    lay_rooms(2, (const double[]){60, 30});
    room[0].slab = &thin;
    house.requirement.descriptor = DESCRIPTOR_L_PRIME_N_W;
    ck_assert_str_eq(make_plan()->name, "A");
    ck_assert_uint_eq(plan.plan.count, 1);
    house.requirement.descriptor = DESCRIPTOR_L_PRIME_NT_W;
    below[1].position = USC_POSITION_BESIDE;
    make_plan();
    ck_assert_uint_eq(plan.plan.count, 1);
}
END_TEST

START_TEST(every_build_up_and_flooring_once)
{
    struct build_up other = house.build_up;
    struct flooring carpet = {.id = "carpet"};
    other.id = "other";
    lay_rooms(4, (const double[]){60, 60, 60, 60});
    room[1].build_up = "other";
    room[1].found_build_up = &other;
    room[2].found_flooring = &carpet;
    room[3].build_up = NULL;
    room[3].found_build_up = NULL;
    const struct planned_room *planned = make_plan();
    ck_assert_uint_eq(plan.plan.count, 4);
    ck_assert_str_eq(planned[0].name, "D"); /* the bare slab is loudest */
    ck_assert(has(&planned[0].why, "the only room"));
    ck_assert_str_eq(planned[1].name, "A"); /* equals stay in the project's order */
    for (int i = 0; i < ROOMS; i++)
        ck_assert_int_eq(planned[i].rank, i + 1);
}
END_TEST

START_TEST(a_measured_slab_is_wanted)
{
    struct slab measured = house.slab;
    measured.Ln_w_eq_dB = 60;
    lay_rooms(3, (const double[]){30, 45, 60});
    room[2].slab = &measured;
    const struct planned_room *planned = make_plan();
    ck_assert_uint_eq(plan.plan.count, 2);
    ck_assert_str_eq(planned[1].name, "C");
    ck_assert(has(&planned[1].why, "the bare slab was measured"));
    room[0].slab = &measured;
    room[1].slab = &measured; /* now the governing room serves this end as well */
    planned = make_plan();
    ck_assert_uint_eq(plan.plan.count, 1);
    ck_assert(has(&planned[0].why, "the bare slab was measured"));
}
END_TEST

/* Without requirement and volume the loudest room still stands for its build-up. */
START_TEST(nothing_to_judge_by)
{
    struct slab thin = house.slab;
    thin.thickness_mm = 120;
    lay_rooms(2, (const double[]){NAN, NAN});
    house.project.requirement = NULL;
    room[0].requirement = room[1].requirement = NULL;
    room[1].slab = &thin;
    const struct planned_room *planned = make_plan();
    ck_assert_uint_eq(plan.plan.count, 1);
    ck_assert_str_eq(planned->name, "B");
    ck_assert(isnan(planned->margin_dB) && isnan(planned->L_prime_nT_w_dB));
    ck_assert(has(&planned->why, "highest level"));
    ck_assert_int_eq(planned->low_frequency_procedure, ANSWER_NONE);
    ck_assert(has(&planned->remarks, "the volume is not in the project"));
}
END_TEST

START_TEST(corners_below_25_m3)
{
    static const double volume_m3[] = {24.9, 25};
    for (int i = 0; i < 2; i++) {
        const struct planned_room *planned = (lay_rooms(1, &volume_m3[i]), make_plan());
        ck_assert_int_eq(planned->low_frequency_procedure, i == 0 ? ANSWER_YES : ANSWER_NO);
        ck_assert_int_eq(planned->corner_positions, i == 0 ? 4 : 0);
        ck_assert_int_eq(has(&planned->remarks, "four corners"), i == 0);
    }
}
END_TEST

START_TEST(positions)
{
    struct plan area = {.length_m = 5, .width_m = 4};
    struct slab ribbed = house.slab;
    lay_rooms(1, (const double[]){50});
    const struct planned_room *planned = make_plan();
    ck_assert_int_eq(planned->machine_positions, 4);
    ck_assert(has(&planned->remarks, "size is not in the project"));
    room[0].plan = &area;
    planned = make_plan();
    ck_assert_int_eq(planned->machine_positions, 4);
    ck_assert_int_eq(planned->microphone_positions, 4);
    ck_assert_uint_eq(planned->remarks.count, 0);
    area.width_m = 4.1;
    planned = make_plan();
    ck_assert_int_eq(planned->machine_positions, 8);
    assert_within(planned->floor_area_m2, 20.5, 1e-9);
    area.width_m = 2;
    ribbed.construction = SLAB_RIBBED;
    ribbed.Ln_w_eq_dB = 80;
    room[0].slab = &ribbed;
    planned = make_plan();
    ck_assert_int_eq(planned->machine_positions, 8);
    ck_assert(has(&planned->remarks, "45 degrees"));
    ck_assert_uint_eq(plan.frequency_Hz.count, 21);
    assert_within(plan.frequency_Hz.at[0], 50, 0);
    assert_within(plan.frequency_Hz.at[20], 5000, 0);
}
END_TEST

Suite *measurement_plan_suite(void)
{
    Suite *suite = suite_create("measurement_plan");
    TCase *tests = tcase_create("measurement_plan");
    tcase_add_checked_fixture(tests, setup, teardown);
    tcase_add_test(tests, the_smallest_volume_stands_for_rooms_alike);
    tcase_add_test(tests, a_worse_slab_above_a_large_room_is_measured_too);
    tcase_add_test(tests, a_volume_that_does_not_count);
    tcase_add_test(tests, every_build_up_and_flooring_once);
    tcase_add_test(tests, a_measured_slab_is_wanted);
    tcase_add_test(tests, nothing_to_judge_by);
    tcase_add_test(tests, corners_below_25_m3);
    tcase_add_test(tests, positions);
    suite_add_tcase(suite, tests);
    return suite;
}
