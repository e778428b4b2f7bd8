/* Height and wet load of a floor, for predictions and for candidates alike. */
#ifndef USC_STUDY_BUILD_HEIGHT_H
#define USC_STUDY_BUILD_HEIGHT_H

#include "acoustics/floating_floor.h"
#include "study/prediction.h"

/* What the room puts under and on every screed: levelling layer and flooring. */
struct fixed_layers {
    double levelling_mm, height_mm, mass_kg_m2;
};

/* Without a levelling layer of its own the pipes get one up to their crown. */
static inline double levelling_of_mm(const struct services *services)
{
    if (!services)
        return 0;
    return isnan(services->levelling_mm) ? services->crown_mm : services->levelling_mm;
}

static inline struct fixed_layers fixed_layers_of(const struct room *room, const struct flooring *flooring)
{
    struct fixed_layers fixed = {.levelling_mm = levelling_of_mm(room->services)};
    fixed.height_mm = fixed.levelling_mm + (flooring ? flooring->thickness_mm : 0);
    if (fixed.levelling_mm > 0)
        fixed.mass_kg_m2 = usc_mass_kg_m2(fixed.levelling_mm, room->services->levelling_density_kg_m3);
    if (flooring)
        fixed.mass_kg_m2 += flooring->mass_kg_m2;
    return fixed;
}

static inline double build_up_height_mm(const struct fixed_layers *fixed, const struct stack *stack,
                                        double thickness_mm)
{
    return fixed->height_mm + stack->loaded_thickness_mm + thickness_mm;
}

/* The screed counts wet: the heaviest that the slab has to carry. */
static inline double build_up_wet_mass_kg_m2(const struct fixed_layers *fixed, const struct stack *stack,
                                             const struct screed *screed, double thickness_mm)
{
    return fixed->mass_kg_m2 + stack->mass_kg_m2 + usc_mass_kg_m2(thickness_mm, screed->wet_density_kg_m3);
}

/* g = 9.81 m/s2. */
static inline double load_kN_m2_of_mass(double mass_kg_m2)
{
    return mass_kg_m2 * 9.81 / 1000.0;
}

#endif
