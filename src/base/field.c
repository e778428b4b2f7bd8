#include "base/field.h"

#include <string.h>

static int whole_default(const struct field *field, int absent)
{
    return isnan(field->otherwise) ? absent : (int)field->otherwise;
}

void record_defaults(const struct record *record, void *thing)
{
    memset(thing, 0, record->size); /* texts, objects and lists are absent, answers ANSWER_NONE */
    for (size_t i = 0; i < record->field_count; i++) {
        const struct field *field = &record->fields[i];
        void *member = (char *)thing + field->offset;
        switch (field->kind) {
        case FIELD_NUMBER:
            *(double *)member = field->otherwise;
            break;
        case FIELD_INTEGER:
            *(int *)member = whole_default(field, 0);
            break;
        case FIELD_FLAG:
            *(bool *)member = whole_default(field, 0) != 0;
            break;
        case FIELD_CHOICE:
            *(int *)member = whole_default(field, -1);
            break;
        case FIELD_ANSWER:
        case FIELD_TEXT:
        case FIELD_NUMBERS:
        case FIELD_TEXTS:
        case FIELD_OBJECT:
        case FIELD_OBJECTS:
            break;
        }
    }
}

const struct field *record_field(const struct record *record, const char *key)
{
    for (size_t i = 0; i < record->field_count; i++)
        if (strcmp(record->fields[i].key, key) == 0)
            return &record->fields[i];
    return NULL;
}
