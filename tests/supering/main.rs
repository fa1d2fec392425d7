//! The question, asked of cases kept as data.
//!
//! Each file of `cases/` begins with a setup that its cases share. A case adds entries in the wire format of the journal
//! (ids are short words here) and asks: what is the answer on this day, and why.
#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test stops at the first surprise"
)]

use std::collections::BTreeMap;
use std::path::PathBuf;

use combclear_domain::calendar::Day;
use combclear_domain::history::{History, Verdict};
use combclear_domain::holding::Holding;
use combclear_domain::leaflet::Leaflets;
use combclear_domain::supering::{Outcome, SuperingReport};
use serde::Deserialize;

#[path = "../entries.rs"]
mod entries;
mod laws;
mod making;
mod model;
mod order;
mod plans;
mod refusals;
mod stated;

use entries::{holding, root, uuid_of};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct CaseFile {
    #[serde(default)]
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
    /// Leaves the setup of the file out.
    #[serde(default)]
    without_setup: bool,
    #[serde(default)]
    entries: Vec<toml::Value>,
    ask: Vec<Ask>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Ask {
    on: String,
    #[serde(default)]
    colony: Option<String>,
    answer: String,
    #[serde(default)]
    last_blocked: Option<String>,
    #[serde(default)]
    first_free: Option<String>,
    #[serde(default)]
    if_out_on: Option<String>,
    /// `about` of every deciding ground that gives the answer.
    #[serde(default)]
    because: Option<Vec<String>>,
    /// `about` of every breach that stands without deciding.
    #[serde(default)]
    breaches: Option<Vec<String>>,
    /// `about` of every non-deciding ground that is met.
    #[serde(default)]
    met: Option<Vec<String>>,
    /// `about` of every non-deciding ground that is unknown or noted.
    #[serde(default)]
    open: Option<Vec<String>>,
    /// The kinds of entry that would supply what is missing.
    #[serde(default)]
    missing: Option<Vec<String>>,
    /// Steps as `what from by`, `-` for a day that is not stated.
    #[serde(default)]
    steps: Option<Vec<String>>,
    /// Who said the values of the deciding grounds, as `of=value said_by`.
    #[serde(default)]
    values: Option<Vec<String>>,
    /// Colonies left out of the round, of the last course.
    #[serde(default)]
    left_out: Option<Vec<String>>,
    /// The days ahead as `from to answer`.
    #[serde(default)]
    ahead: Option<Vec<String>>,
}

#[test]
fn every_case_gets_its_answer() {
    let leaflets = leaflets();
    let mut wrong = Vec::new();
    let mut asked = 0;
    for file in case_files() {
        let text = std::fs::read_to_string(&file).unwrap();
        let cases: CaseFile =
            toml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
        for case in &cases.cases {
            let setup = if case.without_setup { &[][..] } else { &cases.setup[..] };
            let holding = holding(setup.iter().chain(&case.entries))
                .unwrap_or_else(|refusal| panic!("{}: {}: {refusal}", file.display(), case.name));
            for ask in &case.ask {
                asked += 1;
                for fault in faults(&holding, &leaflets, ask) {
                    wrong.push(format!("{}: {}, asked on {}: {fault}", file.display(), case.name, ask.on));
                }
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
    assert!(wrong.is_empty(), "{} of {asked} questions:\n{}", wrong.len(), wrong.join("\n"));
}

/// What is compared, what is wanted if anything, and what was got.
type Listed<'a> = (&'static str, Option<&'a Vec<String>>, Vec<String>);

fn faults(holding: &Holding, leaflets: &Leaflets, ask: &Ask) -> Vec<String> {
    let on: Day = ask.on.parse().unwrap();
    let colony = ask.colony.as_deref().unwrap_or("A1").parse().unwrap();
    let report = SuperingReport::of(holding, leaflets, &colony, on);
    let mut faults = Vec::new();
    let mut compare = |what: &str, wanted: String, got: String| {
        if wanted != got {
            faults.push(format!("{what}: wanted `{wanted}`, got `{got}`"));
        }
    };
    let bare = History::of(holding, leaflets, &colony).may_be_supered(on);
    compare("bare verdict", report.answer.as_str().to_owned(), bare.as_str().to_owned());
    compare("answer", ask.answer.clone(), report.answer.as_str().to_owned());
    let day = |day: Option<Day>| day.map_or("-".to_owned(), |day| day.to_string());
    for (what, wanted, got) in [
        ("last blocked day", &ask.last_blocked, report.last_blocked_day),
        ("first free day", &ask.first_free, report.first_free_day),
        ("if out on", &ask.if_out_on, report.if_out_on),
    ] {
        if let Some(wanted) = wanted {
            compare(what, wanted.clone(), day(got));
        }
    }
    let abouts = |outcomes: &[Outcome], decides: bool| {
        let grounds = report
            .grounds
            .iter()
            .filter(|ground| ground.decides == decides && outcomes.contains(&ground.outcome));
        grounds.map(|ground| ground.about.to_owned()).collect::<Vec<_>>()
    };
    let deciding = match report.answer {
        Verdict::Yes => Outcome::Met,
        Verdict::No => Outcome::Broken,
        Verdict::Unknown => Outcome::Unknown,
    };
    let mut lists: Vec<Listed<'_>> = vec![
        ("because", ask.because.as_ref(), abouts(&[deciding], true)),
        ("breaches", ask.breaches.as_ref(), abouts(&[Outcome::Broken], false)),
        ("met", ask.met.as_ref(), abouts(&[Outcome::Met], false)),
        ("open", ask.open.as_ref(), abouts(&[Outcome::Unknown, Outcome::Noted], false)),
    ];
    let missing = report.missing.iter().map(|missing| missing.supplied_by.to_owned()).collect();
    lists.push(("missing", ask.missing.as_ref(), missing));
    let steps = report
        .steps
        .iter()
        .map(|step| format!("{} {} {}", step.what, day(step.from), day(step.by)))
        .collect();
    lists.push(("steps", ask.steps.as_ref(), steps));
    let decisive = report.grounds.iter().filter(|ground| ground.decides).flat_map(|ground| &ground.values);
    let values = decisive.map(|value| format!("{}={} {}", value.of, value.value, value.said_by)).collect();
    lists.push(("values", ask.values.as_ref(), values));
    let left_out =
        report.whole_apiary.last().map(|around| around.left_out.iter().map(ToString::to_string).collect());
    lists.push(("left out", ask.left_out.as_ref(), left_out.unwrap_or_default()));
    let ahead = report
        .ahead
        .iter()
        .map(|span| format!("{} {} {}", span.from, span.to, span.answer.as_str()))
        .collect();
    lists.push(("ahead", ask.ahead.as_ref(), ahead));
    for (what, wanted, got) in lists {
        if let Some(wanted) = wanted {
            compare(what, wanted.join(", "), got.join(", "));
        }
    }
    faults
}

/// The built-in leaflets, and those invented for these tests.
fn leaflets() -> Leaflets {
    let mut files: BTreeMap<String, String> = BTreeMap::new();
    let built_in =
        ["ch", "de", "eu", "gb", "it", "pl", "us"].map(|name| (format!("crates/leaflets/{name}"), name));
    for (folder, jurisdiction) in
        built_in.into_iter().chain([("tests/supering/leaflets/zz".to_owned(), "zz")])
    {
        for entry in std::fs::read_dir(root().join(folder)).unwrap() {
            let path = entry.unwrap().path();
            let name = format!("{jurisdiction}/{}", path.file_name().unwrap().to_string_lossy());
            files.insert(name, std::fs::read_to_string(&path).unwrap());
        }
    }
    let loaded = Leaflets::load(files.iter().map(|(path, text)| (path.as_str(), text.as_str())));
    loaded.unwrap_or_else(|faults| {
        panic!("{}", faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))
    })
}

fn case_files() -> Vec<PathBuf> {
    let folder = root().join("tests/supering/cases");
    let mut files: Vec<PathBuf> =
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    files
}
