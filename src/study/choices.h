/* Which candidates remain when others are at least as good in everything, and in which order they are shown. */
#ifndef USC_STUDY_CHOICES_H
#define USC_STUDY_CHOICES_H

#include "study/design.h"

/* A candidate that fails nothing. order: its place in the catalogue's order. */
struct passing {
    double height_mm, mass_kg_m2, loss_dB, cost_per_m2; /* the smaller the better; loss is the margin negated */
    size_t order;
};

/* The Pareto front of the candidates so far. Room is given by the owner; at its end full becomes true and the front is
 * worthless. */
struct front {
    struct passing *at;
    size_t count, room;
    double beaten;
    bool full;
    bool by_cost; /* only where every candidate's cost is known: else the comparison would not be transitive */
};

/* Candidates come in catalogue order, so that of equal ones the first stays. */
void front_add(struct front *front, const struct passing *passing);

/* Best first: by the wish, then height, mass, margin, cost, catalogue order; unknown costs last. */
void choices_rank(struct design_choice choices[], size_t count, enum rank_by rank_by, struct arena *arena);

#endif
