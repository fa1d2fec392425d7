//! A user's own words in a message: repeated in backticks, and cut where they are long.

use std::borrow::Cow;

/// The most characters of a user's own words that are repeated.
pub const QUOTED_MOST: usize = 200;

/// The same message with everything in backticks cut after [`QUOTED_MOST`] characters: whoever sent a megabyte is not sent it back.
#[must_use]
pub fn shortened(message: &str) -> Cow<'_, str> {
    if message.len() <= QUOTED_MOST {
        return Cow::Borrowed(message);
    }
    let mut short = String::new();
    // The parts with odd numbers stand in backticks.
    for (number, part) in message.split('`').enumerate() {
        if number > 0 {
            short.push('`');
        }
        let most = if number % 2 == 1 { QUOTED_MOST } else { usize::MAX };
        short.push_str(&cut(part, most));
    }
    if short == message { Cow::Borrowed(message) } else { Cow::Owned(short) }
}

/// The first characters of a text, with an ellipsis if there are more.
#[must_use]
pub fn cut(text: &str, most: usize) -> Cow<'_, str> {
    match text.char_indices().nth(most) {
        Some((end, _)) => Cow::Owned(format!("{}\u{2026}", text.get(..end).unwrap_or_default())),
        None => Cow::Borrowed(text),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_is_quoted_is_cut_and_only_if_it_is_long() {
        let long = "k".repeat(1_000_000);
        let kept = "k".repeat(QUOTED_MOST);
        let plain = "a sentence of this program may be longer than that: ".repeat(20);
        let cases = [
            ("short", "there is no lot `L1`".to_owned(), "there is no lot `L1`".to_owned()),
            (
                "a long name",
                format!("no lot `{long}`; try `L1`"),
                format!("no lot `{kept}\u{2026}`; try `L1`"),
            ),
            ("as long as may be", format!("no lot `{kept}`"), format!("no lot `{kept}`")),
            ("our own words", plain.clone(), plain),
            (
                "letters of several bytes",
                format!("`{}`", "\u{e4}".repeat(300)),
                format!("`{}\u{2026}`", "\u{e4}".repeat(200)),
            ),
        ];
        for (name, message, expected) in cases {
            assert_eq!(shortened(&message), expected, "{name}");
        }
    }
}
