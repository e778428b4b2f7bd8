#include "published/table.h"

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void give_up(const char *name, const char *why)
{
    fprintf(stderr, "table of published cases %s: %s\n", name, why);
    exit(EXIT_FAILURE);
}

static char *whole_file(const char *name)
{
    const char *folder = getenv("USC_TESTS_DIR");
    char path[4096];

    snprintf(path, sizeof path, "%s/published/%s", folder ? folder : "tests", name);
    FILE *file = fopen(path, "rb");
    if (!file)
        give_up(path, "cannot be opened");
    fseek(file, 0, SEEK_END);
    long size = ftell(file);
    rewind(file);
    char *text = size < 0 ? NULL : malloc((size_t)size + 1);
    if (!text || fread(text, 1, (size_t)size, file) != (size_t)size)
        give_up(path, "cannot be read");
    text[size] = '\0';
    fclose(file);
    return text;
}

/* Cuts one line into cells in place; returns how many. */
static int cut_cells(const char *name, char *line, const char *cell[TABLE_COLUMNS_MOST])
{
    int count = 0;

    while (line) {
        if (count == TABLE_COLUMNS_MOST)
            give_up(name, "too many columns");
        if (*line == '"') {
            char *end = strchr(++line, '"');
            if (!end || (end[1] != ',' && end[1] != '\0'))
                give_up(name, "a quote is not closed");
            *end = '\0';
            cell[count++] = line;
            line = end[1] == ',' ? end + 2 : NULL;
        } else {
            cell[count++] = line;
            line = strchr(line, ',');
            if (line)
                *line++ = '\0';
        }
    }
    return count;
}

void table_read(struct table *table, const char *name)
{
    char *next;

    memset(table, 0, sizeof *table);
    table->name = name;
    table->text = whole_file(name);
    for (char *line = table->text; *line; line = next) {
        next = line + strcspn(line, "\n");
        if (*next)
            *next++ = '\0';
        if (*line == '#' || *line == '\0')
            continue;
        if (table->column_count == 0) {
            table->column_count = cut_cells(name, line, table->header);
            continue;
        }
        if (table->row_count == TABLE_ROWS_MOST)
            give_up(name, "too many rows");
        if (cut_cells(name, line, table->cell[table->row_count++]) != table->column_count)
            give_up(name, "a row has not as many cells as the header");
    }
    if (table->row_count == 0)
        give_up(name, "no rows");
}

const char *table_text(const struct table *table, int row, const char *column)
{
    for (int i = 0; i < table->column_count; i++)
        if (strcmp(table->header[i], column) == 0)
            return table->cell[row][i];
    ck_abort_msg("%s has no column %s", table->name, column);
    return NULL;
}

int table_numbers(const struct table *table, int row, const char *column, double value[], int most)
{
    const char *at = table_text(table, row, column);
    int count = 0;

    for (at += strspn(at, " "); *at; at += strspn(at, " ")) {
        char *end;
        ck_assert_msg(count < most, "%s row %d: more than %d numbers in %s", table->name, row + 1, most, column);
        value[count++] = strtod(at, &end);
        ck_assert_msg(end != at, "%s row %d: no number in %s: %s", table->name, row + 1, column, at);
        at = end;
    }
    return count;
}

double table_number(const struct table *table, int row, const char *column)
{
    double value;
    int count = table_numbers(table, row, column, &value, 1);

    ck_assert_msg(count == 1, "%s row %d: %s is empty", table->name, row + 1, column);
    return value;
}
