/* The search over all candidates of a design: tables of what no room changes, then every group of rooms against them.
 *
 * A candidate is known by its order: stack, then screed, then thickness, as the catalogue has them. */
#ifndef USC_STUDY_SEARCH_H
#define USC_STUDY_SEARCH_H

#include "study/candidate.h"
#include "study/choices.h"
#include "study/stacks.h"

/* One screed in one thickness. */
struct pour {
    const struct screed *screed;
    double thickness_mm;
    int screed_index; /* among the screeds that may be used */
};

/* floating: of every stack (rows) under every pour (columns). */
struct search {
    struct stacks stacks;
    struct pour *pours;
    size_t pour_count;
    struct floating *floating;
    bool by_cost;
};
void search_prepare(const struct project *project, const struct catalogue *catalogue, double report_mass_percent,
                    struct arena *arena, struct search *search);

/* The candidate that fails one reason alone by the least. */
struct near_miss {
    bool any;
    double shortfall;
    size_t order;
};

/* Rooms that get one build-up together; mostly one room. pairs: as many as rooms, for use inside. */
struct group {
    const struct room_terms *rooms;
    size_t room_count;
    struct pair_terms *pairs;
    double examined, rejected[REASON_COUNT];
    struct near_miss nearest[REASON_COUNT];
    struct front front;
};

/* Every candidate against the group; allocates nothing. Ends early when the front is full: give it more room and search
 * again. */
void search_group(const struct search *search, struct group *group);

/* One candidate in the group: failing what it fails in any room; highest, heaviest, loudest of the rooms. */
struct judged search_judge(const struct search *search, const struct group *group, size_t order);

#endif
