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
struct job {
    struct arena *arena;
    struct problems problems;
    struct options options;
    struct data data;
};

void command_predict(struct job *job);
void command_design(struct job *job);
void command_rate(struct job *job);
void command_rate_plan(struct job *job); /* rate --plan */
void command_stiffness(struct job *job);
void command_compare(struct job *job);
void command_limits(struct job *job);
void command_catalogue(struct job *job);
void command_formulas(struct job *job);
void command_formats(struct job *job);
void command_start(struct job *job);
void command_options(struct job *job);

/* Data and the user's own files; false after a message. */
bool job_load_data(struct job *job);
/* The project that the command line names or describes; NULL after messages. */
struct project *job_load_project(struct job *job);
/* Text of the project that a quick form stands for. */
const char *quick_form_text(struct arena *arena, const struct options *options);
/* False after a message: an option lacks its companion, or is out of range. */
bool quick_form_complete(const struct options *options);

/* Prints a page by the options' width, signs and file; 0 or -1 after a message. */
int job_print_page(struct job *job, const struct page *page);
/* Writes through a function into the options' file or standard output; 0 or -1 after a message. */
int job_print(struct job *job, void (*print)(FILE *stream, void *context), void *context);

#endif
