#include "bench/benches.h"

#include <stdio.h>
#include <time.h>

#include "acoustics/impact_class.h"
#include "acoustics/rating.h"
#include "unit/random_numbers.h"

enum { SPECTRA = 4096, ROUNDS = 1000 };

static usc_tenths spectra[SPECTRA][USC_RATED_BANDS];

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

/* Floors as they are measured: a level, a slope and a scatter of a few decibels. */
static void fill(void)
{
    uint64_t state = 1;

    for (int n = 0; n < SPECTRA; n++) {
        const int start = random_integer(&state, 400, 800), slope = random_integer(&state, -15, 30);
        for (int i = 0; i < USC_RATED_BANDS; i++)
            spectra[n][i] = (usc_tenths)(start - slope * i + random_integer(&state, -40, 40));
    }
}

typedef int rate_one(const usc_tenths level[], long long *checked);

static int third_octave(const usc_tenths level[], long long *checked)
{
    struct usc_rating rating;
    int status = usc_rate_impact(level, &rating);
    *checked += rating.value + rating.C_I_dB;
    return status;
}

static int third_octave_fine(const usc_tenths level[], long long *checked)
{
    struct usc_rating rating;
    int status = usc_rate_impact_fine(level, &rating);
    *checked += rating.value;
    return status;
}

static int octave(const usc_tenths level[], long long *checked)
{
    struct usc_rating rating;
    int status = usc_rate_impact_octave(level, &rating);
    *checked += rating.value + rating.C_I_dB;
    return status;
}

static int impact_class(const usc_tenths level[], long long *checked)
{
    struct usc_impact_class class;
    int status = usc_rate_impact_class(level, &class);
    *checked += class.value;
    return status;
}

static void measure(const char *what, rate_one *rate)
{
    long long checked = 0;
    int failures = 0;
    const double begin = seconds();

    for (int round = 0; round < ROUNDS; round++)
        for (int n = 0; n < SPECTRA; n++)
            failures += rate(spectra[n], &checked) != 0;
    const double rate_1_s = (double)SPECTRA * ROUNDS / (seconds() - begin);
    printf("%-36s %6.2f million spectra per second (%d refused, check %lld)\n", what, rate_1_s / 1e6, failures,
           checked);
}

void rating_bench(void)
{
    fill();
    measure("third octaves with C_I", third_octave);
    measure("third octaves in steps of 0.1 dB", third_octave_fine);
    measure("octaves with C_I", octave);
    measure("impact class", impact_class);
}
