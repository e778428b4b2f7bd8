#include "cli/commands.h"
#include "cli/outcome.h"
#include "project/starter.h"

static void print_starter(FILE *stream, void *context)
{
    (void)context;
    fputs(starter_project, stream);
}

void command_start(struct session *session)
{
    if (session->options.argument_count)
        outcome_message(OUTCOME_USAGE, "start: takes no argument; -o FILE names the file");
    else
        session_print(session, print_starter, NULL);
}
