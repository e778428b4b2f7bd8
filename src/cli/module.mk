underscreed_SOURCES = src/cli/main.c
underscreed_LDADD = src/libhouse.la
underscreed_LDFLAGS = $(AM_LDFLAGS) $(OPENMP_CFLAGS)

src_libhouse_la_SOURCES += \
	src/cli/command_compare.c \
	src/cli/command_catalogue.c \
	src/cli/command_design.c \
	src/cli/command_formats.c \
	src/cli/command_formulas.c \
	src/cli/command_limits.c \
	src/cli/command_options.c \
	src/cli/command_predict.c \
	src/cli/command_rate.c \
	src/cli/command_rate_plan.c \
	src/cli/command_start.c \
	src/cli/command_stiffness.c \
	src/cli/commands.h \
	src/cli/options.c \
	src/cli/options.h \
	src/cli/outcome.c \
	src/cli/outcome.h \
	src/cli/quick_form.c \
	src/cli/job.c

bashcompletiondir = $(datadir)/bash-completion/completions
EXTRA_DIST += src/cli/underscreed.bash

# The completion is found by the program's name, without an ending.
install-data-hook:
	$(MKDIR_P) "$(DESTDIR)$(bashcompletiondir)"
	$(INSTALL_DATA) $(srcdir)/src/cli/underscreed.bash "$(DESTDIR)$(bashcompletiondir)/underscreed"

uninstall-hook:
	rm -f "$(DESTDIR)$(bashcompletiondir)/underscreed"
