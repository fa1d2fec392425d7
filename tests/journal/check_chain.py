"""Works the hash chain of an exported journal out again, from the description in `crates/domain/src/journal/seal.rs` alone.

Usage: check_chain.py EXPORT...

Prints the number of entries and the head of each, and stops at the first entry that does not fit. A body is hashed as it was written,
so it is cut out of its line rather than written anew. The hash of an archived body cannot be worked out; it must only follow.
"""

import json
import sys
import uuid
from hashlib import sha256


def body_text(line):
    """The text of the body: the value behind the first `"body":` that is a key of the entry itself."""
    decoder = json.JSONDecoder()
    at = 1
    while True:
        key, at = decoder.raw_decode(line, at)
        begin = at + 1
        _, at = decoder.raw_decode(line, begin)
        if key == "body":
            return line[begin:at]
        if line[at] == "}":
            sys.exit("an entry without a body")
        at += 1


def fields(holding, entry, line):
    corrects = uuid.UUID(entry["corrects"]).bytes if "corrects" in entry else b""
    yield from (holding, entry["seq"].to_bytes(8, "big"), uuid.UUID(entry["id"]).bytes, entry["on"], entry.get("at", ""))
    yield from (entry["recorded_at"], entry["recorded_by"], entry["kind"], body_text(line), corrects, entry.get("reason", ""))
    if "copied_from" in entry:
        yield from (entry["copied_from"], entry["written_on"])
    if "key" in entry:
        yield entry["key"]


def check(path):
    with open(path, encoding="utf-8") as file:
        lines = file.read().splitlines()
    holding = json.loads(lines[0])["holding"]
    prev, count = bytes(32), 0
    for line in lines[1:]:
        entry = json.loads(line)
        if "seq" not in entry:
            continue
        count += 1
        if entry["seq"] != count or bytes.fromhex(entry["prev"]) != prev:
            sys.exit(f"{path}: entry {entry['seq']} does not follow entry {count - 1}")
        if entry["body"] is not None:
            sealed = sha256(bytes([("copied_from" in entry) + 16 * ("key" in entry)]) + prev)
            for field in fields(holding, entry, line):
                raw = field if isinstance(field, bytes) else field.encode()
                sealed.update(len(raw).to_bytes(8, "big") + raw)
            if sealed.hexdigest() != entry["hash"]:
                sys.exit(f"{path}: entry {count} was changed after it was sealed")
        prev = bytes.fromhex(entry["hash"])
    print(f"{holding}: {count} entries, head {prev.hex()}")


for export in sys.argv[1:]:
    check(export)
