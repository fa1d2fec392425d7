"""Daily temperatures and the treatment windows in them, computed in plain Python, for the test beside this file.

Run by hand or by CI, in a virtual environment that holds the package (no other dependency is needed):

    python3 -m venv target/weather
    target/weather/bin/pip install --no-deps aquacrop==3.1.0
    target/weather/bin/python tests/weather/make_windows.py            # writes the CSV files and windows.json
    target/weather/bin/python tests/weather/make_windows.py --check    # writes nothing; fails if a file would change

Source: PyPI package aquacrop 3.1.0, aquacrop/data/{brussels,northumberland,cambridge}_climate.txt. Licence: its LICENSE
    file is the Apache License, Version 2.0; its classifier says "MIT License". The package does not say where the series
    come from. The UK series are smooth and without gaps: taken for gridded weather, not for one station (inferred).
Source: table of monthly counts in the project's gathered facts on science, section 7.1, computed there with pandas.
    Its days above 30 are those of the whole year.

Temperatures are written with exactly one decimal, rounded half away from zero, and everything is worked out from the
rounded values. Unrounded, every count is that of the table.

DIFFERENCE: rounding changes two counts of the table, both at Cambridge, where the series has two decimals.
    October 2018 has 28 formic days, not 27: the maximum of 28 October is 9.99 and becomes 10.0. In the excerpt 28 October
    so becomes a start day of the formic strip, the only start day that rounding moves in any excerpt.
    September 2003 (no excerpt) has 13 thymol days, not 12: 6 September has 9.93 and 20.05, which become 9.9 and 20.1.
Both are printed in every run and are expected; any other difference, or one of these missing, fails the run.

Nothing here was taken over from the Rust program. Decimals only, so that 15.0 is 15.
"""

import json
import re
import sys
from datetime import date, timedelta
from decimal import ROUND_HALF_UP, Decimal
from importlib.metadata import distribution
from itertools import groupby
from pathlib import Path

HERE = Path(__file__).resolve().parent
VERSIONS = {"aquacrop": "3.1.0"}
TENTH = Decimal("0.1")
STAY = 28
DAY = timedelta(days=1)

# Formic days and thymol days of August, September and October, and days above 30 of the whole year.
TABLE = {
    ("brussels", 1976): ((30, 30, 29), (30, 11, 7), 18),
    ("brussels", 1985): ((31, 30, 27), (22, 17, 8), 0),
    ("brussels", 1995): ((26, 30, 30), (27, 12, 13), 11),
    ("brussels", 2003): ((24, 30, 21), (29, 13, 1), 9),
    ("cambridge", 2003): ((28, 30, 25), (27, 12, 0), 3),
    ("cambridge", 2018): ((29, 30, 27), (23, 14, 4), 5),
    ("northumberland", 2003): ((31, 30, 19), (13, 5, 0), 0),
    ("northumberland", 2010): ((31, 30, 24), (3, 0, 0), 0),
    ("northumberland", 2018): ((31, 30, 25), (15, 2, 1), 0),
}
# The counts that rounding changes, and why: see DIFFERENCE above.
ROUNDED_TABLE = TABLE | {
    ("cambridge", 2003): ((28, 30, 25), (27, 13, 0), 3),
    ("cambridge", 2018): ((29, 30, 28), (23, 14, 4), 5),
}
# Start days moved by rounding: excerpt, kind of start day, days that become "met" and were "broken".
MOVED = {("cambridge-2018", "formic_strip", date(2018, 10, 28))}
CLEAN = [("brussels", 2003), ("northumberland", 2010), ("cambridge", 2018)]
ABOUT = {
    "made_by": "make_windows.py, from the CSV files beside it",
    "answers": {
        "met": "every day looked at is there and every line of it meets the condition",
        "broken": "one day looked at breaks the condition with every line it has, whatever the other days are",
        "unknown": "neither: a day is missing, or two lines of one day say different things",
    },
    "lines": "a line whose minimum is above its maximum cannot be true and counts as no reading",
    "ranges": "first and last start day, both included; start days from 1 July to 31 October",
    "stay": "28 days from placing on day P are the days P to P+27",
    "months": {
        "formic": "10.0 <= maximum <= 29.5",
        "thymol": "(minimum + maximum) / 2 >= 15",
        "above_30": "maximum > 30",
    },
    "starts": {
        "formic_strip": "maximum of the placing day in 10.0..29.5, and maximum of the placing day and the two days after it "
        "<= 33. Source: UK leaflet of the formic acid gel strip 68.2 g, variant A.",
        "thymol_gel": "every daily maximum of 28 days in 15..40. Source: UK summary of product characteristics of the thymol "
        "gel tray 12.5 g, February 2015. DIFFERENCE: the source gives two trays 14 days apart, the second until empty; "
        "28 days is twice 14, the shortest such stay.",
        "thymol_blend": "no daily maximum of 28 days above 30. Source: UK summary of product characteristics of the thymol "
        "blend tablet, August 2014.",
        "mean_15": "mean of the daily means (minimum + maximum) / 2 of 28 days >= 15. Source: as thymol_blend, there an "
        "advice (poor effect below). DIFFERENCE: the source does not say how the mean is made.",
        "oxalic_solution": "maximum >= 3, so that some moment of the day has at least 3. Source: German leaflet of the "
        "oxalic acid solution 3.5 %.",
        "lactic_acid": "minimum <= 10 and maximum >= 4, so that some moment of the day lies in 4..10. Source: German summary "
        "of product characteristics of the lactic acid spray 15 %. DIFFERENCE: its leave to use it above 10 in a colony "
        "surely without brood is left out.",
    },
}


def text_of(package, path):
    """The lines of a file of an installed package, which must have the version named here."""
    found = distribution(package)
    if found.version != VERSIONS[package]:
        sys.exit(f"{package} {VERSIONS[package]} is needed, {found.version} is installed")
    return Path(found.locate_file(path)).read_text(encoding="latin-1").splitlines()


def tenths(value):
    """One decimal, half away from zero (which decimal calls half up), and no minus before a zero."""
    return value.quantize(TENTH, ROUND_HALF_UP) + Decimal("0.0")


def climate(name):
    """The rows (day, minimum, maximum) of one series of aquacrop, unrounded."""
    rows = (line.split() for line in text_of("aquacrop", f"aquacrop/data/{name}_climate.txt")[1:])
    return [(date(int(r[2]), int(r[1]), int(r[0])), Decimal(r[3]), Decimal(r[4])) for r in rows]


def july_to_november(rows, year):
    return [row for row in rows if date(year, 7, 1) <= row[0] <= date(year, 11, 30)]


def rounded(rows):
    return [(day, tenths(low), tenths(high)) for day, low, high in rows]


def by_day(rows):
    """Each day's lines, in the order of the file, without impossible ones."""
    days = {}
    for day, low, high in rows:
        if low <= high:
            days.setdefault(day, []).append((low, high))
    return days


def one_day(days, day, condition):
    said = {condition(low, high) for low, high in days.get(day, [])}
    return {(True,): "met", (False,): "broken"}.get(tuple(said), "unknown")


def every_day(answers):
    answers = set(answers)
    return "broken" if "broken" in answers else "unknown" if "unknown" in answers else "met"


def stay(first, length):
    return [first + timedelta(days=n) for n in range(length)]


def over(days, first, length, condition):
    return every_day(one_day(days, day, condition) for day in stay(first, length))


def formic_strip(days, start):
    placing = one_day(days, start, lambda _, high: Decimal("10.0") <= high <= Decimal("29.5"))
    return every_day([placing, over(days, start, 3, lambda _, high: high <= 33)])


def mean_15(days, start):
    """The mean lies between the means of each day's coldest and warmest lines."""
    sums = [[low + high for low, high in days.get(day, [])] for day in stay(start, STAY)]
    if not all(sums):
        return "unknown"
    need = 15 * 2 * STAY
    if sum(map(min, sums)) >= need:
        return "met"
    return "broken" if sum(map(max, sums)) < need else "unknown"


STARTS = {
    "formic_strip": formic_strip,
    "thymol_gel": lambda days, start: over(days, start, STAY, lambda _, high: 15 <= high <= 40),
    "thymol_blend": lambda days, start: over(days, start, STAY, lambda _, high: high <= 30),
    "mean_15": mean_15,
    "oxalic_solution": lambda days, start: one_day(days, start, lambda _, high: high >= 3),
    "lactic_acid": lambda days, start: one_day(days, start, lambda low, high: low <= 10 and high >= 4),
}
MONTHS = {
    "formic": lambda _, high: Decimal("10.0") <= high <= Decimal("29.5"),
    "thymol": lambda low, high: (low + high) / 2 >= 15,
    "above_30": lambda _, high: high > 30,
}


def days_of(first, last):
    return stay(first, (last - first).days + 1)


def count(days, first, last, condition):
    answers = [one_day(days, day, condition) for day in days_of(first, last)]
    return {answer: answers.count(answer) for answer in ("met", "broken", "unknown")}


def ranges(days, year, rule):
    """The start days of each answer, with consecutive days merged."""
    out = {"met": [], "broken": [], "unknown": []}
    starts = days_of(date(year, 7, 1), date(year, 10, 31))
    for answer, run in groupby(starts, key=lambda start: rule(days, start)):
        run = list(run)
        out[answer].append([run[0].isoformat(), run[-1].isoformat()])
    return out


def windows(rows, year):
    days = by_day(rows)
    months = {}
    for month in (8, 9, 10):
        first, last = date(year, month, 1), date(year, month + 1, 1) - DAY
        months[f"{year}-{month:02}"] = {name: count(days, first, last, condition) for name, condition in MONTHS.items()}
    return {"months": months, "starts": {name: ranges(days, year, rule) for name, rule in STARTS.items()}}


def table_row(rows, year):
    """The table's counts of one year."""
    days = by_day(rows)
    ends = [(date(year, month, 1), date(year, month + 1, 1) - DAY) for month in (8, 9, 10)]
    formic, thymol = (tuple(count(days, *end, MONTHS[name])["met"] for end in ends) for name in ("formic", "thymol"))
    return formic, thymol, count(days, date(year, 1, 1), date(year, 12, 31), MONTHS["above_30"])["met"]


def check_table(series):
    """Prints every count that differs from the table, unrounded and rounded. Returns the number of unexpected ones."""
    unexpected = 0
    for (name, year), stated in TABLE.items():
        versions = ("unrounded", series[name], stated), ("rounded", rounded(series[name]), ROUNDED_TABLE[name, year])
        for how, rows, expected in versions:
            found = table_row(rows, year)
            if found != stated:
                print(f"DIFFERENCE: {name} {year}, {how}: table {stated}, counted {found}")
            if found != expected:
                unexpected += 1
                print(f"unexpected: {name} {year}, {how}: expected {expected}, counted {found}")
    return unexpected


def moved_by_rounding(excerpt, exact, rows, year):
    """The start days that rounding turns from "broken" to "met". Any other change of a start day is an error."""
    before, after = by_day(exact), by_day(rows)
    moved = set()
    for kind, rule in STARTS.items():
        for start in days_of(date(year, 7, 1), date(year, 10, 31)):
            change = rule(before, start), rule(after, start)
            if change[0] != change[1]:
                assert change == ("broken", "met"), (excerpt, kind, start, change)
                moved.add((excerpt, kind, start))
    return moved


def csv_text(head, rows):
    lines = [f"# {line}" for line in head] + ["date,min_c,max_c"]
    lines += [f"{day.isoformat()},{low},{high}" for day, low, high in rows]
    return "\n".join(lines) + "\n"


def json_text(value):
    """Indented, with a range and a count each on one line."""
    text = json.dumps(value, indent=2)
    text = re.sub(r'\[\s+("[\d-]+"),\s+("[\d-]+")\s+\]', r"[\1, \2]", text)
    return re.sub(r'\{\s+("met": \d+),\s+("broken": \d+),\s+("unknown": \d+)\s+\}', r"{\1, \2, \3}", text) + "\n"


ROUNDED = {
    "brussels": "One decimal in the source, so rounding changes nothing.",
    "northumberland": "Rounded half away from zero to one decimal; this changes no monthly count and no start day.",
    "cambridge": "Rounded half away from zero to one decimal. DIFFERENCE: the maximum of 2018-10-28 is 9.99 in the source, no "
    "formic day there.",
}


def clean_head(name, year):
    return [
        f"Source: PyPI package aquacrop 3.1.0, aquacrop/data/{name}_climate.txt, July to November {year}.",
        "Licence: Apache License, Version 2.0 (its LICENSE file; its classifier says MIT License). Changed: cut out and rounded.",
        ROUNDED[name],
    ]


def main():
    series = {name: climate(name) for name in ("brussels", "cambridge", "northumberland")}
    failures = check_table(series)

    files, excerpts, moved = {}, {}, set()
    for name, year in CLEAN:
        exact = july_to_november(series[name], year)
        rows = rounded(exact)
        assert [row[0] for row in rows] == days_of(date(year, 7, 1), date(year, 11, 30)), (name, year)
        assert name != "brussels" or rows == exact, "the Brussels excerpt has one decimal"
        moved |= moved_by_rounding(f"{name}-{year}", exact, rows, year)
        files[f"{name}-{year}.csv"] = csv_text(clean_head(name, year), rows)
        excerpts[f"{name}-{year}"] = windows(rows, year)
    for excerpt, kind, start in sorted(moved):
        print(f"DIFFERENCE: {excerpt}, {kind}: {start} is a start day only after rounding")
    if moved != MOVED:
        failures += 1
        print(f"unexpected: rounding was to move {sorted(MOVED)}")

    files["windows.json"] = json_text({"about": ABOUT, "excerpts": excerpts})
    for name, text in files.items():
        assert name == "windows.json" or text.count("\n") < 200, name
        path = HERE / name
        if "--check" not in sys.argv[1:]:
            path.write_text(text, encoding="utf-8", newline="\n")
        elif not path.exists() or path.read_text(encoding="utf-8") != text:
            failures += 1
            print(f"unexpected: {name} is not what this script makes")
    print(f"{len(TABLE)} rows of the table compared, {len(excerpts)} sets of windows, {failures} unexpected")
    sys.exit(1 if failures else 0)


if __name__ == "__main__":
    main()
