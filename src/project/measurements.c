#include "project/measurements.h"

#include <math.h>
#include <string.h>

#include "base/csv.h"
#include "base/number.h"
#include "base/text.h"

enum { ID_BYTES_MOST = 200, OCTAVE_STEP = 3, FIRST_OCTAVE = 1, FIRST_RATED_OCTAVE = 4, LAST_RATED_OCTAVE = 16 };

/* Wide enough for every real reading, narrow enough to find a slip of the decimal sign. Common practice. */
struct value_range {
    double lowest, highest;
    const char *unit;
};
static const struct value_range level_range = {-20, 150, "dB"}, improvement_range = {-50, 100, "dB"},
                                time_range = {0.01, 60, "s"};

/* The columns of a spectrum and of a list of spectra; those of a level in the order of levels[]. */
enum spectrum_column { FREQUENCY, NOTE, LEVEL, LEVEL_LN, LEVEL_N, LEVEL_NT, IMPROVEMENT, SPECTRUM_ID, SPECTRA_COLUMNS };
static const char *const spectra_columns[SPECTRA_COLUMNS] = {
    [FREQUENCY] = "frequency_Hz", [NOTE] = "note",
    [LEVEL] = "level_dB",         [LEVEL_LN] = "Ln_dB",
    [LEVEL_N] = "L_prime_n_dB",   [LEVEL_NT] = "L_prime_nT_dB",
    [IMPROVEMENT] = "delta_L_dB", [SPECTRUM_ID] = "spectrum",
};
static const enum measured_quantity quantity_of[SPECTRA_COLUMNS] = {
    [LEVEL] = MEASURED_LN,
    [LEVEL_LN] = MEASURED_LN,
    [LEVEL_N] = MEASURED_L_PRIME_N,
    [LEVEL_NT] = MEASURED_L_PRIME_NT,
    [IMPROVEMENT] = MEASURED_DELTA_L,
};

enum raw_column { RAW_FREQUENCY, RAW_NOTE, RAW_LEVEL, RAW_POSITION, RAW_BACKGROUND, RAW_TIME, RAW_CORNER, RAW_COLUMNS };
static const char *const raw_columns[RAW_COLUMNS] = {
    [RAW_FREQUENCY] = "frequency_Hz",   [RAW_NOTE] = "note",
    [RAW_LEVEL] = "level_dB",           [RAW_POSITION] = "position",
    [RAW_BACKGROUND] = "background_dB", [RAW_TIME] = "reverberation_time_s",
    [RAW_CORNER] = "corner_dB",
};

/* Cells */

/* Index of the band, -1 with an error when the cell holds no nominal frequency. */
static int read_band(const struct csv *csv, int column)
{
    double frequency_Hz;
    if (!csv_number(csv, column, &frequency_Hz))
        return -1;
    int nearest = 0;
    for (int i = 0; i < USC_BANDS; i++) {
        if (usc_band_Hz[i] == frequency_Hz)
            return i;
        if (frequency_Hz > 0 &&
            fabs(log(frequency_Hz / usc_band_Hz[i])) < fabs(log(frequency_Hz / usc_band_Hz[nearest])))
            nearest = i;
    }
    const struct csv_cell *cell = &csv->cell[column];
    csv_error(csv, cell, arena_printf(csv->arena, "the nearest is %g Hz", usc_band_Hz[nearest]),
              "%.*s is no nominal frequency of a third octave from 50 to 5000 Hz",
              (int)text_head(cell->text, NUMBER_TEXT), cell->text);
    return -1;
}

static bool read_value(const struct csv *csv, int column, const struct value_range *range, double *value)
{
    if (!csv_number(csv, column, value))
        return false;
    if (*value >= range->lowest && *value <= range->highest)
        return true;
    char lowest[NUMBER_TEXT], highest[NUMBER_TEXT];
    const struct csv_cell *cell = &csv->cell[column];
    csv_error(csv, cell, NULL, "%.*s is not from %s to %s %s", (int)text_head(cell->text, NUMBER_TEXT), cell->text,
              number_short(range->lowest, 2, lowest), number_short(range->highest, 2, highest), range->unit);
    return false;
}

/* Sets of bands */

static bool is_octave_centre(int band)
{
    return band % OCTAVE_STEP == FIRST_OCTAVE;
}

/* A set with any band is one of octaves when it has nothing but their centres. */
static bool are_octaves(const bool has[USC_BANDS])
{
    bool any = false;
    for (int i = 0; i < USC_BANDS; i++) {
        if (has[i] && !is_octave_centre(i))
            return false;
        any = any || has[i];
    }
    return any;
}

static bool is_rated(int band, bool octave)
{
    if (octave)
        return is_octave_centre(band) && band >= FIRST_RATED_OCTAVE && band <= LAST_RATED_OCTAVE;
    return band >= USC_FIRST_RATED && band < USC_FIRST_RATED + USC_RATED_BANDS;
}

/* Wanted bands that the set lacks, "100, 125 and 160"; NULL when none. */
static const char *lacking(struct arena *arena, const bool wanted[USC_BANDS], const bool has[USC_BANDS])
{
    const char *names = NULL;
    int left = 0;
    for (int i = 0; i < USC_BANDS; i++)
        left += wanted[i] && !has[i];
    for (int i = 0; i < USC_BANDS; i++) {
        if (!wanted[i] || has[i])
            continue;
        left--;
        names = names ? arena_printf(arena, "%s%s%g", names, left ? ", " : " and ", usc_band_Hz[i])
                      : arena_printf(arena, "%g", usc_band_Hz[i]);
    }
    return names;
}

/* Reports the rated bands that neither stand in the set nor had a row with a faulty value; at: the cell to name. */
static void check_rated(const struct csv *csv, const struct csv_cell *at, const bool seen[USC_BANDS], bool octave)
{
    bool rated[USC_BANDS], any = false;
    for (int i = 0; i < USC_BANDS; i++) {
        rated[i] = is_rated(i, octave);
        any = any || seen[i];
    }
    const char *names = any ? lacking(csv->arena, rated, seen) : NULL;
    if (!any)
        csv_error(csv, at, NULL, "no band was read");
    else if (names)
        csv_error(csv, at,
                  octave ? NULL : "a table of octaves has 125, 250, 500, 1000 and 2000 Hz and may have 63 and 4000",
                  "lacks the %s%s %s Hz, which the rating needs", octave ? "octave" : "third octave",
                  strchr(names, ' ') ? "s" : "", names); /* several are parted by blanks */
}

/* One spectrum */

/* Where a spectrum begins, for errors about the whole of it, and the line of each band, 0 when not seen. */
struct gathering {
    struct measurement measurement;
    struct csv_cell begin;
    int line[USC_BANDS];
    size_t errors_before;
};

static void gather(const struct csv *csv, struct gathering *gathering, int frequency_column, int value_column)
{
    struct measurement *measurement = &gathering->measurement;
    double value_dB;
    int const band = read_band(csv, frequency_column);
    bool const fit = read_value(
        csv, value_column, measurement->quantity == MEASURED_DELTA_L ? &improvement_range : &level_range, &value_dB);
    if (band < 0)
        return;
    if (gathering->line[band]) {
        const char *hint = arena_printf(csv->arena, "it stands first on line %d", gathering->line[band]);
        csv_error(csv, &csv->cell[frequency_column], hint, "the band %g Hz stands twice", usc_band_Hz[band]);
        return;
    }
    gathering->line[band] = csv->cell[frequency_column].line;
    measurement->has[band] = fit;
    measurement->value_dB[band] = fit ? value_dB : 0;
}

/* The spectrum is complete: octave or third octave, and what is missing. Returns whether it is free of errors. */
static bool conclude(const struct csv *csv, struct gathering *gathering)
{
    bool seen[USC_BANDS];
    for (int i = 0; i < USC_BANDS; i++)
        seen[i] = gathering->line[i] > 0;
    gathering->measurement.octave = are_octaves(seen);
    check_rated(csv, &gathering->begin, seen, gathering->measurement.octave);
    return csv->problems->count[SEVERITY_ERROR] == gathering->errors_before;
}

/* The beginning of the header, for what it lacks. */
static struct csv_cell header_begin(const struct csv *csv)
{
    return (struct csv_cell){.text = "", .line = csv->header[0].line, .column = csv->header[0].column};
}

/* A needed column that is not there, unless it was already offered in the place of an unknown one. */
static bool has_column(const struct csv *csv, const char *const known[], const int index[], const bool suggested[],
                       int column)
{
    struct csv_cell const begin = header_begin(csv);
    if (index[column] < 0 && !suggested[column])
        csv_error(csv, &begin, NULL, "the header needs a column \"%s\"", known[column]);
    return index[column] >= 0;
}

/* Column of the one level; sets the quantity. -1 after an error. */
static int level_column(const struct csv *csv, const int index[], const bool suggested[],
                        enum measured_quantity *quantity)
{
    struct csv_cell const begin = header_begin(csv);
    int found = -1;
    bool offered = false;
    for (int k = LEVEL; k <= IMPROVEMENT; k++) {
        offered = offered || suggested[k];
        if (index[k] < 0)
            continue;
        if (found >= 0) {
            csv_error(csv, &csv->header[index[k] > found ? index[k] : found], NULL,
                      "a spectrum has one column of levels, and \"%s\" is there already",
                      csv->header[index[k] > found ? found : index[k]].text);
            return -1;
        }
        found = index[k];
        *quantity = quantity_of[k];
    }
    if (found < 0 && !offered)
        csv_error(csv, &begin, NULL,
                  "the header needs one of the columns Ln_dB, L_prime_n_dB, L_prime_nT_dB, level_dB and delta_L_dB");
    return found;
}

bool measurement_read(struct measurement *measurement, struct arena *arena, struct problems *problems, const char *file,
                      const char *text, size_t length)
{
    struct gathering gathering = {.errors_before = problems->count[SEVERITY_ERROR]};
    struct csv csv;
    int index[SPECTRUM_ID];
    bool suggested[SPECTRUM_ID];
    *measurement = (struct measurement){0};
    if (!csv_open_text(&csv, arena, problems, file, text, length))
        return false;
    bool fit = csv_columns(&csv, "a spectrum", spectra_columns, SPECTRUM_ID, index, suggested);
    fit = has_column(&csv, spectra_columns, index, suggested, FREQUENCY) && fit;
    int const level = level_column(&csv, index, suggested, &gathering.measurement.quantity);
    if (!fit || level < 0)
        return false;
    gathering.begin = csv.header[index[FREQUENCY]];
    while (csv_next(&csv))
        gather(&csv, &gathering, index[FREQUENCY], level);
    fit = conclude(&csv, &gathering);
    *measurement = gathering.measurement;
    return fit;
}

/* Many spectra */

/* The id of the row, cut when too long (with an error). */
static void copy_id(const struct csv *csv, int column, char id[ID_BYTES_MOST + 1])
{
    const struct csv_cell *cell = &csv->cell[column];
    size_t length = strlen(cell->text);
    if (length == 0)
        csv_error(csv, cell, NULL, "must name the spectrum, and the cell is empty");
    if (length > ID_BYTES_MOST) {
        csv_error(csv, cell, NULL, "is longer than %d bytes", ID_BYTES_MOST);
        length = ID_BYTES_MOST;
    }
    memcpy(id, cell->text, length);
    id[length] = '\0';
}

/* A cell of a spectrum's first row outlives the row only as a place under the name of its column. */
static struct csv_cell place_in_column(const struct csv *csv, int column)
{
    struct csv_cell place = csv->cell[column];
    place.text = csv->header[column].text;
    return place;
}

/* The spectrum that is being gathered; any: there is one. */
struct spectra {
    const struct csv *csv;
    struct gathering gathering;
    char id[ID_BYTES_MOST + 1];
    bool any;
    spectrum_use *each;
    void *context;
};

/* Hands on the gathered spectrum if there is one and it is fit; false when its user wants no more. */
static bool hand_on(struct spectra *spectra)
{
    if (!spectra->any || !conclude(spectra->csv, &spectra->gathering))
        return true;
    return spectra->each(spectra->context, spectra->id, &spectra->gathering.measurement);
}

static void begin_spectrum(struct spectra *spectra, int id_column, enum measured_quantity quantity)
{
    const struct csv *csv = spectra->csv;
    spectra->any = true;
    spectra->gathering = (struct gathering){.measurement.quantity = quantity,
                                            .begin = place_in_column(csv, id_column),
                                            .errors_before = csv->problems->count[SEVERITY_ERROR]};
    copy_id(csv, id_column, spectra->id);
}

static void read_spectra(struct spectra *spectra, struct csv *csv, const int index[], int level,
                         enum measured_quantity quantity)
{
    while (csv_next(csv)) {
        const char *id = csv->cell[index[SPECTRUM_ID]].text;
        if (!spectra->any || strncmp(id, spectra->id, ID_BYTES_MOST) != 0) {
            if (!hand_on(spectra))
                return;
            begin_spectrum(spectra, index[SPECTRUM_ID], quantity);
        }
        gather(csv, &spectra->gathering, index[FREQUENCY], level);
    }
    if (csv->read_error) /* the last spectrum may be half a one */
        return;
    hand_on(spectra);
    if (!spectra->any)
        csv_error(csv, &csv->header[index[SPECTRUM_ID]], NULL, "no spectrum was read");
}

bool spectra_read(struct arena *arena, struct problems *problems, const char *file, FILE *stream, spectrum_use *each,
                  void *context, int *read_error)
{
    struct csv csv;
    struct spectra spectra = {.csv = &csv, .each = each, .context = context};
    size_t const errors_before = problems->count[SEVERITY_ERROR];
    int index[SPECTRA_COLUMNS];
    bool suggested[SPECTRA_COLUMNS];
    enum measured_quantity quantity;
    bool fit = csv_open_stream(&csv, arena, problems, file, stream);
    if (fit) {
        fit = csv_columns(&csv, "a list of spectra", spectra_columns, SPECTRA_COLUMNS, index, suggested);
        fit = has_column(&csv, spectra_columns, index, suggested, SPECTRUM_ID) && fit;
        fit = has_column(&csv, spectra_columns, index, suggested, FREQUENCY) && fit;
        int const level = level_column(&csv, index, suggested, &quantity);
        if (fit && level >= 0)
            read_spectra(&spectra, &csv, index, level, quantity);
    }
    *read_error = csv.read_error;
    return csv.read_error == 0 && problems->count[SEVERITY_ERROR] == errors_before;
}

/* Raw readings */

/* Room for the readings grows in the arena with the table. */
struct raw_room {
    size_t level, background, time, corner, position;
};

/* What is known while the rows come in. level_line: of each level, kept when there are positions; seen, timed: the band
 * had a row with a level, with a reverberation time, fit or not. */
struct raw_gathering {
    struct raw_measurement *measurement;
    struct raw_room room[USC_BANDS];
    int *level_line[USC_BANDS];
    size_t level_line_room[USC_BANDS];
    bool seen[USC_BANDS], timed[USC_BANDS];
};

static void *room_for_one(struct arena *arena, void *old, size_t count, size_t *room, size_t size)
{
    return count < *room ? old : arena_grow(arena, old, count, room, size);
}

/* Appends the reading of a cell that is not empty. Returns false when there is none or it is faulty. */
static bool add_reading(const struct csv *csv, int column, const struct value_range *range,
                        struct raw_readings *readings, size_t *room)
{
    double value;
    if (column < 0 || csv->cell[column].text[0] == '\0' || !read_value(csv, column, range, &value))
        return false;
    if (readings->count == RAW_READINGS_MOST) {
        csv_error(csv, &csv->cell[column], NULL, "a band has at most %d readings", RAW_READINGS_MOST);
        return false;
    }
    readings->value = room_for_one(csv->arena, readings->value, readings->count, room, sizeof *readings->value);
    readings->value[readings->count++] = value;
    return true;
}

/* The position of the level just added: named, and not twice in a band. */
static void add_position(const struct csv *csv, int column, struct raw_gathering *gathering, int band)
{
    struct raw_band *raw = &gathering->measurement->band[band];
    const struct csv_cell *cell = &csv->cell[column];
    size_t const before = raw->level_dB.count - 1;
    if (cell->text[0] == '\0')
        csv_error(csv, cell, NULL, "a level needs its position, and the cell is empty");
    for (size_t i = 0; i < before && cell->text[0] != '\0'; i++) {
        if (strcmp(raw->position[i], cell->text) != 0)
            continue;
        const char *hint = arena_printf(csv->arena, "it stands first on line %d", gathering->level_line[band][i]);
        csv_error(csv, cell, hint, "the position \"%.*s\" stands twice at %g Hz",
                  (int)text_head(cell->text, NUMBER_TEXT), cell->text, usc_band_Hz[band]);
        break;
    }
    size_t *room = &gathering->room[band].position;
    raw->position = room_for_one(csv->arena, raw->position, before, room, sizeof *raw->position);
    raw->position[before] = arena_text(csv->arena, cell->text);
    room = &gathering->level_line_room[band];
    gathering->level_line[band] =
        room_for_one(csv->arena, gathering->level_line[band], before, room, sizeof *gathering->level_line[band]);
    gathering->level_line[band][before] = cell->line;
}

static bool is_filled(const struct csv *csv, int column)
{
    return column >= 0 && csv->cell[column].text[0] != '\0';
}

static void gather_raw(const struct csv *csv, const int index[], struct raw_gathering *gathering)
{
    int const band = read_band(csv, index[RAW_FREQUENCY]);
    struct raw_band spare = {0}; /* the other cells of a row without a band are looked at all the same */
    struct raw_room spare_room = {0};
    struct raw_band *raw = band < 0 ? &spare : &gathering->measurement->band[band];
    struct raw_room *room = band < 0 ? &spare_room : &gathering->room[band];
    bool const any = is_filled(csv, index[RAW_LEVEL]) || is_filled(csv, index[RAW_BACKGROUND]) ||
                     is_filled(csv, index[RAW_TIME]) || is_filled(csv, index[RAW_CORNER]);
    if (!any)
        csv_error(csv, &csv->cell[index[RAW_LEVEL]], NULL, "the row has no reading");
    bool const level = add_reading(csv, index[RAW_LEVEL], &level_range, &raw->level_dB, &room->level);
    add_reading(csv, index[RAW_BACKGROUND], &level_range, &raw->background_dB, &room->background);
    add_reading(csv, index[RAW_TIME], &time_range, &raw->reverberation_time_s, &room->time);
    add_reading(csv, index[RAW_CORNER], &level_range, &raw->corner_dB, &room->corner);
    if (band < 0)
        return;
    gathering->seen[band] = gathering->seen[band] || is_filled(csv, index[RAW_LEVEL]);
    gathering->timed[band] = gathering->timed[band] || is_filled(csv, index[RAW_TIME]);
    if (level && index[RAW_POSITION] >= 0)
        add_position(csv, index[RAW_POSITION], gathering, band);
}

static void conclude_raw(const struct csv *csv, const int index[], struct raw_gathering *gathering)
{
    struct raw_measurement *measurement = gathering->measurement;
    measurement->octave = are_octaves(gathering->seen);
    measurement->has_background = index[RAW_BACKGROUND] >= 0;
    measurement->has_reverberation_time = index[RAW_TIME] >= 0;
    measurement->has_corner = index[RAW_CORNER] >= 0;
    for (int i = 0; i < USC_BANDS; i++)
        measurement->has[i] = measurement->band[i].level_dB.count > 0;
    check_rated(csv, &csv->header[index[RAW_FREQUENCY]], gathering->seen, measurement->octave);
    const char *names = lacking(csv->arena, gathering->seen, gathering->timed);
    if (measurement->has_reverberation_time && names)
        csv_error(csv, &csv->header[index[RAW_TIME]], "give it in one row of each band, or leave the column out",
                  "lacks a value at %s Hz", names);
}

bool raw_measurement_read(struct raw_measurement *measurement, struct arena *arena, struct problems *problems,
                          const char *file, const char *text, size_t length)
{
    struct raw_gathering gathering = {.measurement = measurement};
    size_t const errors_before = problems->count[SEVERITY_ERROR];
    struct csv csv;
    int index[RAW_COLUMNS];
    bool suggested[RAW_COLUMNS];
    *measurement = (struct raw_measurement){0};
    if (!csv_open_text(&csv, arena, problems, file, text, length))
        return false;
    bool fit = csv_columns(&csv, "a table of field readings", raw_columns, RAW_COLUMNS, index, suggested);
    fit = has_column(&csv, raw_columns, index, suggested, RAW_FREQUENCY) && fit;
    fit = has_column(&csv, raw_columns, index, suggested, RAW_LEVEL) && fit;
    if (!fit)
        return false;
    while (csv_next(&csv))
        gather_raw(&csv, index, &gathering);
    conclude_raw(&csv, index, &gathering);
    return problems->count[SEVERITY_ERROR] == errors_before;
}

/* Which table */

enum measurement_table measurement_table_of(struct arena *arena, const char *text, size_t length)
{
    struct problems unheard = {.arena = arena};
    struct csv csv;
    if (!csv_open_text(&csv, arena, &unheard, NULL, text, length))
        return TABLE_SPECTRUM;
    enum measurement_table table = TABLE_SPECTRUM;
    for (int i = 0; i < csv.header_count; i++) {
        if (strcmp(csv.header[i].text, spectra_columns[SPECTRUM_ID]) == 0)
            return TABLE_SPECTRA;
        for (int k = RAW_POSITION; k <= RAW_CORNER; k++)
            if (strcmp(csv.header[i].text, raw_columns[k]) == 0)
                table = TABLE_RAW;
    }
    return table;
}
