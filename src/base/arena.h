/* Memory that is taken piece by piece and released as a whole.
 *
 * The arena never returns NULL: on exhaustion it calls its owner's handler, which must not return (the program removes
 * its temporary file and exits; a library user or a test jumps out). Under the address sanitizer every request is its
 * own malloc, so that overflows are seen. Not shared between threads.
 */
#ifndef USC_BASE_ARENA_H
#define USC_BASE_ARENA_H

#include <stdarg.h>
#include <stddef.h>

struct arena;

/* exhausted: called with context when memory ends; must not return. */
struct arena *arena_new(void (*exhausted)(void *context), void *context);
void arena_release(struct arena *arena);

/* Zeroed, aligned for any type. A size of 0 is allowed. */
void *arena_take(struct arena *arena, size_t size);
/* Zeroed room for count things of size bytes; a product that overflows counts as exhaustion. */
void *arena_take_many(struct arena *arena, size_t count, size_t size);
/* Room for a list that grows: returns a block of at least twice the old count, the old content copied. */
void *arena_grow(struct arena *arena, const void *old, size_t old_count, size_t *room, size_t size);

char *arena_text(struct arena *arena, const char *text);
char *arena_text_of(struct arena *arena, const char *bytes, size_t length);
char *arena_printf(struct arena *arena, const char *format, ...) __attribute__((format(printf, 2, 3)));
char *arena_vprintf(struct arena *arena, const char *format, va_list given) __attribute__((format(printf, 2, 0)));

#endif
