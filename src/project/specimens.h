/* Specimens of a resilient layer as a laboratory sheet lists them: one resonance a row.
 * Source: the load of ISO 9052-1 / EN 29052-1, from memory; the other ranges are common practice. */
#ifndef USC_PROJECT_SPECIMENS_H
#define USC_PROJECT_SPECIMENS_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/problem.h"

/* Wide enough for every real layer, narrow enough to find a slip of the decimal sign. */
enum {
    SPECIMEN_RESONANCE_LEAST_HZ = 5,
    SPECIMEN_RESONANCE_MOST_HZ = 1000,
    SPECIMEN_THICKNESS_LEAST_MM = 1,
    SPECIMEN_THICKNESS_MOST_MM = 300,
    SPECIMEN_LOAD_KG_M2 = 200, /* of the test, not of the later screed */
    SPECIMEN_LOAD_LEAST_KG_M2 = 180,
    SPECIMEN_LOAD_MOST_KG_M2 = 220,
};
/* What to say to a load outside: mostly it is the mass of the plate in kg. */
extern const char specimen_load_hint[];

struct specimen {
    double resonance_Hz, load_mass_kg_m2;
    double thickness_mm; /* under that load; NaN when not known */
};

struct specimens {
    struct specimen *at;
    size_t count;
    bool gives_load, gives_thickness; /* the table has the column */
};

/* Columns: resonance_Hz, and as wanted load_mass_kg_m2, thickness_mm, specimen and note. Without a column its value is
 * that of otherwise. False after problems; file must outlive the call. */
bool specimens_read(struct specimens *specimens, const struct specimen *otherwise, struct arena *arena,
                    struct problems *problems, const char *file, const char *text, size_t length);

#endif
