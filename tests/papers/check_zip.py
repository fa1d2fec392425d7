"""Opens a pack with Python's zipfile and checks it by its own checksums. Prints its content."""

import hashlib
import re
import sys
import zipfile

with zipfile.ZipFile(sys.argv[1]) as pack:
    assert pack.testzip() is None, pack.testzip()
    names = pack.namelist()
    assert len(names) == len(set(names)), "a name stands twice"
    sums = dict(reversed(line.split("  ", 1)) for line in pack.read("SHA256SUMS").decode().splitlines())
    assert set(sums) == set(names) - {"SHA256SUMS"}, set(sums) ^ set(names)
    for name, expected in sums.items():
        assert hashlib.sha256(pack.read(name)).hexdigest() == expected, name
    for info in pack.infolist():
        assert re.fullmatch(r"(proofs/)?[A-Za-z0-9][A-Za-z0-9_.-]{0,60}", info.filename), info.filename
        assert ".." not in info.filename, info.filename
        assert info.date_time == (2026, 11, 27, 10, 0, 0), info.date_time
    index = pack.read("index.html").decode()
    linked = re.findall(r'href="([^"]+)"', index)
    assert set(linked) <= set(names), set(linked) - set(names)
    assert set(names) - set(linked) == {"index.html"}, set(names) - set(linked)
    for name in names:
        print(name)
    for row in re.findall(r"<tr>(.*?)</tr>", index)[1:]:
        print(" | ".join(re.sub("<.*?>", "", cell) for cell in re.findall(r"<t[hd].*?>(.*?)</t[hd]>", row))[:150])
