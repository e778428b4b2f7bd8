/* Field tables of the design's records. */
#include "study/design.h"

#define CHOICE_NUMBER(M, UNIT, HEADING) NUMBER_FIELD(design_choice, M, UNIT, -INFINITY, INFINITY, NONE, HEADING)

static const struct field choice_fields[] = {
    TEXT_FIELD(design_choice, underlay, true, "underlays, top to bottom"),
    TEXT_FIELD(design_choice, screed, true, "screed"),
    TEXT_FIELD(design_choice, screed_kind, true, "its kind of binder"),
    CHOICE_NUMBER(thickness_mm, "mm", "nominal thickness of the screed"),
    CHOICE_NUMBER(height_mm, "mm", "height from the slab to the finished floor"),
    CHOICE_NUMBER(mass_kg_m2, "kg/m2", "mass of the whole floor while the screed is wet"),
    CHOICE_NUMBER(wet_load_kN_m2, "kN/m2", "the same as a load"),
    CHOICE_NUMBER(stiffness_MN_m3, "MN/m3", "dynamic stiffness of the stack"),
    CHOICE_NUMBER(f0_Hz, "Hz", "resonance of screed on underlay"),
    CHOICE_NUMBER(delta_Lw_dB, "dB", "weighted improvement that counts"),
    CHOICE_NUMBER(L_prime_n_w_dB, "dB", "predicted L'n,w"),
    CHOICE_NUMBER(L_prime_nT_w_dB, "dB", "predicted L'nT,w"),
    CHOICE_NUMBER(margin_dB, "dB", "to the limit, positive is good"),
    CHOICE_NUMBER(cost_per_m2, "", "cost of underlays and screed, in the user's own currency"),
    CHOICE_NUMBER(upstand_mm, "mm", "how high underlay or edge strip stands at the walls"),
    CHOICE_NUMBER(screed_mass_kg_m2, "kg/m2", "mass of the dry screed alone, which counts for sound"),
    FLAG_FIELD(design_choice, in_published_range, NONE, "is every formula of this floor within its published range"),
    FLAG_FIELD(design_choice, turned_up, NONE, "is the top layer a roll that is turned up at the walls"),
    FLAG_FIELD(design_choice, edge_strip_needed, NONE, "is an edge strip needed beside the underlay"),
};
const struct record design_choice_record = RECORD("choice", design_choice, choice_fields);

static const struct field nearest_fields[] = {
    TEXT_FIELD(nearest_miss, underlay, true, "underlays, top to bottom"),
    TEXT_FIELD(nearest_miss, screed, true, "screed"),
    NUMBER_FIELD(nearest_miss, thickness_mm, "mm", 0, INFINITY, NONE, "nominal thickness of the screed"),
    NUMBER_FIELD(nearest_miss, shortfall, "", 0, INFINITY, NONE, "by how much it fails"),
    TEXT_FIELD(nearest_miss, unit, true, "unit of the shortfall"),
    TEXT_FIELD(nearest_miss, text, true, "the same in words"),
};
static const struct record nearest_miss_record = RECORD("nearest", nearest_miss, nearest_fields);

static const struct field rejected_fields[] = {
    TEXT_FIELD(design_rejected, reason, true, "why"),
    NUMBER_FIELD(design_rejected, count, "", 0, INFINITY, NONE, "how many candidates"),
    OBJECT_FIELD(design_rejected, nearest, &nearest_miss_record, false, "the one that fails this alone, by the least"),
};
const struct record design_rejected_record = RECORD("rejected", design_rejected, rejected_fields);

static const struct field room_fields[] = {
    TEXT_FIELD(design_room, name, true, "name of the room"),
    NUMBER_FIELD(design_room, examined, "", 0, INFINITY, NONE, "number of candidates"),
    NUMBER_FIELD(design_room, beaten, "", 0, INFINITY, NONE, "how many pass but are beaten by a choice"),
    OBJECTS_FIELD(design_room, choices, &design_choice_record, true, "what remains, best first"),
    OBJECTS_FIELD(design_room, rejected, &design_rejected_record, true, "what was rejected, by reason"),
    TEXT_FIELD(design_room, drawn, false, "id of the build-up as drawn"),
    TEXTS_FIELD(design_room, drawn_fails, "what the drawn build-up fails"),
    NUMBER_FIELD(design_room, drawn_margin_dB, "dB", -INFINITY, INFINITY, NONE, "margin of the drawn build-up"),
    ANSWER_FIELD(design_room, meets, "is there a choice"),
};
const struct record design_room_record = RECORD("room", design_room, room_fields);
