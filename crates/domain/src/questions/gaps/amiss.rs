//! What else is amiss: medicines, the use of lots, and books that do not come out even.

use std::collections::BTreeSet;

use super::report::{Gap, GapWeight, LotCheck};
use super::wording::{About, amount, name};
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::words::{ColonyName, LotName, MedicineName};
use crate::facts::holding::Holding;
use crate::journal::event::Kind;
use crate::journal::seal::Hash;
use crate::questions::register::{AdministrationRow, CoursePart, RegisterReport};
use crate::questions::stock::LotReport;

/// The gap of a lot without expiry date. Where the law names the field itself, that is enough.
pub(super) const EXPIRY_NOT_TOLD: &str = "expiry_not_told";

/// Medicines that were given and are not described, name no authorisation, or point to directions that are not known here.
pub(super) fn of_medicines(holding: &Holding, register: &RegisterReport) -> Vec<Gap> {
    // Once for each medicine, and again where its leaflet is not known any more, as after a move to another country.
    let mut told: BTreeSet<(&MedicineName, bool)> = BTreeSet::new();
    let mut gaps = Vec::new();
    for row in &register.administrations {
        let medicine = &row.medicine;
        if !told.insert((&medicine.medicine, medicine.leaflet_known)) {
            continue;
        }
        let described = holding.medicine(&medicine.medicine);
        let of_row = (row.written.entry, row.written.place, Kind::Administration, row.written.on);
        let (entry, place, kind, on) = described
            .map_or(of_row, |(record, _)| (record.id, record.seq, Kind::MedicineDescribed, record.on));
        let mut add = |weight, missing, statement: String, supply: &str| {
            let about = format!("the medicine {}", name(medicine));
            let (supply, law) = (supply.to_owned(), Vec::new());
            gaps.push(Gap { weight, missing, about, entry, place, kind, on, statement, supply, law });
        };
        let named = name(medicine);
        let mend = "look on the pack, and correct the description of the medicine";
        if medicine.authorisation.as_ref().is_none_or(|number| number.trim().is_empty()) {
            add(
                GapWeight::WhereApplicable,
                "medicine_authorisation",
                format!(
                    "{named}: no authorisation number is recorded; only an authorised medicine may be given"
                ),
                mend,
            );
        }
        match (&medicine.leaflet, medicine.leaflet_known) {
            (Some(leaflet), false) => add(
                GapWeight::WhereApplicable,
                "medicine_leaflet",
                format!(
                    "{named}: no leaflet `{leaflet}` is known where the holding is; is it authorised there?"
                ),
                "check the authorisation on the pack; correct the leaflet, or add one of your own",
            ),
            (None, _) if described.is_none_or(|(_, described)| described.terms.is_none()) => add(
                GapWeight::WhereApplicable,
                "medicine_directions",
                format!(
                    "{named}: neither a leaflet nor terms are recorded, so nobody can tell how it is to be used"
                ),
                "correct the description: point to a leaflet, or declare the terms that the pack states",
            ),
            _ => {}
        }
    }
    gaps
}

/// Doses after the expiry or past the life in use, and treatments whose end nobody recorded.
pub(super) fn of_uses(register: &RegisterReport, stock: &[LotReport]) -> Vec<Gap> {
    let mut gaps = Vec::new();
    for row in &register.administrations {
        let lots: BTreeSet<&LotName> = row.given.iter().map(|part| &part.lot).collect();
        for lot in stock.iter().filter(|lot| lots.contains(&lot.lot)) {
            gaps.extend(after_expiry(row, lot));
            gaps.extend(past_life_in_use(row, lot));
        }
        gaps.extend(prescribed_after(register, row));
        gaps.extend(row.courses.iter().filter_map(|part| end_not_recorded(row, part, register.as_of)));
    }
    gaps
}

/// A prescription that bears a later day than what was given under it.
fn prescribed_after(register: &RegisterReport, row: &AdministrationRow) -> Option<Gap> {
    let used = row.prescription.as_ref()?;
    let number = &used.number;
    let mut known = register.prescriptions.iter();
    let on = known.find(|known| known.prescription.number == *number).map(|known| known.written.on);
    if on.is_some_and(|on| on <= row.written.on) {
        return None;
    }
    let about = About::administration(row);
    let when = on.map_or_else(|| "only later".to_owned(), |on| format!("only on {on}"));
    let statement = format!("{}: prescription {number} was written {when}", about.in_words());
    Some(shown(&about, "prescribed_after", statement))
}

fn after_expiry(row: &AdministrationRow, lot: &LotReport) -> Option<Gap> {
    let expiry = lot.expiry.filter(|expiry| *expiry < row.written.on)?;
    let about = About::administration(row);
    let statement = format!("{}: lot {} had expired on {expiry}", about.in_words(), lot.lot);
    Some(shown(&about, "use_after_expiry", statement))
}

fn past_life_in_use(row: &AdministrationRow, lot: &LotReport) -> Option<Gap> {
    let in_use = lot.in_use.as_ref()?;
    let until = in_use.until.filter(|until| *until < row.written.on)?;
    let about = About::administration(row);
    let doubt =
        if in_use.confidence == Confidence::Document { "" } else { " (not documented: check the pack)" };
    let opened = lot.opened.map(|opened| format!(", opened on {}", opened.on)).unwrap_or_default();
    let statement = format!(
        "{}: what was opened of lot {}{opened} was to be used by {until}{doubt}: {}",
        about.in_words(),
        lot.lot,
        in_use.says
    );
    // A lot may be several packs, and nobody can tell from the record which one it came from.
    let supply =
        "all is well if it came from a pack that was opened later; if not, do not use the rest".to_owned();
    Some(Gap { weight: GapWeight::Advised, supply, ..shown(&about, "past_life_in_use", statement) })
}

fn end_not_recorded(row: &AdministrationRow, part: &CoursePart, as_of: Day) -> Option<Gap> {
    // Told once, with the first dose.
    if row.dose > 1 {
        return None;
    }
    let colonies: Vec<&str> = part.colonies.iter().map(ColonyName::as_str).collect();
    let colonies = colonies.join(", ");
    let about = About::administration(row);
    let (missing, statement, supply) = match (part.not_known_since, part.must_be_out_by) {
        (Some(since), _) => (
            "whereabouts_not_recorded",
            format!("{}: since {since} nobody recorded whether it is still in {colonies}", about.in_words()),
            "look, and record the removal, or where it went",
        ),
        (None, Some(by)) if by < as_of => (
            "removal_not_recorded",
            format!(
                "{}: it had to be out of {colonies} by {by}, and no removal is recorded",
                about.in_words()
            ),
            "take it out and record the removal; if it came out before, record it with that day",
        ),
        (None, None) if part.still_in && part.may_come_out_from.is_none_or(|from| from < as_of) => {
            let statement = format!(
                "{}: no removal from {colonies} is recorded, and nobody stated how long it may stay",
                about.in_words()
            );
            let supply =
                "look, and record the removal; or read on the leaflet how long it may stay".to_owned();
            let gap = shown(&about, "removal_not_recorded", statement);
            return Some(Gap { weight: GapWeight::Advised, supply, ..gap });
        }
        _ => return None,
    };
    Some(Gap { supply: supply.to_owned(), ..shown(&about, missing, statement) })
}

/// Documents of which the content is not kept as it was attached.
pub(super) fn of_documents(register: &RegisterReport, not_kept: &[Hash]) -> Vec<Gap> {
    let of_lots = register
        .acquisitions
        .iter()
        .flat_map(|row| row.documents.iter().map(move |document| (About::acquisition(row), document)));
    let lost = of_lots.filter(|(_, document)| not_kept.contains(&document.content));
    let gap = lost.map(|(about, document)| {
        let name = document.file_name.as_deref().unwrap_or("a document");
        let statement =
            format!("{}: `{name}` is attached, but its content is missing or altered", about.in_words());
        let supply = "attach the same file again; `verify` names every such document".to_owned();
        Gap { supply, ..shown(&about, "document_not_kept", statement) }
    });
    gap.collect()
}

/// Something that the record shows and no entry can mend.
fn shown(about: &About<'_>, missing: &'static str, statement: String) -> Gap {
    Gap {
        weight: GapWeight::Amiss,
        missing,
        about: about.in_words(),
        entry: about.written.entry,
        place: about.written.place,
        kind: about.kind,
        on: about.written.on,
        statement,
        supply: "it stays on record as it was; correct the entry only if it is wrong".to_owned(),
        law: Vec::new(),
    }
}

/// Lots without proof, without expiry, and with a book that does not come out even.
pub(super) fn of_lots(register: &RegisterReport, stock: &[LotReport]) -> Vec<Gap> {
    let mut gaps = Vec::new();
    for row in &register.acquisitions {
        let about = About::acquisition(row);
        let advice = |missing, statement: String, supply: &str| Gap {
            weight: GapWeight::Advised,
            supply: supply.to_owned(),
            ..shown(&about, missing, statement)
        };
        if row.documents.is_empty() {
            let in_words = row.proof.as_ref().is_some_and(|proof| !proof.trim().is_empty());
            let but = if in_words { " (what proves it is told in words only)" } else { "" };
            let statement = format!("{}: no document is kept with it{but}", about.in_words());
            gaps.push(advice(
                "document",
                statement,
                "photograph or scan the invoice, and attach it to the lot",
            ));
        }
        if row.expiry.is_none() {
            let statement = format!(
                "{}: without its expiry date nobody can tell whether it was used in time",
                about.in_words()
            );
            gaps.push(advice(EXPIRY_NOT_TOLD, statement, "read it on the pack, and correct the acquisition"));
        }
        if let Some(expiry) = row.expiry.filter(|expiry| *expiry < row.written.on) {
            let statement = format!("{}: it had expired on {expiry} already", about.in_words());
            gaps.push(shown(&about, "expired_when_acquired", statement));
        }
        let Some(lot) = stock.iter().find(|lot| lot.lot == row.lot) else { continue };
        if let Some(over) = lot.over {
            let statement =
                format!("lot {}: {}, {} more than was acquired", lot.lot, lot.sum, amount(over, lot.unit));
            let supply = "count again, and correct the entry that is wrong".to_owned();
            gaps.push(Gap { supply, ..shown(&about, "more_gone_than_acquired", statement) });
        } else if !lot.count_corrected.is_empty() {
            let statement = format!("lot {}: the count was corrected, so its book rests on a count", lot.lot);
            gaps.push(advice(
                "count_corrected",
                statement,
                "say in a correction what became of the difference, if it is found",
            ));
        }
    }
    gaps
}

/// The book of every lot of the register.
pub(super) fn checks(register: &RegisterReport, stock: &[LotReport]) -> Vec<LotCheck> {
    let of_register = |lot: &&LotReport| register.acquisitions.iter().any(|row| row.lot == lot.lot);
    let check = stock.iter().filter(of_register).map(|lot| LotCheck {
        lot: lot.lot.clone(),
        medicine: lot.medicine.clone(),
        unit: lot.unit,
        acquired: lot.acquired,
        given: lot.given,
        disposed: lot.disposed,
        left: lot.left,
        over: lot.over,
        count_corrected_by: lot.count_corrected.clone(),
    });
    check.collect()
}
