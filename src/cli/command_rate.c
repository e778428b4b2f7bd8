/* rate: a table of one spectrum, of readings in a room, or of many spectra. */
#include <errno.h>
#include <string.h>

#include "base/number.h"
#include "cli/commands.h"
#include "cli/outcome.h"
#include "report/documents.h"
#include "report/pages.h"
#include "study/measured.h"

static const double DEFAULT_CONFIDENCE_PERCENT = 95;

/* The limit named by --limit; false after a message. */
static bool find_limit(struct job *job, const struct limit **limit)
{
    const struct limits *all = &job->data.limits;
    const struct limit *row = all->limits.at;
    const char *id = job->options.limit, **known;
    *limit = NULL;
    if (!id)
        return true;
    known = arena_take_many(job->arena, all->limits.count, sizeof *known);
    for (size_t i = 0; i < all->limits.count; i++) {
        known[i] = row[i].id;
        if (!strcmp(row[i].id, id))
            *limit = &row[i];
    }
    const char *near = *limit ? NULL : nearest_name(id, known, all->limits.count);
    if (!*limit)
        outcome_message(OUTCOME_USAGE, "--limit: \"%s\" is no known limit%s%s%s", id, near ? "; did you mean \"" : "",
                        near ? near : "", near ? "\"?" : "");
    return *limit != NULL;
}

static void print_document(FILE *stream, void *context)
{
    document_rate(stream, context);
}

/* The reference floors, which an improvement is rated on, are third octaves; false after a problem. */
static bool has_reference(struct job *job, const char *name, const char *id, const struct measurement *measurement)
{
    bool const fit = measurement->quantity != MEASURED_DELTA_L || !measurement->octave;
    if (!fit)
        problem_add(&job->problems, SEVERITY_ERROR, name, id, "give it in third octaves",
                    "an improvement in octaves cannot be rated");
    return fit;
}

/* One spectrum, read or formed; false after problems. */
static bool read_levels(struct job *job, const char *name, const char *text, size_t length,
                        enum measurement_table table, struct measurement *level, enum band_flag flag[USC_BANDS],
                        double *low_frequency_bands)
{
    const struct options *options = &job->options;
    struct raw_measurement raw;
    memset(flag, 0, USC_BANDS * sizeof *flag);
    *low_frequency_bands = 0;
    if (table == TABLE_SPECTRUM)
        return measurement_read(level, job->arena, &job->problems, name, text, length) &&
               has_reference(job, name, "", level);
    struct level_options form = {
        .level = options->field_level == FIELD_L_PRIME_N ? FIELD_L_PRIME_N : FIELD_L_PRIME_NT,
        .background =
            options->background == USC_BACKGROUND_LABORATORY ? USC_BACKGROUND_LABORATORY : USC_BACKGROUND_FIELD,
        .volume_m3 = options->volume,
    };
    if (!raw_measurement_read(&raw, job->arena, &job->problems, name, text, length))
        return false;
    if (raw.has_corner && isnan(options->volume))
        outcome_message(OUTCOME_MET,
                        "%s: note: readings in corners count below 25 m3; without --volume they are left out", name);
    return measured_levels(&raw, &form, name, &job->problems, level, flag, low_frequency_bands);
}

static void rate_one(struct job *job, const char *name, const char *text, size_t length, enum measurement_table table)
{
    const struct options *options = &job->options;
    struct measurement level;
    enum band_flag flag[USC_BANDS];
    struct rated rated;
    double low_frequency_bands;
    struct rate_options how = {
        .covered = options->covered,
        .situation = options->situation < 0 ? USC_SITUATION_B : options->situation,
        .confidence_percent = isnan(options->confidence) ? DEFAULT_CONFIDENCE_PERCENT : options->confidence,
    };
    if (isnan(usc_coverage_factor(USC_ONE_SIDED, how.confidence_percent))) {
        outcome_message(OUTCOME_USAGE, "--confidence: only 84, 90, 95, 97.5 and 99.5 have a printed factor");
        return;
    }
    if (!find_limit(job, &how.limit))
        return;
    if (!read_levels(job, name, text, length, table, &level, flag, &low_frequency_bands)) {
        outcome_problems(&job->problems, NULL);
        return;
    }
    study_rate(&level, flag, &how, job->arena, &rated);
    rated.low_frequency_bands = low_frequency_bands;
    int failed;
    if (options->json) {
        failed = job_print(job, print_document, &rated);
    } else {
        struct page *page = page_new(job->arena);
        page_of_rating(page, name, &rated);
        page_of_data(page, &job->data);
        failed = job_print_page(job, page);
    }
    if (!failed && rated.meets_limit == ANSWER_NO)
        outcome_raise(OUTCOME_NOT_MET);
}

/* Many spectra, one line of result each, in memory that does not grow: read once to find every fault, then again. */
struct many {
    struct job *job;
    const char *name;
    FILE *input;
    FILE *stream;
    int read_error;
};

static bool print_brief(void *context, const char *id, const struct measurement *measurement)
{
    struct many *many = context;
    struct rated_briefly rated;
    char value[NUMBER_TEXT], term[NUMBER_TEXT], sum[NUMBER_TEXT];
    bool const guarded = *id && strchr("=+-@", *id); /* a spreadsheet would take it for a formula */
    if (!rate_briefly(measurement, &rated))
        return true;
    fprintf(many->stream, "\"%s", guarded ? "'" : "");
    for (const char *c = id; *c; c++)
        fputs(*c == '"' ? "\"\"" : (char[]){*c, '\0'}, many->stream);
    fprintf(many->stream, "\",%s,%s,%s\n", number_exact(rated.value_dB, value), number_exact(rated.C_I_dB, term),
            isnan(rated.unfavourable_sum_dB) ? "" : number_exact(rated.unfavourable_sum_dB, sum));
    return true;
}

static void print_many(FILE *stream, void *context)
{
    struct many *many = context;
    many->stream = stream;
    fputs("spectrum,value_dB,C_I_dB,unfavourable_sum_dB\n", stream);
    spectra_read(many->job->arena, &many->job->problems, many->name, many->input, print_brief, many, &many->read_error);
}

static bool check_only(void *context, const char *id, const struct measurement *measurement)
{
    struct many *many = context;
    has_reference(many->job, many->name, arena_text(many->job->arena, id), measurement);
    return true;
}

static void rate_many(struct job *job, const char *name, FILE *input)
{
    struct many many = {.job = job, .name = name, .input = input};
    if (job->options.json || job->options.limit) {
        outcome_message(OUTCOME_USAGE, "%s: a table of many spectra is rated as CSV, without a limit", name);
        return;
    }
    bool fine = spectra_read(job->arena, &job->problems, name, input, check_only, &many, &many.read_error);
    if (fine && fseek(input, 0, SEEK_SET) == 0) {
        job_print(job, print_many, &many);
    } else if (many.read_error) {
        errno = many.read_error;
        outcome_system("%s", name);
    } else if (fine) {
        outcome_system("%s: many spectra are read twice, so from a file", name);
    } else {
        outcome_problems(&job->problems, NULL);
    }
}

void command_rate(struct job *job)
{
    const struct options *options = &job->options;
    static char head[65536];
    if (options->plan) {
        command_rate_plan(job);
        return;
    }
    if (options->argument_count != 1) {
        outcome_message(OUTCOME_USAGE, "rate: needs one file of measured levels (- for standard input)");
        return;
    }
    if (!job_load_data(job))
        return;
    const char *name = strcmp(options->argument[0], "-") ? options->argument[0] : "standard input";
    FILE *input = strcmp(options->argument[0], "-") ? fopen(options->argument[0], "rb") : NULL;
    if (input) {
        size_t const length = fread(head, 1, sizeof head, input);
        if (measurement_table_of(job->arena, head, length) == TABLE_SPECTRA && fseek(input, 0, SEEK_SET) == 0) {
            rate_many(job, name, input);
            fclose(input);
            return;
        }
        fclose(input);
    }
    size_t length;
    const char *text = file_read_whole(job->arena, options->argument[0], &length);
    if (!text) {
        outcome_system("%s", name);
        return;
    }
    enum measurement_table const table = measurement_table_of(job->arena, text, length);
    if (table == TABLE_SPECTRA)
        outcome_message(OUTCOME_USAGE, "%s: many spectra are read twice, so from a file", name);
    else
        rate_one(job, name, text, length, table);
}
