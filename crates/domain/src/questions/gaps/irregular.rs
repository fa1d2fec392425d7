//! Other irregularities: medicines, the use of lots, and stock accounts that do not balance.

use std::collections::{BTreeMap, BTreeSet};

use super::gap::{About, Finding, Gap, GapWeight, LotCheck, Supply};
use super::row::{Row, name};
use super::supplied::Lookup;
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::fact::Fact;
use crate::basics::words::{LotName, MedicineName};
use crate::facts::holding::Holding;
use crate::facts::{Overdrawn, same_doses};
use crate::journal::event::{Administration, Kind};
use crate::journal::seal::Hash;
use crate::questions::register::{AdministrationRow, CoursePart, GivenPart, Register};
use crate::questions::stock::Lot;

/// Medicines that were given but are not described, name no authorisation, or refer to unknown directions.
pub(super) fn of_medicines(holding: &Holding, register: &Register) -> Vec<Gap> {
    // Reported once for each medicine, and again if its leaflet is no longer known, as after a move to another
    // country.
    let mut told: BTreeSet<(Option<&MedicineName>, bool)> = BTreeSet::new();
    let mut gaps = Vec::new();
    for row in &register.administrations {
        let medicine = &row.medicine;
        let keepers_name = medicine.medicine.known();
        if !told.insert((keepers_name, medicine.leaflet_known)) {
            continue;
        }
        let described = keepers_name.and_then(|name| holding.medicine(name));
        let of_row = (row.written.entry, row.written.seq, Kind::Administration, row.written.on);
        let (entry, seq, kind, on) = described
            .map_or(of_row, |(record, _)| (record.id, record.seq, Kind::MedicineDescribed, record.on));
        let mut add = |finding, supply| {
            let about = About::Medicine { medicine: name(medicine) };
            let (weight, law) = (GapWeight::WhereApplicable, Vec::new());
            gaps.push(Gap { weight, finding, about, entry, seq, kind, on, supply, law });
        };
        if medicine.authorisation.as_ref().is_none_or(|number| number.trim().is_empty()) {
            add(Finding::MedicineAuthorisation, Supply::ReadOnPack);
        }
        match (&medicine.leaflet, medicine.leaflet_known) {
            (Some(leaflet), false) => {
                add(Finding::MedicineLeaflet(leaflet.clone()), Supply::CheckAuthorisation);
            }
            (None, _) if described.is_none_or(|(_, described)| described.terms.is_none()) => {
                add(Finding::MedicineDirections, Supply::PointToDirections);
            }
            _ => {}
        }
    }
    gaps
}

/// The lots in stock, by name.
pub(super) struct Books<'s> {
    /// Each with its index in the stock.
    lots: BTreeMap<&'s LotName, (usize, &'s Lot)>,
}

impl<'s> Books<'s> {
    pub(super) fn of(stock: &'s [Lot]) -> Books<'s> {
        Books { lots: stock.iter().enumerate().map(|(place, lot)| (&lot.lot, (place, lot))).collect() }
    }

    fn lot(&self, lot: &LotName) -> Option<&'s Lot> {
        self.lots.get(lot).map(|(_, lot)| *lot)
    }

    /// The lots of an administration, in the order of the stock.
    fn of_row(&self, row: &AdministrationRow) -> impl Iterator<Item = &'s Lot> {
        let lots = row.given.iter().filter_map(|part| self.lots.get(&part.lot));
        lots.copied().collect::<BTreeMap<usize, &Lot>>().into_values()
    }
}

/// Doses after the expiry or past the in-use life, and treatments without a recorded end.
pub(super) fn of_uses(holding: &Holding, lookup: &Lookup<'_>, books: &Books<'_>) -> Vec<Gap> {
    let register = lookup.register;
    let mut gaps = Vec::new();
    for row in &register.administrations {
        gaps.extend(after_expiry(row));
        gaps.extend(books.of_row(row).filter_map(|lot| past_life_in_use(row, lot)));
        gaps.extend(same_dose_twice(holding, row));
        gaps.extend(prescribed_after(lookup, row));
        gaps.extend(row.courses.iter().filter_map(|part| end_not_recorded(row, part, register.as_of)));
    }
    gaps
}

/// A dose that an earlier entry records as well.
fn same_dose_twice(holding: &Holding, row: &AdministrationRow) -> Option<Gap> {
    let record = holding.entry(row.written.entry)?;
    let same = same_doses(holding, record.body()?, record.on, record.at);
    let (earlier, colonies) = same.into_iter().find(|(other, _)| other.seq < record.seq)?;
    let finding = Finding::SameDoseTwice { earlier: earlier.seq, colonies: colonies.into_iter().collect() };
    Some(Gap { supply: Supply::StrikeOneOut, ..shown(Row::Administration(row), finding) })
}

/// A prescription dated later than the dose given under it.
fn prescribed_after(lookup: &Lookup<'_>, row: &AdministrationRow) -> Option<Gap> {
    let number = &row.prescription.as_ref()?.number;
    let on = lookup.prescription(number).map(|known| known.written.on);
    if on.is_some_and(|on| on <= row.written.on) {
        return None;
    }
    Some(shown(Row::Administration(row), Finding::PrescribedAfter { number: number.clone(), on }))
}

/// The lots of an administration that had expired, each once.
fn after_expiry(row: &AdministrationRow) -> impl Iterator<Item = Gap> {
    let expired = |part: &GivenPart| {
        let expiry = part.expiry.filter(|expiry| *expiry < row.written.on)?;
        Some((part.lot.clone(), expiry))
    };
    let lots: BTreeMap<LotName, Day> = row.given.iter().filter_map(expired).collect();
    let gap = |(lot, expiry)| shown(Row::Administration(row), Finding::UseAfterExpiry { lot, expiry });
    lots.into_iter().map(gap)
}

/// Lots of vets of which nothing is recorded as given: then the record does not say when, how much and to which colonies.
pub(super) fn of_vet_lots(holding: &Holding, register: &Register) -> Vec<Gap> {
    let given = |lot: &LotName| {
        let mut file = holding.lot_file(lot).iter().filter(|record| record.on <= register.as_of);
        file.any(|record| record.body::<Administration>().is_some())
    };
    let not_given = register.vet_lots.iter().filter(|row| !given(&row.lot));
    let gap = |row| Gap {
        weight: GapWeight::WhereApplicable,
        supply: Supply::RecordWhatVetGave,
        ..shown(Row::VetLot(row), Finding::VetLotNotGiven)
    };
    not_given.map(gap).collect()
}

fn past_life_in_use(row: &AdministrationRow, lot: &Lot) -> Option<Gap> {
    let in_use = lot.in_use.as_ref()?;
    let finding = Finding::PastLifeInUse {
        lot: lot.lot.clone(),
        opened: lot.opened?.on,
        until: in_use.until.filter(|until| *until < row.written.on)?,
        documented: in_use.confidence == Confidence::Document,
        says: in_use.says.clone(),
    };
    // A lot may be several packs, and the record does not say which one was used.
    let supply = Supply::PerhapsAnotherPack;
    Some(Gap { weight: GapWeight::Advised, supply, ..shown(Row::Administration(row), finding) })
}

fn end_not_recorded(row: &AdministrationRow, part: &CoursePart, as_of: Day) -> Option<Gap> {
    // Reported once, with the first dose.
    if row.dose > 1 {
        return None;
    }
    let colonies = part.colonies.clone();
    let (weight, finding, supply) = match (part.not_known_since, part.must_be_out_by) {
        (Some(since), _) => {
            let finding = Finding::WhereaboutsNotRecorded { since, colonies };
            (GapWeight::Irregular, finding, Supply::LookWhereItIs)
        }
        (None, Some(by)) if by < as_of => {
            let finding = Finding::RemovalNotRecorded { colonies, by: Some(by) };
            (GapWeight::Irregular, finding, Supply::TakeOut)
        }
        (None, None) if part.still_in && part.may_come_out_from.is_none_or(|from| from < as_of) => {
            let finding = Finding::RemovalNotRecorded { colonies, by: None };
            (GapWeight::Advised, finding, Supply::LookOrReadStay)
        }
        _ => return None,
    };
    Some(Gap { weight, supply, ..shown(Row::Administration(row), finding) })
}

/// Documents whose stored content is missing or altered.
pub(super) fn of_documents(register: &Register, not_kept: &[Hash]) -> Vec<Gap> {
    let of_lots = register
        .acquisitions
        .iter()
        .flat_map(|row| row.documents.iter().map(move |document| (Row::Acquisition(row), document)));
    let of_vets = register
        .vet_lots
        .iter()
        .flat_map(|row| row.documents.iter().map(move |document| (Row::VetLot(row), document)));
    let lost = of_lots.chain(of_vets).filter(|(_, document)| not_kept.contains(&document.content));
    let gap = lost.map(|(row, document)| {
        let finding = Finding::DocumentNotKept { file_name: document.file_name.clone() };
        Gap { supply: Supply::AttachAgain, ..shown(row, finding) }
    });
    gap.collect()
}

/// An irregularity that no entry can fix.
fn shown(row: Row<'_>, finding: Finding) -> Gap {
    let written = row.written();
    Gap {
        weight: GapWeight::Irregular,
        finding,
        about: row.about(),
        entry: written.entry,
        seq: written.seq,
        kind: row.kind(),
        on: written.on,
        supply: Supply::StaysOnRecord,
        law: Vec::new(),
    }
}

/// Lots without proof of purchase, without expiry, or with an account that does not balance.
pub(super) fn of_lots(register: &Register, books: &Books<'_>) -> Vec<Gap> {
    let mut gaps = Vec::new();
    for row in &register.acquisitions {
        let shown = |finding| shown(Row::Acquisition(row), finding);
        let advice = |finding, supply| Gap { weight: GapWeight::Advised, supply, ..shown(finding) };
        if row.documents.is_empty() {
            let told_in_words = row.proof.as_ref().is_some_and(|proof| !proof.trim().is_empty());
            gaps.push(advice(Finding::NoDocument { told_in_words }, Supply::AttachInvoice));
        }
        if row.expiry.is_none() {
            gaps.push(advice(Finding::ExpiryNotTold, Supply::ReadExpiry));
        }
        if let Some(expiry) = row.expiry.filter(|expiry| *expiry < row.written.on) {
            gaps.push(shown(Finding::ExpiredWhenAcquired { expiry }));
        }
        let Some(lot) = books.lot(&row.lot) else { continue };
        if let Fact::NotKnown(Overdrawn { by }) = lot.left() {
            let finding = Finding::MoreGoneThanAcquired { book: check(lot), over: by };
            gaps.push(Gap { supply: Supply::CountAgain, ..shown(finding) });
        } else if !lot.count_corrected.is_empty() {
            let finding = Finding::CountCorrected { lot: lot.lot.clone() };
            gaps.push(advice(finding, Supply::ExplainDifference));
        }
    }
    gaps
}

/// The stock account of every lot in the register.
pub(super) fn checks(register: &Register, stock: &[Lot]) -> Vec<LotCheck> {
    let of_register: BTreeSet<&LotName> = register.acquisitions.iter().map(|row| &row.lot).collect();
    stock.iter().filter(|lot| of_register.contains(&lot.lot)).map(check).collect()
}

fn check(lot: &Lot) -> LotCheck {
    let corrected = lot.count_corrected.clone();
    LotCheck::of(lot.lot.clone(), lot.medicine.clone(), lot.unit, lot.balance(), corrected)
}
