/* From parsed JSON to a struct by its field table: types, ranges, unknown keys, defaults. */
#ifndef USC_PROJECT_RECORD_READ_H
#define USC_PROJECT_RECORD_READ_H

#include <jansson.h>

#include "base/field.h"
#include "base/problem.h"

/* A place within a document, as a chain up to the root; written out only when a problem is reported. */
struct json_path {
    const struct json_path *up;
    const char *key; /* NULL: an element, number index */
    size_t index;
};
const char *json_path_text(struct arena *arena, const struct json_path *path);

struct record_reader {
    struct arena *arena;
    struct problems *problems;
    const char *file;
};

/* thing: record->size bytes, filled with defaults first. All problems of the object are reported. */
void record_read(const struct record_reader *reader, const json_t *json, const struct record *record,
                 const struct json_path *path, void *thing);

/* Checks "format": "underscreed-<family>/1". Says so when the file is of another family, a result, or newer. */
void format_check(const struct record_reader *reader, const json_t *format, const char *family);

/* Gives every problem of this file from `since` on (NULL: the first) its line and column by its path. */
void problems_locate(struct problem *since, const char *file, const char *text, size_t length);

/* Whole documents: parses and reads; false after any error (which is then in problems). */
bool document_read(const struct record_reader *reader, const char *text, size_t length, const char *family,
                   const struct record *record, void *thing);

/* A syntax error of the JSON library at a byte offset of the text, as a problem. */
void syntax_problem(const struct record_reader *reader, const char *text, size_t offset, const char *what);
/* What jansson told of the piece of text that begins at offset from. */
void parser_problem(const struct record_reader *reader, const char *text, size_t from, const json_error_t *error);

#endif
