#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "report/text_page.h"

#include "../suites.h"

static struct arena *arena;
static struct page *page;

static void memory_ended(void *context)
{
    (void)context;
    abort();
}

static void set_up(void)
{
    arena = arena_new(memory_ended, NULL);
    page = page_new(arena);
}

static void tear_down(void)
{
    arena_release(arena);
}

static const char *printed(int width, bool ascii, bool colour)
{
    char *written = NULL;
    size_t length = 0;
    struct text_style const style = {.width = width, .ascii = ascii, .colour = colour};
    FILE *stream = open_memstream(&written, &length);
    ck_assert_ptr_nonnull(stream);
    text_page_print(page, stream, &style);
    fclose(stream);
    const char *copy = arena_text(arena, written);
    free(written);
    return copy;
}

static void fill_page(void)
{
    static const char *const headings[] = {"room", "floor build-up as given by the plans", "Ln,w", "verdict"};
    static const bool right[] = {false, false, true, false};
    static const char *const cells[][4] = {
        {"living room", "screed 50 mm on two layers of insulation, 20 and 30 mm thick", "47.5 dB", "meets"},
        {"bath", "tiles, screed 60 mm", "101.2 dB", NULL},
    };
    page_heading(page, 1, "Impact sound of flat %d, third storey", 12);
    page_paragraph(page, "The floor stands on a slab of concrete and is %s from it by a resilient layer.",
                   "held apart");
    page_heading(page, 2, "Result");
    struct page_facts *facts = page_facts_begin(page);
    page_fact(facts, "Ln,w", "47.5 dB", "rounded half up, with the correction K of %.1f dB for the flanks", 2.0);
    page_fact(facts, "resonance frequency", "58 Hz", NULL);
    page_fact(facts, "a label that is far longer than half of the page", "1", "m\xc2\xb3");
    page_fact(facts, "note", "a value so long that it has to be carried over to more than one line of text", "and on");
    page_bullet(page, "the first point, which also runs over the end of a line in a narrow window");
    page_bullet(page, "the second");
    struct page_table *table = page_table(page, 4, headings, right);
    page_row(table, cells[0]);
    page_row(table, cells[1]);
    page_warning(page, "the stiffness %d MN/m\xc2\xb3 lies outside the published range", 130);
}

static int longest_word_of(const char *line, size_t bytes)
{
    int longest = 0;
    for (const char *word = line; word < line + bytes;) {
        size_t const span = strcspn(word, " \n");
        int const width = text_width_of(word, span);
        longest = width > longest ? width : longest;
        word += span + 1;
    }
    return longest;
}

static void assert_lines_are_sound(const char *text, int width)
{
    size_t const length = strlen(text);
    ck_assert_int_eq(text[length - 1], '\n');
    ck_assert_int_ne(text[length - 2], '\n');
    for (const char *line = text; *line;) {
        size_t const bytes = strcspn(line, "\n");
        ck_assert_msg(text_width_of(line, bytes) <= width || longest_word_of(line, bytes) > width,
                      "wider than %d: %.*s", width, (int)bytes, line);
        ck_assert_msg(bytes == 0 || line[bytes - 1] != ' ', "ends in a blank: %.*s|", (int)bytes, line);
        line += bytes + 1;
    }
}

/* _i: the width. */
START_TEST(no_line_is_too_wide)
{
    fill_page();
    assert_lines_are_sound(printed(_i, false, false), _i);
    assert_lines_are_sound(printed(_i, true, false), _i);
}
END_TEST

/* Every word of the page is there at every width. */
START_TEST(no_word_is_lost)
{
    static const char *const words[] = {"storey", "resilient", "correction", "58",       "m\xc2\xb3",   "carried",
                                        "and on", "window",    "second",     "build-up", "insulation,", "thick",
                                        "47.5",   "101.2 dB",  "verdict",    "published"};
    static const int text_widths[] = {80, 40, 20};
    fill_page();
    for (size_t i = 0; i < 3; i++)
        for (size_t j = 0; j < sizeof words / sizeof words[0]; j++)
            ck_assert_msg(strstr(printed(text_widths[i], false, false), words[j]) != NULL, "%s at %d", words[j],
                          text_widths[i]);
}
END_TEST

START_TEST(page_looks_as_drawn)
{
    static const char *const headings[] = {"room", "Ln,w"};
    static const bool right[] = {false, true};
    page_heading(page, 1, "Flat 12");
    page_heading(page, 2, "Result");
    struct page_facts *facts = page_facts_begin(page);
    page_fact(facts, "Ln,w", "47.5 dB", "limit 50 dB");
    page_fact(facts, "resonance", "58 Hz", NULL);
    struct page_table *table = page_table(page, 2, headings, right);
    page_row(table, (const char *const[]){"bath", "47.5"});
    page_row(table, (const char *const[]){"living room", "101.2"});
    page_bullet(page, "one");
    page_bullet(page, "two");
    page_warning(page, "out of range");
    ck_assert_str_eq(printed(80, true, false), "Flat 12\n"
                                               "-------\n"
                                               "\n"
                                               "Result\n"
                                               "  Ln,w       47.5 dB  limit 50 dB\n"
                                               "  resonance  58 Hz\n"
                                               "\n"
                                               "  room          Ln,w\n"
                                               "  -----------  -----\n"
                                               "  bath          47.5\n"
                                               "  living room  101.2\n"
                                               "\n"
                                               "- one\n"
                                               "- two\n"
                                               "\n"
                                               "! out of range\n");
}
END_TEST

START_TEST(narrow_table_is_stacked)
{
    static const char *const headings[] = {"room", "build-up", "level"};
    struct page_table *table = page_table(page, 3, headings, NULL);
    page_row(table, (const char *const[]){"bathroom", "insulation", "47.5 dB"});
    page_row(table, (const char *const[]){"kitchen", NULL, "50 dB"});
    ck_assert_str_eq(printed(20, false, false), "room: bathroom\n"
                                                "build-up: insulation\n"
                                                "level: 47.5 dB\n"
                                                "\n"
                                                "room: kitchen\n"
                                                "level: 50 dB\n");
}
END_TEST

START_TEST(ascii_style_has_only_ascii)
{
    fill_page();
    for (const char *c = printed(80, true, false); *c; c++)
        ck_assert(*c == '\n' || (*c >= 0x20 && *c < 0x7f));
}
END_TEST

START_TEST(colour_only_when_asked_and_closed)
{
    fill_page();
    ck_assert_ptr_null(strchr(printed(80, false, false), '\033'));
    int on = 0, off = 0;
    for (const char *c = printed(80, false, true); (c = strstr(c, "\033[")) != NULL; c += 2)
        strncmp(c, "\033[0m", 4) == 0 ? off++ : on++;
    ck_assert_int_gt(on, 0);
    ck_assert_int_eq(on, off);
}
END_TEST

START_TEST(texts_of_the_user_cannot_steer_the_terminal)
{
    char label[] = "la\x1b[2Jbel";
    struct page_facts *facts = page_facts_begin(page);
    page_fact(facts, label, "a\nb", "%s", "\xe2\x80\xae");
    label[0] = 'X'; /* the page has its own copy */
    ck_assert_str_eq(printed(80, false, false), "  la\\x1b[2Jbel  a b  \\u202e\n");
}
END_TEST

START_TEST(empty_blocks_print_nothing)
{
    static const char *const headings[] = {"room"};
    ck_assert_str_eq(printed(80, false, false), "");
    page_paragraph(page, "%s", "");
    page_facts_begin(page);
    page_table(page, 1, headings, NULL);
    ck_assert_str_eq(printed(80, false, false), "");
    page_paragraph(page, "end");
    ck_assert_str_eq(printed(80, false, false), "end\n");
}
END_TEST

START_TEST(longer_word_stands_whole)
{
    page_paragraph(page, "see https://example.org/a/rather/long/address here");
    ck_assert_str_eq(printed(20, false, false), "see\nhttps://example.org/a/rather/long/address\nhere\n");
}
END_TEST

Suite *text_page_suite(void)
{
    Suite *suite = suite_create("text_page");
    TCase *tests = tcase_create("text_page");
    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_loop_test(tests, no_line_is_too_wide, TEXT_WIDTH_LEAST, 121);
    tcase_add_test(tests, no_word_is_lost);
    tcase_add_test(tests, page_looks_as_drawn);
    tcase_add_test(tests, narrow_table_is_stacked);
    tcase_add_test(tests, ascii_style_has_only_ascii);
    tcase_add_test(tests, colour_only_when_asked_and_closed);
    tcase_add_test(tests, texts_of_the_user_cannot_steer_the_terminal);
    tcase_add_test(tests, empty_blocks_print_nothing);
    tcase_add_test(tests, longer_word_stands_whole);
    suite_add_tcase(suite, tests);
    return suite;
}
