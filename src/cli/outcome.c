/* Standard error, exit status, and the output file while it is written. */
#include "cli/outcome.h"

#include <errno.h>
#include <signal.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/text.h"

enum { PROBLEMS_SHOWN_MOST = 50 };

static enum outcome outcome_so_far = OUTCOME_MET;
static struct output *volatile unfinished;

void outcome_raise(enum outcome outcome)
{
    if (outcome > outcome_so_far)
        outcome_so_far = outcome;
}

enum outcome outcome_now(void)
{
    return outcome_so_far;
}

/* Names from files and command lines may hold anything: control characters are shown, not sent. */
static void print_safe(const char *text)
{
    struct arena *arena = arena_new(outcome_exhausted, NULL);
    fprintf(stderr, "underscreed: %s\n", text_safe(arena, text));
    arena_release(arena);
}

static void print_formatted(const char *format, va_list values, const char *tail)
{
    struct arena *arena = arena_new(outcome_exhausted, NULL);
    print_safe(arena_printf(arena, "%s%s", arena_vprintf(arena, format, values), tail));
    arena_release(arena);
}

void outcome_message(enum outcome outcome, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    print_formatted(format, values, "");
    va_end(values);
    outcome_raise(outcome);
}

void outcome_system(const char *format, ...)
{
    char tail[256];
    va_list values;
    snprintf(tail, sizeof tail, ": %s", strerror(errno));
    va_start(values, format);
    print_formatted(format, values, tail);
    va_end(values);
    outcome_raise(OUTCOME_SYSTEM);
}

static void print_problem(struct arena *arena, const struct problem *problem, const char *place)
{
    static const char *const word[] = {"note: ", "warning: ", ""};
    const struct place *at = &problem->place;
    const char *head = at->file ? arena_printf(arena, "%s:", at->file) : "";
    if (at->file && at->line)
        head = arena_printf(arena, "%s%d:%d:", head, at->line, at->column);
    print_safe(arena_printf(arena, "%s%s%s%s%s%s%s%s", head, *head ? " " : "", word[problem->severity], place,
                            *place ? ": " : "", problem->text, problem->hint ? "; " : "",
                            problem->hint ? problem->hint : ""));
}

/* By place in the file; those of one place, or of none, as they were found. */
struct numbered {
    const struct problem *problem;
    size_t number;
};

static int by_place(const void *a, const void *b)
{
    const struct numbered *left = a, *right = b;
    const struct place *one = &left->problem->place, *other = &right->problem->place;
    if (one->line != other->line)
        return one->line < other->line ? -1 : 1;
    if (one->column != other->column)
        return one->column < other->column ? -1 : 1;
    return left->number < right->number ? -1 : 1;
}

/* All problems that are listed, sorted; their number into *count. */
static struct numbered *sorted_problems(const struct problems *problems, struct arena *arena, size_t *count)
{
    *count = 0;
    for (const struct problem *problem = problems->first; problem; problem = problem->next)
        ++*count;
    struct numbered *sorted = arena_take_many(arena, *count, sizeof *sorted);
    *count = 0;
    for (const struct problem *problem = problems->first; problem; problem = problem->next, ++*count)
        sorted[*count] = (struct numbered){problem, *count};
    qsort(sorted, *count, sizeof *sorted, by_place);
    return sorted;
}

void outcome_problems(const struct problems *problems, const char *(*place_name)(const char *path))
{
    struct arena *arena = arena_new(outcome_exhausted, NULL);
    size_t shown = 0, all = 0, listed;
    const struct numbered *sorted = sorted_problems(problems, arena, &listed);
    for (int i = 0; i < SEVERITY_COUNT; i++)
        all += problems->count[i];
    for (; shown < listed && shown < PROBLEMS_SHOWN_MOST; shown++) {
        const struct problem *problem = sorted[shown].problem;
        print_problem(arena, problem, place_name ? place_name(problem->place.path) : problem->place.path);
    }
    if (all > shown)
        fprintf(stderr, "underscreed: and %zu more\n", all - shown);
    if (problems_any_error(problems))
        outcome_raise(place_name ? OUTCOME_USAGE : OUTCOME_INPUT);
    arena_release(arena);
}

static void on_signal(int number)
{
    if (unfinished)
        output_abandon((struct output *)unfinished);
    signal(number, SIG_DFL);
    raise(number);
}

int outcome_open(struct output *output, const char *name)
{
    static const int signals[] = {SIGINT, SIGTERM, SIGHUP};
    if (output_open(output, name)) {
        outcome_system("%s", name ? name : "standard output");
        return -1;
    }
    unfinished = output;
    for (size_t i = 0; i < sizeof signals / sizeof signals[0]; i++)
        signal(signals[i], on_signal);
    return 0;
}

int outcome_close(struct output *output, const char *name)
{
    int status = output_complete(output);
    unfinished = NULL;
    if (status)
        outcome_system("%s", name ? name : "standard output");
    return status;
}

void outcome_exhausted(void *context)
{
    static const char text[] = "underscreed: memory is exhausted: Cannot allocate memory\n";
    (void)context;
    if (unfinished)
        output_abandon((struct output *)unfinished);
    if (write(STDERR_FILENO, text, sizeof text - 1) < 0)
        _exit(OUTCOME_SYSTEM);
    _exit(OUTCOME_SYSTEM);
}
