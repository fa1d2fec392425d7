//! `combclear archive`: nothing moves without being asked, nothing moves before the file is verified, and everything can be
//! proved afterwards.

use combclear_domain::basics::words::MediaType;
use combclear_testkit::documents::sample;
use serde_json::json;

use crate::bench::{Bench, MINE, Ran, draft, id, lines};
use crate::verify::behind_its_back;

/// The lot of 2014 no longer has to be kept then: five years from 1 April 2014.
pub(crate) const THROUGH: &str = "2020-01-01";

/// A holding with a lot of 2014, used up and out, with its invoice, and one of 2025 of the same medicine.
pub(crate) fn old() -> Bench {
    old_under("gb")
}

fn old_under(jurisdiction: &str) -> Bench {
    let bench = Bench::new();
    let strips = json!({ "medicine": "strips", "pack_name": "strips", "unit": "piece",
        "terms": { "removal": "needed", "withdrawal_days": 0, "wait_after_removal_days": 0 } });
    let given = json!({ "given": [{ "lot": "L1", "each": 1, "colonies": ["A"] }], "withdrawal_days": 0 });
    let drafts = [
        draft(1, "2014-01-01", "holding_details", &json!({ "keeper": "K", "jurisdiction": jurisdiction })),
        draft(2, "2014-01-01", "apiary_details", &json!({ "apiary": "East" })),
        draft(
            3,
            "2014-01-01",
            "colony_established",
            &json!({ "colony": "A", "apiary": "East", "medicines": "none" }),
        ),
        draft(4, "2014-01-01", "medicine_described", &strips),
        draft(5, "2014-01-02", "lot_acquired", &json!({ "lot": "L1", "medicine": "strips", "quantity": 1 })),
        draft(6, "2014-02-01", "administration", &given),
        draft(7, "2014-04-01", "removal", &json!({ "administration": id(6), "colonies": ["A"] })),
        draft(8, "2025-01-02", "lot_acquired", &json!({ "lot": "L2", "medicine": "strips", "quantity": 1 })),
    ];
    bench.write("old.jsonl", lines([MINE].into_iter().chain(drafts.iter().map(String::as_str))));
    bench.run(&["import", "old.jsonl"]).done();
    bench.write("invoice.pdf", sample(MediaType::Pdf, "invoice of L1"));
    bench.run(&["attach", "invoice.pdf", "--lot", "L1", "--by", "K", "--on", "2014-01-03"]).done();
    bench.write("kept.txt", bench.run(&["verify"]).done().out);
    bench.run(&["export", "before.jsonl"]).done();
    bench
}

fn archive(bench: &Bench, more: &[&str]) -> Ran {
    bench.run(&[&["archive", "a.jsonl", "--by", "K"], more].concat())
}

trait Refused {
    fn refused(self, wanted: &[&str]) -> Ran;
}

impl Refused for Ran {
    /// Nothing was imported, for this reason.
    #[track_caller]
    fn refused(self, wanted: &[&str]) -> Ran {
        assert_eq!(self.code, Some(1), "{}", self.out);
        self.says(wanted)
    }
}

fn archived() -> Bench {
    let bench = old();
    archive(&bench, &["--through", THROUGH, "--move-for-good"]).done();
    bench
}

#[test]
fn without_the_word_it_only_says_what_would_go() {
    let bench = old();
    let before = bench.kept();
    archive(&bench, &["--through", THROUGH]).done().says(&[
        "L1     4         1           2019-04-01",
        "4 entries and 1 document would be moved into a.jsonl: places 5-7,9.",
        "NOTHING HAS BEEN MOVED YET. This cannot be undone",
        "Then use --move-for-good.",
    ]);
    assert!(!bench.files().contains(&"a.jsonl".to_owned()));
    assert_eq!(bench.kept(), before);
}

#[test]
fn where_nothing_could_go_it_says_so_and_makes_no_file() {
    let bench = old();
    archive(&bench, &["--through", "2019-04-01", "--move-for-good"])
        .done()
        .says(&["No records may be archived by 2019-04-01; no file was made."]);
    assert!(!bench.files().contains(&"a.jsonl".to_owned()));
    archive(&bench, &["--through", "2199-12-31"]).failed().says(&["2199-12-31 is after today"]);
    assert_eq!(bench.kept(), [bench.read("before.jsonl")]);
}

#[test]
fn what_moved_is_proved_by_the_file_the_journal_and_the_checkpoint_from_before() {
    let bench = old();
    archive(&bench, &["--through", THROUGH, "--move-for-good"]).done().says(&[
        "4 entries and 1 document were moved into a.jsonl: places 5-7,9.",
        "combclear journal of mine\n10\n",
    ]);
    bench.run(&["verify", "--archive", "a.jsonl", "--since-checkpoint", "kept.txt"]).done().says(&[
        "10 entries",
        "agrees with the checkpoint",
        "The archive a.jsonl is intact: 4 entries and 1 document, as recorded in entry 10 (",
    ]);
    // The file has the entries exactly as in the earlier export.
    let before = bench.read("before.jsonl");
    let in_both: Vec<String> = bench
        .read("a.jsonl")
        .lines()
        .skip(1)
        .filter(|line| before.contains(line))
        .map(ToOwned::to_owned)
        .collect();
    assert_eq!(in_both.len(), 5);
    let after = bench.run(&["export"]).done().out;
    assert_eq!(after.lines().filter(|line| line.contains(r#""body":null"#)).count(), 4);
    assert_eq!(after.lines().filter(|line| line.starts_with(r#"{"content""#)).count(), 0);
    // The earlier export is still valid, and adds nothing here.
    bench.run(&["--db", "sqlite:before.db", "import", "before.jsonl"]).done();
    bench.run(&["--db", "sqlite:before.db", "verify", "--since-checkpoint", "kept.txt"]).done();
    bench.run(&["import", "before.jsonl"]).done().says(&["0 entries added, 9 were already there"]);
    archive(&bench, &["--through", THROUGH]).done().says(&["No records may be archived"]);
}

#[test]
fn a_journal_with_an_archive_goes_through_another_database_to_the_byte() {
    let bench = archived();
    bench.run(&["export", "one.jsonl"]).done();
    bench.run(&["--db", "sqlite:two.db", "import", "one.jsonl"]).done();
    bench.run(&["--db", "sqlite:two.db", "export", "two.jsonl"]).done();
    assert_eq!(bench.read("two.jsonl"), bench.read("one.jsonl"));
    bench.run(&["--db", "sqlite:two.db", "verify", "--archive", "a.jsonl"]).done();
    // Refused over a journal that still has the bodies, or if something that is kept was changed.
    bench.run(&["--db", "sqlite:three.db", "import", "before.jsonl"]).done();
    bench
        .run(&["--db", "sqlite:three.db", "import", "one.jsonl"])
        .refused(&["entry 5 was moved into an archive, but it is still complete here"]);
    let changed = bench.read("one.jsonl").replacen(r#""on":"2014-02-01""#, r#""on":"2014-02-02""#, 1);
    bench.write("changed.jsonl", changed);
    bench
        .run(&["--db", "sqlite:four.db", "import", "changed.jsonl"])
        .refused(&["changed.jsonl:11:", "what remains of the entries 5-7,9 does not match its digest"]);
}

#[test]
fn answers_and_papers_say_what_is_in_the_archive() {
    let bench = old();
    let supering = bench.run(&["supering", "A"]).out;
    let late = bench.run(&["register", "--from", "2025-01-01", "--to", "2025-12-31"]).done().out;
    archive(&bench, &["--through", THROUGH, "--move-for-good"]).done();
    assert_eq!(bench.run(&["supering", "A"]).answered(0).out.lines().next(), supering.lines().next());
    let note = "4 entries of this period were moved out of the journal on ";
    bench
        .run(&["register", "--from", "2014-01-01", "--to", "2014-12-31"])
        .done()
        .says(&["In an archive: ", note]);
    let json = bench.run(&["register", "--from", "2014-01-01", "--to", "2014-12-31", "--json"]).done().json();
    assert_eq!(json["archived"][0]["entries"], 4);
    bench.run(&["register", "--from", "2014-01-01", "--to", "2014-12-31", "--html", "p.html"]).done();
    assert!(bench.read("p.html").contains(note));
    let again = bench.run(&["register", "--from", "2025-01-01", "--to", "2025-12-31"]).done().out;
    let without_journal = |text: &str| {
        // The hash of the journal stands on the line below.
        let (before, rest) = text.split_once("Journal: ").unwrap();
        format!("{before}{}", rest.split_once("\nDays counted by").unwrap().1)
    };
    assert_eq!(without_journal(&again), without_journal(&late));
}

const OF_2014: [&str; 4] = ["--from", "2014-01-01", "--to", "2014-12-31"];

/// A record that is partly in an archive is not called complete, in any form.
#[test]
fn with_entries_in_an_archive_nobody_says_that_the_record_is_complete() {
    let bench = old();
    let gaps = |bench: &Bench, more: &[&str]| bench.run(&[&["gaps"], OF_2014.as_slice(), more].concat());
    let note = "4 entries of this time were not checked: they were moved into an archive on ";
    let before = gaps(&bench, &["--json"]).json();
    assert_eq!((&before["complete"], &before["archived"]), (&json!("no"), &json!([])));
    archive(&bench, &["--through", THROUGH, "--move-for-good"]).done();
    gaps(&bench, &[]).answered(4).says(&[
        "it is not known whether the record is complete",
        note,
        "(entry 10)",
    ]);
    let after = gaps(&bench, &["--json"]).answered(4).json();
    assert_eq!((&after["complete"], &after["archived"][0]["entries"]), (&json!("unknown"), &json!(4)));
    // Nor where nothing of that time is left in the journal.
    bench
        .run(&["gaps", "--from", "2014-02-01", "--to", "2014-03-31"])
        .answered(4)
        .says(&["1 entry of this time was not checked"]);
    bench.run(&["gaps", "--from", "2015-01-01", "--to", "2015-12-31", "--json"]).answered(4);
    bench.run(&[&["pack", "pack.zip"], OF_2014.as_slice()].concat()).done().says(&[note]);
    let csv = bench.run(&[&["register", "--csv", "-"], OF_2014.as_slice()].concat()).done().out;
    let row = csv.lines().find(|line| line.starts_with("\"archived\"")).unwrap();
    assert!(row.contains("\"4\",\"2020-01-01\",\""), "{row}");
}

/// With the archive's file at hand, the record is whole again, and the journal is as it was.
#[test]
fn the_file_of_an_archive_is_read_back_in_for_a_question() {
    let questions: [(&[&str], bool); 5] = [
        (&["register", "--from", "2014-01-01", "--to", "2014-12-31"], true),
        (&["register", "--from", "2014-01-01", "--to", "2014-12-31", "--json"], true),
        (&["gaps", "--from", "2014-01-01", "--to", "2014-12-31", "--json"], false),
        (&["gaps", "--from", "2014-01-01", "--to", "2025-12-31"], false),
        (&["stock", "--json"], false),
    ];
    let bench = old();
    let before: Vec<String> = questions.iter().map(|(question, _)| bench.run(question).out).collect();
    bench.run(&[&["pack", "before.zip"], OF_2014.as_slice()].concat()).done();
    archive(&bench, &["--through", THROUGH, "--move-for-good"]).done();
    let kept = bench.kept();
    // The head of the journal is that of the `archived` entry; all else is as it was.
    let without_head = |text: &str| -> String {
        let of_journal = |line: &&str| {
            !["Journal: ", "  \"entries\":", "  \"head\":"].iter().any(|head| line.starts_with(head))
        };
        text.lines().filter(of_journal).filter(|line| line.trim().len() != 64).collect::<Vec<_>>().join("\n")
    };
    for ((question, has_head), before) in questions.iter().zip(before) {
        assert_ne!(bench.run(question).out, before, "{question:?}");
        let after = bench.run(&[question, ["--with-archive", "a.jsonl"].as_slice()].concat()).out;
        if *has_head {
            assert_eq!(without_head(&after), without_head(&before), "{question:?}");
        } else {
            assert_eq!(after, before, "{question:?}");
        }
    }
    bench
        .run(&[&["pack", "after.zip", "--with-archive", "a.jsonl"], OF_2014.as_slice()].concat())
        .done()
        .says(&["1 administration,", "1 document"]);
    let pack = std::fs::read(bench.path("after.zip")).unwrap();
    assert!(pack.windows(22).any(|name| name == b"proofs/001-invoice.pdf"));
    assert_eq!(bench.kept(), kept);
    // Another file says nothing.
    bench.write("changed.jsonl", bench.read("a.jsonl").replacen("\"each\":1", "\"each\":2", 1));
    bench
        .run(&["gaps", "--with-archive", "changed.jsonl"])
        .failed()
        .says(&["`changed.jsonl` FAILS VERIFICATION: line 3: entry 6 does not match its hash"]);
    bench.run(&["stock", "--with-archive", "no.jsonl"]).failed().says(&["cannot read `no.jsonl`"]);
    bench.run(&["--db", "sqlite:before.db", "import", "before.jsonl"]).done();
    bench
        .run(&["--db", "sqlite:before.db", "stock", "--with-archive", "a.jsonl"])
        .failed()
        .says(&["no entry in the journal of mine records it"]);
}

/// A law that was not read in its own text releases nothing by itself; who answers for it says where it was looked up.
#[test]
fn what_only_a_law_known_second_hand_releases_stays_unless_the_keeper_says_where_it_was_looked_up() {
    let bench = old_under("us");
    let second_hand = "the law of `us` on this is known here only second hand";
    archive(&bench, &["--through", THROUGH, "--move-for-good"]).done().says(&[
        "L1",
        second_hand,
        "No records may be archived by 2020-01-01",
    ]);
    assert!(!bench.files().contains(&"a.jsonl".to_owned()));
    bench.run(&["retention", "--on", THROUGH, "--full"]).says(&[second_hand]);
    archive(
        &bench,
        &["--through", THROUGH, "--move-for-good", "--law-checked", "official gazette, 2026-11-29"],
    )
    .done()
    .says(&["4 entries and 1 document were moved"]);
    let journal = bench.run(&["export"]).done().out;
    assert!(journal.lines().last().unwrap().contains(r#""law_checked":"official gazette, 2026-11-29""#));
    bench.run(&["verify", "--archive", "a.jsonl"]).done();
}

#[test]
fn a_file_that_is_there_is_left_and_nothing_moves() {
    let bench = old();
    bench.write("a.jsonl", "something else");
    archive(&bench, &["--through", THROUGH, "--move-for-good"]).failed().says(&["`a.jsonl` already exists"]);
    assert_eq!(bench.read("a.jsonl"), "something else");
    bench.run(&["archive", "no/a.jsonl", "--by", "K", "--through", THROUGH, "--move-for-good"]).failed();
    assert_eq!(bench.kept(), [bench.read("before.jsonl")]);
}

#[test]
fn what_cannot_be_taken_out_of_the_journal_leaves_no_file() {
    let bench = old();
    // The tables refuse the last step, after the file was written: they say that the entries were moved before.
    let moved = "insert into moved select holding, seq, (select id from entries limit 1) from entries";
    behind_its_back(&bench, "combclear.db", &[moved]);
    let refused = archive(&bench, &["--through", THROUGH, "--move-for-good"]).failed();
    refused.says(&["what was moved into an archive stays there"]);
    assert!(!bench.files().contains(&"a.jsonl".to_owned()));
    assert_eq!(bench.kept(), [bench.read("before.jsonl")]);
    behind_its_back(&bench, "combclear.db", &["drop trigger moved_are_not_deleted", "delete from moved"]);
    archive(&bench, &["--through", THROUGH, "--move-for-good"]).done();
}

#[test]
fn a_journal_or_a_document_that_does_not_hold_is_not_moved() {
    for (change, said) in [
        (
            "update entries set recorded_by = 'B' where seq = 6",
            "the journal of `mine` was changed at entry 6",
        ),
        ("update contents set bytes = x'00'", "nothing was moved"),
        ("delete from contents", "nothing was moved"),
    ] {
        let bench = old();
        let drop = |table: &str, what: &str| format!("drop trigger {table}_are_not_{what}");
        let triggers = [drop("entries", "updated"), drop("contents", "updated"), drop("contents", "deleted")];
        let mut statements: Vec<&str> = triggers.iter().map(String::as_str).collect();
        statements.push(change);
        behind_its_back(&bench, "combclear.db", &statements);
        archive(&bench, &["--through", THROUGH, "--move-for-good"]).failed().says(&[said]);
        assert!(!bench.files().contains(&"a.jsonl".to_owned()), "{change}");
    }
}

#[test]
fn any_change_of_the_file_is_named() {
    let bench = archived();
    let good = bench.read("a.jsonl");
    let without_last: Vec<&str> = good.lines().take(good.lines().count() - 1).collect();
    for (name, changed, said) in [
        ("a value", good.replacen("\"each\":1", "\"each\":2", 1), "line 3: entry 6 does not match its hash"),
        ("a document", good.replacen("JVBERi0", "JVBERi1", 1), "line 6: /content:"),
        ("the header", good.replacen("\\n9\\n", "\\n8\\n", 1), "records these entries in another file"),
        (
            "a line too few",
            lines(without_last.iter().copied()),
            "4 entries and 1 documents are announced, 4 and 0 are here",
        ),
        (
            "a line too many",
            format!("{good}{}\n", good.lines().last().unwrap()),
            "line 7: no entry in the file attaches",
        ),
        ("cut off", good.strip_suffix("\"}\n").unwrap().to_owned(), "it ends in the middle of a line"),
        ("empty", String::new(), "line 1: "),
        (
            "two entries exchanged",
            {
                let mut rows: Vec<&str> = good.lines().collect();
                rows.swap(1, 2);
                lines(rows)
            },
            "line 3: entry 5 is out of order",
        ),
    ] {
        assert_ne!(changed, good, "{name}");
        bench.write("changed.jsonl", changed);
        bench
            .run(&["verify", "--archive", "changed.jsonl"])
            .answered(3)
            .says(&["The archive `changed.jsonl` FAILS VERIFICATION: ", said]);
    }
    // Any single byte, because of the hash of the file.
    for at in (0..good.len()).step_by(37) {
        let mut bytes = good.clone().into_bytes();
        bytes[at] ^= 1;
        bench.write("changed.jsonl", bytes);
        // With another holding's name it belongs to another holding, which is an error.
        let ran = bench.run(&["verify", "--archive", "changed.jsonl"]);
        assert!(matches!(ran.code, Some(1 | 3)), "{at}: {ran:?}");
    }
    // Another journal has no such archive.
    bench.run(&["--db", "sqlite:before.db", "import", "before.jsonl"]).done();
    bench
        .run(&["--db", "sqlite:before.db", "verify", "--archive", "a.jsonl"])
        .answered(3)
        .says(&["no entry in the journal"]);
}

#[test]
fn for_programs_the_plan_and_what_was_done() {
    let bench = old();
    let plan = archive(&bench, &["--through", THROUGH, "--json"]).done().json();
    assert_eq!((&plan["plan"]["places"], &plan["moved"]), (&json!("5-7,9"), &json!(null)));
    let done = archive(&bench, &["--through", THROUGH, "--json", "--move-for-good"]).done().json();
    assert_eq!(done["plan"], plan["plan"]);
    let kept = bench.run(&["verify", "--archive", "a.jsonl", "--json"]).done().json();
    assert_eq!(kept["archive"], done["moved"]["entry"]);
}

/// The strips came out on 1 April 2014, and what could bar supers after that takes 1,200 days at most: from 15 July 2017 on nothing
/// in the archive can. Days before are not known without it, never free.
#[test]
fn a_day_on_which_a_course_in_an_archive_may_bar_supers_is_not_known_without_that_archive() {
    let before = old();
    let bench = archived();
    let ask = |bench: &Bench, on: &str, more: &[&str]| {
        bench.run(&[&["supering", "A", "--on", on], more].concat()).code
    };
    let (yes, not_known) = (Some(0), Some(4));
    for (on, whole, without) in [
        ("2014-01-15", yes, not_known),
        // The label of these strips was not read.
        ("2014-02-10", not_known, not_known),
        ("2014-04-02", yes, not_known),
        ("2017-07-13", yes, not_known),
        ("2017-07-14", yes, not_known),
        ("2017-07-15", yes, yes),
        ("2020-01-02", yes, yes),
    ] {
        assert_eq!(ask(&before, on, &[]), whole, "{on}");
        assert_eq!(ask(&bench, on, &[]), without, "{on}");
        assert_eq!(ask(&bench, on, &["--with-archive", "a.jsonl"]), whole, "{on}");
    }
    let told = bench.run(&["supering", "A", "--on", "2014-02-10"]);
    let told =
        told.says(&["records that may bar supers up to 2017-07-14 are in an archive: ask with that archive"]);
    bench.run(&["supering", "--on", "2014-02-10"]).done().says(&["up to 2017-07-14"]);
    assert!(!told.out.contains("last blocked day: 2017"), "{}", told.out);
    let later = bench.run(&["supering", "A", "--on", "2020-01-02"]).done();
    let since = "what is in an archive bars no supers from 2017-07-15 on, and no other medicine is on record";
    later.says(&[since, "last blocked day: none on record"]);
    let options = bench.run(&["options", "A", "--from", "2014-02-10", "--full"]);
    options.says(&["records that may bar supers up to 2017-07-14 are in an archive"]);
}
