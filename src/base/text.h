/* UTF-8 text for people: width, safe printing, wrapping help. */
#ifndef USC_BASE_TEXT_H
#define USC_BASE_TEXT_H

#include <stddef.h>

#include "base/arena.h"

/* Columns that the text takes on a terminal; combining marks 0, East Asian wide 2, an invalid byte 1. */
int text_width(const char *text);
/* The same for the first `bytes` bytes. */
int text_width_of(const char *text, size_t bytes);
/* Bytes of the longest head of the text that takes at most `columns`. */
size_t text_head(const char *text, int columns);
/* A copy with control characters (C0, DEL, C1), bidirectional controls and invalid bytes made visible ("\x1b",
 * "\u202e"). */
const char *text_safe(struct arena *arena, const char *text);
/* A copy in ASCII: known signs replaced (m³ -> m3, – -> -, ≤ -> <=, Δ -> delta, ö -> oe ...), the rest "?". */
const char *text_ascii(struct arena *arena, const char *text);
/* Length in bytes of a valid UTF-8 sequence at text, 0 when invalid; code point into *code. */
size_t text_decode(const char *text, unsigned *code);

#endif
