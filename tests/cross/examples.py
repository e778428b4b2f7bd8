"""What README.md and docs/*.md show of the program is what the program prints.

An example is a fenced block marked console whose first line begins with "$ ./build/underscreed"; a command line that
ends in a backslash goes on in the next one. Below it stands the output, standard error included, and, when the exit
status is not 0, a last line such as "[exit status 1]". Commands run in the source top, pipes included.

By hand: tests/cross/examples.py --write puts the real output into every block.
"""

import glob
import os
import re
import shlex
import subprocess
import sys

TOP = os.environ.get("USC_TOP") or os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PROGRAM = os.environ.get("UNDERSCREED") or os.path.join(TOP, "build", "underscreed")
SHOWN = "./build/underscreed"
BLOCK = re.compile(r"^```(\w*)\n(\$ \./build/underscreed\b.*?)^```$", re.MULTILINE | re.DOTALL)
COMMAND = re.compile(r"\$ ((?:.*\\\n)*.*\n)")
# Documents that would be worth nothing without an example.
MUST_SHOW = ("README.md", "docs/tutorial.md")


def output_of(command):
    """What a block has to show below its command."""
    environment = dict(os.environ, LC_ALL="C", TZ="UTC")
    for name in ("NO_COLOR", "COLUMNS", "SOURCE_DATE_EPOCH"):
        environment.pop(name, None)
    done = subprocess.run(
        ["/bin/sh", "-c", command.replace(SHOWN, shlex.quote(PROGRAM))],
        cwd=TOP,
        env=environment,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        timeout=60,
        check=False,
    )
    shown = done.stdout.decode("utf-8", "replace")
    if shown and not shown.endswith("\n"):
        shown += "\n"
    if done.returncode != 0:
        shown += f"[exit status {done.returncode}]\n"
    return shown


def documents():
    paths = [os.path.join(TOP, "README.md"), *sorted(glob.glob(os.path.join(TOP, "docs", "*.md")))]
    for path in paths:
        with open(path, encoding="utf-8", newline="") as file:
            yield path, os.path.relpath(path, TOP), file.read()


def refreshed(block):
    command = COMMAND.match(block[2]).group(0)
    return f"```{block[1]}\n{command}{output_of(command[2:])}```"


def write():
    for path, name, text in documents():
        new = BLOCK.sub(refreshed, text)
        if new != text:
            with open(path, "w", encoding="utf-8", newline="") as file:
                file.write(new)
            print(f"{name}: refreshed")


def complaints_about(block):
    if block[1] != "console":
        return ["the block is not marked console"]
    command = COMMAND.match(block[2]).group(0)
    expected, found = block[2][len(command):], output_of(command[2:])
    if expected == found:
        return []
    return [f"shown:   {line}" for line in expected.splitlines()] + [f"printed: {line}" for line in found.splitlines()]


def check():
    number = 0
    for _, name, text in documents():
        blocks = list(BLOCK.finditer(text))
        if name in MUST_SHOW:
            number += 1
            print(f"{'ok' if blocks else 'not ok'} {number} - {name} shows the program at work")
        for block in blocks:
            complaints = complaints_about(block)
            line = text.count("\n", 0, block.start()) + 1
            number += 1
            # Without "#", which would begin a TAP directive.
            title = COMMAND.match(block[2]).group(1).splitlines()[0].replace("#", "")
            print(f"{'not ok' if complaints else 'ok'} {number} - {name} line {line}: {title}")
            for complaint in complaints:
                print(f"# {complaint}")
    print(f"1..{number}")


if sys.argv[1:] == ["--write"]:
    write()
elif sys.argv[1:]:
    sys.exit("usage: examples.py [--write]")
else:
    check()
