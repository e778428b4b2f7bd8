#include "base/problem.h"

#include <string.h>

enum { NAME_LONGEST = 80 };

static size_t least(size_t a, size_t b)
{
    return a < b ? a : b;
}

/* Optimal string alignment distance: insertions, deletions, replacements and swaps of neighbours, in bytes. */
static size_t distance(const char *a, size_t a_length, const char *b, size_t b_length)
{
    size_t rows[3][NAME_LONGEST + 1];
    size_t *before = rows[0], *above = rows[1], *row = rows[2];
    for (size_t j = 0; j <= b_length; j++)
        above[j] = j;
    for (size_t i = 1; i <= a_length; i++) {
        row[0] = i;
        for (size_t j = 1; j <= b_length; j++) {
            size_t const other = a[i - 1] != b[j - 1];
            row[j] = least(least(above[j] + 1, row[j - 1] + 1), above[j - 1] + other);
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                row[j] = least(row[j], before[j - 2] + other);
        }
        size_t *free_row = before;
        before = above;
        above = row;
        row = free_row;
    }
    return above[b_length];
}

const char *nearest_name(const char *name, const char *const known[], size_t known_count)
{
    size_t const length = strlen(name);
    const char *nearest = NULL;
    size_t nearest_distance = 0;
    if (length > NAME_LONGEST)
        return NULL;
    for (size_t i = 0; i < known_count; i++) {
        size_t const known_length = strlen(known[i]);
        if (known_length > NAME_LONGEST)
            continue;
        size_t const wrong = distance(name, length, known[i], known_length);
        size_t const longer = length > known_length ? length : known_length;
        if (3 * wrong <= longer && (!nearest || wrong < nearest_distance)) {
            nearest = known[i];
            nearest_distance = wrong;
        }
    }
    return nearest;
}
