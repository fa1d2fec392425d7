"""Holds the answers of two builds of the program together: what one has always said, the other must say to the byte.

    compare.py BEFORE AFTER [--seed N] [--count N]

BEFORE and AFTER are two builds of `combclear`. Both are asked the same questions of the demo and of random holdings, on the same database, which
BEFORE has written. Differences are shown with the question; the exit code is 1 if there is any.
"""

import argparse
import json
import random
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
LEAFLETS = ROOT / "tests/supering/leaflets"
HEADER = '{"combclear_journal":1,"holding":"random","sealed":false}'


def run(program, database, *arguments):
    command = [program, *arguments, "--db", f"sqlite:{database}", "--leaflets", str(LEAFLETS)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    return done.returncode, done.stdout, done.stderr


def questions(colonies, apiaries, days, draw):
    """Every question, on random days from those with an event."""
    for on in draw.sample(days, min(3, len(days))):
        yield ["supering", "--on", on, "--json"]
        yield ["supering", draw.choice(colonies), "--on", on, "--json"]
        yield ["supering", draw.choice(colonies), "--on", on]
    first, last = days[0], days[-1]
    for colony in draw.sample(colonies, min(2, len(colonies))):
        yield ["options", colony, "--from", draw.choice(days), "--json"]
    for apiary in apiaries[:1]:
        yield ["options", "--apiary", apiary, "--from", draw.choice(days), "--ground", "flooded", "--power", "none", "--json"]
    yield ["register", "--from", first, "--to", last, "--as-of", last, "--json"]
    yield ["gaps", "--from", first, "--to", last, "--as-of", last, "--json"]
    middle = draw.choice(days)
    yield ["gaps", "--from", first, "--to", middle, "--as-of", middle]
    for on in (middle, last):
        yield ["due", "--from", on, "--json"]
        yield ["stock", "--on", on, "--json"]
    yield ["retention", "--on", last, "--json"]


def named(entries, kind, field):
    return sorted({entry["body"][field] for entry in entries if entry["kind"] == kind and entry["body"].get(field)})


def compare(before, after, database, entries, draw):
    days = sorted({entry["on"] for entry in entries})
    colonies = sorted(set(named(entries, "colony_established", "colony")) | set(named(entries, "colony_split", "into")))
    asked, different = 0, []
    for question in questions(colonies, named(entries, "apiary_details", "apiary"), days, draw):
        asked += 1
        if (one := run(before, database, *question)) != (two := run(after, database, *question)):
            different.append((question, one, two))
    return asked, different


def first_difference(one, two):
    for before, after in zip(one[1].splitlines(), two[1].splitlines()):
        if before != after:
            return f"  before {before.strip()}\n  after  {after.strip()}"
    return f"  before {one[0]} {one[2].strip()}\n  after  {two[0]} {two[2].strip()}"


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("before")
    parser.add_argument("after")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=200)
    ask = parser.parse_args()
    made = subprocess.run(
        [sys.executable, ROOT / "tests/second_reading/holdings.py", "random", "--seed", str(ask.seed), "--count", str(ask.count)],
        capture_output=True, text=True, check=True,
    ).stdout.splitlines()
    draw = random.Random(ask.seed)
    asked, faults = 0, 0
    with tempfile.TemporaryDirectory() as folder:
        journals = [("the demo", (ROOT / "demo/holding.jsonl").read_text(), [])]
        journals += [(f"holding {place}", None, json.loads(line)["entries"]) for place, line in enumerate(made)]
        for place, (name, journal, entries) in enumerate(journals):
            if journal is None:
                lines = [json.dumps({"recorded_by": "test", **entry}) for entry in entries]
                journal = "\n".join([HEADER, *lines]) + "\n"
                how = ["--keep-going"]
            else:
                entries = [json.loads(line) for line in journal.splitlines()[1:]]
                entries = [entry for entry in entries if "kind" in entry and "body" in entry]
                how = []
            file, database = Path(folder) / f"{place}.jsonl", Path(folder) / f"{place}.db"
            file.write_text(journal)
            code, _, error = run(ask.before, database, "import", str(file), *how)
            if code not in (0, 5):
                sys.exit(f"{name} could not be taken in: {error}")
            some, different = compare(ask.before, ask.after, database, entries, draw)
            asked += some
            faults += len(different)
            for question, one, two in different[:3]:
                print(f"{name}: {' '.join(question)}\n{first_difference(one, two)}")
    print(f"{len(journals)} holdings, {asked} questions, {faults} answers differ")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
