#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/file.h"

#include "../suites.h"

static char folder[64];
static char path[80], other[80];
static struct arena *arena;

static void memory_ended(void *context)
{
    (void)context;
    abort();
}

static void set_up(void)
{
    strcpy(folder, "file_test.XXXXXX");
    ck_assert_ptr_nonnull(mkdtemp(folder));
    snprintf(path, sizeof path, "%s/result", folder);
    snprintf(other, sizeof other, "%s/other", folder);
    arena = arena_new(memory_ended, NULL);
}

/* The folder must hold nothing but the two names: no temporary file may be left. */
static void tear_down(void)
{
    arena_release(arena);
    unlink(path);
    unlink(other);
    ck_assert_int_eq(rmdir(folder), 0);
}

static void write_file(const char *name, const char *text)
{
    FILE *file = fopen(name, "w");
    ck_assert_ptr_nonnull(file);
    fputs(text, file);
    ck_assert_int_eq(fclose(file), 0);
}

static void assert_content(const char *name, const char *expected)
{
    size_t length = 0;
    char *text = file_read_whole(arena, name, &length);
    ck_assert_ptr_nonnull(text);
    ck_assert_str_eq(text, expected);
    ck_assert_uint_eq(length, strlen(expected));
}

static unsigned mode_of(const char *name)
{
    struct stat status;
    ck_assert_int_eq(stat(name, &status), 0);
    return status.st_mode & 07777;
}

START_TEST(new_file_appears_when_complete)
{
    struct output output;
    umask(027);
    ck_assert_int_eq(output_open(&output, path), 0);
    fputs("42\n", output.stream);
    ck_assert_int_eq(access(path, F_OK), -1);
    ck_assert_int_eq(output_complete(&output), 0);
    assert_content(path, "42\n");
    ck_assert_uint_eq(mode_of(path), 0640);
    output_abandon(&output); /* too late to harm */
    assert_content(path, "42\n");
}
END_TEST

START_TEST(abandoned_file_is_untouched)
{
    struct output output;
    write_file(path, "old\n");
    ck_assert_int_eq(output_open(&output, path), 0);
    fputs("new\n", output.stream);
    output_abandon(&output);
    output_abandon(&output);
    assert_content(path, "old\n");
    ck_assert_int_eq(output_complete(&output), -1); /* nothing is left to rename */
    assert_content(path, "old\n");
}
END_TEST

START_TEST(replaced_file_keeps_its_mode)
{
    struct output output;
    write_file(path, "old\n");
    ck_assert_int_eq(chmod(path, 0604), 0);
    ck_assert_int_eq(output_open(&output, path), 0);
    fputs("new\n", output.stream);
    ck_assert_int_eq(output_complete(&output), 0);
    assert_content(path, "new\n");
    ck_assert_uint_eq(mode_of(path), 0604);
}
END_TEST

/* _i: whether the link's target exists already. */
START_TEST(link_stays_and_its_target_is_replaced)
{
    struct output output;
    struct stat status;
    if (_i)
        write_file(other, "old\n");
    ck_assert_int_eq(symlink("other", path), 0);
    ck_assert_int_eq(output_open(&output, path), 0);
    fputs("new\n", output.stream);
    ck_assert_int_eq(output_complete(&output), 0);
    assert_content(other, "new\n");
    ck_assert_int_eq(lstat(path, &status), 0);
    ck_assert(S_ISLNK(status.st_mode));
}
END_TEST

START_TEST(link_to_itself_is_refused)
{
    struct output output;
    ck_assert_int_eq(symlink("result", path), 0);
    ck_assert_int_eq(output_open(&output, path), -1);
    ck_assert_int_eq(errno, ELOOP);
}
END_TEST

/* _i: bytes written; more than a buffer, so that an earlier write fails and not the last flush. */
START_TEST(full_device_is_an_error)
{
    struct output output;
    if (access("/dev/full", W_OK) != 0)
        return;
    ck_assert_int_eq(output_open(&output, "/dev/full"), 0);
    for (int i = 0; i < _i; i++)
        fputc('x', output.stream);
    ck_assert_int_eq(output_complete(&output), -1);
    ck_assert_int_eq(errno, ENOSPC);
    ck_assert_int_eq(access("/dev/full", F_OK), 0);
}
END_TEST

START_TEST(fifo_is_written_directly)
{
    struct output output;
    char got[8] = "";
    ck_assert_int_eq(mkfifo(path, 0600), 0);
    FILE *reader = fopen(path, "r+"); /* a writer too, so that opening does not wait */
    ck_assert_ptr_nonnull(reader);
    ck_assert_int_eq(output_open(&output, path), 0);
    fputs("hi\n", output.stream);
    ck_assert_int_eq(output_complete(&output), 0);
    ck_assert_ptr_nonnull(fgets(got, sizeof got, reader));
    ck_assert_str_eq(got, "hi\n");
    fclose(reader);
}
END_TEST

START_TEST(impossible_targets_name_the_reason)
{
    struct output output;
    ck_assert_int_eq(output_open(&output, folder), -1);
    ck_assert_int_eq(errno, EISDIR);
    ck_assert_int_eq(output_open(&output, "no-such-folder/result"), -1);
    ck_assert_int_eq(errno, ENOENT);
    ck_assert_int_eq(output_open(&output, ""), -1);
    ck_assert_int_eq(errno, ENOENT);
}
END_TEST

START_TEST(unreadable_inputs_name_the_reason)
{
    size_t length;
    ck_assert_ptr_null(file_read_whole(arena, folder, &length));
    ck_assert_int_eq(errno, EISDIR);
    ck_assert_ptr_null(file_read_whole(arena, path, &length));
    ck_assert_int_eq(errno, ENOENT);
    write_file(path, "");
    ck_assert_int_eq(truncate(path, (off_t)FILE_INPUT_MOST_MB * 1024 * 1024 + 1), 0);
    ck_assert_ptr_null(file_read_whole(arena, path, &length));
    ck_assert_int_eq(errno, EFBIG);
}
END_TEST

/* A pipe gives no size; 300 000 bytes make the buffer grow several times. */
START_TEST(pipe_is_read_whole_as_standard_input)
{
    enum { BYTES = 300000 };
    int ends[2];
    ck_assert_int_eq(pipe(ends), 0);
    pid_t const child = fork();
    ck_assert_int_ge(child, 0);
    if (child == 0) {
        FILE *stream = fdopen(ends[1], "w");
        for (int i = 0; i < BYTES; i++)
            fputc('a' + i % 26, stream);
        fflush(stream);
        _exit(0);
    }
    close(ends[1]);
    ck_assert_int_eq(dup2(ends[0], STDIN_FILENO), STDIN_FILENO);
    close(ends[0]);
    size_t length = 0;
    char *text = file_read_whole(arena, "-", &length);
    ck_assert_ptr_nonnull(text);
    ck_assert_uint_eq(length, BYTES);
    for (int i = 0; i < BYTES; i++)
        ck_assert_int_eq(text[i], 'a' + i % 26);
    ck_assert_int_eq(text[BYTES], '\0');
}
END_TEST

START_TEST(empty_file_is_an_empty_text)
{
    write_file(path, "");
    assert_content(path, "");
}
END_TEST

Suite *file_suite(void)
{
    Suite *suite = suite_create("file");
    TCase *tests = tcase_create("file");
    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, new_file_appears_when_complete);
    tcase_add_test(tests, abandoned_file_is_untouched);
    tcase_add_test(tests, replaced_file_keeps_its_mode);
    tcase_add_loop_test(tests, link_stays_and_its_target_is_replaced, 0, 2);
    tcase_add_test(tests, link_to_itself_is_refused);
    tcase_add_loop_test(tests, full_device_is_an_error, 1, 2);
    tcase_add_loop_test(tests, full_device_is_an_error, 100000, 100001);
    tcase_add_test(tests, fifo_is_written_directly);
    tcase_add_test(tests, impossible_targets_name_the_reason);
    tcase_add_test(tests, unreadable_inputs_name_the_reason);
    tcase_add_test(tests, pipe_is_read_whole_as_standard_input);
    tcase_add_test(tests, empty_file_is_an_empty_text);
    suite_add_tcase(suite, tests);
    return suite;
}
