#include "study/candidate.h"

#include <string.h>

#include "base/number.h"

/* Where no use is stated: a dwelling. Common practice. */
static const double DEFAULT_AREA_LOAD_KN_M2 = 2, DEFAULT_POINT_LOAD_KN = 1;
/* The rules where neither project nor limit names others. */
static const char DEFAULT_RULES[] = "din-18560-2";

const char *const reason_names[] = {"imposed_load", "heat",  "compressibility", "no_rule", "thickness",
                                    "heated_cover", "tiles", "pipes",           "lap",     "drain",
                                    "height",       "load",  "range",           "sound",   NULL};
const char *const reason_texts[] = {
    "of use above what the underlay may carry",
    "an underlay that does not bear hot asphalt",
    "too compressible",
    "no thickness rule for this screed under this load",
    "too thin",
    "too thin over the heating pipes",
    "too thin under tiles",
    "of pipes above the levelling layer",
    "too thin over a lap of the underlay",
    "too thin at the drain",
    "too high",
    "too heavy",
    "a formula outside its published range",
    "too loud",
    NULL,
};
const char *const reason_units[] = {"kN/m2", "",   "mm", "",      "mm", "mm", "mm", "mm",
                                    "mm",    "mm", "mm", "kN/m2", "",   "dB", NULL};

const char *reason_told(enum reason reason, double shortfall, struct arena *arena)
{
    if (!*reason_units[reason])
        return reason_texts[reason];
    char amount[NUMBER_TEXT];
    number_short(shortfall, reason == REASON_SOUND ? 1 : 2, amount);
    return arena_printf(arena, "%s %s %s", amount, reason_units[reason], reason_texts[reason]);
}

static bool names_country(const struct thickness_rules *rules, const char *country)
{
    for (size_t i = 0; i < rules->countries.count; i++)
        if (!strcmp(rules->countries.at[i], country))
            return true;
    return false;
}

static const struct thickness_rules *rules_of_country(const struct practice *practice, const char *country)
{
    const struct thickness_rules *rules = practice->thickness.at;
    for (size_t i = 0; country && i < practice->thickness.count; i++)
        if (names_country(&rules[i], country))
            return &rules[i];
    return NULL;
}

const struct thickness_rules *thickness_rules_for(const struct project *project, const struct room *room,
                                                  const struct practice *practice)
{
    struct held_to held;
    const struct limit *limit = held_to_of(project, room, &held) ? held.requirement->found : NULL;
    const struct thickness_rules *rules = NULL;
    if (project->thickness_rules)
        rules = practice_thickness(practice, project->thickness_rules);
    if (!rules && limit && limit->thickness_rules)
        rules = practice_thickness(practice, limit->thickness_rules);
    if (!rules && limit)
        rules = rules_of_country(practice, limit->country);
    return rules ? rules : practice_thickness(practice, DEFAULT_RULES);
}

static double limit_or_none(double limit)
{
    return isnan(limit) ? INFINITY : limit;
}

static void take_use(const struct use *use, struct room_terms *terms)
{
    terms->area_load_kN_m2 = use ? use->area_load_kN_m2 : DEFAULT_AREA_LOAD_KN_M2;
    terms->point_load_kN = use ? use->point_load_kN : DEFAULT_POINT_LOAD_KN;
    if (use && use->heating == HEATING_PIPES_IN_SCREED)
        terms->heating_pipe_mm = use->heating_pipe_mm;
}

void room_terms_of(const struct project *project, const struct room *room, const struct practice *practice,
                   const struct design_options *options, const struct flooring *flooring, struct room_terms *terms)
{
    *terms = (struct room_terms){
        .strict = options->strict,
        .covering_dB = covering_improvement_dB(flooring),
        .fixed = fixed_layers_of(room, flooring),
        .available_height_mm = limit_or_none(room->available_height_mm),
        .allowed_load_kN_m2 = limit_or_none(room->allowed_added_load_kN_m2),
        .tiles = flooring && flooring->tiles,
    };
    terms->is_held = held_to_of(project, room, &terms->held);
    terms->bare = bare_room_of(room, options->K_by, terms->is_held ? terms->held.volume_rule : VOLUME_0_032_V, NULL);
    take_use(room->use, terms);
    if (room->drain) /* 1 % over 1 m is 10 mm */
        terms->drain_mm = 10.0 * room->drain->fall_percent * room->drain->distance_m;
    if (room->services)
        terms->crown_above_mm = room->services->crown_mm - terms->fixed.levelling_mm;
    const struct thickness_rules *rules = thickness_rules_for(project, room, practice);
    if (rules)
        terms->rules = thickness_rules_view(rules);
}

/* A stack that is too compressible is still asked how thick it would have to be at the limit, so that both reasons are
 * known apart. */
static void ask_rules(const struct room_terms *room, struct usc_thickness_case given, struct pair_terms *terms)
{
    struct usc_thickness_answer answer;
    enum usc_thickness_status status = usc_least_nominal_thickness(&room->rules, &given, &answer);
    if (status == USC_THICKNESS_TOO_COMPRESSIBLE) {
        terms->compressibility_above_mm = given.compressibility_mm - answer.compressibility_limit_mm;
        given.compressibility_mm = answer.compressibility_limit_mm;
        status = usc_least_nominal_thickness(&room->rules, &given, &answer);
    }
    terms->no_rule = status == USC_THICKNESS_NO_KIND || status == USC_THICKNESS_LOAD_BEYOND;
    if (status != USC_THICKNESS_KNOWN)
        return;
    terms->unheated_mm = answer.base_mm + answer.increment_mm - answer.reduction_mm;
    terms->heated_mm = answer.heated_mm;
    terms->tile_mm = answer.tile_mm;
}

static bool bears_hot_asphalt(const struct stack *stack)
{
    for (int i = 0; i < stack->count; i++)
        if (!stack->layer[i]->bears_hot_asphalt)
            return false;
    return true;
}

void pair_terms_of(const struct room_terms *room, const struct stack *stack, const struct screed *screed,
                   struct pair_terms *terms)
{
    const struct underlay *top = stack->layer[0];
    *terms = (struct pair_terms){
        .load_above_kN_m2 = room->area_load_kN_m2 - stack->imposed_load_limit_kN_m2,
        .melts = screed->kind == SCREED_AS && !bears_hot_asphalt(stack),
        .lap_mm = top->joint == JOINT_LAPPED ? underlay_loaded_mm(top) : 0,
    };
    ask_rules(room,
              (struct usc_thickness_case){
                  .kind = screed_kind_names[screed->kind],
                  .strength_class = screed->strength_class,
                  .area_load_kN_m2 = room->area_load_kN_m2,
                  .point_load_kN = room->point_load_kN,
                  .compressibility_mm = stack->compressibility_mm,
                  .insulation_mm = stack->thickness_mm,
                  .heating_pipe_mm = room->heating_pipe_mm,
                  .tiles = room->tiles,
              },
              terms);
}

/* A lap leaves the screed thinner by its thickness; that place must still be as thick as a single place may be.
 * A fall to a drain leaves it thinner by the height of the fall; that place must still be as thick as the rules ask of
 * the whole screed, unheated: a stricter reading than that of a single place, since the low zone is wide. */
static void judge_thickness(const struct room_terms *room, const struct pair_terms *pair, double thickness_mm,
                            double excess[REASON_COUNT])
{
    excess[REASON_THICKNESS] = pair->unheated_mm - thickness_mm;
    excess[REASON_HEATED_COVER] = pair->heated_mm - thickness_mm;
    excess[REASON_TILES] = pair->tile_mm - thickness_mm;
    excess[REASON_LAP] = 0;
    if (pair->lap_mm > 0)
        excess[REASON_LAP] = usc_least_single_thickness_mm(&room->rules, thickness_mm) - (thickness_mm - pair->lap_mm);
    excess[REASON_DRAIN] = room->drain_mm > 0 ? pair->unheated_mm - (thickness_mm - room->drain_mm) : 0;
}

void candidate_judge(const struct room_terms *room, const struct pair_terms *pair, const struct stack *stack,
                     const struct screed *screed, double thickness_mm, struct floating floating, struct judged *judged)
{
    double *excess = judged->excess;
    judged->height_mm = build_up_height_mm(&room->fixed, stack, thickness_mm);
    judged->mass_kg_m2 = build_up_wet_mass_kg_m2(&room->fixed, stack, screed, thickness_mm);
    judged->wet_load_kN_m2 = load_kN_m2_of_mass(judged->mass_kg_m2);
    judged->delta_Lw_dB = counting_improvement_dB(floating.delta_Lw_dB, room->covering_dB);
    judged->level = level_below_of(&room->bare, judged->delta_Lw_dB);
    judged->verdict =
        verdict_of(room->is_held ? &room->held : NULL, judged->level.L_prime_n_w_dB, judged->level.L_prime_nT_w_dB);
    excess[REASON_IMPOSED_LOAD] = pair->load_above_kN_m2;
    excess[REASON_HEAT] = pair->melts ? 1 : 0;
    excess[REASON_COMPRESSIBILITY] = pair->compressibility_above_mm;
    excess[REASON_NO_RULE] = pair->no_rule ? 1 : 0;
    judge_thickness(room, pair, thickness_mm, excess);
    excess[REASON_PIPES] = room->crown_above_mm;
    excess[REASON_HEIGHT] = isinf(room->available_height_mm) ? 0 : judged->height_mm - room->available_height_mm;
    excess[REASON_LOAD] = judged->wet_load_kN_m2 - room->allowed_load_kN_m2;
    excess[REASON_RANGE] = room->strict && (floating.out_of_range || room->bare.out_of_range) ? 1 : 0;
    excess[REASON_SOUND] = judged->verdict.answer == ANSWER_NO ? -judged->verdict.margin_dB : 0;
    unsigned fails = 0;
    for (int i = 0; i < REASON_COUNT; i++)
        fails |= (unsigned)!(excess[i] <= CANDIDATE_TOLERANCE) << i; /* what is not known to keep a limit fails it */
    judged->fails = fails;
}

double candidate_upstand_mm(const struct practice *practice, const struct stack *stack, double thickness_mm,
                            const struct flooring *flooring)
{
    double const above_mm = stack->loaded_thickness_mm + thickness_mm + (flooring ? flooring->thickness_mm : 0) +
                            practice_number(practice, PRACTICE_TRIM_ABOVE_FLOOR_MM);
    return fmax(practice_number(practice, PRACTICE_UPSTAND_MM), above_mm);
}

bool candidate_edge_strip_needed(const struct practice *practice, const struct stack *stack, bool heated)
{
    enum practice_value const asked = heated ? PRACTICE_EDGE_YIELD_HEATED_MM : PRACTICE_EDGE_YIELD_MM;
    return stack->layer[0]->form == FORM_BOARD || stack->layer[0]->edge_yield_mm < practice_number(practice, asked);
}

void candidate_examine(const struct project *project, const struct room *room, const struct practice *practice,
                       const struct design_options *options, const struct candidate *candidate,
                       struct examined *examined)
{
    struct room_terms terms;
    struct pair_terms pair;
    struct stack stack;
    struct judged judged;
    double const report_mass_percent = practice_number(practice, PRACTICE_TEST_REPORT_MASS_PERCENT);
    *examined = (struct examined){0};
    room_terms_of(project, room, practice, options, candidate->flooring, &terms);
    stack_of(candidate->layer, candidate->layer_count, &stack, NULL);
    pair_terms_of(&terms, &stack, candidate->screed, &pair);
    floor_effect_of(&stack, candidate->screed, candidate->thickness_mm, candidate->flooring, report_mass_percent, NULL,
                    &examined->effect);
    struct floating const floating = {examined->effect.delta_Lw_dB, examined->effect.out_of_range};
    candidate_judge(&terms, &pair, &stack, candidate->screed, candidate->thickness_mm, floating, &judged);
    examined->fails = judged.fails;
    for (int i = 0; i < REASON_COUNT; i++)
        examined->shortfall[i] = !(judged.fails >> i & 1) ? 0 : *reason_units[i] ? judged.excess[i] : NAN;
    examined->height_mm = judged.height_mm;
    examined->mass_kg_m2 = judged.mass_kg_m2;
    examined->wet_load_kN_m2 = judged.wet_load_kN_m2;
    examined->cost_per_m2 = candidate_cost_per_m2(&stack, candidate->screed, candidate->thickness_mm);
    examined->upstand_mm = candidate_upstand_mm(practice, &stack, candidate->thickness_mm, candidate->flooring);
    examined->L_prime_n_w_dB = judged.level.L_prime_n_w_dB;
    examined->L_prime_nT_w_dB = judged.level.L_prime_nT_w_dB;
    examined->verdict = judged.verdict;
}
