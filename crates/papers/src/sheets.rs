//! The sheets of the register.

use combclear_domain::basics::calendar::Counting;
use combclear_domain::basics::words::Unit;
use combclear_domain::questions::register::{
    AdministrationRow, ArchivedPart, CoursePart, DocumentPart, KeeperPart, PrescriptionPart, Written,
};
use combclear_wording::gaps::GapsReport;
use combclear_wording::register::RegisterReport;

use crate::fields;
use crate::rows::{JournalPlaces, day, entry, medicine, names, number, said_by};
use crate::shares::{Share, shares};
use crate::sheet::{Cell, Column, Fact, NOT_RECORDED, Paper, Piece, Sheet, is_written, written};
use crate::sheets_gaps;

impl Paper {
    /// The register as sheets, with what the law still misses where that was asked.
    #[must_use]
    pub fn of(report: &RegisterReport, gaps: Option<&GapsReport>) -> Paper {
        let places = JournalPlaces::of(report);
        let mut sheets = vec![
            acquisitions(report, &places),
            administrations(report, &places),
            removals(report, &places),
            disposals(report, &places),
            prescriptions(report, &places),
            corrections(report, &places),
            lots(report),
        ];
        sheets.extend(gaps.into_iter().flat_map(sheets_gaps::sheets));
        Paper {
            title: "Register of veterinary medicines",
            holding: report.holding.to_string(),
            keeper: keeper(report),
            period: format!("{} to {}", report.from, report.to),
            facts: facts(report),
            sheets,
            notice: report.notice.clone(),
        }
    }
}

/// Who kept the holding, one name after the other.
pub(crate) fn keeper(report: &RegisterReport) -> String {
    let mut names: Vec<&str> = report.keepers.iter().map(|part| part.keeper.as_str()).collect();
    names.dedup();
    if names.is_empty() { format!("keeper {NOT_RECORDED}") } else { names.join(", ") }
}

fn facts(report: &RegisterReport) -> Vec<Fact> {
    let mut facts: Vec<Fact> = report.keepers.iter().map(|part| fact("Keeper", keeper_line(part))).collect();
    if facts.is_empty() {
        facts.push(fact("Keeper", NOT_RECORDED.to_owned()));
    }
    facts.push(fact("Time", format!("{} to {}, both days included", report.from, report.to)));
    facts.push(fact("As of", format!("{}; what happened later does not bear on it", report.as_of)));
    let head = report.head.map_or_else(|| "none".to_owned(), |head| head.to_string());
    facts.push(fact("Journal", format!("{} entries, the last with the hash {head}", report.entries)));
    facts.extend(report.archived.iter().map(|part| fact("In an archive", archived(part))));
    let policy = if report.policy == Counting::Calendar.as_str() {
        format!("{}: the day of the event is not counted", report.policy)
    } else {
        format!(
            "{}: full days of 24 hours from the time noted, an hour more if the clocks went forward; civil days beside it",
            report.policy
        )
    };
    facts.push(fact("Days are counted by", policy));
    facts
}

fn fact(head: &'static str, says: String) -> Fact {
    Fact { head, says }
}

/// What of this time is to be looked up elsewhere.
fn archived(part: &ArchivedPart) -> String {
    let ArchivedPart { written, through, entries, file } = part;
    let (entries, were) = match entries {
        1 => ("1 entry".to_owned(), "was"),
        more => (format!("{more} entries"), "were"),
    };
    format!(
        "{entries} of this time {were} moved out of the journal on {} by {} (no. {}), when by {through} the law asked \
         nothing of them any more: they are not in this register but in the file with the SHA-256 hash {file}",
        written.on, written.recorded_by, written.place
    )
}

fn keeper_line(part: &KeeperPart) -> String {
    let or = |text: &Option<String>| written(text.as_ref()).unwrap_or(NOT_RECORDED).to_owned();
    format!(
        "{}, since {}; address: {}; registration: {}; law of {}",
        part.keeper,
        part.since,
        or(&part.address),
        or(&part.registration),
        part.jurisdiction
    )
}

pub(crate) fn sheet<const N: usize>(
    id: &'static str,
    title: &'static str,
    columns: [(&'static str, u8); N],
    rows: impl Iterator<Item = [Cell; N]>,
) -> Sheet {
    let columns = columns.into_iter().map(|(head, width)| Column { head, width }).collect();
    Sheet { id, title, notes: Vec::new(), columns, rows: rows.map(Vec::from).collect() }
}

fn acquisitions(report: &RegisterReport, places: &JournalPlaces) -> Sheet {
    let columns = [
        ("no.", 8),
        ("date acquired", 9),
        ("medicine", 16),
        ("lot, batch, expiry", 15),
        ("quantity", 9),
        ("supplier", 17),
        ("proof of purchase", 16),
        ("written by", 10),
    ];
    let rows = report.acquisitions.iter().map(|row| {
        let supplier = row.supplier.as_ref();
        let name = Cell::of(supplier.map(|supplier| &supplier.name).into());
        [
            entry(&row.written, places),
            day_or_before(&row.written, row.earlier),
            medicine(&row.medicine),
            Cell::text(row.lot.to_string())
                .and("batch", row.batch.as_ref().into())
                .and("expiry", Piece::date(row.expiry)),
            Cell::of(Piece::Amount(row.quantity, row.medicine.unit)),
            name.and("address", supplier.and_then(|supplier| supplier.address.as_ref()).into()),
            proof(row.proof.as_ref(), &row.documents),
            Cell::text(row.written.recorded_by.to_string()),
        ]
    });
    sheet("acquisitions", "Acquisitions", columns, rows)
}

/// The day of a lot or prescription, and why it stands here if that is before the time of the register.
fn day_or_before(written: &Written, earlier: bool) -> Cell {
    let cell = day(written);
    if earlier { cell.and_text("before this time, used in it") } else { cell }
}

fn proof(words: Option<&String>, documents: &[DocumentPart]) -> Cell {
    let Some(words) = written(words) else {
        return match documents {
            [] => Cell::of(Piece::NotRecorded),
            documents => documents_cell(Cell::default(), documents),
        };
    };
    documents_cell(Cell::text(words), documents)
}

fn documents_cell(cell: Cell, documents: &[DocumentPart]) -> Cell {
    documents.iter().fold(cell, |cell, document| {
        let name = written(document.file_name.as_ref())
            .map_or_else(|| document.media_type.to_string(), str::to_owned);
        cell.and("document", Piece::Text(name)).and("SHA-256", Piece::text(document.content))
    })
}

fn administrations(report: &RegisterReport, places: &JournalPlaces) -> Sheet {
    let columns = [
        ("no.", 8),
        ("medicine", 13),
        ("lot, batch, expiry", 11),
        ("colonies", 12),
        ("quantity", 10),
        ("apiary", 9),
        ("first and last day", 11),
        ("withdrawal period", 11),
        ("blocked and free", 11),
        ("given by and why", 14),
    ];
    let by_moments = report.policy == Counting::Elapsed.as_str();
    let rows = report.administrations.iter().flat_map(|row| {
        let shares = shares(row).into_iter().enumerate();
        shares.map(move |(index, share)| administration(row, index, &share, places, by_moments))
    });
    let mut sheet = sheet("administrations", "Administrations", columns, rows);
    sheet.notes.push(
        "One row for each lot and each group of colonies of which the course went the same way; rows with one \
         number are one entry. An apiary is where the colonies stood when treated, and then until the withdrawal \
         period was over."
            .to_owned(),
    );
    if report.administrations.iter().any(|row| row.earlier) {
        sheet.notes.push(format!(
            "A dose that says \u{201c}{EARLIER_DOSE}\u{201d} was given before the first day of this register. It stands here \
             because the medicine was still in, or a period of it ran, on that day; the totals leave it out."
        ));
    }
    sheet
}

/// What stands beside a dose that was given before the time of the register; the note of the sheet says why it is there.
const EARLIER_DOSE: &str = "before this time";

fn administration(
    row: &AdministrationRow,
    index: usize,
    share: &Share<'_>,
    places: &JournalPlaces,
    by_moments: bool,
) -> [Cell; 10] {
    let number = entry(&row.written, places);
    let number = if index == 0 { number } else { number.and_text("the same entry") };
    let number = if row.earlier { number.and_text(EARLIER_DOSE) } else { number };
    [
        number.and("date", Piece::Date(row.written.on)),
        medicine(&row.medicine),
        lot(row, share),
        Cell::text(names(share.colonies.iter().copied())).and("number", Piece::text(share.colonies.len())),
        quantity(row, index, share, places),
        apiary(share.course),
        days(row, share.course, places),
        withdrawal(row, share.course, places),
        blocked(share.course, by_moments),
        given_by(row),
    ]
}

fn lot(row: &AdministrationRow, share: &Share<'_>) -> Cell {
    let of: Vec<_> = share.given.map_or_else(|| row.given.iter().collect(), |given| vec![given]);
    of.into_iter().fold(Cell::default(), |cell, given| {
        cell.and_text(given.lot.to_string())
            .and("batch", given.batch.as_ref().into())
            .and("expiry", Piece::date(given.expiry))
    })
}

fn quantity(row: &AdministrationRow, index: usize, share: &Share<'_>, places: &JournalPlaces) -> Cell {
    let unit: Option<Unit> = row.medicine.unit;
    let Some((given, sum)) = share.given.zip(share.quantity()) else {
        let by = share.course.and_then(|course| course.came_by);
        let by = by.map(|by| format!(", {}", places.words(by))).unwrap_or_default();
        return Cell::text(format!("none given: it came with a split or a uniting{by}"));
    };
    let cell = Cell::default()
        .and("each", Piece::Amount(given.each, unit))
        .and("together", Piece::Amount(sum, unit));
    if index == 0 { cell.and("whole entry", Piece::Amount(row.total, unit)) } else { cell }
}

fn apiary(course: Option<&CoursePart>) -> Cell {
    let Some(course) = course else { return Cell::of(Piece::NotRecorded) };
    let cell = Cell::of(course.apiary.as_ref().into());
    course
        .later_apiaries
        .iter()
        .fold(cell, |cell, stay| cell.and_text(format!("from {}: {}", stay.from, stay.apiary)))
}

fn days(row: &AdministrationRow, course: Option<&CoursePart>, places: &JournalPlaces) -> Cell {
    let mut cell = Cell::default();
    let Some(course) = course else {
        return cell.and("first", Piece::Date(row.written.on)).and("last", Piece::NotRecorded);
    };
    cell = cell.and("first", Piece::Date(course.first));
    cell = match (course.last, course.not_known_since) {
        (Some(last), _) => cell.and("last", Piece::Date(last)),
        (None, Some(since)) => cell.and("last", Piece::Text(format!("not known since {since}"))),
        (None, None) if course.still_in => cell.and("last", Piece::text("still in")),
        (None, None) => cell.and("last", Piece::NotRecorded),
    };
    let lasted = course.duration_days.map_or_else(|| Piece::text("not known yet"), Piece::Days);
    cell = cell.and("duration", lasted);
    if row.first_dose == row.written.entry {
        return cell;
    }
    cell.and_text(format!("dose {} of the course begun with {}", row.dose, places.words(row.first_dose)))
}

fn withdrawal(row: &AdministrationRow, course: Option<&CoursePart>, places: &JournalPlaces) -> Cell {
    let period = course.and_then(|course| course.withdrawal.as_ref());
    let mut cell = Cell::of(Piece::days(period.map(|period| period.days)));
    if let Some(period) = period {
        cell = cell.and_text(said_by(period.said_by));
        if let Some(at) = period.entry.filter(|at| *at != row.written.entry && places.knows(*at)) {
            cell = cell.and_text(places.words(at));
        }
    }
    let differs = |stated: &u16| period.is_none_or(|period| period.days != *stated);
    if let Some(stated) = row.withdrawal_stated.filter(differs) {
        cell = cell.and("stated in the entry", Piece::Days(u32::from(stated)));
    }
    match course.map(|course| course.wait_days) {
        // No wait, or no course that it could be told of.
        Some(Some(0)) | None => cell,
        Some(Some(wait)) => cell.and("wait before supers", Piece::Days(u32::from(wait))),
        Some(None) => cell.and("wait before supers", Piece::text("not known")),
    }
}

fn blocked(course: Option<&CoursePart>, by_moments: bool) -> Cell {
    let free = course.and_then(|course| course.first_free_day);
    let blocked = course.and_then(|course| course.last_blocked_day);
    let not_known = || Piece::text("not known yet");
    let last =
        blocked.map_or_else(|| if free.is_some() { Piece::text("none") } else { not_known() }, Piece::Date);
    let cell = Cell::default()
        .and("last blocked day", last)
        .and("first free day", free.map_or_else(not_known, Piece::Date));
    if !by_moments {
        return cell;
    }
    let free_at = course.and_then(|course| course.free_at).map_or_else(not_known, Piece::text);
    cell.and("free, by full days of 24 hours, at", free_at)
}

fn given_by(row: &AdministrationRow) -> Cell {
    let mut cell = Cell::default()
        .and("given by", row.given_by.as_ref().or(row.vet.as_ref()).into())
        .and("reason", row.against.as_ref().into());
    let more = [
        ("vet", row.vet.as_ref().map(ToString::to_string)),
        ("certificate", row.certificate.clone()),
        ("method", row.method.as_ref().map(ToString::to_string)),
    ];
    for (label, said) in more {
        if let Some(said) = said.filter(|said| is_written(said)) {
            cell = cell.and(label, Piece::Text(said));
        }
    }
    let prescription = row.prescription.as_ref().map_or_else(|| Piece::text("none named"), prescribed);
    cell.and("prescription", prescription).and("written by", Piece::text(&row.written.recorded_by))
}

fn prescribed(part: &PrescriptionPart) -> Piece {
    let vet = part.vet.as_ref().map_or_else(|| format!("vet {NOT_RECORDED}"), ToString::to_string);
    Piece::Text(format!("{}, {vet}", part.number))
}

fn removals(report: &RegisterReport, places: &JournalPlaces) -> Sheet {
    let columns = [
        ("no.", 9),
        ("date removed", 10),
        ("medicine", 16),
        ("placed", 12),
        ("colonies", 18),
        ("left inside each", 9),
        ("how and where disposed of", 17),
        ("written by", 10),
    ];
    let rows = report.removals.iter().map(|row| {
        let left = if row.left_inside == 0 { Piece::text("none") } else { Piece::text(row.left_inside) };
        [
            entry(&row.written, places),
            day(&row.written),
            medicine(&row.medicine),
            Cell::of(Piece::date(row.placed)).and_text(places.words(row.first_dose)),
            Cell::text(names(&row.colonies)).and("number", Piece::text(row.colonies.len())),
            Cell::of(left),
            // Of what comes out used, few note it: that it is missing is said without emphasis.
            Cell::text(written(row.how_and_where.as_ref()).unwrap_or(NOT_RECORDED)),
            Cell::text(row.written.recorded_by.to_string()),
        ]
    });
    sheet("removals", "Removals", columns, rows)
}

fn disposals(report: &RegisterReport, places: &JournalPlaces) -> Sheet {
    let columns = [
        ("no.", 9),
        ("date", 10),
        ("medicine", 18),
        ("lot and batch", 16),
        ("quantity", 10),
        ("how and where", 24),
        ("written by", 13),
    ];
    let rows = report.disposals.iter().map(|row| {
        [
            entry(&row.written, places),
            day(&row.written),
            medicine(&row.medicine),
            Cell::text(row.lot.to_string()).and("batch", row.batch.as_ref().into()),
            Cell::of(Piece::Amount(row.quantity, row.medicine.unit)),
            Cell::of(Some(&row.how_and_where).into()),
            Cell::text(row.written.recorded_by.to_string()),
        ]
    });
    sheet("disposals", "Disposals", columns, rows)
}

fn prescriptions(report: &RegisterReport, places: &JournalPlaces) -> Sheet {
    let columns = [
        ("no.", 9),
        ("date", 12),
        ("prescription", 16),
        ("vet", 22),
        ("medicine", 18),
        ("withdrawal period", 10),
        ("copies", 13),
    ];
    let rows = report.prescriptions.iter().map(|row| {
        let copies = match row.documents.as_slice() {
            [] => Cell::text("none kept"),
            documents => documents_cell(Cell::default(), documents),
        };
        [
            entry(&row.written, places),
            day_or_before(&row.written, row.earlier),
            Cell::text(row.prescription.number.to_string()),
            Cell::of(row.prescription.vet.as_ref().into())
                .and("contact", row.prescription.contact.as_ref().into()),
            medicine(&row.medicine),
            Cell::of(Piece::days(row.withdrawal_days)),
            copies,
        ]
    });
    sheet("prescriptions", "Prescriptions", columns, rows)
}

fn corrections(report: &RegisterReport, places: &JournalPlaces) -> Sheet {
    let columns = [("no.", 9), ("corrected entry", 15), ("values", 40), ("reason", 22), ("who and when", 14)];
    let rows = report.corrections.iter().map(|row| {
        let what = if row.struck_out { "struck out as a whole" } else { "corrected" };
        let values = row.changes.iter().fold(Cell::default(), |cell, change| {
            let cell = cell.and_text(fields::words(&change.field));
            let was = change.was.clone().filter(|was| is_written(was));
            let was = was.map_or(Piece::NotRecorded, |was| Piece::Struck(fields::value(was, places)));
            let now = match &change.now {
                None if row.struck_out => None,
                Some(now) => Some(Some(fields::value(now.clone(), places)).into()),
                None => Some(Piece::text("none any more")),
            };
            now.into_iter().fold(cell.and("was", was), |cell, now| cell.and("now", now))
        });
        [
            Cell::text(number(row.written.place)),
            Cell::text(number(row.of_place)).and_text(row.kind.as_str().replace('_', " ")).and_text(what),
            if values.0.is_empty() { Cell::text("no value changed") } else { values },
            Cell::of(Some(&row.reason).into()),
            Cell::text(row.written.recorded_by.to_string())
                .and("written", Piece::text(row.written.recorded_at)),
        ]
    });
    sheet("corrections", "Corrections", columns, rows)
}

fn lots(report: &RegisterReport) -> Sheet {
    let columns = [("lot", 20), ("medicine", 24), ("acquired", 14), ("given", 14), ("disposed of", 14)];
    let rows = report.totals.iter().map(|total| {
        [
            Cell::text(total.lot.to_string()),
            Cell::text(total.medicine.to_string()),
            Cell::of(Piece::Amount(total.acquired, total.unit)),
            Cell::of(Piece::Amount(total.given, total.unit)),
            Cell::of(Piece::Amount(total.disposed, total.unit)),
        ]
    });
    let mut sheet = sheet("lots", "Lots in this time", columns, rows);
    sheet.notes.push("What went in and out within the time of this register only.".to_owned());
    sheet
}
