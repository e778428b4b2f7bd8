/* Sentences that belong beside a room's prediction. */
#ifndef USC_STUDY_PREDICTION_NOTES_H
#define USC_STUDY_PREDICTION_NOTES_H

#include "study/predict.h"

/* Is the receiving room directly below (K), not beside or above (KT)? */
bool is_directly_below(const struct room *room);

/* Fills record->notes from what the room is and what was computed. */
void prediction_notes(const struct room *room, struct room_prediction *record, const struct stack *stack,
                      double report_mass_percent, struct arena *arena);

#endif
