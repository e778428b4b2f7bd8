/* The quick form: a project of one room, made from options and read like any other. */
#include <jansson.h>
#include <math.h>
#include <stdlib.h>

#include "cli/commands.h"
#include "cli/outcome.h"
#include "project/project.h"

static void set_number(json_t *object, const char *key, double value)
{
    if (!isnan(value))
        json_object_set_new(object, key, json_real(value));
}

static void set_choice(json_t *object, const char *key, const char *const names[], int choice)
{
    if (choice >= 0)
        json_object_set_new(object, key, json_string(names[choice]));
}

static json_t *room_of(const struct options *options)
{
    json_t *slab = json_object(), *below = json_object(), *room = json_object();
    json_object_set_new(room, "name", json_string("Room"));
    set_number(slab, "mass_kg_m2", options->slab_mass);
    set_number(slab, "Ln_w_eq_dB", options->slab_level);
    json_object_set_new(room, "slab", slab);
    set_number(below, "volume_m3", options->volume);
    set_choice(below, "position", room_position_names, options->position);
    json_object_set_new(room, "below", below);
    if (!isnan(options->flanking_mass)) {
        json_t *wall = json_object();
        set_number(wall, "mass_kg_m2", options->flanking_mass);
        json_object_set_new(room, "flanking", json_pack("[o]", wall));
    }
    return room;
}

/* Dry density of the screed that carries the mass given: any value gives the same sound. */
static const double screed_density_kg_m3 = 2000;

static void add_floor(json_t *project, json_t *room, const struct options *options)
{
    json_t *underlay = json_pack("{s:s}", "id", "stated-underlay");
    json_t *screed = json_pack("{s:s, s:s, s:s, s:f}", "id", "stated-screed", "kind", "CT", "strength_class", "F4",
                               "dry_density_kg_m3", screed_density_kg_m3);
    set_number(underlay, "dynamic_stiffness_MN_m3", options->underlay_stiffness);
    set_choice(screed, "law", improvement_law_names, options->screed_law);
    json_object_set_new(project, "catalogue", json_pack("{s:[o], s:[o]}", "underlays", underlay, "screeds", screed));
    json_t *chosen = json_pack("{s:s}", "kind", "stated-screed");
    set_number(chosen, "thickness_mm", options->screed_mass * 1000 / screed_density_kg_m3);
    json_object_set_new(
        project, "build_ups",
        json_pack("[{s:s, s:o, s:[s]}]", "id", "stated", "screed", chosen, "underlays", "stated-underlay"));
    json_object_set_new(room, "build_up", json_string("stated"));
}

/* Options that say nothing without another, and the one number whose unit is not that of the project's key. */
bool quick_form_complete(const struct options *options)
{
    const double heaviest_kg_m2 = 300 * screed_density_kg_m3 / 1000; /* the field table's 300 mm */
    bool const screed = !isnan(options->screed_mass), underlay = !isnan(options->underlay_stiffness);
    const char *lone = screed && !underlay                   ? "screed-mass: needs --underlay-stiffness beside it"
                       : underlay && !screed                 ? "underlay-stiffness: needs --screed-mass beside it"
                       : options->screed_law >= 0 && !screed ? "screed-law: needs --screed-mass beside it"
                       : !isnan(options->allowance) && !options->limit ? "allowance: needs --limit beside it"
                                                                       : NULL;
    if (lone)
        outcome_message(OUTCOME_USAGE, "--%s", lone);
    else if (screed && !(options->screed_mass > 0 && options->screed_mass <= heaviest_kg_m2))
        outcome_message(OUTCOME_USAGE, "--screed-mass: %g is not above 0 and at most %g kg/m2", options->screed_mass,
                        heaviest_kg_m2);
    else
        return true;
    return false;
}

const char *quick_form_text(struct arena *arena, const struct options *options)
{
    json_t *project = json_pack("{s:s}", "format", "underscreed-project/1"), *room = room_of(options);
    if (!isnan(options->screed_mass) || !isnan(options->underlay_stiffness))
        add_floor(project, room, options);
    if (options->limit || !isnan(options->allowance)) {
        json_t *requirement = json_object();
        if (options->limit)
            json_object_set_new(requirement, "limit", json_string(options->limit));
        set_number(requirement, "allowance_dB", options->allowance);
        json_object_set_new(project, "requirement", requirement);
    }
    json_object_set_new(project, "rooms", json_pack("[o]", room));
    char *dump = json_dumps(project, JSON_INDENT(1));
    json_decref(project);
    if (!dump)
        outcome_exhausted(NULL);
    const char *text = arena_text(arena, dump);
    free(dump);
    return text;
}
