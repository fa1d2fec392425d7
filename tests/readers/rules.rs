//! What the readers of leaflets and laws have in common: where their faults are.

use combclear_domain::rules::fault::{Diagnostic, Faults};
use combclear_wording::Words;
use combclear_wording::diagnostics::Diagnosed;

/// Line and column of a fault, both 0 for the file as a whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Place(u32, u32);

impl Place {
    pub(super) fn of(fault: &Diagnostic) -> Place {
        Place(fault.line, fault.column)
    }

    /// The same place a line further down. The file as a whole stays where it is.
    pub(super) fn next_line(self) -> Place {
        if self.0 == 0 { self } else { Place(self.0 + 1, self.1) }
    }
}

/// The value of a key that is written as text, so that most files are loaded under a name that fits them.
pub(super) fn named<'t>(text: &'t str, key: &str) -> Option<&'t str> {
    text.lines().find_map(|line| {
        let value = line.trim().strip_prefix(key)?.trim_start().strip_prefix('=')?;
        value.trim_start().strip_prefix('"')?.split('"').next()
    })
}

/// The same file with a comment before it.
pub(super) fn is_one_line_on(text: &str) -> String {
    let mark = if text.starts_with('\u{feff}') { "\u{feff}" } else { "" };
    format!("{mark}# a comment\n{}", text.strip_prefix(mark).unwrap_or(text))
}

/// Every fault names its file and a place in it, in the order of the file, and is said in words.
pub(super) fn are_well_placed(words: &Words, path: &str, text: &str, faults: &Faults) {
    let lines: Vec<&str> = text.split('\n').collect();
    let mut before = Place(0, 0);
    assert!(faults.iter().next().is_some(), "it is refused for nothing");
    for fault in faults.iter() {
        assert_eq!(fault.file, path);
        let place = Place::of(fault);
        assert_eq!(place.0 == 0, place.1 == 0, "{fault}");
        if place.0 > 0 {
            let line =
                lines.get(place.0 as usize - 1).unwrap_or_else(|| panic!("there is no such line: {fault}"));
            assert!(place.1 as usize <= line.chars().count() + 1, "there is no such column: {fault}");
        }
        assert!(before <= place, "{fault} stands after {before:?}");
        before = place;
        let said = Diagnosed::of(words, fault);
        assert!(!said.message.is_empty() && !said.help.is_empty(), "{fault} is not said");
    }
}
