//! Checks that a new name can be told from every other by looking at it: a keeper reads names on hives and on paper.
//!
//! Source: Unicode Technical Standard 39, section 4 (confusable detection by skeletons), and Unicode Standard Annex 44 for the
//! category of format characters.

use unicode_properties::{GeneralCategory, UnicodeGeneralCategory};
use unicode_security::skeleton;

use super::Holding;
use super::check::Checked;
use super::refusal::Refusal;
use super::untrue::Entries;
use crate::basics::words::{ApiaryName, ColonyName, LotName, MedicineName, PrescriptionName};
use crate::journal::event::Event;

impl Holding {
    /// Checks the name that a new entry brings in, if it brings in one.
    pub(super) fn check_looks(&self, event: &Event) -> Checked {
        match event {
            Event::ApiaryDetails(body) => {
                told_apart("/body/apiary", body.apiary.as_str(), self.apiaries.keys().map(ApiaryName::as_str))
            }
            Event::ColonyEstablished(body) => self.check_looks_of_colony("/body/colony", &body.colony),
            Event::ColonySplit(body) => self.check_looks_of_colony("/body/into", &body.into),
            Event::MedicineDescribed(body) => {
                let others = self.medicines.keys().map(MedicineName::as_str);
                told_apart("/body/medicine", body.medicine.as_str(), others)
            }
            Event::LotAcquired(body) => self.check_looks_of_lot(&body.lot),
            Event::VetLot(body) => self.check_looks_of_lot(&body.lot),
            Event::Prescription(body) => {
                let others = self.prescriptions.keys().map(PrescriptionName::as_str);
                told_apart("/body/prescription", body.prescription.as_str(), others)
            }
            Event::HoldingDetails(_)
            | Event::SiteConditions(_)
            | Event::NectarFlow(_)
            | Event::Temperature(_)
            | Event::TemperatureNormals(_)
            | Event::ColonyMoved(_)
            | Event::ColonyUnited(_)
            | Event::ColonyEnded(_)
            | Event::SupersOn(_)
            | Event::SupersOff(_)
            | Event::Inspection(_)
            | Event::MiteCount(_)
            | Event::LotOpened(_)
            | Event::DocumentAttached(_)
            | Event::LeafletReading(_)
            | Event::Administration(_)
            | Event::Removal(_)
            | Event::Disposal(_)
            | Event::Harvest(_)
            | Event::StrikeOut(_)
            | Event::Archived(_)
            | Event::InArchive(_) => Ok(()),
        }
    }

    fn check_looks_of_colony(&self, pointer: &str, colony: &ColonyName) -> Checked {
        told_apart(pointer, colony.as_str(), self.colonies().map(ColonyName::as_str))
    }

    fn check_looks_of_lot(&self, lot: &LotName) -> Checked {
        told_apart("/body/lot", lot.as_str(), self.lots().map(LotName::as_str))
    }
}

fn told_apart<'n>(pointer: &str, name: &str, others: impl Iterator<Item = &'n str>) -> Checked {
    if let Some(sign) = name.chars().find(|sign| is_invisible(*sign)) {
        let (name, sign) = (name.to_owned(), format!("U+{:04X}", u32::from(sign)));
        return Err(Refusal::at(pointer, Entries::NameHasInvisibleSign { name, sign }));
    }
    // Within ASCII, people tell O1 from 01 themselves: it is on their hives.
    let mut own: Option<String> = None;
    for other in others.filter(|other| !(name.is_ascii() && other.is_ascii())) {
        let own = own.get_or_insert_with(|| skeleton(name).collect());
        if other != name && skeleton(other).eq(own.chars()) {
            let (name, other) = (name.to_owned(), other.to_owned());
            return Err(Refusal::at(pointer, Entries::NameLooksLikeAnother { name, other }));
        }
    }
    Ok(())
}

/// Whether a sign shows nothing, or changes how others are shown.
fn is_invisible(sign: char) -> bool {
    let category = sign.general_category();
    matches!(category, GeneralCategory::Format | GeneralCategory::PrivateUse | GeneralCategory::Unassigned)
        // Fillers and variation selectors, which are letters and marks by their category.
        || matches!(sign, '\u{34f}' | '\u{115f}' | '\u{1160}' | '\u{3164}' | '\u{ffa0}' | '\u{fe00}'..='\u{fe0f}')
}
