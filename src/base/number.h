/* Numbers as text, the same in every locale. */
#ifndef USC_BASE_NUMBER_H
#define USC_BASE_NUMBER_H

#include <stdbool.h>
#include <stddef.h>

enum { NUMBER_TEXT = 40 };

/* Whole text must be one finite decimal number with a point ("1e3" allowed, no blanks, no hex). */
bool number_parse(const char *text, double *value);

/* "%.10g" without locale, no -0; buffer of NUMBER_TEXT bytes. Aborts on NaN or infinity: that is a bug of the caller.
 * Returns buffer. */
const char *number_exact(double value, char buffer[NUMBER_TEXT]);

/* Fixed decimals (0..6), rounded half up in the decimal sense (60.05 -> 60.1), no "-0.0". Infinity prints as a word
 * ("unlimited"), NaN as "-". Returns buffer. */
const char *number_fixed(double value, int decimals, char buffer[NUMBER_TEXT]);

/* As few digits as say it: up to `decimals` with trailing zeros cut (45, 14.5). */
const char *number_short(double value, int decimals, char buffer[NUMBER_TEXT]);

#endif
