#!/usr/bin/env python3
"""The results of rate, stiffness and compare against their JSON Schemas, and damaged ones that must not pass."""
import copy
import json
import os
import subprocess
import sys

try:
    from jsonschema import Draft202012Validator
except ImportError:
    print("1..0 # SKIP no jsonschema")
    sys.exit(0)

TOP = os.environ["USC_TOP"]
PROGRAM = os.environ["UNDERSCREED"]
DEMO = os.path.join(TOP, "data", "demo")
RUNS = {
    "rate": [
        ["rate", "field-guest-room.csv", "--limit", "gb-england-new"],
        ["rate", "covering-improvement.csv"],
        ["rate", "readings-guest-room.csv", "--volume", "22.4"],
    ],
    "stiffness": [
        ["stiffness", "--resonance", "30", "--thickness", "20", "--flow-resistivity", "50"],
        ["stiffness", "--resonance", "30"],
        ["stiffness", "specimens.csv"],
    ],
    "compare": [["compare", "linden-court.json", "field-guest-room.csv", "--room", "Guest room, flat 4"]],
}
count = 0
failed = 0


def report(title, fine, detail=""):
    global count, failed
    count += 1
    failed += not fine
    print(f"{'ok' if fine else 'not ok'} {count} - {title}")
    if not fine:
        print("# " + str(detail).replace("\n", "\n# "))


def output(*words):
    return subprocess.run([PROGRAM, *words], cwd=DEMO, capture_output=True, text=True).stdout


for kind, runs in RUNS.items():
    path = os.path.join(TOP, "data", "schema", kind + ".json")
    with open(path, encoding="utf-8") as file:
        text = file.read()
    report(f"{kind}: the schema is what the program prints", text == output("formats", kind, "--schema"), path)
    schema = json.loads(text)
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    for words in runs:
        document = json.loads(output(*words, "--json"))
        errors = [error.message for error in validator.iter_errors(document)]
        report(f"{' '.join(words)}: valid", not errors, "\n".join(errors[:5]))
    for damage in ("meets", "version"):
        damaged = copy.deepcopy(document)
        del damaged[damage]
        report(f"{kind}: without {damage} not valid", not validator.is_valid(damaged))
    for key, value in document.items():
        if isinstance(value, (int, float)) and not isinstance(value, bool):
            damaged = dict(document, **{key: "text"})
            report(f"{kind}: text in {key} is not valid", not validator.is_valid(damaged))

print(f"1..{count}")
sys.exit(failed > 0)
