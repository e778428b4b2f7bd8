/* One candidate in one room, in three parts so that a search computes each only as often as it changes:
 * the room, the stack and screed in the room, the thickness. Every formula of the judgement is here once. */
#ifndef USC_STUDY_CANDIDATE_H
#define USC_STUDY_CANDIDATE_H

#include "study/build_height.h"
#include "study/design.h"
#include "study/level_below.h"

/* A sum of decimals a hair beside a limit still keeps it. In the unit of the reason. */
#define CANDIDATE_TOLERANCE 1e-9

/* What the room alone decides. */
struct room_terms {
    struct bare_room bare;
    struct held_to held;
    bool is_held, strict;
    double covering_dB;
    struct fixed_layers fixed;
    double area_load_kN_m2, point_load_kN, heating_pipe_mm, drain_mm, crown_above_mm;
    double available_height_mm, allowed_load_kN_m2; /* INFINITY: no limit */
    bool tiles;
    struct usc_thickness_rules rules;
};
void room_terms_of(const struct project *project, const struct room *room, const struct practice *practice,
                   const struct design_options *options, const struct flooring *flooring, struct room_terms *terms);

/* What does not depend on the thickness. Least thicknesses are 0 where no rule asks for one. */
struct pair_terms {
    double load_above_kN_m2, compressibility_above_mm; /* beyond the limit when positive */
    double unheated_mm, heated_mm, tile_mm;
    double lap_mm; /* what a lapped top layer takes, 0 when butted */
    bool no_rule, melts;
};
void pair_terms_of(const struct room_terms *room, const struct stack *stack, const struct screed *screed,
                   struct pair_terms *terms);

/* The floating floor by itself, without covering. */
struct floating {
    double delta_Lw_dB;
    bool out_of_range;
};

struct judged {
    unsigned fails;              /* bit REASON_x */
    double excess[REASON_COUNT]; /* beyond the limit when positive; meaningless for reasons without a unit */
    double height_mm, mass_kg_m2, wet_load_kN_m2, delta_Lw_dB;
    struct level_below level;
    struct verdict verdict;
};
void candidate_judge(const struct room_terms *room, const struct pair_terms *pair, const struct stack *stack,
                     const struct screed *screed, double thickness_mm, struct floating floating, struct judged *judged);

/* Underlays and screed; the flooring is given with the room and costs every candidate the same. NaN when unknown. */
static inline double candidate_cost_per_m2(const struct stack *stack, const struct screed *screed, double thickness_mm)
{
    return stack->cost_per_m2 + screed->cost_per_m3 * thickness_mm / 1000.0;
}

/* How high the underlay must be turned up: the rule of practice, and never below the finished floor with the allowance
 * for trimming. */
double candidate_upstand_mm(const struct practice *practice, const struct stack *stack, double thickness_mm,
                            const struct flooring *flooring);

/* A board is not turned up; a roll may be, and yield too little to serve as the edge strip. */
bool candidate_edge_strip_needed(const struct practice *practice, const struct stack *stack, bool heated);

/* "5 mm too high" */
const char *reason_told(enum reason reason, double shortfall, struct arena *arena);

#endif
