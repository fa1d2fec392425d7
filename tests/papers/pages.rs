//! The page, and the sheets common to all formats.

use std::collections::BTreeSet;

use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::quantity::Quantity;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::Unit;
use combclear_domain::facts::Balance;
use combclear_domain::journal::event::Kind;
use combclear_domain::questions::gaps::{About, Finding, Gap, GapWeight, LotCheck, Supply};
use combclear_domain::questions::register::LotTotal;
use combclear_domain::rules::law::Field;
use combclear_papers::exchange::Exchange;
use combclear_papers::{Paper, html};
use combclear_wording::Words;
use combclear_wording::gaps::{GapReport, GapsReport};

use super::making::{autumn, copied, demo, hard, vets};

#[test]
fn the_demo_as_a_page() {
    // One tag per line, so that a change is easy to find.
    insta::assert_snapshot!(html::page(&Paper::of(Words::english(), &demo(), None)).replace("><", ">\n<"));
}

#[test]
fn the_demo_as_text() {
    let mut text = String::new();
    for sheet in Paper::of(Words::english(), &demo(), None).sheets {
        text.push_str(&format!("== {}\n", sheet.title));
        for row in &sheet.rows {
            let cells: Vec<String> =
                row.iter().map(|cell| cell.plain(Words::english()).replace('\n', " / ")).collect();
            text.push_str(&format!("{}\n", cells.join(" | ")));
        }
    }
    insta::assert_snapshot!(text);
}

/// The paper is what was written at the time, so a reader is told where to find it.
#[test]
fn what_was_copied_from_paper_says_so_beside_its_number_on_every_sheet() {
    for (report, wanted) in [(copied(), 1), (demo(), 0)] {
        let paper = Paper::of(Words::english(), &report, None);
        let facts: Vec<&str> = paper.facts.iter().map(|fact| fact.says.as_str()).collect();
        let source = "[1] red notebook 2025: 4 entries, written there from 2025-04-12 to 2025-04-12; entered here from 2025-";
        assert_eq!(facts.iter().filter(|says| says.starts_with(source)).count(), wanted, "{facts:?}");
        for id in ["acquisitions", "administrations", "removals", "disposals"] {
            let sheet = paper.sheets.iter().find(|sheet| sheet.id == id).unwrap();
            let told = sheet.rows.iter().map(|row| row[1].plain(Words::english()));
            let told: BTreeSet<String> = told
                .filter(|told| told.contains("copied from [1], written there on 2025-04-12"))
                .map(|told| told.lines().next().unwrap_or_default().to_owned())
                .collect();
            assert_eq!(told.len(), wanted, "{id}: {told:?}");
        }
    }
}

/// A dose from before the period must not be taken for one of the period, nor the reverse.
#[test]
fn a_dose_given_before_the_time_says_so_and_the_sheet_says_why_it_stands_there() {
    for (report, some) in [(autumn(), true), (demo(), false)] {
        assert_eq!(report.administrations.iter().any(|row| row.earlier), some);
        let paper = Paper::of(Words::english(), &report, None);
        let sheet = paper.sheets.iter().find(|sheet| sheet.id == "administrations").unwrap();
        assert_eq!(sheet.notes.iter().any(|note| note.contains("before this period")), some);
        for row in &sheet.rows {
            let (day, number) = (row[0].plain(Words::english()), row[1].plain(Words::english()));
            let earlier = day.as_str() < "2025-09-01" && some;
            assert_eq!(number.contains("before this period"), earlier, "{number}");
        }
    }
}

/// A reader finds an entry by its number; an id of 36 characters helps nobody on paper.
#[test]
fn what_a_vet_gave_from_the_vets_own_stock_has_a_sheet_of_its_own_and_no_account() {
    let paper = Paper::of(Words::english(), &vets(), None);
    let of = |id: &str| paper.sheets.iter().find(|sheet| sheet.id == id);
    let text = |id: &str| format!("{:?}", of(id).unwrap());
    assert_eq!(of("vet-lots").unwrap().rows.len(), 1);
    for said in ["VET-1", "VB 7 demo", "V. Vet (invented)", "3 Nowhere Lane (invented)"] {
        assert!(text("vet-lots").contains(said), "{said}");
    }
    assert!(text("administrations").contains("the vet's own stock"));
    assert!(!text("acquisitions").contains("VET-1") && !text("lots").contains("VET-1"));
    assert!(Paper::of(Words::english(), &demo(), None).sheets.iter().all(|sheet| sheet.id != "vet-lots"));
}

#[test]
fn entries_are_named_by_their_number_and_never_by_their_id() {
    for report in [demo(), autumn()] {
        assert!(
            report.administrations.iter().flat_map(|row| &row.courses).any(|course| course.came_by.is_some())
        );
        for sheet in Paper::of(Words::english(), &report, None).sheets {
            for cell in sheet.rows.iter().flatten() {
                assert!(
                    !cell.plain(Words::english()).contains("entry 01"),
                    "{}: {}",
                    sheet.title,
                    cell.plain(Words::english())
                );
            }
        }
    }
}

/// Regulation 19 of GB SI 2013/2033 wants the identification of the animals treated: each, not the first and last of a run.
#[test]
fn each_colony_treated_stands_on_the_paper_by_its_own_name() {
    let report = demo();
    let paper = Paper::of(Words::english(), &report, None);
    let named = |sheet: &str| -> BTreeSet<String> {
        let sheet = paper.sheets.iter().find(|it| it.id == sheet).unwrap();
        let at =
            sheet.columns.iter().position(|column| column.head.to_lowercase().starts_with("colon")).unwrap();
        let lines = sheet
            .rows
            .iter()
            .map(|row| row[at].plain(Words::english()).lines().next().unwrap_or_default().to_owned());
        lines.flat_map(|line| line.split(", ").map(str::to_owned).collect::<Vec<_>>()).collect()
    };
    let given = report.administrations.iter().flat_map(|row| &row.given).flat_map(|part| &part.colonies);
    // And those that the medicine reached by a split or a uniting.
    let reached = report.administrations.iter().flat_map(|row| &row.courses).flat_map(|part| &part.colonies);
    assert_eq!(
        named("administrations"),
        given.chain(reached).map(|colony| colony.as_str().to_owned()).collect()
    );
    let out = report.removals.iter().flat_map(|row| &row.colonies);
    assert_eq!(named("removals"), out.map(|colony| colony.as_str().to_owned()).collect());
}

#[test]
fn what_a_person_wrote_never_becomes_markup() {
    let page = html::page(&Paper::of(Words::english(), &hard(), None));
    assert!(!page.contains("<script"), "a script came through");
    assert!(page.contains("&lt;script&gt;alert(1)&lt;/script&gt;&amp;amp;"));
    assert_eq!(page.matches("</style>").count(), 1);
    assert!(!page.contains('\u{202e}'), "a turned direction came through");
    assert!(page.contains("turned U+202E round"));
    for outside in ["http:", "https:", "src=", "@import", "url("] {
        assert!(!page.contains(outside), "`{outside}` would fetch something");
    }
}

#[test]
fn every_row_has_a_cell_for_every_column_and_none_is_blank() {
    for report in [demo(), hard()] {
        for sheet in Paper::of(Words::english(), &report, Some(&gaps())).sheets {
            for row in &sheet.rows {
                assert_eq!(row.len(), sheet.columns.len(), "{}", sheet.title);
                assert!(
                    row.iter().all(|cell| !cell.plain(Words::english()).trim().is_empty()),
                    "{}: {row:?}",
                    sheet.title
                );
            }
        }
    }
}

/// An entry may have blanks for a value; a reader must not take the blank for a value.
#[test]
fn spaces_alone_are_told_as_not_recorded_in_every_form() {
    let mut report = demo();
    let row = &mut report.acquisitions[0];
    row.batch = Some(" ".to_owned());
    row.proof = Some("  ".to_owned());
    row.documents.clear();
    row.supplier.as_mut().unwrap().name = " ".to_owned();
    let sheets = Paper::of(Words::english(), &report, None).sheets;
    let cells: Vec<String> = sheets[0].rows[0].iter().map(|cell| cell.plain(Words::english())).collect();
    assert!(cells[3].starts_with("not recorded\nexpiry"), "{cells:?}");
    assert!(cells[5].starts_with("not recorded"), "{cells:?}");
    assert_eq!(cells[6], "not recorded");
    let csv = String::from_utf8(combclear_papers::flat::csv(&report).unwrap()).unwrap();
    assert!(!csv.contains("\" \""), "a cell of spaces");
    let exchange = Exchange::of(&report);
    let exchange =
        [serde_json::to_string(&exchange.treatments), serde_json::to_string(&exchange.transactions)];
    let exchange = exchange.map(Result::unwrap).concat();
    assert!(!exchange.contains("\" \""), "a text of spaces");
}

#[test]
fn what_the_law_still_misses_is_told_with_how_to_supply_it() {
    let paper = Paper::of_gaps(Words::english(), &gaps(), &demo());
    let [sheet] = paper.sheets.as_slice() else { panic!("one sheet") };
    assert_eq!(sheet.notes[0], "Complete: no. Something that the law requires is missing.");
    let cells: Vec<String> = sheet.rows[0].iter().map(|cell| cell.plain(Words::english())).collect();
    assert_eq!(
        cells,
        [
            "missing, required by law",
            "acquisition of lot HERB-25-1",
            "no address",
            "record it",
            "regulation 19"
        ]
    );
}

/// Every lot of which something is left is on it, by product, batch and expiry, also if nothing happened to it in the period.
#[test]
fn the_stock_account_carries_every_lot_in_and_out() {
    let report = demo();
    let paper = Paper::of(Words::english(), &report, None);
    let sheet = paper.sheets.iter().find(|sheet| sheet.id == "lots").unwrap();
    let row = |lot: &str| -> Vec<String> {
        let place = report.totals.iter().position(|total| total.lot.as_str() == lot).unwrap();
        sheet.rows[place].iter().map(|cell| cell.plain(Words::english()).replace('\n', "; ")).collect()
    };
    let row_of = |lot: &str| row(lot)[2..].join(" | ");
    assert_eq!(row_of("EIGHT-26-1"), "0 strips | 20 strips | 12 strips | 0 strips | 8 strips | none");
    assert_eq!(
        row_of("LARCH-25-1"),
        "0 trays | 20 trays | 19 trays | 2 trays | not known | more gone than acquired; corrected by 1 entry"
    );
    assert_eq!(row_of("SEVEN-25-1"), "0 strips | 10 strips | 4 strips | 0 strips | 6 strips | expired");
    assert_eq!(row("EIGHT-26-1")[1], "X8-131 demo; expiry: 2027-06-30; lot: EIGHT-26-1");
    // Some lots only lay there in those weeks.
    let weeks = autumn();
    let moved = |total: &&LotTotal| {
        [total.acquired, total.given, total.disposed].iter().any(|moved| !moved.is_zero())
    };
    let still: Vec<&LotTotal> = weeks.totals.iter().filter(|total| !moved(total)).collect();
    assert!(!still.is_empty());
    assert!(still.iter().all(|total| total.carried_in == total.left && !total.left.unwrap().is_zero()));
}

fn gaps() -> GapsReport {
    let report = demo();
    let row = &report.acquisitions[0];
    let gap = Gap {
        weight: GapWeight::Required,
        finding: Finding::FieldNotRecorded(Field::SupplierAddress),
        about: About::Acquisition { lot: row.lot.clone(), medicine: Fact::Known("herb".to_owned()) },
        entry: row.written.entry,
        seq: row.written.seq,
        kind: Kind::LotAcquired,
        on: row.written.on,
        supply: Supply::ProvePurchase,
        law: Vec::new(),
    };
    GapsReport {
        holding: report.holding.clone(),
        from: report.from,
        to: report.to,
        as_of: report.as_of,
        laws: Vec::new(),
        complete: Verdict::No,
        summary: vec!["One thing is missing.".to_owned()],
        gaps: vec![GapReport {
            gap,
            missing: "supplier_address",
            about: "acquisition of lot HERB-25-1".to_owned(),
            statement: "no address".to_owned(),
            supply: "record it".to_owned(),
            law: vec!["regulation 19".to_owned()],
        }],
        lots: vec![LotCheck::of(
            "A".parse().unwrap(),
            "alpha".parse().unwrap(),
            Some(Unit::Strip),
            Balance {
                acquired: Quantity::whole(10),
                given: Quantity::whole(12),
                disposed: Quantity::ZERO,
                of_a_vet: false,
            },
            Vec::new(),
        )],
        copied: Vec::new(),
        archived: Vec::new(),
        notice: "No advice.".to_owned(),
    }
}

/// An office in the United States files Letter. Common practice, no source.
#[test]
fn the_paper_is_that_of_the_country() {
    let mut report = demo();
    for (jurisdiction, css) in
        [("gb", "size: A4 landscape"), ("us", "size: letter landscape"), ("de", "size: A4 landscape")]
    {
        report.keepers.last_mut().unwrap().jurisdiction = jurisdiction.parse().unwrap();
        assert!(html::page(&Paper::of(Words::english(), &report, None)).contains(css), "{jurisdiction}");
    }
}
