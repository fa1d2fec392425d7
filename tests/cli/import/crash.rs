//! An import that is killed leaves either nothing or everything.

use std::fs::metadata;
use std::process::{Child, Stdio};
use std::thread::sleep;
use std::time::Instant;

use crate::bench::{Bench, inspection, mine};

/// Number of drafts imported: more than fit into one page of anything.
const DRAFTS: usize = 4000;
/// Number of kills at each kind of moment.
const KILLS: u32 = 8;
/// Number of rounds tried before one must have cut an import short.
const ROUNDS: u32 = 5;
/// Least size that its log reaches, in bytes.
const LOG_LEAST: u64 = 1_000_000;

fn large() -> String {
    let drafts: Vec<String> = (3..DRAFTS + 3).map(|number| inspection(number, "2026-03-02", "A1")).collect();
    mine(&drafts.iter().map(String::as_str).collect::<Vec<_>>())
}

fn import(bench: &Bench) -> Child {
    bench.command(&["import", "large.jsonl"]).stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap()
}

/// Kills it. Returns whether it was still running.
fn killed(mut child: Child) -> bool {
    // Does nothing if the import has already ended.
    child.kill().unwrap();
    child.wait().unwrap().code().is_none()
}

/// Number of entries that a killed import left in the database.
fn left_behind(bench: &Bench) -> usize {
    let ran = bench.run(&["verify", "--json"]);
    if Bench::keeps_nothing(&ran) {
        return 0;
    }
    let report = ran.answered(0).json();
    assert_eq!(report["sound"], true);
    usize::try_from(report["entries"].as_u64().unwrap()).unwrap()
}

/// Kills an import at a chosen moment, checks the remains, and imports again. Returns whether it was killed before its end,
/// and whether its entries were in.
fn kill_at(large: &str, begun: bool, moment: impl FnOnce(&Bench, &mut Child)) -> (bool, bool) {
    let bench = if begun { Bench::with_mine() } else { Bench::new() };
    let before = if begun { 2 } else { 0 };
    bench.write("large.jsonl", large);
    let mut child = import(&bench);
    moment(&bench, &mut child);
    let killed = killed(child);
    let left = left_behind(&bench);
    assert!(left == before || left == DRAFTS + 2, "{left} entries of {DRAFTS} were left behind");
    assert!(killed || left == DRAFTS + 2, "it ended well with {left} entries");
    // It can be imported again, and is then complete.
    bench.run(&["import", "large.jsonl"]).done();
    assert_eq!(left_behind(&bench), DRAFTS + 2);
    (killed, left > before)
}

#[test]
fn an_import_killed_at_any_time_has_done_nothing_or_everything() {
    let large = large();
    let bench = Bench::new();
    bench.write("large.jsonl", &large);
    let begun = Instant::now();
    assert!(import(&bench).wait().unwrap().success());
    let whole = begun.elapsed();
    let mut before_the_end = 0;
    // On a busy machine a round may come too late.
    for part in (0..ROUNDS).flat_map(|_| 0..KILLS) {
        if before_the_end > 0 && part == 0 {
            break;
        }
        let pause = whole * part / KILLS;
        let (killed, _) = kill_at(&large, part % 2 == 1, |_, _| sleep(pause));
        before_the_end += u32::from(killed);
    }
    assert!(before_the_end > 0, "it was never killed in time");
}

#[test]
fn an_import_killed_while_it_writes_has_done_nothing_or_everything() {
    let large = large();
    let mut cut_short = 0;
    for part in (0..ROUNDS).flat_map(|_| 0..KILLS) {
        if cut_short > 0 && part == 0 {
            break;
        }
        // The log beside the database grows beyond this while entries are written.
        let size = u64::from(part) * LOG_LEAST / u64::from(KILLS) + 100_000;
        let mut reached = false;
        let (killed, all) = kill_at(&large, part % 2 == 1, |bench, child| {
            let log = bench.path("combclear.db-wal");
            while !reached && child.try_wait().unwrap().is_none() {
                reached = metadata(&log).is_ok_and(|log| log.len() >= size);
            }
        });
        // A started write was rolled back.
        cut_short += u32::from(reached && killed && !all);
    }
    assert!(cut_short > 0, "it was never killed in time");
}
