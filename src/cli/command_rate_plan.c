/* rate --plan: which rooms of a project to measure, and how. */
#include <math.h>

#include "cli/commands.h"
#include "cli/outcome.h"
#include "report/documents.h"
#include "report/pages.h"
#include "study/measurement_plan.h"

struct result {
    const struct project *project;
    struct measurement_plan plan;
};

static void print_document(FILE *stream, void *context)
{
    const struct result *result = context;
    document_plan(stream, result->project, &result->plan);
}

/* Options that speak of a measurement already made. */
static bool rates_something(const struct options *options)
{
    return options->covered || options->limit || options->field_level >= 0 || options->background >= 0 ||
           options->situation >= 0 || !isnan(options->volume) || !isnan(options->confidence);
}

void command_rate_plan(struct job *job)
{
    const struct options *options = &job->options;
    struct result result;
    if (rates_something(options)) {
        outcome_message(OUTCOME_USAGE, "--plan: reads a project and takes no option that speaks of a measurement");
        return;
    }
    result.project = job_load_project(job);
    if (!result.project)
        return;
    study_measurement_plan(result.project, &job->data.practice, job->arena, &result.plan);
    if (options->json) {
        job_print(job, print_document, &result);
    } else {
        struct page *page = page_new(job->arena);
        page_of_plan(page, result.project, &result.plan);
        page_of_data(page, &job->data);
        job_print_page(job, page);
    }
}
