"""Days and periods computed by Python's datetime, for the test beside this file.

Source: the Python standard library's documentation, "datetime - Basic date and time types": a date is one of an
idealised Gregorian calendar extended in both directions; adding a timedelta moves it by whole days.

Writes CSV to standard output: a day, a period of n days after an event on that day, the last day the period blocks
(empty for a period of zero days), the first free day, the day of the week, and the days since 1970-01-01.
"""

import calendar
import csv
import random
import sys
from datetime import date, timedelta

FIRST, LAST = date(1900, 1, 1), date(2199, 12, 31)
EPOCH = date(1970, 1, 1)
PAIRS = 20_000
SEED = 1182


def pairs():
    """Random days and periods whose results all lie within range."""
    draw = random.Random(SEED)
    span = (LAST - FIRST).days
    for _ in range(PAIRS):
        # Mostly periods as in leaflets; some of decades.
        days = draw.randint(0, 400) if draw.random() < 0.8 else draw.randint(0, 40_000)
        yield FIRST + timedelta(days=draw.randint(0, span - days - 1)), days


def month_ends():
    """The last two days and the first day of the months of every leap year and the years beside it, including 1900 and 2100."""
    years = range(FIRST.year, LAST.year + 1)
    near = {year + step for year in years if year % 4 == 0 for step in (-1, 0, 1)}
    for year in sorted(near.intersection(years)):
        for month in range(1, 13):
            length = calendar.monthrange(year, month)[1]
            for day in (date(year, month, number) for number in (1, length - 1, length)):
                for days in (0, 1, 2, 28, 42, 366):
                    if (LAST - day).days > days:
                        yield day, days


def both_ends():
    """Periods that begin on the first day or end just before the last one."""
    for days in range(0, 401):
        yield FIRST, days
        yield LAST - timedelta(days=days + 1), days


def row(day, days):
    last_blocked = day + timedelta(days=days) if days > 0 else None
    first_free = day if last_blocked is None else last_blocked + timedelta(days=1)
    return [day, days, last_blocked or "", first_free, calendar.day_name[day.weekday()], (day - EPOCH).days]


def main():
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["day", "n", "last_blocked", "first_free", "weekday", "days_since"])
    for source in (pairs(), month_ends(), both_ends()):
        out.writerows(row(day, days) for day, days in source)


if __name__ == "__main__":
    main()
