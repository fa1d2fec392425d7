"""Invented proofs of purchase for the demo journal: small PDF invoices, and till slips as pictures.

Each says that it is invented. The bytes depend only on the text: no clock, no compression library (the picture is stored
uncompressed), so that the journal with their hashes stays the same byte for byte.
"""

import struct
import zlib
from hashlib import sha256

# Rows of five dots each, for the characters that a till slip needs.
GLYPHS = {
    "0": "01110 10001 10011 10101 11001 10001 01110", "1": "00100 01100 00100 00100 00100 00100 01110",
    "2": "01110 10001 00001 00110 01000 10000 11111", "3": "11111 00010 00100 00010 00001 10001 01110",
    "4": "00010 00110 01010 10010 11111 00010 00010", "5": "11111 10000 11110 00001 00001 10001 01110",
    "6": "00110 01000 10000 11110 10001 10001 01110", "7": "11111 00001 00010 00100 01000 01000 01000",
    "8": "01110 10001 10001 01110 10001 10001 01110", "9": "01110 10001 10001 01111 00001 00010 01100",
    "A": "01110 10001 10001 11111 10001 10001 10001", "B": "11110 10001 10001 11110 10001 10001 11110",
    "C": "01110 10001 10000 10000 10000 10001 01110", "D": "11100 10010 10001 10001 10001 10010 11100",
    "E": "11111 10000 10000 11110 10000 10000 11111", "F": "11111 10000 10000 11110 10000 10000 10000",
    "G": "01110 10001 10000 10111 10001 10001 01111", "H": "10001 10001 10001 11111 10001 10001 10001",
    "I": "01110 00100 00100 00100 00100 00100 01110", "J": "00111 00010 00010 00010 00010 10010 01100",
    "K": "10001 10010 10100 11000 10100 10010 10001", "L": "10000 10000 10000 10000 10000 10000 11111",
    "M": "10001 11011 10101 10101 10001 10001 10001", "N": "10001 11001 10101 10011 10001 10001 10001",
    "O": "01110 10001 10001 10001 10001 10001 01110", "P": "11110 10001 10001 11110 10000 10000 10000",
    "Q": "01110 10001 10001 10001 10101 10010 01101", "R": "11110 10001 10001 11110 10100 10010 10001",
    "S": "01111 10000 10000 01110 00001 00001 11110", "T": "11111 00100 00100 00100 00100 00100 00100",
    "U": "10001 10001 10001 10001 10001 10001 01110", "V": "10001 10001 10001 10001 10001 01010 00100",
    "W": "10001 10001 10001 10101 10101 11011 10001", "X": "10001 10001 01010 00100 01010 10001 10001",
    "Y": "10001 10001 01010 00100 00100 00100 00100", "Z": "11111 00001 00010 00100 01000 10000 11111",
    "-": "00000 00000 00000 11111 00000 00000 00000", ".": "00000 00000 00000 00000 00000 01100 01100",
    "/": "00001 00010 00010 00100 01000 01000 10000", "(": "00010 00100 01000 01000 01000 00100 00010",
    ")": "01000 00100 00010 00010 00010 00100 01000", " ": "00000 00000 00000 00000 00000 00000 00000",
}
SCALE = 3


def digest(content):
    return sha256(content).hexdigest()


def pdf(lines):
    """One A5 page of text. Source: ISO 32000-1, sections 7.5 and 9: header, objects, cross-reference table, trailer."""
    escaped = (line.replace("\\", "\\\\").replace("(", "\\(").replace(")", "\\)") for line in lines)
    text = "BT /F1 11 Tf 15 TL 40 540 Td " + " ".join(f"({line}) Tj T*" for line in escaped) + " ET"
    stream = text.encode("latin-1")
    objects = [
        b"<< /Type /Catalog /Pages 2 0 R >>",
        b"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
        b"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 420 595] /Contents 5 0 R /Resources << /Font << /F1 4 0 R >> >> >>",
        b"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>",
        b"<< /Length " + str(len(stream)).encode() + b" >>\nstream\n" + stream + b"\nendstream",
    ]
    out, places = b"%PDF-1.4\n", []
    for number, body in enumerate(objects, start=1):
        places.append(len(out))
        out += f"{number} 0 obj\n".encode() + body + b"\nendobj\n"
    start = len(out)
    out += f"xref\n0 {len(objects) + 1}\n0000000000 65535 f \n".encode()
    out += b"".join(f"{place:010} 00000 n \n".encode() for place in places)
    out += f"trailer\n<< /Size {len(objects) + 1} /Root 1 0 R >>\nstartxref\n{start}\n%%EOF\n".encode()
    return out


def png(lines):
    """A picture of a till slip in black and white. Source: PNG specification (W3C), sections 5 and 11; RFC 1950, RFC 1951."""
    width = SCALE * (6 * max(map(len, lines)) + 8)
    rows = []
    for line in ["", *(line.upper() for line in lines), ""]:
        glyphs = [GLYPHS.get(letter, GLYPHS["-"]).split() for letter in line]
        for row in range(10):
            dots = "0000" + "".join(glyph[row] + "0" if row < 7 else "000000" for glyph in glyphs)
            wide = "".join(dot * SCALE for dot in dots).ljust(width, "0")[:width]
            # A set bit is white.
            packed = int("".join("1" if dot == "0" else "0" for dot in wide).ljust(-(-width // 8) * 8, "1"), 2)
            rows += [b"\0" + packed.to_bytes(-(-width // 8), "big")] * SCALE
    raw = b"".join(rows)
    blocks = [raw[at:at + 65535] for at in range(0, len(raw), 65535)]
    stored = b"".join(
        bytes([at == len(blocks) - 1]) + struct.pack("<HH", len(block), len(block) ^ 0xFFFF) + block
        for at, block in enumerate(blocks)
    )
    data = b"\x78\x01" + stored + struct.pack(">I", zlib.adler32(raw))
    head = struct.pack(">IIBBBBB", width, len(rows), 1, 0, 0, 0, 0)
    chunk = lambda name, body: struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", data) + chunk(b"IEND", b"")
