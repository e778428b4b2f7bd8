/* How thick a floating screed must nominally be, and how thin a single place of it may get.
 *
 * The rules are data: rows by kind, class, load and compressibility, as a standard or a country's practice prints them.
 * Units: thickness mm, area load kN/m2, point load kN. Pure: the caller owns all arrays.
 * Source of the rules: carried by each row (DIN 18560-2, BS 8204, ...). */
#ifndef USC_SCREED_THICKNESS_RULE_H
#define USC_SCREED_THICKNESS_RULE_H

#include <stdbool.h>
#include <stddef.h>

/* One row. kind: "CT", "CA", "CAF", "MA", "AS", "SR", "dry" or "*" (any); strength_class: "F4", "IC10", or "*".
 * The row holds for loads and compressibility up to its values (INFINITY: no limit). */
struct usc_thickness_row {
    const char *kind, *strength_class;
    double area_load_kN_m2, point_load_kN, compressibility_mm, thickness_mm;
    const char *source; /* where the row was read; status: how far to trust it, the caller's own code */
    int status;
};

/* Added thickness for a more compressible underlay, for loads up to the row's: the first row that fits decides; none
 * fits: not permitted. An empty list: compressibility is limited by the thickness rows alone. */
struct usc_compressibility_row {
    const char *kind;
    double area_load_kN_m2, point_load_kN, compressibility_mm, increment_mm;
    const char *source;
    int status;
};

/* Less thickness over thin insulation. */
struct usc_thin_insulation_row {
    const char *kind;
    double insulation_mm, reduction_mm, least_mm;
    const char *source;
    int status;
};

/* Cover above heating pipes that lie in the screed. A heated screed takes its unheated thickness plus the pipe's
 * outside diameter, and at least this cover plus the diameter. */
struct usc_cover_row {
    const char *kind, *strength_class;
    double cover_mm;
    const char *source;
    int status;
};

/* Screed under tiles or slabs of stone. */
struct usc_tile_row {
    const char *kind;
    double thickness_mm;
    const char *source;
    int status;
};

/* Smallest single thickness permitted at a nominal thickness up to the row's nominal: nominal - below_nominal. */
struct usc_single_place_row {
    double nominal_mm, below_nominal_mm;
    const char *source;
    int status;
};

struct usc_thickness_rules {
    const char *id, *name;
    const struct usc_thickness_row *row;
    size_t row_count;
    const struct usc_compressibility_row *compressibility;
    size_t compressibility_count;
    const struct usc_thin_insulation_row *thin_insulation;
    size_t thin_insulation_count;
    const struct usc_cover_row *cover;
    size_t cover_count;
    const struct usc_tile_row *tile;
    size_t tile_count;
    const struct usc_single_place_row *single_place;
    size_t single_place_count;
};

struct usc_thickness_case {
    const char *kind, *strength_class;
    double area_load_kN_m2, point_load_kN;
    double compressibility_mm, insulation_mm; /* of the whole underlay stack, unloaded thickness */
    double heating_pipe_mm;                   /* outside diameter of pipes in the screed, 0: none */
    bool tiles;
};

enum usc_thickness_status {
    USC_THICKNESS_KNOWN = 0,
    USC_THICKNESS_NO_KIND = -1,          /* the rules have no row for this kind and class */
    USC_THICKNESS_LOAD_BEYOND = -2,      /* load above every row */
    USC_THICKNESS_TOO_COMPRESSIBLE = -3, /* underlay too compressible for this load */
};

/* All in mm. base: by kind, class and load; increment: compressibility; reduction: thin insulation (a positive amount).
 * unheated = base + increment - reduction. heated: max(unheated, cover) + pipe diameter, 0 when not heated; tile: what
 * tiles alone ask for, 0 without tiles. least: the largest of unheated, heated and tile. compressibility_limit_mm: set
 * also when too compressible. */
struct usc_thickness_answer {
    double base_mm, increment_mm, reduction_mm, heated_mm, tile_mm, least_mm;
    double compressibility_limit_mm;
};

enum usc_thickness_status usc_least_nominal_thickness(const struct usc_thickness_rules *rules,
                                                      const struct usc_thickness_case *given,
                                                      struct usc_thickness_answer *answer);

/* Smallest single thickness that a screed of this nominal thickness may have, mm; nominal itself when no row. */
double usc_least_single_thickness_mm(const struct usc_thickness_rules *rules, double nominal_mm);

#endif
