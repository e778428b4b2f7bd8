/* Every formula of the program, for the page of formulas, the manual and the tests. */
#ifndef USC_STUDY_FORMULA_INDEX_H
#define USC_STUDY_FORMULA_INDEX_H

#include "base/formula.h"

size_t formula_count(void);
const struct formula *formula_at(size_t index);

#endif
