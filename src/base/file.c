#include "base/file.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { FIRST_READ_BYTES = 64 * 1024, LINKS_MOST = 40 };

static const size_t INPUT_MOST_BYTES = (size_t)FILE_INPUT_MOST_MB * 1024 * 1024;

/* Reads to the end; room_bytes is a guess that spares growing when it is right. */
static char *read_to_end(struct arena *arena, int descriptor, size_t room, size_t *length)
{
    char *text = arena_take(arena, room);
    size_t used = 0;
    for (;;) {
        if (used + 1 >= room) /* one byte is kept for the NUL */
            text = arena_grow(arena, text, used, &room, 1);
        ssize_t const got = read(descriptor, text + used, room - used - 1);
        if (got < 0 && errno == EINTR)
            continue;
        if (got < 0)
            return NULL;
        if (got == 0)
            break;
        used += (size_t)got;
        if (used > INPUT_MOST_BYTES) {
            errno = EFBIG;
            return NULL;
        }
    }
    text[used] = '\0';
    *length = used;
    return text;
}

static char *read_descriptor(struct arena *arena, int descriptor, size_t *length)
{
    struct stat status;
    if (fstat(descriptor, &status) != 0)
        return NULL;
    if (S_ISDIR(status.st_mode)) {
        errno = EISDIR;
        return NULL;
    }
    size_t room = FIRST_READ_BYTES;
    if (S_ISREG(status.st_mode) && status.st_size > 0) {
        if ((unsigned long long)status.st_size > INPUT_MOST_BYTES) {
            errno = EFBIG;
            return NULL;
        }
        room = (size_t)status.st_size + 2; /* the NUL, and a byte that lets read() report the end */
    }
    return read_to_end(arena, descriptor, room, length);
}

char *file_read_whole(struct arena *arena, const char *name, size_t *length)
{
    if (strcmp(name, "-") == 0)
        return read_descriptor(arena, STDIN_FILENO, length);
    int const descriptor = open(name, O_RDONLY | O_CLOEXEC);
    if (descriptor < 0)
        return NULL;
    char *text = read_descriptor(arena, descriptor, length);
    int const error = errno;
    close(descriptor);
    errno = error;
    return text;
}

/* The folder part of name with its slash ("" when none), followed by tail. malloc'd, NULL without memory. */
static char *beside(const char *name, const char *tail)
{
    const char *slash = strrchr(name, '/');
    size_t const folder = slash ? (size_t)(slash - name) + 1 : 0;
    char *joined = malloc(folder + strlen(tail) + 1);
    if (joined) {
        memcpy(joined, name, folder);
        strcpy(joined + folder, tail);
    }
    return joined;
}

/* Follows the links that the last component of name may be, also to a file that does not exist yet (where realpath()
 * gives up). malloc'd, NULL with errno set. */
static char *resolve_links(const char *name)
{
    char *resolved = strdup(name);
    for (int links = 0; resolved; links++) {
        char link[PATH_MAX + 1];
        ssize_t const got = readlink(resolved, link, PATH_MAX);
        if (got < 0)
            return resolved; /* not a link, or not there: the next system call tells */
        if (links == LINKS_MOST) {
            free(resolved);
            errno = ELOOP;
            return NULL;
        }
        link[got] = '\0';
        char *next = link[0] == '/' ? strdup(link) : beside(resolved, link);
        free(resolved);
        resolved = next;
    }
    return NULL;
}

static mode_t new_file_mode(void)
{
    mode_t const mask = umask(0);
    umask(mask);
    return 0666 & ~mask;
}

static void forget_names(struct output *output)
{
    char *target = output->target, *temporary = output->temporary;
    output->target = output->temporary = NULL; /* before free(): a signal handler may look */
    free(target);
    free(temporary);
}

static int open_temporary(struct output *output, mode_t mode)
{
    output->temporary = beside(output->target, ".underscreed-XXXXXX");
    if (!output->temporary)
        return -1;
    int const descriptor = mkstemp(output->temporary);
    if (descriptor < 0)
        return -1;
    if (fchmod(descriptor, mode) == 0)
        output->stream = fdopen(descriptor, "w");
    if (!output->stream) {
        int const error = errno;
        close(descriptor);
        unlink(output->temporary);
        errno = error;
        return -1;
    }
    return 0;
}

static int open_named(struct output *output, const char *name)
{
    struct stat status;
    bool const exists = stat(name, &status) == 0;
    if (!exists && errno != ENOENT)
        return -1;
    if (exists && !S_ISREG(status.st_mode)) { /* by its own name: the link behind /dev/stdout is no path */
        output->stream = fopen(name, "w");
        return output->stream ? 0 : -1;
    }
    if (exists && access(name, W_OK) != 0)
        return -1; /* renaming would get round a write protection */
    output->target = resolve_links(name);
    if (!output->target)
        return -1;
    return open_temporary(output, exists ? status.st_mode & 0777 : new_file_mode());
}

int output_open(struct output *output, const char *name)
{
    *output = (struct output){0};
    if (!name) {
        output->stream = stdout;
        return 0;
    }
    if (name[0] == '\0') {
        errno = ENOENT;
        return -1;
    }
    if (open_named(output, name) != 0) {
        int const error = errno;
        forget_names(output);
        errno = error;
        return -1;
    }
    return 0;
}

int output_complete(struct output *output)
{
    int error = 0;
    if (fflush(output->stream) != 0)
        error = errno;
    else if (ferror(output->stream))
        error = EIO; /* an earlier write failed, its errno is gone */
    if (fclose(output->stream) != 0 && error == 0)
        error = errno;
    output->stream = NULL;
    if (error == 0 && output->temporary && rename(output->temporary, output->target) != 0)
        error = errno;
    if (error != 0)
        output_abandon(output);
    forget_names(output);
    if (error == 0)
        return 0;
    errno = error;
    return -1;
}

void output_abandon(struct output *output)
{
    int const error = errno;
    if (output->temporary)
        unlink(output->temporary);
    errno = error;
}
