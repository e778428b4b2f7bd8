/* The file formats as documents: their keys, and their JSON Schemas, both from the field tables. */
#include <string.h>

#include "report/documents.h"
#include "report/json_out.h"

const struct format formats[] = {
    {"project", &project_record},
    {"catalogue", &catalogue_record},
    {"limits", &limits_record},
    {"practice", &practice_record},
};
const int format_count = sizeof formats / sizeof formats[0];

const struct format results[] = {
    {"rate", &rated_record},
    {"stiffness", &stiffness_result_record},
    {"compare", &comparison_record},
};
const int result_count = sizeof results / sizeof results[0];

static const char *const kind_names[] = {
    [FIELD_NUMBER] = "number", [FIELD_INTEGER] = "whole number", [FIELD_FLAG] = "flag",       [FIELD_ANSWER] = "answer",
    [FIELD_TEXT] = "text",     [FIELD_CHOICE] = "choice",        [FIELD_NUMBERS] = "numbers", [FIELD_TEXTS] = "texts",
    [FIELD_OBJECT] = "object", [FIELD_OBJECTS] = "objects",
};

int format_records(const struct format *format, const struct record *record[], int most)
{
    int count = 0;
    record[count++] = format->root;
    for (int i = 0; i < count; i++)
        for (size_t j = 0; j < record[i]->field_count; j++) {
            const struct record *inner = record[i]->fields[j].record;
            bool known = !inner;
            for (int k = 0; !known && k < count; k++)
                known = record[k] == inner;
            if (!known && count < most)
                record[count++] = inner;
        }
    return count;
}

static void bound(struct json_out *out, const char *key, double value)
{
    json_number(out, key, isinf(value) ? NAN : value);
}

static void key_members(struct json_out *out, const struct field *field)
{
    json_object_begin(out, NULL);
    json_text(out, "key", field->key);
    json_text(out, "kind", kind_names[field->kind]);
    json_text(out, "unit", field->unit);
    json_text(out, "heading", field->heading);
    json_flag(out, "required", field->required);
    bool number = field->kind == FIELD_NUMBER || field->kind == FIELD_NUMBERS || field->kind == FIELD_INTEGER;
    bound(out, "lowest", number ? field->lowest : NAN);
    bound(out, "highest", number ? field->highest : NAN);
    json_flag(out, "lowest_excluded", field->above);
    if (field->kind == FIELD_CHOICE && !isnan(field->otherwise))
        json_text(out, "default", field->names[(int)field->otherwise]);
    else if (field->kind == FIELD_FLAG)
        json_flag(out, "default", field->otherwise > 0);
    else
        bound(out, "default", field->kind == FIELD_NUMBER ? field->otherwise : NAN);
    json_array_begin(out, "words");
    for (int i = 0; field->kind == FIELD_CHOICE && field->names[i]; i++)
        json_text(out, NULL, field->names[i]);
    json_array_end(out);
    json_text(out, "record", field->record ? field->record->name : NULL);
    json_object_end(out);
}

void document_formats(FILE *stream, const struct format *const format[], int count)
{
    struct json_out out;
    json_open(&out, stream);
    json_object_begin(&out, NULL);
    json_text(&out, "format", "underscreed-formats/1");
    json_text(&out, "version", PACKAGE_VERSION);
    json_answer(&out, "meets", ANSWER_NONE);
    json_array_begin(&out, "formats");
    for (int i = 0; i < count; i++) {
        const struct record *record[32];
        int records = format_records(format[i], record, 32);
        json_object_begin(&out, NULL);
        json_text(&out, "family", format[i]->family);
        json_array_begin(&out, "records");
        for (int j = 0; j < records; j++) {
            json_object_begin(&out, NULL);
            json_text(&out, "name", record[j]->name);
            json_array_begin(&out, "keys");
            for (size_t k = 0; k < record[j]->field_count; k++)
                key_members(&out, &record[j]->fields[k]);
            json_array_end(&out);
            json_object_end(&out);
        }
        json_array_end(&out);
        json_object_end(&out);
    }
    json_array_end(&out);
    json_object_end(&out);
    json_close(&out);
}

/* Reference to a record's definition; record names may hold blanks. */
static void reference(struct json_out *out, const struct record *record)
{
    char text[100] = "#/$defs/";
    size_t end = strlen(text);
    for (const char *from = record->name; *from && end < sizeof text - 1; from++)
        text[end++] = *from == ' ' ? '-' : *from;
    text[end] = '\0';
    json_text(out, "$ref", text);
}

static void number_schema(struct json_out *out, const struct field *field)
{
    json_text(out, "type", field->kind == FIELD_INTEGER ? "integer" : "number");
    if (!isinf(field->lowest))
        json_number(out, field->above ? "exclusiveMinimum" : "minimum", field->lowest);
    if (!isinf(field->highest))
        json_number(out, "maximum", field->highest);
}

static void items_begin(struct json_out *out)
{
    json_text(out, "type", "array");
    json_object_begin(out, "items");
}

static void value_schema(struct json_out *out, const struct field *field, bool result)
{
    switch (field->kind) {
    case FIELD_NUMBER:
    case FIELD_INTEGER:
        number_schema(out, field);
        break;
    case FIELD_FLAG:
    case FIELD_ANSWER:
        json_text(out, "type", "boolean");
        break;
    case FIELD_TEXT:
        json_text(out, "type", "string");
        break;
    case FIELD_CHOICE:
        json_array_begin(out, "enum");
        for (int i = 0; field->names[i]; i++)
            json_text(out, NULL, field->names[i]);
        json_array_end(out);
        break;
    case FIELD_OBJECT:
        reference(out, field->record);
        break;
    case FIELD_NUMBERS:
        items_begin(out);
        if (result) { /* a band without a value is null */
            json_array_begin(out, "type");
            json_text(out, NULL, "number");
            json_text(out, NULL, "null");
            json_array_end(out);
        } else {
            number_schema(out, field);
        }
        json_object_end(out);
        break;
    case FIELD_TEXTS:
        items_begin(out);
        json_text(out, "type", "string");
        json_object_end(out);
        break;
    case FIELD_OBJECTS:
        items_begin(out);
        reference(out, field->record);
        json_object_end(out);
        break;
    }
}

static void property(struct json_out *out, const struct field *field, bool result)
{
    json_object_begin(out, field->key);
    if (*field->unit) {
        char text[200];
        snprintf(text, sizeof text, "%s, %s", field->heading, field->unit);
        json_text(out, "description", text);
    } else {
        json_text(out, "description", field->heading);
    }
    if (field->required && !result) {
        value_schema(out, field, result);
    } else { /* null says: not given */
        json_array_begin(out, "anyOf");
        json_object_begin(out, NULL);
        value_schema(out, field, result);
        json_object_end(out);
        json_object_begin(out, NULL);
        json_text(out, "type", "null");
        json_object_end(out);
        json_array_end(out);
    }
    json_object_end(out);
}

static void record_schema(struct json_out *out, const struct record *record, const char *format, bool result)
{
    json_text(out, "type", "object");
    json_flag(out, "additionalProperties", false);
    json_object_begin(out, "properties");
    for (size_t i = 0; i < record->field_count; i++) {
        if (format && !strcmp(record->fields[i].key, "format")) {
            json_object_begin(out, "format");
            json_text(out, "const", format);
            json_object_end(out);
        } else {
            property(out, &record->fields[i], result);
        }
    }
    if (!result && !record_field(record, "note")) {
        json_object_begin(out, "note");
        json_text(out, "type", "string");
        json_object_end(out);
    }
    json_object_end(out);
    json_array_begin(out, "required");
    for (size_t i = 0; i < record->field_count; i++)
        if (result || record->fields[i].required || (format && !strcmp(record->fields[i].key, "format")))
            json_text(out, NULL, record->fields[i].key);
    json_array_end(out);
}

static void definitions(struct json_out *out, const struct format *format, bool result)
{
    const struct record *record[32];
    int const records = format_records(format, record, 32);
    json_object_begin(out, "$defs");
    for (int i = 1; i < records; i++) {
        char key[80];
        size_t j = 0;
        for (; record[i]->name[j] && j < sizeof key - 1; j++)
            key[j] = record[i]->name[j] == ' ' ? '-' : record[i]->name[j];
        key[j] = '\0';
        json_object_begin(out, key);
        record_schema(out, record[i], NULL, result);
        json_object_end(out);
    }
    json_object_end(out);
}

static void schema_head(struct json_out *out, FILE *stream, const char *name)
{
    json_open(out, stream);
    json_object_begin(out, NULL);
    json_text(out, "$schema", "https://json-schema.org/draft/2020-12/schema");
    json_text(out, "title", name);
}

void document_schema(FILE *stream, const struct format *format)
{
    struct json_out out;
    char name[60];
    snprintf(name, sizeof name, "underscreed-%s/1", format->family);
    schema_head(&out, stream, name);
    record_schema(&out, format->root, name, false);
    definitions(&out, format, false);
    json_object_end(&out);
    json_close(&out);
}

/* The document: what every result has, and the members of this one; more keys may stand beside them. */
void document_result_schema(FILE *stream, const struct format *result)
{
    struct json_out out;
    char name[60];
    snprintf(name, sizeof name, "underscreed-%s/1", result->family);
    schema_head(&out, stream, name);
    json_text(&out, "type", "object");
    json_object_begin(&out, "properties");
    json_object_begin(&out, "format");
    json_text(&out, "const", name);
    json_object_end(&out);
    json_object_begin(&out, "version");
    json_text(&out, "type", "string");
    json_object_end(&out);
    json_object_begin(&out, "meets");
    json_array_begin(&out, "type");
    json_text(&out, NULL, "boolean");
    json_text(&out, NULL, "null");
    json_array_end(&out);
    json_object_end(&out);
    for (size_t i = 0; i < result->root->field_count; i++)
        property(&out, &result->root->fields[i], true);
    json_object_end(&out);
    json_array_begin(&out, "required");
    json_text(&out, NULL, "format");
    json_text(&out, NULL, "version");
    json_text(&out, NULL, "meets");
    for (size_t i = 0; i < result->root->field_count; i++)
        json_text(&out, NULL, result->root->fields[i].key);
    json_array_end(&out);
    definitions(&out, result, true);
    json_object_end(&out);
    json_close(&out);
}
