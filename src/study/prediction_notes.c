#include "study/prediction_notes.h"

#include "acoustics/floating_floor.h"
#include "acoustics/transmission.h"
#include "base/number.h"
#include "study/level_below.h"

enum { NOTES_MOST = 8 };

/* The rating of the spectrum and the formula run within about -0.95 and +1.3 dB of each other over the formula's whole
 * range (computed); more than this is worth a look. */
static const double RATED_APART_DB = 1.5;

bool is_directly_below(const struct room *room)
{
    return !room->below || room->below->position == USC_POSITION_BELOW;
}

static void add(struct texts *notes, const char *note)
{
    if (notes->count < NOTES_MOST)
        notes->at[notes->count++] = note;
}

static void note_K(const struct room_prediction *record, struct texts *notes, struct arena *arena)
{
    if (isnan(record->mean_flanking_mass_kg_m2)) {
        add(notes, "no massive unlined flanking wall: K = 0");
        return;
    }
    if (record->K_by != K_BY_TABLE || isnan(record->slab_mass_kg_m2))
        return;
    struct usc_K_cell const cell = usc_K_by_table(record->slab_mass_kg_m2, record->mean_flanking_mass_kg_m2);
    if (cell.row_kg_m2 == record->slab_mass_kg_m2 && cell.column_kg_m2 == record->mean_flanking_mass_kg_m2)
        return;
    char row[NUMBER_TEXT], column[NUMBER_TEXT];
    add(notes, arena_printf(arena, "K by table, between its cells: nearest row %s kg/m2, nearest column %s kg/m2",
                            number_short(cell.row_kg_m2, 0, row), number_short(cell.column_kg_m2, 0, column)));
}

static void note_report(const struct build_up *build_up, const struct room_prediction *record,
                        const struct stack *stack, double report_mass_percent, struct texts *notes, struct arena *arena)
{
    const struct screed *screed = build_up->screed->found;
    const struct test_report *report = stack->count == 1 ? stack->layer[0]->test_report : NULL;
    if (!report || report_governs(stack, screed, record->screed_mass_kg_m2, report_mass_percent))
        return;
    if (report->law != screed->law) {
        add(notes, "the underlay's test report is for another kind of screed and was not used");
        return;
    }
    char tested[NUMBER_TEXT], laid[NUMBER_TEXT], percent[NUMBER_TEXT];
    add(notes,
        arena_printf(arena,
                     "the underlay's test report was not used: tested under %s kg/m2, laid under %s kg/m2, more "
                     "than %s %% apart",
                     number_short(report->screed_mass_kg_m2, 1, tested),
                     number_short(record->screed_mass_kg_m2, 1, laid), number_short(report_mass_percent, 1, percent)));
}

static void note_thin_layer(const struct build_up *build_up, const struct room_prediction *record,
                            const struct stack *stack, double report_mass_percent, struct texts *notes,
                            struct arena *arena)
{
    const struct screed *screed = build_up->screed->found;
    const struct quantity *stiffness = &usc_delta_Lw_formula_of(screed->law)->given[1];
    if (stack->count != 1 || record->stiffness_MN_m3 <= stiffness->highest ||
        report_governs(stack, screed, record->screed_mass_kg_m2, report_mass_percent))
        return;
    char laid[NUMBER_TEXT], highest[NUMBER_TEXT];
    add(notes,
        arena_printf(arena,
                     "UNCERTAIN: the improvement of this thin layer was computed with s' %s MN/m3, beyond the %s "
                     "MN/m3 up to which the formula is published; ask for a test report on this screed",
                     number_short(record->stiffness_MN_m3, 1, laid), number_short(stiffness->highest, 0, highest)));
}

static void note_rated(const struct room_prediction *record, struct texts *notes, struct arena *arena)
{
    if (record->delta_Lw_by != DELTA_LW_BY_FORMULA || isnan(record->delta_Lw_rated_dB) ||
        fabs(record->delta_Lw_rated_dB - record->delta_Lw_dB) <= RATED_APART_DB)
        return;
    char rated[NUMBER_TEXT], formula[NUMBER_TEXT];
    add(notes,
        arena_printf(arena,
                     "the rating of the improvement spectrum, %s dB, and the formula, %s dB, are more than "
                     "1.5 dB apart",
                     number_fixed(record->delta_Lw_rated_dB, 1, rated), number_fixed(record->delta_Lw_dB, 1, formula)));
}

void prediction_notes(const struct room *room, struct room_prediction *record, const struct stack *stack,
                      double report_mass_percent, struct arena *arena)
{
    const char *notes[NOTES_MOST];
    struct texts collected = {notes, 0};
    if (is_directly_below(room))
        note_K(record, &collected, arena);
    if (!isnan(room->slab->Ln_w_eq_dB))
        add(&collected, "the measured level of the bare slab governs");
    if (record->delta_Lw_by == DELTA_LW_BY_COVERING)
        add(&collected, "the soft covering improves more than the floating floor: only the larger counts");
    if (floats(room->found_build_up)) {
        note_report(room->found_build_up, record, stack, report_mass_percent, &collected, arena);
        note_thin_layer(room->found_build_up, record, stack, report_mass_percent, &collected, arena);
        note_rated(record, &collected, arena);
    }
    record->notes.count = collected.count;
    record->notes.at = collected.count > 0 ? arena_take_many(arena, collected.count, sizeof *notes) : NULL;
    for (size_t i = 0; i < collected.count; i++)
        record->notes.at[i] = notes[i];
}
