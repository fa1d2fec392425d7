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
use crate::basics::words::{ApiaryName, ColonyName, LotName, MedicineName};
use crate::journal::event::Event;

impl Holding {
    /// Checks the name that an event brings in, if it brings in one: a new entry, or a correction that changes the name.
    pub(super) fn check_looks(&self, event: &Event, corrected: Option<&Event>) -> Checked {
        let Some(NewName { pointer, name, among }) = new_name(event) else { return Ok(()) };
        // The name that a correction replaces is no other.
        let was = corrected.and_then(new_name).map(|was| was.name);
        if was == Some(name) {
            return Ok(());
        }
        match among {
            Among::Apiaries => told_apart(pointer, name, was, self.apiaries().map(ApiaryName::as_str)),
            Among::Colonies => told_apart(pointer, name, was, self.colonies().map(ColonyName::as_str)),
            Among::Medicines => told_apart(pointer, name, was, self.medicines().map(MedicineName::as_str)),
            Among::Lots => told_apart(pointer, name, was, self.lots().map(LotName::as_str)),
            Among::Prescriptions => {
                let numbers = self.prescriptions.iter().filter(|(_, file)| !file.is_empty());
                told_apart(pointer, name, was, numbers.map(|(number, _)| number.as_str()))
            }
        }
    }
}

/// A name that an event brings in.
struct NewName<'e> {
    pointer: &'static str,
    name: &'e str,
    among: Among,
}

/// The names from which a new one must be told.
enum Among {
    Apiaries,
    Colonies,
    Medicines,
    Lots,
    Prescriptions,
}

fn new_name(event: &Event) -> Option<NewName<'_>> {
    let (pointer, name, among) = match event {
        Event::ApiaryDetails(body) => ("/body/apiary", body.apiary.as_str(), Among::Apiaries),
        Event::ColonyEstablished(body) => ("/body/colony", body.colony.as_str(), Among::Colonies),
        Event::ColonySplit(body) => ("/body/into", body.into.as_str(), Among::Colonies),
        Event::MedicineDescribed(body) => ("/body/medicine", body.medicine.as_str(), Among::Medicines),
        Event::LotAcquired(body) => ("/body/lot", body.lot.as_str(), Among::Lots),
        Event::VetLot(body) => ("/body/lot", body.lot.as_str(), Among::Lots),
        Event::Prescription(body) => ("/body/prescription", body.prescription.as_str(), Among::Prescriptions),
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
        | Event::InArchive(_) => return None,
    };
    Some(NewName { pointer, name, among })
}

fn told_apart<'n>(
    pointer: &str,
    name: &str,
    was: Option<&str>,
    others: impl Iterator<Item = &'n str>,
) -> Checked {
    if let Some(sign) = name.chars().find(|sign| is_invisible(*sign)) {
        let (name, sign) = (name.to_owned(), format!("U+{:04X}", u32::from(sign)));
        return Err(Refusal::at(pointer, Entries::NameHasInvisibleSign { name, sign }));
    }
    // Within ASCII, people tell O1 from 01 themselves: it is on their hives.
    let mut own: Option<String> = None;
    for other in others.filter(|other| !(name.is_ascii() && other.is_ascii())) {
        let own = own.get_or_insert_with(|| skeleton(name).collect());
        if other != name && Some(other) != was && skeleton(other).eq(own.chars()) {
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
