/* Tables in CSV, read row by row in constant memory.
 *
 * The first line that is neither blank nor a comment (#) is the header. Its separator is ";" if one stands in it
 * outside quotes, else a tab, else ",". A decimal comma is read with the first two only. Cells may stand in quotes, a
 * quote inside doubled; a cell ends on its line. A byte order mark and the line endings LF, CRLF and CR are understood,
 * blanks around a cell are dropped, lines of empty cells skipped. */
#ifndef USC_BASE_CSV_H
#define USC_BASE_CSV_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#include "base/arena.h"
#include "base/problem.h"

enum { CSV_LINE_BYTES_MOST = 64 * 1024, CSV_CELLS_MOST = 256, CSV_ERRORS_MOST = 1000 };

/* line, column: from 1, of the first character (of the opening quote); columns count code points. */
struct csv_cell {
    const char *text;
    int line, column;
};

/* To be read by others: separator, header, header_count, cell (as many as the header), line and read_error. The texts
 * in cell hold until the next row is read, those of the header as long as the arena. */
struct csv {
    struct arena *arena;
    struct problems *problems;
    const char *file;
    const char *text;
    size_t text_length, text_at;
    FILE *stream; /* NULL: text */
    char *bytes;  /* of the line being cut */
    size_t length;
    bool too_long;
    int line;
    char separator;
    struct csv_cell *header, *cell;
    int header_count, cell_count;
    int read_error; /* errno of a stream that failed: reading then ends as at the end of the file */
};

/* Read the header. Return false, with a problem added, when there is none or it is faulty. file: as the user named it;
 * it and the text must outlive the reader. */
bool csv_open_text(struct csv *csv, struct arena *arena, struct problems *problems, const char *file, const char *text,
                   size_t length);
bool csv_open_stream(struct csv *csv, struct arena *arena, struct problems *problems, const char *file, FILE *stream);

/* The next row into cell; false at the end. A faulty row (quote, count of cells, length, encoding) is added to the
 * problems and passed over. Reading ends when the problems hold CSV_ERRORS_MOST errors: more help nobody, and each
 * takes memory. */
bool csv_next(struct csv *csv);

/* Given the column names that a table may have. Sets index[k] to the column of known[k], -1 when absent. An unknown
 * name is an error that names the nearest known one; suggested[k] tells that known[k] was so named. Returns false after
 * any error. what: the table in words, "a spectrum". */
bool csv_columns(const struct csv *csv, const char *what, const char *const known[], size_t known_count, int index[],
                 bool suggested[]);

/* The number in a column of the row. Returns false, with a problem added, when it is none. */
bool csv_number(const struct csv *csv, int column, double *value);

/* Adds an error at a cell of the header or the row, under the name of its column; hint may be NULL. */
void csv_error(const struct csv *csv, const struct csv_cell *cell, const char *hint, const char *format, ...)
    __attribute__((format(printf, 4, 5)));

#endif
