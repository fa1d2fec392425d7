//! What the law still misses, held against cases kept as data. The laws and the leaflets are the built-in ones.

use std::path::Path;

use combclear_domain::basics::calendar::Day;
use combclear_domain::journal::Hash;
use combclear_domain::questions::gaps::{GapWeight, Gaps};
use combclear_domain::questions::register::Period;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::Words;
use combclear_wording::gaps::GapsReport;
use serde::Deserialize;

use super::cases::{ask_all, leaflets_and};
use super::entries::{holding, root};

/// What is asked. Gaps are given as `missing about`; a list that is left out is not looked at.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Ask {
    from: String,
    to: String,
    as_of: String,
    complete: String,
    #[serde(default)]
    required: Option<Vec<String>>,
    #[serde(default)]
    amiss: Option<Vec<String>>,
    #[serde(default)]
    where_applicable: Option<Vec<String>>,
    #[serde(default)]
    advised: Option<Vec<String>>,
    #[serde(default)]
    laws: Option<Vec<String>>,
    /// Pieces that the summary must hold.
    #[serde(default)]
    says: Vec<String>,
}

#[test]
fn every_case_has_its_gaps() {
    let (leaflets, laws) = (leaflets(), laws());
    let called = |ask: &Ask| format!("as of {}", ask.as_of);
    ask_all("tests/register/gaps", called, |holding, ask| {
        let day = |text: &str| text.parse::<Day>().unwrap();
        let period = Period::new(day(&ask.from), day(&ask.to)).unwrap();
        let found = Gaps::of(holding, &leaflets, &laws, period, day(&ask.as_of), &[]);
        let report = GapsReport::of(Words::english(), found);
        for gap in &report.gaps {
            assert!(!gap.supply.is_empty() && !gap.statement.ends_with('.'), "{gap:?}");
        }
        faults(&report, ask)
    });
}

/// A document whose content is missing or altered proves nothing, however well it is attached.
#[test]
fn a_proof_that_is_not_kept_is_no_proof() {
    let journal = r#"
        entry = [
          { on = "2026-01-01", kind = "holding_details", body = { keeper = "K", jurisdiction = "gb", address = "1 Lane" } },
          { on = "2026-01-01", kind = "medicine_described", body = { medicine = "strip", pack_name = "Strip", authorisation = "AN 1", unit = "strip", leaflet = "amitraz-strip-500mg-a" } },
          { on = "2026-01-10", kind = "lot_acquired", body = { lot = "S-1", medicine = "strip", quantity = 1, batch = "B", expiry = "2028-01-31", supplier = { name = "Shop", address = "1 Street" } } },
          { on = "2026-01-10", kind = "document_attached", body = { content = "CONTENT", media_type = "image/png", bytes = 10, lot = "S-1" } },
        ]
    "#;
    let content = "ab".repeat(32);
    let journal: toml::Table = toml::from_str(&journal.replace("CONTENT", &content)).unwrap();
    let holding = holding(journal["entry"].as_array().unwrap()).unwrap();
    let day = |text: &str| text.parse::<Day>().unwrap();
    let period = Period::new(day("2026-01-01"), day("2026-12-31")).unwrap();
    let words = |not_kept: &[Hash]| {
        let found = Gaps::of(&holding, &leaflets(), &laws(), period, day("2026-12-31"), not_kept);
        let gaps: Vec<&str> = found.gaps.iter().map(|gap| gap.finding.as_str()).collect();
        (found.complete.as_str(), gaps.join(" "))
    };
    assert_eq!(words(&[]), ("yes", String::new()));
    assert_eq!(words(&[Hash([1; 32])]), ("yes", String::new()), "another content");
    let lost = words(&[content.parse().unwrap()]);
    assert_eq!(lost, ("no", "proof_of_purchase document_not_kept".to_owned()));
}

fn faults(report: &GapsReport, ask: &Ask) -> Vec<String> {
    let of = |weight: GapWeight| -> Vec<String> {
        let gaps = report.gaps.iter().filter(|gap| gap.gap.weight == weight);
        gaps.map(|gap| format!("{} {}", gap.missing, gap.about)).collect()
    };
    let laws = report.laws.iter().map(|law| law.jurisdiction.to_string()).collect();
    let mut faults = Vec::new();
    for (name, wanted, got) in [
        ("required", &ask.required, of(GapWeight::Required)),
        ("amiss", &ask.amiss, of(GapWeight::Amiss)),
        ("where_applicable", &ask.where_applicable, of(GapWeight::WhereApplicable)),
        ("advised", &ask.advised, of(GapWeight::Advised)),
        ("laws", &ask.laws, laws),
    ] {
        if let Some(wanted) = wanted.as_ref().filter(|wanted| **wanted != got) {
            faults.push(format!("{name}\n  wanted {wanted:#?}\n  got    {got:#?}"));
        }
    }
    if report.complete.as_str() != ask.complete {
        faults.push(format!("complete: wanted {}, got {}", ask.complete, report.complete.as_str()));
    }
    let summary = report.summary.join(" ");
    faults.extend(
        ask.says
            .iter()
            .filter(|says| !summary.contains(*says))
            .map(|says| format!("`{says}` is not in `{summary}`")),
    );
    faults
}

/// The built-in leaflets, with those invented for tests.
pub(crate) fn leaflets() -> Leaflets {
    leaflets_and(&[("tests/supering/leaflets/zz", "zz")])
}

pub(crate) fn laws() -> Laws {
    let files = files(&root().join("crates/leaflets"), &["law"]);
    Laws::load(files.iter().map(|(path, text)| (path.as_str(), text.as_str()))).unwrap()
}

fn files(folder: &Path, within: &[&str]) -> Vec<(String, String)> {
    let mut files: Vec<(String, String)> = Vec::new();
    for name in within {
        for entry in std::fs::read_dir(folder.join(name)).unwrap() {
            let path = entry.unwrap().path();
            let file = path.file_name().unwrap().to_string_lossy().into_owned();
            files.push((format!("{name}/{file}"), std::fs::read_to_string(&path).unwrap()));
        }
    }
    files.sort();
    files
}
