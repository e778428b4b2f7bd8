/* A page as plain text for a terminal or a pipe. */
#ifndef USC_REPORT_TEXT_PAGE_H
#define USC_REPORT_TEXT_PAGE_H

#include <stdbool.h>
#include <stdio.h>

#include "report/page.h"

enum { TEXT_WIDTH_LEAST = 20, TEXT_WIDTH_DEFAULT = 80 };

/* width: columns; anything under TEXT_WIDTH_LEAST counts as TEXT_WIDTH_LEAST. ascii: no byte above 0x7e. */
struct text_style {
    int width;
    bool ascii, colour;
};

/* No line is wider than the style's width unless a single word is; no line ends in a blank; the text ends in one line
 * feed. An empty page prints nothing. Control characters in texts are made visible. */
void text_page_print(const struct page *page, FILE *stream, const struct text_style *style);

#endif
