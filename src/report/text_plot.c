/* Values against marks, drawn with signs. */
#include "report/text_plot.h"

#include <math.h>
#include <string.h>

#include "base/number.h"
#include "base/text.h"

/* label, blank, value of 6 columns, two blanks: what stands left of the scale beside the label. */
enum { LEFT_OF_SCALE = 9, SCALE_LEAST = 10, ROUND_TO = 5 };

void text_plot_scale(struct plot *plot, const struct page_figure *figure, int width, bool ascii)
{
    double low = INFINITY, high = -INFINITY;
    *plot = (struct plot){.ascii = ascii};
    for (int i = 0; i < figure->count; i++) {
        int const label = text_width(figure->label[i]);
        low = fmin(low, fmin(figure->value[i], figure->mark[i]));
        high = fmax(high, fmax(figure->value[i], figure->mark[i]));
        if (label > plot->label_width)
            plot->label_width = label;
    }
    plot->low = floor(low / ROUND_TO) * ROUND_TO;
    plot->high = ceil(high / ROUND_TO) * ROUND_TO;
    if (plot->high <= plot->low)
        plot->high = plot->low + ROUND_TO;
    plot->columns = width - plot->label_width - LEFT_OF_SCALE;
    if (plot->columns < SCALE_LEAST)
        plot->columns = SCALE_LEAST;
}

static int column_of(const struct plot *plot, double value)
{
    return (int)lround((value - plot->low) / (plot->high - plot->low) * (plot->columns - 1));
}

const char *text_plot_head(const struct plot *plot, const struct page_figure *figure, struct arena *arena)
{
    char low[NUMBER_TEXT], high[NUMBER_TEXT];
    number_short(plot->low, 0, low);
    number_short(plot->high, 0, high);
    const char *legend = arena_printf(arena, "%s  %s %s%s%s", low, plot->ascii ? "o" : "●", figure->value_name,
                                      *figure->mark_name ? ", | " : "", figure->mark_name);
    int const used = text_width(legend), right = (int)strlen(high);
    if (used + right + 1 > plot->columns)
        legend = low;
    return arena_printf(arena, "%*s%s%*s", plot->label_width + LEFT_OF_SCALE, "", legend,
                        plot->columns - text_width(legend), high);
}

const char *text_plot_line(const struct plot *plot, const struct page_figure *figure, int i, struct arena *arena)
{
    char number[NUMBER_TEXT];
    bool const marked = !isnan(figure->mark[i]);
    int const at = column_of(plot, figure->value[i]), mark = marked ? column_of(plot, figure->mark[i]) : at;
    int const last = mark > at ? mark : at;
    const char *line = arena_printf(arena, "%*s%s %6s  ", plot->label_width - text_width(figure->label[i]), "",
                                    figure->label[i], number_fixed(figure->value[i], 1, number));
    for (int column = 0; column <= last; column++) {
        const char *sign = " ";
        if (column == at)
            sign = plot->ascii ? "o" : "●";
        else if (marked && column == mark)
            sign = "|";
        else if (column > mark && column < at)
            sign = plot->ascii ? "=" : "━";
        line = arena_printf(arena, "%s%s", line, sign);
    }
    return line;
}
