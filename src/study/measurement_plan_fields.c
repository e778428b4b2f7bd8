/* Field tables of the measurement plan's records. */
#include "study/measurement_plan.h"

#define ANY_LEVEL(S, M, HEADING) NUMBER_FIELD(S, M, "dB", -INFINITY, INFINITY, NONE, HEADING)
#define COUNT_FIELD(S, M, HEADING) INTEGER_FIELD(S, M, 0, 1000, NONE, HEADING)

static const struct field room_fields[] = {
    INTEGER_FIELD(planned_room, rank, 1, 1000000, NONE, "order of measuring"),
    TEXT_FIELD(planned_room, name, true, "room that the machine stands in"),
    TEXT_FIELD(planned_room, receiving_room, false, "room that is listened in"),
    TEXT_FIELD(planned_room, build_up, false, "build-up"),
    TEXT_FIELD(planned_room, flooring, false, "flooring"),
    ANY_LEVEL(planned_room, L_prime_n_w_dB, "predicted L'n,w"),
    ANY_LEVEL(planned_room, L_prime_nT_w_dB, "predicted L'nT,w"),
    ANY_LEVEL(planned_room, margin_dB, "predicted margin to the limit"),
    POSITIVE_FIELD(planned_room, volume_m3, "m3", INFINITY, NONE, "volume of the receiving room"),
    POSITIVE_FIELD(planned_room, floor_area_m2, "m2", INFINITY, NONE, "floor that the machine stands on"),
    TEXTS_FIELD(planned_room, why, "why this room"),
    COUNT_FIELD(planned_room, machine_positions, "positions of the tapping machine, at least"),
    COUNT_FIELD(planned_room, microphone_positions, "fixed positions of the microphone, at least"),
    COUNT_FIELD(planned_room, background_readings, "readings with the machine at rest, at least"),
    COUNT_FIELD(planned_room, decays, "decays for the reverberation time, at least"),
    ANSWER_FIELD(planned_room, low_frequency_procedure, "whether the corners are measured"),
    COUNT_FIELD(planned_room, corner_positions, "corners, at least"),
    TEXTS_FIELD(planned_room, remarks, "what is particular to this room"),
};
const struct record planned_room_record = RECORD("planned room", planned_room, room_fields);

static const struct field plan_fields[] = {
    NUMBERS_FIELD(measurement_plan, frequency_Hz, "Hz", 50, 5000, "third octaves to measure"),
    TEXTS_FIELD(measurement_plan, procedure, "what holds in every room"),
    OBJECTS_FIELD(measurement_plan, plan, &planned_room_record, true, "rooms to measure, the first first"),
    TEXTS_FIELD(measurement_plan, left_out, "rooms that others stand for"),
};
const struct record measurement_plan_record = RECORD("measurement plan", measurement_plan, plan_fields);
