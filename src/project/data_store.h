/* The data that go with the program: built in, or whole files of a directory in front of them. */
#ifndef USC_PROJECT_DATA_STORE_H
#define USC_PROJECT_DATA_STORE_H

#include "base/problem.h"
#include "project/catalogue.h"
#include "project/practice.h"
#include "project/requirement.h"

/* One document that was used. path: "catalogue/screeds.json"; origin: "built in" or the file's name. */
struct data_document {
    const char *path, *origin, *text;
    size_t length;
};

struct data {
    struct catalogue catalogue;
    struct limits limits;
    struct practice practice;
    struct objects documents; /* struct data_document: built in first, then the user's, by path */
};

enum data_status { DATA_READ = 0, DATA_FAULTY = -1, DATA_UNREADABLE = -2 };

/* directory: NULL, or one whose catalogue/, limits/ and practice/ hold *.json; a file of the same name replaces a
 * built-in one, others are added. Later rows replace earlier ones of the same id. DATA_FAULTY: problems say why.
 * DATA_UNREADABLE: errno set, *culprit names the file or directory. */
enum data_status data_load(const char *directory, struct arena *arena, struct problems *problems, struct data *data,
                           const char **culprit);

/* Adds one file of the user's to the data by its own kind. */
enum data_status data_add_catalogue(struct data *data, const char *name, struct arena *arena,
                                    struct problems *problems);
enum data_status data_add_limits(struct data *data, const char *name, struct arena *arena, struct problems *problems);

/* Puts more rows behind (or in the place of) those of the same id. */
void catalogue_merge(struct catalogue *catalogue, const struct catalogue *more, struct arena *arena);

#endif
