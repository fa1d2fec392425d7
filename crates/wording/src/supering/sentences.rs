//! Answers in short sentences for a keeper, each with its dates, without a full stop.

use combclear_domain::Day;
use combclear_domain::basics::calendar::last_blocked_day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{Brood, SupersDuring};
use combclear_domain::facts::history::{BroodSeen, Course, Doses, Doubt};
use combclear_domain::questions::supering::{Answer, FirstFree, Ground, Outcome, Reason, Step, Term};

use super::names::{named, term};
use super::next;
use crate::Words;
use crate::words::say;

/// The index of the ground for the one-sentence answer: for a yes the one of the latest course, which says most;
/// otherwise the first that prevents a yes.
pub(super) fn deciding(answer: &Answer<'_>) -> Option<usize> {
    let decides = |ground: &Ground<'_>| ground.decides && ground.verdict() == answer.verdict;
    match answer.verdict {
        Verdict::Yes => answer.grounds.iter().rposition(decides),
        Verdict::No | Verdict::Unknown => answer.grounds.iter().position(decides),
    }
}

/// The answer in one sentence. `why` is the statement of its ground.
pub(super) fn summary(
    words: &Words,
    answer: &Answer<'_>,
    why: Option<&str>,
    steps: &[Step<'_>],
    first_free: FirstFree,
) -> String {
    let mut said = match (answer.verdict, answer.harvest_barred()) {
        (Verdict::Yes, None) => say!(words, SuperingYes),
        (Verdict::Yes, Some(bar)) => match bar.through {
            Some(through) => say!(words, SuperingYesNoHoneyBefore, day = through.next()),
            None => say!(words, SuperingYesNoHoneyYet),
        },
        (Verdict::No, _) => say!(words, SuperingNo),
        (Verdict::Unknown, _) => say!(words, SuperingNotKnown),
    };
    if let Some(Step::TakeSupersOff { .. }) = steps.first() {
        said = say!(words, SuperingMustComeOff, answer = said);
    }
    if let Some(why) = why {
        said = say!(words, SuperingBecause, answer = said, why = why);
    }
    if answer.verdict == Verdict::Yes
        && let Some(dose) = off_for(answer, steps)
    {
        said = say!(words, SuperingOffForDose, answer = said, dose = next::step(words, dose, answer.on));
    }
    if answer.verdict == Verdict::Yes {
        said
    } else {
        with_first_free(words, said, steps, first_free, answer.on)
    }
}

/// The next dose for which supers must be off again.
pub(super) fn off_for<'s, 'h>(answer: &Answer<'h>, steps: &'s [Step<'h>]) -> Option<&'s Step<'h>> {
    steps.iter().find(
        |step| matches!(step, Step::GiveDose { course, .. } if answer.must_be_off_for_next_dose(course)),
    )
}

fn with_first_free(
    words: &Words,
    answer: String,
    steps: &[Step<'_>],
    first_free: FirstFree,
    on: Day,
) -> String {
    let (said, out) = match first_free {
        FirstFree::NotKnown => return answer,
        FirstFree::OnRecord(day) => return say!(words, SuperingFreeFrom, answer = answer, day = day),
        FirstFree::OnceOut { out, free } if out == free => {
            (say!(words, SuperingFreeOnceOut, answer = answer, out = out), out)
        }
        FirstFree::OnceOut { out, free } => {
            (say!(words, SuperingFreeIfOut, answer = answer, free = free, out = out), out)
        }
    };
    let without_brood = steps.iter().find_map(|step| match step {
        Step::TakeOut { earliest, .. } if earliest.brood_seen().is_none() => {
            let (absent, present) = earliest.both_days()?;
            (absent < present).then_some(absent)
        }
        Step::TakeSupersOff { .. }
        | Step::GiveDose { .. }
        | Step::TakeOut { .. }
        | Step::WaitUntilSpent { .. }
        | Step::RecordWhereabouts { .. }
        | Step::WaitThrough { .. } => None,
    });
    // Nothing comes out on a day that is past.
    match without_brood.map(|day| day.max(on)).filter(|day| *day < out) {
        Some(day) => say!(words, SuperingOrWithoutBrood, answer = said, day = day),
        None => said,
    }
}

/// A ground in one sentence.
pub(super) fn statement(words: &Words, ground: &Ground<'_>) -> String {
    let name = ground.course.map(|course| named(words, course)).unwrap_or_default();
    statement_of(words, ground, &name)
}

/// The same, with the name of its course.
pub(super) fn statement_of(words: &Words, ground: &Ground<'_>, name: &str) -> String {
    let said = match ground.course {
        None => of_colony(words, &ground.reason),
        Some(course) => of_course(words, course, name, ground),
    };
    // Only a breach needs a flag: the sentence itself says whether a ground is met or unknown.
    if ground.outcome == Outcome::Broken && !ground.decides {
        return say!(words, SuperingBreach, said = said);
    }
    said
}

fn of_colony(words: &Words, reason: &Reason<'_>) -> String {
    match reason {
        Reason::ColonyNotRecorded => say!(words, SuperingColonyNotRecorded),
        Reason::NotYetBegun { begun, .. } => say!(words, SuperingNotYetBegun, begun = begun),
        Reason::Ended { on, .. } => say!(words, SuperingEnded, day = on),
        Reason::CameWithUnknown { .. } => say!(words, SuperingCameWithUnknown),
        Reason::RecordsInArchive { through, .. } => say!(words, SuperingRecordsInArchive, through = through),
        Reason::NothingGiven { since: None, .. } => say!(words, SuperingNothingGiven),
        Reason::NothingGiven { since: Some(since), .. } => {
            say!(words, SuperingNothingOnRecordSince, since = since)
        }
        Reason::StillIn { .. }
        | Reason::InWithSupersAllowed { .. }
        | Reason::WhereaboutsNotSaid { .. }
        | Reason::BarredEitherWay { .. }
        | Reason::NothingStaysYetStays { .. }
        | Reason::UsedBeforeFlow { .. }
        | Reason::NotEstablished { .. }
        | Reason::WithdrawalRuns { .. }
        | Reason::WaitRuns { .. }
        | Reason::PeriodsOver { .. }
        | Reason::HarvestBarred { .. }
        | Reason::StayedAtLeast { .. }
        | Reason::StayTurnsOnBrood { .. }
        | Reason::StayedAtMost { .. }
        | Reason::DosesGiven { .. }
        | Reason::DoseOffTime { .. }
        | Reason::SupersWhileIn { .. }
        | Reason::CombsCarryOver { .. }
        | Reason::ReadAfterwards { .. }
        | Reason::LooserThanLeaflet { .. } => String::new(),
    }
}

#[expect(clippy::too_many_lines, reason = "one sentence for each reason, side by side")]
fn of_course(words: &Words, course: &Course, name: &str, ground: &Ground<'_>) -> String {
    match &ground.reason {
        Reason::StillIn { .. } => say!(words, SuperingStillIn, name = name),
        Reason::InWithSupersAllowed { supers } if supers.value == SupersDuring::OnNoHarvest => {
            say!(words, SuperingInNoHoney, name = name)
        }
        Reason::InWithSupersAllowed { .. } => say!(words, SuperingInSupersAllowed, name = name),
        Reason::WhereaboutsNotSaid { since, .. } => {
            say!(words, SuperingWhereaboutsNotSaid, name = name, since = since)
        }
        Reason::BarredEitherWay { doubt: Doubt::NotSaid { since, .. }, .. } => {
            say!(words, SuperingBarredWhereverItWent, name = name, since = since)
        }
        Reason::BarredEitherWay { since, doubt: Doubt::UsedUp } => {
            say!(words, SuperingBarredUsedUpOrNot, name = name, since = since)
        }
        Reason::NothingStaysYetStays { .. } => say!(words, SuperingNothingStaysYetStays, name = name),
        Reason::UsedBeforeFlow { out, flow: Some(flow), .. } => {
            let began = flow.from.max(*out);
            match ground.outcome {
                Outcome::Broken => {
                    let through = flow.last;
                    say!(
                        words,
                        SuperingUsedBeforeFlow,
                        name = name,
                        out = out,
                        began = began,
                        through = through
                    )
                }
                Outcome::Met | Outcome::Unknown | Outcome::Noted => {
                    say!(words, SuperingFlowNamesNoDays, name = name, out = out, begins = began)
                }
            }
        }
        Reason::UsedBeforeFlow { out, flow: None, .. } => {
            say!(words, SuperingFlowNotOnRecord, name = name, out = out)
        }
        Reason::ReadAfterwards { topic, .. } => {
            say!(words, SuperingReadAfterwards, name = name, term = term(words, *topic))
        }
        Reason::NotEstablished { topic, days, supers } => {
            not_established(words, name, *topic, days.map(|fact| fact.value), supers.map(|fact| fact.value))
        }
        Reason::WithdrawalRuns { out, days } => {
            let last = last_running(*out, days.value);
            say!(words, SuperingWithdrawalRuns, name = name, days = days.value, out = out, last = last)
        }
        Reason::WaitRuns { out, days } => {
            let last = last_running(*out, days.value);
            say!(words, SuperingWaitRuns, name = name, days = days.value, out = out, last = last)
        }
        Reason::PeriodsOver { out, withdrawal, wait } => {
            let withdrawal = if course.terms.no_withdrawal_by_label {
                say!(words, SuperingNoWithdrawalByLabel)
            } else {
                say!(words, SuperingWithdrawal, days = withdrawal.value)
            };
            let wait = if course.terms.wait_within_withdrawal {
                say!(words, SuperingNoFurtherWait)
            } else {
                say!(words, SuperingWait, days = wait.value)
            };
            if course.terms.nothing_stays() {
                say!(words, SuperingOverOnceGiven, name = name, withdrawal = withdrawal, wait = wait)
            } else {
                say!(words, SuperingOverOnceOut, name = name, out = out, withdrawal = withdrawal, wait = wait)
            }
        }
        Reason::HarvestBarred { through: Some(day), .. } => {
            say!(words, SuperingNoHoneyThrough, name = name, day = day)
        }
        Reason::HarvestBarred { through: None, .. } => say!(words, SuperingNoHoneyWhileIn, name = name),
        Reason::StayedAtLeast { until, days, brood } => {
            let came = if ground.outcome == Outcome::Broken { "too-early" } else { "long-enough" };
            let said = say!(
                words,
                SuperingStayedAtLeast,
                name = name,
                came = came,
                stayed = until.days_since(course.placed),
                days = days.value,
                least = course.placed.plus(days.value),
            );
            match brood {
                Some(brood) => say!(words, SuperingStayedUnderBrood, said = said, seen = seen(words, brood)),
                None => said,
            }
        }
        Reason::StayTurnsOnBrood { until, shorter, longer } => say!(
            words,
            SuperingStayTurnsOnBrood,
            name = name,
            stayed = until.days_since(course.placed),
            shorter = *shorter,
            longer = *longer,
            until = until,
        ),
        Reason::StayedAtMost { until, days, still_in } => {
            let stayed = until.days_since(course.placed);
            let (days, latest) = (days.value, course.placed.plus(days.value));
            match (ground.outcome, still_in) {
                (Outcome::Met, _) => {
                    say!(words, SuperingOutInTime, name = name, stayed = stayed, days = days)
                }
                (_, true) => say!(words, SuperingOverdue, name = name, latest = latest, days = days),
                (_, false) => {
                    say!(
                        words,
                        SuperingStayedTooLong,
                        name = name,
                        stayed = stayed,
                        days = days,
                        latest = latest
                    )
                }
            }
        }
        Reason::DosesGiven { given, doses } => match (ground.outcome, doses.value.count) {
            (Outcome::Met, doses) => say!(words, SuperingAllDosesGiven, name = name, doses = doses),
            (Outcome::Broken | Outcome::Unknown | Outcome::Noted, doses) => {
                say!(words, SuperingDosesGiven, name = name, given = *given, doses = doses)
            }
        },
        Reason::DoseOffTime { number, on, after, doses } => {
            let Doses { interval_min_days: least, interval_max_days: most, .. } = doses.value;
            let wanted = match (least, most) {
                (Some(least), Some(most)) if least == most => say!(words, Days, days = least),
                (Some(least), Some(most)) => say!(words, SuperingDaysBetween, least = least, most = most),
                (Some(least), None) => say!(words, SuperingDaysAtLeast, days = least),
                (None, Some(most)) => say!(words, SuperingDaysAtMost, days = most),
                (None, None) => say!(words, SuperingAnotherTime),
            };
            let (number, after) = (*number, *after);
            say!(
                words,
                SuperingDoseOffTime,
                name = name,
                number = number,
                day = on,
                after = after,
                wanted = wanted
            )
        }
        Reason::SupersWhileIn { span: Some(span), .. } => match span.off {
            Some(off) => say!(words, SuperingSupersWereOn, name = name, from = span.from, off = off),
            None => say!(words, SuperingSupersAreOn, name = name, from = span.from),
        },
        Reason::SupersWhileIn { span: None, .. } => say!(words, SuperingNoSupersOn, name = name),
        Reason::CombsCarryOver { text } => say!(words, SuperingCombs, name = name, text = *text),
        Reason::LooserThanLeaflet { topic } => {
            say!(words, SuperingLooserThanLeaflet, name = name, term = term(words, *topic))
        }
        Reason::ColonyNotRecorded
        | Reason::NotYetBegun { .. }
        | Reason::Ended { .. }
        | Reason::CameWithUnknown { .. }
        | Reason::RecordsInArchive { .. }
        | Reason::NothingGiven { .. } => String::new(),
    }
}

fn not_established(
    words: &Words,
    name: &str,
    topic: Term,
    days: Option<u16>,
    supers: Option<SupersDuring>,
) -> String {
    let value = match (days, supers) {
        (Some(days), _) => Some(say!(words, Days, days = days)),
        (None, supers) => supers.map(|word| word.as_str().to_owned()),
    };
    match (value, topic) {
        (Some(value), _) => {
            say!(words, SuperingNotDocumented, name = name, term = term(words, topic), value = value)
        }
        (None, Term::UsedUp) => say!(words, SuperingUsedUpNotKnown, name = name),
        (None, Term::Removal) => say!(words, SuperingRemovalNotKnown, name = name),
        (None, _) => say!(words, SuperingTermNotKnown, name = name, term = term(words, topic)),
    }
}

/// The last day of a period that runs.
pub(super) fn last_running(out: Day, days: u16) -> Day {
    last_blocked_day(out, days).unwrap_or(out)
}

/// Brood, as inspected on a day.
pub(super) fn seen(words: &Words, seen: &BroodSeen) -> String {
    match seen.brood {
        Brood::Absent => say!(words, SuperingNoBroodSeen, day = seen.on),
        Brood::Lowest => say!(words, SuperingLowestBroodSeen, day = seen.on),
        Brood::Present => say!(words, SuperingBroodSeen, day = seen.on),
    }
}
