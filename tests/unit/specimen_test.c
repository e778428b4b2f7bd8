/* Specimens to dynamic stiffness: cases, mean and spread, layers in series, compressibility, and the table. */
#include <stdlib.h>
#include <string.h>

#include "assert_within.h"
#include "study/specimen.h"
#include "suites.h"
#include "unit/reading_fixture.h"

static struct stiffness_result result;

static const struct stiffness_options nothing_known = {NAN, NAN, NAN, {0}};

static bool study_one(double resonance_Hz, double thickness_mm, const struct stiffness_options *options)
{
    struct specimen one = {resonance_Hz, SPECIMEN_LOAD_KG_M2, thickness_mm};
    struct specimens specimens = {.at = &one, .count = 1};
    return study_stiffness(&specimens, false, options, arena, &result);
}

/* ISO 9052-1, from memory: 4 pi^2 200 30^2 = 7.106 MN/m3, 111/20 = 5.55; 80 Hz give 50.53. name NULL: s' unknown. */
static const struct {
    double resonance_Hz, thickness_mm, flow_resistivity, gas, laid;
    const char *name;
} cases[] = {
    {30, 20, 50, 5.55, 12.66, "middle"},   {30, 20, 10, 5.55, 12.66, "middle"}, {30, 20, 100, 5.55, 7.11, "airtight"},
    {30, NAN, 100, NAN, 7.11, "airtight"}, {80, 40, 5, 2.775, 50.53, "open"},   {30, 20, NAN, 5.55, NAN, NULL},
    {30, NAN, 50, NAN, NAN, NULL},         {30, NAN, 5, NAN, NAN, NULL},
};

static void assert_figure(double actual, double expected)
{
    if (isnan(expected))
        ck_assert_double_nan(actual);
    else
        assert_within(actual, expected, 0.005);
}

START_TEST(each_case_is_named)
{
    struct stiffness_options options = nothing_known;
    options.flow_resistivity_kPa_s_m2 = cases[_i].flow_resistivity;
    ck_assert(study_one(cases[_i].resonance_Hz, cases[_i].thickness_mm, &options));
    assert_figure(result.gas_MN_m3, cases[_i].gas);
    assert_figure(result.dynamic_stiffness_MN_m3, cases[_i].laid);
    ck_assert_pstr_eq(result.case_name, cases[_i].name);
    ck_assert((result.to_measure == NULL) == (cases[_i].name != NULL));
    ck_assert_ptr_null(result.spread);
}
END_TEST

/* s' is asked for as long as a tenth of s't, 5.05 at 80 Hz, is above 111/d: 21.97 mm is the edge. */
START_TEST(indeterminable_case_says_what_to_measure)
{
    struct stiffness_options options = nothing_known;
    options.flow_resistivity_kPa_s_m2 = 5;
    ck_assert(study_one(80, 22, &options));
    ck_assert(!study_one(80, 21.9, &options));
    ck_assert_ptr_nonnull(strstr(result.to_measure, "sealed edges"));
    ck_assert_ptr_null(result.case_name);
    ck_assert_double_nan(result.dynamic_stiffness_MN_m3);
    options.flow_resistivity_kPa_s_m2 = 10;
    ck_assert(study_one(80, 21.9, &options));
}
END_TEST

/* s't of 20, 30 and 40 Hz: 3.158, 7.106, 12.633; mean 7.632, deviation of a sample 4.759 (worked out by hand). */
START_TEST(mean_and_spread_of_specimens)
{
    struct specimen three[] = {{20, 200, 18}, {30, 200, 20}, {40, 200, 22}};
    struct specimens specimens = {.at = three, .count = 3};
    struct stiffness_options options = nothing_known;
    options.flow_resistivity_kPa_s_m2 = 50;
    ck_assert(study_stiffness(&specimens, true, &options, arena, &result));
    ck_assert_int_eq(result.count, 3);
    assert_within(result.load_mass_kg_m2, 200, 0);
    assert_within(result.thickness_mm, 20, 0);
    assert_within(result.apparent_MN_m3, 7.632, 0.001);
    assert_within(result.spread->standard_deviation_MN_m3, 4.759, 0.001);
    assert_within(result.spread->smallest_MN_m3, 3.158, 0.001);
    assert_within(result.spread->largest_MN_m3, 12.633, 0.001);
    assert_within(result.dynamic_stiffness_MN_m3, 7.632 + 5.55, 0.001);
    three[1].load_mass_kg_m2 = 190;
    ck_assert(study_stiffness(&specimens, true, &options, arena, &result));
    ck_assert_double_nan(result.load_mass_kg_m2);
    assert_within(result.apparent_MN_m3, (3.158 + 7.106 * 0.95 + 12.633) / 3, 0.001);
    specimens.count = 1;
    ck_assert(study_stiffness(&specimens, true, &options, arena, &result));
    ck_assert_double_nan(result.spread->standard_deviation_MN_m3);
}
END_TEST

START_TEST(layers_in_series)
{
    double others[] = {12.656, 6.328};
    struct stiffness_options options = nothing_known;
    options.flow_resistivity_kPa_s_m2 = 50;
    ck_assert(study_one(30, 20, &options));
    ck_assert_double_nan(result.in_series_MN_m3);
    options.in_series_MN_m3 = (struct numbers){others, 1};
    ck_assert(study_one(30, 20, &options));
    assert_within(result.in_series_MN_m3, 6.328, 0.001);
    options.in_series_MN_m3.count = 2;
    ck_assert(study_one(30, 20, &options));
    assert_within(result.in_series_MN_m3, 3.164, 0.001);
    options.flow_resistivity_kPa_s_m2 = NAN;
    ck_assert(study_one(30, 20, &options));
    ck_assert_double_nan(result.in_series_MN_m3);
}
END_TEST

/* Levels of EN 13163, from memory: c up to 2, 3, 4, 5 mm for 5, 4, 3, 2 kPa. */
START_TEST(compressibility_has_its_level)
{
    static const struct {
        double unloaded_mm, c_mm, load_kPa;
        const char *level;
    } rows[] = {{20, 0, 5, "CP2"}, {22, 2, 5, "CP2"}, {22.1, 2.1, 4, "CP3"},
                {24, 4, 3, "CP4"}, {25, 5, 2, "CP5"}, {25.1, 5.1, NAN, NULL}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct stiffness_options options = {NAN, rows[i].unloaded_mm, 20, {0}};
        ck_assert(study_one(30, 20, &options));
        assert_within(result.compressibility_mm, rows[i].c_mm, 1e-9);
        ck_assert_pstr_eq(result.compressibility_level, rows[i].level);
        assert_figure(result.compressibility_load_kPa, rows[i].load_kPa);
    }
    ck_assert(study_one(30, 20, &nothing_known));
    ck_assert_double_nan(result.compressibility_mm);
}
END_TEST

static bool read_text(const char *text, struct specimens *specimens)
{
    static const struct specimen otherwise = {NAN, 205, 17};
    return specimens_read(specimens, &otherwise, arena, &problems, "t.csv", text, strlen(text));
}

START_TEST(table_is_read)
{
    struct specimens specimens;
    ck_assert_msg(read_text("note;thickness_mm;resonance_Hz\nx;20,5;30\n;1;5\n;300;1000\n", &specimens), "%s",
                  problem_lines(&problems));
    ck_assert_uint_eq(specimens.count, 3);
    ck_assert(specimens.gives_thickness && !specimens.gives_load);
    assert_within(specimens.at[0].thickness_mm, 20.5, 0);
    assert_within(specimens.at[0].load_mass_kg_m2, 205, 0);
    assert_within(specimens.at[2].resonance_Hz, 1000, 0);
    ck_assert(read_text("resonance_Hz,load_mass_kg_m2\n30,180\n31,220\n", &specimens));
    ck_assert(!specimens.gives_thickness && specimens.gives_load);
    assert_within(specimens.at[1].load_mass_kg_m2, 220, 0);
    assert_within(specimens.at[1].thickness_mm, 17, 0);
}
END_TEST

static const struct {
    const char *text, *lines;
} faulty[] = {
    {"", NULL},
    {"resonance_Hz\n", "1:1 : the table has no specimen"},
    {"thickness_mm\n20\n", "1:1 : the header needs a column \"resonance_Hz\""},
    {"resonance_hz\n30\n", NULL},
    {"resonance_Hz\n4.9\n1000.1\n",
     "2:1 resonance_Hz: 4.9 is not from 5 to 1000 Hz\n3:1 resonance_Hz: 1000.1 is not from 5 to 1000 Hz"},
    {"resonance_Hz,load_mass_kg_m2\n30,179.9\n30,8\n",
     "2:4 load_mass_kg_m2: 179.9 is not from 180 to 220 kg/m2; 8 kg on 0.2 m x 0.2 m is 200\n"
     "3:4 load_mass_kg_m2: 8 is not from 180 to 220 kg/m2; 8 kg on 0.2 m x 0.2 m is 200"},
    {"resonance_Hz,thickness_mm\n30,\n", "2:4 thickness_mm: must be a number, and the cell is empty"},
    {"resonance_Hz,thickness_mm\nfast,20\n", "2:1 resonance_Hz: must be a number, not \"fast\""},
};

START_TEST(fault_has_its_place)
{
    struct specimens specimens;
    ck_assert(!read_text(faulty[_i].text, &specimens));
    ck_assert_uint_gt(problems.count[SEVERITY_ERROR], 0);
    if (faulty[_i].lines)
        ck_assert_str_eq(problem_lines(&problems), faulty[_i].lines);
}
END_TEST

Suite *specimen_suite(void)
{
    Suite *suite = suite_create("specimen");
    TCase *study = tcase_create("study"), *table = tcase_create("table");

    tcase_add_checked_fixture(study, set_up, tear_down);
    tcase_add_loop_test(study, each_case_is_named, 0, sizeof cases / sizeof cases[0]);
    tcase_add_test(study, indeterminable_case_says_what_to_measure);
    tcase_add_test(study, mean_and_spread_of_specimens);
    tcase_add_test(study, layers_in_series);
    tcase_add_test(study, compressibility_has_its_level);
    suite_add_tcase(suite, study);
    tcase_add_checked_fixture(table, set_up, tear_down);
    tcase_add_test(table, table_is_read);
    tcase_add_loop_test(table, fault_has_its_place, 0, sizeof faulty / sizeof faulty[0]);
    suite_add_tcase(suite, table);
    return suite;
}
