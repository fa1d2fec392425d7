//! `record` and `begin`: what happened, written down from the command line.

use std::io::Write;
use std::process::Stdio;

use serde_json::{Value, json};

use crate::bench::{Bench, Ran, bare, ran};

/// A spring of sixty colonies as drafts, and the commands that record the same.
const SPRING: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/cli/data/spring.jsonl");
const COMMANDS: &str = include_str!("data/spring.txt");

/// Splits a command as a shell does: at spaces outside double quotes.
fn words(command: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    let mut quoted = false;
    for letter in command.chars() {
        match letter {
            '"' => quoted = !quoted,
            ' ' if !quoted => words.push(String::new()),
            other => words.last_mut().unwrap().push(other),
        }
    }
    words
}

impl Bench {
    /// Runs commands as they are typed, each of which must be done.
    pub(crate) fn type_in_all<'c>(&self, commands: impl IntoIterator<Item = &'c str>) {
        for command in commands {
            self.type_in(command).done();
        }
    }

    /// Runs a command as it is typed, without the name of the program.
    pub(crate) fn type_in(&self, command: &str) -> Ran {
        let words = words(command);
        self.run(&words.iter().map(String::as_str).collect::<Vec<_>>())
    }

    /// A folder with the spring of sixty colonies.
    pub(crate) fn with_spring() -> Bench {
        let bench = Bench::new();
        bench.run(&["import", SPRING]).done();
        bench
    }

    /// Runs a command on a terminal on which this is typed.
    fn on_a_terminal(&self, command: &str, typed: &str) -> Ran {
        let program = env!("CARGO_BIN_EXE_combclear");
        let mut script = bare(std::path::Path::new("script"), &self.path(""));
        script.args(["-qec", &format!("{program} {command}"), "/dev/null"]);
        let mut child =
            script.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        child.stdin.take().unwrap().write_all(typed.as_bytes()).unwrap();
        ran(child.wait_with_output().unwrap())
    }
}

/// The contents of an export: day, kind and body of each entry, with the number of the entry that it builds on in place of its id.
pub(crate) fn contents(export: &str) -> Vec<String> {
    let rows: Vec<Value> = export.lines().skip(1).map(|line| serde_json::from_str(line).unwrap()).collect();
    let placed = |id: &Value| {
        let first = rows.iter().find(|row| row["id"] == *id).unwrap();
        first["body"]["given"].to_string()
    };
    let mut contents: Vec<String> = rows
        .iter()
        .map(|row| {
            let mut body = row["body"].clone();
            if let Some(id) = body.get("administration").cloned() {
                body["administration"] = placed(&id).into();
            }
            format!("{} {} {} {body}", row["on"], row["recorded_by"], row["kind"])
        })
        .collect();
    contents.sort();
    contents
}

#[test]
fn a_spring_of_sixty_colonies_is_recorded_in_at_most_thirty_commands_and_2400_characters() {
    let bench = Bench::new();
    let commands: Vec<&str> = COMMANDS.lines().collect();
    assert!(commands.len() <= 30, "{} commands", commands.len());
    let characters: usize = commands.iter().map(|command| command.chars().count()).sum();
    assert!(characters <= 2_400, "{characters} characters");
    for command in &commands {
        bench.type_in(command.strip_prefix("combclear ").unwrap()).done();
    }
    let imported = Bench::with_spring().run(&["export"]).done().out;
    let recorded = bench.run(&["export"]).done().out;
    assert_eq!(contents(&recorded), contents(&imported));
    assert_eq!(contents(&recorded).len(), 139);
}

/// A command that records nothing, what it says, and the last line of help.
struct Refused {
    sentence: &'static str,
    command: &'static str,
    says: &'static [&'static str],
}

const REFUSED: &[Refused] = &[
    Refused {
        sentence: "all missing fields are named at once, with what to give",
        command: "record given Q1 -y",
        says: &[
            "nothing was recorded; 2 things to fix",
            "lot: several lots have something left: P1, P2",
            "each: Each must be given",
            "amount for each colony, in the unit of the medicine; for example 2",
        ],
    },
    Refused {
        sentence: "an unknown word is named with the list",
        command: "record inspection Q1 --brood some --seams many -y",
        says: &[
            "2 things to fix",
            "brood: Brood: unknown word `some`",
            "`absent`, `lowest`, `present`",
            "seams: ",
        ],
    },
    Refused {
        sentence: "the nearest colony is offered",
        command: "record inspection Q21 -y",
        says: &["there is no colony `Q21`", "did you mean `Q1`?"],
    },
    Refused {
        sentence: "the nearest lot is offered",
        command: "record given Q2 --lot P3 --each 2 -y",
        says: &["there is no lot `P3`", "did you mean `P1`?"],
    },
    Refused {
        sentence: "a range that runs backwards is none",
        command: "record inspection Q9-Q1 -y",
        says: &["the range `Q9-Q1` runs backwards"],
    },
    Refused {
        sentence: "a range must end at a colony on record",
        command: "record inspection Q1-Q99 -y",
        says: &[
            "the range `Q1-Q99` ends at `Q99`, and there is no such colony on record",
            "did you mean `Q9`?",
        ],
    },
    Refused {
        sentence: "a text that is no range is taken for a name",
        command: "record inspection Q1-W3 -y",
        says: &["there is no colony `Q1-W3`"],
    },
    Refused {
        sentence: "a day that is none is refused",
        command: "record inspection Q1 --on someday -y",
        says: &["`someday` is not a date", "write today, yesterday, a weekday such as monday, or a date"],
    },
    Refused {
        sentence: "a day of another order is refused",
        command: "record inspection Q1 --on 24/08/2026 -y",
        says: &["`24/08/2026` is not a date"],
    },
    Refused {
        sentence: "a lot without enough in it is refused",
        command: "record given Q1-Q16 --lot P1 --each 10 --on 2026-05-02 -y",
        says: &["P1", "help: "],
    },
    Refused {
        sentence: "a comma that may part thousands is not taken for a decimal one",
        command: "record disposed P2 --quantity 1,500 --how-and-where shop -y",
        says: &["quantity: Amount", "`1,500`"],
    },
    Refused {
        sentence: "strips cannot be taken out where none are",
        command: "record taken-out Q1 --on 2026-05-02 -y",
        says: &["nothing is recorded as inside Q1", "leave out the colonies without strips"],
    },
    Refused {
        sentence: "an apiary without colonies has nothing to inspect",
        command: "record inspection --apiary Hill -y",
        says: &["no colony is at `Hill` on that day"],
    },
    Refused {
        sentence: "a correction needs its reason",
        command: "record correction 20 --set apiary=Weir -y",
        says: &["a correction needs its reason"],
    },
    Refused {
        sentence: "a correction of an entry that is not there names the last",
        command: "record correction 999 --set apiary=Weir --reason typo -y",
        says: &["there is no entry `999` in the journal; the last is 139"],
    },
    Refused {
        sentence: "a correction of a field that is not there names the fields",
        command: "record correction 20 --set size=7 --reason typo -y",
        says: &[
            "there is no field `size` here",
            "the fields are colony, apiary, hive_mark, origin, medicines",
        ],
    },
    Refused {
        sentence: "nothing is recorded without a terminal unless it is agreed to",
        command: "record inspection Q1",
        says: &["nobody can be asked", "add --yes"],
    },
    Refused {
        sentence: "a holding is begun once",
        command: "begin spring --keeper B --country gb -y",
        says: &["the database keeps a holding `spring` already"],
    },
    Refused {
        sentence: "an unknown country is refused, and the likely one offered",
        command: "begin other --keeper B --country uk -y",
        says: &["`uk`", "gb"],
    },
    Refused {
        sentence: "a holding that is not there is refused, and the nearest offered",
        command: "record inspection Q1 --holding sprung -y",
        says: &["`sprung`", "did you mean `spring`?"],
    },
];

#[test]
fn bad_input_is_refused_with_how_to_fix_it_and_nothing_is_recorded() {
    let bench = Bench::with_spring();
    let before = bench.kept();
    for Refused { sentence, command, says } in REFUSED {
        let ran = bench.type_in(command);
        assert_eq!(ran.code, Some(1), "{sentence}: {}{}", ran.out, ran.err);
        // Lines are wrapped to the width of the page.
        let said = ran.err.split_whitespace().collect::<Vec<_>>().join(" ");
        for says in *says {
            assert!(said.contains(says), "{sentence}: `{says}` is not in:\n{}", ran.err);
        }
        assert_eq!(bench.kept(), before, "{sentence}");
    }
}

#[test]
fn a_field_that_is_missing_is_asked_for_on_a_terminal() {
    let bench = Bench::with_spring();
    let ran = bench.on_a_terminal("record supers-on W1 --supers 1", "harvest\nyes\n");
    assert_eq!(ran.code, Some(0), "{}", ran.out);
    ran.says(&["Purpose (", "Record this?", "recorded as entry 140"]);
}

#[test]
fn no_as_an_answer_records_nothing() {
    let bench = Bench::with_spring();
    let before = bench.kept();
    let ran = bench.on_a_terminal("record supers-on W1 --supers 1 --purpose harvest", "no\n");
    assert_eq!(ran.code, Some(5), "{}", ran.out);
    assert_eq!(bench.kept(), before);
}

#[test]
fn a_terminal_that_closes_in_the_middle_of_the_questions_records_nothing() {
    let bench = Bench::with_spring();
    let before = bench.kept();
    for typed in ["", "harvest\n"] {
        let ran = bench.on_a_terminal("record supers-on W1 --supers 1", typed);
        assert_eq!(ran.code, Some(1), "{}", ran.out);
        ran.says(&["the terminal was closed before all was answered"]);
        assert_eq!(bench.kept(), before);
    }
}

#[test]
fn days_are_named_as_people_name_them() {
    let bench = Bench::with_spring();
    for day in ["today", "yesterday", "monday", "Fri", "2026-04-06"] {
        bench.run(&["record", "inspection", "Q1", "--on", day, "-y"]).done();
    }
    bench
        .type_in("record inspection Q1 --on 2026-04-07 --at 09:30 -y")
        .done()
        .says(&["2026-04-07 (Tuesday)"]);
}

#[test]
fn the_colonies_of_a_range_that_are_not_there_are_named() {
    let bench = Bench::with_spring();
    bench.type_in("record ended W7 --cause sold --on 2026-05-02 -y").done();
    let ran = bench.type_in("record inspection W6-W9 --on 2026-05-03 -y").done();
    ran.says(&["W6, W8, W9 (3)", "W7 is left out: it ended on 2026-05-02", "recorded as entries 141 to 143"]);
}

#[test]
fn a_correction_takes_the_number_and_only_what_changes() {
    let bench = Bench::with_spring();
    bench.type_in("record correction 139 --set to=2026-09-09 --reason typo -y").done().says(&["2026-09-09"]);
    bench.type_in("record strike-out 138 --reason twice -y").done().says(&["entry 138 did not happen"]);
    let last: Vec<Value> = bench
        .run(&["export"])
        .done()
        .out
        .lines()
        .skip(140)
        .map(|line| serde_json::from_str(line).unwrap())
        .collect();
    assert_eq!(last[0]["body"]["to"], "2026-09-09");
    assert_eq!(last[0]["body"]["forage"], "ling");
    assert_eq!((&last[0]["reason"], &last[1]["kind"]), (&"typo".into(), &"strike_out".into()));
    // An empty value takes the field out.
    bench.type_in("record correction 140 --set to= --reason unknown -y").done();
}

#[test]
fn a_further_dose_goes_on_with_the_course_that_is_in() {
    let bench = Bench::with_spring();
    bench.type_in("record given F1-F15 --lot P1 --each 1 --continues yes --on 2026-03-20 -y").done();
    let export = bench.run(&["export"]).done().out;
    let rows: Vec<Value> = export.lines().skip(1).map(|line| serde_json::from_str(line).unwrap()).collect();
    let first = rows.iter().find(|row| row["body"]["given"][0]["colonies"][0] == "F1").unwrap();
    assert_eq!(rows.last().unwrap()["body"]["continues"], first["id"]);
}

#[test]
fn temperatures_are_written_day_by_day() {
    let bench = Bench::with_spring();
    bench
        .type_in("record temperatures Fen --stage forecast --days \"2026-05-06 8 17; 2026-05-07 9,5 19\" -y")
        .done();
    let export = bench.run(&["export"]).done().out;
    let last: Value = serde_json::from_str(export.lines().last().unwrap()).unwrap();
    assert_eq!(last["body"]["days"][1]["min_c"], 9.5);
}

#[test]
fn the_leaflet_of_a_lot_is_read_question_by_question_with_the_built_in_value_beside_each() {
    let bench = Bench::with_spring();
    // Each answer in the order of the questions; a bare yes to a question without a built-in value is asked again.
    let terms = "yes\nyes\n0\nyes\nnothing\n14\nyes\nyes\nyes\nyes\nyes\n";
    let others = "yes\n".repeat(10);
    let ran = bench.on_a_terminal("record leaflet P1 --on 2026-04-26", &format!("{terms}{others}"));
    assert_eq!(ran.code, Some(0), "{}", ran.out);
    ran.says(&[
        "Built in: amitraz",
        "built in off. Does the pack say the same?",
        "still not known: days before a flow",
    ]);
    let export = bench.run(&["export"]).done().out;
    let last: Value = serde_json::from_str(export.lines().last().unwrap()).unwrap();
    let terms = &last["body"]["terms"];
    assert_eq!((&terms["supers_during"], &terms["wait_after_removal_days"]), (&"off".into(), &14.into()));
    assert_eq!((&terms["withdrawal_days"], terms.get("flow_before_days")), (&0.into(), None));
    assert!(!last["body"]["confirms"].as_array().unwrap().is_empty());
    // What was unknown before is answered now.
    let board = bench.run(&["supering", "Q1", "--on", "2026-05-12"]);
    assert_eq!(board.code, Some(0), "{}", board.out);
}

#[test]
fn every_example_of_a_kind_can_be_typed() {
    let bench = Bench::new();
    bench.type_in("begin north --keeper K --country gb -y").done();
    let kinds = bench.run(&["kinds"]).done().out;
    assert_eq!(
        bench.run(&["help", "kinds"]).done().out.matches("combclear record ").count(),
        kinds.matches("combclear record ").count()
    );
    let examples: Vec<String> = kinds
        .lines()
        .filter(|line| line.starts_with(' '))
        .map(|line| line.trim().to_owned())
        .fold(Vec::new(), |mut whole, line| {
            // A long example goes on in the next line.
            if line.starts_with("combclear ") {
                whole.push(line);
            } else {
                let last: &mut String = whole.last_mut().unwrap();
                last.push(' ');
                last.push_str(&line);
            }
            whole
        });
    assert!(examples.len() > 20, "{kinds}");
    for example in &examples {
        let ran =
            bench.type_in(&format!("{} --on 2026-09-01 --help", example.strip_prefix("combclear ").unwrap()));
        assert_eq!(ran.code, Some(0), "{example}: {}", ran.err);
    }
}

#[test]
fn shells_and_the_manual_know_the_commands() {
    let bench = Bench::new();
    for shell in ["bash", "zsh", "fish"] {
        bench.run(&["completions", shell]).done().says(&["supers-on", "combclear"]);
    }
    std::fs::create_dir(bench.path("man")).unwrap();
    bench.run(&["manual", "man"]).done();
    assert!(bench.read("man/combclear-supering.1").contains("supering"));
    bench.run(&["manual", "nowhere"]).failed().says(&["name a folder that exists"]);
}

#[test]
fn a_ban_before_a_flow_without_days_is_said_and_stays_when_the_pack_gives_no_days() {
    let bench = Bench::new();
    bench.type_in_all([
        "begin north --keeper K --country gb --on 2026-01-02 -y",
        "record apiary Hill --on 2026-01-02 -y",
        "record colony T1 --apiary Hill --medicines none --on 2026-01-02 -y",
        "record medicine wafers --pack-name Wafers --unit wafer --leaflet thymol-wafer-15g --on 2026-01-02 -y",
        "record lot W1 --medicine wafers --quantity 4 --on 2026-01-02 -y",
    ]);
    // Yes to each value that is built in; nothing where none is, and to the ban.
    let ran = bench.on_a_terminal("record leaflet W1 --on 2026-01-03", &"nothing\nyes\n".repeat(30));
    let said = ran.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said.contains("built in not allowed right before a flow, without a number of days"), "{said}");
    assert!(!said.contains("Days before a flow (days before"), "{said}");
    let export = bench.run(&["export"]).done().out;
    let last: Value = serde_json::from_str(export.lines().last().unwrap()).unwrap();
    assert_eq!(last["kind"], "leaflet_reading", "{}", ran.out);
    assert_eq!(last["body"]["terms"].get("flow_before_days"), None);
    bench.type_in("record given T1 --each 2 --on 2026-08-01 -y").done();
    bench.type_in("record taken-out T1 --on 2026-09-20 -y").done();
    // No flow is on record since, so the ban leaves the answer open, whatever else was read.
    let asked = bench.run(&["supering", "T1", "--full", "--on", "2026-10-20"]);
    assert_ne!(asked.code, Some(0), "{}", asked.out);
    assert!(asked.out.contains("nectar flow"), "{}", asked.out);
}

#[test]
fn the_board_names_no_day_on_which_another_medicine_still_bars_supers() {
    let bench = Bench::new();
    bench.type_in_all([
        "begin north --keeper K --country gb --on 2026-01-02 -y",
        "record apiary Hill --on 2026-01-02 -y",
        "record colony T1 T2 --apiary Hill --medicines none --on 2026-01-02 -y",
        "record medicine short --pack-name Short --unit g --supers-during off --withdrawal-days 10 --removal nothing_stays --on 2026-01-02 -y",
        "record medicine long --pack-name Long --unit g --supers-during off --withdrawal-days 30 --removal nothing_stays --on 2026-01-02 -y",
        "record lot S --medicine short --quantity 40 --on 2026-01-02 -y",
        "record lot L --medicine long --quantity 40 --on 2026-01-02 -y",
        "record given T1 --lot S --each 2 --withdrawal-days 10 --on 2026-03-01 -y",
        "record given T1 --lot L --each 2 --withdrawal-days 30 --on 2026-03-01 -y",
        "record given T2 --lot S --each 2 --withdrawal-days 10 --on 2026-03-01 -y",
    ]);
    let board = bench.run(&["supering", "--on", "2026-03-05"]).done().out;
    let said: Vec<&str> = board.lines().map(str::trim).collect();
    let after = |colony: &str| {
        let at = said.iter().position(|line| line.starts_with(&format!("{colony} at Hill:")));
        let at = at.unwrap_or_else(|| panic!("{board}"));
        said[at..].iter().find(|line| line.starts_with("next: ")).unwrap().to_string()
    };
    assert_eq!(after("T2"), "next: supers may go on from 2026-03-12");
    assert_eq!(after("T1"), "next: supers may go on from 2026-04-01");
}

/// The one thing that turns the answer of both colonies into an unknown is said before it is recorded.
#[test]
fn a_split_that_does_not_say_where_the_strips_went_is_told_so_before_it_is_recorded() {
    let bench = Bench::new();
    bench.type_in_all([
        "begin north --keeper K --country gb --on 2026-01-02 -y",
        "record apiary Hill --on 2026-01-02 -y",
        "record colony T1 T2 T5 --apiary Hill --medicines none --on 2026-01-02 -y",
        "record medicine strips --pack-name Strips --unit strip --leaflet amitraz-strip-500mg-a --on 2026-01-02 -y",
        "record lot L1 --medicine strips --quantity 40 --on 2026-01-02 -y",
        "record given T1 --each 2 --on 2026-03-01 -y",
    ]);
    let told = |command: &str| {
        let out = bench.type_in(command).done().out.split_whitespace().collect::<Vec<_>>().join(" ");
        out.contains("it is not said where that went") && out.contains("say it with --strips")
    };
    // Nothing was in T2; the day before the strips went into T1, nothing was in that either.
    assert!(!told("record split T2 --into T3 --on 2026-03-02 -y"));
    assert!(!told("record split T1 --into T4 --on 2026-02-28 -y"));
    assert!(!told("record split T1 --into T6 --strips stayed --on 2026-03-02 -y"));
    assert!(told("record split T1 --into T7 --on 2026-03-02 -y"));
    assert!(!told("record united T5 --into T2 --on 2026-03-03 -y"));
    assert!(told("record united T1 --into T2 --on 2026-03-03 -y"));
}

/// A paper register is taken over: late is what was late there, and the paper is named.
#[test]
fn an_entry_copied_from_paper_says_so_before_and_after_it_is_recorded_and_is_not_late() {
    let bench = Bench::new();
    bench.type_in_all([
        "begin north --keeper K --country gb --on 2025-01-02 -y",
        "record apiary Hill --on 2025-01-02 -y",
        "record colony T1 T2 --apiary Hill --medicines none --on 2025-01-02 -y",
        "record medicine strips --pack-name Strips --unit strip --leaflet amitraz-strip-500mg-a --on 2025-01-02 -y",
        "record lot L1 --medicine strips --quantity 40 --on 2025-01-02 -y",
    ]);
    let given =
        "record given T1 --each 2 --withdrawal-days 0 --on 2025-03-01 -y --copied-from \"red notebook\"";
    let refused = |command: &str, says: &str| {
        let ran = bench.type_in(command);
        let said = ran.err.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(ran.code == Some(1) && said.contains(says), "{command}: {}{}", ran.out, ran.err);
    };
    // When it was written there is never taken for granted.
    refused(given, "written-on: Written there must be given");
    refused("record supers-off T1 -y --written-on 2025-03-01", "copied-from: Copied from must be given");
    refused(&format!("{given} --written-on 2025-02-28"), "before it happened on 2025-03-01");
    let told = bench.type_in(&format!("{given} --written-on 2025-03-01")).done().out;
    assert!(told.contains("copied from red notebook, written there on 2025-03-01"), "{told}");
    bench
        .type_in(
            "record taken-out T1 --on 2025-05-01 --copied-from \"red notebook\" --written-on 2025-05-03 -y",
        )
        .done();
    let gaps = ["gaps", "--from", "2025-01-01", "--to", "2025-12-31", "--full"];
    let gaps = bench.run(&gaps).out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        gaps.contains("2 entries were copied from red notebook, written there from 2025-03-01 to 2025-05-03"),
        "{gaps}"
    );
    let gaps = bench.run(&["gaps", "--from", "2025-01-01", "--to", "2025-12-31", "--json"]).json();
    let [copied] = gaps["copied"].as_array().unwrap().as_slice() else { panic!("{}", gaps["copied"]) };
    let of = ["what", "entries", "first", "last"].map(|field| copied[field].clone());
    assert_eq!(of, [json!("red notebook"), json!(2), json!("2025-03-01"), json!("2025-05-03")]);
    assert_eq!(copied["entered_first"], copied["entered_last"], "both were typed in today");
    let page = bench.run(&["register", "--from", "2025-01-01", "--to", "2025-12-31"]).done().out;
    assert!(page.contains("[1] red notebook: 2 entries, written there from 2025-03-01 to"), "{page}");
    assert!(page.contains("copied from [1], written there on 2025-03-01"), "{page}");
    // A correction keeps it, and the day there may be corrected too.
    let number =
        told.lines().find_map(|line| line.rsplit_once("entry ")).unwrap().1.trim_end_matches('.').to_owned();
    let correction =
        format!("record correction {number} --set each=1 --reason \"one strip\" --written-on 2025-03-02 -y");
    let told = bench.type_in(&correction).done().out;
    assert!(told.contains("copied from red notebook, written there on 2025-03-02"), "{told}");
    let last = || -> Value {
        let export = bench.run(&["export"]).done().out;
        serde_json::from_str(export.lines().last().unwrap()).unwrap()
    };
    let said = last();
    assert_eq!((&said["copied_from"], &said["written_on"]), (&json!("red notebook"), &json!("2025-03-02")));
    // What was struck out on paper is so here too, and what was struck out here only does not say that it was.
    let removal = number.parse::<u32>().unwrap() + 1;
    let strike_out =
        format!("record strike-out {removal} --reason \"still in\" --copied-from \"red notebook\"");
    refused(&format!("{strike_out} -y"), "written-on: Written there must be given");
    let told = bench.type_in(&format!("{strike_out} --written-on 2025-05-03 -y")).done().out;
    assert!(told.contains("copied from red notebook, written there on 2025-05-03"), "{told}");
    assert_eq!(last()["written_on"], "2025-05-03");
}

#[test]
fn a_leaflet_of_which_nothing_is_said_is_not_recorded_as_read() {
    let bench = Bench::new();
    bench.type_in_all([
        "begin north --keeper K --country gb --on 2026-01-02 -y",
        "record medicine strips --pack-name Strips --unit strip --leaflet amitraz-strip-500mg-a --on 2026-01-02 -y",
        "record lot L1 --medicine strips --quantity 40 --on 2026-01-02 -y",
    ]);
    let refused = bench.type_in("record leaflet L1 --on 2026-01-03 -y");
    refused.failed().says(&["nothing that the leaflet says was given", "such as --withdrawal-days 0"]);
    bench.type_in("record leaflet L1 --withdrawal-days 0 --on 2026-01-03 -y").done();
}

/// Two people, or one twice: the same dose is not recorded again without a word.
#[test]
fn the_same_dose_on_one_day_asks_back() {
    let bench = Bench::with_spring();
    let typed = |more: &str| {
        bench.type_in(&format!("record given Q2 Q3 --lot P1 --each 2 --withdrawal-days 0 -y {more}"))
    };
    typed("--on 2026-06-01").done();
    let refused = typed("--on 2026-06-01");
    refused.failed().says(&[
        "entry 140 records a dose of the same lot for Q2, Q3 (2) on the same day",
        "say --again, or --at with the time of day",
    ]);
    typed("--on 2026-06-02").done();
    typed("--on 2026-06-01 --again").done().says(&["entry 140 records a dose of the same lot for Q2, Q3"]);
    let gaps = bench.type_in("gaps --as-of 2026-06-03 --json").json();
    let twice = |gap: &&Value| gap["missing"] == "same_dose_twice";
    assert_eq!(gaps["gaps"].as_array().unwrap().iter().filter(twice).count(), 1);
}
