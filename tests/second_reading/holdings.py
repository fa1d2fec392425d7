#!/usr/bin/env python3
"""Makes holdings for the two programs that answer by RULES.md.

    python3 holdings.py random --seed N --count C
    python3 holdings.py exhaustive

A line is one holding: its entries in the order of recording, and what is asked. An entry that cannot be true is refused by the
register and left out before the answers are compared, so the random histories need not be careful.
"""
import argparse
import json
import pathlib
import random
import tomllib
from datetime import date, timedelta

ROOT = pathlib.Path(__file__).resolve().parents[2]
FOLDERS = [ROOT / "crates" / "leaflets", ROOT / "tests" / "supering" / "leaflets"]
PLACES = {"gb": ["gb"], "us": ["us"], "ch": ["ch"], "eu": ["eu"], "ni": ["gb", "eu"]}
PLACES |= {member: [member, "eu"] for member in ("de", "it", "pl", "fr", "at", "se")}
CLOCK = ["08:00", "09:30", "12:00", "15:00"]


def leaflets_by_place():
    found = {}
    for folder in FOLDERS:
        for path in sorted(folder.glob("*/*.toml")):
            if path.parent.name != "law":
                found.setdefault(path.parent.name, []).append(tomllib.loads(path.read_text(encoding="utf-8")))
    return found


class Draft:
    """A holding being written; entries are numbered as they are added."""

    def __init__(self, start):
        self.start, self.entries = start, []

    def day(self, number):
        return (self.start + timedelta(days=number)).isoformat()

    def add(self, number, kind, body, at=None, corrects=None, reason=None):
        entry = {"id": f"00000000-0000-7000-8000-{len(self.entries) + 1:012d}", "on": self.day(number), "at": at, "kind": kind,
                 "body": {field: value for field, value in body.items() if value is not None}, "corrects": corrects, "reason": reason}
        entry = {field: value for field, value in entry.items() if value is not None}
        self.entries.append(entry)
        return entry

    def line(self, ask):
        return json.dumps({"entries": self.entries, "ask": ask})


# ---- random -----------------------------------------------------------------------------------------------------------------


class RandomHolding:
    def __init__(self, rng, leaflets):
        self.rng = rng
        self.draft = Draft(date(2025, 12, 10) if rng.random() < 0.15 else date(2026, 3, 1))
        self.days = sorted(rng.sample(range(1, 120), 6))  # few days, so that events meet
        self.days += [day + more for day in self.days for more in (1, 7, 14) if day + more < 120 and rng.random() < 0.3]
        self.place = rng.choice(["gb", "eu", "de", "it", "pl", "fr", "at", "se", "us", "ch", "ni"]) if rng.random() < 0.25 else "zz"
        self.leaflets = [leaflet for place in PLACES.get(self.place, [self.place]) for leaflet in leaflets.get(place, [])]
        self.lots, self.prescriptions, self.doses = {}, [], []
        self.apiaries = ["East", "West"][: rng.choice([1, 2])]
        self.colonies = [f"A{number}" for number in range(1, rng.choice([1, 1, 2, 2, 3, 4]) + 1)]
        self.alive = list(self.colonies)
        self.write()

    def chance(self, share):
        return self.rng.random() < share

    def at(self):
        return self.rng.choice(CLOCK) if self.chance(0.25) else None

    def some(self, names):
        return sorted(self.rng.sample(names, self.rng.randint(1, min(len(names), 3))))

    def terms(self, full=False):
        """Stated terms: some, or (with `full`) most of those that a yes needs."""
        rng = self.rng
        share = 0.85 if full else 0.3
        choices = {"supers_during": ["off", "off", "on", "on_no_harvest"], "withdrawal_days": [0, 0, 3, 10, 14], "wait_after_removal_days": [0, 0, 5, 14],
                   "removal": ["needed", "not_needed", "nothing_stays"], "stay_min_days": [7, 14, 42]}
        terms = {topic: rng.choice(values) for topic, values in choices.items() if self.chance(share)}
        rare = {"stay_min_days_with_brood": [7, 42, 70], "stay_max_days": [10, 21, 56], "doses": [1, 2, 3], "flow_before_days": [0, 7, 21]}
        terms |= {topic: rng.choice(values) for topic, values in rare.items() if self.chance(0.12)}
        if "withdrawal_days" not in terms and self.chance(0.1):
            terms["withdrawal"] = "none_by_label"
        if terms.get("removal") == "nothing_stays" and self.chance(0.8):
            terms = {topic: value for topic, value in terms.items() if not topic.startswith("stay")}
        return terms or {"withdrawal_days": rng.choice([0, 3, 10])}

    def write(self):
        rng, draft = self.rng, self.draft
        if self.chance(0.98):
            draft.add(0, "holding_details", {"keeper": "K", "jurisdiction": self.place})
        if self.chance(0.04):
            draft.add(rng.choice(self.days), "holding_details", {"keeper": "K", "jurisdiction": rng.choice(["zz", "gb", "eu", "us"])})
        for apiary in self.apiaries:
            draft.add(0, "apiary_details", {"apiary": apiary})
        for colony in self.colonies:
            body = {"colony": colony, "apiary": rng.choice(self.apiaries), "medicines": "not_known" if self.chance(0.07) else "none"}
            draft.add(rng.choice([0, 0, 0, self.days[0]]), "colony_established", body)
        self.write_medicines()
        if self.chance(0.4):
            self.write_flow()
        if self.chance(0.4):
            self.write_prescription()
        kinds = {self.write_dose: 28, self.write_removal: 22, self.write_split: 9, self.write_uniting: 5, self.write_move: 4,
                 self.write_end: 1, self.write_supers: 4, self.write_inspection: 6, self.write_reading: 13, self.write_prescription: 2, self.write_flow: 4}
        self.write_dose(self.days[0])
        for day in sorted(rng.choices(self.days, k=rng.randint(2, 14))):
            rng.choices(list(kinds), weights=list(kinds.values()))[0](day)
            if self.chance(0.16):
                self.write_correction()
        for _ in range(rng.choice([0, 0, 1, 2])):
            self.write_correction()
        if self.chance(0.25):  # something is written down later than what came after it
            entries = draft.entries
            entries.insert(rng.randint(len(entries) // 2, len(entries)), entries.pop(rng.randrange(len(entries) // 2, len(entries))))

    def write_medicines(self):
        rng, draft = self.rng, self.draft
        lots = [f"L{number}" for number in range(1, rng.choice([1, 2, 2, 3, 4]) + 1)]
        for number in range(1, rng.choice([1, 1, 2, 3]) + 1):
            way = rng.choices(["leaflet", "declared", "both", "neither"], weights=[60, 25, 10, 5])[0]
            leaflet = rng.choice(self.leaflets) if self.leaflets and way in ("leaflet", "both") else {}
            body = {"medicine": f"m{number}", "pack_name": f"M{number} (invented)", "unit": leaflet.get("unit", "strip"), "leaflet": leaflet.get("id")}
            body["terms"] = self.terms(full=True) if way in ("declared", "both") else None
            draft.add(0, "medicine_described", body)
            mine = lots if number == 1 else lots[number - 1:number]  # the first lot names that are left go to the first medicine
            for lot in mine:
                if lot not in self.lots or self.chance(0.5):
                    self.lots[lot] = (f"m{number}", leaflet)
        for lot, (medicine, leaflet) in self.lots.items():
            revision = rng.choice(leaflet.get("revisions", ["2020"])) if self.chance(0.4) else None
            kind, whose = rng.choice([("lot_acquired", {"quantity": 1000})] * 3 + [("vet_lot", {"vet": "V. Vet (invented)"})])
            draft.add(rng.choice([0, 0, self.days[0]]), kind, {"lot": lot, "medicine": medicine, **whose, "label_revision": revision})

    def write_dose(self, day):
        rng = self.rng
        before = rng.choice(self.doses) if self.doses and self.chance(0.4) else None
        medicine = self.lots[before["body"]["given"][0]["lot"]][0] if before else rng.choice(list(self.lots.values()))[0]
        lots = [lot for lot, (of, _) in self.lots.items() if of == medicine or self.chance(0.02)]
        given = []
        for lot in rng.sample(lots, min(len(lots), rng.choice([1, 1, 1, 2]))):
            given.append({"lot": lot, "each": rng.choice([1, 2]), "colonies": self.some(self.alive)})
        ways = self.lots[given[0]["lot"]][1].get("methods", [])
        body = {"given": given, "method": rng.choice(ways) if ways and self.chance(0.7) else None, "continues": before and before["id"],
                "withdrawal_days": rng.choice([0, 0, 3, 10, 14]) if self.chance(0.25) else None}
        named = [name for name, of in self.prescriptions if of == medicine]
        body["prescription"] = rng.choice(named) if named and self.chance(0.4) else None
        self.doses.append(self.draft.add(day, "administration", body, self.at()))

    def write_removal(self, day):
        if not self.doses:
            return
        dose = self.rng.choice([self.rng.choice(self.doses), self.doses[-1]])
        colonies = sorted({colony for given in dose["body"]["given"] for colony in given["colonies"] if colony in self.alive})
        if not colonies or self.chance(0.2):
            colonies = self.some(self.alive)  # where it may have come by a split or a uniting
        body = {"administration": dose["id"] if self.chance(0.1) else dose["body"].get("continues", dose["id"]), "colonies": colonies,
                "left_inside": 1 if self.chance(0.12) else None}
        self.draft.add(day, "removal", body, self.at())

    def write_split(self, day):
        if len(self.colonies) >= 5:
            return
        new = f"A{len(self.colonies) + 1}"
        body = {"colony": self.rng.choice(self.alive), "into": new, "to": self.rng.choice(self.apiaries + [None]),
                "strips": self.rng.choice(["stayed", "went", "both", None])}
        self.draft.add(day, "colony_split", body, self.at())
        self.colonies.append(new)
        self.alive.append(new)

    def write_uniting(self, day):
        if len(self.alive) < 2:
            return
        ends, into = self.rng.sample(self.alive, 2)
        self.draft.add(day, "colony_united", {"colony": ends, "into": into, "strips": self.rng.choice(["went_along", "taken_out", None])}, self.at())
        self.alive.remove(ends)

    def write_move(self, day):
        self.draft.add(day, "colony_moved", {"colony": self.rng.choice(self.alive), "to": self.rng.choice(self.apiaries)}, self.at())

    def write_end(self, day):
        if len(self.alive) > 1:
            colony = self.rng.choice(self.alive)
            self.draft.add(day, "colony_ended", {"colony": colony, "cause": "died"}, self.at())
            self.alive.remove(colony)

    def write_supers(self, day):
        colonies = self.some(self.alive)
        if self.chance(0.6):
            purpose = self.rng.choice(["harvest", "bees_only"])
            self.draft.add(day, "supers_on", {"colonies": colonies, "supers": 1, "purpose": purpose}, self.at())
        else:
            self.draft.add(day, "supers_off", {"colonies": colonies, "left_on": 0}, self.at())

    def write_inspection(self, day):
        body = {"colony": self.rng.choice(self.alive), "brood": self.rng.choice(["absent", "lowest", "present"])}
        self.draft.add(day, "inspection", body, self.at())

    def write_reading(self, day):
        """On the day of a dose, the day before or after it, or any day."""
        if self.doses and self.chance(0.5):
            day = (date.fromisoformat(self.rng.choice(self.doses)["on"]) - self.draft.start).days + self.rng.choice([-1, 0, 0, 1])
        lot = self.rng.choice(list(self.lots))
        self.draft.add(max(day, 0), "leaflet_reading", {"lot": lot, "terms": self.terms(full=self.chance(0.3))}, self.at())

    def write_prescription(self, day=0):
        name, medicine = f"P{len(self.prescriptions) + 1}", self.rng.choice(list(self.lots.values()))[0]
        self.prescriptions.append((name, medicine))
        body = {"prescription": name, "vet": "V", "medicine": medicine, "terms": self.terms(full=self.chance(0.3))}
        self.draft.add(self.rng.choice([day, 0]), "prescription", body)

    def write_flow(self, day=0):
        rng = self.rng
        first = rng.choice(self.days) + rng.choice([-7, 0, 3, 10, 14, 15, 40])
        body = {"apiary": rng.choice(self.apiaries), "forage": rng.choice(["lime", "lime", "sycamore"]),
                "stage": rng.choice(["expected", "seen"]), "from": self.draft.day(first)}
        if body["stage"] == "expected":
            body["from_early"] = self.draft.day(first - rng.choice([3, 7])) if self.chance(0.4) else None
            body["from_late"] = self.draft.day(first + rng.choice([3, 7])) if self.chance(0.4) else None
        body["to"] = self.draft.day(first + rng.choice([5, 10, 30])) if self.chance(0.6) else None
        self.draft.add(rng.choice([0, day, max(first, 0)]) if body["stage"] == "expected" else max(first, 0), "nectar_flow", body)

    def write_correction(self):
        """Strikes an entry out, or corrects it: unchanged, or with another amount, day, time or text."""
        rng = self.rng
        old = rng.choice([entry for entry in self.draft.entries if entry["kind"] not in ("holding_details", "apiary_details", "strike_out")])
        day = (date.fromisoformat(old["on"]) - self.draft.start).days
        if old["kind"] not in ("colony_established", "medicine_described", "lot_acquired", "vet_lot") and self.chance(0.25):
            self.draft.add(day, "strike_out", {}, corrects=old["id"], reason="did not happen")
            return
        body, at = json.loads(json.dumps(old["body"])), old.get("at")
        change = rng.choice(["same", "body", "body", "day", "day", "time"])
        if change == "day":
            day = rng.choice([day - 1, day + 1, rng.choice(self.days)])
        elif change == "time":
            at = rng.choice(CLOCK + [None])
        elif change == "body":
            self.reword(old["kind"], body)
        new = self.draft.add(max(day, 0), old["kind"], body, at, corrects=old["id"], reason="misread")
        if old["kind"] == "administration" and self.chance(0.7):
            self.doses.append(new)

    def reword(self, kind, body):
        rng = self.rng
        if kind == "administration":
            part = rng.choice(body["given"])
            part["each"] = rng.choice([1, 2, 3])
            if self.chance(0.3):
                part["colonies"] = self.some(self.colonies)
            if self.chance(0.3):
                part["lot"] = rng.choice(list(self.lots))
            if self.chance(0.3):
                body["withdrawal_days"] = rng.choice([0, 3, 10, None])
            if self.chance(0.2):
                body["continues"] = rng.choice(self.doses)["id"] if self.chance(0.5) else None
        elif kind == "removal":
            body["left_inside"] = rng.choice([0, 1])
            if self.chance(0.3):
                body["colonies"] = self.some(self.colonies)
        elif kind == "colony_split":
            body["strips"] = rng.choice(["stayed", "went", "both", None])
        elif kind == "colony_united":
            body["strips"] = rng.choice(["went_along", "taken_out", None])
        elif kind in ("leaflet_reading", "prescription"):
            body["terms"] = self.terms()
        elif kind == "colony_established":
            body["medicines"] = rng.choice(["none", "not_known"])
        elif kind in ("lot_acquired", "vet_lot"):
            body["label_revision"] = rng.choice(["2020", None])
        elif kind == "inspection":
            body["brood"] = rng.choice(["absent", "present"])

    def ask(self):
        """Every colony on about twelve days: near events, near the ends of periods, and some far away."""
        rng, asked = self.rng, []
        events = sorted({(date.fromisoformat(entry["on"]) - self.draft.start).days for entry in self.draft.entries})
        near = {event + more for event in events for more in (-1, 0, 0, 1)}
        ends = {event + span + more for event in events for span in (3, 5, 7, 10, 14, 21, 42, 56) for more in (0, 1)}
        for colony in self.colonies:
            days = rng.sample(sorted(near), min(6, len(near))) + rng.sample(sorted(ends), min(5, len(ends)))
            days.append(rng.choice([-1, 130, 200, 330, 500]))
            asked += [[colony, self.draft.day(day)] for day in sorted(set(days))]
        return asked


def random_holdings(seed, count):
    leaflets = leaflets_by_place()
    for number in range(count):
        holding = RandomHolding(random.Random(f"{seed}/{number}"), leaflets)
        for entry in holding.draft.entries:  # a field that was taken away again is left out
            entry["body"] = {field: value for field, value in entry["body"].items() if value is not None}
        yield holding.draft.line(holding.ask())


# ---- exhaustive -------------------------------------------------------------------------------------------------------------

LEAFLETS = ["strip-withdrawal-10", "strip-wait-14", "spent-after-7", "perhaps-spent-after-7", "shot-wait-14", "under-supers",
            "removal-unread", "two-doses"]
READ = [{"withdrawal_days": 3}, {"withdrawal_days": 12}, {"supers_during": "on"}, {"removal": "not_needed"},
        {"removal": "nothing_stays"}, {"wait_after_removal_days": 2}]


def courses():
    """At most two courses, or a course with a later dose: (day of the first, day of the second, does it continue, days of removal)."""
    for out in (None, 0, 1, 7, 14):
        yield None, False, (out,)
    for second in (0, 1, 7, 14):
        for out in (None, 7, 14):
            yield second, True, (out,)
            for out_second in (None, 7, 14):
                if out_second is None or out_second >= second:
                    yield second, False, (out, out_second)


def extras():
    """At most one other event."""
    yield None, None, None
    for day in (-1, 0, 1, 7):
        for terms in READ:
            yield "leaflet_reading", day, terms
    for day in (0, 1, 7):
        for strips in ("stayed", "went", "both", None):
            yield "colony_split", day, strips
    for day in (1, 7):
        for strips in ("went_along", "taken_out", None):
            yield "colony_united", day, strips
    for what in ("dose", "removal"):
        for day in (1, 7, None):
            yield "correction", day, what
    for days in (3, 12):
        yield "prescription", 0, {"withdrawal_days": days}


def write_history(leaflet, second, continues, out, extra):
    kind, day, how = extra
    draft = Draft(date(2026, 3, 10))
    draft.add(-5, "holding_details", {"keeper": "K", "jurisdiction": "zz"})
    draft.add(-5, "apiary_details", {"apiary": "East"})
    for colony in ["A", "B"] if kind == "colony_united" else ["A"]:
        draft.add(-5, "colony_established", {"colony": colony, "apiary": "East", "medicines": "none"})
    draft.add(-5, "medicine_described", {"medicine": "m", "pack_name": "M (invented)", "unit": leaflet["unit"], "leaflet": leaflet["id"]})
    draft.add(-5, "lot_acquired", {"lot": "L", "medicine": "m", "quantity": 100})
    named = "P" if kind == "prescription" else None
    if named:
        draft.add(day, kind, {"prescription": named, "vet": "V", "medicine": "m", "terms": how})
    if kind == "leaflet_reading" and day < 0:
        draft.add(day, kind, {"lot": "L", "terms": how})

    def dose(colony, goes_on=None, prescription=None):
        return {"given": [{"lot": "L", "each": 1, "colonies": [colony]}], "continues": goes_on, "prescription": prescription}

    first = draft.add(0, "administration", dose("A", prescription=named))
    steps = [] if second is None else [(second, 0, "administration", None)]
    steps += [(out[course], 2, "removal", course) for course in range(len(out)) if out[course] is not None]
    if kind in ("leaflet_reading", "colony_split", "colony_united") and day >= 0:
        steps.append((day, 1, kind, how))
    doses, removals, ask_b = [first], [], kind == "colony_split"
    for on, _, what, detail in sorted(steps, key=lambda step: step[:2]):
        if what == "administration":
            # with two colonies the second course is in the one that is united into the first
            doses.append(draft.add(on, what, dose("B" if kind == "colony_united" and on < day else "A", first["id"] if continues else None)))
        elif what == "removal":
            removals.append(draft.add(on, what, {"administration": doses[min(detail, len(doses) - 1)]["id"], "colonies": ["A"]}))
        elif what == "leaflet_reading":
            draft.add(on, what, {"lot": "L", "terms": detail})
        elif what == "colony_split":
            draft.add(on, what, {"colony": "A", "into": "B", "strips": detail})
        else:
            draft.add(on, what, {"colony": "B", "into": "A", "strips": detail})
    if kind == "correction":
        entries = doses if how == "dose" else removals
        if not entries:
            return None
        old = entries[-1]
        if day is None:
            draft.add((date.fromisoformat(old["on"]) - draft.start).days, "strike_out", {}, corrects=old["id"], reason="did not happen")
        else:
            draft.add(day, old["kind"], old["body"], corrects=old["id"], reason="misread")
    events = {0, *(step[0] for step in steps)} | ({day} if day is not None else set())
    spans = {0, 3, 7, 10, 12, 14}
    near = {event + more for event in events for more in (-1, 0, 1)}
    days = sorted(near | {event + span + more for event in events for span in spans for more in (0, 1)} | {60})
    asked = [["A", draft.day(at)] for at in days]
    return draft.line(asked + [["B", draft.day(at)] for at in days if ask_b and at >= day])


def exhaustive_holdings():
    known = {leaflet["id"]: leaflet for leaflet in leaflets_by_place()["zz"]}
    for leaflet in LEAFLETS:
        for second, continues, out in courses():
            for extra in extras():
                line = write_history(known[leaflet], second, continues, out, extra)
                if line is not None:
                    yield line


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    ways = parser.add_subparsers(dest="way", required=True)
    by_chance = ways.add_parser("random")
    by_chance.add_argument("--seed", type=int, required=True)
    by_chance.add_argument("--count", type=int, required=True)
    ways.add_parser("exhaustive")
    asked = parser.parse_args()
    for line in random_holdings(asked.seed, asked.count) if asked.way == "random" else exhaustive_holdings():
        print(line)


if __name__ == "__main__":
    main()
