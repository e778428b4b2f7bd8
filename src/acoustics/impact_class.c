#include "acoustics/impact_class.h"

#include "acoustics/rating.h"

/* Impact class
 * Purpose:   one number for 16 third-octave levels, as building codes of North America and New Zealand ask for it.
 * Given:     levels 100..3150 Hz, rounded to whole dB.
 * Returned:  110 minus the curve's value at 500 Hz, the curve shifted in steps of 1 dB as low as it may go: the
 *            deficiencies sum to at most 32 dB and none is above 8 dB.
 * Status:    0, or -1 when a level lies outside +-300 dB.
 * Validity:  the curve has the shape of ISO 717-2, so without the 8 dB rule the class is 110 - Ln,w of the whole
 * levels. Source:    ASTM E989, from memory. */
enum {
    SINGLE_MOST = 80, /* tenths of a dB */
    WHOLE = 10,       /* tenths in 1 dB */
};

static double impact_class(const double given[], int count)
{
    (void)count;
    return usc_impact_class_of_curve(given[0]);
}

const struct formula usc_impact_class_formula = {
    .id = "impact-class",
    .title = "Impact class IIC, AIIC or NISR",
    .expression = "110 - {L500}",
    .result = {"IIC", "impact_class", "", -INFINITY, INFINITY},
    .given = (const struct quantity[]){{"L500", "curve_at_500_Hz_dB", "dB", -INFINITY, INFINITY}},
    .given_count = 1,
    .source = {"ASTM E989", "", STANDING_FROM_MEMORY},
    .note = "The shifted reference curve at 500 Hz: deficiencies of at most 32 dB in all and 8 dB in any band.",
    .value = impact_class,
};

/* Halves up, below zero too: counted from the lowest level there is, so that the division rounds one way. */
static usc_tenths whole_level(usc_tenths level)
{
    const int from_lowest = level + USC_RATED_LEVEL_MOST + WHOLE / 2;

    return (usc_tenths)(from_lowest / WHOLE * WHOLE - USC_RATED_LEVEL_MOST);
}

static int largest(const usc_tenths deviation[USC_RATED_BANDS])
{
    int most = 0;

    for (int i = 0; i < USC_RATED_BANDS; i++)
        most = deviation[i] > most ? deviation[i] : most;
    return most;
}

int usc_rate_impact_class(const usc_tenths level[USC_RATED_BANDS], struct usc_impact_class *result)
{
    usc_tenths whole[USC_RATED_BANDS], deficiency[USC_RATED_BANDS];
    struct usc_rating rating;

    for (int i = 0; i < USC_RATED_BANDS; i++) {
        if (level[i] > USC_RATED_LEVEL_MOST || level[i] < -USC_RATED_LEVEL_MOST)
            return -1;
        whole[i] = whole_level(level[i]);
    }
    if (usc_rate_impact(whole, &rating) < 0)
        return -1;
    usc_unfavourable_deviations(whole, rating.value, deficiency);
    const int beyond = largest(deficiency) - SINGLE_MOST;
    const usc_tenths value = (usc_tenths)(rating.value + (beyond > 0 ? beyond : 0));
    usc_unfavourable_deviations(whole, value, deficiency);
    int sum = 0;
    for (int i = 0; i < USC_RATED_BANDS; i++)
        sum += deficiency[i];
    *result = (struct usc_impact_class){.value = (int)usc_impact_class_of_curve(value / WHOLE),
                                        .unfavourable_sum_dB = sum / WHOLE,
                                        .largest_deficiency_dB = largest(deficiency) / WHOLE,
                                        .by_single_band = beyond > 0};
    return 0;
}

const char *usc_impact_class_name(enum usc_impact_class_level level)
{
    switch (level) {
    case USC_CLASS_OF_LABORATORY:
        return "IIC";
    case USC_CLASS_OF_NORMALISED:
        return "AIIC";
    case USC_CLASS_OF_STANDARDISED:
        return "NISR";
    case USC_CLASS_OF_UNCORRECTED:
        return "ISR";
    }
    return "unknown";
}
