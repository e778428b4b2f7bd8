/* stiffness: the resonance of one specimen, or a table of them. */
#include <math.h>
#include <string.h>

#include "base/number.h"
#include "cli/commands.h"
#include "cli/outcome.h"
#include "report/documents.h"
#include "report/pages.h"
#include "study/specimen.h"

/* Of a further layer; common practice, as wide as real layers go. */
static const double LAYER_MOST_MN_M3 = 2000;

/* "10,20" as numbers; false after a message. */
static bool read_layers(struct job *job, struct numbers *layers)
{
    const char *at = job->options.in_series;
    *layers = (struct numbers){0};
    if (!at)
        return true;
    layers->at = arena_take_many(job->arena, strlen(at) + 1, sizeof *layers->at);
    for (;; at++) {
        size_t const length = strcspn(at, ",");
        const char *text = arena_text_of(job->arena, at, length);
        double *value = &layers->at[layers->count++];
        if (!number_parse(text, value) || *value <= 0 || *value > LAYER_MOST_MN_M3) {
            outcome_message(OUTCOME_USAGE, "--in-series: \"%s\" is not a number above 0 and up to %g MN/m3", text,
                            LAYER_MOST_MN_M3);
            return false;
        }
        at += length;
        if (!*at)
            return true;
    }
}

/* What the option table cannot see; false after a message. */
static bool fits(const struct options *options)
{
    bool const file = options->argument_count == 1;
    bool const given = !isnan(options->load_mass), before = !isnan(options->unloaded_thickness);
    const char *wrong = NULL;
    if (options->argument_count > 1 || file == !isnan(options->resonance))
        wrong = "stiffness: needs --resonance, or one file of specimens (- for standard input)";
    else if (before != !isnan(options->loaded_thickness))
        wrong = "the compressibility needs both --unloaded-thickness and --loaded-thickness";
    else if (before && options->loaded_thickness > options->unloaded_thickness)
        wrong = "--loaded-thickness: the layer cannot be thicker than unloaded";
    if (wrong)
        outcome_message(OUTCOME_USAGE, "%s", wrong);
    else if (given && (options->load_mass < SPECIMEN_LOAD_LEAST_KG_M2 || options->load_mass > SPECIMEN_LOAD_MOST_KG_M2))
        outcome_message(OUTCOME_USAGE, "--load-mass: %g is not from %d to %d kg/m2; %s", options->load_mass,
                        SPECIMEN_LOAD_LEAST_KG_M2, SPECIMEN_LOAD_MOST_KG_M2, specimen_load_hint);
    else
        return true;
    return false;
}

/* The file's specimens; false after messages. */
static bool read_table(struct job *job, const char *name, const struct specimen *otherwise, struct specimens *specimens)
{
    const struct options *options = &job->options;
    size_t length;
    const char *text = file_read_whole(job->arena, options->argument[0], &length), *twice = NULL;
    if (!text) {
        outcome_system("%s", name);
        return false;
    }
    if (!specimens_read(specimens, otherwise, job->arena, &job->problems, name, text, length)) {
        outcome_problems(&job->problems, NULL);
        return false;
    }
    if (specimens->gives_load && !isnan(options->load_mass))
        twice = "--load-mass";
    else if (specimens->gives_thickness && !isnan(options->thickness))
        twice = "--thickness";
    if (twice)
        outcome_message(OUTCOME_USAGE, "%s: %s has a column of it; leave one of them out", twice, name);
    return !twice;
}

static void print_document(FILE *stream, void *context)
{
    document_stiffness(stream, context);
}

void command_stiffness(struct job *job)
{
    const struct options *options = &job->options;
    struct stiffness_options how = {
        .flow_resistivity_kPa_s_m2 = options->flow_resistivity,
        .unloaded_thickness_mm = options->unloaded_thickness,
        .thickness_after_load_mm = options->loaded_thickness,
    };
    struct specimen one = {options->resonance, isnan(options->load_mass) ? SPECIMEN_LOAD_KG_M2 : options->load_mass,
                           options->thickness};
    struct specimens specimens = {.at = &one, .count = 1};
    struct stiffness_result result;
    const char *name = "Dynamic stiffness";
    bool const table = options->argument_count > 0;
    if (!fits(options) || !read_layers(job, &how.in_series_MN_m3))
        return;
    if (table) {
        name = strcmp(options->argument[0], "-") ? options->argument[0] : "standard input";
        if (!read_table(job, name, &one, &specimens))
            return;
    }
    if (!study_stiffness(&specimens, table, &how, job->arena, &result)) {
        outcome_message(OUTCOME_INPUT,
                        "s' cannot be determined: at a flow resistivity of %g kPa s/m2 air escapes through the edges "
                        "of the specimen, and its stiffness of %.2f MN/m3 is not negligible against %.2f MN/m3; "
                        "measure %s",
                        result.flow_resistivity_kPa_s_m2, result.gas_MN_m3, result.apparent_MN_m3, result.to_measure);
        return;
    }
    if (options->json) {
        job_print(job, print_document, &result);
        return;
    }
    struct page *page = page_new(job->arena);
    page_of_stiffness(page, name, &result);
    job_print_page(job, page);
}
