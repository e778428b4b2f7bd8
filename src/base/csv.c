#include "base/csv.h"

#include <errno.h>
#include <limits.h>
#include <stdarg.h>
#include <string.h>

#include "base/number.h"
#include "base/text.h"

enum { QUOTED_WIDTH_MOST = 40 }; /* of a cell's text shown in a message */

static const char byte_order_mark[] = "\xef\xbb\xbf";

static void error_at(const struct csv *csv, int line, int column, const char *path, const char *hint, const char *text)
{
    struct problem *problem = problem_add(csv->problems, SEVERITY_ERROR, csv->file, path, hint, "%s", text);
    problem->place.line = line;
    problem->place.column = column;
}

void csv_error(const struct csv *csv, const struct csv_cell *cell, const char *hint, const char *format, ...)
{
    bool const in_row = cell >= csv->cell && cell < csv->cell + csv->header_count;
    char const *const name = in_row ? csv->header[cell - csv->cell].text : cell->text;
    va_list given;
    va_start(given, format);
    error_at(csv, cell->line, cell->column, name, hint, arena_vprintf(csv->arena, format, given));
    va_end(given);
}

/* Lines */

static int next_byte(struct csv *csv)
{
    if (csv->stream)
        return getc_unlocked(csv->stream);
    return csv->text_at < csv->text_length ? (unsigned char)csv->text[csv->text_at++] : EOF;
}

static void unread_byte(struct csv *csv, int byte)
{
    if (byte == EOF)
        return;
    if (csv->stream)
        ungetc(byte, csv->stream);
    else
        csv->text_at--;
}

/* A line without its end into bytes, NUL after it; what is longer than the limit is dropped. false at the end. */
static bool read_line(struct csv *csv)
{
    int byte = next_byte(csv);
    bool const any = byte != EOF;
    csv->length = 0;
    csv->too_long = false;
    for (; byte != EOF && byte != '\n' && byte != '\r'; byte = next_byte(csv)) {
        if (csv->length < CSV_LINE_BYTES_MOST)
            csv->bytes[csv->length++] = (char)byte;
        else
            csv->too_long = true;
    }
    if (byte == '\r') {
        int const after = next_byte(csv);
        if (after != '\n')
            unread_byte(csv, after);
    }
    csv->bytes[csv->length] = '\0';
    if (csv->stream && ferror(csv->stream)) {
        csv->read_error = errno ? errno : EIO;
        return false; /* half a line is no row */
    }
    if (any && csv->line < INT_MAX)
        csv->line++;
    return any;
}

static void drop_byte_order_mark(struct csv *csv)
{
    size_t const mark = sizeof byte_order_mark - 1;
    if (csv->line == 1 && strncmp(csv->bytes, byte_order_mark, mark) == 0) {
        csv->length -= mark;
        memmove(csv->bytes, csv->bytes + mark, csv->length + 1);
    }
}

static int column_of(const char *text, size_t offset)
{
    int column = 1;
    for (size_t i = 0; i < offset; i++)
        column += ((unsigned char)text[i + 1] & 0xC0) != 0x80;
    return column;
}

/* Length and encoding of the line. */
static bool line_is_fit(const struct csv *csv)
{
    if (csv->too_long) {
        const char *text = arena_printf(csv->arena, "the line is longer than %d bytes", CSV_LINE_BYTES_MOST);
        error_at(csv, csv->line, column_of(csv->bytes, csv->length), "", NULL, text);
        return false;
    }
    for (size_t i = 0; i < csv->length;) {
        unsigned code;
        size_t const bytes = csv->bytes[i] ? text_decode(csv->bytes + i, &code) : 0;
        if (bytes == 0) {
            const char *text = arena_printf(csv->arena, "the byte 0x%02x is no text", (unsigned char)csv->bytes[i]);
            error_at(csv, csv->line, column_of(csv->bytes, i), "", "save the table as UTF-8", text);
            return false;
        }
        i += bytes;
    }
    return true;
}

/* Cells */

struct cursor {
    char *at;
    int column; /* of the code point that begins or goes on at at */
};

static void step(struct cursor *cursor)
{
    cursor->at++;
    cursor->column += ((unsigned char)*cursor->at & 0xC0) != 0x80;
}

static bool is_blank(const struct csv *csv, char c)
{
    return c == ' ' || (c == '\t' && csv->separator != '\t');
}

static bool ends_cell(const struct csv *csv, char c)
{
    return c == '\0' || c == csv->separator;
}

/* From the opening quote to the separator or the end; the text is put together in place. */
static bool cut_quoted(const struct csv *csv, struct cursor *cursor, struct csv_cell *cell)
{
    char *out = cursor->at + 1;
    cell->text = out;
    for (step(cursor);; step(cursor)) {
        if (*cursor->at == '\0') {
            error_at(csv, cell->line, cell->column, "", "a quote inside quotes is doubled",
                     "the quote is not closed on its line");
            return false;
        }
        if (*cursor->at == '"') {
            step(cursor);
            if (*cursor->at != '"')
                break;
        }
        *out++ = *cursor->at;
    }
    while (is_blank(csv, *cursor->at))
        step(cursor);
    if (!ends_cell(csv, *cursor->at)) {
        error_at(csv, cell->line, cursor->column, "", "a quote inside quotes is doubled",
                 "text follows the closing quote");
        return false;
    }
    *out = '\0'; /* at or before the closing quote */
    return true;
}

static void cut_plain(const struct csv *csv, struct cursor *cursor, struct csv_cell *cell)
{
    char *end = cursor->at;
    cell->text = end;
    for (; !ends_cell(csv, *cursor->at); step(cursor))
        if (!is_blank(csv, *cursor->at))
            end = cursor->at + 1;
    if (end != cursor->at) /* the separator is still needed */
        *end = '\0';
}

/* The line into cells; cell_count is set. */
static bool cut_line(struct csv *csv)
{
    struct cursor cursor = {.at = csv->bytes, .column = 1};
    for (csv->cell_count = 0;;) {
        while (is_blank(csv, *cursor.at))
            step(&cursor);
        if (csv->cell_count == CSV_CELLS_MOST) {
            const char *text = arena_printf(csv->arena, "the line has more than %d cells", CSV_CELLS_MOST);
            error_at(csv, csv->line, cursor.column, "", NULL, text);
            return false;
        }
        struct csv_cell *cell = &csv->cell[csv->cell_count++];
        cell->line = csv->line;
        cell->column = cursor.column;
        if (*cursor.at != '"')
            cut_plain(csv, &cursor, cell);
        else if (!cut_quoted(csv, &cursor, cell))
            return false;
        if (*cursor.at == '\0')
            return true;
        char *const separator = cursor.at;
        step(&cursor);
        *separator = '\0';
    }
}

static bool cells_are_empty(const struct csv *csv)
{
    for (int i = 0; i < csv->cell_count; i++)
        if (csv->cell[i].text[0] != '\0')
            return false;
    return true;
}

/* The next line that is neither blank nor a comment. */
static bool next_line(struct csv *csv)
{
    while (read_line(csv)) {
        drop_byte_order_mark(csv);
        char const first = csv->bytes[strspn(csv->bytes, " \t")];
        bool const blank = strspn(csv->bytes, " \t") == csv->length;
        if (first != '#' && !(blank && !csv->too_long))
            return true;
    }
    return false;
}

/* As many cells as the header; empty ones beyond it, which spreadsheets write, are passed over. */
static bool cells_fit_header(const struct csv *csv)
{
    if (csv->cell_count < csv->header_count) {
        const struct csv_cell *last = &csv->cell[csv->cell_count - 1];
        const char *text = arena_printf(csv->arena, "the row has %d of the %d cells of the header", csv->cell_count,
                                        csv->header_count);
        error_at(csv, last->line, last->column, "", NULL, text);
        return false;
    }
    for (int i = csv->header_count; i < csv->cell_count; i++) {
        if (csv->cell[i].text[0] == '\0')
            continue;
        const char *text =
            arena_printf(csv->arena, "the row has %d cells, the header %d", csv->cell_count, csv->header_count);
        error_at(csv, csv->cell[i].line, csv->cell[i].column, "",
                 csv->separator == ',' ? "a decimal comma needs \";\" or tabs between the cells" : NULL, text);
        return false;
    }
    return true;
}

bool csv_next(struct csv *csv)
{
    while (csv->problems->count[SEVERITY_ERROR] < CSV_ERRORS_MOST && next_line(csv))
        if (line_is_fit(csv) && cut_line(csv) && !cells_are_empty(csv) && cells_fit_header(csv))
            return true;
    return false;
}

/* Header */

static char separator_of(const char *line)
{
    bool quoted = false, tab = false;
    for (; *line; line++) {
        quoted ^= *line == '"';
        if (!quoted && *line == ';')
            return ';';
        tab = tab || (!quoted && *line == '\t');
    }
    return tab ? '\t' : ',';
}

static bool header_names_are_fit(const struct csv *csv)
{
    double number;
    bool fit = true;
    for (int i = 0; i < csv->header_count; i++) {
        const struct csv_cell *cell = &csv->header[i];
        if (cell->text[0] == '\0') {
            csv_error(csv, cell, NULL, "column %d has no name in the header", i + 1);
            fit = false;
        } else if (number_parse(cell->text, &number)) {
            csv_error(csv, cell, NULL, "is a number where the header should name the columns");
            return false; /* there is no header: one message is enough */
        }
        for (int j = 0; j < i && cell->text[0] != '\0'; j++) {
            if (strcmp(csv->header[j].text, cell->text) != 0)
                continue;
            csv_error(csv, cell, NULL, "stands twice in the header, first as column %d", j + 1);
            fit = false;
            break;
        }
    }
    return fit;
}

static bool read_header(struct csv *csv)
{
    csv->bytes = arena_take(csv->arena, CSV_LINE_BYTES_MOST + 1);
    csv->cell = arena_take_many(csv->arena, CSV_CELLS_MOST, sizeof *csv->cell);
    if (!next_line(csv)) {
        if (!csv->read_error)
            error_at(csv, 1, 1, "", NULL, "the table is empty: it needs a header that names the columns");
        return false;
    }
    if (!line_is_fit(csv))
        return false;
    csv->separator = separator_of(csv->bytes);
    if (!cut_line(csv))
        return false;
    while (csv->cell_count > 1 && csv->cell[csv->cell_count - 1].text[0] == '\0')
        csv->cell_count--;
    csv->header = arena_take_many(csv->arena, (size_t)csv->cell_count, sizeof *csv->header);
    for (int i = 0; i < csv->cell_count; i++) {
        csv->header[i] = csv->cell[i];
        csv->header[i].text = arena_text(csv->arena, csv->cell[i].text);
    }
    csv->header_count = csv->cell_count;
    return header_names_are_fit(csv);
}

bool csv_open_text(struct csv *csv, struct arena *arena, struct problems *problems, const char *file, const char *text,
                   size_t length)
{
    *csv = (struct csv){.arena = arena, .problems = problems, .file = file, .text = text, .text_length = length};
    return read_header(csv);
}

bool csv_open_stream(struct csv *csv, struct arena *arena, struct problems *problems, const char *file, FILE *stream)
{
    *csv = (struct csv){.arena = arena, .problems = problems, .file = file, .stream = stream};
    return read_header(csv);
}

bool csv_columns(const struct csv *csv, const char *what, const char *const known[], size_t known_count, int index[],
                 bool suggested[])
{
    bool fit = true;
    for (size_t k = 0; k < known_count; k++) {
        index[k] = -1;
        suggested[k] = false;
    }
    for (int i = 0; i < csv->header_count; i++) {
        const struct csv_cell *cell = &csv->header[i];
        size_t k = 0;
        while (k < known_count && strcmp(known[k], cell->text) != 0)
            k++;
        if (k < known_count) {
            index[k] = i;
            continue;
        }
        const char *nearest = nearest_name(cell->text, known, known_count);
        csv_error(csv, cell, nearest ? arena_printf(csv->arena, "did you mean \"%s\"?", nearest) : NULL,
                  "is no known column of %s", what);
        for (k = 0; k < known_count; k++)
            suggested[k] = suggested[k] || known[k] == nearest;
        fit = false;
    }
    return fit;
}

/* Numbers */

/* A point for the one comma of the text; false when the text has a point too, or more commas. */
static bool comma_to_point(const char *text, char point[NUMBER_TEXT])
{
    size_t const length = strlen(text);
    if (length >= NUMBER_TEXT || strchr(text, '.'))
        return false;
    memcpy(point, text, length + 1);
    char *comma = strchr(point, ',');
    if (!comma)
        return false;
    *comma = '.';
    return true;
}

bool csv_number(const struct csv *csv, int column, double *value)
{
    const struct csv_cell *cell = &csv->cell[column];
    char point[NUMBER_TEXT];
    if (number_parse(cell->text, value))
        return true;
    if (csv->separator != ',' && comma_to_point(cell->text, point) && number_parse(point, value))
        return true;
    const char *hint = NULL;
    if (strchr(cell->text, ','))
        hint = csv->separator == ',' ? "a decimal comma needs \";\" or tabs between the cells"
                                     : "thousands are not set apart";
    if (cell->text[0] == '\0')
        csv_error(csv, cell, NULL, "must be a number, and the cell is empty");
    else
        csv_error(csv, cell, hint, "must be a number, not \"%.*s\"", (int)text_head(cell->text, QUOTED_WIDTH_MOST),
                  cell->text);
    return false;
}
