/* Chooses rooms that stand for the others, and says how to measure in each. */
#include "study/measurement_plan.h"

#include <stdlib.h>
#include <string.h>

#include "acoustics/sound_level.h"
#include "study/prediction_notes.h"

/* ISO 16283-2, from memory: the least of each. */
enum { MACHINE_POSITIONS = 4, MICROPHONE_POSITIONS = 4, CORNERS = 4 };
/* ISO 3382-2, engineering method, from memory. */
enum { DECAYS = 6 };
/* Judgement: a floor this large, or with ribs or beams, is not known from four positions. */
static const double LARGE_FLOOR_M2 = 20;
enum { MORE_POSITIONS = 2 * MACHINE_POSITIONS };

enum { REMARKS_MOST = 4 };

/* What a room is chosen for. */
enum aim { AIM_MARGIN, AIM_VOLUME, AIM_SLAB, AIM_GROUP, AIMS };

struct entry {
    const struct room *room;
    const struct room_prediction *predicted;
    size_t order, group_size;
    bool aim[AIMS];
};

static int text_order(const char *a, const char *b)
{
    return strcmp(a ? a : "", b ? b : "");
}

/* Smaller first, an unknown value last. */
static int number_order(double a, double b)
{
    if (isnan(a) || isnan(b))
        return isnan(a) - isnan(b);
    return (a > b) - (a < b);
}

static int group_order(const struct entry *a, const struct entry *b)
{
    int const build_up = text_order(a->predicted->build_up, b->predicted->build_up);
    return build_up ? build_up : text_order(a->predicted->flooring, b->predicted->flooring);
}

static int by_group(const void *left, const void *right)
{
    const struct entry *a = left, *b = right;
    int const group = group_order(a, b);
    return group ? group : (a->order > b->order) - (a->order < b->order);
}

/* The most critical first: smallest margin; without one, highest level; then smallest volume. */
static int critical_order(const struct entry *a, const struct entry *b)
{
    int order = number_order(a->predicted->margin_dB, b->predicted->margin_dB);
    if (!order)
        order = number_order(-a->predicted->L_prime_n_w_dB, -b->predicted->L_prime_n_w_dB);
    return order ? order : number_order(a->predicted->volume_m3, b->predicted->volume_m3);
}

static int by_urgency(const void *left, const void *right)
{
    const struct entry *a = left, *b = right;
    int const order = critical_order(a, b);
    return order ? order : (a->order > b->order) - (a->order < b->order);
}

static bool is_chosen(const struct entry *entry)
{
    for (int i = 0; i < AIMS; i++)
        if (entry->aim[i])
            return true;
    return false;
}

/* Can the room serve this aim at all? */
static bool serves(const struct entry *entry, enum aim aim)
{
    const struct limit_record *limit = entry->predicted->limit;
    switch (aim) {
    case AIM_MARGIN:
        return !isnan(entry->predicted->margin_dB);
    case AIM_VOLUME: /* L'n does not know the volume */
        return !isnan(entry->predicted->volume_m3) && is_directly_below(entry->room) &&
               (!limit || strcmp(limit->descriptor, descriptor_names[DESCRIPTOR_L_PRIME_N_W]));
    case AIM_SLAB:
        return entry->room->slab && !isnan(entry->room->slab->Ln_w_eq_dB);
    default:
        return true;
    }
}

/* Below 0 when a serves the aim better than b; a room chosen already is taken where two are as good. */
static int aim_order(const struct entry *a, const struct entry *b, enum aim aim)
{
    int order = 0;
    if (aim == AIM_MARGIN)
        order = number_order(a->predicted->margin_dB, b->predicted->margin_dB);
    else if (aim == AIM_VOLUME)
        order = number_order(a->predicted->volume_m3, b->predicted->volume_m3);
    if (!order)
        order = is_chosen(b) - is_chosen(a);
    return order ? order : critical_order(a, b);
}

static void choose_for(struct entry *group, size_t count, enum aim aim)
{
    struct entry *best = NULL;
    for (size_t i = 0; i < count; i++)
        if (serves(&group[i], aim) && (!best || aim_order(&group[i], best, aim) < 0))
            best = &group[i];
    if (best)
        best->aim[aim] = true;
}

/* Each end falls to a room that serves another end already, where one does. */
static void choose(struct entry *group, size_t count)
{
    bool any = false;
    for (size_t i = 0; i < count; i++)
        group[i].group_size = count;
    for (int aim = 0; aim < AIM_GROUP; aim++)
        choose_for(group, count, (enum aim)aim);
    for (size_t i = 0; i < count && !any; i++)
        any = is_chosen(&group[i]);
    if (!any)
        choose_for(group, count, AIM_GROUP);
}

static void add(struct texts *texts, const char *text)
{
    texts->at[texts->count++] = text;
}

static struct texts reasons(const struct entry *entry, struct arena *arena)
{
    struct texts why = {arena_take_many(arena, AIMS, sizeof *why.at), 0};
    if (entry->group_size == 1) {
        add(&why, "the only room with this build-up and flooring");
    } else {
        if (entry->aim[AIM_MARGIN])
            add(&why, "smallest margin of the rooms with this build-up and flooring");
        if (entry->aim[AIM_VOLUME])
            add(&why, "smallest volume directly below this build-up and flooring: it governs L'nT where slab and walls "
                      "are alike");
        if (entry->aim[AIM_GROUP])
            add(&why, "highest level of the rooms with this build-up and flooring");
    }
    if (entry->aim[AIM_SLAB])
        add(&why, "the bare slab was measured: what is measured now tells the improvement of the floor");
    return why;
}

static bool has_direction(const struct slab *slab)
{
    return slab && slab->construction != SLAB_HOMOGENEOUS;
}

/* Positions and what is particular to the room. */
static void fill_positions(const struct room *room, struct planned_room *planned, struct arena *arena)
{
    struct texts *remarks = &planned->remarks;
    bool const directed = has_direction(room->slab);
    remarks->at = arena_take_many(arena, REMARKS_MOST, sizeof *remarks->at);
    planned->machine_positions =
        directed || planned->floor_area_m2 > LARGE_FLOOR_M2 ? MORE_POSITIONS : MACHINE_POSITIONS;
    planned->microphone_positions = planned->background_readings = MICROPHONE_POSITIONS;
    planned->decays = DECAYS;
    if (directed)
        add(remarks, "ribs, beams or hollows: twice the machine positions (judgement), the line of hammers at 45 "
                     "degrees to them (ISO 16283-2, from memory)");
    else if (planned->floor_area_m2 > LARGE_FLOOR_M2)
        add(remarks, "a floor above 20 m2: twice the machine positions (judgement)");
    else if (isnan(planned->floor_area_m2))
        add(remarks, "the floor's size is not in the project: above 20 m2 take 8 machine positions (judgement)");
    if (isnan(planned->volume_m3)) {
        add(remarks, "the volume is not in the project: measure it; below 25 m3 the corners are needed too (ISO "
                     "16283-2, from memory)");
        return;
    }
    bool const low = usc_low_frequency_procedure_applies(planned->volume_m3);
    planned->low_frequency_procedure = low ? ANSWER_YES : ANSWER_NO;
    planned->corner_positions = low ? CORNERS : 0;
    if (low)
        add(remarks, "below 25 m3: at 50, 63 and 80 Hz read at least four corners too, two at the floor and two at the "
                     "ceiling, 0.3 to 0.4 m from each surface, 15 s each; the loudest of each band is corner_dB; the "
                     "reverberation time of these bands is that of the octave 63 Hz (ISO 16283-2, from memory)");
}

static void fill(const struct entry *entry, int rank, struct planned_room *planned, struct arena *arena)
{
    const struct room *room = entry->room;
    const struct room_prediction *predicted = entry->predicted;
    *planned = (struct planned_room){
        .rank = rank,
        .name = room->name,
        .receiving_room = room->below ? room->below->name : NULL,
        .build_up = predicted->build_up,
        .flooring = predicted->flooring,
        .L_prime_n_w_dB = predicted->L_prime_n_w_dB,
        .L_prime_nT_w_dB = predicted->L_prime_nT_w_dB,
        .margin_dB = predicted->margin_dB,
        .volume_m3 = predicted->volume_m3,
        .floor_area_m2 = room->plan ? room->plan->length_m * room->plan->width_m : NAN,
        .why = reasons(entry, arena),
    };
    fill_positions(room, planned, arena);
}

static struct texts procedure_of(struct arena *arena)
{
    static const char *const lines[] = {
        "Machine: positions spread at random over the floor, at least 0.5 m from its edges; wait until the noise is "
        "steady (ISO 16283-2, from memory).",
        "Microphone: fixed positions at least 0.5 m from the room's surfaces, 0.7 m from each other and 1 m from the "
        "floor that is struck; 6 s each, 15 s below 100 Hz (ISO 16283-2, from memory).",
        "Read every machine position at one microphone position or more, and use every microphone position.",
        "Background: the machine at rest, at the same microphone positions, shortly before or after, in every band.",
        "Reverberation: at least six decays, such as one loudspeaker, three microphone positions, two decays each "
        "(ISO 3382-2, engineering method, from memory).",
        "Write down: date, rooms and their furniture, volume with how it was found, floor as laid with its age, "
        "instruments with their calibration before and after, who measured, and each position in a sketch.",
        "Columns for rate: frequency_Hz, position, level_dB, background_dB, reverberation_time_s, corner_dB.",
    };
    size_t const count = sizeof lines / sizeof lines[0];
    struct texts procedure = {arena_take_many(arena, count, sizeof *procedure.at), count};
    memcpy(procedure.at, lines, sizeof lines);
    return procedure;
}

void study_measurement_plan(const struct project *project, const struct practice *practice, struct arena *arena,
                            struct measurement_plan *plan)
{
    struct predict_options const options = {.K_by = K_BY_FORMULA};
    struct prediction prediction;
    const struct room *room = project->rooms.at;
    size_t const count = project->rooms.count;
    struct entry *entries = arena_take_many(arena, count, sizeof *entries);
    struct planned_room *planned = arena_take_many(arena, count, sizeof *planned);
    double *frequency_Hz = arena_take_many(arena, USC_BANDS, sizeof *frequency_Hz);
    study_predict(project, practice, &options, arena, &prediction);
    const struct room_prediction *predicted = prediction.rooms.at;
    for (size_t i = 0; i < count; i++)
        entries[i] = (struct entry){.room = &room[i], .predicted = &predicted[i], .order = i};
    qsort(entries, count, sizeof *entries, by_group);
    for (size_t first = 0, end; first < count; first = end) {
        for (end = first + 1; end < count && !group_order(&entries[first], &entries[end]);)
            end++;
        choose(&entries[first], end - first);
    }
    qsort(entries, count, sizeof *entries, by_urgency);
    memcpy(frequency_Hz, usc_band_Hz, USC_BANDS * sizeof *frequency_Hz);
    *plan = (struct measurement_plan){.frequency_Hz = {frequency_Hz, USC_BANDS},
                                      .procedure = procedure_of(arena),
                                      .plan = {planned, 0},
                                      .left_out = {arena_take_many(arena, count, sizeof *plan->left_out.at), 0}};
    for (size_t i = 0; i < count; i++) {
        if (is_chosen(&entries[i])) {
            fill(&entries[i], (int)plan->plan.count + 1, &planned[plan->plan.count], arena);
            plan->plan.count++;
        } else {
            add(&plan->left_out, entries[i].room->name);
        }
    }
}
