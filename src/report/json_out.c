#include "report/json_out.h"

#include <math.h>
#include <stdlib.h>

#include "base/number.h"
#include "base/text.h"

static void claim(bool held)
{
    if (!held)
        abort();
}

static struct json_level *innermost(struct json_out *out)
{
    return out->depth > 0 ? &out->level[out->depth - 1] : NULL;
}

void json_open(struct json_out *out, FILE *stream)
{
    *out = (struct json_out){.stream = stream};
}

void json_close(struct json_out *out)
{
    claim(out->begun && out->depth == 0);
    fputc('\n', out->stream);
}

static void break_line(struct json_out *out)
{
    fputc('\n', out->stream);
    for (int i = 0; i < out->depth; i++)
        fputs("  ", out->stream);
}

/* Control characters and DEL escaped, so that a document shown on a terminal cannot steer it; C1 too. */
static void put_text(FILE *stream, const char *text)
{
    fputc('"', stream);
    while (*text) {
        unsigned code;
        size_t const bytes = text_decode(text, &code);
        if (bytes == 0)
            fputs("\xef\xbf\xbd", stream); /* U+FFFD */
        else if (code == '"' || code == '\\')
            fprintf(stream, "\\%c", (int)code);
        else if (code == '\n')
            fputs("\\n", stream);
        else if (code == '\t')
            fputs("\\t", stream);
        else if (code < 0x20 || (code >= 0x7f && code <= 0x9f))
            fprintf(stream, "\\u%04x", code);
        else
            fwrite(text, 1, bytes, stream);
        text += bytes == 0 ? 1 : bytes;
    }
    fputc('"', stream);
}

/* What precedes every value: comma, line break, key. */
static void begin_value(struct json_out *out, const char *key)
{
    struct json_level *level = innermost(out);
    if (!level) {
        claim(!key && !out->begun);
        out->begun = true;
        return;
    }
    claim(level->array == !key);
    if (level->any)
        fputc(',', out->stream);
    level->any = true;
    break_line(out);
    if (key) {
        put_text(out->stream, key);
        fputs(": ", out->stream);
    }
}

static void begin_level(struct json_out *out, const char *key, bool array)
{
    begin_value(out, key);
    claim(out->depth < JSON_DEPTH);
    out->level[out->depth++] = (struct json_level){.array = array};
    fputc(array ? '[' : '{', out->stream);
}

static void end_level(struct json_out *out, bool array)
{
    struct json_level const *level = innermost(out);
    claim(level && level->array == array);
    bool const any = level->any;
    out->depth--;
    if (any)
        break_line(out);
    fputc(array ? ']' : '}', out->stream);
}

void json_object_begin(struct json_out *out, const char *key)
{
    begin_level(out, key, false);
}

void json_object_end(struct json_out *out)
{
    end_level(out, false);
}

void json_array_begin(struct json_out *out, const char *key)
{
    begin_level(out, key, true);
}

void json_array_end(struct json_out *out)
{
    end_level(out, true);
}

static void put_number(FILE *stream, double value)
{
    char buffer[NUMBER_TEXT];
    fputs(isnan(value) ? "null" : number_exact(value, buffer), stream);
}

void json_number(struct json_out *out, const char *key, double value)
{
    begin_value(out, key);
    put_number(out->stream, value);
}

void json_whole(struct json_out *out, const char *key, long value)
{
    begin_value(out, key);
    fprintf(out->stream, "%ld", value);
}

void json_text(struct json_out *out, const char *key, const char *text)
{
    begin_value(out, key);
    if (text)
        put_text(out->stream, text);
    else
        fputs("null", out->stream);
}

void json_flag(struct json_out *out, const char *key, bool flag)
{
    begin_value(out, key);
    fputs(flag ? "true" : "false", out->stream);
}

void json_answer(struct json_out *out, const char *key, enum answer answer)
{
    begin_value(out, key);
    fputs(answer == ANSWER_YES ? "true" : answer == ANSWER_NO ? "false" : "null", out->stream);
}

void json_absent(struct json_out *out, const char *key)
{
    json_text(out, key, NULL);
}

void json_numbers(struct json_out *out, const char *key, const double at[], size_t count)
{
    begin_value(out, key);
    fputc('[', out->stream);
    for (size_t i = 0; i < count; i++) {
        if (i > 0)
            fputs(", ", out->stream);
        put_number(out->stream, at[i]);
    }
    fputc(']', out->stream);
}

static void put_texts(struct json_out *out, const char *key, const struct texts *texts)
{
    json_array_begin(out, key);
    for (size_t i = 0; i < texts->count; i++)
        json_text(out, NULL, texts->at[i]);
    json_array_end(out);
}

static void put_objects(struct json_out *out, const char *key, const struct record *record,
                        const struct objects *objects)
{
    json_array_begin(out, key);
    for (size_t i = 0; i < objects->count; i++)
        json_record(out, NULL, record, (const char *)objects->at + i * record->size);
    json_array_end(out);
}

static const char *choice_name(const struct field *field, int choice)
{
    return choice < 0 ? NULL : field->names[choice];
}

static void put_field(struct json_out *out, const struct field *field, const void *at)
{
    switch (field->kind) {
    case FIELD_NUMBER:
        /* An unlimited value is an absent one. */
        json_number(out, field->key, isinf(*(const double *)at) ? NAN : *(const double *)at);
        break;
    case FIELD_INTEGER:
        json_whole(out, field->key, *(const int *)at);
        break;
    case FIELD_FLAG:
        json_flag(out, field->key, *(const bool *)at);
        break;
    case FIELD_ANSWER:
        json_answer(out, field->key, *(const enum answer *)at);
        break;
    case FIELD_TEXT:
        json_text(out, field->key, *(const char *const *)at);
        break;
    case FIELD_CHOICE:
        json_text(out, field->key, choice_name(field, *(const int *)at));
        break;
    case FIELD_NUMBERS: {
        const struct numbers *numbers = at;
        json_numbers(out, field->key, numbers->at, numbers->count);
        break;
    }
    case FIELD_TEXTS:
        put_texts(out, field->key, at);
        break;
    case FIELD_OBJECT:
        json_record(out, field->key, field->record, *(const void *const *)at);
        break;
    case FIELD_OBJECTS:
        put_objects(out, field->key, field->record, at);
        break;
    }
}

void json_members(struct json_out *out, const struct record *record, const void *thing)
{
    for (size_t i = 0; i < record->field_count; i++)
        put_field(out, &record->fields[i], field_at(&record->fields[i], thing));
}

void json_record(struct json_out *out, const char *key, const struct record *record, const void *thing)
{
    if (!thing) {
        json_absent(out, key);
        return;
    }
    json_object_begin(out, key);
    json_members(out, record, thing);
    json_object_end(out);
}
