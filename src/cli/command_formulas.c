#include <string.h>

#include "base/problem.h"
#include "cli/commands.h"
#include "cli/outcome.h"
#include "report/documents.h"
#include "report/formulas_manual.h"
#include "report/pages.h"
#include "study/formula_index.h"

struct chosen {
    const struct formula **formula;
    int count;
};

static void print_document(FILE *stream, void *context)
{
    const struct chosen *chosen = context;
    document_formulas(stream, chosen->formula, chosen->count);
}

static void print_manual(FILE *stream, void *context)
{
    const struct chosen *chosen = context;
    formulas_manual_print(stream, chosen->formula, chosen->count);
}

/* The formulas named, or all; false after a message. */
static bool choose(struct job *job, struct chosen *chosen)
{
    const struct options *options = &job->options;
    int all = (int)formula_count();
    const char **known = arena_take_many(job->arena, (size_t)all, sizeof *known);
    int room = options->argument_count ? options->argument_count : all;
    chosen->formula = arena_take_many(job->arena, (size_t)room, sizeof *chosen->formula);
    for (int i = 0; i < all; i++) {
        known[i] = formula_at((size_t)i)->id;
        if (!options->argument_count)
            chosen->formula[chosen->count++] = formula_at((size_t)i);
    }
    for (int j = 0; j < options->argument_count; j++) {
        int i = 0;
        while (i < all && strcmp(known[i], options->argument[j]))
            i++;
        if (i == all) {
            const char *near = nearest_name(options->argument[j], known, (size_t)all);
            outcome_message(OUTCOME_USAGE, "\"%s\" is no known formula%s%s%s", options->argument[j],
                            near ? "; did you mean \"" : "", near ? near : "", near ? "\"?" : "");
            return false;
        }
        chosen->formula[chosen->count++] = formula_at((size_t)i);
    }
    return true;
}

void command_formulas(struct job *job)
{
    const struct options *options = &job->options;
    struct chosen chosen = {0};
    if (!choose(job, &chosen))
        return;
    if (options->json) {
        job_print(job, print_document, &chosen);
    } else if (options->manual) {
        job_print(job, print_manual, &chosen);
    } else {
        struct page *page = page_new(job->arena);
        page_of_formulas(page, chosen.formula, chosen.count);
        job_print_page(job, page);
    }
}
