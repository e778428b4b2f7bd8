/* One table of options: the parser, --help and the shell completion all read it. */
#ifndef USC_CLI_OPTIONS_H
#define USC_CLI_OPTIONS_H

#include <stdbool.h>
#include <stdio.h>

enum command {
    COMMAND_PREDICT,
    COMMAND_DESIGN,
    COMMAND_RATE,
    COMMAND_STIFFNESS,
    COMMAND_COMPARE,
    COMMAND_LIMITS,
    COMMAND_CATALOGUE,
    COMMAND_FORMULAS,
    COMMAND_FORMATS,
    COMMAND_START,
    COMMAND_OPTIONS,
    COMMAND_COUNT,
};

/* What the command line asked for. Numbers are NaN, texts NULL, choices -1 when not given. */
struct options {
    enum command command;
    bool help, json, ascii, strict, working, one_build_up, manual, schema, covered, plan;
    int width, most; /* 0: not given */
    const char *output, *data, *catalogue, *limits, *limit, *room, *country, *check, *in_series;
    int K, rank_by, screed_law, position, field_level, background, situation;
    double slab_mass, slab_level, screed_mass, underlay_stiffness, flanking_mass, volume, allowance, confidence;
    double resonance, load_mass, thickness, flow_resistivity, unloaded_thickness, loaded_thickness;
    char **argument; /* files, ids, kinds */
    int argument_count;
};

/* Command words and one line on each. */
extern const char *const command_names[COMMAND_COUNT + 1], *const command_purposes[COMMAND_COUNT];
/* Index of a command word, -1 when unknown. */
int command_of(const char *word);

/* words: those after the command. Returns 0, or -1 after a message (OUTCOME_USAGE). */
int options_parse(enum command command, int word_count, char **words, struct options *options);

/* The option through which a quick form's value came, by the path in the project made from it: "--slab-mass". */
const char *options_of_path(const char *path);
/* True when any option of the quick form was given. */
bool options_quick(const struct options *options);

void options_help(FILE *stream, enum command command);
/* Names with their dashes, one a line. */
void options_list(FILE *stream, enum command command);

#endif
