#include "cli/commands.h"
#include "cli/outcome.h"
#include "project/starter.h"

static void print_starter(FILE *stream, void *context)
{
    (void)context;
    fputs(starter_project, stream);
}

void command_start(struct job *job)
{
    if (job->options.argument_count)
        outcome_message(OUTCOME_USAGE, "start: takes no argument; -o FILE names the file");
    else
        job_print(job, print_starter, NULL);
}
