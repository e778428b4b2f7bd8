/* Checks of rows beyond their field tables. */
#include "project/data_check.h"

#include <string.h>

#include "acoustics/bands.h"
#include "acoustics/dynamic_stiffness.h"

static void fail_at(const struct record_reader *reader, const struct json_path *up, const char *key, const char *hint,
                    const char *text)
{
    struct json_path path = {up, key, 0};
    problem_add(reader->problems, SEVERITY_ERROR, reader->file, json_path_text(reader->arena, key ? &path : up), hint,
                "%s", text);
}

void ids_check(const struct record_reader *reader, const struct objects *rows, const struct record *record,
               const struct json_path *list)
{
    size_t offset = record_field(record, "id")->offset;
    for (size_t i = 1; i < rows->count; i++) {
        const char *id = *(const char *const *)((const char *)rows->at + i * record->size + offset);
        for (size_t j = 0; id && j < i; j++) {
            const char *other = *(const char *const *)((const char *)rows->at + j * record->size + offset);
            if (other && !strcmp(id, other)) {
                struct json_path row = {list, NULL, i};
                fail_at(reader, &row, "id", NULL, arena_printf(reader->arena, "\"%s\" is given twice", id));
                break;
            }
        }
    }
}

/* s', or s't with the flow resistivity: the trapped air makes the difference. A list that the program printed holds
 * both; then s' must be what follows from s't. */
static void stiffness_check(const struct record_reader *reader, struct underlay *row, const struct json_path *path)
{
    bool dynamic = !isnan(row->dynamic_stiffness_MN_m3), apparent = !isnan(row->apparent_stiffness_MN_m3);
    double derived = usc_dynamic_stiffness_MN_m3(row->apparent_stiffness_MN_m3, row->flow_resistivity_kPa_s_m2,
                                                 row->loaded_thickness_mm);
    if (!dynamic && !apparent) {
        fail_at(reader, path, NULL,
                "s' holds for the laid material, s't for the specimen; ask which of the two a sheet states",
                "needs dynamic_stiffness_MN_m3 (s'), or apparent_stiffness_MN_m3 (s't) with flow_resistivity_kPa_s_m2");
    } else if (apparent && isnan(row->flow_resistivity_kPa_s_m2)) {
        fail_at(reader, path, "apparent_stiffness_MN_m3",
                "at 100 kPa s/m2 and above s' = s't; between 10 and 100 the trapped air adds 111/d",
                "needs flow_resistivity_kPa_s_m2 beside it to become s'");
    } else if (dynamic && apparent && !(fabs(row->dynamic_stiffness_MN_m3 - derived) < 1e-6 * derived)) {
        fail_at(reader, path, "apparent_stiffness_MN_m3", "keep s' alone when the sheet states both",
                "is given beside another dynamic_stiffness_MN_m3 than follows from it: one of the two");
    } else if (apparent && isnan(derived)) {
        fail_at(reader, path, "flow_resistivity_kPa_s_m2", "have s' measured, or give it by dynamic_stiffness_MN_m3",
                "is below 10 kPa s/m2 and the trapped air is not negligible: s' cannot be determined");
    } else if (apparent) {
        row->dynamic_stiffness_MN_m3 = derived;
    }
}

static void test_report_check(const struct record_reader *reader, const struct test_report *report,
                              const struct json_path *up)
{
    struct json_path path = {up, "test_report", 0};
    bool single = !isnan(report->delta_Lw_dB), spectrum = report->delta_L_dB.count > 0;
    if (isnan(report->screed_mass_kg_m2))
        fail_at(reader, &path, NULL, NULL,
                "needs screed_mass_kg_m2: the result holds near the mass it was measured with");
    if (single == spectrum)
        fail_at(reader, &path, NULL, NULL, "needs one of delta_Lw_dB and delta_L_dB");
    if (spectrum && report->delta_L_dB.count != USC_RATED_BANDS && report->delta_L_dB.count != USC_BANDS)
        fail_at(reader, &path, "delta_L_dB", NULL,
                arena_printf(reader->arena, "has %zu values, not 16 (100..3150 Hz) or 21 (50..5000 Hz)",
                             report->delta_L_dB.count));
}

static void underlay_check(const struct record_reader *reader, struct underlay *row, const struct json_path *path,
                           bool quick)
{
    if (!row->name)
        row->name = row->id;
    if (isnan(row->thickness_mm) && !quick)
        fail_at(reader, path, NULL, NULL, "needs thickness_mm (before loading)");
    if (isnan(row->loaded_thickness_mm))
        row->loaded_thickness_mm = row->thickness_mm;
    if (row->loaded_thickness_mm > row->thickness_mm)
        fail_at(reader, path, "loaded_thickness_mm", NULL, "is above thickness_mm, which is measured before loading");
    if (isnan(row->compressibility_mm))
        row->compressibility_mm = isnan(row->thickness_mm) ? 0 : row->thickness_mm - row->loaded_thickness_mm;
    stiffness_check(reader, row, path);
    if (row->test_report)
        test_report_check(reader, row->test_report, path);
}

static void screed_check(const struct record_reader *reader, struct screed *row, const struct json_path *path)
{
    if (!row->name)
        row->name = row->id;
    if (row->thickest_mm < row->thinnest_mm)
        fail_at(reader, path, "thickest_mm", NULL, "is below thinnest_mm");
    if (row->wet_density_kg_m3 < row->dry_density_kg_m3)
        fail_at(reader, path, "wet_density_kg_m3", NULL, "is below dry_density_kg_m3");
}

void catalogue_check(const struct record_reader *reader, struct catalogue *catalogue, const struct json_path *path,
                     bool quick)
{
    struct json_path underlays = {path, "underlays", 0}, screeds = {path, "screeds", 0},
                     floorings = {path, "floorings", 0};
    struct underlay *underlay = catalogue->underlays.at;
    struct screed *screed = catalogue->screeds.at;
    struct flooring *flooring = catalogue->floorings.at;
    for (size_t i = 0; i < catalogue->underlays.count; i++) {
        struct json_path row = {&underlays, NULL, i};
        underlay_check(reader, &underlay[i], &row, quick);
    }
    for (size_t i = 0; i < catalogue->screeds.count; i++) {
        struct json_path row = {&screeds, NULL, i};
        screed_check(reader, &screed[i], &row);
    }
    for (size_t i = 0; i < catalogue->floorings.count; i++) {
        struct json_path row = {&floorings, NULL, i};
        if (!flooring[i].name)
            flooring[i].name = flooring[i].id;
        if (!isnan(flooring[i].delta_Lw_dB) && flooring[i].kind == FLOORING_HARD)
            fail_at(reader, &row, "delta_Lw_dB", "set \"kind\": \"soft\"", "counts for a soft covering only");
    }
    ids_check(reader, &catalogue->underlays, &underlay_record, &underlays);
    ids_check(reader, &catalogue->screeds, &screed_record, &screeds);
    ids_check(reader, &catalogue->floorings, &flooring_record, &floorings);
}

void limits_check(const struct record_reader *reader, struct limits *limits)
{
    struct json_path list = {NULL, "limits", 0};
    struct limit *limit = limits->limits.at;
    for (size_t i = 0; i < limits->limits.count; i++) {
        struct json_path row = {&list, NULL, i};
        if (limit[i].descriptor < 0)
            continue;
        enum sense due = descriptor_sense((enum descriptor)limit[i].descriptor);
        if (limit[i].sense < 0)
            limit[i].sense = (int)due;
        if (limit[i].sense != (int)due)
            fail_at(reader, &row, "sense", NULL,
                    arena_printf(reader->arena, "must be \"%s\" for this descriptor", sense_names[due]));
        if (isnan(limit[i].value_dB))
            fail_at(reader, &row, NULL, NULL, "needs value_dB");
    }
    ids_check(reader, &limits->limits, &limit_record, &list);
}
