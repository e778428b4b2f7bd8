/* Reading projects: defaults, limits of every field, references, places of problems. */
#include "project/project_read.h"

#include <jansson.h>
#include <stdio.h>
#include <string.h>

#include "assert_within.h"
#include "project/record_read.h"
#include "suites.h"
#include "unit/project_fixture.h"

static struct project_fixture fixture;

static void open_data(void)
{
    project_fixture_open(&fixture);
}

static void close_data(void)
{
    project_fixture_close(&fixture);
}

/* Problems begin anew with each reading. */
static struct project *read_bytes(const char *text, size_t length)
{
    struct input input = {"house.json", text, length, false};
    fixture.problems = (struct problems){.arena = fixture.arena};
    return project_read(&input, &fixture.data, fixture.arena, &fixture.problems);
}

static struct project *read_text(const char *text)
{
    return read_bytes(text, strlen(text));
}

static const struct problem *only_problem(void)
{
    const struct problem *first = fixture.problems.first;
    ck_assert_msg(first != NULL, "there is no problem");
    ck_assert_msg(first->next == NULL, "a second problem: %s %s", first->next ? first->next->place.path : "",
                  first->next ? first->next->text : "");
    ck_assert_int_eq(first->severity, SEVERITY_ERROR);
    ck_assert_str_eq(first->place.file, "house.json");
    return first;
}

static struct project *read_well(const char *text)
{
    struct project *project = read_text(text);
    const struct problem *first = fixture.problems.first;
    ck_assert_msg(project && !first, "%s: %s", first ? first->place.path : "", first ? first->text : "no project");
    return project;
}

#define FORMAT "\"format\": \"underscreed-project/1\""
#define SLAB "\"slab\": {\"thickness_mm\": 180}"
#define ROOMS "\"rooms\": [{\"name\": \"a\", " SLAB "}]"

START_TEST(minimal_project_gets_its_defaults)
{
    struct project *project = read_well("{" FORMAT ", " ROOMS "}");
    const struct room *room = project->rooms.at;

    ck_assert_uint_eq(project->rooms.count, 1);
    ck_assert_ptr_null(project->name);
    ck_assert_ptr_null(project->requirement);
    ck_assert_ptr_null(project->candidates);
    ck_assert_ptr_null(project->thickness_rules);
    ck_assert_uint_eq(project->build_ups.count, 0);
    ck_assert_uint_eq(project->catalogue->underlays.count, fixture.data.catalogue.underlays.count);
    ck_assert_str_eq(room->name, "a");
    ck_assert_int_eq(room->slab->construction, SLAB_HOMOGENEOUS);
    assert_within(room->slab->thickness_mm, 180, 0);
    assert_within(room->slab->density_kg_m3, 2400, 0);
    ck_assert(isnan(room->slab->mass_kg_m2) && isnan(room->slab->Ln_w_eq_dB));
    ck_assert(!room->below && !room->use && !room->services && !room->drain && !room->plan && !room->requirement);
    ck_assert(!room->found_build_up && !room->found_flooring);
    ck_assert(isnan(room->available_height_mm) && isnan(room->allowed_added_load_kN_m2));
}
END_TEST

START_TEST(empty_objects_get_their_defaults)
{
    struct project *project =
        read_well("{" FORMAT ", \"rooms\": [{\"name\": \"a\", " SLAB ", \"below\": {}, \"use\": {}, "
                  "\"services\": {}, \"drain\": {}, \"flanking\": [{\"mass_kg_m2\": 300}]}]}");
    const struct room *room = project->rooms.at;
    const struct flanking *flanking = room->flanking.at;

    ck_assert_int_eq(room->below->position, USC_POSITION_BELOW);
    assert_within(room->use->area_load_kN_m2, 2, 0);
    assert_within(room->use->point_load_kN, 1, 0);
    ck_assert_int_eq(room->use->heating, HEATING_NONE);
    assert_within(room->use->heating_pipe_mm, 16, 0);
    assert_within(room->services->crown_mm, 0, 0);
    ck_assert(isnan(room->services->levelling_mm));
    assert_within(room->services->levelling_density_kg_m3, 1000, 0);
    assert_within(room->drain->fall_percent, 2, 0);
    assert_within(room->drain->distance_m, 1.5, 0);
    ck_assert(!flanking->lined && !flanking->lightweight);
}
END_TEST

/* A chain of fields from the project down to one record; lists are entered at their first element. */
enum { DEEPEST = 8 };
struct chain {
    const struct field *step[DEEPEST];
    int count;
};

static json_t *least_object(const struct record *record);

/* A value that a required field takes. */
static json_t *least_value(const struct field *field)
{
    switch (field->kind) {
    case FIELD_NUMBER:
        return json_real((field->lowest + field->highest) / 2);
    case FIELD_TEXT:
        return json_string("x");
    case FIELD_CHOICE:
        return json_string(field->names[0]);
    case FIELD_OBJECT:
        return least_object(field->record);
    case FIELD_OBJECTS:
        return json_pack("[o]", least_object(field->record));
    default:
        ck_abort_msg("a required field of another kind: %s", field->key);
    }
    return NULL;
}

/* The required keys of a record and no other. */
static json_t *least_object(const struct record *record)
{
    json_t *object = json_object();
    for (size_t i = 0; i < record->field_count; i++)
        if (record->fields[i].required)
            json_object_set_new(object, record->fields[i].key, least_value(&record->fields[i]));
    return object;
}

/* A least project with the objects of the chain in it; *inner is the last of them. */
static json_t *least_project(const struct chain *chain, json_t **inner)
{
    json_t *project = least_object(&project_record);
    json_object_set_new(project, "format", json_string("underscreed-project/1"));
    *inner = project;
    for (int i = 0; i < chain->count; i++) {
        const struct field *field = chain->step[i];
        if (!json_object_get(*inner, field->key))
            json_object_set_new(*inner, field->key, least_value(field));
        *inner = json_object_get(*inner, field->key);
        if (field->kind == FIELD_OBJECTS)
            *inner = json_array_get(*inner, 0);
    }
    return project;
}

/* The path of the chain, and of one key in its last object when key is given. */
static const char *chain_path(const struct chain *chain, const char *key)
{
    const char *path = "";
    for (int i = 0; i < chain->count; i++)
        path = arena_printf(fixture.arena, "%s%s%s%s", path, *path ? "." : "", chain->step[i]->key,
                            chain->step[i]->kind == FIELD_OBJECTS ? "[0]" : "");
    return key ? arena_printf(fixture.arena, "%s%s%s", path, *path ? "." : "", key) : path;
}

/* Down the same chain in what was read. */
static const void *chain_thing(const struct chain *chain, const void *thing)
{
    for (int i = 0; i < chain->count; i++) {
        const void *member = field_at(chain->step[i], thing);
        thing = chain->step[i]->kind == FIELD_OBJECTS ? ((const struct objects *)member)->at : *(void *const *)member;
    }
    return thing;
}

static int visited;

static void each_record(struct chain *chain, const struct record *record,
                        void (*visit)(const struct chain *, const struct field *))
{
    ck_assert_int_lt(chain->count, DEEPEST);
    for (size_t i = 0; i < record->field_count; i++) {
        const struct field *field = &record->fields[i];
        visit(chain, field);
        if (field->kind != FIELD_OBJECT && field->kind != FIELD_OBJECTS)
            continue;
        chain->step[chain->count++] = field;
        each_record(chain, field->record, visit);
        chain->count--;
    }
}

static void required_key_is_missed(const struct chain *chain, const struct field *field)
{
    json_t *inner, *project = least_project(chain, &inner);
    if (field->required) {
        visited++;
        json_object_del(inner, field->key);
        char *text = json_dumps(project, 0);
        ck_assert_ptr_null(read_text(text));
        ck_assert_str_eq(only_problem()->place.path, chain_path(chain, NULL));
        const char *needs = arena_printf(fixture.arena, "needs the key \"%s\"", field->key);
        ck_assert_msg(strstr(only_problem()->text, needs) != NULL, "%s: %s", field->key, only_problem()->text);
        free(text);
    }
    json_decref(project);
}

START_TEST(every_required_key_is_missed)
{
    struct chain chain = {.count = 0};
    visited = 0;
    each_record(&chain, &project_record, required_key_is_missed);
    ck_assert_int_ge(visited, 15);
}
END_TEST

static void set_number(json_t *inner, const struct field *field, double value)
{
    json_object_set_new(inner, field->key, field->kind == FIELD_NUMBERS ? json_pack("[f]", value) : json_real(value));
}

/* By the field tables alone: what fields ask of each other is another matter. */
static void assert_taken(const struct chain *chain, const struct field *field, double value)
{
    json_t *inner, *json = least_project(chain, &inner);
    struct record_reader reader = {fixture.arena, &fixture.problems, "house.json"};
    struct project project;
    fixture.problems = (struct problems){.arena = fixture.arena};
    set_number(inner, field, value);
    record_read(&reader, json, &project_record, NULL, &project);
    ck_assert_msg(!fixture.problems.first, "%s at %.17g: %s", chain_path(chain, field->key), value,
                  fixture.problems.first ? fixture.problems.first->text : "");
    const void *member = field_at(field, chain_thing(chain, &project));
    double taken = field->kind == FIELD_NUMBERS ? ((const struct numbers *)member)->at[0] : *(const double *)member;
    assert_within(taken, value, 0);
    json_decref(json);
}

static void assert_refused(const struct chain *chain, const struct field *field, double value)
{
    json_t *inner, *project = least_project(chain, &inner);
    const char *key = field->kind == FIELD_NUMBERS ? arena_printf(fixture.arena, "%s[0]", field->key) : field->key;
    set_number(inner, field, value);
    char *text = json_dumps(project, JSON_REAL_PRECISION(17));
    ck_assert_msg(!read_text(text), "%s takes %.17g", chain_path(chain, key), value);
    ck_assert_str_eq(only_problem()->place.path, chain_path(chain, key));
    ck_assert_int_eq(only_problem()->place.line, 1);
    ck_assert_int_gt(only_problem()->place.column, 1);
    free(text);
    json_decref(project);
}

static void number_ends_at_its_limits(const struct chain *chain, const struct field *field)
{
    ck_assert_int_ne(field->kind, FIELD_INTEGER); /* none in a project; one more would need its own steps */
    if (field->kind != FIELD_NUMBER && field->kind != FIELD_NUMBERS)
        return;
    visited++;
    ck_assert(isfinite(field->lowest) && isfinite(field->highest));
    assert_taken(chain, field, field->highest);
    assert_refused(chain, field, nextafter(field->highest, INFINITY));
    if (field->above) {
        assert_taken(chain, field, nextafter(field->lowest, INFINITY));
        assert_refused(chain, field, field->lowest);
    } else {
        assert_taken(chain, field, field->lowest);
        assert_refused(chain, field, nextafter(field->lowest, -INFINITY));
    }
}

START_TEST(every_number_ends_at_its_limits)
{
    struct chain chain = {.count = 0};
    visited = 0;
    each_record(&chain, &project_record, number_ends_at_its_limits);
    ck_assert_int_ge(visited, 50);
}
END_TEST

START_TEST(references_lead_to_their_rows)
{
    struct project *project = read_well(
        "{" FORMAT ", \"requirement\": {\"limit\": \"de-4109-1-2018-solid\"}, \"thickness_rules\": \"bs-8204\", "
        "\"candidates\": {\"underlays\": [\"glass-wool-board-12\"], \"screeds\": [\"ct-f5\"]}, "
        "\"build_ups\": [{\"id\": \"one\"}, {\"id\": \"two\", \"flooring\": \"parquet\", "
        "\"screed\": {\"kind\": \"ct-f4\", \"thickness_mm\": 50}, "
        "\"underlays\": [\"glass-wool-board-20\", \"glass-wool-board-12\"]}], "
        "\"rooms\": [{\"name\": \"a\", \"build_up\": \"two\", \"flooring\": \"parquet-solid\", " SLAB ", "
        "\"requirement\": {\"descriptor\": \"IIC\", \"value_dB\": 50}}]}");
    const struct room *room = project->rooms.at;
    const struct build_up *build_up = project->build_ups.at;

    ck_assert_str_eq(project->requirement->found->id, "de-4109-1-2018-solid");
    assert_within(project->requirement->found->value_dB, 50, 0);
    ck_assert_ptr_eq(room->found_build_up, &build_up[1]);
    ck_assert_str_eq(room->found_flooring->id, "parquet-solid");
    ck_assert_str_eq(build_up[1].found_flooring->id, "parquet");
    ck_assert_str_eq(build_up[1].screed->found->id, "ct-f4");
    ck_assert_str_eq(build_up[1].found_underlay[0]->id, "glass-wool-board-20");
    ck_assert_str_eq(build_up[1].found_underlay[1]->id, "glass-wool-board-12");
    ck_assert_int_eq(room->requirement->sense, SENSE_AT_LEAST);
    ck_assert_ptr_null(room->requirement->found);
}
END_TEST

START_TEST(own_rows_stand_in_front)
{
    struct project *project = read_well(
        "{" FORMAT ", " ROOMS ", \"catalogue\": {\"underlays\": ["
        "{\"id\": \"glass-wool-board-20\", \"dynamic_stiffness_MN_m3\": 9, \"thickness_mm\": 22}, "
        "{\"id\": \"mat\", \"dynamic_stiffness_MN_m3\": 25, \"thickness_mm\": 6, \"loaded_thickness_mm\": 5}]}, "
        "\"build_ups\": [{\"id\": \"b\", \"underlays\": [\"glass-wool-board-20\", \"mat\"], "
        "\"screed\": {\"kind\": \"ct-f4\", \"thickness_mm\": 50}}]}");
    const struct build_up *build_up = project->build_ups.at;
    const struct underlay *own = build_up->found_underlay[0], *mat = build_up->found_underlay[1];

    assert_within(own->dynamic_stiffness_MN_m3, 9, 0);
    assert_within(own->thickness_mm, 22, 0);
    ck_assert_int_eq(own->status, STATUS_OWN);
    ck_assert_str_eq(own->name, "glass-wool-board-20");
    ck_assert_str_eq(mat->id, "mat");
    assert_within(mat->compressibility_mm, 1, 0);
    ck_assert_uint_eq(project->catalogue->underlays.count, fixture.data.catalogue.underlays.count + 1);
    /* The data themselves stay as they are for the next project. */
    assert_within(catalogue_underlay(&fixture.data.catalogue, "glass-wool-board-20")->dynamic_stiffness_MN_m3, 10, 0);
}
END_TEST

/* s' = s't + 111 / d between 10 and 100 kPa s/m2, s't from 100 on (EN 29052-1); d is the loaded thickness. */
static const struct {
    double resistivity, expected, tolerance;
} conversions[] = {{10, 13.55, 0.005}, {99, 13.55, 0.005}, {100, 8, 0}, {500, 8, 0}};

START_TEST(apparent_stiffness_becomes_dynamic)
{
    struct project *project = read_well(arena_printf(
        fixture.arena,
        "{" FORMAT ", " ROOMS ", \"catalogue\": {\"underlays\": [{\"id\": \"mat\", \"apparent_stiffness_MN_m3\": 8, "
        "\"flow_resistivity_kPa_s_m2\": %g, \"thickness_mm\": 25, \"loaded_thickness_mm\": 20}]}}",
        conversions[_i].resistivity));
    const struct underlay *mat = catalogue_underlay(project->catalogue, "mat");

    assert_within(mat->dynamic_stiffness_MN_m3, conversions[_i].expected, conversions[_i].tolerance);
    assert_within(mat->apparent_stiffness_MN_m3, 8, 0);
}
END_TEST

#define OWN_UNDERLAY(KEYS) "{" FORMAT ", " ROOMS ", \"catalogue\": {\"underlays\": [{\"id\": \"m\", " KEYS "}]}}"
#define BUILD_UP(KEYS) "{" FORMAT ", " ROOMS ", \"build_ups\": [{\"id\": \"b\"" KEYS "}]}"
#define ROOM(KEYS) "{" FORMAT ", \"rooms\": [{\"name\": \"a\", " KEYS "}]}"
#define PROJECT(KEYS) "{" FORMAT ", " ROOMS ", " KEYS "}"
#define CT_F4 ", \"screed\": {\"kind\": \"ct-f4\", \"thickness_mm\": 50}"

/* One fault each: where it is told, and a part of what is told. */
static const struct {
    const char *text, *path, *told;
} faults[] = {
    {"{" FORMAT ", \"rooms\": []}", "rooms", "at least one room"},
    {"{" FORMAT ", \"rooms\": {}}", "rooms", "must be a list"},
    {"{" FORMAT ", \"rooms\": [7]}", "rooms[0]", "must be an object"},
    {PROJECT("\"colour\": 1"), "colour", "no known key"},
    {ROOM(SLAB ", \"slabb\": 1"), "rooms[0].slabb", "no known key"},
    {ROOM("\"slab\": {\"thickness_mm\": \"180\"}"), "rooms[0].slab.thickness_mm", "must be a number in mm, not text"},
    {ROOM("\"slab\": {}"), "rooms[0].slab", "needs thickness_mm"},
    {ROOM("\"slab\": {\"thickness_mm\": 180, \"mass_kg_m2\": 400}"), "rooms[0].slab", "one of the two"},
    {ROOM("\"slab\": {\"construction\": \"wood\", \"thickness_mm\": 180}"), "rooms[0].slab.construction", "not one of"},
    {ROOM(SLAB ", \"flanking\": [{\"mass_kg_m2\": 300}, {\"thickness_mm\": 200}]"), "rooms[0].flanking[1]",
     "needs mass"},
    {ROOM(SLAB ", \"build_up\": \"b\""), "rooms[0].build_up", "no known build-up"},
    {ROOM(SLAB ", \"flooring\": \"parket\""), "rooms[0].flooring", "no known flooring"},
    {ROOM(SLAB ", \"requirement\": {}"), "rooms[0].requirement", "needs the id"},
    {ROOM(SLAB ", \"requirement\": {\"limit\": \"x\"}"), "rooms[0].requirement.limit", "no known limit"},
    {PROJECT("\"requirement\": {\"limit\": \"us-ibc\", \"value_dB\": 50}"), "requirement", "one of the two"},
    {PROJECT("\"thickness_rules\": \"x\""), "thickness_rules", "no known thickness rules"},
    {PROJECT("\"candidates\": {\"screeds\": [\"ct-f4\", \"x\"]}"), "candidates.screeds[1]", "no known screed"},
    {PROJECT("\"candidates\": {\"underlays\": [\"x\"]}"), "candidates.underlays[0]", "no known underlay"},
    {PROJECT("\"candidates\": {\"thinnest_mm\": 50, \"thickest_mm\": 49}"), "candidates", "below thinnest"},
    {BUILD_UP("}, {\"id\": \"b\""), "build_ups[1].id", "given twice"},
    {BUILD_UP(CT_F4), "build_ups[0]", "at least one id"},
    {BUILD_UP(", \"underlays\": [\"glass-wool-board-20\"]"), "build_ups[0]", "needs a \"screed\""},
    {BUILD_UP(CT_F4 ", \"underlays\": [\"glass-wool-board-20\", \"x\"]"), "build_ups[0].underlays[1]",
     "no known underlay"},
    {BUILD_UP(", \"screed\": {\"kind\": \"x\", \"thickness_mm\": 50}, \"underlays\": [\"glass-wool-board-20\"]"),
     "build_ups[0].screed.kind", "no known screed"},
    {OWN_UNDERLAY("\"thickness_mm\": 20"), "catalogue.underlays[0]", "needs dynamic_stiffness"},
    {OWN_UNDERLAY("\"dynamic_stiffness_MN_m3\": 9"), "catalogue.underlays[0]", "needs thickness_mm"},
    {OWN_UNDERLAY("\"thickness_mm\": 20, \"apparent_stiffness_MN_m3\": 9"),
     "catalogue.underlays[0].apparent_stiffness_MN_m3", "needs flow_resistivity"},
    {OWN_UNDERLAY("\"thickness_mm\": 20, \"loaded_thickness_mm\": 21, \"dynamic_stiffness_MN_m3\": 9"),
     "catalogue.underlays[0].loaded_thickness_mm", "above thickness_mm"},
    {"{\"format\": \"underscreed-project/2\", " ROOMS "}", "format", "not a format that this version reads"},
    {"{\"format\": \"underscreed-limits/1\"}", "format", "of the kind \"limits\""},
    {"{\"format\": 1, " ROOMS "}", "format", "must be text"},
};

START_TEST(fault_is_told_at_its_place)
{
    ck_assert_ptr_null(read_text(faults[_i].text));
    ck_assert_str_eq(only_problem()->place.path, faults[_i].path);
    ck_assert_msg(strstr(only_problem()->text, faults[_i].told) != NULL, "%s: %s", faults[_i].path,
                  only_problem()->text);
    ck_assert_int_eq(only_problem()->place.line, 1);
}
END_TEST

/* No JSON, also where the reader takes the text apart itself. column: in the only line. */
static const struct {
    const char *text;
    int column;
} broken[] = {
    {"", 1},
    {"  ", 3},
    {"[]", 1},
    {"{\"a\": 1", 8},
    {"{\"a\": 1 \"b\": 2}", 9},
    {"{\"a\": 1]", 8},
    {"{\"rooms\": [{}}]", 14},
    {"{\"rooms\": [{} {}]}", 15},
    {"{\"rooms\": [{}", 14},
    {"{" FORMAT ", " ROOMS "} 1", 94},
    {"{\"a\": 1, \"a\": 2}", 11},
    {"{\"rooms\": [{}], \"rooms\": [{}]}", 18},
};

START_TEST(broken_text_is_told_at_its_place)
{
    bool told = false;
    ck_assert_ptr_null(read_text(broken[_i].text));
    for (const struct problem *problem = fixture.problems.first; problem; problem = problem->next)
        if (strstr(problem->text, "is not valid JSON")) {
            ck_assert_int_eq(problem->place.line, 1);
            ck_assert_int_eq(problem->place.column, broken[_i].column);
            told = true;
        }
    ck_assert_msg(told, "taken for JSON: %s", broken[_i].text);
}
END_TEST

START_TEST(place_counts_past_crlf_and_utf8)
{
    ck_assert_ptr_null(read_text("\xef\xbb\xbf{\r\n  " FORMAT ",\r\n  \"name\": \"H\xc3\xb6"
                                 "fe \xe2\x82\xac\",\r\n"
                                 "  \"rooms\": [\r\n"
                                 "    {\"name\": \"K\xc3\xbc"
                                 "che\", \"slab\": {\"thickness_mm\": 0}}\r\n  ]\r\n}\r\n"));
    ck_assert_str_eq(only_problem()->place.path, "rooms[0].slab.thickness_mm");
    ck_assert_int_eq(only_problem()->place.line, 5);
    ck_assert_int_eq(only_problem()->place.column, 48);
}
END_TEST

static void assert_same(const struct record *record, const void *a, const void *b);

static void assert_same_member(const struct field *field, const void *a, const void *b)
{
    switch (field->kind) {
    case FIELD_NUMBER:
        ck_assert_msg(!memcmp(a, b, sizeof(double)) || (isnan(*(const double *)a) && isnan(*(const double *)b)), "%s",
                      field->key);
        break;
    case FIELD_FLAG:
        ck_assert_int_eq(*(const bool *)a, *(const bool *)b);
        break;
    case FIELD_CHOICE:
        ck_assert_int_eq(*(const int *)a, *(const int *)b);
        break;
    case FIELD_TEXT:
        ck_assert_pstr_eq(*(const char *const *)a, *(const char *const *)b);
        break;
    case FIELD_OBJECT:
        ck_assert_int_eq(!*(void *const *)a, !*(void *const *)b);
        if (*(void *const *)a)
            assert_same(field->record, *(void *const *)a, *(void *const *)b);
        break;
    case FIELD_OBJECTS: {
        const struct objects *left = a, *right = b;
        ck_assert_uint_eq(left->count, right->count);
        for (size_t i = 0; i < left->count; i++)
            assert_same(field->record, (const char *)left->at + i * field->record->size,
                        (const char *)right->at + i * field->record->size);
        break;
    }
    default:
        ck_abort_msg("a room with a field of another kind: %s", field->key);
    }
}

static void assert_same(const struct record *record, const void *a, const void *b)
{
    for (size_t i = 0; i < record->field_count; i++)
        assert_same_member(&record->fields[i], field_at(&record->fields[i], a), field_at(&record->fields[i], b));
}

enum { MANY_ROOMS = 1000 };

/* Rooms that differ, with what could mislead a reader that looks for brackets, quotes and commas. */
static char *many_rooms(void)
{
    char *text = NULL;
    size_t size = 0;
    FILE *out = open_memstream(&text, &size);
    fputs("{\"rooms\" :\n [", out);
    for (int i = 0; i < MANY_ROOMS; i++)
        fprintf(out,
                "%s {\"name\": \"]}, {\\\"%d\\\\\", \"slab\": {\"thickness_mm\": %d, \"layers\": "
                "[{\"thickness_mm\": %d.25, \"density_kg_m3\": 2000}]}%s}\n",
                i ? "," : "", i, 100 + i % 300, 1 + i % 90,
                i % 2 ? ", \"below\": {\"volume_m3\": 3.5e1}"
                      : ", \"flanking\": [{\"mass_kg_m2\": 300, \"lined\": true}]");
    fputs("], " FORMAT "}", out);
    fclose(out);
    return text;
}

START_TEST(rooms_one_by_one_are_as_in_the_whole)
{
    char *text = many_rooms();
    struct project *project = read_well(text), whole;
    struct record_reader reader = {fixture.arena, &fixture.problems, "house.json"};
    json_t *json = json_loads(text, 0, NULL);

    record_read(&reader, json, &project_record, NULL, &whole);
    ck_assert_ptr_null(fixture.problems.first);
    ck_assert_uint_eq(project->rooms.count, MANY_ROOMS);
    assert_same_member(record_field(&project_record, "rooms"), &project->rooms, &whole.rooms);
    ck_assert_str_eq(((const struct room *)project->rooms.at)[999].name, "]}, {\"999\\");
    json_decref(json);
    free(text);
}
END_TEST

Suite *project_read_suite(void)
{
    Suite *suite = suite_create("project reader");
    TCase *reading = tcase_create("reading"), *refusing = tcase_create("refusing");

    tcase_add_unchecked_fixture(reading, open_data, close_data);
    tcase_add_test(reading, minimal_project_gets_its_defaults);
    tcase_add_test(reading, empty_objects_get_their_defaults);
    tcase_add_test(reading, references_lead_to_their_rows);
    tcase_add_test(reading, own_rows_stand_in_front);
    tcase_add_loop_test(reading, apparent_stiffness_becomes_dynamic, 0, sizeof conversions / sizeof conversions[0]);
    tcase_add_test(reading, rooms_one_by_one_are_as_in_the_whole);
    suite_add_tcase(suite, reading);
    tcase_add_unchecked_fixture(refusing, open_data, close_data);
    tcase_add_test(refusing, every_required_key_is_missed);
    tcase_add_test(refusing, every_number_ends_at_its_limits);
    tcase_add_loop_test(refusing, fault_is_told_at_its_place, 0, sizeof faults / sizeof faults[0]);
    tcase_add_loop_test(refusing, broken_text_is_told_at_its_place, 0, sizeof broken / sizeof broken[0]);
    tcase_add_test(refusing, place_counts_past_crlf_and_utf8);
    suite_add_tcase(suite, refusing);
    return suite;
}
