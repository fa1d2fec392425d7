//! An administration as treatments: one for each group of colonies whose course went the same way.

use std::collections::BTreeSet;

use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::basics::quantity::Quantity;
use combclear_domain::basics::words::{ApiaryName, ColonyName, Person};
use combclear_domain::questions::register::{AdministrationRow, CoursePart, GivenPart};
use combclear_wording::amounts::days;
use combclear_wording::exchange::{self as say, CameBy};
use combclear_wording::{Label, Words, paper};

use super::{
    APIARY, AnimalSet, Batch, COLONY, GroupTreatment, Identifier, Withdrawal, dose, instant, labelled,
    medicine, meta, midday, unit_of,
};
use crate::rows::names;
use crate::sheet::{Piece, written};

/// The treatments of an administration: first the colonies treated, by fate; then those that received the course from
/// another colony. Last, as deleted, those that may have been sent before and are no more.
pub(super) fn of(words: &Words, row: &AdministrationRow, source: &str) -> Vec<GroupTreatment> {
    let fates = fates(row);
    let gone = |sent: &'_ BTreeSet<ColonyName>, is_own: bool| -> Vec<GroupTreatment> {
        let of_kind = fates.iter().filter(|fate| fate.is_own() == is_own);
        let keys: BTreeSet<&ColonyName> = of_kind.filter_map(Fate::first).collect();
        let gone = sent.iter().filter(|colony| !keys.contains(colony));
        gone.map(|colony| no_more(words, row, colony, is_own, source)).collect()
    };
    let mut all: Vec<GroupTreatment> = fates.iter().map(|fate| treatment(words, row, fate, source)).collect();
    all.extend(gone(&row.sent_before.colonies, true));
    all.extend(gone(&row.sent_before.carried_over_to, false));
    all
}

/// A group of which this was the first colony.
fn no_more(
    words: &Words,
    row: &AdministrationRow,
    first: &ColonyName,
    is_own: bool,
    source: &str,
) -> GroupTreatment {
    let fate = Fate { course: None, colonies: vec![first], given: Vec::new() };
    let mut item = treatment(words, row, &fate, source);
    item.id = id(row, Some(first), is_own);
    item.embedded_animal_set.id = set_id(&item.id);
    item.meta.is_deleted = Some(true);
    words.label(Label::ExchangeNoGroupAnyMore).clone_into(&mut item.remark);
    item
}

/// The id of a group: the entry, and the first of its colonies.
fn id(row: &AdministrationRow, first: Option<&ColonyName>, is_own: bool) -> String {
    let what = if is_own { "treatment" } else { "carried-over" };
    format!("{}/{what}/{}", row.written.first_entry, first.map_or("", ColonyName::as_str))
}

fn set_id(id: &str) -> String {
    format!("{id}/colonies")
}

/// Colonies whose course went the same way. Their group is known by the first of them, in the order people count, so that it
/// keeps its id while others leave it or join it.
struct Fate<'r> {
    /// Their course; absent if not on record.
    course: Option<&'r CoursePart>,
    colonies: Vec<&'r ColonyName>,
    /// The amounts given, by lot; empty for colonies that received the course from another.
    given: Vec<(&'r GivenPart, Vec<&'r ColonyName>)>,
}

fn fates(row: &AdministrationRow) -> Vec<Fate<'_>> {
    let own = || row.courses.iter().filter(|course| course.came_by.is_none());
    let mut fates: Vec<Fate<'_>> = Vec::new();
    for course in own() {
        match fates.iter_mut().find(|fate| fate.course.is_some_and(|known| goes_alike(known, course))) {
            Some(fate) => fate.join(course, row),
            None => fates.push(fate(row, course)),
        }
    }
    let mut untold: Vec<&ColonyName> = Vec::new();
    for colony in row.given.iter().flat_map(|part| &part.colonies) {
        if !untold.contains(&colony) && !own().any(|course| course.colonies.contains(colony)) {
            untold.push(colony);
        }
    }
    if !untold.is_empty() {
        let given = given(row, |colony| untold.contains(&colony));
        fates.push(Fate { course: None, colonies: untold, given });
    }
    let came = row.courses.iter().filter(|course| course.came_by.is_some());
    fates.extend(came.map(|course| Fate {
        course: Some(course),
        colonies: course.colonies.iter().collect(),
        given: Vec::new(),
    }));
    fates
}

/// Whether two courses are the same by what is sent of them. The days on which a carrier may or must come out are not.
fn goes_alike(one: &CoursePart, other: &CoursePart) -> bool {
    let sent = |part: &CoursePart| CoursePart {
        colonies: Vec::new(),
        may_come_out_from: None,
        must_be_out_by: None,
        ..part.clone()
    };
    sent(one) == sent(other)
}

fn fate<'r>(row: &'r AdministrationRow, course: &'r CoursePart) -> Fate<'r> {
    Fate {
        course: Some(course),
        colonies: course.colonies.iter().collect(),
        given: given(row, |colony| course.colonies.contains(colony)),
    }
}

/// The amounts given to some of the colonies, by lot.
fn given(
    row: &AdministrationRow,
    among: impl Fn(&ColonyName) -> bool,
) -> Vec<(&GivenPart, Vec<&ColonyName>)> {
    let parts = row.given.iter().map(|part| {
        let colonies: Vec<&ColonyName> = part.colonies.iter().filter(|colony| among(colony)).collect();
        (part, colonies)
    });
    parts.filter(|(_, colonies)| !colonies.is_empty()).collect()
}

impl<'r> Fate<'r> {
    fn join(&mut self, course: &'r CoursePart, row: &'r AdministrationRow) {
        self.colonies.extend(&course.colonies);
        let colonies = &self.colonies;
        self.given = given(row, |colony| colonies.contains(&colony));
    }

    /// Whether its colonies were given it themselves.
    fn is_own(&self) -> bool {
        self.course.is_none_or(|course| course.came_by.is_none())
    }

    fn first(&self) -> Option<&'r ColonyName> {
        let mut colonies = self.colonies.clone();
        sort_naturally(&mut colonies, |colony| colony.as_str());
        colonies.first().copied()
    }

    /// The amount one colony got from all lots.
    fn each(&self, colony: &ColonyName) -> Quantity {
        let parts = self.given.iter().filter(|(_, colonies)| colonies.contains(&colony));
        parts.fold(Quantity::ZERO, |sum, (part, _)| sum.plus(part.each))
    }

    fn total(&self) -> Option<Quantity> {
        let of_lot = |(part, colonies): &(&GivenPart, Vec<&ColonyName>)| {
            part.each.times(u64::try_from(colonies.len()).unwrap_or(u64::MAX))
        };
        (!self.given.is_empty()).then(|| self.given.iter().map(of_lot).fold(Quantity::ZERO, Quantity::plus))
    }
}

fn treatment(words: &Words, row: &AdministrationRow, fate: &Fate<'_>, source: &str) -> GroupTreatment {
    let id = id(row, fate.first(), fate.is_own());
    let mut meta = meta(&row.written, source);
    meta.modified = instant(row.sent_before.changed_at);
    let unit = row.medicine.unit;
    let each = same(fate.colonies.iter().map(|colony| fate.each(colony))).filter(|_| !fate.given.is_empty());
    GroupTreatment {
        resource_type: "icarGroupTreatmentEventResource",
        meta,
        location: fate
            .course
            .and_then(|course| course.apiary.as_ref())
            .map(|apiary| Identifier { id: apiary.to_string(), scheme: APIARY }),
        event_date_time: midday(row.written.on),
        responsible: row.given_by.as_ref().or(row.vet.as_ref()).map(ToString::to_string),
        remark: remark(words, row, fate),
        group_method: "EmbeddedAnimalSet",
        count_observed: fate.colonies.len(),
        embedded_animal_set: AnimalSet {
            resource_type: "icarAnimalSetResource",
            id: set_id(&id),
            member: fate
                .colonies
                .iter()
                .map(|colony| Identifier { id: colony.to_string(), scheme: COLONY })
                .collect(),
        },
        id,
        medicine: medicine(words, &row.medicine),
        procedure: row.method.as_ref().map(ToString::to_string),
        batches: batches(row, fate),
        withdrawals: vec![withdrawal(fate.course)],
        dose_per_animal: each.map(|each| dose(each, unit)),
        total_medicine_used: fate.total().map(|total| dose(total, unit)),
    }
}

/// The common value, if all are equal.
fn same<T: PartialEq>(mut values: impl Iterator<Item = T>) -> Option<T> {
    let first = values.next()?;
    values.all(|value| value == first).then_some(first)
}

/// The batches given to the colonies. For those that received the course from another: every batch it may come from.
fn batches(row: &AdministrationRow, fate: &Fate<'_>) -> Vec<Batch> {
    let of_fate = fate.given.iter().map(|(part, _)| *part);
    let parts: Vec<&GivenPart> =
        if fate.given.is_empty() { row.given.iter().collect() } else { of_fate.collect() };
    let mut batches: Vec<Batch> = Vec::new();
    for part in parts {
        let batch = Batch {
            identifier: written(part.batch.as_ref()).map(str::to_owned),
            expiry_date: part.expiry.map(midday),
        };
        if (batch.identifier.is_some() || batch.expiry_date.is_some()) && !batches.contains(&batch) {
            batches.push(batch);
        }
    }
    batches
}

/// Always one, since its absence could be mistaken for freedom. Without an end if that is not known.
fn withdrawal(course: Option<&CoursePart>) -> Withdrawal {
    let known = course.filter(|course| course.withdrawal.is_some() && course.first_free_day.is_some());
    // A period of 0 days ends with the treatment, though supers were barred only until the day before.
    let end = known.and_then(|course| course.last_blocked_day.max(course.last));
    Withdrawal { product_type: "Honey", end_date: end.map(midday) }
}

/// Data without a place in the standard, in sentences.
fn remark(words: &Words, row: &AdministrationRow, fate: &Fate<'_>) -> String {
    let mut said = Vec::new();
    said.extend(row.written.at.map(|at| say::time_of_day(words, at)));
    said.push(unit_of(words, row.medicine.unit));
    for (part, colonies) in &fate.given {
        let each = Piece::Amount(part.each, row.medicine.unit).words(words);
        said.push(say::given(words, &part.lot, &each, &names(colonies.iter().copied())));
    }
    let untold = || words.label(Label::ExchangeUntold).to_owned();
    said.push(fate.course.map_or_else(untold, |course| told(words, course)));
    said.push(say::dose(words, row.dose));
    said.push(labelled(words, Label::Reason, written(row.against.as_ref())));
    let mut more = |label, value: Option<&str>| {
        said.extend(value.map(|value| labelled(words, label, Some(value))));
    };
    more(Label::Certificate, written(row.certificate.as_ref()));
    more(Label::Vet, row.vet.as_ref().map(Person::as_str));
    more(Label::Prescription, row.prescription.as_ref().map(|part| part.number.as_str()));
    said.extend(super::copied(words, &row.written));
    super::remark(said)
}

fn told(words: &Words, course: &CoursePart) -> String {
    let label = |label| words.label(label).to_owned();
    let period = course.withdrawal.as_ref().map_or_else(
        || label(Label::NotRecorded),
        |period| format!("{} ({})", days(words, period.days.into()), paper::said_by(words, period.said_by)),
    );
    let last = match (course.last, course.still_in) {
        (Some(last), _) => last.to_string(),
        (None, true) => label(Label::StillIn),
        (None, false) => label(Label::NotKnown),
    };
    let came = match course.came_by {
        None => CameBy::Giving,
        Some(_) => CameBy::SplitOrUniting(course.came_on),
    };
    let mut said = vec![
        say::course(words, &names(&course.colonies), came, course.first, &last),
        say::withdrawal(words, &period),
    ];
    match course.wait_days {
        Some(0) => {}
        Some(days) => said.push(say::wait(words, days)),
        None => said.push(label(Label::ExchangeWaitNotKnown)),
    }
    if course.first_free_day.is_none() {
        said.push(label(Label::ExchangeEndNotKnown));
    }
    let apiary = course.apiary.as_ref().map_or_else(|| words.label(Label::NotRecorded), ApiaryName::as_str);
    said.push(say::apiary(words, apiary));
    let later = course.later_apiaries.iter();
    said.extend(later.map(|stay| say::later_apiary(words, stay.from, &stay.apiary)));
    said.join(", ")
}
