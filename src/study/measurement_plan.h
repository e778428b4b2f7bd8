/* Which rooms of a project to measure once the floors are laid, in what order, and with how many positions.
 * Source: ISO 16283-2 for positions, times and the low-frequency procedure, ISO 3382-2 for decays, all from memory;
 * that floors above 20 m2 and floors with ribs or beams get twice the machine positions, and which rooms stand for the
 * others, is judgement of this program. */
#ifndef USC_STUDY_MEASUREMENT_PLAN_H
#define USC_STUDY_MEASUREMENT_PLAN_H

#include "study/predict.h"

/* A room to measure. Keys as the JSON result has them; NaN and NULL: not known. */
struct planned_room {
    int rank; /* 1: first */
    const char *name, *receiving_room, *build_up, *flooring;
    double L_prime_n_w_dB, L_prime_nT_w_dB, margin_dB; /* as predicted */
    double volume_m3;                                  /* of the receiving room */
    double floor_area_m2;                              /* that the machine stands on */
    struct texts why;
    int machine_positions, microphone_positions, background_readings, decays;
    enum answer low_frequency_procedure; /* ANSWER_NONE: the volume is not known */
    int corner_positions;
    struct texts remarks; /* what is particular to this room */
};

struct measurement_plan {
    struct numbers frequency_Hz;
    struct texts procedure; /* what holds in every room */
    struct objects plan;    /* struct planned_room, the first to measure first */
    struct texts left_out;  /* rooms that others stand for */
};
extern const struct record planned_room_record, measurement_plan_record;

/* Floors alike share build-up and flooring. Of each such group are chosen: the room of the smallest margin, the room of
 * the smallest volume directly below (where L'nT counts), and one room whose bare slab was measured. A room that serves
 * two ends is chosen once; no group stays without a room. */
void study_measurement_plan(const struct project *project, const struct practice *practice, struct arena *arena,
                            struct measurement_plan *plan);

#endif
