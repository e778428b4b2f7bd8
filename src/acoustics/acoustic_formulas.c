#include "acoustics/acoustic_formulas.h"

#include "acoustics/bare_slab.h"
#include "acoustics/dynamic_stiffness.h"
#include "acoustics/field_level.h"
#include "acoustics/floating_floor.h"
#include "acoustics/impact_class.h"
#include "acoustics/measurement_uncertainty.h"
#include "acoustics/reference_floor.h"
#include "acoustics/sound_level.h"
#include "acoustics/transmission.h"

const struct formula *const usc_acoustic_formulas[] = {
    &usc_mass_formula,
    &usc_apparent_stiffness_formula,
    &usc_gas_stiffness_formula,
    &usc_stiffness_airtight_formula,
    &usc_stiffness_middle_formula,
    &usc_stiffness_open_formula,
    &usc_stiffness_in_series_formula,
    &usc_compressibility_formula,
    &usc_resonance_formula,
    &usc_resonance_two_masses_formula,
    &usc_improvement_mineral_formula,
    &usc_improvement_light_formula,
    &usc_delta_Lw_mineral_formula,
    &usc_delta_Lw_asphalt_formula,
    &usc_delta_Lw_dry_formula,
    &usc_Ln_eq_w_formula,
    &usc_mean_flanking_mass_formula,
    &usc_K_formula,
    &usc_K_zero_formula,
    &usc_K_table_formula,
    &usc_KT_formula,
    &usc_L_prime_n_w_formula,
    &usc_L_prime_n_w_KT_formula,
    &usc_standardised_formula,
    &usc_standardised_V30_formula,
    &usc_slab_Rw_formula,
    &usc_delta_Rw_low_formula,
    &usc_delta_Rw_high_formula,
    &usc_energy_mean_formula,
    &usc_background_formula,
    &usc_background_limit_formula,
    &usc_low_frequency_formula,
    &usc_absorption_formula,
    &usc_L_prime_n_formula,
    &usc_L_prime_nT_formula,
    &usc_impact_class_formula,
    &usc_Ln_eq_0_w_formula,
    &usc_expanded_uncertainty_formula,
};

const int usc_acoustic_formula_count = sizeof usc_acoustic_formulas / sizeof usc_acoustic_formulas[0];
