/* Field tables of practice and thickness rules, look-up by id. */
#include "project/practice.h"

#include <string.h>

#include "project/catalogue.h"

const char *const practice_value_names[] = {"upstand_mm",
                                            "lap_mm",
                                            "trim_above_floor_mm",
                                            "edge_yield_mm",
                                            "edge_yield_heated_mm",
                                            "test_report_mass_percent",
                                            "film_lap_mm",
                                            "bay_area_m2",
                                            "bay_side_m",
                                            "bay_ratio",
                                            NULL};

static const struct field practice_rule_fields[] = {
    TEXT_FIELD(practice_rule, id, true, "which value it is"),
    TEXT_FIELD(practice_rule, text, false, "the rule in words"),
    TEXT_FIELD(practice_rule, unit, false, "unit of the value"),
    TEXT_FIELD(practice_rule, source, false, "where it was read; empty for common practice"),
    CHOICE_FIELD(practice_rule, status, row_status_names, STATUS_OWN, false, "how far it can be trusted"),
    {.key = "value",
     .kind = FIELD_NUMBER,
     .offset = offsetof(struct practice_rule, value),
     .unit = "",
     .lowest = 0,
     .highest = 1e6,
     .otherwise = NONE,
     .required = true,
     .heading = "the value"},
};
const struct record practice_rule_record = RECORD("practice rule", practice_rule, practice_rule_fields);

/* Rows share these: what they hold for, and how far to trust them. */
#define KIND_FIELD(S) TEXT_FIELD(S, kind, true, "kind of screed, * for any")
#define CLASS_FIELD(S) TEXT_FIELD(S, strength_class, true, "class, * for any")
#define LOAD_FIELDS(S)                                                                                                 \
    POSITIVE_FIELD(S, area_load_kN_m2, "kN/m2", INFINITY, INFINITY, "area load up to"),                                \
        POSITIVE_FIELD(S, point_load_kN, "kN", INFINITY, INFINITY, "point load up to")
#define TRUST_FIELDS(S)                                                                                                \
    TEXT_FIELD(S, source, false, "where the row was read"),                                                            \
        CHOICE_FIELD(S, status, row_status_names, STATUS_OWN, false, "how far it can be trusted")

static const struct field thickness_row_fields[] = {
    KIND_FIELD(usc_thickness_row),
    CLASS_FIELD(usc_thickness_row),
    LOAD_FIELDS(usc_thickness_row),
    NUMBER_FIELD(usc_thickness_row, compressibility_mm, "mm", 0, INFINITY, INFINITY, "compressibility up to"),
    POSITIVE_FIELD(usc_thickness_row, thickness_mm, "mm", 300, NONE, "least nominal thickness"),
    TRUST_FIELDS(usc_thickness_row),
};
static const struct record thickness_row_record = RECORD("thickness row", usc_thickness_row, thickness_row_fields);

static const struct field compressibility_fields[] = {
    KIND_FIELD(usc_compressibility_row),
    LOAD_FIELDS(usc_compressibility_row),
    NUMBER_FIELD(usc_compressibility_row, compressibility_mm, "mm", 0, INFINITY, NONE, "compressibility up to"),
    NUMBER_FIELD(usc_compressibility_row, increment_mm, "mm", 0, 100, 0, "added thickness"),
    TRUST_FIELDS(usc_compressibility_row),
};
static const struct record compressibility_record =
    RECORD("compressibility row", usc_compressibility_row, compressibility_fields);

static const struct field thin_insulation_fields[] = {
    KIND_FIELD(usc_thin_insulation_row),
    POSITIVE_FIELD(usc_thin_insulation_row, insulation_mm, "mm", 300, NONE, "insulation up to"),
    NUMBER_FIELD(usc_thin_insulation_row, reduction_mm, "mm", 0, 100, 0, "less thickness"),
    NUMBER_FIELD(usc_thin_insulation_row, least_mm, "mm", 0, 300, 0, "never under"),
    TRUST_FIELDS(usc_thin_insulation_row),
};
static const struct record thin_insulation_record =
    RECORD("thin insulation row", usc_thin_insulation_row, thin_insulation_fields);

static const struct field cover_fields[] = {
    KIND_FIELD(usc_cover_row),
    CLASS_FIELD(usc_cover_row),
    NUMBER_FIELD(usc_cover_row, cover_mm, "mm", 0, 300, NONE, "cover over heating pipes"),
    TRUST_FIELDS(usc_cover_row),
};
static const struct record cover_record = RECORD("cover row", usc_cover_row, cover_fields);

static const struct field tile_fields[] = {
    KIND_FIELD(usc_tile_row),
    POSITIVE_FIELD(usc_tile_row, thickness_mm, "mm", 300, NONE, "least thickness under tiles"),
    TRUST_FIELDS(usc_tile_row),
};
static const struct record tile_record = RECORD("tile row", usc_tile_row, tile_fields);

static const struct field single_place_fields[] = {
    POSITIVE_FIELD(usc_single_place_row, nominal_mm, "mm", INFINITY, NONE, "nominal thickness up to"),
    NUMBER_FIELD(usc_single_place_row, below_nominal_mm, "mm", 0, 100, NONE, "how much thinner a single place may be"),
    TRUST_FIELDS(usc_single_place_row),
};
static const struct record single_place_record = RECORD("single place row", usc_single_place_row, single_place_fields);

static const struct field thickness_rules_fields[] = {
    TEXT_FIELD(thickness_rules, id, true, "short name by which limits and projects refer to them"),
    TEXT_FIELD(thickness_rules, name, false, "standard or practice"),
    TEXT_FIELD(thickness_rules, note, false, "a remark"),
    TEXTS_FIELD(thickness_rules, countries, "ISO 3166 codes"),
    OBJECTS_FIELD(thickness_rules, rows, &thickness_row_record, false, "least nominal thickness; first fit decides"),
    OBJECTS_FIELD(thickness_rules, compressibility, &compressibility_record, false, "thickness for compressibility"),
    OBJECTS_FIELD(thickness_rules, thin_insulation, &thin_insulation_record, false, "less over thin insulation"),
    OBJECTS_FIELD(thickness_rules, cover, &cover_record, false, "cover over heating pipes"),
    OBJECTS_FIELD(thickness_rules, tile, &tile_record, false, "thickness under tiles"),
    OBJECTS_FIELD(thickness_rules, single_place, &single_place_record, false, "least single thickness"),
};
const struct record thickness_rules_record = RECORD("thickness rules", thickness_rules, thickness_rules_fields);

static const struct field practice_fields[] = {
    TEXT_FIELD(practice, format, false, "underscreed-practice/1"),
    TEXT_FIELD(practice, version, false, "of the program that printed it"),
    ANSWER_FIELD(practice, meets, "as the program printed it"),
    TEXT_FIELD(practice, name, false, "name of the collection"),
    TEXT_FIELD(practice, note, false, "a remark"),
    OBJECTS_FIELD(practice, rules, &practice_rule_record, false, "single values of practice"),
    OBJECTS_FIELD(practice, thickness, &thickness_rules_record, false, "thickness rules"),
};
const struct record practice_record = RECORD("practice file", practice, practice_fields);

const struct practice_rule *practice_rule_of(const struct practice *practice, enum practice_value value)
{
    const struct practice_rule *rule = practice->rules.at;
    for (size_t i = 0; i < practice->rules.count; i++)
        if (!strcmp(rule[i].id, practice_value_names[value]))
            return &rule[i];
    return NULL;
}

double practice_number(const struct practice *practice, enum practice_value value)
{
    const struct practice_rule *rule = practice_rule_of(practice, value);
    return rule ? rule->value : NAN;
}

const struct thickness_rules *practice_thickness(const struct practice *practice, const char *id)
{
    const struct thickness_rules *rules = practice->thickness.at;
    for (size_t i = 0; i < practice->thickness.count; i++)
        if (!strcmp(rules[i].id, id))
            return &rules[i];
    return NULL;
}

struct usc_thickness_rules thickness_rules_view(const struct thickness_rules *rules)
{
    return (struct usc_thickness_rules){
        .id = rules->id,
        .name = rules->name,
        .row = rules->rows.at,
        .row_count = rules->rows.count,
        .compressibility = rules->compressibility.at,
        .compressibility_count = rules->compressibility.count,
        .thin_insulation = rules->thin_insulation.at,
        .thin_insulation_count = rules->thin_insulation.count,
        .cover = rules->cover.at,
        .cover_count = rules->cover.count,
        .tile = rules->tile.at,
        .tile_count = rules->tile.count,
        .single_place = rules->single_place.at,
        .single_place_count = rules->single_place.count,
    };
}
