//! Items in short sentences for a keeper, each with its dates.

use std::borrow::Cow;

use combclear_domain::Day;
use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::words::LotName;
use combclear_domain::facts::Overdrawn;
use combclear_domain::journal::event::Kind;
use combclear_domain::questions::due::{CourseName, Item, ToDo};
use combclear_domain::questions::stock::{Lot, WhyDispose};
use combclear_domain::questions::supering::Term;

use crate::Words;
use crate::colonies::colonies;
use crate::gaps::{statement, supply};
use crate::pieces::{self, amount};
use crate::stock::why_dispose;
use crate::supering::{asked_for, course_name, no_earliest_day, term};
use crate::words::say;

/// The task in a few words.
pub(super) fn title(words: &Words, to_do: &ToDo) -> String {
    match to_do {
        ToDo::TakeSupersOff { .. } => say!(words, DueTakeSupersOffTitle),
        ToDo::TakeSupersOffForDose { number, .. } => {
            say!(words, DueTakeSupersOffForDoseTitle, number = *number)
        }
        ToDo::FindCarriers { course, .. } => say!(words, DueFindCarriersTitle, pack = &*pack(words, course)),
        ToDo::RecordEnd { .. } => say!(words, DueRecordEndTitle),
        ToDo::GiveDose { course, number, of } => {
            say!(words, DueGiveDoseTitle, number = *number, of = *of, pack = &*pack(words, course))
        }
        ToDo::TakeOut { course, .. } => say!(words, DueTakeOutTitle, pack = &*pack(words, course)),
        ToDo::UsedUp { course, .. } => say!(words, DueUsedUpTitle, pack = &*pack(words, course)),
        ToDo::PutSupersOn { if_out_on: None, .. } => say!(words, DueSupersFreeTitle),
        ToDo::PutSupersOn { if_out_on: Some(_), .. } => say!(words, DueSupersFreeIfOutTitle),
        ToDo::CountMites { .. } => say!(words, DueCountMitesTitle),
        ToDo::AskFormerKeeper { .. } => say!(words, DueAskFormerKeeperTitle),
        ToDo::ReadLeaflet { lots, .. } => say!(words, DueReadLeafletTitle, lots = lots_named(words, lots)),
        ToDo::RecordMissing { supplied_by, lots, .. } => match supplied_by {
            Kind::LeafletReading => say!(words, DueReadLeafletTitle, lots = lots_named(words, lots)),
            Kind::HoldingDetails => say!(words, DueRecordJurisdictionTitle),
            Kind::Removal => say!(words, DueLookInsideTitle),
            _ => say!(words, DueRecordMissingTitle),
        },
        ToDo::UseUpOpened { lot, .. } => say!(words, DueLastDayTitle, lot = &lot.lot),
        ToDo::UseUpLot { lot, .. } => say!(words, DueLotExpiresTitle, lot = &lot.lot),
        ToDo::DisposeOfLot { lot } => say!(words, DueDisposeTitle, lot = &lot.lot),
        ToDo::CompleteRecord { gap } => {
            say!(words, DueCompleteRecordTitle, place = gap.seq.to_string())
        }
    }
}

/// The task in a sentence, with its dates.
pub(super) fn text(words: &Words, item: &Item) -> String {
    match &item.to_do {
        ToDo::TakeSupersOff { since, barring } => {
            say!(words, DueTakeSupersOff, since = since, courses = courses(words, barring))
        }
        ToDo::TakeSupersOffForDose { course, number } => {
            say!(words, DueTakeSupersOffForDose, number = *number, name = named(words, course))
        }
        ToDo::FindCarriers { course, since } => {
            say!(words, SuperingRecordWhereabouts, name = named(words, course), since = since)
        }
        ToDo::RecordEnd { course, ended } => {
            say!(words, DueRecordEnd, name = named(words, course), ended = ended)
        }
        ToDo::GiveDose { course, number, of } => dose(words, item, course, *number, *of),
        ToDo::TakeOut { course, earliest } => take_out(words, item, course, *earliest),
        ToDo::UsedUp { course, on } => say!(words, DueUsedUp, name = named(words, course), day = on),
        ToDo::PutSupersOn { course, free, if_out_on: None } => {
            say!(words, DueSupersFree, name = named(words, course), free = free)
        }
        ToDo::PutSupersOn { course, free, if_out_on: Some(out) } => {
            say!(words, DueSupersFreeIfOut, name = named(words, course), free = free, out = out)
        }
        ToDo::CountMites { course, ended, from, by } => {
            say!(words, DueCountMites, name = named(words, course), ended = ended, from = from, by = by)
        }
        ToDo::AskFormerKeeper { since } => say!(words, DueAskFormerKeeper, since = since),
        ToDo::ReadLeaflet { course, lots, terms } => {
            let (name, lots) = (named(words, course), lots_named(words, lots));
            let said =
                say!(words, DueReadLeaflet, name = name, lots = lots, terms = terms_named(words, terms));
            with_zero(words, said, terms)
        }
        ToDo::RecordMissing { course, asks_for, lots_asked, terms, .. } => {
            let how = asked_for(words, asks_for, lots_asked);
            let said = say!(words, DueRecordMissing, name = named(words, course), how = how);
            if terms.is_empty() {
                return said;
            }
            let terms_named = terms_named(words, terms);
            with_zero(words, say!(words, DueRecordMissingAndTerms, said = said, terms = terms_named), terms)
        }
        ToDo::UseUpOpened { lot, until } => {
            say!(words, DueLastDay, lot = left_of(words, lot), until = until)
        }
        ToDo::UseUpLot { lot, expiry } => {
            say!(words, DueLotExpires, lot = left_of(words, lot), expiry = expiry)
        }
        ToDo::DisposeOfLot { lot } => {
            // The state of a lot to dispose of gives the reason.
            let why = WhyDispose::of(lot).map(|why| why_dispose(words, &why)).unwrap_or_default();
            say!(words, DueDispose, lot = left_of(words, lot), why = why)
        }
        ToDo::CompleteRecord { gap } => {
            say!(words, DueCompleteRecord, gap = statement(words, gap), supply = supply(words, gap.supply))
        }
    }
}

/// The task in a line. `title` is the task in a few words, `asked` the first day asked about, and `days` the first and last day to
/// be named, if any.
pub(super) fn in_brief(
    words: &Words,
    item: &Item,
    title: &str,
    asked: Day,
    days: Option<(Option<Day>, Option<Day>)>,
) -> String {
    let said = match item.colonies.as_slice() {
        [] => title.to_owned(),
        some => say!(words, DueBriefIn, title = title, colonies = colonies(words, some)),
    };
    let Some((from, by)) = days else { return said };
    let from = from.filter(|from| asked < *from);
    match (from, by) {
        (_, Some(by)) if item.overdue => say!(words, DueBriefOverdue, said = said, by = by),
        (Some(from), Some(by)) if from == by => say!(words, DueBriefOn, said = said, day = by),
        (Some(from), Some(by)) => say!(words, DueBriefBetween, said = said, from = from, by = by),
        (Some(from), None) => say!(words, DueBriefFrom, said = said, from = from),
        (None, Some(by)) => say!(words, DueBriefBy, said = said, by = by),
        (None, None) => said,
    }
}

fn dose(words: &Words, item: &Item, course: &CourseName, number: u8, of: u8) -> String {
    let name = named(words, course);
    match (item.from, item.by) {
        (Some(from), Some(by)) if from == by => {
            say!(words, SuperingDoseOn, number = number, of = of, name = name, day = by)
        }
        (Some(from), Some(by)) => {
            say!(words, SuperingDoseFromBy, number = number, of = of, name = name, from = from, by = by)
        }
        (Some(from), None) => {
            say!(words, SuperingDoseFrom, number = number, of = of, name = name, from = from)
        }
        (None, Some(by)) => say!(words, DueDoseBy, number = number, of = of, name = name, by = by),
        (None, None) => say!(words, DueDoseByLeaflet, number = number, of = of, name = name),
    }
}

fn take_out(words: &Words, item: &Item, course: &CourseName, earliest: Fact<Day, Term>) -> String {
    let by_brood = item.from_without_brood.zip(item.from_with_brood);
    let earliest = match (by_brood, earliest) {
        (Some((without, with)), _) if without != with => {
            say!(words, DueNotBeforeByBrood, without = without, with = with)
        }
        (_, Fact::Known(from)) => say!(words, DueNotBefore, day = from),
        (_, Fact::NotKnown(missing)) => no_earliest_day(words, missing),
    };
    let name = named(words, course);
    match item.by {
        Some(by) => say!(words, SuperingTakeOutBy, name = name, earliest = earliest, latest = by),
        None => say!(words, SuperingTakeOut, name = name, earliest = earliest),
    }
}

/// A sentence that asks for terms. For a period it adds that 0 days is an answer too.
fn with_zero(words: &Words, said: String, terms: &[Term]) -> String {
    if terms.iter().any(|term| matches!(term, Term::Withdrawal | Term::Wait)) {
        return say!(words, DueZeroIncluded, said = said);
    }
    said
}

fn pack<'c>(words: &Words, course: &'c CourseName) -> Cow<'c, str> {
    pieces::called(words, course.pack.as_ref().map(String::as_str))
}

fn named(words: &Words, course: &CourseName) -> String {
    course_name(words, &pack(words, course), course.placed, course.nothing_stays)
}

/// "one and another".
fn courses(words: &Words, courses: &[CourseName]) -> String {
    let mut names = courses.iter().map(|course| named(words, course));
    let first = names.next().unwrap_or_default();
    names.fold(first, |courses, course| say!(words, DueCourses, courses = courses, course = course))
}

/// "one and the other".
fn terms_named(words: &Words, terms: &[Term]) -> String {
    let mut names = terms.iter().map(|topic| term(words, *topic));
    let first = names.next().unwrap_or_default();
    names.fold(first, |terms, term| say!(words, DueTerms, terms = terms, term = term))
}

/// The lots, after "the leaflet of".
pub(crate) fn lots_named(words: &Words, lots: &[LotName]) -> String {
    say!(words, DueLots, count = lots.len(), lots = pieces::lots(lots))
}

/// The quantity left, with its lot; only the lot if it does not balance.
fn left_of(words: &Words, lot: &Lot) -> String {
    match lot.left() {
        Fact::Known(left) => {
            say!(
                words,
                DueLotLeft,
                amount = amount(words, left, lot.unit),
                pack = &lot.pack_name,
                lot = &lot.lot
            )
        }
        Fact::NotKnown(Overdrawn { .. }) => say!(words, DueLotNamed, pack = &lot.pack_name, lot = &lot.lot),
    }
}
