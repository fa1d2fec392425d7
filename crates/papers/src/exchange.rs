//! Treatments and stock movements for other programs: the two collections of the ICAR Animal Data Exchange JSON that hold them.
//!
//! Source: ICAR Animal Data Exchange (repository `adewg/ICAR`, Apache-2.0), development branch of 8 February 2024:
//! `icarGroupTreatmentEventCollection` and `icarMedicineTransactionCollection`, by their tables of properties.
//!
//! # Days
//! The standard has date-times only. A civil date is written as midday UTC (`2026-04-11T12:00:00Z`): it is the same date in
//! every zone from UTC-12 to UTC+11. `withdrawals[].endDate` is the last blocked day; for a period of 0 days, the day on
//! which the treatment ended. It is absent if not known.
//!
//! # Units
//! Grams are `GRM`, millilitres `MLT`. The list of dose units of that version has none for strips, trays, tablets, wafers and
//! pieces, so a dose of those has no `doseUnits`, which may be left out, and the remark names the unit. A transaction may name
//! any unit: there they are `EA` (each, UN/CEFACT Recommendation 20), and an amount without a recorded unit says `not recorded`.
//! DIFFERENCE: the list has `XTU`, which is a tube in UN/CEFACT Recommendation 21 and would be wrong for a strip.
//!
//! # Medicines
//! A medicine is known by its authorisation number, or by the keeper's name for it if none is recorded.
//!
//! # Corrections
//! An entry keeps the id of the first one that recorded it; `meta.modified` is when it was last corrected, and of a treatment
//! when anything about its course was last recorded. What was struck out, and what may have been sent before and is no more (a
//! group of colonies, the use of a lot), is sent with `meta.isDeleted`.
//!
//! # Treatments
//! One for each group of colonies whose course went the same way, as in the rows of the CSV. Each has exactly one
//! withdrawal, for honey. Without `endDate` its end is not known, and the colonies must be taken as blocked.
//!
//! # Data without a place in the standard
//! See [`notes`].

use combclear_domain::basics::quantity::Quantity;
use combclear_domain::basics::words::{HoldingName, LotName, Unit};
use combclear_domain::questions::register::{
    AcquisitionRow, AdministrationRow, DisposalRow, GivenPart, LotTotal, MedicinePart, Register, StruckOut,
    StruckOutRow, Written,
};
use combclear_domain::{Day, Instant};
use combclear_wording::{Label, Words, exchange as say, paper};
use serde::Serialize;
use serde_json::Number;

use crate::rows::names;
use crate::sheet::written as said;

mod treatments;

const COLONY: &str = "internal.combclear.colony";
const APIARY: &str = "internal.combclear.apiary";
const AUTHORISATION: &str = "internal.combclear.authorisation";
const MEDICINE: &str = "internal.combclear.medicine";
/// The family of products that medicines belong to, in the words of the standard.
const FAMILY: &str = "Veterinary Supplies";
/// The unit of what is counted.
const EACH: &str = "EA";
/// The unit of a transaction without a recorded unit. A fixed word, the same in every language.
const NO_UNITS: &str = "not recorded";

/// What a reader must know and the format cannot express.
#[must_use]
pub fn notes() -> [&'static str; 13] {
    say::NOTES.map(|note| Words::english().label(note))
}

/// Treatments and stock movements.
#[derive(Debug, Clone, PartialEq)]
pub struct Exchange {
    /// One for each administration and each group of colonies whose course went the same way.
    pub treatments: Collection<GroupTreatment>,
    /// What was received, used and disposed of, and what is on hand at the end.
    pub transactions: Collection<Transaction>,
}

/// A collection of the standard (`icarResourceCollection`), on one page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Collection<T> {
    view: View,
    member: Vec<T>,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
struct View {
    total_items: usize,
    total_pages: u8,
    current_page: u8,
}

impl<T> Collection<T> {
    fn of(member: Vec<T>) -> Collection<T> {
        Collection { view: View { total_items: member.len(), total_pages: 1, current_page: 1 }, member }
    }
}

impl Exchange {
    /// The file for a register.
    #[must_use]
    pub fn of(register: &Register) -> Exchange {
        let words = Words::english();
        let source = source(&register.holding);
        let mut treatments: Vec<GroupTreatment> =
            register.administrations.iter().flat_map(|row| treatments::of(words, row, &source)).collect();
        let mut transactions: Vec<Transaction> =
            register.acquisitions.iter().map(|row| receipt(words, row, &source)).collect();
        // Also of earlier doses: each treatment has its use, and each use its receipt. `OnHand` is the balance.
        transactions.extend(register.administrations.iter().flat_map(|row| uses(words, row, &source)));
        transactions.extend(register.disposals.iter().map(|row| disposal(words, row, &source)));
        let through = register.to.min(register.as_of);
        let on_hand = register.totals.iter().filter_map(|lot| on_hand(words, lot, through, &source));
        transactions.extend(on_hand);
        for gone in &register.struck_out {
            match &gone.row {
                StruckOutRow::Acquisition(row) => {
                    transactions.push(deleted(words, receipt(words, row, &source), gone));
                }
                StruckOutRow::Administration(row) => {
                    treatments.extend(
                        treatments::of(words, row, &source)
                            .into_iter()
                            .map(|item| deleted(words, item, gone)),
                    );
                    transactions
                        .extend(uses(words, row, &source).into_iter().map(|item| deleted(words, item, gone)));
                }
                StruckOutRow::Disposal(row) => {
                    transactions.push(deleted(words, disposal(words, row, &source), gone));
                }
            }
        }
        Exchange { treatments: Collection::of(treatments), transactions: Collection::of(transactions) }
    }
}

/// A medicine given to a set of colonies (`icarGroupTreatmentEventResource`).
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct GroupTreatment {
    resource_type: &'static str,
    meta: Meta,
    #[serde(skip_serializing_if = "Option::is_none")]
    location: Option<Identifier>,
    id: String,
    event_date_time: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    responsible: Option<String>,
    remark: String,
    group_method: &'static str,
    count_observed: usize,
    embedded_animal_set: AnimalSet,
    medicine: Medicine,
    #[serde(skip_serializing_if = "Option::is_none")]
    procedure: Option<String>,
    batches: Vec<Batch>,
    withdrawals: Vec<Withdrawal>,
    #[serde(skip_serializing_if = "Option::is_none")]
    dose_per_animal: Option<Dose>,
    #[serde(skip_serializing_if = "Option::is_none")]
    total_medicine_used: Option<Dose>,
}

/// A stock movement (`icarMedicineTransactionResource`).
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Transaction {
    resource_type: &'static str,
    meta: Meta,
    id: String,
    event_date_time: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    responsible: Option<String>,
    remark: String,
    #[serde(rename = "transactionKind")]
    kind: &'static str,
    quantity: Number,
    units: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    supplier_name: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    expiry_date: Option<String>,
    product: Medicine,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
struct Meta {
    source: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    source_id: Option<String>,
    modified: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    creator: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    is_deleted: Option<bool>,
}

/// What both collections have of their members.
trait Member {
    fn told(&mut self) -> (&mut Meta, &mut String);
}

impl Member for GroupTreatment {
    fn told(&mut self) -> (&mut Meta, &mut String) {
        (&mut self.meta, &mut self.remark)
    }
}

impl Member for Transaction {
    fn told(&mut self) -> (&mut Meta, &mut String) {
        (&mut self.meta, &mut self.remark)
    }
}

/// The same, of an entry that was struck out.
fn deleted<T: Member>(words: &Words, mut member: T, gone: &StruckOut) -> T {
    let (meta, remark) = member.told();
    meta.modified = instant(gone.by.recorded_at);
    meta.creator = Some(gone.by.recorded_by.to_string());
    meta.is_deleted = Some(true);
    *remark = say::struck_out(words, &gone.reason);
    member
}

#[derive(Debug, Clone, PartialEq, Serialize)]
struct Identifier {
    id: String,
    scheme: &'static str,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
struct AnimalSet {
    resource_type: &'static str,
    id: String,
    member: Vec<Identifier>,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
struct Medicine {
    identifier: Identifier,
    family: &'static str,
    name: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    registered_identifier: Option<Identifier>,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
struct Batch {
    #[serde(skip_serializing_if = "Option::is_none")]
    identifier: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    expiry_date: Option<String>,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
struct Withdrawal {
    product_type: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    end_date: Option<String>,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
struct Dose {
    dose_quantity: Number,
    #[serde(skip_serializing_if = "Option::is_none")]
    dose_units: Option<&'static str>,
}

/// A civil date as midday UTC.
fn midday(day: Day) -> String {
    format!("{day}T12:00:00Z")
}

fn units(unit: Unit) -> &'static str {
    match unit {
        Unit::Gram => "GRM",
        Unit::Millilitre => "MLT",
        Unit::Strip | Unit::Tray | Unit::Tablet | Unit::Wafer | Unit::Piece => EACH,
    }
}

/// An exact amount as a JSON number.
fn amount(quantity: Quantity) -> Number {
    quantity.to_string().parse().unwrap_or_else(|_| Number::from(quantity.thousandths() / 1_000))
}

fn dose(quantity: Quantity, unit: Option<Unit>) -> Dose {
    Dose { dose_quantity: amount(quantity), dose_units: unit.map(units).filter(|unit| *unit != EACH) }
}

/// A URI for the journal of a holding.
fn source(holding: &HoldingName) -> String {
    let mut source = "urn:x-combclear:".to_owned();
    for byte in holding.as_str().bytes() {
        if byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'.' | b'_') {
            source.push(char::from(byte));
        } else {
            source.push_str(&format!("%{byte:02X}"));
        }
    }
    source
}

fn meta(written: &Written, source: &str) -> Meta {
    Meta {
        source: source.to_owned(),
        source_id: Some(written.entry.to_string()),
        modified: instant(written.recorded_at),
        creator: Some(written.recorded_by.to_string()),
        is_deleted: None,
    }
}

fn instant(at: Instant) -> String {
    at.to_string()
}

fn medicine(words: &Words, part: &MedicinePart) -> Medicine {
    let id = said(part.authorisation.as_ref()).map(str::to_owned);
    let known_by = id.clone().map(|id| Identifier { id, scheme: AUTHORISATION });
    let own_name = || Identifier { id: paper::medicine(words, &part.medicine), scheme: MEDICINE };
    Medicine {
        identifier: known_by.unwrap_or_else(own_name),
        family: FAMILY,
        name: said(part.pack_name.as_ref())
            .map_or_else(|| paper::medicine(words, &part.medicine), str::to_owned),
        registered_identifier: id.map(|id| Identifier { id, scheme: AUTHORISATION }),
    }
}

fn transaction(
    words: &Words,
    written: &Written,
    source: &str,
    kind: &'static str,
    quantity: Quantity,
    part: &MedicinePart,
) -> Transaction {
    Transaction {
        resource_type: "icarMedicineTransactionResource",
        meta: meta(written, source),
        id: written.first_entry.to_string(),
        event_date_time: midday(written.on),
        responsible: None,
        remark: String::new(),
        kind,
        quantity: amount(quantity),
        units: part.unit.map_or(NO_UNITS, units),
        supplier_name: None,
        expiry_date: None,
        product: medicine(words, part),
    }
}

/// A value after its label, or `not recorded` after it.
fn labelled(words: &Words, label: Label, value: Option<&str>) -> String {
    format!("{}: {}", words.label(label), value.unwrap_or_else(|| words.label(Label::NotRecorded)))
}

/// Lot, batch and unit of the stock: a movement has no place for them in the standard.
fn stock(words: &Words, lot: &LotName, batch: Option<&String>, unit: Option<Unit>) -> [String; 3] {
    [say::lot(words, lot), labelled(words, Label::Batch, said(batch)), unit_of(words, unit)]
}

fn unit_of(words: &Words, unit: Option<Unit>) -> String {
    labelled(words, Label::ExchangeUnit, unit.map(Unit::as_str))
}

/// The record on paper from which an entry was copied, if it was.
fn copied(words: &Words, written: &Written) -> Option<String> {
    written.copied_from.as_ref().map(|copied| paper::copied_from(words, copied))
}

/// Joins sentences.
fn remark(said: impl IntoIterator<Item = String>) -> String {
    said.into_iter().collect::<Vec<_>>().join(". ")
}

fn receipt(words: &Words, row: &AcquisitionRow, source: &str) -> Transaction {
    let supplier = row.supplier.as_ref();
    let address = supplier.and_then(|supplier| said(supplier.address.as_ref()));
    let address = labelled(words, Label::ExchangeSupplierAddress, address);
    let proof = labelled(words, Label::ExchangeProof, said(row.proof.as_ref()));
    let stock = stock(words, &row.lot, row.batch.as_ref(), row.medicine.unit);
    Transaction {
        remark: remark(stock.into_iter().chain([address, proof]).chain(copied(words, &row.written))),
        supplier_name: supplier.and_then(|supplier| said(Some(&supplier.name))).map(str::to_owned),
        expiry_date: row.expiry.map(midday),
        ..transaction(words, &row.written, source, "Receipt", row.quantity, &row.medicine)
    }
}

fn uses(words: &Words, row: &AdministrationRow, source: &str) -> Vec<Transaction> {
    // What a vet gave from the vet's own stock moves nothing in the keeper's.
    let own = row.given.iter().filter(|part| !part.of_vet);
    let mut by_lot: Vec<(&LotName, Vec<&GivenPart>)> = Vec::new();
    for part in own {
        match by_lot.iter_mut().find(|(lot, _)| **lot == part.lot) {
            Some((_, parts)) => parts.push(part),
            None => by_lot.push((&part.lot, vec![part])),
        }
    }
    let used_no_more =
        row.sent_before.lots.iter().filter(|lot| row.given.iter().all(|part| part.lot != **lot));
    let gone = used_no_more.map(|lot| {
        let mut item = one_use(words, row, lot, &[], source);
        item.meta.is_deleted = Some(true);
        words.label(Label::ExchangeNotUsedAnyMore).clone_into(&mut item.remark);
        item
    });
    by_lot.iter().map(|(lot, parts)| one_use(words, row, lot, parts, source)).chain(gone).collect()
}

/// What was used of one lot.
fn one_use(
    words: &Words,
    row: &AdministrationRow,
    lot: &LotName,
    parts: &[&GivenPart],
    source: &str,
) -> Transaction {
    let total = parts.iter().fold(Quantity::ZERO, |sum, part| sum.plus(part.total));
    let first = parts.first();
    let stock = stock(words, lot, first.and_then(|part| part.batch.as_ref()), row.medicine.unit);
    let colonies = names(parts.iter().flat_map(|part| &part.colonies));
    let colonies = labelled(words, Label::Colonies, Some(&colonies));
    Transaction {
        id: format!("{}/use/{lot}", row.written.first_entry),
        responsible: row.given_by.as_ref().or(row.vet.as_ref()).map(ToString::to_string),
        remark: remark(stock.into_iter().chain([colonies]).chain(copied(words, &row.written))),
        expiry_date: first.and_then(|part| part.expiry).map(midday),
        ..transaction(words, &row.written, source, "Use", total, &row.medicine)
    }
}

fn disposal(words: &Words, row: &DisposalRow, source: &str) -> Transaction {
    let stock = stock(words, &row.lot, row.batch.as_ref(), row.medicine.unit);
    let how_and_where = labelled(words, Label::HowAndWhere, said(Some(&row.how_and_where)));
    Transaction {
        remark: remark(stock.into_iter().chain([how_and_where]).chain(copied(words, &row.written))),
        ..transaction(words, &row.written, source, "Disposal", row.quantity, &row.medicine)
    }
}

/// What is left of a lot by its stock account; `None` if nothing is, or if more is gone than was acquired.
fn on_hand(words: &Words, lot: &LotTotal, on: Day, source: &str) -> Option<Transaction> {
    let quantity = lot.left.filter(|left| !left.is_zero())?;
    let stock = stock(words, &lot.lot, lot.batch.as_ref(), lot.medicine.unit);
    Some(Transaction {
        resource_type: "icarMedicineTransactionResource",
        meta: Meta {
            source: source.to_owned(),
            source_id: None,
            modified: midday(on),
            creator: None,
            is_deleted: None,
        },
        id: format!("on-hand/{on}/{}", lot.lot),
        event_date_time: midday(on),
        responsible: None,
        remark: remark(stock.into_iter().chain([words.label(Label::ExchangeByTheBook).to_owned()])),
        kind: "OnHand",
        quantity: amount(quantity),
        units: lot.medicine.unit.map_or(NO_UNITS, units),
        supplier_name: None,
        expiry_date: lot.expiry.map(midday),
        product: medicine(words, &lot.medicine),
    })
}
