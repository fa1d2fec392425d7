"""Reads a template with another library: its tabs, headings and lists of choices.

The choices are compared with the board of the same day and with the words of the OpenAPI document, neither of which the
template is made from.

    check_sheet.py TEMPLATE.xlsx BOARD.json OPENAPI.json
"""

import json
import sys

import openpyxl

template, board, openapi = sys.argv[1:]
book = openpyxl.load_workbook(template)
board = json.load(open(board))
schemas = json.load(open(openapi))["components"]["schemas"]

names = {"Choices", "How to fill this in"}
tabs = [tab for tab in book if tab.title not in names]
assert len(tabs) == 25, [tab.title for tab in tabs]
assert book["Choices"].sheet_state == "hidden"
assert book.worksheets[0].title == "How to fill this in"
assert book.worksheets[0]["A1"].value == "Holding" and book.worksheets[0]["B1"].value == "demo"


def column(heading):
    """The list below a heading of the hidden tab."""
    for cells in book["Choices"].iter_cols(values_only=True):
        if cells[0] == heading:
            return [cell for cell in cells[1:] if cell is not None]
    raise AssertionError(heading)


def choices(tab, heading):
    """The choices of a column, resolved, and whether others are refused."""
    head = next(cell for cell in tab[1] if cell.value.removesuffix(" *") == heading)
    for validation in tab.data_validations.dataValidation:
        if f"{head.column_letter}3" in validation.sqref:
            assert f"{head.column_letter}10002" in validation.sqref, (tab.title, heading)
            listed = validation.formula1
            if listed.startswith('"'):
                return listed.strip('"').split(","), bool(validation.showErrorMessage)
            cells = book["Choices"][listed.removeprefix("Choices!").replace("$", "")]
            return [cell.value for (cell,) in cells], bool(validation.showErrorMessage)
    return None, None


for tab in tabs:
    assert [cell.value for cell in tab[1]][:3] == ["Day *", "Time", "Recorded by"], tab.title
    assert tab.max_row == 2, tab.title
    for row in tab.iter_rows():
        for cell in row:
            assert cell.data_type == "s", (tab.title, cell.coordinate)

colonies = [colony["colony"] for colony in board]
assert sorted(column("Colony")) == sorted(colonies), (column("Colony"), colonies)
assert len(colonies) > 20
for tab, heading in [
    ("Inspections", "Colony"),
    ("Given", "Colonies"),
    ("Taken out", "Colonies"),
    ("Supers on", "Colonies"),
    ("Split", "Colony"),
    ("United", "Into"),
]:
    # A cell may have a range of colonies, so no other text is refused.
    assert choices(book[tab], heading) == (column("Colony"), False), (tab, heading)
assert choices(book["Colonies"], "Colony") == (None, None), "a new name is not chosen from the old ones"
# An apiary may have no colonies.
assert {colony["apiary"] for colony in board} <= set(column("Apiary"))

for tab, heading, schema in [
    ("Inspections", "Brood", "Brood"),
    ("Mite counts", "Method", "CountMethod"),
    ("Sites", "Power", "Power"),
    ("Sites", "Access", "Access"),
    ("Sites", "Ground", "Ground"),
    ("Lots", "Unit", "Unit"),
    ("Colonies", "Medicine inside", "MedicinesInside"),
    ("Supers on", "Purpose", "SuperPurpose"),
]:
    words = [word.replace("_", " ") for word in schemas[schema]["enum"]]
    assert choices(book[tab], heading) == (words, True), (tab, heading)

print(f"{len(tabs)} tabs, {len(colonies)} colonies, and every list is as it should be")
