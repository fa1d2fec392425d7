//! A row of the register as checked against the law: its identity, its missing fields and how to supply them.

use super::gap::{About, Finding, LawPlace, OpenEnd, Supply, WhyOpen};
use crate::basics::fact::Fact;
use crate::basics::words::ColonyName;
use crate::facts::NotOnRecord;
use crate::journal::event::Kind;
use crate::questions::register::{
    AcquisitionRow, AdministrationRow, DisposalRow, MedicinePart, Register, SaidBy, VetLotRow, Written,
};
use crate::rules::law::{Basis, Field, FieldNeeded, LawFile};

/// The row that a gap is about.
#[derive(Clone, Copy)]
pub(super) enum Row<'r> {
    Acquisition(&'r AcquisitionRow),
    VetLot(&'r VetLotRow),
    Administration(&'r AdministrationRow),
    Disposal(&'r DisposalRow),
}

impl<'r> Row<'r> {
    pub(super) fn written(self) -> &'r Written {
        match self {
            Row::Acquisition(row) => &row.written,
            Row::VetLot(row) => &row.written,
            Row::Administration(row) => &row.written,
            Row::Disposal(row) => &row.written,
        }
    }

    pub(super) fn kind(self) -> Kind {
        match self {
            Row::Acquisition(_) => Kind::LotAcquired,
            Row::VetLot(_) => Kind::VetLot,
            Row::Administration(_) => Kind::Administration,
            Row::Disposal(_) => Kind::Disposal,
        }
    }

    pub(super) fn administration(self) -> Option<&'r AdministrationRow> {
        match self {
            Row::Administration(row) => Some(row),
            Row::Acquisition(_) | Row::VetLot(_) | Row::Disposal(_) => None,
        }
    }

    /// The row as a gap names it.
    pub(super) fn about(self) -> About {
        match self {
            Row::Acquisition(row) => {
                About::Acquisition { lot: row.lot.clone(), medicine: name(&row.medicine) }
            }
            Row::VetLot(row) => About::VetLot { lot: row.lot.clone(), medicine: name(&row.medicine) },
            Row::Administration(row) => {
                let colonies = row.given.iter().flat_map(|part| &part.colonies);
                let mut colonies: Vec<ColonyName> = colonies.cloned().collect();
                colonies.sort();
                colonies.dedup();
                About::Administration { medicine: name(&row.medicine), colonies }
            }
            Row::Disposal(row) => {
                About::Disposal { lot: row.lot.clone(), quantity: row.quantity, unit: row.medicine.unit }
            }
        }
    }

    /// The finding for a missing field.
    pub(super) fn lacks(self, field: Field, register: &Register) -> Finding {
        let Some(row) = self.administration() else { return Finding::FieldNotRecorded(field) };
        if field == Field::WithdrawalPeriod {
            let leaflet = row.courses.iter().filter_map(|part| part.withdrawal.as_ref());
            let said = leaflet.filter(|said| said.said_by == SaidBy::Leaflet).map(|said| said.days);
            return Finding::WithdrawalNotRecorded { leaflet_says: said.max() };
        }
        if !matches!(field, Field::DateLastGiven | Field::Duration | Field::WithdrawalEnd) {
            return Finding::FieldNotRecorded(field);
        }
        let lost = row.courses.iter().find(|part| part.not_known_since.is_some());
        let late = || {
            let over = |by| by < register.as_of;
            row.courses.iter().find(|part| part.still_in && part.must_be_out_by.is_some_and(over))
        };
        let open = lost.map(|part| (part, WhyOpen::Lost)).or_else(|| Some((late()?, WhyOpen::Late)));
        let open = open.map(|(part, why)| OpenEnd { colonies: part.colonies.clone(), why });
        Finding::EndNotKnown { field, open }
    }

    /// How to supply a field.
    #[expect(clippy::wildcard_enum_match_arm, reason = "the other fields stand in the entry itself")]
    pub(super) fn supply(self, field: Field) -> Supply {
        let seq = self.written().seq;
        if let (Field::SupplierName | Field::SupplierAddress, Row::VetLot(_)) = (field, self) {
            return Supply::ReachOfLotsVet { seq };
        }
        match field {
            Field::ProductName | Field::ActiveSubstance | Field::AuthorisationNumber => {
                Supply::DescribeMedicine
            }
            Field::ProofOfPurchase => Supply::ProvePurchase,
            Field::PrescriptionCopy => Supply::AttachPrescription,
            Field::Prescriber => {
                let of_none = self.administration().is_some_and(|row| row.prescription.is_none());
                if of_none { Supply::WhoDispensedOrGave { seq } } else { Supply::ReachOfVet }
            }
            Field::WithdrawalPeriod => Supply::WithdrawalDays { seq },
            Field::DateLastGiven | Field::Duration => Supply::Removal,
            Field::WithdrawalEnd => Supply::RemovalAndWithdrawal,
            Field::KeeperNameAndAddress => Supply::KeeperAddress,
            _ => Supply::CorrectEntry { seq, field },
        }
    }
}

/// The name of a medicine on its pack, or the keeper's name.
pub(super) fn name(medicine: &MedicinePart) -> Fact<String, NotOnRecord> {
    match &medicine.pack_name {
        Some(pack_name) => Fact::Known(pack_name.clone()),
        None => medicine.medicine.as_ref().map(ToString::to_string),
    }
}

/// Where the law requires a field.
pub(super) fn law(needed: &FieldNeeded<'_>) -> Vec<LawPlace> {
    let mut said: Vec<LawPlace> =
        needed.by.iter().flat_map(|ruled| sources(ruled.file, &ruled.rule.basis)).collect();
    said.dedup();
    said
}

/// The sources of a rule, each with the place in it.
pub(super) fn sources(file: &LawFile, basis: &Basis) -> Vec<LawPlace> {
    let known = basis.source.iter().filter_map(|key| file.source(key));
    let places =
        known.map(|source| LawPlace { title: source.title.clone(), locator: source.locator.clone() });
    places.collect()
}
