#include <string.h>

#include "base/problem.h"
#include "cli/commands.h"
#include "cli/outcome.h"
#include "report/documents.h"
#include "report/pages.h"

enum { FORMATS_MOST = 16 };

struct chosen {
    const struct format *format[FORMATS_MOST];
    int count;
};

static void print_document(FILE *stream, void *context)
{
    const struct chosen *chosen = context;
    document_formats(stream, chosen->format, chosen->count);
}

static void print_schema(FILE *stream, void *context)
{
    const struct chosen *chosen = context;
    for (int i = 0; i < result_count; i++)
        if (chosen->format[0] == &results[i]) {
            document_result_schema(stream, chosen->format[0]);
            return;
        }
    document_schema(stream, chosen->format[0]);
}

static bool choose(struct job *job, struct chosen *chosen)
{
    const struct options *options = &job->options;
    const char *known[FORMATS_MOST];
    for (int i = 0; i < format_count; i++) {
        known[i] = formats[i].family;
        if (!options->argument_count)
            chosen->format[chosen->count++] = &formats[i];
    }
    for (int j = 0; j < options->argument_count && j < FORMATS_MOST; j++) {
        int i = 0, result = 0;
        while (i < format_count && strcmp(known[i], options->argument[j]))
            i++;
        while (options->schema && result < result_count && strcmp(results[result].family, options->argument[j]))
            result++;
        if (options->schema && i == format_count && result < result_count) {
            chosen->format[chosen->count++] = &results[result];
            continue;
        }
        if (i == format_count) {
            const char *near = nearest_name(options->argument[j], known, (size_t)format_count);
            outcome_message(OUTCOME_USAGE, "\"%s\" is no file format%s%s%s", options->argument[j],
                            near ? "; did you mean \"" : "", near ? near : "", near ? "\"?" : "");
            return false;
        }
        chosen->format[chosen->count++] = &formats[i];
    }
    if (options->schema && chosen->count != 1) {
        outcome_message(OUTCOME_USAGE,
                        "--schema: name one format: project, catalogue, limits, practice; or a result: rate, "
                        "stiffness, compare");
        return false;
    }
    return true;
}

void command_formats(struct job *job)
{
    const struct options *options = &job->options;
    struct chosen chosen = {0};
    if (!choose(job, &chosen))
        return;
    if (options->schema) {
        job_print(job, print_schema, &chosen);
    } else if (options->json) {
        job_print(job, print_document, &chosen);
    } else {
        struct page *page = page_new(job->arena);
        page_of_formats(page, chosen.format, chosen.count);
        job_print_page(job, page);
    }
}
