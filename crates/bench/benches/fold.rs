//! Cost of the fold: time and memory for each entry of a journal.
//!
//! Run with `cargo bench -p combclear-bench --bench fold`. The memory of the fold is `max alloc` of `read_and_fold`, divided by
//! the number of entries.

use combclear_bench::scene::journal_of;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::entry::Entry;
use divan::counter::ItemsCount;
use divan::{AllocProfiler, Bencher, black_box};

#[global_allocator]
static ALLOCATOR: AllocProfiler = AllocProfiler::system();

/// 500 colonies with 197 courses each: 99,000 inspections, and the rest of a journal.
const COLONIES: u16 = 500;
const COURSES: u16 = 197;

fn main() {
    divan::main();
}

fn empty() -> Option<Holding> {
    "bench".parse().ok().map(Holding::new)
}

/// Entries that are already read.
#[divan::bench(sample_count = 10, sample_size = 1)]
fn fold(bencher: Bencher) {
    let entries = journal_of(COLONIES, COURSES);
    let count = ItemsCount::new(entries.len());
    bencher.counter(count).bench_local(|| {
        let mut holding = empty()?;
        for entry in black_box(&entries) {
            holding.restore(entry);
        }
        Some(holding)
    });
}

/// Entries as lines of JSON.
#[divan::bench(sample_count = 10, sample_size = 1)]
fn read_and_fold(bencher: Bencher) {
    let entries = journal_of(COLONIES, COURSES);
    let lines: Vec<String> = entries.iter().map(Entry::to_json).collect();
    let count = ItemsCount::new(lines.len());
    bencher.counter(count).bench_local(|| {
        let mut holding = empty()?;
        for line in black_box(&lines) {
            holding.restore(&Entry::from_json(line).ok()?);
        }
        Some(holding)
    });
}
