/* The building without the floor: mass of the slab, level below it bare, flanking or oblique transmission, volume.
 * Source: EN ISO 12354-2, simplified model; K by formula DIN 4109-2:2018, by table EN 12354-2:2000 Table 1. */
#include "study/prediction.h"

#include "acoustics/bare_slab.h"
#include "acoustics/field_level.h"
#include "acoustics/floating_floor.h"
#include "acoustics/transmission.h"
#include "study/range.h"

const char *const K_by_names[] = {"formula", "table", NULL};

static double mass_by_density(double thickness_mm, double density_kg_m3, struct working *working)
{
    const double given[] = {thickness_mm, density_kg_m3};
    return formula_apply(&usc_mass_formula, given, working);
}

double slab_mass_of(const struct slab *slab, struct working *working)
{
    if (!isnan(slab->mass_kg_m2))
        return slab->mass_kg_m2;
    const struct layer *layers = slab->layers.at;
    if (isnan(slab->thickness_mm) && slab->layers.count == 0)
        return NAN;
    double mass = isnan(slab->thickness_mm) ? 0 : mass_by_density(slab->thickness_mm, slab->density_kg_m3, working);
    for (size_t i = 0; i < slab->layers.count; i++)
        mass += mass_by_density(layers[i].thickness_mm, layers[i].density_kg_m3, working);
    return mass;
}

bool flanking_is_massive(const struct flanking *flanking)
{
    return !flanking->lined && !flanking->lightweight;
}

/* NaN when no flanking element counts. */
static double mean_flanking_mass_of(const struct room *room, struct working *working, bool *left)
{
    const struct flanking *flanking = room->flanking.at;
    double masses[FLANKING_MOST];
    int count = 0;
    for (size_t i = 0; i < room->flanking.count && count < FLANKING_MOST; i++)
        if (flanking_is_massive(&flanking[i]))
            masses[count++] = !isnan(flanking[i].mass_kg_m2)
                                  ? flanking[i].mass_kg_m2
                                  : mass_by_density(flanking[i].thickness_mm, flanking[i].density_kg_m3, working);
    if (count == 0)
        return NAN;
    double const mean = formula_apply_list(&usc_mean_flanking_mass_formula, masses, count, working);
    if (!formula_holds(&usc_mean_flanking_mass_formula, masses, count, mean))
        *left = true;
    return mean;
}

static void apply_flanking(const struct room *room, enum K_by K_by, struct bare_room *bare, struct working *working)
{
    bare->mean_flanking_mass_kg_m2 = mean_flanking_mass_of(room, working, &bare->out_of_range);
    if (isnan(bare->mean_flanking_mass_kg_m2) || isnan(bare->slab_mass_kg_m2))
        return;
    const double given[] = {bare->slab_mass_kg_m2, bare->mean_flanking_mass_kg_m2};
    const struct formula *formula = K_by == K_BY_TABLE ? &usc_K_table_formula : usc_K_formula_of(given[0], given[1]);
    bare->K_dB = apply_in_range(formula, given, working, &bare->out_of_range);
}

double receiving_volume_m3(const struct receiving_room *below)
{
    if (!below)
        return NAN;
    return isnan(below->volume_m3) ? below->area_m2 * below->height_m : below->volume_m3;
}

/* The airborne side is an addition, never a reason to warn: it is left out where its formula does not hold. */
static double slab_Rw_of(double slab_mass_kg_m2, struct working *working)
{
    const double given[] = {slab_mass_kg_m2};
    if (isnan(slab_mass_kg_m2) ||
        !formula_holds(&usc_slab_Rw_formula, given, 1, formula_apply(&usc_slab_Rw_formula, given, NULL)))
        return NAN;
    return formula_apply(&usc_slab_Rw_formula, given, working);
}

struct bare_room bare_room_of(const struct room *room, enum K_by K_by, enum volume_rule volume_rule,
                              struct working *working)
{
    struct bare_room bare = {.mean_flanking_mass_kg_m2 = NAN};
    const struct slab *slab = room->slab;
    bare.slab_mass_kg_m2 = slab_mass_of(slab, working);
    if (isnan(slab->Ln_w_eq_dB)) {
        const double given[] = {bare.slab_mass_kg_m2};
        bare.Ln_eq_w_dB = apply_in_range(&usc_Ln_eq_w_formula, given, working, &bare.out_of_range);
    } else {
        bare.Ln_eq_w_dB = slab->Ln_w_eq_dB;
    }
    bare.slab_Rw_dB = slab_Rw_of(bare.slab_mass_kg_m2, working);
    int const position = room->below ? room->below->position : USC_POSITION_BELOW;
    if (position == USC_POSITION_BELOW) {
        apply_flanking(room, K_by, &bare, working);
    } else {
        const double given[] = {position};
        bare.KT_dB = formula_apply(&usc_KT_formula, given, working);
    }
    bare.L_w_dB = bare.Ln_eq_w_dB + bare.K_dB - bare.KT_dB;
    bare.volume_m3 = receiving_volume_m3(room->below);
    bare.volume_term_dB = volume_rule == VOLUME_V_30 ? -usc_standardised_V30_dB(0, bare.volume_m3)
                                                     : -usc_standardised_dB(0, bare.volume_m3);
    return bare;
}
