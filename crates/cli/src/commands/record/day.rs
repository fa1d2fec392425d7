//! Days as people name them: `yesterday`, a weekday, a date.

use combclear_domain::Day;
use combclear_wording::terminal::record as say;
use combclear_wording::unreadable::misread;
use combclear_wording::{Label, Words};

/// Today, the day before or the day after, by its word in lower case.
pub(crate) fn beside_today(written: &str, today: Day) -> Option<Day> {
    let named = [
        (Label::RecordDayToday, today),
        (Label::RecordDayYesterday, today.before()),
        (Label::AskedDayTomorrow, today.next()),
    ];
    let meant = named.into_iter().find(|(label, _)| Words::english().label(*label) == written);
    meant.map(|(_, day)| day)
}

/// Reads a day. A weekday is the last one before today.
pub(super) fn day(text: &str, today: Day) -> Result<Day, String> {
    let words = Words::english();
    let written = text.trim().to_lowercase();
    if let Some(day) = beside_today(&written, today).filter(|day| *day <= today) {
        return Ok(day);
    }
    let week = std::iter::successors(Some(today.before()), |day| Some(day.before())).take(7);
    let meant = |day: &Day| {
        let name = day.weekday().to_lowercase();
        written.len() >= 3 && name.starts_with(&written)
    };
    if let Some(day) = week.into_iter().find(meant) {
        return Ok(day);
    }
    text.trim().parse().map_err(|fault| {
        let why = misread(words, &combclear_domain::basics::misread::Misread::Date(fault));
        say::not_a_day(words, &why)
    })
}
