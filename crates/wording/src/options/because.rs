//! Why a condition is met, broken or unknown, in words.

use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::topic::Topic;
use combclear_domain::basics::words::Access;
use combclear_domain::questions::options::{Because, Counting, Measure, Origin, Term, ToldBy, Within};
use combclear_domain::rules::leaflet::rule::Need;

use crate::Words;
use crate::pieces;
use crate::supering::question;
use crate::words::say;

/// Why a condition is met, broken or unknown, in a sentence.
#[expect(clippy::too_many_lines, reason = "one arm for each reason")]
pub(super) fn because(words: &Words, because: &Because) -> String {
    match because {
        Because::NotHere => say!(words, OptionsNotHere),
        Because::Here => say!(words, OptionsHere),
        Because::ApiaryNotKnown => say!(words, OptionsApiaryNotKnown),
        Because::Moved { on, .. } => say!(words, OptionsMoved, on = on),
        Because::HasDirections => say!(words, OptionsHasDirections),
        Because::NoDirections => say!(words, OptionsNoDirections),
        Because::NotStated { topic: of } => say!(words, OptionsNotStated, topic = topic(words, *of)),
        Because::NotDocumented { confidence } => {
            say!(words, OptionsNotDocumented, confidence = confidence.as_str())
        }
        Because::StayNotDocumented { lacks: of, .. } => {
            say!(words, OptionsStayNotDocumented, lacks = lacks(words, of))
        }
        Because::MayStayLonger { lacks: of, .. } => {
            say!(words, OptionsMayStayLonger, lacks = lacks(words, of))
        }
        Because::NotInForce => say!(words, OptionsNotInForce),
        Because::NoSupersOn => say!(words, OptionsNoSupersOn),
        Because::SupersOn { since, value, .. } => {
            say!(words, OptionsSupersOn, since = since, value = value.as_str())
        }
        Because::NoFlow { next: None } => say!(words, OptionsNoFlow),
        Because::NoFlow { next: Some((next, _)) } => say!(words, OptionsNoFlowUntil, next = next),
        Because::InFlow { from, .. } => say!(words, OptionsInFlow, from = from),
        Because::PerhapsInFlow { early, late, .. } if early == late => {
            say!(words, OptionsFlowWithoutEnd, from = early)
        }
        Because::PerhapsInFlow { early, late, .. } => {
            say!(words, OptionsPerhapsInFlow, early = early, late = late)
        }
        Because::FlowTurnsOnBrood { without, with, .. } => {
            say!(words, OptionsFlowTurnsOnBrood, without = without, with = with)
        }
        Because::FlowBeforeStayIsKnown { from, lacks: of, .. } => {
            say!(words, OptionsFlowBeforeStayIsKnown, lacks = lacks(words, of), from = from)
        }
        // A flow that is on may go on.
        Because::RightBeforeFlow { out, from, .. } if from <= out => {
            say!(words, OptionsOutInFlow, out = out, from = from)
        }
        Because::RightBeforeFlow { out, from, .. } => {
            say!(words, OptionsRightBeforeFlow, out = out, from = from)
        }
        Because::PerhapsBeforeFlow { out, from, .. } if from <= out => {
            say!(words, OptionsPerhapsOutInFlow, out = out, from = from)
        }
        Because::PerhapsBeforeFlow { out, from, .. } => {
            say!(words, OptionsPerhapsBeforeFlow, out = out, from = from)
        }
        Because::NoFlowOnRecordSince { out } => say!(words, OptionsNoFlowOnRecordSince, out = out),
        Because::FlowsNotRecorded { year } => {
            say!(words, OptionsFlowsNotRecorded, year = year.to_string())
        }
        Because::FlowAllowed => say!(words, OptionsFlowAllowed),
        Because::AfterLastFlow { last } => say!(words, OptionsAfterLastFlow, last = last),
        Because::FlowStillToCome { from, .. } => say!(words, OptionsFlowStillToCome, from = from),
        Because::AlreadyIn { medicine, placed, .. } => {
            say!(words, OptionsAlreadyIn, medicine = &*pieces::medicine(words, medicine), placed = placed)
        }
        Because::PerhapsIn { medicine, placed, stays: true, .. } => {
            say!(words, OptionsPerhapsIn, medicine = &*pieces::medicine(words, medicine), placed = placed)
        }
        Because::PerhapsIn { medicine, placed, stays: false, .. } => {
            say!(
                words,
                OptionsPerhapsFurtherDose,
                medicine = &*pieces::medicine(words, medicine),
                placed = placed
            )
        }
        Because::CameWithUnknown { since, .. } => say!(words, OptionsCameWithUnknown, since = since),
        Because::RecordsInArchive { through, .. } => say!(words, SuperingRecordsInArchive, through = through),
        Because::BesideIsNotStated { medicine, placed, .. } => {
            say!(
                words,
                OptionsBesideIsNotStated,
                medicine = &*pieces::medicine(words, medicine),
                placed = placed
            )
        }
        Because::NothingIn => say!(words, OptionsNothingIn),
        Because::Feeder { seen, .. } => say!(words, OptionsFeeder, seen = seen),
        Because::NoFeeder { seen, .. } => say!(words, OptionsNoFeeder, seen = seen),
        Because::FeederNotSeen => say!(words, OptionsFeederNotSeen),
        Because::BroodSeen { brood, on, .. } => {
            say!(words, OptionsBroodSeen, brood = brood.as_str(), on = on)
        }
        Because::BroodNotSeen { last: None } => say!(words, OptionsBroodNeverSeen),
        Because::BroodNotSeen { last: Some(last) } => {
            say!(words, OptionsBroodSeenTooLongAgo, last = last)
        }
        Because::Counted { what, count, on, .. } => {
            say!(words, OptionsCounted, count = *count, what = counting_word(*what), on = on)
        }
        Because::NotCounted { what, last: None } => {
            say!(words, OptionsNeverCounted, what = counting(words, *what))
        }
        Because::NotCounted { what, last: Some((count, on)) } => {
            say!(words, OptionsCountDoesNotTell, count = *count, what = counting_word(*what), on = on)
        }
        Because::Courses { given, most, within: of, last: None } => {
            say!(words, OptionsCoursesNoneBefore, given = *given, most = *most, within = within(words, *of))
        }
        Because::Courses { given, most, within: of, last: Some(last) } => {
            say!(
                words,
                OptionsCourses,
                given = *given,
                most = *most,
                within = within(words, *of),
                last = last
            )
        }
        Because::CoursesTurnOnYear { in_calendar_year, in_twelve_months, most } => say!(
            words,
            OptionsCoursesTurnOnYear,
            in_calendar_year = *in_calendar_year,
            in_twelve_months = *in_twelve_months,
            most = *most
        ),
        Because::SameBroodlessPeriod { last, seen_absent: true } => {
            say!(words, OptionsNoBroodSince, last = last)
        }
        Because::SameBroodlessPeriod { last, seen_absent: false } => {
            say!(words, OptionsNotLookedAtSince, last = last)
        }
        Because::BroodSince { last, seen } => say!(words, OptionsBroodSince, last = last, seen = seen),
        Because::NoCourseBefore => say!(words, OptionsNoCourseBefore),
        Because::SinceLast { ended, least, .. } => {
            say!(words, OptionsSinceLast, ended = ended, days = say!(words, Days, days = *least))
        }
        Because::LastNotEnded { placed, .. } => say!(words, OptionsLastNotEnded, placed = placed),
        Because::InSeason { from, to, inside: true } => {
            say!(words, OptionsInSeason, from = from.to_string(), to = to.to_string())
        }
        Because::InSeason { from, to, inside: false } => {
            say!(words, OptionsOutsideSeason, from = from.to_string(), to = to.to_string())
        }
        Because::ClassRepeats { class, medicine, placed } => {
            say!(
                words,
                OptionsClassRepeats,
                medicine = &*pieces::medicine(words, medicine),
                placed = placed,
                class = class.as_str()
            )
        }
        Because::ClassDiffers { class } => say!(words, OptionsClassDiffers, class = class.as_str()),
        Because::ClassNotKnown { medicine, placed } => {
            say!(words, OptionsClassNotKnown, medicine = &*pieces::medicine(words, medicine), placed = placed)
        }
        Because::Power { need, has: Fact::Known((has, by)) } => {
            let said = say!(words, OptionsPower, needed = power(words, *need), has = has.as_str());
            if_assumed(words, said, *by)
        }
        Because::Power { need, has: Fact::NotKnown(_) } => {
            say!(words, OptionsPowerNotKnown, needed = power(words, *need))
        }
        Because::Access { has: Fact::Known((Access::None, by)), on } => {
            if_assumed(words, say!(words, OptionsNoAccess, on = on), *by)
        }
        Because::Access { has: Fact::Known((access, by)), .. } => {
            if_assumed(words, say!(words, OptionsAccess, access = access.as_str()), *by)
        }
        Because::Access { has: Fact::NotKnown(_), on } => say!(words, OptionsAccessNotKnown, on = on),
        Because::Ground { has: Fact::Known((ground, by)) } => {
            if_assumed(words, say!(words, OptionsGround, ground = ground.as_str()), *by)
        }
        Because::Ground { has: Fact::NotKnown(_) } | Because::GroundOnceAssumedWet => {
            say!(words, OptionsGroundNotKnown)
        }
        Because::Warm { measure: of, lowest, highest, origin: from, .. } if lowest == highest => say!(
            words,
            OptionsTemperature,
            measure = measure(words, *of),
            value = lowest,
            origin = origin(words, *from)
        ),
        Because::Warm { measure: of, lowest, highest, origin: from, .. } => say!(
            words,
            OptionsTemperatures,
            measure = measure(words, *of),
            lowest = lowest,
            highest = highest,
            origin = origin(words, *from)
        ),
        Because::OutOfBounds { measure: of @ Measure::Mean, value, origin: from, .. } => say!(
            words,
            OptionsTemperature,
            measure = measure(words, *of),
            value = value,
            origin = origin(words, *from)
        ),
        Because::OutOfBounds { measure: of, on, value, origin: from, .. } => say!(
            words,
            OptionsTemperatureOn,
            measure = measure(words, *of),
            value = value,
            on = on,
            origin = origin(words, *from)
        ),
        Because::NoTemperature { first, .. } => say!(words, OptionsNoTemperature, first = first),
        Because::StayNotKnown { lacks: of } if of.is_empty() => say!(words, OptionsStayNotKnownAtAll),
        Because::StayNotKnown { lacks: of } => say!(words, OptionsStayNotKnown, lacks = lacks(words, of)),
    }
}

/// The unknown parts of how a course runs.
pub(super) fn lacks(words: &Words, lacks: &[Term]) -> String {
    let each = lacks.iter().map(|term| question(words, *term));
    each.reduce(|one, other| say!(words, OptionsAnd, one = one, other = other)).unwrap_or_default()
}

/// The topic of a leaflet rule.
pub(super) fn topic(words: &Words, topic: Topic) -> String {
    say!(words, OptionsTopic, topic = topic.as_str())
}

/// What is counted.
pub(super) fn counting(words: &Words, what: Counting) -> String {
    say!(words, OptionsCounting, what = counting_word(what))
}

/// The selector value for what is counted.
pub(super) const fn counting_word(what: Counting) -> &'static str {
    match what {
        Counting::SeamsOfBees => "seams-of-bees",
        Counting::Bees => "bees",
        Counting::BroodBoxes => "brood-boxes",
        Counting::LitresOfHive => "litres-of-hive",
    }
}

/// The period in which courses are counted.
pub(super) fn within(words: &Words, within: Within) -> String {
    let within = match within {
        Within::CalendarYear => "calendar-year",
        Within::TwelveMonths => "twelve-months",
        Within::Year => "year",
        Within::TimeWithoutBrood => "time-without-brood",
    };
    say!(words, OptionsWithin, within = within)
}

fn power(words: &Words, need: Need) -> String {
    say!(words, OptionsPowerNeeded, need = mains_or_battery(need))
}

/// The selector value for the power needed.
pub(super) const fn mains_or_battery(need: Need) -> &'static str {
    match need {
        Need::Battery => "battery",
        Need::MainsOrGenerator
        | Need::CarryInKit
        | Need::HiveOpened
        | Need::ReturnVisit
        | Need::DryGround => "mains",
    }
}

fn measure(words: &Words, measure: Measure) -> String {
    let measure = match measure {
        Measure::Maximum => "maximum",
        Measure::Mean => "mean",
        Measure::SomeMoment => "some-moment",
    };
    say!(words, OptionsMeasure, measure = measure)
}

fn origin(words: &Words, origin: Origin) -> String {
    let origin = match origin {
        Origin::Measured => "measured",
        Origin::Forecast => "forecast",
        Origin::UsualYears => "usual-years",
    };
    say!(words, OptionsOrigin, origin = origin)
}

/// A fact of the site, marked if the question assumed it.
fn if_assumed(words: &Words, fact: String, by: ToldBy) -> String {
    match by {
        ToldBy::Question => say!(words, OptionsAssumed, fact = fact),
        ToldBy::Entry(_) => fact,
    }
}
