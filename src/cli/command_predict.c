#include "cli/commands.h"
#include "cli/outcome.h"
#include "report/documents.h"
#include "report/pages.h"

struct result {
    const struct project *project;
    const struct data *data;
    struct predict_options options;
    struct prediction prediction;
};

static void print_document(FILE *stream, void *context)
{
    const struct result *result = context;
    document_predict(stream, result->project, result->data, &result->options, &result->prediction);
}

void command_predict(struct job *job)
{
    const struct options *options = &job->options;
    struct result result = {.data = &job->data};
    result.options.K_by = options->K == K_BY_TABLE ? K_BY_TABLE : K_BY_FORMULA;
    result.options.strict = options->strict;
    result.options.working = options->working;
    struct project *project = job_load_project(job);
    if (!project)
        return;
    result.project = project;
    study_predict(project, &job->data.practice, &result.options, job->arena, &result.prediction);
    int failed;
    if (options->json) {
        failed = job_print(job, print_document, &result);
    } else {
        struct page *page = page_new(job->arena);
        page_of_prediction(page, project, &result.options, &result.prediction);
        page_of_data(page, &job->data);
        page_of_cautions(page);
        failed = job_print_page(job, page);
    }
    if (!failed && result.prediction.meets == ANSWER_NO)
        outcome_raise(OUTCOME_NOT_MET);
}
