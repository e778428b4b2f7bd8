#include "base/arena.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#if defined(__SANITIZE_ADDRESS__)
#define ARENA_PIECEWISE 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define ARENA_PIECEWISE 1
#endif
#endif
#ifndef ARENA_PIECEWISE
#define ARENA_PIECEWISE 0
#endif

enum { FIRST_BLOCK_BYTES = 16 * 1024, LARGEST_BLOCK_BYTES = 4 * 1024 * 1024, FIRST_ROOM = 8 };

struct block {
    struct block *next;
    size_t room, used;
    _Alignas(max_align_t) unsigned char start[];
};

struct arena {
    struct block *blocks; /* the first one is being filled */
    size_t next_block_bytes;
    void (*exhausted)(void *context);
    void *context;
};

static void give_up(const struct arena *arena)
{
    arena->exhausted(arena->context);
    abort(); /* the handler broke its promise not to return */
}

struct arena *arena_new(void (*exhausted)(void *context), void *context)
{
    struct arena *arena = calloc(1, sizeof *arena);
    if (!arena) {
        exhausted(context);
        return NULL;
    }
    arena->next_block_bytes = FIRST_BLOCK_BYTES;
    arena->exhausted = exhausted;
    arena->context = context;
    return arena;
}

void arena_release(struct arena *arena)
{
    if (!arena)
        return;
    for (struct block *block = arena->blocks, *next; block; block = next) {
        next = block->next;
        free(block);
    }
    free(arena);
}

static struct block *block_new(struct arena *arena, size_t room)
{
    struct block *block = calloc(1, sizeof *block + room);
    if (!block)
        give_up(arena);
    block->room = room;
    return block;
}

/* A request too large for a common block: its own, put behind the one being filled so that its rest stays in use. */
static void *take_alone(struct arena *arena, size_t size)
{
    struct block *block = block_new(arena, size);
    block->used = size;
    if (arena->blocks && !ARENA_PIECEWISE) {
        block->next = arena->blocks->next;
        arena->blocks->next = block;
    } else {
        block->next = arena->blocks;
        arena->blocks = block;
    }
    return block->start;
}

void *arena_take(struct arena *arena, size_t size)
{
    if (size > PTRDIFF_MAX / 2)
        give_up(arena);
    if (ARENA_PIECEWISE)
        return take_alone(arena, size);
    size_t const step = _Alignof(max_align_t);
    size = size == 0 ? step : (size + step - 1) / step * step;
    if (size > arena->next_block_bytes / 4)
        return take_alone(arena, size);
    struct block *block = arena->blocks;
    if (!block || block->room - block->used < size) {
        block = block_new(arena, arena->next_block_bytes);
        block->next = arena->blocks;
        arena->blocks = block;
        if (arena->next_block_bytes < LARGEST_BLOCK_BYTES)
            arena->next_block_bytes *= 2;
    }
    void *taken = block->start + block->used;
    block->used += size;
    return taken;
}

void *arena_take_many(struct arena *arena, size_t count, size_t size)
{
    if (size != 0 && count > SIZE_MAX / size)
        give_up(arena);
    return arena_take(arena, count * size);
}

void *arena_grow(struct arena *arena, const void *old, size_t old_count, size_t *room, size_t size)
{
    if (old_count > SIZE_MAX / 2)
        give_up(arena);
    size_t const larger = old_count < FIRST_ROOM / 2 ? FIRST_ROOM : 2 * old_count;
    void *fresh = arena_take_many(arena, larger, size);
    if (old_count > 0)
        memcpy(fresh, old, old_count * size);
    *room = larger;
    return fresh;
}

char *arena_text(struct arena *arena, const char *text)
{
    return arena_text_of(arena, text, strlen(text));
}

char *arena_text_of(struct arena *arena, const char *bytes, size_t length)
{
    char *copy = arena_take_many(arena, length + 1, 1);
    if (length > 0)
        memcpy(copy, bytes, length);
    return copy;
}

char *arena_vprintf(struct arena *arena, const char *format, va_list given)
{
    va_list again;
    va_copy(again, given);
    int const length = vsnprintf(NULL, 0, format, given);
    if (length < 0) /* longer than INT_MAX, or no memory inside the C library */
        give_up(arena);
    char *text = arena_take(arena, (size_t)length + 1);
    vsnprintf(text, (size_t)length + 1, format, again);
    va_end(again);
    return text;
}

char *arena_printf(struct arena *arena, const char *format, ...)
{
    va_list given;
    va_start(given, format);
    char *text = arena_vprintf(arena, format, given);
    va_end(given);
    return text;
}
