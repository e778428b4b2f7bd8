/* Limits by country and use, and what a room is held to (format underscreed-limits/1). */
#ifndef USC_PROJECT_REQUIREMENT_H
#define USC_PROJECT_REQUIREMENT_H

#include "base/field.h"

enum descriptor {
    DESCRIPTOR_L_PRIME_N_W,
    DESCRIPTOR_L_PRIME_NT_W,
    DESCRIPTOR_L_PRIME_N_W_C_I,
    DESCRIPTOR_L_PRIME_NT_W_C_I,
    DESCRIPTOR_L_PRIME_N_W_C_I_50_2500,
    DESCRIPTOR_L_PRIME_NT_W_C_I_50_2500,
    DESCRIPTOR_L_NT_A,
    DESCRIPTOR_L_PRIME,
    DESCRIPTOR_IIC,
    DESCRIPTOR_NISR,
    DESCRIPTOR_COUNT,
};
/* As JSON writes them: "L_prime_n_w" ...; and as people write them: "L'n,w" ... */
extern const char *const descriptor_names[], *const descriptor_symbols[];

enum sense { SENSE_AT_MOST, SENSE_AT_LEAST };
extern const char *const sense_names[];

/* Which volume term turns L'n,w into L'nT,w. */
enum volume_rule { VOLUME_0_032_V, VOLUME_V_30 };
extern const char *const volume_rule_names[];

struct limit {
    const char *id, *country, *building, *note, *edition, *source;
    int status;
    int descriptor, sense, volume_rule;
    double value_dB, allowance_dB;
    const char *thickness_rules; /* id of the thickness rules of this country */
    struct texts rules;          /* what comes with the limit, in words */
};

struct limits {
    const char *format, *name, *note, *version;
    enum answer meets;
    struct objects limits;
};
extern const struct record limit_record, limits_record;

/* As a project states it: a limit by id, or a descriptor and value of its own. */
struct requirement {
    const char *limit, *note;
    int descriptor, sense, volume_rule;
    double value_dB, allowance_dB;
    const struct limit *found; /* the row behind limit, set by the reader */
};
extern const struct record requirement_record;

/* The sense that belongs to a descriptor: at least for IIC and NISR. */
enum sense descriptor_sense(enum descriptor descriptor);
/* True for those that the simplified model gives (no spectrum needed). */
bool descriptor_is_single_number(enum descriptor descriptor);

#endif
