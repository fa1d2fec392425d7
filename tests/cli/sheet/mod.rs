//! `sheet` and `import` of what was filled in.

mod filling;
mod refused;

use calamine::{Data, DataType};
use serde_json::{Value, json};

use crate::bench::{Bench, MINE, draft, lines};
use crate::record::contents;
use filling::{Cell, fill, fill_rows, tabs};

/// The rows of a spring of sixty colonies, as a keeper fills them in.
const SPRING: &str = include_str!("../data/spring-sheet.txt");

/// A folder with a small holding and its template `out.xlsx`.
fn with_template() -> Bench {
    let bench = Bench::with_mine();
    bench.run(&["sheet", "out.xlsx"]).done();
    bench
}

fn rows(text: &str) -> Vec<(String, Vec<(String, String)>)> {
    let value = |value: &str| {
        let (heading, text) = value.split_once(" = ").unwrap();
        (heading.trim().to_owned(), text.trim().to_owned())
    };
    let row = |line: &str| {
        let (tab, values) = line.split_once(": ").unwrap();
        (tab.to_owned(), values.split(';').map(value).collect())
    };
    text.lines().map(row).collect()
}

fn entries(bench: &Bench) -> Vec<Value> {
    let export = bench.run(&["export"]).done().out;
    export.lines().skip(1).map(|line| serde_json::from_str(line).unwrap()).collect()
}

#[test]
fn the_template_of_the_demo_is_read_back_and_records_nothing() {
    let bench = Bench::with_demo();
    bench.run(&["sheet", "out.xlsx"]).done().says(&["out.xlsx: a template with 25 tabs"]);
    let before = bench.kept();
    bench.run(&["import", "out.xlsx"]).done().says(&["no row is filled in; nothing was recorded"]);
    assert_eq!(bench.kept(), before);
}

#[test]
fn every_tab_and_every_csv_file_is_read_back_under_the_headings_that_were_written() {
    let bench = with_template();
    let kinds: Vec<String> = {
        let all = bench.run(&["sheet", "x.csv", "--kind", "nothing"]);
        let (_, listed) = all.err.split_once("it is one of ").unwrap();
        let listed = listed.split("\n\n").next().unwrap();
        listed.split(',').map(|kind| kind.trim().to_owned()).collect()
    };
    assert_eq!(kinds.len(), 25);
    let mut headings = Vec::new();
    for kind in &kinds {
        let file = format!("{kind}.csv");
        bench.run(&["sheet", &file, "--kind", kind]).done();
        bench.run(&["import", &file]).done().says(&["no row is filled in"]);
        let text = bench.read(&file);
        headings.push(text.lines().next().unwrap().strip_prefix("Kind,").unwrap().to_owned());
    }
    let of_tabs = tabs(&bench, "out.xlsx");
    let of_tabs = of_tabs.iter().filter(|(name, _)| name != "Choices" && name != "How to fill this in");
    let of_tabs: Vec<String> = of_tabs
        .map(|(_, range)| {
            let first = range.rows().next().unwrap();
            first.iter().filter_map(DataType::as_string).collect::<Vec<_>>().join(",")
        })
        .collect();
    assert_eq!(of_tabs, headings);
}

#[test]
fn a_spring_of_sixty_colonies_is_recorded_by_one_sheet() {
    let bench = Bench::new();
    bench.run(&["sheet", "out.xlsx", "--new", "--holding", "spring"]).done();
    fill_rows(&bench, "out.xlsx", "spring.xlsx", &rows(SPRING));
    bench.run(&["import", "spring.xlsx"]).done().says(&[
        "spring: 139 entries added",
        "recorded: Keeper 1, Apiaries 4, Colonies 60, Medicines 2, Lots 2, Sites 1",
    ]);
    let imported = Bench::with_spring().run(&["export"]).done().out;
    let recorded = bench.run(&["export"]).done().out;
    assert_eq!(contents(&recorded), contents(&imported));
}

#[test]
fn the_order_of_rows_and_tabs_does_not_matter_since_days_do() {
    let (first, second) = (Bench::new(), Bench::new());
    let mut turned = rows(SPRING);
    turned.reverse();
    for (bench, rows) in [(&first, rows(SPRING)), (&second, turned)] {
        bench.run(&["sheet", "out.xlsx", "--new", "--holding", "spring"]).done();
        fill_rows(bench, "out.xlsx", "spring.xlsx", &rows);
        bench.run(&["import", "spring.xlsx"]).done();
    }
    let said = |bench: &Bench| contents(&bench.run(&["export"]).done().out);
    assert_eq!(said(&first), said(&second));
}

#[test]
fn a_sheet_imported_twice_records_nothing_the_second_time_and_says_so() {
    let bench = Bench::new();
    bench.run(&["sheet", "out.xlsx", "--new", "--holding", "spring"]).done();
    fill_rows(&bench, "out.xlsx", "spring.xlsx", &rows(SPRING));
    bench.run(&["import", "spring.xlsx"]).done();
    let before = bench.kept();
    let again = bench.run(&["import", "spring.xlsx"]).done();
    again.says(&["spring: 0 entries added, 139 were already there", "25 rows were imported before"]);
    assert_eq!(bench.kept(), before);
}

#[test]
fn a_row_is_known_again_in_another_place_another_file_and_the_other_format() {
    let bench = with_template();
    fill(
        &bench,
        "out.xlsx",
        "one.xlsx",
        &[
            ("Inspections!A3", Cell::Date("2026-04-05")),
            ("Inspections!B3", Cell::Time("09:30")),
            ("Inspections!C3", Cell::Text("me")),
            ("Inspections!D3", Cell::Text("A1")),
            ("Inspections!F3", Cell::Number(7.0)),
            ("Inspections!J3", Cell::YesNo(false)),
        ],
    );
    bench.run(&["import", "one.xlsx"]).done().says(&["mine: 1 entry added"]);
    let body = json!({"colony": "A1", "seams": 7, "feeder": false});
    let kept = entries(&bench).pop().unwrap();
    assert_eq!((&kept["body"], &kept["at"], &kept["on"]), (&body, &json!("09:30"), &json!("2026-04-05")));
    fill(
        &bench,
        "out.xlsx",
        "two.xlsx",
        &[
            ("Inspections!A7", Cell::Text(" 2026-04-05 ")),
            ("Inspections!B7", Cell::Text("09:30")),
            ("Inspections!C7", Cell::Text("me")),
            ("Inspections!D7", Cell::Text("A1")),
            ("Inspections!F7", Cell::Text("7")),
            ("Inspections!J7", Cell::Text("no")),
        ],
    );
    bench.run(&["import", "two.xlsx"]).done().says(&["1 row was imported before and was not recorded again"]);
    bench.write("three.csv", "\u{feff}Kind;Feeder;Seams of bees;Colony;Recorded by;Time;Day\r\nInspections;no;7;A1;me;09:30;2026-04-05\r\n");
    bench.run(&["import", "three.csv"]).done().says(&["1 row was imported before"]);
    assert_eq!(entries(&bench).len(), 3);
    // A row that says anything else is another row.
    bench.write("four.csv", "Kind,Day,Time,Colony,Seams of bees\nInspections,2026-04-05,09:30,A1,8\n");
    bench.run(&["import", "four.csv"]).done().says(&["mine: 1 entry added; "]);
    assert_eq!(entries(&bench).len(), 4);
}

#[test]
fn rows_copied_from_a_paper_register_say_so_in_two_columns_that_come_together() {
    let bench = with_template();
    let head = "Kind,Day,Apiary,Copied from,Written there";
    let sheet = |written: &str| format!("{head}\nApiaries,2026-04-05,Paper Hill,red notebook,{written}\n");
    bench.write("half.csv", sheet(""));
    let half = bench.run(&["import", "half.csv"]);
    assert!(half.code == Some(1) && half.err.contains("Written there must be given"), "{}", half.err);
    bench.write("early.csv", sheet("2026-04-04"));
    let early = bench.run(&["import", "early.csv"]);
    assert!(early.code == Some(1) && early.err.contains("before it happened on 2026-04-05"), "{}", early.err);
    bench.write("good.csv", sheet("2026-04-06"));
    bench.run(&["import", "good.csv"]).done();
    let last = entries(&bench).pop().unwrap();
    assert_eq!((&last["copied_from"], &last["written_on"]), (&"red notebook".into(), &"2026-04-06".into()));
    bench.run(&["import", "good.csv"]).done().says(&["1 row was imported before"]);
}

#[test]
fn strips_that_the_sheet_places_are_the_ones_that_it_takes_out() {
    let bench = with_template();
    fill(
        &bench,
        "out.xlsx",
        "course.xlsx",
        &[
            ("Taken out!A3", Cell::Date("2026-05-01")),
            ("Taken out!E3", Cell::Text("A1")),
            ("Given!A3", Cell::Date("2026-03-20")),
            ("Given!E3", Cell::Number(2.0)),
            ("Given!G3", Cell::Text("A1")),
            ("Lots!A3", Cell::Date("2026-03-19")),
            ("Lots!D3", Cell::Text("P1")),
            ("Lots!E3", Cell::Text("amber")),
            ("Lots!G3", Cell::Text("2028-05")),
            ("Lots!H3", Cell::Number(10.0)),
            ("Medicines!A3", Cell::Date("2026-03-19")),
            ("Medicines!D3", Cell::Text("amber")),
            ("Medicines!E3", Cell::Text("Amber strips (invented)")),
            ("Medicines!G3", Cell::Text("strip")),
        ],
    );
    bench.run(&["import", "course.xlsx"]).done().says(&["mine: 4 entries added"]);
    let entries = entries(&bench);
    assert_eq!(entries[3]["body"]["expiry"], "2028-05-31", "a month stands for its last day");
    assert_eq!(entries[5]["body"]["administration"], entries[4]["id"]);
}

#[test]
fn colonies_of_a_range_that_are_not_there_are_named_with_their_row() {
    let bench = with_template();
    fill(
        &bench,
        "out.xlsx",
        "range.xlsx",
        &[
            ("Colonies!A3", Cell::Date("2026-03-20")),
            ("Colonies!D3", Cell::Text("A3")),
            ("Colonies!E3", Cell::Text("East")),
            ("Colonies!H3", Cell::Text("not known")),
            ("Inspections!A3", Cell::Date("2026-04-05")),
            ("Inspections!D3", Cell::Text("A1-A3")),
        ],
    );
    let done = bench.run(&["import", "range.xlsx"]).done();
    done.says(&["mine: 3 entries added", "Inspections, row 3: A2 is left out: it is not on record"]);
}

#[test]
fn names_that_look_like_formulas_are_offered_and_read_as_texts() {
    let bench = Bench::new();
    let names = ["=1+1", "+A", "-B", "@C", "'=D"];
    let colony = |(number, name): (usize, &&str)| {
        let body = json!({"colony": name, "apiary": "=HYPERLINK(\"x\")", "medicines": "none"});
        draft(number + 2, "2026-03-01", "colony_established", &body)
    };
    let apiary = draft(1, "2026-03-01", "apiary_details", &json!({"apiary": "=HYPERLINK(\"x\")"}));
    let colonies: Vec<String> = names.iter().enumerate().map(colony).collect();
    bench.write("mine.jsonl", lines([MINE, &apiary].into_iter().chain(colonies.iter().map(String::as_str))));
    bench.run(&["import", "mine.jsonl"]).done();
    bench.run(&["sheet", "out.xlsx"]).done();
    let found = tabs(&bench, "out.xlsx");
    let (_, choices) = found.iter().find(|(name, _)| name == "Choices").unwrap();
    let offered: Vec<&str> = choices.rows().skip(1).filter_map(|row| row[1].get_string()).collect();
    let mut wanted = names.to_vec();
    wanted.sort_unstable();
    let mut sorted = offered.clone();
    sorted.sort_unstable();
    assert_eq!(sorted, wanted);
    assert_eq!(choices.get((1, 0)), Some(&Data::String("=HYPERLINK(\"x\")".to_owned())));
    // In CSV, as the register writes such a text.
    bench.write("i.csv", "Kind,Day,Colony\nInspections,2026-04-05,'=1+1\nInspections,2026-04-05,-B\n");
    bench.run(&["import", "i.csv"]).done().says(&["mine: 2 entries added"]);
    let inspected: Vec<Value> =
        entries(&bench).iter().skip(6).map(|entry| entry["body"]["colony"].clone()).collect();
    assert_eq!(inspected, ["=1+1", "-B"]);
}

#[test]
fn a_sheet_of_another_holding_or_of_a_new_one_is_taken_in_on_purpose_only() {
    let bench = with_template();
    fill(
        &bench,
        "out.xlsx",
        "filled.xlsx",
        &[("Inspections!A3", Cell::Date("2026-04-05")), ("Inspections!D3", Cell::Text("A1"))],
    );
    bench.run(&["import", "filled.xlsx", "--holding", "yours"]).failed_with(
        "nothing was imported: `filled.xlsx` is a sheet of `mine`, not of `yours`",
        "leave --holding out, or name the right file",
    );
    fill(
        &bench,
        "out.xlsx",
        "other.xlsx",
        &[
            ("How to fill this in!B1", Cell::Text("other")),
            ("Apiaries!A3", Cell::Date("2026-04-05")),
            ("Apiaries!C3", Cell::Text("me")),
            ("Apiaries!D3", Cell::Text("West")),
        ],
    );
    bench.run(&["import", "other.xlsx"]).failed_with(
        "`other.xlsx` is of holding `other`, which this database does not keep; it keeps mine",
        "import it with --begin to keep this holding too",
    );
    bench.run(&["import", "other.xlsx", "--begin"]).done().says(&["other: 1 entry added"]);
}

#[test]
fn a_template_is_never_written_over_a_file_and_says_what_it_needs() {
    let bench = with_template();
    bench.run(&["sheet", "out.xlsx"]).failed_with(
        "`out.xlsx` already exists; it was left as it is",
        "name a file that does not exist yet",
    );
    bench.run(&["sheet", "x.csv"]).failed_with(
        "a CSV file takes one kind of entry",
        "say which with --kind, such as --kind inspection; or write an .xlsx file, which has a tab for each",
    );
    bench.run(&["sheet", "x.xlsx", "--kind", "inspection"]).failed_with(
        "an .xlsx file has a tab for every kind of entry",
        "leave --kind out, or write a .csv file",
    );
    bench.run(&["sheet", "x.ods"]).failed_with(
        "`x.ods` is neither .xlsx nor .csv",
        "save it as .xlsx, or as .csv with one kind of entry",
    );
    assert_eq!(bench.files(), ["combclear.db", "mine.jsonl", "out.xlsx"]);
}
