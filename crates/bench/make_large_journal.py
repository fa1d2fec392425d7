#!/usr/bin/env python3
"""Writes a large invented journal of drafts to standard output, for measuring an import.

    crates/bench/make_large_journal.py 100000 > /tmp/large.jsonl
    /usr/bin/time -v target/release/combclear --db sqlite:/tmp/large.db import /tmp/large.jsonl

500 colonies on 20 apiaries; each round treats an apiary, looks at every colony, and takes the strips out again.
"""

import json
import sys
from datetime import date, timedelta

COLONIES, APIARIES = 500, 20
wanted = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
count = 0


def entry(on, kind, body):
    global count
    if count == wanted:
        sys.exit(0)
    count += 1
    identity = f"00000000-0000-7000-8000-{count:012x}"
    line = {"id": identity, "on": on.isoformat(), "recorded_by": "tester", "kind": kind, "body": body}
    print(json.dumps(line, separators=(",", ":")))
    return identity


print('{"combclear_journal":1,"holding":"large","sealed":false}')
day = date(1990, 1, 1)
entry(day, "holding_details", {"keeper": "tester", "jurisdiction": "gb"})
for apiary in range(APIARIES):
    entry(day, "apiary_details", {"apiary": f"apiary {apiary}"})
for colony in range(COLONIES):
    where = f"apiary {colony % APIARIES}"
    entry(day, "colony_established", {"colony": f"C{colony}", "apiary": where, "medicines": "none"})
medicine = {"medicine": "strips", "pack_name": "Strips (invented)", "unit": "strip", "leaflet": "amitraz-strip-500mg-a"}
entry(day, "medicine_described", medicine)
number = 0
while True:
    day += timedelta(days=60)
    for apiary in range(APIARIES):
        colonies = [f"C{colony}" for colony in range(apiary, COLONIES, APIARIES)]
        number += 1
        lot = f"lot {number}"
        entry(day, "lot_acquired", {"lot": lot, "medicine": "strips", "quantity": 2 * len(colonies)})
        given = [{"lot": lot, "each": 2, "colonies": colonies}]
        first = entry(day, "administration", {"given": given, "withdrawal_days": 0})
        for colony in colonies:
            entry(day + timedelta(days=20), "inspection", {"colony": colony, "brood": "lowest", "seams": 7})
        entry(day + timedelta(days=44), "removal", {"administration": first, "colonies": colonies})
