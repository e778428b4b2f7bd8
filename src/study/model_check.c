/* Rooms that the simplified model cannot serve become errors with a place and a remedy. */
#include <stdio.h>

#include "acoustics/transmission.h"
#include "study/predict.h"
#include "study/prediction_notes.h"

enum { PATH_ROOM = 96 };

struct check {
    const char *file;
    struct problems *problems;
    size_t room; /* the one being checked */
};

/* path: below the room, "" for the room itself. */
static const char *path_of(const struct check *check, const char *path, char text[PATH_ROOM])
{
    snprintf(text, PATH_ROOM, "rooms[%zu]%s%s", check->room, *path ? "." : "", path);
    return text;
}

static void refuse(const struct check *check, const char *path, const char *hint, const char *what)
{
    char text[PATH_ROOM];
    problem_add(check->problems, SEVERITY_ERROR, check->file, path_of(check, path, text), hint, "%s", what);
}

static void check_descriptor(const struct requirement *requirement, const char *file, const char *path,
                             struct problems *problems)
{
    int const descriptor = requirement->found ? requirement->found->descriptor : requirement->descriptor;
    if (descriptor < 0 || descriptor_is_single_number(descriptor))
        return;
    problem_add(problems, SEVERITY_ERROR, file, path,
                "hold it to L_prime_n_w or L_prime_nT_w, or prove it by measurement",
                "%s cannot be predicted by the simplified model, which gives L'n,w and L'nT,w only",
                descriptor_symbols[descriptor]);
}

static bool has_massive_flanking(const struct room *room)
{
    const struct flanking *flanking = room->flanking.at;
    for (size_t i = 0; i < room->flanking.count; i++)
        if (flanking_is_massive(&flanking[i]))
            return true;
    return false;
}

static void check_slab(const struct check *check, const struct room *room)
{
    const struct slab *slab = room->slab;
    bool const measured = !isnan(slab->Ln_w_eq_dB), weighed = !isnan(slab_mass_of(slab, NULL));
    if (slab->construction != SLAB_HOMOGENEOUS && !measured)
        refuse(check, "slab.construction", "give slab.Ln_w_eq_dB, measured or from the maker of the floor",
               "the formula for the bare slab holds for homogeneous slabs only");
    if (measured && !weighed && is_directly_below(room) && has_massive_flanking(room))
        refuse(check, "slab", "give slab.mass_kg_m2",
               "the flanking correction K needs the mass of the slab beside its measured level");
    if (!measured && !weighed)
        refuse(check, "slab", "give slab.mass_kg_m2, or slab.thickness_mm, or slab.layers", "the slab has no mass");
}

static void check_flanking(const struct check *check, const struct room *room)
{
    if (is_directly_below(room) && room->flanking.count == 0)
        refuse(check, "flanking", "list the walls below that join the slab, light and lined ones too",
               "no flanking data: the correction K is not known");
    if (room->flanking.count > FLANKING_MOST)
        refuse(check, "flanking", NULL, "more than 256 flanking elements");
}

static void check_volume(const struct check *check, const struct room *room, const struct project *project)
{
    struct held_to held;
    if (held_to_of(project, room, &held) && held.descriptor == DESCRIPTOR_L_PRIME_NT_W &&
        isnan(receiving_volume_m3(room->below)))
        refuse(check, "below", "give below.volume_m3, or below.area_m2 and below.height_m",
               "L'nT,w needs the volume of the receiving room");
}

static void check_room(struct check *check, const struct room *room, const struct project *project)
{
    char path[PATH_ROOM];
    if (room->requirement)
        check_descriptor(room->requirement, check->file, path_of(check, "requirement", path), check->problems);
    check_slab(check, room);
    check_flanking(check, room);
    check_volume(check, room, project);
    if (room->found_build_up && room->found_build_up->underlays.count > STACK_LAYERS_MOST)
        refuse(check, "build_up", NULL, "more than 16 layers of underlay");
}

void study_check_model(const struct project *project, const char *file, struct problems *problems)
{
    const struct room *room = project->rooms.at;
    if (project->requirement)
        check_descriptor(project->requirement, file, "requirement", problems);
    for (size_t i = 0; i < project->rooms.count; i++) {
        struct check check = {.file = file, .problems = problems, .room = i};
        check_room(&check, &room[i], project);
    }
}
