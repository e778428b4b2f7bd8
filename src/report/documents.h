/* The JSON document of each command: "underscreed-<command>/1". */
#ifndef USC_REPORT_DOCUMENTS_H
#define USC_REPORT_DOCUMENTS_H

#include <stdio.h>

#include "base/formula.h"
#include "project/data_store.h"
#include "project/project.h"
#include "study/compare.h"
#include "study/design.h"
#include "study/measured.h"
#include "study/measurement_plan.h"
#include "study/predict.h"
#include "study/specimen.h"

void document_predict(FILE *stream, const struct project *project, const struct data *data,
                      const struct predict_options *options, const struct prediction *prediction);
void document_design(FILE *stream, const struct project *project, const struct data *data,
                     const struct design_options *options, const struct design *design);
void document_rate(FILE *stream, const struct rated *rated);
void document_plan(FILE *stream, const struct project *project, const struct measurement_plan *plan);
void document_stiffness(FILE *stream, const struct stiffness_result *result);
void document_compare(FILE *stream, const struct project *project, const char *room,
                      const struct comparison *comparison);
/* Data rows as a file of their own format, which can be edited and given back. */
void document_limits(FILE *stream, const struct limits *limits);
void document_catalogue(FILE *stream, const struct catalogue *catalogue);
void document_practice(FILE *stream, const struct practice *practice);
void document_formulas(FILE *stream, const struct formula *const formula[], int count);

/* One file format: its family word and the record at its root. */
struct format {
    const char *family;
    const struct record *root;
};
extern const struct format formats[];
extern const int format_count;
/* The members of a result, which stand beside format, version and meets in its document. */
extern const struct format results[];
extern const int result_count;
void document_formats(FILE *stream, const struct format *const format[], int count);
/* JSON Schema (draft 2020-12) made from the field tables. */
void document_schema(FILE *stream, const struct format *format);
/* Of a result: every key is there, and any value may be null. */
void document_result_schema(FILE *stream, const struct format *result);
/* Every record of a format once, the root first; returns their number. */
int format_records(const struct format *format, const struct record *record[], int most);

#endif
