/* Formulas: one with its numbers, and the list of all. */
#include <ctype.h>
#include <math.h>
#include <string.h>

#include "report/pages.h"
#include "report/phrase.h"

/* Index of the given quantity whose symbol stands between the braces at text; -1 when none. */
static int symbol_index(const struct formula *formula, const char *text, size_t length)
{
    for (int i = 0; i < formula->given_count; i++)
        if (strlen(formula->given[i].symbol) == length && !memcmp(formula->given[i].symbol, text, length))
            return i;
    return -1;
}

enum { LIST_SHOWN_MOST = 8 };

/* The text with the only symbol of a list formula replaced by a number. */
static const char *with_number(struct arena *arena, const char *text, double number)
{
    const char *open = strchr(text, '{'), *close = open ? strchr(open, '}') : NULL;
    if (!close)
        return text;
    return arena_printf(arena, "%.*s%s%s", (int)(open - text), text, phrase_short(arena, number, ""), close + 1);
}

/* "1/(1/10 + 1/20)", "mean(308, 216)": sum(...) and mean(...) written out for every value. */
static const char *list_with_numbers(struct arena *arena, const struct step *step)
{
    const char *expression = step->formula->expression;
    const char *sum = strstr(expression, "sum("), *mean = strstr(expression, "mean(");
    const char *open = sum ? sum + 3 : mean + 4, *end = open + 1, *all = "";
    for (int depth = 1; *end && depth > 0; end++)
        depth += *end == '(' ? 1 : *end == ')' ? -1 : 0;
    const char *inside = arena_text_of(arena, open + 1, (size_t)(end - open) - 2);
    for (int i = 0; i < step->given_count && i < LIST_SHOWN_MOST; i++)
        all = arena_printf(arena, "%s%s%s", all,
                           !i    ? ""
                           : sum ? " + "
                                 : ", ",
                           with_number(arena, inside, step->given[i]));
    return arena_printf(arena, "%.*s(%s%s)%s", (int)((sum ? sum : mean + 4) - expression), expression, all,
                        step->given_count > LIST_SHOWN_MOST ? " ..." : "", end);
}

/* "45 ": a number (or a bracket) and a blank. */
static bool ends_in_number(const char *text)
{
    size_t length = strlen(text);
    return length > 1 && text[length - 1] == ' ' &&
           (isdigit((unsigned char)text[length - 2]) || text[length - 2] == ')');
}

const char *step_with_numbers(struct arena *arena, const struct step *step)
{
    const struct formula *formula = step->formula;
    const char *from = formula->expression, *all = "";
    if (!strcmp(from, "table")) {
        all = "table at ";
        for (int i = 0; i < step->given_count; i++)
            all = arena_printf(arena, "%s%s%s %s", all, i ? ", " : "", formula->given[i].symbol,
                               phrase_short(arena, step->given[i], formula->given[i].unit));
        return all;
    }
    if (formula->list)
        return list_with_numbers(arena, step);
    while (*from) {
        size_t plain = strcspn(from, "{");
        all = arena_printf(arena, "%s%.*s", all, (int)plain, from);
        from += plain;
        if (*from && ends_in_number(all)) /* a product by juxtaposition would run two numbers together */
            all = arena_printf(arena, "%s· ", all);
        if (!*from)
            break;
        size_t length = strcspn(from + 1, "}");
        int index = symbol_index(formula, from + 1, length);
        const char *number = index >= 0 ? phrase_short(arena, step->given[index], "") : "?";
        all = arena_printf(arena, "%s%s", all, number);
        from += length + 1 + (from[length + 1] == '}');
    }
    return all;
}

const char *range_phrase(struct arena *arena, const struct quantity *quantity)
{
    bool low = !isinf(quantity->lowest), high = !isinf(quantity->highest);
    if (low && high)
        return arena_printf(arena, "%s to %s", phrase_short(arena, quantity->lowest, ""),
                            phrase_short(arena, quantity->highest, quantity->unit));
    if (low)
        return arena_printf(arena, "from %s", phrase_short(arena, quantity->lowest, quantity->unit));
    if (high)
        return arena_printf(arena, "up to %s", phrase_short(arena, quantity->highest, quantity->unit));
    return "no published range";
}

/* The expression without braces, as a formula is written. */
static const char *expression_phrase(struct arena *arena, const struct formula *formula)
{
    char *text = arena_text(arena, formula->expression), *to = text;
    for (const char *from = text; *from; from++)
        if (*from != '{' && *from != '}')
            *to++ = *from;
    *to = '\0';
    return text;
}

void page_of_formulas(struct page *page, const struct formula *const formula[], int count)
{
    struct arena *arena = page->arena;
    page_heading(page, 1, "Formulas");
    for (int i = 0; i < count; i++) {
        const struct formula *row = formula[i];
        page_heading(page, 2, "%s", row->id);
        page_paragraph(page, "%s", row->title);
        struct page_facts *facts = page_facts_begin(page);
        page_fact(facts, row->result.symbol, "", "= %s%s%s", expression_phrase(arena, row),
                  *row->result.unit ? "  in " : "", row->result.unit);
        for (int j = 0; j < row->given_count; j++)
            page_fact(facts, row->given[j].symbol, "", "%s%s%s", row->given[j].unit, *row->given[j].unit ? "; " : "",
                      range_phrase(arena, &row->given[j]));
        page_fact(facts, "source", "", "%s", phrase_source(arena, &row->source));
        if (row->note)
            page_fact(facts, "note", "", "%s", row->note);
    }
}
