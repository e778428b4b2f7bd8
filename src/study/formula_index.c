#include "study/formula_index.h"

#include "acoustics/acoustic_formulas.h"

size_t formula_count(void)
{
    return (size_t)usc_acoustic_formula_count;
}

const struct formula *formula_at(size_t index)
{
    return usc_acoustic_formulas[index];
}
