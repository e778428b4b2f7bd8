/* How fast spectra are rated. Run on request, never a test. */
#ifndef USC_TESTS_RATING_BENCH_H
#define USC_TESTS_RATING_BENCH_H

/* Prints spectra per second of each rating, one core. */
void rating_bench(void);

#endif
