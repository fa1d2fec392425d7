"""Reads a calendar with another implementation and compares its events with the due items in JSON.

    check_calendar.py CALENDAR JSON

Source: RFC 5545, sections 3.1, 3.3.4, 3.6.1, 3.6.2, 3.8.
"""

import datetime
import json
import sys

import icalendar


def main(calendar_file, json_file):
    with open(calendar_file, "rb") as file:
        raw = file.read()
    with open(json_file, encoding="utf-8") as file:
        report = json.load(file)
    lines = raw.split(b"\r\n")
    assert lines.pop() == b"", "the last line has no line break"
    for line in lines:
        assert len(line) <= 75 and b"\n" not in line and b"\r" not in line, line
    calendar = icalendar.Calendar.from_ical(raw)
    assert calendar["VERSION"] == "2.0" and calendar["PRODID"]
    assert not calendar.errors, calendar.errors
    items = [item for visit in report["visits"] for item in visit["items"]]
    # An item without any day is a to-do.
    dated = [item for item in items if item["from"] or item["by"] or item["overdue"]]
    undated = [item for item in items if item not in dated]
    events, to_dos = calendar.walk("VEVENT"), calendar.walk("VTODO")
    assert calendar["NAME"] == calendar["X-WR-CALNAME"]
    nine = datetime.timedelta(hours=9)
    assert len(events) == len(dated) > 0, (len(events), len(dated))
    assert len(to_dos) == len(undated), (len(to_dos), len(undated))
    for event, item in zip(events + to_dos, dated + undated):
        assert not event.errors, event.errors
        days = [datetime.date.fromisoformat(day) for day in (item["from"], item["by"]) if day]
        if item["overdue"]:
            days = [datetime.date.fromisoformat(report["from"])]
        assert event["UID"] == item["uid"], item
        if days:
            assert event.decoded("DTSTART") == min(days), item
            assert type(event.decoded("DTSTART")) is datetime.date, item
            assert event.decoded("DTEND") == days[-1] + datetime.timedelta(days=1), item
        else:
            assert not {"DTSTART", "DTEND", "DUE"} & set(event), item
        assert int(event["SEQUENCE"]) == item["sequence"], item
        recorded = datetime.datetime.fromisoformat(item["recorded_at"].replace("Z", "+00:00"))
        assert event.decoded("DTSTAMP") == recorded.replace(microsecond=0), item
        assert str(event["DESCRIPTION"]) == f"{item['text']}\n{report['notice']}", item
        assert event.get("LOCATION") == item["apiary"], item
        whom = f" ({said(item['colonies'])})" if item["colonies"] else ""
        overdue = "overdue: " if item["overdue"] else ""
        assert str(event["SUMMARY"]) == overdue + item["title"] + whom, item
        alarms = event.walk("VALARM")
        if item["weight"] != "must" or not (item["by"] or item["overdue"]):
            assert not alarms, item
            continue
        alarm, = alarms
        assert alarm["ACTION"] == "DISPLAY" and str(alarm["DESCRIPTION"]) == str(event["SUMMARY"]), item
        end = alarm["TRIGGER"].params.get("RELATED") == "END"
        begins = datetime.datetime.combine(event.decoded("DTEND" if end else "DTSTART"), datetime.time())
        at = begins + alarm.decoded("TRIGGER")
        before = datetime.timedelta(days=0 if item["overdue"] else 1)
        assert at == datetime.datetime.combine(days[-1] - before, datetime.time()) + nine, (item, at)
    print(f"{len(events)} events and {len(to_dos)} to-dos read the same by {icalendar.__name__} {icalendar.__version__}")


def said(colonies):
    """The colonies of the demo, a letter and a number each, as people say them: three or more in a row by their ends."""
    runs = []
    for letter, number in sorted((name[0], int(name[1:])) for name in colonies):
        if runs and runs[-1][0] == letter and runs[-1][2] == number - 1:
            runs[-1][2] = number
        else:
            runs.append([letter, number, number])
    names = []
    for letter, first, last in runs:
        if last - first >= 2:
            names.append(f"{letter}{first}-{letter}{last}")
        else:
            names.extend(f"{letter}{number}" for number in range(first, last + 1))
    return ", ".join(names)


main(*sys.argv[1:])
