//! The help text, and that exit codes mean what it says.

use crate::bench::{Bench, DEMO_DAY, inspection, mine};

#[test]
fn the_help_names_the_commands_and_every_exit_code() {
    insta::assert_snapshot!(Bench::new().run(&["--help"]).done().out);
}

#[test]
fn each_command_says_what_it_takes() {
    let bench = Bench::new();
    for command in [
        "supering",
        "options",
        "register",
        "gaps",
        "due",
        "stock",
        "attach",
        "documents",
        "sheet",
        "import",
        "export",
        "verify",
        "backup",
        "restore",
        "doctor",
        "retention",
        "law",
        "leaflets",
        "serve",
    ] {
        let said = bench.run(&[command, "--help"]).done().out;
        assert!(said.contains(&format!("Usage: combclear {command} ")), "{said}");
        assert!(said.contains("--db <ADDRESS>") && said.contains("--holding <NAME>"), "{said}");
    }
    assert!(bench.files().is_empty());
}

#[test]
fn zero_is_done_and_yes() {
    let bench = Bench::with_demo();
    bench.run(&["--version"]).done();
    bench.run(&["verify"]).done();
    bench.run(&["export", "copy.jsonl"]).done();
    bench.run(&["import", "copy.jsonl"]).done();
    bench.run(&["leaflets"]).done();
    bench.run(&["supering", "O4", "M1", "--on", DEMO_DAY]).answered(0);
    // A board is about no particular colony, so a no in it does not set the exit code.
    let board = bench.run(&["supering", "--on", DEMO_DAY]).answered(0).out;
    assert!(board.contains("20 yes, 12 no, 7 unknown"), "{board}");
}

#[test]
fn three_is_no_and_four_is_unknown_and_no_goes_before_unknown_goes_before_yes() {
    let bench = Bench::with_demo();
    for (colonies, code) in [
        (&["O4"][..], 0),
        (&["O1"], 3),
        (&["T4"], 4),
        (&["O4", "T4"], 4),
        (&["T4", "O4"], 4),
        (&["O1", "O4"], 3),
        (&["O4", "T4", "O1"], 3),
        (&["O1", "T4"], 3),
    ] {
        for json in [&[][..], &["--json"]] {
            let arguments = [&["supering", "--on", DEMO_DAY], colonies, json].concat();
            let ran = bench.run(&arguments);
            assert_eq!((ran.code, ran.err.as_str()), (Some(code), ""), "{arguments:?}");
        }
    }
}

#[test]
fn five_is_done_in_part() {
    let bench = Bench::with_mine();
    bench.write("more.jsonl", mine(&["not an entry", &inspection(3, "2026-03-02", "A1")]));
    bench.run(&["import", "more.jsonl", "--keep-going"]).answered(5);
}

#[test]
fn one_is_what_could_not_be_done() {
    let bench = Bench::with_demo();
    bench.run(&["import", "missing.jsonl"]).failed();
    bench.run(&["supering", "H88"]).failed();
    bench.run(&["leaflets", "no-such"]).failed();
    bench.run(&["--db", "no-scheme.db", "verify"]).failed();
}

#[test]
fn two_is_a_wrong_command_line_and_the_message_says_what_is_wrong_with_it() {
    let bench = Bench::with_demo();
    for (arguments, said) in [
        (&["supper"][..], "unrecognized subcommand 'supper'"),
        (&["supering", "--on", "2025-02-29"], "`2025-02-29` is not a day of the calendar"),
        (&["supering", "--on", "11.4.2026"], "`11.4.2026`"),
        (&["supering", "O1", "--apiary", "Withyhythe"], "cannot be used with"),
        (&["supering", "--colour", "red"], "--colour"),
        (&["--holding", "a/b", "verify"], "`a/b` cannot be the name of a holding: it contains a `/`"),
        (&["import"], "<FILE>"),
        (&["serve", "--listen", "localhost"], "like 127.0.0.1:8420"),
        (&["serve", "--listen", "127.0.0.1:99999"], "like 127.0.0.1:8420"),
        (&["serve", "--allow-origin", "*"], "like https://hives.example.org"),
        (&["serve", "--allow-origin", "https://hives.example.org/"], "like https://hives.example.org"),
    ] {
        let ran = bench.run(arguments);
        assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{arguments:?}: {}", ran.err);
        assert!(ran.err.starts_with("error: ") && ran.err.contains(said), "{arguments:?}: {}", ran.err);
    }
    assert_eq!(bench.run(&[]).code, Some(2));
}
