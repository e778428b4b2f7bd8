src_libhouse_la_SOURCES += \
	src/report/pages_compare.c \
	src/report/documents.c \
	src/report/documents.h \
	src/report/format_documents.c \
	src/report/formulas_manual.c \
	src/report/formulas_manual.h \
	src/report/json_out.c \
	src/report/json_out.h \
	src/report/page.c \
	src/report/page.h \
	src/report/pages.h \
	src/report/pages_data.c \
	src/report/pages_design.c \
	src/report/pages_formats.c \
	src/report/pages_formulas.c \
	src/report/pages_plan.c \
	src/report/pages_predict.c \
	src/report/pages_rate.c \
	src/report/pages_stiffness.c \
	src/report/phrase.c \
	src/report/phrase.h \
	src/report/text_page.c \
	src/report/text_page.h \
	src/report/text_plot.c \
	src/report/text_plot.h
