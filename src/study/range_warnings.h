/* Formulas that left their published range, gathered over all rooms. */
#ifndef USC_STUDY_RANGE_WARNINGS_H
#define USC_STUDY_RANGE_WARNINGS_H

#include "study/predict.h"

/* One warning a formula and quantity, in the order of first appearance: struct warning_record. */
struct objects range_warnings(const struct room_prediction rooms[], size_t count, struct arena *arena);

#endif
