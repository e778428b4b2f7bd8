#include "acoustics/field_level.h"

#define UNLIMITED -INFINITY, INFINITY
#define NORMALISED                                                                                                     \
    {                                                                                                                  \
        "L'n,w", "L_prime_n_w_dB", "dB", UNLIMITED                                                                     \
    }
#define STANDARDISED                                                                                                   \
    {                                                                                                                  \
        "L'nT,w", "L_prime_nT_w_dB", "dB", UNLIMITED                                                                   \
    }
#define BARE_LEVEL                                                                                                     \
    {                                                                                                                  \
        "Ln,w,eq", "Ln_eq_w_dB", "dB", UNLIMITED                                                                       \
    }
#define IMPROVEMENT                                                                                                    \
    {                                                                                                                  \
        "ΔLw", "delta_Lw_dB", "dB", UNLIMITED                                                                          \
    }
#define VOLUME                                                                                                         \
    {                                                                                                                  \
        "V", "volume_m3", "m3", UNLIMITED                                                                              \
    }

/* Normalised level
 * Purpose:   the level in the receiving room from the bare slab, the floating floor and the way of the sound.
 * Given:     Ln,w,eq, dLw and K (rooms one above the other) or KT (other positions), dB.
 * Returned:  L'n,w in dB.
 * Validity:  homogeneous massive slabs. Coverings do not add: dLw is that of the better of floating floor and soft
 *            covering. K raises the level, KT lowers it.
 * Source:    EN ISO 12354-2, simplified model; KT: handbook Schallschutz - Bauakustik, after DIN 4109. */
static double below(const double given[], int count)
{
    (void)count;
    return usc_L_prime_n_w_dB(given[0], given[1], given[2]);
}

static double elsewhere(const double given[], int count)
{
    (void)count;
    return usc_L_prime_n_w_dB(given[0], given[1], -given[2]);
}

const struct formula usc_L_prime_n_w_formula = {
    .id = "normalised-level-below",
    .title = "Weighted normalised impact level, room directly below",
    .expression = "{Ln,w,eq} - {ΔLw} + {K}",
    .result = NORMALISED,
    .given = (const struct quantity[]){BARE_LEVEL, IMPROVEMENT, {"K", "K_dB", "dB", UNLIMITED}},
    .given_count = 3,
    .source = {"EN ISO 12354-2", "simplified model", STANDING_PUBLISHED},
    .note = "Of floating floor and soft covering only the larger improvement counts.",
    .value = below,
};

const struct formula usc_L_prime_n_w_KT_formula = {
    .id = "normalised-level-elsewhere",
    .title = "Weighted normalised impact level, room not directly below",
    .expression = "{Ln,w,eq} - {ΔLw} - {KT}",
    .result = NORMALISED,
    .given = (const struct quantity[]){BARE_LEVEL, IMPROVEMENT, {"KT", "KT_dB", "dB", UNLIMITED}},
    .given_count = 3,
    .source = {"handbook Schallschutz - Bauakustik", "after DIN 4109", STANDING_PUBLISHED},
    .note = "Of floating floor and soft covering only the larger improvement counts.",
    .value = elsewhere,
};

/* Standardised level
 * Purpose:   the level at the reverberation time of a furnished room instead of a reference absorption.
 * Given:     L'n,w in dB, volume of the receiving room in m3.
 * Returned:  L'nT,w in dB.
 * Validity:  T0 0.5 s, A0 10 m2. The regional rule takes 30 m3 in place of 31.25 m3.
 * Source:    ISO 16283-2 as quoted in Lehrbuch der Bauphysik, ch. 22, and Baukonstruktionslehre 1, ch. 17.6;
 *            regional rule: building regulation of Comacchio, requirement 5.2. */
static double standardised(const double given[], int count)
{
    (void)count;
    return usc_standardised_dB(given[0], given[1]);
}

static double standardised_V30(const double given[], int count)
{
    (void)count;
    return usc_standardised_V30_dB(given[0], given[1]);
}

const struct formula usc_standardised_formula = {
    .id = "standardised-level",
    .title = "Weighted standardised impact level",
    .expression = "{L'n,w} - 10 lg(0.032 {V})",
    .result = STANDARDISED,
    .given = (const struct quantity[]){NORMALISED, VOLUME},
    .given_count = 2,
    .source = {"Lehrbuch der Bauphysik, ch. 22", "T0 0.5 s, A0 10 m2", STANDING_PUBLISHED},
    .value = standardised,
};

const struct formula usc_standardised_V30_formula = {
    .id = "standardised-level-v30",
    .title = "Weighted standardised impact level, Italian regional rule",
    .expression = "{L'n,w} - 10 lg({V}/30)",
    .result = STANDARDISED,
    .given = (const struct quantity[]){NORMALISED, VOLUME},
    .given_count = 2,
    .source = {"Building regulation of Comacchio", "requirement 5.2", STANDING_PUBLISHED},
    .value = standardised_V30,
};
