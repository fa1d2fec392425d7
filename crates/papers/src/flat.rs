//! The register as one CSV file (RFC 4180), safe to open in a spreadsheet.
//!
//! # Rows
//! One row per record; the first column, `record`, gives its kind: `acquisition`, `vet_lot`, `administration`, `removal`, `disposal`,
//! `prescription`, `correction`, `archived`, and those below. An administration has one row for each lot and each group of colonies whose course went the
//! same way; these rows share one `entry`. Their `quantity` is what these colonies were given from this lot, so that a sum
//! over any rows counts nothing twice; there is no column for the total of an entry. Colonies that received a course in a
//! split or a uniting have a row of their own without a quantity (`came_by`). A correction has one row for each value
//! changed, or one with an empty `field` if none was. `archived` says how many records of the period were moved into an
//! archive: this file does not hold them. The first rows, `register`, say whose register it is, of which time and under which
//! law; the last are the account of each lot (`stock`), where the apiaries are (`apiary`) and how the hives are marked
//! (`colony`).
//!
//! # Cells
//! A column that a record does not have is empty. `not recorded` means that nobody wrote it down; `not known`, that it does
//! not follow from the record yet; `none`, that there is none. Dates are ISO 8601.
//!
//! # Encoding
//! UTF-8, after a byte order mark.
//!
//! # Formulas
//! A spreadsheet takes a cell for a formula if it begins with `=`, `+`, `-` or `@`, a tab, a carriage return or a line feed,
//! or the full-width forms of those characters, even after spaces. Such text gets an apostrophe in front. So does text that
//! already has one before such a character; removing one apostrophe therefore restores the recorded text ([`unguarded`]). A
//! program that separates cells by `;` or tab begins a new cell after that character within a text, and a new row after a
//! line break: text after those is guarded in the same way. Numbers and dates written by this program are left alone. Every
//! cell is quoted.
//! Source: OWASP, "CSV Injection".
//! DIFFERENCE: OWASP's page mentions neither spaces before the character nor how to restore the text.

use std::collections::BTreeMap;

use combclear_domain::basics::calendar::Counting;
use combclear_domain::questions::register::{
    AcquisitionRow, AdministrationRow, ApiaryKey, ArchivedPart, ColonyKey, CorrectionRow, CoursePart,
    DisposalRow, DocumentPart, KeeperPart, LotTotal, MedicinePart, PrescriptionPart, PrescriptionRow,
    Register, RemovalRow, VetLotRow, Written,
};

use crate::rows::names;
use crate::shares::{Share, shares};
use crate::sheet::{is_written, written};

// Programs depend on these words, so they are the same in every language.
const NOT_RECORDED: &str = "not recorded";
const NOT_KNOWN: &str = "not known";
const NONE: &str = "none";

/// The column names, in order. Never renamed: programs depend on them.
pub const COLUMNS: [&str; 81] = [
    "record",
    "entry",
    "seq",
    "on",
    "at",
    "written_by",
    "written_at",
    "days_late",
    "copied_from",
    "copied_written_on",
    "corrects",
    "earlier",
    "medicine",
    "pack_name",
    "authorisation",
    "actives",
    "strength",
    "unit",
    "lot",
    "batch",
    "expiry",
    "quantity",
    "supplier",
    "supplier_address",
    "proof",
    "documents",
    "colonies",
    "colony_count",
    "quantity_each",
    "came_by",
    "method",
    "dose",
    "first_dose",
    "apiary",
    "later_apiaries",
    "first_day",
    "last_day",
    "duration_days",
    "withdrawal_days",
    "withdrawal_said_by",
    "withdrawal_stated",
    "wait_days",
    "last_blocked_day",
    "first_free_day",
    "free_at",
    "given_by",
    "vet",
    "vet_contact",
    "against",
    "certificate",
    "prescription",
    "placed",
    "left_inside",
    "how_and_where",
    "corrected_entry",
    "corrected_seq",
    "reason",
    "field",
    "was",
    "now",
    "archived_entries",
    "archived_through",
    "archive_file",
    "holding",
    "keeper",
    "keeper_address",
    "registration",
    "jurisdiction",
    "from",
    "to",
    "as_of",
    "journal_entries",
    "journal_head",
    "place",
    "hive_mark",
    "carried_in",
    "acquired",
    "given",
    "disposed",
    "left",
    "expired",
];

/// The byte order mark: without it, spreadsheets read UTF-8 as an older encoding. Source: Unicode Standard, section 23.8.
const MARK: &[u8] = b"\xef\xbb\xbf";

/// A file that could not be written.
#[derive(Debug, thiserror::Error)]
#[error("the CSV could not be written: {0}")]
pub struct NotWritten(String);

/// The register as CSV.
///
/// # Errors
/// None is known, since it is written to memory.
pub fn csv(register: &Register) -> Result<Vec<u8>, NotWritten> {
    let mut out = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .quote_style(csv::QuoteStyle::Always)
        .from_writer(MARK.to_vec());
    let failed = |error: csv::Error| NotWritten(error.to_string());
    out.write_record(COLUMNS).map_err(failed)?;
    for record in records(register) {
        out.write_record(record.cells()).map_err(failed)?;
    }
    out.into_inner().map_err(|error| NotWritten(error.to_string()))
}

/// A text as a cell, with an apostrophe before it, and before each part of it, that a spreadsheet would take for a formula.
#[must_use]
pub fn guarded(text: &str) -> String {
    let mut cell = String::with_capacity(text.len());
    for part in parts(text) {
        if reads_as_formula(part) {
            cell.push('\'');
        }
        cell.push_str(part);
    }
    cell
}

/// The recorded text of a cell of this file.
#[must_use]
pub fn unguarded(cell: &str) -> String {
    let part = |part| str::strip_prefix(part, '\'').filter(|text| reads_as_formula(text)).unwrap_or(part);
    parts(cell).map(part).collect()
}

/// The parts of a text that a program may take for cells, each with the character that ends it.
fn parts(text: &str) -> impl Iterator<Item = &str> {
    text.split_inclusive([';', '\t', '\r', '\n'])
}

/// Spreadsheets see a formula even after apostrophes, quotes and spaces.
fn reads_as_formula(text: &str) -> bool {
    let begins = |sign: char| {
        matches!(sign, '=' | '+' | '-' | '@' | '\t' | '\r' | '\n')
            || matches!(sign, '\u{ff1d}' | '\u{ff0b}' | '\u{ff0d}' | '\u{ff20}' | '\u{2212}')
    };
    let before = |sign: char| matches!(sign, '\'' | '"') || sign.is_whitespace() && !begins(sign);
    text.trim_start_matches(before).starts_with(begins)
}

/// A row being built.
#[derive(Default)]
struct Record(BTreeMap<&'static str, String>);

impl Record {
    /// A row that no single entry makes.
    fn of(kind: &'static str) -> Record {
        Record::default().own("record", kind)
    }

    fn new(kind: &'static str, written: &Written) -> Record {
        Record::of(kind)
            .own("entry", written.entry)
            .own("seq", written.seq)
            .own("on", written.on)
            .own_or("at", written.at, NOT_RECORDED)
            .said("written_by", Some(&written.recorded_by))
            .own("written_at", written.recorded_at)
            .own("days_late", written.days_late)
            .said(
                "copied_from",
                written.copied_from.as_ref().map_or(Some(NONE), |copied| Some(copied.what.as_str())),
            )
            .own_or("copied_written_on", written.copied_from.as_ref().map(|copied| copied.written_on), NONE)
            .own_or("corrects", written.corrects, NONE)
    }

    /// A number, date or word from this program.
    #[expect(clippy::needless_pass_by_value, reason = "values and references alike are written as text")]
    fn own(mut self, column: &'static str, value: impl ToString) -> Record {
        debug_assert!(COLUMNS.contains(&column), "no column `{column}`");
        self.0.insert(column, value.to_string());
        self
    }

    fn own_or(self, column: &'static str, value: Option<impl ToString>, otherwise: &str) -> Record {
        let value = value.map_or_else(|| otherwise.to_owned(), |value| value.to_string());
        self.own(column, value)
    }

    /// A text written by a person.
    fn said(self, column: &'static str, text: Option<impl ToString>) -> Record {
        let text = text.map(|text| text.to_string()).filter(|text| is_written(text));
        let text = text.map_or_else(|| NOT_RECORDED.to_owned(), |text| guarded(&text));
        self.own(column, text)
    }

    fn medicine(self, part: &MedicinePart) -> Record {
        let actives = (!part.actives.is_empty()).then(|| part.actives.join(", "));
        self.said("medicine", part.medicine.known())
            .said("pack_name", part.pack_name.as_ref())
            .said("authorisation", part.authorisation.as_ref())
            .said("actives", actives)
            .said("strength", part.strength.as_ref())
            .own_or("unit", part.unit, NOT_RECORDED)
    }

    fn documents(self, documents: &[DocumentPart]) -> Record {
        let hashes: Vec<String> = documents.iter().map(|document| document.content.to_string()).collect();
        self.own_or("documents", (!hashes.is_empty()).then(|| hashes.join(" ")), NONE)
    }

    fn cells(&self) -> impl Iterator<Item = &str> {
        COLUMNS.iter().map(|column| self.0.get(column).map_or("", String::as_str))
    }
}

fn records(register: &Register) -> Vec<Record> {
    let mut records = head(register);
    records.extend(register.acquisitions.iter().map(acquisition));
    records.extend(register.vet_lots.iter().map(vet_lot));
    // Moments exist only if asked for; if so, an absent one is not known.
    let no_moment = if register.policy == Counting::Elapsed.as_str() { NOT_KNOWN } else { NONE };
    for row in &register.administrations {
        records.extend(shares(row).iter().map(|share| administration(row, share, no_moment)));
    }
    records.extend(register.removals.iter().map(removal));
    records.extend(register.disposals.iter().map(disposal));
    records.extend(register.prescriptions.iter().map(prescription));
    records.extend(register.corrections.iter().flat_map(correction));
    records.extend(register.archived.iter().map(archived));
    records.extend(register.totals.iter().map(stock));
    records.extend(register.apiaries.iter().map(apiary));
    records.extend(register.colonies.iter().map(colony));
    records
}

fn acquisition(row: &AcquisitionRow) -> Record {
    let supplier = row.supplier.as_ref();
    Record::new("acquisition", &row.written)
        .own("earlier", yes_or_no(row.earlier))
        .medicine(&row.medicine)
        .said("lot", Some(&row.lot))
        .said("batch", row.batch.as_ref())
        .own_or("expiry", row.expiry, NOT_RECORDED)
        .own("quantity", row.quantity)
        .said("supplier", supplier.map(|supplier| &supplier.name))
        .said("supplier_address", supplier.and_then(|supplier| supplier.address.as_ref()))
        .said("proof", row.proof.as_ref())
        .documents(&row.documents)
}

fn vet_lot(row: &VetLotRow) -> Record {
    Record::new("vet_lot", &row.written)
        .own("earlier", yes_or_no(row.earlier))
        .medicine(&row.medicine)
        .said("lot", Some(&row.lot))
        .said("batch", row.batch.as_ref())
        .own_or("expiry", row.expiry, NOT_RECORDED)
        .said("vet", Some(&row.vet))
        .said("vet_contact", row.contact.as_ref())
        .documents(&row.documents)
}

fn administration(row: &AdministrationRow, share: &Share<'_>, no_moment: &str) -> Record {
    let given: Vec<_> = share.given.map_or_else(|| row.given.iter().collect(), |given| vec![given]);
    let lots: Vec<&str> = given.iter().map(|part| part.lot.as_str()).collect();
    let batches: Vec<&str> =
        given.iter().map(|part| written(part.batch.as_ref()).unwrap_or(NOT_RECORDED)).collect();
    let expiries: Vec<String> = given
        .iter()
        .map(|part| part.expiry.map_or_else(|| NOT_RECORDED.to_owned(), |day| day.to_string()))
        .collect();
    let mut record = Record::new("administration", &row.written)
        .own("earlier", yes_or_no(row.earlier))
        .medicine(&row.medicine)
        .said("lot", Some(lots.join("; ")))
        .said("batch", Some(batches.join("; ")))
        .own("expiry", expiries.join("; "))
        .said("colonies", Some(names(share.colonies.iter().copied())))
        .own("colony_count", share.colonies.len());
    if let Some((given, quantity)) = share.given.zip(share.quantity()) {
        record = record.own("quantity_each", given.each).own("quantity", quantity);
    }
    record = record
        .said("method", row.method.as_ref())
        .own("dose", row.dose)
        .own("first_dose", row.first_dose)
        .own_or("withdrawal_stated", row.withdrawal_stated, NOT_RECORDED)
        .said("given_by", row.given_by.as_ref())
        .said("vet", row.vet.as_ref())
        .said("against", row.against.as_ref())
        .said("certificate", row.certificate.as_ref());
    record = match &row.prescription {
        Some(part) => record.said("prescription", Some(&part.number)),
        None => record.own("prescription", NONE),
    };
    course(record, share.course, no_moment)
}

fn course(record: Record, course: Option<&CoursePart>, no_moment: &str) -> Record {
    let Some(course) = course else {
        let untold = [
            "apiary",
            "first_day",
            "last_day",
            "duration_days",
            "withdrawal_days",
            "wait_days",
            "last_blocked_day",
            "first_free_day",
        ];
        return untold.into_iter().fold(record, |record, column| record.own(column, NOT_KNOWN));
    };
    let last = match course.last {
        Some(day) => day.to_string(),
        None if course.still_in => "still in".to_owned(),
        None => course
            .not_known_since
            .map_or_else(|| NOT_RECORDED.to_owned(), |since| format!("{NOT_KNOWN} since {since}")),
    };
    let moves: Vec<String> =
        course.later_apiaries.iter().map(|stay| format!("{} {}", stay.from, stay.apiary)).collect();
    let blocked = if course.first_free_day.is_some() { NONE } else { NOT_KNOWN };
    record
        .own_or("came_by", course.came_by, NONE)
        .said("apiary", course.apiary.as_ref())
        .own("later_apiaries", if moves.is_empty() { NONE.to_owned() } else { guarded(&moves.join("; ")) })
        .own("first_day", course.first)
        .own("last_day", last)
        .own_or("duration_days", course.duration_days, NOT_KNOWN)
        .own_or("withdrawal_days", course.withdrawal.as_ref().map(|period| period.days), NOT_RECORDED)
        .own_or("withdrawal_said_by", said_by(course), NOT_RECORDED)
        .own_or("wait_days", course.wait_days, NOT_KNOWN)
        .own_or("last_blocked_day", course.last_blocked_day, blocked)
        .own_or("first_free_day", course.first_free_day, NOT_KNOWN)
        .own_or("free_at", course.free_at, no_moment)
}

/// The word that the register's JSON uses for it.
fn said_by(course: &CoursePart) -> Option<String> {
    let word = serde_json::to_value(course.withdrawal.as_ref()?.said_by).ok()?;
    word.as_str().map(str::to_owned)
}

fn removal(row: &RemovalRow) -> Record {
    Record::new("removal", &row.written)
        .medicine(&row.medicine)
        .said("colonies", Some(names(&row.colonies)))
        .own("colony_count", row.colonies.len())
        .own("first_dose", row.first_dose)
        .own_or("placed", row.placed, NOT_RECORDED)
        .own("left_inside", row.left_inside)
        .said("how_and_where", row.how_and_where.as_ref())
}

fn disposal(row: &DisposalRow) -> Record {
    Record::new("disposal", &row.written)
        .medicine(&row.medicine)
        .said("lot", Some(&row.lot))
        .said("batch", row.batch.as_ref())
        .own("quantity", row.quantity)
        .said("how_and_where", Some(&row.how_and_where))
}

fn prescription(row: &PrescriptionRow) -> Record {
    let PrescriptionPart { number, vet, contact } = &row.prescription;
    Record::new("prescription", &row.written)
        .own("earlier", yes_or_no(row.earlier))
        .medicine(&row.medicine)
        .said("prescription", Some(number))
        .said("vet", vet.as_ref())
        .said("vet_contact", contact.as_ref())
        .own_or("withdrawal_days", row.withdrawal_days, NOT_RECORDED)
        .documents(&row.documents)
}

fn correction(row: &CorrectionRow) -> Vec<Record> {
    let of = || {
        Record::new("correction", &row.written)
            .own("corrected_entry", row.of)
            .own("corrected_seq", row.of_seq)
            .said("reason", Some(&row.reason))
    };
    if row.changes.is_empty() {
        return vec![of()];
    }
    let change = row.changes.iter().map(|change| {
        let value = |record: Record, column, text: Option<&String>| match text {
            Some(text) => record.said(column, Some(text)),
            None => record.own(column, NONE),
        };
        let record = of().own("field", &change.field);
        value(value(record, "was", change.was.as_ref()), "now", change.now.as_ref())
    });
    change.collect()
}

/// Whose register it is, of which time, under which law, and from which journal: a row for each keeper of the period.
fn head(register: &Register) -> Vec<Record> {
    let of_time = || {
        Record::of("register")
            .said("holding", Some(&register.holding))
            .own("from", register.from)
            .own("to", register.to)
            .own("as_of", register.as_of)
            .own("journal_entries", register.entries)
            .own_or("journal_head", register.head, NONE)
    };
    if register.keepers.is_empty() {
        let untold = ["keeper", "keeper_address", "registration", "jurisdiction"];
        return vec![untold.into_iter().fold(of_time(), |record, column| record.own(column, NOT_RECORDED))];
    }
    let of_keeper = |part: &KeeperPart| {
        of_time()
            .own("entry", part.entry)
            .own("on", part.since)
            .said("keeper", Some(&part.keeper))
            .said("keeper_address", part.address.as_ref())
            .said("registration", part.registration.as_ref())
            .own("jurisdiction", &part.jurisdiction)
    };
    register.keepers.iter().map(of_keeper).collect()
}

fn stock(total: &LotTotal) -> Record {
    Record::of("stock")
        .medicine(&total.medicine)
        .said("lot", Some(&total.lot))
        .said("batch", total.batch.as_ref())
        .own_or("expiry", total.expiry, NOT_RECORDED)
        .own_or("carried_in", total.carried_in, NOT_KNOWN)
        .own("acquired", total.acquired)
        .own("given", total.given)
        .own("disposed", total.disposed)
        .own_or("left", total.left, NOT_KNOWN)
        .own("expired", yes_or_no(total.expired))
}

fn apiary(key: &ApiaryKey) -> Record {
    Record::of("apiary").said("apiary", Some(&key.apiary)).said("place", key.place.as_ref())
}

fn colony(key: &ColonyKey) -> Record {
    let record = Record::of("colony").said("colonies", Some(&key.colony));
    let record = record.said("hive_mark", key.hive_mark.as_ref());
    match &key.apiary {
        Some(apiary) => record.said("apiary", Some(apiary)),
        None => record.own("apiary", NONE),
    }
}

fn archived(part: &ArchivedPart) -> Record {
    Record::new("archived", &part.written)
        .own("archived_entries", part.entries)
        .own("archived_through", part.through)
        .own("archive_file", part.file)
}

fn yes_or_no(yes: bool) -> &'static str {
    if yes { "yes" } else { "no" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_that_a_spreadsheet_would_run_gets_an_apostrophe() {
        let cases = [
            ("a plain text stays", "Hollin Bee Stores", "Hollin Bee Stores"),
            ("a formula", "=1+1", "'=1+1"),
            ("a plus", "+44 20", "'+44 20"),
            ("a minus", "-1", "'-1"),
            ("an at sign", "@SUM(A1)", "'@SUM(A1)"),
            ("a tab", "\t=1", "'\t'=1"),
            ("a carriage return", "\r=1", "'\r'=1"),
            ("a line feed", "\n=1", "'\n'=1"),
            ("a formula after a semicolon", "a;=1+1", "a;'=1+1"),
            ("a formula after a semicolon and a space", "a; -1; b", "a;' -1; b"),
            ("a formula after a tab", "a\t@x", "a\t'@x"),
            ("a formula in quotes after a semicolon", "a;\"=1\"", "a;'\"=1\""),
            ("an apostrophe after a semicolon", "a;'=1", "a;''=1"),
            ("semicolons alone stay", "a; b;c", "a; b;c"),
            ("a space before it", "  =1", "'  =1"),
            ("a space that does not break before it", "\u{a0}=1", "'\u{a0}=1"),
            ("full-width signs", "\u{ff1d}1", "'\u{ff1d}1"),
            ("full-width at", "\u{ff20}A", "'\u{ff20}A"),
            ("an apostrophe before a formula", "'=1", "''=1"),
            ("two apostrophes before a formula", "''=1", "'''=1"),
            ("an apostrophe before a word stays", "'tis", "'tis"),
            ("a sign within stays", "X8-114", "X8-114"),
            ("nothing stays", "", ""),
        ];
        for (name, text, cell) in cases {
            assert_eq!(guarded(text), cell, "{name}");
            assert_eq!(unguarded(cell), text, "{name}, back");
        }
    }
}
