//! A journal in PostgreSQL gives the same answers, and goes from there to a file and back as it is.

use combclear_testkit::postgres::shared;

use crate::bench::{Bench, DEMO, DEMO_DAY};

#[cfg_attr(not(postgres), ignore = "PostgreSQL 15 or later is not on this machine")]
#[test]
fn the_demo_gives_the_same_answers_on_both_databases() {
    let (file, server) = (Bench::with_demo(), Bench::on(shared().empty()));
    server.run(&["import", DEMO]).done();
    for question in [
        &["supering", "--on", DEMO_DAY, "--full"][..],
        &["supering", "--on", DEMO_DAY, "--json"],
        &["today", "--on", DEMO_DAY],
        &["due", "--from", DEMO_DAY, "--json"],
        &["options", "M1", "--from", DEMO_DAY, "--json"],
        &["register", "--json"],
        &["gaps", "--json"],
        &["stock", "--on", DEMO_DAY],
        &["documents"],
        &["retention"],
        &["verify", "--json"],
        &["export"],
    ] {
        assert_eq!(server.run(question), file.run(question), "{question:?}");
    }
}

#[cfg_attr(not(postgres), ignore = "PostgreSQL 15 or later is not on this machine")]
#[test]
fn an_export_goes_from_file_to_server_and_back_with_the_same_head() {
    let (file, server, again) = (Bench::with_demo(), Bench::on(shared().empty()), Bench::new());
    let exported = file.run(&["export", "demo.jsonl"]);
    let exported = if exported.code == Some(0) { "demo.jsonl" } else { panic!("{}", exported.err) };
    let from_file = file.read(exported);
    server.write("demo.jsonl", &from_file);
    server.run(&["import", "demo.jsonl"]).done();
    server.run(&["export", "back.jsonl"]).done();
    assert_eq!(server.read("back.jsonl"), from_file);
    again.write("back.jsonl", &from_file);
    again.run(&["import", "back.jsonl"]).done();
    // `.ci/run` works the chains of these two out again.
    let folder = concat!(env!("CARGO_TARGET_TMPDIR"), "/exports");
    std::fs::create_dir_all(folder).unwrap();
    for (name, bench, text) in [("file", &again, None), ("server", &server, Some("back.jsonl"))] {
        let text = text.map_or_else(|| bench.run(&["export"]).done().out, |name| bench.read(name));
        std::fs::write(format!("{folder}/from_{name}.jsonl"), text).unwrap();
    }
    let head = |bench: &Bench| bench.run(&["verify"]).done().out;
    assert_eq!((head(&server), head(&again)), (head(&file), head(&file)));
    // Nothing new comes of taking it in twice.
    let twice = server.run(&["import", "demo.jsonl"]).done();
    assert!(twice.out.contains("nothing to add") || twice.out.contains("0 entries"), "{}", twice.out);
}

#[cfg_attr(not(postgres), ignore = "PostgreSQL 15 or later is not on this machine")]
#[test]
fn a_password_in_the_address_is_never_shown() {
    let address = shared().empty().replace("postgres@", "postgres:secret@");
    let bench = Bench::on(address);
    for command in [
        &["supering"][..],
        &["--help"],
        &["supering", "--help"],
        &["verify"],
        &["record", "inspection", "A1"],
    ] {
        let ran = bench.run(command);
        assert!(!format!("{}{}", ran.out, ran.err).contains("secret"), "{command:?}: {}{}", ran.out, ran.err);
    }
    assert!(bench.run(&["supering"]).err.contains("/postgres` has no journal yet"));
}
