//! Texts in the index of an inspection pack.

use combclear_domain::basics::words::{ApiaryName, LotName, PrescriptionName};
use combclear_domain::journal::Hash;

use crate::Words;
use crate::words::say;

/// The acquisition that a proof belongs to, by its position in the journal.
#[must_use]
pub fn acquisition(words: &Words, place: u64, lot: &LotName) -> String {
    say!(words, PackAcquisition, place = place, lot = lot)
}

/// The vet's lot of which a document tells, by its position in the journal.
#[must_use]
pub fn vet_lot(words: &Words, place: u64, lot: &LotName) -> String {
    say!(words, PackVetLot, place = place, lot = lot)
}

/// The prescription that a copy belongs to, by its position in the journal.
#[must_use]
pub fn prescription(words: &Words, place: u64, number: &PrescriptionName) -> String {
    say!(words, PackPrescription, place = place, number = number)
}

/// The season of an apiary.
#[must_use]
pub fn season(words: &Words, apiary: &ApiaryName) -> String {
    say!(words, PackSeason, apiary = apiary)
}

/// A part of a sentence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Part {
    /// Words.
    Words(String),
    /// A command or a hash, set apart from the words.
    Code(String),
}

/// How to check the files of a pack.
#[must_use]
pub fn check_files(words: &Words, command: &str) -> Vec<Part> {
    parts(&say!(words, PackCheckFiles, command = set_apart(command)))
}

/// How to check that the register was read from the journal, which had this many entries.
#[must_use]
pub fn check_journal(words: &Words, command: &str, entries: u64, head: Hash) -> Vec<Part> {
    let (command, hash) = (set_apart(command), set_apart(&head.to_string()));
    parts(&say!(words, PackCheckJournal, command = command, entries = entries, hash = hash))
}

/// Noncharacters (Unicode Standard, section 23.7), which never occur in text, around each inserted value.
const BEGIN: char = '\u{fdd0}';
const END: char = '\u{fdd1}';

fn set_apart(code: &str) -> String {
    format!("{BEGIN}{code}{END}")
}

/// Splits a sentence into its parts, in the order of its language.
fn parts(sentence: &str) -> Vec<Part> {
    let mut parts = Vec::new();
    for part in sentence.split(BEGIN) {
        match part.split_once(END) {
            Some((code, words)) => parts.extend([Part::Code(code.to_owned()), Part::Words(words.to_owned())]),
            None => parts.push(Part::Words(part.to_owned())),
        }
    }
    parts.retain(|part| *part != Part::Words(String::new()));
    parts
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_command_is_set_apart_from_the_words_around_it() {
        let words = |text: &str| Part::Words(text.to_owned());
        let code = |text: &str| Part::Code(text.to_owned());
        let said = parts(&format!("Run {} and {}.", set_apart("a b"), set_apart("c")));
        assert_eq!(said, [words("Run "), code("a b"), words(" and "), code("c"), words(".")]);
        assert_eq!(parts(&set_apart("a")), [code("a")]);
        assert_eq!(parts("No command."), [words("No command.")]);
    }
}
