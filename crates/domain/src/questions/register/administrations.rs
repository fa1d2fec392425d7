//! Administrations and removals as rows.

use std::sync::Arc;

use super::View;
use super::course_parts::Courses;
use super::rows::{AdministrationRow, CoursePart, GivenPart, RemovalRow, Written};
use super::sent_before::Changes;
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::quantity::Quantity;
use crate::basics::words::Person;
use crate::facts::NotOnRecord;
use crate::facts::holding::Record;
use crate::journal::entry::EntryId;
use crate::journal::event::{Administration, Event};

/// Administrations of the period, each once, and earlier ones that ran into it.
pub(super) fn administrations(
    view: &View<'_>,
    changes: &Changes<'_>,
    standing: &[&Arc<Record>],
) -> Vec<AdministrationRow> {
    // The courses of all colonies are worked out once, and only if something was given.
    let mut courses: Option<Courses> = None;
    let by_then = standing.iter().filter(|record| record.on <= view.period.to());
    let given = by_then.filter_map(|record| Some((*record, record.body::<Administration>()?)));
    let rows = given.filter_map(|(record, body)| {
        let courses = courses.get_or_insert_with(|| Courses::of(view));
        let first = first_dose(view, record, body);
        if record.on < view.period.from() && !courses.may_run_into(view, first) {
            return None;
        }
        Some(AdministrationRow {
            dose: courses.dose(first, record.id),
            courses: courses.parts(view, first, record, body),
            ..row(view, changes, record, body, false)
        })
    });
    rows.filter(|row| !row.earlier || row.courses.iter().any(|part| runs_into(part, view.period.from())))
        .collect()
}

/// An administration by itself: the first dose of a course of which nothing is on record.
pub(super) fn row(
    view: &View<'_>,
    changes: &Changes<'_>,
    record: &Record,
    body: &Administration,
    is_struck_out: bool,
) -> AdministrationRow {
    let first = first_dose(view, record, body);
    let name = view.holding.medicine_given(body);
    AdministrationRow {
        written: Written::of(view.holding, record),
        earlier: record.on < view.period.from(),
        one_way: view.leaflet(name.known(), record.on).is_some_and(|leaflet| leaflet.methods.len() <= 1),
        medicine: view.medicine(name, record.on),
        given: given_parts(view, body),
        total: body.given.iter().fold(Quantity::ZERO, |sum, part| sum.plus(part.total())),
        method: body.method.clone(),
        dose: 1,
        first_dose: first,
        courses: Vec::new(),
        withdrawal_stated: body.withdrawal_days,
        given_by: body.given_by.clone(),
        vet: body.vet.clone().or_else(|| vet_of_lots(view, body)),
        against: body.against.clone(),
        certificate: body.certificate.clone(),
        prescription: body.prescription.as_ref().map(|number| view.prescription(number)),
        sent_before: changes.sent_before(view, record, body, first, is_struck_out),
    }
}

/// The vet from whose stock some of it was.
fn vet_of_lots(view: &View<'_>, body: &Administration) -> Option<Person> {
    let lots = body.given.iter().filter_map(|part| view.holding.lot(&part.lot));
    lots.filter_map(|(_, lot)| lot.of_vet()).map(|lot| lot.vet.clone()).next()
}

/// The first dose of the course to which an administration belongs.
fn first_dose(view: &View<'_>, record: &Record, body: &Administration) -> EntryId {
    let first = body.continues.and_then(|first| view.holding.effective(first));
    first.map_or(record.id, |first| first.id)
}

/// Whether a course was in on or after a day, or one of its periods ran then.
fn runs_into(part: &CoursePart, from: Day) -> bool {
    let over = part.last_blocked_day.max(part.last);
    part.still_in || part.not_known_since.is_some() || over.is_some_and(|over| from <= over)
}

/// Removals of the period.
pub(super) fn removals(view: &View<'_>, within: &[&Arc<Record>]) -> Vec<RemovalRow> {
    let rows = within.iter().filter_map(|record| {
        let Event::Removal(body) = &record.event else { return None };
        let first = view.holding.effective(body.administration);
        let given = first.and_then(|first| first.body::<Administration>());
        let name = match given {
            Some(given) => view.holding.medicine_given(given),
            None => Fact::NotKnown(NotOnRecord::FirstDose),
        };
        Some(RemovalRow {
            written: Written::of(view.holding, record),
            medicine: view.medicine(name, record.on),
            first_dose: first.map_or(body.administration, |first| first.id),
            placed: first.map(|first| first.on),
            colonies: body.colonies.clone(),
            left_inside: body.left_inside,
            how_and_where: body.how_and_where.clone(),
        })
    });
    rows.collect()
}

fn given_parts(view: &View<'_>, body: &Administration) -> Vec<GivenPart> {
    let part = body.given.iter().map(|part| {
        let lot = view.holding.lot(&part.lot).map(|(_, lot)| lot);
        GivenPart {
            lot: part.lot.clone(),
            batch: lot.and_then(|lot| lot.batch.cloned()),
            expiry: lot.and_then(|lot| lot.expiry),
            of_vet: lot.is_some_and(|lot| lot.of_vet().is_some()),
            withdrawal_read: view.withdrawal_read(&part.lot),
            each: part.each,
            colonies: part.colonies.clone(),
            total: part.total(),
        }
    });
    part.collect()
}
