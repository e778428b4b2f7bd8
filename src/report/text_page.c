#include "report/text_page.h"

#include <ctype.h>
#include <string.h>

#include "base/text.h"
#include "report/text_plot.h"

/* Below NARROW columns a remark beside its value would be a ribbon of single words. */
enum { NARROW = 60, GAP = 2, INDENT = 2, REMARK_INDENT = 4, VALUE_WIDEST = 24, WRAPPED_LEAST = 8 };

struct printer {
    FILE *stream;
    struct arena *arena;
    const struct text_style *style;
    int width;
    int column; /* where the next character goes; blanks up to it are written when something follows */
    int written;
};

static void pad_to(struct printer *printer, int column)
{
    if (column > printer->column)
        printer->column = column;
}

static void put(struct printer *printer, const char *text, size_t bytes)
{
    if (bytes == 0)
        return;
    for (; printer->written < printer->column; printer->written++)
        fputc(' ', printer->stream);
    fwrite(text, 1, bytes, printer->stream);
    printer->column += text_width_of(text, bytes);
    printer->written = printer->column;
}

static void end_line(struct printer *printer)
{
    fputc('\n', printer->stream);
    printer->column = printer->written = 0;
}

/* Escape sequences take no columns. */
static void colour(const struct printer *printer, const char *sequence)
{
    if (printer->style->colour)
        fputs(sequence, printer->stream);
}

static void put_rule(struct printer *printer, int columns)
{
    const char *sign = printer->style->ascii ? "-" : "\xe2\x94\x80"; /* U+2500 */
    for (int i = 0; i < columns; i++)
        put(printer, sign, strlen(sign));
}

/* The text as this medium can show it, on one logical line. */
static const char *prepare(const struct printer *printer, const char *text)
{
    char *flat = arena_text(printer->arena, text);
    for (char *c = flat; *c; c++)
        if (*c == '\n' || *c == '\t' || *c == '\r')
            *c = ' ';
    const char *safe = text_safe(printer->arena, flat);
    return printer->style->ascii ? text_ascii(printer->arena, safe) : safe;
}

static const char *skip_blanks(const char *text)
{
    return text + strspn(text, " ");
}

/* Where a line may end: at blanks, and in the cells of a table behind a hyphen between letters too. */
enum breaks { AT_BLANKS, AT_HYPHENS };

static bool ends_at_hyphen(const char *text, size_t bytes)
{
    return bytes > 1 && text[bytes - 1] == '-' && isalnum((unsigned char)text[bytes - 2]) &&
           isalnum((unsigned char)text[bytes]);
}

/* Bytes up to the first place where a line may end. */
static size_t word_bytes(const char *text, enum breaks breaks)
{
    size_t bytes = 0;
    while (text[bytes] && text[bytes] != ' ' && !(breaks == AT_HYPHENS && ends_at_hyphen(text, bytes)))
        bytes++;
    return bytes;
}

/* Bytes of the longest run of whole words from the start that takes at most `columns`, at least one word, without the
 * blank behind it. */
static size_t line_bytes(const char *text, int columns, enum breaks breaks)
{
    size_t bytes = text_head(text, columns);
    if (text[bytes] != '\0' && text[bytes] != ' ') {
        while (bytes > 0 && text[bytes - 1] != ' ' && !(breaks == AT_HYPHENS && ends_at_hyphen(text, bytes)))
            bytes--;
        if (bytes == 0)
            return word_bytes(text, breaks);
    }
    while (bytes > 0 && text[bytes - 1] == ' ')
        bytes--;
    return bytes;
}

static int longest_word(const char *text, enum breaks breaks)
{
    int longest = 0;
    for (text = skip_blanks(text); *text; text = skip_blanks(text)) {
        size_t const bytes = word_bytes(text, breaks);
        int const width = text_width_of(text, bytes);
        longest = width > longest ? width : longest;
        text += bytes;
    }
    return longest;
}

static int least(int a, int b)
{
    return a < b ? a : b;
}

static int most(int a, int b)
{
    return a > b ? a : b;
}

/* Wraps a text between column `first` (later lines: `rest`) and the width, and leaves its last line open. Moves left
 * where a long word needs it, and to a new line where the open one has gone too far. */
static void flow(struct printer *printer, const char *text, int first, int rest)
{
    text = skip_blanks(text);
    if (!*text)
        return;
    int const leftmost = most(0, printer->width - longest_word(text, AT_BLANKS));
    first = least(first, leftmost);
    rest = least(rest, leftmost);
    if (printer->column > 0 && printer->column >= first) {
        end_line(printer);
        first = rest;
    }
    pad_to(printer, first);
    for (;;) {
        size_t const bytes = line_bytes(text, printer->width - printer->column, AT_BLANKS);
        put(printer, text, bytes);
        text = skip_blanks(text + bytes);
        if (!*text)
            return;
        end_line(printer);
        pad_to(printer, rest);
    }
}

static void print_heading(struct printer *printer, const struct page_block *block)
{
    const char *text = prepare(printer, block->text);
    colour(printer, "\033[1m");
    flow(printer, text, 0, 0);
    colour(printer, "\033[0m");
    end_line(printer);
    if (block->level == 1) {
        put_rule(printer, least(text_width(text), printer->width));
        end_line(printer);
    }
}

static void print_bullet(struct printer *printer, const struct page_block *block)
{
    put(printer, "-", 1);
    flow(printer, prepare(printer, block->text), 2, 2);
    end_line(printer);
}

static void print_warning(struct printer *printer, const struct page_block *block)
{
    colour(printer, "\033[33m");
    put(printer, "!", 1);
    flow(printer, prepare(printer, block->text), 2, 2);
    colour(printer, "\033[0m");
    end_line(printer);
}

static struct page_facts prepared_facts(const struct printer *printer, const struct page_facts *facts)
{
    struct page page = {.arena = printer->arena};
    struct page_facts *copy = page_facts_begin(&page);
    for (const struct page_line *line = facts->first; line; line = line->next)
        page_fact(copy, prepare(printer, line->label), prepare(printer, line->value), "%s",
                  prepare(printer, line->remark));
    return *copy;
}

static void print_facts(struct printer *printer, const struct page_facts *given)
{
    struct page_facts const facts = prepared_facts(printer, given);
    bool const narrow = printer->width < NARROW;
    int const indent = narrow ? 0 : INDENT;
    int label_width = 0, value_width = 0;
    for (const struct page_line *line = facts.first; line; line = line->next) {
        int const label = text_width(line->label), value = text_width(line->value);
        if (label <= printer->width / 2)
            label_width = most(label_width, label);
        if (value <= VALUE_WIDEST)
            value_width = most(value_width, value);
    }
    int const value_column = indent + label_width + GAP;
    int const remark_column = value_column + value_width + GAP;
    for (const struct page_line *line = facts.first; line; line = line->next) {
        flow(printer, line->label, indent, indent);
        flow(printer, line->value, value_column, value_column);
        if (narrow && printer->column > 0 && line->remark[0])
            end_line(printer);
        if (narrow)
            flow(printer, line->remark, REMARK_INDENT, REMARK_INDENT);
        else
            flow(printer, line->remark, remark_column, remark_column);
        if (printer->column > 0)
            end_line(printer);
    }
}

static struct page_table *prepared_table(const struct printer *printer, const struct page_table *table)
{
    struct page page = {.arena = printer->arena};
    const char *cells[PAGE_COLUMNS_MOST];
    for (int i = 0; i < table->column_count; i++)
        cells[i] = prepare(printer, table->headings[i]);
    struct page_table *copy = page_table(&page, table->column_count, cells, table->right_aligned);
    for (const struct page_cells *row = table->first; row; row = row->next) {
        for (int i = 0; i < table->column_count; i++)
            cells[i] = prepare(printer, row->cells[i]);
        page_row(copy, cells);
    }
    return copy;
}

/* The widths that columns want, and those below which a word would stand out (cells of right-aligned columns, numbers,
 * are not wrapped). */
static void measure(const struct page_table *table, int wanted[], int smallest[])
{
    for (int i = 0; i < table->column_count; i++) {
        wanted[i] = text_width(table->headings[i]);
        smallest[i] = longest_word(table->headings[i], AT_BLANKS);
        for (const struct page_cells *row = table->first; row; row = row->next) {
            int const width = text_width(row->cells[i]);
            wanted[i] = most(wanted[i], width);
            smallest[i] = most(smallest[i], table->right_aligned[i] ? width : longest_word(row->cells[i], AT_HYPHENS));
        }
        smallest[i] = most(smallest[i], least(wanted[i], WRAPPED_LEAST));
    }
}

/* Takes columns from the widest until the table fits; false when it cannot. */
static bool fit_columns(const struct page_table *table, int available, int widths[])
{
    int smallest[PAGE_COLUMNS_MOST];
    measure(table, widths, smallest);
    int total = GAP * (table->column_count - 1);
    for (int i = 0; i < table->column_count; i++)
        total += widths[i];
    for (; total > available; total--) {
        int widest = -1;
        for (int i = 0; i < table->column_count; i++)
            if (widths[i] > smallest[i] && (widest < 0 || widths[i] > widths[widest]))
                widest = i;
        if (widest < 0)
            return false;
        widths[widest]--;
    }
    return true;
}

static void print_cells(struct printer *printer, const struct page_table *table, const char *const cells[],
                        const int widths[], int indent)
{
    const char *rest[PAGE_COLUMNS_MOST];
    for (int i = 0; i < table->column_count; i++)
        rest[i] = skip_blanks(cells[i]);
    for (bool more = true; more;) {
        more = false;
        int column = indent;
        for (int i = 0; i < table->column_count; column += widths[i] + GAP, i++) {
            size_t const bytes = line_bytes(rest[i], widths[i], AT_HYPHENS);
            pad_to(printer, column + (table->right_aligned[i] ? widths[i] - text_width_of(rest[i], bytes) : 0));
            put(printer, rest[i], bytes);
            rest[i] = skip_blanks(rest[i] + bytes);
            more = more || rest[i][0];
        }
        end_line(printer);
    }
}

static void print_stacked(struct printer *printer, const struct page_table *table)
{
    for (const struct page_cells *row = table->first; row; row = row->next) {
        for (int i = 0; i < table->column_count; i++) {
            if (!row->cells[i][0])
                continue;
            const char *separator = table->headings[i][0] ? ": " : "";
            flow(printer, arena_printf(printer->arena, "%s%s%s", table->headings[i], separator, row->cells[i]), 0,
                 INDENT);
            end_line(printer);
        }
        if (row->next)
            end_line(printer);
    }
}

static void print_table(struct printer *printer, const struct page_table *given)
{
    struct page_table const *table = prepared_table(printer, given);
    int const indent = printer->width < NARROW ? 0 : INDENT;
    int widths[PAGE_COLUMNS_MOST];
    if (!fit_columns(table, printer->width - indent, widths)) {
        print_stacked(printer, table);
        return;
    }
    print_cells(printer, table, table->headings, widths, indent);
    int column = indent;
    for (int i = 0; i < table->column_count; column += widths[i] + GAP, i++) {
        pad_to(printer, column);
        put_rule(printer, widths[i]);
    }
    end_line(printer);
    for (const struct page_cells *row = table->first; row; row = row->next)
        print_cells(printer, table, row->cells, widths, indent);
}

static void print_figure(struct printer *printer, const struct page_figure *figure)
{
    struct plot plot;
    int const indent = printer->width < NARROW ? 0 : INDENT;
    text_plot_scale(&plot, figure, printer->width - indent, printer->style->ascii);
    for (int i = -1; i < figure->count; i++) {
        const char *line =
            i < 0 ? text_plot_head(&plot, figure, printer->arena) : text_plot_line(&plot, figure, i, printer->arena);
        pad_to(printer, indent);
        line = prepare(printer, line);
        put(printer, line, strlen(line));
        end_line(printer);
    }
}

static bool is_empty(const struct page_block *block)
{
    switch (block->kind) {
    case PAGE_FACTS:
        return !block->facts->first;
    case PAGE_TABLE:
        return !block->table->first;
    case PAGE_FIGURE:
        return block->figure->count == 0;
    default:
        return block->text[strspn(block->text, " \t\r\n")] == '\0';
    }
}

/* Bullets and warnings stand close; what a lower heading announces follows at once. */
static bool stands_close(const struct page_block *before, const struct page_block *block)
{
    if (before->kind == PAGE_HEADING)
        return before->level > 1;
    return before->kind == block->kind && (block->kind == PAGE_BULLET || block->kind == PAGE_WARNING);
}

static void print_block(struct printer *printer, const struct page_block *block)
{
    switch (block->kind) {
    case PAGE_HEADING:
        print_heading(printer, block);
        break;
    case PAGE_PARAGRAPH:
        flow(printer, prepare(printer, block->text), 0, 0);
        end_line(printer);
        break;
    case PAGE_FACTS:
        print_facts(printer, block->facts);
        break;
    case PAGE_TABLE:
        print_table(printer, block->table);
        break;
    case PAGE_FIGURE:
        print_figure(printer, block->figure);
        break;
    case PAGE_BULLET:
        print_bullet(printer, block);
        break;
    case PAGE_WARNING:
        print_warning(printer, block);
        break;
    }
}

void text_page_print(const struct page *page, FILE *stream, const struct text_style *style)
{
    struct printer printer = {.stream = stream, .arena = page->arena, .style = style};
    printer.width = most(style->width, TEXT_WIDTH_LEAST);
    const struct page_block *before = NULL;
    for (const struct page_block *block = page->first; block; block = block->next) {
        if (is_empty(block))
            continue;
        if (before && !stands_close(before, block))
            end_line(&printer);
        print_block(&printer, block);
        before = block;
    }
}
