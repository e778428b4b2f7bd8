/* JSON written as it is made: a small streaming writer on a FILE.
 *
 * Indented by two spaces, arrays of numbers on one line. Every mistake of the
 * caller (an infinite number, a key inside an array, a missing key inside an object, unbalanced ends, nesting deeper
 * than JSON_DEPTH) is a bug and aborts. Write errors stay in the FILE and are found by output_complete().
 * The names keep clear of the JSON library that reads: json_null() and json_integer() are functions of its own.
 * key: the member's name inside an object; NULL for an element of an array and for the document itself.
 */
#ifndef USC_REPORT_JSON_OUT_H
#define USC_REPORT_JSON_OUT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#include "base/field.h"

enum { JSON_DEPTH = 32 };

struct json_out {
    FILE *stream;
    bool begun; /* the document's one value was started */
    int depth;
    struct json_level {
        bool array, any; /* any: an element was written */
    } level[JSON_DEPTH];
};

void json_open(struct json_out *out, FILE *stream);
/* Ends the document with a line feed; open objects or arrays, or no value at all, are a bug. */
void json_close(struct json_out *out);

void json_object_begin(struct json_out *out, const char *key);
void json_object_end(struct json_out *out);
void json_array_begin(struct json_out *out, const char *key);
void json_array_end(struct json_out *out);

/* NaN: null. Ten significant digits (number_exact). */
void json_number(struct json_out *out, const char *key, double value);
void json_whole(struct json_out *out, const char *key, long value);
/* NULL: null. Bytes that are not UTF-8 become U+FFFD. */
void json_text(struct json_out *out, const char *key, const char *text);
void json_flag(struct json_out *out, const char *key, bool flag);
void json_answer(struct json_out *out, const char *key, enum answer answer);
void json_absent(struct json_out *out, const char *key);
/* An array on one line. */
void json_numbers(struct json_out *out, const char *key, const double at[], size_t count);

/* A struct by its field table, nested structs and lists included. thing NULL: null. Each key of the table is present;
 * absent values are null, empty lists []. */
void json_record(struct json_out *out, const char *key, const struct record *record, const void *thing);
/* Only the members, into an object that is already open: for documents that put more keys beside them. */
void json_members(struct json_out *out, const struct record *record, const void *thing);

#endif
