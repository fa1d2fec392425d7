//! Every fault of a law file, as its author sees it.
//!
//! Each file in `laws/` is sound except for the fault in its name; it is loaded alone, as `zz.toml`. The files in a
//! subfolder are loaded together, under their paths in it. The page `laws.snap` has every message with its line, and is
//! reviewed as text to be read.

use std::collections::BTreeMap;

use combclear_domain::rules::law::Laws;

use combclear_wording::diagnostics::Diagnosed;

use super::gallery::{Set, every_message_is_whole, gallery, in_words, listed, on_page, page};

#[test]
fn every_fault_reads_as_on_the_reviewed_page() {
    on_page("laws", &page(&all(), faults));
}

#[test]
fn every_message_says_what_where_and_how_to_mend_it() {
    every_message_is_whole(&all(), faults);
}

#[test]
fn one_fault_brings_one_message_and_no_follow_ups() {
    let all = all();
    assert!(all.len() > 40, "only {} sets", all.len());
    for (name, set) in &all {
        let wanted = match name.as_str() {
            // It lacks the three required keys of a law file, and rules.
            "a-file-with-nothing-in-it" => 4,
            "several-faults-in-one-file" | "includes-lead-round" => 3,
            _ => 1,
        };
        let faults = faults(set);
        assert_eq!(faults.len(), wanted, "{name}: {}", listed(&faults));
    }
}

#[test]
fn faults_of_several_files_are_reported_at_once_in_the_order_of_the_files() {
    let file = |field: &str, of: &str| {
        format!(
            "format = 1\njurisdiction = \"{of}\"\ntitle = \"x\"\n[[source]]\nid = \"T\"\ncountry = \"{of}\"\nkind = \"authority\"\ntitle = \"x\"\n[[field]]\n\
             occasion = \"disposal\"\nfield = \"{field}\"\nneed = \"required\"\nfrom = 2020-01-01\nsource = [\"T\"]\n\
             confidence = \"document\"\nchecked_on = 2026-01-01\n"
        )
    };
    let set = Set::from([
        ("xa.toml".to_owned(), file("bach", "xa")),
        ("xb.toml".to_owned(), file("batch", "xb")),
        ("xc.toml".to_owned(), file("expirry", "xc")),
    ]);
    let files: Vec<String> =
        faults(&set).into_iter().map(|fault| format!("{} {}", fault.file, fault.help)).collect();
    assert_eq!(files, ["xa.toml did you mean `batch`?", "xc.toml did you mean `expiry`?"]);
}

fn all() -> BTreeMap<String, Set> {
    gallery("laws", |_| "zz.toml".to_owned())
}

fn faults(set: &Set) -> Vec<Diagnosed> {
    let loaded = Laws::load(set.iter().map(|(path, text)| (path.as_str(), text.as_str())));
    in_words(loaded)
}
