//! The sheets of the register.

use combclear_domain::basics::calendar::Counting;
use combclear_domain::basics::words::{LotName, Person, Unit};
use combclear_domain::questions::register::{
    AdministrationRow, CoursePart, DocumentPart, KeeperPart, LotTotal, PrescriptionPart, Register, Written,
};
use combclear_domain::{Day, Quantity};
use combclear_wording::gaps::GapsReport;
use combclear_wording::{Label, Words, notice, paper};

use crate::fields;
use crate::rows::{Telling, day, entry, medicine, names};
use crate::shares::{Share, shares};
use crate::sheet::{Cell, Column, Fact, Paper, PaperSize, Piece, Sheet, is_written, written};
use crate::sheets_gaps;

impl Paper {
    /// The register as sheets, with the gaps if given.
    #[must_use]
    pub fn of(words: &'static Words, register: &Register, gaps: Option<&GapsReport>) -> Paper {
        let tell = &Telling::of(words, register);
        let mut sheets = vec![
            acquisitions(register, tell),
            administrations(register, tell),
            removals(register, tell),
            disposals(register, tell),
            prescriptions(register, tell),
            corrections(register, tell),
            lots(register, tell),
            apiaries(register, tell),
            colonies(register, tell),
            annex(register, tell),
        ];
        // Few holdings have any.
        if !register.vet_lots.is_empty() {
            sheets.insert(1, vet_lots(register, tell));
        }
        sheets.extend(gaps.map(|gaps| sheets_gaps::gaps(words, gaps)));
        Paper {
            words,
            title: words.label(Label::RegisterTitle),
            holding: register.holding.to_string(),
            keeper: keeper(words, register),
            period: paper::period(words, register.from, register.to),
            facts: facts(tell, register),
            sheets,
            notice: notice(words),
            size: size(register),
        }
    }
}

/// Letter in the United States, A4 elsewhere. Common practice, no source.
pub(crate) fn size(register: &Register) -> PaperSize {
    let of_us = register.keepers.last().is_some_and(|part| part.jurisdiction.as_str() == "us");
    if of_us { PaperSize::Letter } else { PaperSize::A4 }
}

/// The keepers of the holding, separated by commas.
pub(crate) fn keeper(words: &Words, register: &Register) -> String {
    let mut names: Vec<&str> = register.keepers.iter().map(|part| part.keeper.as_str()).collect();
    names.dedup();
    if names.is_empty() { words.label(Label::KeeperNotRecorded).to_owned() } else { names.join(", ") }
}

/// The keepers with their addresses, and the law of each.
pub(crate) fn keepers(words: &'static Words, register: &Register) -> Vec<Fact> {
    let keeper = |says: String| Fact { head: words.label(Label::Keeper), says };
    if register.keepers.is_empty() {
        return vec![keeper(words.label(Label::NotRecorded).to_owned())];
    }
    register.keepers.iter().map(|part| keeper(keeper_line(words, part))).collect()
}

fn facts(tell: &Telling, register: &Register) -> Vec<Fact> {
    let words = tell.words;
    let fact = |head: Label, says: String| Fact { head: words.label(head), says };
    let mut facts = keepers(words, register);
    facts.push(fact(Label::Time, paper::time(words, register.from, register.to)));
    facts.push(fact(Label::AsOf, paper::as_of(words, register.as_of)));
    facts.push(fact(Label::Journal, paper::journal(words, register.entries, register.head)));
    let archived = register.archived.iter();
    facts.extend(archived.map(|part| fact(Label::InAnArchive, paper::archived(words, part))));
    let copied = tell.copied.iter().enumerate();
    facts.extend(
        copied.map(|(index, of)| fact(Label::CopiedFromPaper, paper::copied_source(words, index + 1, of))),
    );
    facts.push(fact(Label::CountedBy, paper::policy(words, register.policy)));
    facts
}

fn keeper_line(words: &Words, part: &KeeperPart) -> String {
    let or = |text: &Option<String>| {
        written(text.as_ref()).unwrap_or_else(|| words.label(Label::NotRecorded)).to_owned()
    };
    paper::keeper(words, part, &or(&part.address), &or(&part.registration))
}

pub(crate) fn sheet<const N: usize>(
    words: &'static Words,
    id: &'static str,
    title: Label,
    columns: [(Label, u8); N],
    rows: impl Iterator<Item = [Cell; N]>,
) -> Sheet {
    let column = |(head, width)| Column { head: words.label(head), width };
    let (title, columns) = (words.label(title), columns.into_iter().map(column).collect());
    Sheet { id, title, notes: Vec::new(), columns, rows: rows.map(Vec::from).collect() }
}

fn acquisitions(register: &Register, tell: &Telling) -> Sheet {
    let columns = [
        (Label::DateAcquired, 9),
        (Label::EntryNumber, 8),
        (Label::Medicine, 16),
        (Label::BatchAndExpiry, 15),
        (Label::Quantity, 9),
        (Label::Supplier, 17),
        (Label::ProofOfPurchase, 16),
        (Label::WrittenBy, 10),
    ];
    let rows = register.acquisitions.iter().map(|row| {
        let supplier = row.supplier.as_ref();
        let name = Cell::of(supplier.map(|supplier| &supplier.name).into());
        [
            day_or_before(&row.written, row.earlier, tell),
            entry(&row.written, tell),
            medicine(&row.medicine, tell),
            batch(row.batch.as_ref(), row.expiry, &row.lot, tell),
            Cell::of(Piece::Amount(row.quantity, row.medicine.unit)),
            name.and(
                tell.label(Label::Address),
                supplier.and_then(|supplier| supplier.address.as_ref()).into(),
            ),
            proof(row.proof.as_ref(), &row.documents, tell),
            Cell::text(row.written.recorded_by.to_string()),
        ]
    });
    sheet(tell.words, "acquisitions", Label::Acquisitions, columns, rows)
}

/// What vets gave from their own stock.
fn vet_lots(register: &Register, tell: &Telling) -> Sheet {
    let columns = [
        (Label::Date, 10),
        (Label::EntryNumber, 9),
        (Label::Medicine, 20),
        (Label::BatchAndExpiry, 17),
        (Label::Vet, 22),
        (Label::Copies, 12),
        (Label::WrittenBy, 10),
    ];
    let rows = register.vet_lots.iter().map(|row| {
        let documents = match row.documents.as_slice() {
            [] => Cell::text(tell.label(Label::NoneKept)),
            documents => documents_cell(Cell::default(), documents, tell),
        };
        [
            day_or_before(&row.written, row.earlier, tell),
            entry(&row.written, tell),
            medicine(&row.medicine, tell),
            batch(row.batch.as_ref(), row.expiry, &row.lot, tell),
            Cell::text(row.vet.to_string()).and(tell.label(Label::Contact), row.contact.as_ref().into()),
            documents,
            Cell::text(row.written.recorded_by.to_string()),
        ]
    });
    let mut sheet = sheet(tell.words, "vet-lots", Label::VetLots, columns, rows);
    sheet.notes.push(tell.label(Label::VetLotsNote).to_owned());
    sheet
}

/// The day of a lot or prescription, with a remark if it is from before the period.
fn day_or_before(written: &Written, earlier: bool, tell: &Telling) -> Cell {
    let cell = day(written, tell);
    if earlier { cell.and_text(tell.label(Label::BeforeThisTimeUsedInIt)) } else { cell }
}

fn proof(words: Option<&String>, documents: &[DocumentPart], tell: &Telling) -> Cell {
    let Some(words) = written(words) else {
        return match documents {
            [] => Cell::of(Piece::NotRecorded),
            documents => documents_cell(Cell::default(), documents, tell),
        };
    };
    documents_cell(Cell::text(words), documents, tell)
}

fn documents_cell(cell: Cell, documents: &[DocumentPart], tell: &Telling) -> Cell {
    documents.iter().fold(cell, |cell, document| {
        cell.and(tell.label(Label::Document), Piece::Text(document_name(document)))
    })
}

/// The name of its file, or its type if none is recorded.
fn document_name(document: &DocumentPart) -> String {
    written(document.file_name.as_ref()).map_or_else(|| document.media_type.to_string(), str::to_owned)
}

fn administrations(register: &Register, tell: &Telling) -> Sheet {
    let columns = [
        (Label::DateGiven, 9),
        (Label::EntryNumber, 8),
        (Label::Medicine, 13),
        (Label::BatchAndExpiry, 11),
        (Label::Colonies, 11),
        (Label::Quantity, 10),
        (Label::Apiary, 9),
        (Label::FirstAndLastDay, 10),
        (Label::WithdrawalPeriod, 10),
        (Label::BlockedAndFree, 10),
        (Label::GivenBy, 10),
        (Label::Reason, 10),
    ];
    let by_moments = register.policy == Counting::Elapsed.as_str();
    let rows = register.administrations.iter().flat_map(|row| {
        let shares = shares(row).into_iter().enumerate();
        shares.map(move |(index, share)| administration(row, index, &share, tell, by_moments))
    });
    let mut sheet = sheet(tell.words, "administrations", Label::Administrations, columns, rows);
    sheet.notes.push(tell.label(Label::AdministrationsNote).to_owned());
    if register.administrations.iter().any(|row| row.earlier) {
        // Explains why a dose from before the period is listed.
        sheet.notes.push(tell.label(Label::EarlierDoseNote).to_owned());
    }
    sheet
}

fn administration(
    row: &AdministrationRow,
    index: usize,
    share: &Share<'_>,
    tell: &Telling,
    by_moments: bool,
) -> [Cell; 12] {
    let number = entry(&row.written, tell);
    let number = if index == 0 { number } else { number.and_text(tell.label(Label::SameEntry)) };
    let number = if row.earlier { number.and_text(tell.label(Label::BeforeThisTime)) } else { number };
    [
        day(&row.written, tell),
        number,
        medicine(&row.medicine, tell),
        lot(row, share, tell),
        Cell::text(names(share.colonies.iter().copied()))
            .and(tell.label(Label::Number), Piece::text(share.colonies.len())),
        quantity(row, index, share, tell),
        apiary(share.course, tell),
        days(row, share.course, tell),
        withdrawal(row, share.course, tell),
        blocked(share.course, by_moments, tell),
        given_by(row, tell),
        reason(row, tell),
    ]
}

/// A lot as a form names it: its batch and expiry. The keeper's own name for it comes last.
fn batch(batch: Option<&String>, expiry: Option<Day>, lot: &LotName, tell: &Telling) -> Cell {
    Cell::of(batch.into())
        .and(tell.label(Label::Expiry), Piece::date(expiry))
        .and(tell.label(Label::Lot), Piece::text(lot))
}

fn lot(row: &AdministrationRow, share: &Share<'_>, tell: &Telling) -> Cell {
    let of: Vec<_> = share.given.map_or_else(|| row.given.iter().collect(), |given| vec![given]);
    of.into_iter().fold(Cell::default(), |cell, given| {
        let Cell(lines) = batch(given.batch.as_ref(), given.expiry, &given.lot, tell);
        let cell = Cell(cell.0.into_iter().chain(lines).collect());
        if given.of_vet { cell.and_text(tell.label(Label::VetsOwnStock)) } else { cell }
    })
}

fn quantity(row: &AdministrationRow, index: usize, share: &Share<'_>, tell: &Telling) -> Cell {
    let unit: Option<Unit> = row.medicine.unit;
    let Some((given, sum)) = share.given.zip(share.quantity()) else {
        let by = share.course.and_then(|course| course.came_by);
        let by = by.map(|by| tell.entry(by));
        return Cell::text(paper::none_given(tell.words, by.as_deref()));
    };
    let cell = Cell::default()
        .and(tell.label(Label::Each), Piece::Amount(given.each, unit))
        .and(tell.label(Label::Together), Piece::Amount(sum, unit));
    if index == 0 { cell.and(tell.label(Label::WholeEntry), Piece::Amount(row.total, unit)) } else { cell }
}

fn apiary(course: Option<&CoursePart>, tell: &Telling) -> Cell {
    let Some(course) = course else { return Cell::of(Piece::NotRecorded) };
    let cell = Cell::of(course.apiary.as_ref().into());
    course
        .later_apiaries
        .iter()
        .fold(cell, |cell, stay| cell.and_text(paper::later_apiary(tell.words, stay.from, &stay.apiary)))
}

fn days(row: &AdministrationRow, course: Option<&CoursePart>, tell: &Telling) -> Cell {
    let mut cell = Cell::default();
    let Some(course) = course else {
        return cell
            .and(tell.label(Label::First), Piece::Date(row.written.on))
            .and(tell.label(Label::Last), Piece::NotRecorded);
    };
    cell = cell.and(tell.label(Label::First), Piece::Date(course.first));
    cell = match (course.last, course.not_known_since) {
        (Some(last), _) => cell.and(tell.label(Label::Last), Piece::Date(last)),
        (None, Some(since)) => {
            cell.and(tell.label(Label::Last), Piece::Text(paper::not_known_since(tell.words, since)))
        }
        (None, None) if course.still_in => cell.and(tell.label(Label::Last), tell.piece(Label::StillIn)),
        (None, None) => cell.and(tell.label(Label::Last), Piece::NotRecorded),
    };
    let lasted = course.duration_days.map_or_else(|| tell.piece(Label::NotKnownYet), Piece::Days);
    cell = cell.and(tell.label(Label::Duration), lasted);
    if row.first_dose == row.written.entry {
        return cell;
    }
    cell.and_text(paper::dose_of_course(tell.words, row.dose, &tell.entry(row.first_dose)))
}

fn withdrawal(row: &AdministrationRow, course: Option<&CoursePart>, tell: &Telling) -> Cell {
    let period = course.and_then(|course| course.withdrawal.as_ref());
    let mut cell = Cell::of(Piece::days(period.map(|period| period.days)));
    if let Some(period) = period {
        cell = cell.and_text(paper::said_by(tell.words, period.said_by));
        if let Some(at) = period.entry.filter(|at| *at != row.written.entry && tell.knows(*at)) {
            cell = cell.and_text(tell.entry(at));
        }
    }
    let differs = |stated: &u16| period.is_none_or(|period| period.days != *stated);
    if let Some(stated) = row.withdrawal_stated.filter(differs) {
        cell = cell.and(tell.label(Label::StatedInEntry), Piece::Days(u32::from(stated)));
    }
    match course.map(|course| course.wait_days) {
        // There is no wait, or no course that could have one.
        Some(Some(0)) | None => cell,
        Some(Some(wait)) => cell.and(tell.label(Label::WaitBeforeSupers), Piece::Days(u32::from(wait))),
        Some(None) => cell.and(tell.label(Label::WaitBeforeSupers), tell.piece(Label::NotKnown)),
    }
}

fn blocked(course: Option<&CoursePart>, by_moments: bool, tell: &Telling) -> Cell {
    let free = course.and_then(|course| course.first_free_day);
    let blocked = course.and_then(|course| course.last_blocked_day);
    let not_known = || tell.piece(Label::NotKnownYet);
    let last = blocked
        .map_or_else(|| if free.is_some() { tell.piece(Label::None) } else { not_known() }, Piece::Date);
    let cell = Cell::default()
        .and(tell.label(Label::LastBlockedDay), last)
        .and(tell.label(Label::FirstFreeDay), free.map_or_else(not_known, Piece::Date));
    if !by_moments {
        return cell;
    }
    let free_at = course.and_then(|course| course.free_at).map_or_else(not_known, Piece::text);
    cell.and(tell.label(Label::FreeAt), free_at)
}

fn given_by(row: &AdministrationRow, tell: &Telling) -> Cell {
    let mut cell = Cell::of(row.given_by.as_ref().or(row.vet.as_ref()).into());
    let vet = row.vet.as_ref().filter(|vet| row.given_by.as_ref() != Some(*vet));
    if row.given_by.is_none() && vet.is_some() {
        cell = cell.and_text(tell.label(Label::AVet));
    }
    let more = [
        (Label::Vet, vet.filter(|_| row.given_by.is_some()).map(ToString::to_string)),
        (Label::Certificate, row.certificate.clone()),
    ];
    for (label, said) in more {
        if let Some(said) = said.filter(|said| is_written(said)) {
            cell = cell.and(tell.label(label), Piece::Text(said));
        }
    }
    cell.and(tell.label(Label::WrittenBy), Piece::text(&row.written.recorded_by))
}

fn reason(row: &AdministrationRow, tell: &Telling) -> Cell {
    let cell = Cell::of(row.against.as_ref().into());
    let method = row.method.as_ref().map(|method| Piece::Text(method.to_string()));
    let cell = method.into_iter().fold(cell, |cell, method| cell.and(tell.label(Label::Method), method));
    let prescription =
        row.prescription.as_ref().map_or_else(|| tell.piece(Label::NoneNamed), |part| prescribed(part, tell));
    cell.and(tell.label(Label::Prescription), prescription)
}

fn prescribed(part: &PrescriptionPart, tell: &Telling) -> Piece {
    let vet = part.vet.as_ref().map_or_else(|| tell.label(Label::VetNotRecorded), Person::as_str);
    Piece::Text(format!("{}, {vet}", part.number))
}

fn removals(register: &Register, tell: &Telling) -> Sheet {
    let columns = [
        (Label::DateRemoved, 10),
        (Label::EntryNumber, 9),
        (Label::Medicine, 16),
        (Label::Placed, 12),
        (Label::Colonies, 18),
        (Label::LeftInsideEach, 9),
        (Label::HowAndWhereDisposedOf, 17),
        (Label::WrittenBy, 10),
    ];
    let rows = register.removals.iter().map(|row| {
        let left = if row.left_inside == 0 { tell.piece(Label::None) } else { Piece::text(row.left_inside) };
        [
            day(&row.written, tell),
            entry(&row.written, tell),
            medicine(&row.medicine, tell),
            Cell::of(Piece::date(row.placed)).and_text(tell.entry(row.first_dose)),
            Cell::text(names(&row.colonies)).and(tell.label(Label::Number), Piece::text(row.colonies.len())),
            Cell::of(left),
            // The disposal of used carriers is rarely recorded, so its absence is shown without emphasis.
            Cell::text(written(row.how_and_where.as_ref()).unwrap_or_else(|| tell.label(Label::NotRecorded))),
            Cell::text(row.written.recorded_by.to_string()),
        ]
    });
    sheet(tell.words, "removals", Label::Removals, columns, rows)
}

fn disposals(register: &Register, tell: &Telling) -> Sheet {
    let columns = [
        (Label::Date, 10),
        (Label::EntryNumber, 9),
        (Label::Medicine, 18),
        (Label::BatchAndLot, 16),
        (Label::Quantity, 10),
        (Label::HowAndWhere, 24),
        (Label::WrittenBy, 13),
    ];
    let rows = register.disposals.iter().map(|row| {
        [
            day(&row.written, tell),
            entry(&row.written, tell),
            medicine(&row.medicine, tell),
            Cell::of(row.batch.as_ref().into()).and(tell.label(Label::Lot), Piece::text(&row.lot)),
            Cell::of(Piece::Amount(row.quantity, row.medicine.unit)),
            Cell::of(Some(&row.how_and_where).into()),
            Cell::text(row.written.recorded_by.to_string()),
        ]
    });
    sheet(tell.words, "disposals", Label::Disposals, columns, rows)
}

fn prescriptions(register: &Register, tell: &Telling) -> Sheet {
    let columns = [
        (Label::Date, 12),
        (Label::EntryNumber, 9),
        (Label::Prescription, 16),
        (Label::Vet, 22),
        (Label::Medicine, 18),
        (Label::WithdrawalPeriod, 10),
        (Label::Copies, 13),
    ];
    let rows = register.prescriptions.iter().map(|row| {
        let copies = match row.documents.as_slice() {
            [] => Cell::text(tell.label(Label::NoneKept)),
            documents => documents_cell(Cell::default(), documents, tell),
        };
        [
            day_or_before(&row.written, row.earlier, tell),
            entry(&row.written, tell),
            Cell::text(row.prescription.number.to_string()),
            Cell::of(row.prescription.vet.as_ref().into())
                .and(tell.label(Label::Contact), row.prescription.contact.as_ref().into()),
            medicine(&row.medicine, tell),
            Cell::of(Piece::days(row.withdrawal_days)),
            copies,
        ]
    });
    sheet(tell.words, "prescriptions", Label::Prescriptions, columns, rows)
}

fn corrections(register: &Register, tell: &Telling) -> Sheet {
    let columns = [
        (Label::EntryNumber, 9),
        (Label::CorrectedEntry, 15),
        (Label::Values, 36),
        (Label::Reason, 18),
        (Label::WhoAndWhen, 22),
    ];
    let rows = register.corrections.iter().map(|row| {
        let what = if row.struck_out { Label::StruckOut } else { Label::Corrected };
        let values = row.changes.iter().fold(Cell::default(), |cell, change| {
            let cell = cell.and_text(fields::name(tell.words, &change.field));
            let was = change.was.clone().filter(|was| is_written(was));
            let was = was.map_or(Piece::NotRecorded, |was| Piece::Struck(fields::value(was, tell)));
            let now = match &change.now {
                None if row.struck_out => None,
                Some(now) => Some(Some(fields::value(now.clone(), tell)).into()),
                None => Some(tell.piece(Label::NoneAnyMore)),
            };
            now.into_iter().fold(cell.and(tell.label(Label::Was), was), |cell, now| {
                cell.and(tell.label(Label::Now), now)
            })
        });
        [
            Cell::text(tell.number(row.written.seq)),
            Cell::text(tell.number(row.of_seq))
                .and_text(combclear_wording::terminal::kind(tell.words, row.kind))
                .and_text(tell.label(what)),
            if values.0.is_empty() { Cell::text(tell.label(Label::NoValueChanged)) } else { values },
            Cell::of(Some(&row.reason).into()),
            Cell::text(row.written.recorded_by.to_string())
                .and(tell.label(Label::Written), Piece::text(row.written.recorded_at)),
        ]
    });
    sheet(tell.words, "corrections", Label::Corrections, columns, rows)
}

/// The stock account, by product, batch and expiry.
fn lots(register: &Register, tell: &Telling) -> Sheet {
    let columns = [
        (Label::Medicine, 22),
        (Label::BatchAndExpiry, 17),
        (Label::CarriedIn, 10),
        (Label::Acquired, 10),
        (Label::Given, 10),
        (Label::DisposedOf, 10),
        (Label::AmountLeft, 11),
        (Label::Remarks, 10),
    ];
    let rows = register.totals.iter().map(|total| {
        let amount = |quantity| Cell::of(Piece::Amount(quantity, total.medicine.unit));
        let left = |quantity: Option<Quantity>| {
            quantity.map_or_else(|| Cell::text(tell.label(Label::NotKnown)), amount)
        };
        [
            medicine(&total.medicine, tell),
            batch(total.batch.as_ref(), total.expiry, &total.lot, tell),
            left(total.carried_in),
            amount(total.acquired),
            amount(total.given),
            amount(total.disposed),
            left(total.left),
            remarks(total, tell),
        ]
    });
    let mut sheet = sheet(tell.words, "lots", Label::Books, columns, rows);
    sheet.notes.push(tell.label(Label::LotsNote).to_owned());
    sheet
}

fn remarks(total: &LotTotal, tell: &Telling) -> Cell {
    let expired = total.expired && total.left.is_none_or(|left| !left.is_zero());
    let mut remarks: Vec<String> = Vec::new();
    remarks.extend(expired.then(|| tell.label(Label::ExpiredStock).to_owned()));
    remarks.extend(total.left.is_none().then(|| tell.label(Label::MoreGoneThanAcquired).to_owned()));
    if total.counts_corrected > 0 {
        remarks.push(paper::count_corrected(tell.words, total.counts_corrected));
    }
    if remarks.is_empty() { Cell::text(tell.label(Label::None)) } else { Cell::text(remarks.join("; ")) }
}

/// Where the apiaries are.
fn apiaries(register: &Register, tell: &Telling) -> Sheet {
    let columns = [(Label::Apiary, 30), (Label::Place, 70)];
    let rows = register
        .apiaries
        .iter()
        .map(|key| [Cell::text(key.apiary.to_string()), Cell::of(key.place.as_ref().into())]);
    sheet(tell.words, "apiaries", Label::KeyOfApiaries, columns, rows)
}

/// How the hives are marked.
fn colonies(register: &Register, tell: &Telling) -> Sheet {
    let columns = [(Label::Colony, 25), (Label::HiveMark, 40), (Label::ApiaryAtTheEnd, 35)];
    let rows = register.colonies.iter().map(|key| {
        let apiary = key.apiary.as_ref();
        [
            Cell::text(key.colony.to_string()),
            Cell::of(key.hive_mark.as_ref().into()),
            apiary.map_or_else(
                || Cell::text(tell.label(Label::NoneThere)),
                |apiary| Cell::text(apiary.to_string()),
            ),
        ]
    });
    sheet(tell.words, "colonies", Label::KeyOfColonies, columns, rows)
}

/// The hashes of the documents, out of the way of a reader of the rows.
fn annex(register: &Register, tell: &Telling) -> Sheet {
    let columns = [(Label::EntryNumber, 10), (Label::Document, 40), (Label::Sha256, 50)];
    let rows = register.documents().map(|(of, document)| {
        [
            Cell::text(tell.number(of.seq)),
            Cell::text(document_name(document)),
            Cell::text(document.content.to_string()),
        ]
    });
    sheet(tell.words, "documents", Label::AnnexDocuments, columns, rows)
}
