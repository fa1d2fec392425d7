//! Conditions in words: why each came out as it did, what is missing, what would have to change.

use super::reason::{Because, Measure, Origin, ToldBy};
use super::short::days_of;
use super::state::Condition;
use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use crate::facts::history::Lack;
use crate::journal::entry::EntryId;
use crate::rules::leaflet::rule::Need;

use crate::basics::words::{Brood, Ground, SupersDuring};

/// What every answer says of itself.
pub(super) const NOTICE: &str = "An aid to record-keeping: the leaflet on the pack, the prescriber and local law decide. It chooses no medicine for you.";

/// Why a condition came out as it did, in a sentence.
#[expect(clippy::too_many_lines, reason = "one arm for each reason")]
pub(super) fn because(because: &Because) -> String {
    match because {
        Because::NotHere => "the colony is not in the holding on that day".to_owned(),
        Because::Here => "the colony is in the holding".to_owned(),
        Because::ApiaryNotKnown => "it is not on record where the colony stands".to_owned(),
        Because::Moved { on, .. } => format!("it was moved on {on}: ask anew from that day on"),
        Because::HasDirections => "the leaflet has directions for that day".to_owned(),
        Because::NoDirections => "no directions of that day are known".to_owned(),
        Because::NotStated { topic } => {
            format!("the leaflet read here says nothing of {}", topic_words(*topic))
        }
        Because::NotDocumented { confidence } => match confidence {
            Confidence::SecondHand => {
                "it would hold, but the value was read in another text than this country's document"
                    .to_owned()
            }
            Confidence::Unconfirmed | Confidence::Document => {
                "it would hold, but nobody has read the value in a document".to_owned()
            }
        },
        Because::StayNotDocumented { lacks, .. } => {
            format!("it would be out before the flow, but {} was not read in a document", lack_words(lacks))
        }
        Because::MayStayLonger { lacks, .. } => {
            format!(
                "it would hold for the days that are stated, but {} was not read in a document",
                lack_words(lacks)
            )
        }
        Because::NotInForce => "the rule is not in force on that day".to_owned(),
        Because::NoSupersOn => "no honey supers are on".to_owned(),
        Because::SupersOn { since, value, .. } => match value {
            SupersDuring::Off => format!("honey supers are on since {since}"),
            SupersDuring::On | SupersDuring::OnNoHarvest => {
                format!("honey supers are on since {since}, and may be")
            }
        },
        Because::NoFlow { next: None } => "no flow on record while it would be in".to_owned(),
        Because::NoFlow { next: Some((next, _)) } => {
            format!("no flow while it would be in; the next begins on {next} at the earliest")
        }
        Because::InFlow { from, .. } => format!("it would be in during the flow that begins by {from}"),
        Because::PerhapsInFlow { early, late, .. } if early == late => {
            format!("the flow that began on {early} may go on: its end is not on record")
        }
        Because::PerhapsInFlow { early, late, .. } => {
            format!("it might be in during the flow that begins between {early} and {late}")
        }
        Because::FlowTurnsOnBrood { without, with, .. } => format!(
            "without brood it may be out on {without}, before the flow; if brood is seen while it is in, not before {with}"
        ),
        Because::FlowBeforeStayIsKnown { from, lacks, .. } => format!(
            "{} is not stated, and a flow may begin on {from} while it is still in",
            lack_words(lacks)
        ),
        Because::RightBeforeFlow { out, from, .. } => {
            format!("it would be out on {out}, right before the flow that begins by {from}")
        }
        Because::PerhapsBeforeFlow { out, from, .. } => format!(
            "the leaflet forbids the time right before a flow and names no days: it would be out on {out}, the flow begins by {from}"
        ),
        Because::NoFlowOnRecordSince { out } => {
            format!(
                "it must not be used right before a flow, and none is on record from {out} on, when it would be out"
            )
        }
        Because::FlowsNotRecorded { year } => format!("no nectar flow of {year} is on record"),
        Because::FlowAllowed => "it may be used in a flow".to_owned(),
        Because::AfterLastFlow { last } => {
            format!("the last flow on record ended on {last}, and no supers are on")
        }
        Because::FlowStillToCome { from, .. } => format!("the flow of {from} is still to come, or not over"),
        Because::AlreadyIn { medicine, placed, .. } => format!("`{medicine}` placed on {placed} is in"),
        Because::PerhapsIn { medicine, placed, stays: true, .. } => {
            format!(
                "`{medicine}` placed on {placed} may be over by then, but is not on record as out or ended"
            )
        }
        Because::PerhapsIn { medicine, placed, stays: false, .. } => {
            format!("a further dose of the course of `{medicine}` begun on {placed} may still be given")
        }
        Because::CameWithUnknown { since, .. } => {
            format!("nobody knows what was given to it or was in it when it came on {since}")
        }
        Because::BesideIsNotStated { medicine, placed, .. } => format!(
            "`{medicine}` placed on {placed} is in, and no leaflet says whether the two may be in together"
        ),
        Because::NothingIn => "no such medicine is in".to_owned(),
        Because::Feeder { seen, .. } => format!("a feeder was on, seen on {seen}"),
        Because::NoFeeder { seen, .. } => format!("no feeder was on, seen on {seen}"),
        Because::FeederNotSeen => "it is not on record whether a feeder is on".to_owned(),
        Because::BroodSeen { brood, on, .. } => match brood {
            Brood::Absent => format!("no brood seen on {on}"),
            Brood::Lowest => format!("brood at its lowest seen on {on}"),
            Brood::Present => format!("brood seen on {on}"),
        },
        Because::BroodNotSeen { last: None } => "no sight of the brood is on record".to_owned(),
        Because::BroodNotSeen { last: Some(last) } => {
            format!("the brood was last seen on {last}, too long before that day to tell")
        }
        Because::Counted { what, count, on, .. } => format!("{count} {what} on {on}"),
        Because::NotCounted { what, last: None } => format!("no count of {what} is on record"),
        Because::NotCounted { what, last: Some((count, on)) } => {
            format!("{count} {what} on {on}, which does not tell for that day")
        }
        Because::Courses { given, most, year, last } => {
            let last = last.map(|last| format!(", the last begun on {last}")).unwrap_or_default();
            format!("{given} of at most {most} in the {year}{last}")
        }
        Because::CoursesTurnOnYear { in_calendar_year, in_twelve_months, most } => format!(
            "{in_calendar_year} of at most {most} in the calendar year, but {in_twelve_months} in twelve months; the leaflet does not say which counts"
        ),
        Because::SameBroodlessPeriod { last, seen_absent: true } => {
            format!("given on {last}, and no brood seen since")
        }
        Because::SameBroodlessPeriod { last, seen_absent: false } => {
            format!("given on {last}, and the brood was not looked at since")
        }
        Because::BroodSince { last, seen } => format!("given on {last}; brood was seen since, on {seen}"),
        Because::NoCourseBefore => "no course of it before that would count".to_owned(),
        Because::SinceLast { ended, least, .. } => {
            format!("the last course ended on {ended}; {} must lie between", days_of(*least))
        }
        Because::LastNotEnded { placed, .. } => format!("the course begun on {placed} has no end on record"),
        Because::InSeason { from, to, inside: true } => format!("within {from} to {to} of the year"),
        Because::InSeason { from, to, inside: false } => format!("outside {from} to {to} of the year"),
        Because::ClassRepeats { class, medicine, placed } => {
            format!(
                "`{medicine}` given on {placed} is of the same class, {class}; a change of class slows resistance but does not rule it out"
            )
        }
        Because::ClassDiffers { class } => format!("none of the last two courses is of its class, {class}"),
        Because::ClassNotKnown { medicine, placed } => {
            format!("the class of `{medicine}` given on {placed} is not known")
        }
        Because::Power { need, has, by } => {
            let wanted = if *need == Need::Battery { "a 12 V battery" } else { "mains or a generator" };
            match has {
                Some(has) => format!("it needs {wanted}; power there: {}{}", has.as_str(), if_asked(*by)),
                None => format!("it needs {wanted}; the power there is not on record"),
            }
        }
        Because::Access { has: Some(has), by, on } => {
            let how = match has {
                crate::basics::words::Access::Vehicle => "can be reached by vehicle",
                crate::basics::words::Access::OnFoot => "can be reached on foot",
                crate::basics::words::Access::None => "cannot be reached",
            };
            let when =
                if *has == crate::basics::words::Access::None { format!(" on {on}") } else { String::new() };
            format!("the apiary {how}{when}{}", if_asked(*by))
        }
        Because::Access { has: None, on, .. } => {
            format!("it is not on record whether the apiary can be reached on {on}")
        }
        Because::Ground { has: Some(ground), by } => {
            let state = match ground {
                Ground::Dry => "dry",
                Ground::Wet => "wet",
                Ground::Flooded => "flooded",
            };
            format!("the ground at the stands is {state}{}", if_asked(*by))
        }
        Because::Ground { has: None, .. } => "it is not on record whether the ground is dry".to_owned(),
        Because::Warm { measure, lowest, highest, origin, .. } => {
            let what = measured(*measure);
            let values =
                if lowest == highest { format!("{lowest}") } else { format!("{lowest} to {highest}") };
            format!("{what} {values} °C, {}", origin_words(*origin))
        }
        Because::OutOfBounds { measure: Measure::Mean, value, origin, .. } => {
            format!("{} {value} °C, {}", measured(Measure::Mean), origin_words(*origin))
        }
        Because::OutOfBounds { measure, on, value, origin, .. } => {
            format!("{} {value} °C on {on}, {}", measured(*measure), origin_words(*origin))
        }
        Because::NoTemperature { first, .. } => format!("no temperature of {first} is on record"),
        Because::StayNotKnown { lacks } if lacks.is_empty() => {
            "how long it stays is not stated, so the days that count are not known".to_owned()
        }
        Because::StayNotKnown { lacks } => {
            format!("{} is not stated, so the days that count are not known", lack_words(lacks))
        }
    }
}

const fn measured(measure: Measure) -> &'static str {
    match measure {
        Measure::Maximum => "highest of the day",
        Measure::Mean => "mean over the stay",
        Measure::SomeMoment => "at some moment of the day",
    }
}

const fn origin_words(origin: Origin) -> &'static str {
    match origin {
        Origin::Measured => "measured",
        Origin::Forecast => "as forecast",
        Origin::UsualYears => "as in usual years",
    }
}

const fn if_asked(by: Option<ToldBy>) -> &'static str {
    match by {
        Some(ToldBy::Question) => " (as assumed in the question)",
        Some(ToldBy::Entry(_)) | None => "",
    }
}

/// The entries that were read.
#[expect(clippy::wildcard_enum_match_arm, reason = "the others name no entry")]
pub(super) fn entries(because: &Because) -> Vec<EntryId> {
    let entry = match because {
        Because::SupersOn { entry, .. }
        | Because::InFlow { entry, .. }
        | Because::RightBeforeFlow { entry, .. }
        | Because::PerhapsBeforeFlow { entry, .. }
        | Because::PerhapsInFlow { entry, .. }
        | Because::FlowTurnsOnBrood { entry, .. }
        | Because::FlowBeforeStayIsKnown { entry, .. }
        | Because::NoFlow { next: Some((_, entry)) }
        | Because::FlowStillToCome { entry, .. }
        | Because::AlreadyIn { entry, .. }
        | Because::PerhapsIn { entry, .. }
        | Because::CameWithUnknown { entry, .. }
        | Because::Moved { entry, .. }
        | Because::BesideIsNotStated { entry, .. }
        | Because::Feeder { entry, .. }
        | Because::NoFeeder { entry, .. }
        | Because::BroodSeen { entry, .. }
        | Because::Counted { entry, .. }
        | Because::LastNotEnded { entry, .. } => Some(*entry),
        Because::OutOfBounds { entry, .. } | Because::Warm { entry, .. } => *entry,
        Because::Power { by, .. } | Because::Access { by, .. } | Because::Ground { by, .. } => match by {
            Some(ToldBy::Entry(entry)) => Some(*entry),
            Some(ToldBy::Question) | None => None,
        },
        _ => None,
    };
    entry.into_iter().collect()
}

/// What would have to change for a broken condition to hold.
#[expect(
    clippy::wildcard_enum_match_arm,
    reason = "of the others, what is said says what would have to change"
)]
pub(super) fn change(because: &Because) -> String {
    match because {
        Because::NotHere => "the colony would have to be in the holding".to_owned(),
        Because::SupersOn { since, .. } => format!("take off the honey supers that are on since {since}"),
        Because::RightBeforeFlow { from, .. } => {
            format!(
                "start so early that it is out long before {from}, when the flow may begin, or after the flow"
            )
        }
        Because::InFlow { early, .. } => {
            format!(
                "start so early that it is out before {early}, when the flow may begin, or after the flow"
            )
        }
        Because::FlowStillToCome { from, .. } => {
            format!("wait until after the harvest of the flow of {from}")
        }
        Because::AlreadyIn { medicine, placed, .. } => {
            format!("wait until `{medicine}` placed on {placed} may come out, and take it out")
        }
        Because::Feeder { .. } => "take the feeder off".to_owned(),
        Because::BroodSeen { brood: Brood::Absent, .. } => "wait until there is brood".to_owned(),
        Because::BroodSeen { .. } => "wait for a time without brood, or make one".to_owned(),
        Because::Counted { what, .. } if *what == "brood boxes" => "take brood boxes off".to_owned(),
        Because::Counted { .. } => "strengthen or unite the colony first".to_owned(),
        Because::Courses { year, .. } => format!("wait for the next {year}"),
        Because::SameBroodlessPeriod { .. } => "wait for the next time without brood".to_owned(),
        Because::SinceLast { ended, least, .. } => {
            format!("wait until after {}", ended.plus(*least))
        }
        Because::InSeason { from, .. } => format!("wait for {from} of the year"),
        Because::Power { need: Need::Battery, .. } => "bring a 12 V battery".to_owned(),
        Because::Power { .. } => "have mains or a generator there".to_owned(),
        Because::Access { on, .. } => format!("the apiary would have to be reached on {on}"),
        Because::Ground { .. } => "wait until the ground at the stands is dry".to_owned(),
        Because::OutOfBounds { on, measure, .. } => match measure {
            Measure::Mean => "wait for other weather".to_owned(),
            Measure::Maximum | Measure::SomeMoment => format!("wait for other weather than on {on}"),
        },
        other => self::because(other),
    }
}

/// What a condition on a need asks for.
pub(super) fn need(condition: &Condition) -> &'static str {
    match (condition.about, condition.runs.first().map(|run| &run.because)) {
        (_, Some(Because::Power { need: Need::Battery, .. })) => "a 12 V battery",
        (_, Some(Because::Power { .. })) => "mains or a generator",
        ("ground", _) => "dry ground at the stands",
        _ => "a later visit",
    }
}

/// What is not known of how a course runs, in words.
pub(super) fn lack_words(lacks: &[Lack]) -> String {
    let words = |lack: &Lack| match lack {
        Lack::Doses => "how many doses make a course",
        Lack::DoseInterval => "how many days lie between doses",
        Lack::Removal => "whether it has to come out",
        Lack::StayMin => "how long it must stay",
        Lack::StayMinWithBrood => "how long it must stay with brood",
        Lack::StayMax => "how long it may stay",
    };
    lacks.iter().map(words).collect::<Vec<_>>().join(" and ")
}

/// A topic in words.
#[expect(clippy::wildcard_enum_match_arm, reason = "the others are named as they are written")]
pub(super) fn topic_words(topic: Topic) -> String {
    match topic {
        Topic::SupersDuring => "supers while it is in".to_owned(),
        Topic::FlowDuring => "nectar flows".to_owned(),
        Topic::FlowBefore => "the time right before a nectar flow".to_owned(),
        Topic::Withdrawal => "the withdrawal period".to_owned(),
        Topic::WaitAfterRemoval => "the wait before supers".to_owned(),
        other => format!("the {}", other.as_str().replace('_', " ")),
    }
}
