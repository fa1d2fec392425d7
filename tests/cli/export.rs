//! `combclear export`: to a new file or to standard output.

use std::io::Read;
use std::process::{Command, Stdio};

use crate::bench::{Bench, DEMO};

#[test]
fn a_file_that_is_there_is_left_alone() {
    let bench = Bench::with_demo();
    bench.write("diary.txt", "dear diary");
    bench.run(&["export", "diary.txt"]).failed_with(
        "`diary.txt` already exists; it was left as it is",
        "name a file that does not exist yet",
    );
    assert_eq!(bench.read("diary.txt"), "dear diary");
}

#[test]
fn a_file_that_cannot_be_made_is_named_with_what_stands_in_the_way() {
    let bench = Bench::with_demo();
    bench.write("diary.txt", "dear diary");
    let help = "name a file in an existing folder that can be written to";
    bench
        .run(&["export", "nowhere/copy.jsonl"])
        .failed_with("cannot create `nowhere/copy.jsonl`: there is no such file or folder", help);
    bench
        .run(&["export", "diary.txt/copy.jsonl"])
        .failed_with("cannot create `diary.txt/copy.jsonl`: a part of its path is not a folder", help);
    assert!(!bench.path("nowhere").exists());
}

#[test]
fn a_refused_export_makes_no_file() {
    let bench = Bench::with_mine();
    bench.run(&["export", "copy.jsonl", "--holding", "mime"]).failed();
    assert!(!bench.path("copy.jsonl").exists());
}

#[test]
fn standard_output_gets_the_same_bytes_as_a_file() {
    let bench = Bench::with_demo();
    assert_eq!(bench.run(&["export", "copy.jsonl"]).done().out, "");
    assert_eq!(bench.run(&["export"]).done().out, bench.read("copy.jsonl"));
}

#[test]
fn a_reader_that_goes_away_is_no_failure() {
    assert!(std::fs::metadata(DEMO).unwrap().len() > 100_000, "it would fit into a pipe");
    let begins = first_bytes_of(Bench::with_demo().command(&["export"]));
    assert_eq!(&begins, br#"{"combclear_jour"#);
}

/// Reads the first bytes of a command's output, then closes the pipe. The command must not fail.
pub(crate) fn first_bytes_of(mut command: Command) -> [u8; 16] {
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    let mut out = child.stdout.take().unwrap();
    let mut first = [0; 16];
    out.read_exact(&mut first).unwrap();
    drop(out);
    let output = child.wait_with_output().unwrap();
    assert_eq!((output.status.code(), String::from_utf8(output.stderr).unwrap().as_str()), (Some(0), ""));
    first
}

/// A device that is always full.
#[cfg(target_os = "linux")]
pub(crate) fn full() -> std::fs::File {
    std::fs::File::options().write(true).open("/dev/full").unwrap()
}

#[cfg(target_os = "linux")]
#[test]
fn standard_output_that_is_full_is_a_failure_that_says_so() {
    let bench = Bench::with_demo();
    let output = bench.command(&["export"]).stdout(full()).output().unwrap();
    crate::bench::ran(output).failed_with(
        "cannot write the export to standard output: there is no space left on the disk",
        "check the destination, then export again",
    );
}

#[cfg(unix)]
#[test]
fn an_export_that_cannot_be_finished_leaves_no_half_of_it() {
    let bench = Bench::with_demo();
    // Enough for SQLite's files beside the database, too little for the export.
    let ran = crate::databases::with_files_up_to(100, &bench, &["export", "copy.jsonl"]).failed();
    assert!(ran.err.starts_with("error: cannot write the export to `copy.jsonl`: "), "{}", ran.err);
    assert!(!bench.path("copy.jsonl").exists());
    bench.run(&["export", "copy.jsonl"]).done();
    assert_eq!(bench.read("copy.jsonl"), std::fs::read_to_string(DEMO).unwrap());
}
