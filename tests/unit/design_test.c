/* The search against the long way for random catalogues and rooms, and single reasons against numbers by hand. */
#include <stdint.h>
#include <string.h>

#include "assert_within.h"
#include "study/design.h"
#include "suites.h"
#include "unit/study_fixture.h"

Suite *design_suite(void);

enum { UNDERLAYS = 7, SCREEDS = 4, ROOMS = 5, CANDIDATES_MOST = 4000, TOWNS = 24 };

static struct arena *arena;
static struct house house;

/* --- a town by chance --- */

struct town {
    struct underlay underlays[UNDERLAYS];
    struct test_report report;
    const char *over[2];
    struct screed screeds[SCREEDS];
    struct slab slabs[ROOMS];
    struct receiving_room below[ROOMS];
    struct use use[ROOMS];
    struct services services;
    struct drain drain;
    struct flooring floorings[2];
    struct room rooms[ROOMS];
    struct usc_thickness_row rows[4];
    struct usc_single_place_row single_place[2];
    struct usc_tile_row tile;
    struct thickness_rules rules;
    struct candidates candidates;
    struct catalogue catalogue;
};

static struct town town;
static uint32_t chance;

static uint32_t roll(uint32_t sides)
{
    chance = chance * 1664525u + 1013904223u;
    return (chance >> 8) % sides;
}

/* In steps of the range's hundredth, so that ties happen. */
static double between(double low, double high)
{
    return low + (high - low) * roll(101) / 100.0;
}

static void chance_catalogue(void)
{
    static const char *const ids[] = {"u0", "u1", "u2", "u3", "u4", "u5", "u6"}, *const screeds[] = {"s0", "s1", "s2",
                                                                                                     "s3"};
    bool const costs_known = roll(2) == 0;
    for (int i = 0; i < UNDERLAYS; i++) {
        struct underlay *underlay = &town.underlays[i];
        record_defaults(&underlay_record, underlay);
        underlay->id = ids[i];
        underlay->dynamic_stiffness_MN_m3 = between(5, 80);
        underlay->thickness_mm = between(5, 40);
        underlay->compressibility_mm = between(0, 4);
        underlay->loaded_thickness_mm = underlay->thickness_mm - underlay->compressibility_mm;
        underlay->joint = roll(3) == 0 ? JOINT_LAPPED : JOINT_BUTTED;
        underlay->imposed_load_limit_kN_m2 = roll(3) == 0 ? 2 : INFINITY;
        underlay->cost_per_m2 = costs_known ? between(2, 12) : NAN;
    }
    town.underlays[UNDERLAYS - 1] = town.underlays[0]; /* equal in all: the first must stay */
    town.underlays[UNDERLAYS - 1].id = ids[UNDERLAYS - 1];
    town.report = (struct test_report){.screed_mass_kg_m2 = 100, .delta_Lw_dB = between(18, 34)};
    town.underlays[1].test_report = &town.report;
    town.over[0] = ids[0];
    town.over[1] = ids[3];
    town.underlays[2].may_lie_under = (struct texts){town.over, 2};
    for (int i = 0; i < SCREEDS; i++) {
        struct screed *screed = &town.screeds[i];
        record_defaults(&screed_record, screed);
        screed->id = screeds[i];
        screed->kind = i;
        screed->strength_class = i == 3 ? "F9" : "F4";
        screed->law = i == 2 ? USC_LAW_ASPHALT : USC_LAW_MINERAL;
        screed->thinnest_mm = between(20, 45);
        screed->thickest_mm = screed->thinnest_mm + between(0, 50);
        screed->step_mm = between(1, 7);
        screed->cost_per_m3 = between(80, 300);
    }
    town.catalogue = (struct catalogue){.underlays = {town.underlays, UNDERLAYS}, .screeds = {town.screeds, SCREEDS}};
}

static void chance_rules(void)
{
    for (int i = 0; i < 4; i++)
        town.rows[i] = (struct usc_thickness_row){.kind = i < 2    ? "CT"
                                                          : i == 2 ? "CA"
                                                                   : "CAF",
                                                  .strength_class = "F4",
                                                  .area_load_kN_m2 = i == 0 ? 2 : 4,
                                                  .point_load_kN = i == 0 ? 1 : 3,
                                                  .compressibility_mm = between(2, 6),
                                                  .thickness_mm = between(30, 60)};
    town.single_place[0] = (struct usc_single_place_row){.nominal_mm = 50, .below_nominal_mm = 5};
    town.single_place[1] = (struct usc_single_place_row){.nominal_mm = 1000, .below_nominal_mm = 10};
    town.tile = (struct usc_tile_row){.kind = "*", .thickness_mm = 45};
    town.rules = (struct thickness_rules){
        .id = "din-18560-2", .rows = {town.rows, 4}, .tile = {&town.tile, 1}, .single_place = {town.single_place, 2}};
    house.practice.thickness = (struct objects){&town.rules, 1};
}

static void chance_room(int i)
{
    struct room *room = &town.rooms[i];
    *room = house.room;
    room->found_build_up = NULL;
    town.slabs[i] = house.slab;
    town.slabs[i].thickness_mm = between(120, 260);
    room->slab = &town.slabs[i];
    town.below[i] = house.below;
    town.below[i].position = roll(4) == 0 ? USC_POSITION_BESIDE : USC_POSITION_BELOW;
    room->below = &town.below[i];
    town.use[i] = (struct use){.area_load_kN_m2 = between(1, 5),
                               .point_load_kN = between(1, 3),
                               .heating = roll(2) ? HEATING_PIPES_IN_SCREED : HEATING_NONE,
                               .heating_pipe_mm = 16};
    room->use = roll(3) ? &town.use[i] : NULL;
    room->services = roll(4) ? NULL : &town.services;
    room->drain = roll(4) ? NULL : &town.drain;
    room->found_flooring = roll(2) ? &town.floorings[roll(2)] : NULL;
    room->available_height_mm = roll(4) ? between(70, 160) : NAN;
    room->allowed_added_load_kN_m2 = roll(4) ? between(1, 3) : NAN;
}

static void chance_town(uint32_t seed)
{
    chance = seed * 2654435761u + 1;
    house_w1(&house);
    chance_catalogue();
    chance_rules();
    town.services =
        (struct services){.crown_mm = 30, .levelling_mm = roll(2) ? 25 : NAN, .levelling_density_kg_m3 = 900};
    town.drain = (struct drain){.fall_percent = 1, .distance_m = between(0.2, 1.5)};
    town.floorings[0] =
        (struct flooring){.id = "tiles", .thickness_mm = 12, .mass_kg_m2 = 24, .delta_Lw_dB = NAN, .tiles = true};
    town.floorings[1] =
        (struct flooring){.id = "carpet", .kind = FLOORING_SOFT, .thickness_mm = 7, .mass_kg_m2 = 2, .delta_Lw_dB = 26};
    for (int i = 0; i < ROOMS; i++)
        chance_room(i);
    house.requirement.value_dB = between(40, 56);
    town.candidates = (struct candidates){.thinnest_mm = 35, .thickest_mm = 70, .step_mm = 2.5};
    house.project.candidates = roll(2) ? &town.candidates : NULL;
    if (roll(5) == 0)
        house.project.requirement = NULL;
    house.project.rooms = (struct objects){town.rooms, ROOMS};
}

/* --- the long way --- */

struct looked_at {
    const struct underlay *layer[2];
    int layers;
    const struct screed *screed;
    double thickness_mm;
    struct examined examined;
};

static struct looked_at candidates[CANDIDATES_MOST];
static size_t candidate_count;

static void list_pours(const struct underlay *top, const struct underlay *lower)
{
    const struct candidates *given = house.project.candidates;
    for (int i = 0; i < SCREEDS; i++) {
        const struct screed *screed = &town.screeds[i];
        double const thinnest = given ? given->thinnest_mm : screed->thinnest_mm;
        double const thickest = given ? given->thickest_mm : screed->thickest_mm;
        double const step = given ? given->step_mm : screed->step_mm;
        for (int j = 0; thinnest + j * step <= thickest + 1e-9; j++) {
            ck_assert_uint_lt(candidate_count, CANDIDATES_MOST);
            candidates[candidate_count++] =
                (struct looked_at){{top, lower}, lower ? 2 : 1, screed, thinnest + j * step, {0}};
        }
    }
}

static void list_candidates(void)
{
    candidate_count = 0;
    for (int i = 0; i < UNDERLAYS; i++)
        list_pours(&town.underlays[i], NULL);
    list_pours(&town.underlays[0], &town.underlays[2]);
    list_pours(&town.underlays[3], &town.underlays[2]);
}

static double larger(double one, double other)
{
    return isnan(one) || other > one ? other : one;
}

static void examine_all(const struct design_options *options, size_t first_room, size_t rooms)
{
    for (size_t i = 0; i < candidate_count; i++) {
        struct looked_at *at = &candidates[i];
        for (size_t j = first_room; j < first_room + rooms; j++) {
            struct candidate const candidate = {at->layer, at->layers, at->screed, at->thickness_mm,
                                                town.rooms[j].found_flooring};
            struct examined one;
            candidate_examine(&house.project, &town.rooms[j], &house.practice, options, &candidate, &one);
            if (j == first_room) {
                at->examined = one;
                continue;
            }
            at->examined.fails |= one.fails;
            for (int k = 0; k < REASON_COUNT; k++)
                at->examined.shortfall[k] = larger(at->examined.shortfall[k], one.shortfall[k]);
            at->examined.height_mm = larger(at->examined.height_mm, one.height_mm);
            at->examined.mass_kg_m2 = larger(at->examined.mass_kg_m2, one.mass_kg_m2);
            at->examined.verdict.margin_dB = -larger(-at->examined.verdict.margin_dB, -one.verdict.margin_dB);
        }
    }
}

static bool costs_known(void)
{
    return !isnan(town.underlays[0].cost_per_m2);
}

static double margin_of(const struct examined *examined)
{
    return isnan(examined->verdict.margin_dB) ? 0 : examined->verdict.margin_dB;
}

static bool beats(size_t a, size_t b)
{
    const struct examined *one = &candidates[a].examined, *other = &candidates[b].examined;
    if (one->height_mm > other->height_mm || one->mass_kg_m2 > other->mass_kg_m2 || margin_of(one) < margin_of(other) ||
        (costs_known() && one->cost_per_m2 > other->cost_per_m2))
        return false;
    bool const equal = one->height_mm == other->height_mm && one->mass_kg_m2 == other->mass_kg_m2 &&
                       margin_of(one) == margin_of(other) && (!costs_known() || one->cost_per_m2 == other->cost_per_m2);
    return !equal || a < b;
}

static bool is_beaten(size_t b)
{
    for (size_t a = 0; a < candidate_count; a++)
        if (a != b && candidates[a].examined.fails == 0 && beats(a, b))
            return true;
    return false;
}

static const struct design_choice *choice_of(const struct design_room *room, size_t order)
{
    const struct design_choice *choice = room->choices.at;
    for (size_t i = 0; i < room->choices.count; i++)
        if ((size_t)choice[i].order == order)
            return &choice[i];
    return NULL;
}

/* What a choice says of a single room. */
static void compare_numbers(const struct design_choice *choice, const struct examined *examined)
{
    assert_within(choice->stiffness_MN_m3, examined->effect.stiffness_MN_m3, 0);
    assert_within(choice->f0_Hz, examined->effect.f0_Hz, 0);
    assert_within(choice->delta_Lw_dB, examined->effect.delta_Lw_dB, 0);
    assert_within(choice->L_prime_n_w_dB, examined->L_prime_n_w_dB, 0);
    assert_within(choice->L_prime_nT_w_dB, examined->L_prime_nT_w_dB, 0);
    assert_within(choice->wet_load_kN_m2, examined->wet_load_kN_m2, 0);
    assert_within(choice->upstand_mm, examined->upstand_mm, 0);
}

static void compare_choices(const struct design_room *room, bool single)
{
    double beaten = 0, chosen = 0;
    for (size_t i = 0; i < candidate_count; i++) {
        const struct looked_at *at = &candidates[i];
        const struct design_choice *choice = choice_of(room, i);
        if (at->examined.fails == 0 && is_beaten(i)) {
            beaten++;
        } else if (at->examined.fails == 0) {
            chosen++;
            ck_assert_ptr_nonnull(choice);
            ck_assert_str_eq(choice->screed, at->screed->id);
            ck_assert(strncmp(choice->underlay, at->layer[0]->id, 2) == 0);
            ck_assert_uint_eq(strlen(choice->underlay), at->layers == 2 ? strlen("u0 + u2") : strlen("u0"));
            assert_within(choice->thickness_mm, at->thickness_mm, 0);
            assert_within(choice->height_mm, at->examined.height_mm, 0);
            assert_within(choice->mass_kg_m2, at->examined.mass_kg_m2, 0);
            if (single)
                compare_numbers(choice, &at->examined);
            if (!isnan(at->examined.verdict.margin_dB))
                assert_within(choice->margin_dB, at->examined.verdict.margin_dB, 0);
            continue;
        }
        ck_assert_ptr_null(choice);
    }
    assert_within(room->beaten, beaten, 0);
    assert_within((double)room->choices.count, chosen, 0);
    for (size_t i = 1; i < room->choices.count; i++) {
        const struct design_choice *pair = (const struct design_choice *)room->choices.at + i - 1;
        ck_assert(pair[0].height_mm <= pair[1].height_mm);
    }
}

static void compare_rejected(const struct design_room *room)
{
    const struct design_rejected *row = room->rejected.at;
    double sum = 0;
    for (int reason = 0; reason < REASON_COUNT; reason++) {
        double count = 0;
        const struct looked_at *nearest = NULL;
        for (size_t i = 0; i < candidate_count; i++) {
            const struct examined *examined = &candidates[i].examined;
            count += examined->fails != 0 && (examined->fails & (1u << reason)) != 0 &&
                     (examined->fails & ((1u << reason) - 1)) == 0;
            if (examined->fails == 1u << reason &&
                (!nearest || examined->shortfall[reason] < nearest->examined.shortfall[reason]))
                nearest = &candidates[i];
        }
        sum += count;
        if (count == 0)
            continue;
        ck_assert_str_eq(row->reason, reason_names[reason]);
        assert_within(row->count, count, 0);
        ck_assert_int_eq(row->nearest != NULL, nearest != NULL);
        if (nearest) {
            ck_assert_str_eq(row->nearest->screed, nearest->screed->id);
            ck_assert(strncmp(row->nearest->underlay, nearest->layer[0]->id, 2) == 0);
            assert_within(row->nearest->thickness_mm, nearest->thickness_mm, 0);
            if (*reason_units[reason])
                assert_within(row->nearest->shortfall, nearest->examined.shortfall[reason], 0);
        }
        row++;
    }
    ck_assert_ptr_eq(row, (const struct design_rejected *)room->rejected.at + room->rejected.count);
    assert_within(sum + room->beaten + (double)room->choices.count, room->examined, 0);
}

static void compare_design(struct design_options options)
{
    struct design design;
    study_design(&house.project, &town.catalogue, &house.practice, &options, arena, &design);
    const struct design_room *room = design.rooms.at;
    ck_assert_uint_eq(design.rooms.count, options.one_build_up ? 1 : house.project.rooms.count);
    list_candidates();
    for (size_t i = 0; i < design.rooms.count; i++) {
        examine_all(&options, i, options.one_build_up ? house.project.rooms.count : 1);
        assert_within(room[i].examined, (double)candidate_count, 0);
        compare_choices(&room[i], !options.one_build_up);
        compare_rejected(&room[i]);
    }
}

START_TEST(search_finds_what_the_long_way_finds)
{
    chance_town((uint32_t)_i);
    compare_design((struct design_options){.strict = _i % 2});
}
END_TEST

START_TEST(one_build_up_finds_what_the_long_way_finds)
{
    chance_town((uint32_t)_i + TOWNS);
    house.project.rooms.count = 2; /* more rooms, or harder ones, leave hardly a candidate */
    for (int i = 0; i < 2; i++) {
        town.rooms[i].use = NULL;
        town.rooms[i].drain = NULL;
        town.rooms[i].available_height_mm += 40;
    }
    house.requirement.value_dB += 4;
    compare_design((struct design_options){.strict = _i % 2, .one_build_up = true});
}
END_TEST

/* Softer is dearer and thicker is better: hundreds of candidates that none beats. */
START_TEST(a_front_of_hundreds)
{
    enum { KINDS = 6 };
    struct underlay kinds[KINDS];
    for (int i = 0; i < KINDS; i++) {
        kinds[i] = house.underlay;
        kinds[i].dynamic_stiffness_MN_m3 = 10 + 5 * i;
        kinds[i].cost_per_m2 = 10 - i;
    }
    house.screed.thinnest_mm = 45;
    house.screed.thickest_mm = 300;
    house.screed.step_mm = 0.5;
    house.screed.cost_per_m3 = 1;
    house.requirement.value_dB = 60;
    struct catalogue const catalogue = {.underlays = {kinds, KINDS}, .screeds = {&house.screed, 1}};
    struct design_options const options = {0};
    struct design design;
    study_design(&house.project, &catalogue, &house.practice, &options, arena, &design);
    const struct design_room *room = design.rooms.at;
    ck_assert_uint_gt(room->choices.count, 300);
    assert_within((double)room->choices.count + room->beaten, KINDS * 511, 0);
}
END_TEST

/* 90..200 kg/m2 of screed, published up to 160: what strict design chooses, strict prediction accepts. */
START_TEST(strict_choices_pass_strict_prediction)
{
    house.screed.thickest_mm = 100;
    house.screed.thinnest_mm = 45;
    struct catalogue const catalogue = {.underlays = {&house.underlay, 1}, .screeds = {&house.screed, 1}};
    struct design_options const options = {.strict = true};
    struct predict_options const predict = {.strict = true};
    struct design design;
    struct prediction prediction;
    study_design(&house.project, &catalogue, &house.practice, &options, arena, &design);
    const struct design_room *room = design.rooms.at;
    const struct design_choice *choice = room->choices.at;
    ck_assert_uint_eq(room->choices.count, 8); /* 45, 50 .. 80 */
    for (size_t i = 0; i < room->choices.count; i++) {
        house.chosen.thickness_mm = choice[i].thickness_mm;
        study_predict(&house.project, &house.practice, &predict, arena, &prediction);
        ck_assert_int_eq(prediction.meets, ANSWER_YES);
    }
    house.chosen.thickness_mm = 85;
    study_predict(&house.project, &house.practice, &predict, arena, &prediction);
    ck_assert_int_eq(prediction.meets, ANSWER_NO);
}
END_TEST

/* --- single reasons by hand: 45 mm on a 30-2 board, 73 mm high --- */

static struct examined examine(void)
{
    struct candidate const candidate = {house.layers, 1, &house.screed, 45, house.room.found_flooring};
    struct design_options const options = {0};
    struct examined examined;
    candidate_examine(&house.project, &house.room, &house.practice, &options, &candidate, &examined);
    return examined;
}

static void assert_only(enum reason reason, double shortfall)
{
    struct examined const examined = examine();
    ck_assert_uint_eq(examined.fails, 1u << reason);
    if (*reason_units[reason])
        assert_within(examined.shortfall[reason], shortfall, 1e-9);
}

static void setup(void)
{
    arena = arena_new(out_of_memory, NULL);
    house_w1(&house);
    town = (struct town){0};
    town.rows[0] = (struct usc_thickness_row){"CT", "F4", 2, 1, 5, 45, "test", 0};
    town.single_place[0] = (struct usc_single_place_row){.nominal_mm = 60, .below_nominal_mm = 5};
    town.rules =
        (struct thickness_rules){.id = "din-18560-2", .rows = {town.rows, 1}, .single_place = {town.single_place, 1}};
    house.practice.thickness = (struct objects){&town.rules, 1};
}

static void teardown(void)
{
    arena_release(arena);
}

START_TEST(nothing_fails_at_the_limits)
{
    house.room.available_height_mm = 73;
    house.room.allowed_added_load_kN_m2 = 45 * 2.3 * 9.81 / 1000;
    house.underlay.imposed_load_limit_kN_m2 = 2;
    ck_assert_uint_eq(examine().fails, 0);
    assert_within(examine().upstand_mm, 100, 0);
}
END_TEST

START_TEST(each_reason_beyond_its_limit)
{
    house.room.available_height_mm = 70;
    assert_only(REASON_HEIGHT, 3);
    house.room.available_height_mm = NAN;
    house.room.allowed_added_load_kN_m2 = 1;
    assert_only(REASON_LOAD, 45 * 2.3 * 9.81 / 1000 - 1);
    house.room.allowed_added_load_kN_m2 = NAN;
    house.underlay.imposed_load_limit_kN_m2 = 1.5;
    assert_only(REASON_IMPOSED_LOAD, 0.5);
    house.underlay.imposed_load_limit_kN_m2 = INFINITY;
    house.underlay.compressibility_mm = 6;
    assert_only(REASON_COMPRESSIBILITY, 1);
    house.underlay.compressibility_mm = 2;
    house.screed.strength_class = "F7";
    assert_only(REASON_NO_RULE, 0);
    house.screed.strength_class = "F4";
    house.screed.kind = SCREED_AS;
    town.rows[0].kind = "AS";
    assert_only(REASON_HEAT, 0);
    house.underlay.bears_hot_asphalt = true;
    ck_assert_uint_eq(examine().fails, 0);
    house.screed.kind = SCREED_CT;
    town.rows[0].kind = "CT";
    town.rows[0].thickness_mm = 50;
    assert_only(REASON_THICKNESS, 5);
    town.rows[0].thickness_mm = 45;
    house.requirement.value_dB = 44; /* 41.3 + 3 */
    assert_only(REASON_SOUND, 0.3);
}
END_TEST

START_TEST(lap_drain_and_pipes)
{
    house.underlay.joint = JOINT_LAPPED; /* 45 - 28 = 17 left of the 40 that a single place may have */
    assert_only(REASON_LAP, 23);
    house.underlay.joint = JOINT_BUTTED;
    struct drain drain = {.fall_percent = 2, .distance_m = 1.5};
    house.room.drain = &drain; /* 30 mm */
    assert_only(REASON_DRAIN, 30);
    house.room.drain = NULL;
    struct services services = {.crown_mm = 35, .levelling_mm = 30, .levelling_density_kg_m3 = 1000};
    house.room.services = &services;
    assert_only(REASON_PIPES, 5);
    services.levelling_mm = NAN;
    ck_assert_uint_eq(examine().fails, 0);
    assert_within(examine().height_mm, 73 + 35, 1e-9);
}
END_TEST

START_TEST(the_drawn_build_up_is_told_in_words)
{
    struct catalogue const catalogue = {.underlays = {&house.underlay, 1}, .screeds = {&house.screed, 1}};
    struct design_options const options = {0};
    struct design design;
    house.room.available_height_mm = 70;
    house.requirement.value_dB = 41;
    study_design(&house.project, &catalogue, &house.practice, &options, arena, &design);
    const struct design_room *room = design.rooms.at;
    ck_assert_str_eq(room->drawn, "floor");
    ck_assert_uint_eq(room->drawn_fails.count, 2);
    ck_assert_str_eq(room->drawn_fails.at[0], "3 mm too high");
    ck_assert_str_eq(room->drawn_fails.at[1], "3.3 dB too loud");
    assert_within(room->drawn_margin_dB, -3.3, 1e-9);
    ck_assert_int_eq(design.meets, ANSWER_NO);
}
END_TEST

Suite *design_suite(void)
{
    Suite *suite = suite_create("design");
    TCase *tests = tcase_create("candidates");
    tcase_add_checked_fixture(tests, setup, teardown);
    tcase_add_loop_test(tests, search_finds_what_the_long_way_finds, 0, TOWNS);
    tcase_add_loop_test(tests, one_build_up_finds_what_the_long_way_finds, 0, TOWNS);
    tcase_add_test(tests, a_front_of_hundreds);
    tcase_add_test(tests, strict_choices_pass_strict_prediction);
    tcase_add_test(tests, nothing_fails_at_the_limits);
    tcase_add_test(tests, each_reason_beyond_its_limit);
    tcase_add_test(tests, lap_drain_and_pipes);
    tcase_add_test(tests, the_drawn_build_up_is_told_in_words);
    suite_add_tcase(suite, tests);
    return suite;
}
