/* Rules of practice and thickness rules as data (format underscreed-practice/1). */
#ifndef USC_PROJECT_PRACTICE_H
#define USC_PROJECT_PRACTICE_H

#include "base/field.h"
#include "screed/thickness_rule.h"

/* One value of practice, known by its id: "upstand_mm", "lap_mm", ... */
struct practice_rule {
    const char *id, *text, *unit, *source;
    int status;
    double value;
};

struct thickness_rules {
    const char *id, *name, *note;
    struct texts countries;
    struct objects rows, compressibility, thin_insulation, cover, tile, single_place;
};

struct practice {
    const char *format, *name, *note, *version;
    enum answer meets;
    struct objects rules, thickness;
};
extern const struct record practice_rule_record, thickness_rules_record, practice_record;

/* The values that the program computes with; each is the id of a rule that must be there. */
enum practice_value {
    PRACTICE_UPSTAND_MM,
    PRACTICE_LAP_MM,
    PRACTICE_TRIM_ABOVE_FLOOR_MM,
    PRACTICE_EDGE_YIELD_MM,
    PRACTICE_EDGE_YIELD_HEATED_MM,
    PRACTICE_TEST_REPORT_MASS_PERCENT,
    PRACTICE_FILM_LAP_MM,
    PRACTICE_BAY_AREA_M2,
    PRACTICE_BAY_SIDE_M,
    PRACTICE_BAY_RATIO,
    PRACTICE_VALUES,
};
extern const char *const practice_value_names[];

const struct practice_rule *practice_rule_of(const struct practice *practice, enum practice_value value);
double practice_number(const struct practice *practice, enum practice_value value);
const struct thickness_rules *practice_thickness(const struct practice *practice, const char *id);
/* The formula room's view of them. */
struct usc_thickness_rules thickness_rules_view(const struct thickness_rules *rules);

#endif
