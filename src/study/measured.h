/* From a measured table to the single number, its uncertainty and its verdict.
 * Source: ISO 717-2:2013 (rating), ISO 16283-2 and ISO 10140-4 (levels), ISO 12999-1 (uncertainty, from memory),
 * ASTM E989 (impact class, from memory). */
#ifndef USC_STUDY_MEASURED_H
#define USC_STUDY_MEASURED_H

#include "acoustics/bands.h"
#include "acoustics/measurement_uncertainty.h"
#include "acoustics/sound_level.h"
#include "base/field.h"
#include "project/measurements.h"
#include "project/requirement.h"
#include "study/predict.h"

enum field_level { FIELD_L_PRIME_NT, FIELD_L_PRIME_N };
extern const char *const field_level_names[];           /* "L_prime_nT", "L_prime_n" */
extern const char *const background_method_names[];     /* "field", "laboratory" */
extern const char *const measurement_situation_names[]; /* "A", "B", "C" */

/* What readings in the room become levels with. */
struct level_options {
    enum field_level level;
    enum usc_background_method background;
    double volume_m3; /* of the receiving room; NaN when not known */
};

/* What became of a band. */
enum band_flag { BAND_FINE, BAND_BACKGROUND_CORRECTED, BAND_BACKGROUND_LIMIT };

/* Raw readings to one level a band: energy mean, background, low-frequency procedure, absorption or reverberation.
 * Errors (no reverberation time, no volume) name the place and what to measure. */
bool measured_levels(const struct raw_measurement *raw, const struct level_options *options, const char *file,
                     struct problems *problems, struct measurement *level, enum band_flag flag[USC_BANDS],
                     double *low_frequency_bands);

struct rate_options {
    bool covered;  /* Ln was measured with the reference covering on the floor */
    int situation; /* enum usc_measurement_situation */
    double confidence_percent;
    const struct limit *limit; /* NULL: none */
};

struct rated_bands {
    struct numbers frequency_Hz, level_dB, reference_dB, unfavourable_dB;
    struct texts remark; /* "", "background corrected", "upper limit" */
};

/* Keys as the JSON result has them; NaN where a figure does not belong to the quantity. */
struct rated {
    const char *descriptor; /* "Ln_w", "L_prime_n_w", "L_prime_nT_w", "delta_Lw" */
    double value_dB, value_fine_dB, C_I_dB, C_I_50_2500_dB, unfavourable_sum_dB;
    double delta_Lw_dB, C_I_delta_dB, delta_L_lin_dB;
    double delta_Lt_1_2_w_dB, C_I_t_1_2_delta_dB, delta_Lt_3_w_dB, C_I_t_3_delta_dB;
    double Ln_eq_0_w_dB;
    double IIC;
    const char *impact_class_name; /* IIC, AIIC, NISR */
    double standard_uncertainty_dB, coverage_factor, expanded_uncertainty_dB;
    struct limit_record *limit;
    double margin_dB;
    enum answer meets_limit, meets_beyond_doubt; /* the second: also with the expanded uncertainty against it */
    double low_frequency_bands;                  /* how many were formed by the low-frequency procedure */
    struct rated_bands *bands;
};
extern const struct record rated_record;

/* flag may be NULL. The measurement was read without errors. */
void study_rate(const struct measurement *measurement, const enum band_flag flag[USC_BANDS],
                const struct rate_options *options, struct arena *arena, struct rated *rated);

/* The figures of a spectrum that a table of many needs, without allocation. */
struct rated_briefly {
    double value_dB, C_I_dB, unfavourable_sum_dB;
};
bool rate_briefly(const struct measurement *measurement, struct rated_briefly *rated);

#endif
