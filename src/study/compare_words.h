/* The comparison in plain words. */
#ifndef USC_STUDY_COMPARE_WORDS_H
#define USC_STUDY_COMPARE_WORDS_H

#include "base/arena.h"
#include "study/compare.h"
#include "study/compare_templates.h"

/* Fills the names beside the numbers. */
void compare_name_cause(enum cause cause, struct explanation *explanation);

/* Sentences for a finding that is made: confidence in words, evidence, deciding readings, what to inspect. */
void compare_say(const struct difference *difference, const struct fit fits[CAUSES], struct arena *arena,
                 struct comparison *comparison);

#endif
