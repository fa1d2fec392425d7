//! Export and re-import, byte for byte.

use crate::bench::{Bench, DEMO, DEMO_ENTRIES, demo_up_to, inspection, mine};

/// The head that the demo's own script computed.
fn demo_head() -> String {
    let demo = std::fs::read_to_string(DEMO).unwrap();
    let header: serde_json::Value = serde_json::from_str(demo.lines().next().unwrap()).unwrap();
    header["head"].as_str().unwrap().to_owned()
}

#[test]
fn the_demo_goes_through_two_databases_and_stays_the_same_to_the_byte() {
    let bench = Bench::new();
    let said = format!(
        "demo: {DEMO_ENTRIES} entries added, with 11 documents; the journal has {DEMO_ENTRIES} entries, head {}",
        demo_head()
    );
    bench.run(&["--db", "sqlite:one.db", "import", DEMO]).done().says_only(&said);
    bench.run(&["--db", "sqlite:one.db", "export", "one.jsonl"]).done();
    bench.run(&["--db", "sqlite:two.db", "import", "one.jsonl"]).done().says_only(&said);
    bench.run(&["--db", "sqlite:two.db", "export", "two.jsonl"]).done();
    assert_eq!(bench.read("one.jsonl"), std::fs::read_to_string(DEMO).unwrap());
    assert_eq!(bench.read("two.jsonl"), bench.read("one.jsonl"));
    for db in ["sqlite:one.db", "sqlite:two.db"] {
        let sound = bench.run(&["--db", db, "verify", "--json"]).done().json();
        assert_eq!(sound["head"], demo_head().as_str());
    }
}

#[test]
fn drafts_keep_their_seals_on_the_way_through_another_database() {
    let bench = Bench::with_mine();
    bench.write("more.jsonl", mine(&[&inspection(3, "2026-03-02", "A1")]));
    bench.run(&["import", "more.jsonl"]).done();
    bench.run(&["export", "one.jsonl"]).done();
    bench.run(&["--db", "sqlite:two.db", "import", "one.jsonl"]).done();
    bench.run(&["--db", "sqlite:two.db", "export", "two.jsonl"]).done();
    assert_eq!(bench.read("two.jsonl"), bench.read("one.jsonl"));
}

/// What an entry was copied from is kept on the way from drafts to an export and from there to another database.
#[test]
fn what_was_copied_from_a_paper_register_goes_through_an_export_and_its_seals_hold() {
    let bench = Bench::with_mine();
    let copied = inspection(3, "2026-03-02", "A1").replacen(
        '{',
        r#"{"copied_from":"red notebook; \"2026\"","written_on":"2026-03-03","#,
        1,
    );
    bench.write("more.jsonl", mine(&[&copied, &inspection(4, "2026-03-03", "A1")]));
    bench.run(&["import", "more.jsonl"]).done();
    bench.run(&["import", "more.jsonl"]).done().says(&["0 entries added"]);
    bench.run(&["export", "one.jsonl"]).done();
    let kept = bench.read("one.jsonl");
    assert_eq!(kept.matches("copied_from").count(), 1, "{kept}");
    bench.run(&["--db", "sqlite:two.db", "import", "one.jsonl"]).done();
    assert_eq!(bench.run(&["--db", "sqlite:two.db", "export"]).done().out, kept);
    bench.run(&["--db", "sqlite:two.db", "verify"]).done();
    // Without it, or with another day, the entry no longer fits its hash.
    for changed in [
        kept.replace(r#""written_on":"2026-03-03""#, r#""written_on":"2026-03-04""#),
        kept.replace(r#""copied_from":"red notebook; \"2026\"","written_on":"2026-03-03","#, ""),
    ] {
        assert_ne!(changed, kept);
        bench.write("changed.jsonl", changed);
        let ran = bench.run(&["--db", "sqlite:three.db", "import", "changed.jsonl"]);
        assert!(ran.code == Some(1) && ran.err.contains("hash"), "{}{}", ran.out, ran.err);
    }
}

#[test]
fn an_export_comes_in_by_standard_input_too() {
    let bench = Bench::new();
    let demo = std::fs::read_to_string(DEMO).unwrap();
    bench.run_with_input(&["import", "-"], &demo).done();
    assert_eq!(bench.run(&["export"]).done().out, demo);
}

#[test]
fn two_holdings_share_a_database_without_touching_each_other() {
    let bench = Bench::with_demo();
    bench.write("mine.jsonl", mine(&[]));
    bench.run(&["import", "--begin", "mine.jsonl"]).done();
    let demo = bench.run(&["export", "--holding", "demo"]).done().out;
    assert_eq!(demo, std::fs::read_to_string(DEMO).unwrap());
    let mine = bench.run(&["export", "--holding", "mine"]).done().out;
    assert_eq!(mine.lines().count(), 3, "{mine}");
}

#[test]
fn an_export_taken_early_and_one_taken_late_tell_the_same_set() {
    let bench = Bench::new();
    bench.write("early.jsonl", demo_up_to(100));
    bench.run(&["import", "early.jsonl"]).done();
    assert_eq!(bench.run(&["export"]).done().out, bench.read("early.jsonl"));
    bench.run(&["import", DEMO]).done().says(&["356 entries added, 100 were already there"]);
    assert_eq!(bench.run(&["export"]).done().out, std::fs::read_to_string(DEMO).unwrap());
}
