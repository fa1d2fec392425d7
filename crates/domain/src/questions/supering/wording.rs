//! Answers in words: short sentences a keeper understands, each with its dates.

use super::grounds::{Ground, Outcome, Reason, Term};
use super::steps::Step;
use super::{Answer, FirstFree};
use crate::basics::calendar::{Day, last_blocked_day};
use crate::basics::verdict::Verdict;
use crate::basics::words::SupersDuring;
use crate::facts::history::{BroodSeen, Course, Doses, Doubt, EarliestOut};
use crate::rules::leaflet::Release;

/// Said wherever an answer is given.
pub const NOTICE: &str =
    "An aid to record-keeping: the leaflet on the pack, the prescriber and local law decide.";

/// The answer in one sentence.
pub(super) fn summary(answer: &Answer<'_>, first_free: FirstFree) -> String {
    let what = match (answer.verdict, answer.harvest_barred()) {
        (Verdict::Yes, None) => "Supers may go on".to_owned(),
        (Verdict::Yes, Some(bar)) => {
            let until = bar.through.map_or_else(
                || "yet, and from when on is not known".to_owned(),
                |through| format!("before {}", through.next()),
            );
            format!("Supers may stay on, but no honey may be taken {until}")
        }
        (Verdict::No, _) => "No supers".to_owned(),
        (Verdict::Unknown, _) => "Not known whether supers may go on".to_owned(),
    };
    let now = match answer.steps().first() {
        Some(Step::TakeSupersOff { .. }) => " (and those that are on must come off)",
        _ => "",
    };
    let mut deciding =
        answer.grounds.iter().filter(|ground| ground.decides && ground.verdict() == answer.verdict);
    // Of a yes the latest course says most; of anything else the first that stands in the way.
    let why = if answer.verdict == Verdict::Yes { deciding.next_back() } else { deciding.next() };
    let why = why.map(|ground| format!(": {}", statement(ground))).unwrap_or_default();
    format!("{what}{now}{why}{}", free_words(answer, first_free))
}

fn free_words(answer: &Answer<'_>, first_free: FirstFree) -> String {
    let without_brood = answer.steps().iter().find_map(|step| match step {
        Step::TakeOut { earliest, .. } if earliest.brood_seen.is_none() => {
            earliest.brood_absent_or_lowest.filter(|day| Some(*day) < earliest.day)
        }
        Step::TakeSupersOff { .. }
        | Step::GiveDose { .. }
        | Step::TakeOut { .. }
        | Step::WaitUntilSpent { .. }
        | Step::RecordWhereabouts { .. }
        | Step::WaitThrough { .. } => None,
    });
    let without_brood =
        without_brood.map(|day| format!(", or on {day} if there is no brood")).unwrap_or_default();
    match (answer.verdict, first_free) {
        (Verdict::Yes, _) | (_, FirstFree::NotKnown) => String::new(),
        (_, FirstFree::OnRecord(day)) => format!("; free from {day}"),
        (_, FirstFree::OnceOut { out, free }) if out == free => {
            format!("; free from the day all is out, {out} at the earliest{without_brood}")
        }
        (_, FirstFree::OnceOut { out, free }) => {
            format!("; free from {free} if all is out on {out}{without_brood}")
        }
    }
}

/// A ground in one sentence, without full stop.
pub(super) fn statement(ground: &Ground<'_>) -> String {
    let said = match ground.course {
        None => of_colony(&ground.reason),
        Some(course) => of_course(course, ground),
    };
    // Only the breach needs a flag: whether a ground is met or unknown, its sentence says itself.
    if ground.outcome == Outcome::Broken && !ground.decides { format!("breach: {said}") } else { said }
}

fn of_colony(reason: &Reason<'_>) -> String {
    match reason {
        Reason::ColonyNotRecorded => "no such colony is in the record".to_owned(),
        Reason::NotYetBegun { begun, .. } => format!("the colony came into the record only on {begun}"),
        Reason::Ended { on, .. } => format!("the colony ended on {on}"),
        Reason::CameWithUnknown { .. } => {
            "it is not known what medicine was in the colony when it came into the record".to_owned()
        }
        Reason::NothingGiven { .. } => "no medicine was given by this day".to_owned(),
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
fn of_course(course: &Course, ground: &Ground<'_>) -> String {
    let name = named(course);
    match &ground.reason {
        Reason::StillIn { .. } => {
            format!("{name} is still in by the record, and honey supers stay off while it is")
        }
        Reason::InWithSupersAllowed { supers } => {
            let but =
                if supers.value == SupersDuring::OnNoHarvest { ", but no honey may be taken" } else { "" };
            format!("{name} is in, and honey supers may be on meanwhile{but}")
        }
        Reason::WhereaboutsNotSaid { since, .. } => {
            format!("nobody recorded where {name} went when the colony was split or united on {since}")
        }
        Reason::BarredEitherWay { since, doubt } => {
            let why = match doubt {
                Doubt::NotSaid { since, .. } => {
                    format!("nobody recorded where it went when the colony was split or united on {since}")
                }
                Doubt::UsedUp => format!("it may be used up since {since}"),
            };
            format!("{name} bars supers whether it is in or out: {why}")
        }
        Reason::NothingStaysYetStays { .. } => format!(
            "{name}: it was stated that nothing stays in the hive, yet a least stay is known; one of the two is wrong"
        ),
        Reason::UsedBeforeFlow { out, flow: Some(flow), .. } => match ground.outcome {
            Outcome::Broken => format!(
                "{name} must not be used right before a nectar flow: it was in until {out}, a flow began on {}, and supers \
                 stay off through {}",
                flow.from.max(*out),
                flow.last
            ),
            Outcome::Met | Outcome::Unknown | Outcome::Noted => format!(
                "{name} must not be used right before a nectar flow, and the leaflet names no days: it was in until {out}, a \
                 flow begins on {}",
                flow.from.max(*out)
            ),
        },
        Reason::UsedBeforeFlow { out, flow: None, .. } => format!(
            "{name} must not be used right before a nectar flow: it was in until {out}, and no flow is on record since"
        ),
        Reason::ReadAfterwards { topic, .. } => format!(
            "{name}: a looser {} was read after it was given; it does not count for it, unless the entry that is wrong is \
             corrected",
            topic_words(*topic)
        ),
        Reason::NotEstablished { topic, days, supers } => {
            not_established(&name, *topic, days.map(|d| d.value), supers.map(|s| s.value))
        }
        Reason::WithdrawalRuns { out, days } => running(&name, "withdrawal period", *out, days.value),
        Reason::WaitRuns { out, days } => running(&name, "wait before supers", *out, days.value),
        Reason::PeriodsOver { out, withdrawal, wait } => {
            let wait = match (course.terms.wait_within_withdrawal, wait.value) {
                (true, _) => "no further wait".to_owned(),
                (false, days) => format!("wait {}", days_words(days)),
            };
            let withdrawal = if course.terms.no_withdrawal_by_label {
                "no withdrawal period by the label".to_owned()
            } else {
                format!("withdrawal {}", days_words(withdrawal.value))
            };
            let periods = format!("{withdrawal}, {wait}");
            match course.terms.release() {
                Some(Release::Single) => format!("{name}: nothing of it bars supers any more ({periods})"),
                _ => format!("{name} is out since {out}, and nothing of it bars supers any more ({periods})"),
            }
        }
        Reason::HarvestBarred { through: Some(day), .. } => {
            format!("{name}: no honey may be taken through {day}")
        }
        Reason::HarvestBarred { through: None, .. } => {
            format!("{name}: no honey may be taken while it is in")
        }
        Reason::StayedAtLeast { until, days, brood } => {
            let stayed = until.days_since(course.placed);
            let least = course.placed.plus(days.value);
            let seen = brood.map(|seen| format!(", {}", seen_words(&seen))).unwrap_or_default();
            let verb =
                if ground.outcome == Outcome::Broken { "came out too early" } else { "stayed long enough" };
            format!("{name} {verb}: {stayed} of at least {} days, not before {least}{seen}", days.value)
        }
        Reason::StayTurnsOnBrood { until, shorter, longer } => {
            let stayed = until.days_since(course.placed);
            format!(
                "{name} stayed {stayed} days; whether {shorter} or {longer} were needed turns on brood, and none was \
                 recorded by {until}"
            )
        }
        Reason::StayedAtMost { until, days, still_in } => {
            let stayed = until.days_since(course.placed);
            let latest = course.placed.plus(days.value);
            match (ground.outcome, still_in) {
                (Outcome::Met, _) => {
                    format!("{name} came out in time: {stayed} of at most {} days", days.value)
                }
                (_, true) => format!(
                    "{name} is overdue: it had to be out on {latest}, {} days after placing",
                    days.value
                ),
                (_, false) => {
                    format!("{name} stayed too long: {stayed} of at most {} days, until {latest}", days.value)
                }
            }
        }
        Reason::DosesGiven { given, doses } => {
            let of = doses.value.count;
            match ground.outcome {
                Outcome::Met if of == 1 => format!("{name}: its one dose was given"),
                Outcome::Met => format!("{name}: all {of} doses were given"),
                Outcome::Broken | Outcome::Unknown | Outcome::Noted => {
                    format!("{name}: {given} of {of} doses were given")
                }
            }
        }
        Reason::DoseOffTime { number, on, after, doses } => {
            let Doses { interval_min_days: least, interval_max_days: most, .. } = doses.value;
            let wanted = match (least, most) {
                (Some(least), Some(most)) if least == most => days_words(least),
                (Some(least), Some(most)) => format!("{least} to {most} days"),
                (Some(least), None) => format!("at least {}", days_words(least)),
                (None, Some(most)) => format!("at most {}", days_words(most)),
                (None, None) => "another time".to_owned(),
            };
            format!("{name}: dose {number} on {on} came {after} days after the one before, not {wanted}")
        }
        Reason::SupersWhileIn { span: Some(span), .. } => {
            let off = span.off.map_or_else(|| "are still on".to_owned(), |off| format!("came off {off}"));
            format!(
                "honey supers were put on {} and {off}, while {name} was in: their honey is not for people",
                span.from
            )
        }
        Reason::SupersWhileIn { span: None, .. } => format!("no honey supers were on while {name} was in"),
        Reason::CombsCarryOver { text } => format!("{name}, the combs: {text}"),
        Reason::LooserThanLeaflet { topic } => format!(
            "{name}: the stated {} is looser than the documented leaflet; check the pack again",
            topic_words(*topic)
        ),
        Reason::ColonyNotRecorded
        | Reason::NotYetBegun { .. }
        | Reason::Ended { .. }
        | Reason::CameWithUnknown { .. }
        | Reason::NothingGiven { .. } => String::new(),
    }
}

fn not_established(name: &str, topic: Term, days: Option<u16>, supers: Option<SupersDuring>) -> String {
    let value = days.map(days_words).or_else(|| supers.map(|word| word.as_str().to_owned()));
    let what = topic_words(topic);
    match value {
        Some(value) => format!("{name}: the {what} ({value}) is not documented, so no yes can rest on it"),
        None if topic == Term::UsedUp => format!("{name}: whether it is used up by now is not established"),
        None if topic == Term::Removal => {
            format!("{name}: whether it has to be taken out is not established, so it may be in or used up")
        }
        None => format!("{name}: the {what} is not known"),
    }
}

fn running(name: &str, period: &str, out: Day, days: u16) -> String {
    let last = last_blocked_day(out, days).unwrap_or(out);
    format!("the {period} of {name} runs: {days} days after {out}, last blocked day {last}")
}

/// The course by pack name and first day.
pub(crate) fn named(course: &Course) -> String {
    let pack = if course.pack_name.is_empty() { course.medicine.as_str() } else { &course.pack_name };
    let verb = if course.terms.release() == Some(Release::Single) { "given" } else { "placed" };
    format!("{pack} {verb} {}", course.placed)
}

fn days_words(days: u16) -> String {
    if days == 1 { "1 day".to_owned() } else { format!("{days} days") }
}

pub(crate) fn topic_words(topic: Term) -> &'static str {
    match topic {
        Term::SupersDuring => "rule on supers while it is in",
        Term::Withdrawal => "withdrawal period",
        Term::Wait => "wait between removal and supers",
        Term::Removal => "rule on taking it out",
        Term::UsedUp => "time after which it is used up",
        Term::StayMin => "least stay",
        Term::StayMax => "longest stay",
        Term::FlowBefore => "rule on the time right before a nectar flow",
    }
}

fn seen_words(seen: &BroodSeen) -> String {
    let what = match seen.brood {
        crate::basics::words::Brood::Absent => "no brood",
        crate::basics::words::Brood::Lowest => "brood at its lowest",
        crate::basics::words::Brood::Present => "brood",
    };
    format!("{what} seen on {}", seen.on)
}

/// A step in one sentence, without full stop.
pub(super) fn step(step: &Step<'_>, on: Day) -> String {
    match step {
        Step::TakeSupersOff { since } => {
            format!("take the honey supers off now; on since {since}; keep their honey from people")
        }
        Step::RecordWhereabouts { course, since } => format!(
            "look for {} and record it as out, or correct the entry of {since} to say where the strips went",
            named(course)
        ),
        Step::GiveDose { course, number, of, from, by } => {
            let when = match (from, by) {
                (_, Some(by)) if *by < on => format!("it was due by {by}"),
                (Some(from), Some(by)) if from == by => format!("on {from}"),
                (Some(from), Some(by)) => format!("from {from}, by {by}"),
                (Some(from), None) => format!("from {from}"),
                (None, Some(by)) => format!("by {by}"),
                (None, None) => "as the leaflet says".to_owned(),
            };
            format!("give dose {number} of {of} of {}: {when}", named(course))
        }
        Step::TakeOut { course, earliest, latest } => {
            format!(
                "take out {}: {}{}",
                named(course),
                earliest_words(earliest, on),
                latest_words(*latest, on)
            )
        }
        Step::WaitUntilSpent { course, spent } => {
            format!("wait for {}: it is used up on {spent}, and nothing has to be taken out", named(course))
        }
        Step::WaitThrough { course, last } => {
            format!("wait for {}: first free day {}", named(course), last.next())
        }
    }
}

fn earliest_words(earliest: &EarliestOut, on: Day) -> String {
    let Some(day) = earliest.day else { return "no least stay is stated".to_owned() };
    let left = day.days_since(on);
    let ahead = match left {
        ..=0 => format!("may come out since {day}"),
        1 => format!("not before {day}, tomorrow"),
        _ => format!("not before {day}, in {left} days"),
    };
    match (earliest.brood_seen, earliest.brood_absent_or_lowest, earliest.brood_present) {
        (Some(seen), _, _) => format!("{ahead} ({})", seen_words(&seen)),
        (None, Some(absent), Some(present)) => {
            format!(
                "{ahead}; no brood is on record: {absent} without brood, {present} with; the later holds until brood is recorded"
            )
        }
        _ => ahead,
    }
}

fn latest_words(latest: Option<Day>, on: Day) -> String {
    match latest {
        Some(latest) if latest < on => format!("; it had to be out by {latest}"),
        Some(latest) => format!("; must be out by {latest}"),
        None => String::new(),
    }
}
