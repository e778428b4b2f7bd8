#include "report/page.h"

#include <stdarg.h>
#include <stdlib.h>

struct page *page_new(struct arena *arena)
{
    struct page *page = arena_take(arena, sizeof *page);
    page->arena = arena;
    return page;
}

static struct page_block *add_block(struct page *page, enum page_kind kind)
{
    struct page_block *block = arena_take(page->arena, sizeof *block);
    block->kind = kind;
    if (page->last)
        page->last->next = block;
    else
        page->first = block;
    page->last = block;
    return block;
}

void page_heading(struct page *page, int level, const char *format, ...)
{
    if (level < 1 || level > PAGE_HEADING_LEVELS)
        abort();
    struct page_block *block = add_block(page, PAGE_HEADING);
    block->level = level;
    va_list given;
    va_start(given, format);
    block->text = arena_vprintf(page->arena, format, given);
    va_end(given);
}

void page_paragraph(struct page *page, const char *format, ...)
{
    va_list given;
    va_start(given, format);
    add_block(page, PAGE_PARAGRAPH)->text = arena_vprintf(page->arena, format, given);
    va_end(given);
}

void page_bullet(struct page *page, const char *format, ...)
{
    va_list given;
    va_start(given, format);
    add_block(page, PAGE_BULLET)->text = arena_vprintf(page->arena, format, given);
    va_end(given);
}

void page_warning(struct page *page, const char *format, ...)
{
    va_list given;
    va_start(given, format);
    add_block(page, PAGE_WARNING)->text = arena_vprintf(page->arena, format, given);
    va_end(given);
}

static const char *copy_or_empty(struct arena *arena, const char *text)
{
    return text ? arena_text(arena, text) : "";
}

struct page_facts *page_facts_begin(struct page *page)
{
    struct page_facts *facts = arena_take(page->arena, sizeof *facts);
    facts->arena = page->arena;
    add_block(page, PAGE_FACTS)->facts = facts;
    return facts;
}

void page_fact(struct page_facts *facts, const char *label, const char *value, const char *remark, ...)
{
    struct page_line *line = arena_take(facts->arena, sizeof *line);
    line->label = copy_or_empty(facts->arena, label);
    line->value = copy_or_empty(facts->arena, value);
    line->remark = "";
    if (remark) {
        va_list given;
        va_start(given, remark);
        line->remark = arena_vprintf(facts->arena, remark, given);
        va_end(given);
    }
    if (facts->last)
        facts->last->next = line;
    else
        facts->first = line;
    facts->last = line;
}

static const char **copy_cells(const struct page_table *table, const char *const cells[])
{
    const char **copy = arena_take_many(table->arena, (size_t)table->column_count, sizeof *copy);
    for (int i = 0; i < table->column_count; i++)
        copy[i] = copy_or_empty(table->arena, cells[i]);
    return copy;
}

struct page_table *page_table(struct page *page, int column_count, const char *const headings[],
                              const bool right_aligned[])
{
    if (column_count < 1 || column_count > PAGE_COLUMNS_MOST)
        abort();
    struct page_table *table = arena_take(page->arena, sizeof *table);
    table->arena = page->arena;
    table->column_count = column_count;
    table->headings = copy_cells(table, headings);
    table->right_aligned = arena_take_many(page->arena, (size_t)column_count, sizeof *table->right_aligned);
    for (int i = 0; i < column_count; i++)
        table->right_aligned[i] = right_aligned && right_aligned[i];
    add_block(page, PAGE_TABLE)->table = table;
    return table;
}

void page_row(struct page_table *table, const char *const cells[])
{
    struct page_cells *row = arena_take(table->arena, sizeof *row);
    row->cells = copy_cells(table, cells);
    if (table->last)
        table->last->next = row;
    else
        table->first = row;
    table->last = row;
}

struct page_figure *page_figure(struct page *page, const char *value_name, const char *mark_name, const char *unit,
                                int count)
{
    struct page_figure *figure = arena_take(page->arena, sizeof *figure);
    figure->value_name = copy_or_empty(page->arena, value_name);
    figure->mark_name = copy_or_empty(page->arena, mark_name);
    figure->unit = copy_or_empty(page->arena, unit);
    figure->count = count;
    figure->label = arena_take_many(page->arena, (size_t)count, sizeof *figure->label);
    figure->value = arena_take_many(page->arena, (size_t)count, sizeof *figure->value);
    figure->mark = arena_take_many(page->arena, (size_t)count, sizeof *figure->mark);
    add_block(page, PAGE_FIGURE)->figure = figure;
    return figure;
}
