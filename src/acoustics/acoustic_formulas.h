/* Every descriptor of the acoustics in the order of the working: for the page of formulas and for tests. */
#ifndef USC_ACOUSTICS_ACOUSTIC_FORMULAS_H
#define USC_ACOUSTICS_ACOUSTIC_FORMULAS_H

#include "base/formula.h"

extern const struct formula *const usc_acoustic_formulas[];
extern const int usc_acoustic_formula_count;

#endif
