src_libhouse_la_SOURCES += \
	src/project/catalogue.c \
	src/project/catalogue.h \
	src/project/data_check.c \
	src/project/data_check.h \
	src/project/data_embedded.h \
	src/project/data_store.c \
	src/project/data_store.h \
	src/project/json_text.c \
	src/project/json_text.h \
	src/project/measurements.c \
	src/project/measurements.h \
	src/project/practice.c \
	src/project/practice.h \
	src/project/project.h \
	src/project/project_fields.c \
	src/project/project_read.c \
	src/project/project_read.h \
	src/project/record_read.c \
	src/project/record_read.h \
	src/project/requirement.c \
	src/project/requirement.h \
	src/project/specimens.c \
	src/project/specimens.h \
	src/project/starter.c \
	src/project/starter.h

nodist_src_libhouse_la_SOURCES = src/project/data_embedded.c
EXTRA_DIST += src/project/embed_data.sh
CLEANFILES += src/project/data_embedded.c src/project/data_embedded.c.tmp

src/project/data_embedded.c: $(embedded_data) src/project/embed_data.sh data/module.mk
	$(AM_V_GEN)$(MKDIR_P) src/project && \
	$(SHELL) $(srcdir)/src/project/embed_data.sh $(srcdir) $(embedded_data) >$@.tmp && \
	mv $@.tmp $@
