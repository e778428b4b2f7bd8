/* The project: rooms, build-ups and what they are held to (format underscreed-project/1). */
#ifndef USC_PROJECT_PROJECT_H
#define USC_PROJECT_PROJECT_H

#include "acoustics/transmission.h"
#include "base/field.h"
#include "project/catalogue.h"
#include "project/practice.h"
#include "project/requirement.h"

enum slab_construction {
    SLAB_HOMOGENEOUS,
    SLAB_HOLLOW_CORE,
    SLAB_RIBBED,
    SLAB_BEAM_AND_BLOCK,
    SLAB_STEEL_DECK,
    SLAB_TIMBER,
};
extern const char *const slab_construction_names[], *const room_position_names[], *const heating_names[];

enum heating { HEATING_NONE, HEATING_PIPES_IN_SCREED };

struct layer {
    const char *name;
    double thickness_mm, density_kg_m3;
};

struct slab {
    int construction;
    double thickness_mm, density_kg_m3, mass_kg_m2, Ln_w_eq_dB;
    struct objects layers; /* bonded topping, plaster: struct layer */
};

struct flanking {
    const char *name;
    double mass_kg_m2, thickness_mm, density_kg_m3;
    bool lined, lightweight;
};

struct receiving_room {
    const char *name;
    int position;
    double volume_m3, area_m2, height_m;
};

struct use {
    double area_load_kN_m2, point_load_kN;
    int heating;
    double heating_pipe_mm;
};

/* Pipes and cables on the slab and the levelling layer that takes them. */
struct services {
    double crown_mm, levelling_mm, levelling_density_kg_m3;
};

struct drain {
    double fall_percent, distance_m;
};

struct plan {
    double length_m, width_m;
};

struct chosen_screed {
    const char *kind; /* catalogue id */
    double thickness_mm;
    const struct screed *found;
};

struct build_up {
    const char *id, *note, *flooring;
    struct chosen_screed *screed;
    struct texts underlays; /* top to bottom */
    const struct flooring *found_flooring;
    const struct underlay **found_underlay; /* underlays.count of them */
};

struct room {
    const char *name, *note, *build_up, *flooring;
    struct plan *plan;
    struct slab *slab;
    struct objects flanking;
    struct receiving_room *below;
    struct use *use;
    struct services *services;
    struct drain *drain;
    double available_height_mm, allowed_added_load_kN_m2;
    struct requirement *requirement;
    const struct build_up *found_build_up;
    const struct flooring *found_flooring;
};

/* What design may choose from; empty lists: the whole catalogue. */
struct candidates {
    struct texts underlays, screeds;
    double thinnest_mm, thickest_mm, step_mm;
};

struct project {
    const char *format, *name, *note, *date, *thickness_rules;
    struct requirement *requirement;
    struct candidates *candidates;
    struct catalogue *catalogue; /* rows of the project's own */
    struct objects build_ups, rooms;
};

extern const struct record room_record, build_up_record, project_record;

#endif
