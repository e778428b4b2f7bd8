/* What a field table cannot say of a row: which keys exclude each other, what follows from what. */
#ifndef USC_PROJECT_DATA_CHECK_H
#define USC_PROJECT_DATA_CHECK_H

#include "project/catalogue.h"
#include "project/record_read.h"
#include "project/requirement.h"

/* Checks every row and fills what follows: s' from s't, loaded thickness, compressibility, names.
 * quick: the rows were made from options, and may lack a thickness. */
void catalogue_check(const struct record_reader *reader, struct catalogue *catalogue, const struct json_path *path,
                     bool quick);
void limits_check(const struct record_reader *reader, struct limits *limits);

/* Two rows of one id are reported at the second. */
void ids_check(const struct record_reader *reader, const struct objects *rows, const struct record *record,
               const struct json_path *list);

#endif
