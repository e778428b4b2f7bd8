#include "study/range_warnings.h"

/* A warning that grows room by room. */
struct growing {
    const struct formula *formula;
    const struct quantity *quantity;
    double value;
    const char **rooms;
    size_t room_count, room_space, last_room;
};

struct gathering {
    struct growing *at;
    size_t count, space;
    struct arena *arena;
};

static double distance_outside(const struct quantity *quantity, double value)
{
    return value < quantity->lowest ? quantity->lowest - value : value - quantity->highest;
}

static struct growing *growing_of(struct gathering *gathering, const struct excursion *excursion)
{
    for (size_t i = 0; i < gathering->count; i++)
        if (gathering->at[i].formula == excursion->formula && gathering->at[i].quantity == excursion->quantity)
            return &gathering->at[i];
    if (gathering->count == gathering->space)
        gathering->at =
            arena_grow(gathering->arena, gathering->at, gathering->count, &gathering->space, sizeof *gathering->at);
    struct growing *fresh = &gathering->at[gathering->count++];
    *fresh =
        (struct growing){.formula = excursion->formula, .quantity = excursion->quantity, .value = excursion->value};
    return fresh;
}

static void gather(struct gathering *gathering, const struct excursion *excursion, const char *room, size_t number)
{
    struct growing *warning = growing_of(gathering, excursion);
    if (distance_outside(warning->quantity, excursion->value) > distance_outside(warning->quantity, warning->value))
        warning->value = excursion->value;
    if (warning->room_count > 0 && warning->last_room == number)
        return;
    if (warning->room_count == warning->room_space)
        warning->rooms = arena_grow(gathering->arena, warning->rooms, warning->room_count, &warning->room_space,
                                    sizeof *warning->rooms);
    warning->rooms[warning->room_count++] = room;
    warning->last_room = number;
}

static double bound(double value)
{
    return isinf(value) ? NAN : value;
}

struct objects range_warnings(const struct room_prediction rooms[], size_t count, struct arena *arena)
{
    struct gathering gathering = {.arena = arena};
    for (size_t i = 0; i < count; i++)
        for (const struct excursion *at = rooms[i].working.first_excursion; at; at = at->next)
            gather(&gathering, at, rooms[i].name, i);
    struct warning_record *records = arena_take_many(arena, gathering.count, sizeof *records);
    for (size_t i = 0; i < gathering.count; i++) {
        const struct growing *from = &gathering.at[i];
        records[i] = (struct warning_record){
            .formula = from->formula->id,
            .quantity = from->quantity->key,
            .unit = from->quantity->unit,
            .value = from->value,
            .lowest = bound(from->quantity->lowest),
            .highest = bound(from->quantity->highest),
            .rooms = {from->rooms, from->room_count},
        };
    }
    return (struct objects){records, gathering.count};
}
