//! The inputs that fuzzing kept, read again: leaflets, laws, entries, journals. `tests/workbook` does the same with sheets.

use combclear_testkit::corpus::tried;

use crate::readers::{entry, journal, law, leaflet};

#[test]
fn what_was_kept_of_leaflets_is_loaded_or_refused_in_its_place() {
    assert!(tried("leaflet", leaflet::check) > 0);
}

#[test]
fn what_was_kept_of_laws_is_loaded_or_refused_in_its_place() {
    assert!(tried("law", law::check) > 0);
}

#[test]
fn what_was_kept_of_entries_is_written_as_it_is_read() {
    assert!(tried("entry", entry::check) > 0);
}

#[test]
fn what_was_kept_of_bodies_is_written_as_it_is_read() {
    assert!(tried("body", entry::check_body) > 0);
}

#[test]
fn what_was_kept_of_journals_is_exported_as_it_was_recorded_and_answers_every_question() {
    assert!(tried("journal", journal::check) > 0);
}
