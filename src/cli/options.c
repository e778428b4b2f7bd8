/* The option table and everything that walks it. */
#include "cli/options.h"

#include <getopt.h>
#include <math.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "base/problem.h"
#include "cli/outcome.h"
#include "project/project.h"
#include "project/specimens.h"
#include "study/design.h"
#include "study/measured.h"

const char *const command_names[COMMAND_COUNT + 1] = {"predict", "design", "rate",      "stiffness",
                                                      "compare", "limits", "catalogue", "formulas",
                                                      "formats", "start",  "options",   NULL};
const char *const command_purposes[COMMAND_COUNT] = {
    "the level in the room below, step by step, against the limit",
    "choose underlay, screed and thickness against all constraints",
    "the single number of a measured spectrum, against a limit",
    "dynamic stiffness of an underlay from the resonance of specimens",
    "a measured spectrum against the prediction of its room, and where to look",
    "national limits with source and status",
    "underlays, screeds, floorings and rules of practice",
    "every formula with its range and source",
    "the keys of the file formats, and their schemas",
    "print a first project file",
    "print command or option names, for shell completion",
};
static const char *const command_arguments[COMMAND_COUNT] = {
    "[FILE]",       "FILE",    "FILE",        "[FILE]", "PROJECT MEASUREMENT", "[ID...]",
    "[KIND|ID...]", "[ID...]", "[FORMAT...]", "",       "[COMMAND]",
};

enum option_kind { OPTION_SWITCH, OPTION_TEXT, OPTION_NUMBER, OPTION_WHOLE, OPTION_CHOICE };

#define FOR(C) (1u << COMMAND_##C)
enum { FOR_ALL = (1 << COMMAND_COUNT) - 1 };

/* path: where the value stands in the project that a quick form makes; NULL for other options. */
struct option_row {
    const char *name;
    char letter;
    const char *argument;
    enum option_kind kind;
    size_t offset;
    unsigned commands;
    double lowest, highest;
    const char *unit;
    const char *const *choices;
    const char *path;
    const char *help;
};

#define AT(M) offsetof(struct options, M)
#define SWITCH(NAME, LETTER, M, COMMANDS, HELP)                                                                        \
    {                                                                                                                  \
        NAME, LETTER, NULL, OPTION_SWITCH, AT(M), COMMANDS, 0, 0, "", NULL, NULL, HELP                                 \
    }
#define TEXT(NAME, LETTER, ARGUMENT, M, COMMANDS, PATH, HELP)                                                          \
    {                                                                                                                  \
        NAME, LETTER, ARGUMENT, OPTION_TEXT, AT(M), COMMANDS, 0, 0, "", NULL, PATH, HELP                               \
    }
#define CHOICE(NAME, M, CHOICES, COMMANDS, PATH, HELP)                                                                 \
    {                                                                                                                  \
        NAME, 0, "WORD", OPTION_CHOICE, AT(M), COMMANDS, 0, 0, "", CHOICES, PATH, HELP                                 \
    }
#define WHOLE(NAME, ARGUMENT, M, COMMANDS, LOW, HIGH, HELP)                                                            \
    {                                                                                                                  \
        NAME, 0, ARGUMENT, OPTION_WHOLE, AT(M), COMMANDS, LOW, HIGH, "", NULL, NULL, HELP                              \
    }
#define NUMBER(NAME, ARGUMENT, M, COMMANDS, LOW, HIGH, HELP)                                                           \
    {                                                                                                                  \
        NAME, 0, ARGUMENT, OPTION_NUMBER, AT(M), COMMANDS, LOW, HIGH, "", NULL, NULL, HELP                             \
    }
/* The range of a quick form's number is the field table's, checked by the reader. */
#define QUICK(NAME, ARGUMENT, M, PATH, HELP)                                                                           \
    {                                                                                                                  \
        NAME, 0, ARGUMENT, OPTION_NUMBER, AT(M), FOR(PREDICT), -HUGE_VAL, HUGE_VAL, "", NULL, PATH, HELP               \
    }

static const struct option_row rows[] = {
    SWITCH("help", 'h', help, FOR_ALL, "show this help"),
    TEXT("output", 'o', "FILE", output, FOR_ALL, NULL, "write there; replaced only when complete"),
    SWITCH("json", 0, json, FOR_ALL & ~(FOR(START) | FOR(OPTIONS)), "one JSON document instead of text"),
    WHOLE("width", "COLUMNS", width, FOR_ALL, 20, 500, "width of the text"),
    SWITCH("ascii", 0, ascii, FOR_ALL, "text without signs beyond ASCII"),
    TEXT("data", 0, "DIR", data, FOR_ALL, NULL, "data files in front of the built-in ones"),
    TEXT("catalogue", 0, "FILE", catalogue, FOR(PREDICT) | FOR(DESIGN) | FOR(COMPARE), NULL,
         "your own catalogue, added to the rows"),
    TEXT("limits", 0, "FILE", limits, FOR(PREDICT) | FOR(DESIGN) | FOR(COMPARE) | FOR(RATE), NULL,
         "your own limits, added to the rows"),
    CHOICE("K", K, K_by_names, FOR(PREDICT) | FOR(DESIGN) | FOR(COMPARE), NULL,
           "flanking correction by formula or table"),
    TEXT("room", 0, "NAME", room, FOR(COMPARE), NULL, "the room that was measured, where there are several"),
    SWITCH("strict", 0, strict, FOR(PREDICT) | FOR(DESIGN), "a formula outside its range counts as not met"),
    SWITCH("working", 0, working, FOR(PREDICT), "every figure with formula, numbers and source"),
    QUICK("slab-mass", "KG_M2", slab_mass, "rooms[0].slab.mass_kg_m2", "slab with bonded layers"),
    QUICK("slab-level", "DB", slab_level, "rooms[0].slab.Ln_w_eq_dB", "measured level of the bare slab"),
    QUICK("screed-mass", "KG_M2", screed_mass, "build_ups[0].screed.thickness_mm", "screed, dry"),
    CHOICE("screed-law", screed_law, improvement_law_names, FOR(PREDICT), "catalogue.screeds[0].law",
           "kind of improvement"),
    QUICK("underlay-stiffness", "MN_M3", underlay_stiffness, "catalogue.underlays[0].dynamic_stiffness_MN_m3",
          "dynamic stiffness s'"),
    QUICK("flanking-mass", "KG_M2", flanking_mass, "rooms[0].flanking[0].mass_kg_m2",
          "mean of the massive walls without lining"),
    QUICK("volume", "M3", volume, "rooms[0].below.volume_m3", "receiving room"),
    CHOICE("position", position, room_position_names, FOR(PREDICT), "rooms[0].below.position",
           "where the receiving room lies"),
    TEXT("limit", 0, "ID", limit, FOR(PREDICT), "requirement.limit", "hold the quick form to this limit"),
    QUICK("allowance", "DB", allowance, "requirement.allowance_dB", "prediction allowance with --limit"),
    TEXT("limit", 0, "ID", limit, FOR(RATE), NULL, "hold the result to this limit"),
    CHOICE("field-level", field_level, field_level_names, FOR(RATE), NULL, "what readings in a room become"),
    NUMBER("volume", "M3", volume, FOR(RATE), 1, 10000, "receiving room, for L'n and below 25 m3 for low frequencies"),
    CHOICE("background", background, background_method_names, FOR(RATE), NULL, "window of the background correction"),
    SWITCH("covered", 0, covered, FOR(RATE), "measured with the reference covering: gives Ln,eq,0,w"),
    CHOICE("situation", situation, measurement_situation_names, FOR(RATE), NULL, "of the uncertainty (B)"),
    SWITCH("plan", 0, plan, FOR(RATE), "FILE is a project: which of its rooms to measure, and how"),
    NUMBER("confidence", "PERCENT", confidence, FOR(RATE), 84, 99.5, "one-sided: 84, 90, 95 (default), 97.5, 99.5"),
    NUMBER("resonance", "HZ", resonance, FOR(STIFFNESS), SPECIMEN_RESONANCE_LEAST_HZ, SPECIMEN_RESONANCE_MOST_HZ,
           "of the loaded specimen, extrapolated to no force"),
    NUMBER("load-mass", "KG_M2", load_mass, FOR(STIFFNESS), -HUGE_VAL, HUGE_VAL, "load of the test (200)"),
    NUMBER("thickness", "MM", thickness, FOR(STIFFNESS), SPECIMEN_THICKNESS_LEAST_MM, SPECIMEN_THICKNESS_MOST_MM,
           "of the specimen under the load of the test"),
    NUMBER("flow-resistivity", "KPA_S_M2", flow_resistivity, FOR(STIFFNESS), 0, 1e6, "of the material, sideways"),
    NUMBER("unloaded-thickness", "MM", unloaded_thickness, FOR(STIFFNESS), SPECIMEN_THICKNESS_LEAST_MM,
           SPECIMEN_THICKNESS_MOST_MM, "dL, under 250 Pa"),
    NUMBER("loaded-thickness", "MM", loaded_thickness, FOR(STIFFNESS), SPECIMEN_THICKNESS_LEAST_MM,
           SPECIMEN_THICKNESS_MOST_MM, "dB, under 2 kPa after 50 kPa"),
    TEXT("in-series", 0, "MN_M3,...", in_series, FOR(STIFFNESS), NULL, "s' of further layers above or below"),
    SWITCH("one-build-up", 0, one_build_up, FOR(DESIGN), "one build-up for all rooms"),
    CHOICE("rank-by", rank_by, rank_by_names, FOR(DESIGN), NULL, "what makes a choice the best"),
    WHOLE("most", "COUNT", most, FOR(DESIGN), 1, 1000, "choices shown for each room (5)"),
    TEXT("country", 0, "CC", country, FOR(LIMITS), NULL, "only this country (ISO 3166)"),
    TEXT("check", 0, "FILE", check, FOR(LIMITS) | FOR(CATALOGUE), NULL, "check a file of your own"),
    SWITCH("man", 0, manual, FOR(FORMULAS), "as the manual page underscreed-formulas(7)"),
    SWITCH("schema", 0, schema, FOR(FORMATS), "as JSON Schema"),
};
enum { ROWS = sizeof rows / sizeof rows[0] };

int command_of(const char *word)
{
    for (int i = 0; i < COMMAND_COUNT; i++)
        if (!strcmp(word, command_names[i]))
            return i;
    return -1;
}

static void defaults(enum command command, struct options *options)
{
    memset(options, 0, sizeof *options);
    options->command = command;
    for (int i = 0; i < ROWS; i++) {
        void *member = (char *)options + rows[i].offset;
        if (rows[i].kind == OPTION_NUMBER)
            *(double *)member = NAN;
        else if (rows[i].kind == OPTION_CHOICE)
            *(int *)member = -1;
    }
}

static int take_number(const struct option_row *row, const char *text, void *member)
{
    double value;
    if (!number_parse(text, &value)) {
        outcome_message(OUTCOME_USAGE, "--%s: \"%s\" is not a number", row->name, text);
        return -1;
    }
    if (value < row->lowest || value > row->highest || (row->kind == OPTION_WHOLE && value != floor(value))) {
        outcome_message(OUTCOME_USAGE, "--%s: %s is not a %snumber within %g to %g", row->name, text,
                        row->kind == OPTION_WHOLE ? "whole " : "", row->lowest, row->highest);
        return -1;
    }
    if (row->kind == OPTION_WHOLE)
        *(int *)member = (int)value;
    else
        *(double *)member = value;
    return 0;
}

static int take_choice(const struct option_row *row, const char *text, int *member)
{
    size_t count = 0;
    for (; row->choices[count]; count++)
        if (!strcmp(row->choices[count], text)) {
            *member = (int)count;
            return 0;
        }
    const char *near = nearest_name(text, row->choices, count);
    outcome_message(OUTCOME_USAGE, "--%s: \"%s\" is none of its words (%s ... %s)%s%s%s", row->name, text,
                    row->choices[0], row->choices[count - 1], near ? "; did you mean \"" : "", near ? near : "",
                    near ? "\"?" : "");
    return -1;
}

static int take(const struct option_row *row, char *text, struct options *options)
{
    void *member = (char *)options + row->offset;
    switch (row->kind) {
    case OPTION_SWITCH:
        *(bool *)member = true;
        return 0;
    case OPTION_TEXT:
        *(char **)member = text;
        return 0;
    case OPTION_CHOICE:
        return take_choice(row, text, member);
    default:
        return take_number(row, text, member);
    }
}

static void unknown_option(enum command command, const char *word)
{
    const char *known[ROWS];
    char name[80];
    size_t count = 0;
    for (int i = 0; i < ROWS; i++)
        if (rows[i].commands & 1u << command)
            known[count++] = rows[i].name;
    snprintf(name, sizeof name, "%.*s", (int)strcspn(word, "="), word);
    const char *near = nearest_name(name + strspn(name, "-"), known, count);
    outcome_message(OUTCOME_USAGE, "%s: unknown option of %s%s%s%s", word, command_names[command],
                    near ? "; did you mean --" : "", near ? near : "", near ? "?" : "");
}

int options_parse(enum command command, int word_count, char **words, struct options *options)
{
    struct option table[ROWS + 1] = {0};
    int row_of[ROWS], count = 0, found, index = -1;
    char letters[2 * ROWS + 2] = ":";
    defaults(command, options);
    for (int i = 0; i < ROWS; i++) {
        if (!(rows[i].commands & 1u << command))
            continue;
        table[count] =
            (struct option){rows[i].name, rows[i].argument ? required_argument : no_argument, NULL, 1000 + i};
        row_of[count++] = i;
        if (rows[i].letter) {
            size_t end = strlen(letters);
            letters[end] = rows[i].letter;
            letters[end + 1] = rows[i].argument ? ':' : '\0';
        }
    }
    optind = 0;
    opterr = 0;
    while ((found = getopt_long(word_count, words, letters, table, &index)) != -1) {
        const char *word = optind > 0 && optind <= word_count ? words[optind - 1] : "";
        if (found == '?') {
            char letter[] = {'-', (char)optopt, '\0'}; /* in a bundle of letters the word is not the culprit */
            unknown_option(command, optopt > 0 && optopt < 1000 ? letter : word);
            return -1;
        }
        if (found == ':') {
            outcome_message(OUTCOME_USAGE, "%s: needs an argument", word);
            return -1;
        }
        for (int i = 0; found < 1000 && i < count; i++)
            if (rows[row_of[i]].letter == found)
                found = 1000 + row_of[i];
        if (take(&rows[found - 1000], optarg, options))
            return -1;
    }
    options->argument = words + optind;
    options->argument_count = word_count - optind;
    return 0;
}

static const char *option_name(const struct option_row *row)
{
    static char name[80];
    snprintf(name, sizeof name, "--%s", row->name);
    return name;
}

/* An object that lacks something is told by the first option that fills it. */
const char *options_of_path(const char *path)
{
    for (int i = 0; i < ROWS; i++)
        if (rows[i].path && !strcmp(rows[i].path, path))
            return option_name(&rows[i]);
    size_t const length = strlen(path);
    for (int i = 0; i < ROWS && length > 0; i++)
        if (rows[i].path && !strncmp(rows[i].path, path, length) && strchr(".[", rows[i].path[length]))
            return option_name(&rows[i]);
    return path;
}

bool options_quick(const struct options *options)
{
    for (int i = 0; i < ROWS; i++) {
        const void *member = (const char *)options + rows[i].offset;
        if (!rows[i].path)
            continue;
        if (rows[i].kind == OPTION_NUMBER ? !isnan(*(const double *)member)
            : rows[i].kind == OPTION_TEXT ? *(char *const *)member != NULL
                                          : *(const int *)member >= 0)
            return true;
    }
    return false;
}

void options_help(FILE *stream, enum command command)
{
    fprintf(stream, "usage: underscreed %s [options]%s%s\n%s.\n\n", command_names[command],
            *command_arguments[command] ? " " : "", command_arguments[command], command_purposes[command]);
    for (int i = 0; i < ROWS; i++) {
        char left[60], letter[8] = "    ";
        if (!(rows[i].commands & 1u << command))
            continue;
        if (rows[i].letter)
            snprintf(letter, sizeof letter, "-%c, ", rows[i].letter);
        snprintf(left, sizeof left, "%s--%s%s%s", letter, rows[i].name, rows[i].argument ? " " : "",
                 rows[i].argument ? rows[i].argument : "");
        fprintf(stream, "  %-32s %s", left, rows[i].help);
        for (int j = 0; rows[i].choices && rows[i].choices[j]; j++)
            fprintf(stream, "%s%s", j ? ", " : ":\n                                     ", rows[i].choices[j]);
        fputc('\n', stream);
    }
    fprintf(stream, "\nThe manual: man underscreed-%s\n", command_names[command]);
}

void options_list(FILE *stream, enum command command)
{
    for (int i = 0; i < ROWS; i++)
        if (rows[i].commands & 1u << command)
            fprintf(stream, "--%s\n", rows[i].name);
}
