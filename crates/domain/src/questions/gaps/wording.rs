//! Gaps in words that a keeper understands.

use super::fields::Asked;
use super::report::{Gap, GapWeight};
use crate::basics::quantity::Quantity;
use crate::basics::verdict::Verdict;
use crate::basics::words::{ColonyName, Unit};
use crate::journal::event::Kind;
use crate::questions::register::{
    AcquisitionRow, AdministrationRow, DisposalRow, MedicinePart, RegisterReport, SaidBy, Written,
};
use crate::rules::law::{Basis, Field, FieldNeeded, LawFile};

/// The row that a gap is about.
#[derive(Clone, Copy)]
pub(super) struct About<'r> {
    pub(super) written: &'r Written,
    pub(super) kind: Kind,
    pub(super) administration: Option<&'r AdministrationRow>,
    pub(super) acquisition: Option<&'r AcquisitionRow>,
    pub(super) disposal: Option<&'r DisposalRow>,
}

impl<'r> About<'r> {
    pub(super) fn acquisition(row: &'r AcquisitionRow) -> About<'r> {
        let nothing = About::of(&row.written, Kind::LotAcquired);
        About { acquisition: Some(row), ..nothing }
    }

    pub(super) fn administration(row: &'r AdministrationRow) -> About<'r> {
        let nothing = About::of(&row.written, Kind::Administration);
        About { administration: Some(row), ..nothing }
    }

    pub(super) fn disposal(row: &'r DisposalRow) -> About<'r> {
        let nothing = About::of(&row.written, Kind::Disposal);
        About { disposal: Some(row), ..nothing }
    }

    fn of(written: &'r Written, kind: Kind) -> About<'r> {
        About { written, kind, administration: None, acquisition: None, disposal: None }
    }

    /// What the row records, in words: `lot HERB-25-1 of Herbal Tablet, acquired on 2025-08-02`.
    pub(super) fn in_words(&self) -> String {
        let on = self.written.on;
        if let Some(row) = self.acquisition {
            return format!("lot {} of {}, acquired on {on}", row.lot, name(&row.medicine));
        }
        if let Some(row) = self.administration {
            let mut colonies: Vec<&ColonyName> = row.given.iter().flat_map(|part| &part.colonies).collect();
            colonies.sort();
            colonies.dedup();
            return format!("{} given on {on} to {}", name(&row.medicine), some(&colonies));
        }
        if let Some(row) = self.disposal {
            let amount = amount(row.quantity, row.medicine.unit);
            return format!("{amount} of lot {} disposed of on {on}", row.lot);
        }
        format!("entry no. {}", self.written.place)
    }
}

/// The name of a medicine on its pack, or the keeper's own.
pub(super) fn name(medicine: &MedicinePart) -> &str {
    medicine.pack_name.as_deref().unwrap_or(medicine.medicine.as_str())
}

/// Up to four colonies by name, or how many there are.
fn some(colonies: &[&ColonyName]) -> String {
    const NAMED: usize = 4;
    if colonies.len() > NAMED {
        return format!("{} colonies", colonies.len());
    }
    colonies.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ")
}

pub(super) fn amount(quantity: Quantity, unit: Option<Unit>) -> String {
    unit.map_or_else(
        || quantity.to_string(),
        |unit| crate::questions::options::amount_of(quantity, unit.as_str()),
    )
}

pub(super) fn days(days: u32) -> String {
    if days == 1 { "1 day".to_owned() } else { format!("{days} days") }
}

/// The gap in one sentence.
pub(super) fn not_recorded(about: &About<'_>, field: Field, register: &RegisterReport) -> String {
    let subject = about.in_words();
    match (field, about.administration) {
        (Field::WithdrawalPeriod, Some(row)) => {
            let leaflet = row.courses.iter().filter_map(|part| part.withdrawal.as_ref());
            let said = leaflet.filter(|said| said.said_by == SaidBy::Leaflet).map(|said| said.days).max();
            let but = said.map(|days| {
                format!(
                    "; the built-in leaflet says {}, but that is no record of yours",
                    self::days(days.into())
                )
            });
            format!("{subject}: the withdrawal period is not recorded{}", but.unwrap_or_default())
        }
        (Field::DateLastGiven | Field::Duration | Field::WithdrawalEnd, Some(row)) => {
            let lost = row.courses.iter().find(|part| part.not_known_since.is_some());
            let late = row
                .courses
                .iter()
                .find(|part| part.still_in && part.must_be_out_by.is_some_and(|by| by < register.as_of));
            let (what, part) = match (lost, late) {
                (Some(part), _) => ("nobody recorded where it went", part),
                (None, Some(part)) => ("its removal is not recorded, and it had to be out", part),
                (None, None) => return format!("{subject}: the {} is not known", field.name()),
            };
            let colonies: Vec<&ColonyName> = part.colonies.iter().collect();
            format!("{subject}: the {} is not known: in {} {what}", field.name(), some(&colonies))
        }
        _ => format!("{subject}: {} is not recorded", with_article(field.name())),
    }
}

/// How to supply a field.
#[expect(clippy::wildcard_enum_match_arm, reason = "the other fields stand in the entry itself")]
pub(super) fn supply(about: &About<'_>, field: Field) -> String {
    let entry = format!("correct entry no. {}", about.written.place);
    let name = field.name();
    match field {
        Field::ProductName | Field::ActiveSubstance | Field::AuthorisationNumber => {
            "correct the description of the medicine: pack name, authorisation number, leaflet".to_owned()
        }
        Field::ProofOfPurchase => {
            "attach the invoice or receipt to the lot, or correct the acquisition and say what proves it and where it is kept"
                .to_owned()
        }
        Field::PrescriptionCopy => "attach a copy to the prescription".to_owned(),
        Field::Prescriber => "correct the prescription and say how the vet is reached".to_owned(),
        Field::WithdrawalPeriod => {
            format!("{entry} and give the days that the pack states, 0 too; or record what its leaflet says")
        }
        Field::DateLastGiven | Field::Duration => {
            "record the removal with the day on which it came out".to_owned()
        }
        Field::WithdrawalEnd => {
            "record the removal, and the withdrawal period that the pack states".to_owned()
        }
        Field::KeeperNameAndAddress => "record the holding's details with the keeper's address".to_owned(),
        _ => format!("{entry} and give the {name}"),
    }
}

/// Where the law says so.
pub(super) fn law(needed: &FieldNeeded<'_>) -> Vec<String> {
    let mut said: Vec<String> =
        needed.by.iter().flat_map(|ruled| sources(ruled.file, &ruled.rule.basis)).collect();
    said.dedup();
    said
}

/// The sources of a rule, each with the place in it.
pub(super) fn sources(file: &LawFile, basis: &Basis) -> Vec<String> {
    let known = basis.source.iter().filter_map(|key| file.source(key));
    let said = known.map(|source| match &source.locator {
        Some(locator) => format!("{}, {locator}", source.title),
        None => source.title.clone(),
    });
    said.collect()
}

/// The answer for the keeper, in a few sentences.
pub(super) fn summary(
    register: &RegisterReport,
    gaps: &[Gap],
    asked: &Asked<'_>,
    complete: Verdict,
) -> Vec<String> {
    let count = |weight: GapWeight| gaps.iter().filter(|gap| gap.weight == weight).count();
    let (from, to) = (register.from, register.to);
    let mut sentences = vec![match complete {
        Verdict::Yes => format!("From {from} to {to} everything that the law wants is in the record."),
        Verdict::Unknown if register.acquisitions.is_empty() && register.administrations.is_empty() => {
            format!("From {from} to {to} nothing is recorded; that does not show that nothing was given.")
        }
        Verdict::Unknown => format!("From {from} to {to} it is not known whether the record is complete."),
        Verdict::No => {
            let missing = count(GapWeight::Required);
            let noun = if missing == 1 { "thing is" } else { "things are" };
            format!("From {from} to {to} {missing} {noun} missing that the law wants.")
        }
    }];
    for (weight, one, more) in [
        (GapWeight::Amiss, "thing was not as it should be", "things were not as they should be"),
        (GapWeight::WhereApplicable, "thing is missing if it applies", "things are missing if they apply"),
        (
            GapWeight::Advised,
            "thing is missing that practice advises",
            "things are missing that practice advises",
        ),
    ] {
        match count(weight) {
            0 => {}
            1 => sentences.push(format!("1 {one}.")),
            count => sentences.push(format!("{count} {more}.")),
        }
    }
    for fault in &asked.without_law {
        sentences.push(format!("What the law wants could not be asked: {fault}."));
    }
    if register.administrations.iter().all(|row| row.prescription.is_none())
        && !register.administrations.is_empty()
    {
        sentences.push(
            "No prescription is named: if a vet prescribed a medicine, record the prescription and attach a copy.".to_owned(),
        );
    }
    sentences
}

/// `the batch number`, but `proof of purchase`.
fn with_article(name: &str) -> String {
    let bare = ["proof", "which", "who", "how"];
    if bare.iter().any(|word| name.starts_with(word)) { name.to_owned() } else { format!("the {name}") }
}
