/* Predicts every room: building, floor, level below, verdict, and what deserves a remark. */
#include "study/predict.h"

#include <string.h>

#include "acoustics/bare_slab.h"
#include "acoustics/field_level.h"
#include "acoustics/floating_floor.h"
#include "study/build_height.h"
#include "study/level_below.h"
#include "study/prediction_notes.h"
#include "study/range.h"
#include "study/range_warnings.h"
#include "study/stack_names.h"

/* What all rooms of one study share. */
struct study {
    const struct project *project;
    const struct predict_options *options;
    double report_mass_percent;
    struct numbers frequency_Hz;
    struct arena *arena;
};

static struct limit_record *limit_record_of(const struct held_to *held, struct arena *arena)
{
    struct limit_record *record = arena_take(arena, sizeof *record);
    const struct limit *limit = held->requirement->found;
    *record = (struct limit_record){
        .id = limit ? limit->id : NULL,
        .descriptor = descriptor_names[held->descriptor],
        .sense = sense_names[held->sense],
        .source = limit ? limit->source : NULL,
        .value_dB = held->value_dB,
    };
    return record;
}

static struct band_record *bands_of(const struct study *study, const struct floor_effect *effect)
{
    struct band_record *bands = arena_take(study->arena, sizeof *bands);
    double *delta_L_dB = arena_take_many(study->arena, USC_BANDS, sizeof *delta_L_dB);
    memcpy(delta_L_dB, effect->delta_L_dB, sizeof effect->delta_L_dB);
    *bands = (struct band_record){.frequency_Hz = study->frequency_Hz, .delta_L_dB = {delta_L_dB, USC_BANDS}};
    return bands;
}

/* Airborne sound through the same floor: given for the reader's use, outside its range not at all. */
static double delta_Rw_of(const struct floor_effect *effect, const struct bare_room *bare, struct working *working)
{
    if (isnan(bare->slab_Rw_dB))
        return NAN;
    const double masses[] = {effect->stiffness_MN_m3, effect->screed_mass_kg_m2, bare->slab_mass_kg_m2};
    double const f0_Hz = formula_apply(&usc_resonance_two_masses_formula, masses, NULL);
    double const delta_Rw_dB = usc_delta_Rw_dB(f0_Hz, bare->slab_Rw_dB);
    const struct formula *formula = isnan(delta_Rw_dB) ? NULL : usc_delta_Rw_formula_of(f0_Hz);
    const double given[] = {f0_Hz, bare->slab_Rw_dB};
    if (!formula || !formula_holds(formula, given, formula->given_count, delta_Rw_dB))
        return NAN;
    formula_apply(&usc_resonance_two_masses_formula, masses, working);
    return formula_apply(formula, given, working);
}

static struct floor_effect bare_effect(const struct flooring *flooring)
{
    double const covering_dB = covering_improvement_dB(flooring);
    return (struct floor_effect){
        .screed_mass_kg_m2 = NAN,
        .stiffness_MN_m3 = NAN,
        .f0_Hz = NAN,
        .delta_Lw_dB = covering_dB,
        .delta_Lw_rated_dB = NAN,
        .delta_Lw_by = covering_dB > 0 ? DELTA_LW_BY_COVERING : DELTA_LW_NO_FLOOR,
    };
}

/* Levels through the descriptors, so that they stand in the working. */
static void apply_levels(const struct bare_room *bare, const struct floor_effect *effect, bool below,
                         enum volume_rule volume_rule, struct working *working, struct room_prediction *record)
{
    const double given[] = {bare->Ln_eq_w_dB, effect->delta_Lw_dB, below ? bare->K_dB : bare->KT_dB};
    const double level = formula_apply(below ? &usc_L_prime_n_w_formula : &usc_L_prime_n_w_KT_formula, given, working);
    record->L_prime_n_w_dB = level;
    record->L_prime_nT_w_dB = NAN;
    if (isnan(bare->volume_m3))
        return;
    const double standardised[] = {level, bare->volume_m3};
    record->L_prime_nT_w_dB = formula_apply(
        volume_rule == VOLUME_V_30 ? &usc_standardised_V30_formula : &usc_standardised_formula, standardised, working);
}

/* One room through all formulas; returns whether one left its range. */
static bool compute(const struct study *study, const struct room *room, const struct held_to *held,
                    struct working *working, struct room_prediction *record, struct floor_effect *effect,
                    struct stack *stack)
{
    const struct build_up *build_up = room->found_build_up;
    const struct flooring *flooring = flooring_of(room);
    enum volume_rule const volume_rule = held ? held->volume_rule : VOLUME_0_032_V;
    struct bare_room const bare = bare_room_of(room, study->options->K_by, volume_rule, working);
    bool const floating = floats(build_up);
    *effect = bare_effect(flooring);
    *stack = (struct stack){0};
    if (floating) {
        stack_of(build_up->found_underlay, (int)build_up->underlays.count, stack, working);
        floor_effect_of(stack, build_up->screed->found, build_up->screed->thickness_mm, flooring,
                        study->report_mass_percent, working, effect);
    }
    record->slab_mass_kg_m2 = bare.slab_mass_kg_m2;
    record->Ln_eq_w_dB = bare.Ln_eq_w_dB;
    record->mean_flanking_mass_kg_m2 = bare.mean_flanking_mass_kg_m2;
    record->K_dB = bare.K_dB;
    record->KT_dB = bare.KT_dB;
    record->volume_m3 = bare.volume_m3;
    apply_levels(&bare, effect, is_directly_below(room), volume_rule, working, record);
    record->delta_Rw_dB = floating ? delta_Rw_of(effect, &bare, working) : NAN;
    return bare.out_of_range || effect->out_of_range;
}

/* Without a wish for the working only rooms that left a range go through it, for the excursions: 100 000 rooms then
 * stay small. */
static void compute_with_working(const struct study *study, const struct room *room, const struct held_to *held,
                                 struct room_prediction *record, struct floor_effect *effect, struct stack *stack)
{
    record->working.arena = study->arena;
    if (study->options->working) {
        compute(study, room, held, &record->working, record, effect, stack);
        return;
    }
    if (compute(study, room, held, NULL, record, effect, stack))
        compute(study, room, held, &record->working, record, effect, stack);
    record->working.first_step = record->working.last_step = NULL;
}

static void fill_build_up(const struct study *study, const struct room *room, const struct stack *stack,
                          struct room_prediction *record)
{
    const struct build_up *build_up = room->found_build_up;
    const struct flooring *flooring = flooring_of(room);
    struct fixed_layers const fixed = fixed_layers_of(room, flooring);
    record->flooring = flooring ? flooring->id : NULL;
    record->build_up = room->build_up;
    record->screed_thickness_mm = NAN;
    record->height_mm = fixed.height_mm;
    record->wet_load_kN_m2 = load_kN_m2_of_mass(fixed.mass_kg_m2);
    if (!floats(build_up))
        return;
    const struct chosen_screed *chosen = build_up->screed;
    record->underlay = stack_names(build_up->found_underlay, build_up->underlays.count, study->arena);
    record->screed = chosen->kind;
    record->screed_thickness_mm = chosen->thickness_mm;
    record->height_mm = build_up_height_mm(&fixed, stack, chosen->thickness_mm);
    record->wet_load_kN_m2 =
        load_kN_m2_of_mass(build_up_wet_mass_kg_m2(&fixed, stack, chosen->found, chosen->thickness_mm));
}

static void predict_room(const struct study *study, const struct room *room, struct room_prediction *record)
{
    struct held_to terms;
    const struct held_to *held = held_to_of(study->project, room, &terms) ? &terms : NULL;
    struct floor_effect effect;
    struct stack stack;
    *record = (struct room_prediction){.name = room->name, .K_by = study->options->K_by};
    compute_with_working(study, room, held, record, &effect, &stack);
    fill_build_up(study, room, &stack, record);
    record->screed_mass_kg_m2 = effect.screed_mass_kg_m2;
    record->stiffness_MN_m3 = effect.stiffness_MN_m3;
    record->f0_Hz = effect.f0_Hz;
    record->delta_Lw_dB = effect.delta_Lw_dB;
    record->delta_Lw_rated_dB = effect.delta_Lw_rated_dB;
    record->delta_Lw_by = effect.delta_Lw_by;
    record->bands = floats(room->found_build_up) ? bands_of(study, &effect) : NULL;
    struct verdict const verdict = verdict_of(held, record->L_prime_n_w_dB, record->L_prime_nT_w_dB);
    record->limit = held ? limit_record_of(held, study->arena) : NULL;
    record->allowance_dB = verdict.allowance_dB;
    record->margin_dB = verdict.margin_dB;
    record->meets_limit = verdict.answer;
    prediction_notes(room, record, &stack, study->report_mass_percent, study->arena);
}

static enum answer all_meet(const struct room_prediction *rooms, size_t count)
{
    enum answer meets = ANSWER_NONE;
    for (size_t i = 0; i < count; i++) {
        if (rooms[i].meets_limit == ANSWER_NO)
            return ANSWER_NO;
        if (rooms[i].meets_limit == ANSWER_YES)
            meets = ANSWER_YES;
    }
    return meets;
}

void study_predict(const struct project *project, const struct practice *practice,
                   const struct predict_options *options, struct arena *arena, struct prediction *prediction)
{
    const struct room *room = project->rooms.at;
    size_t const count = project->rooms.count;
    struct room_prediction *records = arena_take_many(arena, count, sizeof *records);
    double *frequency_Hz = arena_take_many(arena, USC_BANDS, sizeof *frequency_Hz);
    memcpy(frequency_Hz, usc_band_Hz, USC_BANDS * sizeof *frequency_Hz);
    struct study const study = {
        .project = project,
        .options = options,
        .report_mass_percent = practice_number(practice, PRACTICE_TEST_REPORT_MASS_PERCENT),
        .frequency_Hz = {frequency_Hz, USC_BANDS},
        .arena = arena,
    };
    for (size_t i = 0; i < count; i++)
        predict_room(&study, &room[i], &records[i]);
    prediction->rooms = (struct objects){records, count};
    prediction->warnings = range_warnings(records, count, arena);
    prediction->meets = all_meet(records, count);
    if (options->strict && prediction->warnings.count > 0)
        prediction->meets = ANSWER_NO;
}
