//! Registers for output: the demo's, and small ones with texts that are hard to print.

use combclear_domain::basics::calendar::Instant;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Draft;
use combclear_domain::journal::copied::CopiedFrom;
use combclear_domain::journal::event::{Event, Kind};
use combclear_domain::questions::register::{Period, Register};
use combclear_testkit::entries::{day, id, take_in};
use combclear_testkit::files::demo_holding;

/// The instant that files name as their making.
pub(super) fn made() -> Instant {
    "2026-11-27T10:00:00.000Z".parse().unwrap()
}

/// The demo's register of its two seasons.
pub(super) fn demo() -> Register {
    register(&demo_holding(), "2025-01-01", "2026-12-31")
}

/// The demo's register of a few weeks, with strips given earlier that were still in.
pub(super) fn autumn() -> Register {
    register(&demo_holding(), "2025-09-01", "2025-10-31")
}

pub(super) fn register(holding: &Holding, from: &str, to: &str) -> Register {
    let period = Period::new(day(from), day(to)).unwrap();
    Register::of(holding, combclear_leaflets::builtin().unwrap(), period, day("2026-11-27"))
}

/// Texts that would do harm if they were taken for anything but text.
pub(super) const HARD: [&str; 8] = [
    r#"#panic("x") *bold* $x$ `raw` @ref <label> \ // /* "#,
    "<script>alert(1)</script>&amp;\"'</style>",
    "=HYPERLINK(\"x\";\"y\")",
    "'=1+1",
    "a, \"b\"; c",
    "turned \u{202e} round",
    "\u{8702}\u{4e61} \u{1f41d} e\u{301} \u{627}\u{644}",
    "[Content] {code} #{x} ~ -- --- ... $ _ * #",
];

/// The demo's register with hard texts in every free-text field.
pub(super) fn hard() -> Register {
    let mut report = demo();
    let mut texts = HARD.iter().cycle().map(|text| (*text).to_owned());
    let mut next = || texts.next().unwrap();
    for row in &mut report.acquisitions {
        row.batch = Some(next());
        row.proof = Some(next());
        row.medicine.pack_name = Some(next());
        if let Some(supplier) = &mut row.supplier {
            supplier.name = next();
            supplier.address = Some(next());
        }
    }
    for row in &mut report.administrations {
        row.against = Some(next());
        row.certificate = Some(next());
        for part in &mut row.given {
            part.batch = Some(next());
        }
    }
    for row in &mut report.disposals {
        row.how_and_where = next();
    }
    for row in &mut report.corrections {
        row.reason = next();
        for change in &mut row.changes {
            change.was = Some(next());
            change.now = Some(next());
        }
    }
    for part in &mut report.keepers {
        part.address = Some(next());
    }
    report
}

/// The demo's register with its first row of each table copied from a notebook.
pub(super) fn copied() -> Register {
    let mut report = demo();
    let from = || Some(CopiedFrom { what: "red notebook 2025".to_owned(), written_on: day("2025-04-12") });
    let first = [
        report.acquisitions.first_mut().map(|row| &mut row.written),
        report.administrations.first_mut().map(|row| &mut row.written),
        report.removals.first_mut().map(|row| &mut row.written),
        report.disposals.first_mut().map(|row| &mut row.written),
    ];
    first.into_iter().flatten().for_each(|written| written.copied_from = from());
    report
}

/// The demo's register with what a vet gave from the vet's own stock.
pub(super) fn vets() -> Register {
    let mut holding = demo_holding();
    let lot = r#"{"lot":"VET-1","medicine":"winter","vet":"V. Vet (invented)","contact":"3 Nowhere Lane (invented)","batch":"VB 7 demo","expiry":"2027-05-31"}"#;
    let given = r#"{"given":[{"lot":"VET-1","each":2,"colonies":["M1","M2"]}],"withdrawal_days":0,"vet":"V. Vet (invented)"}"#;
    for (number, kind, body) in [(9_001, Kind::VetLot, lot), (9_002, Kind::Administration, given)] {
        let event = Event::read(kind, body).unwrap();
        let draft = Draft::new(id(number), day("2026-08-20"), "A. Keeper".parse().unwrap(), event);
        take_in(&mut holding, draft, "2026-08-20T18:00:00.000Z").unwrap();
    }
    register(&holding, "2026-08-01", "2026-08-29")
}

/// The same with documents attached to its first acquisitions.
pub(super) fn with_documents(
    mut report: Register,
    hashes: &[combclear_domain::journal::Hash],
    names: &[&str],
) -> Register {
    for ((row, hash), name) in report.acquisitions.iter_mut().zip(hashes).zip(names) {
        row.documents.push(combclear_domain::questions::register::DocumentPart {
            entry: row.written.entry,
            content: *hash,
            media_type: combclear_domain::basics::words::MediaType::Pdf,
            bytes: 5,
            file_name: Some((*name).to_owned()),
        });
    }
    // One invoice may prove two purchases.
    let shared = report.acquisitions[1].documents.clone();
    report.acquisitions[4].documents = shared;
    report
}
