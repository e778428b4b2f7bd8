/* One function a command: options in, one study, one presenter. Each raises the outcome. */
#ifndef USC_CLI_COMMANDS_H
#define USC_CLI_COMMANDS_H

#include "base/arena.h"
#include "base/file.h"
#include "cli/options.h"
#include "project/data_store.h"
#include "project/project.h"
#include "report/page.h"

/* What every command starts with. */
struct session {
    struct arena *arena;
    struct problems problems;
    struct options options;
    struct data data;
};

void command_predict(struct session *session);
void command_design(struct session *session);
void command_rate(struct session *session);
void command_rate_plan(struct session *session); /* rate --plan */
void command_stiffness(struct session *session);
void command_compare(struct session *session);
void command_limits(struct session *session);
void command_catalogue(struct session *session);
void command_formulas(struct session *session);
void command_formats(struct session *session);
void command_start(struct session *session);
void command_options(struct session *session);

/* Data and the user's own files; false after a message. */
bool session_load_data(struct session *session);
/* The project that the command line names or describes; NULL after messages. */
struct project *session_load_project(struct session *session);
/* Text of the project that a quick form stands for. */
const char *quick_form_text(struct arena *arena, const struct options *options);
/* False after a message: an option lacks its companion, or is out of range. */
bool quick_form_complete(const struct options *options);

/* Prints a page by the options' width, signs and file; 0 or -1 after a message. */
int session_print_page(struct session *session, const struct page *page);
/* Writes through a function into the options' file or standard output; 0 or -1 after a message. */
int session_print(struct session *session, void (*print)(FILE *stream, void *context), void *context);

#endif
