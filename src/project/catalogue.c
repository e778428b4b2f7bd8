/* Field tables of the catalogue and look-up by id. */
#include "project/catalogue.h"

#include <string.h>

const char *const row_status_names[] = {"published", "common practice", "from memory", "invented for the demo", "own",
                                        NULL};
const char *const underlay_form_names[] = {"board", "roll", NULL};
const char *const underlay_joint_names[] = {"butted", "lapped", NULL};
const char *const flooring_kind_names[] = {"hard", "soft", NULL};
const char *const improvement_law_names[] = {"mineral", "asphalt", "dry", NULL};
const char *const screed_kind_names[] = {"CT", "CA", "CAF", "MA", "AS", "SR", "dry", NULL};

static const struct field test_report_fields[] = {
    TEXT_FIELD(test_report, reference, false, "number or name of the report"),
    POSITIVE_FIELD(test_report, screed_mass_kg_m2, "kg/m2", 400, NONE, "mass of the screed in the test"),
    NUMBER_FIELD(test_report, delta_Lw_dB, "dB", 0, 60, NONE, "weighted improvement measured"),
    NUMBERS_FIELD(test_report, delta_L_dB, "dB", -20, 90, "improvement at 100..3150 Hz (16) or 50..5000 Hz (21)"),
    CHOICE_FIELD(test_report, law, improvement_law_names, USC_LAW_MINERAL, false, "kind of screed in the test"),
};
static const struct record test_report_record = RECORD("test report", test_report, test_report_fields);

static const struct field underlay_fields[] = {
    TEXT_FIELD(underlay, id, true, "short name by which build-ups refer to it"),
    TEXT_FIELD(underlay, name, false, "name in words"),
    TEXT_FIELD(underlay, material, false, "class of material"),
    TEXT_FIELD(underlay, note, false, "a remark"),
    TEXT_FIELD(underlay, source, false, "where the values were read"),
    CHOICE_FIELD(underlay, status, row_status_names, STATUS_OWN, false, "how far the values can be trusted"),
    POSITIVE_FIELD(underlay, dynamic_stiffness_MN_m3, "MN/m3", 1000, NONE, "dynamic stiffness s' as laid"),
    POSITIVE_FIELD(underlay, apparent_stiffness_MN_m3, "MN/m3", 1000, NONE,
                   "apparent dynamic stiffness s't of the specimen, instead of s'"),
    POSITIVE_FIELD(underlay, flow_resistivity_kPa_s_m2, "kPa s/m2", 1e6, NONE, "air-flow resistivity, needed with s't"),
    POSITIVE_FIELD(underlay, thickness_mm, "mm", 300, NONE, "thickness before loading, dL"),
    POSITIVE_FIELD(underlay, loaded_thickness_mm, "mm", 300, NONE, "thickness under the screed, dB (default: dL)"),
    NUMBER_FIELD(underlay, compressibility_mm, "mm", 0, 50, NONE, "compressibility c (default: dL - dB)"),
    POSITIVE_FIELD(underlay, imposed_load_limit_kN_m2, "kN/m2", 1000, INFINITY, "largest imposed load it may carry"),
    FLAG_FIELD(underlay, bears_hot_asphalt, 0, "hot mastic asphalt may be laid on it"),
    CHOICE_FIELD(underlay, form, underlay_form_names, FORM_BOARD, false, "roll or board"),
    CHOICE_FIELD(underlay, joint, underlay_joint_names, JOINT_BUTTED, false,
                 "lapped: the lap takes its thickness from the screed"),
    POSITIVE_FIELD(underlay, length_m, "m", 200, NONE, "length of a roll or board"),
    POSITIVE_FIELD(underlay, width_m, "m", 10, NONE, "width of a roll or board"),
    NUMBER_FIELD(underlay, edge_yield_mm, "mm", 0, 50, 0, "how far its turned-up edge yields"),
    NUMBER_FIELD(underlay, mass_kg_m2, "kg/m2", 0, 100, 0, "mass per area"),
    NUMBER_FIELD(underlay, cost_per_m2, "", 0, 1e6, NONE, "cost of a square metre, in the user's own currency"),
    {.key = "may_lie_under",
     .kind = FIELD_TEXTS,
     .offset = offsetof(struct underlay, may_lie_under),
     .unit = "",
     .each_is_id = true,
     .heading = "ids of underlays that may lie on this one"},
    OBJECT_FIELD(underlay, test_report, &test_report_record, false, "a laboratory's result"),
};
const struct record underlay_record = RECORD("underlay", underlay, underlay_fields);

static const struct field screed_fields[] = {
    TEXT_FIELD(screed, id, true, "short name by which build-ups refer to it"),
    TEXT_FIELD(screed, name, false, "name in words"),
    TEXT_FIELD(screed, note, false, "a remark"),
    TEXT_FIELD(screed, source, false, "where the values were read"),
    CHOICE_FIELD(screed, status, row_status_names, STATUS_OWN, false, "how far the values can be trusted"),
    CHOICE_FIELD(screed, kind, screed_kind_names, NONE, true, "kind of binder (EN 13318), or dry"),
    TEXT_FIELD(screed, strength_class, true, "flexural or hardness class, F4, IC10"),
    CHOICE_FIELD(screed, law, improvement_law_names, USC_LAW_MINERAL, false, "law of improvement"),
    POSITIVE_FIELD(screed, dry_density_kg_m3, "kg/m3", 4000, 2000, "density for sound, dry and low"),
    POSITIVE_FIELD(screed, wet_density_kg_m3, "kg/m3", 4000, 2300, "density for load, wet and high"),
    POSITIVE_FIELD(screed, thinnest_mm, "mm", 300, 30, "least thickness that design examines"),
    POSITIVE_FIELD(screed, thickest_mm, "mm", 300, 80, "largest thickness that design examines"),
    POSITIVE_FIELD(screed, step_mm, "mm", 50, 5, "step between the thicknesses"),
    NUMBER_FIELD(screed, cost_per_m3, "", 0, 1e6, NONE, "cost of a cubic metre, in the user's own currency"),
};
const struct record screed_record = RECORD("screed", screed, screed_fields);

static const struct field flooring_fields[] = {
    TEXT_FIELD(flooring, id, true, "short name by which rooms and build-ups refer to it"),
    TEXT_FIELD(flooring, name, false, "name in words"),
    TEXT_FIELD(flooring, note, false, "a remark"),
    TEXT_FIELD(flooring, source, false, "where the values were read"),
    CHOICE_FIELD(flooring, status, row_status_names, STATUS_OWN, false, "how far the values can be trusted"),
    CHOICE_FIELD(flooring, kind, flooring_kind_names, FLOORING_HARD, false, "soft: its own improvement may count"),
    NUMBER_FIELD(flooring, thickness_mm, "mm", 0, 100, 0, "thickness with its adhesive"),
    NUMBER_FIELD(flooring, mass_kg_m2, "kg/m2", 0, 200, 0, "mass per area"),
    NUMBER_FIELD(flooring, delta_Lw_dB, "dB", 0, 60, NONE, "weighted improvement of a soft covering"),
    NUMBER_FIELD(flooring, cost_per_m2, "", 0, 1e6, NONE, "cost of a square metre, in the user's own currency"),
    FLAG_FIELD(flooring, tiles, 0, "tiles or stone: the screed under it must be thicker"),
};
const struct record flooring_record = RECORD("flooring", flooring, flooring_fields);

static const struct field catalogue_fields[] = {
    TEXT_FIELD(catalogue, format, false, "underscreed-catalogue/1"),
    TEXT_FIELD(catalogue, version, false, "of the program that printed it"),
    ANSWER_FIELD(catalogue, meets, "as the program printed it"),
    TEXT_FIELD(catalogue, name, false, "name of the catalogue"),
    TEXT_FIELD(catalogue, note, false, "a remark"),
    OBJECTS_FIELD(catalogue, underlays, &underlay_record, false, "resilient layers"),
    OBJECTS_FIELD(catalogue, screeds, &screed_record, false, "kinds and classes of screed"),
    OBJECTS_FIELD(catalogue, floorings, &flooring_record, false, "floor coverings"),
};
const struct record catalogue_record = RECORD("catalogue", catalogue, catalogue_fields);

const struct underlay *catalogue_underlay(const struct catalogue *catalogue, const char *id)
{
    const struct underlay *row = catalogue->underlays.at;
    for (size_t i = 0; i < catalogue->underlays.count; i++)
        if (!strcmp(row[i].id, id))
            return &row[i];
    return NULL;
}

const struct screed *catalogue_screed(const struct catalogue *catalogue, const char *id)
{
    const struct screed *row = catalogue->screeds.at;
    for (size_t i = 0; i < catalogue->screeds.count; i++)
        if (!strcmp(row[i].id, id))
            return &row[i];
    return NULL;
}

const struct flooring *catalogue_flooring(const struct catalogue *catalogue, const char *id)
{
    const struct flooring *row = catalogue->floorings.at;
    for (size_t i = 0; i < catalogue->floorings.count; i++)
        if (!strcmp(row[i].id, id))
            return &row[i];
    return NULL;
}
