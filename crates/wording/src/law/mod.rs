//! The law in words.

mod report;

use combclear_domain::rules::law::{CountedFrom, Field, FieldNeed, Occasion, RecordSort};

use crate::words::{Words, say};

pub use report::{LawBasis, LawField, LawForm, LawPart, LawReport, LawRetention, LawTimeLimit};

/// The notice on every answer about the law.
#[must_use]
pub fn notice(words: &Words) -> String {
    say!(words, LawNotice)
}

/// An occasion in the words of the trade.
#[must_use]
pub fn occasion(words: &Words, occasion: Occasion) -> String {
    say!(words, LawOccasion, occasion = occasion.as_str())
}

/// A field in the words of the trade.
#[must_use]
pub fn field(words: &Words, field: Field) -> String {
    say!(words, LawField, field = field.as_str())
}

/// How much a field is needed.
#[must_use]
pub fn need(words: &Words, need: FieldNeed) -> String {
    say!(words, LawNeed, need = need.as_str())
}

/// A legal category of records.
#[must_use]
pub fn record_sort(words: &Words, sort: RecordSort) -> String {
    say!(words, LawRecordSort, sort = sort.as_str())
}

/// The event from which the years of retention count: completes "5 years from".
#[must_use]
pub fn counted_from(words: &Words, from: CountedFrom) -> String {
    say!(words, LawCountedFrom, counted = from.as_str())
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    /// A word missing from its message would fall through to the last variant.
    #[test]
    fn every_word_of_a_list_is_said_in_its_own_way() {
        fn own<W: Copy>(all: &[W], say: fn(&Words, W) -> String) {
            let said: BTreeSet<String> = all.iter().map(|word| say(Words::english(), *word)).collect();
            assert_eq!(said.len(), all.len(), "{said:?}");
        }
        own(Occasion::ALL, occasion);
        own(Field::ALL, field);
        own(FieldNeed::ALL, need);
        own(RecordSort::ALL, record_sort);
        own(CountedFrom::ALL, counted_from);
    }
}
