#include "acoustics/bare_slab.h"

#define UNLIMITED -INFINITY, INFINITY

/* Equivalent level of the bare slab
 * Purpose:   the weighted normalised impact level under a homogeneous slab without a floating floor.
 * Given:     mass per area of the slab with bonded topping and plaster, without the floating screed, kg/m2.
 * Returned:  Ln,w,eq in dB.
 * Validity:  homogeneous slabs of 100..600 kg/m2 (the range is from memory; a national edition goes to 720).
 * Source:    EN ISO 12354-2 as printed in Lehrbuch der Bauphysik, ch. 22. */
static double equivalent_level(const double given[], int count)
{
    (void)count;
    return usc_Ln_eq_w_dB(given[0]);
}

const struct formula usc_Ln_eq_w_formula = {
    .id = "equivalent-level-bare-slab",
    .title = "Equivalent weighted impact level of the bare slab",
    .expression = "164 - 35 lg({m'})",
    .result = {"Ln,w,eq", "Ln_eq_w_dB", "dB", UNLIMITED},
    .given = (const struct quantity[]){{"m'", "slab_mass_kg_m2", "kg/m2", 100, 600}},
    .given_count = 1,
    .source = {"Lehrbuch der Bauphysik, ch. 22", "after EN ISO 12354-2", STANDING_PUBLISHED},
    .note = "Homogeneous slab with bonded topping and plaster. The range of 100 to 600 kg/m2 is from memory.",
    .value = equivalent_level,
};

/* Airborne sound reduction of the slab
 * Purpose:   the weighted reduction index of a massive slab, needed for the gain of the floating floor.
 * Given:     mass per area in kg/m2.
 * Returned:  Rw in dB.
 * Validity:  massive slabs of 65..720 kg/m2.
 * Source:    Lehrbuch der Bauphysik, ch. 22, after DIN 4109-32. */
static double slab_reduction(const double given[], int count)
{
    (void)count;
    return usc_slab_Rw_dB(given[0]);
}

const struct formula usc_slab_Rw_formula = {
    .id = "reduction-index-slab",
    .title = "Weighted sound reduction index of the slab",
    .expression = "30.9 lg({m'}) - 22.2",
    .result = {"Rw", "slab_Rw_dB", "dB", UNLIMITED},
    .given = (const struct quantity[]){{"m'", "slab_mass_kg_m2", "kg/m2", 65, 720}},
    .given_count = 1,
    .source = {"Lehrbuch der Bauphysik, ch. 22", "after DIN 4109-32", STANDING_PUBLISHED},
    .value = slab_reduction,
};

/* Airborne gain of the floating floor
 * Purpose:   what the floating floor adds to the weighted reduction index of the slab.
 * Given:     f0 of the two masses in Hz; below 200 Hz also Rw of the slab in dB.
 * Returned:  dRw in dB, negative when the resonance lies in the rated range.
 * Validity:  the formula 30..160 Hz; it bridges the gap to the table, which begins at 200 Hz. Between tabulated
 *            frequencies linear over lg f0. Above 1600 Hz one value, not joined to the one before.
 * Source:    EN ISO 12354-1:2017 as printed in Lehrbuch der Bauphysik, ch. 22. */
static const double LOWEST_F0_HZ = 30, TABLE_BEGINS_HZ = 200, ABOVE_TABLE_DB = -5;
static const struct {
    double f0_Hz, delta_Rw_dB;
} tabulated_gain[] = {{200, -1}, {250, -3}, {315, -5}, {400, -7}, {500, -9}, {630, -10}, {1600, -10}};

static double gain_low_dB(double f0_Hz, double slab_Rw_dB)
{
    double gain_dB = 74.4 - 20.0 * log10(f0_Hz) - slab_Rw_dB / 2.0;

    return gain_dB < 0 ? 0 : gain_dB;
}

static double gain_high_dB(double f0_Hz)
{
    const int count = sizeof tabulated_gain / sizeof tabulated_gain[0];

    if (isnan(f0_Hz))
        return NAN;
    if (f0_Hz <= tabulated_gain[0].f0_Hz)
        return tabulated_gain[0].delta_Rw_dB;
    for (int i = 1; i < count; i++) {
        if (f0_Hz > tabulated_gain[i].f0_Hz)
            continue;
        double part =
            log10(f0_Hz / tabulated_gain[i - 1].f0_Hz) / log10(tabulated_gain[i].f0_Hz / tabulated_gain[i - 1].f0_Hz);
        return tabulated_gain[i - 1].delta_Rw_dB +
               part * (tabulated_gain[i].delta_Rw_dB - tabulated_gain[i - 1].delta_Rw_dB);
    }
    return ABOVE_TABLE_DB;
}

double usc_delta_Rw_dB(double f0_Hz, double slab_Rw_dB)
{
    if (!(f0_Hz >= LOWEST_F0_HZ))
        return NAN;
    return f0_Hz < TABLE_BEGINS_HZ ? gain_low_dB(f0_Hz, slab_Rw_dB) : gain_high_dB(f0_Hz);
}

static double gain_low(const double given[], int count)
{
    (void)count;
    return gain_low_dB(given[0], given[1]);
}

static double gain_high(const double given[], int count)
{
    (void)count;
    return gain_high_dB(given[0]);
}

const struct formula usc_delta_Rw_low_formula = {
    .id = "airborne-improvement-low",
    .title = "Weighted airborne improvement, resonance below 200 Hz",
    .expression = "max(0, 74.4 - 20 lg({f0}) - {Rw}/2)",
    .result = {"ΔRw", "delta_Rw_dB", "dB", UNLIMITED},
    .given =
        (const struct quantity[]){{"f0", "f0_two_masses_Hz", "Hz", 30, 160}, {"Rw", "slab_Rw_dB", "dB", UNLIMITED}},
    .given_count = 2,
    .source = {"EN ISO 12354-1:2017", "as printed in Lehrbuch der Bauphysik, ch. 22", STANDING_PUBLISHED},
    .value = gain_low,
};

const struct formula usc_delta_Rw_high_formula = {
    .id = "airborne-improvement-table",
    .title = "Weighted airborne improvement, resonance from 200 Hz on",
    .expression = "table",
    .result = {"ΔRw", "delta_Rw_dB", "dB", UNLIMITED},
    .given = (const struct quantity[]){{"f0", "f0_two_masses_Hz", "Hz", 200, INFINITY}},
    .given_count = 1,
    .source = {"EN ISO 12354-1:2017", "as printed in Lehrbuch der Bauphysik, ch. 22", STANDING_PUBLISHED},
    .note = "Between tabulated frequencies linear over lg f0.",
    .value = gain_high,
};

const struct formula *usc_delta_Rw_formula_of(double f0_Hz)
{
    return f0_Hz < TABLE_BEGINS_HZ ? &usc_delta_Rw_low_formula : &usc_delta_Rw_high_formula;
}
