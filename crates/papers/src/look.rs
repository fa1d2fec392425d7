//! What to know of a document before opening it. An office may not be able to open a locked PDF or a picture in HEIC, and should
//! not open a PDF that runs something; the document is kept as it was attached, and the pack says so.
//!
//! Source: ISO 32000-1:2008, 7.3.5 (names), 7.5.7 (object streams), 7.6 (encryption), 7.11.4 (embedded files), 12.6.4.5 (launch
//! actions), 12.6.4.16 (scripts).

use std::io::Read;

use combclear_domain::basics::words::MediaType;
use combclear_wording::Label;
use flate2::read::ZlibDecoder;

use crate::office_copy::jpeg_of_heic;

/// The names that tell, each with what it means.
const TELLING: [(&[u8], Label); 5] = [
    (b"Encrypt", Label::PdfLocked),
    (b"JavaScript", Label::PdfScript),
    (b"JS", Label::PdfScript),
    (b"Launch", Label::PdfLaunch),
    (b"EmbeddedFile", Label::PdfFileInside),
];

/// The most that is unpacked of one object stream, in bytes: what lies beyond is not looked at, and that is said.
const UNPACKED_MOST: u64 = 16 * 1024 * 1024;

/// What to know before opening a document. Pictures only show; of one in HEIC it says whether no copy can be made for an office.
#[must_use]
pub fn cautions(media_type: MediaType, bytes: &[u8]) -> Vec<Label> {
    let mut found = Vec::new();
    match media_type {
        MediaType::Pdf => {}
        MediaType::Jpeg | MediaType::Png => return found,
        MediaType::Heic if jpeg_of_heic(bytes).is_some() => return found,
        MediaType::Heic => return vec![Label::HeicNoCopy],
    }
    let mut add = |label: Label| {
        if !found.contains(&label) {
            found.push(label);
        }
    };
    names(bytes, &mut add);
    for packed in object_streams(bytes) {
        let mut unpacked = Vec::new();
        let read = ZlibDecoder::new(packed).take(UNPACKED_MOST).read_to_end(&mut unpacked);
        names(&unpacked, &mut add);
        let is_cut = u64::try_from(unpacked.len()).is_ok_and(|length| length == UNPACKED_MOST);
        if is_cut || read.is_err() && unpacked.is_empty() {
            add(Label::PdfNotLookedInto);
        }
    }
    found.sort_by_key(|label| TELLING.iter().position(|(_, of)| of == label));
    found
}

/// Calls `add` for each telling name.
fn names(bytes: &[u8], add: &mut impl FnMut(Label)) {
    let mut rest = bytes;
    while let Some(at) = rest.iter().position(|byte| *byte == b'/') {
        rest = rest.get(at + 1..).unwrap_or_default();
        let name = name(rest);
        if let Some((_, label)) = TELLING.iter().find(|(telling, _)| name == *telling) {
            add(*label);
        }
    }
}

/// The name at the beginning, with its escapes (`#4a`) undone. No telling name is longer than this looks.
fn name(bytes: &[u8]) -> Vec<u8> {
    let mut name = Vec::new();
    let mut rest = bytes;
    while let [first, after @ ..] = rest {
        let escaped = match (first, after) {
            (b'#', [high, low, ..]) => hex(*high).zip(hex(*low)).map(|(high, low)| high * 16 + low),
            _ => None,
        };
        let is_regular = !first.is_ascii_whitespace() && *first != 0 && !b"()<>[]{}/%".contains(first);
        if !is_regular || name.len() > 16 {
            break;
        }
        name.push(escaped.unwrap_or(*first));
        rest = if escaped.is_some() { after.get(2..).unwrap_or_default() } else { after };
    }
    name
}

fn hex(digit: u8) -> Option<u8> {
    char::from(digit).to_digit(16).and_then(|digit| u8::try_from(digit).ok())
}

/// The contents of the streams that hold packed objects.
fn object_streams(bytes: &[u8]) -> impl Iterator<Item = &[u8]> {
    const STREAM: &[u8] = b"stream";
    /// How far before its stream the dictionary of an object is looked for, in bytes.
    const BEFORE_MOST: usize = 1_024;
    let begins = bytes.windows(STREAM.len()).enumerate().filter(|(_, window)| *window == STREAM);
    begins.filter_map(move |(at, _)| {
        let before = bytes.get(at.saturating_sub(BEFORE_MOST)..at)?;
        if before.ends_with(b"end") {
            return None;
        }
        let own = before.windows(4).rposition(|window| window == b" obj").unwrap_or_default();
        let dictionary = before.get(own..)?;
        if !dictionary.windows(6).any(|window| window == b"ObjStm") {
            return None;
        }
        let content = bytes.get(at + STREAM.len()..)?;
        content.strip_prefix(b"\r\n").or_else(|| content.strip_prefix(b"\n"))
    })
}
