//! Checks each row of the register against the law of its day, field by field.

use std::collections::BTreeSet;

use super::gap::{Finding, Gap, GapWeight, LawNotAsked, LawPart, Supply};
use super::row::{Row, law, sources};
use super::supplied::{Lookup, Supplied};
use crate::basics::calendar::Day;
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::questions::register::{AcquisitionRow, VetLotRow};
use crate::rules::law::{Field, FieldNeed, FieldNeeded, LawStanding, Laws, Occasion, Profile};

/// The result of checking the laws.
pub(super) struct Asked<'r> {
    holding: &'r Holding,
    laws_known: &'r Laws,
    lookup: &'r Lookup<'r>,
    /// The laws that were checked.
    pub(super) laws: BTreeSet<LawPart>,
    /// Why the law of some day could not be checked.
    pub(super) unknown_law: BTreeSet<LawNotAsked>,
    /// The missing fields.
    pub(super) gaps: Vec<Gap>,
    /// Whether a law that was checked asks for a prescription.
    pub(super) knows_prescriptions: bool,
    /// The gaps already reported: a lot without a batch number is one gap, however often it was used.
    told: BTreeSet<(Field, EntryId)>,
}

impl<'r> Asked<'r> {
    pub(super) fn of(holding: &'r Holding, laws: &'r Laws, lookup: &'r Lookup<'r>) -> Asked<'r> {
        let register = lookup.register;
        let mut asked = Asked {
            holding,
            laws_known: laws,
            lookup,
            laws: BTreeSet::new(),
            unknown_law: BTreeSet::new(),
            gaps: Vec::new(),
            knows_prescriptions: false,
            told: BTreeSet::new(),
        };
        // Also if there are no rows, so that an unknown law is reported.
        asked.law_on(register.to.min(register.as_of));
        for row in &register.acquisitions {
            asked.row(Occasion::Acquisition, Row::Acquisition(row), |field, _| {
                lookup.of_acquisition(field, row)
            });
        }
        for row in &register.administrations {
            let occasion =
                if row.vet.is_some() { Occasion::VetAdministration } else { Occasion::Administration };
            asked.row(occasion, Row::Administration(row), |field, need| {
                lookup.of_administration(field, need, row)
            });
        }
        for row in &register.disposals {
            asked.row(Occasion::Disposal, Row::Disposal(row), |field, _| lookup.of_disposal(field, row));
        }
        asked
    }

    /// Checks one row: every field that the law of its day requires, and whether it was recorded in time.
    fn row(&mut self, occasion: Occasion, row: Row<'r>, supplied: impl Fn(Field, FieldNeed) -> Supplied) {
        let Some(profile) = self.law_on(row.written().on) else { return };
        for duty in profile.fields(occasion) {
            self.knows_prescriptions |=
                duty.field == Field::PrescriptionCopy && duty.need != FieldNeed::Advised;
            match supplied(duty.field, duty.need) {
                Supplied::Missing => self.missing(&duty, row, false),
                Supplied::NotKnown => self.missing(&duty, row, true),
                Supplied::There | Supplied::NotYet | Supplied::DoesNotApply => {}
            }
        }
        self.written_late(&profile, occasion, row);
    }

    /// The law of the holding on a day. An unknown law is noted.
    fn law_on(&mut self, on: Day) -> Option<Profile<'r>> {
        let Some(jurisdiction) = self.holding.jurisdiction(on) else {
            self.unknown_law.insert(LawNotAsked::NotSaid);
            return None;
        };
        let Some(profile) = self.laws_known.profile(jurisdiction, on) else {
            let jurisdiction = jurisdiction.clone();
            self.unknown_law.insert(LawNotAsked::NotKnown { jurisdiction, in_force_on: None });
            return None;
        };
        if profile.standing() != LawStanding::InForce {
            let jurisdiction = jurisdiction.clone();
            self.unknown_law.insert(LawNotAsked::NotKnown { jurisdiction, in_force_on: Some(on) });
            return None;
        }
        // Member states may add to the requirements of the Union.
        if profile.parts().first().is_some_and(|part| part.file.jurisdiction != *jurisdiction) {
            self.unknown_law.insert(LawNotAsked::UnionsPartOnly { jurisdiction: jurisdiction.clone() });
        }
        for part in profile.parts().iter().filter(|part| part.standing == LawStanding::InForce) {
            let (jurisdiction, title) = (part.file.jurisdiction.clone(), part.file.title.clone());
            self.laws.insert(LawPart { jurisdiction, title });
        }
        Some(profile)
    }

    fn missing(&mut self, duty: &FieldNeeded<'_>, row: Row<'r>, perhaps: bool) {
        // If the record names a prescription, these fields apply.
        let applies = matches!(duty.field, Field::Prescriber | Field::PrescriptionCopy);
        let weight = match duty.need {
            FieldNeed::Required if perhaps => GapWeight::WhereApplicable,
            FieldNeed::Required => GapWeight::Required,
            FieldNeed::WhereApplicable if applies && !perhaps => GapWeight::Required,
            FieldNeed::WhereApplicable => GapWeight::WhereApplicable,
            FieldNeed::Advised => GapWeight::Advised,
        };
        for row in self.where_it_is_recorded(duty.field, row) {
            let written = row.written();
            if self.told.insert((duty.field, written.entry)) {
                self.gaps.push(Gap {
                    weight,
                    finding: row.lacks(duty.field, self.lookup.register),
                    about: row.about(),
                    entry: written.entry,
                    seq: written.seq,
                    kind: row.kind(),
                    on: written.on,
                    supply: row.supply(duty.field),
                    law: law(duty),
                });
            }
        }
    }

    /// The rows that must record a field: fields of a lot are missing where it came in, not in the doses.
    fn where_it_is_recorded(&self, field: Field, row: Row<'r>) -> Vec<Row<'r>> {
        let of_lot = [
            Field::Batch,
            Field::Expiry,
            Field::SupplierName,
            Field::SupplierAddress,
            Field::ProofOfPurchase,
        ];
        let administration = row.administration().filter(|_| of_lot.contains(&field));
        let Some(given) = administration else { return vec![row] };
        let lacks = |lot: &&'r AcquisitionRow| self.lookup.of_acquisition(field, lot) == Supplied::Missing;
        let vets_lacks = |lot: &&'r VetLotRow| self.lookup.of_vet_lot(field, lot) == Supplied::Missing;
        let acquired = self.lookup.acquisitions_of(given).into_iter().filter(lacks).map(Row::Acquisition);
        let of_vets = self.lookup.vet_lots_of(given).into_iter().filter(vets_lacks).map(Row::VetLot);
        acquired.chain(of_vets).collect()
    }

    fn written_late(&mut self, profile: &Profile<'_>, occasion: Occasion, row: Row<'r>) {
        let Some(limit) = profile.time_limit(occasion) else { return };
        let (written, within_days) = (row.written(), limit.rule.within_days);
        if written.days_late <= u32::from(within_days) {
            return;
        }
        self.gaps.push(Gap {
            weight: GapWeight::Irregular,
            finding: Finding::WrittenLate { days_late: written.days_late, within_days },
            about: row.about(),
            entry: written.entry,
            seq: written.seq,
            kind: row.kind(),
            on: written.on,
            supply: Supply::NothingMends,
            law: sources(limit.file, &limit.rule.basis),
        });
    }
}
