#include "study/formula_index.h"

#include <string.h>

#include "acoustics/acoustic_formulas.h"

size_t formula_count(void)
{
    return (size_t)usc_acoustic_formula_count;
}

const struct formula *formula_at(size_t index)
{
    return usc_acoustic_formulas[index];
}

const struct formula *formula_by_id(const char *id)
{
    for (size_t i = 0; i < formula_count(); i++)
        if (!strcmp(formula_at(i)->id, id))
            return formula_at(i);
    return NULL;
}
