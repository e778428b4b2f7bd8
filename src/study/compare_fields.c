/* Field tables of the comparison's records. */
#include "study/compare.h"

#define ANY_NUMBER(S, M, UNIT, HEADING) NUMBER_FIELD(S, M, UNIT, -INFINITY, INFINITY, NONE, HEADING)

static const struct field band_fields[] = {
    NUMBERS_FIELD(compared_bands, frequency_Hz, "Hz", 50, 5000, "third-octave bands"),
    NUMBERS_FIELD(compared_bands, measured_dB, "dB", -INFINITY, INFINITY, "levels, null where not measured"),
    NUMBERS_FIELD(compared_bands, predicted_dB, "dB", -INFINITY, INFINITY, "levels by the simplified model"),
    NUMBERS_FIELD(compared_bands, difference_dB, "dB", -INFINITY, INFINITY, "measured less predicted"),
};
const struct record compared_bands_record = RECORD("bands", compared_bands, band_fields);

static const struct field explanation_fields[] = {
    TEXT_FIELD(explanation, cause, true, "what would explain the difference"),
    TEXT_FIELD(explanation, size_is, true, "what the size is"),
    TEXT_FIELD(explanation, size_unit, true, "unit of the size; empty for a factor"),
    ANY_NUMBER(explanation, size, "", "fitted size"),
    TEXT_FIELD(explanation, frequency_is, false, "what the frequency is"),
    ANY_NUMBER(explanation, frequency_Hz, "Hz", "fitted frequency"),
    ANY_NUMBER(explanation, resonance_hump_dB, "dB", "fitted excess at the resonance"),
    ANY_NUMBER(explanation, misfit, "", "sum of squared deviations over their variances"),
    ANY_NUMBER(explanation, residual_dB, "dB", "root mean square of what is left unexplained"),
    INTEGER_FIELD(explanation, parameters, 0, USC_BANDS, NONE, "fitted parameters that count"),
    NUMBER_FIELD(explanation, weight, "", 0, 1, NONE, "weight among all explanations"),
};
const struct record explanation_record = RECORD("explanation", explanation, explanation_fields);

static const struct field comparison_fields[] = {
    CHOICE_FIELD(comparison, quantity, compare_quantity_names, NONE, true, "what was measured"),
    ANY_NUMBER(comparison, measured_w_dB, "dB", "measured single number in steps of 0.1 dB"),
    ANY_NUMBER(comparison, predicted_w_dB, "dB", "single number of the predicted bands in steps of 0.1 dB"),
    ANY_NUMBER(comparison, difference_w_dB, "dB", "measured less predicted single number"),
    INTEGER_FIELD(comparison, measured_whole_dB, -400, 400, NONE, "measured single number in whole dB"),
    INTEGER_FIELD(comparison, predicted_whole_dB, -400, 400, NONE, "single number of the predicted bands in whole dB"),
    OBJECT_FIELD(comparison, bands, &compared_bands_record, true, "band by band"),
    OBJECTS_FIELD(comparison, explanations, &explanation_record, true, "what would explain it, heaviest first"),
    CHOICE_FIELD(comparison, finding, finding_names, NONE, true, "the finding"),
    TEXT_FIELD(comparison, finding_in_words, true, "the finding in a sentence"),
    NUMBER_FIELD(comparison, confidence, "", 0, 1, NONE, "weight of the finding"),
    TEXT_FIELD(comparison, confidence_in_words, true, "high, fair or low"),
    ANY_NUMBER(comparison, stiffness_mass_factor, "", "fitted factor on s'/m'; s' and m' alone cannot be told apart"),
    ANY_NUMBER(comparison, fitted_f0_Hz, "Hz", "resonance with that factor"),
    ANY_NUMBER(comparison, predicted_f0_Hz, "Hz", "resonance as predicted"),
    TEXTS_FIELD(comparison, evidence, "what the finding rests on"),
    TEXTS_FIELD(comparison, deciding_readings, "which readings would decide"),
    TEXTS_FIELD(comparison, inspect_first, "what to look at first"),
};
const struct record comparison_record = RECORD("comparison", comparison, comparison_fields);
