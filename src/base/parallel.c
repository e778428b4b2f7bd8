#include "base/parallel.h"

/* One round needs no threads: starting them costs more, and a runtime that cannot start them ends the program by its
 * own rules. */
enum { ROUNDS_WORTH_THREADS = 2 };

void parallel_for(size_t count, void (*body)(void *context, size_t index), void *context)
{
    if (count < ROUNDS_WORTH_THREADS) {
        for (size_t i = 0; i < count; i++)
            body(context, i);
        return;
    }
#ifdef _OPENMP
#pragma omp parallel for schedule(dynamic)
#endif
    for (size_t i = 0; i < count; i++)
        body(context, i);
}
