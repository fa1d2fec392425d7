#!/usr/bin/env python3
"""May a colony be supered: a second reading of RULES.md, section by section.

    python3 reading.py FOLDER... < holdings.jsonl

A FOLDER holds leaflets as <jurisdiction>/<id>.toml. A line of the input is one holding with its entries and what is asked;
a line of the output has the answers. Days are ordinals (whole numbers) inside and civil days at both ends. Where RULES.md
can be read in two ways a comment says "Reading:" and the way that is safer for food is taken.
"""
import json
import sys
from bisect import bisect_right
from datetime import date
from typing import NamedTuple, Optional

NO, UNKNOWN, YES = 0, 1, 2  # the weakest is the least
WORDS = ["no", "unknown", "yes"]
RIGHT_BEFORE = 14  # days (section 7)
from terms import NO_DAYS, Leaflets, Terms, ordinal

A_MONTH, THREE_MONTHS = 30, 90  # days (section 7)

# ---- 1. Which entries count -------------------------------------------------------------------------------------------------


class Entry:
    def __init__(self, raw):
        self.id, self.kind, self.body = raw["id"], raw["kind"], raw["body"]
        self.on, self.at, self.place = ordinal(raw["on"]), raw.get("at"), raw["seq"]
        self.corrects, self.continues = raw.get("corrects"), self.body.get("continues")
        self.colonies = self.body.get("colonies", [])
        if self.kind == "administration":
            self.colonies = [colony for given in self.body["given"] for colony in given["colonies"]]
            self.lots = {given["lot"] for given in self.body["given"]}

    def order(self):
        return (self.on, self.at is None, self.at or "", self.place)

    def clearly_before(self, other):
        """By the clock, on one day."""
        return self.at is not None and other.at is not None and self.at < other.at


class Line(NamedTuple):
    """A course in one colony (section 3). Days are ordinals; `by` and `at` are of the entry that took it out or raised the doubt."""

    course: str  # the entry of its first dose
    doses: tuple  # of (entry, its lots that were given to the colony)
    here: int
    until: Optional[int] = None
    doubt: Optional[int] = None
    doubt_by: Optional[str] = None
    out: Optional[int] = None
    out_at: Optional[str] = None
    out_by: Optional[str] = None
    begun: Optional[str] = None  # the dose that began it in this colony
    brought: int = 0  # how many doses came along from another colony

    def is_open(self):
        return self.out is None and self.until is None

    def taken_out(self, entry):
        return self._replace(out=entry.on, out_at=entry.at, out_by=entry.id)

    def doubted(self, entry):
        return self._replace(doubt=entry.on, doubt_by=entry.id)


class Flow(NamedTuple):
    """A nectar flow (section 7); `last` is the last day on which it may go on, `end` its end where it is asked what it overlaps."""

    forage: str
    usual: int
    first: int
    last: int
    end: int

    @staticmethod
    def of(body):
        start = ordinal(body["from"])
        first, late = ordinal(body.get("from_early") or body["from"]), ordinal(body.get("from_late") or body["from"])
        if body["stage"] == "seen":
            first = late = start
        if body.get("to"):
            end = ordinal(body["to"])
            last = end + late - start
        else:
            last, end = max(date(date.fromordinal(late).year, 12, 31).toordinal(), late + THREE_MONTHS), late + A_MONTH
        return Flow(body["forage"], start, first, last, end)

    def overlaps(self, other):
        return self.forage == other.forage and self.first <= other.end and other.first <= self.end


class Holding:
    def __init__(self, raw_entries, leaflets):
        self.leaflets = leaflets
        self.by_id, self.instead = {}, {}
        for raw in sorted(raw_entries, key=lambda raw: raw["seq"]):
            entry = Entry(raw)
            self.by_id[entry.id] = entry
            old = self.stands(entry.corrects)
            if old is not None:
                self.instead[old] = None if entry.kind == "strike_out" else entry.id
                if (self.by_id[old].on, self.by_id[old].at) == (entry.on, entry.at):
                    entry.place = self.by_id[old].place
        count = [entry for entry in self.by_id.values() if entry.id not in self.instead and entry.kind != "strike_out"]
        self.entries = sorted(count, key=Entry.order)
        self.events, self.kinds, self.lines_by, self.terms_by, self.answers, self.flows_by = {}, {}, {}, {}, {}, {}
        for entry in self.entries:
            self.kinds.setdefault(entry.kind, []).append(entry)
            touched = entry.colonies if entry.kind in ("administration", "removal") else []
            if entry.kind in ("colony_split", "colony_united"):
                touched = [entry.body["colony"], entry.body["into"]]
            for colony in dict.fromkeys(touched):
                self.events.setdefault(colony, []).append(entry)
        self.days = sorted({entry.on for entry in self.entries})
        self.read_colonies()

    def stands(self, name):
        """The id of the entry that stands in the place of `name`; none if it was struck out or never recorded."""
        while name in self.instead:
            name = self.instead[name]
        return name if name in self.by_id else None

    def of(self, kind, field=None, value=None):
        return [entry for entry in self.kinds.get(kind, []) if field is None or entry.body.get(field) == value]

    # ---- 2. The colony ------------------------------------------------------------------------------------------------------

    def read_colonies(self):
        self.entered, self.ended, self.not_known, self.moves = {}, {}, {}, {}
        for entry in self.entries:
            colony, into = entry.body.get("colony"), entry.body.get("into")
            if entry.kind == "colony_established":
                self.entered[colony] = entry.on
                self.moves[colony] = [(entry.on, entry.body["apiary"])]
                if entry.body["medicines"] == "not_known":
                    self.not_known[colony] = entry.on
            elif entry.kind == "colony_split":
                self.entered[into] = entry.on
                self.moves[into] = [(entry.on, entry.body.get("to") or (colony, entry.on))]
            elif entry.kind == "colony_moved":
                self.moves.setdefault(colony, []).append((entry.on, entry.body["to"]))
            elif entry.kind in ("colony_ended", "colony_united"):
                self.ended[colony] = entry.on
            if entry.kind in ("colony_split", "colony_united") and colony in self.not_known:
                self.not_known.setdefault(into, entry.on)

    def answer(self, colony, day, record=None):
        """The answer for a day, by the events up to `record` (the day itself unless another is given)."""
        record = day if record is None else record
        record = self.days[bisect_right(self.days, record) - 1] if self.days and self.days[0] <= record else 0
        key = (colony, day, record)
        if key not in self.answers:
            self.answers[key] = self.answer_of(colony, day, record, self.lines(colony, min(day, record)))
        return self.answers[key]

    def answer_of(self, colony, day, record, lines):
        if self.ended.get(colony, day + 1) <= min(day, record):
            return NO
        if colony not in self.entered or day < self.entered[colony]:
            return UNKNOWN
        says = UNKNOWN if self.not_known.get(colony, day + 1) <= min(day, record) else YES
        for line in lines:
            if line.here <= day and (line.until is None or day < line.until):
                says = min(says, self.line_says(line, colony, day, record))
        return says

    # ---- 3. The courses of a colony -----------------------------------------------------------------------------------------

    def chain(self, name):
        """The dose that `name` means, the one that it continues, and so on to the first."""
        name = self.stands(name)
        while name is not None:
            yield name
            name = self.stands(self.by_id[name].continues)

    def course_here(self, name, lines):
        here = {line.course for line in lines}
        return next((course for course in self.chain(name) if course in here), None)

    def lines(self, colony, day, skip=frozenset()):
        """The lines of a colony by the end of a day; `skip`: splits and unitings that are being worked out and bring nothing in."""
        events = [entry for entry in self.events.get(colony, []) if entry.on <= day]
        key = (colony, len(events), skip)
        if key not in self.lines_by:
            lines = []
            for entry in events:
                if entry.kind == "administration":
                    lines = self.dose(lines, entry, colony)
                elif entry.kind == "removal":
                    lines = self.removal(lines, entry, colony)
                elif entry.kind == "colony_split" and entry.body["colony"] == colony:
                    lines = [self.split_in_old(line, entry, colony) if line.is_open() else line for line in lines]
                elif entry.body["into"] == colony and entry.id not in skip:
                    for copy in self.copies(entry, skip):
                        if not any(says_all(line, copy) for line in lines):
                            lines = lines + [copy]
            self.lines_by[key] = lines
        return self.lines_by[key]

    def dose(self, lines, entry, colony):
        lots = frozenset(given["lot"] for given in entry.body["given"] if colony in given["colonies"])
        dose, course = (entry.id, lots), self.course_here(entry.continues, lines)
        doubt = [other for other in self.events[colony] if other.kind == "colony_split" and other.body["colony"] == colony
                 and other.body.get("strips") not in ("stayed", "both") and not_told(entry, other)]  # 3.6
        if course is None:  # a first dose, 3.1
            last = Line(entry.id, (), entry.on)
        else:
            is_in = [l.course == course and l.until is None and l.doubt is None and l.out in (None, entry.on) for l in lines]
            if any(is_in):
                after = [l._replace(doses=l.doses + (dose,), out=None, out_at=None, out_by=None) if i else l for l, i in zip(lines, is_in)]
                return [l.doubted(doubt[0]) if i and doubt else l for l, i in zip(after, is_in)]
            last = [line for line in lines if line.course == course][-1]
        line = Line(last.course, last.doses + (dose,), entry.on, begun=entry.id, brought=last.brought)
        return lines + [line.doubted(doubt[0]) if doubt else line]

    def removal(self, lines, entry, colony):
        course = self.course_here(entry.body["administration"], lines)
        ours = [line for line in lines if line.course == course]
        opened = [line for line in ours if line.is_open()]
        if not ours:
            return lines
        if entry.body.get("left_inside", 0) > 0:
            # Reading: also where no line is open at all: something is inside.
            if all(line.doubt is not None for line in opened):
                doses = tuple(dict.fromkeys(dose for line in opened or ours[-1:] for dose in line.doses))
                return lines + [Line(course, doses, entry.on)]
            return lines
        for other in self.events[colony]:
            later = other.kind == "administration" and other.on == entry.on and other.id != course and other.id not in {l.course for l in lines}
            if later and course in self.chain(other.continues) and not other.clearly_before(entry):
                return lines  # what came out was the carrier before
        after, beside = [], []
        for line in lines:
            if line in opened and line.doubt is None:
                after.append(line.taken_out(entry))
            elif line in opened:
                after.append(line._replace(until=entry.on))
                beside.append(Line(course, line.doses, entry.on).taken_out(entry))
            else:
                after.append(line)
        return after + beside + ([] if opened else [Line(course, ours[-1].doses, entry.on).taken_out(entry)])

    def split_in_old(self, line, split, colony):
        strips = split.body.get("strips")
        if strips in ("stayed", "both") or any(not_told(self.by_id[dose], split) for dose, _ in line.doses[line.brought:]):
            return line  # 3.6: the doubt was raised with the dose
        if strips == "went":
            return line.taken_out(split)
        return line if line.doubt is not None else line.doubted(split)

    def copies(self, entry, skip):
        """What a split or a uniting brings into the other colony: 3.4 to 3.6."""
        source, strips = entry.body["colony"], entry.body.get("strips")
        for line in self.lines(source, entry.on, skip | {entry.id}):
            if line.until is not None:
                continue
            if line.out == entry.on and (line.out_by == entry.id or not (line.out_at and entry.at and line.out_at < entry.at)):
                line = line._replace(out=None, out_at=None, out_by=None)
            if line.doubt_by == entry.id:
                line = line._replace(doubt=None, doubt_by=None)
            began = [self.by_id[dose] for dose in (line.course, line.begun) if dose]
            if any(dose.on == entry.on and entry.clearly_before(dose) for dose in began):
                continue
            copy = line._replace(here=entry.on, begun=None, brought=len(line.doses))
            if line.is_open() and entry.kind == "colony_split" and line.begun and not_told(self.by_id[line.begun], entry):
                copy = copy.taken_out(entry) if strips == "stayed" else copy if copy.doubt is not None else copy.doubted(entry)
            elif line.is_open() and strips in ("stayed", "taken_out"):
                copy = copy.taken_out(entry)
            elif line.is_open() and strips is None and copy.doubt is None:
                copy = copy.doubted(entry)
            yield copy  # Reading: `went`, `both` and `went_along` keep a doubt that was there before.

    # ---- 4. The terms of a line ---------------------------------------------------------------------------------------------

    def terms(self, course, doses):
        key = (course, doses)
        if key not in self.terms_by:
            self.terms_by[key] = Terms(self, self.by_id[course], doses)
        return self.terms_by[key]

    def jurisdiction(self, day):
        details = self.of("holding_details")
        by_then = [e for e in details if e.on <= day] or details[:1]
        return by_then[-1].body["jurisdiction"] if by_then else None

    # ---- 5. Where a line is on D --------------------------------------------------------------------------------------------

    def line_says(self, line, colony, day, record):
        says, terms = YES, self.terms(line.course, line.doses)
        doses = line.doses[-1:] if terms.way in ("single", "needed") else line.doses
        for dose, _ in doses:
            given = self.by_id[dose].on
            possible = {in_says(terms) if since is None else self.out_says(since, terms, colony, day, record)
                        for since in self.where(line, given, terms, day)}
            says = min(says, possible.pop() if len(possible) == 1 else UNKNOWN)
        return says

    @staticmethod
    def where(line, given, terms, day):
        """Where one dose of a line is on a day (section 5): the first and the last possibility, each a day since which it is out, or none: in."""
        if terms.way == "single":
            return (given,)
        out, doubt = line.out, line.doubt
        if terms.way == "needed":
            if out is not None and day >= out:
                return (out,)
            return (None, doubt) if doubt is not None and day >= doubt else (None,)
        used_up = given + terms.stay
        if terms.sure and (out is None or out > used_up):
            out = used_up  # surely out at the latest when it is used up
        start = used_up if doubt is None else min(doubt, used_up)  # from here on it may be out
        if out is not None and day >= out:
            return (min(start, out), out)
        return (None, start, day) if day >= start else (None,)

    # ---- 6. What a line says of D (see also `in_says` below) ----------------------------------------------------------------

    def out_says(self, since, terms, colony, day, record):
        says = YES if terms.documented("withdrawal") and terms.documented("wait") else UNKNOWN
        if terms.value("wait") is not None and terms.value("wait") >= 1 and day <= since + terms.value("wait"):
            return NO
        withdrawal = terms.value("withdrawal")
        if withdrawal is not None and withdrawal >= 1 and day <= since + withdrawal:
            if terms.value("supers") == "off":
                return NO
            says = says if terms.documented("supers") else UNKNOWN
        return min(says, self.before_flow(since, terms.value("flow"), colony, day, record))

    # ---- 7. The time right before a flow ------------------------------------------------------------------------------------

    def flows_of(self, colony, record):
        """The first and last days of the flows where the colony stood, by the moves up to `record`."""
        key = (colony, record)
        if key not in self.flows_by:
            moves = []
            for came, apiary in self.moves.get(colony, []):
                apiary = self.stood(*apiary) if isinstance(apiary, tuple) else apiary
                moves = [move for move in moves if move[0] < came]  # of several moves on one day the last counts
                if not moves or moves[-1][1] != apiary:
                    moves.append((came, apiary))
            flows = []
            for number, (came, apiary) in enumerate(moves):
                left = moves[number + 1][0] if number + 1 < len(moves) else 10**7
                flows += [(max(flow.first, came), min(flow.last, left)) for flow in self.flows_at(apiary)]
            self.flows_by[key] = [(first, last) for first, last in flows if first <= last]
        return self.flows_by[key]

    def stood(self, colony, day):
        """The apiary of a colony at the end of a day."""
        apiary = [apiary for came, apiary in self.moves.get(colony, []) if came <= day][-1:]
        return self.stood(*apiary[0]) if apiary and isinstance(apiary[0], tuple) else apiary[0] if apiary else None

    def flows_at(self, apiary):
        kept = []  # pairs: whether it was seen, the flow
        for entry in self.of("nectar_flow", "apiary", apiary):
            flow, is_seen = Flow.of(entry.body), entry.body["stage"] == "seen"
            if is_seen:
                kept = [(was, old) for was, old in kept if not flow.overlaps(old) or (was and old.usual != flow.usual)]
            elif any(was and flow.overlaps(old) for was, old in kept):
                continue
            else:
                kept = [(was, old) for was, old in kept if not flow.overlaps(old)]
            kept.append((is_seen, flow))
        return [flow for _, flow in kept]

    def before_flow(self, since, days, colony, day, record):
        if not days:
            return YES  # nobody bars it, or 0 days are stated
        coming = [(max(first, since), -last) for first, last in self.flows_of(colony, record) if last >= since]
        if not coming:
            return UNKNOWN if days == NO_DAYS or day <= since + days else YES
        near = [-last for first, last in coming if first <= since + (RIGHT_BEFORE if days == NO_DAYS else days)]
        if near:
            return NO if day <= max(near) else YES
        if days != NO_DAYS or day > -min(coming)[1]:
            return YES
        same_year = date.fromordinal(min(coming)[0]).year == date.fromordinal(since).year
        return UNKNOWN if same_year else YES


def not_told(dose, split):
    """Whether a dose and a split lie on one day and no times tell which came first (3.6)."""
    return dose.on == split.on and not dose.clearly_before(split) and not split.clearly_before(dose)


def says_all(line, copy):
    """Whether a line that is here says all that the copy of another colony's line says (3.4)."""
    if line.course != copy.course or line.until is not None or not set(copy.doses) <= set(line.doses):
        return False
    if line.is_open() and copy.is_open():
        return line.doubt is None or (copy.doubt is not None and line.doubt >= copy.doubt)
    return line.out is not None and copy.out is not None and line.out >= copy.out


def in_says(terms):
    return NO if terms.value("supers") == "off" else YES if terms.documented("supers") else UNKNOWN


def main(folders):
    leaflets = Leaflets(folders)
    for text in filter(str.strip, sys.stdin):
        line = json.loads(text)
        holding = Holding(line["entries"], leaflets)
        answers = [WORDS[holding.answer(colony, ordinal(day))] for colony, day in line["ask"]]
        print(json.dumps({"answers": answers}))


if __name__ == "__main__":
    main(sys.argv[1:])
