//! Items in words: short sentences a keeper understands, each with its dates.

use super::of_lots::{amount, why_dispose};
use super::task::Days;
use crate::basics::calendar::Day;
use crate::basics::words::LotName;
use crate::facts::history::Course;
use crate::questions::stock::Lot;
use crate::questions::supering::{Reason, named, topic_words};

/// The medicine of a course by the name on its pack.
pub(super) fn pack(course: &Course) -> &str {
    if course.pack_name.is_empty() { course.medicine.as_str() } else { &course.pack_name }
}

pub(super) fn supers_off(since: Day, barring: &[&Course]) -> String {
    let mut names: Vec<String> = barring.iter().map(|course| named(course)).collect();
    names.dedup();
    format!(
        "take the honey supers off now: they are on since {since}, and must be off for {}; keep their honey from people",
        names.join(" and ")
    )
}

pub(super) fn whereabouts_title(course: &Course) -> String {
    format!("Look where {} went", pack(course))
}

pub(super) fn whereabouts(course: &Course, since: Day) -> String {
    format!(
        "look for {} and record it as out, or correct the entry of {since} to say where the strips went",
        named(course)
    )
}

pub(super) fn went_with_it(course: &Course, ended: Day) -> String {
    format!(
        "{} was in when the colony ended on {ended}, and nobody recorded what became of it: record its removal, on that day at the latest",
        named(course)
    )
}

pub(super) fn dose_title(course: &Course, number: u8, of: u8) -> String {
    format!("Give dose {number} of {of} of {}", pack(course))
}

pub(super) fn dose(course: &Course, number: u8, of: u8, days: Days) -> String {
    let when = match (days.from, days.by) {
        (Some(from), Some(by)) if from == by => format!("on {by}"),
        (Some(from), Some(by)) => format!("from {from}, by {by}"),
        (Some(from), None) => format!("from {from}"),
        (None, Some(by)) => format!("by {by}; its first day is not stated"),
        (None, None) => "when the leaflet says; its day is not stated".to_owned(),
    };
    format!("give dose {number} of {of} of {}: {when}", named(course))
}

pub(super) fn take_out(course: &Course, days: Days) -> String {
    let first = match (days.by_brood, days.from) {
        (Some((without, with)), _) if without != with => {
            format!("not before {without} without brood, {with} with brood; no brood is on record")
        }
        (_, Some(from)) => format!("not before {from}"),
        (_, None) => "no least stay is stated".to_owned(),
    };
    let last = days.by.map(|by| format!("; must be out by {by}")).unwrap_or_default();
    format!("take out {}: {first}{last}", named(course))
}

pub(super) fn supers_free(free: Day, if_out_on: Option<Day>, course: &Course) -> String {
    let condition = if_out_on.map(|out| format!(", if all is out on {out}")).unwrap_or_default();
    format!("first free day for supers after {}: {free}{condition}", named(course))
}

pub(super) fn count_mites(course: &Course, end: Day, from: Day, by: Day) -> String {
    format!(
        "count mites to see whether {} worked: 10 to 14 days after its end on {end}, so {from} to {by} (advice)",
        named(course)
    )
}

pub(super) fn missing_title(supplied_by: &str, lots: &[LotName]) -> String {
    match supplied_by {
        "leaflet_reading" => format!("Read the leaflet of {}", lots_words(lots)),
        "holding_details" => "Record the holding's jurisdiction".to_owned(),
        "removal" => "Look whether it is out".to_owned(),
        _ => "Record what is missing".to_owned(),
    }
}

fn lots_words(lots: &[LotName]) -> String {
    let names = lots.iter().map(LotName::as_str).collect::<Vec<_>>().join(", ");
    match lots {
        [] => "the lot".to_owned(),
        [_] => format!("lot {names}"),
        _ => format!("lots {names}"),
    }
}

pub(super) fn missing(course: &Course, how: &str) -> String {
    format!("for {}: {how}", named(course))
}

/// What has to be read on the leaflet, if reading it is all; nothing where `how` needs more words.
pub(super) fn on_the_leaflet(reason: &Reason<'_>, how: &str) -> Vec<&'static str> {
    if let Reason::NotEstablished { topic, .. } = reason
        && how.starts_with("read the ")
    {
        return vec![topic_words(*topic)];
    }
    Vec::new()
}

/// The beginning of a sentence that [`to_read`] ends.
pub(super) fn leaflet_of(course: &Course, lots: &[LotName]) -> String {
    format!("for {}: read on the leaflet of {} and record ", named(course), lots_words(lots))
}

pub(super) fn to_read(leaflet_of: &str, what: &[&str]) -> String {
    let zero = if what.iter().any(|what| what.contains("period") || what.contains("wait")) {
        ", 0 included"
    } else {
        ""
    };
    format!("{leaflet_of}the {}{zero}", what.join(" and the "))
}

pub(super) fn ask_who_kept_it(since: Day) -> String {
    format!("ask whoever kept it before {since} what medicine was in it, then correct the entry of that day")
}

/// What is left, with its lot; the lot alone where the book does not come out.
fn left_of(lot: &Lot) -> String {
    let left = lot.left.map(|left| format!("{} of ", amount(lot, left))).unwrap_or_default();
    format!("{left}{} (lot {})", lot.pack_name, lot.lot)
}

pub(super) fn dispose(lot: &Lot) -> Option<String> {
    Some(format!("dispose of {}: {}", left_of(lot), why_dispose(lot)?))
}

pub(super) fn expires(lot: &Lot, expiry: Day) -> String {
    format!("{} may be given until {expiry}; after that it is to be disposed of", left_of(lot))
}

pub(super) fn last_day(lot: &Lot, until: Day) -> String {
    format!("what was opened of {} may be given until {until}", left_of(lot))
}
