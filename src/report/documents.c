/* The JSON document of each command. */
#include "report/documents.h"

#include <string.h>

#include "report/json_out.h"

static void head(struct json_out *out, FILE *stream, const char *command, enum answer meets)
{
    json_open(out, stream);
    json_object_begin(out, NULL);
    json_text(out, "format", command);
    json_text(out, "version", PACKAGE_VERSION);
    json_answer(out, "meets", meets);
}

static void tail(struct json_out *out)
{
    json_object_end(out);
    json_close(out);
}

static void list(struct json_out *out, const char *key, const struct record *record, const struct objects *rows)
{
    json_array_begin(out, key);
    for (size_t i = 0; i < rows->count; i++)
        json_record(out, NULL, record, (const char *)rows->at + i * record->size);
    json_array_end(out);
}

/* Which files stood in front of the built-in data. */
static void used_data(struct json_out *out, const struct data *data)
{
    const struct data_document *document = data->documents.at;
    json_array_begin(out, "data");
    for (size_t i = 0; i < data->documents.count; i++)
        if (strcmp(document[i].origin, "built in"))
            json_text(out, NULL, document[i].origin);
    json_array_end(out);
}

void document_predict(FILE *stream, const struct project *project, const struct data *data,
                      const struct predict_options *options, const struct prediction *prediction)
{
    struct json_out out;
    head(&out, stream, "underscreed-predict/1", prediction->meets);
    json_text(&out, "project", project->name);
    json_text(&out, "model", "simplified");
    json_text(&out, "K_by", K_by_names[options->K_by]);
    json_flag(&out, "strict", options->strict);
    used_data(&out, data);
    list(&out, "warnings", &warning_record_record, &prediction->warnings);
    list(&out, "rooms", &room_prediction_record, &prediction->rooms);
    tail(&out);
}

void document_design(FILE *stream, const struct project *project, const struct data *data,
                     const struct design_options *options, const struct design *design)
{
    struct json_out out;
    head(&out, stream, "underscreed-design/1", design->meets);
    json_text(&out, "project", project->name);
    json_text(&out, "model", "simplified");
    json_text(&out, "K_by", K_by_names[options->K_by]);
    json_text(&out, "rank_by", rank_by_names[options->rank_by]);
    json_flag(&out, "one_build_up", options->one_build_up);
    json_flag(&out, "strict", options->strict);
    used_data(&out, data);
    list(&out, "rooms", &design_room_record, &design->rooms);
    tail(&out);
}

void document_rate(FILE *stream, const struct rated *rated)
{
    struct json_out out;
    head(&out, stream, "underscreed-rate/1", rated->meets_limit);
    json_members(&out, &rated_record, rated);
    tail(&out);
}

void document_plan(FILE *stream, const struct project *project, const struct measurement_plan *plan)
{
    struct json_out out;
    head(&out, stream, "underscreed-rate/1", ANSWER_NONE);
    json_text(&out, "project", project->name);
    json_members(&out, &measurement_plan_record, plan);
    tail(&out);
}

void document_compare(FILE *stream, const struct project *project, const char *room,
                      const struct comparison *comparison)
{
    struct json_out out;
    head(&out, stream, "underscreed-compare/1", ANSWER_NONE);
    json_text(&out, "project", project->name);
    json_text(&out, "room", room);
    json_members(&out, &comparison_record, comparison);
    tail(&out);
}

void document_stiffness(FILE *stream, const struct stiffness_result *result)
{
    struct json_out out;
    head(&out, stream, "underscreed-stiffness/1", ANSWER_NONE);
    json_array_begin(&out, "warnings"); /* none of its formulas has a published range to leave */
    json_array_end(&out);
    json_members(&out, &stiffness_result_record, result);
    tail(&out);
}

void document_limits(FILE *stream, const struct limits *limits)
{
    struct json_out out;
    head(&out, stream, "underscreed-limits/1", ANSWER_NONE);
    list(&out, "limits", &limit_record, &limits->limits);
    tail(&out);
}

void document_catalogue(FILE *stream, const struct catalogue *catalogue)
{
    struct json_out out;
    head(&out, stream, "underscreed-catalogue/1", ANSWER_NONE);
    list(&out, "underlays", &underlay_record, &catalogue->underlays);
    list(&out, "screeds", &screed_record, &catalogue->screeds);
    list(&out, "floorings", &flooring_record, &catalogue->floorings);
    tail(&out);
}

void document_practice(FILE *stream, const struct practice *practice)
{
    struct json_out out;
    head(&out, stream, "underscreed-practice/1", ANSWER_NONE);
    list(&out, "rules", &practice_rule_record, &practice->rules);
    list(&out, "thickness", &thickness_rules_record, &practice->thickness);
    tail(&out);
}

static void bound(struct json_out *out, const char *key, double value)
{
    json_number(out, key, isinf(value) ? NAN : value);
}

static void quantity(struct json_out *out, const char *key, const struct quantity *what)
{
    json_object_begin(out, key);
    json_text(out, "symbol", what->symbol);
    json_text(out, "key", what->key);
    json_text(out, "unit", what->unit);
    bound(out, "lowest", what->lowest);
    bound(out, "highest", what->highest);
    json_object_end(out);
}

void document_formulas(FILE *stream, const struct formula *const formula[], int count)
{
    struct json_out out;
    head(&out, stream, "underscreed-formulas/1", ANSWER_NONE);
    json_array_begin(&out, "formulas");
    for (int i = 0; i < count; i++) {
        json_object_begin(&out, NULL);
        json_text(&out, "id", formula[i]->id);
        json_text(&out, "title", formula[i]->title);
        json_text(&out, "expression", formula[i]->expression);
        quantity(&out, "result", &formula[i]->result);
        json_array_begin(&out, "given");
        for (int j = 0; j < formula[i]->given_count; j++)
            quantity(&out, NULL, &formula[i]->given[j]);
        json_array_end(&out);
        json_text(&out, "source", formula[i]->source.work);
        json_text(&out, "clause", formula[i]->source.clause);
        json_text(&out, "standing", standing_name(formula[i]->source.standing));
        json_text(&out, "note", formula[i]->note);
        json_object_end(&out);
    }
    json_array_end(&out);
    tail(&out);
}
