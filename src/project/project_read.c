/* Reading a project: the document but its rooms, then room by room; then every id is resolved. */
#include "project/project_read.h"

#include <string.h>

#include "project/data_check.h"
#include "project/json_text.h"
#include "project/record_read.h"

struct reading {
    struct record_reader reader;
    const struct input *input;
    const struct data *data;
    struct project *project;
};

/* One piece of the text as JSON; NULL after a syntax problem. */
static json_t *parse_piece(const struct reading *reading, size_t from, size_t to)
{
    json_error_t error;
    json_t *json = json_loadb(reading->input->text + from, to - from, JSON_REJECT_DUPLICATES | JSON_DECODE_ANY, &error);
    if (!json)
        parser_problem(&reading->reader, reading->input->text, from, &error);
    return json;
}

static bool broken_off(const struct reading *reading, size_t at)
{
    const char *what = at >= reading->input->length ? "the text ends too early" : "a comma, colon or quote is missing";
    syntax_problem(&reading->reader, reading->input->text, at, what);
    return false;
}

static bool read_rooms(const struct reading *reading, size_t at, size_t *end)
{
    struct json_walk walk = {reading->input->text, reading->input->length, at, 0};
    struct json_piece piece;
    struct json_path list = {NULL, "rooms", 0};
    struct objects *rooms = &reading->project->rooms;
    size_t room_for = 0;
    int more;
    while ((more = json_walk_next(&walk, &piece)) == 1) {
        json_t *json = parse_piece(reading, piece.value, piece.value_end);
        if (!json)
            return false;
        if (rooms->count == room_for)
            rooms->at = arena_grow(reading->reader.arena, rooms->at, rooms->count, &room_for, sizeof(struct room));
        struct json_path path = {&list, NULL, rooms->count};
        record_read(&reading->reader, json, &room_record, &path, (struct room *)rooms->at + rooms->count);
        rooms->count++;
        json_decref(json);
    }
    *end = walk.at;
    return more == 0 || broken_off(reading, walk.at);
}

/* The document's members into an object; the rooms, where they are a list, element by element. */
static bool take_apart(const struct reading *reading, size_t at, json_t *document, bool *rooms_read, size_t *end)
{
    const char *text = reading->input->text;
    struct json_walk walk = {text, reading->input->length, at, 0};
    struct json_piece piece;
    int more;
    while ((more = json_walk_next(&walk, &piece)) == 1) {
        const char *key = arena_text_of(reading->reader.arena, text + piece.key, piece.key_end - piece.key);
        if ((!strcmp(key, "rooms") && *rooms_read) || json_object_get(document, key)) {
            syntax_problem(&reading->reader, text, piece.key,
                           arena_printf(reading->reader.arena, "the key \"%s\" is given twice", key));
            return false;
        }
        if (!strcmp(key, "rooms") && text[piece.value] == '[') {
            size_t after;
            if (!read_rooms(reading, piece.value, &after))
                return false;
            *rooms_read = true;
            walk.at = after;
            continue;
        }
        json_t *value = parse_piece(reading, piece.value, piece.value_end);
        if (!value)
            return false;
        if (json_object_set_new(document, key, value)) {
            syntax_problem(&reading->reader, text, piece.key, "the key is not valid UTF-8");
            return false;
        }
    }
    *end = walk.at;
    return more == 0 || broken_off(reading, walk.at);
}

/* The format before all else: a file of another kind would only raise one error a key. False when it is the wrong one;
 * a text without the key is read on, and the key then missed. */
static bool format_fits(const struct reading *reading, size_t start)
{
    const struct input *input = reading->input;
    size_t at = json_text_find(input->text, input->length, "format");
    if (at == start)
        return true;
    json_t *format =
        json_loadb(input->text + at, json_text_skip(input->text, input->length, at) - at, JSON_DECODE_ANY, NULL);
    size_t before = reading->reader.problems->count[SEVERITY_ERROR];
    if (format)
        format_check(&reading->reader, format, "project");
    json_decref(format);
    return reading->reader.problems->count[SEVERITY_ERROR] == before;
}

/* Reads the whole text into the project; rooms are already in it when their list was read. */
static void read_document(const struct reading *reading)
{
    const struct input *input = reading->input;
    size_t at = json_text_blank(input->text, input->length, 0), end = at;
    bool rooms_read = false;
    if (at >= input->length || input->text[at] != '{') {
        syntax_problem(&reading->reader, input->text, at, at >= input->length ? "the text is empty" : "'{' is due");
        return;
    }
    if (!format_fits(reading, at))
        return;
    json_t *document = json_object();
    if (take_apart(reading, at, document, &rooms_read, &end)) {
        size_t rest = json_text_blank(input->text, input->length, end);
        struct objects rooms = reading->project->rooms;
        if (rest < input->length)
            syntax_problem(&reading->reader, input->text, rest, "text follows after the end of the document");
        if (rooms_read)
            json_object_set_new(document, "rooms", json_array());
        record_read(&reading->reader, document, &project_record, NULL, reading->project);
        if (rooms_read)
            reading->project->rooms = rooms;
    }
    json_decref(document);
}

static void fail(const struct reading *reading, const struct json_path *path, const char *hint, const char *text)
{
    problem_add(reading->reader.problems, SEVERITY_ERROR, reading->reader.file,
                json_path_text(reading->reader.arena, path), hint, "%s", text);
}

/* An id that names nothing, with the nearest id there is. */
static void unknown_id(const struct reading *reading, const struct json_path *path, const char *id, const char *what,
                       const struct objects *rows, const struct record *record)
{
    struct arena *arena = reading->reader.arena;
    const char **known = arena_take_many(arena, rows->count, sizeof *known);
    size_t offset = record_field(record, "id")->offset;
    for (size_t i = 0; i < rows->count; i++)
        known[i] = *(const char *const *)((const char *)rows->at + i * record->size + offset);
    const char *near = nearest_name(id, known, rows->count);
    fail(reading, path, near ? arena_printf(arena, "did you mean \"%s\"?", near) : NULL,
         arena_printf(arena, "\"%s\" is no known %s", id, what));
}

static const struct flooring *find_flooring(const struct reading *reading, const char *id, const struct json_path *up)
{
    struct json_path path = {up, "flooring", 0};
    const struct catalogue *catalogue = reading->project->catalogue;
    if (!id)
        return NULL;
    const struct flooring *found = catalogue_flooring(catalogue, id);
    if (!found)
        unknown_id(reading, &path, id, "flooring", &catalogue->floorings, &flooring_record);
    return found;
}

static void find_build_up(const struct reading *reading, struct build_up *build_up, const struct json_path *path)
{
    const struct catalogue *catalogue = reading->project->catalogue;
    struct json_path underlays = {path, "underlays", 0};
    build_up->found_flooring = find_flooring(reading, build_up->flooring, path);
    if (build_up->screed && build_up->screed->kind) {
        struct json_path screed = {path, "screed", 0}, kind = {&screed, "kind", 0};
        build_up->screed->found = catalogue_screed(catalogue, build_up->screed->kind);
        if (!build_up->screed->found)
            unknown_id(reading, &kind, build_up->screed->kind, "screed", &catalogue->screeds, &screed_record);
        if (!build_up->underlays.count)
            fail(reading, path, "a screed without a resilient layer does not float",
                 "needs at least one id in \"underlays\" under its screed");
    } else if (!build_up->screed && build_up->underlays.count) {
        fail(reading, path, NULL, "needs a \"screed\" on its underlays");
    }
    build_up->found_underlay =
        arena_take_many(reading->reader.arena, build_up->underlays.count, sizeof *build_up->found_underlay);
    for (size_t i = 0; i < build_up->underlays.count; i++) {
        struct json_path element = {&underlays, NULL, i};
        build_up->found_underlay[i] = catalogue_underlay(catalogue, build_up->underlays.at[i]);
        if (!build_up->found_underlay[i])
            unknown_id(reading, &element, build_up->underlays.at[i], "underlay", &catalogue->underlays,
                       &underlay_record);
    }
}

static void find_limit(const struct reading *reading, struct requirement *requirement, const struct json_path *up)
{
    struct json_path path = {up, "requirement", 0}, limit = {&path, "limit", 0};
    const struct limit *row = reading->data->limits.limits.at;
    if (!requirement)
        return;
    if (!requirement->limit) {
        if (requirement->descriptor < 0 || isnan(requirement->value_dB))
            fail(reading, &path, "underscreed limits lists the ids",
                 "needs the id of a limit, or a descriptor with its value_dB");
        else if (requirement->sense < 0)
            requirement->sense = (int)descriptor_sense((enum descriptor)requirement->descriptor);
        return;
    }
    if (requirement->descriptor >= 0 || !isnan(requirement->value_dB))
        fail(reading, &path, NULL, "states a limit by id and by value: one of the two");
    for (size_t i = 0; i < reading->data->limits.limits.count; i++)
        if (!strcmp(row[i].id, requirement->limit))
            requirement->found = &row[i];
    if (!requirement->found)
        unknown_id(reading, &limit, requirement->limit, "limit", &reading->data->limits.limits, &limit_record);
}

static void check_slab(const struct reading *reading, const struct slab *slab, const struct json_path *up)
{
    struct json_path path = {up, "slab", 0};
    bool thick = !isnan(slab->thickness_mm), mass = !isnan(slab->mass_kg_m2);
    if (mass && (thick || slab->layers.count))
        fail(reading, &path, "mass_kg_m2 already holds the bonded layers",
             "states mass_kg_m2 and a thickness or layers: one of the two");
    else if (!mass && !thick && !slab->layers.count && isnan(slab->Ln_w_eq_dB))
        fail(reading, &path, NULL, "needs thickness_mm, layers, mass_kg_m2 or a measured Ln_w_eq_dB");
}

static void check_flanking(const struct reading *reading, const struct room *room, const struct json_path *up)
{
    struct json_path list = {up, "flanking", 0};
    const struct flanking *flanking = room->flanking.at;
    for (size_t i = 0; i < room->flanking.count; i++) {
        struct json_path path = {&list, NULL, i};
        bool mass = !isnan(flanking[i].mass_kg_m2);
        bool both = !isnan(flanking[i].thickness_mm) && !isnan(flanking[i].density_kg_m3);
        bool any = !isnan(flanking[i].thickness_mm) || !isnan(flanking[i].density_kg_m3);
        if (mass ? any : !both && !flanking[i].lightweight)
            fail(reading, &path, NULL, "needs mass_kg_m2, or thickness_mm with density_kg_m3");
    }
}

static void find_room(const struct reading *reading, struct room *room, const struct json_path *path)
{
    const struct build_up *build_up = reading->project->build_ups.at;
    struct json_path key = {path, "build_up", 0};
    for (size_t i = 0; room->build_up && i < reading->project->build_ups.count; i++)
        if (!strcmp(build_up[i].id, room->build_up))
            room->found_build_up = &build_up[i];
    if (room->build_up && !room->found_build_up)
        unknown_id(reading, &key, room->build_up, "build-up of this project", &reading->project->build_ups,
                   &build_up_record);
    room->found_flooring = find_flooring(reading, room->flooring, path);
    find_limit(reading, room->requirement, path);
    check_slab(reading, room->slab, path);
    check_flanking(reading, room, path);
}

static void find_candidates(const struct reading *reading)
{
    const struct catalogue *catalogue = reading->project->catalogue;
    const struct candidates *candidates = reading->project->candidates;
    struct json_path path = {NULL, "candidates", 0}, underlays = {&path, "underlays", 0},
                     screeds = {&path, "screeds", 0};
    if (!candidates)
        return;
    for (size_t i = 0; i < candidates->underlays.count; i++) {
        struct json_path element = {&underlays, NULL, i};
        if (!catalogue_underlay(catalogue, candidates->underlays.at[i]))
            unknown_id(reading, &element, candidates->underlays.at[i], "underlay", &catalogue->underlays,
                       &underlay_record);
    }
    for (size_t i = 0; i < candidates->screeds.count; i++) {
        struct json_path element = {&screeds, NULL, i};
        if (!catalogue_screed(catalogue, candidates->screeds.at[i]))
            unknown_id(reading, &element, candidates->screeds.at[i], "screed", &catalogue->screeds, &screed_record);
    }
    if (candidates->thickest_mm < candidates->thinnest_mm)
        fail(reading, &path, NULL, "thickest_mm is below thinnest_mm");
}

/* Every id to what it names; run only when the types are right. */
static void resolve(const struct reading *reading)
{
    struct project *project = reading->project;
    struct build_up *build_up = project->build_ups.at;
    struct room *room = project->rooms.at;
    struct json_path build_ups = {NULL, "build_ups", 0}, rooms = {NULL, "rooms", 0},
                     rules = {NULL, "thickness_rules", 0};
    struct catalogue *merged = arena_take(reading->reader.arena, sizeof *merged);
    *merged = reading->data->catalogue;
    if (project->catalogue) {
        struct json_path path = {NULL, "catalogue", 0};
        catalogue_check(&reading->reader, project->catalogue, &path, reading->input->quick);
        catalogue_merge(merged, project->catalogue, reading->reader.arena);
    }
    project->catalogue = merged;
    for (size_t i = 0; i < project->build_ups.count; i++) {
        struct json_path path = {&build_ups, NULL, i};
        find_build_up(reading, &build_up[i], &path);
    }
    ids_check(&reading->reader, &project->build_ups, &build_up_record, &build_ups);
    find_limit(reading, project->requirement, NULL);
    find_candidates(reading);
    if (project->thickness_rules && !practice_thickness(&reading->data->practice, project->thickness_rules))
        unknown_id(reading, &rules, project->thickness_rules, "thickness rules", &reading->data->practice.thickness,
                   &thickness_rules_record);
    if (!project->rooms.count)
        fail(reading, &rooms, NULL, "is empty: at least one room");
    for (size_t i = 0; i < project->rooms.count; i++) {
        struct json_path path = {&rooms, NULL, i};
        find_room(reading, &room[i], &path);
    }
}

struct project *project_read(const struct input *input, const struct data *data, struct arena *arena,
                             struct problems *problems)
{
    static const char byte_order_mark[] = "\xef\xbb\xbf";
    struct input text = *input;
    struct reading reading = {{arena, problems, input->name}, &text, data, arena_take(arena, sizeof(struct project))};
    record_defaults(&project_record, reading.project);
    if (text.length >= 3 && !memcmp(text.text, byte_order_mark, 3)) {
        text.text += 3;
        text.length -= 3;
    }
    read_document(&reading);
    if (!problems_any_error(problems))
        resolve(&reading);
    problems_locate(problems->first, input->name, text.text, text.length);
    return problems_any_error(problems) ? NULL : reading.project;
}
