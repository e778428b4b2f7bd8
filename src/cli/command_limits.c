#include <string.h>
#include <strings.h>

#include "cli/commands.h"
#include "cli/outcome.h"
#include "report/documents.h"
#include "report/pages.h"

static void print_document(FILE *stream, void *context)
{
    document_limits(stream, context);
}

/* Keeps the rows that the command line asks for; false after a message. */
static bool choose(struct job *job, const struct limits *all, struct limits *chosen)
{
    const struct options *options = &job->options;
    const struct limit *row = all->limits.at;
    struct limit *kept = arena_take_many(job->arena, all->limits.count, sizeof *kept);
    const char **known = arena_take_many(job->arena, all->limits.count, sizeof *known);
    size_t count = 0;
    for (size_t i = 0; i < all->limits.count; i++) {
        bool wanted = !options->argument_count;
        known[i] = row[i].id;
        for (int j = 0; j < options->argument_count; j++)
            wanted |= !strcmp(options->argument[j], row[i].id);
        if (options->country)
            wanted &= row[i].country && !strcasecmp(options->country, row[i].country);
        if (wanted)
            kept[count++] = row[i];
    }
    for (int j = 0; j < options->argument_count; j++) {
        size_t i = 0;
        while (i < all->limits.count && strcmp(known[i], options->argument[j]))
            i++;
        if (i == all->limits.count) {
            const char *near = nearest_name(options->argument[j], known, all->limits.count);
            outcome_message(OUTCOME_USAGE, "\"%s\" is no known limit%s%s%s", options->argument[j],
                            near ? "; did you mean \"" : "", near ? near : "", near ? "\"?" : "");
            return false;
        }
    }
    if (options->country && !count) {
        outcome_message(OUTCOME_USAGE, "--country: no limit of \"%s\" is known", options->country);
        return false;
    }
    *chosen = (struct limits){.limits = {kept, count}};
    return true;
}

void command_limits(struct job *job)
{
    const struct options *options = &job->options;
    struct limits chosen;
    if (!job_load_data(job))
        return;
    if (options->check) { /* only the user's own rows */
        job->data.limits = (struct limits){0};
        enum data_status status = data_add_limits(&job->data, options->check, job->arena, &job->problems);
        if (status == DATA_UNREADABLE)
            outcome_system("%s", options->check);
        else if (status == DATA_FAULTY)
            outcome_problems(&job->problems, NULL);
        if (status != DATA_READ)
            return;
    }
    if (!choose(job, &job->data.limits, &chosen))
        return;
    if (options->json) {
        job_print(job, print_document, &chosen);
        return;
    }
    struct page *page = page_new(job->arena);
    page_of_limits(page, &chosen, options->argument_count > 0);
    if (options->check)
        page_paragraph(page, "%s: no fault found; limits: %zu.", options->check, chosen.limits.count);
    else
        page_of_data(page, &job->data);
    job_print_page(job, page);
}
