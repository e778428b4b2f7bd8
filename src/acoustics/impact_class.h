/* Impact class of ASTM E989: the higher, the quieter.
 * Source: ASTM E989 (classification), E492 and E1007 (what is measured), all from memory. */
#ifndef USC_ACOUSTICS_IMPACT_CLASS_H
#define USC_ACOUSTICS_IMPACT_CLASS_H

#include "acoustics/bands.h"
#include "base/formula.h"
#include "base/tenths.h"

/* Whole dB. value: IIC, AIIC, NISR or ISR. unfavourable_sum_dB: at most 32. largest_deficiency_dB: at most 8.
 * by_single_band: the rule of 8 dB and not the sum set the value. */
struct usc_impact_class {
    int value;
    int unfavourable_sum_dB, largest_deficiency_dB;
    bool by_single_band;
};

/* 110 - the shifted curve at 500 Hz */
static inline double usc_impact_class_of_curve(double curve_at_500_Hz_dB)
{
    return 110.0 - curve_at_500_Hz_dB;
}
extern const struct formula usc_impact_class_formula; /* given the curve at 500 Hz */

/* Given 16 levels 100..3150 Hz in tenths; they are rounded to whole dB, halves up.
 * Returns 0; negative, nothing set, when a level lies outside +-300 dB. */
int usc_rate_impact_class(const usc_tenths level[USC_RATED_BANDS], struct usc_impact_class *result);

/* What the levels are, which names the class. */
enum usc_impact_class_level {
    USC_CLASS_OF_LABORATORY,   /* E492: normalised to 10 m2: IIC */
    USC_CLASS_OF_NORMALISED,   /* E1007, normalised to 10 m2: AIIC */
    USC_CLASS_OF_STANDARDISED, /* E1007, standardised to 0.5 s: NISR */
    USC_CLASS_OF_UNCORRECTED,  /* E1007, as measured: ISR */
};
const char *usc_impact_class_name(enum usc_impact_class_level level);

#endif
