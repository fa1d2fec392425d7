//! The type of a document, read from its content, and whether it is complete.
//!
//! File names and declared types are ignored: both are easily wrong. The first bytes give the type; the structure and the
//! end show whether it was cut off. Whether a picture is legible is not checked.

use crate::basics::words::MediaType;

/// Longest permitted document in bytes: 10 MB.
pub const DOCUMENT_MOST: u32 = 10_000_000;

/// Why a content cannot be kept as a document.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("{self:?}")]
pub enum Unfit {
    /// There are no bytes.
    Empty,
    /// More than 10 MB.
    TooLarge,
    /// Something else than a document or a picture of one; its media type, if that is known.
    OtherType(Option<&'static str>),
    /// A part of it is missing.
    CutOff {
        /// Its type by the first bytes.
        media_type: MediaType,
        /// What is not there.
        lacks: Lacking,
    },
}

/// What is not there of a document that was cut off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lacking {
    /// `%%EOF` near the end of a PDF.
    EndOfPdf,
    /// The end marker of a JPEG.
    EndOfJpeg,
    /// The last chunk of a PNG.
    EndOfPng,
    /// A part of a box of a HEIC.
    RestOfBox,
    /// The box that describes the picture of a HEIC.
    Description,
}

/// The common name of a type.
#[must_use]
pub fn in_short(media_type: MediaType) -> &'static str {
    match media_type {
        MediaType::Pdf => "PDF",
        MediaType::Jpeg => "JPEG",
        MediaType::Png => "PNG",
        MediaType::Heic => "HEIC",
    }
}

/// The file name extensions of a type; the usual one first.
#[must_use]
pub fn extensions(media_type: MediaType) -> &'static [&'static str] {
    match media_type {
        MediaType::Pdf => &["pdf"],
        MediaType::Jpeg => &["jpg", "jpeg"],
        MediaType::Png => &["png"],
        MediaType::Heic => &["heic", "heif"],
    }
}

/// The type of a document.
///
/// # Errors
/// It is empty, too large, of another type, or visibly cut off.
pub fn media_type(bytes: &[u8]) -> Result<MediaType, Unfit> {
    if bytes.is_empty() {
        return Err(Unfit::Empty);
    }
    if u32::try_from(bytes.len()).map_or(true, |length| length > DOCUMENT_MOST) {
        return Err(Unfit::TooLarge);
    }
    let media_type = match infer::get(bytes).map(|found| found.mime_type()) {
        // If `%PDF` comes later, some readers see a PDF and others whatever precedes it.
        Some("application/pdf") if bytes.starts_with(PDF_BEGINS) => MediaType::Pdf,
        Some("application/pdf") => return Err(Unfit::OtherType(None)),
        Some("image/jpeg") => MediaType::Jpeg,
        Some("image/png") => MediaType::Png,
        // The signature matches only brands of HEVC pictures.
        Some("image/heif") => MediaType::Heic,
        other => return Err(Unfit::OtherType(other)),
    };
    let missing = match media_type {
        MediaType::Pdf => (!pdf_ends(bytes)).then_some(Lacking::EndOfPdf),
        MediaType::Jpeg => (!jpeg_ends(bytes)).then_some(Lacking::EndOfJpeg),
        MediaType::Png => (!png_ends(bytes)).then_some(Lacking::EndOfPng),
        MediaType::Heic => heic_lacks(bytes),
    };
    missing.map_or(Ok(media_type), |lacks| Err(Unfit::CutOff { media_type, lacks }))
}

/// Source: ISO 32000-1:2008, 7.5.2: the first line is the header, `%PDF-` and a version.
const PDF_BEGINS: &[u8] = b"%PDF-";
/// Source: ISO 32000-1:2008, 7.5.5: the last line is `%%EOF`.
const PDF_ENDS: &[u8] = b"%%EOF";
/// How far from the end it may be, in bytes: writers append blanks and zeros. No source for the number.
const PDF_TAIL: usize = 4096;

fn pdf_ends(bytes: &[u8]) -> bool {
    let tail = bytes.get(bytes.len().saturating_sub(PDF_TAIL)..).unwrap_or(bytes);
    tail.windows(PDF_ENDS.len()).any(|window| window == PDF_ENDS)
}

/// Walks from marker to marker to the end of the picture. This skips the embedded thumbnail, which has an end marker of its
/// own. Bytes after the end are ignored: cameras add some.
///
/// Source: ISO/IEC 10918-1, B.1.1: a marker is FF and a byte that is neither 00 nor FF; SOI, EOI, `RSTm` and TEM stand
/// alone, every other is followed by its length in two bytes, which count themselves.
fn jpeg_ends(bytes: &[u8]) -> bool {
    let mut rest = bytes;
    while let Some(at) = rest.iter().position(|byte| *byte == 0xff) {
        let Some((marker, after)) = rest.get(at.saturating_add(1)..).and_then(<[u8]>::split_first) else {
            return false;
        };
        rest = match marker {
            // A fill byte: the marker may still come.
            0xff => rest.get(at.saturating_add(1)..).unwrap_or_default(),
            0xd9 => return true,
            0x00 | 0x01 | 0xd0..=0xd8 => after,
            _ => {
                let length = after.first_chunk().map(|length| usize::from(u16::from_be_bytes(*length)));
                match length.filter(|length| *length >= 2).and_then(|length| after.get(length..)) {
                    Some(next) => next,
                    None => return false,
                }
            }
        };
    }
    false
}

/// Walks from chunk to chunk. Source: PNG specification (W3C), 5.3: after a signature of 8 bytes, each chunk is a length of
/// four bytes, a type of four, that many bytes and a checksum of four; the last one is IEND.
fn png_ends(bytes: &[u8]) -> bool {
    let mut rest = bytes.get(8..).unwrap_or_default();
    while let Some((length, after)) = rest.split_first_chunk::<4>() {
        let Some((kind, after)) = after.split_first_chunk::<4>() else { return false };
        let length = usize::try_from(u32::from_be_bytes(*length)).ok();
        let Some(next) = length.and_then(|length| after.get(length.checked_add(4)?..)) else { return false };
        if kind == b"IEND" {
            return true;
        }
        rest = next;
    }
    false
}

/// Walks from box to box. Source: ISO/IEC 14496-12, 4.2: a box is a size of four bytes, which count themselves, and a
/// type of four; size 1 means that eight bytes of size follow, size 0 that it reaches to the end. ISO/IEC 23008-12, 10.2:
/// a file of pictures holds a `meta` box.
fn heic_lacks(bytes: &[u8]) -> Option<Lacking> {
    const PAST_THE_END: Option<Lacking> = Some(Lacking::RestOfBox);
    let mut rest = bytes;
    let mut described = false;
    while !rest.is_empty() {
        let Some((size, after)) = rest.split_first_chunk::<4>() else { return PAST_THE_END };
        let Some((kind, after)) = after.split_first_chunk::<4>() else { return PAST_THE_END };
        described |= kind == b"meta";
        let (size, least) = match u32::from_be_bytes(*size) {
            0 => (Some(rest.len()), 8),
            1 => (after.first_chunk().and_then(|size| usize::try_from(u64::from_be_bytes(*size)).ok()), 16),
            size => (usize::try_from(size).ok(), 8),
        };
        match size.filter(|size| *size >= least).and_then(|size| rest.get(size..)) {
            Some(next) => rest = next,
            None => return PAST_THE_END,
        }
    }
    (!described).then_some(Lacking::Description)
}
