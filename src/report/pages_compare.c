/* The page of compare. */
#include <math.h>

#include "report/pages.h"
#include "report/phrase.h"

static void bullets(struct page *page, const char *heading, const struct texts *texts)
{
    if (!texts->count)
        return;
    page_heading(page, 3, "%s", heading);
    for (size_t i = 0; i < texts->count; i++)
        page_bullet(page, "%s", texts->at[i]);
}

static void bands_figure(struct page *page, const struct comparison *comparison)
{
    const struct compared_bands *bands = comparison->bands;
    int count = 0;
    for (size_t i = 0; i < bands->frequency_Hz.count; i++)
        count += !isnan(bands->measured_dB.at[i]);
    struct page_figure *figure = page_figure(page, "measured", "predicted", "dB", count);
    for (size_t i = 0, at = 0; i < bands->frequency_Hz.count; i++) {
        if (isnan(bands->measured_dB.at[i]))
            continue;
        figure->label[at] = phrase_short(page->arena, bands->frequency_Hz.at[i], "Hz");
        figure->value[at] = bands->measured_dB.at[i];
        figure->mark[at++] = bands->predicted_dB.at[i];
    }
}

static void explanations_table(struct page *page, const struct comparison *comparison)
{
    static const char *const headings[] = {"explanation", "size", "left over dB", "weight"};
    static const bool right[] = {false, false, true, true};
    struct arena *arena = page->arena;
    const struct explanation *row = comparison->explanations.at;
    struct page_table *table = page_table(page, 4, headings, right);
    for (size_t i = 0; i < comparison->explanations.count; i++) {
        const char *size =
            isnan(row[i].size)
                ? ""
                : arena_printf(arena, "%s %s", row[i].size_is ? row[i].size_is : "",
                               phrase_fixed(arena, row[i].size, 2, row[i].size_unit ? row[i].size_unit : ""));
        const char *cells[] = {row[i].cause, size, phrase_fixed(arena, row[i].residual_dB, 1, ""),
                               phrase_fixed(arena, row[i].weight, 2, "")};
        page_row(table, cells);
    }
}

void page_of_comparison(struct page *page, const char *room, const struct comparison *comparison)
{
    struct arena *arena = page->arena;
    page_heading(page, 1, "%s", room);
    struct page_facts *facts = page_facts_begin(page);
    page_fact(facts, "measured", phrase_dB(arena, comparison->measured_w_dB), "%d dB in whole dB",
              comparison->measured_whole_dB);
    page_fact(facts, "predicted", phrase_dB(arena, comparison->predicted_w_dB),
              "from its bands; the formula of predict may differ by about 1 dB");
    page_fact(facts, "difference", phrase_dB(arena, comparison->difference_w_dB), "measured less predicted");
    page_paragraph(page, "Finding: %s Confidence %s (%s of 1).", comparison->finding_in_words,
                   comparison->confidence_in_words, phrase_fixed(arena, comparison->confidence, 2, ""));
    bullets(page, "Evidence", &comparison->evidence);
    bullets(page, "Inspect first", &comparison->inspect_first);
    bullets(page, "Readings that would decide", &comparison->deciding_readings);
    bands_figure(page, comparison);
    explanations_table(page, comparison);
    page_paragraph(page, "A finding says where to look first; it is no proof. Open nothing up before that look.");
}
