#include "cli/commands.h"
#include "cli/outcome.h"

static void print_commands(FILE *stream, void *context)
{
    (void)context;
    for (int i = 0; i < COMMAND_COUNT; i++)
        fprintf(stream, "%s\n", command_names[i]);
}

static void print_options(FILE *stream, void *context)
{
    options_list(stream, *(const enum command *)context);
}

void command_options(struct job *job)
{
    const struct options *options = &job->options;
    if (!options->argument_count) {
        job_print(job, print_commands, NULL);
        return;
    }
    int found = command_of(options->argument[0]);
    if (found < 0) {
        outcome_message(OUTCOME_USAGE, "\"%s\" is no command", options->argument[0]);
        return;
    }
    enum command command = (enum command)found;
    job_print(job, print_options, &command);
}
