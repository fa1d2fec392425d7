//! Texts on paper besides headings and labels.

use combclear_domain::basics::calendar::Counting;
use combclear_domain::basics::words::ApiaryName;
use combclear_domain::facts::MedicineGiven;
use combclear_domain::journal::Hash;
use combclear_domain::journal::copied::CopiedFrom;
use combclear_domain::questions::gaps::CopiedEntries;
use combclear_domain::questions::gaps::GapWeight;
use combclear_domain::questions::register::{ArchivedPart, KeeperPart, SaidBy};
use combclear_domain::{Day, Quantity};

use crate::pieces;
use crate::words::say;
use crate::{Label, Words};

/// A medicine by the keeper's name.
#[must_use]
pub fn medicine(words: &Words, medicine: &MedicineGiven) -> String {
    pieces::medicine(words, medicine).into_owned()
}

/// A period.
#[must_use]
pub fn period(words: &Words, from: Day, to: Day) -> String {
    say!(words, PaperPeriod, from = from, to = to)
}

/// The period of a register.
#[must_use]
pub fn time(words: &Words, from: Day, to: Day) -> String {
    say!(words, PaperTime, from = from, to = to)
}

/// The period of a list of gaps, with its as-of day.
#[must_use]
pub fn time_as_of(words: &Words, from: Day, to: Day, day: Day) -> String {
    say!(words, PaperTimeAsOf, from = from, to = to, day = day)
}

/// The as-of day.
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

/// The keeper of the holding. Missing details are passed in as words.
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

/// The archive that contains part of the register's period.
#[must_use]
pub fn archived(words: &Words, part: &ArchivedPart) -> String {
    let ArchivedPart { written, through, entries, file } = part;
    say!(
        words,
        PaperArchived,
        entries = *entries,
        on = written.on,
        by = &written.recorded_by,
        place = written.seq,
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

/// An amount without a recorded unit.
#[must_use]
pub fn amount_without_unit(words: &Words, quantity: Quantity) -> String {
    say!(words, PaperAmountWithoutUnit, quantity = quantity)
}

/// An entry by its position in the journal: `no. 59`.
#[must_use]
pub fn entry_number(words: &Words, place: u64) -> String {
    say!(words, PaperEntryNumber, place = place)
}

/// An entry, by its number in words or its id.
#[must_use]
pub fn entry(words: &Words, entry: &str) -> String {
    say!(words, PaperEntry, entry = entry)
}

/// The entry that a row corrects.
#[must_use]
pub fn corrects(words: &Words, entry: &str) -> String {
    say!(words, PaperCorrects, entry = entry)
}

/// The record on paper from which an entry was copied.
#[must_use]
pub fn copied_from(words: &Words, copied: &CopiedFrom) -> String {
    say!(words, PaperCopiedFrom, what = &copied.what, day = copied.written_on)
}

/// The same in short, by the number of the record on paper at the head of the register.
#[must_use]
pub fn copied_here(words: &Words, number: usize, copied: &CopiedFrom) -> String {
    say!(words, PaperCopiedHere, number = number, day = copied.written_on)
}

/// A record on paper with its number, and when its entries were written there and entered here.
#[must_use]
pub fn copied_source(words: &Words, number: usize, of: &CopiedEntries) -> String {
    say!(
        words,
        PaperCopiedSource,
        number = number,
        what = &of.what,
        count = of.entries,
        first = of.first,
        last = of.last,
        entered_first = of.entered_first,
        entered_last = of.entered_last
    )
}

/// How many days late an entry was recorded.
#[must_use]
pub fn written_late(words: &Words, days: u32) -> String {
    say!(words, PaperWrittenLate, days = days)
}

/// Colonies got a medicine without being treated; with the entry, if known.
#[must_use]
pub fn none_given(words: &Words, by: Option<&str>) -> String {
    match by {
        Some(entry) => say!(words, PaperNoneGivenBy, entry = entry),
        None => words.label(Label::NoneGiven).to_owned(),
    }
}

/// An apiary to which they were moved later.
#[must_use]
pub fn later_apiary(words: &Words, day: Day, apiary: &ApiaryName) -> String {
    say!(words, PaperLaterApiary, day = day, apiary = apiary)
}

/// Something is not known from a day on.
#[must_use]
pub fn not_known_since(words: &Words, day: Day) -> String {
    say!(words, PaperNotKnownSince, day = day)
}

/// The number of a dose, and its course.
#[must_use]
pub fn dose_of_course(words: &Words, dose: u8, entry: &str) -> String {
    say!(words, PaperDoseOfCourse, dose = dose, entry = entry)
}

/// How many entries corrected the account of a lot.
#[must_use]
pub fn count_corrected(words: &Words, entries: u64) -> String {
    say!(words, PaperCountCorrected, entries = entries)
}

/// How serious a gap is.
#[must_use]
pub fn gap_weight(words: &Words, weight: GapWeight) -> &str {
    words.label(match weight {
        GapWeight::Required => Label::Required,
        GapWeight::Irregular => Label::NotAsItShouldBe,
        GapWeight::WhereApplicable => Label::RequiredWhereItApplies,
        GapWeight::Advised => Label::Advised,
    })
}

/// The source of a value.
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

/// A field of an entry, in words if it has any, else by its name.
#[must_use]
pub fn field(words: &Words, name: &str) -> String {
    say!(words, PaperField, field = name, name = name.replace('_', " "))
}

/// One of the lots of an entry, counted from 1.
#[must_use]
pub fn lot_of_entry(words: &Words, number: u32) -> String {
    say!(words, PaperLotOfEntry, number = number)
}

/// A field of the dose from one lot of an entry; both are passed in as words.
#[must_use]
pub fn field_of_lot(words: &Words, field: &str, lot: &str) -> String {
    say!(words, PaperFieldOfLot, field = field, lot = lot)
}

/// The number of a page and the number of pages, as formatted by the printer.
#[must_use]
pub fn page(words: &Words, page: &str, pages: &str) -> String {
    say!(words, PaperPage, page = page, pages = pages)
}
