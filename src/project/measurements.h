/* Measured spectra from CSV tables (format: base/csv.h). Levels dB, frequencies Hz, times s.
 *
 * A table of third octaves must have the rated bands 100..3150 Hz and may have 50..80 and 4000, 5000 Hz; one of octaves
 * must have 125..2000 Hz and may have 63 and 4000 Hz (ISO 717-2:2013, 4.3). It is one of octaves when every frequency
 * in it is the centre of an octave. The order of the rows is free. A column `note` is passed over. Every function
 * collects all errors of a file, with line and column, and returns false after any. */
#ifndef USC_PROJECT_MEASUREMENTS_H
#define USC_PROJECT_MEASUREMENTS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#include "acoustics/bands.h"
#include "base/arena.h"
#include "base/problem.h"

/* By the column that names it: Ln_dB or level_dB, L_prime_n_dB, L_prime_nT_dB, delta_L_dB. */
enum measured_quantity { MEASURED_LN, MEASURED_L_PRIME_N, MEASURED_L_PRIME_NT, MEASURED_DELTA_L };

/* Octave levels stand at the index of their centre. value_dB is 0 where has is false. */
struct measurement {
    enum measured_quantity quantity;
    bool octave;
    bool has[USC_BANDS];
    double value_dB[USC_BANDS];
};

enum { RAW_READINGS_MOST = 1000 }; /* of one kind in one band */

/* value: count readings, NULL when count is 0. */
struct raw_readings {
    size_t count;
    double *value;
};

/* position: a name for each level, NULL when the table has no such column. */
struct raw_band {
    struct raw_readings level_dB, background_dB, reverberation_time_s, corner_dB;
    const char **position;
};

/* Readings in the field before any correction; a band is there when it has a level. */
struct raw_measurement {
    bool octave;
    bool has_background, has_reverberation_time, has_corner; /* the table has the column */
    bool has[USC_BANDS];
    struct raw_band band[USC_BANDS];
};

/* What the header of a table says it is; a header that cannot be read counts as a spectrum, whose reader reports it. */
enum measurement_table { TABLE_SPECTRUM, TABLE_RAW, TABLE_SPECTRA };
enum measurement_table measurement_table_of(struct arena *arena, const char *text, size_t length);

/* frequency_Hz and exactly one column of enum measured_quantity. */
bool measurement_read(struct measurement *measurement, struct arena *arena, struct problems *problems, const char *file,
                      const char *text, size_t length);

/* frequency_Hz, level_dB; if wanted position, background_dB, reverberation_time_s, corner_dB. Several rows of a band
 * are several positions or readings; a cell other than the frequency may be empty. With a column reverberation_time_s
 * every band needs one. */
bool raw_measurement_read(struct raw_measurement *measurement, struct arena *arena, struct problems *problems,
                          const char *file, const char *text, size_t length);

/* spectrum, frequency_Hz and one column as above: rows in a row with the same text in `spectrum` are one spectrum. Each
 * that is free of errors goes to each(); its id holds for the call only. The memory taken does not grow with the rows.
 * each returns false to end the reading. After a failure of the stream itself *read_error is its errno, else 0. */
typedef bool spectrum_use(void *context, const char *id, const struct measurement *measurement);
bool spectra_read(struct arena *arena, struct problems *problems, const char *file, FILE *stream, spectrum_use *each,
                  void *context, int *read_error);

#endif
