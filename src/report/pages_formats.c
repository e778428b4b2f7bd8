/* The page of the file formats: every key, from the field tables. */
#include <math.h>

#include "report/pages.h"
#include "report/phrase.h"

static const char *range_of(struct arena *arena, const struct field *field)
{
    if (field->kind == FIELD_CHOICE) {
        const char *all = "";
        for (int i = 0; field->names[i]; i++)
            all = arena_printf(arena, "%s%s%s", all, i ? ", " : "", field->names[i]);
        return all;
    }
    if (field->record)
        return arena_printf(arena, "%s%s", field->kind == FIELD_OBJECTS ? "list of: " : "", field->record->name);
    if (field->kind != FIELD_NUMBER && field->kind != FIELD_NUMBERS)
        return field->kind == FIELD_FLAG ? "true, false" : field->kind == FIELD_TEXTS ? "list of text" : "text";
    if (isinf(field->highest))
        return arena_printf(arena, "%s %s", field->above ? "above" : "from",
                            phrase_short(arena, field->lowest, field->unit));
    return arena_printf(arena, "%s%s to %s", field->above ? "above " : "", phrase_short(arena, field->lowest, ""),
                        phrase_short(arena, field->highest, field->unit));
}

static const char *default_of(struct arena *arena, const struct field *field)
{
    if (field->required)
        return "required";
    if (field->kind == FIELD_CHOICE && !isnan(field->otherwise))
        return field->names[(int)field->otherwise];
    if (field->kind == FIELD_NUMBER && !isnan(field->otherwise))
        return phrase_short(arena, field->otherwise, "");
    return "";
}

void page_of_formats(struct page *page, const struct format *const format[], int count)
{
    static const char *const headings[] = {"key", "values", "default", "meaning"};
    for (int i = 0; i < count; i++) {
        const struct record *record[32];
        int records = format_records(format[i], record, 32);
        page_heading(page, 1, "underscreed-%s/1", format[i]->family);
        for (int j = 0; j < records; j++) {
            page_heading(page, 2, "%s", record[j]->name);
            struct page_table *table = page_table(page, 4, headings, NULL);
            for (size_t k = 0; k < record[j]->field_count; k++) {
                const struct field *field = &record[j]->fields[k];
                const char *cells[] = {field->key, range_of(page->arena, field), default_of(page->arena, field),
                                       field->heading};
                page_row(table, cells);
            }
        }
    }
    page_paragraph(page, "Every object may also carry \"note\", a text for people.");
}
