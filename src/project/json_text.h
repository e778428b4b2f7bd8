/* JSON text taken apart without a tree, and places in it.
 *
 * A document is read member by member, and its list of rooms element by element, so that a file of 100 000 rooms never
 * stands in memory as one tree. Nothing here judges a value: a piece that is cut out is then parsed by the library. */
#ifndef USC_PROJECT_JSON_TEXT_H
#define USC_PROJECT_JSON_TEXT_H

#include <stddef.h>

/* From at on: the next byte that is not white space. */
size_t json_text_blank(const char *text, size_t length, size_t at);
/* at: the first byte of a value. Returns the byte after it; length when the value does not end. */
size_t json_text_skip(const char *text, size_t length, size_t at);

/* Walks the members of an object or the elements of an array. Begin with at = offset of the bracket.
 * Each call sets the piece and returns 1; 0 at the closing bracket (at is then the byte after it); -1 when the text
 * breaks off or a separator is missing, at then names the place. */
struct json_piece {
    size_t key, key_end;     /* the key between its quotes; equal in an array */
    size_t value, value_end; /* value_end: the byte after it */
};
struct json_walk {
    const char *text;
    size_t length, at;
    int begun;
};
int json_walk_next(struct json_walk *walk, struct json_piece *piece);

/* Line and column (from 1, in code points) of a byte offset. */
void json_text_position(const char *text, size_t offset, int *line, int *column);
/* Byte offset of the value at a path like "rooms[2].slab.mass_kg_m2"; of the nearest enclosing value that exists when
 * it does not. Keys with escapes in the text are compared as written. */
size_t json_text_find(const char *text, size_t length, const char *path);

#endif
