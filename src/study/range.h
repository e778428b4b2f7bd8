/* Applying a formula while noticing, also without a working, whether it left its published range. */
#ifndef USC_STUDY_RANGE_H
#define USC_STUDY_RANGE_H

#include "base/formula.h"

/* Is every given value, and the result, inside what the descriptor publishes? */
static inline bool formula_holds(const struct formula *formula, const double given[], int count, double result)
{
    for (int i = 0; i < count; i++) {
        const struct quantity *quantity = &formula->given[formula->list ? 0 : i];
        if (given[i] < quantity->lowest || given[i] > quantity->highest)
            return false;
    }
    return !(result < formula->result.lowest || result > formula->result.highest);
}

/* formula_apply(); *left becomes true when the range was left, and stays as it is otherwise. */
static inline double apply_in_range(const struct formula *formula, const double given[], struct working *working,
                                    bool *left)
{
    double const result = formula_apply(formula, given, working);
    if (!formula_holds(formula, given, formula->given_count, result))
        *left = true;
    return result;
}

#endif
