"""A plain reading of RULES.md: may a honey super stand on a colony on a day?

Usage: python3 reading.py FOLDER... < holdings.jsonl, where FOLDERs hold leaflets as <jurisdiction>/<id>.toml. The headings are
those of RULES.md. Days are ordinals; every stated value is a number of which the larger is the stricter (4, "Strictness").
"""
import json, math, sys, tomllib
from bisect import bisect_right
from collections import defaultdict, namedtuple
from datetime import date
from functools import cache
from pathlib import Path

NO, UNKNOWN, YES = 0, 1, 2  # the weakest is the smallest (2.4)
NONE_BY_LABEL, WITHOUT_DAYS = -1, math.inf  # the loosest withdrawal (counts as 0 days); the strictest time before a flow
WORDS = {"supers_during": {"on": 0, "on_no_harvest": 1, "off": 2}, "removal": {"nothing_stays": 0, "not_needed": 1, "needed": 2}}
STAYS = ("stay_min_days", "stay_min_days_with_brood", "stay_max_days")
UNION = set("at be bg hr cy cz de dk ee el es eu fi fr gr hu ie it lt lu lv mt nl pl pt ro se si sk".split())
Dose = namedtuple("Dose", "entry lots")  # the lots that were given to the colony
# out_at: time of its end; begun: by this dose here; brought: how many doses came along; via: colonies united into the next, days
Line = namedtuple("Line", "course doses here until doubt out out_at begun brought via", defaults=(None,) * 5 + (0, ()))
Terms = namedtuple("Terms", "in_says withdrawal wait flow_before acts days sure")  # in_says: 6; the next two: (value, documented)
to_day = cache(lambda text: date.fromisoformat(text).toordinal())
year = cache(lambda day: date.fromordinal(day).year)
# ---- Leaflets (4, and crates/leaflets/COVERAGE.md)
def read_leaflets(folders):
    leaflets = {}
    for path in sorted(path for folder in folders for path in Path(folder).glob("*/*.toml") if path.parent.name != "law"):
        leaflet = tomllib.loads(path.read_text(encoding="utf-8"))
        sources = {source["id"]: source for source in leaflet["source"]}
        for rule in leaflet["rule"]:
            rule["terms"], rule["by"] = as_terms(rule), [sources[name] for name in rule["source"]]
        leaflets[leaflet["jurisdiction"], leaflet["id"]] = leaflet
    return leaflets
def as_terms(rule):  # in the words in which persons state terms
    kind, days = rule["kind"], rule.get("days")
    if kind in WORDS:
        return {kind: rule["value"]}
    if kind == "withdrawal" and rule.get("none_by_label"):
        return {"withdrawal": "none_by_label"}
    if kind == "flow_before" and days is None:
        return {"flow_before_days": WITHOUT_DAYS if rule["value"] == "forbidden" else 0}
    if kind == "stay_min" and rule.get("brood"):  # each value for itself
        return dict.fromkeys(STAYS[:2]) | {STAYS[rule["brood"] == "present"]: days}
    return {kind + "_days": days}
def said(terms, topic):  # or None; the body of a dose is read as terms too (packs)
    if topic in WORDS:
        return WORDS[topic].get(terms.get(topic))
    if topic == "withdrawal_days" and terms.get("withdrawal") == "none_by_label":
        return terms.get(topic, NONE_BY_LABEL)
    return terms.get(topic, terms.get("stay_min_days") if topic == "stay_min_days_with_brood" else None)
def holds(leaflet, law):
    return leaflet is not None and (law in ("eu", leaflet["jurisdiction"]) or law in leaflet.get("states", [law]))
def is_document(leaflet, rule, law):  # another country's counts as second hand; for `ni` every value does
    countries = {source.get("country") for source in rule["by"] if source["kind"] == "authority"}
    share_one_text = law in leaflet.get("states", ()) and not countries.isdisjoint(leaflet["states"])
    of_union = leaflet["jurisdiction"] == "eu" and (share_one_text or any(source["kind"] == "union" for source in rule["by"]))
    return rule["confidence"] == "document" and law != "ni" and (law in countries or of_union)
# ---- 1. Which entries count
class Entry:
    def __init__(self, raw, before):  # `before`: the entry that this one corrects, as it stood then
        self.on, self.at, self.kind, self.body = to_day(raw["on"]), raw.get("at"), raw["kind"], raw.get("body") or {}
        self.place = before.place if before and (before.on, before.at) == (self.on, self.at) else raw["seq"]
        self.order = (self.on, self.kind != "colony_established", self.at is None, self.at or "", self.place)  # 1.2
        given = [colony for part in self.body.get("given", ()) for colony in part["colonies"]]
        self.colonies = {*given, *self.body.get("colonies", ()), self.body.get("colony"), self.body.get("into")} - {None}
class Holding:
    def __init__(self, raw, leaflets):
        self.leaflets, self.root, self.standing, newest = leaflets, {}, {}, {}
        for entry in sorted(raw, key=lambda entry: entry["seq"]):
            # 1.1, 1.4: `root` is the first entry of a chain of corrections
            root = self.root[entry["id"]] = self.root.get(entry.get("corrects"), entry["id"])
            new = Entry(entry, newest.get(root))
            self.standing[root] = None if new.kind == "strike_out" else new
            newest[root] = self.standing[root] or newest.get(root)
        self.entries = sorted((entry for entry in self.standing.values() if entry), key=lambda entry: entry.order)
        self.of_kind, self.events = defaultdict(list), defaultdict(lambda: defaultdict(list))  # events: of a colony on a day
        for entry in self.entries:
            self.of_kind[entry.kind].append(entry)
            for colony in entry.colonies:
                self.events[colony][entry.on].append(entry)
        self.days = {colony: list(events) for colony, events in self.events.items()}
        self.medicines = {entry.body["medicine"]: entry.body for entry in self.of_kind["medicine_described"]}
        self.prescriptions = {entry.body["prescription"]: entry.body for entry in self.of_kind["prescription"]}
        self.lots = {entry.body["lot"]: entry.body for kind in ("lot_acquired", "vet_lot") for entry in self.of_kind[kind]}
        for method in ("lines", "terms", "flows", "line_timeline", "timeline"):  # each is worked out once
            setattr(self, method, cache(getattr(self, method)))
        # ---- 2. The colony
        self.ended, self.entered, self.not_known, self.moves = {}, {}, {}, defaultdict(list)  # first days; moves: section 7
        for entry in self.entries:
            body, kind, day, colony, into = entry.body, entry.kind, entry.on, entry.body.get("colony"), entry.body.get("into")
            if kind in ("colony_established", "colony_split"):
                self.entered.setdefault(into or colony, day)
            if kind in ("colony_ended", "colony_united"):
                self.ended.setdefault(colony, day)
            if kind == "colony_established" and body.get("medicines") == "not_known":
                self.not_known.setdefault(colony, day)
            if into and colony in self.not_known:  # 2.3, in the order of section 1
                self.not_known.setdefault(into, day)
            if kind in ("colony_established", "colony_moved", "colony_split"):
                self.moves[into or colony].append(entry)
    def timeline(self, colony, day):  # [(first day, verdict), ...] from a day with events on, by the record of that day
        ended = self.ended.get(colony, math.inf) <= day
        if ended or self.entered.get(colony, math.inf) > day:
            return [(day, NO if ended else UNKNOWN)]  # 2.1, 2.2
        courses = [self.line_timeline(colony, line) for line in self.lines(colony, day) if line.until is None]
        most = UNKNOWN if self.not_known.get(colony, math.inf) <= day else YES  # 2.3
        steps = sorted({day} | {start for course in courses for start, _ in course if start > day})
        return joined([(step, min([most, *(at_day(course, step) for course in courses)])) for step in steps])  # 2.4
    # ---- 3. The courses of a colony
    def lines(self, colony, day, skip=frozenset()):
        """The lines of a colony by the end of a day. `skip`: events without effect meanwhile (3.5)."""
        days = [other for other in self.days.get(colony, ()) if other <= day]
        if not days:
            return ()
        last_skip = frozenset(event for event in skip if event.on == days[-1])
        if (days[-1], last_skip) != (day, skip):
            return self.lines(colony, days[-1], last_skip)
        lines = list(self.lines(colony, day - 1))
        for event in (event for event in self.first_doses_first(self.events[colony][day]) if event not in skip):
            if event.kind == "administration":
                self.give(lines, event, colony, skip)
            elif event.kind == "removal":
                self.take_out(lines, event, colony)
            elif event.body.get("into") == colony:
                self.bring(lines, event, skip)
            elif event.kind == "colony_split":
                self.split(lines, event, colony)
        return tuple(lines)
    def first_doses_first(self, events):  # 1.2
        events = list(events)
        for event in [event for event in events if event.kind == "administration"]:
            first = self.standing.get(self.root.get(event.body.get("continues")))
            if first in events and events.index(first) > events.index(event):
                events.remove(event)
                events.insert(events.index(first) + 1, event)
        return events
    def course_here(self, lines, entry_id):  # the course that an id names in this colony; None if it never reached it
        for _ in self.entries:  # at most; contradictory entries may continue each other
            entry = self.standing.get(self.root.get(entry_id))  # 1.4
            found = [line.course for line in lines if entry in (line.course, *(dose.entry for dose in line.doses))]
            if found or entry is None:
                return found[0] if found else None
            entry_id = entry.body.get("continues")
        return None
    def later_doses(self, lines, colony, course, day):  # but the first, and but those that are courses of their own
        own = {line.course for line in lines}
        return [event for event in self.events[colony][day] if event.kind == "administration" and event not in own
                and self.course_here(lines, event.body.get("continues")) is course]
    def give(self, lines, event, colony, skip):
        course, day = self.course_here(lines, event.body.get("continues")), event.on
        dose = Dose(event, tuple(sorted({part["lot"] for part in event.body["given"] if colony in part["colonies"]})))
        doubt = day if any(other.kind == "colony_split" and other.body["colony"] == colony and other not in skip  # 3.6
                           and untold(event, other) and other.body.get("strips") not in ("stayed", "both")
                           for other in self.events[colony][day]) else None
        if course is None:  # 3.1
            return lines.append(Line(event, (dose,), day, doubt=doubt, begun=event))
        of_course = [line for line in lines if line.course is course]  # 3.2
        certain = [line for line in of_course if (line.until, line.doubt) == (None, None) and line.out in (None, day)]
        for line in certain:
            lines[lines.index(line)] = line._replace(doses=(*line.doses, dose), out=None, out_at=None, doubt=doubt)
        if not certain:
            lines.append(Line(course, (*of_course[-1].doses, dose), day, doubt=doubt, begun=event, brought=of_course[-1].brought))
    def take_out(self, lines, event, colony):
        course, day = self.course_here(lines, event.body.get("administration")), event.on  # 3.3
        of_course = [line for line in lines if line.course is course]
        opened = [line for line in of_course if is_open(line)]
        if event.body.get("left_inside"):
            if of_course and all(line.doubt is not None for line in opened):
                lines.append(Line(course, (opened or of_course)[-1].doses, day, brought=(opened or of_course)[-1].brought))
        elif not any(untold(later, event) or later.at > event.at for later in self.later_doses(lines, colony, course, day)):
            for line in opened or of_course[-1:]:
                if opened:
                    ends = {"until": day} if line.doubt is not None else {"out": day, "out_at": event.at}
                    lines[lines.index(line)] = line._replace(**ends)
                if not opened or line.doubt is not None:
                    lines.append(line._replace(here=day, until=None, doubt=None, out=day, out_at=event.at))
    def split(self, lines, event, colony):
        day, strips = event.on, event.body.get("strips")  # 3.4, the old colony
        for place, line in enumerate(lines):
            dosed = any(dose.entry.on == day and untold(dose.entry, event) for dose in line.doses[line.brought:])
            if not is_open(line) or strips in ("stayed", "both") or dosed:
                continue  # 3.6: the doubt about a dose is raised where the dose is given
            if strips == "went":
                lines[place] = line._replace(out=day, out_at=event.at)
            else:
                lines[place] = line._replace(doubt=line.doubt or day)
    def bring(self, lines, event, skip):  # 3.4 and 3.5: what a split brings to the new colony, a uniting to the one that takes in
        day, strips, other = event.on, event.body.get("strips"), event.body["colony"]
        for line in self.lines(other, day, skip | {event}):  # so its own doubt is not counted
            began = [dose for dose in (line.course, line.begun) if dose and dose.on == day]
            if line.until or (event.at and any((dose.at or "") > event.at for dose in began)):
                continue
            if line.out == day and not (event.at and line.out_at and line.out_at < event.at):
                line = line._replace(out=None, out_at=None)
            said_open = {}
            if strips in ("stayed", "taken_out"):
                said_open = {"out": day, "out_at": event.at}
            elif strips not in ("went", "both", "went_along") or event.kind == "colony_split" and begun_then(line, event):  # 3.6
                said_open = {"doubt": line.doubt or day}
            via = line.via + (((other, day),) if event.kind == "colony_united" else ())
            copy = line._replace(here=day, begun=None, brought=len(line.doses), via=via, **(said_open if is_open(line) else {}))
            places = [self.stood_since(event.body["into"], line.via, copy.out) for line in (*lines, copy)]
            if not any(says_all(here, copy, there == places[-1]) for here, there in zip(lines, places)):
                lines.append(copy)
    # ---- 4. The terms of a line
    def terms(self, doses):
        first, lots = doses[0].entry, sorted({lot for dose in doses for lot in dose.lots})
        stated = [entry for entry in self.of_kind["holding_details"] if entry.body.get("jurisdiction")]  # 1.3
        law = ([entry for entry in stated if entry.on <= first.on] or stated[:1])[-1].body["jurisdiction"] if stated else ""
        shelves = ["gb", "eu"] if law == "ni" else [law, "eu"] if law in UNION else [law]
        medicines = {lot: self.medicines.get(self.lots.get(lot, {}).get("medicine"), {}) for lot in lots}
        keys = {lot: [(shelf, medicine.get("leaflet")) for shelf in shelves] for lot, medicine in medicines.items()}
        found = self.leaflets.get
        leaflets = {lot: next((found(key) for key in keys[lot] if holds(found(key), law)), {}) for lot in lots}
        def of_leaflet(topic, lot, revision):
            method, day = first.body.get("method"), date.fromordinal(first.on)
            rules = [rule for rule in leaflets[lot].get("rule", ()) if said(rule["terms"], topic) is not None
                     and rule["force"] in ("law", "label") and rule.get("from", day) <= day <= rule.get("until", day)
                     and (method is None or rule.get("method", method) == method)
                     and (revision is None or rule.get("revision", revision) == revision)]
            return (max((said(rule["terms"], topic) for rule in rules), default=None),
                    bool(rules) and all(is_document(leaflets[lot], rule, law) for rule in rules))
        def of_lot(topic, lot):  # rule 1
            given = [dose.entry for dose in doses if lot in [part["lot"] for part in dose.entry.body["given"]]]
            day = min(entry.on for entry in given)
            read = [entry for entry in self.of_kind["leaflet_reading"] if entry.body["lot"] == lot]
            stating = [entry for entry in read if said(entry.body.get("terms") or {}, topic) is not None]
            newest = max((entry.on for entry in stating if entry.on <= day), default=None)
            values = [(entry.on > day, said(entry.body["terms"], topic)) for entry in stating if entry.on >= (newest or day)]
            values += [(entry.on > day, said(entry.body, topic)) for entry in given if topic == "withdrawal_days"]
            by_then, later = ([value for late, value in values if late == of and value is not None] for of in (False, True))
            if by_then:
                return max(by_then + later), True
            noted = [entry.body["label_revision"] for entry in read if entry.on <= day and entry.body.get("label_revision")]
            revision = self.lots.get(lot, {}).get("label_revision") or (noted[-1] if noted else None)
            (value, document), declared = of_leaflet(topic, lot, revision), said(medicines[lot].get("terms") or {}, topic)
            if later:
                held = value if document else declared if value is None else None
                return max(later + ([] if held is None else [held])), True
            return (value, document) if value is not None else (declared, declared is not None)
        def of_all(topic):  # rules 2 and 3
            named = [self.prescriptions.get(dose.entry.body.get("prescription"), {}).get("terms") or {} for dose in doses]
            parts = [(said(terms, topic), True) for terms in named if said(terms, topic) is not None]
            parts += [of_lot(topic, lot) for lot in lots if len(parts) < len(doses)]
            value = max((value for value, _ in parts if value is not None), default=None)
            return value, value is not None and all(documented for _, documented in parts)
        def states_days(lot):
            asked = [leaflets[lot]] if medicines[lot].get("leaflet") or not medicines[lot] else (
                leaflet for (shelf, _), leaflet in self.leaflets.items() if shelf in shelves and holds(leaflet, law))
            return any(rule["terms"].get("withdrawal_days") is not None for leaflet in asked for rule in leaflet.get("rule", ()))
        withdrawal, wait, removal = of_all("withdrawal_days"), of_all("wait_after_removal_days"), of_all("removal")
        if withdrawal[1] and withdrawal[0] >= 0 and wait in ((None, False), (0, False)) and all(map(states_days, lots)):
            wait = (0, True)  # no further wait
        least, stays = ([stay for stay in map(of_all, topics) if stay[0] is not None] for topics in (STAYS[:2], STAYS))
        longest = max((days for days, _ in stays), default=1)
        # Release: slow if any lot is slow; single only if all are.
        releases = {leaflet.get("release") for leaflet in leaflets.values()}
        release = "slow" if "slow" in releases else "single" if releases == {"single"} else None
        if removal[0] == 0:
            release = None if least or release == "slow" else "single" if removal[1] else release  # nothing stays, yet it stays
            removal = (None, False)
        acts = "must come out" if removal[0] == 2 else "single" if (removal[0], release) == (None, "single") else "used up"
        days = longest if removal[0] is not None or release == "slow" else 0
        sure = bool(stays) and removal[1] and all(documented for _, documented in stays)
        supers, documented = of_all("supers_during")
        in_says = NO if supers == 2 else YES if documented else UNKNOWN  # 6, "In"
        return Terms(in_says, withdrawal, wait, of_all("flow_before_days")[0], acts, days, sure)
    # ---- 7. The time right before a flow
    def stays(self, colony):  # where a colony stood: [(apiary, first day, last day), ...]; on the day of a move at both apiaries.
        stays = []
        for entry in self.moves[colony]:
            apiary = entry.body.get("apiary") or entry.body.get("to")
            if entry.kind == "colony_split":  # before that it stood where the old colony did
                stays = [stay for stay in self.stays(entry.body["colony"]) if stay[1] <= entry.on]
                apiary = apiary or (stays[-1][0] if stays else None)
            stays = [(where, since, min(until, entry.on)) for where, since, until in stays if since < entry.on]
            since = stays.pop()[1] if stays and stays[-1][0] == apiary else entry.on
            stays.append((apiary, since, math.inf))
        return stays
    def stays_of_line(self, colony, via):
        stays = self.stays(via[0][0] if via else colony)
        for (_, day), into in zip(via, [name for name, _ in via[1:]] + [colony]):
            before = [(where, since, min(until, day)) for where, since, until in stays if since < day]
            for where, since, until in (stay for stay in self.stays(into) if stay[2] > day):
                since = before.pop()[1] if before and before[-1][0] == where else max(since, day)
                before.append((where, since, until))
            stays = before
        return stays
    def stood_since(self, colony, via, day):
        return day and [(where, max(since, day)) for where, since, until in self.stays_of_line(colony, via) if until >= day]
    def flows(self, colony, via):  # the flows of a line, cut to its time at each apiary: [(first day, last day), ...]
        kept = defaultdict(list)  # (apiary, forage): [(seen, first day, last day for overlaps, last day), ...]
        for entry in self.of_kind["nectar_flow"]:
            body, key, seen = entry.body, (entry.body["apiary"], entry.body.get("forage")), entry.body.get("stage") == "seen"
            parts = ("from", "from", "from") if seen else ("from", "from_early", "from_late")
            begins, first, late = (to_day(body.get(part) or body["from"]) for part in parts)
            end, last = late + 30, max(date(year(late), 12, 31).toordinal(), late + 90)
            if body.get("to"):
                end, last = to_day(body["to"]), to_day(body["to"]) + late - begins
            overlapped = [flow for flow in kept[key] if flow[1] <= end and first <= flow[2]]
            if seen or not any(flow[0] for flow in overlapped):
                gone = [flow for flow in kept[key] if (seen and flow[1] == first if flow[0] else flow in overlapped)]
                kept[key] = [flow for flow in kept[key] if flow not in gone] + [(seen, first, end, last)]
        return [(max(first, since), min(last, until)) for apiary, since, until in self.stays_of_line(colony, via)
                for (where, _), flows in kept.items() if where == apiary
                for _, first, _, last in flows if first <= until and last >= since]
    def line_timeline(self, colony, line):
        """What a line says (6) from its last event on. It can change only on the days tried here."""
        terms = self.terms(line.doses)
        flows = self.flows(colony, line.via) if terms.flow_before else []
        near = 14 if terms.flow_before == WITHOUT_DAYS else terms.flow_before or 0
        marks = {dose.entry.on for dose in line.doses} | {line.here, line.out, line.doubt} - {None}
        start = max(marks)
        marks |= {dose.entry.on + terms.days for dose in line.doses} | {first for first, _ in flows}
        periods = (-1, 0, terms.wait[0] or 0, terms.withdrawal[0] or 0, near)
        days = {start} | {mark + period + 1 for mark in marks for period in periods}
        days |= {day for first, last in flows for day in (first - near, last + 1, date(year(first), 1, 1).toordinal())}
        return joined([(day, line_says(line, terms, day, flows)) for day in sorted(days) if day >= start])

    # ---- 8. The days that are named (first rule)
    def answer(self, colony, day):
        states = [state for state in self.days.get(colony, ()) if state <= day] or [day]  # the days on which the record changes
        entered, ahead = self.entered.get(colony, math.inf), self.timeline(colony, states[-1])
        steps = [step for state, then in zip(states, [*states[1:], day + 1])  # each day by its own record
                 for step in self.timeline(colony, state) if step[0] < then]
        spans = [(start, end - 1, verdict) for (start, verdict), (end, _) in zip(steps, [*steps[1:], (day + 1, None)])]
        verdict = at_day(ahead, day)
        if verdict == YES:
            blocked = max((end for _, end, then in spans if then != YES and end >= entered), default=None)
            doses = [list(places(line, self.terms(line.doses), day)) for line in self.lines(colony, day) if line.until is None]
            outs = [max(out for _, _, out in of_line) for of_line in doses if not any(inside for inside, _, _ in of_line)]
            free = max([entered, *outs]) if blocked is None else blocked + 1
        else:
            free = next((start for start, then in ahead if start > day and then == YES), None)
            blocked = None if free is None else free - 1
            if free is None and ahead[-1][1] != NO:  # the days of *no* end
                spans += [(start, end - 1, then) for (start, then), (end, _) in zip(ahead, ahead[1:]) if end > day]
                blocked = max((end for _, end, then in spans if then == NO and end >= entered), default=None)
        blocked, free = (found and date.fromordinal(found).isoformat() for found in (blocked, free))
        return {"verdict": ("no", "unknown", "yes")[verdict], "last_blocked": blocked, "first_free": free}
# ---- 3. What is asked of lines
def untold(one, other):  # no times of day tell which of two entries of one day came first
    return not (one.at and other.at and one.at != other.at)
def is_open(line):
    return line.out is None and line.until is None
def begun_then(line, split):  # 3.6: a dose began it on the day of the split; no times tell the order
    return line.begun is not None and line.begun.on == split.on and untold(line.begun, split)
def says_all(here, copy, same_places):  # 3.4: a line is here already that says all that the copy says
    if (here.course, here.until, is_open(here)) != (copy.course, None, is_open(copy)) or not set(copy.doses) <= set(here.doses):
        return False
    if here.out:
        return here.out >= copy.out and same_places
    return here.doubt is None or here.doubt >= (copy.doubt or math.inf)

# ---- 5. Where a line is on D
def places(line, terms, day):
    """For each dose that counts: (whether it may be in, first and last day since which it may be out or None)."""
    out, doubt, last = line.out, line.doubt, max(dose.entry.on for dose in line.doses)
    if terms.acts == "single":
        yield False, last, last
    elif terms.acts == "must come out":
        yield (True, doubt, doubt) if out is None else (False, out, out)
    for used_up in (dose.entry.on + terms.days for dose in line.doses if terms.acts == "used up"):
        ends = [end for end in (out, used_up if terms.sure else None) if end is not None and end <= day]
        if doubt is not None and doubt < used_up:
            yield (False, doubt, min(ends)) if ends else (True, doubt, day)
        elif day < used_up or (out is not None and out <= used_up):
            yield (True, None, None) if out is None else (False, out, out)
        elif terms.sure:
            yield False, used_up, used_up
        else:
            yield (True, used_up, day) if out is None else (False, used_up, out)

# ---- 6. What a line says of D
def line_says(line, terms, day, flows):
    weakest = YES
    for inside, first, last in places(line, terms, day):
        since = set() if first is None else {first, last} | {flow for flow, _ in flows if first < flow < last}
        possible = {out_says(terms, out, day, flows) for out in since} | ({terms.in_says} if inside else set())
        weakest = min(weakest, possible.pop() if len(possible) == 1 else UNKNOWN)
    return weakest
def out_says(terms, out, day, flows):
    (wait, wait_documented), (withdrawal, withdrawal_documented) = terms.wait, terms.withdrawal
    if (wait or 0) >= 1 and day <= out + wait:
        return NO
    says = min(YES if wait_documented and withdrawal_documented else UNKNOWN, before_flow(terms.flow_before, out, day, flows))
    if (withdrawal or 0) >= 1 and day <= out + withdrawal:
        says = min(says, terms.in_says)  # off: no; missing or an undocumented permission: unknown; allowed: harvest only
    return says
def before_flow(days, out, day, flows):  # 7; YES says nothing
    ahead = [(max(first, out), last) for first, last in flows if last >= out]
    if not days or not ahead:
        return UNKNOWN if days and day <= out + days else YES
    right_before = [last for first, last in ahead if first <= out + (14 if days == WITHOUT_DAYS else days)]
    if right_before:
        return NO if day <= max(right_before) else YES
    first, last = min(ahead, key=lambda flow: (flow[0], -flow[1]))
    return UNKNOWN if days == WITHOUT_DAYS and year(first) == year(out) and day <= last else YES
# ---- Timelines: [(first day, verdict), ...]
def joined(steps):
    return [step for step, before in zip(steps, [(None, None), *steps]) if step[1] != before[1]]
def at_day(timeline, day):
    return timeline[bisect_right(timeline, day, key=lambda step: step[0]) - 1][1]
if __name__ == "__main__":
    known_leaflets = read_leaflets(sys.argv[1:])
    for asked in map(json.loads, sys.stdin):
        holding = Holding(asked["entries"], known_leaflets)
        print(json.dumps({"answers": [holding.answer(colony, to_day(day)) for colony, day in asked["ask"]]}))
