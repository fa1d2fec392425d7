//! Inputs that fuzzing kept (`fuzz/`), tried again.

use std::panic::catch_unwind;
use std::time::{Duration, Instant};

use crate::files::{listing, root};

/// Longest time that an input may take. Most take less than a thousandth of it.
const MOST: Duration = Duration::from_secs(1);

/// Tries every input that is kept for a target of fuzzing, and that none takes long. Returns how many there are.
pub fn tried(target: &str, check: fn(&[u8])) -> usize {
    let inputs = listing(root().join("tests/corpus").join(target));
    for path in &inputs {
        let bytes = std::fs::read(path).unwrap();
        let took = || {
            let began = Instant::now();
            let tried = catch_unwind(|| check(&bytes));
            assert!(tried.is_ok(), "the input is {}", path.display());
            began.elapsed()
        };
        // A busy machine may be slow once.
        assert!((0..3).any(|_| took() < MOST), "{} takes long", path.display());
    }
    inputs.len()
}
