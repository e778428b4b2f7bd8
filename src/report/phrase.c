/* Figures with their unit. */
#include "report/phrase.h"

#include <math.h>

#include "base/number.h"

const char *phrase_fixed(struct arena *arena, double value, int decimals, const char *unit)
{
    char text[NUMBER_TEXT];
    number_fixed(value, decimals, text);
    return isnan(value) || !*unit ? arena_text(arena, text) : arena_printf(arena, "%s %s", text, unit);
}

const char *phrase_dB(struct arena *arena, double level_dB)
{
    return phrase_fixed(arena, level_dB, 1, "dB");
}

const char *phrase_up_to(struct arena *arena, double value, int decimals, const char *unit)
{
    char text[NUMBER_TEXT];
    number_short(value, decimals, text);
    return isnan(value) || !*unit ? arena_text(arena, text) : arena_printf(arena, "%s %s", text, unit);
}

const char *phrase_short(struct arena *arena, double value, const char *unit)
{
    return phrase_up_to(arena, value, 3, unit);
}

const char *phrase_source(struct arena *arena, const struct source *source)
{
    bool clause = source->clause && *source->clause;
    return arena_printf(arena, "%s%s%s (%s)", source->work, clause ? ", " : "", clause ? source->clause : "",
                        standing_name(source->standing));
}
