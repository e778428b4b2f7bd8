/* A user of the library: compiled with its public face, linked to the shared library alone, so a symbol that is not
 * exported, or that the library itself lacks, stops the build of the tests. TAP on standard output. */
#include <math.h>
#include <stdio.h>

#include "underscreed.h"

static int count, failures;

static void say(int passed, const char *what)
{
    printf("%sok %d - %s\n", passed ? "" : "not ", ++count, what);
    failures += !passed;
}

int main(void)
{
    double given[] = {10, 90};
    say(fabs(usc_resonance_Hz(10, 90) - 160.0 / 3) <= 1e-9, "a typed function: 160 sqrt(10/90)");
    say(formula_apply(&usc_resonance_formula, given, NULL) == usc_resonance_Hz(10, 90), "its descriptor says the same");
    say(standing_name(usc_resonance_formula.source.standing)[0] != '\0', "a standing has a name");
    printf("1..%d\n", count);
    return failures > 0;
}
