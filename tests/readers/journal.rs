//! What holds of every file that is read as a journal, line by line as an import reads it, and of the holding that its entries make.

use std::hint::black_box;

use combclear_domain::basics::words::ColonyName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::lines::{Header, Line};
use combclear_domain::journal::{Content, Draft, Entry, EntryId};
use combclear_domain::questions::due::Due;
use combclear_domain::questions::gaps::Gaps;
use combclear_domain::questions::options::Span;
use combclear_domain::questions::register::{Period, Register};
use combclear_domain::questions::retention::Retention;
use combclear_domain::questions::stock::Stock;
use combclear_domain::{Day, Instant};
use combclear_wording::Words;
use combclear_wording::refusals::Refused;
use combclear_wording::supering::SuperingReport;

/// Reads the bytes as a journal, records its entries, and asks every question.
pub fn check(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let mut lines = text.split('\n');
    let Ok(header) = Header::from_json(lines.next().unwrap_or_default()) else { return };
    let mut drafts = Vec::new();
    let mut tip = None;
    let mut holds = header.sealed;
    for (number, line) in (1_u64..).zip(lines) {
        if line.trim().is_empty() {
            continue;
        }
        if header.sealed && line.starts_with(r#"{"content":"#) {
            if let Ok(content) = Content::from_json(line) {
                assert_eq!(content.to_json(), line);
            }
            continue;
        }
        match Line::from_json(&header, line) {
            Ok(Line::Sealed(entry)) => {
                assert_eq!(entry.to_json(), line);
                holds &= entry.follows(&header.holding, tip).is_ok();
                tip = Some(entry.tip());
                drafts.extend((!entry.is_in_archive()).then_some(entry.draft));
            }
            Ok(Line::Draft(draft)) => drafts.push(draft),
            // A line need not say its id here, so that copies of it are not all refused.
            Err(_) => drafts.extend(Draft::from_json(line, Some(numbered(number))).ok()),
        }
    }
    let (holding, entries) = recorded(&header, drafts.clone());
    if holds && entries.len() == drafts.len() && header.entries == u64::try_from(drafts.len()).ok() {
        let again = Header::sealed(header.holding.clone(), entries.len() as u64, tip.map(|(_, head)| head));
        assert_eq!(again, Header { contents: None, head: again.head, ..header.clone() });
    }
    imports_as_it_was_exported(&header, &holding, &entries);
    answers(&holding);
}

fn numbered(number: u64) -> EntryId {
    format!("00000000-0000-7000-8000-{number:012x}").parse().unwrap()
}

fn written_at() -> Instant {
    "2026-08-29T08:00:00.000Z".parse().unwrap()
}

/// The holding of these drafts, and those that were not refused. A refusal is said, and leaves the holding as it was.
fn recorded(header: &Header, drafts: Vec<Draft>) -> (Holding, Vec<Entry>) {
    let mut holding = Holding::new(header.holding.clone());
    let mut entries: Vec<Entry> = Vec::new();
    for draft in drafts {
        let before = holding.tip();
        match holding.record(draft, written_at()) {
            Ok(entry) => {
                assert_eq!(holding.tip(), Some(entry.tip()));
                entries.push(entry);
            }
            Err(refusal) => {
                assert_eq!(holding.tip(), before, "{refusal}");
                let said = Refused::of(Words::english(), &refusal);
                assert!(!said.message.is_empty() && !said.help.is_empty(), "{refusal} is not said");
            }
        }
    }
    (holding, entries)
}

/// What was recorded is exported, read and recorded once more: the same bytes, the same entries, the same answers.
fn imports_as_it_was_exported(header: &Header, holding: &Holding, entries: &[Entry]) {
    let head = holding.tip().map(|(_, head)| head);
    let count = u64::try_from(entries.len()).unwrap();
    let header = Header::sealed(header.holding.clone(), count, head);
    assert_eq!(Header::from_json(&header.to_json()).as_ref(), Ok(&header));
    let mut again = Holding::new(header.holding.clone());
    for entry in entries {
        let line = entry.to_json();
        let read = Line::from_json(&header, &line);
        assert_eq!(read, Ok(Line::Sealed(entry.clone())), "{line}");
        assert_eq!(entry.follows(&header.holding, again.tip()), Ok(()));
        again.accept_sealed(entry).unwrap_or_else(|refusal| panic!("{line}: {refusal}"));
    }
    assert_eq!(again.tip(), holding.tip());
    let mut restored = Holding::new(header.holding);
    for entry in entries {
        restored.restore(entry);
    }
    for other in [&again, &restored] {
        assert_eq!(board(other, day()), board(holding, day()));
    }
    // The last entry can be taken back, and recorded again.
    if let Some(last) = entries.last()
        && again.take_back(last)
    {
        assert_eq!(again.accept(last), Ok(()));
        assert_eq!(board(&again, day()), board(holding, day()));
    }
}

fn day() -> Day {
    "2026-05-01".parse().unwrap()
}

fn board(holding: &Holding, on: Day) -> String {
    let leaflets = combclear_leaflets::builtin().unwrap();
    let colonies: Vec<&ColonyName> = holding.colonies().collect();
    let board = SuperingReport::board(Words::english(), holding, leaflets, colonies, on);
    serde_json::to_string(&board).unwrap()
}

/// Every question has an answer.
fn answers(holding: &Holding) {
    let (leaflets, laws) = (combclear_leaflets::builtin().unwrap(), combclear_leaflets::laws().unwrap());
    let entered: Vec<Day> = holding.in_order().iter().map(|record| record.on).collect();
    let first = entered.iter().min().copied().unwrap_or(day());
    let last = entered.iter().max().copied().unwrap_or(day());
    for on in [first, last, Day::LAST] {
        board(holding, on);
        black_box(Stock::of(holding, leaflets, on));
        black_box(Retention::of(holding, leaflets, laws, on));
        if let Ok(span) = Span::new(on, on.plus(30)) {
            black_box(Due::of(holding, leaflets, laws, span, None));
        }
    }
    let period = Period::new(first, last).unwrap();
    let register = Register::of(holding, leaflets, period, last);
    black_box(Gaps::in_register(holding, leaflets, laws, &register, &[]));
}
