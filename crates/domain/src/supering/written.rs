//! Grounds and steps written out: the word for programs, the values used with who said them, the entries read.

use super::grounds::{Ground, Outcome, Reason, Topic};
use super::report::{CourseReport, GroundReport, StepReport, ValueReport};
use super::steps::Step;
use super::wording;
use crate::calendar::Day;
use crate::history::{Authority, Course, End, Fact};
use crate::journal::entry::EntryId;
use crate::words::SupersDuring;

impl CourseReport {
    pub(super) fn of(course: &Course) -> CourseReport {
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
    pub(super) fn of(ground: &Ground<'_>) -> GroundReport {
        let mut values = Vec::new();
        let mut entries: Vec<EntryId> =
            ground.course.iter().flat_map(|course| end_entries(course, &ground.reason)).collect();
        let days = |of, fact: &Fact<u16>| value(ground.course, of, fact, format!("{} days", fact.value));
        let supers = |fact: &Fact<_>| {
            value(ground.course, "supers_during", fact, SupersDuring::to_string(&fact.value))
        };
        let about = match &ground.reason {
            Reason::ColonyNotRecorded => "colony_not_recorded",
            Reason::NotYetBegun { entry, .. } => {
                entries.push(*entry);
                "not_yet_begun"
            }
            Reason::Ended { entry, .. } => {
                entries.push(*entry);
                "ended"
            }
            Reason::CameWithUnknown { entry } => {
                entries.push(*entry);
                "came_with_unknown"
            }
            Reason::NothingGiven { entry } => {
                entries.push(*entry);
                "nothing_given"
            }
            Reason::StillIn { supers: fact } => {
                values.push(supers(fact));
                "still_in"
            }
            Reason::InWithSupersAllowed { supers: fact } => {
                values.push(supers(fact));
                "in_with_supers_allowed"
            }
            Reason::WhereaboutsNotSaid { entry, .. } => {
                entries.push(*entry);
                values.extend(ground.course.into_iter().flat_map(all_terms));
                "whereabouts_not_said"
            }
            Reason::NotEstablished { topic, days: fact, supers: word } => {
                values.extend(fact.map(|fact| days(topic_word(*topic), fact)));
                values.extend(word.map(supers));
                if ground.outcome == Outcome::Met {
                    values.extend(ground.course.into_iter().flat_map(all_terms));
                }
                "not_established"
            }
            Reason::WithdrawalRuns { days: fact, .. } => {
                values.push(days("withdrawal", fact));
                "withdrawal_runs"
            }
            Reason::WaitRuns { days: fact, .. } => {
                values.push(days("wait_after_removal", fact));
                "wait_runs"
            }
            Reason::PeriodsOver { withdrawal, wait, .. } => {
                let mut wait = days("wait_after_removal", wait);
                if ground.course.is_some_and(|course| course.terms.wait_within_withdrawal) {
                    wait.note =
                        Some("the stated withdrawal period is the whole time after treatment".to_owned());
                }
                values.extend([days("withdrawal", withdrawal), wait]);
                "periods_over"
            }
            Reason::HarvestBarred { supers: fact, .. } => {
                values.push(supers(fact));
                "harvest_barred"
            }
            Reason::StayedAtLeast { days: fact, brood, .. } => {
                values.push(days("stay_min", fact));
                entries.extend(brood.map(|seen| seen.entry));
                "stay_min"
            }
            Reason::StayTurnsOnBrood { .. } => "stay_min",
            Reason::StayedAtMost { days: fact, .. } => {
                values.push(days("stay_max", fact));
                "stay_max"
            }
            Reason::DosesGiven { doses, .. } => {
                values.push(value(ground.course, "doses", doses, doses.value.count.to_string()));
                "doses"
            }
            Reason::SupersWhileIn { span, supers: fact } => {
                values.push(supers(fact));
                entries.extend(span.map(|span| span.entry));
                "supers_while_in"
            }
            Reason::LooserThanLeaflet { .. } => "looser_than_leaflet",
        };
        GroundReport {
            outcome: ground.outcome,
            decides: ground.decides,
            about,
            statement: wording::statement(ground),
            course: ground.course.map(CourseReport::of),
            values,
            entries,
        }
    }
}

/// Every term that says of a course whether supers may be on while it is in and after it is out.
fn all_terms(course: &Course) -> Vec<ValueReport> {
    let terms = &course.terms;
    let days = |of, fact: &Fact<u16>| value(Some(course), of, fact, format!("{} days", fact.value));
    let supers = terms
        .supers_during
        .iter()
        .map(|fact| value(Some(course), "supers_during", fact, fact.value.to_string()));
    let withdrawal = terms.withdrawal.iter().map(|fact| days("withdrawal", fact));
    let wait = terms.wait.iter().map(|fact| days("wait_after_removal", fact));
    supers.chain(withdrawal).chain(wait).collect()
}

/// The entries behind a course that a ground reads: its doses, and its end where the ground is about being out.
fn end_entries(course: &Course, reason: &Reason<'_>) -> Vec<EntryId> {
    let mut entries: Vec<EntryId> = course.doses.iter().map(|dose| dose.entry).collect();
    let reads_end = matches!(
        reason,
        Reason::PeriodsOver { .. }
            | Reason::WithdrawalRuns { .. }
            | Reason::WaitRuns { .. }
            | Reason::StayedAtLeast { .. }
            | Reason::StayTurnsOnBrood { .. }
            | Reason::StayedAtMost { still_in: false, .. }
    );
    if let End::Out { entry, .. } = course.end
        && reads_end
    {
        entries.push(entry);
    }
    entries
}

fn value<T>(course: Option<&Course>, of: &'static str, fact: &Fact<T>, value: String) -> ValueReport {
    let rule = course.and_then(|course| course.terms.rule(fact));
    let leaflet = course.and_then(|course| course.terms.leaflet.as_ref());
    let sources = rule.zip(leaflet).map(|(rule, leaflet)| {
        let described = rule.source.iter().map(|id| match leaflet.source(id) {
            Some(source) => match &source.locator {
                Some(locator) => format!("{id}: {} ({locator})", source.title),
                None => format!("{id}: {}", source.title),
            },
            None => id.clone(),
        });
        described.collect()
    });
    let (said_by, entry) = match fact.authority {
        Authority::Prescription(entry) => ("prescription", Some(entry)),
        Authority::Reading(entry) => ("leaflet_reading", Some(entry)),
        Authority::Pack(entry) => ("pack", Some(entry)),
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

const fn topic_word(topic: Topic) -> &'static str {
    match topic {
        Topic::SupersDuring => "supers_during",
        Topic::Withdrawal => "withdrawal",
        Topic::Wait => "wait_after_removal",
        Topic::UsedUp => "removal",
    }
}

impl StepReport {
    pub(super) fn of(step: &Step<'_>, on: Day) -> StepReport {
        let mut report = StepReport {
            what: "",
            statement: wording::step(step, on),
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
                (report.from, report.by) = (earliest.day, *latest);
                report.from_without_brood = earliest.brood_absent_or_lowest;
                report.from_with_brood = earliest.brood_present;
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
