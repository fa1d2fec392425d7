//! Refuses entries that cannot be true. Entries that break a rule are recorded, and judged elsewhere.

use std::sync::Arc;

use super::check_documents::check_count;
use super::check_names::check_stock;
use super::check_place::{check_confirmed, check_flow, check_normals, check_temperatures};
use super::refusal::Refusal;
use super::untrue::{Archives, Colonies, Corrections, Entries, Lots, Places, Terms};
use super::{Holding, Record};
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::{Jurisdiction, RemovalNeed};
use crate::journal::copied::CopiedFrom;
use crate::journal::entry::{Entry, EntryId};
use crate::journal::event::{ColonyUnited, Event, StatedTerms};

/// Longest period that may be stated, in days. A longer one is a typing error.
pub(super) const DAYS_MOST: u16 = 400;

/// Why an entry is checked.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Look {
    /// It is new.
    First,
    /// It was sealed before, perhaps by an earlier version. Checks added since are skipped, so that every copy of a
    /// journal stays readable.
    Sealed,
    /// It was accepted before, and another entry was corrected. The stock of its lot is checked with the entry that
    /// changed it.
    Again,
}

pub(super) type Checked = Result<(), Refusal>;

impl Holding {
    /// Checks of every entry: a new id, no day in the future.
    pub(super) fn check_envelope(&self, entry: &Entry) -> Checked {
        let draft = &entry.draft;
        if self.records.get(draft.id).is_some() {
            return Err(Refusal::at("/id", Entries::IdIsTaken { id: draft.id }));
        }
        let today = entry.recorded_at.latest_civil_date();
        if draft.on > today {
            return Err(Refusal::at("/on", Entries::InTheFuture { on: draft.on, today }));
        }
        if let Some(copied) = draft.copied_from.as_deref() {
            check_written(copied, draft.on)?;
            let written_on = copied.written_on;
            if written_on > today {
                return Err(Refusal::at("/written_on", Entries::WrittenLater { written_on, today }));
            }
        }
        Ok(())
    }

    /// Checks that the corrected entry exists, was not corrected before, and has the same kind. Returns it.
    pub(super) fn check_corrected(&self, entry: &Entry, of: EntryId) -> Result<Arc<Record>, Refusal> {
        let refused = |why: Corrections| Err(Refusal::at("/corrects", why));
        let Some(old) = self.records.get(of) else {
            return refused(Corrections::NoSuchEntry { of });
        };
        if let Some(by) = self.superseded.get(&of) {
            return refused(Corrections::CorrectedBefore { of, by: *by });
        }
        if matches!(old.event, Event::Archived(_)) {
            return refused(Corrections::OfArchiveStep { of });
        }
        if matches!(old.event, Event::InArchive(_)) {
            return refused(Corrections::OfMovedEntry { of });
        }
        if matches!(old.event, Event::StrikeOut(_)) {
            return refused(Corrections::OfStrikeOut { of });
        }
        let (was, now) = (old.event.kind(), entry.draft.kind());
        if !matches!(entry.draft.event, Event::StrikeOut(_)) && was != now {
            return refused(Corrections::OfOtherKind { of, was, now });
        }
        Ok(Arc::clone(old))
    }

    /// Checks the event of an entry that is in no file yet.
    #[expect(
        clippy::too_many_lines,
        reason = "one arm for each kind of entry, so that a new kind is led here"
    )]
    pub(super) fn check_event(&self, on: Day, event: &Event, look: Look) -> Checked {
        match event {
            Event::HoldingDetails(body) => match look {
                Look::First => check_jurisdiction(&body.jurisdiction),
                Look::Sealed | Look::Again => Ok(()),
            },
            Event::StrikeOut(_) => Ok(()),
            Event::Archived(_) | Event::InArchive(_) => {
                Err(Refusal::at("/kind", Archives::ByItsStepOnly { kind: event.kind() }))
            }
            Event::ApiaryDetails(body) => self.check_new_apiary(&body.apiary),
            Event::SiteConditions(body) => {
                self.check_apiary("/body/apiary", &body.apiary)?;
                check_span(on, body.until, "/body/until")
            }
            Event::NectarFlow(body) => {
                self.check_apiary("/body/apiary", &body.apiary)?;
                check_span(body.from, body.to, "/body/to")?;
                check_flow(on, body)
            }
            Event::Temperature(body) => {
                self.check_apiary("/body/apiary", &body.apiary)?;
                check_temperatures(on, body)
            }
            Event::TemperatureNormals(body) => {
                self.check_apiary("/body/apiary", &body.apiary)?;
                check_normals(body)
            }
            Event::ColonyEstablished(body) => {
                self.check_new_colony("/body/colony", &body.colony)?;
                self.check_apiary("/body/apiary", &body.apiary)
            }
            Event::ColonyMoved(body) => {
                self.check_alive("/body/colony", &body.colony, on)?;
                self.check_apiary("/body/to", &body.to)
            }
            Event::ColonySplit(body) => {
                self.check_alive("/body/colony", &body.colony, on)?;
                self.check_new_colony("/body/into", &body.into)?;
                body.to.as_ref().map_or(Ok(()), |to| self.check_apiary("/body/to", to))
            }
            Event::ColonyUnited(body) => self.check_united(on, body),
            Event::ColonyEnded(body) => {
                self.check_alive("/body/colony", &body.colony, on)?;
                self.check_end("/body/colony", &body.colony, on)
            }
            Event::SupersOn(body) => {
                if body.supers == 0 {
                    return Err(Refusal::at("/body/supers", Colonies::NoSuper));
                }
                self.check_colonies("/body/colonies", &body.colonies, on)
            }
            Event::SupersOff(body) => self.check_colonies("/body/colonies", &body.colonies, on),
            Event::Inspection(body) => self.check_alive("/body/colony", &body.colony, on),
            Event::MiteCount(body) => {
                check_count(body)?;
                self.check_alive("/body/colony", &body.colony, on)
            }
            Event::MedicineDescribed(body) => {
                check_terms("/body/terms", body.terms.as_ref(), look)?;
                self.check_new_medicine(&body.medicine)
            }
            Event::LotAcquired(body) => {
                check_amount("/body/quantity", body.quantity)?;
                self.check_medicine("/body/medicine", &body.medicine)?;
                self.check_unit("/body/unit", &body.medicine, body.unit)?;
                self.check_new_lot(&body.lot)?;
                let counted = self.count_was_corrected(&body.lot);
                check_stock(
                    "/body/quantity",
                    &body.lot,
                    body.quantity,
                    self.balance(&body.lot).gone(),
                    counted,
                )
            }
            Event::VetLot(body) => {
                self.check_medicine("/body/medicine", &body.medicine)?;
                self.check_new_lot(&body.lot)
            }
            Event::LotOpened(body) => {
                self.check_lot_in_hand("/body/lot", &body.lot, on)?;
                self.check_keepers_own("/body/lot", &body.lot)
            }
            Event::DocumentAttached(body) => self.check_document(on, body, look),
            Event::LeafletReading(body) => {
                check_terms("/body/terms", Some(&body.terms), look)?;
                check_confirmed(&body.confirms)?;
                self.check_lot("/body/lot", &body.lot)
            }
            Event::Prescription(body) => {
                check_terms("/body/terms", Some(&body.terms), look)?;
                self.check_medicine("/body/medicine", &body.medicine)?;
                if self.prescription(&body.prescription).is_some() {
                    let prescription = body.prescription.clone();
                    let why = Lots::PrescriptionIsRecorded { prescription };
                    return Err(Refusal::at("/body/prescription", why));
                }
                Ok(())
            }
            Event::Administration(body) => self.check_administration(on, body, look),
            Event::Removal(body) => self.check_removal(on, body, look),
            Event::Disposal(body) => {
                check_amount("/body/quantity", body.quantity)?;
                self.check_lot_in_hand("/body/lot", &body.lot, on)?;
                self.check_keepers_own("/body/lot", &body.lot)?;
                self.check_unit_of_lot("/body/unit", &body.lot, body.unit)?;
                self.check_left(
                    "/body/quantity",
                    &body.lot,
                    body.quantity,
                    body.count_corrected || look == Look::Again,
                )
            }
            Event::Harvest(body) => self.check_colonies("/body/colonies", &body.colonies, on),
        }
    }
}

impl Holding {
    fn check_united(&self, on: Day, body: &ColonyUnited) -> Checked {
        self.check_alive("/body/colony", &body.colony, on)?;
        self.check_alive("/body/into", &body.into, on)?;
        if body.colony == body.into {
            let colony = body.into.clone();
            return Err(Refusal::at("/body/into", Colonies::UnitedWithItself { colony }));
        }
        self.check_end("/body/colony", &body.colony, on)
    }
}

pub(super) fn check_amount(pointer: &str, amount: Quantity) -> Checked {
    if amount.is_zero() {
        return Err(Refusal::at(pointer, Lots::NoAmount));
    }
    Ok(())
}

/// Nobody writes down what has not happened yet.
pub(super) fn check_written(copied: &CopiedFrom, on: Day) -> Checked {
    let written_on = copied.written_on;
    if written_on < on {
        return Err(Refusal::at("/written_on", Entries::WrittenBefore { written_on, on }));
    }
    Ok(())
}

fn check_span(from: Day, to: Option<Day>, pointer: &str) -> Checked {
    match to {
        Some(to) if to < from => Err(Refusal::at(pointer, Places::DaysAreBackwards { from, to })),
        _ => Ok(()),
    }
}

pub(super) fn check_days(pointer: &str, days: Option<u16>) -> Checked {
    match days {
        Some(days) if days > DAYS_MOST => {
            Err(Refusal::at(pointer, Terms::TooManyDays { days, most: DAYS_MOST }))
        }
        _ => Ok(()),
    }
}

/// Checks that the program supports this jurisdiction.
fn check_jurisdiction(jurisdiction: &Jurisdiction) -> Checked {
    if jurisdiction.is_known() {
        return Ok(());
    }
    let why =
        Entries::JurisdictionIsUnknown { jurisdiction: jurisdiction.clone(), meant: jurisdiction.meant() };
    Err(Refusal::at("/body/jurisdiction", why))
}

fn check_terms(pointer: &str, terms: Option<&StatedTerms>, look: Look) -> Checked {
    let Some(terms) = terms else { return Ok(()) };
    let at = |field: &str| format!("{pointer}/{field}");
    check_days(&at("withdrawal_days"), terms.withdrawal_days)?;
    check_days(&at("wait_after_removal_days"), terms.wait_after_removal_days)?;
    check_days(&at("flow_before_days"), terms.flow_before_days)?;
    if terms.withdrawal.is_some() && terms.withdrawal_days.is_some() {
        return Err(Refusal::at(at("withdrawal"), Terms::WithdrawalTwice));
    }
    for (field, days) in [
        ("stay_min_days", terms.stay_min_days),
        ("stay_min_days_with_brood", terms.stay_min_days_with_brood),
        ("stay_max_days", terms.stay_max_days),
    ] {
        check_days(&at(field), days)?;
        if days == Some(0) {
            return Err(Refusal::at(at(field), Terms::StayOfNoDays));
        }
    }
    let least = terms.stay_min_days.max(terms.stay_min_days_with_brood);
    if let (Look::First, Some(least), Some(RemovalNeed::NothingStays)) = (look, least, terms.removal) {
        return Err(Refusal::at(at("removal"), Terms::NothingStaysYetStays { least }));
    }
    match (least, terms.stay_max_days) {
        (Some(least), Some(most)) if most < least => {
            Err(Refusal::at(at("stay_max_days"), Terms::LeastAboveMost { least, most }))
        }
        _ => Ok(()),
    }
}
