"""The schemas in data/schema/ against the files they are for, the program that prints them and its own reader."""

import glob
import json
import os
import subprocess

from jsonschema import Draft202012Validator

TOP = os.environ.get("USC_TOP") or os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PROGRAM = os.environ.get("UNDERSCREED") or os.path.join(TOP, "build", "underscreed")
KINDS = ("project", "catalogue", "limits", "practice")
# Faults of key, type or range: what a schema can know. Others need the ids and the physics.
SEEN_BY_SCHEMA = (
    "unknown-key*", "missing-[!c]*", "type-*", "choice-unknown", "negative-mass", "zero-thickness", "number-beyond-range",
    "newer-format", "other-format", "kind-*", "control-characters-key", "key-with-dot", "several", "crlf-fault",
    "position-after-umlauts", "own-catalogue-kind", "own-limits-descriptor", "own-limits-is-a-project",
)
results = []


def report(title, complaints):
    results.append(title)
    print(f"{'not ok' if complaints else 'ok'} {len(results)} - {title}")
    for complaint in complaints[:20]:
        print(f"# {complaint}")


def read(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file)


def printed(*arguments):
    return subprocess.run([PROGRAM, *arguments], stdout=subprocess.PIPE, check=True, timeout=60).stdout


def kind_of(path):
    name, folder = os.path.basename(path), os.path.basename(os.path.dirname(path))
    if folder == "hostile":
        return name.split("-")[1] if name.startswith("own-") else "project"
    if folder == "demo":
        return "catalogue" if "catalogue" in name else "project"
    return folder


schemas = {kind: read(os.path.join(TOP, "data", "schema", f"{kind}.json")) for kind in KINDS}
validators = {kind: Draft202012Validator(schema) for kind, schema in schemas.items()}


def faults(path):
    return [f"{list(error.path)}: {error.message[:200]}" for error in validators[kind_of(path)].iter_errors(read(path))]


def check_schemas():
    for kind, schema in schemas.items():
        try:
            Draft202012Validator.check_schema(schema)
            complaints = []
        except Exception as error:  # any way of not being a schema
            complaints = [str(error)]
        report(f"{kind}: is a schema", complaints)
        with open(os.path.join(TOP, "data", "schema", f"{kind}.json"), "rb") as file:
            same = printed("formats", kind, "--schema") == file.read()
        report(f"{kind}: the program prints the same bytes", [] if same else ["it does not"])


def check_files():
    for folder in ("demo", "catalogue", "limits", "practice"):
        for path in sorted(glob.glob(os.path.join(TOP, "data", folder, "*.json"))):
            report(f"data/{folder}/{os.path.basename(path)} is valid", faults(path))
    for path in sorted(glob.glob(os.path.join(TOP, "tests", "hostile", "fine-[cn]*.json"))):
        report(f"{os.path.basename(path)} is valid", faults(path))
    for pattern in SEEN_BY_SCHEMA:
        paths = sorted(glob.glob(os.path.join(TOP, "tests", "hostile", f"{pattern}.json")))
        report(f"there is a {pattern}.json", [] if paths else ["none"])
        for path in paths:
            report(f"{os.path.basename(path)} is not valid", [] if faults(path) else ["the schema sees no fault"])


def without_null(schema):
    """The schema of a value that may also be null."""
    others = [each for each in schema.get("anyOf", []) if each.get("type") != "null"]
    return others[0] if len(others) == 1 else schema


def keys_of_schema(kind):
    """{(name of the record, key)}; the document itself is named by its kind."""
    root = schemas[kind]
    found = set()
    records = {kind: root, **root.get("$defs", {})}
    for name, record in records.items():
        for key in record["properties"]:
            found.add((name, key))
    return found


def keys_of_formats(kind):
    [family] = json.loads(printed("formats", kind, "--json"))["formats"]
    root = family["records"][0]["name"]
    return {
        (kind if record["name"] == root else record["name"], key["key"])
        for record in family["records"]
        for key in record["keys"]
    }


def bounds_of_formats(kind):
    [family] = json.loads(printed("formats", kind, "--json"))["formats"]
    for record in family["records"]:
        for key in record["keys"]:
            if key["kind"] == "number":
                yield record["name"], key


def plain(name):
    """Record names are told apart by words alone."""
    return name.replace("-", " ")


def check_keys():
    for kind in KINDS:
        in_schema = {(plain(name), key) for name, key in keys_of_schema(kind)}
        in_formats = {(plain(name), key) for name, key in keys_of_formats(kind)}
        # "note" is allowed in every object, so the lists of keys need not name it.
        missing = {each for each in in_schema - in_formats if each[1] != "note"}
        report(f"{kind}: every key of the schema is told by formats", [str(each) for each in sorted(missing)])
        report(f"{kind}: every key told by formats is in the schema", [str(each) for each in sorted(in_formats - in_schema)])
        report(f"{kind}: there are keys", [] if len(in_formats) > 8 else [str(sorted(in_formats))])


def check_bounds():
    for kind in KINDS:
        records = {plain(kind): schemas[kind], **{plain(name): each for name, each in schemas[kind].get("$defs", {}).items()}}
        complaints, seen = [], 0
        for name, key in bounds_of_formats(kind):
            record = records.get(plain(name)) or {"properties": {}}
            there = without_null(record["properties"].get(key["key"], {}))
            low = there.get("exclusiveMinimum") if key["lowest_excluded"] else there.get("minimum")
            seen += 1
            if (low, there.get("maximum")) != (key["lowest"], key["highest"]):
                complaints.append(f"{name}.{key['key']}: {low} to {there.get('maximum')}, formats say {key['lowest']} to {key['highest']}")
        report(f"{kind}: the ranges of {seen} numbers agree", complaints)


check_schemas()
check_files()
check_keys()
check_bounds()
print(f"1..{len(results)}")
