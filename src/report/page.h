/* A document as data: headings, paragraphs, facts, tables, bullets, warnings, in order.
 *
 * The studies build it, the presenters (text_page, html_page) walk it. It knows no width, no colour and no markup. All
 * texts are copied into the page's arena, as UTF-8 and unchanged: a presenter makes them safe for its medium.
 */
#ifndef USC_REPORT_PAGE_H
#define USC_REPORT_PAGE_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"

enum page_kind { PAGE_HEADING, PAGE_PARAGRAPH, PAGE_FACTS, PAGE_TABLE, PAGE_BULLET, PAGE_WARNING, PAGE_FIGURE };

enum { PAGE_COLUMNS_MOST = 16, PAGE_HEADING_LEVELS = 3 };

/* One line of facts. remark: "" when none. */
struct page_line {
    const char *label, *value, *remark;
    struct page_line *next;
};
struct page_facts {
    struct arena *arena;
    struct page_line *first, *last;
};

/* cells: as many as the table has columns. */
struct page_cells {
    const char **cells;
    struct page_cells *next;
};
struct page_table {
    struct arena *arena;
    int column_count;
    const char **headings;
    bool *right_aligned;
    struct page_cells *first, *last;
};

/* Values against marks, one row a label: a spectrum against its reference curve. mark: NaN where a row has none. */
struct page_figure {
    const char *value_name, *mark_name, *unit;
    int count;
    const char **label;
    double *value, *mark;
};

struct page_block {
    enum page_kind kind;
    int level;                  /* of a heading, 1..PAGE_HEADING_LEVELS */
    const char *text;           /* of a heading, paragraph, bullet or warning */
    struct page_facts *facts;   /* of PAGE_FACTS, else NULL */
    struct page_table *table;   /* of PAGE_TABLE, else NULL */
    struct page_figure *figure; /* of PAGE_FIGURE, else NULL */
    struct page_block *next;
};

struct page {
    struct arena *arena;
    struct page_block *first, *last;
};

struct page *page_new(struct arena *arena);

void page_heading(struct page *page, int level, const char *format, ...) __attribute__((format(printf, 3, 4)));
void page_paragraph(struct page *page, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* Bullets that follow each other form one list. */
void page_bullet(struct page *page, const char *format, ...) __attribute__((format(printf, 2, 3)));
void page_warning(struct page *page, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* A list of facts; lines are added until the caller is done, also after other blocks have followed. */
struct page_facts *page_facts_begin(struct page *page);
/* remark: a printf format, NULL when none. A NULL label or value prints as nothing. */
void page_fact(struct page_facts *facts, const char *label, const char *value, const char *remark, ...)
    __attribute__((format(printf, 4, 5)));

/* right_aligned: one flag a column, NULL when every column is left-aligned. A table without rows is not shown. */
struct page_table *page_table(struct page *page, int column_count, const char *const headings[],
                              const bool right_aligned[]);
/* cells: column_count texts, NULL for an empty cell. */
void page_row(struct page_table *table, const char *const cells[]);

/* A figure with room for count rows, to be filled by the caller. */
struct page_figure *page_figure(struct page *page, const char *value_name, const char *mark_name, const char *unit,
                                int count);

#endif
