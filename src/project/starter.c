#include "project/starter.h"

const char starter_project[] =
    "{ \"format\": \"underscreed-project/1\", \"name\": \"First project\", \"note\": \"Figures invented: put in "
    "yours.\",\n"
    "  \"requirement\": { \"limit\": \"de-4109-1-2018-solid\" },\n"
    "  \"build_ups\": [ { \"id\": \"floor\", \"flooring\": \"parquet\", \"underlays\": [\"eps-t-board-20-2\"],\n"
    "                   \"screed\": { \"kind\": \"ct-f4\", \"thickness_mm\": 45 } } ],\n"
    "  \"rooms\": [ { \"name\": \"Bedroom\", \"build_up\": \"floor\",\n"
    "               \"slab\": { \"thickness_mm\": 180 },\n"
    "               \"flanking\": [ { \"mass_kg_m2\": 300 }, { \"mass_kg_m2\": 220 } ],\n"
    "               \"below\": { \"name\": \"Living room\", \"volume_m3\": 40 },\n"
    "               \"available_height_mm\": 100 } ]\n"
    "}\n";
