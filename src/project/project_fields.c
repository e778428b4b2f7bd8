/* Field tables of the project file. */
#include "project/project.h"

const char *const slab_construction_names[] = {"homogeneous", "hollow_core", "ribbed", "beam_and_block",
                                               "steel_deck",  "timber",      NULL};
const char *const room_position_names[] = {
    "below", "beside_or_diagonal", "room_between", "above_walls", "above_frame", "beyond_joint", NULL};
const char *const heating_names[] = {"none", "pipes_in_screed", NULL};

static const struct field layer_fields[] = {
    TEXT_FIELD(layer, name, false, "what it is"),
    {.key = "thickness_mm",
     .kind = FIELD_NUMBER,
     .offset = offsetof(struct layer, thickness_mm),
     .unit = "mm",
     .lowest = 0,
     .above = true,
     .highest = 1000,
     .otherwise = NONE,
     .required = true,
     .heading = "thickness"},
    {.key = "density_kg_m3",
     .kind = FIELD_NUMBER,
     .offset = offsetof(struct layer, density_kg_m3),
     .unit = "kg/m3",
     .lowest = 100,
     .highest = 4000,
     .otherwise = NONE,
     .required = true,
     .heading = "density"},
};
static const struct record layer_record = RECORD("layer", layer, layer_fields);

static const struct field slab_fields[] = {
    CHOICE_FIELD(slab, construction, slab_construction_names, SLAB_HOMOGENEOUS, false, "kind of slab"),
    POSITIVE_FIELD(slab, thickness_mm, "mm", 1000, NONE, "thickness of the structural slab"),
    NUMBER_FIELD(slab, density_kg_m3, "kg/m3", 300, 4000, 2400, "density of the structural slab"),
    POSITIVE_FIELD(slab, mass_kg_m2, "kg/m2", 2000, NONE, "mass with bonded layers, instead of thickness"),
    NUMBER_FIELD(slab, Ln_w_eq_dB, "dB", 40, 110, NONE, "measured equivalent level of the bare slab"),
    OBJECTS_FIELD(slab, layers, &layer_record, false, "bonded topping, plaster"),
};
static const struct record slab_record = RECORD("slab", slab, slab_fields);

static const struct field flanking_fields[] = {
    TEXT_FIELD(flanking, name, false, "which wall"),
    POSITIVE_FIELD(flanking, mass_kg_m2, "kg/m2", 2000, NONE, "mass, instead of thickness and density"),
    POSITIVE_FIELD(flanking, thickness_mm, "mm", 1000, NONE, "thickness"),
    NUMBER_FIELD(flanking, density_kg_m3, "kg/m3", 300, 4000, NONE, "density"),
    FLAG_FIELD(flanking, lined, 0, "carries a lining: does not count in K"),
    FLAG_FIELD(flanking, lightweight, 0, "not massive (stud wall): does not count in K"),
};
static const struct record flanking_record = RECORD("flanking element", flanking, flanking_fields);

static const struct field receiving_room_fields[] = {
    TEXT_FIELD(receiving_room, name, false, "name of the receiving room"),
    CHOICE_FIELD(receiving_room, position, room_position_names, USC_POSITION_BELOW, false,
                 "where it lies, seen from the floor that is walked on"),
    POSITIVE_FIELD(receiving_room, volume_m3, "m3", 10000, NONE, "volume, needed for L'nT,w"),
    POSITIVE_FIELD(receiving_room, area_m2, "m2", 2000, NONE, "floor area, with the height instead of the volume"),
    POSITIVE_FIELD(receiving_room, height_m, "m", 20, NONE, "height, with the area instead of the volume"),
};
static const struct record receiving_room_record = RECORD("receiving room", receiving_room, receiving_room_fields);

static const struct field use_fields[] = {
    NUMBER_FIELD(use, area_load_kN_m2, "kN/m2", 0, 100, 2, "imposed area load"),
    NUMBER_FIELD(use, point_load_kN, "kN", 0, 100, 1, "point load"),
    CHOICE_FIELD(use, heating, heating_names, HEATING_NONE, false, "heating pipes"),
    POSITIVE_FIELD(use, heating_pipe_mm, "mm", 50, 16, "outside diameter of the heating pipes"),
};
static const struct record use_record = RECORD("use", use, use_fields);

static const struct field services_fields[] = {
    NUMBER_FIELD(services, crown_mm, "mm", 0, 200, 0, "height of the highest pipe or cable crossing on the slab"),
    NUMBER_FIELD(services, levelling_mm, "mm", 0, 300, NONE, "levelling layer that takes them (default: the crown)"),
    POSITIVE_FIELD(services, levelling_density_kg_m3, "kg/m3", 4000, 1000, "density of the levelling layer"),
};
static const struct record services_record = RECORD("services", services, services_fields);

static const struct field drain_fields[] = {
    POSITIVE_FIELD(drain, fall_percent, "%", 10, 2, "fall to the drain"),
    POSITIVE_FIELD(drain, distance_m, "m", 50, 1.5, "length of the fall"),
};
static const struct record drain_record = RECORD("drain", drain, drain_fields);

static const struct field plan_fields[] = {
    {.key = "length_m",
     .kind = FIELD_NUMBER,
     .offset = offsetof(struct plan, length_m),
     .unit = "m",
     .lowest = 0,
     .above = true,
     .highest = 500,
     .otherwise = NONE,
     .required = true,
     .heading = "length of the room"},
    {.key = "width_m",
     .kind = FIELD_NUMBER,
     .offset = offsetof(struct plan, width_m),
     .unit = "m",
     .lowest = 0,
     .above = true,
     .highest = 500,
     .otherwise = NONE,
     .required = true,
     .heading = "width of the room"},
};
static const struct record plan_record = RECORD("plan", plan, plan_fields);

static const struct field chosen_screed_fields[] = {
    TEXT_FIELD(chosen_screed, kind, true, "id of a screed of the catalogue"),
    {.key = "thickness_mm",
     .kind = FIELD_NUMBER,
     .offset = offsetof(struct chosen_screed, thickness_mm),
     .unit = "mm",
     .lowest = 0,
     .above = true,
     .highest = 300,
     .otherwise = NONE,
     .required = true,
     .heading = "nominal thickness"},
};
static const struct record chosen_screed_record = RECORD("chosen screed", chosen_screed, chosen_screed_fields);

static const struct field build_up_fields[] = {
    TEXT_FIELD(build_up, id, true, "short name by which rooms refer to it"),
    TEXT_FIELD(build_up, note, false, "a remark"),
    TEXT_FIELD(build_up, flooring, false, "id of a flooring of the catalogue"),
    OBJECT_FIELD(build_up, screed, &chosen_screed_record, false, "the screed; none: no floating floor"),
    TEXTS_FIELD(build_up, underlays, "ids of the underlay layers, top to bottom"),
};
const struct record build_up_record = RECORD("build-up", build_up, build_up_fields);

static const struct field room_fields[] = {
    TEXT_FIELD(room, name, true, "name of the room whose floor is walked on"),
    TEXT_FIELD(room, note, false, "a remark"),
    TEXT_FIELD(room, build_up, false, "id of a build-up (default: the bare slab, and design chooses)"),
    TEXT_FIELD(room, flooring, false, "id of the flooring that design puts on top"),
    OBJECT_FIELD(room, plan, &plan_record, false, "size of the room"),
    OBJECT_FIELD(room, slab, &slab_record, true, "the structural slab"),
    OBJECTS_FIELD(room, flanking, &flanking_record, false, "walls below that join the slab"),
    OBJECT_FIELD(room, below, &receiving_room_record, false, "the receiving room"),
    OBJECT_FIELD(room, use, &use_record, false, "loads and heating"),
    OBJECT_FIELD(room, services, &services_record, false, "pipes and cables on the slab"),
    OBJECT_FIELD(room, drain, &drain_record, false, "fall to a drain"),
    POSITIVE_FIELD(room, available_height_mm, "mm", 1000, NONE, "height from the slab to the finished floor"),
    POSITIVE_FIELD(room, allowed_added_load_kN_m2, "kN/m2", 50, NONE, "load that the slab may still take"),
    OBJECT_FIELD(room, requirement, &requirement_record, false, "what the room is held to (default: the project's)"),
};
const struct record room_record = RECORD("room", room, room_fields);

static const struct field candidates_fields[] = {
    TEXTS_FIELD(candidates, underlays, "ids that design may use (default: all)"),
    TEXTS_FIELD(candidates, screeds, "ids that design may use (default: all)"),
    POSITIVE_FIELD(candidates, thinnest_mm, "mm", 300, NONE, "least thickness, instead of the screed's own"),
    POSITIVE_FIELD(candidates, thickest_mm, "mm", 300, NONE, "largest thickness, instead of the screed's own"),
    NUMBER_FIELD(candidates, step_mm, "mm", 1, 50, NONE, "step of thickness, instead of the screed's own"),
};
static const struct record candidates_record = RECORD("candidates", candidates, candidates_fields);

static const struct field project_fields[] = {
    TEXT_FIELD(project, format, true, "underscreed-project/1"),
    TEXT_FIELD(project, name, false, "name of the project"),
    TEXT_FIELD(project, note, false, "a remark"),
    TEXT_FIELD(project, date, false, "date of the document, YYYY-MM-DD"),
    TEXT_FIELD(project, thickness_rules, false, "id of the thickness rules (default: the limit's, else DIN 18560-2)"),
    OBJECT_FIELD(project, requirement, &requirement_record, false, "what every room is held to"),
    OBJECT_FIELD(project, candidates, &candidates_record, false, "what design may choose from"),
    OBJECT_FIELD(project, catalogue, &catalogue_record, false, "rows of the project's own"),
    OBJECTS_FIELD(project, build_ups, &build_up_record, false, "named build-ups"),
    OBJECTS_FIELD(project, rooms, &room_record, true, "the rooms"),
};
const struct record project_record = RECORD("project", project, project_fields);
