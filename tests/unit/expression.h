/* Computes the text of a formula, so that a test can hold text and function against each other. */
#ifndef USC_TESTS_EXPRESSION_H
#define USC_TESTS_EXPRESSION_H

#include <stdbool.h>

#include "base/formula.h"

/* Given values as for formula_apply (count of them). Returns false, with a reason, when the text is not understood. */
bool expression_value(const struct formula *formula, const double given[], int count, double *value,
                      const char **reason);

#endif
