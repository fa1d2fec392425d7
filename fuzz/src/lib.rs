//! Random input for the readers: what must hold of any input (`tests/readers`), how input is changed, and how long it may take.

mod change;

use std::panic::{catch_unwind, set_hook};
use std::process::abort;
use std::sync::{Mutex, Once};

use cpu_time::ThreadTime;
pub use libfuzzer_sys;

pub use change::change;

#[path = "../../tests/readers/mod.rs"]
pub mod readers;
#[path = "../../tests/readers/sheet.rs"]
pub mod sheet;

/// Makes a target of a check.
#[macro_export]
macro_rules! target {
    ($check:path) => {
        $crate::libfuzzer_sys::fuzz_target!(|bytes: &[u8]| $crate::in_time(bytes, $check));
        $crate::libfuzzer_sys::fuzz_mutator!(|bytes: &mut [u8], size: usize, most: usize, seed: u32| {
            $crate::change(bytes, size, most, seed)
        });
    };
}

/// Bytes that may take a second of the processor. More may take longer in proportion.
const BYTES_A_SECOND: usize = 4_096;

/// Checks an input, and that it takes no longer than its length allows.
pub fn in_time(bytes: &[u8], check: fn(&[u8])) {
    static SAID: Mutex<String> = Mutex::new(String::new());
    static QUIET: Once = Once::new();
    // The fuzzer would end at any panic. Only one that leaves the check counts: a fault of a library may be caught before.
    QUIET.call_once(|| {
        set_hook(Box::new(|panic| {
            if let Ok(mut said) = SAID.lock() {
                *said = panic.to_string();
            }
        }));
    });
    let began = ThreadTime::now();
    if catch_unwind(|| check(bytes)).is_err() {
        eprintln!("{}", SAID.lock().unwrap());
        abort();
    }
    let (took, parts) = (began.elapsed().as_secs_f64(), bytes.len().div_ceil(BYTES_A_SECOND).max(1));
    if took > parts as f64 {
        eprintln!("{} bytes took {took} s", bytes.len());
        abort();
    }
}
