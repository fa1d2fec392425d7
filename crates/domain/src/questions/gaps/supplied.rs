//! Whether the record supplies a field that a law requires, for each row of the register.

use std::collections::BTreeMap;

use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::placeholder::says_something;
use crate::basics::words::{LotName, Person, PrescriptionName};
use crate::journal::seal::Hash;
use crate::questions::register::{
    AcquisitionRow, AdministrationRow, CoursePart, DisposalRow, DocumentPart, KeeperPart, MedicinePart,
    PrescriptionRow, Register, VetLotRow, WithdrawalPart,
};
use crate::rules::law::{Field, FieldNeed};

/// Whether a field is supplied.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Supplied {
    /// It is supplied.
    There,
    /// It will be known once the treatment is over, and is not late.
    NotYet,
    /// It does not apply to this row.
    DoesNotApply,
    /// It may be missing; the record does not decide.
    NotKnown,
    /// It is missing.
    Missing,
}

impl Supplied {
    fn if_there(there: bool) -> Supplied {
        if there { Supplied::There } else { Supplied::Missing }
    }
}

/// Other parts of the record that supply fields of a row.
pub(super) struct Lookup<'r> {
    pub(super) register: &'r Register,
    /// Document contents that are missing or altered: they prove nothing.
    not_kept: &'r [Hash],
    /// The acquisition of each lot, with its index in the register.
    acquisitions: BTreeMap<&'r LotName, (usize, &'r AcquisitionRow)>,
    /// The lots of vets, likewise.
    vet_lots: BTreeMap<&'r LotName, (usize, &'r VetLotRow)>,
    prescriptions: BTreeMap<&'r PrescriptionName, &'r PrescriptionRow>,
}

impl<'r> Lookup<'r> {
    pub(super) fn of(register: &'r Register, not_kept: &'r [Hash]) -> Lookup<'r> {
        // Lot names are unique; of two with the same name the first would count.
        let acquisitions = register.acquisitions.iter().enumerate().rev();
        let vet_lots = register.vet_lots.iter().enumerate().rev();
        let prescriptions = register.prescriptions.iter().rev();
        Lookup {
            register,
            not_kept,
            acquisitions: acquisitions.map(|(place, row)| (&row.lot, (place, row))).collect(),
            vet_lots: vet_lots.map(|(place, row)| (&row.lot, (place, row))).collect(),
            prescriptions: prescriptions.map(|row| (&row.prescription.number, row)).collect(),
        }
    }

    /// The acquisitions of the lots of an administration, in the order of the register.
    pub(super) fn acquisitions_of(&self, row: &AdministrationRow) -> Vec<&'r AcquisitionRow> {
        given_of(&self.acquisitions, row)
    }

    /// The vets' lots of an administration, likewise.
    pub(super) fn vet_lots_of(&self, row: &AdministrationRow) -> Vec<&'r VetLotRow> {
        given_of(&self.vet_lots, row)
    }

    /// A prescription of the register.
    pub(super) fn prescription(&self, number: &PrescriptionName) -> Option<&'r PrescriptionRow> {
        self.prescriptions.get(number).copied()
    }

    /// A field of an acquisition.
    #[expect(clippy::wildcard_enum_match_arm, reason = "`of_any` names every field")]
    pub(super) fn of_acquisition(&self, field: Field, row: &AcquisitionRow) -> Supplied {
        match field {
            Field::Batch => text(row.batch.as_ref()),
            Field::Expiry => Supplied::if_there(row.expiry.is_some()),
            Field::SupplierName => Supplied::if_there(supplier_name(row)),
            Field::SupplierAddress => Supplied::if_there(supplier_address(row)),
            Field::ProofOfPurchase => Supplied::if_there(self.proof(row)),
            Field::DateAcquired | Field::QuantityAcquired => Supplied::There,
            _ => self.of_any(field, &row.medicine, row.written.on),
        }
    }

    /// A field of a vet's lot. The keeper acquired nothing: the vet is who supplied it, and there is no purchase to prove.
    #[expect(clippy::wildcard_enum_match_arm, reason = "`of_any` names every field")]
    pub(super) fn of_vet_lot(&self, field: Field, row: &VetLotRow) -> Supplied {
        match field {
            Field::Batch => text(row.batch.as_ref()),
            Field::Expiry => Supplied::if_there(row.expiry.is_some()),
            Field::SupplierName => Supplied::if_there(named(Some(&row.vet))),
            Field::SupplierAddress => text(row.contact.as_ref()),
            Field::ProofOfPurchase => Supplied::DoesNotApply,
            _ => self.of_any(field, &row.medicine, row.written.on),
        }
    }

    /// A field of every lot of an administration.
    fn of_lots(&self, field: Field, row: &AdministrationRow) -> Supplied {
        let of_lot = |lot: &LotName| match (self.acquisitions.get(lot), self.vet_lots.get(lot)) {
            (Some((_, acquired)), _) => self.of_acquisition(field, acquired),
            (None, Some((_, of_vet))) => self.of_vet_lot(field, of_vet),
            (None, None) => Supplied::Missing,
        };
        let each: Vec<Supplied> = row.given.iter().map(|part| of_lot(&part.lot)).collect();
        match () {
            () if each.contains(&Supplied::Missing) => Supplied::Missing,
            () if each.contains(&Supplied::There) => Supplied::There,
            () => Supplied::DoesNotApply,
        }
    }

    /// A field of an administration, by the keeper or by a vet.
    #[expect(clippy::wildcard_enum_match_arm, reason = "`of_any` names every field")]
    pub(super) fn of_administration(
        &self,
        field: Field,
        need: FieldNeed,
        row: &AdministrationRow,
    ) -> Supplied {
        match field {
            Field::Batch
            | Field::Expiry
            | Field::SupplierName
            | Field::SupplierAddress
            | Field::ProofOfPurchase => self.of_lots(field, row),
            Field::DateFirstGiven
            | Field::QuantityGiven
            | Field::QuantityPerColony
            | Field::Colonies
            | Field::NumberTreated => Supplied::There,
            Field::DateLastGiven | Field::Duration => self.end(row, |part| part.last.is_some()),
            // Only the end of the withdrawal period: a further wait, or a flow that bars supers, is not a field of
            // the law.
            Field::WithdrawalEnd => self.end(row, |part| {
                let documented = |period: &WithdrawalPart| period.confidence == Confidence::Document;
                part.last.is_some() && part.withdrawal.as_ref().is_some_and(documented)
            }),
            Field::TimeOfDay => Supplied::if_there(row.written.at.is_some()),
            Field::Route => Supplied::if_there(row.method.is_some() || row.one_way),
            Field::Apiary | Field::ApiaryDuringWithdrawal => {
                let mut own = row.courses.iter().filter(|part| part.came_by.is_none());
                Supplied::if_there(own.all(|part| part.apiary.is_some()))
            }
            Field::WithdrawalPeriod => Supplied::if_there(withdrawal_recorded(self, row)),
            Field::Reason => text(row.against.as_ref()),
            Field::GivenBy => Supplied::if_there(named(row.given_by.as_ref()) || named(row.vet.as_ref())),
            Field::VetName => {
                row.vet.as_ref().map_or(Supplied::DoesNotApply, |vet| Supplied::if_there(named(Some(vet))))
            }
            Field::CertificateNumber => text(row.certificate.as_ref()),
            // Without a prescription, a law that always requires a name accepts that of who dispensed or gave it.
            Field::Prescriber if row.prescription.is_none() && need == FieldNeed::Required => {
                if named(row.given_by.as_ref()) || named(row.vet.as_ref()) {
                    return Supplied::There;
                }
                self.of_lots(Field::SupplierName, row)
            }
            Field::Prescriber => row.prescription.as_ref().map_or(Supplied::DoesNotApply, |prescription| {
                Supplied::if_there(
                    named(prescription.vet.as_ref())
                        && text(prescription.contact.as_ref()) == Supplied::There,
                )
            }),
            Field::PrescriptionCopy => row.prescription.as_ref().map_or(Supplied::DoesNotApply, |used| {
                let known = self.prescription(&used.number);
                Supplied::if_there(known.is_some_and(|known| self.any_kept(&known.documents)))
            }),
            _ => self.of_any(field, &row.medicine, row.written.on),
        }
    }

    /// A field of a disposal.
    #[expect(clippy::wildcard_enum_match_arm, reason = "`of_any` names every field")]
    pub(super) fn of_disposal(&self, field: Field, row: &DisposalRow) -> Supplied {
        match field {
            Field::DateDisposed | Field::QuantityDisposed => Supplied::There,
            Field::DisposalHowAndWhere => text(Some(&row.how_and_where)),
            Field::Batch => text(row.batch.as_ref()),
            _ => self.of_any(field, &row.medicine, row.written.on),
        }
    }

    /// A field that any row may have.
    fn of_any(&self, field: Field, medicine: &MedicinePart, on: Day) -> Supplied {
        match field {
            Field::ProductName => text(medicine.pack_name.as_ref()),
            Field::ActiveSubstance => Supplied::if_there(!medicine.actives.is_empty()),
            Field::AuthorisationNumber => text(medicine.authorisation.as_ref()),
            Field::KeeperNameAndAddress => {
                let keeper = self.keeper(on).filter(|keeper| named(Some(&keeper.keeper)));
                text(keeper.and_then(|keeper| keeper.address.as_ref()))
            }
            // These fields belong to other kinds of row.
            Field::Batch
            | Field::Expiry
            | Field::DateAcquired
            | Field::QuantityAcquired
            | Field::SupplierName
            | Field::SupplierAddress
            | Field::ProofOfPurchase
            | Field::PrescriptionCopy
            | Field::Prescriber
            | Field::DateFirstGiven
            | Field::DateLastGiven
            | Field::Duration
            | Field::TimeOfDay
            | Field::QuantityGiven
            | Field::QuantityPerColony
            | Field::Route
            | Field::Colonies
            | Field::NumberTreated
            | Field::Apiary
            | Field::ApiaryDuringWithdrawal
            | Field::WithdrawalPeriod
            | Field::WithdrawalEnd
            | Field::Reason
            | Field::GivenBy
            | Field::VetName
            | Field::CertificateNumber
            | Field::DateDisposed
            | Field::QuantityDisposed
            | Field::DisposalHowAndWhere => Supplied::DoesNotApply,
        }
    }

    /// A field that is known only once a treatment is over: not due while the treatment is in and in time.
    fn end(&self, row: &AdministrationRow, known: fn(&CoursePart) -> bool) -> Supplied {
        let as_of = self.register.as_of;
        let each = row.courses.iter().map(|part| match part {
            part if known(part) => Supplied::There,
            // It is out and a period is not known: waiting will not supply it.
            part if !part.still_in => Supplied::Missing,
            part if part.must_be_out_by.is_some_and(|by| by < as_of) => Supplied::Missing,
            // How long it may stay is not stated, and the least stay is over or not stated either.
            part if part.must_be_out_by.is_none()
                && part.may_come_out_from.is_none_or(|from| from < as_of) =>
            {
                Supplied::NotKnown
            }
            _ => Supplied::NotYet,
        });
        let each: Vec<Supplied> = each.collect();
        let any = |wanted: Supplied| each.contains(&wanted);
        match () {
            () if any(Supplied::Missing) => Supplied::Missing,
            () if any(Supplied::NotKnown) => Supplied::NotKnown,
            () if any(Supplied::NotYet) => Supplied::NotYet,
            () => Supplied::There,
        }
    }

    /// A stored document, or words that say what proves the purchase and where it is.
    fn proof(&self, row: &AcquisitionRow) -> bool {
        self.any_kept(&row.documents) || row.proof.as_ref().is_some_and(|proof| says_something(proof))
    }

    fn any_kept(&self, documents: &[DocumentPart]) -> bool {
        documents.iter().any(|document| !self.not_kept.contains(&document.content))
    }

    fn keeper(&self, on: Day) -> Option<&KeeperPart> {
        let keepers = &self.register.keepers;
        keepers.iter().rfind(|keeper| keeper.since <= on).or_else(|| keepers.first())
    }
}

/// The rows of the lots of an administration, in the order of the register.
fn given_of<'r, T>(lots: &BTreeMap<&LotName, (usize, &'r T)>, row: &AdministrationRow) -> Vec<&'r T> {
    let lots = row.given.iter().filter_map(|part| lots.get(&part.lot));
    let by_place: BTreeMap<usize, &T> = lots.copied().collect();
    by_place.into_values().collect()
}

/// Whether the withdrawal period of this dose is recorded: in the entry, in its prescription, for each of its lots,
/// or for the medicine. The built-in leaflet is not a record, and statements about other doses do not count.
fn withdrawal_recorded(lookup: &Lookup<'_>, row: &AdministrationRow) -> bool {
    let prescribed =
        row.prescription.as_ref().and_then(|used| lookup.prescription(&used.number)?.withdrawal_days);
    let read = !row.given.is_empty() && row.given.iter().all(|part| part.withdrawal_read.is_some());
    row.withdrawal_stated.is_some()
        || prescribed.is_some()
        || read
        || row.medicine.withdrawal_declared.is_some()
}

fn supplier_name(row: &AcquisitionRow) -> bool {
    row.supplier.as_ref().is_some_and(|supplier| says_something(&supplier.name))
}

/// Whether somebody is named.
fn named(person: Option<&Person>) -> bool {
    person.is_some_and(|person| says_something(person.as_str()))
}

fn supplier_address(row: &AcquisitionRow) -> bool {
    let address = row.supplier.as_ref().and_then(|supplier| supplier.address.as_ref());
    address.is_some_and(|address| says_something(address))
}

fn text(value: Option<&String>) -> Supplied {
    Supplied::if_there(value.is_some_and(|value| says_something(value)))
}
