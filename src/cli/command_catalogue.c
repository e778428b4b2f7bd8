#include <string.h>

#include "cli/commands.h"
#include "cli/outcome.h"
#include "report/documents.h"
#include "report/pages.h"

static const char *const kinds[] = {"underlays", "screeds", "floorings", "practice", "thickness"};
enum kind { KIND_UNDERLAYS, KIND_SCREEDS, KIND_FLOORINGS, KIND_PRACTICE, KIND_THICKNESS, KINDS };

/* What the command line chose. */
struct choice {
    bool kind[KINDS];
    struct catalogue rows;
    struct practice practice;
};

static void print_catalogue(FILE *stream, void *context)
{
    document_catalogue(stream, &((struct choice *)context)->rows);
}

static void print_practice(FILE *stream, void *context)
{
    document_practice(stream, &((struct choice *)context)->practice);
}

/* The row of this id into the rows kept. */
static bool keep_row(struct job *job, const struct objects *all, const struct record *record, const char *id,
                     struct objects *kept)
{
    size_t offset = record_field(record, "id")->offset;
    for (size_t i = 0; i < all->count; i++) {
        const char *row = (const char *)all->at + i * record->size;
        if (strcmp(*(const char *const *)(row + offset), id))
            continue;
        char *longer = arena_take_many(job->arena, kept->count + 1, record->size);
        if (kept->count)
            memcpy(longer, kept->at, kept->count * record->size);
        memcpy(longer + kept->count * record->size, row, record->size);
        *kept = (struct objects){longer, kept->count + 1};
        return true;
    }
    return false;
}

static void unknown_id(struct job *job, const char *id)
{
    const struct catalogue *all = &job->data.catalogue;
    size_t count = 0;
    const char **known = arena_take_many(
        job->arena, all->underlays.count + all->screeds.count + all->floorings.count + KINDS, sizeof *known);
    for (size_t i = 0; i < all->underlays.count; i++)
        known[count++] = ((const struct underlay *)all->underlays.at)[i].id;
    for (size_t i = 0; i < all->screeds.count; i++)
        known[count++] = ((const struct screed *)all->screeds.at)[i].id;
    for (size_t i = 0; i < all->floorings.count; i++)
        known[count++] = ((const struct flooring *)all->floorings.at)[i].id;
    for (int i = 0; i < KINDS; i++)
        known[count++] = kinds[i];
    const char *near = nearest_name(id, known, count);
    outcome_message(OUTCOME_USAGE, "\"%s\" is neither a kind nor an id of the catalogue%s%s%s", id,
                    near ? "; did you mean \"" : "", near ? near : "", near ? "\"?" : "");
}

/* Words of the command line to kinds and rows; false after a message. */
static bool choose(struct job *job, struct choice *choice, bool *by_id)
{
    const struct catalogue *all = &job->data.catalogue;
    const struct options *options = &job->options;
    for (int i = 0; i < options->argument_count; i++) {
        const char *word = options->argument[i];
        int kind = 0;
        while (kind < KINDS && strcmp(kinds[kind], word))
            kind++;
        if (kind < KINDS) {
            choice->kind[kind] = true;
        } else if (keep_row(job, &all->underlays, &underlay_record, word, &choice->rows.underlays) ||
                   keep_row(job, &all->screeds, &screed_record, word, &choice->rows.screeds) ||
                   keep_row(job, &all->floorings, &flooring_record, word, &choice->rows.floorings)) {
            *by_id = true;
        } else {
            unknown_id(job, word);
            return false;
        }
    }
    if (*by_id)
        return true;
    bool everything = !options->argument_count;
    if (everything || choice->kind[KIND_UNDERLAYS])
        choice->rows.underlays = all->underlays;
    if (everything || choice->kind[KIND_SCREEDS])
        choice->rows.screeds = all->screeds;
    if (everything || choice->kind[KIND_FLOORINGS])
        choice->rows.floorings = all->floorings;
    if (choice->kind[KIND_PRACTICE])
        choice->practice.rules = job->data.practice.rules;
    if (choice->kind[KIND_THICKNESS])
        choice->practice.thickness = job->data.practice.thickness;
    return true;
}

static bool load(struct job *job)
{
    const char *check = job->options.check;
    if (!job_load_data(job))
        return false;
    if (!check)
        return true;
    job->data.catalogue = (struct catalogue){0}; /* only the user's own rows */
    enum data_status status = data_add_catalogue(&job->data, check, job->arena, &job->problems);
    if (status == DATA_UNREADABLE)
        outcome_system("%s", check);
    else if (status == DATA_FAULTY)
        outcome_problems(&job->problems, NULL);
    return status == DATA_READ;
}

void command_catalogue(struct job *job)
{
    const struct options *options = &job->options;
    struct choice choice = {0};
    bool by_id = false;
    if (!load(job) || !choose(job, &choice, &by_id))
        return;
    bool practice = choice.practice.rules.count || choice.practice.thickness.count;
    bool rows = choice.rows.underlays.count || choice.rows.screeds.count || choice.rows.floorings.count;
    if (practice && rows && options->json) {
        outcome_message(OUTCOME_USAGE, "--json: rules of practice and rows of the catalogue are two formats; ask for "
                                       "one at a time");
        return;
    }
    if (options->json) {
        job_print(job, practice ? print_practice : print_catalogue, &choice);
        return;
    }
    struct page *page = page_new(job->arena);
    if (rows || !practice)
        page_of_catalogue(page, &choice.rows, by_id);
    if (practice)
        page_of_practice(page, &choice.practice);
    if (options->check)
        page_paragraph(page, "%s: no fault found; rows: underlays %zu, screeds %zu, floorings %zu.", options->check,
                       choice.rows.underlays.count, choice.rows.screeds.count, choice.rows.floorings.count);
    else
        page_of_data(page, &job->data);
    job_print_page(job, page);
}
