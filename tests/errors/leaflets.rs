//! Every fault of a leaflet file, as its author sees it.
//!
//! Each file in `leaflets/` is sound except for the fault in its name; it is loaded alone, as `zz/<its name>`. The files in
//! a subfolder are loaded together, under their paths in it. The page `leaflets.snap` has every message with its line, and
//! is reviewed as text to be read.

use std::collections::BTreeMap;

use combclear_domain::rules::leaflet::Leaflets;

use combclear_wording::diagnostics::Diagnosed;

use super::gallery::{Set, every_message_is_whole, gallery, in_words, listed, on_page, page};

#[test]
fn every_fault_reads_as_on_the_reviewed_page() {
    on_page("leaflets", &page(&all(), faults));
}

#[test]
fn one_fault_brings_one_message_and_no_follow_ups() {
    let single: Vec<_> = all().into_iter().filter(|(_, set)| set.len() == 1).collect();
    assert!(single.len() > 80, "only {} files of one fault", single.len());
    for (name, set) in single {
        let faults = faults(&set);
        let wanted = match name.as_str() {
            // It lacks the nine required keys of a leaflet, and rules.
            "a-file-with-nothing-in-it" => 10,
            "several-faults-in-one-file" => 3,
            _ => 1,
        };
        assert_eq!(faults.len(), wanted, "{name}: {}", listed(&faults));
    }
}

#[test]
fn every_message_says_what_where_and_how_to_mend_it() {
    every_message_is_whole(&all(), faults);
}

#[test]
fn every_fault_of_every_file_is_reported_at_once_in_the_order_of_the_files() {
    let mut together = Set::new();
    let mut one_by_one = Vec::new();
    for (_, set) in all().into_iter().filter(|(_, set)| set.len() == 1) {
        one_by_one.extend(faults(&set));
        together.extend(set);
    }
    one_by_one.sort_by(|a, b| a.file.cmp(&b.file));
    assert!(one_by_one.len() > 80);
    assert_eq!(listed(&faults(&together)), listed(&one_by_one));
}

#[test]
fn within_a_file_faults_come_in_the_order_of_lines() {
    let mut several = 0;
    for (name, set) in all() {
        let faults = faults(&set);
        several += usize::from(faults.len() > 1);
        let places: Vec<_> = faults.iter().map(|fault| (&fault.file, fault.line, fault.column)).collect();
        assert!(places.is_sorted(), "{name}: {places:?}");
    }
    assert!(several >= 2);
}

/// The broken files by name: each file on its own, each subfolder as a set.
fn all() -> BTreeMap<String, Set> {
    gallery("leaflets", |name| format!("zz/{name}.toml"))
}

fn faults(set: &Set) -> Vec<Diagnosed> {
    let loaded = Leaflets::load(set.iter().map(|(path, text)| (path.as_str(), text.as_str())));
    in_words(loaded)
}
