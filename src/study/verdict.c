/* What a room is held to, and whether it is met. The same tenth of a decibel that is printed is compared. */
#include "study/prediction.h"

#include "base/tenths.h"

static double first_known(double first, double second)
{
    return isnan(first) ? second : first;
}

bool held_to_of(const struct project *project, const struct room *room, struct held_to *held)
{
    const struct requirement *requirement = room->requirement ? room->requirement : project->requirement;
    if (!requirement)
        return false;
    const struct limit *limit = requirement->found;
    *held = (struct held_to){
        .requirement = requirement,
        .descriptor = limit ? limit->descriptor : requirement->descriptor,
        .sense = limit ? limit->sense : requirement->sense,
        .volume_rule = limit ? limit->volume_rule : requirement->volume_rule,
        .value_dB = limit ? limit->value_dB : requirement->value_dB,
        .allowance_dB = requirement->allowance_dB,
    };
    if (project->requirement)
        held->allowance_dB = first_known(held->allowance_dB, project->requirement->allowance_dB);
    if (limit)
        held->allowance_dB = first_known(held->allowance_dB, limit->allowance_dB);
    held->allowance_dB = first_known(held->allowance_dB, 0);
    if (held->sense < 0)
        held->sense = descriptor_sense(held->descriptor);
    if (held->volume_rule < 0)
        held->volume_rule = VOLUME_0_032_V;
    return true;
}

static bool is_standardised(int descriptor)
{
    return descriptor == DESCRIPTOR_L_PRIME_NT_W;
}

struct verdict verdict_of(const struct held_to *held, double L_prime_n_w_dB, double L_prime_nT_w_dB)
{
    if (!held)
        return (struct verdict){.value_dB = NAN, .limit_dB = NAN, .allowance_dB = NAN, .margin_dB = NAN};
    struct verdict verdict = {
        .value_dB = is_standardised(held->descriptor) ? L_prime_nT_w_dB : L_prime_n_w_dB,
        .limit_dB = held->value_dB,
        .allowance_dB = held->allowance_dB,
        .margin_dB = NAN,
        .at_least = held->sense == SENSE_AT_LEAST,
        .answer = ANSWER_NO,
    };
    /* Also keeps NaN out of the integer. */
    if (!(fabs(verdict.value_dB) + verdict.allowance_dB < 3000 && fabs(verdict.limit_dB) < 3000))
        return verdict;
    int const limit = usc_tenths_from_dB(verdict.limit_dB);
    int const margin = verdict.at_least ? usc_tenths_from_dB(verdict.value_dB - verdict.allowance_dB) - limit
                                        : limit - usc_tenths_from_dB(verdict.value_dB + verdict.allowance_dB);
    verdict.margin_dB = margin / 10.0;
    verdict.answer = margin >= 0 ? ANSWER_YES : ANSWER_NO;
    return verdict;
}
