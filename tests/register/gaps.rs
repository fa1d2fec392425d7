//! Legal gaps, on cases kept as data, with the built-in laws and leaflets.

use combclear_domain::journal::Hash;
use combclear_domain::questions::gaps::{GapWeight, Gaps};
use combclear_domain::questions::register::Period;
use combclear_leaflets::laws;
use combclear_testkit::cases::ask_all;
use combclear_testkit::entries::{day, holding};
use combclear_wording::Words;
use combclear_wording::gaps::GapsReport;
use serde::Deserialize;

use crate::supering::leaflets;

/// A question. Gaps are written as `missing about`; an absent list is not compared.
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
    irregular: Option<Vec<String>>,
    #[serde(default)]
    where_applicable: Option<Vec<String>>,
    #[serde(default)]
    advised: Option<Vec<String>>,
    #[serde(default)]
    laws: Option<Vec<String>>,
    /// Parts of the summary.
    #[serde(default)]
    says: Vec<String>,
}

#[test]
fn every_case_has_its_gaps() {
    let called = |ask: &Ask| format!("as of {}", ask.as_of);
    ask_all("tests/register/gaps", called, |holding, ask| {
        let period = Period::new(day(&ask.from), day(&ask.to)).unwrap();
        let found = Gaps::of(holding, leaflets(), laws().unwrap(), period, day(&ask.as_of), &[]);
        let report = GapsReport::of(Words::english(), found);
        for gap in &report.gaps {
            assert!(!gap.supply.is_empty() && !gap.statement.ends_with('.'), "{gap:?}");
        }
        faults(&report, ask)
    });
}

/// A document whose content is missing or altered proves nothing.
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
    let period = Period::new(day("2026-01-01"), day("2026-12-31")).unwrap();
    let words = |not_kept: &[Hash]| {
        let found = Gaps::of(&holding, leaflets(), laws().unwrap(), period, day("2026-12-31"), not_kept);
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
        ("irregular", &ask.irregular, of(GapWeight::Irregular)),
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
