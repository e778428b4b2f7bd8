/* The one parallel loop. Without OpenMP it runs in order. Nothing inside may allocate from a shared arena. */
#ifndef USC_BASE_PARALLEL_H
#define USC_BASE_PARALLEL_H

#include <stddef.h>

/* Calls body(context, i) for i in [0, count), in any order, on all cores (OMP_NUM_THREADS respected). */
void parallel_for(size_t count, void (*body)(void *context, size_t index), void *context);

#endif
