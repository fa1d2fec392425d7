//! The fields of an entry in the words of the trade, for readers of a correction.

use combclear_domain::journal::EntryId;

use crate::rows::JournalPlaces;

/// What a field of a correction is called. A field without a word here is told by its own name.
pub(crate) fn words(field: &str) -> String {
    let mut parts = field.split('/');
    match (parts.next(), parts.next(), parts.next(), parts.next()) {
        (Some("given"), Some(number), Some(part), None) => format!("{} ({})", one(part), lot(number)),
        _ => field.split('/').map(one).collect::<Vec<_>>().join(", "),
    }
}

fn one(name: &str) -> String {
    let word = match name {
        "on" => "date",
        "at" => "time of day",
        "each" => "amount each",
        "against" => "reason",
        "continues" | "administration" => "first dose",
        "withdrawal_days" => "withdrawal period in days",
        "wait_days" => "wait before supers in days",
        "authorisation" => "authorisation no.",
        "pack_name" => "name on the pack",
        "proof" => "proof of purchase",
        "left_inside" => "left inside each",
        other => return other.replace('_', " "),
    };
    word.to_owned()
}

/// `first lot` for the lot that is counted as 0.
fn lot(number: &str) -> String {
    match number {
        "0" => "first lot".to_owned(),
        "1" => "second lot".to_owned(),
        "2" => "third lot".to_owned(),
        other => other.parse::<u64>().map_or_else(
            |_| other.to_owned(),
            |number| format!("lot {} of the entry", number.saturating_add(1)),
        ),
    }
}

/// A value; an id of an entry that stands in this register is told by its number.
pub(crate) fn value(text: String, places: &JournalPlaces) -> String {
    match text.parse::<EntryId>() {
        Ok(entry) if places.knows(entry) => format!("entry {}", places.words(entry)),
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
            ("given/0/each", "amount each (first lot)"),
            ("given/3/lot", "lot (lot 4 of the entry)"),
            ("against", "reason"),
            ("continues", "first dose"),
            ("on", "date"),
            ("supplier/name", "supplier, name"),
            ("label_revision", "label revision"),
        ];
        for (field, expected) in cases {
            assert_eq!(words(field), expected);
        }
    }
}
