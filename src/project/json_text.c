/* JSON text taken apart without a tree. */
#include "project/json_text.h"

#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

size_t json_text_blank(const char *text, size_t length, size_t at)
{
    while (at < length && (text[at] == ' ' || text[at] == '\t' || text[at] == '\n' || text[at] == '\r'))
        at++;
    return at;
}

static size_t skip_string(const char *text, size_t length, size_t at)
{
    for (at++; at < length && text[at] != '"'; at++)
        if (text[at] == '\\')
            at++;
    return at < length ? at + 1 : length;
}

size_t json_text_skip(const char *text, size_t length, size_t at)
{
    size_t depth = 0;
    do {
        char c = at < length ? text[at] : '\0';
        if (at >= length)
            return length;
        if (c == '"') {
            at = skip_string(text, length, at);
            continue;
        }
        if (c == '{' || c == '[')
            depth++;
        else if ((c == '}' || c == ']') && depth > 0)
            depth--;
        else if (depth == 0) {
            while (at < length && !strchr(",]} \t\r\n", text[at]))
                at++;
            return at;
        }
        at++;
    } while (depth > 0);
    return at;
}

int json_walk_next(struct json_walk *walk, struct json_piece *piece)
{
    const char *text = walk->text;
    bool object, first = !walk->begun;
    size_t open = walk->at;
    if (first)
        walk->begun = text[open] == '{' ? 1 : 2;
    object = walk->begun == 1;
    walk->at = json_text_blank(text, walk->length, first ? open + 1 : open);
    if (walk->at < walk->length && text[walk->at] == (object ? '}' : ']')) {
        walk->at++;
        return 0;
    }
    if (!first) {
        if (walk->at >= walk->length || text[walk->at] != ',')
            return -1;
        walk->at = json_text_blank(text, walk->length, walk->at + 1);
    }
    piece->key = piece->key_end = walk->at;
    if (object) {
        if (walk->at >= walk->length || text[walk->at] != '"')
            return -1;
        size_t end = skip_string(text, walk->length, walk->at);
        piece->key = walk->at + 1;
        piece->key_end = end - 1;
        walk->at = json_text_blank(text, walk->length, end);
        if (walk->at >= walk->length || text[walk->at] != ':')
            return -1;
        walk->at = json_text_blank(text, walk->length, walk->at + 1);
    }
    piece->value = walk->at;
    piece->value_end = walk->at = json_text_skip(text, walk->length, walk->at);
    return piece->value_end > piece->value ? 1 : -1;
}

void json_text_position(const char *text, size_t offset, int *line, int *column)
{
    *line = *column = 1;
    for (size_t i = 0; i < offset && text[i]; i++) {
        if (text[i] == '\n') {
            ++*line;
            *column = 1;
        } else if (((unsigned char)text[i] & 0xc0) != 0x80) {
            ++*column;
        }
    }
}

/* The next step of a path: a key up to '.' or '[', or an index. Returns the rest of the path. */
static const char *path_step(const char *path, const char **key, size_t *key_length, size_t *index)
{
    if (*path == '[') {
        char *end;
        *key = NULL;
        *key_length = 0;
        *index = strtoul(path + 1, &end, 10);
        return *end == ']' ? end + 1 : end;
    }
    if (*path == '.')
        path++;
    *key = path;
    *key_length = strcspn(path, ".[");
    *index = 0;
    return path + *key_length;
}

size_t json_text_find(const char *text, size_t length, const char *path)
{
    size_t at = json_text_blank(text, length, 0);
    while (*path && at < length && (text[at] == '{' || text[at] == '[')) {
        const char *key;
        size_t key_length, index, i = 0, found = length;
        struct json_walk walk = {text, length, at, 0};
        struct json_piece piece;
        path = path_step(path, &key, &key_length, &index);
        for (; json_walk_next(&walk, &piece) == 1; i++) {
            bool here = key ? piece.key_end - piece.key == key_length && !memcmp(text + piece.key, key, key_length)
                            : i == index;
            if (here) {
                found = piece.value;
                break;
            }
        }
        if (found == length)
            return at;
        at = found;
    }
    return at < length ? at : (length ? length - 1 : 0);
}
