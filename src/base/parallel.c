#include "base/parallel.h"

void parallel_for(size_t count, void (*body)(void *context, size_t index), void *context)
{
#ifdef _OPENMP
#pragma omp parallel for schedule(dynamic)
#endif
    for (size_t i = 0; i < count; i++)
        body(context, i);
}
