//! What is refused: entries that cannot be true. Broken rules are recorded and judged apart.

use std::sync::Arc;

use super::check_documents::check_count;
use super::check_names::check_stock;
use super::check_place::{check_confirmed, check_flow, check_normals, check_temperatures};
use super::{Holding, Record};
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::{Jurisdiction, RemovalNeed};
use crate::journal::entry::Entry;
use crate::journal::event::{Archived, ColonyUnited, Event, StatedTerms};

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
    pub(super) fn at(pointer: &str, message: impl Into<String>, help: impl Into<String>) -> Refusal {
        Refusal { pointer: pointer.to_owned(), message: message.into(), help: help.into() }
    }

    /// A correction that would let a dose go on with itself.
    pub(super) fn of_own_course() -> Refusal {
        let help = "name the first dose of the course, or leave `continues` out";
        Refusal::at("/body/continues", "a dose cannot go on with itself", help)
    }

    /// The same, when a correction makes another entry impossible.
    pub(super) fn because_of(self, other: &Record) -> Refusal {
        let (kind, id, on) = (other.event.kind().as_str(), other.id, other.on);
        Refusal {
            pointer: "/corrects".to_owned(),
            message: format!(
                "with this correction the {kind} of {on} (entry {id}) could not be true: {}",
                self.message
            ),
            help: "correct or strike out that entry first".to_owned(),
        }
    }
}

/// Why an entry is looked at.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Look {
    /// It is new.
    First,
    /// It was sealed before, perhaps by an earlier version: what is asked back only today stays readable, so that no copy of a
    /// journal is lost.
    Sealed,
    /// It stands, and another was corrected. Its lot's stock was looked at with whichever entry changed it.
    Again,
}

pub(super) type Checked = Result<(), Refusal>;

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
            return fault(
                format!("there is no entry {wanted} to correct"),
                "look its id up in the journal".to_owned(),
            );
        };
        if let Some(by) = self.superseded.get(&of) {
            let help = format!("correct entry {by}, or record anew what was struck out");
            return fault(format!("entry {of} was already corrected by entry {by}"), help);
        }
        if matches!(old.event, Event::InArchive(_) | Event::Archived(_)) {
            let message = if old.body::<Archived>().is_some() {
                format!("entry {of} moved others into an archive, which is for good")
            } else {
                format!("entry {of} was moved into an archive")
            };
            return fault(message, "record what is to be added in an entry of its own".to_owned());
        }
        let (old_kind, new_kind) = (old.event.kind(), entry.draft.kind());
        if matches!(old.event, Event::StrikeOut(_)) {
            let help = "record anew what was struck out".to_owned();
            return fault(format!("entry {of} is a strike-out, which cannot be corrected"), help);
        }
        if !matches!(entry.draft.event, Event::StrikeOut(_)) && old_kind != new_kind {
            let message =
                format!("entry {of} is of kind `{}`, not `{}`", old_kind.as_str(), new_kind.as_str());
            return fault(message, "correct it with an entry of its own kind, or strike it out".to_owned());
        }
        Ok(Arc::clone(old))
    }

    /// What holds for the event of an entry that is not listed in any file.
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
                let message =
                    format!("entries of kind `{}` are not recorded like this", event.kind().as_str());
                let help = "an archive is made by the step of its own: combclear archive";
                Err(Refusal::at("/kind", message, help))
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
                    let message = "no super is put on".to_owned();
                    return Err(Refusal::at("/body/supers", message, "say how many supers, 1 or more"));
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
            Event::LotOpened(body) => self.check_lot_in_hand("/body/lot", &body.lot, on),
            Event::DocumentAttached(body) => self.check_document(body),
            Event::LeafletReading(body) => {
                check_terms("/body/terms", Some(&body.terms), look)?;
                check_confirmed(&body.confirms)?;
                self.check_lot("/body/lot", &body.lot)
            }
            Event::Prescription(body) => {
                check_terms("/body/terms", Some(&body.terms), look)?;
                self.check_medicine("/body/medicine", &body.medicine)?;
                if self.prescription(&body.prescription).is_some() {
                    let message = format!("a prescription `{}` is already recorded", body.prescription);
                    return Err(Refusal::at("/body/prescription", message, "correct that entry instead"));
                }
                Ok(())
            }
            Event::Administration(body) => self.check_administration(on, body, look),
            Event::Removal(body) => self.check_removal(on, body, look),
            Event::Disposal(body) => {
                check_amount("/body/quantity", body.quantity)?;
                self.check_lot_in_hand("/body/lot", &body.lot, on)?;
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
            let message = format!("colony `{}` cannot be united with itself", body.into);
            return Err(Refusal::at("/body/into", message, "name the colony that takes it in"));
        }
        self.check_end("/body/colony", &body.colony, on)
    }
}

pub(super) fn check_amount(pointer: &str, amount: Quantity) -> Checked {
    if amount.is_zero() {
        return Err(Refusal::at(pointer, "the amount is nothing", "write an amount above zero"));
    }
    Ok(())
}

fn check_span(from: Day, to: Option<Day>, pointer: &str) -> Checked {
    match to {
        Some(to) if to < from => Err(Refusal::at(
            pointer,
            format!("the last day {to} lies before the first, {from}"),
            "check both dates",
        )),
        _ => Ok(()),
    }
}

pub(super) fn check_days(pointer: &str, days: Option<u16>) -> Checked {
    match days {
        Some(days) if days > DAYS_MOST => {
            let message = format!("{days} days are more than any leaflet states");
            Err(Refusal::at(pointer, message, format!("write days, {DAYS_MOST} at most; not hours")))
        }
        _ => Ok(()),
    }
}

/// That the program knows whose rules hold.
fn check_jurisdiction(jurisdiction: &Jurisdiction) -> Checked {
    if jurisdiction.is_known() {
        return Ok(());
    }
    let message = format!("no leaflets and no law are known for the jurisdiction `{jurisdiction}`");
    let help = match jurisdiction.meant() {
        Some(meant) => format!("did you mean `{meant}`?"),
        None => "write gb, ni, ch, us, eu or the lower-case code of a member state of the Union; elsewhere a code \
                 from xa to xz, with leaflets of your own"
            .to_owned(),
    };
    Err(Refusal::at("/body/jurisdiction", message, help))
}

fn check_terms(pointer: &str, terms: Option<&StatedTerms>, look: Look) -> Checked {
    let Some(terms) = terms else { return Ok(()) };
    let at = |field: &str| format!("{pointer}/{field}");
    check_days(&at("withdrawal_days"), terms.withdrawal_days)?;
    check_days(&at("wait_after_removal_days"), terms.wait_after_removal_days)?;
    check_days(&at("flow_before_days"), terms.flow_before_days)?;
    if terms.withdrawal.is_some() && terms.withdrawal_days.is_some() {
        let message = "a label that knows no withdrawal period does not state one in days";
        let help =
            "keep `withdrawal_days` if the label states a period, also one of 0 days; else keep `withdrawal`";
        return Err(Refusal::at(&at("withdrawal"), message, help));
    }
    for (field, days) in [
        ("stay_min_days", terms.stay_min_days),
        ("stay_min_days_with_brood", terms.stay_min_days_with_brood),
        ("stay_max_days", terms.stay_max_days),
    ] {
        check_days(&at(field), days)?;
        if days == Some(0) {
            let help = "leave it out; if nothing stays in the hive, say so in `removal`";
            return Err(Refusal::at(&at(field), "a stay of 0 days is none", help));
        }
    }
    let least = terms.stay_min_days.max(terms.stay_min_days_with_brood);
    if let (Look::First, Some(least), Some(RemovalNeed::NothingStays)) = (look, least, terms.removal) {
        let message = format!("nothing stays in the hive, yet it must stay at least {least} days");
        let help = "write `needed` or `not_needed` for a carrier; for a single dose leave the least stay out";
        return Err(Refusal::at(&at("removal"), message, help));
    }
    match (least, terms.stay_max_days) {
        (Some(least), Some(most)) if most < least => {
            let message = format!("it must stay at least {least} days and at most {most}");
            Err(Refusal::at(&at("stay_max_days"), message, "correct the one that is wrong"))
        }
        _ => Ok(()),
    }
}
