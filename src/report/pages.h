/* The pages of the studies and of the data: headings, facts, tables, in order. No figure is computed here. */
#ifndef USC_REPORT_PAGES_H
#define USC_REPORT_PAGES_H

#include "project/data_store.h"
#include "report/documents.h"
#include "report/page.h"
#include "study/design.h"
#include "study/predict.h"

void page_of_prediction(struct page *page, const struct project *project, const struct predict_options *options,
                        const struct prediction *prediction);
/* most: choices shown for a room. */
void page_of_design(struct page *page, const struct project *project, const struct design_options *options,
                    const struct design *design, int most);
/* name: of the file that was rated. */
void page_of_rating(struct page *page, const char *name, const struct rated *rated);
void page_of_plan(struct page *page, const struct project *project, const struct measurement_plan *plan);
void page_of_comparison(struct page *page, const char *room, const struct comparison *comparison);
/* name: of the file, or a heading. */
void page_of_stiffness(struct page *page, const char *name, const struct stiffness_result *result);
/* Which files stood in front of the built-in data; nothing when none. */
void page_of_data(struct page *page, const struct data *data);
/* The usual cautions of a result that people may build by. */
void page_of_cautions(struct page *page);

void page_of_limits(struct page *page, const struct limits *limits, bool in_full);
void page_of_catalogue(struct page *page, const struct catalogue *catalogue, bool in_full);
void page_of_practice(struct page *page, const struct practice *practice);
void page_of_formulas(struct page *page, const struct formula *const formula[], int count);
void page_of_formats(struct page *page, const struct format *const format[], int count);

/* "f0 = 160 sqrt(10/90)": the expression with the numbers in place of the symbols. */
const char *step_with_numbers(struct arena *arena, const struct step *step);
/* "100 to 600 kg/m2" */
const char *range_phrase(struct arena *arena, const struct quantity *quantity);

#endif
