/* Built-in data and files of the user in front of them. */
#include "project/data_store.h"

#include <dirent.h>
#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "base/file.h"
#include "project/data_check.h"
#include "project/data_embedded.h"
#include "project/record_read.h"

static const char *const folders[] = {"catalogue", "limits", "practice"};

/* Built-in documents first, so that a row of the user's wins whatever its file is called; then by path. */
static int in_order(const void *a, const void *b)
{
    const struct data_document *left = a, *right = b;
    int own = !!strcmp(left->origin, "built in") - !!strcmp(right->origin, "built in");
    return own ? own : strcmp(left->path, right->path);
}

/* Room for one more document; one of the same path is replaced. */
static struct data_document *document_slot(struct data *data, const char *path, struct arena *arena)
{
    struct data_document *document = data->documents.at;
    for (size_t i = 0; i < data->documents.count; i++)
        if (!strcmp(document[i].path, path))
            return &document[i];
    struct data_document *longer = arena_take_many(arena, data->documents.count + 1, sizeof *longer);
    if (data->documents.count)
        memcpy(longer, document, data->documents.count * sizeof *longer);
    data->documents.at = longer;
    longer[data->documents.count].path = path;
    return &longer[data->documents.count++];
}

static bool ends_in_json(const char *name)
{
    size_t length = strlen(name);
    return length > 5 && !strcmp(name + length - 5, ".json");
}

/* Puts the folder's files in front. A folder that is not there is no error. */
static enum data_status folder_files(const char *directory, const char *folder, struct arena *arena, struct data *data,
                                     const char **culprit)
{
    const char *whole = arena_printf(arena, "%s/%s", directory, folder);
    DIR *open = opendir(whole);
    struct dirent *entry;
    enum data_status status = DATA_READ;
    *culprit = whole;
    if (!open)
        return errno == ENOENT ? DATA_READ : DATA_UNREADABLE;
    while (status == DATA_READ && (entry = readdir(open))) {
        if (!ends_in_json(entry->d_name))
            continue;
        const char *name = arena_printf(arena, "%s/%s", whole, entry->d_name);
        size_t length;
        const char *text = file_read_whole(arena, name, &length);
        if (!text) {
            int cause = errno;
            closedir(open);
            errno = cause;
            *culprit = name;
            return DATA_UNREADABLE;
        }
        struct data_document *document =
            document_slot(data, arena_printf(arena, "%s/%s", folder, entry->d_name), arena);
        document->origin = name;
        document->text = text;
        document->length = length;
    }
    closedir(open);
    return status;
}

/* Rows of more behind those of rows, in their place where the id is the same. */
static void rows_merge(struct objects *rows, const struct objects *more, const struct record *record,
                       struct arena *arena)
{
    size_t size = record->size, offset = record_field(record, "id")->offset;
    char *merged = arena_take_many(arena, rows->count + more->count, size);
    size_t count = rows->count;
    if (rows->count)
        memcpy(merged, rows->at, rows->count * size);
    for (size_t i = 0; i < more->count; i++) {
        const char *row = (const char *)more->at + i * size;
        size_t j = 0;
        while (j < count && strcmp(*(const char **)(merged + j * size + offset), *(const char *const *)(row + offset)))
            j++;
        memcpy(merged + j * size, row, size);
        count += j == count;
    }
    rows->at = merged;
    rows->count = count;
}

void catalogue_merge(struct catalogue *catalogue, const struct catalogue *more, struct arena *arena)
{
    rows_merge(&catalogue->underlays, &more->underlays, &underlay_record, arena);
    rows_merge(&catalogue->screeds, &more->screeds, &screed_record, arena);
    rows_merge(&catalogue->floorings, &more->floorings, &flooring_record, arena);
}

static bool add_catalogue(const struct record_reader *reader, const char *text, size_t length, struct data *data)
{
    struct catalogue more;
    if (!document_read(reader, text, length, "catalogue", &catalogue_record, &more))
        return false;
    catalogue_check(reader, &more, NULL, false);
    problems_locate(reader->problems->first, reader->file, text, length);
    if (problems_any_error(reader->problems))
        return false;
    catalogue_merge(&data->catalogue, &more, reader->arena);
    return true;
}

static bool add_limits(const struct record_reader *reader, const char *text, size_t length, struct data *data)
{
    struct limits more;
    if (!document_read(reader, text, length, "limits", &limits_record, &more))
        return false;
    limits_check(reader, &more);
    problems_locate(reader->problems->first, reader->file, text, length);
    if (problems_any_error(reader->problems))
        return false;
    rows_merge(&data->limits.limits, &more.limits, &limit_record, reader->arena);
    return true;
}

static bool add_practice(const struct record_reader *reader, const char *text, size_t length, struct data *data)
{
    struct practice more;
    struct json_path rules = {NULL, "rules", 0}, thickness = {NULL, "thickness", 0};
    if (!document_read(reader, text, length, "practice", &practice_record, &more))
        return false;
    ids_check(reader, &more.rules, &practice_rule_record, &rules);
    ids_check(reader, &more.thickness, &thickness_rules_record, &thickness);
    problems_locate(reader->problems->first, reader->file, text, length);
    if (problems_any_error(reader->problems))
        return false;
    rows_merge(&data->practice.rules, &more.rules, &practice_rule_record, reader->arena);
    rows_merge(&data->practice.thickness, &more.thickness, &thickness_rules_record, reader->arena);
    return true;
}

static bool add_document(const struct record_reader *reader, const struct data_document *document, struct data *data)
{
    if (!strncmp(document->path, "catalogue/", 10))
        return add_catalogue(reader, document->text, document->length, data);
    if (!strncmp(document->path, "limits/", 7))
        return add_limits(reader, document->text, document->length, data);
    return add_practice(reader, document->text, document->length, data);
}

/* Every value that the program computes with must be there. */
static bool practice_complete(const struct record_reader *reader, const struct data *data)
{
    bool complete = true;
    for (int i = 0; i < PRACTICE_VALUES; i++)
        if (!practice_rule_of(&data->practice, (enum practice_value)i)) {
            problem_add(reader->problems, SEVERITY_ERROR, reader->file, "rules", NULL, "lack the rule \"%s\"",
                        practice_value_names[i]);
            complete = false;
        }
    return complete;
}

enum data_status data_load(const char *directory, struct arena *arena, struct problems *problems, struct data *data,
                           const char **culprit)
{
    enum data_status status = DATA_READ;
    struct record_reader reader = {arena, problems, NULL};
    memset(data, 0, sizeof *data);
    for (size_t i = 0; i < embedded_document_count; i++) {
        struct data_document *document = document_slot(data, embedded_documents[i].path, arena);
        document->origin = "built in";
        document->text = (const char *)embedded_documents[i].bytes;
        document->length = embedded_documents[i].size;
    }
    if (directory) {
        DIR *open = opendir(directory);
        *culprit = directory;
        if (!open)
            return DATA_UNREADABLE;
        closedir(open);
        for (size_t i = 0; i < sizeof folders / sizeof folders[0] && status == DATA_READ; i++)
            status = folder_files(directory, folders[i], arena, data, culprit);
        if (status != DATA_READ)
            return status;
    }
    qsort(data->documents.at, data->documents.count, sizeof(struct data_document), in_order);
    const struct data_document *document = data->documents.at;
    for (size_t i = 0; i < data->documents.count; i++) {
        reader.file = strcmp(document[i].origin, "built in") ? document[i].origin : document[i].path;
        if (!add_document(&reader, &document[i], data))
            status = DATA_FAULTY;
    }
    if (status == DATA_READ && !practice_complete(&reader, data))
        status = DATA_FAULTY;
    return status;
}

static enum data_status add_file(struct data *data, const char *name, struct arena *arena, struct problems *problems,
                                 bool (*add)(const struct record_reader *, const char *, size_t, struct data *))
{
    struct record_reader reader = {arena, problems, name};
    size_t length;
    const char *text = file_read_whole(arena, name, &length);
    if (!text)
        return DATA_UNREADABLE;
    *document_slot(data, name, arena) = (struct data_document){name, name, text, length};
    return add(&reader, text, length, data) ? DATA_READ : DATA_FAULTY;
}

enum data_status data_add_catalogue(struct data *data, const char *name, struct arena *arena, struct problems *problems)
{
    return add_file(data, name, arena, problems, add_catalogue);
}

enum data_status data_add_limits(struct data *data, const char *name, struct arena *arena, struct problems *problems)
{
    return add_file(data, name, arena, problems, add_limits);
}
