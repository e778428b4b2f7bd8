#include "project/specimens.h"

#include "base/csv.h"

const char specimen_load_hint[] = "8 kg on 0.2 m x 0.2 m is 200";

enum specimen_column { RESONANCE, LOAD, THICKNESS, NUMBERS_READ, SPECIMEN = NUMBERS_READ, NOTE, COLUMNS };
static const char *const columns[COLUMNS] = {"resonance_Hz", "load_mass_kg_m2", "thickness_mm", "specimen", "note"};

static const struct {
    int lowest, highest;
    const char *unit, *hint;
} range[NUMBERS_READ] = {
    [RESONANCE] = {SPECIMEN_RESONANCE_LEAST_HZ, SPECIMEN_RESONANCE_MOST_HZ, "Hz", NULL},
    [LOAD] = {SPECIMEN_LOAD_LEAST_KG_M2, SPECIMEN_LOAD_MOST_KG_M2, "kg/m2", specimen_load_hint},
    [THICKNESS] = {SPECIMEN_THICKNESS_LEAST_MM, SPECIMEN_THICKNESS_MOST_MM, "mm", NULL},
};

/* Leaves the value alone where the table lacks the column. */
static void read_cell(const struct csv *csv, const int index[], enum specimen_column column, double *value)
{
    double read;
    if (index[column] < 0 || !csv_number(csv, index[column], &read))
        return;
    if (read >= range[column].lowest && read <= range[column].highest)
        *value = read;
    else
        csv_error(csv, &csv->cell[index[column]], range[column].hint, "%g is not from %d to %d %s", read,
                  range[column].lowest, range[column].highest, range[column].unit);
}

bool specimens_read(struct specimens *specimens, const struct specimen *otherwise, struct arena *arena,
                    struct problems *problems, const char *file, const char *text, size_t length)
{
    struct csv csv;
    int index[COLUMNS];
    bool suggested[COLUMNS];
    size_t room = 0, errors_before = problems->count[SEVERITY_ERROR];
    *specimens = (struct specimens){0};
    if (!csv_open_text(&csv, arena, problems, file, text, length))
        return false;
    const struct csv_cell begin = {"", csv.header[0].line, csv.header[0].column};
    bool const fit = csv_columns(&csv, "a table of specimens", columns, COLUMNS, index, suggested);
    if (index[RESONANCE] < 0 && !suggested[RESONANCE])
        csv_error(&csv, &begin, NULL, "the header needs a column \"%s\"", columns[RESONANCE]);
    if (!fit || index[RESONANCE] < 0)
        return false;
    specimens->gives_load = index[LOAD] >= 0;
    specimens->gives_thickness = index[THICKNESS] >= 0;
    while (csv_next(&csv)) {
        struct specimen one = *otherwise;
        read_cell(&csv, index, RESONANCE, &one.resonance_Hz);
        read_cell(&csv, index, LOAD, &one.load_mass_kg_m2);
        read_cell(&csv, index, THICKNESS, &one.thickness_mm);
        if (specimens->count == room)
            specimens->at = arena_grow(arena, specimens->at, specimens->count, &room, sizeof one);
        specimens->at[specimens->count++] = one;
    }
    if (specimens->count == 0 && problems->count[SEVERITY_ERROR] == errors_before)
        csv_error(&csv, &begin, NULL, "the table has no specimen");
    return problems->count[SEVERITY_ERROR] == errors_before;
}
