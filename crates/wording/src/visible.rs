//! What cannot be seen in a text, made visible.

/// A text with every invisible character written as its code point: control characters, and those that change the direction
/// of text (Unicode Standard Annex 9), which could make a line read as another.
#[must_use]
pub fn visible(text: &str) -> String {
    let mut seen = String::with_capacity(text.len());
    for sign in text.chars() {
        if sign.is_control() || is_hidden(sign) {
            seen.push_str(&code_point(sign));
        } else {
            seen.push(sign);
        }
    }
    seen
}

/// A code point such as `U+202E`.
#[must_use]
pub fn code_point(sign: char) -> String {
    format!("U+{:04X}", u32::from(sign))
}

/// Characters without a visible shape: zero-width ones, direction marks, tags, and line and paragraph separators.
fn is_hidden(sign: char) -> bool {
    matches!(
        u32::from(sign),
        0xAD | 0x61C
            | 0x180E
            | 0x200B..=0x200F
            | 0x2028..=0x202E
            | 0x2060..=0x206F
            | 0xFEFF
            | 0xFFF9..=0xFFFB
            | 0xE0000..=0xE007F
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_seen_is_written_as_its_code_point() {
        let cases = [
            ("a plain name stays", "Nordhang 3", "Nordhang 3"),
            ("letters with marks stay", "Öhrli, Łąka", "Öhrli, Łąka"),
            ("a turned direction is named", "A\u{202e}B", "AU+202EB"),
            ("a line break is named", "A\nB", "AU+000AB"),
            ("a byte order mark is named", "\u{feff}A", "U+FEFFA"),
        ];
        for (name, text, expected) in cases {
            assert_eq!(visible(text), expected, "{name}");
        }
    }
}
