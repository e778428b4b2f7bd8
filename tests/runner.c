/* Runs every suite of suites.h. With CK_TAP_LOG_FILE_NAME=- the result is TAP on standard output; with CK_RUN_SUITE or
 * CK_RUN_CASE only the named part runs. Exit status: 0 when every test passed, 1 otherwise, also when none ran. */
#include <check.h>
#include <stdlib.h>

#include "suites.h"

int main(void)
{
    SRunner *runner = srunner_create(NULL);

#define ADD_SUITE(name) srunner_add_suite(runner, name##_suite());
    EVERY_SUITE(ADD_SUITE)
#undef ADD_SUITE

    srunner_run_all(runner, CK_ENV);
    int run = srunner_ntests_run(runner), failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return run > 0 && failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
