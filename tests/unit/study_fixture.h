/* A small house by hand for the tests of the study room: W1, Lehrbuch der Bauphysik, table 22.22. */
#ifndef USC_TESTS_STUDY_FIXTURE_H
#define USC_TESTS_STUDY_FIXTURE_H

#include <math.h>
#include <stdlib.h>

#include "base/arena.h"
#include "study/predict.h"

#define COUNT_OF(ARRAY) (sizeof(ARRAY) / sizeof(ARRAY)[0])

static inline void out_of_memory(void *context)
{
    (void)context;
    abort();
}

/* All that one room needs, in one place, so that a test changes what it is about and nothing else. */
struct house {
    struct slab slab;
    struct flanking flanking[4];
    struct receiving_room below;
    struct underlay underlay;
    const struct underlay *layers[1];
    struct screed screed;
    struct chosen_screed chosen;
    struct build_up build_up;
    struct requirement requirement;
    struct room room;
    struct project project;
    struct practice_rule rules[PRACTICE_VALUES];
    struct practice practice;
};

static inline void house_rules(struct house *house)
{
    for (int i = 0; i < PRACTICE_VALUES; i++) {
        record_defaults(&practice_rule_record, &house->rules[i]);
        house->rules[i].id = practice_value_names[i];
        house->rules[i].value = 10;
    }
    house->rules[PRACTICE_UPSTAND_MM].value = 100;
    house->practice = (struct practice){.rules = {house->rules, PRACTICE_VALUES}};
}

static inline void house_floor(struct house *house)
{
    record_defaults(&underlay_record, &house->underlay);
    house->underlay.id = "board";
    house->underlay.dynamic_stiffness_MN_m3 = 10;
    house->underlay.thickness_mm = 30;
    house->underlay.loaded_thickness_mm = 28;
    house->underlay.compressibility_mm = 2;
    house->layers[0] = &house->underlay;
    record_defaults(&screed_record, &house->screed);
    house->screed.id = "CT-F4";
    house->screed.kind = 0;
    house->screed.strength_class = "F4";
    house->chosen = (struct chosen_screed){.kind = "CT-F4", .thickness_mm = 45, .found = &house->screed};
    house->build_up = (struct build_up){
        .id = "floor", .screed = &house->chosen, .underlays = {NULL, 1}, .found_underlay = house->layers};
}

static inline void house_w1(struct house *house)
{
    static const double wall_kg_m2[] = {308, 216, 216, 428};
    *house = (struct house){0};
    house->slab = (struct slab){.thickness_mm = 180, .density_kg_m3 = 2400, .mass_kg_m2 = NAN, .Ln_w_eq_dB = NAN};
    for (size_t i = 0; i < COUNT_OF(wall_kg_m2); i++)
        house->flanking[i] = (struct flanking){.mass_kg_m2 = wall_kg_m2[i], .thickness_mm = NAN, .density_kg_m3 = NAN};
    house->below = (struct receiving_room){.volume_m3 = NAN, .area_m2 = 14.2, .height_m = 2.5};
    house_floor(house);
    record_defaults(&requirement_record, &house->requirement);
    house->requirement.descriptor = DESCRIPTOR_L_PRIME_N_W;
    house->requirement.value_dB = 50;
    house->requirement.allowance_dB = 3;
    record_defaults(&room_record, &house->room);
    house->room.name = "living room";
    house->room.slab = &house->slab;
    house->room.flanking = (struct objects){house->flanking, 4};
    house->room.below = &house->below;
    house->room.build_up = "floor";
    house->room.found_build_up = &house->build_up;
    house->project = (struct project){.requirement = &house->requirement, .rooms = {&house->room, 1}};
    house_rules(house);
}

#endif
