"""Section 4 of RULES.md: the terms of a line. A second reading; see reading.py."""
import pathlib
import tomllib
from datetime import date

EU = "at be bg cy cz de dk ee el es fi fr gr hr hu ie it lt lu lv mt nl pl pt ro se si sk".split()
STRICT = {"off": 2, "on_no_harvest": 1, "on": 0, "needed": 2, "not_needed": 1, "nothing_stays": 0}
NONE_BY_LABEL = -1  # looser than a withdrawal period of 0 days
NO_DAYS = 10**6  # barred right before a flow, without days: stricter than any number of days
STATED_AS = {"supers": "supers_during", "withdrawal": "withdrawal_days", "wait": "wait_after_removal_days", "removal": "removal", "doses": "doses",
             "min": "stay_min_days", "min_brood": "stay_min_days", "max": "stay_max_days", "max_brood": "stay_max_days",
             "long": "stay_max_days", "long_brood": "stay_max_days", "flow": "flow_before_days"}


def ordinal(day):
    return (day if isinstance(day, date) else date.fromisoformat(day)).toordinal()


class Leaflets:
    """The leaflets of all folders, and which of them holds in a jurisdiction."""

    def __init__(self, folders):
        self.by_place, self.found = {}, {}
        for folder in folders:
            for path in sorted(pathlib.Path(folder).glob("*/*.toml")):
                if path.parent.name == "law":
                    continue  # what the law asks of the record; no leaflet
                leaflet = tomllib.loads(path.read_text(encoding="utf-8"))
                self.by_place[path.parent.name, leaflet["id"]] = leaflet

    @staticmethod
    def places(jurisdiction):
        """Where a leaflet is looked for, the jurisdiction's own folder first."""
        if jurisdiction is None:
            return []
        return [jurisdiction] + (["gb", "eu"] if jurisdiction == "ni" else ["eu"] if jurisdiction in EU else [])

    def find(self, jurisdiction, name):
        """The leaflet with its rules of force `law` and `label`, each marked whether it is a document for the jurisdiction."""
        key = (jurisdiction, name)
        if key not in self.found:
            self.found[key] = None
            for place in self.places(jurisdiction):
                leaflet = self.by_place.get((place, name))
                if leaflet is None or (place != jurisdiction and jurisdiction not in leaflet.get("states", [jurisdiction])):
                    continue
                rules = [self.read_rule(rule, leaflet, place, jurisdiction) for rule in leaflet.get("rule", []) if rule["force"] != "advice"]
                self.found[key] = {"release": leaflet.get("release"), "rules": rules}
                break
        return self.found[key]

    @staticmethod
    def read_rule(rule, leaflet, place, jurisdiction):
        def speaks_for(source):
            if source.get("kind") == "union":
                return jurisdiction in EU or jurisdiction == "eu"
            if place == jurisdiction:
                return jurisdiction != "eu"  # the authority of one state does not speak for the Union as a whole
            states = leaflet.get("states", [])
            countries = [jurisdiction] + (states if jurisdiction in states else [])
            return source.get("kind") == "authority" and source.get("country") in countries

        cited = [source for source in leaflet.get("source", []) if source["id"] in rule["source"]]
        document = rule["confidence"] == "document" and any(speaks_for(source) for source in cited)
        start, end = rule.get("from"), rule.get("until")
        return dict(rule, document=document, start=ordinal(start) if start else 0, end=ordinal(end) if end else 10**7)

    def state_days(self, jurisdiction):
        """Whether the leaflets of the jurisdiction state withdrawal periods in days at all."""
        key = (jurisdiction, "withdrawal in days")
        if key not in self.found:
            names = {name for place, name in self.by_place if place in self.places(jurisdiction)}
            leaflets = [self.find(jurisdiction, name) for name in names]
            self.found[key] = any(r["kind"] == "withdrawal" and "days" in r for leaflet in leaflets if leaflet for r in leaflet["rules"])
        return self.found[key]


class Terms:
    """The terms of a line, worked out from its doses: for each topic a value, whether it is documented, and whether a person said it."""

    TOPICS = {"supers": "supers_during", "withdrawal": "withdrawal", "wait": "wait_after_removal", "removal": "removal", "doses": "doses",
              "min": "stay_min", "min_brood": "stay_min", "max": "stay_max", "max_brood": "stay_max", "long": "stay_max", "long_brood": "stay_max",
              "flow": "flow_before"}

    def __init__(self, holding, first, doses):
        self.holding, self.first, self.doses = holding, first, doses
        given = [holding.by_id[dose] for dose, _ in doses]
        self.lots = {}
        for lot in sorted({lot for _, lots in doses for lot in lots}):
            self.lots[lot] = [entry for entry in given if lot in entry.lots]
        self.place = holding.jurisdiction(first.on)
        self.leaflets = {lot: self.leaflet_of(lot) for lot in self.lots}
        self.said = {topic: self.work_out(topic) for topic in self.TOPICS}
        self.no_further_wait()
        self.least_stay_with_brood()
        self.how_it_works_on()

    def value(self, topic):
        return self.said[topic][0] if self.said[topic] else None

    def documented(self, topic):
        return bool(self.said[topic]) and self.said[topic][1]

    def medicine_of(self, lot):
        acquired = self.holding.of("lot_acquired", "lot", lot)
        described = self.holding.of("medicine_described", "medicine", acquired[-1].body["medicine"]) if acquired else []
        return (acquired[-1].body, described[-1].body) if described else (None, None)

    def leaflet_of(self, lot):
        """The leaflet of a lot with the rules that hold for the first dose and the label revision of the lot."""
        acquired, medicine = self.medicine_of(lot)
        leaflet = medicine and medicine.get("leaflet") and self.holding.leaflets.find(self.place, medicine["leaflet"])
        if not leaflet:
            return None
        method, revision = self.first.body.get("method"), acquired.get("label_revision") or self.revision_read(lot)
        holds = [rule for rule in leaflet["rules"] if rule["start"] <= self.first.on <= rule["end"]
                 and (method is None or rule.get("method", method) == method)
                 and (revision is None or rule.get("revision", revision) == revision)]
        return dict(leaflet, rules=holds)

    def revision_read(self, lot):
        """The label revision of the newest reading that names one, made by the day on which the lot was first given."""
        first_given = min(entry.on for entry in self.lots[lot])
        named = [e.body["revision"] for e in self.holding.of("leaflet_reading", "lot", lot) if e.on <= first_given and e.body.get("revision")]
        return named[-1] if named else None

    def in_leaflet(self, topic, lot):
        brood = {"min": "absent_or_lowest", "max": "absent_or_lowest", "min_brood": "present", "max_brood": "present",
                 "long": "absent_or_lowest", "long_brood": "present"}.get(topic)
        rules = [rule for rule in (self.leaflets[lot] or {"rules": []})["rules"] if rule["kind"] == self.TOPICS[topic]
                 and (brood is None or rule.get("brood", brood) == brood)]
        if not rules:
            return None
        return strictest(topic, [rule_value(topic, rule) for rule in rules]), all(rule["document"] for rule in rules), False

    def of_lot(self, topic, lot):
        """4.1: what persons say of a lot, else its leaflet, else what was declared."""
        first_given = min(entry.on for entry in self.lots[lot])
        read = [(e.on, stated(topic, e.body["terms"])) for e in self.holding.of("leaflet_reading", "lot", lot)]
        read = [(on, value) for on, value in read if value is not None]
        packs = [(e.on, e.body["withdrawal_days"]) for e in self.lots[lot] if e.body.get("withdrawal_days") is not None]
        packs = packs if topic == "withdrawal" else []
        newest = max((on for on, _ in read if on <= first_given), default=None)
        by_then = [value for on, value in read if on == newest] + [value for on, value in packs if on == first_given]
        later = [value for on, value in read + packs if on > first_given]
        leaflet, medicine = self.in_leaflet(topic, lot), self.medicine_of(lot)[1]
        declared = stated(topic, (medicine or {}).get("terms") or {})
        declared = None if declared is None else (declared, True, True)
        if not by_then and not later:
            return leaflet or declared
        value = strictest(topic, by_then + later)
        before = declared if leaflet is None else leaflet if leaflet[1] else None
        if not by_then and before and rank(topic, before[0]) > rank(topic, value):
            return before  # what is read after a treatment loosens nothing
        return value, True, True

    def work_out(self, topic):
        parts, lots_asked = [], False
        for dose, _ in self.doses:
            named = self.holding.by_id[dose].body.get("prescription")
            prescribed = [stated(topic, e.body["terms"]) for e in self.holding.of("prescription", "prescription", named)] if named else []
            prescribed = [(value, True, True) for value in prescribed if value is not None]
            parts, lots_asked = parts + prescribed, lots_asked or not prescribed
        if lots_asked:
            parts += [self.of_lot(topic, lot) for lot in self.lots]
        known = [part for part in parts if part is not None]
        if not known:
            return None
        value = strictest(topic, [part[0] for part in known])
        return value, all(part is not None and part[1] for part in parts), any(part[2] for part in known if part[0] == value)

    def no_further_wait(self):
        in_days = self.documented("withdrawal") and self.value("withdrawal") != NONE_BY_LABEL
        if in_days and all(self.states_days(lot) for lot in self.lots) and not self.documented("wait") and self.value("wait") in (None, 0):
            self.said["wait"] = (0, True, False)

    def states_days(self, lot):
        """Whether the medicine's leaflet, or for one that names none any leaflet of the jurisdiction, states a period in days."""
        name = (self.medicine_of(lot)[1] or {}).get("leaflet")
        leaflets = self.holding.leaflets
        if not name:
            return leaflets.state_days(self.place)
        leaflet = leaflets.find(self.place, name)
        return bool(leaflet) and any(rule["kind"] == "withdrawal" and "days" in rule for rule in leaflet["rules"])

    def least_stay_with_brood(self):
        """It is never less than the one without."""
        if self.said["min_brood"] and self.said["min"] and self.value("min_brood") < self.value("min"):
            self.said["min_brood"] = (self.value("min"), self.documented("min") and self.documented("min_brood"), self.said["min"][2])

    def how_it_works_on(self):
        """Sets `way` (single, needed, not_needed, unknown), and for what need not come out `stay` (days until used up) and `sure`."""
        releases = {leaflet["release"] if leaflet else None for leaflet in self.leaflets.values()}
        slow, single = "slow" in releases, releases == {"single"}
        stays = [self.said[topic] for topic in ("min", "min_brood", "long", "long_brood") if self.said[topic]]
        removal = self.value("removal")
        if removal == "nothing_stays" and (self.said["min"] or self.said["min_brood"]):
            removal, single, slow = None, False, False  # one of the two is wrong, and the leaflet's release says nothing either
            self.said["removal"] = None
        if removal == "nothing_stays":
            # Reading: said of some lots only, it does not make a single dose of the others.
            self.way = "single" if self.documented("removal") or single else "unknown"
        elif removal and self.said["removal"][2]:
            self.way = removal
        else:
            self.way = "single" if single else removal or "unknown"
        self.stay = max((value for value, _, _ in stays), default=1)
        if self.way == "unknown" and not slow:
            self.stay = 0
        self.sure = self.way == "not_needed" and self.documented("removal") and bool(stays) and all(stay[1] for stay in stays)


def rank(topic, value):
    """How strict a value is; more is stricter."""
    return STRICT[value] if topic in ("supers", "removal") else -value if topic.startswith("max") else value


def strictest(topic, values):
    return max(values, key=lambda value: rank(topic, value))


def stated(topic, terms):
    """What the terms of an entry state on a topic; none if nothing."""
    if topic == "withdrawal" and terms.get("withdrawal_days") is None:
        return NONE_BY_LABEL if terms.get("withdrawal") == "none_by_label" else None
    if topic == "min_brood" and terms.get("stay_min_days_with_brood") is not None:
        return terms["stay_min_days_with_brood"]
    return terms.get(STATED_AS[topic])


def rule_value(topic, rule):
    if topic == "flow":
        return rule.get("days", NO_DAYS)
    if topic == "withdrawal":
        return NONE_BY_LABEL if rule.get("none_by_label") else rule["days"]
    return rule[{"supers": "value", "removal": "value", "doses": "count"}.get(topic, "days")]
