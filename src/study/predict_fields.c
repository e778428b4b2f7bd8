/* Field tables of the prediction's records. */
#include "study/predict.h"

static const struct field limit_fields[] = {
    TEXT_FIELD(limit_record, id, false, "id of the limit"),
    TEXT_FIELD(limit_record, descriptor, true, "what is limited"),
    TEXT_FIELD(limit_record, sense, true, "at_most or at_least"),
    NUMBER_FIELD(limit_record, value_dB, "dB", -INFINITY, INFINITY, NONE, "the limit"),
    TEXT_FIELD(limit_record, source, false, "where the limit was read"),
};
const struct record limit_shown_record = RECORD("limit", limit_record, limit_fields);

static const struct field band_fields[] = {
    NUMBERS_FIELD(band_record, frequency_Hz, "Hz", 50, 5000, "third-octave bands"),
    NUMBERS_FIELD(band_record, delta_L_dB, "dB", -INFINITY, INFINITY, "improvement by the floating floor"),
};
static const struct record band_record_record = RECORD("bands", band_record, band_fields);

#define ANY_NUMBER(M, UNIT, HEADING) NUMBER_FIELD(room_prediction, M, UNIT, -INFINITY, INFINITY, NONE, HEADING)

static const struct field room_fields[] = {
    TEXT_FIELD(room_prediction, name, true, "name of the room"),
    TEXT_FIELD(room_prediction, build_up, false, "id of its build-up"),
    TEXT_FIELD(room_prediction, underlay, false, "underlays, top to bottom"),
    TEXT_FIELD(room_prediction, screed, false, "screed"),
    TEXT_FIELD(room_prediction, flooring, false, "flooring"),
    ANY_NUMBER(slab_mass_kg_m2, "kg/m2", "mass of the slab with bonded layers"),
    ANY_NUMBER(screed_thickness_mm, "mm", "nominal thickness of the screed"),
    ANY_NUMBER(screed_mass_kg_m2, "kg/m2", "mass of the screed, dry"),
    ANY_NUMBER(stiffness_MN_m3, "MN/m3", "dynamic stiffness of the stack"),
    ANY_NUMBER(f0_Hz, "Hz", "resonance of screed on underlay"),
    ANY_NUMBER(delta_Lw_dB, "dB", "weighted improvement that counts"),
    CHOICE_FIELD(room_prediction, delta_Lw_by, delta_Lw_by_names, NONE, true, "where the improvement comes from"),
    ANY_NUMBER(delta_Lw_rated_dB, "dB", "rating of the improvement spectrum"),
    ANY_NUMBER(Ln_eq_w_dB, "dB", "equivalent level of the bare slab"),
    ANY_NUMBER(mean_flanking_mass_kg_m2, "kg/m2", "mean mass of the massive unlined flanking elements"),
    ANY_NUMBER(K_dB, "dB", "flanking correction"),
    CHOICE_FIELD(room_prediction, K_by, K_by_names, NONE, true, "formula or table"),
    ANY_NUMBER(KT_dB, "dB", "correction for rooms not one above the other"),
    ANY_NUMBER(volume_m3, "m3", "volume of the receiving room"),
    ANY_NUMBER(L_prime_n_w_dB, "dB", "predicted L'n,w"),
    ANY_NUMBER(L_prime_nT_w_dB, "dB", "predicted L'nT,w"),
    ANY_NUMBER(delta_Rw_dB, "dB", "improvement of the same floor for airborne sound"),
    ANY_NUMBER(height_mm, "mm", "height from the slab to the finished floor"),
    ANY_NUMBER(wet_load_kN_m2, "kN/m2", "load on the slab while the screed is wet"),
    OBJECT_FIELD(room_prediction, limit, &limit_shown_record, false, "what the room is held to"),
    ANY_NUMBER(allowance_dB, "dB", "prediction allowance"),
    ANY_NUMBER(margin_dB, "dB", "to the limit, positive is good"),
    ANSWER_FIELD(room_prediction, meets_limit, "is the limit met"),
    TEXTS_FIELD(room_prediction, notes, "remarks"),
    OBJECT_FIELD(room_prediction, bands, &band_record_record, false, "improvement per band"),
};
const struct record room_prediction_record = RECORD("room", room_prediction, room_fields);

static const struct field warning_fields[] = {
    TEXT_FIELD(warning_record, formula, true, "id of the formula"),
    TEXT_FIELD(warning_record, quantity, true, "the quantity outside its published range"),
    NUMBER_FIELD(warning_record, value, "", -INFINITY, INFINITY, NONE, "the value farthest outside"),
    NUMBER_FIELD(warning_record, lowest, "", -INFINITY, INFINITY, NONE, "lower end of the range"),
    NUMBER_FIELD(warning_record, highest, "", -INFINITY, INFINITY, NONE, "upper end of the range"),
    TEXT_FIELD(warning_record, unit, true, "unit of the three"),
    TEXTS_FIELD(warning_record, rooms, "in which rooms"),
};
const struct record warning_record_record = RECORD("warning", warning_record, warning_fields);
