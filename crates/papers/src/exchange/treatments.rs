//! An administration as treatments: one for each group of colonies of which the course went the same way.

use combclear_domain::basics::quantity::Quantity;
use combclear_domain::basics::words::{ColonyName, Unit};
use combclear_domain::questions::register::{AdministrationRow, CoursePart, GivenPart};

use super::{
    APIARY, AnimalSet, Batch, COLONY, GroupTreatment, Identifier, Withdrawal, dose, medicine, meta, midday,
};
use crate::rows::{names, said_by};
use crate::sheet::{NOT_RECORDED, Piece, written};

/// The treatments of an administration: those that were given it, fate by fate, then those that came by it.
pub(super) fn of(row: &AdministrationRow, source: &str) -> Vec<GroupTreatment> {
    let fates = fates(row);
    fates.iter().enumerate().map(|(index, fate)| treatment(row, index, fate, source)).collect()
}

/// Colonies of which the course went the same way.
struct Fate<'r> {
    /// What became of it; absent where the record does not tell.
    course: Option<&'r CoursePart>,
    colonies: Vec<&'r ColonyName>,
    /// What they were given, lot by lot; nothing for those that came by it.
    given: Vec<(&'r GivenPart, Vec<&'r ColonyName>)>,
}

fn fates(row: &AdministrationRow) -> Vec<Fate<'_>> {
    let own = || row.courses.iter().filter(|course| course.came_by.is_none());
    let mut fates: Vec<Fate<'_>> = own().map(|course| fate(row, course)).collect();
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

fn fate<'r>(row: &'r AdministrationRow, course: &'r CoursePart) -> Fate<'r> {
    Fate {
        course: Some(course),
        colonies: course.colonies.iter().collect(),
        given: given(row, |colony| course.colonies.contains(colony)),
    }
}

/// What some of the colonies were given, lot by lot.
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

impl Fate<'_> {
    /// What one colony got from all lots.
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

fn treatment(row: &AdministrationRow, index: usize, fate: &Fate<'_>, source: &str) -> GroupTreatment {
    let entry = row.written.entry;
    let unit = row.medicine.unit;
    let each = same(fate.colonies.iter().map(|colony| fate.each(colony))).filter(|_| !fate.given.is_empty());
    GroupTreatment {
        resource_type: "icarGroupTreatmentEventResource",
        meta: meta(&row.written, source),
        location: fate
            .course
            .and_then(|course| course.apiary.as_ref())
            .map(|apiary| Identifier { id: apiary.to_string(), scheme: APIARY }),
        id: format!("{entry}/treatment/{index}"),
        event_date_time: midday(row.written.on),
        responsible: row.given_by.as_ref().or(row.vet.as_ref()).map(ToString::to_string),
        remark: remark(row, fate),
        group_method: "EmbeddedAnimalSet",
        count_observed: fate.colonies.len(),
        embedded_animal_set: AnimalSet {
            resource_type: "icarAnimalSetResource",
            id: format!("{entry}/colonies/{index}"),
            member: fate
                .colonies
                .iter()
                .map(|colony| Identifier { id: colony.to_string(), scheme: COLONY })
                .collect(),
        },
        medicine: medicine(&row.medicine),
        procedure: row.method.as_ref().map(ToString::to_string),
        batches: batches(row, fate),
        withdrawals: vec![withdrawal(fate.course)],
        dose_per_animal: each.map(|each| dose(each, unit)),
        total_medicine_used: fate.total().map(|total| dose(total, unit)),
    }
}

/// The value that all have, if they have one.
fn same<T: PartialEq>(mut values: impl Iterator<Item = T>) -> Option<T> {
    let first = values.next()?;
    values.all(|value| value == first).then_some(first)
}

/// The batches that the colonies were given; for those that came by it, all it can be from.
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

/// Always one, so that nobody reads its absence as freedom; without an end while the end is not known.
fn withdrawal(course: Option<&CoursePart>) -> Withdrawal {
    let known = course.filter(|course| course.withdrawal.is_some() && course.first_free_day.is_some());
    // A period of 0 days ends when the treatment does, though supers were barred only until the day before.
    let end = known.and_then(|course| course.last_blocked_day.max(course.last));
    Withdrawal { product_type: "Honey", end_date: end.map(midday) }
}

/// What the standard has no place for, in sentences.
fn remark(row: &AdministrationRow, fate: &Fate<'_>) -> String {
    let mut said = Vec::new();
    if let Some(at) = row.written.at {
        said.push(format!("at {at}, local time"));
    }
    said.push(format!("unit: {}", row.medicine.unit.map_or(NOT_RECORDED, Unit::as_str)));
    for (part, colonies) in &fate.given {
        let each = Piece::Amount(part.each, row.medicine.unit).words();
        said.push(format!("lot {}: {each} each for {}", part.lot, names(colonies.iter().copied())));
    }
    said.push(
        fate.course.map_or_else(
            || "what became of it is not recorded, end of withdrawal not known".to_owned(),
            told,
        ),
    );
    said.push(format!("dose {} of its course", row.dose));
    said.push(format!("reason: {}", written(row.against.as_ref()).unwrap_or(NOT_RECORDED)));
    if let Some(certificate) = written(row.certificate.as_ref()) {
        said.push(format!("certificate: {certificate}"));
    }
    if let Some(vet) = &row.vet {
        said.push(format!("vet: {vet}"));
    }
    if let Some(prescription) = &row.prescription {
        said.push(format!("prescription: {}", prescription.number));
    }
    said.join(". ")
}

fn told(course: &CoursePart) -> String {
    let period = course.withdrawal.as_ref().map_or_else(
        || NOT_RECORDED.to_owned(),
        |period| format!("{} ({})", Piece::Days(u32::from(period.days)).words(), said_by(period.said_by)),
    );
    let last = match (course.last, course.still_in) {
        (Some(last), _) => last.to_string(),
        (None, true) => "still in".to_owned(),
        (None, false) => "not known".to_owned(),
    };
    let came = match (course.came_by, course.came_on) {
        (None, _) => String::new(),
        (Some(_), None) => " (by a split or a uniting)".to_owned(),
        (Some(_), Some(on)) => format!(" (by a split or a uniting on {on})"),
    };
    let apiary = course.apiary.as_ref().map_or(NOT_RECORDED, |apiary| apiary.as_str());
    let mut stays = vec![format!("apiary {apiary}")];
    stays.extend(course.later_apiaries.iter().map(|stay| format!("from {} {}", stay.from, stay.apiary)));
    let wait = match course.wait_days {
        Some(0) => String::new(),
        Some(days) => format!(", wait before supers {}", Piece::Days(u32::from(days)).words()),
        None => ", wait before supers not known".to_owned(),
    };
    let end = if course.first_free_day.is_some() { "" } else { ", end of withdrawal not known" };
    format!(
        "{}{came}: {} to {last}, withdrawal period {period}{wait}{end}, {}",
        names(&course.colonies),
        course.first,
        stays.join(", ")
    )
}
