//! Remarks in a file for other programs: facts that its standard has no field for.

use combclear_domain::basics::words::{ApiaryName, LotName};
use combclear_domain::{Day, TimeOfDay};

use crate::words::say;
use crate::{Label, Words};

/// Notes on the file that its format does not express.
pub const NOTES: [Label; 13] = [
    Label::ExchangeNoteSpecies,
    Label::ExchangeNoteSchemes,
    Label::ExchangeNoteDates,
    Label::ExchangeNoteGroups,
    Label::ExchangeNoteSplits,
    Label::ExchangeNoteHoney,
    Label::ExchangeNoteEnd,
    Label::ExchangeNotePeriod,
    Label::ExchangeNoteRemark,
    Label::ExchangeNoteLocation,
    Label::ExchangeNoteUnits,
    Label::ExchangeNoteCorrected,
    Label::ExchangeNoteArchived,
];

/// The time of day of a treatment.
#[must_use]
pub fn time_of_day(words: &Words, time: TimeOfDay) -> String {
    say!(words, ExchangeTimeOfDay, time = time)
}

/// The quantity of a lot given to each of some colonies.
#[must_use]
pub fn given(words: &Words, lot: &LotName, each: &str, colonies: &str) -> String {
    say!(words, ExchangeGiven, lot = lot, each = each, colonies = colonies)
}

/// A lot.
#[must_use]
pub fn lot(words: &Words, lot: &LotName) -> String {
    say!(words, ExchangeLot, lot = lot)
}

/// The number of a dose within its course, counted from 1.
#[must_use]
pub fn dose(words: &Words, dose: u8) -> String {
    say!(words, ExchangeDose, dose = dose)
}

/// That an entry was struck out, and why.
#[must_use]
pub fn struck_out(words: &Words, reason: &str) -> String {
    say!(words, ExchangeStruckOut, reason = reason)
}

/// How some colonies got a medicine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CameBy {
    /// They were given it.
    Giving,
    /// By a split or uniting, with its day if known.
    SplitOrUniting(Option<Day>),
}

/// How long a medicine was in some colonies. `last` is a day or words.
#[must_use]
pub fn course(words: &Words, colonies: &str, came: CameBy, first: Day, last: &str) -> String {
    match came {
        CameBy::Giving => say!(words, ExchangeCourse, colonies = colonies, first = first, last = last),
        CameBy::SplitOrUniting(None) => {
            say!(words, ExchangeCourseCame, colonies = colonies, first = first, last = last)
        }
        CameBy::SplitOrUniting(Some(day)) => {
            say!(words, ExchangeCourseCameOn, colonies = colonies, day = day, first = first, last = last)
        }
    }
}

/// The withdrawal period, in words or days.
#[must_use]
pub fn withdrawal(words: &Words, period: &str) -> String {
    say!(words, ExchangeWithdrawal, period = period)
}

/// The wait between removal and supers, in days.
#[must_use]
pub fn wait(words: &Words, days: u16) -> String {
    say!(words, ExchangeWait, days = days)
}

/// The apiary on the day of the treatment, by name or in words.
#[must_use]
pub fn apiary(words: &Words, apiary: &str) -> String {
    say!(words, ExchangeApiary, apiary = apiary)
}

/// An apiary to which they were moved later.
#[must_use]
pub fn later_apiary(words: &Words, day: Day, apiary: &ApiaryName) -> String {
    say!(words, ExchangeLaterApiary, day = day, apiary = apiary)
}
