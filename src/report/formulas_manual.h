/* The manual page underscreed-formulas(7), from the descriptors. */
#ifndef USC_REPORT_FORMULAS_MANUAL_H
#define USC_REPORT_FORMULAS_MANUAL_H

#include <stdio.h>

#include "base/formula.h"

/* mdoc, ASCII only. Same descriptors, same bytes: the date is fixed. */
void formulas_manual_print(FILE *stream, const struct formula *const formula[], int count);

#endif
