/* From parsed JSON to a struct by its field table. */
#include "project/record_read.h"

#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "project/json_text.h"

const char *json_path_text(struct arena *arena, const struct json_path *path)
{
    if (!path)
        return "";
    const char *head = json_path_text(arena, path->up);
    if (!path->key)
        return arena_printf(arena, "%s[%zu]", head, path->index);
    return arena_printf(arena, "%s%s%s", head, *head ? "." : "", path->key);
}

static void fail(const struct record_reader *reader, const struct json_path *path, const char *hint, const char *text)
{
    problem_add(reader->problems, SEVERITY_ERROR, reader->file, json_path_text(reader->arena, path), hint, "%s", text);
}

static const char *type_name(const json_t *json)
{
    switch (json_typeof(json)) {
    case JSON_OBJECT:
        return "an object";
    case JSON_ARRAY:
        return "a list";
    case JSON_STRING:
        return "text";
    case JSON_INTEGER:
    case JSON_REAL:
        return "a number";
    case JSON_TRUE:
    case JSON_FALSE:
        return "true or false";
    default:
        return "null";
    }
}

static void wrong_type(const struct record_reader *reader, const struct json_path *path, const char *due,
                       const char *unit, const json_t *json)
{
    fail(reader, path, NULL,
         arena_printf(reader->arena, "must be %s%s%s, not %s", due, *unit ? " in " : "", unit, type_name(json)));
}

/* "0 to 500 mm", "above 0 kg/m2": the allowed range in words. */
static const char *range_text(struct arena *arena, const struct field *field)
{
    char low[NUMBER_TEXT], high[NUMBER_TEXT];
    const char *blank = *field->unit ? " " : "";
    if (isinf(field->highest) && isinf(field->lowest))
        return arena_printf(arena, "a finite number");
    if (isinf(field->highest))
        return arena_printf(arena, "%s %s%s%s", field->above ? "above" : "at least", number_exact(field->lowest, low),
                            blank, field->unit);
    if (field->above)
        return arena_printf(arena, "above %s and at most %s%s%s", number_exact(field->lowest, low),
                            number_exact(field->highest, high), blank, field->unit);
    return arena_printf(arena, "within %s to %s%s%s", number_exact(field->lowest, low),
                        number_exact(field->highest, high), blank, field->unit);
}

static bool read_number(const struct record_reader *reader, const json_t *json, const struct field *field,
                        const struct json_path *path, double *number)
{
    char text[NUMBER_TEXT];
    if (!json_is_number(json)) {
        wrong_type(reader, path, "a number", field->unit, json);
        return false;
    }
    double value = json_number_value(json);
    if (value < field->lowest || value > field->highest || (field->above && value <= field->lowest)) {
        fail(reader, path, NULL,
             arena_printf(reader->arena, "%s is not %s", number_exact(value, text), range_text(reader->arena, field)));
        return false;
    }
    *number = value;
    return true;
}

static const char *read_text(const struct record_reader *reader, const json_t *json, const struct json_path *path)
{
    if (!json_is_string(json)) {
        wrong_type(reader, path, "text", "", json);
        return NULL;
    }
    return arena_text(reader->arena, json_string_value(json));
}

static void read_choice(const struct record_reader *reader, const json_t *json, const struct field *field,
                        const struct json_path *path, int *choice)
{
    size_t count = 0;
    const char *all = "", *near;
    while (field->names[count])
        count++;
    if (!json_is_string(json)) {
        wrong_type(reader, path, "text", "", json);
        return;
    }
    for (size_t i = 0; i < count; i++) {
        if (!strcmp(field->names[i], json_string_value(json))) {
            *choice = (int)i;
            return;
        }
        all = arena_printf(reader->arena, "%s%s\"%s\"", all, i ? ", " : "", field->names[i]);
    }
    near = nearest_name(json_string_value(json), field->names, count);
    fail(reader, path, near ? arena_printf(reader->arena, "did you mean \"%s\"?", near) : NULL,
         arena_printf(reader->arena, "\"%s\" is not one of %s", json_string_value(json), all));
}

static void read_numbers(const struct record_reader *reader, const json_t *json, const struct field *field,
                         const struct json_path *path, struct numbers *numbers)
{
    numbers->count = json_array_size(json);
    numbers->at = arena_take_many(reader->arena, numbers->count, sizeof *numbers->at);
    for (size_t i = 0; i < numbers->count; i++) {
        struct json_path element = {path, NULL, i};
        read_number(reader, json_array_get(json, i), field, &element, &numbers->at[i]);
    }
}

static void read_texts(const struct record_reader *reader, const json_t *json, const struct json_path *path,
                       struct texts *texts)
{
    texts->count = json_array_size(json);
    texts->at = arena_take_many(reader->arena, texts->count, sizeof *texts->at);
    for (size_t i = 0; i < texts->count; i++) {
        struct json_path element = {path, NULL, i};
        const char *text = read_text(reader, json_array_get(json, i), &element);
        texts->at[i] = text ? text : "";
    }
}

static void read_objects(const struct record_reader *reader, const json_t *json, const struct field *field,
                         const struct json_path *path, struct objects *objects)
{
    objects->count = json_array_size(json);
    objects->at = arena_take_many(reader->arena, objects->count, field->record->size);
    for (size_t i = 0; i < objects->count; i++) {
        struct json_path element = {path, NULL, i};
        record_read(reader, json_array_get(json, i), field->record, &element,
                    (char *)objects->at + i * field->record->size);
    }
}

static void read_list(const struct record_reader *reader, const json_t *json, const struct field *field,
                      const struct json_path *path, void *member)
{
    if (!json_is_array(json))
        wrong_type(reader, path, "a list", "", json);
    else if (field->kind == FIELD_NUMBERS)
        read_numbers(reader, json, field, path, member);
    else if (field->kind == FIELD_TEXTS)
        read_texts(reader, json, path, member);
    else
        read_objects(reader, json, field, path, member);
}

static void read_member(const struct record_reader *reader, const json_t *json, const struct field *field,
                        const struct json_path *path, void *member)
{
    double number;
    switch (field->kind) {
    case FIELD_NUMBER:
        read_number(reader, json, field, path, member);
        break;
    case FIELD_INTEGER:
        if (read_number(reader, json, field, path, &number)) {
            if (number != floor(number))
                fail(reader, path, NULL, "must be a whole number");
            else
                *(int *)member = (int)number;
        }
        break;
    case FIELD_FLAG:
    case FIELD_ANSWER:
        if (!json_is_boolean(json))
            wrong_type(reader, path, "true or false", "", json);
        else if (field->kind == FIELD_FLAG)
            *(bool *)member = json_is_true(json);
        else
            *(enum answer *)member = json_is_true(json) ? ANSWER_YES : ANSWER_NO;
        break;
    case FIELD_TEXT:
        *(const char **)member = read_text(reader, json, path);
        break;
    case FIELD_CHOICE:
        read_choice(reader, json, field, path, member);
        break;
    case FIELD_OBJECT:
        *(void **)member = arena_take(reader->arena, field->record->size);
        record_read(reader, json, field->record, path, *(void **)member);
        break;
    case FIELD_NUMBERS:
    case FIELD_TEXTS:
    case FIELD_OBJECTS:
        read_list(reader, json, field, path, member);
        break;
    }
}

static void unknown_key(const struct record_reader *reader, const struct record *record, const struct json_path *path,
                        const char *key)
{
    const char *known[64];
    size_t count = 0;
    for (size_t i = 0; i < record->field_count && count < 63; i++)
        known[count++] = record->fields[i].key;
    known[count++] = "note";
    const char *near = nearest_name(key, known, count);
    fail(reader, path, near ? arena_printf(reader->arena, "did you mean \"%s\"?", near) : NULL,
         arena_printf(reader->arena, "is no known key of a %s", record->name));
}

void record_read(const struct record_reader *reader, const json_t *json, const struct record *record,
                 const struct json_path *path, void *thing)
{
    const char *key;
    json_t *value;
    record_defaults(record, thing);
    if (!json_is_object(json)) {
        wrong_type(reader, path, "an object", "", json);
        return;
    }
    json_object_foreach((json_t *)json, key, value)
    {
        struct json_path member = {path, key, 0};
        const struct field *field = record_field(record, key);
        if (field && json_is_null(value) && !field->required)
            continue;
        if (field)
            read_member(reader, value, field, &member, (char *)thing + field->offset);
        else if (strcmp(key, "note"))
            unknown_key(reader, record, &member, key);
        else if (!json_is_string(value))
            wrong_type(reader, &member, "text", "", value);
    }
    for (size_t i = 0; i < record->field_count; i++)
        if (record->fields[i].required && !json_object_get(json, record->fields[i].key)) {
            const struct field *field = &record->fields[i];
            fail(reader, path, NULL,
                 arena_printf(reader->arena, "needs the key \"%s\" (%s%s%s)", field->key, field->heading,
                              *field->unit ? ", " : "", field->unit));
        }
}

void format_check(const struct record_reader *reader, const json_t *format, const char *family)
{
    struct json_path path = {NULL, "format", 0};
    const char *text = json_string_value(format), *slash;
    const char *due = arena_printf(reader->arena, "underscreed-%s/1", family);
    size_t length = strlen(due) - 1;
    if (!format) {
        fail(reader, NULL, NULL, arena_printf(reader->arena, "needs the key \"format\": \"%s\"", due));
    } else if (!text) {
        wrong_type(reader, &path, "text", "", format);
    } else if (!strncmp(text, due, length) && strcmp(text, due)) {
        fail(
            reader, &path, "a newer program reads it",
            arena_printf(reader->arena, "\"%s\" is not a format that this version reads (it reads \"%s\")", text, due));
    } else if (strcmp(text, due)) {
        slash = strchr(text, '/');
        bool ours = !strncmp(text, "underscreed-", 12) && slash;
        fail(reader, &path, NULL,
             ours ? arena_printf(reader->arena, "this is a file of the kind \"%.*s\", where \"%s\" is due",
                                 (int)(slash - text - 12), text + 12, family)
                  : arena_printf(reader->arena, "\"%s\" is not \"%s\"", text, due));
    }
}

void problems_locate(struct problem *since, const char *file, const char *text, size_t length)
{
    for (struct problem *problem = since; problem; problem = problem->next) {
        bool same = file && problem->place.file && !strcmp(file, problem->place.file);
        if (same && !problem->place.line)
            json_text_position(text, json_text_find(text, length, problem->place.path), &problem->place.line,
                               &problem->place.column);
    }
}

void syntax_problem(const struct record_reader *reader, const char *text, size_t offset, const char *what)
{
    struct problem *problem =
        problem_add(reader->problems, SEVERITY_ERROR, reader->file, "", NULL, "is not valid JSON: %s", what);
    json_text_position(text, offset, &problem->place.line, &problem->place.column);
}

/* jansson's place is behind the token that it stumbled over and quotes at the end of its text; a person looks for the
 * beginning. Where a string broke off (no closing quote in the token) the place is already that of the fault. */
static size_t token_begin(const char *text, size_t offset, const char *told)
{
    static const char near[] = " near '";
    const char *token = strstr(told, near);
    if (!token)
        return offset;
    token += sizeof near - 1;
    size_t length = strlen(token) - 1; /* without the closing ' */
    bool broken_off = token[0] == '"' && (length < 2 || token[length - 1] != '"');
    if (broken_off || length > offset || memcmp(text + offset - length, token, length) != 0)
        return offset;
    return offset - length;
}

void parser_problem(const struct record_reader *reader, const char *text, size_t from, const json_error_t *error)
{
    size_t offset = from + (error->position > 0 ? (size_t)error->position : 0);
    const char *what = error->text;
    if (json_error_code(error) == json_error_null_character)
        what = "\\u0000 is not allowed in text";
    else if (json_error_code(error) == json_error_null_byte_in_key)
        what = "\\u0000 is not allowed in a key";
    syntax_problem(reader, text, token_begin(text + from, offset - from, error->text) + from, what);
}

bool document_read(const struct record_reader *reader, const char *text, size_t length, const char *family,
                   const struct record *record, void *thing)
{
    json_error_t error;
    size_t before = reader->problems->count[SEVERITY_ERROR];
    json_t *json = json_loadb(text, length, JSON_REJECT_DUPLICATES, &error);
    record_defaults(record, thing);
    if (!json) {
        parser_problem(reader, text, 0, &error);
        return false;
    }
    if (json_is_object(json))
        format_check(reader, json_object_get(json, "format"), family);
    if (reader->problems->count[SEVERITY_ERROR] == before)
        record_read(reader, json, record, NULL, thing);
    json_decref(json);
    problems_locate(reader->problems->first, reader->file, text, length);
    return reader->problems->count[SEVERITY_ERROR] == before;
}
