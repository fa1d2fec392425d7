//! Copies of pictures that an office can open. The original stays as it was attached and is what counts.

use std::panic::{AssertUnwindSafe, catch_unwind};

use heifer::Options;
use jpeg_encoder::{ColorType, Encoder};

/// Pictures with more pixels get no copy. Phones make up to 50 million, and each takes about ten bytes in memory.
const PIXELS_MOST: u64 = 50_000_000;

/// The quality of the copy, up to 100: print on a slip stays readable.
const QUALITY: u8 = 85;

/// A JPEG copy of a picture in HEIC. `None` if it cannot be read, or is too large.
#[must_use]
pub(crate) fn jpeg_of_heic(bytes: &[u8]) -> Option<Vec<u8>> {
    // A fault of the decoder must not cost the whole pack.
    catch_unwind(AssertUnwindSafe(|| copied(bytes))).ok().flatten()
}

fn copied(bytes: &[u8]) -> Option<Vec<u8>> {
    let options = Options { max_pixels: PIXELS_MOST, max_threads: 1 };
    // Without a colour profile, viewers take a JPEG for sRGB.
    let picture = heifer::decode_srgb_rgba8(bytes, &options).ok()?;
    let (width, height) = (u16::try_from(picture.width).ok()?, u16::try_from(picture.height).ok()?);
    let mut jpeg = Vec::new();
    let encoder = Encoder::new(&mut jpeg, QUALITY);
    encoder.encode(&picture.data, width, height, ColorType::Rgba).ok()?;
    Some(jpeg)
}
