//! Due items as an iCalendar feed.
//!
//! Source: RFC 5545, sections 3.1 (lines of 75 octets), 3.3.4 (dates), 3.3.11 (text), 3.6.1 (events), 3.6.2 (to-dos), 3.8
//! (properties); RFC 7986, section 5.1 (the name of a calendar).
//!
//! Every event lasts whole days, from the first to the last day of its item; the end of an event is the day after its last.
//! If only one of the two is known, the event is on that day. If neither is known, the item is a to-do, which needs no day.
//! What is overdue is on the day asked about, since a day in the past is looked at by nobody. What must be done has an alarm
//! at nine in the morning: of the day before its last day, or of the day asked about if it is overdue.
//! There is no clock here: an event is stamped with the instant at which the last entry relevant to it was recorded, and its
//! sequence is that entry's place in the journal. So both only rise.

use chrono::TimeDelta;
use combclear_domain::basics::calendar::{Day, Instant};
use combclear_domain::questions::due::{Item, Weight};
use combclear_wording::Words;
use combclear_wording::calendar::{name, overdue, summary};
use combclear_wording::due::{DueItem, DueReport};
use icalendar::{Alarm, Calendar, Component, Event, EventLike, Property, Todo, Trigger};

/// The media type of a calendar.
pub const MEDIA_TYPE: &str = "text/calendar; charset=utf-8";

/// The items of a report as one calendar, in their order.
#[must_use]
pub fn calendar(words: &Words, report: &DueReport) -> String {
    let mut calendar = Calendar::empty();
    calendar.append_property(Property::new("VERSION", "2.0"));
    calendar.append_property(Property::new("PRODID", "-//Combclear//What is due//EN"));
    calendar.append_property(Property::new("CALSCALE", "GREGORIAN"));
    // The library does not treat this property as text, and so does not escape it.
    calendar.append_property(Property::new("NAME", escaped(&name(words, &report.holding))));
    // Older than that property, and read by most programs.
    calendar.append_property(text("X-WR-CALNAME", &name(words, &report.holding)));
    for item in report.items() {
        match days(&item.item, report.from) {
            Some(days) => calendar.push(event(words, item, days, &report.notice)),
            None => calendar.push(to_do(words, item, &report.notice)),
        };
    }
    folded_anew(&calendar.to_string())
}

fn event(words: &Words, item: &DueItem, (first, last): (Day, Day), notice: &str) -> Event {
    let mut event = described(words, Event::new(), item, notice);
    event
        .append_property(date("DTSTART", first))
        // A task does not block time for other appointments.
        .append_property(Property::new("TRANSP", "TRANSPARENT"));
    if let Some(trigger) = trigger(&item.item) {
        let mut alarm = Alarm::display(&summary_of(words, item), trigger);
        // The library would make up an id and stamp it with its own clock.
        alarm
            .uid(&format!("{}-alarm", item.item.uid))
            .append_property(Property::new("DTSTAMP", stamp(item.item.recorded_at)));
        event.alarm(alarm.done());
    }
    // Without an end an all-day event lasts one day, which is right on the last representable day.
    if last < Day::LAST {
        event.append_property(date("DTEND", last.next()));
    }
    event.done()
}

/// When to remind of what must be done: nine in the morning of the day before its last, or of the day asked about.
fn trigger(item: &Item) -> Option<Trigger> {
    let hours = TimeDelta::hours;
    match (item.weight, item.by) {
        (Weight::Must, _) if item.overdue => Some(Trigger::after_start(hours(9))),
        // The end of the event is the midnight after its last day, which the last day of all does not have.
        (Weight::Must, Some(by)) if by < Day::LAST => Some(Trigger::before_end(hours(24 + 15))),
        (Weight::Must | Weight::Advice | Weight::May, _) => None,
    }
}

/// An item in one line; one that is overdue says so.
fn summary_of(words: &Words, due: &DueItem) -> String {
    let said = summary(words, &due.title, &due.item.colonies);
    if due.item.overdue { overdue(words, &said) } else { said }
}

fn to_do(words: &Words, item: &DueItem, notice: &str) -> Todo {
    described(words, Todo::new(), item, notice).done()
}

/// The properties common to events and to-dos: all but the days.
fn described<C: Component>(words: &Words, mut component: C, due: &DueItem, notice: &str) -> C {
    let DueItem { item, text: says, .. } = due;
    // Programs depend on these words.
    let kind = match item.weight {
        Weight::Must => "MUST",
        Weight::Advice => "ADVICE",
        Weight::May => "MAY",
    };
    component
        .uid(&item.uid.to_string())
        .append_property(Property::new("DTSTAMP", stamp(item.recorded_at)))
        .append_property(Property::new("SEQUENCE", item.sequence.min(SEQUENCE_MOST).to_string()))
        .append_property(text("SUMMARY", &summary_of(words, due)))
        .append_property(text("DESCRIPTION", &format!("{says}\n{notice}")))
        .append_property(Property::new("CATEGORIES", kind));
    if let Some(apiary) = &item.apiary {
        component.append_property(text("LOCATION", apiary.as_str()));
    }
    component
}

/// The greatest integer of RFC 5545, section 3.3.8.
const SEQUENCE_MOST: u64 = 2_147_483_647;

/// The first and last day of an event; `None` if neither is known. If the last permitted day comes before the first, the
/// event is on the last permitted day. What is overdue is on the day asked about.
fn days(item: &Item, asked: Day) -> Option<(Day, Day)> {
    match (item.from, item.by) {
        _ if item.overdue => Some((asked, asked)),
        (Some(from), Some(by)) => Some((from.min(by), by)),
        (Some(day), None) | (None, Some(day)) => Some((day, day)),
        (None, None) => None,
    }
}

fn date(name: &str, day: Day) -> Property {
    Property::new(name, day.to_string().replace('-', "")).add_parameter("VALUE", "DATE").done()
}

/// An instant in UTC, in whole seconds (section 3.3.5, form 2).
fn stamp(instant: Instant) -> String {
    let written = instant.to_string();
    let seconds = written.split('.').next().unwrap_or(&written);
    format!("{}Z", seconds.replace(['-', ':'], ""))
}

/// A text property, without control characters other than the line break: they are not permitted (section 3.3.11).
fn text(name: &str, says: &str) -> Property {
    let clean: String = says.chars().filter(|letter| *letter == '\n' || !letter.is_control()).collect();
    Property::new(name, clean)
}

/// Escaped text (section 3.3.11).
fn escaped(text: &str) -> String {
    text.replace('\\', "\\\\").replace(',', "\\,").replace(';', "\\;")
}

/// Folds lines to at most 75 octets, including the space before a continued line, without cutting a character in two
/// (section 3.1).
///
/// The library does not count that space in the last part of a line, which can then have 76 octets. No line is cut next to
/// white space: some readers lose it there.
fn folded_anew(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    for line in text.replace("\r\n ", "").split_terminator("\r\n") {
        let mut rest = line;
        let mut most = OCTETS_MOST;
        while let Some((part, after)) = cut(rest, most) {
            folded.push_str(part);
            folded.push_str("\r\n ");
            rest = after;
            most = OCTETS_MOST - 1;
        }
        folded.push_str(rest);
        folded.push_str("\r\n");
    }
    folded
}

const OCTETS_MOST: usize = 75;

/// Cuts a line that is longer than `most` octets into its first part and the rest; `None` for a shorter line.
fn cut(line: &str, most: usize) -> Option<(&str, &str)> {
    let fits = |at: &usize| line.is_char_boundary(*at);
    let widest = (1..=most).rev().find(fits).filter(|_| line.len() > most)?;
    let beside_space = |at: &usize| {
        let around = line.split_at_checked(*at).map(|(before, after)| {
            before.ends_with(char::is_whitespace) || after.starts_with(char::is_whitespace)
        });
        around.unwrap_or(true)
    };
    let at = (1..=widest).rev().find(|at| fits(at) && !beside_space(at)).unwrap_or(widest);
    line.split_at_checked(at)
}
