/* One table per struct that crosses a boundary: reader, defaults, hints, schema, manual, JSON output walk it. */
#ifndef USC_BASE_FIELD_H
#define USC_BASE_FIELD_H

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

enum field_kind {
    FIELD_NUMBER,  /* double; NaN when absent */
    FIELD_INTEGER, /* int */
    FIELD_FLAG,    /* bool */
    FIELD_ANSWER,  /* enum answer: true, false or null */
    FIELD_TEXT,    /* const char *; NULL when absent */
    FIELD_CHOICE,  /* int, an index into names; -1 when absent and without a default */
    FIELD_NUMBERS, /* struct numbers */
    FIELD_TEXTS,   /* struct texts */
    FIELD_OBJECT,  /* pointer to a struct described by record; NULL when absent */
    FIELD_OBJECTS, /* struct objects, elements described by record */
};

enum answer { ANSWER_NONE, ANSWER_YES, ANSWER_NO };

struct numbers {
    double *at;
    size_t count;
};
struct texts {
    const char **at;
    size_t count;
};
struct objects {
    void *at;
    size_t count;
};

struct record;

struct field {
    const char *key; /* the member's name */
    enum field_kind kind;
    size_t offset;
    const char *unit;    /* "" when none */
    const char *heading; /* one line for the manual and the schema */
    double lowest, highest;
    bool above;               /* lowest itself is excluded */
    bool required;            /* when read */
    bool each_is_id;          /* texts or text that name something elsewhere */
    double otherwise;         /* default of a number, integer, flag or choice; NaN: none */
    const char *const *names; /* of a choice, NULL-terminated */
    const struct record *record;
};

struct record {
    const char *name; /* in messages and the manual: "slab" */
    size_t size;
    const struct field *fields;
    size_t field_count;
};

/* Table rows. S: the struct's tag, M: its member. Ranges are closed; ABOVE_ excludes the lowest value. */
#define FIELD_ROW_(S, M) .key = #M, .offset = offsetof(struct S, M)
#define NUMBER_FIELD(S, M, UNIT, LOW, HIGH, DEFAULT, HEADING)                                                          \
    {                                                                                                                  \
        FIELD_ROW_(S, M), .kind = FIELD_NUMBER, .unit = UNIT, .lowest = LOW, .highest = HIGH, .otherwise = DEFAULT,    \
                          .heading = HEADING                                                                           \
    }
#define POSITIVE_FIELD(S, M, UNIT, HIGH, DEFAULT, HEADING)                                                             \
    {                                                                                                                  \
        FIELD_ROW_(S, M), .kind = FIELD_NUMBER, .unit = UNIT, .lowest = 0, .above = true, .highest = HIGH,             \
                          .otherwise = DEFAULT, .heading = HEADING                                                     \
    }
#define INTEGER_FIELD(S, M, LOW, HIGH, DEFAULT, HEADING)                                                               \
    {                                                                                                                  \
        FIELD_ROW_(S, M), .kind = FIELD_INTEGER, .unit = "", .lowest = LOW, .highest = HIGH, .otherwise = DEFAULT,     \
                          .heading = HEADING                                                                           \
    }
#define FLAG_FIELD(S, M, DEFAULT, HEADING)                                                                             \
    {                                                                                                                  \
        FIELD_ROW_(S, M), .kind = FIELD_FLAG, .unit = "", .otherwise = DEFAULT, .heading = HEADING                     \
    }
#define ANSWER_FIELD(S, M, HEADING)                                                                                    \
    {                                                                                                                  \
        FIELD_ROW_(S, M), .kind = FIELD_ANSWER, .unit = "", .heading = HEADING                                         \
    }
#define TEXT_FIELD(S, M, REQUIRED, HEADING)                                                                            \
    {                                                                                                                  \
        FIELD_ROW_(S, M), .kind = FIELD_TEXT, .unit = "", .required = REQUIRED, .heading = HEADING                     \
    }
#define CHOICE_FIELD(S, M, NAMES, DEFAULT, REQUIRED, HEADING)                                                          \
    {                                                                                                                  \
        FIELD_ROW_(S, M), .kind = FIELD_CHOICE, .unit = "", .names = NAMES, .otherwise = DEFAULT,                      \
                          .required = REQUIRED, .heading = HEADING                                                     \
    }
#define NUMBERS_FIELD(S, M, UNIT, LOW, HIGH, HEADING)                                                                  \
    {                                                                                                                  \
        FIELD_ROW_(S, M), .kind = FIELD_NUMBERS, .unit = UNIT, .lowest = LOW, .highest = HIGH, .heading = HEADING      \
    }
#define TEXTS_FIELD(S, M, HEADING)                                                                                     \
    {                                                                                                                  \
        FIELD_ROW_(S, M), .kind = FIELD_TEXTS, .unit = "", .heading = HEADING                                          \
    }
#define OBJECT_FIELD(S, M, RECORD, REQUIRED, HEADING)                                                                  \
    {                                                                                                                  \
        FIELD_ROW_(S, M), .kind = FIELD_OBJECT, .unit = "", .record = RECORD, .required = REQUIRED, .heading = HEADING \
    }
#define OBJECTS_FIELD(S, M, RECORD, REQUIRED, HEADING)                                                                 \
    {                                                                                                                  \
        FIELD_ROW_(S, M), .kind = FIELD_OBJECTS, .unit = "", .record = RECORD, .required = REQUIRED,                   \
                          .heading = HEADING                                                                           \
    }
#define RECORD(NAME, S, FIELDS)                                                                                        \
    {                                                                                                                  \
        NAME, sizeof(struct S), FIELDS, sizeof FIELDS / sizeof FIELDS[0]                                               \
    }

#define NONE NAN

/* Fills a struct with every field's default (absent values where a field has none). */
void record_defaults(const struct record *record, void *thing);
/* The row with this key, NULL when none. */
const struct field *record_field(const struct record *record, const char *key);

static inline const void *field_at(const struct field *field, const void *thing)
{
    return (const char *)thing + field->offset;
}

#endif
