/* How fast candidates are examined. Run on request, never a test: nothing here passes or fails.
 *
 * 1 the long way: prediction with the full spectrum and its rating for every candidate;
 * 2 the search of study_design over 200 underlays, 10 screeds, 60 thicknesses and 100 rooms, and how it grows. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "acoustics/reference_floor.h"
#include "bench/benches.h"
#include "study/design.h"

enum { UNDERLAYS = 200, SCREEDS = 10, THICKNESSES = 60, ROOMS = 100, LONG_WAY = 200000 };

struct town {
    struct underlay underlays[UNDERLAYS];
    char ids[UNDERLAYS][8];
    struct screed screeds[SCREEDS];
    struct slab slabs[ROOMS];
    struct flanking wall;
    struct receiving_room below;
    struct requirement requirement;
    struct room rooms[ROOMS];
    struct usc_thickness_row row;
    struct thickness_rules rules;
    struct practice_rule values[PRACTICE_VALUES];
    struct practice practice;
    struct catalogue catalogue;
    struct project project;
};

static void out_of_memory(void *context)
{
    (void)context;
    abort();
}

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

/* Evenly spread without a clock or a seed: the fractions of multiples of the golden ratio. */
static double spread(int i, double low, double high)
{
    return low + (high - low) * fmod(i * 0.6180339887498949, 1.0);
}

static void build_catalogue(struct town *town)
{
    for (int i = 0; i < UNDERLAYS; i++) {
        struct underlay *underlay = &town->underlays[i];
        record_defaults(&underlay_record, underlay);
        snprintf(town->ids[i], sizeof town->ids[i], "u%d", i);
        underlay->id = town->ids[i];
        underlay->dynamic_stiffness_MN_m3 = spread(i, 6, 50);
        underlay->thickness_mm = spread(7 * i, 15, 40);
        underlay->compressibility_mm = spread(11 * i, 1, 5);
        underlay->loaded_thickness_mm = underlay->thickness_mm - underlay->compressibility_mm;
        underlay->cost_per_m2 = spread(13 * i, 2, 20);
    }
    for (int i = 0; i < SCREEDS; i++) {
        struct screed *screed = &town->screeds[i];
        record_defaults(&screed_record, screed);
        screed->id = "screed";
        screed->kind = 0;
        screed->strength_class = "F4";
        screed->dry_density_kg_m3 = spread(i, 1800, 2200);
        screed->wet_density_kg_m3 = screed->dry_density_kg_m3 + 250;
        screed->thinnest_mm = 30;
        screed->thickest_mm = 30 + THICKNESSES - 1;
        screed->step_mm = 1;
        screed->cost_per_m3 = spread(3 * i, 100, 300);
    }
    town->catalogue =
        (struct catalogue){.underlays = {town->underlays, UNDERLAYS}, .screeds = {town->screeds, SCREEDS}};
}

static void build_rooms(struct town *town)
{
    town->wall = (struct flanking){.mass_kg_m2 = 250, .thickness_mm = NAN, .density_kg_m3 = NAN};
    town->below = (struct receiving_room){.volume_m3 = 40, .area_m2 = NAN, .height_m = NAN};
    record_defaults(&requirement_record, &town->requirement);
    town->requirement.descriptor = DESCRIPTOR_L_PRIME_N_W;
    town->requirement.value_dB = 50;
    town->requirement.allowance_dB = 3;
    for (int i = 0; i < ROOMS; i++) {
        town->slabs[i] = (struct slab){.thickness_mm = NAN, .mass_kg_m2 = spread(i, 300, 550), .Ln_w_eq_dB = NAN};
        record_defaults(&room_record, &town->rooms[i]);
        town->rooms[i].name = "room";
        town->rooms[i].slab = &town->slabs[i];
        town->rooms[i].flanking = (struct objects){&town->wall, 1};
        town->rooms[i].below = &town->below;
        town->rooms[i].available_height_mm = spread(5 * i, 70, 140);
        town->rooms[i].allowed_added_load_kN_m2 = spread(9 * i, 1.2, 3);
    }
}

static void build_practice(struct town *town)
{
    town->row = (struct usc_thickness_row){"*", "*", INFINITY, INFINITY, INFINITY, 40, "bench", 0};
    town->rules = (struct thickness_rules){.id = "din-18560-2", .rows = {&town->row, 1}};
    for (int i = 0; i < PRACTICE_VALUES; i++)
        town->values[i] = (struct practice_rule){.id = practice_value_names[i], .value = 10};
    town->practice = (struct practice){.rules = {town->values, PRACTICE_VALUES}, .thickness = {&town->rules, 1}};
}

static void measure_long_way(const struct town *town)
{
    const struct design_options options = {0};
    unsigned passed = 0;
    double const start = seconds();
    for (int i = 0; i < LONG_WAY; i++) {
        const struct underlay *layer[] = {&town->underlays[i % UNDERLAYS]};
        const struct candidate candidate = {
            .layer = layer, .layer_count = 1, .screed = &town->screeds[i % SCREEDS], .thickness_mm = 30 + i % 60};
        struct examined examined;
        candidate_examine(&town->project, &town->rooms[i % ROOMS], &town->practice, &options, &candidate, &examined);
        passed += examined.fails == 0;
    }
    double const took = seconds() - start;
    printf("full spectrum and rating, one core: %.0f candidates a second (%u of %d pass)\n", LONG_WAY / took, passed,
           (int)LONG_WAY);
}

static double measure_design(struct town *town, size_t underlays, size_t rooms, bool one_build_up)
{
    const struct design_options options = {.one_build_up = one_build_up};
    struct arena *arena = arena_new(out_of_memory, NULL);
    struct design design;
    town->catalogue.underlays.count = underlays;
    town->project.rooms.count = rooms;
    double const start = seconds();
    study_design(&town->project, &town->catalogue, &town->practice, &options, arena, &design);
    double const took = seconds() - start;
    const struct design_room *room = design.rooms.at;
    double choices = 0, beaten = 0;
    for (size_t i = 0; i < design.rooms.count; i++) {
        choices += (double)room[i].choices.count;
        beaten += room[i].beaten;
    }
    double const examined = (double)underlays * SCREEDS * THICKNESSES * (double)rooms;
    printf("design %3zu underlays x %d screeds x %d thicknesses x %3zu rooms%s: %.3f s, %.1f million a second, "
           "%.0f choices, %.0f beaten\n",
           underlays, SCREEDS, THICKNESSES, rooms, one_build_up ? ", one build-up" : "", took, examined / took / 1e6,
           choices, beaten);
    arena_release(arena);
    return took;
}

/* The improvement of a resonance and its rating alone: what a candidate costs when nothing else is asked. */
static void measure_rated_improvement(void)
{
    enum { FLOORS = 4000000 };
    double sum = 0;
    double const begin = seconds();
    for (int i = 0; i < FLOORS; i++)
        sum += usc_delta_Lw_rated_of_resonance_dB(30, spread(i, 30, 200));
    double const taken = seconds() - begin;
    printf("spectrum of a resonance and its rating: %.3g floors per second, one core (mean %.1f dB)\n", FLOORS / taken,
           sum / FLOORS);
}

void design_bench(void)
{
    static struct town town;
    build_catalogue(&town);
    build_rooms(&town);
    build_practice(&town);
    town.project = (struct project){.requirement = &town.requirement, .rooms = {town.rooms, ROOMS}};
    measure_rated_improvement();
    measure_long_way(&town);
    double const full = measure_design(&town, UNDERLAYS, ROOMS, false);
    double const half_rooms = measure_design(&town, UNDERLAYS, ROOMS / 2, false);
    double const half_underlays = measure_design(&town, UNDERLAYS / 2, ROOMS, false);
    measure_design(&town, UNDERLAYS, ROOMS, true);
    printf("twice the rooms: %.2f times the time; twice the underlays: %.2f times\n", full / half_rooms,
           full / half_underlays);
}
