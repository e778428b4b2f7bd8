/* The built-in data against the published tables, and what every row of them must carry. */
#include <jansson.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "assert_within.h"
#include "project/data_store.h"
#include "published/table.h"
#include "suites.h"
#include "unit/project_fixture.h"

static struct table thickness, limit_table, practice_table;
static struct project_fixture fixture;
static struct usc_thickness_answer answer;

/* Above a limit by more than the 1e-9 that the rules allow for decimals. */
#define JUST_ABOVE(VALUE) ((VALUE) + 1e-6)

static void open_data(void)
{
    project_fixture_open(&fixture);
}

static void close_data(void)
{
    project_fixture_close(&fixture);
}

static struct usc_thickness_rules rules_of(const char *id)
{
    const struct thickness_rules *rules = practice_thickness(&fixture.data.practice, id);
    ck_assert_msg(rules != NULL, "there are no thickness rules %s", id);
    return thickness_rules_view(rules);
}

static enum usc_thickness_status ask(const char *id, struct usc_thickness_case given)
{
    struct usc_thickness_rules rules = rules_of(id);
    return usc_least_nominal_thickness(&rules, &given, &answer);
}

/* On thick, firm insulation, so that nothing but the load decides. */
static struct usc_thickness_case loaded(const char *kind, const char *strength_class, double area, double point)
{
    return (struct usc_thickness_case){kind, strength_class, area, point, 3, 100, 0, false};
}

static void assert_asked(const char *id, struct usc_thickness_case given, double expected_mm)
{
    ck_assert_int_eq(ask(id, given), USC_THICKNESS_KNOWN);
    assert_within(answer.least_mm, expected_mm, 0);
}

/* The table's next row when it is of the same kind and class, -1 at the last load column. */
static int next_column(int row)
{
    if (row + 1 == thickness.row_count ||
        strcmp(table_text(&thickness, row, "kind"), table_text(&thickness, row + 1, "kind")) ||
        strcmp(table_text(&thickness, row, "class"), table_text(&thickness, row + 1, "class")))
        return -1;
    return row + 1;
}

START_TEST(thickness_is_as_printed)
{
    double area = table_number(&thickness, _i, "area_load_kN_m2"),
           point = table_number(&thickness, _i, "point_load_kN");
    struct usc_thickness_case given =
        loaded(table_text(&thickness, _i, "kind"), table_text(&thickness, _i, "class"), area, point);
    struct usc_thickness_case more_area = given, more_point = given;
    int next = next_column(_i);

    more_area.area_load_kN_m2 = JUST_ABOVE(area);
    more_point.point_load_kN = JUST_ABOVE(point);
    assert_asked("din-18560-2", given, table_number(&thickness, _i, "thickness_mm"));
    if (next >= 0) {
        assert_asked("din-18560-2", more_area, table_number(&thickness, next, "thickness_mm"));
        assert_asked("din-18560-2", more_point, table_number(&thickness, next, "thickness_mm"));
    } else {
        ck_assert_int_eq(ask("din-18560-2", more_area), USC_THICKNESS_LOAD_BEYOND);
        ck_assert_int_eq(ask("din-18560-2", more_point), USC_THICKNESS_LOAD_BEYOND);
    }
}
END_TEST

START_TEST(thickness_has_no_row_beside_the_printed_ones)
{
    ck_assert_uint_eq(rules_of("din-18560-2").row_count, (size_t)thickness.row_count);
    ck_assert_int_eq(ask("din-18560-2", loaded("CT", "F3", 2, 1)), USC_THICKNESS_NO_KIND);
    ck_assert_int_eq(ask("din-18560-2", loaded("dry", "F4", 2, 1)), USC_THICKNESS_NO_KIND);
}
END_TEST

START_TEST(compressibility_has_the_steps_of_din)
{
    struct usc_thickness_case given = loaded("CT", "F4", 2, 1);
    given.compressibility_mm = 5;
    assert_asked("din-18560-2", given, 45);
    given.compressibility_mm = JUST_ABOVE(5);
    assert_asked("din-18560-2", given, 50);
    given.compressibility_mm = 10;
    assert_asked("din-18560-2", given, 50);
    given.compressibility_mm = JUST_ABOVE(10);
    ck_assert_int_eq(ask("din-18560-2", given), USC_THICKNESS_TOO_COMPRESSIBLE);
    assert_within(answer.compressibility_limit_mm, 10, 0);

    given = loaded("CT", "F4", 3, 2);
    given.compressibility_mm = 10;
    assert_asked("din-18560-2", given, 70);
}
END_TEST

START_TEST(compressibility_is_3_mm_in_the_last_columns)
{
    static const double area[] = {4, 5}, point[] = {3, 4}, expected_mm[] = {70, 75};
    struct usc_thickness_case given = loaded("CT", "F4", area[_i], point[_i]);
    given.compressibility_mm = 3;
    assert_asked("din-18560-2", given, expected_mm[_i]);
    given.compressibility_mm = JUST_ABOVE(3);
    ck_assert_int_eq(ask("din-18560-2", given), USC_THICKNESS_TOO_COMPRESSIBLE);
    assert_within(answer.compressibility_limit_mm, 3, 0);
}
END_TEST

START_TEST(asphalt_takes_3_mm_in_every_column)
{
    struct usc_thickness_case given = loaded("AS", "IC10", 2, 1);
    given.compressibility_mm = 3;
    assert_asked("din-18560-2", given, 25);
    given.compressibility_mm = JUST_ABOVE(3);
    ck_assert_int_eq(ask("din-18560-2", given), USC_THICKNESS_TOO_COMPRESSIBLE);
}
END_TEST

START_TEST(thin_insulation_ends_at_40_mm)
{
    struct usc_thickness_case given = loaded("CT", "F4", 2, 1);
    given.insulation_mm = 40;
    assert_asked("din-18560-2", given, 40);
    given.insulation_mm = JUST_ABOVE(40);
    assert_asked("din-18560-2", given, 45);
    given = loaded("CA", "F7", 2, 1);
    given.insulation_mm = 40;
    assert_asked("din-18560-2", given, 30);
    /* Flowing and asphalt screeds get no such reduction. */
    given = loaded("CAF", "F4", 2, 1);
    given.insulation_mm = 40;
    assert_asked("din-18560-2", given, 35);
    given = loaded("AS", "IC10", 2, 1);
    given.insulation_mm = 40;
    assert_asked("din-18560-2", given, 25);
}
END_TEST

START_TEST(heated_screed_covers_its_pipes)
{
    struct usc_thickness_case given = loaded("CT", "F4", 2, 1);
    given.heating_pipe_mm = 16;
    assert_asked("din-18560-2", given, 45 + 16);
    given.insulation_mm = 30; /* 40 unheated, yet the cover stays */
    assert_asked("din-18560-2", given, 45 + 16);
    given = loaded("CAF", "F4", 2, 1); /* 35 unheated */
    given.heating_pipe_mm = 20;
    assert_asked("din-18560-2", given, 45 + 20);
    given = loaded("CT", "F5", 2, 1);
    given.heating_pipe_mm = 16;
    assert_asked("din-18560-2", given, 40 + 16);
    given = loaded("CAF", "F7", 2, 1);
    given.heating_pipe_mm = 17;
    assert_asked("din-18560-2", given, 30 + 17);
    given = loaded("CT", "F4", 5, 4);
    given.heating_pipe_mm = 16;
    assert_asked("din-18560-2", given, 75 + 16);
}
END_TEST

START_TEST(tiles_ask_for_more)
{
    struct usc_thickness_case given = loaded("CT", "F5", 2, 1);
    given.tiles = true;
    assert_asked("din-18560-2", given, 45);
    given = loaded("CA", "F7", 2, 1);
    given.tiles = true;
    assert_asked("din-18560-2", given, 45);
    given = loaded("CAF", "F5", 2, 1);
    given.tiles = true;
    assert_asked("din-18560-2", given, 40);
    given = loaded("CT", "F4", 3, 2);
    given.tiles = true;
    assert_asked("din-18560-2", given, 65);
}
END_TEST

static const struct {
    const char *rules;
    double nominal_mm, least_mm;
} single_places[] = {
    {"din-18560-2", 45, 40}, {"din-18560-2", 50, 45}, {"din-18560-2", 60, 50}, {"din-18560-2", 75, 65},
    {"sia-251", 75, 70},     {"sia-251", 75.1, 65.1}, {"fr-floating", 50, 50}, {"fr-floating", 60, 45},
};

START_TEST(single_place_may_be_thinner)
{
    struct usc_thickness_rules rules = rules_of(single_places[_i].rules);
    assert_within(usc_least_single_thickness_mm(&rules, single_places[_i].nominal_mm), single_places[_i].least_mm,
                  1e-9);
}
END_TEST

START_TEST(british_screed_is_65_or_75)
{
    assert_asked("bs-8204", loaded("CT", "F4", 2, 2), 65);
    assert_asked("bs-8204", loaded("CT", "F4", JUST_ABOVE(2), 2), 75);
    assert_asked("bs-8204", loaded("CT", "F4", 2, JUST_ABOVE(2)), 75);
    assert_asked("bs-8204", loaded("CT", "F4", 5, 4), 75);
    ck_assert_int_eq(ask("bs-8204", loaded("CT", "F4", JUST_ABOVE(5), 4)), USC_THICKNESS_LOAD_BEYOND);
}
END_TEST

static const struct limit *limit_named(const char *id)
{
    const struct limit *limit = fixture.data.limits.limits.at;
    for (size_t i = 0; i < fixture.data.limits.limits.count; i++)
        if (!strcmp(limit[i].id, id))
            return &limit[i];
    ck_abort_msg("there is no limit %s", id);
    return NULL;
}

START_TEST(limit_is_as_printed)
{
    const struct limit *limit = limit_named(table_text(&limit_table, _i, "id"));
    enum descriptor descriptor = (enum descriptor)limit->descriptor;
    bool at_least = descriptor == DESCRIPTOR_IIC || descriptor == DESCRIPTOR_NISR;

    assert_within(limit->value_dB, table_number(&limit_table, _i, "value_dB"), 0);
    ck_assert_str_eq(descriptor_names[descriptor], table_text(&limit_table, _i, "descriptor"));
    ck_assert_int_eq(limit->sense, at_least ? SENSE_AT_LEAST : SENSE_AT_MOST);
    ck_assert_str_eq(row_status_names[limit->status], table_text(&limit_table, _i, "status"));
}
END_TEST

/* The record and row behind a line of the table. */
static const void *practice_row(const char *where, const char *id, const struct record **record)
{
    if (!strcmp(where, "screed")) {
        *record = &screed_record;
        return catalogue_screed(&fixture.data.catalogue, id);
    }
    const struct practice_rule *rule = fixture.data.practice.rules.at;
    *record = &practice_rule_record;
    for (size_t i = 0; i < fixture.data.practice.rules.count; i++)
        if (!strcmp(rule[i].id, id))
            return &rule[i];
    return NULL;
}

START_TEST(practice_is_as_stated_and_claims_no_source)
{
    const struct record *record;
    const char *id = table_text(&practice_table, _i, "id");
    const void *row = practice_row(table_text(&practice_table, _i, "where"), id, &record);

    ck_assert_msg(row != NULL, "there is no row %s", id);
    const double *value = field_at(record_field(record, table_text(&practice_table, _i, "key")), row);
    const int *status = field_at(record_field(record, "status"), row);
    const char *const *source = field_at(record_field(record, "source"), row);
    assert_within(*value, table_number(&practice_table, _i, "value"), 0);
    ck_assert_int_eq(*status, STATUS_COMMON_PRACTICE);
    ck_assert_msg(!*source || !**source || !strcmp(*source, row_status_names[STATUS_COMMON_PRACTICE]),
                  "%s claims the source \"%s\"", id, *source);
}
END_TEST

static int trusted_rows;

static void assert_trust(const struct record *record, const void *row)
{
    const struct field *status_field = record_field(record, "status"), *source_field = record_field(record, "source");
    const struct field *id_field = record_field(record, "id");
    if (!status_field)
        return;
    int status = *(const int *)field_at(status_field, row);
    const char *source = *(const char *const *)field_at(source_field, row);
    const char *id = id_field ? *(const char *const *)field_at(id_field, row) : "without id";
    bool sourced = source && *source;

    ck_assert_msg(status >= 0 && status != STATUS_OWN, "%s %s does not say how far to trust it", record->name, id);
    ck_assert_msg(sourced || status == STATUS_COMMON_PRACTICE || status == STATUS_INVENTED ||
                      status == STATUS_FROM_MEMORY,
                  "%s %s is %s and names no source", record->name, id, row_status_names[status]);
    trusted_rows++;
}

static void assert_all_trust(const struct record *record, const void *thing)
{
    assert_trust(record, thing);
    for (size_t i = 0; i < record->field_count; i++) {
        const struct field *field = &record->fields[i];
        if (field->kind != FIELD_OBJECTS)
            continue;
        const struct objects *rows = field_at(field, thing);
        for (size_t j = 0; j < rows->count; j++)
            assert_all_trust(field->record, (const char *)rows->at + j * field->record->size);
    }
}

START_TEST(every_row_says_how_far_to_trust_it)
{
    trusted_rows = 0;
    assert_all_trust(&catalogue_record, &fixture.data.catalogue);
    ck_assert_int_gt(trusted_rows, 0);
    trusted_rows = 0;
    assert_all_trust(&limits_record, &fixture.data.limits);
    ck_assert_int_ge(trusted_rows, limit_table.row_count);
    trusted_rows = 0;
    assert_all_trust(&practice_record, &fixture.data.practice);
    ck_assert_int_ge(trusted_rows, thickness.row_count + PRACTICE_VALUES);
}
END_TEST

/* From the documents themselves: a later file replaces rows of the same id without a word. */
static void assert_new_id(json_t *seen, const char *list, const json_t *row, const char *file)
{
    const char *id = json_string_value(json_object_get(row, "id"));
    char whole[128];
    ck_assert_msg(id && *id, "%s: a row of %s has no id", file, list);
    snprintf(whole, sizeof whole, "%s/%s", list, id);
    ck_assert_msg(!json_object_get(seen, whole), "%s: %s is given twice", file, whole);
    json_object_set_new(seen, whole, json_true());
}

START_TEST(no_id_is_given_twice)
{
    const struct data_document *document = fixture.data.documents.at;
    json_t *seen = json_object();
    for (size_t i = 0; i < fixture.data.documents.count; i++) {
        json_t *whole = json_loadb(document[i].text, document[i].length, 0, NULL), *member, *row;
        const char *key;
        size_t at;
        ck_assert_ptr_nonnull(whole);
        json_object_foreach(whole, key, member)
        {
            json_array_foreach(member, at, row)
            {
                assert_new_id(seen, key, row, document[i].path);
            }
        }
        json_decref(whole);
    }
    const struct data *data = &fixture.data;
    ck_assert_uint_eq(json_object_size(seen), data->catalogue.underlays.count + data->catalogue.screeds.count +
                                                  data->catalogue.floorings.count + data->limits.limits.count +
                                                  data->practice.rules.count + data->practice.thickness.count);
    json_decref(seen);
}
END_TEST

START_TEST(every_reference_names_a_row)
{
    const struct underlay *underlay = fixture.data.catalogue.underlays.at;
    const struct limit *limit = fixture.data.limits.limits.at;
    int named_underlays = 0, named_rules = 0;
    for (size_t i = 0; i < fixture.data.catalogue.underlays.count; i++)
        for (size_t j = 0; j < underlay[i].may_lie_under.count; j++, named_underlays++)
            ck_assert_msg(catalogue_underlay(&fixture.data.catalogue, underlay[i].may_lie_under.at[j]) != NULL,
                          "%s may lie under %s, which is not there", underlay[i].id, underlay[i].may_lie_under.at[j]);
    for (size_t i = 0; i < fixture.data.limits.limits.count; i++)
        if (limit[i].thickness_rules) {
            named_rules++;
            ck_assert_msg(practice_thickness(&fixture.data.practice, limit[i].thickness_rules) != NULL,
                          "%s names the rules %s, which are not there", limit[i].id, limit[i].thickness_rules);
        }
    ck_assert_int_gt(named_underlays, 0);
    ck_assert_int_gt(named_rules, 0);
}
END_TEST

static TCase *case_with_data(Suite *suite, const char *name)
{
    TCase *made = tcase_create(name);
    tcase_add_unchecked_fixture(made, open_data, close_data);
    suite_add_tcase(suite, made);
    return made;
}

Suite *data_suite(void)
{
    Suite *suite = suite_create("built-in data");
    TCase *rules = case_with_data(suite, "thickness rules"), *tables = case_with_data(suite, "limits and practice"),
          *rows = case_with_data(suite, "every row");

    table_read(&thickness, "thickness_din_18560_2.csv");
    table_read(&limit_table, "limits.csv");
    table_read(&practice_table, "practice.csv");
    tcase_add_loop_test(rules, thickness_is_as_printed, 0, thickness.row_count);
    tcase_add_test(rules, thickness_has_no_row_beside_the_printed_ones);
    tcase_add_test(rules, compressibility_has_the_steps_of_din);
    tcase_add_loop_test(rules, compressibility_is_3_mm_in_the_last_columns, 0, 2);
    tcase_add_test(rules, asphalt_takes_3_mm_in_every_column);
    tcase_add_test(rules, thin_insulation_ends_at_40_mm);
    tcase_add_test(rules, heated_screed_covers_its_pipes);
    tcase_add_test(rules, tiles_ask_for_more);
    tcase_add_loop_test(rules, single_place_may_be_thinner, 0, sizeof single_places / sizeof single_places[0]);
    tcase_add_test(rules, british_screed_is_65_or_75);
    tcase_add_loop_test(tables, limit_is_as_printed, 0, limit_table.row_count);
    tcase_add_loop_test(tables, practice_is_as_stated_and_claims_no_source, 0, practice_table.row_count);
    tcase_add_test(rows, every_row_says_how_far_to_trust_it);
    tcase_add_test(rows, no_id_is_given_twice);
    tcase_add_test(rows, every_reference_names_a_row);
    return suite;
}
