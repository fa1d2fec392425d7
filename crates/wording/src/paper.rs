//! What stands on paper besides heads and labels.

use combclear_domain::basics::calendar::Counting;
use combclear_domain::basics::words::ApiaryName;
use combclear_domain::journal::Hash;
use combclear_domain::questions::gaps::GapWeight;
use combclear_domain::questions::register::{ArchivedPart, KeeperPart, SaidBy};
use combclear_domain::{Day, Quantity};

use crate::words::say;
use crate::{Label, Words};

/// From which day to which.
#[must_use]
pub fn period(words: &Words, from: Day, to: Day) -> String {
    say!(words, PaperPeriod, from = from, to = to)
}

/// The time of a register.
#[must_use]
pub fn time(words: &Words, from: Day, to: Day) -> String {
    say!(words, PaperTime, from = from, to = to)
}

/// The time of a list of gaps, and the day whose knowledge counts.
#[must_use]
pub fn time_as_of(words: &Words, from: Day, to: Day, day: Day) -> String {
    say!(words, PaperTimeAsOf, from = from, to = to, day = day)
}

/// The day whose knowledge counts.
#[must_use]
pub fn as_of(words: &Words, day: Day) -> String {
    say!(words, PaperAsOf, day = day)
}

/// The journal that a register was read from.
#[must_use]
pub fn journal(words: &Words, entries: u64, head: Option<Hash>) -> String {
    let head = head.map_or_else(|| words.label(Label::None).to_owned(), |head| head.to_string());
    say!(words, PaperJournal, entries = entries, head = head)
}

/// Who kept the holding. What nobody wrote down comes in as words.
#[must_use]
pub fn keeper(words: &Words, part: &KeeperPart, address: &str, registration: &str) -> String {
    say!(
        words,
        PaperKeeper,
        keeper = &part.keeper,
        since = part.since,
        address = address,
        registration = registration,
        jurisdiction = &part.jurisdiction
    )
}

/// What of the time of a register is to be looked up in an archive.
#[must_use]
pub fn archived(words: &Words, part: &ArchivedPart) -> String {
    let ArchivedPart { written, through, entries, file } = part;
    say!(
        words,
        PaperArchived,
        entries = *entries,
        on = written.on,
        by = &written.recorded_by,
        place = written.place,
        through = through,
        file = file
    )
}

/// How days are counted; `policy` is the name of a counting policy.
#[must_use]
pub fn policy(words: &Words, policy: &str) -> String {
    if policy == Counting::Calendar.as_str() {
        say!(words, PaperPolicyCalendar, policy = policy)
    } else {
        say!(words, PaperPolicyElapsed, policy = policy)
    }
}

/// An amount of which nobody wrote down what it is counted in.
#[must_use]
pub fn amount_without_unit(words: &Words, quantity: Quantity) -> String {
    say!(words, PaperAmountWithoutUnit, quantity = quantity)
}

/// An entry by its place in the journal: `no. 59`.
#[must_use]
pub fn entry_number(words: &Words, place: u64) -> String {
    say!(words, PaperEntryNumber, place = place)
}

/// An entry, by its number in words or by its id.
#[must_use]
pub fn entry(words: &Words, entry: &str) -> String {
    say!(words, PaperEntry, entry = entry)
}

/// Which entry a row corrects.
#[must_use]
pub fn corrects(words: &Words, entry: &str) -> String {
    say!(words, PaperCorrects, entry = entry)
}

/// How many days later an entry was written down.
#[must_use]
pub fn written_late(words: &Words, days: u32) -> String {
    say!(words, PaperWrittenLate, days = days)
}

/// That colonies came by a medicine without being given it, and the entry that says so where it is known.
#[must_use]
pub fn none_given(words: &Words, by: Option<&str>) -> String {
    match by {
        Some(entry) => say!(words, PaperNoneGivenBy, entry = entry),
        None => words.label(Label::NoneGiven).to_owned(),
    }
}

/// An apiary to which they went later.
#[must_use]
pub fn later_apiary(words: &Words, day: Day, apiary: &ApiaryName) -> String {
    say!(words, PaperLaterApiary, day = day, apiary = apiary)
}

/// That something is not known from a day on.
#[must_use]
pub fn not_known_since(words: &Words, day: Day) -> String {
    say!(words, PaperNotKnownSince, day = day)
}

/// Which dose of which course an entry is.
#[must_use]
pub fn dose_of_course(words: &Words, dose: u8, entry: &str) -> String {
    say!(words, PaperDoseOfCourse, dose = dose, entry = entry)
}

/// By how many entries the count of a lot was corrected.
#[must_use]
pub fn count_corrected(words: &Words, entries: usize) -> String {
    if entries == 0 {
        return words.label(Label::NotCorrected).to_owned();
    }
    say!(words, PaperCountCorrected, entries = entries)
}

/// How much a gap weighs.
#[must_use]
pub fn gap_weight(words: &Words, weight: GapWeight) -> &str {
    words.label(match weight {
        GapWeight::Required => Label::Required,
        GapWeight::Amiss => Label::NotAsItShouldBe,
        GapWeight::WhereApplicable => Label::RequiredWhereItApplies,
        GapWeight::Advised => Label::Advised,
    })
}

/// Who said a value.
#[must_use]
pub fn said_by(words: &Words, by: SaidBy) -> &str {
    words.label(match by {
        SaidBy::Prescription => Label::SaidByPrescription,
        SaidBy::LeafletReading => Label::SaidByReading,
        SaidBy::Pack => Label::SaidByPack,
        SaidBy::Declared => Label::SaidByKeeper,
        SaidBy::Leaflet => Label::SaidByLeaflet,
    })
}

/// A field of an entry. One without words of its own is told by its name.
#[must_use]
pub fn field(words: &Words, name: &str) -> String {
    say!(words, PaperField, field = name, name = name.replace('_', " "))
}

/// One of the lots of an entry, the first being 1.
#[must_use]
pub fn lot_of_entry(words: &Words, number: u32) -> String {
    say!(words, PaperLotOfEntry, number = number)
}

/// A field of what was given from one of the lots of an entry, both in words.
#[must_use]
pub fn field_of_lot(words: &Words, field: &str, lot: &str) -> String {
    say!(words, PaperFieldOfLot, field = field, lot = lot)
}

/// The number of a page among all pages, as whatever prints them writes either.
#[must_use]
pub fn page(words: &Words, page: &str, pages: &str) -> String {
    say!(words, PaperPage, page = page, pages = pages)
}
