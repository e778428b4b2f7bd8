/* Choosing an underlay stack, a screed and its thickness for every room against all constraints together.
 *
 * Every candidate (stack x screed x nominal thickness) gets one reason at most: the first that fails in the order of
 * enum reason. A candidate that fails nothing is a choice, unless another is at least as good in height, mass, margin
 * and cost and better in one: then it is beaten. examined = rejected + beaten + choices. */
#ifndef USC_STUDY_DESIGN_H
#define USC_STUDY_DESIGN_H

#include "study/prediction.h"

enum reason {
    REASON_IMPOSED_LOAD,    /* use above the underlay's limit */
    REASON_HEAT,            /* an underlay would not bear hot asphalt */
    REASON_COMPRESSIBILITY, /* stack too compressible for the load */
    REASON_NO_RULE,         /* thickness rules have no row for kind and class, or load beyond every row */
    REASON_THICKNESS,       /* thinner than the least nominal thickness (load, compressibility) */
    REASON_HEATED_COVER,    /* too little cover over heating pipes */
    REASON_TILES,           /* too thin under tiles */
    REASON_PIPES,           /* levelling layer lower than the crown of pipes */
    REASON_LAP,             /* too little screed left over a taped lap */
    REASON_DRAIN,           /* too little left at the drain */
    REASON_HEIGHT,          /* above the available height */
    REASON_LOAD,            /* wet load above the allowed added load */
    REASON_RANGE,           /* strict: formula outside its published range */
    REASON_SOUND,           /* acoustic limit with allowance not met */
    REASON_COUNT,
};
extern const char *const reason_names[]; /* JSON words: "imposed_load" ... */
extern const char *const reason_texts[]; /* for people: "too high" ... */
extern const char *const reason_units[]; /* of the shortfall: "mm", "kN/m2", "dB" */

struct design_choice {
    const char *underlay; /* names of the stack's ids joined with " + " top to bottom */
    const char *screed, *screed_kind;
    double thickness_mm, height_mm, mass_kg_m2, wet_load_kN_m2, stiffness_MN_m3, f0_Hz, delta_Lw_dB;
    double L_prime_n_w_dB, L_prime_nT_w_dB, margin_dB, cost_per_m2, upstand_mm, screed_mass_kg_m2;
    bool in_published_range;              /* every formula of this floor */
    bool turned_up;                       /* the top layer comes on a roll and is turned up at the walls */
    bool edge_strip_needed;               /* a board, or a turned-up edge that yields too little to serve as one */
    int stack_index, screed_index, order; /* not in the record */
};
extern const struct record design_choice_record;

struct nearest_miss {
    const char *underlay, *screed, *unit, *text; /* text: "5 mm too high" */
    double thickness_mm, shortfall;
};
struct design_rejected {
    const char *reason;
    double count;
    struct nearest_miss *nearest; /* fails nothing else; NULL when none */
};
extern const struct record design_rejected_record;

struct design_room {
    const char *name;
    double examined, beaten;
    struct objects choices;   /* struct design_choice, best first */
    struct objects rejected;  /* struct design_rejected, in the order of reasons, counts above 0 */
    const char *drawn;        /* id of the build-up as drawn, NULL when none */
    struct texts drawn_fails; /* what the drawn build-up fails, in words; empty when it passes */
    double drawn_margin_dB;
    enum answer meets; /* a choice exists */
};
extern const struct record design_room_record;

enum rank_by { RANK_BY_HEIGHT, RANK_BY_MASS, RANK_BY_MARGIN, RANK_BY_COST };
extern const char *const rank_by_names[];

struct design_options {
    enum K_by K_by;
    bool strict, one_build_up;
    enum rank_by rank_by;
};

struct design {
    struct objects rooms; /* struct design_room; with one_build_up one entry named "all rooms" */
    enum answer meets;
};

void study_design(const struct project *project, const struct catalogue *catalogue, const struct practice *practice,
                  const struct design_options *options, struct arena *arena, struct design *design);

/* One candidate in one room by the long way: prediction, rules and limits each anew. Returns the mask of reasons that
 * fail (bit REASON_x) and the shortfall of each. The oracle of the fast search and the judge of drawn build-ups. */
struct candidate {
    const struct underlay *const *layer;
    int layer_count;
    const struct screed *screed;
    double thickness_mm;
    const struct flooring *flooring;
};
struct examined {
    unsigned fails;
    double shortfall[REASON_COUNT];
    double height_mm, mass_kg_m2, wet_load_kN_m2, cost_per_m2, upstand_mm;
    struct floor_effect effect;
    double L_prime_n_w_dB, L_prime_nT_w_dB;
    struct verdict verdict;
};
void candidate_examine(const struct project *project, const struct room *room, const struct practice *practice,
                       const struct design_options *options, const struct candidate *candidate,
                       struct examined *examined);

/* The thickness rules that hold for a project: stated, else of the limit's country, else DIN 18560-2. */
const struct thickness_rules *thickness_rules_for(const struct project *project, const struct room *room,
                                                  const struct practice *practice);

#endif
