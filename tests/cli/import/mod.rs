//! `combclear import`: whole or not at all, with faults reported line by line.

mod crash;
mod drafts;
mod files;
mod keep_going;
mod sealed;

use crate::bench::{Bench, Ran};

/// Imports a file that is refused, and checks that nothing changed.
#[track_caller]
fn refused(bench: &Bench, file: &str, more: &[&str]) -> Ran {
    let before = bench.kept();
    let ran = bench.run(&[&["import", file], more].concat()).failed_or_listed();
    assert!(ran.err.starts_with("error: nothing was imported: "), "{}", ran.err);
    assert_eq!(bench.kept(), before);
    ran
}

impl Ran {
    /// It failed, with help in the message or in each fault.
    #[track_caller]
    fn failed_or_listed(self) -> Ran {
        assert_eq!((self.code, self.out.as_str()), (Some(1), ""), "{}", self.err);
        assert!(self.err.contains("  help: "), "{}", self.err);
        self
    }

    /// The line numbers reported, in order.
    fn lines(&self, file: &str) -> Vec<u32> {
        let text = format!("{}{}", self.out, self.err);
        let begins = format!("{file}:");
        let named = text.lines().filter_map(|line| line.strip_prefix(&begins)?.split_once(':'));
        named.map(|(number, _)| number.parse().unwrap()).collect()
    }
}
