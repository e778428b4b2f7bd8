/* Figures with their unit, as people read them. All texts live in the arena. */
#ifndef USC_REPORT_PHRASE_H
#define USC_REPORT_PHRASE_H

#include "base/formula.h"

/* One decimal and " dB"; "-" when absent. */
const char *phrase_dB(struct arena *arena, double level_dB);
/* Fixed decimals and the unit behind a blank. */
const char *phrase_fixed(struct arena *arena, double value, int decimals, const char *unit);
/* As few decimals as say it, up to as many as stated. */
const char *phrase_up_to(struct arena *arena, double value, int decimals, const char *unit);
/* As few decimals as say it, up to three. */
const char *phrase_short(struct arena *arena, double value, const char *unit);

/* "DIN 4109-2:2018, 4.3 (published)" */
const char *phrase_source(struct arena *arena, const struct source *source);

#endif
