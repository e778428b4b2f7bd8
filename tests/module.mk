# A new test is one line in one of these lists; a new file *_test.c also names its suite in tests/suites.h.

unit_tests = \
	tests/unit/compare_test.c \
	tests/unit/predict_test.c \
	tests/unit/design_test.c \
	tests/unit/study_fixture.h \
	tests/unit/expression.c \
	tests/unit/expression.h \
	tests/unit/random_numbers.h \
	tests/unit/formula_test.c \
	tests/unit/rating_test.c \
	tests/unit/octave_rating_test.c \
	tests/unit/impact_class_test.c \
	tests/unit/reference_floor_test.c \
	tests/unit/sound_level_test.c \
	tests/unit/floating_floor_test.c \
	tests/unit/thickness_rule_test.c \
	tests/unit/arena_test.c \
	tests/unit/csv_test.c \
	tests/unit/measurements_test.c \
	tests/unit/measured_test.c \
	tests/unit/measurement_plan_test.c \
	tests/unit/problem_lines.h \
	tests/unit/reading_fixture.h \
	tests/unit/number_test.c \
	tests/unit/text_test.c \
	tests/unit/file_test.c \
	tests/unit/problem_test.c \
	tests/unit/json_out_test.c \
	tests/unit/json_text_test.c \
	tests/unit/project_fixture.h \
	tests/unit/project_read_test.c \
	tests/unit/specimen_test.c \
	tests/unit/text_page_test.c

published_tests = \
	tests/published/acoustics_test.c \
	tests/published/data_test.c \
	tests/published/table.c \
	tests/published/table.h

command_tests = \
	tests/commands/contract.test \
	tests/commands/hostile.test \
	tests/faults/faults.test \
	tests/commands/rate.test \
	tests/commands/compare.test \
	tests/commands/stiffness.test \
	tests/commands/dist.test

cross_tests = \
	tests/cross/results.py \
	tests/cross/examples.py \
	tests/cross/manuals.py \
	tests/cross/schema.py \
	tests/cross/second_opinion.py

# Everything a test reads, and what it shares with others.
test_files = \
	tests/published/design_table.csv \
	tests/published/dynamic_stiffness.csv \
	tests/published/flanking_table.csv \
	tests/published/formula_values.csv \
	tests/published/limits.csv \
	tests/published/practice.csv \
	tests/published/ratings.csv \
	tests/published/thickness_din_18560_2.csv \
	tests/cross/run

include $(top_srcdir)/tests/hostile/module.mk

# Preloaded into the program by faults.test; -rpath makes libtool build a shared object though it is never installed.
check_LTLIBRARIES = tests/faults/fault.la
tests_faults_fault_la_SOURCES = tests/faults/fault.c
tests_faults_fault_la_CFLAGS = $(AM_CFLAGS) -fno-builtin
tests_faults_fault_la_LDFLAGS = $(AM_LDFLAGS) -module -avoid-version -rpath /nowhere
tests_faults_fault_la_LIBADD = -ldl

# Needs the installed face of the library only, so it links the shared library and nothing of the house.
tests_library_SOURCES = tests/library.c
tests_library_LDADD = libunderscreed.la

tests_units_SOURCES = tests/runner.c tests/suites.h tests/assert_within.h $(unit_tests) $(published_tests)
tests_units_CPPFLAGS = $(AM_CPPFLAGS) -I$(top_srcdir)/tests
tests_units_CFLAGS = $(AM_CFLAGS) $(CHECK_CFLAGS)
tests_units_LDADD = src/libhouse.la $(CHECK_LIBS)
tests_units_LDFLAGS = $(AM_LDFLAGS) $(OPENMP_CFLAGS)

check_PROGRAMS += tests/library
TESTS += tests/library
if HAVE_CHECK
check_PROGRAMS += tests/units
TESTS += tests/units
else
check_SCRIPTS += tests/check-is-missing
endif
TESTS += $(command_tests) $(cross_tests)
EXTRA_DIST += $(command_tests) $(cross_tests) $(test_files) $(hostile_files)

.PHONY: tests/check-is-missing
tests/check-is-missing:
	@echo 'make check needs the Check library (https://libcheck.github.io/check/);' >&2
	@echo '"./bootstrap --for-tests" installs it and configures again.' >&2
	@exit 1

# Every test speaks TAP. An ending chooses who runs it: none is a program, .test the shell, .py a Python.
TEST_EXTENSIONS = .test .py
tap_driver = env AM_TAP_AWK='$(AWK)' $(SHELL) $(top_srcdir)/build-aux/tap-driver.sh
LOG_DRIVER = $(tap_driver)
TEST_LOG_DRIVER = $(tap_driver)
PY_LOG_DRIVER = $(tap_driver)
TEST_LOG_COMPILER = $(SHELL)
PY_LOG_COMPILER = $(SHELL) $(top_srcdir)/tests/cross/run

AM_TESTS_ENVIRONMENT = \
	LC_ALL=C; export LC_ALL; \
	TZ=UTC; export TZ; \
	unset NO_COLOR COLUMNS SOURCE_DATE_EPOCH; \
	CK_TAP_LOG_FILE_NAME=-; export CK_TAP_LOG_FILE_NAME; \
	CK_VERBOSITY=silent; export CK_VERBOSITY; \
	USC_TOP='$(abs_top_srcdir)'; export USC_TOP; \
	USC_BUILD='$(abs_top_builddir)'; export USC_BUILD; \
	USC_TESTS_DIR='$(abs_top_srcdir)/tests'; export USC_TESTS_DIR; \
	UNDERSCREED='$(abs_top_builddir)/underscreed$(EXEEXT)'; export UNDERSCREED; \
	PYTHON_FOR_TESTS='$(PYTHON_FOR_TESTS)'; export PYTHON_FOR_TESTS; \
	MAKE='$(MAKE)'; export MAKE;

# Measured on request, never a test.
EXTRA_PROGRAMS += tests/bench/bench
CLEANFILES += tests/bench/bench$(EXEEXT)
tests_bench_bench_SOURCES = tests/bench/bench.c tests/bench/benches.h tests/bench/rating_bench.c \
	tests/bench/design_bench.c
tests_bench_bench_CPPFLAGS = $(AM_CPPFLAGS) -I$(top_srcdir)/tests
tests_bench_bench_LDADD = src/libhouse.la
tests_bench_bench_LDFLAGS = $(AM_LDFLAGS) $(OPENMP_CFLAGS)

.PHONY: bench
bench: tests/bench/bench$(EXEEXT)
	tests/bench/bench$(EXEEXT)

# For tests/commands/dist.test.
.PHONY: list-distributed
list-distributed:
	@for file in $(DISTFILES); do echo "$$file"; done
