formula_sources += \
	src/base/arena.c \
	src/base/formula.c

# Alone, because it alone is compiled with OpenMP.
src_libparallel_la_SOURCES = \
	src/base/parallel.c \
	src/base/parallel.h

src_libhouse_la_SOURCES += \
	src/base/csv.c \
	src/base/csv.h \
	src/base/field.c \
	src/base/field.h \
	src/base/file.c \
	src/base/file.h \
	src/base/nearest.c \
	src/base/number.c \
	src/base/number.h \
	src/base/problem.c \
	src/base/problem.h \
	src/base/text.c \
	src/base/text.h

baseinclude_HEADERS = \
	src/base/arena.h \
	src/base/formula.h \
	src/base/tenths.h
