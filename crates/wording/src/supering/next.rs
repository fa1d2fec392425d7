//! Steps and missing facts, in sentences without a full stop.

use combclear_domain::Day;
use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::words::LotName;
use combclear_domain::questions::supering::{AskedFor, EarliestOut, Lack, Step, Term};

use super::names::{named, no_earliest_day, term};
use super::sentences::{seen, statement};
use crate::Words;
use crate::words::say;

/// A step in one sentence.
pub(super) fn step(words: &Words, step: &Step<'_>, on: Day) -> String {
    match step {
        Step::TakeSupersOff { since } => say!(words, SuperingTakeSupersOff, since = since),
        Step::RecordWhereabouts { course, since } => {
            say!(words, SuperingRecordWhereabouts, name = named(words, course), since = since)
        }
        Step::GiveDose { course, number, of, from, by } => {
            let (name, number, of) = (named(words, course), *number, *of);
            match (*from, *by) {
                (_, Some(by)) if by < on => {
                    say!(words, SuperingDoseWasDue, number = number, of = of, name = name, by = by)
                }
                (Some(from), Some(by)) if from == by => {
                    say!(words, SuperingDoseOn, number = number, of = of, name = name, day = from)
                }
                (Some(from), Some(by)) => {
                    say!(
                        words,
                        SuperingDoseFromBy,
                        number = number,
                        of = of,
                        name = name,
                        from = from,
                        by = by
                    )
                }
                (Some(from), None) => {
                    say!(words, SuperingDoseFrom, number = number, of = of, name = name, from = from)
                }
                (None, Some(by)) => {
                    say!(words, SuperingDoseBy, number = number, of = of, name = name, by = by)
                }
                (None, None) => say!(words, SuperingDoseByLeaflet, number = number, of = of, name = name),
            }
        }
        Step::TakeOut { course, earliest, latest } => {
            let (name, earliest) = (named(words, course), earliest_out(words, earliest, on));
            match *latest {
                Some(latest) if latest < on => {
                    say!(words, SuperingTakeOutLate, name = name, earliest = earliest, latest = latest)
                }
                Some(latest) => {
                    say!(words, SuperingTakeOutBy, name = name, earliest = earliest, latest = latest)
                }
                None => say!(words, SuperingTakeOut, name = name, earliest = earliest),
            }
        }
        Step::WaitUntilSpent { course, spent } => {
            say!(words, SuperingWaitUntilSpent, name = named(words, course), spent = spent)
        }
        Step::WaitThrough { course, last } => {
            say!(words, SuperingWaitThrough, name = named(words, course), last = last)
        }
    }
}

fn earliest_out(words: &Words, earliest: &EarliestOut, on: Day) -> String {
    let day = match earliest.day {
        Fact::Known(day) => day,
        Fact::NotKnown(missing) => return no_earliest_day(words, missing),
    };
    let ahead = match day.days_since(on) {
        ..=0 => say!(words, SuperingMayComeOut, day = day),
        1 => say!(words, SuperingNotBeforeTomorrow, day = day),
        left => say!(words, SuperingNotBefore, day = day, days = left),
    };
    match (earliest.brood_seen(), earliest.both_days()) {
        (Some(brood), _) => {
            say!(words, SuperingEarliestUnderBrood, earliest = ahead, seen = seen(words, &brood))
        }
        (None, Some((absent, present))) => {
            say!(words, SuperingEarliestTurnsOnBrood, earliest = ahead, absent = absent, present = present)
        }
        (None, None) => ahead,
    }
}

/// A missing fact.
pub(super) fn lack(words: &Words, lack: &Lack<'_>) -> String {
    match lack {
        Lack::OfGround(ground) => statement(words, ground),
        Lack::Brood { course, absent_or_lowest, present } => say!(
            words,
            SuperingBroodNotKnown,
            name = named(words, course),
            absent = absent_or_lowest,
            present = present,
        ),
    }
}

/// The information the keeper is asked for; `lots` are those whose leaflets must be read.
pub(crate) fn asked_for(words: &Words, asked: &AskedFor, lots: &[LotName]) -> String {
    match asked {
        AskedFor::Arrival => say!(words, SuperingAskArrival),
        AskedFor::EarlierArrival { entry } => say!(words, SuperingAskEarlierArrival, entry = entry),
        AskedFor::FormerKeeper { entry } => say!(words, SuperingAskFormerKeeper, entry = entry),
        AskedFor::LookInside { entry } => say!(words, SuperingAskLookInside, entry = entry),
        AskedFor::WhereStripsWent { entry } => say!(words, SuperingAskWhereStripsWent, entry = entry),
        AskedFor::LookAtPack { entry } => say!(words, SuperingAskLookAtPack, entry = entry),
        AskedFor::NextFlow => say!(words, SuperingAskNextFlow),
        AskedFor::DaysBeforeFlow => say!(words, SuperingAskDaysBeforeFlow, lots = in_backticks(words, lots)),
        AskedFor::BroodBetween { from, until } => {
            say!(words, SuperingAskBroodBetween, from = from, until = until)
        }
        AskedFor::Brood => say!(words, SuperingAskBrood),
        AskedFor::Jurisdiction => say!(words, SuperingAskJurisdiction),
        AskedFor::PackOfUnknownLeaflet { leaflet, near: Some(near) } => {
            say!(words, SuperingAskPackOrNearLeaflet, leaflet = leaflet, near = near)
        }
        AskedFor::PackOfUnknownLeaflet { leaflet, near: None } => {
            say!(words, SuperingAskPack, leaflet = leaflet)
        }
        AskedFor::Term(topic @ (Term::Withdrawal | Term::Wait | Term::FlowBefore)) => {
            let term = term(words, *topic);
            say!(words, SuperingAskTermOrZero, term = term, lots = in_backticks(words, lots))
        }
        AskedFor::Term(topic) => {
            let term = term(words, *topic);
            say!(words, SuperingAskTerm, term = term, lots = in_backticks(words, lots))
        }
        AskedFor::Stays => say!(words, SuperingAskStays, lots = in_backticks(words, lots)),
    }
}

/// "`A` and lot `B`".
fn in_backticks(words: &Words, lots: &[LotName]) -> String {
    let mut lots = lots.iter().map(|lot| say!(words, SuperingLot, lot = lot));
    let first = lots.next().unwrap_or_default();
    lots.fold(first, |lots, lot| say!(words, SuperingLots, lots = lots, lot = lot))
}
