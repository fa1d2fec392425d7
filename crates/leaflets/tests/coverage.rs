//! The table in the README that shows, leaflet by leaflet, which kinds of rule are documented and which are not.
//!
//! It is made from the leaflets, so that gaps are seen. `COMBCLEAR_WRITE_COVERAGE=1 cargo test -p combclear-leaflets`
//! writes it anew.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

use std::collections::BTreeMap;
use std::fmt::Write;
use std::path::Path;
use std::sync::Arc;

use combclear_domain::leaflet::{Confidence, Leaflet, Topic};
use combclear_domain::words::Jurisdiction;

const BEGIN: &str = "<!-- coverage: made from the leaflets, do not edit -->\n";
const END: &str = "<!-- end of coverage -->\n";

#[test]
fn the_readme_shows_what_the_leaflets_cover() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../README.md");
    let readme = std::fs::read_to_string(&path).unwrap();
    let (before, rest) = readme.split_once(BEGIN).expect("the README has the place for it");
    let (shown, after) = rest.split_once(END).expect("the README has the end of it");
    let made = tables();
    if std::env::var_os("COMBCLEAR_WRITE_COVERAGE").is_some() {
        std::fs::write(&path, format!("{before}{BEGIN}{made}{END}{after}")).unwrap();
        return;
    }
    assert!(
        shown == made,
        "the README is behind the leaflets; run\n  COMBCLEAR_WRITE_COVERAGE=1 cargo test -p combclear-leaflets --test coverage"
    );
}

fn tables() -> String {
    let leaflets = combclear_leaflets::builtin().unwrap_or_else(|faults| panic!("{faults:#?}"));
    let mut by_jurisdiction: BTreeMap<&Jurisdiction, Vec<&Arc<Leaflet>>> = BTreeMap::new();
    for leaflet in leaflets.iter() {
        by_jurisdiction.entry(&leaflet.jurisdiction).or_default().push(leaflet);
    }
    let mut text = String::new();
    for (jurisdiction, leaflets) in by_jurisdiction {
        writeln!(text, "\n**{jurisdiction}**\n").unwrap();
        for (number, leaflet) in leaflets.iter().enumerate() {
            writeln!(text, "{}. `{}`: {}", number + 1, leaflet.id, leaflet.title).unwrap();
        }
        let heads: String =
            (1..=leaflets.len()).fold(String::new(), |heads, number| format!("{heads} {number} |"));
        writeln!(text, "\n| rule |{heads}").unwrap();
        writeln!(text, "| --- |{}", " --- |".repeat(leaflets.len())).unwrap();
        for topic in Topic::ALL {
            let cells: Vec<&str> = leaflets.iter().map(|leaflet| mark(leaflet, *topic)).collect();
            writeln!(text, "| {} | {} |", topic.as_str().replace('_', " "), cells.join(" | ")).unwrap();
        }
    }
    text.push('\n');
    text
}

/// How well the rules of a leaflet on a topic are established: by the weakest of those that are in force.
fn mark(leaflet: &Leaflet, topic: Topic) -> &'static str {
    let rules = leaflet.rules.iter().filter(|rule| rule.says.topic() == topic && rule.until.is_none());
    let weakest = rules.map(|rule| match rule.confidence {
        Confidence::Document => 1,
        Confidence::SecondHand => 2,
        Confidence::Unconfirmed => 3,
    });
    match weakest.max() {
        None => "–",
        Some(1) => "D",
        Some(2) => "s",
        Some(_) => "u",
    }
}
