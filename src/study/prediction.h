/* What is predicted for a room: two factors, the building without the floor and the floor without the building.
 * Source: EN ISO 12354-2, simplified model; DIN 4109-2:2018 for K by formula and the allowance. */
#ifndef USC_STUDY_PREDICTION_H
#define USC_STUDY_PREDICTION_H

#include "acoustics/bands.h"
#include "base/field.h"
#include "base/formula.h"
#include "project/project.h"

enum K_by { K_BY_FORMULA, K_BY_TABLE };
extern const char *const K_by_names[];
enum delta_Lw_by { DELTA_LW_BY_FORMULA, DELTA_LW_BY_TEST_REPORT, DELTA_LW_BY_COVERING, DELTA_LW_NO_FLOOR };
extern const char *const delta_Lw_by_names[]; /* "formula", "test report", "soft covering", "no floating floor" */

/* The building alone: the level below the bare slab is Ln_eq_w + K (or - KT). */
struct bare_room {
    double slab_mass_kg_m2, Ln_eq_w_dB, mean_flanking_mass_kg_m2, K_dB, KT_dB, slab_Rw_dB;
    double L_w_dB; /* Ln,w,eq + K - KT */
    double volume_m3;
    double volume_term_dB; /* to subtract for L'nT,w; NaN without a volume */
    bool out_of_range;     /* a formula was used outside its published range */
};

/* More flanking elements than any room has, and layers than any stack; the model check refuses more. */
enum { FLANKING_MOST = 256, STACK_LAYERS_MOST = 16 };

/* One screed on one stack of underlays under one flooring: no room in it. */
struct stack {
    const struct underlay *layer[2]; /* top to bottom; design looks at one or two, predict at more through build_up */
    int count;
    double stiffness_MN_m3, thickness_mm, loaded_thickness_mm, compressibility_mm, mass_kg_m2, cost_per_m2;
    double imposed_load_limit_kN_m2;
};

struct floor_effect {
    double screed_mass_kg_m2, stiffness_MN_m3, f0_Hz;
    double delta_Lw_dB;       /* what counts: the larger of floating floor and soft covering */
    double delta_Lw_rated_dB; /* rating of the spectrum, steps of 0.1 dB */
    int delta_Lw_by;
    double delta_L_dB[USC_BANDS]; /* of the floating floor */
    bool out_of_range;            /* the dLw formula was used outside its published range */
};

struct verdict {
    double value_dB, limit_dB, allowance_dB, margin_dB; /* NaN without a requirement; margin from printed tenths */
    bool at_least;
    enum answer answer; /* ANSWER_NONE: no requirement */
};

/* Thickness under load; without one stated the delivered thickness less the compressibility. */
double underlay_loaded_mm(const struct underlay *underlay);

/* Fills stack sums from layers; stiffness through formula_apply_list when working is given. */
void stack_of(const struct underlay *const layer[], int count, struct stack *stack, struct working *working);

/* Slab mass by thickness x density, layers, or stated. NaN when only a measured level is given. */
double slab_mass_of(const struct slab *slab, struct working *working);

/* Does this element count in the mean flanking mass? */
bool flanking_is_massive(const struct flanking *flanking);

/* Stated, or area x height; NaN when neither. */
double receiving_volume_m3(const struct receiving_room *below);

struct bare_room bare_room_of(const struct room *room, enum K_by K_by, enum volume_rule volume_rule,
                              struct working *working);

/* Does the test report of a single-layer stack hold for this screed mass and law? */
bool report_governs(const struct stack *stack, const struct screed *screed, double screed_mass_kg_m2,
                    double report_mass_percent);

/* Improvement of a soft covering in dB, 0 for hard ones and none. */
double covering_improvement_dB(const struct flooring *flooring);

/* What counts of floating floor and covering: the larger. */
static inline double counting_improvement_dB(double floating_dB, double covering_dB)
{
    return covering_dB > floating_dB ? covering_dB : floating_dB;
}

/* The single numbers of the floating floor alone: everything but covering, spectrum and its rating. */
void floating_floor_of(const struct stack *stack, const struct screed *screed, double thickness_mm,
                       double report_mass_percent, struct working *working, struct floor_effect *effect);

/* flooring may be NULL; report_mass_percent: how near the tested screed mass must be for a test report to govern. */
void floor_effect_of(const struct stack *stack, const struct screed *screed, double thickness_mm,
                     const struct flooring *flooring, double report_mass_percent, struct working *working,
                     struct floor_effect *effect);

/* The requirement that holds for a room: its own, else the project's. allowance: the room's, the project's, the limit's
 * own, else 0. Returns false when none. */
struct held_to {
    const struct requirement *requirement;
    int descriptor, sense, volume_rule;
    double value_dB, allowance_dB;
};
bool held_to_of(const struct project *project, const struct room *room, struct held_to *held);

struct verdict verdict_of(const struct held_to *held, double L_prime_n_w_dB, double L_prime_nT_w_dB);

#endif
