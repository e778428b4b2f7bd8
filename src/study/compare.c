/* Prediction per band, weights of the explanations, and the finding. */
#include "study/compare.h"

#include <stdlib.h>

#include "acoustics/rating.h"
#include "acoustics/reference_floor.h"
#include "study/compare_templates.h"
#include "study/compare_words.h"

const char *const compare_quantity_names[] = {"L_prime_n", "L_prime_nT", NULL};
const char *const finding_names[] = {
    "agrees",
    "stiffer_underlay_or_lighter_screed",
    "softer_or_heavier",
    "slab_or_flanking",
    "undecided_spring_or_building",
    "rigid_edge_contact",
    "point_bridges",
    "room_modes",
    "unexplained",
    NULL,
};

/* Judgement: what is left after the best explanation may be twice the stated standard deviation. */
static const double UNEXPLAINED_ABOVE = 4.0;
/* Judgement: of spring and building, one must outweigh the other four to one. */
static const double DECIDED_FROM = 0.8;

void compare_options_default(struct compare_options *options)
{
    for (int i = 0; i < USC_BANDS; i++)
        options->standard_deviation_dB[i] = i < USC_FIRST_RATED ? 2.0 : 1.0;
    options->agrees_within_dB = 2.0;
}

static bool has_floating_floor(const struct compare_room *room)
{
    return room->effect && room->effect->f0_Hz > 0;
}

void compare_predicted_bands(const struct compare_room *room, enum compare_quantity quantity,
                             double level_dB[USC_BANDS])
{
    double const volume_term_dB = quantity == COMPARE_L_PRIME_NT ? room->building->volume_term_dB : 0;
    double reference_dB = NAN;
    usc_Ln_eq_0_w_of_bare_floor(usc_heavy_reference_floor, &reference_dB);
    double const shift_dB = room->building->L_w_dB - reference_dB - volume_term_dB;
    for (int i = 0; i < USC_BANDS; i++)
        level_dB[i] = usc_heavy_reference_floor_extended_dB(i) + shift_dB -
                      (has_floating_floor(room) ? room->effect->delta_L_dB[i] : 0.0);
}

static bool usable(const struct measured_bands *measured, const double predicted_dB[USC_BANDS])
{
    for (int i = 0; i < USC_BANDS; i++) {
        bool const needed = i >= USC_FIRST_RATED && i < USC_FIRST_RATED + USC_RATED_BANDS;
        if (needed && !measured->has[i])
            return false;
        if (measured->has[i] && !(fabs(measured->level_dB[i]) <= 300.0))
            return false;
        if (!(fabs(predicted_dB[i]) <= 300.0))
            return false;
    }
    return true;
}

static void rate_both(const double level_dB[USC_BANDS], double *fine_dB, int *whole_dB)
{
    usc_tenths level[USC_RATED_BANDS];
    struct usc_rating fine, whole;

    for (int i = 0; i < USC_RATED_BANDS; i++)
        level[i] = usc_tenths_from_dB(level_dB[USC_FIRST_RATED + i]);
    /* Cannot fail: every level was found within 300 dB. */
    usc_rate_impact_fine(level, &fine);
    usc_rate_impact(level, &whole);
    *fine_dB = usc_dB_from_tenths(fine.value);
    *whole_dB = whole.value / 10;
}

static struct difference difference_of(const struct compare_room *room, const struct measured_bands *measured,
                                       const struct compare_options *options, const double predicted_dB[USC_BANDS])
{
    struct difference difference = {.f0_Hz = has_floating_floor(room) ? room->effect->f0_Hz : NAN,
                                    .slope_dB = usc_improvement_slope_dB(room->law),
                                    .agrees_within_dB = options->agrees_within_dB};
    for (int i = 0; i < USC_BANDS; i++) {
        if (!measured->has[i])
            continue;
        int const at = difference.count++;
        difference.low_count += i < USC_FIRST_RATED;
        difference.frequency_Hz[at] = usc_band_Hz[i];
        difference.difference_dB[at] = measured->level_dB[i] - predicted_dB[i];
        difference.standard_deviation_dB[at] = options->standard_deviation_dB[i];
        difference.delta_L_dB[at] = has_floating_floor(room) ? room->effect->delta_L_dB[i] : 0.0;
    }
    return difference;
}

/* How far the best explanation's misfit exceeds what the stated deviations allow; at least 1. */
static double excess_of(const struct fit fits[CAUSES], int count)
{
    double least = INFINITY;
    for (int cause = 0; cause < CAUSES; cause++)
        if (fits[cause].possible)
            least = fmin(least, fits[cause].misfit / (count - fits[cause].parameters));
    return fmax(1.0, least);
}

/* exp(-BIC/2), normalised. Since the shapes are rough, variances are first raised until the best one fits as it
 * should: weights then are not surer than the shapes are good. */
static double weigh(const struct fit fits[CAUSES], int count, double weight[CAUSES])
{
    double const excess = excess_of(fits, count);
    double criterion[CAUSES], least = INFINITY, sum = 0;
    for (int cause = 0; cause < CAUSES; cause++) {
        criterion[cause] = fits[cause].misfit / excess + fits[cause].parameters * log(count);
        if (fits[cause].possible)
            least = fmin(least, criterion[cause]);
    }
    for (int cause = 0; cause < CAUSES; cause++)
        sum += weight[cause] = fits[cause].possible ? exp((least - criterion[cause]) / 2.0) : 0.0;
    for (int cause = 0; cause < CAUSES; cause++)
        weight[cause] /= sum;
    return excess;
}

/* Without a reading below 100 Hz spring and building are one finding, and count together. */
static enum cause heaviest(const double weight[CAUSES], int low_count)
{
    double const both = weight[CAUSE_SPRING] + weight[CAUSE_BUILDING];
    enum cause const of_both = weight[CAUSE_SPRING] > weight[CAUSE_BUILDING] ? CAUSE_SPRING : CAUSE_BUILDING;
    double most = low_count == 0 ? both : weight[of_both];
    enum cause best = of_both;
    for (int cause = 0; cause < CAUSES; cause++)
        if (cause != CAUSE_SPRING && cause != CAUSE_BUILDING && weight[cause] > most) {
            most = weight[cause];
            best = (enum cause)cause;
        }
    return best;
}

/* Well above f0 spring and building are both even; only the lowest bands tell them apart. A softer spring shows nothing
 * only below its own resonance: with no reading there, a better building cannot be told from it. */
static bool spring_or_building(enum cause best, const struct difference *difference, const struct fit fits[CAUSES],
                               const double weight[CAUSES])
{
    const struct fit *spring = &fits[CAUSE_SPRING];
    if (!spring->possible)
        return false;
    if (difference->low_count == 0 || weight[best] < DECIDED_FROM * (weight[CAUSE_SPRING] + weight[CAUSE_BUILDING]))
        return true;
    return best == CAUSE_BUILDING && spring->size < 1 && spring->frequency_Hz < difference->frequency_Hz[0];
}

static enum finding finding_of(enum cause best, const struct difference *difference, const struct fit fits[CAUSES],
                               const double weight[CAUSES])
{
    switch (best) {
    case CAUSE_SPRING:
    case CAUSE_BUILDING:
        if (spring_or_building(best, difference, fits, weight))
            return FINDING_SPRING_OR_BUILDING;
        if (best == CAUSE_BUILDING)
            return FINDING_SLAB_OR_FLANKING;
        return fits[CAUSE_SPRING].size > 1 ? FINDING_STIFFER_OR_LIGHTER : FINDING_SOFTER_OR_HEAVIER;
    case CAUSE_EDGE:
        return FINDING_EDGE_CONTACT;
    case CAUSE_POINTS:
    case CAUSE_HALVING:
        return FINDING_POINT_BRIDGES;
    case CAUSE_MODES:
        return FINDING_ROOM_MODES;
    default:
        return FINDING_AGREES;
    }
}

static int heavier_first(const void *one, const void *other)
{
    const struct explanation *a = one, *b = other;
    return (a->weight < b->weight) - (a->weight > b->weight);
}

static struct objects explanations_of(const struct fit fits[CAUSES], const double weight[CAUSES], struct arena *arena)
{
    struct explanation *list = arena_take_many(arena, CAUSES, sizeof *list);
    size_t count = 0;
    for (int cause = 0; cause < CAUSES; cause++) {
        const struct fit *fit = &fits[cause];
        if (!fit->possible)
            continue;
        list[count] = (struct explanation){.size = fit->size,
                                           .frequency_Hz = fit->frequency_Hz,
                                           .resonance_hump_dB = fit->hump_dB,
                                           .misfit = fit->misfit,
                                           .residual_dB = fit->residual_dB,
                                           .parameters = fit->parameters,
                                           .weight = weight[cause]};
        compare_name_cause((enum cause)cause, &list[count++]);
    }
    qsort(list, count, sizeof *list, heavier_first);
    return (struct objects){list, count};
}

static struct numbers band_column(struct arena *arena)
{
    return (struct numbers){arena_take_many(arena, USC_BANDS, sizeof(double)), USC_BANDS};
}

static struct compared_bands *bands_of(const struct measured_bands *measured, const double predicted_dB[USC_BANDS],
                                       struct arena *arena)
{
    struct compared_bands *bands = arena_take(arena, sizeof *bands);
    *bands = (struct compared_bands){band_column(arena), band_column(arena), band_column(arena), band_column(arena)};
    for (int i = 0; i < USC_BANDS; i++) {
        double const measured_dB = measured->has[i] ? measured->level_dB[i] : NAN;
        bands->frequency_Hz.at[i] = usc_band_Hz[i];
        bands->measured_dB.at[i] = measured_dB;
        bands->predicted_dB.at[i] = predicted_dB[i];
        bands->difference_dB.at[i] = measured_dB - predicted_dB[i];
    }
    return bands;
}

static void conclude(const struct difference *difference, struct arena *arena, struct comparison *comparison)
{
    struct fit fits[CAUSES];
    double weight[CAUSES];
    for (int cause = 0; cause < CAUSES; cause++)
        fit_cause((enum cause)cause, difference, &fits[cause]);
    double const excess = weigh(fits, difference->count, weight);
    enum cause const best = heaviest(weight, difference->low_count);
    enum finding const finding =
        excess > UNEXPLAINED_ABOVE ? FINDING_UNEXPLAINED : finding_of(best, difference, fits, weight);

    comparison->explanations = explanations_of(fits, weight, arena);
    comparison->finding = finding;
    comparison->confidence = weight[best];
    if (finding == FINDING_SPRING_OR_BUILDING)
        comparison->confidence = weight[CAUSE_SPRING] + weight[CAUSE_BUILDING];
    if (finding == FINDING_POINT_BRIDGES)
        comparison->confidence = weight[CAUSE_POINTS] + weight[CAUSE_HALVING];
    if (finding == FINDING_UNEXPLAINED)
        comparison->confidence = 1.0 - UNEXPLAINED_ABOVE / excess;
    comparison->predicted_f0_Hz = difference->f0_Hz;
    bool const of_spring = finding == FINDING_STIFFER_OR_LIGHTER || finding == FINDING_SOFTER_OR_HEAVIER ||
                           finding == FINDING_SPRING_OR_BUILDING;
    comparison->stiffness_mass_factor = of_spring ? fits[CAUSE_SPRING].size : NAN;
    comparison->fitted_f0_Hz = of_spring ? fits[CAUSE_SPRING].frequency_Hz : NAN;
    compare_say(difference, fits, arena, comparison);
}

int study_compare(const struct compare_room *room, const struct measured_bands *measured,
                  const struct compare_options *options, struct arena *arena, struct comparison *comparison)
{
    struct compare_options defaults;
    double predicted_dB[USC_BANDS];

    compare_predicted_bands(room, measured->quantity, predicted_dB);
    if (!usable(measured, predicted_dB))
        return -1;
    if (!options) {
        compare_options_default(&defaults);
        options = &defaults;
    }
    *comparison = (struct comparison){.quantity = measured->quantity};
    rate_both(measured->level_dB, &comparison->measured_w_dB, &comparison->measured_whole_dB);
    rate_both(predicted_dB, &comparison->predicted_w_dB, &comparison->predicted_whole_dB);
    comparison->difference_w_dB = usc_round_to_tenth_dB(comparison->measured_w_dB - comparison->predicted_w_dB);
    comparison->bands = bands_of(measured, predicted_dB, arena);
    struct difference const difference = difference_of(room, measured, options, predicted_dB);
    conclude(&difference, arena, comparison);
    return 0;
}
