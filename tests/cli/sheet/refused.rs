//! Sheets of which nothing is recorded: each fault with its place, and all of them at once.

use rust_xlsxwriter::Workbook;

use super::filling::{Cell, fill};
use super::with_template;
use crate::bench::Bench;

/// A sheet, by the cells that are filled in, and the faults that are told.
struct Refused {
    sentence: &'static str,
    cells: &'static [(&'static str, Cell)],
    says: &'static str,
}

const REFUSED: &[Refused] = &[
    Refused {
        sentence: "a day written day first or month first is refused, never guessed",
        cells: &[
            ("Inspections!A3", Cell::Text("24/08/2026")),
            ("Inspections!D3", Cell::Text("A1")),
            ("Inspections!A4", Cell::Text("08-24-2026")),
            ("Inspections!D4", Cell::Text("A1")),
            ("Inspections!A5", Cell::Text("2026-02-30")),
            ("Inspections!D5", Cell::Text("A1")),
            ("Inspections!A6", Cell::Number(46_250.0)),
            ("Inspections!D6", Cell::Text("A1")),
            ("Inspections!D7", Cell::Text("A1")),
            ("Inspections!A8", Cell::Date("2026-04-05T09:30:00")),
            ("Inspections!D8", Cell::Text("A1")),
        ],
        says: "\
error: nothing was imported: 6 faults in `filled.xlsx`
  help: fix them in the file, then import it again; contradictions are looked for once every cell can be read
  Inspections, row 3, column A: Day: `24/08/2026` is not a day in the order that this sheet takes
    help: write year-month-day, such as 2026-08-24; no other order is guessed
  Inspections, row 4, column A: Day: `08-24-2026` is not a day in the order that this sheet takes
    help: write year-month-day, such as 2026-08-24; no other order is guessed
  Inspections, row 5, column A: Day: `2026-02-30` is not a day of the calendar
    help: write year-month-day, such as 2026-08-24
  Inspections, row 6, column A: Day: 46250 is a number, not a day
    help: write year-month-day, such as 2026-08-24; no other order is guessed
  Inspections, row 7, column A: Day is missing
    help: write year-month-day, such as 2026-08-24
  Inspections, row 8, column A: Day: the day has a time of day with it, 2026-04-05 09:30
    help: write the time into the column for it
",
    },
    Refused {
        sentence: "an expiry that may have been typed as a month is refused",
        cells: &[
            ("Lots!A3", Cell::Date("2026-04-01")),
            ("Lots!D3", Cell::Text("P1")),
            ("Lots!E3", Cell::Text("amber")),
            ("Lots!G3", Cell::Date("2028-05-01")),
            ("Lots!H3", Cell::Number(10.0)),
            ("Lots!A4", Cell::Date("2026-04-01")),
            ("Lots!D4", Cell::Text("P2")),
            ("Lots!E4", Cell::Text("amber")),
            ("Lots!G4", Cell::Text("05/2028")),
            ("Lots!H4", Cell::Number(10.0)),
        ],
        says: "\
error: nothing was imported: 2 faults in `filled.xlsx`
  help: fix them in the file, then import it again; contradictions are looked for once every cell can be read
  Lots, row 3, column G: Expiry: 2028-05-01 may have been typed as a month
    help: format the cell as text, then write 2028-05 for a month, or the day in full
  Lots, row 4, column G: Expiry: `05/2028` is not a day in the order that this sheet takes
    help: write 2028-05 for a month, or 2028-05-31 for a day; no other order is guessed
",
    },
    Refused {
        sentence: "merged cells are refused with their range",
        cells: &[("Inspections!A3", Cell::Date("2026-04-05")), ("Inspections!D3", Cell::MergedTo("D5"))],
        says: "\
error: nothing was imported: 1 fault in `filled.xlsx`
  help: fix them in the file, then import it again; contradictions are looked for once every cell can be read
  Inspections, row 3, column D: the cells D3:D5 are merged
    help: split them, and write the value into each row
",
    },
    Refused {
        sentence: "a formula is refused even if its value is stored",
        cells: &[
            ("Inspections!A3", Cell::Date("2026-04-05")),
            ("Inspections!D3", Cell::Text("A1")),
            ("Inspections!F3", Cell::Formula("=3+4")),
        ],
        says: "\
error: nothing was imported: 1 fault in `filled.xlsx`
  help: fix them in the file, then import it again; contradictions are looked for once every cell can be read
  Inspections, row 3, column F: Seams of bees is a formula
    help: write the value itself
",
    },
    Refused {
        sentence: "what a cell holds must be what its column takes",
        cells: &[
            ("Inspections!A3", Cell::Date("2026-04-05")),
            ("Inspections!B3", Cell::Text("9:30")),
            ("Inspections!D3", Cell::Text("A1")),
            ("Inspections!E3", Cell::Text("lots")),
            ("Inspections!F3", Cell::Number(300.0)),
            ("Inspections!G3", Cell::Text("12.5")),
            ("Inspections!J3", Cell::Text("maybe")),
            ("Inspections!K3", Cell::Date("2026-04-05")),
        ],
        says: "\
error: nothing was imported: 6 faults in `filled.xlsx`
  help: fix them in the file, then import it again; contradictions are looked for once every cell can be read
  Inspections, row 3, column B: Time: `9:30` is not a time of day
    help: write hours and minutes, such as 09:30
  Inspections, row 3, column E: Brood: unknown word `lots`, expected one of `absent`, `lowest`, `present`
    help: the brood you saw; for example present
  Inspections, row 3, column F: Seams of bees: `300` is not a whole number from 0 to 255
    help: how many; for example 8
  Inspections, row 3, column G: Bees: `12.5` is not a whole number
    help: your estimate of their number; for example 20000
  Inspections, row 3, column J: Feeder: `maybe` is neither yes nor no
    help: whether a feeder is on; for example no
  Inspections, row 3, column K: Note holds the date 2026-04-05, and takes none
    help: format the cell as text, then write it again
",
    },
    Refused {
        sentence: "nothing that is written is passed over: other tabs, other columns, cells without a heading",
        cells: &[
            ("Inspections!A3", Cell::Date("2026-04-05")),
            ("Inspections!D3", Cell::Text("A1")),
            ("Inspections!E1", Cell::Text("Broods")),
            ("Inspections!F1", Cell::Text("colony")),
            ("Inspections!N3", Cell::Text("a remark")),
            ("Inspection!A1", Cell::Text("Day")),
        ],
        says: "\
error: nothing was imported: 4 faults in `filled.xlsx`
  help: fix them in the file, then import it again; contradictions are looked for once every cell can be read
  Inspections, row 1, column E: there is no column `Broods` here
    help: did you mean `Brood`?
  Inspections, row 1, column F: there are two columns `colony`
    help: take one of them out
  Inspections, row 3, column N: something is written in a column without a heading
    help: clear the column, or give it one of the headings of this tab
  Inspection: no kind of entry has a tab `Inspection`
    help: did you mean `Inspections`? if not, take the tab out
",
    },
    Refused {
        sentence: "two rows that say the same are refused, since one is a slip of the pen",
        cells: &[
            ("Inspections!A3", Cell::Date("2026-04-05")),
            ("Inspections!D3", Cell::Text("A1")),
            ("Inspections!A5", Cell::Text("2026-04-05")),
            ("Inspections!D5", Cell::Text("A1")),
        ],
        says: "\
error: nothing was imported: 1 fault in `filled.xlsx`
  help: fix them in the file, then import it again; contradictions are looked for once every cell can be read
  Inspections, row 5, column A: this says the same as row 3
    help: take one of them out; if it happened twice, write the time of day into both
",
    },
    Refused {
        sentence: "once every row can be read, all that cannot be true is told, in the order of the file",
        cells: &[
            ("Inspections!A3", Cell::Date("2026-04-05")),
            ("Inspections!D3", Cell::Text("A9")),
            ("Inspections!A4", Cell::Date("2026-02-05")),
            ("Inspections!D4", Cell::Text("A1")),
            ("Taken out!A3", Cell::Date("2026-04-05")),
            ("Taken out!E3", Cell::Text("A1")),
            ("Moved!A3", Cell::Date("2026-04-05")),
            ("Moved!D3", Cell::Text("A1")),
            ("Moved!E3", Cell::Text("Eest")),
        ],
        says: "\
error: nothing was imported: 4 faults in `filled.xlsx`
  help: fix them in the file, then import it again
  Inspections, row 3, column D: there is no colony `A9`
    help: did you mean `A1`?
  Inspections, row 4, column D: colony `A1` came into the record on 2026-03-01, after 2026-02-05
    help: check both dates
  Taken out, row 3, column D: nothing is recorded as inside A1
    help: leave out the colonies without strips, or record first what was placed
  Moved, row 3, column E: there is no apiary `Eest`
    help: did you mean `East`?
",
    },
];

#[test]
fn every_fault_is_told_with_tab_row_and_column_and_nothing_is_recorded() {
    let bench = with_template();
    let before = bench.kept();
    for Refused { sentence, cells, says } in REFUSED {
        fill(&bench, "out.xlsx", "filled.xlsx", cells);
        let ran = bench.run(&["import", "filled.xlsx"]);
        assert_eq!((ran.code, ran.err.as_str(), ran.out.as_str()), (Some(1), *says, ""), "{sentence}");
        assert_eq!(bench.kept(), before, "{sentence}");
    }
}

/// A CSV file, and the message and the help.
struct RefusedCsv {
    sentence: &'static str,
    text: &'static [u8],
    message: &'static str,
    help: &'static str,
}

const TABS: &str = "write one of these into the first column: Keeper, Apiaries, Colonies, Medicines, Lots, Lots of a vet, Leaflets, Prescriptions, Sites, Nectar flows, Temperatures, Usual temperatures, Inspections, Mite counts, Supers off, Opened, Given, Taken out, Split, United, Moved, Supers on, Harvests, Disposed of, Ended";

const REFUSED_CSV: &[RefusedCsv] = &[
    RefusedCsv {
        sentence: "a file whose first column is not the kind",
        text: b"Day,Colony\n2026-04-05,A1\n",
        message: "nothing was imported: the column `Kind` of `i.csv` does not say which kind of entry this is",
        help: TABS,
    },
    RefusedCsv {
        sentence: "a file that says no kind anywhere",
        text: b"Kind,Day,Colony\n,2026-04-05,A1\n",
        message: "nothing was imported: the column `Kind` of `i.csv` does not say which kind of entry this is",
        help: TABS,
    },
    RefusedCsv {
        sentence: "a kind that there is not",
        text: b"Kind,Day,Colony\nSights,2026-04-05,A1\n",
        message: "nothing was imported: the column `Kind` of `i.csv` has `Sights`, which is no kind of entry",
        help: TABS,
    },
    RefusedCsv {
        sentence: "two kinds in one file",
        text: b"Kind,Day,Colony\nInspections,2026-04-05,A1\nMoved,2026-04-05,A1\n",
        message: "nothing was imported: `i.csv` has two kinds of entry, `Inspections` and `Moved`",
        help: "make one CSV file for each kind of entry, or one .xlsx with a tab for each",
    },
    RefusedCsv {
        sentence: "a text in an older encoding",
        text: b"Kind,Day,Colony\nInspections,2026-04-05,K\xfchn\n",
        message: "nothing was imported: `i.csv` is not UTF-8 text, from line 2",
        help: "save it again as CSV UTF-8",
    },
];

#[test]
fn a_csv_file_that_cannot_be_read_is_refused_whole() {
    let bench = with_template();
    for RefusedCsv { sentence, text, message, help } in REFUSED_CSV {
        bench.write("i.csv", text);
        let ran = bench.run(&["import", "i.csv"]);
        assert_eq!(ran.err, format!("error: {message}\n  help: {help}\n"), "{sentence}");
        assert_eq!(ran.code, Some(1), "{sentence}");
    }
}

#[test]
fn a_row_of_a_csv_file_is_counted_as_a_spreadsheet_program_does() {
    let bench = with_template();
    // A line break within a cell begins no row; an empty line is one.
    bench.write(
        "i.csv",
        "Kind,Day,Colony,Note\nInspections,2026-04-05,A1,\"two\nlines\"\n\nInspections,05/04/2026,A1,\n",
    );
    let ran = bench.run(&["import", "i.csv"]).failed();
    assert!(ran.err.contains("Inspections, row 4, column B: Day: `05/04/2026` is not a day"), "{}", ran.err);
}

#[test]
fn a_file_that_is_no_spreadsheet_or_of_another_format_is_refused() {
    let bench = with_template();
    bench.write("no.xlsx", "PK but no more");
    let ran = bench.run(&["import", "no.xlsx"]).failed();
    ran.says(&["nothing was imported: `no.xlsx` is not a spreadsheet that can be read", "save it as .xlsx"]);
    bench.write("old.xls", "");
    bench.run(&["import", "old.xls"]).failed_with(
        "`old.xls` is neither .xlsx nor .csv",
        "save it as .xlsx, or as .csv with one kind of entry",
    );
    bench.run(&["import", "out.xlsx", "--keep-going"]).failed_with(
        "nothing was imported: a sheet is imported in full or not at all",
        "leave --keep-going out",
    );
    bench.run(&["import", "gone.xlsx"]).failed().says(&["cannot read `gone.xlsx`"]);
}

/// Writes a sheet with as many inspections, none of which has a day.
fn long(bench: &Bench, rows: u32) {
    let mut workbook = Workbook::new();
    let sheet = workbook.add_worksheet().set_name("Inspections").unwrap();
    sheet.write(0, 0, "Day").unwrap().write(0, 1, "Colony").unwrap();
    for row in 1..=rows {
        sheet.write(row, 1, "A1").unwrap();
    }
    workbook.save(bench.path("long.xlsx")).unwrap();
}

#[test]
fn ten_thousand_rows_are_looked_at_and_one_more_is_refused() {
    let bench = with_template();
    let too_many = "nothing was imported: `long.xlsx` has more than 10000 rows";
    long(&bench, 10_000);
    let ran = bench.run(&["import", "long.xlsx"]).failed();
    assert!(ran.err.starts_with("error: nothing was imported: 10000 faults in `long.xlsx`\n"), "{}", ran.err);
    assert!(ran.err.ends_with("\n  ... and 9950 more\n"), "{}", ran.err);
    for rows in [10_001, 100_000] {
        long(&bench, rows);
        bench.run(&["import", "long.xlsx"]).failed_with(too_many, "split it into several files");
    }
    bench.write("long.csv", format!("Kind,Day,Colony\n{}", "Inspections,,A1\n".repeat(10_001)));
    bench.run(&["import", "long.csv"]).failed_with(
        "nothing was imported: `long.csv` has more than 10000 rows",
        "split it into several files",
    );
}
