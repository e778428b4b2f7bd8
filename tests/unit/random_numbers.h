/* Numbers that look random and are the same in every run. */
#ifndef USC_TESTS_RANDOM_NUMBERS_H
#define USC_TESTS_RANDOM_NUMBERS_H

#include <stdint.h>

/* state: any value but 0 to begin with. Marsaglia's xorshift64. */
static inline uint64_t random_next(uint64_t *state)
{
    *state ^= *state << 13;
    *state ^= *state >> 7;
    *state ^= *state << 17;
    return *state;
}

static inline double random_between(uint64_t *state, double low, double high)
{
    return low + (high - low) * (double)(random_next(state) >> 11) / 9007199254740992.0;
}

static inline int random_integer(uint64_t *state, int low, int high)
{
    return low + (int)((random_next(state) >> 11) % (uint64_t)(high - low + 1));
}

#endif
