#include <jansson.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "report/json_out.h"

#include "../suites.h"

static struct json_out out;
static FILE *stream;
static char *written;
static size_t length;

static void set_up(void)
{
    stream = open_memstream(&written, &length);
    ck_assert_ptr_nonnull(stream);
    json_open(&out, stream);
}

static void tear_down(void)
{
    fclose(stream);
    free(written);
}

static json_t *read_back(void)
{
    json_error_t error;
    json_close(&out);
    fflush(stream);
    json_t *document = json_loadb(written, length, JSON_DECODE_ANY, &error);
    ck_assert_msg(document != NULL, "%s in\n%s", error.text, written);
    return document;
}

START_TEST(layout_is_indented_by_two)
{
    static const double levels[] = {60.05, -0.0, NAN, 1e-7};
    json_object_begin(&out, NULL);
    json_text(&out, "format", "sample/1");
    json_answer(&out, "meets", ANSWER_NONE);
    json_numbers(&out, "levels", levels, 4);
    json_object_begin(&out, "inner");
    json_flag(&out, "heated", true);
    json_whole(&out, "count", -3);
    json_object_end(&out);
    json_array_begin(&out, "names");
    json_text(&out, NULL, "a");
    json_absent(&out, NULL);
    json_array_end(&out);
    json_array_begin(&out, "none");
    json_array_end(&out);
    json_number(&out, "absent", NAN);
    json_object_end(&out);
    json_close(&out);
    fflush(stream);
    ck_assert_str_eq(written, "{\n"
                              "  \"format\": \"sample/1\",\n"
                              "  \"meets\": null,\n"
                              "  \"levels\": [60.05, 0, null, 1e-07],\n"
                              "  \"inner\": {\n"
                              "    \"heated\": true,\n"
                              "    \"count\": -3\n"
                              "  },\n"
                              "  \"names\": [\n"
                              "    \"a\",\n"
                              "    null\n"
                              "  ],\n"
                              "  \"none\": [],\n"
                              "  \"absent\": null\n"
                              "}\n");
}
END_TEST

START_TEST(every_single_byte_sign_reads_back)
{
    char text[128];
    for (int i = 0; i < 127; i++)
        text[i] = (char)(i + 1);
    text[127] = '\0';
    json_text(&out, NULL, text);
    json_t *document = read_back();
    ck_assert_str_eq(json_string_value(document), text);
    json_decref(document);
    for (size_t i = 0; i + 1 < length; i++) /* all but the line feed at the end */
        ck_assert_msg(written[i] >= 0x20 && written[i] < 0x7f, "byte %d is raw", written[i]);
}
END_TEST

START_TEST(bytes_that_are_not_utf8_are_replaced)
{
    json_text(&out, NULL, "a\xff\xc3 m\xc2\xb3 \xed\xa0\x80");
    json_t *document = read_back();
    ck_assert_str_eq(json_string_value(document), "a\xef\xbf\xbd\xef\xbf\xbd m\xc2\xb3 "
                                                  "\xef\xbf\xbd\xef\xbf\xbd\xef\xbf\xbd");
    json_decref(document);
}
END_TEST

struct layer {
    const char *name;
    double thickness_mm;
};
struct floor {
    int storey, kind;
    bool heated;
    enum answer meets;
    struct numbers levels;
    struct texts remarks;
    struct layer *screed, *cover;
    struct objects layers;
};

static const struct field layer_fields[] = {
    TEXT_FIELD(layer, name, true, "name"),
    POSITIVE_FIELD(layer, thickness_mm, "mm", 200, NONE, "thickness"),
};
static const struct record layer_record = RECORD("layer", layer, layer_fields);
static const char *const kinds[] = {"CT", "CA", NULL};
static const struct field floor_fields[] = {
    INTEGER_FIELD(floor, storey, -5, 50, NONE, "storey"),
    CHOICE_FIELD(floor, kind, kinds, NONE, false, "kind"),
    FLAG_FIELD(floor, heated, 0, "heated"),
    ANSWER_FIELD(floor, meets, "meets"),
    NUMBERS_FIELD(floor, levels, "dB", 0, 100, "levels"),
    TEXTS_FIELD(floor, remarks, "remarks"),
    OBJECT_FIELD(floor, screed, &layer_record, false, "screed"),
    OBJECT_FIELD(floor, cover, &layer_record, false, "cover"),
    OBJECTS_FIELD(floor, layers, &layer_record, false, "layers"),
};
static const struct record floor_record = RECORD("floor", floor, floor_fields);

START_TEST(record_writes_what_its_table_names)
{
    double levels[] = {60.5, NAN};
    const char *remarks[] = {"dry", "level"};
    struct layer layers[] = {{"felt", 3}, {"board", 20.5}}, screed = {"screed", NAN};
    struct floor const floor = {.storey = 2,
                                .kind = 1,
                                .heated = true,
                                .meets = ANSWER_NO,
                                .levels = {levels, 2},
                                .remarks = {remarks, 2},
                                .screed = &screed,
                                .layers = {layers, 2}};
    json_record(&out, NULL, &floor_record, &floor);
    json_t *document = read_back();
    json_t *expected = json_pack("{s:i, s:s, s:b, s:b, s:[f,n], s:[s,s], s:{s:s,s:n}, s:n, s:[{s:s,s:i},{s:s,s:f}]}",
                                 "storey", 2, "kind", "CA", "heated", 1, "meets", 0, "levels", 60.5, "remarks", "dry",
                                 "level", "screed", "name", "screed", "thickness_mm", "cover", "layers", "name", "felt",
                                 "thickness_mm", 3, "name", "board", "thickness_mm", 20.5);
    ck_assert_ptr_nonnull(expected);
    ck_assert_msg(json_equal(document, expected), "%s", written);
    json_decref(expected);
    json_decref(document);
}
END_TEST

START_TEST(absent_values_keep_their_keys)
{
    struct floor floor;
    record_defaults(&floor_record, &floor);
    json_record(&out, NULL, &floor_record, &floor);
    json_t *document = read_back();
    ck_assert_uint_eq(json_object_size(document), floor_record.field_count);
    ck_assert(json_is_null(json_object_get(document, "kind")));
    ck_assert(json_is_null(json_object_get(document, "meets")));
    ck_assert(json_is_null(json_object_get(document, "screed")));
    ck_assert(json_is_array(json_object_get(document, "layers")));
    json_decref(document);
}
END_TEST

START_TEST(nesting_reaches_the_limit)
{
    for (int i = 0; i < JSON_DEPTH; i++)
        json_array_begin(&out, NULL);
    for (int i = 0; i < JSON_DEPTH; i++)
        json_array_end(&out);
    json_decref(read_back());
}
END_TEST

Suite *json_out_suite(void)
{
    Suite *suite = suite_create("json_out");
    TCase *tests = tcase_create("json_out");
    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, layout_is_indented_by_two);
    tcase_add_test(tests, every_single_byte_sign_reads_back);
    tcase_add_test(tests, bytes_that_are_not_utf8_are_replaced);
    tcase_add_test(tests, record_writes_what_its_table_names);
    tcase_add_test(tests, absent_values_keep_their_keys);
    tcase_add_test(tests, nesting_reaches_the_limit);
    suite_add_tcase(suite, tests);
    return suite;
}
