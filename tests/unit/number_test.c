#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "base/number.h"
#include "base/tenths.h"

#include "../suites.h"

static const struct {
    double value;
    int decimals;
    const char *fixed, *brief;
} prints[] = {
    {60.05, 1, "60.1", "60.1"},
    {-0.04, 1, "0.0", "0"},
    {-0.05, 1, "0.0", "0"},
    {-0.06, 1, "-0.1", "-0.1"},
    {0.5, 0, "1", "1"},
    {2.5, 0, "3", "3"},
    {-2.5, 0, "-2", "-2"},
    {100, 0, "100", "100"},
    {100, 2, "100.00", "100"},
    {14.5, 3, "14.500", "14.5"},
    {1.005, 2, "1.01", "1.01"},
    {0.000001, 6, "0.000001", "0.000001"},
    {1234567.125, 2, "1234567.13", "1234567.13"},
    {1e20, 1, "1e+20", "1e+20"},
    {-1e300, 6, "-1e+300", "-1e+300"},
    {INFINITY, 1, "unlimited", "unlimited"},
    {NAN, 1, "-", "-"},
};

START_TEST(number_prints_as_the_row_says)
{
    char buffer[NUMBER_TEXT];
    ck_assert_str_eq(number_fixed(prints[_i].value, prints[_i].decimals, buffer), prints[_i].fixed);
    ck_assert_str_eq(number_short(prints[_i].value, prints[_i].decimals, buffer), prints[_i].brief);
}
END_TEST

START_TEST(printed_tenth_is_the_compared_tenth)
{
    char buffer[NUMBER_TEXT], expected[NUMBER_TEXT];
    for (int hundredths = -12000; hundredths <= 12000; hundredths++) {
        double const level_dB = hundredths / 100.0;
        int const tenths = usc_tenths_from_dB(level_dB);
        snprintf(expected, sizeof expected, "%s%d.%d", tenths < 0 ? "-" : "", abs(tenths) / 10, abs(tenths) % 10);
        ck_assert_str_eq(number_fixed(level_dB, 1, buffer), expected);
    }
}
END_TEST

START_TEST(exact_number_reads_back)
{
    static const double values[] = {0, 1, -1, 0.1, 60.05, 1e-300, 1e300, 123456789, -0.0000123456789, 14.25};
    for (size_t i = 0; i < sizeof values / sizeof values[0]; i++) {
        char buffer[NUMBER_TEXT];
        double back;
        ck_assert(number_parse(number_exact(values[i], buffer), &back));
        ck_assert(back == values[i]);
    }
}
END_TEST

START_TEST(exact_number_has_no_negative_zero)
{
    char buffer[NUMBER_TEXT];
    ck_assert_str_eq(number_exact(-0.0, buffer), "0");
    ck_assert_str_eq(number_exact(1.0 / 3, buffer), "0.3333333333");
}
END_TEST

static const char *const refused[] = {"",   ".",   "-",   "1,5",   " 1",    "1 ",     "0x10", "nan",      "inf",
                                      "1e", "1e+", "--1", "1.2.3", "1e400", "-1e400", "1f",   "infinity", "1e5.0"};

START_TEST(other_text_is_no_number)
{
    double value = 77;
    ck_assert_msg(!number_parse(refused[_i], &value), "\"%s\" was read as %g", refused[_i], value);
    ck_assert(value == 77);
}
END_TEST

START_TEST(decimal_forms_are_read)
{
    static const struct {
        const char *text;
        double value;
    } forms[] = {{"45", 45}, {"-0.5", -0.5}, {"+2", 2}, {".5", 0.5}, {"5.", 5}, {"1e3", 1000}, {"2.5E-1", 0.25}};
    for (size_t i = 0; i < sizeof forms / sizeof forms[0]; i++) {
        double value;
        ck_assert(number_parse(forms[i].text, &value));
        ck_assert(value == forms[i].value);
    }
}
END_TEST

/* A locale with a decimal comma, made on the spot where none is installed. false when that cannot be done either. */
static bool use_comma_locale(char folder[])
{
    if (setlocale(LC_NUMERIC, "de_DE.UTF-8"))
        return true;
    char command[200];
    if (!mkdtemp(folder))
        return false;
    snprintf(command, sizeof command, "localedef -i de_DE -f UTF-8 %s/de_DE.UTF-8 >/dev/null 2>&1", folder);
    int const status = system(command);
    setenv("LOCPATH", folder, 1);
    return status != -1 && setlocale(LC_NUMERIC, "de_DE.UTF-8");
}

START_TEST(locale_changes_nothing)
{
    char folder[] = "number_test.XXXXXX", command[100], printed[40], buffer[NUMBER_TEXT];
    bool const comma = use_comma_locale(folder);
    if (comma) {
        snprintf(printed, sizeof printed, "%.1f", 1.5);
        ck_assert_str_eq(printed, "1,5");
    }
    double value;
    ck_assert_str_eq(number_exact(1.5, buffer), "1.5");
    ck_assert_str_eq(number_fixed(1234.5, 1, buffer), "1234.5");
    ck_assert_str_eq(number_short(2.50, 2, buffer), "2.5");
    ck_assert(number_parse("1.5", &value) && value == 1.5);
    ck_assert(!number_parse("1,5", &value));
    if (comma) { /* the caller's locale is as it was */
        snprintf(printed, sizeof printed, "%.1f", 1.5);
        ck_assert_str_eq(printed, "1,5");
    }
    snprintf(command, sizeof command, "rm -rf %s", folder);
    ck_assert_int_eq(system(command), 0);
}
END_TEST

Suite *number_suite(void)
{
    Suite *suite = suite_create("number");
    TCase *tests = tcase_create("number");
    tcase_set_timeout(tests, 60);
    tcase_add_loop_test(tests, number_prints_as_the_row_says, 0, (int)(sizeof prints / sizeof prints[0]));
    tcase_add_test(tests, printed_tenth_is_the_compared_tenth);
    tcase_add_test(tests, exact_number_reads_back);
    tcase_add_test(tests, exact_number_has_no_negative_zero);
    tcase_add_loop_test(tests, other_text_is_no_number, 0, (int)(sizeof refused / sizeof refused[0]));
    tcase_add_test(tests, decimal_forms_are_read);
    tcase_add_test(tests, locale_changes_nothing);
    suite_add_tcase(suite, tests);
    return suite;
}
