#include "cli/commands.h"
#include "cli/outcome.h"
#include "report/documents.h"
#include "report/pages.h"

enum { CHOICES_SHOWN = 5 };

struct result {
    const struct project *project;
    const struct data *data;
    struct design_options options;
    struct design design;
};

static void print_document(FILE *stream, void *context)
{
    const struct result *result = context;
    document_design(stream, result->project, result->data, &result->options, &result->design);
}

void command_design(struct job *job)
{
    const struct options *options = &job->options;
    struct result result = {.data = &job->data};
    result.options.K_by = options->K == K_BY_TABLE ? K_BY_TABLE : K_BY_FORMULA;
    result.options.strict = options->strict;
    result.options.one_build_up = options->one_build_up;
    result.options.rank_by = options->rank_by < 0 ? RANK_BY_HEIGHT : (enum rank_by)options->rank_by;
    struct project *project = job_load_project(job);
    if (!project)
        return;
    result.project = project;
    study_design(project, project->catalogue, &job->data.practice, &result.options, job->arena, &result.design);
    int failed;
    if (options->json) {
        failed = job_print(job, print_document, &result);
    } else {
        struct page *page = page_new(job->arena);
        page_of_design(page, project, &result.options, &result.design, options->most ? options->most : CHOICES_SHOWN);
        page_of_data(page, &job->data);
        page_of_cautions(page);
        failed = job_print_page(job, page);
    }
    if (!failed && result.design.meets == ANSWER_NO)
        outcome_raise(OUTCOME_NOT_MET);
}
