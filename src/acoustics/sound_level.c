#include "acoustics/sound_level.h"

#include "base/tenths.h"

#define UNLIMITED -INFINITY, INFINITY
#define FIELD_STANDARD "ISO 16283-2"
#define LEVEL(SYMBOL, KEY)                                                                                             \
    {                                                                                                                  \
        SYMBOL, KEY, "dB", UNLIMITED                                                                                   \
    }

/* Energy mean
 * Purpose:   one level for several microphone and tapping-machine positions.
 * Given:     levels in dB; count of at least 1.
 * Returned:  the level of the mean squared pressure in dB; NaN when there is no level.
 * Validity:  levels within +-3000 dB.
 * Source:    ISO 16283-2; definition of a mean of sound pressure levels. */
double usc_energy_mean_dB(const double level_dB[], int count)
{
    double energy = 0;

    for (int i = 0; i < count; i++)
        energy += pow(10.0, level_dB[i] / 10.0);
    return count > 0 ? 10.0 * log10(energy / count) : NAN;
}

const struct formula usc_energy_mean_formula = {
    .id = "energy-mean",
    .title = "Mean level of several positions",
    .expression = "10 lg(mean(10^({L}/10)))",
    .result = LEVEL("Lm", "mean_level_dB"),
    .given = (const struct quantity[]){LEVEL("L", "level_dB")},
    .given_count = 1,
    .list = true,
    .source = {FIELD_STANDARD, "", STANDING_PUBLISHED},
    .value = usc_energy_mean_dB,
};

/* Background
 * Purpose:   takes the background noise out of a measured level.
 * Given:     the level with background, Lsb, and how far the background alone, Lb, lies below it, dB.
 * Returned:  the corrected level in dB.
 * Status:    0; 1 when the background is 6 dB or nearer and the result is only a limit; -1 when a level is none.
 * Validity:  corrected above 6 dB and up to 10 dB in the field, 15 dB in the laboratory; farther off nothing is
 *            subtracted.
 * Source:    ISO 16283-2 (field), ISO 10140-4 (laboratory), from memory. */
enum { LIMIT_UP_TO = 60, FIELD_UP_TO = 100, LABORATORY_UP_TO = 150 }; /* tenths of a dB */
static const double LEVEL_MOST_DB = 1500; /* the distance of two such levels fits its tenths */

static double without_background(const double given[], int count)
{
    (void)count;
    return usc_without_background_dB(given[0], given[1]);
}

static double background_limit(const double given[], int count)
{
    (void)count;
    return usc_background_limit_dB(given[0]);
}

const struct formula usc_background_formula = {
    .id = "background-correction",
    .title = "Level without the background noise",
    .expression = "{Lsb} + 10 lg(1 - 10^(-{ΔLb}/10))",
    .result = LEVEL("L", "level_dB"),
    .given = (const struct quantity[]){LEVEL("Lsb", "level_with_background_dB"),
                                       {"ΔLb", "distance_to_background_dB", "dB", 6, 15}},
    .given_count = 2,
    .source = {FIELD_STANDARD, "up to 10 dB; ISO 10140-4: up to 15 dB", STANDING_FROM_MEMORY},
    .note = "ΔLb = Lsb - Lb, the distance to the background alone. Corrected above 6 dB.",
    .value = without_background,
};

const struct formula usc_background_limit_formula = {
    .id = "background-limit",
    .title = "Upper limit of a level 6 dB or less above the background noise",
    .expression = "{Lsb} - 1.3",
    .result = LEVEL("L", "level_dB"),
    .given = (const struct quantity[]){LEVEL("Lsb", "level_with_background_dB")},
    .given_count = 1,
    .source = {FIELD_STANDARD, "", STANDING_FROM_MEMORY},
    .note = "The true level is at most this; the band is to be marked.",
    .value = background_limit,
};

int usc_correct_background(double level_dB, double background_dB, enum usc_background_method method,
                           double *corrected_dB, enum usc_background_case *which)
{
    const int up_to = method == USC_BACKGROUND_LABORATORY ? LABORATORY_UP_TO : FIELD_UP_TO;

    if (!(fabs(level_dB) <= LEVEL_MOST_DB && fabs(background_dB) <= LEVEL_MOST_DB))
        return -1;
    const int distance = usc_tenths_from_dB(level_dB - background_dB);
    if (distance <= LIMIT_UP_TO) {
        *which = USC_BACKGROUND_LIMIT;
        *corrected_dB = usc_background_limit_dB(level_dB);
        return 1;
    }
    *which = distance <= up_to ? USC_BACKGROUND_CORRECTED : USC_BACKGROUND_NEGLIGIBLE;
    *corrected_dB = distance <= up_to ? usc_without_background_dB(level_dB, level_dB - background_dB) : level_dB;
    return 0;
}

const struct formula *usc_background_formula_of(enum usc_background_case which)
{
    switch (which) {
    case USC_BACKGROUND_CORRECTED:
        return &usc_background_formula;
    case USC_BACKGROUND_LIMIT:
        return &usc_background_limit_formula;
    case USC_BACKGROUND_NEGLIGIBLE:
        break;
    }
    return NULL;
}

/* To a common room
 * Purpose:   takes the furnishing of the receiving room out of the level.
 * Given:     level Li in dB, reverberation time T in s, volume V in m3.
 * Returned:  L'n at an absorption of 10 m2, L'nT at a reverberation time of 0.5 s, dB.
 * Validity:  diffuse sound field.
 * Source:    ISO 16283-2; Lehrbuch der Bauphysik, ch. 22. */
static double absorption(const double given[], int count)
{
    (void)count;
    return usc_absorption_m2(given[0], given[1]);
}

static double normalised(const double given[], int count)
{
    (void)count;
    return usc_L_prime_n_dB(given[0], given[1]);
}

static double standardised(const double given[], int count)
{
    (void)count;
    return usc_L_prime_nT_dB(given[0], given[1]);
}

const struct formula usc_absorption_formula = {
    .id = "absorption-area",
    .title = "Equivalent absorption area of the receiving room",
    .expression = "0.16 {V}/{T}",
    .result = {"A", "absorption_m2", "m2", UNLIMITED},
    .given = (const struct quantity[]){{"V", "volume_m3", "m3", UNLIMITED}, {"T", "reverberation_s", "s", UNLIMITED}},
    .given_count = 2,
    .source = {FIELD_STANDARD, "", STANDING_PUBLISHED},
    .value = absorption,
};

const struct formula usc_L_prime_n_formula = {
    .id = "normalised-level-measured",
    .title = "Normalised impact level from a measurement, per band",
    .expression = "{Li} + 10 lg({A}/10)",
    .result = LEVEL("L'n", "L_prime_n_dB"),
    .given = (const struct quantity[]){LEVEL("Li", "level_dB"), {"A", "absorption_m2", "m2", UNLIMITED}},
    .given_count = 2,
    .source = {FIELD_STANDARD, "A0 10 m2", STANDING_PUBLISHED},
    .value = normalised,
};

const struct formula usc_L_prime_nT_formula = {
    .id = "standardised-level-measured",
    .title = "Standardised impact level from a measurement, per band",
    .expression = "{Li} - 10 lg({T}/0.5)",
    .result = LEVEL("L'nT", "L_prime_nT_dB"),
    .given = (const struct quantity[]){LEVEL("Li", "level_dB"), {"T", "reverberation_s", "s", UNLIMITED}},
    .given_count = 2,
    .source = {FIELD_STANDARD, "T0 0.5 s", STANDING_PUBLISHED},
    .value = standardised,
};

/* Low-frequency level
 * Purpose:   the level of a small room at low frequencies, where the middle of the room misses its modes.
 * Given:     energy-mean level of the room and level in its loudest corner, dB.
 * Returned:  L_LF in dB.
 * Validity:  50, 63 and 80 Hz, rooms below 25 m3.
 * Source:    ISO 16283-2, from memory. */
static double low_frequency(const double given[], int count)
{
    (void)count;
    return usc_low_frequency_level_dB(given[0], given[1]);
}

const struct formula usc_low_frequency_formula = {
    .id = "low-frequency-level",
    .title = "Level of a small room at 50 to 80 Hz",
    .expression = "10 lg((10^({Lcorner}/10) + 2*10^({L}/10))/3)",
    .result = LEVEL("LLF", "low_frequency_level_dB"),
    .given = (const struct quantity[]){LEVEL("Lcorner", "corner_level_dB"), LEVEL("L", "level_dB")},
    .given_count = 2,
    .source = {FIELD_STANDARD, "low-frequency procedure", STANDING_FROM_MEMORY},
    .note = "Rooms below 25 m3, bands 50, 63 and 80 Hz.",
    .value = low_frequency,
};
