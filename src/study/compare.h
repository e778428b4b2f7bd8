/* A measured spectrum against the prediction of its room: band by band, as a single number, and what the difference
 * points to.
 * Source: prediction as in prediction.h; which fault shows where: handbook Schallschutz - Bauakustik and Vigran,
 * Building Acoustics, 2008, ch. 8 (in words only: no law per rigid bridge is published). The shapes that are fitted and
 * the standard deviations are judgement of this program. */
#ifndef USC_STUDY_COMPARE_H
#define USC_STUDY_COMPARE_H

#include "acoustics/floating_floor.h"
#include "study/prediction.h"

enum compare_quantity { COMPARE_L_PRIME_N, COMPARE_L_PRIME_NT };
extern const char *const compare_quantity_names[]; /* "L_prime_n", "L_prime_nT" */

enum finding {
    FINDING_AGREES,
    FINDING_STIFFER_OR_LIGHTER, /* of s'/m' only the ratio can be identified */
    FINDING_SOFTER_OR_HEAVIER,
    FINDING_SLAB_OR_FLANKING,
    FINDING_SPRING_OR_BUILDING, /* undecided */
    FINDING_EDGE_CONTACT,
    FINDING_POINT_BRIDGES,
    FINDING_ROOM_MODES,
    FINDING_UNEXPLAINED,
    FINDINGS
};
extern const char *const finding_names[]; /* NULL-terminated */

/* What was measured; 100..3150 Hz must be there. */
struct measured_bands {
    enum compare_quantity quantity;
    double level_dB[USC_BANDS];
    bool has[USC_BANDS];
};

/* What was predicted. effect NULL, or with f0 0 or NaN: a bare slab, no floating floor to go wrong. */
struct compare_room {
    const struct bare_room *building;
    const struct floor_effect *effect;
    enum usc_improvement_law law;
};

struct compare_options {
    double standard_deviation_dB[USC_BANDS]; /* of the measurement, per band, above 0 */
    double agrees_within_dB;                 /* an even offset up to this is still agreement */
};
/* Judgement: 2 dB below 100 Hz, 1 dB above; agreement within 2 dB, about what the simplified model can promise. */
void compare_options_default(struct compare_options *options);

/* Keys as the JSON result has them. NaN: does not apply. All four of USC_BANDS values. */
struct compared_bands {
    struct numbers frequency_Hz, measured_dB, predicted_dB, difference_dB; /* measured less predicted */
};

/* One way to explain the difference. */
struct explanation {
    const char *cause; /* "prediction holds", "spring", "building", "edge", "points", "halving", "modes" */
    const char *size_is, *size_unit;
    double size;
    const char *frequency_is; /* NULL when the cause has none */
    double frequency_Hz;
    double resonance_hump_dB; /* how much worse than the bare floor at the resonance */
    double misfit;            /* sum of squared deviations over their variances */
    double residual_dB;       /* root mean square of what is left */
    int parameters;
    double weight; /* of all explanations together 1 */
};

struct comparison {
    int quantity;
    double measured_w_dB, predicted_w_dB, difference_w_dB; /* rated in steps of 0.1 dB */
    int measured_whole_dB, predicted_whole_dB;             /* rated in whole dB */
    struct compared_bands *bands;
    struct objects explanations; /* struct explanation, heaviest first */
    int finding;
    const char *finding_in_words;
    double confidence;               /* weight of what the finding says, 0..1 */
    const char *confidence_in_words; /* "high", "fair", "low" */
    double stiffness_mass_factor;    /* fitted on s'/m'; NaN unless the finding is about the spring */
    double fitted_f0_Hz, predicted_f0_Hz;
    struct texts evidence, deciding_readings, inspect_first;
};
extern const struct record compared_bands_record, explanation_record, comparison_record;

/* Levels per band by the simplified model, 21 values. NaN all over when L'nT is asked without a volume. */
void compare_predicted_bands(const struct compare_room *room, enum compare_quantity quantity,
                             double level_dB[USC_BANDS]);

/* Returns 0; negative, nothing set, when a band 100..3150 Hz is missing, a level is no number or beyond +-300 dB, or
 * the prediction has no such quantity. options NULL: defaults. */
int study_compare(const struct compare_room *room, const struct measured_bands *measured,
                  const struct compare_options *options, struct arena *arena, struct comparison *comparison);

#endif
