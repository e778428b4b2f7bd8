/* Files: whole reading with a limit, and output that replaces a file only when complete. */
#ifndef USC_BASE_FILE_H
#define USC_BASE_FILE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#include "base/arena.h"

enum { FILE_INPUT_MOST_MB = 1024 };

/* Reads a whole file ("-": standard input) into the arena, a NUL byte appended and not counted. Returns NULL with errno
 * set (EFBIG above the limit, EISDIR for a directory). */
char *file_read_whole(struct arena *arena, const char *name, size_t *length);

/* Output to FILE: a temporary file beside it, renamed by output_complete(); symbolic links are resolved, targets that
 * are not regular files are written directly. name NULL: standard output. */
struct output {
    FILE *stream;
    char *target, *temporary; /* NULL for standard output and direct writing */
};
/* 0, or -1 with errno set and nothing left behind. */
int output_open(struct output *output, const char *name);
/* Flushes, checks for any write error, renames. 0, or -1 with errno set and the temporary file removed. */
int output_complete(struct output *output);
/* Removes the temporary file; safe to call from a signal handler or twice. */
void output_abandon(struct output *output);

#endif
