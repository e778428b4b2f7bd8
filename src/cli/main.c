/* underscreed: impact-sound insulation under floating screeds, from the command line. */
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/problem.h"
#include "cli/commands.h"
#include "cli/outcome.h"

static void (*const run[COMMAND_COUNT])(struct job *job) = {
    [COMMAND_PREDICT] = command_predict,     [COMMAND_DESIGN] = command_design,     [COMMAND_RATE] = command_rate,
    [COMMAND_STIFFNESS] = command_stiffness, [COMMAND_COMPARE] = command_compare,   [COMMAND_LIMITS] = command_limits,
    [COMMAND_CATALOGUE] = command_catalogue, [COMMAND_FORMULAS] = command_formulas, [COMMAND_FORMATS] = command_formats,
    [COMMAND_START] = command_start,         [COMMAND_OPTIONS] = command_options,
};

static void print_overview(FILE *stream, void *context)
{
    (void)context;
    fputs("usage: underscreed COMMAND [options] [FILE]\n"
          "Impact-sound insulation under floating screeds: choose, predict, check.\n\n",
          stream);
    for (int i = 0; i < COMMAND_COUNT; i++)
        fprintf(stream, "  %-10s %s\n", command_names[i], command_purposes[i]);
    fputs(
        "\nunderscreed help COMMAND, or underscreed COMMAND --help, shows the options.\nThe manual: man underscreed\n",
        stream);
}

static void print_help(FILE *stream, void *context)
{
    options_help(stream, *(const enum command *)context);
}

static void print_version(FILE *stream, void *context)
{
    (void)context;
    fputs("underscreed " PACKAGE_VERSION "\n", stream);
}

static void unknown_command(const char *word)
{
    const char *near = nearest_name(word, command_names, COMMAND_COUNT);
    outcome_message(OUTCOME_USAGE, "\"%s\" is no command%s%s%s", word, near ? "; did you mean \"" : "",
                    near ? near : "", near ? "\"?" : "; underscreed help lists them");
}

/* help, --help, --version and the bare word; true when one of them was it. */
static bool asked_for_help(struct job *job, int count, char **words)
{
    if (!strcmp(words[1], "--version"))
        return job_print(job, print_version, NULL), true;
    if (strcmp(words[1], "help") && strcmp(words[1], "--help") && strcmp(words[1], "-h"))
        return false;
    int found = count > 2 ? command_of(words[2]) : -1;
    enum command command = (enum command)found;
    if (count > 2 && found < 0)
        unknown_command(words[2]);
    else if (count > 2)
        job_print(job, print_help, &command);
    else
        job_print(job, print_overview, NULL);
    return true;
}

/* jansson's scanner goes on with half a token when memory ends, so it must not see that end. */
static void *take_or_end(size_t size)
{
    void *memory = malloc(size);
    if (!memory)
        outcome_exhausted(NULL);
    return memory;
}

int main(int count, char **words)
{
    json_set_alloc_funcs(take_or_end, free);
    struct job job = {.arena = arena_new(outcome_exhausted, NULL)};
    job.problems.arena = job.arena;
    if (count < 2) {
        outcome_message(OUTCOME_USAGE, "needs a command; underscreed help lists them");
    } else if (!asked_for_help(&job, count, words)) {
        int found = command_of(words[1]);
        enum command command = (enum command)found;
        if (found < 0)
            unknown_command(words[1]);
        else if (!options_parse(command, count - 1, words + 1, &job.options)) {
            if (job.options.help)
                job_print(&job, print_help, &command);
            else
                run[command](&job);
        }
    }
    arena_release(job.arena);
    return (int)outcome_now();
}
