//! `combclear verify`: a journal that was changed behind the program's back, and checkpoints kept elsewhere.

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::lines::Header;
use combclear_domain::journal::{Draft, Entry};
use serde_json::json;
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{AssertSqlSafe, ConnectOptions, Connection};

use crate::bench::{Bench, DEMO, DEMO_ENTRIES, demo_up_to, draft, lines};

/// Runs statements on the database of a bench, as another program would. The triggers that they take away are put back, or the
/// database would not be trusted whatever else was changed.
pub(crate) fn behind_its_back(bench: &Bench, database: &str, statements: &[&str]) {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    runtime.block_on(async {
        let mut raw = SqliteConnectOptions::new().filename(bench.path(database)).connect().await.unwrap();
        let triggers: Vec<(String, String)> =
            sqlx::query_as("select name, sql from sqlite_schema where type = 'trigger'")
                .fetch_all(&mut raw)
                .await
                .unwrap();
        for sql in statements {
            sqlx::query(AssertSqlSafe((*sql).to_owned())).execute(&mut raw).await.unwrap();
        }
        for (name, sql) in triggers {
            let there: i64 = sqlx::query_scalar("select count(*) from sqlite_schema where name = $1")
                .bind(&name)
                .fetch_one(&mut raw)
                .await
                .unwrap();
            if there == 0 {
                sqlx::query(AssertSqlSafe(sql)).execute(&mut raw).await.unwrap();
            }
        }
        raw.close().await.unwrap();
    });
}

/// The three lines at the end of the output for a sound journal.
fn checkpoint_of(bench: &Bench) -> String {
    let said = bench.run(&["verify"]).done().out;
    lines(said.lines().skip(2))
}

/// A journal whose entries were recorded at these times, as an export.
fn recorded_at(times: &[&str]) -> String {
    let holding: HoldingName = "mine".parse().unwrap();
    let mut tip = None;
    let mut entries = Vec::new();
    for (number, time) in times.iter().enumerate() {
        let body = json!({"apiary": format!("East {number}")});
        let draft = Draft::from_json(&draft(number, "2026-03-01", "apiary_details", &body), None).unwrap();
        let entry = Entry::seal(&holding, draft, time.parse::<combclear_domain::Instant>().unwrap(), tip);
        tip = Some(entry.tip());
        entries.push(entry.to_json());
    }
    let header = Header::sealed(holding, u64::try_from(entries.len()).unwrap(), tip.map(|(_, head)| head));
    lines(std::iter::once(header.to_json().as_str()).chain(entries.iter().map(String::as_str)))
}

#[test]
fn a_clock_that_was_set_back_is_seen_and_the_journal_is_intact_all_the_same() {
    // A minute is no more than a clock is corrected by unasked; a millisecond more is told.
    let cases: [(&[&str], &[u64]); 4] = [
        (&["2026-03-02T08:00:00.000Z", "2026-03-02T08:00:00.000Z", "2026-03-02T09:00:00.000Z"], &[]),
        (&["2026-03-02T08:01:00.000Z", "2026-03-02T08:00:00.000Z"], &[]),
        (&["2026-03-02T08:01:00.001Z", "2026-03-02T08:00:00.000Z"], &[2]),
        // Far ahead, then set right, then back again by a battery that is empty.
        (
            &[
                "2026-03-02T08:00:00.000Z",
                "2031-03-02T08:00:00.000Z",
                "2026-03-03T08:00:00.000Z",
                "2026-03-03T08:05:00.000Z",
                "2026-03-02T08:00:00.000Z",
            ],
            &[3, 5],
        ),
    ];
    for (times, wanted) in cases {
        let bench = Bench::new();
        bench.write("mine.jsonl", recorded_at(times));
        bench.run(&["import", "mine.jsonl"]).done();
        let report = bench.run(&["verify", "--json"]).done().json();
        let found: Vec<u64> = report["clock_set_back"]
            .as_array()
            .unwrap()
            .iter()
            .map(|one| one["seq"].as_u64().unwrap())
            .collect();
        assert_eq!((report["sound"].as_bool(), found.as_slice()), (Some(true), wanted), "{times:?}");
        let said = bench.run(&["verify"]).done().out;
        assert_eq!(said.matches("earlier time").count(), wanted.len(), "{said}");
    }
}

/// A strip that went in yesterday is not in by the clock of last month: the answer would be a wrong "yes".
#[test]
fn a_clock_behind_the_journal_is_warned_of_where_today_matters() {
    let warned = "but entry 1 was recorded on 2099-06-01T12:00:00.000Z";
    for (time, wanted) in [("2099-06-01T12:00:00.000Z", true), ("2026-03-02T12:00:00.000Z", false)] {
        let bench = Bench::new();
        bench.write("mine.jsonl", recorded_at(&[time]));
        bench.run(&["import", "mine.jsonl"]).done();
        let recorded = ["record", "apiary", "West", "--by", "me", "--yes"];
        let asked =
            ["supering", "due", "today", "stock", "retention", "gaps", "register"].map(|ask| vec![ask]);
        for command in asked.into_iter().chain([recorded.to_vec()]) {
            let ran = bench.run(&command);
            assert_eq!(ran.err.contains(warned), wanted, "{command:?}: {}", ran.err);
            assert!(!ran.out.contains("warning"), "{}", ran.out);
        }
    }
}

#[test]
fn a_sound_journal_is_called_so_and_gives_a_checkpoint_to_keep() {
    let bench = Bench::with_demo();
    let head = bench.run(&["verify", "--json"]).done().json()["head"].as_str().unwrap().to_owned();
    assert_eq!(
        bench.run(&["verify"]).done().out,
        format!(
            "The journal of demo is intact: {DEMO_ENTRIES} entries, each as it was recorded.\n\
             Keep these three lines elsewhere as a checkpoint:\n\
             combclear journal of demo\n{DEMO_ENTRIES}\n{head}\n"
        )
    );
    let report = json!({
        "holding": "demo", "sound": true, "entries": DEMO_ENTRIES, "head": head, "fault": null, "first_bad_entry": null,
        "clock_set_back": [], "documents": [], "archive": null
    });
    assert_eq!(bench.run(&["verify", "--json"]).done().json(), report);
}

#[test]
fn a_changed_body_names_the_first_bad_entry_though_later_ones_are_bad_too() {
    let bench = Bench::with_demo();
    let id = "01994999-3048-70c8-8de3-0000000000c8";
    behind_its_back(
        &bench,
        "combclear.db",
        &[
            "drop trigger entries_are_not_updated",
            "update entries set body = replace(body, ':', ': ') where seq = 200",
            "update entries set happened_on = '2026-01-01' where seq = 300",
        ],
    );
    let what = "its content does not match its hash: it was changed after it was recorded";
    bench
        .run(&["verify"])
        .answered(3)
        .says_only(&format!("The journal of demo FAILS VERIFICATION. First fault: entry 200 ({id}): {what}"));
    let report = bench.run(&["verify", "--json"]).answered(3).json();
    assert_eq!(report["sound"], false);
    assert_eq!(report["first_bad_entry"], 200);
    assert_eq!(report["head"], json!(null));
    assert_eq!(report["fault"], format!("entry 200 ({id}): {what}"));
}

/// Somebody changed the day on which strips were placed: a board, a register or a pack made from that would be false papers.
#[test]
fn nothing_is_answered_from_a_journal_that_was_changed() {
    let bench = Bench::with_demo();
    let update = "update entries set happened_on = '2020-01-01' where kind = 'administration' and seq > 350";
    behind_its_back(&bench, "combclear.db", &["drop trigger entries_are_not_updated", update]);
    for command in [
        &["supering"][..],
        &["today"],
        &["options", "M1"],
        &["due"],
        &["stock"],
        &["register"],
        &["register", "--csv", "r.csv"],
        &["gaps"],
        &["pack", "p.zip"],
        &["retention"],
        &["export", "out.jsonl"],
        &["record", "inspection", "M1", "-y"],
    ] {
        let refused = bench.run(command).failed();
        refused.says(&["the journal of `demo` was changed at entry", "nothing is answered from a journal"]);
    }
    assert!(["r.csv", "p.zip", "out.jsonl"].iter().all(|file| !bench.files().contains(&(*file).to_owned())));
    bench.run(&["verify"]).answered(3).says(&["FAILS VERIFICATION"]);
}

/// Without its triggers, a database lets anybody change entries.
#[test]
fn a_database_without_its_triggers_answers_nothing_and_says_which_are_missing() {
    let bench = Bench::with_demo();
    let copy = bench.path("copy.db");
    std::fs::copy(bench.path("combclear.db"), &copy).unwrap();
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    runtime.block_on(async {
        let mut raw = SqliteConnectOptions::new().filename(&copy).connect().await.unwrap();
        sqlx::query("drop trigger entries_are_not_updated").execute(&mut raw).await.unwrap();
        raw.close().await.unwrap();
    });
    for command in ["supering", "register", "verify"] {
        let refused = bench.run(&["--db", "sqlite:copy.db", command]).failed();
        refused.says(&["are not as this program makes them: entries_are_not_updated"]);
    }
    bench.run(&["--db", "sqlite:copy.db", "export", "out.jsonl"]).done();
    assert_eq!(bench.read("out.jsonl"), std::fs::read_to_string(DEMO).unwrap());
}

#[test]
fn an_entry_taken_out_is_missed() {
    let bench = Bench::with_demo();
    behind_its_back(
        &bench,
        "combclear.db",
        &["drop trigger entries_are_not_deleted", "delete from entries where seq = 200"],
    );
    bench.run(&["verify"]).answered(3).says(&[
        "FAILS VERIFICATION",
        "entry 201 (",
        "it comes after entry 199",
    ]);
}

#[test]
fn a_journal_that_went_on_from_its_checkpoint_agrees_with_it() {
    let bench = Bench::new();
    bench.write("early.jsonl", demo_up_to(100));
    bench.run(&["import", "early.jsonl"]).done();
    bench.write("kept.txt", checkpoint_of(&bench));
    let agrees = "each as it was recorded, and it agrees with the checkpoint.";
    bench.run(&["verify", "--since-checkpoint", "kept.txt"]).done().says(&["100 entries", agrees]);
    bench.run(&["import", DEMO]).done();
    bench.run(&["verify", "--since-checkpoint", "kept.txt"]).done().says(&["456 entries", agrees]);
}

#[test]
fn all_that_verify_printed_is_taken_as_the_checkpoint_in_it() {
    let bench = Bench::with_demo();
    bench.write("kept.txt", bench.run(&["verify"]).done().out);
    bench.run(&["verify", "--since-checkpoint", "kept.txt"]).done().says(&["agrees with the checkpoint"]);
}

#[test]
fn a_journal_that_was_cut_off_is_shorter_than_its_checkpoint() {
    let bench = Bench::with_demo();
    bench.write("kept.txt", checkpoint_of(&bench));
    behind_its_back(
        &bench,
        "combclear.db",
        &["drop trigger entries_are_not_deleted", "delete from entries where seq > 400"],
    );
    // The rest is sound in itself: only the checkpoint reveals the cut.
    bench.run(&["verify"]).done().says(&["400 entries"]);
    let missed = "the journal had 456 entries when the checkpoint was taken, and now has 400";
    bench
        .run(&["verify", "--since-checkpoint", "kept.txt"])
        .answered(3)
        .says_only(&format!("The journal of demo DOES NOT AGREE with the checkpoint: {missed}"));
    let report = bench.run(&["verify", "--since-checkpoint", "kept.txt", "--json"]).answered(3).json();
    assert_eq!((&report["sound"], &report["fault"]), (&json!(false), &json!(missed)));
}

#[test]
fn a_journal_made_anew_differs_from_its_checkpoint() {
    let bench = Bench::new();
    bench.write("early.jsonl", demo_up_to(1));
    bench.run(&["import", "early.jsonl"]).done();
    bench.write("kept.txt", checkpoint_of(&bench));
    let anew = Bench::new();
    let apiary = draft(1, "2025-03-01", "apiary_details", &json!({"apiary": "East"}));
    let header = r#"{"combclear_journal":1,"holding":"demo","sealed":false}"#;
    anew.write("anew.jsonl", lines([header, &apiary]));
    anew.run(&["import", "anew.jsonl"]).done();
    anew.write("kept.txt", bench.read("kept.txt"));
    anew.run(&["verify", "--since-checkpoint", "kept.txt"])
        .answered(3)
        .says(&["DOES NOT AGREE with the checkpoint: entry 1 had another hash"]);
}

#[test]
fn a_checkpoint_of_another_holding_is_a_wrong_file_and_not_a_broken_journal() {
    let bench = Bench::with_demo();
    let other = Bench::with_mine();
    bench.write("kept.txt", checkpoint_of(&other));
    bench.run(&["verify", "--since-checkpoint", "kept.txt"]).failed_with(
        "`kept.txt` is a checkpoint of `mine`, not of `demo`",
        "name the right file, or the holding with --holding",
    );
}

#[test]
fn a_file_that_is_no_checkpoint_is_refused_with_what_one_looks_like() {
    let bench = Bench::with_demo();
    let good = checkpoint_of(&bench);
    let kept: Vec<&str> = good.lines().collect();
    std::fs::create_dir(bench.path("folder")).unwrap();
    bench.write("garbage.txt", "dear diary\n");
    bench.write("empty.txt", "");
    bench.write("cut.txt", lines(kept[..2].iter().copied()));
    bench.write("number.txt", good.replace("456", "many"));
    bench.write("hash.txt", good.split_at(good.len() - 2).0);
    bench.write("twice.txt", format!("{good}{good}"));
    bench.write("bytes.txt", [0xff, 0xfe]);
    let looks = "this is not a checkpoint: a checkpoint has three lines, `combclear journal of <holding>`, a number, a hash";
    for (file, why) in [
        ("garbage.txt", looks),
        ("empty.txt", looks),
        ("cut.txt", looks),
        ("number.txt", looks),
        ("hash.txt", looks),
        ("twice.txt", "it holds several; keep each in a file of its own"),
        ("bytes.txt", "it is not UTF-8 text"),
        ("folder", "it is a folder"),
        ("missing.txt", "there is no such file or folder"),
    ] {
        bench.run(&["verify", "--since-checkpoint", file]).failed_with(
            &format!("cannot read the checkpoint `{file}`: {why}"),
            "give the three lines that `combclear verify` printed",
        );
    }
}
