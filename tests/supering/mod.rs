//! The supering question, on cases kept as data.
//!
//! Each file of `cases/` begins with a setup that its cases share. A case adds entries in the wire format of the journal
//! (ids are short words here) and asks: what is the answer on this day, and why.

use std::sync::OnceLock;

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::facts::history::History;
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::supering::Outcome;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_testkit::cases::{Compare, ask_all, day, leaflets_and};
use combclear_wording::Words;
use combclear_wording::supering::SuperingReport;
use serde::Deserialize;

mod laws;
pub(crate) mod making;
mod model;
mod order;
pub(crate) mod plans;
mod refusals;
mod remedies;
mod stated;

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
    #[serde(default)]
    harvest_free_from: Option<String>,
    /// `about` of every deciding ground that gives the answer.
    #[serde(default)]
    because: Option<Vec<String>>,
    /// `about` of every breach that does not decide.
    #[serde(default)]
    breaches: Option<Vec<String>>,
    /// `about` of every non-deciding ground that is met.
    #[serde(default)]
    met: Option<Vec<String>>,
    /// `about` of every non-deciding ground that is unknown or noted.
    #[serde(default)]
    open: Option<Vec<String>>,
    /// The kinds of entry that would supply missing facts.
    #[serde(default)]
    missing: Option<Vec<String>>,
    /// Steps as `what from by`, with `-` for an unstated day.
    #[serde(default)]
    steps: Option<Vec<String>>,
    /// Parts of what the steps say.
    #[serde(default)]
    says: Option<Vec<String>>,
    /// The values of the deciding grounds with their origin, as `of=value said_by`.
    #[serde(default)]
    values: Option<Vec<String>>,
    /// Colonies left out of the last round of treatment.
    #[serde(default)]
    left_out: Option<Vec<String>>,
    /// The days ahead as `from to answer`.
    #[serde(default)]
    ahead: Option<Vec<String>>,
}

#[test]
fn every_case_gets_its_answer() {
    let called = |ask: &Ask| format!("asked on {}", ask.on);
    ask_all("tests/supering/cases", called, |holding, ask| faults(holding, leaflets(), ask));
}

/// Name, expected values if any, and actual values.
type Listed<'a> = (&'static str, Option<&'a Vec<String>>, Vec<String>);

fn faults(holding: &Holding, leaflets: &Leaflets, ask: &Ask) -> Vec<String> {
    let on: Day = ask.on.parse().unwrap();
    let colony = ask.colony.as_deref().unwrap_or("A1").parse().unwrap();
    let report = SuperingReport::ask(Words::english(), holding, leaflets, &colony, on);
    let mut compare = Compare::default();
    let bare = History::of(holding, leaflets, &colony).may_be_supered(on);
    let answer = report.in_brief.answer.as_str().to_owned();
    compare.one("bare verdict", Some(&answer), bare.as_str().to_owned());
    compare.one("answer", Some(&ask.answer), answer);
    for (what, wanted, got) in [
        ("last blocked day", &ask.last_blocked, report.in_brief.last_blocked_day),
        ("first free day", &ask.first_free, report.in_brief.first_free_day),
        ("if out on", &ask.if_out_on, report.in_brief.if_out_on),
        ("harvest free from", &ask.harvest_free_from, report.harvest_free_from),
    ] {
        compare.one(what, wanted.as_ref(), day(got));
    }
    let abouts = |outcomes: &[Outcome], decides: bool| {
        let grounds = report
            .grounds
            .iter()
            .filter(|ground| ground.decides == decides && outcomes.contains(&ground.outcome));
        grounds.map(|ground| ground.about.to_owned()).collect::<Vec<_>>()
    };
    let deciding = match report.in_brief.answer {
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
    let missing = report.missing.iter().map(|missing| missing.remedy.kind.as_str().to_owned()).collect();
    lists.push(("missing", ask.missing.as_ref(), missing));
    let steps = report
        .steps
        .iter()
        .map(|step| format!("{} {} {}", step.what, day(step.from), day(step.by)))
        .collect();
    lists.push(("steps", ask.steps.as_ref(), steps));
    let said: Vec<&String> = report.steps.iter().map(|step| &step.statement).collect();
    compare.all("says", ask.says.as_ref(), &said);
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
        compare.list(what, wanted, got.into_iter());
    }
    compare.faults
}

/// The built-in leaflets, and those invented for these tests.
pub(crate) fn leaflets() -> &'static Leaflets {
    static LEAFLETS: OnceLock<Leaflets> = OnceLock::new();
    LEAFLETS.get_or_init(|| leaflets_and(&[("tests/supering/leaflets/zz", "zz")]))
}
