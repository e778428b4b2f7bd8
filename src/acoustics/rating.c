#include "acoustics/rating.h"

#include <stdbool.h>

/* Rating of impact sound
 * Purpose:   one number for 16 third-octave or 5 octave levels.
 * Given:     levels 100..3150 Hz or 125..2000 Hz in tenths of a dB.
 * Returned:  the shifted reference curve's value at 500 Hz (octaves: minus 5 dB), the sum of unfavourable deviations,
 *            and C_I.
 * Status:    0, or -1 when a level lies outside +-300 dB.
 * Validity:  unfavourable is a level above the shifted curve; the smallest shift whose sum is at most 32.0 dB (octaves
 *            10.0 dB) counts, which is the one with the largest such sum.
 * Source:    ISO 717-2:2013, 4.3.1 and Annex A; third-octave curve also in Lehrbuch der Bauphysik, ch. 22; octave curve
 *            as in GOST R 56770-2015, Table 3; C_I also in Vigran, Building Acoustics, 2008, eq. 6.24.
 * Trap:      the octave curve's 62 at 1000 Hz is as printed; the third octaves' energy sum there would round to 61. */
const usc_tenths usc_impact_reference[USC_RATED_BANDS] = {620, 620, 620, 620, 620, 620, 610, 600,
                                                          590, 580, 570, 540, 510, 480, 450, 420};
const usc_tenths usc_impact_reference_octave[USC_OCTAVE_BANDS] = {670, 670, 650, 620, 490};

enum {
    SUM_MOST = 320,            /* tenths of a dB, third octaves */
    SUM_MOST_OCTAVE = 100,     /* tenths of a dB, octaves */
    WHOLE_STEP = 10,           /* tenths in 1 dB */
    UNSHIFTED_VALUE = 600,     /* tenths of a dB: the third-octave curve at 500 Hz, the octave curve there minus 5 dB */
    ADAPTATION_BANDS = 15,     /* 100..2500 Hz: Annex A leaves out 3150 Hz */
    ENLARGED_SUM_BANDS = 18,   /* 50..2500 Hz */
    ADAPTATION_OFFSET_DB = 15, /* Annex A */
    EXCESS_MOST = 2000,        /* above SUM_MOST, and 16 of them fit 16 bits */
};

/* The two ratings differ in this alone. Each public function passes a constant, and what it calls is always inlined:
 * loops of a known length become vector instructions, which doubles the speed. */
#define STRAIGHT static inline __attribute__((always_inline))
struct curve {
    const usc_tenths *reference;
    int bands;
    int sum_most; /* tenths of a dB */
};

static const struct curve third_octaves = {usc_impact_reference, USC_RATED_BANDS, SUM_MOST};
static const struct curve octaves = {usc_impact_reference_octave, USC_OCTAVE_BANDS, SUM_MOST_OCTAVE};

struct excess {
    int sum, count;
};

/* Sum and number of the deviations above the shift. One deviation above EXCESS_MOST already breaks the limit, so it
 * may count as that; everything then fits 16 bits and the compiler turns the loop into a few vector instructions. */
STRAIGHT struct excess excess_above(const int16_t deviation[], int bands, int16_t shift)
{
    int16_t sum = 0, count = 0;

    for (int i = 0; i < bands; i++) {
        int16_t above = (int16_t)(deviation[i] - shift);
        above = above > 0 ? above : 0;
        above = above < EXCESS_MOST ? above : EXCESS_MOST;
        sum = (int16_t)(sum + above);
        count = (int16_t)(count + (above > 0));
    }
    return (struct excess){sum, count};
}

/* Smallest integer not below dividend/divisor; divisor > 0. */
static inline int quotient_up(int dividend, int divisor)
{
    return dividend > 0 ? (dividend + divisor - 1) / divisor : -(-dividend / divisor);
}

/* The smallest shift in tenths whose sum of unfavourable deviations is at most sum_most.
 * The sum falls with the shift along a convex line, so Newton's step from a shift too small never goes past the wanted
 * one, and rounding the step up to a whole tenth does not either. The first shift is where all bands would count. */
STRAIGHT int16_t smallest_shift(const int16_t deviation[], int bands, int sum_most)
{
    int total = 0;

    for (int i = 0; i < bands; i++)
        total += deviation[i];
    int16_t shift = (int16_t)quotient_up(total - sum_most, bands);
    for (;;) {
        struct excess excess = excess_above(deviation, bands, shift);
        if (excess.sum <= sum_most)
            return shift;
        shift = (int16_t)(shift + quotient_up(excess.sum - sum_most, excess.count));
    }
}

STRAIGHT bool any_outside(const usc_tenths level[], int bands)
{
    int16_t outside = 0;

    for (int i = 0; i < bands; i++)
        outside |= (level[i] > USC_RATED_LEVEL_MOST) | (level[i] < -USC_RATED_LEVEL_MOST);
    return outside != 0;
}

STRAIGHT int rate(const struct curve *curve, const usc_tenths level[], int step, struct usc_rating *rating)
{
    int16_t deviation[USC_RATED_BANDS];

    if (any_outside(level, curve->bands))
        return -1;
    for (int i = 0; i < curve->bands; i++)
        deviation[i] = (int16_t)(level[i] - curve->reference[i]);
    int shift = quotient_up(smallest_shift(deviation, curve->bands, curve->sum_most), step) * step;
    rating->value = (usc_tenths)(UNSHIFTED_VALUE + shift);
    rating->unfavourable_sum = (int16_t)excess_above(deviation, curve->bands, (int16_t)shift).sum;
    rating->C_I_dB = 0;
    return 0;
}

/* Energy of a level k tenths of a dB below another: 10^(-k/100). One table, since ratings run by the million. */
/* clang-format off */
static const double energy_of_tenths_below[100] = {
    1, 0.9772372209558107, 0.9549925860214359, 0.9332543007969910, 0.9120108393559097,
    0.8912509381337455, 0.8709635899560806, 0.8511380382023765, 0.8317637711026710, 0.8128305161640992,
    0.7943282347242815, 0.7762471166286917, 0.7585775750291838, 0.7413102413009175, 0.7244359600749901,
    0.7079457843841379, 0.6918309709189365, 0.6760829753919818, 0.6606934480075960, 0.6456542290346555,
    0.6309573444801932, 0.6165950018614822, 0.6025595860743577, 0.5888436553555890, 0.5754399373371569,
    0.5623413251903491, 0.5495408738576246, 0.5370317963702527, 0.5248074602497726, 0.5128613839913649,
    0.5011872336272723, 0.4897788193684462, 0.4786300923226383, 0.4677351412871982, 0.4570881896148750,
    0.4466835921509631, 0.4365158322401660, 0.4265795188015927, 0.4168693834703354, 0.4073802778041127,
    0.3981071705534973, 0.3890451449942806, 0.3801893963205612, 0.3715352290971725, 0.3630780547701013,
    0.3548133892335755, 0.3467368504525316, 0.3388441561392025, 0.3311311214825911, 0.3235936569296283,
    0.3162277660168379, 0.3090295432513591, 0.3019951720402016, 0.2951209226666386, 0.2884031503126606,
    0.2818382931264454, 0.2754228703338166, 0.2691534803926916, 0.2630267991895382, 0.2570395782768864,
    0.2511886431509580, 0.2454708915685030, 0.2398832919019490, 0.2344228815319922, 0.2290867652767773,
    0.2238721138568340, 0.2187761623949553, 0.2137962089502232, 0.2089296130854039, 0.2041737944669529,
    0.1995262314968880, 0.1949844599758045, 0.1905460717963247, 0.1862087136662867, 0.1819700858609983,
    0.1778279410038923, 0.1737800828749375, 0.1698243652461744, 0.1659586907437561, 0.1621810097358930,
    0.1584893192461113, 0.1548816618912481, 0.1513561248436208, 0.1479108388168207, 0.1445439770745928,
    0.1412537544622754, 0.1380384264602885, 0.1348962882591654, 0.1318256738556407, 0.1288249551693134,
    0.1258925411794167, 0.1230268770812382, 0.1202264434617413, 0.1174897554939530, 0.1148153621496883,
    0.1122018454301963, 0.1096478196143185, 0.1071519305237606, 0.1047128548050900, 0.1023292992280754,
};
/* clang-format on */
/* The same for k times 10 dB; from 170 dB on a level adds nothing to the loudest one in a double. */
static const double energy_of_tens_below[2 * USC_RATED_LEVEL_MOST / 100 + 1] = {
    1, 1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10, 1e-11, 1e-12, 1e-13, 1e-14, 1e-15, 1e-16};

/* Energy sum in whole dB, halves rounded up. The small addend lets a sum that is a half on
 * paper round as one (a single level of 60.5 among silence). */
static inline int energy_sum_dB(const usc_tenths level[], int bands)
{
    int loudest = level[0];
    double energy = 0;

    for (int i = 1; i < bands; i++)
        loudest = level[i] > loudest ? level[i] : loudest;
    for (int i = 0; i < bands; i++) {
        unsigned below = (unsigned)(loudest - level[i]);
        energy += energy_of_tens_below[below / 100] * energy_of_tenths_below[below % 100];
    }
    return (int)floor(loudest / 10.0 + 10.0 * log10(energy) + 0.5 + 1e-7);
}

/* C_I = sum - 15 - Ln,w, the sum rounded first. */
static inline int adaptation_term_dB(const usc_tenths level[], int bands, int rated_value_dB)
{
    return energy_sum_dB(level, bands) - ADAPTATION_OFFSET_DB - rated_value_dB;
}

int usc_rate_impact(const usc_tenths level[USC_RATED_BANDS], struct usc_rating *rating)
{
    int status = rate(&third_octaves, level, WHOLE_STEP, rating);

    if (status == 0)
        rating->C_I_dB = adaptation_term_dB(level, ADAPTATION_BANDS, rating->value / WHOLE_STEP);
    return status;
}

int usc_rate_impact_fine(const usc_tenths level[USC_RATED_BANDS], struct usc_rating *rating)
{
    return rate(&third_octaves, level, 1, rating);
}

int usc_rate_impact_octave(const usc_tenths level[USC_OCTAVE_BANDS], struct usc_rating *rating)
{
    int status = rate(&octaves, level, WHOLE_STEP, rating);

    if (status == 0)
        rating->C_I_dB = adaptation_term_dB(level, USC_OCTAVE_BANDS, rating->value / WHOLE_STEP);
    return status;
}

int usc_rate_impact_octave_fine(const usc_tenths level[USC_OCTAVE_BANDS], struct usc_rating *rating)
{
    return rate(&octaves, level, 1, rating);
}

int usc_C_I_50_2500_dB(const usc_tenths level[USC_ENLARGED_BANDS], int rated_value_dB, int *C_I_dB)
{
    if (any_outside(level, USC_ENLARGED_BANDS))
        return -1;
    *C_I_dB = adaptation_term_dB(level, ENLARGED_SUM_BANDS, rated_value_dB);
    return 0;
}

static inline void deviations(const struct curve *curve, const usc_tenths level[], usc_tenths value,
                              usc_tenths deviation[])
{
    for (int i = 0; i < curve->bands; i++) {
        int above = level[i] - (curve->reference[i] + value - UNSHIFTED_VALUE);
        deviation[i] = (usc_tenths)(above > 0 ? above : 0);
    }
}

void usc_unfavourable_deviations(const usc_tenths level[USC_RATED_BANDS], usc_tenths value,
                                 usc_tenths deviation[USC_RATED_BANDS])
{
    deviations(&third_octaves, level, value, deviation);
}

void usc_unfavourable_deviations_octave(const usc_tenths level[USC_OCTAVE_BANDS], usc_tenths value,
                                        usc_tenths deviation[USC_OCTAVE_BANDS])
{
    deviations(&octaves, level, value, deviation);
}
