#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/csv.h"

#include "../suites.h"
#include "reading_fixture.h"

/* Header and rows as "a|b" lines, each cell with its line and column. */
static const char *table_lines(struct csv *csv)
{
    const char *lines = "";
    for (int i = 0; i < csv->header_count; i++)
        lines = arena_printf(arena, "%s%s%d:%d %s", lines, i ? "|" : "", csv->header[i].line, csv->header[i].column,
                             csv->header[i].text);
    while (csv_next(csv)) {
        lines = arena_printf(arena, "%s\n", lines);
        for (int i = 0; i < csv->header_count; i++)
            lines = arena_printf(arena, "%s%s%d:%d %s", lines, i ? "|" : "", csv->cell[i].line, csv->cell[i].column,
                                 csv->cell[i].text);
    }
    return lines;
}

static const struct {
    const char *text, *lines;
} dialects[] = {
    {"a,b\n1,2\n", "1:1 a|1:3 b\n2:1 1|2:3 2"},
    {"a;b\n1,5;2\n", "1:1 a|1:3 b\n2:1 1,5|2:5 2"},
    {"a\tb\n1,5\t2\n", "1:1 a|1:3 b\n2:1 1,5|2:5 2"},
    {"a,x;b\ty\n1;2", "1:1 a,x|1:5 b\ty\n2:1 1|2:3 2"},
    {"a,x\tb\n1\t2", "1:1 a,x|1:5 b\n2:1 1|2:3 2"},
    {"\"a;x\",b\n1,2", "1:1 a;x|1:7 b\n2:1 1|2:3 2"},
    {"a\n7\n8", "1:1 a\n2:1 7\n3:1 8"},
    {"a,b\r\n1,2\r\n\r\n3,4\r\n", "1:1 a|1:3 b\n2:1 1|2:3 2\n4:1 3|4:3 4"},
    {"a,b\r1,2\r3,4", "1:1 a|1:3 b\n2:1 1|2:3 2\n3:1 3|3:3 4"},
    {"\xef\xbb\xbf"
     "a,b\n1,2",
     "1:1 a|1:3 b\n2:1 1|2:3 2"},
    {"\xef\xbb\xbf# note, with comma\n\n  # another\na,b\n#1,2\n3,#4\n", "4:1 a|4:3 b\n6:1 3|6:3 #4"},
    {"a,b\n\"x, \"\"y\"\"\",2\n", "1:1 a|1:3 b\n2:1 x, \"y\"|2:12 2"},
    {"a,b\n\"\",\"\"\"\"\n", "1:1 a|1:3 b\n2:1 |2:4 \""},
    {"a,b\n  \"x\"  ,  y z  \n", "1:1 a|1:3 b\n2:3 x|2:11 y z"},
    {"a\tb\n  x \t\n", "1:1 a|1:3 b\n2:3 x|2:6 "},
    {"a,b\nx\"y\",2\n", "1:1 a|1:3 b\n2:1 x\"y\"|2:6 2"},
    {"Größe;b\nÄö€;7\n", "1:1 Größe|1:7 b\n2:1 Äö€|2:5 7"},
    {"a;b;;\n1;2;;\n;;;\n3;4;;;;", "1:1 a|1:3 b\n2:1 1|2:3 2\n4:1 3|4:3 4"},
    {"a,b\n   \t \n,\n", "1:1 a|1:3 b"},
    {"a,b\n,2", "1:1 a|1:3 b\n2:1 |2:2 2"},
};

START_TEST(dialect_is_read_from_text)
{
    struct csv csv;
    const char *text = dialects[_i].text;
    ck_assert_msg(csv_open_text(&csv, arena, &problems, "t.csv", text, strlen(text)), "%s", problem_lines(&problems));
    ck_assert_str_eq(table_lines(&csv), dialects[_i].lines);
    ck_assert_str_eq(problem_lines(&problems), "");
}
END_TEST

START_TEST(dialect_is_read_from_a_stream)
{
    struct csv csv;
    char *text = strdup(dialects[_i].text);
    FILE *stream = fmemopen(text, strlen(text), "rb");
    ck_assert(csv_open_stream(&csv, arena, &problems, "t.csv", stream));
    ck_assert_str_eq(table_lines(&csv), dialects[_i].lines);
    ck_assert_str_eq(problem_lines(&problems), "");
    fclose(stream);
    free(text);
}
END_TEST

static const struct {
    const char *text, *problems;
} faults[] = {
    {"", "1:1 : the table is empty: it needs a header that names the columns"},
    {"\n# only a comment\n", "1:1 : the table is empty: it needs a header that names the columns"},
    {"a,,b\n", "1:3 : column 2 has no name in the header"},
    {"a,b,a\n", "1:5 a: stands twice in the header, first as column 1"},
    {"# x\n100,60\n", "2:1 100: is a number where the header should name the columns"},
    {"a,b\n1\n2,3\n", "2:1 : the row has 1 of the 2 cells of the header"},
    {"a,b\n1,2,3\n4,5,,6\n", "2:5 : the row has 3 cells, the header 2; a decimal comma needs \";\" or tabs between the "
                             "cells\n3:6 : the row has 4 cells, the header 2; a decimal comma needs \";\" or tabs "
                             "between the cells"},
    {"a;b\nä;2;3\n", "2:5 : the row has 3 cells, the header 2"},
    {"a,b\nä, \"x\n2,3\n", "2:4 : the quote is not closed on its line; a quote inside quotes is doubled"},
    {"a,b\n\"ä\" x,2\n", "2:5 : text follows the closing quote; a quote inside quotes is doubled"},
    {"\"a\n", "1:1 : the quote is not closed on its line; a quote inside quotes is doubled"},
    {"a,b\nä\xe4,2\n", "2:2 : the byte 0xe4 is no text; save the table as UTF-8"},
    {"\xff\xfe"
     "a",
     "1:1 : the byte 0xff is no text; save the table as UTF-8"},
};

START_TEST(fault_is_named_with_its_place)
{
    struct csv csv;
    const char *text = faults[_i].text;
    if (csv_open_text(&csv, arena, &problems, "t.csv", text, strlen(text)))
        while (csv_next(&csv))
            continue;
    ck_assert_str_eq(problem_lines(&problems), faults[_i].problems);
    ck_assert_str_eq(problems.first->place.file, "t.csv");
}
END_TEST

START_TEST(reading_goes_on_after_a_faulty_row)
{
    struct csv csv;
    const char *text = "a,b\n1\n2,3\n\"x,4\n5,6\n";
    ck_assert(csv_open_text(&csv, arena, &problems, "t.csv", text, strlen(text)));
    ck_assert_str_eq(table_lines(&csv), "1:1 a|1:3 b\n3:1 2|3:3 3\n5:1 5|5:3 6");
    ck_assert_uint_eq(problems.count[SEVERITY_ERROR], 2);
}
END_TEST

START_TEST(nul_byte_is_an_error)
{
    struct csv csv;
    static const char text[] = "a,b\n1,\0002\n3,4\n";
    ck_assert(csv_open_text(&csv, arena, &problems, "t.csv", text, sizeof text - 1));
    ck_assert_str_eq(table_lines(&csv), "1:1 a|1:3 b\n3:1 3|3:3 4");
    ck_assert_str_eq(problem_lines(&problems), "2:3 : the byte 0x00 is no text; save the table as UTF-8");
}
END_TEST

/* "a", a line of the letter x of so many bytes, and a good row. */
static char *long_line(char begin, size_t bytes, size_t *length)
{
    char *text = arena_take(arena, bytes + 5);
    text[0] = 'a';
    text[1] = '\n';
    memset(text + 2, 'x', bytes);
    text[2] = begin;
    memcpy(text + 2 + bytes, "\n7", 2);
    *length = bytes + 4;
    return text;
}

START_TEST(line_has_a_limit)
{
    struct csv csv;
    size_t length;
    const char *text = long_line('x', CSV_LINE_BYTES_MOST, &length);
    ck_assert(csv_open_text(&csv, arena, &problems, "t.csv", text, length));
    ck_assert(csv_next(&csv));
    ck_assert_uint_eq(strlen(csv.cell[0].text), CSV_LINE_BYTES_MOST);
    text = long_line('x', CSV_LINE_BYTES_MOST + 1, &length);
    ck_assert(csv_open_text(&csv, arena, &problems, "t.csv", text, length));
    ck_assert(csv_next(&csv));
    ck_assert_str_eq(csv.cell[0].text, "7");
    ck_assert_int_eq(csv.cell[0].line, 3);
    ck_assert_str_eq(problem_lines(&problems), "2:65537 : the line is longer than 65536 bytes");
    text = long_line('#', CSV_LINE_BYTES_MOST + 1000, &length);
    ck_assert(csv_open_text(&csv, arena, &problems, "t.csv", text, length));
    ck_assert(csv_next(&csv));
    ck_assert_str_eq(csv.cell[0].text, "7");
    ck_assert_uint_eq(problems.count[SEVERITY_ERROR], 1);
}
END_TEST

START_TEST(cells_of_a_line_have_a_limit)
{
    struct csv csv;
    char text[2 + CSV_CELLS_MOST + 3] = "a\n7";
    memset(text + 3, ',', CSV_CELLS_MOST - 1);
    ck_assert(csv_open_text(&csv, arena, &problems, "t.csv", text, strlen(text)));
    ck_assert(csv_next(&csv));
    text[3 + CSV_CELLS_MOST - 1] = ',';
    ck_assert(csv_open_text(&csv, arena, &problems, "t.csv", text, strlen(text)));
    ck_assert(!csv_next(&csv));
    ck_assert_str_eq(problem_lines(&problems), "2:258 : the line has more than 256 cells");
}
END_TEST

START_TEST(errors_have_a_limit)
{
    struct csv csv;
    char *text = arena_take(arena, 4 + 2 * 5000 + 1);
    strcpy(text, "a,b\n");
    for (int i = 0; i < 5000; i++)
        memcpy(text + 4 + 2 * i, "1\n", 3);
    ck_assert(csv_open_text(&csv, arena, &problems, "t.csv", text, strlen(text)));
    ck_assert(!csv_next(&csv));
    ck_assert_uint_eq(problems.count[SEVERITY_ERROR], CSV_ERRORS_MOST);
    ck_assert_int_eq(csv.line, 1 + CSV_ERRORS_MOST);
}
END_TEST

START_TEST(failed_stream_is_not_its_end)
{
    struct csv csv;
    FILE *stream = fopen(".", "rb"); /* a folder opens and cannot be read */
    ck_assert_ptr_nonnull(stream);
    ck_assert(!csv_open_stream(&csv, arena, &problems, "t.csv", stream));
    ck_assert_int_eq(csv.read_error, EISDIR);
    ck_assert_str_eq(problem_lines(&problems), "");
    fclose(stream);
}
END_TEST

static const struct {
    const char *text;
    double value;
    const char *problems;
} numbers[] = {
    {"n,m\n60.5,x", 60.5, ""},
    {"n;m\n60.5;x", 60.5, ""},
    {"n;m\n60,5;x", 60.5, ""},
    {"n\tm\n-60,5\tx", -60.5, ""},
    {"n;m\n\"60,5\";x", 60.5, ""},
    {"n;m\n6,5e1;x", 65, ""},
    {"n,m\n\"60,5\",x", 0,
     "2:1 n: must be a number, not \"60,5\"; a decimal comma needs \";\" or tabs between the cells"},
    {"n;m\n1.060,5;x", 0, "2:1 n: must be a number, not \"1.060,5\"; thousands are not set apart"},
    {"n;m\n1,060,5;x", 0, "2:1 n: must be a number, not \"1,060,5\"; thousands are not set apart"},
    {"n;m\n;x", 0, "2:1 n: must be a number, and the cell is empty"},
    {"n;m\n60 dB;x", 0, "2:1 n: must be a number, not \"60 dB\""},
    {"n;m\nnan;x", 0, "2:1 n: must be a number, not \"nan\""},
    {"n;m\nxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx;x", 0,
     "2:1 n: must be a number, not \"xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx\""},
};

START_TEST(number_is_read_or_named)
{
    struct csv csv;
    double value = 0;
    const char *text = numbers[_i].text;
    ck_assert(csv_open_text(&csv, arena, &problems, "t.csv", text, strlen(text)));
    ck_assert(csv_next(&csv));
    ck_assert(csv_number(&csv, 0, &value) == (numbers[_i].problems[0] == '\0'));
    ck_assert(value == numbers[_i].value);
    ck_assert_str_eq(problem_lines(&problems), numbers[_i].problems);
}
END_TEST

START_TEST(columns_are_found_by_name)
{
    static const char *const known[] = {"x_m", "thickness_mm", "note"};
    struct csv csv;
    int index[3];
    bool suggested[3];
    const char *text = "note;x_m\n";
    ck_assert(csv_open_text(&csv, arena, &problems, "t.csv", text, strlen(text)));
    ck_assert(csv_columns(&csv, "a survey", known, 3, index, suggested));
    ck_assert(index[0] == 1 && index[1] == -1 && index[2] == 0);
    text = "x_m;thicknes_mm;qqqq\n";
    ck_assert(csv_open_text(&csv, arena, &problems, "t.csv", text, strlen(text)));
    ck_assert(!csv_columns(&csv, "a survey", known, 3, index, suggested));
    ck_assert(!suggested[0] && suggested[1] && !suggested[2]);
    ck_assert_str_eq(problem_lines(&problems),
                     "1:5 thicknes_mm: is no known column of a survey; did you mean \"thickness_mm\"?\n"
                     "1:17 qqqq: is no known column of a survey");
}
END_TEST

#define ROWS(ARRAY) (int)(sizeof(ARRAY) / sizeof(ARRAY)[0])

Suite *csv_suite(void)
{
    Suite *suite = suite_create("csv");
    TCase *tests = tcase_create("csv");
    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_loop_test(tests, dialect_is_read_from_text, 0, ROWS(dialects));
    tcase_add_loop_test(tests, dialect_is_read_from_a_stream, 0, ROWS(dialects));
    tcase_add_loop_test(tests, fault_is_named_with_its_place, 0, ROWS(faults));
    tcase_add_test(tests, reading_goes_on_after_a_faulty_row);
    tcase_add_test(tests, nul_byte_is_an_error);
    tcase_add_test(tests, line_has_a_limit);
    tcase_add_test(tests, cells_of_a_line_have_a_limit);
    tcase_add_test(tests, errors_have_a_limit);
    tcase_add_test(tests, failed_stream_is_not_its_end);
    tcase_add_loop_test(tests, number_is_read_or_named, 0, ROWS(numbers));
    tcase_add_test(tests, columns_are_found_by_name);
    suite_add_tcase(suite, tests);
    return suite;
}
