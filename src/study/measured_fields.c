/* Field tables of a rated measurement. */
#include "study/measured.h"

#define FIGURE(M, UNIT, HEADING) NUMBER_FIELD(rated, M, UNIT, -INFINITY, INFINITY, NONE, HEADING)
#define COLUMN(M, UNIT, HEADING) NUMBERS_FIELD(rated_bands, M, UNIT, -INFINITY, INFINITY, HEADING)

static const struct field band_fields[] = {
    COLUMN(frequency_Hz, "Hz", "band"),
    COLUMN(level_dB, "dB", "level, or improvement, to its tenth"),
    COLUMN(reference_dB, "dB", "shifted reference curve, null where a band is not rated"),
    COLUMN(unfavourable_dB, "dB", "how far the level is above it"),
    TEXTS_FIELD(rated_bands, remark, "what background did to the band"),
};
static const struct record bands_record = RECORD("rated bands", rated_bands, band_fields);

static const struct field rated_fields[] = {
    TEXT_FIELD(rated, descriptor, false, "what the single number is"),
    FIGURE(value_dB, "dB", "single number in whole dB"),
    FIGURE(value_fine_dB, "dB", "the same in steps of 0.1 dB, for statements of uncertainty"),
    FIGURE(C_I_dB, "dB", "spectrum adaptation term, 100..2500 Hz"),
    FIGURE(C_I_50_2500_dB, "dB", "the same from 50 Hz, null without 50..80 Hz"),
    FIGURE(unfavourable_sum_dB, "dB", "sum of unfavourable deviations"),
    FIGURE(delta_Lw_dB, "dB", "weighted improvement on the heavy reference floor"),
    FIGURE(C_I_delta_dB, "dB", "its adaptation term"),
    FIGURE(delta_L_lin_dB, "dB", "their sum"),
    FIGURE(delta_Lt_1_2_w_dB, "dB", "weighted improvement on lightweight floors 1 and 2"),
    FIGURE(C_I_t_1_2_delta_dB, "dB", "its adaptation term"),
    FIGURE(delta_Lt_3_w_dB, "dB", "weighted improvement on lightweight floor 3"),
    FIGURE(C_I_t_3_delta_dB, "dB", "its adaptation term"),
    FIGURE(Ln_eq_0_w_dB, "dB", "equivalent level of the bare floor from the covered measurement"),
    FIGURE(IIC, "", "impact class, null for octaves"),
    TEXT_FIELD(rated, impact_class_name, false, "which class it is: IIC, AIIC, NISR"),
    FIGURE(standard_uncertainty_dB, "dB", "of a field measurement"),
    FIGURE(coverage_factor, "", "one-sided, for the confidence asked for"),
    FIGURE(expanded_uncertainty_dB, "dB", "their product"),
    OBJECT_FIELD(rated, limit, &limit_shown_record, false, "the limit it is held to"),
    FIGURE(margin_dB, "dB", "to the limit, positive is good; null where the limit speaks of something else"),
    ANSWER_FIELD(rated, meets_limit, "is the limit met"),
    ANSWER_FIELD(rated, meets_beyond_doubt, "is it met by at least the expanded uncertainty"),
    FIGURE(low_frequency_bands, "", "bands formed by the low-frequency procedure"),
    OBJECT_FIELD(rated, bands, &bands_record, false, "band by band"),
};
const struct record rated_record = RECORD("rated", rated, rated_fields);
