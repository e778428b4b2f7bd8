#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>

#include "project/measurements.h"

#include "../suites.h"
#include "reading_fixture.h"

/* Rated third octaves but for the last one, so that a row may add that; 16 lines with the header. */
#define TO_2500                                                                                                        \
    "100;60\n125;61\n160;62\n200;63\n250;64\n315;65\n400;66\n500;67\n630;68\n800;69\n1000;70\n1250;71\n1600;72\n"      \
    "2000;73\n2500;74\n"
#define RATED TO_2500 "3150;75\n"
#define OCTAVES "125;60\n250;61\n500;62\n1000;63\n2000;64\n"

static bool read_text(const char *text, struct measurement *measurement)
{
    return measurement_read(measurement, arena, &problems, "t.csv", text, strlen(text));
}

static const struct {
    const char *text;
    enum measured_quantity quantity;
    bool octave;
    int bands, band;
    double value_dB; /* of band */
} spectra[] = {
    {"frequency_Hz;Ln_dB\n" RATED, MEASURED_LN, false, 16, 18, 75},
    {"frequency_Hz;level_dB\n" RATED, MEASURED_LN, false, 16, 3, 60},
    {"frequency_Hz;L_prime_n_dB\n" RATED, MEASURED_L_PRIME_N, false, 16, 10, 67},
    {"frequency_Hz;L_prime_nT_dB\n5000;1,5\n" RATED, MEASURED_L_PRIME_NT, false, 17, 20, 1.5},
    {"frequency_Hz;delta_L_dB\n" RATED "50;-50\n63;100\n80;-0.5\n4000;0\n5000;0\n", MEASURED_DELTA_L, false, 21, 1,
     100},
    {"frequency_Hz;delta_L_dB\n" RATED "80;-50\n", MEASURED_DELTA_L, false, 17, 2, -50},
    {"frequency_Hz;Ln_dB\n" RATED "50;-20\n", MEASURED_LN, false, 17, 0, -20},
    {"frequency_Hz;Ln_dB\n" RATED "50;150\n", MEASURED_LN, false, 17, 0, 150},
    {"frequency_Hz;Ln_dB\n" OCTAVES, MEASURED_LN, true, 5, 16, 64},
    {"frequency_Hz;Ln_dB\n4000;50\n63;55\n" OCTAVES, MEASURED_LN, true, 7, 1, 55},
    {"frequency_Hz;note;Ln_dB\n125;x;60\n250;;61\n500;;62\n1e3;;63\n2000.0;;64\n", MEASURED_LN, true, 5, 13, 63},
    {"Ln_dB,frequency_Hz\n60,125\n61,250\n62,500\n63,1000\n64.25,2000\n", MEASURED_LN, true, 5, 16, 64.25},
};

START_TEST(spectrum_is_read)
{
    struct measurement measurement;
    int bands = 0;
    ck_assert_msg(read_text(spectra[_i].text, &measurement), "%s", problem_lines(&problems));
    for (int i = 0; i < USC_BANDS; i++)
        bands += measurement.has[i];
    ck_assert_int_eq(measurement.quantity, spectra[_i].quantity);
    ck_assert_int_eq(measurement.octave, spectra[_i].octave);
    ck_assert_int_eq(bands, spectra[_i].bands);
    ck_assert(measurement.has[spectra[_i].band]);
    ck_assert(measurement.value_dB[spectra[_i].band] == spectra[_i].value_dB);
    ck_assert_str_eq(problem_lines(&problems), "");
}
END_TEST

#define NEEDS_ONE "the header needs one of the columns Ln_dB, L_prime_n_dB, L_prime_nT_dB, level_dB and delta_L_dB"
#define OCTAVE_HINT "; a table of octaves has 125, 250, 500, 1000 and 2000 Hz and may have 63 and 4000"
#define NOMINAL "is no nominal frequency of a third octave from 50 to 5000 Hz; the nearest is"

static const struct {
    const char *text, *problems;
} faults[] = {
    {"", "1:1 : the table is empty: it needs a header that names the columns"},
    {"frequency_Hz;Ln_dB\n", "1:1 frequency_Hz: no band was read"},
    {"frequency;Ln_dB\n", "1:1 frequency: is no known column of a spectrum; did you mean \"frequency_Hz\"?"},
    {"Ln_dB\n", "1:1 : the header needs a column \"frequency_Hz\""},
    {"frequency_Hz\n", "1:1 : " NEEDS_ONE},
    {"# x\nnote\n", "2:1 : the header needs a column \"frequency_Hz\"\n2:1 : " NEEDS_ONE},
    {"frequency_Hz;L_prim_n_dB\n",
     "1:14 L_prim_n_dB: is no known column of a spectrum; did you mean \"L_prime_n_dB\"?"},
    {"frequency_Hz;Ln_dB;colour\n" RATED, "1:20 colour: is no known column of a spectrum"},
    {"frequency_Hz;Ln_dB;level_dB\n", "1:20 level_dB: a spectrum has one column of levels, and \"Ln_dB\" is there "
                                      "already"},
    {"frequency_Hz;delta_L_dB;L_prime_n_dB\n", "1:25 L_prime_n_dB: a spectrum has one column of levels, and "
                                               "\"delta_L_dB\" is there already"},
    {"frequency_Hz;Ln_dB\n" TO_2500,
     "1:1 frequency_Hz: lacks the third octave 3150 Hz, which the rating needs" OCTAVE_HINT},
    {"Ln_dB;frequency_Hz\n60;100\n",
     "1:7 frequency_Hz: lacks the third octaves 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, "
     "2500 and 3150 Hz, which the rating needs" OCTAVE_HINT},
    {"frequency_Hz;Ln_dB\n63;60\n250;61\n500;62\n1000;63\n4000;64\n",
     "1:1 frequency_Hz: lacks the octaves 125 and 2000 Hz, which the rating needs"},
    {"frequency_Hz;Ln_dB\n" RATED "  500;60\n",
     "18:3 frequency_Hz: the band 500 Hz stands twice; it stands first on line 9"},
    {"frequency_Hz;Ln_dB\n" RATED "300;60\n", "18:1 frequency_Hz: 300 " NOMINAL " 315 Hz"},
    {"frequency_Hz;Ln_dB\n" RATED "8000;60\n", "18:1 frequency_Hz: 8000 " NOMINAL " 5000 Hz"},
    {"frequency_Hz;Ln_dB\n" RATED "-1;60\n0;60\n31,5;x\n",
     "18:1 frequency_Hz: -1 " NOMINAL " 50 Hz\n19:1 frequency_Hz: 0 " NOMINAL " 50 Hz\n20:1 frequency_Hz: 31,5 " NOMINAL
     " 50 Hz\n20:6 Ln_dB: must be a number, not \"x\""},
    {"frequency_Hz;Ln_dB\n" TO_2500 "3150;300\n", "17:6 Ln_dB: 300 is not from -20 to 150 dB"},
    {"frequency_Hz;Ln_dB\n" TO_2500 "3150;150,1\n", "17:6 Ln_dB: 150,1 is not from -20 to 150 dB"},
    {"frequency_Hz;Ln_dB\n" TO_2500 "3150;-20.1\n", "17:6 Ln_dB: -20.1 is not from -20 to 150 dB"},
    {"frequency_Hz;delta_L_dB\n" TO_2500 "3150;-50.1\n", "17:6 delta_L_dB: -50.1 is not from -50 to 100 dB"},
    {"frequency_Hz;delta_L_dB\n" TO_2500 "3150;100.1\n", "17:6 delta_L_dB: 100.1 is not from -50 to 100 dB"},
    {"frequency_Hz;Ln_dB\n" TO_2500 "3150;loud\n", "17:6 Ln_dB: must be a number, not \"loud\""},
    {"frequency_Hz;Ln_dB\n" TO_2500 "3150; \n", "17:7 Ln_dB: must be a number, and the cell is empty"},
    {"frequency_Hz;Ln_dB\n" RATED "\"5\n",
     "18:1 : the quote is not closed on its line; a quote inside quotes is doubled"},
    {"frequency_Hz;Ln_dB\n" TO_2500 "low;300\n3150\n",
     "17:1 frequency_Hz: must be a number, not \"low\"\n17:5 Ln_dB: 300 is not from -20 to 150 dB\n"
     "18:1 : the row has 1 of the 2 cells of the header\n"
     "1:1 frequency_Hz: lacks the third octave 3150 Hz, which the rating needs" OCTAVE_HINT},
};

START_TEST(spectrum_fault_is_named_with_its_place)
{
    struct measurement measurement;
    ck_assert(!read_text(faults[_i].text, &measurement));
    ck_assert_str_eq(problem_lines(&problems), faults[_i].problems);
    ck_assert_str_eq(problems.first->place.file, "t.csv");
}
END_TEST

/* Raw readings */

static bool read_raw(const char *text, struct raw_measurement *raw)
{
    return raw_measurement_read(raw, arena, &problems, "t.csv", text, strlen(text));
}

START_TEST(raw_readings_are_gathered_by_band)
{
    struct raw_measurement raw;
    const char *text = "frequency_Hz;position;level_dB;background_dB;reverberation_time_s;corner_dB\n"
                       "125;A;60;30;0,5;\n125;B;62,5;;0,7;\n250;A;61;;0,6;\n500;A;62;;0,6;\n1000;A;63;;0,6;\n"
                       "2000;A;64;20;0,6;\n125;;;31;;\n63;A;70;;1;\n63;;;;;75\n63;;;;;76,5\n";
    ck_assert_msg(read_raw(text, &raw), "%s", problem_lines(&problems));
    ck_assert(raw.octave && raw.has_background && raw.has_reverberation_time && raw.has_corner);
    ck_assert(raw.has[1] && !raw.has[0] && !raw.has[19]);
    const struct raw_band *band = &raw.band[4];
    ck_assert_uint_eq(band->level_dB.count, 2);
    ck_assert(band->level_dB.value[0] == 60 && band->level_dB.value[1] == 62.5);
    ck_assert_str_eq(band->position[0], "A");
    ck_assert_str_eq(band->position[1], "B");
    ck_assert_uint_eq(band->background_dB.count, 2);
    ck_assert(band->background_dB.value[1] == 31);
    ck_assert_uint_eq(band->reverberation_time_s.count, 2);
    ck_assert(band->reverberation_time_s.value[1] == 0.7);
    ck_assert_uint_eq(band->corner_dB.count, 0);
    ck_assert_uint_eq(raw.band[1].corner_dB.count, 2);
    ck_assert(raw.band[1].corner_dB.value[1] == 76.5);
}
END_TEST

START_TEST(raw_positions_may_go_without_names)
{
    struct raw_measurement raw;
    ck_assert_msg(read_raw("frequency_Hz;level_dB\n" RATED RATED "3150;80\n", &raw), "%s", problem_lines(&problems));
    ck_assert(!raw.octave && !raw.has_background && !raw.has_reverberation_time && !raw.has_corner);
    ck_assert_uint_eq(raw.band[3].level_dB.count, 2);
    ck_assert_uint_eq(raw.band[18].level_dB.count, 3);
    ck_assert(raw.band[18].level_dB.value[2] == 80);
    ck_assert_ptr_null(raw.band[18].position);
}
END_TEST

#define RAW_OCTAVES "125;A;60\n250;A;61\n500;A;62\n1000;A;63\n2000;A;64\n"
#define TIMED "125;60;1\n250;61;1\n500;62;1\n1000;63;1\n"

static const struct {
    const char *text, *problems;
} raw_faults[] = {
    {"", "1:1 : the table is empty: it needs a header that names the columns"},
    {"frequency_Hz;levl_dB;position\n",
     "1:14 levl_dB: is no known column of a table of field readings; did you mean \"level_dB\"?"},
    {"position\n", "1:1 : the header needs a column \"frequency_Hz\"\n1:1 : the header needs a column \"level_dB\""},
    {"frequency_Hz;position;level_dB\n" RAW_OCTAVES "125;B;61\n125;A;61\n",
     "8:5 position: the position \"A\" stands twice at 125 Hz; it stands first on line 2"},
    {"frequency_Hz;position;level_dB\n" RAW_OCTAVES "125;;61\n",
     "7:5 position: a level needs its position, and the cell is empty"},
    {"frequency_Hz;position;level_dB\n" RAW_OCTAVES "125;B;\n", "7:7 level_dB: the row has no reading"},
    {"frequency_Hz;level_dB;background_dB\n125;60;\n250;61;\n500;62;-21\n1000;151;\n",
     "4:8 background_dB: -21 is not from -20 to 150 dB\n5:6 level_dB: 151 is not from -20 to 150 dB\n"
     "1:1 frequency_Hz: lacks the octave 2000 Hz, which the rating needs"},
    {"frequency_Hz;level_dB;reverberation_time_s\n" TIMED "2000;60;0\n",
     "6:9 reverberation_time_s: 0 is not from 0.01 to 60 s"},
    {"frequency_Hz;level_dB;reverberation_time_s\n" TIMED "2000;60;60.5\n",
     "6:9 reverberation_time_s: 60.5 is not from 0.01 to 60 s"},
    {"frequency_Hz;level_dB;reverberation_time_s\n" TIMED "2000;60;\n",
     "1:23 reverberation_time_s: lacks a value at 2000 Hz; give it in one row of each band, or leave the column out"},
    {"frequency_Hz;level_dB;corner_dB\n" TIMED "2000;60;x\n", "6:9 corner_dB: must be a number, not \"x\""},
    {"frequency_Hz;level_dB\n" OCTAVES "60;x\n", "7:1 frequency_Hz: 60 " NOMINAL " 63 Hz\n"
                                                 "7:4 level_dB: must be a number, not \"x\""},
};

START_TEST(raw_fault_is_named_with_its_place)
{
    struct raw_measurement raw;
    ck_assert(!read_raw(raw_faults[_i].text, &raw));
    ck_assert_str_eq(problem_lines(&problems), raw_faults[_i].problems);
}
END_TEST

START_TEST(raw_readings_of_a_band_have_a_limit)
{
    struct raw_measurement raw;
    char text[20000] = "frequency_Hz;level_dB\n" OCTAVES;
    char *end = text + strlen(text);
    for (int i = 1; i < RAW_READINGS_MOST; i++, end += 7)
        memcpy(end, "125;60\n", 8);
    ck_assert(read_raw(text, &raw));
    ck_assert_uint_eq(raw.band[4].level_dB.count, RAW_READINGS_MOST);
    memcpy(end, "125;60\n", 8);
    ck_assert(!read_raw(text, &raw));
    ck_assert_str_eq(problem_lines(&problems), "1006:5 level_dB: a band has at most 1000 readings");
}
END_TEST

/* Many spectra */

/* What came: ids in a row with the level at 125 Hz. */
struct heard {
    const char *text;
    int count, most;
};

static bool hear(void *context, const char *id, const struct measurement *measurement)
{
    struct heard *heard = context;
    heard->text = arena_printf(arena, "%s[%s %g%s]", heard->text, id, measurement->value_dB[4],
                               measurement->octave ? " octave" : "");
    return ++heard->count < heard->most;
}

#define OF(ID) "125," ID ",60\n250," ID ",61\n500," ID ",62\n1000," ID ",63\n2000," ID ",64\n"
#define LIST "frequency_Hz,spectrum,Ln_dB\n"

static const struct {
    const char *text, *heard, *problems;
    int most;
} lists[] = {
    {LIST OF("a") OF("b c") OF("a"), "[a 60 octave][b c 60 octave][a 60 octave]", "", 99},
    {LIST OF("a") OF("b") OF("c"), "[a 60 octave][b 60 octave]", "", 2},
    {LIST OF("a") "125,b,60\n" OF("c"), "[a 60 octave][c 60 octave]",
     "7:5 spectrum: lacks the octaves 250, 500, 1000 and 2000 Hz, which the rating needs", 99},
    {LIST OF("a") "63,a,300\n" OF("b"), "[b 60 octave]", "7:6 Ln_dB: 300 is not from -20 to 150 dB", 99},
    {LIST OF("a") OF("b") "125,b,60\n", "[a 60 octave]",
     "12:1 frequency_Hz: the band 125 Hz stands twice; it stands first on line 7", 99},
    {LIST OF(""), "", "2:5 spectrum: must name the spectrum, and the cell is empty", 99},
    {LIST, "", "1:14 spectrum: no spectrum was read", 99},
    {"frequency_Hz,Ln_dB\n", "", "1:1 : the header needs a column \"spectrum\"", 99},
};

START_TEST(spectra_come_one_by_one)
{
    struct heard heard = {.text = "", .most = lists[_i].most};
    char *text = strdup(lists[_i].text);
    FILE *stream = fmemopen(text, strlen(text), "rb");
    int read_error;
    bool const fit = spectra_read(arena, &problems, "t.csv", stream, hear, &heard, &read_error);
    ck_assert_str_eq(heard.text, lists[_i].heard);
    ck_assert_str_eq(problem_lines(&problems), lists[_i].problems);
    ck_assert(fit == (lists[_i].problems[0] == '\0'));
    ck_assert_int_eq(read_error, 0);
    fclose(stream);
    free(text);
}
END_TEST

START_TEST(failed_stream_is_told)
{
    struct heard heard = {.text = "", .most = 99};
    int read_error;
    FILE *stream = fopen(".", "rb"); /* a folder opens and cannot be read */
    ck_assert(!spectra_read(arena, &problems, "t.csv", stream, hear, &heard, &read_error));
    ck_assert_int_ne(read_error, 0);
    ck_assert_str_eq(problem_lines(&problems), "");
    fclose(stream);
}
END_TEST

static bool count_only(void *context, const char *id, const struct measurement *measurement)
{
    (void)id;
    *(int *)context += measurement->has[USC_FIRST_RATED];
    return true;
}

START_TEST(a_million_readings_take_no_more_memory_than_a_few)
{
    enum { SPECTRA = 62500 }; /* of 16 readings */
    FILE *stream = tmpfile();
    int count = 0, read_error;
    struct rusage before, after;
    ck_assert_ptr_nonnull(stream);
    fputs("spectrum;frequency_Hz;Ln_dB\n", stream);
    for (int s = 0; s < SPECTRA; s++)
        for (int i = USC_FIRST_RATED; i < USC_FIRST_RATED + USC_RATED_BANDS; i++)
            fprintf(stream, "s%d;%.0f;6%d,5\n", s, usc_band_Hz[i], i % 10);
    rewind(stream);
    getrusage(RUSAGE_SELF, &before);
    ck_assert(spectra_read(arena, &problems, "t.csv", stream, count_only, &count, &read_error));
    getrusage(RUSAGE_SELF, &after);
    ck_assert_int_eq(count, SPECTRA);
    ck_assert_int_lt(after.ru_maxrss - before.ru_maxrss, 2048); /* KiB; a byte a reading would already be half of it */
    fclose(stream);
}
END_TEST

START_TEST(table_is_known_by_its_header)
{
    static const struct {
        const char *text;
        enum measurement_table table;
    } tables[] = {{"frequency_Hz,Ln_dB\n", TABLE_SPECTRUM},
                  {"frequency_Hz,level_dB\n", TABLE_SPECTRUM},
                  {"frequency_Hz,background_dB", TABLE_RAW},
                  {"position;level_dB\n", TABLE_RAW},
                  {"corner_dB", TABLE_RAW},
                  {"reverberation_time_s", TABLE_RAW},
                  {"position,spectrum,Ln_dB", TABLE_SPECTRA},
                  {"", TABLE_SPECTRUM}};
    for (size_t i = 0; i < sizeof tables / sizeof tables[0]; i++)
        ck_assert_int_eq(measurement_table_of(arena, tables[i].text, strlen(tables[i].text)), tables[i].table);
}
END_TEST

#define ROWS(ARRAY) (int)(sizeof(ARRAY) / sizeof(ARRAY)[0])

Suite *measurements_suite(void)
{
    Suite *suite = suite_create("measurements");
    TCase *tests = tcase_create("measurements");
    tcase_set_timeout(tests, 60);
    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_loop_test(tests, spectrum_is_read, 0, ROWS(spectra));
    tcase_add_loop_test(tests, spectrum_fault_is_named_with_its_place, 0, ROWS(faults));
    tcase_add_test(tests, raw_readings_are_gathered_by_band);
    tcase_add_test(tests, raw_positions_may_go_without_names);
    tcase_add_loop_test(tests, raw_fault_is_named_with_its_place, 0, ROWS(raw_faults));
    tcase_add_test(tests, raw_readings_of_a_band_have_a_limit);
    tcase_add_loop_test(tests, spectra_come_one_by_one, 0, ROWS(lists));
    tcase_add_test(tests, failed_stream_is_told);
    tcase_add_test(tests, a_million_readings_take_no_more_memory_than_a_few);
    tcase_add_test(tests, table_is_known_by_its_header);
    suite_add_tcase(suite, tests);
    return suite;
}
