#include "base/problem.h"

#include <stdarg.h>

/* Of each severity; more help nobody, and a file of a million mistakes must not fill the memory. */
enum { PROBLEMS_KEPT_MOST = 1000 };

struct problem *problem_add(struct problems *problems, enum severity severity, const char *file, const char *path,
                            const char *hint, const char *format, ...)
{
    struct problem *problem = arena_take(problems->arena, sizeof *problem);
    problem->severity = severity;
    problem->place.file = file;
    problem->place.path = problem->text = "";
    if (++problems->count[severity] > PROBLEMS_KEPT_MOST)
        return problem; /* counted, but not in the list */
    problem->place.path = path ? arena_text(problems->arena, path) : "";
    problem->hint = hint ? arena_text(problems->arena, hint) : NULL;
    va_list given;
    va_start(given, format);
    problem->text = arena_vprintf(problems->arena, format, given);
    va_end(given);
    if (problems->last)
        problems->last->next = problem;
    else
        problems->first = problem;
    problems->last = problem;
    return problem;
}
