/* A measurement against the prediction of a room of a project. */
#ifndef USC_STUDY_COMPARE_PROJECT_H
#define USC_STUDY_COMPARE_PROJECT_H

#include "project/measurements.h"
#include "study/compare.h"

/* The room of this name; name NULL: the only room. NULL after a problem that says which names there are. */
const struct room *compare_find_room(const struct project *project, const char *name, struct arena *arena,
                                     const char **complaint);

/* Predicts the room as drawn and compares. False when the measurement does not serve; *complaint says why. */
bool compare_room_with(const struct project *project, const struct room *room, const struct practice *practice,
                       enum K_by K_by, const struct measurement *measurement, struct arena *arena,
                       struct comparison *comparison, const char **complaint);

#endif
