//! The built-in fonts, and what to print for characters that none of them has.

use std::collections::BTreeSet;
use std::sync::LazyLock;

use combclear_wording::visible::code_point;
use typst::foundations::Bytes;
use typst::text::{Font, FontBook, FontStyle, FontWeight};
use typst::utils::LazyHash;

/// The first that has the character is used.
pub(crate) const FAMILIES: [&str; 3] = ["Libertinus Serif", "New Computer Modern", "DejaVu Sans Mono"];

pub(crate) struct Fonts {
    pub(crate) book: LazyHash<FontBook>,
    pub(crate) fonts: Vec<Font>,
}

/// Loaded once, for all documents.
pub(crate) static FONTS: LazyLock<Fonts> = LazyLock::new(|| {
    let all = typst_assets::fonts().flat_map(|data| Font::iter(Bytes::new(data)));
    let fonts: Vec<Font> = all.filter(|font| FAMILIES.contains(&font.info().family.as_str())).collect();
    Fonts { book: LazyHash::new(FontBook::from_fonts(&fonts)), fonts }
});

/// Replaces characters that cannot be printed, and collects them.
#[derive(Debug, Default)]
pub(crate) struct Printable {
    /// The characters written as code points.
    pub(crate) missing: BTreeSet<char>,
}

impl Printable {
    /// A text in which each character missing from the fonts is written like `U+1F41D`.
    ///
    /// A combining mark is kept only if one font has both it and its base: the two need the same font.
    pub(crate) fn print(&mut self, text: &str) -> String {
        let mut printed = String::with_capacity(text.len());
        let mut base: Vec<&Font> = Vec::new();
        for sign in text.chars() {
            let mut having: Vec<&Font> = regular(sign).collect();
            if joins(sign) {
                having.retain(|font| base.iter().any(|other| other.info().family == font.info().family));
            }
            if having.is_empty() {
                self.missing.insert(sign);
                printed.push_str(&code_point(sign));
            } else {
                printed.push(sign);
            }
            base = having;
        }
        printed
    }
}

/// The upright regular fonts that have a character. Text written by people uses no other style.
fn regular(sign: char) -> impl Iterator<Item = &'static Font> {
    FONTS.fonts.iter().filter(move |font| {
        let info = font.info();
        info.variant.style == FontStyle::Normal
            && info.variant.weight == FontWeight::REGULAR
            && info.coverage.contains(u32::from(sign))
    })
}

/// Whether a character joins the previous one: combining marks and variation selectors, from Unicode blocks that hold
/// nothing else. Marks in other blocks stand alone in these fonts, or are missing from them.
pub(crate) fn joins(sign: char) -> bool {
    matches!(
        u32::from(sign),
        0x300..=0x36F
            | 0x483..=0x489
            | 0x591..=0x5C7
            | 0x610..=0x61A
            | 0x64B..=0x65F
            | 0x670
            | 0x1AB0..=0x1AFF
            | 0x1DC0..=0x1DFF
            | 0x20D0..=0x20FF
            | 0x3099..=0x309A
            | 0xFE00..=0xFE0F
            | 0xFE20..=0xFE2F
            | 0x1F3FB..=0x1F3FF
            | 0xE0100..=0xE01EF
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sign_that_no_font_has_is_written_as_its_code_point_and_told() {
        let cases = [
            ("letters of the trade's countries", "Öhrli Łąka Grüße", "Öhrli Łąka Grüße", ""),
            ("Greek and Cyrillic", "Μέλι Мёд", "Μέλι Мёд", ""),
            ("an emoji", "Hive \u{1f41d}", "Hive U+1F41D", "\u{1f41d}"),
            ("a Chinese name", "\u{8702}7", "U+87027", "\u{8702}"),
            ("a mark without a base that can carry it", "\u{8702}\u{301}", "U+8702U+0301", "\u{301}\u{8702}"),
        ];
        for (name, text, expected, missing) in cases {
            let mut printable = Printable::default();
            assert_eq!(printable.print(text), expected, "{name}");
            assert_eq!(printable.missing.into_iter().collect::<String>(), missing, "{name}");
        }
    }
}
