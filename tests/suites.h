/* The suites of the unit tests and of the published cases. Each is defined in the file of its name,
 * tests/unit/NAME_test.c or tests/published/NAME_test.c, as Suite *NAME_suite(void). */
#ifndef USC_TESTS_SUITES_H
#define USC_TESTS_SUITES_H

#include <check.h>

/* suite(NAME) for each. */
#define EVERY_SUITE(suite) \
    suite(formula) suite(rating) suite(octave_rating) suite(impact_class) suite(sound_level) suite(reference_floor) \
    suite(floating_floor) suite(thickness_rule) suite(acoustics) \
    suite(arena) suite(number) suite(text) suite(file) suite(problem) suite(json_out) suite(text_page) \
    suite(csv) suite(measurements) suite(specimen) \
    suite(data) suite(json_text) suite(project_read) \
    suite(compare) suite(predict) suite(design) suite(measured) suite(measurement_plan)

#define DECLARE_SUITE(name) Suite *name##_suite(void);
EVERY_SUITE(DECLARE_SUITE)
#undef DECLARE_SUITE

#endif
