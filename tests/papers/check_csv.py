"""Reads the CSV of a register with Python's csv module and compares every cell with the register's JSON.

Source: RFC 4180 as Python's csv module reads it; the rule for apostrophes is the one documented in flat.rs.
"""

import csv
import json
import re
import sys

FORMULA = re.compile(r"(?:['\"]|[^\S\t\r\n])*[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20\u2212]")
MISSING = "not recorded"


def back(cell):
    """The recorded text."""
    parts = re.findall(r"[^;\t\r\n]*[;\t\r\n]|[^;\t\r\n]+", cell)
    return "".join(part[1:] if part.startswith("'") and FORMULA.match(part[1:]) else part for part in parts)


def text(value, otherwise=MISSING):
    if value is None:
        return otherwise
    if isinstance(value, float) and value.is_integer():
        value = int(value)
    return str(value)


def as_counted(name):
    """H2 comes before H10."""
    return [(int(part), part) if part.isdigit() else (-1, part.lower()) for part in re.findall(r"\d+|\D+", name)]


raw = open(sys.argv[1], "rb").read()
assert raw.startswith(b"\xef\xbb\xbf"), "a spreadsheet would take it for an older encoding"
assert b"\n" not in raw.replace(b"\r\n", b"").split(b'"')[::2], "a line feed alone ends a line"
with open(sys.argv[1], newline="", encoding="utf-8-sig") as file:
    rows = list(csv.DictReader(file, strict=True))
register = json.load(open(sys.argv[2], encoding="utf-8"))

for row in rows:
    for head, cell in row.items():
        assert cell is not None and head is not None, row
        assert not re.match(r"\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r\n]", cell), (head, cell)

cells = 0


def same(row, **expected):
    global cells
    for head, value in expected.items():
        assert back(row[head]) == value, (row["record"], row["seq"], head, row[head], value)
        cells += 1


def common(row, written):
    same(row, entry=written["entry"], seq=text(written["seq"]), on=written["on"], at=text(written["at"]),
         written_by=written["recorded_by"], written_at=written["recorded_at"], days_late=text(written["days_late"]),
         corrects=text(written["corrects"], "none"))


def medicine(row, part):
    same(row, medicine=part["medicine"], pack_name=text(part["pack_name"]), authorisation=text(part["authorisation"]),
         actives=", ".join(part["actives"]) or MISSING, strength=text(part["strength"]), unit=text(part["unit"]))


def of(kind):
    return [row for row in rows if row["record"] == kind]


def pairs(kind, plural):
    assert len(of(kind)) == len(register[plural]), kind
    return zip(of(kind), register[plural])


for row, there in pairs("acquisition", "acquisitions"):
    common(row, there["written"])
    medicine(row, there["medicine"])
    supplier = there["supplier"] or {}
    same(row, lot=there["lot"], batch=text(there["batch"]), expiry=text(there["expiry"]),
         quantity=text(there["quantity"]), supplier=text(supplier.get("name")),
         supplier_address=text(supplier.get("address")), proof=text(there["proof"]))

for row, there in pairs("removal", "removals"):
    common(row, there["written"])
    medicine(row, there["medicine"])
    same(row, colonies=", ".join(sorted(there["colonies"], key=as_counted)), how_and_where=text(there["how_and_where"]),
         left_inside=text(there["left_inside"]), placed=text(there["placed"]), first_dose=there["first_dose"])

for row, there in pairs("disposal", "disposals"):
    common(row, there["written"])
    same(row, lot=there["lot"], batch=text(there["batch"]), quantity=text(there["quantity"]),
         how_and_where=there["how_and_where"])

for row, there in pairs("prescription", "prescriptions"):
    common(row, there["written"])
    same(row, prescription=there["prescription"]["number"], vet=text(there["prescription"]["vet"]),
         vet_contact=text(there["prescription"]["contact"]), withdrawal_days=text(there["withdrawal_days"]))

# Every colony of an administration has one row for each lot it was given from, with the fate of its course.
given = of("administration")
for there in register["administrations"]:
    mine = [row for row in given if row["entry"] == there["written"]["entry"]]
    assert sum(float(row["quantity"]) for row in mine if row["quantity"]) == there["total"], there["written"]
    wanted = sorted((part["lot"], colony, text(part["each"]), text(part["batch"]), text(part["expiry"]))
                    for part in there["given"] for colony in part["colonies"])
    found = sorted((back(row["lot"]), colony, row["quantity_each"], back(row["batch"]), row["expiry"])
                   for row in mine if row["quantity"] for colony in back(row["colonies"]).split(", "))
    assert found == wanted, (found, wanted)
    cells += 5 * len(found)
    for row in mine:
        common(row, there["written"])
        medicine(row, there["medicine"])
        same(row, earlier="yes" if there["earlier"] else "no", against=text(there["against"]), certificate=text(there["certificate"]),
             given_by=text(there["given_by"]), withdrawal_stated=text(there["withdrawal_stated"]))
        fate = [course for course in there["courses"]
                if set(back(row["colonies"]).split(", ")) <= set(course["colonies"])]
        assert len(fate) == 1, (row, fate)
        fate, = fate
        period = fate["withdrawal"] or {}
        known = fate["first_free_day"] is not None
        same(row, apiary=text(fate["apiary"]), first_day=fate["first"],
             withdrawal_days=text(period.get("days")), withdrawal_said_by=text(period.get("said_by")),
             wait_days=text(fate["wait_days"], "not known"), came_by=text(fate["came_by"], "none"),
             duration_days=text(fate["duration_days"], "not known"),
             last_blocked_day=text(fate["last_blocked_day"], "none" if known else "not known"),
             first_free_day=text(fate["first_free_day"], "not known"))
        if fate["last"] is not None:
            same(row, last_day=fate["last"])
assert len(given) == sum(1 for row in given if row["entry"] in {t["written"]["entry"] for t in register["administrations"]})

changes = [(there, change) for there in register["corrections"] for change in there["changes"] or [None]]
assert len(of("correction")) == len(changes)
for row, (there, change) in zip(of("correction"), changes):
    common(row, there["written"])
    same(row, corrected_entry=there["of"], corrected_seq=text(there["of_seq"]), reason=there["reason"])
    if change:
        same(row, field=change["field"], was=text(change["was"], "none"), now=text(change["now"], "none"))

own = {part["since"]: part for part in register["keepers"]}
assert [row["record"] for row in rows[:max(1, len(own))]] == ["register"] * max(1, len(own)), "the first rows say whose it is"
for row in of("register"):
    same(row, holding=register["holding"], to=register["to"], as_of=register["as_of"],
         journal_entries=text(register["entries"]), journal_head=text(register["head"], "none"), **{"from": register["from"]})
    if own:
        part = own[row["on"]]
        same(row, keeper=part["keeper"], keeper_address=text(part["address"]), registration=text(part["registration"]),
             jurisdiction=part["jurisdiction"])
for row, there in pairs("stock", "totals"):
    medicine(row, there["medicine"])
    same(row, lot=there["lot"], batch=text(there["batch"]), expiry=text(there["expiry"]),
         carried_in=text(there["carried_in"], "not known"), acquired=text(there["acquired"]), given=text(there["given"]),
         disposed=text(there["disposed"]), left=text(there["left"], "not known"),
         expired="yes" if there["expired"] else "no")
    if there["carried_in"] is not None and there["left"] is not None:
        left = there["carried_in"] + there["acquired"] - there["given"] - there["disposed"]
        assert abs(left - there["left"]) < 1e-9, there
for row, there in pairs("apiary", "apiaries"):
    same(row, apiary=there["apiary"], place=text(there["place"]))
for row, there in pairs("colony", "colonies"):
    same(row, colonies=there["colony"], hive_mark=text(there["hive_mark"]), apiary=text(there["apiary"], "none"))

print(f"as the JSON tells it: {len(rows)} rows, {cells} cells")
