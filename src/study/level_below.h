/* Building times floor: the levels in the room below, for predictions and for candidates alike. */
#ifndef USC_STUDY_LEVEL_BELOW_H
#define USC_STUDY_LEVEL_BELOW_H

#include "acoustics/field_level.h"
#include "study/prediction.h"

struct level_below {
    double L_prime_n_w_dB, L_prime_nT_w_dB; /* the second NaN without a volume */
};

/* K and KT never stand together, so K - KT is one of them exactly. */
static inline struct level_below level_below_of(const struct bare_room *bare, double delta_Lw_dB)
{
    double const L_dB = usc_L_prime_n_w_dB(bare->Ln_eq_w_dB, delta_Lw_dB, bare->K_dB - bare->KT_dB);
    return (struct level_below){L_dB, L_dB - bare->volume_term_dB};
}

/* The flooring that lies on a room: its own, else that of its build-up. */
static inline const struct flooring *flooring_of(const struct room *room)
{
    if (room->found_flooring)
        return room->found_flooring;
    return room->found_build_up ? room->found_build_up->found_flooring : NULL;
}

/* Does a build-up have a floating floor, a screed on something resilient? */
static inline bool floats(const struct build_up *build_up)
{
    return build_up && build_up->screed && build_up->underlays.count > 0;
}

#endif
