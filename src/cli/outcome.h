/* The one owner of standard error and of the exit status, and of the output file while it is being written. */
#ifndef USC_CLI_OUTCOME_H
#define USC_CLI_OUTCOME_H

#include "base/file.h"
#include "base/problem.h"

/* The exit statuses, a promise to scripts. */
enum outcome { OUTCOME_MET = 0, OUTCOME_NOT_MET = 1, OUTCOME_USAGE = 2, OUTCOME_INPUT = 3, OUTCOME_SYSTEM = 4 };

/* Only raises: a later, lower outcome does not undo an earlier one. */
void outcome_raise(enum outcome outcome);
enum outcome outcome_now(void);

/* "underscreed: " and the text on standard error, made safe for a terminal; raises the outcome. */
void outcome_message(enum outcome outcome, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* As above with the system's own text for errno at the end; OUTCOME_SYSTEM. */
void outcome_system(const char *format, ...) __attribute__((format(printf, 1, 2)));

/* Prints problems in order, errors capped ("and 312 more"). place_name: turns a path into what the user typed (an
 * option), or NULL. */
void outcome_problems(const struct problems *problems, const char *(*place_name)(const char *path));

/* Opens, and removes the unfinished file on a signal. 0, or -1 after a message. */
int outcome_open(struct output *output, const char *name);
int outcome_close(struct output *output, const char *name);

/* The arena's handler: memory is exhausted. Does not return. */
void outcome_exhausted(void *context);

#endif
