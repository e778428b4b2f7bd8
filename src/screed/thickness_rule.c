#include "screed/thickness_rule.h"

#include <math.h>
#include <string.h>

/* Smallest nominal thickness
 * Purpose:   what a rule asks of the thickness of one floating screed.
 * Given:     rules; kind, class, loads in kN/m2 and kN, compressibility and thickness of the underlay in mm, heating
 *            pipe in mm, tiles or none.
 * Returned:  the parts and the least nominal thickness in mm; NaN for a part that is not known.
 * Status:    0, or negative when the rules do not permit the case.
 * Validity:  in each list the first row that fits decides: a row for one class stands before the row for any.
 * Source:    carried by the rules. */

/* Compressibility and thickness of a stack are sums of decimals: 0.1 + 0.2 must still count as 0.3. */
static bool at_most(double value, double limit)
{
    return value <= limit + 1e-9;
}

static bool name_fits(const char *row, const char *given)
{
    return strcmp(row, "*") == 0 || (given && strcmp(row, given) == 0);
}

static bool row_is_for(const struct usc_thickness_row *row, const struct usc_thickness_case *given)
{
    return name_fits(row->kind, given->kind) && name_fits(row->strength_class, given->strength_class);
}

static bool load_fits(double area_load_kN_m2, double point_load_kN, const struct usc_thickness_case *given)
{
    return at_most(given->area_load_kN_m2, area_load_kN_m2) && at_most(given->point_load_kN, point_load_kN);
}

/* Sets base_mm and raises compressibility_limit_mm (0 at first) to what the rows permit under this load. */
static enum usc_thickness_status find_base(const struct usc_thickness_rules *rules,
                                           const struct usc_thickness_case *given, struct usc_thickness_answer *answer)
{
    bool kind_known = false, load_known = false;

    for (size_t i = 0; i < rules->row_count; i++) {
        const struct usc_thickness_row *row = &rules->row[i];
        if (!row_is_for(row, given))
            continue;
        kind_known = true;
        if (!load_fits(row->area_load_kN_m2, row->point_load_kN, given))
            continue;
        load_known = true;
        answer->compressibility_limit_mm = fmax(answer->compressibility_limit_mm, row->compressibility_mm);
        if (isnan(answer->base_mm) && at_most(given->compressibility_mm, row->compressibility_mm))
            answer->base_mm = row->thickness_mm;
    }
    if (!kind_known)
        return USC_THICKNESS_NO_KIND;
    if (!load_known)
        return USC_THICKNESS_LOAD_BEYOND;
    return isnan(answer->base_mm) ? USC_THICKNESS_TOO_COMPRESSIBLE : USC_THICKNESS_KNOWN;
}

/* Sets increment_mm and lowers compressibility_limit_mm to what the list permits under this load. */
static enum usc_thickness_status find_increment(const struct usc_thickness_rules *rules,
                                                const struct usc_thickness_case *given,
                                                struct usc_thickness_answer *answer)
{
    double limit_mm = 0;

    if (rules->compressibility_count == 0) {
        answer->increment_mm = 0;
        return USC_THICKNESS_KNOWN;
    }
    for (size_t i = 0; i < rules->compressibility_count; i++) {
        const struct usc_compressibility_row *row = &rules->compressibility[i];
        if (!name_fits(row->kind, given->kind) || !load_fits(row->area_load_kN_m2, row->point_load_kN, given))
            continue;
        limit_mm = fmax(limit_mm, row->compressibility_mm);
        if (isnan(answer->increment_mm) && at_most(given->compressibility_mm, row->compressibility_mm))
            answer->increment_mm = row->increment_mm;
    }
    answer->compressibility_limit_mm = fmin(answer->compressibility_limit_mm, limit_mm);
    return isnan(answer->increment_mm) ? USC_THICKNESS_TOO_COMPRESSIBLE : USC_THICKNESS_KNOWN;
}

/* What thin insulation saves of a thickness, never below the row's least. */
static double reduction_of_mm(const struct usc_thickness_rules *rules, const struct usc_thickness_case *given,
                              double thickness_mm)
{
    for (size_t i = 0; i < rules->thin_insulation_count; i++) {
        const struct usc_thin_insulation_row *row = &rules->thin_insulation[i];
        if (name_fits(row->kind, given->kind) && at_most(given->insulation_mm, row->insulation_mm))
            return fmax(0, fmin(row->reduction_mm, thickness_mm - row->least_mm));
    }
    return 0;
}

static double heated_of_mm(const struct usc_thickness_rules *rules, const struct usc_thickness_case *given,
                           double unheated_mm)
{
    if (!(given->heating_pipe_mm > 0))
        return 0;
    for (size_t i = 0; i < rules->cover_count; i++) {
        const struct usc_cover_row *row = &rules->cover[i];
        if (name_fits(row->kind, given->kind) && name_fits(row->strength_class, given->strength_class))
            return fmax(unheated_mm, row->cover_mm) + given->heating_pipe_mm;
    }
    return unheated_mm + given->heating_pipe_mm;
}

static double tile_of_mm(const struct usc_thickness_rules *rules, const struct usc_thickness_case *given)
{
    if (!given->tiles)
        return 0;
    for (size_t i = 0; i < rules->tile_count; i++)
        if (name_fits(rules->tile[i].kind, given->kind))
            return rules->tile[i].thickness_mm;
    return 0;
}

enum usc_thickness_status usc_least_nominal_thickness(const struct usc_thickness_rules *rules,
                                                      const struct usc_thickness_case *given,
                                                      struct usc_thickness_answer *answer)
{
    *answer = (struct usc_thickness_answer){NAN, NAN, NAN, NAN, NAN, NAN, .compressibility_limit_mm = 0};

    enum usc_thickness_status base = find_base(rules, given, answer);
    if (base == USC_THICKNESS_NO_KIND || base == USC_THICKNESS_LOAD_BEYOND) {
        answer->compressibility_limit_mm = NAN;
        return base;
    }
    /* Also when the rows refuse, so that the limit told is that of both lists. */
    enum usc_thickness_status increment = find_increment(rules, given, answer);
    if (base != USC_THICKNESS_KNOWN)
        return base;
    if (increment != USC_THICKNESS_KNOWN)
        return increment;

    double full_mm = answer->base_mm + answer->increment_mm;
    answer->reduction_mm = reduction_of_mm(rules, given, full_mm);
    double unheated_mm = full_mm - answer->reduction_mm;
    answer->heated_mm = heated_of_mm(rules, given, unheated_mm);
    answer->tile_mm = tile_of_mm(rules, given);
    answer->least_mm = fmax(fmax(unheated_mm, answer->heated_mm), answer->tile_mm);
    return USC_THICKNESS_KNOWN;
}

/* Smallest single thickness
 * Purpose:   how thin one place of a screed may be.
 * Given:     rules, nominal thickness in mm; rows ascend by nominal thickness.
 * Returned:  thickness in mm; the nominal one when no row covers it.
 * Source:    carried by the rules. */
double usc_least_single_thickness_mm(const struct usc_thickness_rules *rules, double nominal_mm)
{
    for (size_t i = 0; i < rules->single_place_count; i++)
        if (at_most(nominal_mm, rules->single_place[i].nominal_mm))
            return nominal_mm - rules->single_place[i].below_nominal_mm;
    return nominal_mm;
}
