/* Third-octave bands 50..5000 Hz and the 16 rated ones among them; the 5 rated octave bands.
 * Source: ISO 266 (nominal frequencies), ISO 717-2:2013 (100..3150 Hz rated, 50..80 Hz for the enlarged range; octaves
 * 125..2000 Hz rated). */
#ifndef USC_ACOUSTICS_BANDS_H
#define USC_ACOUSTICS_BANDS_H

enum {
    USC_BANDS = 21,          /* 50..5000 Hz */
    USC_RATED_BANDS = 16,    /* 100..3150 Hz */
    USC_FIRST_RATED = 3,     /* index of 100 Hz */
    USC_BAND_500 = 10,       /* index of 500 Hz */
    USC_ENLARGED_BANDS = 19, /* 50..3150 Hz */
    USC_OCTAVE_BANDS = 5,    /* 125..2000 Hz */
};

/* Nominal frequencies in Hz. */
extern const double usc_band_Hz[USC_BANDS];

#endif
