/* A figure of values against marks as lines of text: one row a label, the level to the right. */
#ifndef USC_REPORT_TEXT_PLOT_H
#define USC_REPORT_TEXT_PLOT_H

#include "base/arena.h"
#include "report/page.h"

struct plot {
    double low, high; /* ends of the scale */
    int columns, label_width;
    bool ascii;
};

/* Chooses ends of the scale at round values round everything in the figure. width: columns of a whole line. */
void text_plot_scale(struct plot *plot, const struct page_figure *figure, int width, bool ascii);
/* The line above: what the signs are, and the ends of the scale. */
const char *text_plot_head(const struct plot *plot, const struct page_figure *figure, struct arena *arena);
/* Row i: label, value, and the two on the scale, the excess of the value filled in. No trailing blanks. */
const char *text_plot_line(const struct plot *plot, const struct page_figure *figure, int i, struct arena *arena);

#endif
