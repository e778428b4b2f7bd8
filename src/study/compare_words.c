/* The comparison in plain words: names, evidence, deciding readings, what to inspect first. */
#include "study/compare_words.h"

#include <math.h>

/* Judgement. */
static const double HIGH_FROM = 0.95, FAIR_FROM = 0.75;

enum { SENTENCES_MOST = 8 };

static const struct cause_words {
    const char *cause, *size_is, *size_unit, *frequency_is;
} cause_words[CAUSES] = {
    [CAUSE_NONE] = {"prediction holds", "even offset", "dB", NULL},
    [CAUSE_SPRING] = {"spring", "factor on s'/m'", "", "resonance"},
    [CAUSE_BUILDING] = {"building", "even offset", "dB", NULL},
    [CAUSE_EDGE] = {"edge", "growth of the excess per decade", "dB", "growth starts at"},
    [CAUSE_POINTS] = {"points", "improvement lost at low frequencies", "dB", "reach ends at"},
    [CAUSE_HALVING] = {"halving", "share of the improvement lost", "", NULL},
    [CAUSE_MODES] = {"modes", "mean deviation below 100 Hz", "dB", NULL},
};

/* Lists end with NULL. */
static const struct finding_words {
    const char *sentence;
    const char *decide[SENTENCES_MOST], *inspect[SENTENCES_MOST];
} finding_words[FINDINGS] = {
    [FINDING_AGREES] = {"The measurement agrees with the prediction.", {NULL}, {NULL}},
    [FINDING_STIFFER_OR_LIGHTER] =
        {"The spring is stiffer or the screed lighter than predicted; only the ratio s'/m' shows in the levels.",
         {"Screed thickness at several core holes: with the density it gives m', and so s'.",
          "Dynamic stiffness of a piece of the underlay that was laid, by test.", NULL},
         {"Screed thickness, thin spots first: over pipes, at lap joints, at high points of the slab.",
          "Delivery notes of the underlay: type, thickness, dynamic stiffness.",
          "Underlay crushed by site traffic, soaked, or loaded beyond what it is made for.",
          "Levelling fill or a second layer that was left out or exchanged.", NULL}},
    [FINDING_SOFTER_OR_HEAVIER] =
        {"The floor is better than predicted: a softer spring or a heavier screed.",
         {"Screed thickness at several core holes: with the density it gives m', and so s'.", NULL},
         {"Screed thickness and height of the finished floor: is there room for what was built?",
          "Compression of the underlay over time when it is softer than planned.", NULL}},
    [FINDING_SLAB_OR_FLANKING] =
        {"The whole level is shifted, below the resonance too: the building differs, not the floating floor.",
         {"A measurement on the bare slab, or on a room where the floor is still open.",
          "Reverberation time and volume of the receiving room again: an error there is even too.", NULL},
         {"Slab thickness and density as built, cavities, hollow or filled elements.",
          "Masses of the flanking walls, linings, lightweight walls counted as heavy ones.",
          "Room data of the prediction: volume, position of the rooms to one another.",
          "Reverberation time and calibration of the measurement.", NULL}},
    [FINDING_SPRING_OR_BUILDING] =
        {"An even offset above the resonance: the spring or the building; these readings cannot tell which.",
         {"50, 63 and 80 Hz with enough positions, corners included: below the resonance a spring shows nothing, the "
          "building shows the same offset.",
          "Screed thickness at several core holes.", "A measurement on the bare slab.", NULL},
         {"Screed thickness, thin spots first.", "Delivery notes of the underlay: type, thickness, dynamic stiffness.",
          "Slab thickness and masses of the flanking walls as built.", NULL}},
    [FINDING_EDGE_CONTACT] = {"The excess grows with frequency: rigid contact along the edge of the screed.",
                              {"The same room again after the edge joint is cut free.",
                               "Levels with the tapping machine near each wall: loudest where the contact is.", NULL},
                              {"Edge strip: cut before the flooring was laid, or missing?",
                               "Mortar, adhesive or grout in the joint at walls, door frames and pipe sleeves.",
                               "Tiles or skirting that touch both floor and wall.",
                               "Door thresholds: is the screed parted there?", NULL}},
    [FINDING_POINT_BRIDGES] =
        {"The excess begins at the resonance, at low and mid frequencies: rigid points between screed and slab.",
         {"Levels with the tapping machine on a grid of positions: loudest near a bridge.",
          "Thermal or borescope look at suspected places before anything is opened.", NULL},
         {"Nails, screws or fixings of heating pipes that go through the underlay.",
          "Mortar that ran through open joints or torn film of the underlay.",
          "Pipes and conduits on the slab that touch the screed; thin spots above them.",
          "Feet of door frames, floor drains, pipe sleeves.", NULL}},
    [FINDING_ROOM_MODES] = {"Only bands below 100 Hz deviate: the sound field of the receiving room, not the floor.",
                            {"50, 63 and 80 Hz again with more microphone positions and with corner positions.",
                             "Reverberation time at 63 Hz in octaves.", NULL},
                            {"Microphone positions and corners used below 100 Hz.",
                             "Volume of the receiving room: under 25 m3 the low-frequency procedure applies.", NULL}},
    [FINDING_UNEXPLAINED] =
        {"No single cause gives this difference.",
         {"The measurement again, with background level in every band.",
          "A second room with the same floor: what repeats is the floor, what does not is the room.", NULL},
         {"Background level, flags and calibration of the measurement.",
          "Edge joint, thin spots and pipes: several faults at once.",
          "Input of the prediction: is it this room, this floor?", NULL}},
};

void compare_name_cause(enum cause cause, struct explanation *explanation)
{
    explanation->cause = cause_words[cause].cause;
    explanation->size_is = cause_words[cause].size_is;
    explanation->size_unit = cause_words[cause].size_unit;
    explanation->frequency_is = cause_words[cause].frequency_is;
}

/* Mean difference over a range of bands; NaN when none lies in it. */
static double mean_dB(const struct difference *difference, double from_Hz, double to_Hz)
{
    double sum = 0;
    int count = 0;
    for (int i = 0; i < difference->count; i++)
        if (difference->frequency_Hz[i] >= from_Hz && difference->frequency_Hz[i] <= to_Hz) {
            sum += difference->difference_dB[i];
            count++;
        }
    return count == 0 ? NAN : sum / count;
}

static void add(struct texts *list, const char *sentence)
{
    list->at[list->count++] = sentence;
}

static void add_mean(const struct difference *difference, double from_Hz, double to_Hz, struct arena *arena,
                     struct texts *evidence)
{
    double const mean = mean_dB(difference, from_Hz, to_Hz);
    if (isnan(mean))
        add(evidence, arena_printf(arena, "%g to %g Hz: not measured.", from_Hz, to_Hz));
    else
        add(evidence,
            arena_printf(arena, "%g to %g Hz: measured less predicted is %+.1f dB on average.", from_Hz, to_Hz, mean));
}

static void add_spring(const struct comparison *comparison, const struct difference *difference, struct arena *arena,
                       struct texts *evidence)
{
    add(evidence, arena_printf(arena,
                               "A factor of %.2f on s'/m' moves the resonance from %.0f to %.0f Hz and every band well "
                               "above both by %+.1f dB.",
                               comparison->stiffness_mass_factor, comparison->predicted_f0_Hz, comparison->fitted_f0_Hz,
                               usc_spring_loss_dB(difference->slope_dB, comparison->stiffness_mass_factor)));
}

static void add_points(const struct fit fits[CAUSES], struct arena *arena, struct texts *evidence)
{
    const struct fit *points = &fits[CAUSE_POINTS], *halving = &fits[CAUSE_HALVING];
    if (halving->misfit < points->misfit)
        add(evidence, arena_printf(arena, "About %.0f %% of the improvement in dB is lost, from the resonance up.",
                                   100.0 * halving->size));
    else
        add(evidence,
            arena_printf(arena, "The bridges take about %.0f dB at low frequencies and nothing above about %.0f Hz.",
                         points->size, points->frequency_Hz));
}

static void add_particular(const struct difference *difference, const struct fit fits[CAUSES], struct arena *arena,
                           const struct comparison *comparison, struct texts *evidence)
{
    switch ((enum finding)comparison->finding) {
    case FINDING_SPRING_OR_BUILDING:
        add(evidence, arena_printf(arena, "As an error of the building it would be %+.1f dB in every band.",
                                   fits[CAUSE_BUILDING].size));
        add_spring(comparison, difference, arena, evidence);
        break;
    case FINDING_STIFFER_OR_LIGHTER:
    case FINDING_SOFTER_OR_HEAVIER:
        add_spring(comparison, difference, arena, evidence);
        break;
    case FINDING_SLAB_OR_FLANKING:
        add(evidence, arena_printf(arena, "An even %+.1f dB fits all bands, within %.1f dB.", fits[CAUSE_BUILDING].size,
                                   fits[CAUSE_BUILDING].residual_dB));
        break;
    case FINDING_EDGE_CONTACT:
        add(evidence, arena_printf(arena, "From %.0f Hz on the excess grows by %.0f dB per decade.",
                                   fits[CAUSE_EDGE].frequency_Hz, fits[CAUSE_EDGE].size));
        add(evidence, "No fixed penalty per bridge is published, so none is stated.");
        break;
    case FINDING_POINT_BRIDGES:
        add_points(fits, arena, evidence);
        add(evidence, "No fixed penalty per bridge is published, so none is stated; one point bridge nearly halves the "
                      "improvement in dB.");
        break;
    default:
        break;
    }
}

static void add_rival(struct arena *arena, const struct comparison *comparison, struct texts *evidence)
{
    const struct explanation *list = comparison->explanations.at;
    add(evidence, arena_printf(arena,
                               "Heaviest explanation: %s, weight %.2f, %.1f dB left on average; next: %s, weight %.2f, "
                               "%.1f dB left.",
                               list[0].cause, list[0].weight, list[0].residual_dB, list[1].cause, list[1].weight,
                               list[1].residual_dB));
}

static struct texts texts_of(const char *const list[], struct arena *arena)
{
    struct texts texts = {arena_take_many(arena, SENTENCES_MOST, sizeof *texts.at), 0};
    while (list[texts.count])
        add(&texts, list[texts.count]);
    return texts;
}

void compare_say(const struct difference *difference, const struct fit fits[CAUSES], struct arena *arena,
                 struct comparison *comparison)
{
    const struct finding_words *words = &finding_words[comparison->finding];
    struct texts evidence = {arena_take_many(arena, SENTENCES_MOST, sizeof *evidence.at), 0};

    add_mean(difference, 50, 80, arena, &evidence);
    add_mean(difference, 100, 315, arena, &evidence);
    add_mean(difference, 400, 1000, arena, &evidence);
    add_mean(difference, 1250, 3150, arena, &evidence);
    add_particular(difference, fits, arena, comparison, &evidence);
    add_rival(arena, comparison, &evidence);
    comparison->evidence = evidence;
    comparison->finding_in_words = words->sentence;
    comparison->deciding_readings = texts_of(words->decide, arena);
    comparison->inspect_first = texts_of(words->inspect, arena);
    double const confidence = comparison->confidence;
    comparison->confidence_in_words = confidence >= HIGH_FROM ? "high" : confidence >= FAIR_FROM ? "fair" : "low";
}
