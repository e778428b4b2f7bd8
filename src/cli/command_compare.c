/* compare: a measured spectrum against the prediction of a room of a project. */
#include "cli/commands.h"
#include "cli/outcome.h"
#include "report/documents.h"
#include "report/pages.h"
#include "study/compare_project.h"
#include "study/measured.h"

struct result {
    const struct project *project;
    const struct room *room;
    struct comparison comparison;
};

static void print_document(FILE *stream, void *context)
{
    const struct result *result = context;
    document_compare(stream, result->project, result->room->name, &result->comparison);
}

/* The measured spectrum, or one formed from readings in the room's receiving room; false after a message. */
static bool read_spectrum(struct job *job, const char *name, const struct room *room, struct measurement *measurement)
{
    struct level_options const form = {FIELD_L_PRIME_NT, USC_BACKGROUND_FIELD, receiving_volume_m3(room->below)};
    struct raw_measurement raw;
    enum band_flag flag[USC_BANDS];
    double low_frequency_bands;
    size_t length;
    const char *text = file_read_whole(job->arena, name, &length);
    if (!text) {
        outcome_system("%s", name);
        return false;
    }
    bool fine;
    if (measurement_table_of(job->arena, text, length) == TABLE_RAW)
        fine = raw_measurement_read(&raw, job->arena, &job->problems, name, text, length) &&
               measured_levels(&raw, &form, name, &job->problems, measurement, flag, &low_frequency_bands);
    else
        fine = measurement_read(measurement, job->arena, &job->problems, name, text, length);
    if (!fine)
        outcome_problems(&job->problems, NULL);
    return fine;
}

void command_compare(struct job *job)
{
    const struct options *options = &job->options;
    struct result result;
    struct measurement measurement;
    const char *complaint = NULL;
    if (options->argument_count != 2) {
        outcome_message(OUTCOME_USAGE, "compare: needs a project file and a file of measured levels");
        return;
    }
    result.project = job_load_project(job);
    if (!result.project)
        return;
    result.room = compare_find_room(result.project, options->room, job->arena, &complaint);
    if (!result.room) {
        outcome_message(OUTCOME_USAGE, "%s", complaint);
        return;
    }
    if (!read_spectrum(job, options->argument[1], result.room, &measurement))
        return;
    if (!compare_room_with(result.project, result.room, &job->data.practice,
                           options->K == K_BY_TABLE ? K_BY_TABLE : K_BY_FORMULA, &measurement, job->arena,
                           &result.comparison, &complaint)) {
        outcome_message(OUTCOME_INPUT, "%s: %s", options->argument[1], complaint);
        return;
    }
    if (options->json) {
        job_print(job, print_document, &result);
    } else {
        struct page *page = page_new(job->arena);
        page_of_comparison(page, result.room->name, &result.comparison);
        job_print_page(job, page);
    }
}
