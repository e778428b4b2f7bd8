/* Problems are values with a place; they are collected for a whole input and shown once. */
#ifndef USC_BASE_PROBLEM_H
#define USC_BASE_PROBLEM_H

#include <stddef.h>

#include "base/arena.h"

enum severity { SEVERITY_NOTE, SEVERITY_WARNING, SEVERITY_ERROR, SEVERITY_COUNT };

/* file: as the user named it, NULL when none. path: within the document, "rooms[2].slab.mass_kg_m2", "" for the whole.
 * line, column: from 1, 0 when not known (yet). */
struct place {
    const char *file, *path;
    int line, column;
};

struct problem {
    enum severity severity;
    struct place place;
    const char *text, *hint; /* hint may be NULL */
    struct problem *next;
};

struct problems {
    struct arena *arena;
    struct problem *first, *last;
    size_t count[SEVERITY_COUNT];
};

/* Adds one problem and returns it; path and hint are copied, hint may be NULL. The first 1000 of each severity are kept
 * in the list, later ones are only counted (what is returned then is not in the list and has an empty text). */
struct problem *problem_add(struct problems *problems, enum severity severity, const char *file, const char *path,
                            const char *hint, const char *format, ...) __attribute__((format(printf, 6, 7)));

static inline int problems_any_error(const struct problems *problems)
{
    return problems->count[SEVERITY_ERROR] > 0;
}

/* Given a name and the known ones. Returns the nearest known name (optimal string alignment, at most a third of the
 * letters wrong), NULL when none is near. */
const char *nearest_name(const char *name, const char *const known[], size_t known_count);

#endif
