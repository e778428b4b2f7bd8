/* compare: a measured spectrum against the prediction of a room of a project. */
#include "cli/commands.h"
#include "cli/outcome.h"
#include "report/documents.h"
#include "report/pages.h"
#include "study/compare_project.h"

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

/* The measured spectrum; false after a message. */
static bool read_spectrum(struct session *session, const char *name, struct measurement *measurement)
{
    size_t length;
    const char *text = file_read_whole(session->arena, name, &length);
    if (!text) {
        outcome_system("%s", name);
        return false;
    }
    if (measurement_read(measurement, session->arena, &session->problems, name, text, length))
        return true;
    outcome_problems(&session->problems, NULL);
    return false;
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
    if (!result.project || !read_spectrum(session, options->argument[1], &measurement))
        return;
    result.room = compare_find_room(result.project, options->room, session->arena, &complaint);
    if (!result.room) {
        outcome_message(OUTCOME_USAGE, "%s", complaint);
        return;
    }
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
