/* The single number of a measured spectrum. */
#include "study/measured.h"

#include "acoustics/impact_class.h"
#include "acoustics/rating.h"
#include "acoustics/reference_floor.h"

static const char *const descriptor_of_quantity[] = {
    [MEASURED_LN] = "Ln_w",
    [MEASURED_L_PRIME_N] = "L_prime_n_w",
    [MEASURED_L_PRIME_NT] = "L_prime_nT_w",
    [MEASURED_DELTA_L] = "delta_Lw",
};

/* Indices of the octave centres 125..2000 Hz among the third octaves. */
static const int octave_index[USC_OCTAVE_BANDS] = {4, 7, 10, 13, 16};

/* The rated levels in tenths, third octaves or octaves. */
static int rated_levels(const struct measurement *measurement, usc_tenths level[USC_RATED_BANDS])
{
    int const count = measurement->octave ? USC_OCTAVE_BANDS : USC_RATED_BANDS;
    for (int i = 0; i < count; i++) {
        int const band = measurement->octave ? octave_index[i] : i + USC_FIRST_RATED;
        level[i] = usc_tenths_from_dB(measurement->value_dB[band]);
    }
    return count;
}

static int rate(const struct measurement *measurement, const usc_tenths level[], bool fine, struct usc_rating *rating)
{
    if (measurement->octave)
        return fine ? usc_rate_impact_octave_fine(level, rating) : usc_rate_impact_octave(level, rating);
    return fine ? usc_rate_impact_fine(level, rating) : usc_rate_impact(level, rating);
}

bool rate_briefly(const struct measurement *measurement, struct rated_briefly *rated)
{
    usc_tenths level[USC_RATED_BANDS];
    struct usc_rating rating;
    struct usc_improvement_rating improvement;
    rated_levels(measurement, level);
    if (measurement->quantity == MEASURED_DELTA_L) {
        if (measurement->octave || usc_rate_improvement(level, USC_REFERENCE_HEAVY, &improvement) < 0)
            return false;
        *rated = (struct rated_briefly){improvement.delta_Lw_dB, improvement.C_I_delta_dB, NAN};
        return true;
    }
    if (rate(measurement, level, false, &rating) < 0)
        return false;
    *rated = (struct rated_briefly){usc_dB_from_tenths(rating.value), rating.C_I_dB, rating.unfavourable_sum / 10.0};
    return true;
}

static void rate_enlarged(const struct measurement *measurement, int value_dB, struct rated *rated)
{
    usc_tenths level[USC_ENLARGED_BANDS];
    int C_I_dB;
    for (int i = 0; i < USC_ENLARGED_BANDS; i++) {
        if (!measurement->has[i])
            return;
        level[i] = usc_tenths_from_dB(measurement->value_dB[i]);
    }
    if (usc_C_I_50_2500_dB(level, value_dB, &C_I_dB) >= 0)
        rated->C_I_50_2500_dB = C_I_dB;
}

static void rate_class(const struct measurement *measurement, const usc_tenths level[], struct rated *rated)
{
    static const enum usc_impact_class_level kind[] = {
        [MEASURED_LN] = USC_CLASS_OF_LABORATORY,
        [MEASURED_L_PRIME_N] = USC_CLASS_OF_NORMALISED,
        [MEASURED_L_PRIME_NT] = USC_CLASS_OF_STANDARDISED,
    };
    struct usc_impact_class result;
    if (measurement->octave || usc_rate_impact_class(level, &result) < 0)
        return;
    rated->IIC = result.value;
    rated->impact_class_name = usc_impact_class_name(kind[measurement->quantity]);
}

static struct numbers column(struct arena *arena, int count)
{
    return (struct numbers){arena_take_many(arena, (size_t)count, sizeof(double)), (size_t)count};
}

/* All bands measured; the reference and the deviation only where rated. */
static void fill_bands(const struct measurement *measurement, const enum band_flag flag[], struct arena *arena,
                       struct rated *rated, usc_tenths value)
{
    static const char *const remarks[] = {"", "background corrected", "upper limit"};
    usc_tenths level[USC_RATED_BANDS], deviation[USC_RATED_BANDS];
    int const count = rated_levels(measurement, level);
    const usc_tenths *curve = measurement->octave ? usc_impact_reference_octave : usc_impact_reference;
    usc_tenths const at_500 = curve[measurement->octave ? 2 : USC_BAND_500 - USC_FIRST_RATED];
    int const shift = value - at_500 + (measurement->octave ? 50 : 0);
    struct rated_bands *bands = arena_take(arena, sizeof *bands);
    int bands_count = 0, rated_at = 0;
    if (measurement->octave)
        usc_unfavourable_deviations_octave(level, value, deviation);
    else
        usc_unfavourable_deviations(level, value, deviation);
    bands->frequency_Hz = column(arena, USC_BANDS);
    bands->level_dB = column(arena, USC_BANDS);
    bands->reference_dB = column(arena, USC_BANDS);
    bands->unfavourable_dB = column(arena, USC_BANDS);
    bands->remark.at = arena_take_many(arena, USC_BANDS, sizeof *bands->remark.at);
    for (int i = 0; i < USC_BANDS; i++) {
        if (!measurement->has[i])
            continue;
        int const next =
            rated_at < count ? (measurement->octave ? octave_index[rated_at] : rated_at + USC_FIRST_RATED) : USC_BANDS;
        bool const counts = i == next;
        bands->frequency_Hz.at[bands_count] = usc_band_Hz[i];
        bands->level_dB.at[bands_count] = usc_round_to_tenth_dB(measurement->value_dB[i]);
        bands->reference_dB.at[bands_count] = counts ? (curve[rated_at] + shift) / 10.0 : NAN;
        bands->unfavourable_dB.at[bands_count] = counts ? deviation[rated_at] / 10.0 : NAN;
        bands->remark.at[bands_count] = remarks[flag ? flag[i] : BAND_FINE];
        rated_at += counts;
        bands_count++;
    }
    bands->frequency_Hz.count = bands->level_dB.count = bands->reference_dB.count = (size_t)bands_count;
    bands->unfavourable_dB.count = bands->remark.count = (size_t)bands_count;
    rated->bands = bands;
}

/* The improvement on the heavy and on the lightweight reference floors. */
static void rate_improvement(const usc_tenths level[], struct arena *arena, struct rated *rated)
{
    struct usc_improvement_rating heavy, light_1_2, light_3;
    double improvement_dB[USC_RATED_BANDS];
    for (int i = 0; i < USC_RATED_BANDS; i++)
        improvement_dB[i] = usc_dB_from_tenths(level[i]);
    if (usc_rate_improvement(level, USC_REFERENCE_HEAVY, &heavy) >= 0) {
        rated->value_dB = rated->delta_Lw_dB = heavy.delta_Lw_dB;
        rated->C_I_delta_dB = heavy.C_I_delta_dB;
        rated->delta_L_lin_dB = heavy.delta_L_lin_dB;
        rated->value_fine_dB = usc_delta_Lw_rated_fine_dB(improvement_dB);
    }
    if (usc_rate_improvement(level, USC_REFERENCE_LIGHT_1_2, &light_1_2) >= 0) {
        rated->delta_Lt_1_2_w_dB = light_1_2.delta_Lw_dB;
        rated->C_I_t_1_2_delta_dB = light_1_2.C_I_delta_dB;
    }
    if (usc_rate_improvement(level, USC_REFERENCE_LIGHT_3, &light_3) >= 0) {
        rated->delta_Lt_3_w_dB = light_3.delta_Lw_dB;
        rated->C_I_t_3_delta_dB = light_3.C_I_delta_dB;
    }
    struct rated_bands *bands = arena_take(arena, sizeof *bands);
    bands->frequency_Hz = column(arena, USC_RATED_BANDS);
    bands->level_dB = column(arena, USC_RATED_BANDS);
    for (int i = 0; i < USC_RATED_BANDS; i++) {
        bands->frequency_Hz.at[i] = usc_band_Hz[i + USC_FIRST_RATED];
        bands->level_dB.at[i] = improvement_dB[i];
    }
    rated->bands = bands;
}

/* What the limit speaks of, from what was measured; NaN when the two do not meet. */
static double value_for(const struct limit *limit, const struct rated *rated, enum measured_quantity quantity)
{
    bool const n = quantity == MEASURED_L_PRIME_N, nT = quantity == MEASURED_L_PRIME_NT;
    switch ((enum descriptor)limit->descriptor) {
    case DESCRIPTOR_L_PRIME_N_W:
        return n ? rated->value_dB : NAN;
    case DESCRIPTOR_L_PRIME_NT_W:
        return nT ? rated->value_dB : NAN;
    case DESCRIPTOR_L_PRIME_N_W_C_I:
        return n ? rated->value_dB + rated->C_I_dB : NAN;
    case DESCRIPTOR_L_PRIME_NT_W_C_I:
        return nT ? rated->value_dB + rated->C_I_dB : NAN;
    case DESCRIPTOR_L_PRIME_N_W_C_I_50_2500:
        return n ? rated->value_dB + rated->C_I_50_2500_dB : NAN;
    case DESCRIPTOR_L_PRIME_NT_W_C_I_50_2500:
        return nT ? rated->value_dB + rated->C_I_50_2500_dB : NAN;
    case DESCRIPTOR_L_NT_A:
    case DESCRIPTOR_L_PRIME:
        return nT ? rated->value_dB + rated->C_I_dB : NAN;
    case DESCRIPTOR_IIC:
        return quantity == MEASURED_LN || n ? rated->IIC : NAN;
    case DESCRIPTOR_NISR:
        return nT ? rated->IIC : NAN;
    default:
        return NAN;
    }
}

static void judge(const struct limit *limit, enum measured_quantity quantity, struct arena *arena, struct rated *rated)
{
    double const value_dB = value_for(limit, rated, quantity);
    struct limit_record *record = arena_take(arena, sizeof *record);
    *record = (struct limit_record){limit->id, descriptor_names[limit->descriptor], sense_names[limit->sense],
                                    limit->source, limit->value_dB};
    rated->limit = record;
    if (isnan(value_dB))
        return;
    double const sign = limit->sense == SENSE_AT_LEAST ? -1 : 1;
    rated->margin_dB = sign * (limit->value_dB - value_dB);
    rated->meets_limit = rated->margin_dB >= 0 ? ANSWER_YES : ANSWER_NO;
    if (!isnan(rated->expanded_uncertainty_dB))
        rated->meets_beyond_doubt = rated->margin_dB >= rated->expanded_uncertainty_dB ? ANSWER_YES : ANSWER_NO;
}

void study_rate(const struct measurement *measurement, const enum band_flag flag[USC_BANDS],
                const struct rate_options *options, struct arena *arena, struct rated *rated)
{
    usc_tenths level[USC_RATED_BANDS];
    struct usc_rating rating, fine;
    record_defaults(&rated_record, rated);
    rated->descriptor = descriptor_of_quantity[measurement->quantity];
    rated_levels(measurement, level);
    if (measurement->quantity == MEASURED_DELTA_L) {
        if (!measurement->octave) /* the reference floors are third octaves */
            rate_improvement(level, arena, rated);
        if (options->limit)
            judge(options->limit, measurement->quantity, arena, rated);
        return;
    }
    if (rate(measurement, level, false, &rating) < 0 || rate(measurement, level, true, &fine) < 0)
        return;
    rated->value_dB = usc_dB_from_tenths(rating.value);
    rated->value_fine_dB = usc_dB_from_tenths(fine.value);
    rated->C_I_dB = rating.C_I_dB;
    rated->unfavourable_sum_dB = rating.unfavourable_sum / 10.0;
    if (!measurement->octave)
        rate_enlarged(measurement, (int)rated->value_dB, rated);
    rate_class(measurement, level, rated);
    if (options->covered && measurement->quantity == MEASURED_LN)
        rated->Ln_eq_0_w_dB = usc_Ln_eq_0_w_dB(rated->value_dB);
    if (measurement->quantity != MEASURED_LN) {
        rated->standard_uncertainty_dB =
            usc_standard_uncertainty_dB((enum usc_measurement_situation)options->situation);
        rated->coverage_factor = usc_coverage_factor(USC_ONE_SIDED, options->confidence_percent);
        rated->expanded_uncertainty_dB =
            usc_expanded_uncertainty_dB(rated->coverage_factor, rated->standard_uncertainty_dB);
    }
    fill_bands(measurement, flag, arena, rated, rating.value);
    if (options->limit)
        judge(options->limit, measurement->quantity, arena, rated);
}
