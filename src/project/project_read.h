/* From the text of a project file to a project, or to its problems. */
#ifndef USC_PROJECT_PROJECT_READ_H
#define USC_PROJECT_PROJECT_READ_H

#include "base/problem.h"
#include "project/data_store.h"
#include "project/project.h"

/* name: as the user knows it. quick: made from options; rows of its own may then lack a thickness. */
struct input {
    const char *name, *text;
    size_t length;
    bool quick;
};

/* Reads, fills defaults, resolves every id. The project's catalogue is then the data's with the project's own rows in
 * front. Returns NULL after any error; all of them are in problems, with line and column. Not longer valid than arena
 * and data. */
struct project *project_read(const struct input *input, const struct data *data, struct arena *arena,
                             struct problems *problems);

#endif
