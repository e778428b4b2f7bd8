/* Shapes of faults
 * Purpose:   the difference measured less predicted that one cause would give, and the size that fits best.
 * Given:     differences per band with standard deviations, predicted improvement, resonance.
 * Returned:  size, misfit (chi square), number of parameters.
 * Validity:  the simple improvement slope lg(f/f0). A real floor is worse than the bare slab at its resonance, so every
 *            shape may carry a hump there, of free height, paid for by a penalty.
 * Source:    spring: the improvement law of floating_floor.h for another s'/m'. Edge and point bridges: in words only
 *            (handbook Schallschutz - Bauakustik: a continuous or edge bridge costs most at mid and high frequencies,
 *            point bridges add stiffness at low and mid ones); the shapes are judgement. */
#include "study/compare_templates.h"

#include <math.h>

#include "acoustics/floating_floor.h"

/* Judgement, all of them. */
static const double HUMP_MOST_DB = 10.0, HUMP_USUAL_DB = 4.0; /* the second is where the penalty reaches 1 */
/* A mass on a spring with a loss factor of some tenths leaves its straight line by half the hump at 0.7 and 1.4 f0,
 * 0.15 decades to either side, by a fifth at 2 f0 and by a twentieth at 4 f0: 1/(1 + (x/0.15)^2) with x in decades. */
static const double HUMP_WIDTH_DECADES = 0.15;

/* What is searched: every pair of first and second, both ends included. */
struct search {
    double first_least, first_most;
    int first_steps;
    double second_least, second_most;
    int second_steps;
    int parameters;
};

/* first: lg of the factor on s'/m'; dB; dB; dB per decade; dB; share; dB. second: lg of a frequency in Hz. The edge's
 * growth starts between 200 and 1000 Hz, the reach of point bridges ends between 500 and 2500 Hz. */
static const struct search searches[CAUSES] = {
    /* clang-format off */
    [CAUSE_NONE] = {0, 0, 0, 0, 0, 0, 0},
    [CAUSE_SPRING] = {-1, 1, 200, 0, 0, 0, 1},
    [CAUSE_BUILDING] = {-20, 20, 400, 0, 0, 0, 1},
    [CAUSE_EDGE] = {1, 60, 59, 2.3, 3.0, 7, 2},
    [CAUSE_POINTS] = {1, 25, 48, 2.7, 3.4, 7, 2},
    [CAUSE_HALVING] = {0.2, 0.8, 60, 0, 0, 0, 1},
    [CAUSE_MODES] = {0, 0, 0, 0, 0, 0, 0},
    /* clang-format on */
};

struct trial {
    double first, second;
    double shape_dB[USC_BANDS];
};

/* The resonance of the floor with its fault. Points stiffen the spring: the floor improves only from where the
 * predicted improvement exceeds what they take. */
static double f0_of(const struct difference *difference, enum cause cause, double first)
{
    if (cause == CAUSE_SPRING)
        return difference->f0_Hz * sqrt(pow(10.0, first));
    if (cause == CAUSE_POINTS)
        return difference->f0_Hz * pow(10.0, fmax(0.0, first) / difference->slope_dB);
    return difference->f0_Hz;
}

/* Another spring under the same law: nothing below both resonances, slope/2 lg q above both. */
static double spring_dB(const struct difference *difference, int band, double f0_Hz)
{
    double const frequency_Hz = difference->frequency_Hz[band];
    return usc_improvement_dB(difference->slope_dB, frequency_Hz, difference->f0_Hz) -
           usc_improvement_dB(difference->slope_dB, frequency_Hz, f0_Hz);
}

/* Grows from a mid frequency on; a bridge cannot make the floor worse than the bare slab. */
static double edge_dB(const struct difference *difference, int band, const struct trial *trial)
{
    double const decades = log10(difference->frequency_Hz[band]) - trial->second;
    return fmin(trial->first * fmax(0.0, decades), fmax(0.0, difference->delta_L_dB[band]));
}

/* Points stiffen the spring at low and mid frequencies. A path beside it, added as energy: as loud as the bare floor up
 * to the frequency where the predicted improvement is `first`, from there falling so that it meets the predicted level
 * at the end of its reach; above, the screed around a point moves by itself. */
static double points_dB(const struct difference *difference, int band, const struct trial *trial, double f0_Hz)
{
    double const delta_L_dB = fmax(0.0, difference->delta_L_dB[band]);
    double const reach = trial->second - log10(f0_Hz);
    if (reach <= 0)
        return 0;
    double const path_slope_dB = difference->slope_dB + trial->first / reach;
    double const path_dB = usc_improvement_dB(path_slope_dB, difference->frequency_Hz[band], f0_Hz);
    return fmin(delta_L_dB, 10.0 * log10(1.0 + pow(10.0, (delta_L_dB - path_dB) / 10.0)));
}

static void shape_of(enum cause cause, const struct difference *difference, struct trial *trial)
{
    double const f0_Hz = f0_of(difference, cause, trial->first);
    for (int i = 0; i < difference->count; i++)
        switch (cause) {
        case CAUSE_SPRING:
            trial->shape_dB[i] = spring_dB(difference, i, f0_Hz);
            break;
        case CAUSE_EDGE:
            trial->shape_dB[i] = edge_dB(difference, i, trial);
            break;
        case CAUSE_POINTS:
            trial->shape_dB[i] = points_dB(difference, i, trial, f0_Hz);
            break;
        case CAUSE_HALVING:
            /* A share of the improvement is lost in dB, at all frequencies. Source: Goesele 1964 in Vigran, Building
             * Acoustics, 2008, fig. 8.32: one point bridge nearly halves it. */
            trial->shape_dB[i] = trial->first * fmax(0.0, difference->delta_L_dB[i]);
            break;
        default:
            trial->shape_dB[i] = trial->first;
            break;
        }
}

/* Free bands below 100 Hz count as explained. */
static int first_counted(enum cause cause, const struct difference *difference)
{
    return cause == CAUSE_MODES ? difference->low_count : 0;
}

static double variance_of(const struct difference *difference, int band)
{
    return difference->standard_deviation_dB[band] * difference->standard_deviation_dB[band];
}

/* The height of the hump that fits best, by least squares with its penalty, kept within 0 and the most. */
static double hump_of(enum cause cause, const struct difference *difference, const struct trial *trial,
                      double hump[USC_BANDS])
{
    double const f0_Hz = f0_of(difference, cause, trial->first);
    if (isnan(f0_Hz))
        return 0;
    double wanted = 0, weight = 1.0 / (HUMP_USUAL_DB * HUMP_USUAL_DB);
    for (int i = first_counted(cause, difference); i < difference->count; i++) {
        double const away = log10(difference->frequency_Hz[i] / f0_Hz) / HUMP_WIDTH_DECADES;
        hump[i] = 1.0 / (1.0 + away * away);
        wanted += hump[i] * (difference->difference_dB[i] - trial->shape_dB[i]) / variance_of(difference, i);
        weight += hump[i] * hump[i] / variance_of(difference, i);
    }
    return fmax(0.0, fmin(HUMP_MOST_DB, wanted / weight));
}

static void measure_misfit(enum cause cause, const struct difference *difference, const struct trial *trial,
                           struct fit *fit)
{
    double hump[USC_BANDS] = {0}, squares = 0;
    int const first = first_counted(cause, difference);
    fit->hump_dB = hump_of(cause, difference, trial, hump);
    fit->misfit = fit->hump_dB * fit->hump_dB / (HUMP_USUAL_DB * HUMP_USUAL_DB);
    for (int i = first; i < difference->count; i++) {
        double const left_dB = difference->difference_dB[i] - trial->shape_dB[i] - fit->hump_dB * hump[i];
        squares += left_dB * left_dB;
        fit->misfit += left_dB * left_dB / variance_of(difference, i);
    }
    fit->residual_dB = sqrt(squares / (difference->count - first));
}

static void try_it(enum cause cause, const struct difference *difference, struct trial *trial, struct fit *best)
{
    struct fit fit = *best;
    shape_of(cause, difference, trial);
    measure_misfit(cause, difference, trial, &fit);
    if (fit.misfit < best->misfit) {
        *best = fit;
        best->size = trial->first;
        best->frequency_Hz = trial->second;
    }
}

static struct search search_of(enum cause cause, const struct difference *difference)
{
    struct search search = searches[cause];
    if (cause == CAUSE_NONE || cause == CAUSE_MODES) {
        /* An even offset that still counts as agreement, in steps of about 0.1 dB. */
        search.first_least = -difference->agrees_within_dB;
        search.first_most = difference->agrees_within_dB;
        search.first_steps = (int)ceil(20.0 * difference->agrees_within_dB);
    }
    if (cause == CAUSE_MODES)
        search.parameters = difference->low_count;
    return search;
}

static double at_step(double least, double most, int steps, int step)
{
    return steps == 0 ? least : least + (most - least) * step / steps;
}

static double low_rms_dB(const struct difference *difference)
{
    double squares = 0;
    for (int i = 0; i < difference->low_count; i++)
        squares += difference->difference_dB[i] * difference->difference_dB[i];
    return sqrt(squares / difference->low_count);
}

static void in_its_unit(enum cause cause, const struct difference *difference, struct fit *fit)
{
    if (cause == CAUSE_SPRING) {
        fit->frequency_Hz = f0_of(difference, cause, fit->size);
        fit->size = pow(10.0, fit->size);
    } else if (cause == CAUSE_EDGE || cause == CAUSE_POINTS) {
        fit->frequency_Hz = pow(10.0, fit->frequency_Hz);
    } else {
        fit->frequency_Hz = NAN;
    }
    if (cause == CAUSE_MODES)
        fit->size = low_rms_dB(difference);
}

void fit_cause(enum cause cause, const struct difference *difference, struct fit *fit)
{
    bool const of_the_floor =
        cause == CAUSE_SPRING || cause == CAUSE_EDGE || cause == CAUSE_POINTS || cause == CAUSE_HALVING;
    struct search const search = search_of(cause, difference);
    struct trial trial;

    *fit = (struct fit){.misfit = INFINITY, .frequency_Hz = NAN, .parameters = search.parameters};
    fit->possible =
        !(of_the_floor && isnan(difference->f0_Hz)) && !(cause == CAUSE_MODES && difference->low_count == 0);
    if (!fit->possible)
        return;
    for (int second = 0; second <= search.second_steps; second++)
        for (int first = 0; first <= search.first_steps; first++) {
            trial.first = at_step(search.first_least, search.first_most, search.first_steps, first);
            trial.second = at_step(search.second_least, search.second_most, search.second_steps, second);
            try_it(cause, difference, &trial, fit);
        }
    in_its_unit(cause, difference, fit);
}
