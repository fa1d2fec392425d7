//! The smallest valid documents, made byte by byte from the published formats.

use combclear_domain::basics::words::MediaType;

/// A whole document of this type, with a note in it that tells it from others.
pub fn sample(media_type: MediaType, note: &str) -> Vec<u8> {
    match media_type {
        MediaType::Pdf => pdf(note),
        MediaType::Jpeg => jpeg(note),
        MediaType::Png => png(note),
        MediaType::Heic => heic(note),
    }
}

/// One empty page. Source: ISO 32000-1:2008, 7.5: header, objects, cross-reference table, trailer, `%%EOF`.
fn pdf(note: &str) -> Vec<u8> {
    let objects = [
        "<< /Type /Catalog /Pages 2 0 R >>",
        "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
        "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 72 72] /Resources << >> >>",
    ];
    let mut text = format!("%PDF-1.4\n% {note}\n");
    let mut table = "xref\n0 4\n0000000000 65535 f \n".to_owned();
    for (number, object) in (1..).zip(objects) {
        table += &format!("{:010} 00000 n \n", text.len());
        text += &format!("{number} 0 obj\n{object}\nendobj\n");
    }
    let start = text.len();
    text += &format!("{table}trailer\n<< /Size 4 /Root 1 0 R >>\nstartxref\n{start}\n%%EOF\n");
    text.into_bytes()
}

/// One grey point. Source: PNG specification (W3C), 5.2 signature, 5.3 chunks, 11.2 IHDR, IDAT, IEND, 11.3 tEXt.
fn png(note: &str) -> Vec<u8> {
    let mut bytes = b"\x89PNG\r\n\x1a\n".to_vec();
    let mut chunk = |kind: &[u8; 4], data: &[u8]| {
        bytes.extend(u32::try_from(data.len()).unwrap().to_be_bytes());
        bytes.extend(kind);
        bytes.extend(data);
        bytes.extend(checksum(&[kind, data].concat()).to_be_bytes());
    };
    chunk(b"IHDR", &[0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]);
    chunk(b"tEXt", format!("Comment\0{note}").as_bytes());
    // Two bytes, stored as they are (RFC 1950, RFC 1951): no filter, black.
    chunk(b"IDAT", &[0x78, 1, 1, 2, 0, 0xfd, 0xff, 0, 0, 0, 2, 0, 1]);
    chunk(b"IEND", &[]);
    bytes
}

/// Source: PNG specification (W3C), annex D.
fn checksum(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |sum, byte| {
        (0..8).fold(sum ^ u32::from(*byte), |sum, _| (sum >> 1) ^ if sum & 1 == 1 { 0xedb8_8320 } else { 0 })
    })
}

/// One grey point. Source: ISO/IEC 10918-1, annex B: SOI, COM, DQT, SOF0, two DHT, SOS, data, EOI.
fn jpeg(note: &str) -> Vec<u8> {
    let mut bytes = vec![0xff, 0xd8];
    let mut segment = |marker: u8, data: &[u8]| {
        bytes.extend([0xff, marker]);
        bytes.extend(u16::try_from(data.len() + 2).unwrap().to_be_bytes());
        bytes.extend(data);
    };
    // As cameras embed it: a thumbnail with an end marker of its own.
    segment(0xe1, b"Exif\0\0 a small picture \xff\xd8\xff\xd9");
    segment(0xfe, note.as_bytes());
    segment(0xdb, &[&[0][..], &[1; 64]].concat());
    segment(0xc0, &[8, 0, 1, 0, 1, 1, 1, 0x11, 0]);
    // One code of one bit in each table: no difference, and the end of the block.
    let one_code = |class: u8| [&[class, 1][..], &[0; 15], &[0]].concat();
    segment(0xc4, &one_code(0x00));
    segment(0xc4, &one_code(0x10));
    segment(0xda, &[1, 1, 0, 0, 63, 0]);
    bytes.extend([0x3f, 0xff, 0xd9]);
    bytes
}

/// The boxes of a picture, without one. Source: ISO/IEC 14496-12, 4.2 and 4.3; ISO/IEC 23008-12, 10.2 (brands `mif1`,
/// `heic`; the handler `pict`).
fn heic(note: &str) -> Vec<u8> {
    let in_box = |kind: &[u8; 4], data: &[u8]| {
        [&u32::try_from(data.len() + 8).unwrap().to_be_bytes()[..], kind, data].concat()
    };
    let handler = in_box(b"hdlr", b"\0\0\0\0\0\0\0\0pict\0\0\0\0\0\0\0\0\0\0\0\0\0");
    [
        in_box(b"ftyp", b"heic\0\0\0\0mif1heic"),
        in_box(b"meta", &[b"\0\0\0\0", &handler[..]].concat()),
        in_box(b"mdat", note.as_bytes()),
    ]
    .concat()
}
