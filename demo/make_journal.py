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
KEEPER = "Ottilie Quenbarrow (demo)"
HELPER = "Bram Ossery (demo)"
VET = "Isolde Varnhamble (demo vet)"


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
    """`Q4-7 W1` stands for Q4, Q5, Q6, Q7 and W1."""
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
    text = ["invented for a demo", "Wendrel Farm Supply (demo)", f"till slip {number}", on, *lines]
    attach(on, name, proofs.png(text), "image/png", f"till-slip-{number}.png")


def count(on, method, mites, **more):
    """Counts of one day: `Q4:3` is colony Q4 with three mites."""
    for word in mites.split():
        colony, _, number = word.partition(":")
        note("mite_count", on, colony=colony, method=method, mites=int(number), **more)


def reading(on, name, revision, **terms):
    return note("leaflet_reading", on, lot=name, revision=revision, terms=terms)


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
    """Inspections of one day: `Q4:8` is colony Q4 on eight seams of bees."""
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


# ---- The holding as the record begins, February 2025 ----

QUERN, SALLOW, BRAMBLE, LIND, HETHER = "Quernford", "Sallowholm", "Bramblecote", "Lindrake", "Hethermoor"


def holding():
    on = "2025-02-15"
    note("holding_details", on, keeper=KEEPER, address="0 Nowhere Lane, Quernford on the Wendrel (all invented)",
         jurisdiction="gb")
    places = {
        QUERN: "home garden above the ford, lime and gardens (invented)",
        SALLOW: "water meadow by the Wendrel, white clover; floods in some winters (invented)",
        BRAMBLE: "farm edge, oilseed rape and borage (invented)",
        LIND: "old lime avenue beyond the footbridge (invented)",
        HETHER: "moor stand, August and September only (invented)",
    }
    for apiary, place in places.items():
        note("apiary_details", on, apiary=apiary, place=place)
    for apiary, power, access, ground in (
        (QUERN, "mains", "vehicle", "dry"),
        (SALLOW, "none", "vehicle", "wet"),
        (BRAMBLE, "battery", "vehicle", "dry"),
        (LIND, "none", "on_foot", "dry"),
        (HETHER, "none", "vehicle", "dry"),
    ):
        note("site_conditions", on, apiary=apiary, power=power, access=access, ground=ground)
    for letter, most, apiary, mark in (("Q", 9, QUERN, "cedar"), ("S", 9, SALLOW, "poly"), ("B", 9, BRAMBLE, "blue"),
                                       ("L", 8, LIND, "long")):
        for number in range(1, most + 1):
            note("colony_established", on, colony=f"{letter}{number}", apiary=apiary, hive_mark=f"{mark} {number}",
                 origin="kept before this record began, nothing inside", medicines="none")


# ---- Medicines, lots, and readings of their leaflets ----

STORES = {"name": "Hollin Bee Stores (demo)", "address": "1 Nowhere Row, Wendrel Bank (invented)"}
FARM = {"name": "Wendrel Farm Supply (demo)", "address": "Unit 0, Bramblecote Yard (invented)"}
NO_ADDRESS = {"name": "Club order, Wendrel Valley (demo)"}
SURGERY = {"name": "Varnhamble Surgery (demo)", "address": "0 Ford Steps, Quernford (invented)"}


def medicines():
    on = "2025-02-20"
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
    note("medicine_described", "2025-08-01", medicine="gate", pack_name="Gatestrip 275 (demo)",
         authorisation="DEMO 0109", unit="strip",
         terms={"supers_during": "off", "withdrawal_days": 0, "wait_after_removal_days": 0, "removal": "needed",
                "stay_min_days": 63, "stay_max_days": 120})
    # No leaflet and no terms: the answer for treated colonies is unknown.
    note("medicine_described", "2026-03-30", medicine="moorpaper", pack_name="Moorland Hive Paper (demo)", unit="piece")


def lots():
    lot("EIGHT-25-1", "eight", "2025-03-08", 20, "X8-114 demo", "2026-08-31", STORES, "invoice H-2031, red folder")
    reading("2025-03-08", "EIGHT-25-1", "03/2024", supers_during="off", withdrawal_days=0, wait_after_removal_days=0)
    lot("WINTER-24-1", "winter", "2025-02-20", 35, "W-0093 demo", "2025-11-30", STORES, "invoice H-1987, red folder")
    reading("2025-02-20", "WINTER-24-1", "11/2022", withdrawal_days=0, wait_after_removal_days=0)
    lot("SEVEN-25-1", "seven", "2025-06-28", 10, "F7-2210 demo", "2026-06-30", FARM, "till slip 4471, red folder")
    reading("2025-07-04", "SEVEN-25-1", "06/2023", supers_during="on_no_harvest", withdrawal_days=0,
            wait_after_removal_days=0, removal="not_needed", stay_min_days=7)
    larch = lot("LARCH-25-1", "larch", "2025-07-19", 20, "LG-508 demo", "2025-06-30", STORES,
                "invoice H-2177, red folder")
    note("lot_acquired", "2025-07-19", written="2025-08-30", corrects=larch,
         reason="expiry misread: the pouch says 06/2027, not 06/2025", lot="LARCH-25-1", medicine="larch",
         batch="LG-508 demo", expiry="2027-06-30", quantity=20, supplier=STORES, proof="invoice H-2177, red folder")
    lot("PALE-25-1", "pale", "2025-07-19", 20, "P5-0417 demo", "2027-03-31", STORES, "invoice H-2177, red folder",
        label_revision="04/2023")
    # The built-in leaflet has no longest stay; this pack does.
    reading("2025-08-01", "PALE-25-1", "04/2023", stay_max_days=70)
    lot("NOTCH-25-1", "notch", "2025-07-26", 30, "N-7719 demo", "2027-01-31", FARM, "till slip 4610, red folder")
    reading("2025-08-09", "NOTCH-25-1", "02/2024", supers_during="off", withdrawal_days=0, wait_after_removal_days=0,
            removal="needed", stay_min_days=42, stay_min_days_with_brood=70, stay_max_days=70)
    # The same medicine, but nobody read the leaflet of this lot.
    lot("NOTCH-25-2", "notch", "2025-08-08", 10, "N-7802 demo", "2027-02-28", FARM, "till slip 4655, red folder")
    lot("HERB-25-1", "herb", "2025-08-02", 60, "H4-31 demo", "2026-12-31", NO_ADDRESS, "order list of July 2025")
    reading("2025-08-09", "HERB-25-1", "09/2021", supers_during="off", withdrawal_days=0, wait_after_removal_days=0,
            removal="needed", stay_min_days=28)
    lot("GATE-25-1", "gate", "2025-08-09", 10, "G-275-6 demo", "2027-05-31", STORES, "invoice H-2203, red folder")
    lot("FOUR-25-1", "four", "2025-08-30", 20, "T36-88 demo", "2027-04-30", STORES, "invoice H-2240, red folder")
    reading("2025-08-30", "FOUR-25-1", "01/2020", withdrawal_days=0, wait_after_removal_days=0)
    lot("WINTER-25-1", "winter", "2025-11-08", 175, "W-0151 demo", "2027-10-31", STORES, "invoice H-2266, red folder")
    reading("2025-11-08", "WINTER-25-1", "11/2022", withdrawal_days=0, wait_after_removal_days=0)
    lot("PALE-26-1", "pale", "2026-02-14", 20, "P5-0502 demo", "2027-09-30", SURGERY, "surgery receipt 88, blue folder",
        label_revision="04/2023")
    reading("2026-02-14", "PALE-26-1", "04/2023", stay_max_days=70)
    lot("EIGHT-26-1", "eight", "2026-02-14", 20, "X8-131 demo", "2027-06-30", STORES, "invoice H-2301, blue folder")
    reading("2026-02-14", "EIGHT-26-1", "03/2024", supers_during="off", withdrawal_days=0, wait_after_removal_days=0)
    lot("MOOR-26-1", "moorpaper", "2026-03-30", 10, None, "2027-03-31", {"name": "A stall at a show (demo)"}, None)
    lot("SEVEN-26-1", "seven", "2026-07-04", 10, "F7-2388 demo", "2027-05-31", FARM, "till slip 5120, blue folder")
    lot("HERB-26-1", "herb", "2026-07-25", 30, "H4-47 demo", "2027-12-31", STORES, "invoice H-2388, blue folder")
    reading("2026-08-01", "HERB-26-1", "09/2021", supers_during="off", withdrawal_days=0, wait_after_removal_days=0,
            removal="needed", stay_min_days=28)
    lot("NOTCH-26-1", "notch", "2026-07-25", 40, "N-8040 demo", "2028-01-31", STORES, "invoice H-2388, blue folder")
    reading("2026-07-25", "NOTCH-26-1", "02/2024", supers_during="off", withdrawal_days=0, wait_after_removal_days=0,
            removal="needed", stay_min_days=42, stay_min_days_with_brood=70, stay_max_days=70)
    lot("LARCH-26-1", "larch", "2026-08-15", 20, "LG-560 demo", "2028-06-30", STORES, "invoice H-2399, blue folder")
    lot("PALE-26-2", "pale", "2026-08-08", 30, "P5-0588 demo", "2028-02-29", STORES, "invoice H-2395, blue folder",
        label_revision="04/2023")
    reading("2026-08-15", "PALE-26-2", "04/2023", stay_max_days=70)


def papers():
    """Proofs of purchase. HERB-25-1, MOOR-26-1 and NOTCH-25-2 have only words, or nothing."""
    invoice("2025-02-20", "H-1987", STORES, ["35 g Winterpowder 886 (demo), batch W-0093 demo"], ["WINTER-24-1"])
    invoice("2025-03-08", "H-2031", STORES, ["20 Eightweek Strip (demo), batch X8-114 demo"], ["EIGHT-25-1"])
    invoice("2025-07-19", "H-2177", STORES, ["20 Palestrip 500 (demo), batch P5-0417 demo",
                                             "20 Larchgel Tray (demo), batch LG-508 demo"], ["PALE-25-1", "LARCH-25-1"])
    slip("2025-07-26", "4610", ["30 Notchstrip 500"], "NOTCH-25-1")
    invoice("2025-11-08", "H-2266", STORES, ["175 g Winterpowder 886 (demo), batch W-0151 demo"], ["WINTER-25-1"])
    invoice("2026-02-14", "H-2301", STORES, ["20 Eightweek Strip (demo), batch X8-131 demo"], ["EIGHT-26-1"])
    attach("2026-02-14", None, proofs.pdf([
        "INVENTED FOR A DEMO: no real surgery, no real vet", "", "Varnhamble Surgery (demo)", "Prescription VS-2026-004", "",
        "Palestrip 500 (demo), 2 strips for each of 2 colonies", "Withdrawal period for honey: 21 days"]),
        "application/pdf", "prescription-VS-2026-004.pdf", prescription="VS-2026-004")
    attach("2026-02-14", "PALE-26-1", proofs.pdf([
        "INVENTED FOR A DEMO: no real surgery, no real goods", "", "Varnhamble Surgery (demo)", "Receipt 88", "",
        "20 Palestrip 500 (demo), batch P5-0502 demo"]), "application/pdf", "receipt 88.pdf")
    slip("2026-07-04", "5120", ["10 Sevenday Gel Strip"], "SEVEN-26-1")
    invoice("2026-07-25", "H-2388", STORES, ["30 Fourherb Tablet (demo), batch H4-47 demo",
                                             "40 Notchstrip 500 (demo), batch N-8040 demo"], ["HERB-26-1", "NOTCH-26-1"])
    invoice("2026-08-08", "H-2395", STORES, ["30 Palestrip 500 (demo), batch P5-0588 demo"], ["PALE-26-2"])
    # This invoice only turned up in October.
    invoice("2026-10-31", "H-2399", STORES, ["20 Larchgel Tray (demo), batch LG-560 demo", "Bought on 2026-08-15"],
            ["LARCH-26-1"])
    note("lot_opened", "2025-12-21", lot="WINTER-25-1")
    note("lot_opened", "2026-07-10", lot="SEVEN-26-1")


# ---- 2025 ----


def spring_2025():
    strips = give("2025-03-15", "EIGHT-25-1", 2, "L1-8")
    take_out("2025-05-03", strips, "L1-2 L4-8")
    # Eleven days longer than the leaflet allows, and recorded three weeks late.
    take_out("2025-05-21", strips, "L3", written="2025-06-08")
    look("2025-03-29", "present", "Q1:7 Q2:6 Q3:8 Q4:7 Q5:5 Q6:8 Q7:7 Q8:6 Q9:4")
    look("2025-04-06", "present", "S1:8 S2:9 S3:6 S4:7 S5:4 S6:8 S7:7 S8:7 S9:6", {"S5": "slow, old queen"})
    look("2025-04-12", "present", "B1:9 B2:8 B3:10 B4:8 B5:9 B6:7 B7:7 B8:8 B9:9")
    look("2025-05-03", "present", "L1:8 L2:7 L5:8 L6:6 L7:7 L8:4", {"L8": "small, on five frames"})
    # The brood of L3 and L4 is never recorded, and their stays depend on it.
    look("2025-05-03", None, "L3:8 L4:9", {"L3": "bees only counted, too windy to lift frames", "L4": "queen cups"})
    flow("2025-03-29", "expected", BRAMBLE, "oilseed rape", "2025-04-14", "2025-05-16")
    supers_on("2025-04-12", "B1-9", 2)
    flow("2025-04-13", "seen", BRAMBLE, "oilseed rape", "2025-04-13", "2025-05-14", written="2025-05-17")
    note("colony_split", "2025-05-10", colony="B3", into="N1", to=QUERN, hive_mark="cedar 10")
    note("colony_split", "2025-05-18", colony="S2", into="N2", hive_mark="poly 10")
    supers_off("2025-05-21", "B1-9")
    harvest("2025-05-21", "H25-rape", "B1-9", 148.5)
    supers_on("2025-05-24", "Q1-9", 1)
    note("colony_split", "2025-05-25", colony="L4", into="N3", hive_mark="long 9")


def summer_2025():
    supers_on("2025-05-31", "S1-4 S6-9", 1)
    note("colony_established", "2025-06-01", colony="W1", apiary=QUERN, hive_mark="cedar 11",
         origin="swarm from the hedge, no comb with it", medicines="none")
    flow("2025-05-31", "expected", SALLOW, "white clover", "2025-06-05", "2025-07-10")
    flow("2025-06-07", "seen", SALLOW, "white clover", "2025-06-07", "2025-07-13", written="2025-07-20")
    supers_on("2025-06-07", "L1-7", 1)
    note("colony_established", "2025-06-14", colony="K1", apiary=QUERN, hive_mark="cedar 12",
         origin="bought; the seller has no medicine record", medicines="not_known")
    note("colony_established", "2025-06-14", colony="K2", apiary=QUERN, hive_mark="cedar 13",
         origin="bought; seller's medicine record seen, nothing since October 2024", medicines="none")
    flow("2025-06-14", "expected", QUERN, "lime", "2025-06-20", "2025-07-12")
    flow("2025-06-14", "expected", LIND, "lime", "2025-06-20", "2025-07-12")
    supers_on("2025-06-21", "B1-9", 2)
    flow("2025-06-21", "seen", QUERN, "lime", "2025-06-21", "2025-07-10", written="2025-07-12")
    flow("2025-06-22", "seen", LIND, "lime", "2025-06-22", "2025-07-09", by=HELPER, written="2025-07-12")
    flow("2025-06-28", "seen", BRAMBLE, "borage", "2025-06-28", "2025-07-26", written="2025-07-27")
    look("2025-06-15", "present", "N1:5 N2:5 W1:6 K1:7 K2:8", {"W1": "new queen laying"}, by=HELPER)
    look("2025-07-05", "present", "Q7:9 Q8:9 Q4:8", {"Q7": "31 mites on 300 bees", "Q8": "44 mites on 300 bees"})
    # Strips with the lime supers on: allowed, but no honey may be taken for seven days.
    give("2025-07-05", "SEVEN-25-1", 2, "Q7-8")
    harvest("2025-07-10", "H25-show", "Q8", 4)
    supers_off("2025-07-27", "Q1-9")
    harvest("2025-07-27", "H25-lime-Q", "Q1-9", 96)
    # B9 was forgotten: its supers stay on.
    supers_off("2025-07-30", "B1-8")
    harvest("2025-07-30", "H25-borage", "B1-8", 171.5)
    supers_off("2025-08-02", "L1-7")
    harvest("2025-08-02", "H25-lime-L", "L1-7", 71)
    supers_off("2025-08-03", "S1-4 S6-9", by=HELPER)
    harvest("2025-08-03", "H25-clover", "S1-4 S6-9", 83.5)


def autumn_2025():
    # Bramblecote: long white strips.
    look("2025-08-02", "present", "B4:9 B5:9 B6:8 B7:7 B8:8 B9:9")
    strips = give("2025-08-02", "PALE-25-1", 2, "B4-9")
    note("colony_split", "2025-08-23", colony="B5", into="N4", to=SALLOW, hive_mark="poly 11", strips="both")
    supers_off("2025-08-24", "B9")
    look("2025-09-13", "present", "B8:7 B9:7")
    take_out("2025-09-13", strips, "B8", by=HELPER)
    look("2025-10-11", "present", "B4:7 B5:6 B7:5 B9:6")
    wrong = take_out("2025-10-04", strips, "B4-5 B7 B9", written="2025-10-13")
    take_out("2025-10-11", strips, "B4-5 B7 B9", corrects=wrong, written="2025-10-20",
             reason="wrong Saturday: the notebook says the 11th")
    take_out("2025-10-11", strips, "N4")

    # Lindrake: notched strips, from two lots. L8 is left out of the round.
    look("2025-08-09", "present", "L1:8 L2:7 L5:8")
    first = give("2025-08-09", "NOTCH-25-1", 2, "L1-5")
    nucleus = give("2025-08-09", "NOTCH-25-1", 1, "N3")
    # Given without reading the pack: no withdrawal period is recorded, and nobody read that lot's leaflet.
    unread = give("2025-08-09", "NOTCH-25-2", 2, "L6-7", days=None, by=HELPER)
    take_out("2025-10-18", first, "L1-4")
    take_out("2025-10-18", nucleus, "N3")
    take_out("2025-10-18", unread, "L6-7", by=HELPER)
    take_out("2025-11-01", first, "L5")

    # Sallowholm: two trays, a fortnight apart. S9 never got the second.
    look("2025-08-10", "present", "S1:8 S4:7 S5:3 S6:8", {"S5": "dwindling; to be united"})
    gel = give("2025-08-10", "LARCH-25-1", 1, "S1-9 N2")
    give("2025-08-24", "LARCH-25-1", 1, "S1-8 N2", of=gel)
    note("colony_united", "2025-09-06", colony="S5", into="S4", strips="taken_out")
    take_out("2025-09-21", gel, "S1-4 S6-9 N2", written="2025-10-14")

    # Quernford: four tablets, a week apart. The second was recorded twice. N1 gets entrance strips instead.
    tablets = give("2025-08-10", "HERB-25-1", 1, "Q4-9 W1 K1-2")
    give("2025-08-17", "HERB-25-1", 1, "Q4-9 W1 K1-2", of=tablets)
    twice = give("2025-08-17", "HERB-25-1", 1, "Q4-9 W1 K1-2", of=tablets, by=HELPER, written="2025-08-18")
    note("strike_out", "2025-08-24", corrects=twice, reason="one visit, written down by both of us")
    give("2025-08-24", "HERB-25-1", 1, "Q4-9 W1 K1-2", of=tablets)
    give("2025-08-31", "HERB-25-1", 1, "Q4-9 W1 K1-2", of=tablets, by=HELPER)
    gate = give("2025-08-16", "GATE-25-1", 2, "N1")
    # A second medicine in Q6 while the last tablet is still in.
    look("2025-08-31", "present", "Q6:8 Q8:6", {"Q6": "58 mites on 300 bees", "Q8": "crippled wings"})
    extra = give("2025-08-31", "FOUR-25-1", 4, "Q6")
    take_out("2025-09-07", tablets, "Q4-9 W1 K1-2")
    take_out("2025-10-05", extra, "Q6")
    take_out("2025-11-08", gate, "N1")
    look("2025-09-07", "present", "Q4:7 Q5:6 Q7:7 Q9:6 W1:7 K1:7 K2:7", feeder=True)

    # Six colonies go to the heather and back; they are treated after their return.
    flow("2025-08-01", "expected", HETHER, "heather", "2025-08-08", "2025-09-05")
    move("2025-08-05", "Q1-3 B1-3", HETHER)
    supers_on("2025-08-06", "Q1-3 B1-3", 1)
    flow("2025-08-10", "seen", HETHER, "heather", "2025-08-10", "2025-09-03", written="2025-09-14")
    supers_off("2025-09-12", "Q1-3 B1-3")
    harvest("2025-09-12", "H25-heather", "Q1-3 B1-3", 41)
    move("2025-09-14", "Q1-3", QUERN)
    move("2025-09-14", "B1-3", BRAMBLE, by=HELPER)
    home = give("2025-09-16", "NOTCH-25-1", 2, "Q1-3")
    farm = give("2025-09-16", "NOTCH-25-1", 2, "B1-3")
    look("2025-11-09", "lowest", "Q1:6 Q2:6 Q3:7 B1:7 B2:6 B3:7", {"Q1": "a palm of brood on one comb"})
    take_out("2025-11-09", home, "Q1-3")
    take_out("2025-11-09", farm, "B1-3")
    supers_on("2025-10-05", "Q9", 1, purpose="bees_only")
    note("disposal", "2025-11-15", lot="LARCH-25-1", quantity=2,
         how_and_where="two trays found in the shed, one by the book; council hazardous waste point (invented)",
         count_corrected=True)
    note("disposal", "2025-11-15", lot="HERB-25-1", quantity=6,
         how_and_where="opened pouch, council hazardous waste point (invented)")
    note("colony_ended", "2025-11-23", colony="Q8", cause="dead, mites")


def winter_2025_26():
    # Trickled at Lindrake from a lot that expired three weeks before; recorded in January.
    give("2025-12-20", "WINTER-24-1", 2.5, "L1-8 N3", method="trickle", written="2026-01-10", at="11:00")
    look("2025-12-21", "absent", "B4:5 B5:5")
    give("2025-12-21", "WINTER-25-1", 2.5, "B1-9", method="trickle")
    give("2025-12-28", "WINTER-25-1", 2.3, "Q1-7 Q9 W1 N1 K1-2", method="sublimation", at="13:15")
    look("2026-01-04", "absent", "S1:6 S2:6")
    give("2026-01-04", "WINTER-25-1", 2.5, "S1-4 S6-9 N2 N4", method="trickle", by=HELPER)
    note("site_conditions", "2026-02-09", apiary=SALLOW, power="none", access="none", ground="flooded",
         until="2026-02-27")
    note("colony_ended", "2026-02-12", colony="S7", cause="swept off its stand by the flood", written="2026-02-28")
    note("site_conditions", "2026-02-28", apiary=SALLOW, power="none", access="on_foot", ground="wet",
         until="2026-03-27")
    note("colony_ended", "2026-02-22", colony="B7", cause="starved")
    note("disposal", "2026-03-07", lot="WINTER-24-1", quantity=12.5,
         how_and_where="rest of an expired pack, council hazardous waste point (invented)")
    note("colony_united", "2026-03-14", colony="L6", into="L7", strips="taken_out")
    note("colony_ended", "2026-03-14", colony="L2", cause="drone layer, shaken out", by=HELPER)
    note("site_conditions", "2026-03-28", apiary=SALLOW, power="none", access="vehicle", ground="wet")
    for apiary, months in ((SALLOW, ((4, 4, 12.5), (5, 7, 16.5), (6, 10, 19.5), (7, 12, 21.5), (8, 12, 21), (9, 9.5, 18.5),
                                     (10, 7, 14.5))),
                           (QUERN, ((4, 4.5, 13), (5, 7.5, 17), (6, 10.5, 20), (7, 12.5, 22), (8, 12.5, 21.5)))):
        note("temperature_normals", "2026-03-28", apiary=apiary, origin="invented for this demo",
             months=[{"month": month, "min_c": low, "max_c": high} for month, low, high in months])
    supers_off("2026-03-14", "Q9")


# ---- 2026 ----


def spring_2026():
    # On 18 April 2026 all of this is in, except the strips under prescription: they are out and the period is running.
    overdue = give("2026-02-14", "EIGHT-26-1", 2, "Q9")
    note("prescription", "2026-02-14", prescription="VS-2026-004", vet=VET, contact="Varnhamble Surgery (demo)",
         medicine="pale", terms={"supers_during": "off", "withdrawal_days": 21, "wait_after_removal_days": 0,
                                 "removal": "needed", "stay_min_days": 42, "stay_min_days_with_brood": 42,
                                 "stay_max_days": 56})
    prescribed = give("2026-02-21", "PALE-26-1", 2, "Q1-2", days=21, prescription="VS-2026-004")
    take_out("2026-04-04", prescribed, "Q1-2")

    strips = give("2026-03-28", "EIGHT-26-1", 2, "B1-3 B5 B9")
    other = give("2026-03-28", "FOUR-25-1", 4, "B8")
    white = give("2026-03-28", "PALE-26-1", 2, "L1 L3-5", by=HELPER)
    paper = give("2026-04-04", "MOOR-26-1", 2, "S8", days=None)

    look("2026-04-04", "present", "S1:7 S2:8 S3:6 S4:7 S6:7 S8:6 S9:5 N2:6 N4:5", {"S9": "28 mites on 300 bees"})
    look("2026-04-10", "present", "Q1:8 Q2:7 Q3:8 Q4:8 Q5:6 Q6:7 Q7:8 Q9:6 W1:8 N1:6 K1:7 K2:8", by=HELPER)
    look("2026-04-11", "present", "L1:7 L8:5 N3:6")
    look("2026-04-11", "lowest", "L5:6", {"L5": "queen caged since 20 March, a few last cells"})
    look("2026-04-12", "present", "B1:9 B2:9 B3:8 B4:8 B5:9 B8:7 B9:8")
    flow("2026-04-04", "expected", BRAMBLE, "oilseed rape", "2026-04-18", "2026-05-16")
    supers_on("2026-04-12", "B4", 2)
    note("colony_split", "2026-04-15", colony="L4", into="N5", hive_mark="cedar 8")
    supers_on("2026-04-16", "B2", 1, by=HELPER)
    flow("2026-04-17", "seen", BRAMBLE, "oilseed rape", "2026-04-17")
    flow("2026-04-17", "expected", QUERN, "lime", "2026-06-20", "2026-07-11")
    flow("2026-04-17", "expected", LIND, "lime", "2026-06-20", "2026-07-11")
    flow("2026-04-17", "expected", SALLOW, "white clover", "2026-06-06", "2026-07-12", from_early="2026-05-30",
         from_late="2026-06-13")
    # The river is up again, seven weeks before the clover; the queen of S4 was caged in time.
    note("site_conditions", "2026-04-16", apiary=SALLOW, power="none", access="on_foot", ground="flooded",
         until="2026-04-30")
    look("2026-04-17", "present", "S1:8", {"S1": "brood on five frames"}, feeder=False, brood_boxes=1)
    look("2026-04-17", "absent", "S4:7", {"S4": "queen caged since 23 March, all brood has emerged"}, feeder=False,
         brood_boxes=1)
    note("temperature", "2026-04-17", apiary=SALLOW, stage="forecast", origin="invented for this demo",
         days=[{"day": f"2026-04-{day}", "min_c": low, "max_c": high} for day, low, high in (
             (18, 3.5, 13), (19, 4, 14.5), (20, 2, 11), (21, 0.5, 9.5), (22, 1, 8.5), (23, 3, 12), (24, 5, 15.5),
             (25, 6.5, 17), (26, 6, 16), (27, 5, 14))])
    note("site_conditions", "2026-05-02", apiary=SALLOW, power="none", access="vehicle", ground="wet")

    supers_off("2026-04-19", "B2")
    take_out("2026-04-25", overdue, "Q9")
    supers_on("2026-05-02", "Q1-7 W1 K2", 1)
    take_out("2026-05-02", paper, "S8")
    take_out("2026-05-09", other, "B8")
    take_out("2026-05-09", strips, "B1-3 B5")
    take_out("2026-05-30", strips, "B9", by=HELPER)
    # Six weeks, with no record of brood: whether that was enough is not known.
    take_out("2026-05-09", white, "L3")
    look("2026-05-09", "present", "L5:8 L1:8 B1:10 B2:9 B3:9 B5:9",
         {"L5": "queen let out on 18 April, brood on five frames"})
    note("colony_split", "2026-05-09", colony="Q5", into="N6", hive_mark="cedar 14")
    # Nobody ever checked where the strips of L4 went.
    take_out("2026-06-06", white, "L1 L5", written="2026-06-13")


def summer_2026():
    supers_on("2026-05-10", "B1-3 B5", 2)
    supers_off("2026-05-23", "B1-5")
    harvest("2026-05-23", "H26-rape", "B1-5", 61)
    supers_on("2026-05-23", "S1-4 S6 S9 N2 N4", 1)
    look("2026-05-23", "present", "S1:10 S2:10 S3:9 S4:9 S6:9 S8:8 S9:8 N2:8 N4:8")
    look("2026-05-16", "present", "Q1:9 Q2:9 Q3:10 Q4:9 Q6:9 Q7:10 Q9:8 W1:9 N1:8 K1:9 K2:9", by=HELPER)
    note("colony_split", "2026-05-30", colony="S3", into="N7", hive_mark="poly 7")
    supers_on("2026-06-07", "L1 L3 L5 L8 N3", 1)
    flow("2026-06-06", "seen", SALLOW, "white clover", "2026-06-06", "2026-07-10", written="2026-07-12")
    note("colony_established", "2026-06-13", colony="W2", apiary=LIND, hive_mark="long 2",
         origin="swarm from the church roof, no comb with it", medicines="none")
    supers_on("2026-06-20", "B1-5 B9", 2)
    flow("2026-06-22", "seen", QUERN, "lime", "2026-06-22", "2026-07-09", written="2026-07-11")
    flow("2026-06-21", "seen", LIND, "lime", "2026-06-21", "2026-07-10", written="2026-07-11", by=HELPER)
    flow("2026-06-20", "expected", BRAMBLE, "borage", "2026-06-26", "2026-07-25")
    flow("2026-06-27", "seen", BRAMBLE, "borage", "2026-06-27", "2026-07-24", written="2026-07-25")
    look("2026-06-21", "present", "N6:5 N7:5 W2:6", {"N6": "new queen laying"})
    # A lot whose leaflet nobody read: unknown while it is in, and afterwards.
    give("2026-07-11", "SEVEN-26-1", 2, "L8 N3")
    supers_off("2026-07-18", "Q1-7 W1 K2")
    harvest("2026-07-18", "H26-lime-Q", "Q1-7 W1 K2", 104.5)
    supers_off("2026-07-19", "L1 L3 L5 L8 N3", by=HELPER)
    harvest("2026-07-19", "H26-lime-L", "L1 L3 L5 L8 N3", 52)
    supers_off("2026-07-25", "S1-4 S6 S9 N2 N4")
    harvest("2026-07-25", "H26-clover", "S1-4 S6 S9 N2 N4", 88)
    supers_off("2026-08-01", "B1-5 B9")
    harvest("2026-08-01", "H26-borage", "B1-5 B9", 97.5)


def autumn_2026():
    flow("2026-08-01", "expected", HETHER, "heather", "2026-08-08", "2026-09-06")
    move("2026-08-04", "B1-3 Q3-4", HETHER)
    supers_on("2026-08-05", "B1-3 Q3-4", 1)
    flow("2026-08-11", "seen", HETHER, "heather", "2026-08-11", "2026-09-05", written="2026-09-13")
    supers_off("2026-09-12", "B1-3 Q3-4")
    harvest("2026-09-12", "H26-heather", "B1-3 Q3-4", 38.5)
    move("2026-09-13", "B1-3", BRAMBLE)
    move("2026-09-13", "Q3-4", QUERN, by=HELPER)

    look("2026-08-08", "present", "S1:9 S2:9 S3:8 S4:8 S6:9 S8:8 S9:7 N2:8 N4:8 N7:6")
    notched = give("2026-08-08", "NOTCH-26-1", 2, "S1-4 S6 S8-9 N2 N4")
    small = give("2026-08-08", "NOTCH-26-1", 1, "N7")
    take_out("2026-09-19", notched, "S9", by=HELPER)
    look("2026-09-19", "present", "S9:7 S1:8")
    count("2026-09-19", "wash", "B4:1 B5:0 B6:5", bees=300)
    take_out("2026-10-17", notched, "S1-4 S6 S8 N2 N4")
    take_out("2026-10-17", small, "N7")
    count("2026-10-29", "natural_fall", "S1:4 S2:7 S3:2 S4:3 S6:9 S8:12 N2:1 N4:0 N7:2", days=3)

    tablets = give("2026-08-09", "HERB-26-1", 1, "B4-6 B8-9")
    for on in ("2026-08-16", "2026-08-23", "2026-08-30"):
        give(on, "HERB-26-1", 1, "B4-6 B8-9", of=tablets)
    take_out("2026-09-06", tablets, "B4-6 B8-9", how_and_where="crumbs in a bag, council hazardous waste point (invented)")

    look("2026-08-15", "present", "Q1:8 Q2:8 Q5:7 Q6:8 Q7:9 Q9:7 W1:8 N1:7 K1:8 K2:8")
    white = give("2026-08-15", "PALE-26-2", 2, "Q1-2 Q5-7 Q9 W1 N1 K1-2")
    take_out("2026-10-24", white, "Q1-2 Q5-6 Q9 W1 N1 K1-2", written="2026-11-01")

    gel = give("2026-08-22", "LARCH-26-1", 1, "L1 L3-5 L7-8 N3 N5 W2")
    give("2026-09-05", "LARCH-26-1", 1, "L1 L3-5 L8 N3 N5 W2", of=gel)
    take_out("2026-10-04", gel, "L1 L3-5 L7-8 N3 N5 W2", by=HELPER)

    # Still in on the last day of the record, and on schedule.
    give("2026-09-15", "NOTCH-26-1", 2, "B1-3")
    give("2026-09-15", "NOTCH-26-1", 2, "Q3-4")
    look("2026-10-24", "lowest", "Q1:7 Q2:6 Q5:6 Q6:7 Q9:6 W1:7 N1:6 K1:7 K2:7", feeder=True)
    look("2026-10-17", "present", "S1:7 S2:7 S3:6 S4:7 S6:7 S8:6 N2:6 N4:6 N7:4", feeder=True)
    note("colony_united", "2026-10-04", colony="N6", into="Q6", strips="taken_out")
    note("colony_ended", "2026-11-08", colony="W2", cause="given away to the village school (invented)")
    note("disposal", "2026-11-14", lot="MOOR-26-1", quantity=8, how_and_where="given back to the stall (invented)")
    note("disposal", "2026-11-14", lot="EIGHT-25-1", quantity=4,
         how_and_where="expired, council hazardous waste point (invented)", by=HELPER)
    look("2026-11-15", None, "L1:6 L3:6 L5:6 L8:5", {"L1": "hefted only, heavy"})


def main():
    for chapter in (holding, medicines, lots, spring_2025, summer_2025, autumn_2025, winter_2025_26, spring_2026,
                    summer_2026, autumn_2026, papers):
        chapter()
    write(Path(__file__).with_name("holding.jsonl"))


if __name__ == "__main__":
    main()
