#!/usr/bin/env python3
"""Writes holding.jsonl, the journal of an invented holding, beside this script.

Everything in it is invented: people, places, suppliers, medicines, batch numbers. The output depends only on this file:
no clock, no chance. An id is made from the day an entry was written down and its place in the journal, so only a change
to the story changes ids.

The journal is sealed here as well, by the rules in crates/domain/src/journal/seal.rs: the import of the file
checks each hash, so two programs that share no code agree on them.
"""

import base64
import json
import uuid
from datetime import date
from hashlib import sha256
from pathlib import Path

import proofs

HOLDING = "demo"
KEEPER = "Perpetua Saltmarrow (demo)"
HELPER = "Jory Mudlarkin (demo)"
VET = "Cressida Brinewhistle (demo vet)"


COMPACT = {"ensure_ascii": False, "separators": (",", ":"), "default": lambda entry: entry.id}


class Entry:
    """One entry. Named in another entry, it is written as its id."""

    def __init__(self, kind, on, body, written, by, at, corrects, reason):
        self.kind, self.on, self.body = kind, on, body
        self.written = written or on
        self.by, self.at, self.corrects, self.reason = by, at, corrects, reason
        self.id = None

    def line(self, seq, prev):
        """The entry sealed after `prev`, and its own hash."""
        correction = {"corrects": self.corrects.id, "reason": self.reason} if self.corrects else {}
        body = json.dumps(self.body, **COMPACT)
        # On the evening of the day on which it was written down.
        recorded_at = f"{self.written}T19:{seq // 60 % 60:02}:{seq % 60:02}.000Z"
        fields = [HOLDING, seq.to_bytes(8, "big"), uuid.UUID(self.id).bytes, self.on, self.at or "", recorded_at, self.by,
                  self.kind, body, uuid.UUID(self.corrects.id).bytes if self.corrects else b"", self.reason or ""]
        sealed = sha256(b"\0" + prev)
        for field in fields:
            raw = field if isinstance(field, bytes) else field.encode()
            sealed.update(len(raw).to_bytes(8, "big") + raw)
        head = {"seq": seq, "id": self.id, "on": self.on, **({"at": self.at} if self.at else {}),
                "recorded_at": recorded_at, "recorded_by": self.by, "kind": self.kind}
        tail = {**correction, "prev": prev.hex(), "hash": sealed.hexdigest()}
        # The body must be byte for byte as hashed.
        text = json.dumps(head, **COMPACT)[:-1] + ',"body":' + body + "," + json.dumps(tail, **COMPACT)[1:]
        return text, sealed.digest()


JOURNAL = []
# The documents of the journal, by hash, in the order of attaching.
CONTENTS = {}


def note(kind, on, *, written=None, by=KEEPER, at=None, corrects=None, reason=None, **body):
    """Adds an entry. Fields that are None are left out: in the journal they are not known."""
    body = {name: value for name, value in body.items() if value is not None}
    entry = Entry(kind, on, body, written, by, at, corrects, reason)
    JOURNAL.append(entry)
    return entry


def uuid7(day, count):
    """A UUID in the form of version 7: the evening of the day, and a counter in place of random bits."""
    days = (date.fromisoformat(day) - date(1970, 1, 1)).days
    millis = (days * 24 + 19) * 3_600_000 + count
    digits = f"{millis:012x}7{count:03x}8de3{count:012x}"
    return "-".join((digits[:8], digits[8:12], digits[12:16], digits[16:20], digits[20:]))


def write(path):
    # Mostly by date; late entries are placed where they were written down.
    JOURNAL.sort(key=lambda entry: entry.written)
    for count, entry in enumerate(JOURNAL, start=1):
        entry.id = uuid7(entry.written, count)
    lines, prev = [], bytes(32)
    for seq, entry in enumerate(JOURNAL, start=1):
        line, prev = entry.line(seq, prev)
        lines.append(line)
    head = {"combclear_journal": 1, "holding": HOLDING, "sealed": True, "entries": len(lines), "head": prev.hex(),
            "contents": len(CONTENTS)}
    for digest, content in CONTENTS.items():
        kept = {"content": digest, "bytes": len(content), "base64": base64.b64encode(content).decode()}
        lines.append(json.dumps(kept, **COMPACT))
    path.write_text("\n".join([json.dumps(head, **COMPACT), *lines]) + "\n", encoding="utf-8")


def names(text):
    """`H4-7 C1` stands for H4, H5, H6, H7 and C1."""
    found = []
    for word in text.split():
        first, _, last = word.partition("-")
        numbers = range(int(first[1:]), int(last or first[1:]) + 1)
        found += [f"{first[0]}{number}" for number in numbers]
    return found


# ---- Short forms for the most frequent entries ----


def lot(name, medicine, on, quantity, batch, expiry, supplier, proof, **more):
    return note("lot_acquired", on, lot=name, medicine=medicine, batch=batch, expiry=expiry, quantity=quantity,
                supplier=supplier, proof=proof, **more)


def attach(on, name, content, media_type, file_name, **more):
    """Attaches a document to a lot or a prescription."""
    CONTENTS[proofs.digest(content)] = content
    target = more or {"lot": name}
    note("document_attached", on, content=proofs.digest(content), media_type=media_type, bytes=len(content),
         file_name=file_name, **target)


def invoice(on, number, supplier, lines, lots):
    """An invoice, attached to each lot that it lists."""
    text = ["INVENTED FOR A DEMO: no real shop, no real goods", "", supplier["name"], supplier.get("address", ""), "",
            f"Invoice {number}", f"Date {on}", "", *lines]
    for name in lots:
        attach(on, name, proofs.pdf(text), "application/pdf", f"invoice-{number}.pdf")


def slip(on, number, lines, name):
    text = ["invented for a demo", "Oxmarl Farm Supply (demo)", f"till slip {number}", on, *lines]
    attach(on, name, proofs.png(text), "image/png", f"till-slip-{number}.png")


def count(on, method, mites, **more):
    """Counts of one day: `H4:3` is colony H4 with three mites."""
    for word in mites.split():
        colony, _, number = word.partition(":")
        note("mite_count", on, colony=colony, method=method, mites=int(number), **more)


def reading(on, name, revision, confirmed=None, **terms):
    """What the leaflet of a lot says: values, and rules of the built-in leaflet that it confirms, by topic."""
    confirms = [{"topic": topic, "says": says} for topic, says in (confirmed or {}).items()]
    return note("leaflet_reading", on, lot=name, revision=revision, terms=terms, confirms=confirms or None)


def give(on, name, each, colonies, *, method=None, of=None, days=0, by=KEEPER, prescription=None, against="varroosis",
         **more):
    given = [{"lot": name, "each": each, "colonies": names(colonies)}]
    return note("administration", on, given=given, method=method, continues=of, withdrawal_days=days, given_by=by,
                against=against, prescription=prescription, by=by, **more)


def take_out(on, first_dose, colonies, **more):
    return note("removal", on, administration=first_dose, colonies=names(colonies), **more)


def supers_on(on, colonies, supers=1, purpose="harvest", **more):
    return note("supers_on", on, colonies=names(colonies), supers=supers, purpose=purpose, **more)


def supers_off(on, colonies, **more):
    return note("supers_off", on, colonies=names(colonies), left_on=0, **more)


def look(on, brood, seams, remarks=None, **more):
    """Inspections of one day: `H4:8` is colony H4 on eight seams of bees."""
    for word in seams.split():
        colony, _, count = word.partition(":")
        remark = (remarks or {}).get(colony)
        note("inspection", on, colony=colony, brood=brood, seams=int(count) if count else None, note=remark, **more)


def flow(on, stage, apiary, forage, first, last=None, **more):
    return note("nectar_flow", on, apiary=apiary, forage=forage, stage=stage, **{"from": first}, to=last, **more)


def move(on, colonies, to, **more):
    for colony in names(colonies):
        note("colony_moved", on, colony=colony, to=to, **more)


def harvest(on, name, colonies, kilograms, **more):
    return note("harvest", on, harvest_lot=name, colonies=names(colonies), kilograms=kilograms, **more)


# ---- The holding as the record begins, March 2025 ----

WITHY, SALT, OXMARL, TERN, FURZE = "Withyhythe", "Saltwend", "Oxmarl", "Ternholm", "Furzelow"


def holding():
    on = "2025-03-01"
    note("holding_details", on, keeper=KEEPER, address="0 Nowhere Quay, Withyhythe on the Marram (all invented)",
         jurisdiction="gb")
    places = {
        WITHY: "walled yard behind the quay, bramble and ivy (invented)",
        SALT: "foot of the sea wall, sea lavender; the track is under water at spring tides (invented)",
        OXMARL: "farm in a hollow above the marsh, field beans, phacelia, buckwheat (invented)",
        TERN: "island in the estuary, bramble; reached by boat (invented)",
        FURZE: "heath stand, August and September only (invented)",
    }
    for apiary, place in places.items():
        note("apiary_details", on, apiary=apiary, place=place)
    for apiary, power, access, ground in (
        (WITHY, "mains", "vehicle", "dry"),
        (SALT, "none", "vehicle", "wet"),
        (OXMARL, "battery", "vehicle", "dry"),
        (TERN, "none", "on_foot", "dry"),
        (FURZE, "none", "vehicle", "dry"),
    ):
        note("site_conditions", on, apiary=apiary, power=power, access=access, ground=ground)
    for letter, most, apiary, mark in (("H", 9, WITHY, "larch"), ("M", 9, SALT, "poly"), ("O", 9, OXMARL, "green"),
                                       ("T", 8, TERN, "tarred")):
        for number in range(1, most + 1):
            note("colony_established", on, colony=f"{letter}{number}", apiary=apiary, hive_mark=f"{mark} {number}",
                 origin="kept before this record began, nothing inside", medicines="none")


# ---- Medicines, lots, and readings of their leaflets ----

STORES = {"name": "Limpet Bee Stores (demo)", "address": "1 Nowhere Quay, Marram Staithe (invented)"}
FARM = {"name": "Oxmarl Farm Supply (demo)", "address": "Unit 0, Oxmarl Yard (invented)"}
NO_ADDRESS = {"name": "Club order, Marram Coast (demo)"}
SURGERY = {"name": "Brinewhistle Surgery (demo)", "address": "0 Ferry Steps, Withyhythe (invented)"}


def medicines():
    on = "2025-03-01"
    for name, pack, number, unit, leaflet in (
        ("pale", "Palestrip 500 (demo)", "DEMO 0101", "strip", "amitraz-strip-500mg-a"),
        ("notch", "Notchstrip 500 (demo)", "DEMO 0102", "strip", "amitraz-strip-500mg-b"),
        ("eight", "Eightweek Strip (demo)", "DEMO 0103", "strip", "tau-fluvalinate-strip-824mg"),
        ("four", "Fourstrip 3.6 (demo)", "DEMO 0104", "strip", "flumethrin-strip-3.6mg"),
        ("larch", "Larchgel Tray (demo)", "DEMO 0105", "tray", "thymol-gel-12.5g"),
        ("herb", "Fourherb Tablet (demo)", "DEMO 0106", "tablet", "thymol-blend-tablet"),
        ("seven", "Sevenday Gel Strip (demo)", "DEMO 0107", "strip", "formic-gel-strip-68.2g-a"),
        ("winter", "Winterpowder 886 (demo)", "DEMO 0108", "g", "oxalic-powder-886mg"),
    ):
        note("medicine_described", on, medicine=name, pack_name=pack, authorisation=number, unit=unit, leaflet=leaflet)
    # It has no built-in leaflet; the keeper declares the terms on the pack.
    note("medicine_described", "2025-08-16", medicine="gate", pack_name="Gatestrip 275 (demo)",
         authorisation="DEMO 0109", unit="strip",
         terms={"supers_during": "off", "withdrawal_days": 0, "wait_after_removal_days": 0, "removal": "needed",
                "stay_min_days": 63, "stay_max_days": 120})
    # No leaflet and no terms: the answer for treated colonies is unknown.
    note("medicine_described", "2026-08-15", medicine="wrackpaper", pack_name="Tidewrack Hive Paper (demo)", unit="piece")


def lots():
    lot("EIGHT-25-1", "eight", "2025-03-01", 20, "X8-114 demo", "2026-08-31", STORES, "invoice L-2031, red folder")
    reading("2025-03-08", "EIGHT-25-1", "03/2024", supers_during="off", withdrawal_days=0, wait_after_removal_days=0)
    lot("WINTER-24-1", "winter", "2025-03-01", 35, "W-0093 demo", "2025-11-30", STORES, "invoice L-1987, red folder")
    reading("2025-03-01", "WINTER-24-1", "11/2022", withdrawal_days=0, wait_after_removal_days=0)
    lot("SEVEN-25-1", "seven", "2025-06-28", 10, "F7-2210 demo", "2026-06-30", FARM, "till slip 4471, red folder")
    reading("2025-07-05", "SEVEN-25-1", "06/2023", supers_during="on_no_harvest", withdrawal_days=0,
            wait_after_removal_days=0, removal="not_needed", stay_min_days=7)
    larch = lot("LARCH-25-1", "larch", "2025-07-26", 20, "LG-508 demo", "2025-06-30", STORES,
                "invoice L-2177, red folder")
    note("lot_acquired", "2025-07-26", written="2025-08-30", corrects=larch,
         reason="expiry misread: the pouch says 06/2027, not 06/2025", lot="LARCH-25-1", medicine="larch",
         batch="LG-508 demo", expiry="2027-06-30", quantity=20, supplier=STORES, proof="invoice L-2177, red folder")
    lot("PALE-25-1", "pale", "2025-07-26", 20, "P5-0417 demo", "2027-03-31", STORES, "invoice L-2177, red folder",
        label_revision="04/2023")
    # The built-in leaflet has no longest stay; this pack does.
    reading("2025-08-09", "PALE-25-1", "04/2023", stay_max_days=70)
    lot("NOTCH-25-1", "notch", "2025-08-02", 30, "N-7719 demo", "2027-01-31", FARM, "till slip 4610, red folder")
    reading("2025-08-16", "NOTCH-25-1", "02/2024", supers_during="off", withdrawal_days=0, wait_after_removal_days=0,
            removal="needed", stay_min_days=42, stay_min_days_with_brood=70, stay_max_days=70)
    # The same medicine, but nobody read the leaflet of this lot.
    lot("NOTCH-25-2", "notch", "2025-08-15", 10, "N-7802 demo", "2027-02-28", FARM, "till slip 4655, red folder")
    lot("HERB-25-1", "herb", "2025-08-09", 60, "H4-31 demo", "2026-12-31", NO_ADDRESS, "order list of July 2025")
    reading("2025-08-16", "HERB-25-1", "09/2021", supers_during="off", withdrawal_days=0, wait_after_removal_days=0,
            removal="needed", stay_min_days=28)
    lot("GATE-25-1", "gate", "2025-08-16", 10, "G-275-6 demo", "2027-05-31", STORES, "invoice L-2203, red folder")
    lot("FOUR-25-1", "four", "2025-09-06", 20, "T36-88 demo", "2027-04-30", STORES, "invoice L-2240, red folder")
    reading("2025-09-06", "FOUR-25-1", "01/2020", withdrawal_days=0, wait_after_removal_days=0)
    lot("WINTER-25-1", "winter", "2025-11-15", 175, "W-0151 demo", "2027-10-31", STORES, "invoice L-2266, red folder")
    reading("2025-11-15", "WINTER-25-1", "11/2022", {"courses_per_year": "at most 2 courses in a year"}, withdrawal_days=0,
            wait_after_removal_days=0)
    lot("EIGHT-26-1", "eight", "2026-06-20", 20, "X8-131 demo", "2027-06-30", STORES, "invoice L-2301, blue folder")
    reading("2026-06-27", "EIGHT-26-1", "03/2024", supers_during="off", withdrawal_days=0, wait_after_removal_days=0)
    lot("PALE-26-1", "pale", "2026-07-10", 20, "P5-0502 demo", "2027-09-30", SURGERY, "surgery receipt 88, blue folder",
        label_revision="04/2023")
    reading("2026-07-10", "PALE-26-1", "04/2023", stay_max_days=70)
    # All of it went into T8, unread.
    lot("SEVEN-26-1", "seven", "2026-07-11", 2, "F7-2388 demo", "2027-05-31", FARM, "till slip 5120, blue folder")
    lot("HERB-26-1", "herb", "2026-07-25", 30, "H4-47 demo", "2027-12-31", STORES, "invoice L-2388, blue folder")
    reading("2026-07-31", "HERB-26-1", "09/2021", supers_during="off", withdrawal_days=0, wait_after_removal_days=0,
            removal="needed", stay_min_days=28)
    lot("PALE-26-2", "pale", "2026-07-25", 30, "P5-0588 demo", "2028-02-29", STORES, "invoice L-2388, blue folder",
        label_revision="04/2023")
    reading("2026-08-15", "PALE-26-2", "04/2023", stay_max_days=70)
    lot("WRACK-26-1", "wrackpaper", "2026-08-15", 10, None, "2027-03-31", {"name": "A stall at a show (demo)"}, None)
    lot("SEVEN-26-2", "seven", "2026-08-22", 10, "F7-2417 demo", "2027-06-30", STORES, "invoice L-2399, blue folder")
    # Read from end to end, because this is the one that might still fit before the ivy.
    reading("2026-08-27", "SEVEN-26-2", "06/2023", {
        "temperature": "highest temperature of each of the first 3 days at most 33 °C",
    }, supers_during="on_no_harvest", flow_during="allowed", withdrawal_days=0, wait_after_removal_days=0,
            removal="not_needed", stay_min_days=7)
    lot("LARCH-26-1", "larch", "2026-08-22", 20, "LG-560 demo", "2028-06-30", STORES, "invoice L-2399, blue folder")


def papers():
    """Proofs of purchase. HERB-25-1, WRACK-26-1 and NOTCH-25-2 have only words, or nothing."""
    invoice("2025-03-01", "L-1987", STORES, ["35 g Winterpowder 886 (demo), batch W-0093 demo"], ["WINTER-24-1"])
    invoice("2025-03-01", "L-2031", STORES, ["20 Eightweek Strip (demo), batch X8-114 demo"], ["EIGHT-25-1"])
    invoice("2025-07-26", "L-2177", STORES, ["20 Palestrip 500 (demo), batch P5-0417 demo",
                                             "20 Larchgel Tray (demo), batch LG-508 demo"], ["PALE-25-1", "LARCH-25-1"])
    slip("2025-08-02", "4610", ["30 Notchstrip 500"], "NOTCH-25-1")
    invoice("2025-11-15", "L-2266", STORES, ["175 g Winterpowder 886 (demo), batch W-0151 demo"], ["WINTER-25-1"])
    attach("2026-07-11", None, proofs.pdf([
        "INVENTED FOR A DEMO: no real surgery, no real vet", "", "Brinewhistle Surgery (demo)", "Prescription BS-2026-011", "",
        "Palestrip 500 (demo), 2 strips for each of 2 colonies", "Withdrawal period for honey: 21 days"]),
        "application/pdf", "prescription-BS-2026-011.pdf", prescription="BS-2026-011")
    attach("2026-07-11", "PALE-26-1", proofs.pdf([
        "INVENTED FOR A DEMO: no real surgery, no real goods", "", "Brinewhistle Surgery (demo)", "Receipt 88", "",
        "20 Palestrip 500 (demo), batch P5-0502 demo"]), "application/pdf", "receipt 88.pdf")
    slip("2026-07-11", "5120", ["2 Sevenday Gel Strip"], "SEVEN-26-1")
    invoice("2026-07-25", "L-2388", STORES, ["30 Fourherb Tablet (demo), batch H4-47 demo",
                                             "30 Palestrip 500 (demo), batch P5-0588 demo"], ["HERB-26-1", "PALE-26-2"])
    # This invoice only turned up in August.
    invoice("2026-08-08", "L-2301", STORES, ["20 Eightweek Strip (demo), batch X8-131 demo", "Bought on 2026-06-20"],
            ["EIGHT-26-1"])
    invoice("2026-08-22", "L-2399", STORES, ["10 Sevenday Gel Strip (demo), batch F7-2417 demo",
                                             "20 Larchgel Tray (demo), batch LG-560 demo"], ["SEVEN-26-2", "LARCH-26-1"])
    note("lot_opened", "2025-12-20", lot="WINTER-25-1")
    note("lot_opened", "2026-07-18", lot="SEVEN-26-1")


# ---- 2025 ----


def spring_2025():
    strips = give("2025-03-08", "EIGHT-25-1", 2, "T1-8")
    take_out("2025-04-26", strips, "T1-2 T4-8")
    # Eleven days longer than the leaflet allows, and recorded two and a half weeks late.
    take_out("2025-05-14", strips, "T3", written="2025-06-01")
    look("2025-04-05", "present", "H1:7 H2:6 H3:8 H4:7 H5:5 H6:8 H7:7 H8:6 H9:4")
    look("2025-04-12", "present", "M1:8 M2:9 M3:6 M4:7 M5:4 M6:8 M7:7 M8:7 M9:6", {"M5": "slow, old queen"})
    look("2025-04-19", "present", "O1:9 O2:8 O3:10 O4:8 O5:9 O6:7 O7:7 O8:8 O9:9")
    look("2025-04-26", "present", "T1:8 T2:7 T5:8 T6:6 T7:7 T8:4", {"T8": "small, on five frames"})
    # The brood of T3 and T4 is never recorded, and their stays depend on it.
    look("2025-04-26", None, "T3:8 T4:9", {"T3": "bees only counted, the boat had to catch the tide", "T4": "queen cups"})
    flow("2025-04-26", "expected", OXMARL, "field beans", "2025-05-14", "2025-06-12")
    supers_on("2025-05-10", "O1-9", 2)
    flow("2025-05-17", "seen", OXMARL, "field beans", "2025-05-17", "2025-06-09", written="2025-06-14")
    note("colony_split", "2025-05-24", colony="O3", into="Y1", to=WITHY, hive_mark="larch 10")
    note("colony_split", "2025-05-25", colony="M2", into="Y2", hive_mark="poly 10")
    note("colony_split", "2025-05-31", colony="T4", into="Y3", hive_mark="tarred 9")
    supers_on("2025-06-07", "H1-9", 1)
    supers_off("2025-06-14", "O1-9")
    harvest("2025-06-14", "H25-beans", "O1-9", 131.5)


def summer_2025():
    note("colony_established", "2025-06-08", colony="C1", apiary=WITHY, hive_mark="larch 11",
         origin="swarm from a boat shed, no comb with it", medicines="none")
    flow("2025-06-08", "expected", WITHY, "bramble", "2025-06-12", "2025-07-20")
    flow("2025-06-08", "expected", TERN, "bramble", "2025-06-14", "2025-07-20")
    supers_on("2025-06-14", "T1-7", 1)
    flow("2025-06-15", "seen", WITHY, "bramble", "2025-06-15", "2025-07-17", written="2025-07-19")
    flow("2025-06-17", "seen", TERN, "bramble", "2025-06-17", "2025-07-16", by=HELPER, written="2025-07-19")
    note("colony_established", "2025-06-21", colony="P1", apiary=WITHY, hive_mark="larch 12",
         origin="bought; the seller has no medicine record", medicines="not_known")
    note("colony_established", "2025-06-21", colony="P2", apiary=WITHY, hive_mark="larch 13",
         origin="bought; seller's medicine record seen, nothing since October 2024", medicines="none")
    look("2025-06-22", "present", "Y1:5 Y2:5 C1:6 P1:7 P2:8", {"C1": "new queen laying"}, by=HELPER)
    supers_on("2025-06-28", "O1-9", 2)
    flow("2025-06-28", "expected", SALT, "sea lavender", "2025-07-08", "2025-08-10")
    supers_on("2025-07-05", "M1-4 M6-9", 1)
    flow("2025-07-02", "seen", OXMARL, "phacelia", "2025-07-02", "2025-07-26", written="2025-08-02")
    flow("2025-07-12", "seen", SALT, "sea lavender", "2025-07-12", "2025-08-09", written="2025-08-16")
    look("2025-07-05", "present", "H7:9 H8:9 H4:8", {"H7": "31 mites on 300 bees", "H8": "44 mites on 300 bees"})
    # Strips with the bramble supers on: allowed, but no honey may be taken for seven days.
    give("2025-07-05", "SEVEN-25-1", 2, "H7-8")
    harvest("2025-07-10", "H25-show", "H8", 4)
    supers_off("2025-07-26", "H1-9")
    harvest("2025-07-26", "H25-bramble-H", "H1-9", 96)
    supers_off("2025-07-27", "T1-7", by=HELPER)
    harvest("2025-07-27", "H25-bramble-T", "T1-7", 61.5)
    # O9 was forgotten: its supers stay on.
    supers_off("2025-08-02", "O1-8")
    harvest("2025-08-02", "H25-phacelia", "O1-8", 118)
    supers_off("2025-08-15", "M1-4 M6-9")
    harvest("2025-08-15", "H25-lavender", "M1-4 M6-9", 72.5)


def autumn_2025():
    # Oxmarl: long white strips.
    look("2025-08-09", "present", "O4:9 O5:9 O6:8 O7:7 O8:8 O9:9")
    strips = give("2025-08-09", "PALE-25-1", 2, "O4-9")
    note("colony_split", "2025-08-30", colony="O5", into="Y4", to=SALT, hive_mark="poly 11", strips="both")
    supers_off("2025-08-31", "O9")
    look("2025-09-20", "present", "O8:7 O9:7")
    take_out("2025-09-20", strips, "O8", by=HELPER)
    look("2025-10-18", "present", "O4:7 O5:6 O7:5 O9:6")
    wrong = take_out("2025-10-11", strips, "O4-5 O7 O9", written="2025-10-20")
    take_out("2025-10-18", strips, "O4-5 O7 O9", corrects=wrong, written="2025-10-27",
             reason="wrong Saturday: the notebook says the 18th")
    take_out("2025-10-18", strips, "Y4")

    # Ternholm: notched strips, from two lots. T8 is left out of the round.
    look("2025-08-16", "present", "T1:8 T2:7 T5:8")
    first = give("2025-08-16", "NOTCH-25-1", 2, "T1-5")
    nucleus = give("2025-08-16", "NOTCH-25-1", 1, "Y3")
    # Given without reading the pack: no withdrawal period is recorded, and nobody read that lot's leaflet.
    unread = give("2025-08-16", "NOTCH-25-2", 2, "T6-7", days=None, by=HELPER)
    take_out("2025-10-25", first, "T1-4")
    take_out("2025-10-25", nucleus, "Y3")
    take_out("2025-10-25", unread, "T6-7", by=HELPER)
    # A fortnight of gales: no boat went out.
    take_out("2025-11-08", first, "T5")

    # Saltwend: two trays, a fortnight apart. M9 never got the second.
    look("2025-08-17", "present", "M1:8 M4:7 M5:3 M6:8", {"M5": "dwindling; to be united"})
    gel = give("2025-08-17", "LARCH-25-1", 1, "M1-9 Y2")
    give("2025-08-31", "LARCH-25-1", 1, "M1-8 Y2", of=gel)
    note("colony_united", "2025-09-13", colony="M5", into="M4", strips="taken_out")
    take_out("2025-09-28", gel, "M1-4 M6-9 Y2", written="2025-10-21")

    # Withyhythe: four tablets, a week apart. The second was recorded twice. Y1 gets entrance strips instead.
    tablets = give("2025-08-17", "HERB-25-1", 1, "H4-9 C1 P1-2")
    give("2025-08-24", "HERB-25-1", 1, "H4-9 C1 P1-2", of=tablets)
    twice = give("2025-08-24", "HERB-25-1", 1, "H4-9 C1 P1-2", of=tablets, by=HELPER, written="2025-08-25")
    note("strike_out", "2025-08-31", corrects=twice, reason="one visit, written down by both of us")
    give("2025-08-31", "HERB-25-1", 1, "H4-9 C1 P1-2", of=tablets)
    give("2025-09-07", "HERB-25-1", 1, "H4-9 C1 P1-2", of=tablets, by=HELPER)
    gate = give("2025-08-23", "GATE-25-1", 2, "Y1")
    # A second medicine in H6 while the last tablet is still in.
    look("2025-09-07", "present", "H6:8 H8:6", {"H6": "58 mites on 300 bees", "H8": "crippled wings"})
    extra = give("2025-09-07", "FOUR-25-1", 4, "H6")
    take_out("2025-09-14", tablets, "H4-9 C1 P1-2")
    take_out("2025-10-12", extra, "H6")
    take_out("2025-11-15", gate, "Y1")
    look("2025-09-14", "present", "H4:7 H5:6 H7:7 H9:6 C1:7 P1:7 P2:7", feeder=True)

    # Six colonies go to the heath and back; they are treated after their return.
    flow("2025-08-03", "expected", FURZE, "ling", "2025-08-09", "2025-09-07")
    move("2025-08-07", "H1-3 O1-3", FURZE)
    supers_on("2025-08-08", "H1-3 O1-3", 1)
    flow("2025-08-12", "seen", FURZE, "ling", "2025-08-12", "2025-09-05", written="2025-09-16")
    supers_off("2025-09-13", "H1-3 O1-3")
    harvest("2025-09-13", "H25-heather", "H1-3 O1-3", 41)
    move("2025-09-16", "H1-3", WITHY)
    move("2025-09-16", "O1-3", OXMARL, by=HELPER)
    home = give("2025-09-20", "NOTCH-25-1", 2, "H1-3")
    farm = give("2025-09-20", "NOTCH-25-1", 2, "O1-3")
    look("2025-11-09", "lowest", "H1:6 H2:6 H3:7 O1:7 O2:6 O3:7", {"H1": "a palm of brood on one comb"})
    take_out("2025-11-09", home, "H1-3")
    take_out("2025-11-09", farm, "O1-3")
    supers_on("2025-10-05", "H9", 1, purpose="bees_only")
    note("disposal", "2025-11-15", lot="LARCH-25-1", quantity=2,
         how_and_where="two trays found in the boat shed, one by the book; council hazardous waste point (invented)",
         count_corrected=True)
    note("disposal", "2025-11-15", lot="HERB-25-1", quantity=6,
         how_and_where="opened pouch, council hazardous waste point (invented)")
    note("colony_ended", "2025-11-30", colony="H8", cause="dead, mites")


def winter_2025_26():
    # Trickled on Ternholm from a lot that expired three weeks before; recorded in January.
    give("2025-12-21", "WINTER-24-1", 2.5, "T1-8 Y3", method="trickle", written="2026-01-11", at="11:00")
    look("2025-12-20", "absent", "O4:5 O5:5")
    give("2025-12-20", "WINTER-25-1", 2.5, "O1-9", method="trickle")
    give("2025-12-28", "WINTER-25-1", 2.3, "H1-7 H9 C1 Y1 P1-2", method="sublimation", at="13:15")
    look("2026-01-04", "absent", "M1:6 M2:6")
    give("2026-01-04", "WINTER-25-1", 2.5, "M1-4 M6-9 Y2 Y4", method="trickle", by=HELPER)
    # A storm surge comes over the marsh.
    note("site_conditions", "2026-01-31", apiary=SALT, power="none", access="none", ground="flooded",
         until="2026-02-13")
    note("colony_ended", "2026-02-01", colony="M7", cause="swept off its stand by the surge", written="2026-02-14")
    note("site_conditions", "2026-02-14", apiary=SALT, power="none", access="on_foot", ground="wet",
         until="2026-03-06")
    note("colony_ended", "2026-03-01", colony="O7", cause="starved")
    note("site_conditions", "2026-03-07", apiary=SALT, power="none", access="vehicle", ground="wet")
    note("disposal", "2026-03-14", lot="WINTER-24-1", quantity=12.5,
         how_and_where="rest of an expired pack, council hazardous waste point (invented)")
    supers_off("2026-03-14", "H9")
    note("colony_united", "2026-03-21", colony="T6", into="T7", strips="taken_out")
    note("colony_ended", "2026-03-21", colony="T2", cause="drone layer, shaken out", by=HELPER)


# ---- 2026, up to the eve of the demo's day ----


def spring_2026():
    # Six weeks, with no record of brood: whether that was enough is not known.
    nucleus = give("2026-03-21", "PALE-25-1", 1, "Y3")
    take_out("2026-05-02", nucleus, "Y3")
    # T8 makes up for the round that it was left out of.
    late = give("2026-03-21", "PALE-25-1", 2, "T8")
    take_out("2026-05-30", late, "T8")
    look("2026-04-04", "present", "M1:7 M2:8 M3:6 M4:7 M6:7 M8:6 M9:5 Y2:6 Y4:5", {"M9": "slow"})
    look("2026-04-05", "present", "H1:8 H2:7 H3:8 H4:8 H5:6 H6:7 H7:8 H9:6 C1:8 Y1:6 P1:7 P2:8", by=HELPER)
    look("2026-04-11", "present", "O1:9 O2:9 O3:8 O4:8 O5:9 O6:6 O8:7 O9:8")
    look("2026-04-12", "present", "T1:7 T3:8 T4:9 T5:7 T7:8 T8:5")
    flow("2026-05-02", "expected", OXMARL, "field beans", "2026-05-12", "2026-06-10")
    supers_on("2026-05-09", "O1-6 O8-9", 2)
    flow("2026-05-15", "seen", OXMARL, "field beans", "2026-05-15", "2026-06-06", written="2026-06-13")
    note("colony_split", "2026-05-16", colony="H5", into="Y6", hive_mark="larch 14")
    look("2026-05-23", "present", "H1:9 H2:9 H3:10 H4:9 H6:9 H7:10 H9:5 C1:9 Y1:8 P1:9 P2:9",
         {"H9": "chalk brood, new queen put in"}, by=HELPER)
    note("colony_split", "2026-06-06", colony="M3", into="Y7", hive_mark="poly 7")
    supers_on("2026-06-06", "H1-7 C1 Y1 P2", 1)
    supers_on("2026-06-07", "T1 T3-5 T7-8 Y3", 1)


def summer_2026():
    supers_off("2026-06-13", "O1-6 O8-9")
    harvest("2026-06-13", "H26-beans", "O1-6 O8-9", 104)
    flow("2026-06-06", "expected", WITHY, "bramble", "2026-06-11", "2026-07-12")
    flow("2026-06-10", "seen", WITHY, "bramble", "2026-06-10", "2026-07-08", written="2026-07-11")
    flow("2026-06-13", "seen", TERN, "bramble", "2026-06-13", "2026-07-12", written="2026-07-19", by=HELPER)
    note("colony_established", "2026-06-13", colony="C2", apiary=TERN, hive_mark="tarred 2",
         origin="swarm from the harbour crane, no comb with it", medicines="none")
    flow("2026-06-13", "expected", OXMARL, "phacelia", "2026-06-20", "2026-07-18")
    supers_on("2026-06-20", "O1-6 O8-9", 2)
    note("disposal", "2026-06-20", lot="EIGHT-25-1", quantity=4,
         how_and_where="opened pouch, council hazardous waste point (invented)", by=HELPER)
    flow("2026-06-22", "seen", OXMARL, "phacelia", "2026-06-22", "2026-07-16", written="2026-07-18")
    count("2026-06-20", "natural_fall", "H3:4 H4:7 H6:9 H7:6 C1:5", days=3)
    # In H9, which has no supers; it is still in, a week too long.
    give("2026-06-27", "EIGHT-26-1", 2, "H9")
    look("2026-06-28", "present", "Y6:5 Y7:5 C2:6", {"Y6": "new queen laying"})
    supers_on("2026-06-28", "M1-4 M6 M8-9 Y2 Y4", 1)
    flow("2026-06-28", "expected", SALT, "sea lavender", "2026-07-06", "2026-08-12")
    flow("2026-07-09", "seen", SALT, "sea lavender", "2026-07-09", "2026-08-11", written="2026-08-15")
    supers_off("2026-07-10", "H1-7 C1 Y1 P2")
    harvest("2026-07-10", "H26-bramble-H", "H1-7 C1 Y1 P2", 112.5)
    note("prescription", "2026-07-11", prescription="BS-2026-011", vet=VET, contact="Brinewhistle Surgery (demo)",
         medicine="pale", terms={"supers_during": "off", "withdrawal_days": 21, "wait_after_removal_days": 0,
                                 "removal": "needed", "stay_min_days": 42, "stay_min_days_with_brood": 42,
                                 "stay_max_days": 56})
    prescribed = give("2026-07-11", "PALE-26-1", 2, "H1-2", days=21, prescription="BS-2026-011")
    supers_off("2026-07-18", "O1-6 O8-9")
    harvest("2026-07-18", "H26-phacelia", "O1-6 O8-9", 92.5)
    # A lot whose leaflet nobody read: unknown while it is in, and afterwards.
    give("2026-07-19", "SEVEN-26-1", 2, "T8")
    supers_off("2026-07-19", "T1 T3-5 T7 Y3", by=HELPER)
    harvest("2026-07-19", "H26-bramble-T", "T1 T3-5 T7 Y3", 48)
    supers_off("2026-08-01", "T8")

    # Oxmarl: O4 and O6 are left out; the strips of August 2025 were never recorded as out of O6.
    look("2026-07-20", "present", "O1:9 O2:9 O3:8 O4:10 O5:9 O8:8 O9:8")
    give("2026-07-20", "EIGHT-26-1", 2, "O1-3 O5 O9")
    # Withyhythe: four tablets, a week apart, out on the eve.
    look("2026-07-31", "present", "H4:9 H6:8 H7:9 C1:8 P1:8 P2:9 Y1:7 Y6:7")
    tablets = give("2026-07-31", "HERB-26-1", 1, "H6-7 C1 P1-2 Y1 Y6")
    for on in ("2026-08-07", "2026-08-14", "2026-08-21"):
        give(on, "HERB-26-1", 1, "H6-7 C1 P1-2 Y1 Y6", of=tablets)
    take_out("2026-08-28", tablets, "H6-7 C1 P1-2 Y1 Y6",
             how_and_where="crumbs in a bag, council hazardous waste point (invented)")
    take_out("2026-08-28", prescribed, "H1-2")

    # Five colonies on the heath: the two of the marsh are back before the track goes under, three are still out.
    supers_off("2026-08-01", "M2-3")
    flow("2026-08-01", "expected", FURZE, "ling", "2026-08-08", "2026-09-06")
    move("2026-08-05", "H3-5 M2-3", FURZE)
    supers_on("2026-08-06", "H3-5 M2-3", 1)
    flow("2026-08-11", "seen", FURZE, "ling", "2026-08-11")
    supers_off("2026-08-25", "M2-3")
    harvest("2026-08-25", "H26-heather-M", "M2-3", 13.5)
    move("2026-08-26", "M2-3", SALT)
    note("colony_ended", "2026-08-08", colony="C2", cause="given away to the harbour school (invented)")


def late_summer_2026():
    # Saltwend: the sea lavender is over, the ivy is ahead, and nothing is in yet but the paper in M8.
    supers_off("2026-08-15", "M1 M4 M6 M8-9 Y2 Y4")
    harvest("2026-08-15", "H26-lavender", "M1 M4 M6 M8-9 Y2 Y4", 54)
    look("2026-08-15", "present", "M1:9 M6:9 M8:8 M9:7 Y2:8 Y4:8 Y7:6")
    count("2026-08-15", "wash", "M1:9 M4:6 M6:4 M9:28", bees=300)
    give("2026-08-22", "WRACK-26-1", 2, "M8", days=None)
    for apiary, months in ((SALT, ((8, 13.5, 20.5), (9, 11.5, 18.5), (10, 8.5, 15), (11, 5.5, 10.5))),
                           (WITHY, ((8, 13, 21.5), (9, 10.5, 19), (10, 7.5, 15)))):
        note("temperature_normals", "2026-08-15", apiary=apiary, origin="invented for this demo",
             months=[{"month": month, "min_c": low, "max_c": high} for month, low, high in months])

    # Ternholm: nine days in. T1 has brood, the queen of T5 was caged, nobody noted the brood of T3.
    look("2026-08-18", "present", "T1:8 T7:8 T8:6 Y3:7")
    look("2026-08-18", "lowest", "T5:7", {"T5": "queen caged since 25 July, a few last cells"})
    give("2026-08-20", "PALE-26-2", 2, "T1 T3-5", by=HELPER)
    note("colony_split", "2026-08-26", colony="T4", into="Y5", hive_mark="tarred 10")

    # Oxmarl: buckwheat, then a cloudburst. The honey is gone from the O4 boxes of July; it gets two new supers.
    flow("2026-08-15", "expected", OXMARL, "buckwheat", "2026-08-22", "2026-09-12")
    supers_on("2026-08-16", "O4", 2)
    look("2026-08-22", "present", "O1:8 O2:9 O3:8 O4:9 O5:8 O8:7 O9:8")
    flow("2026-08-24", "seen", OXMARL, "buckwheat", "2026-08-24")
    note("site_conditions", "2026-08-25", apiary=OXMARL, power="battery", access="on_foot", ground="flooded",
         until="2026-08-31")
    supers_on("2026-08-27", "O2", 1, by=HELPER)
    give("2026-08-28", "FOUR-25-1", 4, "O8")

    # The ivy is expected at three places. The track to Saltwend is under water at each high water of the spring tides.
    for apiary in (WITHY, SALT, TERN):
        flow("2026-08-22", "expected", apiary, "ivy", "2026-09-19", "2026-11-01", from_early="2026-09-12",
             from_late="2026-09-26")
    look("2026-08-26", "present", "M1:8", {"M1": "brood on five frames"}, feeder=False, brood_boxes=1)
    look("2026-08-26", "absent", "M4:7", {"M4": "queen caged since 1 August, all brood has emerged"}, feeder=False,
         brood_boxes=1)
    note("site_conditions", "2026-08-27", apiary=SALT, power="none", access="none", ground="wet", until="2026-09-01")
    note("temperature", "2026-08-28", apiary=SALT, stage="forecast", origin="invented for this demo",
         days=[{"day": day, "min_c": low, "max_c": high} for day, low, high in (
             ("2026-08-29", 13, 21), ("2026-08-30", 14, 24.5), ("2026-08-31", 15.5, 27.5), ("2026-09-01", 17, 31),
             ("2026-09-02", 16, 30), ("2026-09-03", 14, 25), ("2026-09-04", 12, 21), ("2026-09-05", 11, 19.5),
             ("2026-09-06", 10.5, 19), ("2026-09-07", 11, 19.5))])


def main():
    for chapter in (holding, medicines, lots, spring_2025, summer_2025, autumn_2025, winter_2025_26, spring_2026,
                    summer_2026, late_summer_2026, papers):
        chapter()
    write(Path(__file__).with_name("holding.jsonl"))


if __name__ == "__main__":
    main()
