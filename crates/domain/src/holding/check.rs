//! What is refused: entries that cannot be true. Broken rules are recorded and judged apart.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::{Holding, Record};
use crate::calendar::Day;
use crate::diagnostic::nearest;
use crate::journal::entry::{Entry, EntryId};
use crate::journal::event::{Administration, Event, Removal, StatedTerms};
use crate::quantity::Quantity;
use crate::words::{ApiaryName, ColonyName, LotName, MedicineName};

/// Longest period in days that anybody may state; more is a slip of the pen.
const DAYS_MOST: u16 = 400;

/// Why an entry cannot be true.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{message}")]
pub struct Refusal {
    /// JSON pointer into the entry.
    pub pointer: String,
    /// What cannot be true.
    pub message: String,
    /// How to mend it.
    pub help: String,
}

impl Refusal {
    fn at(pointer: &str, message: impl Into<String>, help: impl Into<String>) -> Refusal {
        Refusal { pointer: pointer.to_owned(), message: message.into(), help: help.into() }
    }

    /// The same, when a correction makes another entry impossible.
    pub(super) fn because_of(self, other: &Record) -> Refusal {
        let (kind, id, on) = (other.event.kind().as_str(), other.id, other.on);
        Refusal {
            pointer: "/corrects".to_owned(),
            message: format!("with this correction the {kind} of {on} (entry {id}) could not be true: {}", self.message),
            help: "correct or strike out that entry first".to_owned(),
        }
    }
}

type Checked = Result<(), Refusal>;

impl Holding {
    /// What holds for every entry: a new id, no day in the future.
    pub(super) fn check_envelope(&self, entry: &Entry) -> Checked {
        let draft = &entry.draft;
        if self.records.contains_key(&draft.id) {
            let message = format!("an entry with the id {} is already recorded", draft.id);
            return Err(Refusal::at("/id", message, "make a new id for a new entry"));
        }
        let today = entry.recorded_at.latest_civil_date();
        if draft.on > today {
            let message = format!("{} lies in the future; it is recorded on {today} at the latest", draft.on);
            return Err(Refusal::at("/on", message, "record what happened, on the day it happened or later"));
        }
        Ok(())
    }

    /// That the corrected entry exists, still stands, and is of the same kind. Returns it.
    pub(super) fn check_corrected(&self, entry: &Entry) -> Result<Arc<Record>, Refusal> {
        let of = entry.draft.correction.as_ref().map(|correction| correction.of);
        let fault = |message: String, help: String| Err(Refusal::at("/corrects", message, help));
        let Some((of, old)) = of.and_then(|of| Some((of, self.records.get(&of)?))) else {
            let wanted = of.map(|of| of.to_string()).unwrap_or_default();
            return fault(format!("there is no entry {wanted} to correct"), "look its id up in the journal".to_owned());
        };
        if let Some(by) = self.superseded.get(&of) {
            let help = format!("correct entry {by}, or record anew what was struck out");
            return fault(format!("entry {of} was already corrected by entry {by}"), help);
        }
        let (old_kind, new_kind) = (old.event.kind(), entry.draft.kind());
        if matches!(*old.event, Event::StrikeOut(_)) {
            let help = "record anew what was struck out".to_owned();
            return fault(format!("entry {of} is a strike-out, which cannot be corrected"), help);
        }
        if !matches!(*entry.draft.event, Event::StrikeOut(_)) && old_kind != new_kind {
            let message = format!("entry {of} is of kind `{}`, not `{}`", old_kind.as_str(), new_kind.as_str());
            return fault(message, "correct it with an entry of its own kind, or strike it out".to_owned());
        }
        Ok(Arc::clone(old))
    }

    /// What holds for the event of an entry that is not listed in any file yet.
    pub(super) fn check_event(&self, on: Day, event: &Event) -> Checked {
        match event {
            Event::HoldingDetails(_) | Event::StrikeOut(_) => Ok(()),
            Event::ApiaryDetails(body) => self.check_new_apiary(&body.apiary),
            Event::SiteConditions(body) => {
                self.check_apiary("/body/apiary", &body.apiary)?;
                check_span(on, body.until, "/body/until")
            }
            Event::NectarFlow(body) => {
                self.check_apiary("/body/apiary", &body.apiary)?;
                check_span(body.from, body.to, "/body/to")
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
            Event::ColonyUnited(body) => {
                self.check_alive("/body/colony", &body.colony, on)?;
                self.check_alive("/body/into", &body.into, on)?;
                if body.colony == body.into {
                    let message = format!("colony `{}` cannot be united with itself", body.into);
                    return Err(Refusal::at("/body/into", message, "name the colony that takes it in"));
                }
                self.check_nothing_after("/body/colony", &body.colony, on)
            }
            Event::ColonyEnded(body) => {
                self.check_alive("/body/colony", &body.colony, on)?;
                self.check_nothing_after("/body/colony", &body.colony, on)
            }
            Event::SupersOn(body) => {
                if body.supers == 0 {
                    let message = "no super is put on".to_owned();
                    return Err(Refusal::at("/body/supers", message, "say how many supers, 1 or more"));
                }
                self.check_colonies("/body/colonies", &body.colonies, on)
            }
            Event::SupersOff(body) => self.check_colonies("/body/colonies", &body.colonies, on),
            Event::Inspection(body) => self.check_alive("/body/colony", &body.colony, on),
            Event::MedicineDescribed(body) => {
                check_terms("/body/terms", body.terms.as_ref())?;
                self.check_new_medicine(&body.medicine)
            }
            Event::LotAcquired(body) => {
                check_amount("/body/quantity", body.quantity)?;
                self.check_medicine("/body/medicine", &body.medicine)?;
                self.check_new_lot(&body.lot)?;
                let counted = self.uses(&body.lot).any(|record| count_was_corrected(&record.event));
                self.check_stock("/body/quantity", &body.lot, body.quantity, self.gone(&body.lot), counted)
            }
            Event::LeafletReading(body) => {
                check_terms("/body/terms", Some(&body.terms))?;
                self.check_lot("/body/lot", &body.lot)
            }
            Event::Prescription(body) => {
                check_terms("/body/terms", Some(&body.terms))?;
                self.check_medicine("/body/medicine", &body.medicine)?;
                let known = self.prescription_file(&body.prescription).iter();
                if known.clone().any(|record| matches!(*record.event, Event::Prescription(_))) {
                    let message = format!("a prescription `{}` is already recorded", body.prescription);
                    return Err(Refusal::at("/body/prescription", message, "correct that entry instead"));
                }
                Ok(())
            }
            Event::Administration(body) => self.check_administration(on, body),
            Event::Removal(body) => self.check_removal(on, body),
            Event::Disposal(body) => {
                check_amount("/body/quantity", body.quantity)?;
                self.check_lot_in_hand("/body/lot", &body.lot, on)?;
                self.check_left("/body/quantity", &body.lot, body.quantity, body.count_corrected)
            }
            Event::Harvest(body) => self.check_colonies("/body/colonies", &body.colonies, on),
        }
    }

    fn check_administration(&self, on: Day, body: &Administration) -> Checked {
        if body.given.is_empty() {
            return Err(Refusal::at("/body/given", "nothing is given", "name the lot, the amount and the colonies"));
        }
        check_days("/body/withdrawal_days", body.withdrawal_days)?;
        let mut medicine: Option<&MedicineName> = None;
        for (index, given) in body.given.iter().enumerate() {
            let at = |field: &str| format!("/body/given/{index}/{field}");
            check_amount(&at("each"), given.each)?;
            self.check_lot_in_hand(&at("lot"), &given.lot, on)?;
            self.check_colonies(&at("colonies"), &given.colonies, on)?;
            let of = self.lot(&given.lot).map(|(_, lot)| &lot.medicine);
            if let (Some(one), Some(other)) = (medicine, of)
                && one != other
            {
                let message = format!("lot `{}` is `{other}`, but the entry also gives `{one}`", given.lot);
                return Err(Refusal::at(&at("lot"), message, "make one entry for each medicine"));
            }
            medicine = medicine.or(of);
            let together: Quantity = body
                .given
                .iter()
                .filter(|other| other.lot == given.lot)
                .fold(Quantity::ZERO, |sum, other| sum.plus(other.total()));
            self.check_left(&at("each"), &given.lot, together, body.count_corrected)?;
        }
        if let Some(prescription) = &body.prescription {
            let mut known = self.prescription_file(prescription).iter();
            if !known.any(|record| matches!(*record.event, Event::Prescription(_))) {
                let message = format!("no prescription `{prescription}` is recorded");
                return Err(Refusal::at("/body/prescription", message, "record the prescription first"));
            }
        }
        body.continues.map_or(Ok(()), |first| self.check_continued(on, body, first, medicine))
    }

    fn check_continued(&self, on: Day, body: &Administration, first: EntryId, medicine: Option<&MedicineName>) -> Checked {
        let pointer = "/body/continues";
        let (record, given) = self.first_dose(pointer, first)?;
        let of = given.given.first().and_then(|given| self.lot(&given.lot)).map(|(_, lot)| &lot.medicine);
        if of != medicine {
            let message = format!("entry {first} gave another medicine");
            return Err(Refusal::at(pointer, message, "name the first dose of the same medicine"));
        }
        if on < record.on {
            let message = format!("the first dose was given on {}, after {on}", record.on);
            return Err(Refusal::at("/on", message, "check both dates"));
        }
        for (index, colony) in body.given.iter().flat_map(|given| &given.colonies).enumerate() {
            if !self.course_reached(colony, record, on) {
                let message = format!("colony `{colony}` was not given the first dose");
                let help = "give it a course of its own, in an entry without `continues`";
                return Err(Refusal::at(&format!("/body/given/{index}"), message, help));
            }
            if let Some(out) = self.removals(colony, record.id).find(|(_, removal)| removal.left_inside == 0)
                && out.0.on < on
            {
                let message = format!("the course was taken out of colony `{colony}` on {}", out.0.on);
                return Err(Refusal::at("/on", message, "begin a new course, in an entry without `continues`"));
            }
        }
        Ok(())
    }

    fn check_removal(&self, on: Day, body: &Removal) -> Checked {
        let (record, _) = self.first_dose("/body/administration", body.administration)?;
        if on < record.on {
            let message = format!("it was placed on {}, so it cannot come out on {on}", record.on);
            return Err(Refusal::at("/on", message, "check both dates"));
        }
        self.check_colonies("/body/colonies", &body.colonies, on)?;
        for (index, colony) in body.colonies.iter().enumerate() {
            let pointer = format!("/body/colonies/{index}");
            if !self.course_reached(colony, record, on) {
                let message = format!("colony `{colony}` had no part in entry {}", body.administration);
                return Err(Refusal::at(&pointer, message, "check the colony, or the entry that it names"));
            }
            if let Some(out) = self.removals(colony, record.id).find(|(_, removal)| removal.left_inside == 0) {
                let message = format!("colony `{colony}` was already cleared of it on {}", out.0.on);
                return Err(Refusal::at(&pointer, message, "correct that entry if its date is wrong"));
            }
            let later = self.colony_file(colony).iter().find(|dose| {
                let Event::Administration(given) = &*dose.event else { return false };
                let same = given.continues.and_then(|first| self.effective(first)).is_some_and(|of| of.id == record.id);
                same && dose.on > on
            });
            if let Some(dose) = later {
                let message = format!("a later dose of this course was given to colony `{colony}` on {}", dose.on);
                return Err(Refusal::at("/on", message, "check both dates"));
            }
        }
        Ok(())
    }

    /// The standing administration that an id means; it must be the first dose of its course.
    fn first_dose(&self, pointer: &str, id: EntryId) -> Result<(&Arc<Record>, &Administration), Refusal> {
        let standing = self.effective(id);
        let Some((record, Event::Administration(given))) = standing.map(|record| (record, &*record.event)) else {
            let message = match self.record(id) {
                Some(_) if standing.is_none() => format!("entry {id} was struck out"),
                Some(_) => format!("entry {id} is not an administration"),
                None => format!("there is no entry {id}"),
            };
            return Err(Refusal::at(pointer, message, "name the entry that recorded the first dose"));
        };
        match given.continues {
            Some(first) => {
                let message = format!("entry {id} is a later dose of the course that began with entry {first}");
                Err(Refusal::at(pointer, message, format!("name the first dose, {first}")))
            }
            None => Ok((record, given)),
        }
    }

    /// The removals of a course from a colony, in the order in which they happened.
    fn removals(&self, colony: &ColonyName, first_dose: EntryId) -> impl Iterator<Item = (&Arc<Record>, &Removal)> {
        self.colony_file(colony).iter().filter_map(move |record| match &*record.event {
            Event::Removal(removal) => {
                let of = self.effective(removal.administration)?.id;
                (of == first_dose && removal.colonies.contains(colony)).then_some((record, removal))
            }
            _ => None,
        })
    }

    fn check_alive(&self, pointer: &str, colony: &ColonyName, on: Day) -> Checked {
        let life = self.life(colony);
        let Some(begun) = life.begun else {
            let names = self.colonies().map(ColonyName::as_str);
            let help = nearest(colony.as_str(), names)
                .map_or_else(|| "record it as established first".to_owned(), |near| format!("did you mean `{near}`?"));
            return Err(Refusal::at(pointer, format!("there is no colony `{colony}`"), help));
        };
        if on < begun.on {
            let message = format!("colony `{colony}` came into the record on {}, after {on}", begun.on);
            return Err(Refusal::at(pointer, message, "check both dates"));
        }
        match life.ended {
            Some(ended) if ended.on < on => {
                let message = format!("colony `{colony}` ended on {}", ended.on);
                Err(Refusal::at(pointer, message, "check the colony and the date"))
            }
            _ => Ok(()),
        }
    }

    fn check_colonies(&self, pointer: &str, colonies: &[ColonyName], on: Day) -> Checked {
        if colonies.is_empty() {
            return Err(Refusal::at(pointer, "no colony is named", "name at least one"));
        }
        let mut seen = BTreeSet::new();
        for (index, colony) in colonies.iter().enumerate() {
            let at = format!("{pointer}/{index}");
            if !seen.insert(colony) {
                return Err(Refusal::at(&at, format!("colony `{colony}` is named twice"), "name it once"));
            }
            self.check_alive(&at, colony, on)?;
        }
        Ok(())
    }

    fn check_new_colony(&self, pointer: &str, colony: &ColonyName) -> Checked {
        match self.life(colony).begun {
            Some(begun) => {
                let message = format!("there is a colony `{colony}` since {}", begun.on);
                let help = "a colony's name is never used again; a hive mark may be";
                Err(Refusal::at(pointer, message, help))
            }
            None => Ok(()),
        }
    }

    /// A colony that ends on a day did nothing after it.
    fn check_nothing_after(&self, pointer: &str, colony: &ColonyName, on: Day) -> Checked {
        match self.colony_file(colony).last() {
            Some(last) if last.on > on => {
                let kind = last.event.kind().as_str();
                let message = format!("colony `{colony}` has a {kind} recorded on {}, after {on}", last.on);
                Err(Refusal::at(pointer, message, "check both dates, or correct that entry first"))
            }
            _ => Ok(()),
        }
    }

    fn check_apiary(&self, pointer: &str, apiary: &ApiaryName) -> Checked {
        let mut file = self.apiary_file(apiary).iter();
        if file.any(|record| matches!(*record.event, Event::ApiaryDetails(_))) {
            return Ok(());
        }
        let help = nearest(apiary.as_str(), self.apiaries().map(ApiaryName::as_str))
            .map_or_else(|| "record the apiary first".to_owned(), |near| format!("did you mean `{near}`?"));
        Err(Refusal::at(pointer, format!("there is no apiary `{apiary}`"), help))
    }

    fn check_new_apiary(&self, apiary: &ApiaryName) -> Checked {
        match self.check_apiary("", apiary) {
            Ok(()) => {
                let message = format!("the apiary `{apiary}` is already recorded");
                Err(Refusal::at("/body/apiary", message, "correct that entry instead"))
            }
            Err(_) => Ok(()),
        }
    }

    fn check_medicine(&self, pointer: &str, medicine: &MedicineName) -> Checked {
        if self.medicine(medicine).is_some() {
            return Ok(());
        }
        let help = nearest(medicine.as_str(), self.medicines.keys().map(MedicineName::as_str))
            .map_or_else(|| "describe the medicine first".to_owned(), |near| format!("did you mean `{near}`?"));
        Err(Refusal::at(pointer, format!("no medicine `{medicine}` is described"), help))
    }

    fn check_new_medicine(&self, medicine: &MedicineName) -> Checked {
        if self.medicine(medicine).is_none() {
            return Ok(());
        }
        let message = format!("the medicine `{medicine}` is already described");
        Err(Refusal::at("/body/medicine", message, "correct that entry instead"))
    }

    fn check_lot(&self, pointer: &str, lot: &LotName) -> Checked {
        if self.lot(lot).is_some() {
            return Ok(());
        }
        let help = nearest(lot.as_str(), self.lots().map(LotName::as_str))
            .map_or_else(|| "record its acquisition first".to_owned(), |near| format!("did you mean `{near}`?"));
        Err(Refusal::at(pointer, format!("there is no lot `{lot}`"), help))
    }

    fn check_new_lot(&self, lot: &LotName) -> Checked {
        if self.lot(lot).is_none() {
            return Ok(());
        }
        let help = "give this acquisition a name of its own; two may carry one batch number";
        Err(Refusal::at("/body/lot", format!("there is already a lot `{lot}`"), help))
    }

    fn check_lot_in_hand(&self, pointer: &str, lot: &LotName, on: Day) -> Checked {
        self.check_lot(pointer, lot)?;
        match self.lot(lot) {
            Some((record, _)) if record.on > on => {
                let message = format!("lot `{lot}` was acquired on {}, after {on}", record.on);
                Err(Refusal::at(pointer, message, "check both dates"))
            }
            _ => Ok(()),
        }
    }

    fn check_left(&self, pointer: &str, lot: &LotName, taken: Quantity, count_corrected: bool) -> Checked {
        let Some((_, acquired)) = self.lot(lot) else { return Ok(()) };
        self.check_stock(pointer, lot, acquired.quantity, self.gone(lot).plus(taken), count_corrected)
    }

    fn check_stock(&self, pointer: &str, lot: &LotName, had: Quantity, gone: Quantity, counted: bool) -> Checked {
        if counted || gone <= had {
            return Ok(());
        }
        let message = format!("lot `{lot}` held {had}, but {gone} would be gone from it");
        let help = "check the amount and the lot; if the record's count is wrong, set `count_corrected`";
        Err(Refusal::at(pointer, message, help))
    }

    fn uses(&self, lot: &LotName) -> impl Iterator<Item = &Arc<Record>> {
        self.lot_file(lot).iter().filter(|record| matches!(*record.event, Event::Administration(_) | Event::Disposal(_)))
    }
}

fn count_was_corrected(event: &Event) -> bool {
    match event {
        Event::Administration(body) => body.count_corrected,
        Event::Disposal(body) => body.count_corrected,
        _ => false,
    }
}

fn check_amount(pointer: &str, amount: Quantity) -> Checked {
    if amount.is_zero() {
        return Err(Refusal::at(pointer, "the amount is nothing", "write an amount above zero"));
    }
    Ok(())
}

fn check_span(from: Day, to: Option<Day>, pointer: &str) -> Checked {
    match to {
        Some(to) if to < from => {
            Err(Refusal::at(pointer, format!("the last day {to} lies before the first, {from}"), "check both dates"))
        }
        _ => Ok(()),
    }
}

fn check_days(pointer: &str, days: Option<u16>) -> Checked {
    match days {
        Some(days) if days > DAYS_MOST => {
            let message = format!("{days} days are more than any leaflet states");
            Err(Refusal::at(pointer, message, format!("write days, {DAYS_MOST} at most; not hours")))
        }
        _ => Ok(()),
    }
}

fn check_terms(pointer: &str, terms: Option<&StatedTerms>) -> Checked {
    let Some(terms) = terms else { return Ok(()) };
    let at = |field: &str| format!("{pointer}/{field}");
    check_days(&at("withdrawal_days"), terms.withdrawal_days)?;
    check_days(&at("wait_after_removal_days"), terms.wait_after_removal_days)?;
    check_days(&at("stay_min_days"), terms.stay_min_days)?;
    check_days(&at("stay_min_days_with_brood"), terms.stay_min_days_with_brood)?;
    check_days(&at("stay_max_days"), terms.stay_max_days)?;
    let least = terms.stay_min_days.max(terms.stay_min_days_with_brood);
    match (least, terms.stay_max_days) {
        (Some(least), Some(most)) if most < least => {
            let message = format!("it must stay at least {least} days and at most {most}");
            Err(Refusal::at(&at("stay_max_days"), message, "correct the one that is wrong"))
        }
        _ => Ok(()),
    }
}
