//! The legal register, held against cases kept as data and against the journal it is read from.
//!
//! Each file of `cases/` begins with a setup that its cases share. A case adds entries in the wire format of the journal
//! (ids are short words here), asks for the register of a time, and gives its rows as lines.
#![expect(
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test stops at the first surprise"
)]

use std::path::PathBuf;

use combclear_domain::calendar::Day;
use combclear_domain::holding::Holding;
use combclear_domain::leaflet::Leaflets;
use combclear_domain::register::{Period, RegisterReport};
use serde::Deserialize;

mod elapsed;
#[path = "../entries.rs"]
mod entries;
mod gaps;
mod laws;
mod lines;
#[path = "../supering/making.rs"]
#[expect(dead_code, reason = "shared with the tests of supering")]
mod making;
#[path = "../supering/plans.rs"]
#[expect(dead_code, reason = "shared with the tests of supering")]
mod plans;
mod required;

use entries::{holding, root, uuid_of};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct CaseFile {
    setup: Vec<toml::Value>,
    #[serde(rename = "case")]
    cases: Vec<Case>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    name: String,
    /// A published source, or "common practice, no source".
    #[serde(default)]
    source: Option<String>,
    #[serde(default)]
    difference: Option<String>,
    #[serde(default)]
    entries: Vec<toml::Value>,
    ask: Vec<Ask>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Ask {
    from: String,
    to: String,
    as_of: String,
    #[serde(default)]
    acquisitions: Option<Vec<String>>,
    #[serde(default)]
    prescriptions: Option<Vec<String>>,
    #[serde(default)]
    administrations: Option<Vec<String>>,
    /// What became of the administrations: a line for each fate.
    #[serde(default)]
    courses: Option<Vec<String>>,
    #[serde(default)]
    removals: Option<Vec<String>>,
    #[serde(default)]
    disposals: Option<Vec<String>>,
    #[serde(default)]
    corrections: Option<Vec<String>>,
    #[serde(default)]
    totals: Option<Vec<String>>,
    /// Rows written down late, as `kind day days`.
    #[serde(default)]
    late: Option<Vec<String>>,
    #[serde(default)]
    keepers: Option<Vec<String>>,
}

#[test]
fn every_case_has_its_rows() {
    let leaflets = leaflets();
    let mut wrong = Vec::new();
    let mut asked = 0;
    for file in case_files() {
        let text = std::fs::read_to_string(&file).unwrap();
        let cases: CaseFile =
            toml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
        for case in &cases.cases {
            let holding = holding(cases.setup.iter().chain(&case.entries))
                .unwrap_or_else(|refusal| panic!("{}: {}: {refusal}", file.display(), case.name));
            for ask in &case.ask {
                let (count, faults) = faults(&holding, &leaflets, ask);
                asked += count;
                wrong.extend(faults.iter().map(|fault| format!("{}: {fault}", case.name)));
                assert!(count > 0, "{}: a question without an expected answer", case.name);
            }
            assert!(case.source.as_deref() != Some(""), "{}: an empty source", case.name);
            assert!(
                case.difference.is_none() || case.source.is_some(),
                "{}: a difference from no source",
                case.name
            );
        }
    }
    assert!(asked > 0, "no case was found");
    assert!(wrong.is_empty(), "{} of {asked}:\n{}", wrong.len(), wrong.join("\n"));
}

/// How many tables were compared, and those that differ.
fn faults(holding: &Holding, leaflets: &Leaflets, ask: &Ask) -> (usize, Vec<String>) {
    let report = register(holding, leaflets, &ask.from, &ask.to, &ask.as_of);
    let tables = [
        ("acquisitions", &ask.acquisitions, lines::acquisitions(&report)),
        ("prescriptions", &ask.prescriptions, lines::prescriptions(&report)),
        ("administrations", &ask.administrations, lines::administrations(&report)),
        ("courses", &ask.courses, lines::courses(&report)),
        ("removals", &ask.removals, lines::removals(&report)),
        ("disposals", &ask.disposals, lines::disposals(&report)),
        ("corrections", &ask.corrections, lines::corrections(&report)),
        ("totals", &ask.totals, lines::totals(&report)),
        ("late", &ask.late, lines::late(&report)),
        ("keepers", &ask.keepers, lines::keepers(&report)),
    ];
    let asked = tables.iter().filter(|(_, wanted, _)| wanted.is_some()).count();
    let differ = tables.into_iter().filter_map(|(name, wanted, got)| {
        let wanted = wanted.as_ref().filter(|wanted| **wanted != got)?;
        Some(format!("{name} from {} as of {}\n  wanted {wanted:#?}\n  got    {got:#?}", ask.from, ask.as_of))
    });
    (asked, differ.collect())
}

fn register(holding: &Holding, leaflets: &Leaflets, from: &str, to: &str, as_of: &str) -> RegisterReport {
    let day = |text: &str| text.parse::<Day>().unwrap();
    RegisterReport::of(holding, leaflets, Period::new(day(from), day(to)).unwrap(), day(as_of))
}

fn case_files() -> Vec<PathBuf> {
    let folder = root().join("tests/register/cases");
    let mut files: Vec<PathBuf> =
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    files
}

/// The leaflets invented for the tests of supering.
fn leaflets() -> Leaflets {
    let folder = root().join("tests/supering/leaflets/zz");
    let mut files: Vec<(String, String)> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap())
        .map(|entry| {
            let name = format!("zz/{}", entry.file_name().to_string_lossy());
            (name, std::fs::read_to_string(entry.path()).unwrap())
        })
        .collect();
    files.sort();
    Leaflets::load(files.iter().map(|(path, text)| (path.as_str(), text.as_str()))).unwrap()
}
