/* Readings in the receiving room to one level a band. */
#include <math.h>

#include "study/measured.h"

const char *const field_level_names[] = {"L_prime_nT", "L_prime_n", NULL};
const char *const background_method_names[] = {"field", "laboratory", NULL};
const char *const measurement_situation_names[] = {"A", "B", "C", NULL};

static double energy_mean_dB(const struct raw_readings *readings)
{
    return usc_energy_mean_dB(readings->value, (int)readings->count);
}

/* Reverberation times of one band are averaged plainly (ISO 3382-2). */
static double mean_s(const struct raw_readings *readings)
{
    double sum = 0;
    for (size_t i = 0; i < readings->count; i++)
        sum += readings->value[i];
    return sum / (double)readings->count;
}

static bool complain(const char *file, struct problems *problems, const char *path, const char *hint, const char *text)
{
    problem_add(problems, SEVERITY_ERROR, file, path, hint, "%s", text);
    return false;
}

static bool options_serve(const struct raw_measurement *raw, const struct level_options *options, const char *file,
                          struct problems *problems)
{
    if (!raw->has_reverberation_time)
        return complain(file, problems, "", "measure it in every band, furnished as during the test",
                        "readings in a room need a column reverberation_time_s to become L'n or L'nT");
    if (options->level == FIELD_L_PRIME_N && isnan(options->volume_m3))
        return complain(file, problems, "--volume", "the absorption is A = 0.16 V/T", "is needed for L'n");
    return true;
}

bool measured_levels(const struct raw_measurement *raw, const struct level_options *options, const char *file,
                     struct problems *problems, struct measurement *level, enum band_flag flag[USC_BANDS],
                     double *low_frequency_bands)
{
    *level = (struct measurement){.octave = raw->octave};
    level->quantity = options->level == FIELD_L_PRIME_N ? MEASURED_L_PRIME_N : MEASURED_L_PRIME_NT;
    *low_frequency_bands = 0;
    if (!options_serve(raw, options, file, problems))
        return false;
    for (int i = 0; i < USC_BANDS; i++) {
        const struct raw_band *band = &raw->band[i];
        flag[i] = BAND_FINE;
        if (!raw->has[i])
            continue;
        double value_dB = energy_mean_dB(&band->level_dB);
        /* 50..80 Hz in a small room: the corners join the mean */
        if (i < USC_FIRST_RATED && band->corner_dB.count && usc_low_frequency_procedure_applies(options->volume_m3)) {
            value_dB = usc_low_frequency_level_dB(energy_mean_dB(&band->corner_dB), value_dB);
            ++*low_frequency_bands;
        }
        if (band->background_dB.count) {
            enum usc_background_case which = USC_BACKGROUND_NEGLIGIBLE;
            usc_correct_background(value_dB, energy_mean_dB(&band->background_dB), options->background, &value_dB,
                                   &which);
            flag[i] = which == USC_BACKGROUND_LIMIT       ? BAND_BACKGROUND_LIMIT
                      : which == USC_BACKGROUND_CORRECTED ? BAND_BACKGROUND_CORRECTED
                                                          : BAND_FINE;
        }
        double const reverberation_s = mean_s(&band->reverberation_time_s);
        level->has[i] = true;
        level->value_dB[i] = options->level == FIELD_L_PRIME_N
                                 ? usc_L_prime_n_dB(value_dB, usc_absorption_m2(options->volume_m3, reverberation_s))
                                 : usc_L_prime_nT_dB(value_dB, reverberation_s);
    }
    return true;
}
