/* Field tables of limits and requirements, descriptors by name. */
#include "project/requirement.h"

#include "project/catalogue.h"

const char *const descriptor_names[] = {"L_prime_n_w",
                                        "L_prime_nT_w",
                                        "L_prime_n_w_C_I",
                                        "L_prime_nT_w_C_I",
                                        "L_prime_n_w_C_I_50_2500",
                                        "L_prime_nT_w_C_I_50_2500",
                                        "L_nT_A",
                                        "L_prime",
                                        "IIC",
                                        "NISR",
                                        NULL};
const char *const descriptor_symbols[] = {
    "L'n,w", "L'nT,w", "L'n,w + C_I", "L'nT,w + C_I", "L'n,w + C_I,50-2500", "L'nT,w + C_I,50-2500", "LnT,A", "L'",
    "IIC",   "NISR",   NULL};
const char *const sense_names[] = {"at_most", "at_least", NULL};
const char *const volume_rule_names[] = {"0.032 V", "V/30", NULL};

static const struct field limit_fields[] = {
    TEXT_FIELD(limit, id, true, "short name by which projects refer to it"),
    TEXT_FIELD(limit, country, false, "ISO 3166 code"),
    TEXT_FIELD(limit, building, false, "kind of building and floor it is for"),
    TEXT_FIELD(limit, note, false, "a remark"),
    TEXT_FIELD(limit, edition, false, "document and edition"),
    TEXT_FIELD(limit, source, false, "where the value was read"),
    CHOICE_FIELD(limit, status, row_status_names, STATUS_OWN, false, "how far the value can be trusted"),
    CHOICE_FIELD(limit, descriptor, descriptor_names, NONE, true, "what is limited"),
    CHOICE_FIELD(limit, sense, sense_names, NONE, false, "at_most, or at_least for IIC and NISR"),
    CHOICE_FIELD(limit, volume_rule, volume_rule_names, VOLUME_0_032_V, false, "volume term of L'nT,w"),
    NUMBER_FIELD(limit, value_dB, "dB", 10, 100, NONE, "the limit"),
    NUMBER_FIELD(limit, allowance_dB, "dB", 0, 20, NONE, "prediction allowance that its rules ask for"),
    TEXT_FIELD(limit, thickness_rules, false, "id of the thickness rules that go with it"),
    TEXTS_FIELD(limit, rules, "what comes with the limit, in words"),
};
const struct record limit_record = RECORD("limit", limit, limit_fields);

static const struct field limits_fields[] = {
    TEXT_FIELD(limits, format, false, "underscreed-limits/1"),
    TEXT_FIELD(limits, version, false, "of the program that printed it"),
    ANSWER_FIELD(limits, meets, "as the program printed it"),
    TEXT_FIELD(limits, name, false, "name of the collection"),
    TEXT_FIELD(limits, note, false, "a remark"),
    OBJECTS_FIELD(limits, limits, &limit_record, false, "the limits"),
};
const struct record limits_record = RECORD("limits file", limits, limits_fields);

static const struct field requirement_fields[] = {
    TEXT_FIELD(requirement, limit, false, "id of a limit, or descriptor and value below"),
    TEXT_FIELD(requirement, note, false, "a remark"),
    CHOICE_FIELD(requirement, descriptor, descriptor_names, NONE, false, "what is limited, without a limit id"),
    CHOICE_FIELD(requirement, sense, sense_names, NONE, false, "at_most, or at_least for IIC and NISR"),
    CHOICE_FIELD(requirement, volume_rule, volume_rule_names, VOLUME_0_032_V, false, "volume term of L'nT,w"),
    NUMBER_FIELD(requirement, value_dB, "dB", 10, 100, NONE, "the limit, without a limit id"),
    NUMBER_FIELD(requirement, allowance_dB, "dB", 0, 20, NONE,
                 "prediction allowance (default: the limit's own, else 0)"),
};
const struct record requirement_record = RECORD("requirement", requirement, requirement_fields);

enum sense descriptor_sense(enum descriptor descriptor)
{
    return descriptor == DESCRIPTOR_IIC || descriptor == DESCRIPTOR_NISR ? SENSE_AT_LEAST : SENSE_AT_MOST;
}

bool descriptor_is_single_number(enum descriptor descriptor)
{
    return descriptor == DESCRIPTOR_L_PRIME_N_W || descriptor == DESCRIPTOR_L_PRIME_NT_W;
}
