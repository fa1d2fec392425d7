//! The tabs of a sheet and their columns, made from the forms of the kinds of entry.

use combclear_domain::journal::Kind;
use combclear_domain::journal::form::{Field, Input, Origin, blanks};
use combclear_wording::terminal::sheet as say;
use combclear_wording::{Label, Words, forms};

/// The key of the day on which it happened.
pub(crate) const ON: &str = "on";
/// The key of the time of day.
pub(crate) const AT: &str = "at";
/// The key of the person who records it.
pub(crate) const RECORDED_BY: &str = "recorded_by";
/// The key of what it was copied from.
pub(crate) const COPIED_FROM: &str = "copied_from";
/// The key of the day on which it was written there.
pub(crate) const WRITTEN_ON: &str = "written_on";

/// The kinds of entry that have a tab, in the order in which entries of one day are recorded: what is named before what names it.
pub const TABS: [Kind; 25] = [
    Kind::HoldingDetails,
    Kind::ApiaryDetails,
    Kind::ColonyEstablished,
    Kind::MedicineDescribed,
    Kind::LotAcquired,
    Kind::VetLot,
    Kind::LeafletReading,
    Kind::Prescription,
    Kind::SiteConditions,
    Kind::NectarFlow,
    Kind::Temperature,
    Kind::TemperatureNormals,
    Kind::Inspection,
    Kind::MiteCount,
    Kind::SupersOff,
    Kind::LotOpened,
    Kind::Administration,
    Kind::Removal,
    Kind::ColonySplit,
    Kind::ColonyUnited,
    Kind::ColonyMoved,
    Kind::SupersOn,
    Kind::Harvest,
    Kind::Disposal,
    Kind::ColonyEnded,
];

/// The kind of entry whose tab has this name, however its letters are written.
#[must_use]
pub fn kind_of_tab(words: &Words, name: &str) -> Option<Kind> {
    let name = name.trim().to_lowercase();
    TABS.into_iter().find(|kind| forms::tab(words, *kind).to_lowercase() == name)
}

/// The names of all tabs, with commas between.
#[must_use]
pub fn tab_names(words: &Words) -> String {
    TABS.map(|kind| forms::tab(words, kind)).join(", ")
}

/// A column of a tab.
#[derive(Debug, Clone)]
pub struct Column {
    /// The key of its field.
    pub key: String,
    /// What is above it, without the star of a needed one.
    pub label: &'static str,
    /// What to fill in.
    pub hint: String,
    /// How it is filled in.
    pub input: Input,
    /// Where a value comes from if nobody writes one.
    pub origin: Origin,
    /// Whether it must be filled in.
    pub needed: bool,
}

impl Column {
    /// What is above it.
    #[must_use]
    pub fn heading(&self, words: &Words) -> String {
        if self.needed { say::needed(words, self.label) } else { self.label.to_owned() }
    }

    /// Whether a heading is its own, however its letters are written, with the star or without.
    #[must_use]
    pub fn is_headed(&self, heading: &str) -> bool {
        let heading = heading.trim().trim_end_matches('*').trim_end().to_lowercase();
        heading == self.label.to_lowercase() || heading == self.key
    }
}

/// The columns of the tab of a kind: those of the envelope, then the blanks of its form, then what it was copied from. The day
/// must be stated: a sheet is imported later than things happened.
#[must_use]
pub fn columns(words: &Words, kind: Kind) -> Vec<Column> {
    let around = Field::ENVELOPE.iter().map(|field| {
        let is_day = field.name == ON;
        let said = forms::around(words, kind, field);
        let hint = if is_day { words.label(Label::SheetDayHint) } else { said.hint };
        Column {
            key: field.name.to_owned(),
            label: said.label,
            hint: hint.to_owned(),
            input: field.input,
            origin: field.origin,
            needed: is_day,
        }
    });
    let of_form = blanks(kind).into_iter().map(|blank| {
        let said = forms::field(words, kind, &blank);
        Column {
            label: said.label,
            hint: said.hint.to_owned(),
            input: blank.input,
            origin: blank.origin,
            // The record has what nobody writes.
            needed: blank.needed && !matches!(blank.origin, Origin::InStock | Origin::Inside),
            key: blank.key,
        }
    });
    // Few copy from a paper register, so what only they fill in comes last.
    let (copied, around): (Vec<Column>, Vec<Column>) =
        around.partition(|column| [COPIED_FROM, WRITTEN_ON].contains(&column.key.as_str()));
    around.into_iter().chain(of_form).chain(copied).collect()
}

/// The letters of a column, from its index: A, B, .. Z, AA.
#[must_use]
pub fn letters(index: u32) -> String {
    let mut left = index;
    let mut found = Vec::new();
    loop {
        found.push(char::from_u32(u32::from(b'A') + left % 26).unwrap_or('?'));
        if left < 26 {
            return found.into_iter().rev().collect();
        }
        left = left / 26 - 1;
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use combclear_domain::journal::form::is_filled_in;

    use super::*;

    #[test]
    fn columns_are_lettered_as_a_spreadsheet_does() {
        let lettered = [0, 1, 25, 26, 27, 51, 52, 701, 702, 16_383].map(letters);
        assert_eq!(lettered, ["A", "B", "Z", "AA", "AB", "AZ", "BA", "ZZ", "AAA", "XFD"]);
    }

    #[test]
    fn every_kind_that_people_fill_in_has_a_tab_and_each_of_its_columns_a_heading_of_its_own() {
        let words = Words::english();
        let filled_in: BTreeSet<Kind> = Kind::ALL
            .iter()
            .copied()
            .filter(|kind| is_filled_in(*kind) && *kind != Kind::StrikeOut)
            .collect();
        assert_eq!(BTreeSet::from(TABS), filled_in);
        for kind in TABS {
            let columns = columns(words, kind);
            let mut names = BTreeSet::new();
            for column in &columns {
                let heads = columns.iter().filter(|other| other.is_headed(&column.heading(words))).count();
                assert_eq!(heads, 1, "{kind:?} {}", column.key);
                assert!(names.insert(column.key.clone()), "{kind:?} {}", column.key);
            }
        }
    }
}
