/* Tables of published cases: CSV with a header, cells in double quotes where they hold commas, lines with # ignored.
 * Read whole before the tests are added; a table that cannot be read ends the run. */
#ifndef USC_TESTS_TABLE_H
#define USC_TESTS_TABLE_H

enum { TABLE_ROWS_MOST = 256, TABLE_COLUMNS_MOST = 32 };

struct table {
    const char *name;
    char *text; /* the cells point into it */
    const char *header[TABLE_COLUMNS_MOST];
    const char *cell[TABLE_ROWS_MOST][TABLE_COLUMNS_MOST];
    int row_count, column_count;
};

/* name: a file in tests/published. */
void table_read(struct table *table, const char *name);
/* The text of a cell; ends the test when there is no such column. */
const char *table_text(const struct table *table, int row, const char *column);
/* The cell as one number; ends the test when it is none. */
double table_number(const struct table *table, int row, const char *column);
/* The cell as numbers with blanks between; ends the test when one is none or there are more than most. */
int table_numbers(const struct table *table, int row, const char *column, double value[], int most);

#endif
