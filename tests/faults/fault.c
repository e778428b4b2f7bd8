/* Preloaded into the program by faults.test: makes one chosen call fail.
 *
 *     FAULT_MALLOC=n        the n-th request for memory fails
 *     FAULT_MALLOC_FROM=n   the n-th and every later one
 *     FAULT_MALLOC_COUNT=f  none; their number is written to the file f
 *     FAULT_CALL=name       the call of that name (fflush, mkstemp, fchmod, rename, read) fails
 *     FAULT_ERRNO=number    with this errno
 */
#include <dlfcn.h>
#include <errno.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* The C library's own, under names that need no look-up: dlsym() itself asks for memory. */
void *__libc_malloc(size_t size);
void *__libc_calloc(size_t count, size_t size);
void *__libc_realloc(void *memory, size_t size);

static unsigned long requests, failing, failing_from;
static const char *count_file, *failing_call;
static int call_errno;

static unsigned long number_of(const char *name)
{
    const char *text = getenv(name);
    return text ? strtoul(text, NULL, 10) : 0;
}

/* Only what is asked for after the start of the program counts. */
__attribute__((constructor)) static void read_environment(void)
{
    failing = number_of("FAULT_MALLOC");
    failing_from = number_of("FAULT_MALLOC_FROM");
    count_file = getenv("FAULT_MALLOC_COUNT");
    failing_call = getenv("FAULT_CALL");
    call_errno = (int)number_of("FAULT_ERRNO");
    requests = 0;
}

__attribute__((destructor)) static void tell_count(void)
{
    unsigned long const count = requests;
    FILE *file = count_file ? fopen(count_file, "w") : NULL;
    if (!file)
        return;
    fprintf(file, "%lu\n", count);
    fclose(file);
}

static bool refused(void)
{
    unsigned long const number = ++requests;
    bool const refuse = (failing && number == failing) || (failing_from && number >= failing_from);
    if (refuse)
        errno = ENOMEM;
    return refuse;
}

void *malloc(size_t size)
{
    return refused() ? NULL : __libc_malloc(size);
}

void *calloc(size_t count, size_t size)
{
    return refused() ? NULL : __libc_calloc(count, size);
}

void *realloc(void *memory, size_t size)
{
    return refused() ? NULL : __libc_realloc(memory, size);
}

static bool fails(const char *name)
{
    if (!failing_call || strcmp(failing_call, name) != 0)
        return false;
    errno = call_errno;
    return true;
}

/* The call that this file stands in front of. */
#define REAL(NAME) ((__typeof__(&NAME))dlsym(RTLD_NEXT, #NAME))

int fflush(FILE *stream)
{
    return stream != stderr && fails("fflush") ? EOF : REAL(fflush)(stream);
}

int mkstemp(char *name)
{
    return fails("mkstemp") ? -1 : REAL(mkstemp)(name);
}

int fchmod(int descriptor, mode_t mode)
{
    return fails("fchmod") ? -1 : REAL(fchmod)(descriptor, mode);
}

int rename(const char *old, const char *new)
{
    return fails("rename") ? -1 : REAL(rename)(old, new);
}

ssize_t read(int descriptor, void *memory, size_t size)
{
    return fails("read") ? -1 : REAL(read)(descriptor, memory, size);
}
