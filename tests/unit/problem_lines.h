/* Problems as text, for comparing all of them at once: "line:column path: text; hint", one a line. */
#ifndef USC_TESTS_PROBLEM_LINES_H
#define USC_TESTS_PROBLEM_LINES_H

#include "base/arena.h"
#include "base/problem.h"

static inline const char *problem_lines(const struct problems *problems)
{
    const char *lines = "";
    for (const struct problem *problem = problems->first; problem; problem = problem->next)
        lines = arena_printf(problems->arena, "%s%s%d:%d %s: %s%s%s", lines, *lines ? "\n" : "", problem->place.line,
                             problem->place.column, problem->place.path, problem->text, problem->hint ? "; " : "",
                             problem->hint ? problem->hint : "");
    return lines;
}

#endif
