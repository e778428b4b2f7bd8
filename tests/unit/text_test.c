#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"

#include "../suites.h"

static void memory_ended(void *context)
{
    (void)context;
    abort();
}

static const struct {
    const char *text;
    int width;
} widths[] = {
    {"", 0},
    {"screed", 6},
    {"m\xc2\xb3", 2},    /* m³ */
    {"o\xcc\x88", 1},    /* o and a combining diaeresis */
    {"\xcc\x88", 0},     /* the mark alone */
    {"\xe5\xba\x8a", 2}, /* a wide ideograph */
    {"a\xe5\xba\x8a"
     "b",
     4},                     /* among narrow letters */
    {"\xf0\x9f\x94\x8a", 2}, /* a wide sign beyond the basic plane */
    {"\xef\xbc\xa1", 2},     /* fullwidth A */
    {"\xff", 1},             /* invalid */
    {"\xe5\xba", 2},         /* cut short: each byte for itself */
    {"\xc0\x80", 2},         /* an overlong form */
    {"\xed\xa0\x80", 3},     /* a surrogate */
    {"\xe2\x80\x8b", 0},     /* zero width space */
    {"\xce\x94L", 2},        /* ΔL */
};

START_TEST(text_is_as_wide_as_the_row_says)
{
    ck_assert_int_eq(text_width(widths[_i].text), widths[_i].width);
}
END_TEST

START_TEST(head_never_splits_a_sequence)
{
    static const char text[] = "a\xc2\xb3o\xcc\x88\xe5\xba\x8a\xf0\x9f\x94\x8a\xff"
                               "b";
    size_t before = 0;
    for (int columns = 0; columns < 12; columns++) {
        size_t const bytes = text_head(text, columns);
        ck_assert_uint_ge(bytes, before);
        ck_assert_uint_le(bytes, strlen(text));
        ck_assert_int_ne((unsigned char)text[bytes] & 0xc0, 0x80);
        ck_assert_int_le(text_width_of(text, bytes), columns);
        before = bytes;
    }
    ck_assert_uint_eq(before, strlen(text));
    ck_assert_uint_eq(text_head(text, 3), 6); /* the mark stays with its letter */
    ck_assert_uint_eq(text_head(text, 4), 6); /* half of a wide sign does not fit */
}
END_TEST

START_TEST(safe_text_steers_nothing)
{
    struct arena *arena = arena_new(memory_ended, NULL);
    ck_assert_str_eq(text_safe(arena, "\x1b[31m"), "\\x1b[31m");
    ck_assert_str_eq(text_safe(arena, "a\nb\x7f"), "a\\x0ab\\x7f");
    ck_assert_str_eq(text_safe(arena, "\xe2\x80\xae"), "\\u202e");
    ck_assert_str_eq(text_safe(arena, "\xe2\x81\xa6\xc2\x9b"), "\\u2066\\u009b");
    ck_assert_str_eq(text_safe(arena, "\xff\xc3"), "\\xff\\xc3");
    ck_assert_str_eq(text_safe(arena, "20 m\xc2\xb2 \xe5\xba\x8a"), "20 m\xc2\xb2 \xe5\xba\x8a");
    for (int byte = 1; byte < 256; byte++) {
        char text[] = {(char)byte, '\0'};
        for (const char *c = text_safe(arena, text); *c; c++)
            ck_assert(*c >= 0x20 && *c < 0x7f);
    }
    arena_release(arena);
}
END_TEST

static const struct {
    const char *text, *ascii;
} spellings[] = {
    {"m\xc2\xb2 m\xc2\xb3", "m2 m3"},
    {"1 \xe2\x80\x93 2 \xe2\x80\x94", "1 - 2 -"},
    {"\xe2\x89\xa4 \xe2\x89\xa5 \xc2\xb1", "<= >= +-"},
    {"\xce\x94L", "deltaL"},
    {"\xe2\x88\x9a 20 \xc2\xb0"
     "C",
     "sqrt 20 degC"},
    {"\xc3\x96l h\xc3\xb6rt Ma\xc3\x9f", "Oel hoert Mass"},
    {"d\xc3\xa9j\xc3\xa0 \xc3\xb1 \xc3\xb8 \xc3\xa5", "deja n o a"},
    {"\xe2\x80\x9cx\xe2\x80\x9d \xe2\x80\x98y\xe2\x80\x99", "\"x\" 'y'"},
    {"\xc2\xb5 \xce\xb7 \xcf\x83 \xcf\x81", "u eta sigma rho"},
    {"o\xcc\x88", "o"},
    {"\xe5\xba\x8a \xff", "? ?"},
    {"3 \xc3\x97 4 \xc2\xb7 5", "3 x 4 * 5"},
};

START_TEST(ascii_reads_as_the_row_says)
{
    struct arena *arena = arena_new(memory_ended, NULL);
    ck_assert_str_eq(text_ascii(arena, spellings[_i].text), spellings[_i].ascii);
    arena_release(arena);
}
END_TEST

/* Also under the address sanitizer the longest spellings must find room. */
START_TEST(every_code_point_becomes_ascii)
{
    struct arena *arena = arena_new(memory_ended, NULL);
    for (unsigned code = 0x80; code < 0x3000; code++) {
        char text[4] = "";
        if (code < 0x800) {
            text[0] = (char)(0xc0 | code >> 6);
            text[1] = (char)(0x80 | (code & 0x3f));
        } else {
            text[0] = (char)(0xe0 | code >> 12);
            text[1] = (char)(0x80 | (code >> 6 & 0x3f));
            text[2] = (char)(0x80 | (code & 0x3f));
        }
        unsigned back;
        ck_assert_uint_eq(text_decode(text, &back), strlen(text));
        ck_assert_uint_eq(back, code);
        for (const char *c = text_ascii(arena, text); *c; c++)
            ck_assert(*c >= 0x20 && *c < 0x7f);
    }
    arena_release(arena);
}
END_TEST

Suite *text_suite(void)
{
    Suite *suite = suite_create("text");
    TCase *tests = tcase_create("text");
    tcase_add_loop_test(tests, text_is_as_wide_as_the_row_says, 0, (int)(sizeof widths / sizeof widths[0]));
    tcase_add_test(tests, head_never_splits_a_sequence);
    tcase_add_test(tests, safe_text_steers_nothing);
    tcase_add_loop_test(tests, ascii_reads_as_the_row_says, 0, (int)(sizeof spellings / sizeof spellings[0]));
    tcase_add_test(tests, every_code_point_becomes_ascii);
    suite_add_tcase(suite, tests);
    return suite;
}
