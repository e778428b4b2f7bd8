/* What the bench runs, in turn. Printed on request; nothing here passes or fails. */
#ifndef USC_TESTS_BENCHES_H
#define USC_TESTS_BENCHES_H

/* Spectra per second of each rating, one core. */
void rating_bench(void);
/* Candidates per second of design, the long way and by search, and how it grows. */
void design_bench(void);

#endif
