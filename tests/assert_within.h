/* A comparison of numbers with a stated tolerance, in the unit of the numbers. */
#ifndef USC_TESTS_ASSERT_WITHIN_H
#define USC_TESTS_ASSERT_WITHIN_H

#include <check.h>
#include <math.h>

/* Passes only if |actual - expected| <= tolerance: a tolerance of 0 asks for equality, and NaN fails on any side.
 * Equal infinities are equal. */
#define assert_within(actual, expected, tolerance)                                                                     \
    do {                                                                                                               \
        const double actual_ = (actual), expected_ = (expected), tolerance_ = (tolerance);                             \
        ck_assert_msg(actual_ == expected_ || fabs(actual_ - expected_) <= tolerance_,                                 \
                      "%s is %.17g, expected %.17g within %g", #actual, actual_, expected_, tolerance_);               \
    } while (0)

#endif
