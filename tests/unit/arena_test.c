#include <setjmp.h>
#include <stdint.h>
#include <string.h>

#include "base/arena.h"

#include "../suites.h"

static void jump_out(void *context)
{
    longjmp(*(jmp_buf *)context, 1);
}

static jmp_buf unexpected;

static struct arena *new_arena(void)
{
    if (setjmp(unexpected) != 0)
        ck_abort_msg("memory ended");
    return arena_new(jump_out, &unexpected);
}

START_TEST(pieces_are_zeroed_aligned_and_apart)
{
    struct arena *arena = new_arena();
    unsigned char *before = NULL;
    size_t size_before = 0;
    for (size_t size = 0; size < 30000; size = size * 3 / 2 + 1) {
        unsigned char *piece = arena_take(arena, size);
        ck_assert_uint_eq((uintptr_t)piece % _Alignof(max_align_t), 0);
        for (size_t i = 0; i < size; i++)
            ck_assert_uint_eq(piece[i], 0);
        memset(piece, 0xa5, size);
        for (size_t i = 0; i < size_before; i++)
            ck_assert_uint_eq(before[i], 0xa5);
        ck_assert_ptr_ne(piece, before);
        before = piece;
        size_before = size;
    }
    arena_release(arena);
}
END_TEST

START_TEST(list_grows_with_its_content)
{
    struct arena *arena = new_arena();
    int *list = NULL;
    size_t room = 0, growths = 0;
    for (size_t count = 0; count < 10000; count++) {
        if (count == room) {
            list = arena_grow(arena, list, count, &room, sizeof *list);
            ck_assert_uint_ge(room, 2 * count);
            growths++;
        }
        list[count] = (int)count;
    }
    for (int i = 0; i < 10000; i++)
        ck_assert_int_eq(list[i], i);
    ck_assert_uint_le(growths, 16);
    arena_release(arena);
}
END_TEST

START_TEST(product_that_overflows_is_exhaustion)
{
    jmp_buf out;
    struct arena *volatile arena = arena_new(jump_out, &out);
    if (setjmp(out) == 0) {
        arena_take_many(arena, SIZE_MAX / 2, 3);
        ck_abort_msg("the overflow was not seen");
    }
    if (setjmp(out) == 0) {
        arena_take(arena, SIZE_MAX);
        ck_abort_msg("the size was granted");
    }
    strcpy(arena_take(arena, 3), "ok"); /* still in use */
    arena_release(arena);
}
END_TEST

START_TEST(texts_are_copied)
{
    struct arena *arena = new_arena();
    char text[] = "screed";
    char *copy = arena_text(arena, text), *part = arena_text_of(arena, text, 3);
    text[0] = 'X';
    ck_assert_str_eq(copy, "screed");
    ck_assert_str_eq(part, "scr");
    char *printed = arena_printf(arena, "%0*d|%s", 3000, 7, "end");
    ck_assert_uint_eq(strlen(printed), 3004);
    ck_assert_str_eq(printed + 2999, "7|end");
    arena_release(arena);
}
END_TEST

Suite *arena_suite(void)
{
    Suite *suite = suite_create("arena");
    TCase *tests = tcase_create("arena");
    tcase_add_test(tests, pieces_are_zeroed_aligned_and_apart);
    tcase_add_test(tests, list_grows_with_its_content);
    tcase_add_test(tests, product_that_overflows_is_exhaustion);
    tcase_add_test(tests, texts_are_copied);
    suite_add_tcase(suite, tests);
    return suite;
}
