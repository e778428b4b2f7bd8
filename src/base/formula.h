/* The formula descriptor: what a formula says, where it comes from, where it holds, and the function itself.
 *
 * formula_apply() is the only thing that checks the published range, notes a range that was left and records a step of
 * the working. Hot loops call the typed functions beside each descriptor.
 *
 * Expression: the symbols of the given quantities in braces, {s'}; numbers; + - * / ^ and juxtaposition for products;
 * lg, sqrt, min, max, pi; for a list formula sum(...) and mean(...), whose inside is taken for every element. A test
 * evaluates the text on random input and compares it with the function.
 */
#ifndef USC_BASE_FORMULA_H
#define USC_BASE_FORMULA_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"

enum standing { STANDING_PUBLISHED, STANDING_COMMON_PRACTICE, STANDING_FROM_MEMORY, STANDING_DERIVED };
const char *standing_name(enum standing standing);

/* symbol: as the standard writes it. key: as JSON writes it. unit: "" when none. lowest, highest: the published range,
 * -INFINITY and INFINITY where none is published. */
struct quantity {
    const char *symbol, *key, *unit;
    double lowest, highest;
};

struct source {
    const char *work, *clause;
    enum standing standing;
};

enum { FORMULA_GIVEN_MOST = 6 };

struct formula {
    const char *id;         /* "resonance-frequency" */
    const char *title;      /* one line in plain words */
    const char *expression; /* right-hand side */
    struct quantity result;
    const struct quantity *given;
    int given_count;
    bool list; /* one given quantity, any number of values */
    struct source source;
    const char *note;                                 /* validity in words, traps; may be NULL */
    double (*value)(const double given[], int count); /* pure */
};

/* One step: the formula with its numbers. A spectrum is one step with result_count > 1: given[] then holds the values
 * at the last band, and along names the given quantity that ran through the frequencies. */
struct step {
    const struct formula *formula;
    double *given;
    int given_count;
    double result;
    int result_count;
    struct step *next;
};

/* A given value (or the result) outside the published range. quantity: pointer into the descriptor. */
struct excursion {
    const struct formula *formula;
    const struct quantity *quantity;
    double value;
    struct excursion *next;
};

/* What was computed for one subject (a room, a build-up). Notes are sentences that belong beside the working. */
struct working {
    struct arena *arena;
    struct step *first_step, *last_step;
    struct excursion *first_excursion, *last_excursion;
};

/* Computes; with working, checks ranges and records. Given: given_count values in the descriptor's order, or, for a
 * list formula, count values. Unit: those of the descriptor. */
double formula_apply(const struct formula *formula, const double given[], struct working *working);
double formula_apply_list(const struct formula *formula, const double given[], int count, struct working *working);
/* One step for a whole spectrum: the given quantity number `along` takes the values at[0..n). Results into result. */
void formula_apply_along(const struct formula *formula, const double given[], int along, const double at[], int n,
                         double result[], struct working *working);

#endif
