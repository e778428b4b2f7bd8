/* The manual page of formulas. */
#include "report/formulas_manual.h"

#include <math.h>
#include <string.h>

#include "base/number.h"
#include "base/text.h"

/* Signs beyond ASCII and those that roff reads, as escapes. */
static void print_escaped(FILE *stream, const char *text)
{
    unsigned code;
    for (size_t length; *text; text += length) {
        length = text_decode(text, &code);
        if (!length)
            length = 1, code = '?';
        if (code == '\'')
            fputs("\\(aq", stream);
        else if (code == '-')
            fputs("\\-", stream);
        else if (code == '\\')
            fputs("\\e", stream);
        else if (code == '^')
            fputs("\\(ha", stream);
        else if (code == 0x394)
            fputs("\\(*D", stream);
        else if (code > 126)
            fprintf(stream, "\\[u%04X]", code);
        else if (code != '{' && code != '}')
            fputc((int)code, stream);
    }
}

/* mdoc wants each sentence on a line of its own. */
static void print_sentences(FILE *stream, const char *text)
{
    for (const char *end; (end = strstr(text, ". ")); text = end + 2) {
        char sentence[1024];
        snprintf(sentence, sizeof sentence, "%.*s", (int)(end + 1 - text), text);
        print_escaped(stream, sentence);
        fputc('\n', stream);
    }
    print_escaped(stream, text);
    fputc('\n', stream);
}

static void print_bound(FILE *stream, const char *word, double value)
{
    char text[NUMBER_TEXT];
    if (!isinf(value)) {
        fprintf(stream, " %s ", word);
        print_escaped(stream, number_short(value, 6, text));
    }
}

static void print_quantity(FILE *stream, const struct quantity *quantity)
{
    fputs(".It\n", stream);
    print_escaped(stream, quantity->symbol);
    fputs(" (", stream);
    print_escaped(stream, quantity->key);
    fputs(*quantity->unit ? "), in " : ")", stream);
    print_escaped(stream, quantity->unit);
    if (!isinf(quantity->lowest) || !isinf(quantity->highest)) {
        fputs("; published range", stream);
        print_bound(stream, "from", quantity->lowest);
        print_bound(stream, "to", quantity->highest);
    }
    fputc('\n', stream);
}

static void print_formula(FILE *stream, const struct formula *formula)
{
    fputs(".Ss ", stream);
    print_escaped(stream, formula->id);
    fputc('\n', stream);
    print_escaped(stream, formula->title);
    fputs(".\n.Bd -literal -offset indent\n", stream);
    print_escaped(stream, formula->result.symbol);
    fputs(" = ", stream);
    print_escaped(stream, formula->expression);
    fputs("\n.Ed\n.Pp\n.Bl -bullet -compact\n", stream);
    print_quantity(stream, &formula->result);
    for (int i = 0; i < formula->given_count; i++)
        print_quantity(stream, &formula->given[i]);
    fputs(".El\n.Pp\nSource: ", stream);
    print_escaped(stream, formula->source.work);
    if (formula->source.clause && *formula->source.clause) {
        fputs(", ", stream);
        print_escaped(stream, formula->source.clause);
    }
    fprintf(stream, " (%s).\n", standing_name(formula->source.standing));
    if (formula->note)
        print_sentences(stream, formula->note);
}

void formulas_manual_print(FILE *stream, const struct formula *const formula[], int count)
{
    fputs(".\\\" Made by `underscreed formulas --man` from the descriptors; change those.\n"
          ".Dd November 25, 2026\n.Dt UNDERSCREED-FORMULAS 7\n.Os\n.Sh NAME\n"
          ".Nm underscreed-formulas\n.Nd formulas of floating floors with range and source\n.Sh DESCRIPTION\n"
          "Every formula that\n.Xr underscreed 1\ncomputes with.\n"
          "The function lg is the logarithm to the base 10.\n"
          "A formula used outside its published range warns and still computes.\n"
          "The word table stands where the source prints a table.\n",
          stream);
    for (int i = 0; i < count; i++)
        print_formula(stream, formula[i]);
    fputs(".Sh SEE ALSO\n.Xr underscreed 1 ,\n.Xr underscreed-formulas 1 ,\n.Xr underscreed-predict 1\n", stream);
}
