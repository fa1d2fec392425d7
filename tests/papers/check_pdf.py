"""Reads PDF files back with pypdf and compares their text with the registers they were made from.

Takes a folder of NAME.pdf beside NAME.json, as the tests write it.
"""

import json
import pathlib
import re
import sys

import pypdf


def squeezed(text):
    """Without line ends. Invisible characters stay: nobody wrote them, so they would be a fault."""
    return re.sub(r"\s+", "", text)


def expected(text, missing):
    """As in the pages: invisible characters, and those missing from the fonts, as code points."""
    hidden = re.compile(r"[\x00-\x1f\x7f-\x9f\xad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]")
    written = hidden.sub(lambda sign: f"U+{ord(sign[0]):04X}", text)
    return squeezed("".join(f"U+{ord(sign):04X}" if sign in missing else sign for sign in written))


def tags(node):
    """The structure of a tagged PDF in reading order: the kinds of element, with those below each."""
    kids = node.get("/K", [])
    for kid in kids if isinstance(kids, list) else [kids]:
        kid = kid.get_object() if hasattr(kid, "get_object") else kid
        if isinstance(kid, dict) and "/S" in kid:
            yield str(kid["/S"]), list(tags(kid))


def check_tags(file, pdf):
    """What a screen reader goes by. Source: ISO 14289-1:2014 (PDF/UA-1), 7.1, 7.4 and 7.5: a tagged document with its language,
    headings in order, and tables of rows with header cells."""
    root = pdf.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"] is not False and root["/Lang"], file.name
    flat = [(kind, below) for kind, below in tags(root["/StructTreeRoot"])]
    while len(flat) == 1 and flat[0][0] in ("/Document", "/Div", "/Part", "/Sect"):
        flat = flat[0][1]
    order = [kind for kind, _ in flat]
    headings = [kind for kind in order if re.fullmatch(r"/H\d", kind)]
    assert headings[0] == "/H1" and set(headings[1:]) == {"/H2"}, (file.name, headings)
    tables = [below for kind, below in flat if kind == "/Table"]
    assert len(tables) >= 5, (file.name, order)
    for parts in tables:
        rows = [row for kind, below in parts for row in ([(kind, below)] if kind == "/TR" else below)]
        kinds = {cell for _, cells in rows for cell, _ in cells}
        assert [cell for cell, _ in rows[0][1]] == ["/TH"] * len(rows[0][1]), (file.name, rows[0])
        assert {len(cells) for _, cells in rows} == {len(rows[0][1])} and kinds == {"/TH", "/TD"}, file.name
    # Each sheet is a heading, and its table follows before the next heading.
    for place, kind in enumerate(order):
        if kind == "/Table":
            before = [other for other in order[:place] if other in ("/H2", "/Table")]
            assert before and before[-1] == "/H2", (file.name, place)


MISSING = "\u4e61\u8702\U0001f41d"
# Right-to-left scripts are stored in visual order; they are checked by eye.
RIGHT_TO_LEFT = re.compile(r"[\u0590-\u08ff]")
count = 0
files = sorted(pathlib.Path(sys.argv[1]).glob("*.pdf"))
assert len(files) >= 3, files
for file in files:
    register = json.loads(file.with_suffix(".json").read_text(encoding="utf-8"))
    pdf = pypdf.PdfReader(file)
    check_tags(file, pdf)
    pages = [page.extract_text() for page in pdf.pages]
    keeper = register["keepers"][0]["keeper"]
    for number, page in enumerate(pages, 1):
        said = squeezed(page)
        for wanted in (f"page {number} of {len(pages)}", f"{register['holding']}, {keeper}"):
            assert squeezed(wanted) in said, (file.name, number, wanted)
    whole = squeezed("".join(re.sub(r"page \d+ of \d+", "", page) for page in pages))
    assert not re.search("[\u200b\u00ad]", whole), (file.name, "a sign that nobody wrote")
    wanted = [register["head"]]
    for row in register["acquisitions"]:
        wanted += [row["lot"], row["batch"], row["proof"], row["expiry"]]
        wanted += [document["content"] for document in row["documents"]]
    for row in register["administrations"]:
        for part in row["given"]:
            wanted += [part["batch"], *part["colonies"]]
        wanted += [row["against"], row["written"]["on"], f"no. {row['written']['seq']}"]
    for row in register["corrections"]:
        wanted += [row["reason"], row["of_seq"]]
    for text in wanted:
        if text is not None and not RIGHT_TO_LEFT.search(str(text)):
            assert expected(str(text), MISSING) in whole, (file.name, text)
            count += 1
    periods = [course["withdrawal"]["days"] for row in register["administrations"] for course in row["courses"]
               if course["withdrawal"]]
    for days in set(periods):
        text = "1day" if days == 1 else f"{days}days"
        assert whole.count(text) >= periods.count(days), (file.name, days, periods.count(days), whole.count(text))
    print(f"{file.name}: {len(pages)} pages, {periods.count(0)} periods of 0 days")
print(f"{count} texts were read back")
