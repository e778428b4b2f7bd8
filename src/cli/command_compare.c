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
static bool read_spectrum(struct session *session, const char *name, const struct room *room,
                          struct measurement *measurement)
{
    struct level_options const form = {FIELD_L_PRIME_NT, USC_BACKGROUND_FIELD, receiving_volume_m3(room->below)};
    struct raw_measurement raw;
    enum band_flag flag[USC_BANDS];
    double low_frequency_bands;
    size_t length;
    const char *text = file_read_whole(session->arena, name, &length);
    if (!text) {
        outcome_system("%s", name);
        return false;
    }
    bool fine;
    if (measurement_table_of(session->arena, text, length) == TABLE_RAW)
        fine = raw_measurement_read(&raw, session->arena, &session->problems, name, text, length) &&
               measured_levels(&raw, &form, name, &session->problems, measurement, flag, &low_frequency_bands);
    else
        fine = measurement_read(measurement, session->arena, &session->problems, name, text, length);
    if (!fine)
        outcome_problems(&session->problems, NULL);
    return fine;
}

void command_compare(struct session *session)
{
    const struct options *options = &session->options;
    struct result result;
    struct measurement measurement;
    const char *complaint = NULL;
    if (options->argument_count != 2) {
        outcome_message(OUTCOME_USAGE, "compare: needs a project file and a file of measured levels");
        return;
    }
    result.project = session_load_project(session);
    if (!result.project)
        return;
    result.room = compare_find_room(result.project, options->room, session->arena, &complaint);
    if (!result.room) {
        outcome_message(OUTCOME_USAGE, "%s", complaint);
        return;
    }
    if (!read_spectrum(session, options->argument[1], result.room, &measurement))
        return;
    if (!compare_room_with(result.project, result.room, &session->data.practice,
                           options->K == K_BY_TABLE ? K_BY_TABLE : K_BY_FORMULA, &measurement, session->arena,
                           &result.comparison, &complaint)) {
        outcome_message(OUTCOME_INPUT, "%s: %s", options->argument[1], complaint);
        return;
    }
    if (options->json) {
        session_print(session, print_document, &result);
    } else {
        struct page *page = page_new(session->arena);
        page_of_comparison(page, result.room->name, &result.comparison);
        session_print_page(session, page);
    }
}
