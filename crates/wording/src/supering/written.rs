//! Grounds and steps as reports: identifiers, the values used with their sources, and entries.

use combclear_domain::Day;
use combclear_domain::basics::sourced::{Authority, Sourced};
use combclear_domain::basics::words::SupersDuring;
use combclear_domain::facts::history::{Course, Doses};
use combclear_domain::questions::supering::{Answer, Ground, Outcome, Reason, Step};

use super::names::named;
use super::report::{CourseReport, GroundReport, StepReport, ValueReport};
use super::{next, sentences};
use crate::Words;
use crate::words::say;

impl CourseReport {
    /// The identity of a course.
    #[must_use]
    pub fn of(course: &Course) -> CourseReport {
        CourseReport {
            administration: course.entry,
            medicine: course.medicine.clone(),
            pack_name: course.pack_name.as_ref().to_owned(),
            leaflet: course.terms.leaflet.as_ref().map(|leaflet| leaflet.id.clone()),
            placed: course.placed,
        }
    }
}

impl GroundReport {
    /// The grounds of an answer. Those of one course are consecutive, so that its name is made once.
    pub(super) fn of(words: &Words, answer: &Answer<'_>) -> Vec<GroundReport> {
        let by_course = |one: &Ground<'_>, other: &Ground<'_>| match (one.course, other.course) {
            (Some(one), Some(other)) => std::ptr::eq(one, other),
            (None, None) => true,
            (Some(_), None) | (None, Some(_)) => false,
        };
        let mut reports = Vec::with_capacity(answer.grounds.len());
        for grounds in answer.grounds.chunk_by(by_course) {
            let course = grounds.first().and_then(|ground| ground.course);
            let name = course.map(|course| named(words, course)).unwrap_or_default();
            reports.extend(grounds.iter().map(|ground| GroundReport::one(words, ground, &name)));
        }
        reports
    }

    fn one(words: &Words, ground: &Ground<'_>, name: &str) -> GroundReport {
        GroundReport {
            outcome: ground.outcome,
            decides: ground.decides,
            about: about(&ground.reason),
            statement: sentences::statement_of(words, ground, name),
            course: ground.course.map(CourseReport::of),
            values: values(words, ground),
            entries: ground.entries(),
        }
    }
}

/// The identifier of a check.
const fn about(reason: &Reason<'_>) -> &'static str {
    match reason {
        Reason::ColonyNotRecorded => "colony_not_recorded",
        Reason::NotYetBegun { .. } => "not_yet_begun",
        Reason::Ended { .. } => "ended",
        Reason::CameWithUnknown { .. } => "came_with_unknown",
        Reason::RecordsInArchive { .. } => "records_in_archive",
        Reason::NothingGiven { .. } => "nothing_given",
        Reason::StillIn { .. } => "still_in",
        Reason::InWithSupersAllowed { .. } => "in_with_supers_allowed",
        Reason::WhereaboutsNotSaid { .. } => "whereabouts_not_said",
        Reason::NotEstablished { .. } => "not_established",
        Reason::WithdrawalRuns { .. } => "withdrawal_runs",
        Reason::WaitRuns { .. } => "wait_runs",
        Reason::PeriodsOver { .. } => "periods_over",
        Reason::HarvestBarred { .. } => "harvest_barred",
        Reason::StayedAtLeast { .. } | Reason::StayTurnsOnBrood { .. } => "stay_min",
        Reason::StayedAtMost { .. } => "stay_max",
        Reason::DosesGiven { .. } => "doses",
        Reason::DoseOffTime { .. } => "dose_off_time",
        Reason::SupersWhileIn { .. } => "supers_while_in",
        Reason::CombsCarryOver { .. } => "comb_rule",
        Reason::LooserThanLeaflet { .. } => "looser_than_leaflet",
        Reason::ReadAfterwards { .. } => "read_afterwards",
        Reason::BarredEitherWay { .. } => "barred_either_way",
        Reason::NothingStaysYetStays { .. } => "nothing_stays_yet_stays",
        Reason::UsedBeforeFlow { .. } => "flow_before",
    }
}

/// The values that a ground used, each with its source.
fn values(words: &Words, ground: &Ground<'_>) -> Vec<ValueReport> {
    let Some(course) = ground.course else { return Vec::new() };
    let days = |of, fact: &Sourced<u16>| days(words, course, of, fact);
    let supers = |fact: &Sourced<SupersDuring>| value(course, "supers_during", fact, fact.value.to_string());
    match &ground.reason {
        Reason::StillIn { supers: fact }
        | Reason::InWithSupersAllowed { supers: fact }
        | Reason::HarvestBarred { supers: fact, .. }
        | Reason::SupersWhileIn { supers: fact, .. } => vec![supers(fact)],
        Reason::WhereaboutsNotSaid { .. } | Reason::BarredEitherWay { .. } => all_terms(words, course),
        // A yes in any case rests on the terms, and not on what is missing or contradicts itself.
        Reason::NotEstablished { .. } | Reason::NothingStaysYetStays { .. }
            if ground.outcome == Outcome::Met =>
        {
            all_terms(words, course)
        }
        Reason::NothingStaysYetStays { said } => {
            let stays = course.terms.stay_min.stated().map(|fact| days("stay_min", fact));
            std::iter::once(value(course, "removal", said, said.value.to_string())).chain(stays).collect()
        }
        Reason::UsedBeforeFlow { bar, .. } => {
            let said = match bar.value.days() {
                Some(days) => say!(words, SuperingValueForbiddenDays, days = days),
                None => say!(words, SuperingValueForbidden),
            };
            vec![value(course, "flow_before", bar, said)]
        }
        Reason::NotEstablished { topic, days: fact, supers: word } => {
            fact.map(|fact| days(topic.topic().as_str(), fact)).into_iter().chain(word.map(supers)).collect()
        }
        Reason::WithdrawalRuns { days: fact, .. } => vec![days("withdrawal", fact)],
        Reason::WaitRuns { days: fact, .. } => vec![days("wait_after_removal", fact)],
        Reason::PeriodsOver { withdrawal, wait, .. } => {
            let mut wait = days("wait_after_removal", wait);
            if course.terms.wait_within_withdrawal {
                wait.note = Some(say!(words, SuperingValueWholeTime));
            }
            let withdrawal = if course.terms.no_withdrawal_by_label {
                value(course, "withdrawal", withdrawal, say!(words, SuperingValueNoneByLabel))
            } else {
                days("withdrawal", withdrawal)
            };
            vec![withdrawal, wait]
        }
        Reason::StayedAtLeast { days: fact, .. } => vec![days("stay_min", fact)],
        Reason::StayedAtMost { days: fact, .. } => vec![days("stay_max", fact)],
        Reason::DosesGiven { doses, .. } => {
            vec![value(course, "doses", doses, doses.value.count.to_string())]
        }
        Reason::DoseOffTime { doses, .. } => {
            let Doses { interval_min_days: least, interval_max_days: most, .. } = doses.value;
            let any = |days: Option<u16>| {
                days.map_or_else(|| say!(words, SuperingValueAny), |days| days.to_string())
            };
            let apart = say!(words, SuperingValueDaysApart, least = any(least), most = any(most));
            vec![value(course, "doses", doses, apart)]
        }
        Reason::ColonyNotRecorded
        | Reason::NotYetBegun { .. }
        | Reason::Ended { .. }
        | Reason::CameWithUnknown { .. }
        | Reason::RecordsInArchive { .. }
        | Reason::NothingGiven { .. }
        | Reason::StayTurnsOnBrood { .. }
        | Reason::CombsCarryOver { .. }
        | Reason::ReadAfterwards { .. }
        | Reason::LooserThanLeaflet { .. } => Vec::new(),
    }
}

/// Every term that decides whether supers may be on while a course is in and after it is out.
fn all_terms(words: &Words, course: &Course) -> Vec<ValueReport> {
    let terms = &course.terms;
    let days = |of, fact: &Sourced<u16>| days(words, course, of, fact);
    let supers = terms.supers_during.known();
    let supers = supers.map(|fact| value(course, "supers_during", fact, fact.value.to_string()));
    let withdrawal = terms.withdrawal.known().map(|fact| days("withdrawal", fact));
    let wait = terms.wait.known().map(|fact| days("wait_after_removal", fact));
    [supers, withdrawal, wait].into_iter().flatten().collect()
}

fn days(words: &Words, course: &Course, of: &'static str, fact: &Sourced<u16>) -> ValueReport {
    value(course, of, fact, say!(words, SuperingValueDays, days = fact.value))
}

fn value<T>(course: &Course, of: &'static str, fact: &Sourced<T>, value: String) -> ValueReport {
    let rule = course.terms.rule(fact);
    let leaflet = course.terms.leaflet.as_ref();
    let sources = rule.zip(leaflet).map(|(rule, leaflet)| {
        let described = rule.source.iter().map(|id| match leaflet.source(id) {
            Some(source) => format!("{id}: {source}"),
            None => id.clone(),
        });
        described.collect()
    });
    let (said_by, entry) = match fact.authority {
        Authority::Prescription(entry) => ("prescription", Some(entry)),
        Authority::Reading(entry) => ("leaflet_reading", Some(entry)),
        Authority::Pack(entry) => ("pack", Some(entry)),
        Authority::Leaflet(_) if leaflet.is_some_and(|leaflet| leaflet.own) => ("own_leaflet", None),
        Authority::Leaflet(_) => ("leaflet", None),
        Authority::Declared(entry) => ("declared", Some(entry)),
    };
    ValueReport {
        of,
        value,
        said_by,
        entry,
        confidence: fact.confidence,
        force: rule.map(|rule| rule.force),
        sources: sources.unwrap_or_default(),
        checked_on: rule.map(|rule| rule.checked_on),
        note: rule.and_then(|rule| rule.note.clone()),
    }
}

impl StepReport {
    pub(super) fn of(words: &Words, step: &Step<'_>, on: Day) -> StepReport {
        let mut report = StepReport {
            what: "",
            statement: next::step(words, step, on),
            administration: None,
            from: None,
            by: None,
            from_without_brood: None,
            from_with_brood: None,
        };
        match step {
            Step::TakeSupersOff { .. } => report.what = "take_supers_off",
            Step::RecordWhereabouts { course, .. } => {
                report.what = "record_whereabouts";
                report.administration = Some(course.entry);
            }
            Step::GiveDose { course, from, by, .. } => {
                report.what = "give_dose";
                report.administration = Some(course.entry);
                (report.from, report.by) = (*from, *by);
            }
            Step::TakeOut { course, earliest, latest } => {
                report.what = "take_out";
                report.administration = Some(course.entry);
                (report.from, report.by) = (earliest.day.known().copied(), *latest);
                let by_brood = earliest.by_brood.as_ref();
                report.from_without_brood = by_brood.and_then(|days| days.absent_or_lowest.known().copied());
                report.from_with_brood = by_brood.and_then(|days| days.present.known().copied());
            }
            Step::WaitUntilSpent { course, spent } => {
                report.what = "wait_until_spent";
                report.administration = Some(course.entry);
                report.from = Some(*spent);
            }
            Step::WaitThrough { course, last } => {
                report.what = "wait";
                report.administration = Some(course.entry);
                report.by = Some(*last);
            }
        }
        report
    }
}
