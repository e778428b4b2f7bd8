/* The documents of data/ that the program carries inside itself, parsed when asked for.
 * The definitions are written at build time by embed_data.sh, sorted by path. */
#ifndef USC_PROJECT_DATA_EMBEDDED_H
#define USC_PROJECT_DATA_EMBEDDED_H

#include <stddef.h>

/* path: below data/, "limits/germany.json". bytes: the file as it is, not terminated. */
struct embedded_document {
    const char *path;
    const unsigned char *bytes;
    size_t size;
};

extern const struct embedded_document embedded_documents[];
extern const size_t embedded_document_count;

#endif
