//! Names of entry fields for readers of a correction.

use combclear_domain::journal::EntryId;
use combclear_wording::{Words, paper};

use crate::rows::Telling;

/// The name of a corrected field in words; its own name if it has none.
pub(crate) fn name(words: &Words, field: &str) -> String {
    let mut parts = field.split('/');
    match (parts.next(), parts.next(), parts.next(), parts.next()) {
        (Some("given"), Some(number), Some(part), None) => {
            paper::field_of_lot(words, &paper::field(words, part), &lot(words, number))
        }
        _ => field.split('/').map(|name| paper::field(words, name)).collect::<Vec<_>>().join(", "),
    }
}

/// `first lot` for index 0.
fn lot(words: &Words, number: &str) -> String {
    number
        .parse::<u32>()
        .map_or_else(|_| number.to_owned(), |number| paper::lot_of_entry(words, number.saturating_add(1)))
}

/// A value. The id of an entry in this register is replaced by its number.
pub(crate) fn value(text: String, tell: &Telling) -> String {
    match text.parse::<EntryId>() {
        Ok(entry) if tell.knows(entry) => paper::entry(tell.words, &tell.entry(entry)),
        _ => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_field_is_told_in_the_words_of_the_trade() {
        let cases = [
            ("given/0/colonies", "colonies (first lot)"),
            ("given/0/each", "amount per colony (first lot)"),
            ("given/3/lot", "lot (lot 4 of the entry)"),
            ("against", "reason"),
            ("continues", "first dose"),
            ("on", "date"),
            ("copied_from", "copied from"),
            ("written_on", "written there on"),
            ("supplier/name", "supplier, name"),
            ("label_revision", "label revision"),
        ];
        for (field, expected) in cases {
            assert_eq!(name(Words::english(), field), expected);
        }
    }
}
