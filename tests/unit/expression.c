#include "unit/expression.h"

#include <ctype.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Grammar
 *   sum:     "-"? product (("+" | "-") product)*
 *   product: power (("*" | "/" | nothing) power)*      from left to right; nothing stands for "*"
 *   power:   primary ("^" power)?
 *   primary: number | "pi" | {symbol} | "(" sum ")" | name "(" sum ("," sum)* ")" */
struct reader {
    const char *at;
    const struct formula *formula;
    const double *given;
    int count;
    int element; /* of a list, inside sum() and mean(); -1 outside */
    const char *reason;
};

static double read_sum(struct reader *reader);

static void refuse(struct reader *reader, const char *reason)
{
    if (!reader->reason)
        reader->reason = reason;
    reader->at = "";
}

static char next_sign(struct reader *reader)
{
    while (*reader->at == ' ')
        reader->at++;
    return *reader->at;
}

static bool take(struct reader *reader, char sign)
{
    if (next_sign(reader) != sign)
        return false;
    reader->at++;
    return true;
}

static void expect(struct reader *reader, char sign, const char *reason)
{
    if (!take(reader, sign))
        refuse(reader, reason);
}

static double read_symbol(struct reader *reader)
{
    size_t length = strcspn(reader->at, "}");

    for (int i = 0; i < reader->formula->given_count; i++) {
        const char *symbol = reader->formula->given[i].symbol;
        if (strlen(symbol) != length || strncmp(symbol, reader->at, length) != 0)
            continue;
        reader->at += length;
        expect(reader, '}', "a brace is not closed");
        if (!reader->formula->list)
            return reader->given[i];
        if (reader->element >= 0)
            return reader->given[reader->element];
        refuse(reader, "a symbol of a list stands outside sum() and mean()");
        return NAN;
    }
    refuse(reader, "a symbol is none of the given quantities");
    return NAN;
}

/* The inside is read again for every element. */
static double read_over_list(struct reader *reader, bool mean)
{
    const char *inside = reader->at;
    double total = 0;

    if (!reader->formula->list || reader->element >= 0)
        refuse(reader, "sum() or mean() without a list");
    for (int i = 0; i < reader->count && !reader->reason; i++) {
        reader->at = inside;
        reader->element = i;
        total += read_sum(reader);
        reader->element = -1;
    }
    expect(reader, ')', "a bracket is not closed");
    return mean ? total / reader->count : total;
}

static double read_name(struct reader *reader)
{
    const char *name = reader->at;

    while (isalpha((unsigned char)*reader->at))
        reader->at++;
    size_t length = (size_t)(reader->at - name);
#define IS(NAME) (length == sizeof NAME - 1 && strncmp(name, NAME, length) == 0)
    if (IS("pi"))
        return 3.14159265358979323846;
    expect(reader, '(', "a name without bracket");
    if (IS("sum") || IS("mean"))
        return read_over_list(reader, IS("mean"));
    double first = read_sum(reader);
    if (IS("min") || IS("max")) {
        while (take(reader, ',')) {
            double other = read_sum(reader);
            first = IS("min") ? fmin(first, other) : fmax(first, other);
        }
    } else if (IS("lg")) {
        first = log10(first);
    } else if (IS("sqrt")) {
        first = sqrt(first);
    } else {
        refuse(reader, "unknown function");
    }
#undef IS
    expect(reader, ')', "a bracket is not closed");
    return first;
}

static double read_primary(struct reader *reader)
{
    char sign = next_sign(reader);

    if (isdigit((unsigned char)sign)) {
        char *end;
        double number = strtod(reader->at, &end);
        reader->at = end;
        return number;
    }
    if (isalpha((unsigned char)sign))
        return read_name(reader);
    if (take(reader, '{'))
        return read_symbol(reader);
    if (take(reader, '(')) {
        double value = read_sum(reader);
        expect(reader, ')', "a bracket is not closed");
        return value;
    }
    refuse(reader, "a number, symbol, function or bracket is missing");
    return NAN;
}

static double read_power(struct reader *reader)
{
    double base = read_primary(reader);

    return take(reader, '^') ? pow(base, read_power(reader)) : base;
}

static double read_product(struct reader *reader)
{
    double value = read_power(reader);

    for (;;) {
        char sign = next_sign(reader);
        if (take(reader, '*') || isalnum((unsigned char)sign) || sign == '{' || sign == '(')
            value *= read_power(reader);
        else if (take(reader, '/'))
            value /= read_power(reader);
        else
            return value;
    }
}

static double read_sum(struct reader *reader)
{
    double value = take(reader, '-') ? -read_product(reader) : read_product(reader);

    for (;;) {
        if (take(reader, '+'))
            value += read_product(reader);
        else if (take(reader, '-'))
            value -= read_product(reader);
        else
            return value;
    }
}

bool expression_value(const struct formula *formula, const double given[], int count, double *value,
                      const char **reason)
{
    struct reader reader = {formula->expression, formula, given, count, -1, NULL};

    *value = read_sum(&reader);
    if (!reader.reason && next_sign(&reader) != '\0')
        refuse(&reader, "something is left over at the end");
    *reason = reader.reason;
    return !reader.reason;
}
