#include "base/formula.h"

#include <string.h>

const char *standing_name(enum standing standing)
{
    switch (standing) {
    case STANDING_PUBLISHED:
        return "published";
    case STANDING_COMMON_PRACTICE:
        return "common practice";
    case STANDING_FROM_MEMORY:
        return "from memory";
    case STANDING_DERIVED:
        return "derived";
    }
    return "unknown";
}

/* Notes the first of the values that lies outside the published range, so that a spectrum or a list warns once.
 * NaN stands for an absent value and lies in no range and outside none. */
static void check_range(const struct formula *formula, const struct quantity *quantity, const double value[], int count,
                        struct working *working)
{
    for (int i = 0; i < count; i++) {
        if (!(value[i] < quantity->lowest || value[i] > quantity->highest))
            continue;
        struct excursion *excursion = arena_take(working->arena, sizeof *excursion);
        *excursion = (struct excursion){.formula = formula, .quantity = quantity, .value = value[i]};
        if (working->last_excursion)
            working->last_excursion->next = excursion;
        else
            working->first_excursion = excursion;
        working->last_excursion = excursion;
        return;
    }
}

static void record_step(const struct formula *formula, const double given[], int count, double result, int result_count,
                        struct working *working)
{
    struct step *step = arena_take(working->arena, sizeof *step);
    double *kept = arena_take_many(working->arena, (size_t)count, sizeof *kept);

    if (count > 0)
        memcpy(kept, given, (size_t)count * sizeof *kept);
    *step = (struct step){
        .formula = formula, .given = kept, .given_count = count, .result = result, .result_count = result_count};
    if (working->last_step)
        working->last_step->next = step;
    else
        working->first_step = step;
    working->last_step = step;
}

double formula_apply(const struct formula *formula, const double given[], struct working *working)
{
    double result = formula->value(given, formula->given_count);

    if (working) {
        for (int i = 0; i < formula->given_count; i++)
            check_range(formula, &formula->given[i], &given[i], 1, working);
        check_range(formula, &formula->result, &result, 1, working);
        record_step(formula, given, formula->given_count, result, 1, working);
    }
    return result;
}

double formula_apply_list(const struct formula *formula, const double given[], int count, struct working *working)
{
    double result = formula->value(given, count);

    if (working) {
        check_range(formula, &formula->given[0], given, count, working);
        check_range(formula, &formula->result, &result, 1, working);
        record_step(formula, given, count, result, 1, working);
    }
    return result;
}

void formula_apply_along(const struct formula *formula, const double given[], int along, const double at[], int n,
                         double result[], struct working *working)
{
    double one[FORMULA_GIVEN_MOST];

    if (n <= 0)
        return;
    for (int i = 0; i < formula->given_count; i++)
        one[i] = given[i];
    for (int i = 0; i < n; i++) {
        one[along] = at[i];
        result[i] = formula->value(one, formula->given_count);
    }
    if (working) {
        for (int i = 0; i < formula->given_count; i++)
            check_range(formula, &formula->given[i], i == along ? at : &one[i], i == along ? n : 1, working);
        check_range(formula, &formula->result, result, n, working);
        record_step(formula, one, formula->given_count, result[n - 1], n, working);
    }
}
