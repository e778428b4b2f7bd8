/* What every command shares: data, project, output. */
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include "cli/commands.h"
#include "cli/outcome.h"
#include "project/project_read.h"
#include "project/record_read.h"
#include "report/text_page.h"
#include "study/predict.h"

/* A message for a status that is not DATA_READ; false then. */
static bool data_fine(struct job *job, enum data_status status, const char *culprit)
{
    if (status == DATA_UNREADABLE)
        outcome_system("%s", culprit);
    else if (status == DATA_FAULTY)
        outcome_problems(&job->problems, NULL);
    return status == DATA_READ;
}

bool job_load_data(struct job *job)
{
    const struct options *options = &job->options;
    const char *culprit = "";
    enum data_status status = data_load(options->data, job->arena, &job->problems, &job->data, &culprit);
    if (!data_fine(job, status, culprit))
        return false;
    if (options->catalogue &&
        !data_fine(job, data_add_catalogue(&job->data, options->catalogue, job->arena, &job->problems),
                   options->catalogue))
        return false;
    return !options->limits ||
           data_fine(job, data_add_limits(&job->data, options->limits, job->arena, &job->problems), options->limits);
}

/* The file named, or the quick form; false after a message. */
static bool find_input(struct job *job, struct input *input)
{
    const struct options *options = &job->options;
    input->quick = options_quick(options);
    /* compare has its measurement behind the project */
    int const most = options->command == COMMAND_COMPARE ? 2 : 1;
    if (options->argument_count > most) {
        outcome_message(OUTCOME_USAGE, "%s: one project at a time; \"%s\" is one too many",
                        command_names[options->command], options->argument[most]);
        return false;
    }
    if (input->quick && options->argument_count) {
        outcome_message(OUTCOME_USAGE, "%s: a project file and options of the quick form exclude each other",
                        options->argument[0]);
        return false;
    }
    if (input->quick && !quick_form_complete(options))
        return false;
    if (input->quick) {
        input->name = NULL;
        input->text = quick_form_text(job->arena, options);
        input->length = strlen(input->text);
        return true;
    }
    if (!options->argument_count) {
        outcome_message(OUTCOME_USAGE, "%s: needs a project file; \"underscreed start\" prints a first one",
                        command_names[options->command]);
        return false;
    }
    input->name = strcmp(options->argument[0], "-") ? options->argument[0] : "standard input";
    input->text = file_read_whole(job->arena, options->argument[0], &input->length);
    if (!input->text)
        outcome_system("%s", input->name);
    return input->text != NULL;
}

struct project *job_load_project(struct job *job)
{
    struct input input = {0};
    if (!find_input(job, &input) || !job_load_data(job))
        return NULL;
    struct project *project = project_read(&input, &job->data, job->arena, &job->problems);
    if (project)
        study_check_model(project, input.name, &job->problems);
    if (problems_any_error(&job->problems)) {
        problems_locate(job->problems.first, input.name, input.text, input.length);
        outcome_problems(&job->problems, input.quick ? options_of_path : NULL);
        return NULL;
    }
    return project;
}

static struct text_style style_of(const struct options *options)
{
    struct text_style style = {TEXT_WIDTH_DEFAULT, options->ascii, false};
    struct winsize size;
    if (!options->output && isatty(STDOUT_FILENO)) {
        const char *no_colour = getenv("NO_COLOR");
        style.colour = !no_colour || !*no_colour;
        if (!ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) && size.ws_col >= TEXT_WIDTH_LEAST)
            style.width = size.ws_col;
    }
    if (options->width)
        style.width = options->width;
    return style;
}

int job_print(struct job *job, void (*print)(FILE *stream, void *context), void *context)
{
    static struct output output;
    if (outcome_open(&output, job->options.output))
        return -1;
    print(output.stream, context);
    return outcome_close(&output, job->options.output);
}

struct page_print {
    const struct page *page;
    struct text_style style;
};

static void print_page(FILE *stream, void *context)
{
    const struct page_print *what = context;
    text_page_print(what->page, stream, &what->style);
}

int job_print_page(struct job *job, const struct page *page)
{
    struct page_print what = {page, style_of(&job->options)};
    return job_print(job, print_page, &what);
}
