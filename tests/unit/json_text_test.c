/* JSON text taken apart: pieces and places in tricky and in broken text. */
#include "project/json_text.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "suites.h"

static const struct {
    const char *text, *path, *value; /* value: what the text reads on from the place found */
} finds[] = {
    {"{\"a\": 1, \"b\": 2}", "b", "2}"},
    {"{\"a\": 1, \"b\": 2}", "", "{\"a\""},
    {" \t\r\n{\"a\" : 1}", "a", "1}"},
    {"{\"a\": [10, {\"b\": [20, 30]}]}", "a[1].b[1]", "30]"},
    {"[[1, 2], [3, 4]]", "[1][0]", "3, 4"},
    {"{\"a\": \"]}, \\\"b\\\": 7\", \"b\": 8}", "b", "8}"},
    {"{\"a\": \"\\\\\", \"b\": 8}", "b", "8}"},
    {"{\"a\": [\"[[{\", \"\\\"\"], \"b\": {\"c\": true}}", "b.c", "true"},
    {"{\"a\": {\"b\": 1}, \"b\": 2}", "b", "2}"},
    {"{\"ab\": 1, \"a\": 2}", "a", "2}"},
    {"{\"a\": \"\", \"b\": []}", "a", "\"\", "},
    {"{\"a\": \"\", \"b\": []}", "b", "[]}"},
    /* What is not there: the nearest enclosing value. */
    {"{\"a\": {\"b\": 1}}", "a.c", "{\"b\""},
    {"{\"a\": {\"b\": 1}}", "c.d", "{\"a\""},
    {"{\"a\": [1, 2]}", "a[2]", "[1, 2]"},
    {"{\"a\": []}", "a[0].b", "[]}"},
    {"{\"a\": 5}", "a.b[3]", "5}"},
    {"{\"a\": \"b\"}", "a.b", "\"b\"}"},
    {"{}", "a", "{}"},
    /* Broken off: as far as it can be followed. */
    {"{\"a\": [1, 2", "a[1]", "2"},
    {"{\"a\": [1, 2", "a[2]", "[1, 2"},
    {"{\"a\": \"un", "b", "{\"a\""},
    {"{\"a\" 1, \"b\": 2}", "b", "{\"a\""},
    {"{\"a", "a", "{\"a"},
    {"[1}", "[1]", "[1}"},
};

START_TEST(value_is_found)
{
    const char *text = finds[_i].text;
    size_t at = json_text_find(text, strlen(text), finds[_i].path);
    ck_assert_uint_lt(at, strlen(text));
    ck_assert_msg(!strncmp(text + at, finds[_i].value, strlen(finds[_i].value)), "%s in %s leads to %s", finds[_i].path,
                  text, text + at);
}
END_TEST

START_TEST(nothing_is_found_in_nothing)
{
    ck_assert_uint_eq(json_text_find("", 0, "a.b[0]"), 0);
    ck_assert_uint_lt(json_text_find("  \n", 3, "a"), 3);
}
END_TEST

START_TEST(bytes_beyond_the_length_are_not_read)
{
    /* A block of its own without a final zero, so that the sanitizer sees a step too far. */
    static const char whole[] = "{\"a\": [\"x\\\"\", {\"b\": 12}]}";
    for (size_t length = 0; length < sizeof whole; length++) {
        char *cut = malloc(length ? length : 1);
        memcpy(cut, whole, length);
        size_t at = json_text_find(cut, length, "a[1].b");
        ck_assert_uint_le(at, length);
        ck_assert_uint_le(json_text_skip(cut, length, 0), length);
        free(cut);
    }
    ck_assert_uint_eq(json_text_skip(whole, sizeof whole - 1, 0), sizeof whole - 1);
}
END_TEST

static const struct {
    const char *text;
    const char *pieces; /* "key=value;" of each, in order */
    int end;            /* 0: closed, -1: broken */
} walks[] = {
    {"{}", "", 0},
    {"[ ]", "", 0},
    {"[1,\"a,b\" , [2, 3],{\"c\": []} ]", "=1;=\"a,b\";=[2, 3];={\"c\": []};", 0},
    {"{ \"a\" : null , \"b\\\"}\":\"\\\\\" }", "a=null;b\\\"}=\"\\\\\";", 0},
    {"{\"\": 0}", "=0;", 0},
    {"[1 2]", "=1;", -1},
    {"[1,]", "=1;", -1},
    {"[,1]", "", -1},
    {"{\"a\":1,}", "a=1;", -1},
    {"{\"a\":}", "", -1},
    {"{\"a\" 1}", "", -1},
    {"{a: 1}", "", -1},
    {"{\"a\": 1", "a=1;", -1},
    {"{\"a", "", -1},
    {"{\"a\\", "", -1},
    {"{", "", -1},
    {"[", "", -1},
    /* Each bracket is closed by its own kind. */
    {"[1}", "=1;", -1},
    {"[}", "", -1},
    {"{\"a\": 1]", "a=1;", -1},
    {"{]", "", -1},
};

START_TEST(walk_gives_every_piece)
{
    const char *text = walks[_i].text;
    struct json_walk walk = {text, strlen(text), 0, 0};
    struct json_piece piece;
    char got[256] = "";
    int more;
    while ((more = json_walk_next(&walk, &piece)) == 1) {
        ck_assert_uint_le(piece.value_end, strlen(text));
        size_t used = strlen(got);
        snprintf(got + used, sizeof got - used, "%.*s=%.*s;", (int)(piece.key_end - piece.key), text + piece.key,
                 (int)(piece.value_end - piece.value), text + piece.value);
    }
    ck_assert_str_eq(got, walks[_i].pieces);
    ck_assert_int_eq(more, walks[_i].end);
    if (more == 0)
        ck_assert_uint_eq(walk.at, strlen(text));
    else
        ck_assert_uint_le(walk.at, strlen(text));
}
END_TEST

static const struct {
    const char *before; /* the place is its end */
    int line, column;
} positions[] = {
    {"", 1, 1},
    {"abc", 1, 4},
    {"a\n", 2, 1},
    {"a\n\n b", 3, 3},
    {"a\r\nb", 2, 2},
    {"\xc3\xbc\xe2\x82\xac\xf0\x9f\x8f\xa0", 1, 4},
    {"\xc3\xbc\r\n\xc3\xbc ", 2, 3},
    {"\t\t", 1, 3},
};

START_TEST(position_counts_lines_and_code_points)
{
    char text[64];
    int line, column;
    snprintf(text, sizeof text, "%sx\nrest", positions[_i].before);
    json_text_position(text, strlen(positions[_i].before), &line, &column);
    ck_assert_int_eq(line, positions[_i].line);
    ck_assert_int_eq(column, positions[_i].column);
}
END_TEST

START_TEST(blanks_are_those_of_json)
{
    ck_assert_uint_eq(json_text_blank(" \t\r\nx", 5, 0), 4);
    ck_assert_uint_eq(json_text_blank("\fx", 2, 0), 0);
    ck_assert_uint_eq(json_text_blank("  ", 2, 1), 2);
}
END_TEST

Suite *json_text_suite(void)
{
    Suite *suite = suite_create("JSON text");
    TCase *places = tcase_create("places"), *pieces = tcase_create("pieces");

    tcase_add_loop_test(places, value_is_found, 0, sizeof finds / sizeof finds[0]);
    tcase_add_test(places, nothing_is_found_in_nothing);
    tcase_add_test(places, bytes_beyond_the_length_are_not_read);
    tcase_add_loop_test(places, position_counts_lines_and_code_points, 0, sizeof positions / sizeof positions[0]);
    suite_add_tcase(suite, places);
    tcase_add_loop_test(pieces, walk_gives_every_piece, 0, sizeof walks / sizeof walks[0]);
    tcase_add_test(pieces, blanks_are_those_of_json);
    suite_add_tcase(suite, pieces);
    return suite;
}
