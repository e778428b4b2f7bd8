/* Prediction of every room of a project by the simplified model, as records. */
#ifndef USC_STUDY_PREDICT_H
#define USC_STUDY_PREDICT_H

#include "base/problem.h"
#include "study/prediction.h"

struct limit_record {
    const char *id, *descriptor, *sense, *source;
    double value_dB;
};

extern const struct record limit_shown_record;

struct band_record {
    struct numbers frequency_Hz, delta_L_dB;
};

/* Keys as the JSON result has them. */
struct room_prediction {
    const char *name, *build_up, *underlay, *screed, *flooring;
    double slab_mass_kg_m2, screed_thickness_mm, screed_mass_kg_m2, stiffness_MN_m3, f0_Hz;
    double delta_Lw_dB, delta_Lw_rated_dB;
    int delta_Lw_by;
    double Ln_eq_w_dB, mean_flanking_mass_kg_m2, K_dB, KT_dB;
    int K_by;
    double volume_m3, L_prime_n_w_dB, L_prime_nT_w_dB;
    double delta_Rw_dB;
    double height_mm, wet_load_kN_m2;
    struct limit_record *limit;
    double allowance_dB, margin_dB;
    enum answer meets_limit;
    struct texts notes;
    struct band_record *bands;
    struct working working; /* not in the record: steps and excursions, for presenters */
};
extern const struct record room_prediction_record;

/* One formula left its published range, in these rooms. */
struct warning_record {
    const char *formula, *quantity, *unit;
    double value, lowest, highest; /* the value farthest outside; NaN where there is no bound */
    struct texts rooms;
};
extern const struct record warning_record_record;

struct prediction {
    struct objects rooms;    /* struct room_prediction */
    struct objects warnings; /* struct warning_record */
    enum answer meets;       /* of all stated requirements; with strict also no warning */
};

struct predict_options {
    enum K_by K_by;
    bool strict;
    bool working; /* record steps (excursions always are) */
};

/* Rooms without a build-up are predicted with the bare slab. The project has been read without errors. */
void study_predict(const struct project *project, const struct practice *practice,
                   const struct predict_options *options, struct arena *arena, struct prediction *prediction);

/* Rooms the simplified model cannot serve (spectrum descriptors, floors outside the homogeneous model without a
 * measured level, no flanking data, no volume for L'nT,w) become errors with place and remedy. */
void study_check_model(const struct project *project, const char *file, struct problems *problems);

#endif
