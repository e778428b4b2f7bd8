/* Underlays, screeds and floorings by class, and the rows' field tables (format underscreed-catalogue/1). */
#ifndef USC_PROJECT_CATALOGUE_H
#define USC_PROJECT_CATALOGUE_H

#include "acoustics/floating_floor.h"
#include "base/field.h"

/* How far a row of data can be trusted; names in row_status_names. */
enum row_status { STATUS_PUBLISHED, STATUS_COMMON_PRACTICE, STATUS_FROM_MEMORY, STATUS_INVENTED, STATUS_OWN };
extern const char *const row_status_names[];

/* In the order of screed_kind_names. */
enum screed_kind { SCREED_CT, SCREED_CA, SCREED_CAF, SCREED_MA, SCREED_AS, SCREED_SR, SCREED_DRY };

enum underlay_form { FORM_BOARD, FORM_ROLL };
enum underlay_joint { JOINT_BUTTED, JOINT_LAPPED };
enum flooring_kind { FLOORING_HARD, FLOORING_SOFT };
extern const char *const underlay_form_names[], *const underlay_joint_names[], *const flooring_kind_names[];
extern const char *const improvement_law_names[], *const screed_kind_names[];

/* A laboratory's result for one underlay: delta_Lw_dB, or delta_L_dB at 16 (100..3150 Hz) or 21 (50..5000 Hz) bands. */
struct test_report {
    const char *reference;
    double screed_mass_kg_m2, delta_Lw_dB;
    struct numbers delta_L_dB;
    int law;
};

struct underlay {
    const char *id, *name, *material, *note, *source;
    int status;
    double dynamic_stiffness_MN_m3; /* s'; after reading always set, from s't where that was given */
    double apparent_stiffness_MN_m3, flow_resistivity_kPa_s_m2;
    double thickness_mm, loaded_thickness_mm, compressibility_mm;
    double imposed_load_limit_kN_m2;
    bool bears_hot_asphalt;
    int form, joint;
    double length_m, width_m;
    double edge_yield_mm;
    double mass_kg_m2, cost_per_m2;
    struct texts may_lie_under; /* ids of underlays that may lie on this one */
    struct test_report *test_report;
};

struct screed {
    const char *id, *name, *note, *source;
    int status;
    int kind; /* index into screed_kind_names: CT, CA, CAF, MA, AS, SR, dry */
    const char *strength_class;
    int law;
    double dry_density_kg_m3, wet_density_kg_m3;
    double thinnest_mm, thickest_mm, step_mm; /* what design examines */
    double cost_per_m3;
};

struct flooring {
    const char *id, *name, *note, *source;
    int status;
    int kind;
    double thickness_mm, mass_kg_m2, delta_Lw_dB, cost_per_m2;
    bool tiles;
};

struct catalogue {
    const char *format, *name, *note, *version;
    enum answer meets; /* a list that the program printed carries both, and can be given back */
    struct objects underlays, screeds, floorings;
};

extern const struct record underlay_record, screed_record, flooring_record, catalogue_record;

const struct underlay *catalogue_underlay(const struct catalogue *catalogue, const char *id);
const struct screed *catalogue_screed(const struct catalogue *catalogue, const char *id);
const struct flooring *catalogue_flooring(const struct catalogue *catalogue, const char *id);

#endif
