//! `combclear supering`: the demo's board, one of its colonies, and both as JSON.

use std::collections::BTreeMap;

use serde_json::Value;

use crate::bench::{Bench, DEMO_DAY};

#[test]
fn the_board_of_the_demo_shows_colonies_with_the_same_answer_and_reason_together() {
    insta::assert_snapshot!(Bench::with_demo().run(&["supering", "--on", DEMO_DAY]).done().out);
}

#[test]
fn the_board_of_the_demo_in_full_shows_every_colony_with_its_answer_and_what_is_next() {
    insta::assert_snapshot!(Bench::with_demo().run(&["supering", "--on", DEMO_DAY, "--full"]).done().out);
}

#[test]
fn one_colony_is_shown_with_its_answer_what_is_next_and_its_days() {
    let bench = Bench::with_demo();
    let shown =
        |colony: &str, code: i32| bench.run(&["supering", colony, "--on", DEMO_DAY]).answered(code).out;
    insta::assert_snapshot!([shown("O4", 0), shown("O6", 3), shown("T4", 4)].concat());
}

#[test]
fn one_colony_in_full_is_shown_with_all_its_grounds() {
    let ask = ["supering", "O6", "--on", DEMO_DAY, "--full"];
    insta::assert_snapshot!(Bench::with_demo().run(&ask).answered(3).out);
}

#[test]
fn an_unknown_in_full_names_what_is_missing_and_which_entry_would_supply_it() {
    let ask = ["supering", "T4", "--on", DEMO_DAY, "--full"];
    insta::assert_snapshot!(Bench::with_demo().run(&ask).answered(4).out);
}

#[test]
fn the_board_at_a_glance_names_every_colony_once_below_its_answer() {
    let bench = Bench::with_demo();
    let board = bench.run(&["supering", "--on", DEMO_DAY]).done().out;
    let json = bench.run(&["supering", "--on", DEMO_DAY, "--json"]).done().json();
    for (answer, head) in [("yes", "Yes"), ("no", "No"), ("unknown", "Not known")] {
        let section = board.split("\n\n").find_map(|part| part.strip_prefix(&format!("{head}\n"))).unwrap();
        // The colonies of a group stand on its first lines, which end with the name of an apiary and may break anywhere.
        let shown: Vec<String> = section
            .replace("\n    ", " ")
            .split("\n  ")
            .map(|group| group.trim().to_owned())
            .flat_map(|line| line.split("; ").map(ToOwned::to_owned).collect::<Vec<_>>())
            .filter_map(|part| Some(part.split_once(" at ")?.0.to_owned()))
            .flat_map(|names| names.split(" (").next().unwrap().split(", ").flat_map(run).collect::<Vec<_>>())
            .collect();
        let wanted: Vec<&str> = json
            .as_array()
            .unwrap()
            .iter()
            .filter(|report| report["answer"] == answer)
            .map(|report| report["colony"].as_str().unwrap())
            .collect();
        let sorted = |mut names: Vec<String>| {
            names.sort();
            names
        };
        assert_eq!(
            sorted(shown),
            sorted(wanted.into_iter().map(ToOwned::to_owned).collect()),
            "{answer}:\n{board}"
        );
    }
}

/// The names of `M1-M4`, or a single name.
fn run(said: &str) -> Vec<String> {
    let Some((first, last)) = said.split_once('-') else { return vec![said.to_owned()] };
    let number = |name: &str| name.trim_start_matches(char::is_alphabetic).parse::<u32>().unwrap();
    let letters = first.trim_end_matches(char::is_numeric);
    (number(first)..=number(last)).map(|number| format!("{letters}{number}")).collect()
}

#[test]
fn json_agrees_with_the_table_row_by_row() {
    let bench = Bench::with_demo();
    let board = bench.run(&["supering", "--on", DEMO_DAY, "--full"]).done().out;
    let json = bench.run(&["supering", "--on", DEMO_DAY, "--json"]).done().json();
    let reports = json.as_array().unwrap();
    assert_eq!(reports.len(), 39);
    let rows = rows(&board);
    assert_eq!(rows.len(), reports.len(), "{board}");
    let text = |report: &Value, field: &str| report[field].as_str().map(ToOwned::to_owned);
    for report in reports {
        let colony = text(report, "colony").unwrap();
        let (apiary, row) = &rows[&colony];
        assert_eq!(text(report, "apiary").as_ref(), Some(apiary), "{colony}");
        assert_eq!(text(report, "holding").as_deref(), Some("demo"));
        assert_eq!(text(report, "on").as_deref(), Some(DEMO_DAY));
        let first_free = match (text(report, "first_free_day"), text(report, "if_out_on")) {
            (None, _) => "not known".to_owned(),
            (Some(day), None) => day,
            (Some(day), Some(_)) => format!("({day})"),
        };
        let last_blocked = text(report, "last_blocked_day").unwrap_or_else(|| "-".to_owned());
        let wanted = [colony, text(report, "answer").unwrap(), last_blocked, first_free];
        assert_eq!(row[..4], wanted);
    }
    for answer in ["yes", "no", "unknown"] {
        let count = reports.iter().filter(|report| report["answer"] == answer).count();
        assert!(board.contains(&format!(" {count} {answer}")), "{count} {answer}");
    }
}

/// The rows of a board by colony: the apiary above them, and their cells, without continuation lines.
fn rows(board: &str) -> BTreeMap<String, (String, Vec<String>)> {
    let mut rows = BTreeMap::new();
    let (mut apiary, mut inside) = (String::new(), false);
    for line in board.lines() {
        let cells: Vec<String> = line.split("  ").map(|cell| cell.trim().to_owned()).collect();
        let cells: Vec<String> = cells.into_iter().filter(|cell| !cell.is_empty()).collect();
        if line.starts_with(' ') && cells.first().is_some_and(|cell| cell.starts_with('─')) {
            inside = true;
        } else if !line.starts_with(' ') {
            inside = false;
            if !line.is_empty() {
                line.clone_into(&mut apiary);
            }
        } else if inside && line.starts_with("  ") && !line.starts_with("   ") {
            rows.insert(cells[0].clone(), (apiary.clone(), cells));
        }
    }
    rows
}

#[test]
fn a_table_that_goes_to_a_program_is_as_wide_whatever_the_terminal_is() {
    let bench = Bench::with_demo();
    let plain = bench.run(&["supering", "--on", DEMO_DAY]).done().out;
    let mut narrow = bench.command(&["supering", "--on", DEMO_DAY]);
    let narrow = crate::bench::ran(narrow.env("COLUMNS", "40").output().unwrap());
    assert_eq!(narrow.out, plain);
    assert!(plain.lines().all(|line| line.chars().count() <= 80), "{plain}");
}

#[test]
fn the_same_question_gives_the_same_bytes() {
    let bench = Bench::with_demo();
    for arguments in [&["supering", "--on", DEMO_DAY][..], &["supering", "--on", DEMO_DAY, "--json"]] {
        assert_eq!(bench.run(arguments).done(), bench.run(arguments).done());
    }
}

#[test]
fn an_apiary_is_asked_by_its_name() {
    let bench = Bench::with_demo();
    let ask = ["supering", "--apiary", "Oxmarl", "--on", DEMO_DAY, "--json"];
    let json = bench.run(&ask).done().json();
    let colonies: Vec<&str> =
        json.as_array().unwrap().iter().map(|report| report["colony"].as_str().unwrap()).collect();
    assert_eq!(colonies, ["O1", "O2", "O3", "O4", "O5", "O6", "O8", "O9"]);
    bench
        .run(&["supering", "--apiary", "Oxmar"])
        .failed_with("there is no apiary `Oxmar`", "did you mean `Oxmarl`?");
    bench.run(&["supering", "--apiary", "Nowhere at all"]).failed_with(
        "there is no apiary `Nowhere at all`",
        "the apiaries are: Furzelow, Oxmarl, Saltwend, Ternholm, Withyhythe",
    );
}

#[test]
fn several_colonies_come_in_the_order_they_were_named_and_as_often() {
    let bench = Bench::with_demo();
    let json = bench.run(&["supering", "M1", "O4", "M1", "--on", DEMO_DAY, "--json"]).done().json();
    let colonies: Vec<&str> =
        json.as_array().unwrap().iter().map(|report| report["colony"].as_str().unwrap()).collect();
    assert_eq!(colonies, ["M1", "O4", "M1"]);
}

#[test]
fn an_unknown_colony_is_refused_before_anything_is_answered() {
    let bench = Bench::with_demo();
    for arguments in [&["supering", "O4", "H88"][..], &["supering", "H88", "O4", "--json"]] {
        bench.run(arguments).failed_with("there is no colony `H88`", "did you mean `H8`?");
    }
    bench
        .run(&["supering", "the big one"])
        .failed_with("there is no colony `the big one`", "list them all: combclear supering");
}

#[test]
fn without_a_day_it_is_today() {
    // The only question here without a fixed day: a colony that was never treated is always a yes.
    let bench = Bench::with_mine();
    let json = bench.run(&["supering", "A1", "--json"]).done().json();
    let today: combclear_domain::Day = json[0]["on"].as_str().unwrap().parse().unwrap();
    assert!(today >= "2026-03-01".parse().unwrap(), "{today}");
    assert_eq!(json[0]["answer"], "yes");
}

#[test]
fn a_board_of_nobody_is_empty_and_no_failure() {
    let bench = Bench::with_mine();
    let before = ["supering", "--on", "2026-02-28"];
    assert!(bench.run(&before).done().out.contains("0 colonies: 0 yes, 0 no, 0 unknown"));
    assert_eq!(bench.run(&[&before[..], &["--json"]].concat()).done().json(), serde_json::json!([]));
}

#[test]
fn a_reader_that_goes_away_is_no_failure() {
    let bench = Bench::with_demo();
    crate::export::first_bytes_of(bench.command(&["supering", "--on", DEMO_DAY, "--json"]));
    crate::export::first_bytes_of(bench.command(&["supering", "--on", DEMO_DAY]));
}

#[cfg(target_os = "linux")]
#[test]
fn standard_output_that_is_full_is_a_failure_that_says_so() {
    let bench = Bench::with_mine();
    let output = bench.command(&["supering"]).stdout(crate::export::full()).output().unwrap();
    let message = "cannot write to standard output: there is no space left on the disk";
    crate::bench::ran(output).failed_with(message, "check where it is sent");
}

/// As names are written when something is recorded.
#[test]
fn a_range_or_a_list_asks_about_each_of_its_colonies() {
    let bench = Bench::with_demo();
    let asked = |names: &[&str]| {
        let ask = [&["supering"], names, &["--on", DEMO_DAY, "--json"]].concat();
        let reports = bench.run(&ask).json();
        let names = reports.as_array().unwrap().iter().map(|report| report["colony"].as_str().unwrap());
        names.map(str::to_owned).collect::<Vec<_>>()
    };
    assert_eq!(asked(&["O1-O3"]), ["O1", "O2", "O3"]);
    assert_eq!(asked(&["O1-3", "O2", "O5"]), ["O1", "O2", "O3", "O2", "O5"]);
    assert_eq!(asked(&["O2,O4"]), ["O2", "O4"]);
    for wrong in ["O1-O99", "O3-O1", "O1,P77"] {
        bench.run(&["supering", wrong, "--on", DEMO_DAY]).failed().says(&[wrong]);
    }
}

#[test]
fn a_day_is_asked_about_by_a_word_that_leaves_no_doubt() {
    let bench = Bench::with_demo();
    for day in ["today", "yesterday", "Tomorrow"] {
        bench.run(&["supering", "--on", day]).done();
    }
    let friday = bench.run(&["supering", "--on", "friday"]);
    assert_eq!(friday.code, Some(2), "{}", friday.err);
    friday.says(&["`friday`"]);
}
