//! The answer at a glance: why in one line, and what to do next.

use std::ptr;

use combclear_domain::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::facts::history::{Course, EarliestOut};
use combclear_domain::questions::supering::{
    Answer, AskedFor, FirstFree, Ground, Missing, Outcome, Reason, Step,
};

use super::names::{named, term_in_brief};
use super::{next, sentences};
use crate::Words;
use crate::due::lots_named;
use crate::words::say;

/// Why, and what to do next, each in a line. Colonies with the same answer, reason and next step are shown together.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct AtAGlance {
    /// The main reason. Absent for a yes without reservation.
    pub why: Option<String>,
    /// The next step towards a yes, or what would settle the answer.
    pub next: Option<String>,
    /// The number of breaches on record.
    pub breaches: usize,
}

impl AtAGlance {
    pub(super) fn of(
        words: &Words,
        answer: &Answer<'_>,
        steps: &[Step<'_>],
        missing: &[Missing<'_>],
    ) -> AtAGlance {
        let ground = sentences::deciding(answer).and_then(|place| answer.grounds.get(place));
        let is_breach = |ground: &&Ground<'_>| !ground.decides && ground.outcome == Outcome::Broken;
        let (why, next) = match answer.verdict {
            Verdict::Yes => {
                let dose = sentences::off_for(answer, steps);
                let dose =
                    dose.map(|dose| say!(words, GlanceOffForDose, dose = next::step(words, dose, answer.on)));
                let why = match (honey(words, answer), dose) {
                    (Some(honey), Some(dose)) => Some(say!(words, GlanceBoth, one = honey, other = dose)),
                    (honey, dose) => honey.or(dose),
                };
                (why, None)
            }
            Verdict::No => (
                ground.map(|ground| briefly(words, ground)),
                steps.first().map(|step| {
                    let course = ground.and_then(|ground| ground.course);
                    towards_yes(words, answer, course, step)
                }),
            ),
            Verdict::Unknown => (
                ground.map(|ground| briefly(words, ground)),
                settled_by(words, missing).or_else(|| Some(next::step(words, steps.first()?, answer.on))),
            ),
        };
        AtAGlance { why, next, breaches: answer.grounds.iter().filter(is_breach).count() }
    }
}

/// What a yes does not allow.
fn honey(words: &Words, answer: &Answer<'_>) -> Option<String> {
    answer.harvest_barred().map(|bar| match bar.through {
        Some(through) => say!(words, GlanceNoHoneyBefore, day = through.next()),
        None => say!(words, GlanceNoHoneyYet),
    })
}

/// A ground in a few words. Those that are short or rare are said in full.
fn briefly(words: &Words, ground: &Ground<'_>) -> String {
    let Some(course) = ground.course else {
        return match ground.reason {
            Reason::CameWithUnknown { .. } => say!(words, GlanceCameWithUnknown),
            _ => sentences::statement(words, ground),
        };
    };
    let name = named(words, course);
    match &ground.reason {
        Reason::StillIn { .. } => say!(words, GlanceStillIn, name = name),
        Reason::WhereaboutsNotSaid { since, .. } => {
            say!(words, GlanceWhereabouts, name = name, since = since)
        }
        Reason::NotEstablished { topic, days, supers } => {
            let term = term_in_brief(words, *topic);
            if days.is_some() || supers.is_some() {
                say!(words, GlanceNotDocumented, name = name, term = term)
            } else {
                say!(words, GlanceNotKnown, name = name, term = term)
            }
        }
        Reason::WithdrawalRuns { out, days } => {
            let last = sentences::last_running(*out, days.value);
            say!(words, GlanceWithdrawal, name = name, last = last)
        }
        Reason::WaitRuns { out, days } => {
            say!(words, GlanceWait, name = name, last = sentences::last_running(*out, days.value))
        }
        _ => sentences::statement(words, ground),
    }
}

/// The next step, and the first day for supers after it. `course` is the one that the reason named.
fn towards_yes(words: &Words, answer: &Answer<'_>, course: Option<&Course>, step: &Step<'_>) -> String {
    let on = answer.on;
    // Not the end of one period: another may last longer, or leave the day open.
    let first_free = answer.first_free();
    if let (Step::WaitThrough { .. }, FirstFree::OnRecord(free) | FirstFree::OnceOut { free, .. }) =
        (step, first_free)
    {
        return say!(words, GlanceSupersFrom, day = free);
    }
    let said = match step {
        Step::TakeSupersOff { since } => return say!(words, GlanceSupersOff, since = since),
        Step::TakeOut { course: of, earliest, latest } if course.is_some_and(|it| ptr::eq(it, *of)) => {
            take_out(words, earliest, *latest, on)
        }
        Step::TakeOut { .. }
        | Step::GiveDose { .. }
        | Step::WaitUntilSpent { .. }
        | Step::WaitThrough { .. }
        | Step::RecordWhereabouts { .. } => next::step(words, step, on),
    };
    match first_free {
        FirstFree::OnRecord(free) => say!(words, GlanceThenSupers, next = said, day = free),
        FirstFree::OnceOut { free, .. } => say!(words, GlanceSupersOnceOut, next = said, day = free),
        FirstFree::NotKnown => said,
    }
}

fn take_out(words: &Words, earliest: &EarliestOut, latest: Option<Day>, on: Day) -> String {
    let from = earliest.day.known().copied();
    let said = match (from, latest) {
        (_, Some(latest)) if latest < on => say!(words, GlanceTakeOutNow, by = latest),
        (Some(from), Some(latest)) if from == latest => say!(words, GlanceTakeOutOn, day = from),
        (Some(from), Some(latest)) if on < from => {
            say!(words, GlanceTakeOutBetween, from = from, by = latest)
        }
        (_, Some(latest)) => say!(words, GlanceTakeOutBy, by = latest),
        (Some(from), None) => say!(words, GlanceTakeOutFrom, from = from.max(on)),
        (None, None) => say!(words, GlanceTakeOutByLeaflet),
    };
    match (earliest.brood_seen(), earliest.both_days()) {
        (None, Some((absent, present))) if absent < present => {
            say!(words, GlanceWithoutBrood, said = said, day = absent)
        }
        _ => said,
    }
}

/// The one step that settles an unknown. Whoever reads a leaflet is asked for everything on it, so its terms are not named.
fn settled_by(words: &Words, missing: &[Missing<'_>]) -> Option<String> {
    let first = &missing.iter().find(|missing| missing.decides)?.remedy;
    Some(match &first.asks_for {
        AskedFor::Term(_) => say!(words, GlanceReadLeaflet, lots = lots_named(words, &first.lots)),
        AskedFor::FormerKeeper { .. } => say!(words, GlanceAskFormerKeeper),
        AskedFor::LookInside { .. } => say!(words, GlanceLookInside),
        AskedFor::WhereStripsWent { .. } => say!(words, GlanceWhereStripsWent),
        other => next::asked_for(words, other, &first.lots),
    })
}
