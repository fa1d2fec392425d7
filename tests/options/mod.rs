//! Treatment options, on cases kept as data.
//!
//! Each file of `cases/` begins with a setup that its cases share. A case adds entries in the wire format of the journal
//! (ids are short words here) and asks about one leaflet, or about the order of all.

use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

use combclear_domain::Quantity;
use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::words::{ApiaryName, ColonyName, Jurisdiction};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::options::{
    ApiaryOptions, Ask as Question, ColonyOptions, Span, State, WhatIf,
};
use combclear_domain::rules::leaflet::{Leaflet, Leaflets};
use combclear_testkit::cases::{Compare, ask_all, day, leaflets_and, word};
use combclear_wording::Words;
use combclear_wording::options::{ApiaryReport, Missing, OptionReport, OptionsReport};
use serde::Deserialize;

mod confirmed;
mod knowledge;
mod laws;
mod making;
mod plans;
mod reasons;
mod remedies;

/// What is asked, and what is wanted of the answer. What is not named is not compared.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Ask {
    /// `A1` by default.
    colony: Option<String>,
    /// For all colonies at an apiary together.
    apiary: Option<String>,
    from: Day,
    /// The same day by default.
    to: Option<Day>,
    as_of: Option<Day>,
    what_if: Option<WhatIf>,
    leaflet: Option<String>,
    method: Option<String>,
    revision: Option<String>,

    /// `usable`, `unknown`, `ruled_out`.
    answer: Option<String>,
    /// `from to answer`, with `usual` or `unusual` if a usual year has a different answer.
    days: Option<Vec<String>>,
    /// `about` of the binding conditions that are broken, unknown or met on the first day.
    broken: Option<Vec<String>>,
    unknown: Option<Vec<String>>,
    met: Option<Vec<String>>,
    /// `about` of the advice that is broken on the first day.
    advice_broken: Option<Vec<String>>,
    /// `about from to state` of every run of the binding conditions about this.
    runs_of: Option<BTreeMap<String, Vec<String>>>,
    /// The value of some condition, in words.
    says: Option<Vec<String>>,
    /// Part of the sentence of a condition on the first day.
    why: Option<String>,
    /// The kinds of entry that would supply missing facts.
    missing: Option<Vec<String>>,
    /// The remedies: `kind fields from by`, then lots, and `from` if it concerns later days only.
    asks_for: Option<Vec<String>>,
    first_open_day: Option<String>,
    /// Part of what would have to change.
    change: Option<String>,

    // For the start on the first day that is not ruled out.
    out_from: Option<String>,
    out_by: Option<String>,
    out_if_brood: Option<String>,
    /// The confidence of the first of these.
    stay_confidence: Option<String>,
    last_blocked: Option<String>,
    first_free: Option<String>,
    /// `year days_to_spare`.
    flow: Option<Vec<String>>,
    /// `year start answer`.
    latest: Option<Vec<String>>,
    /// `from by what`.
    visits: Option<Vec<String>>,
    /// The first days of the visits.
    visit_days: Option<Vec<String>>,

    /// Such as `2 strips` or `30 to 36 ml`; `-` if something must be counted first.
    dose: Option<String>,
    dose_sum: Option<String>,
    /// Part of what must be counted or known first.
    dose_missing: Option<String>,
    /// The kinds of entry that would supply it; `-` if none can.
    dose_missing_by: Option<Vec<String>>,
    /// The amount for the whole course; `-` if not known.
    course: Option<String>,
    otherwise: Option<Vec<String>>,
    /// `medicine, water_ml, sugar_g`.
    solution: Option<String>,
    in_stock: Option<String>,

    /// Each is part of one of the points to see to.
    see_to: Option<Vec<String>>,
    cautions: Option<Vec<String>>,
    /// Part of the title, and of the strength in the leaflet.
    title: Option<String>,
    strength: Option<String>,

    /// The ids of the options in order.
    order: Option<Vec<String>>,
    /// Part of the reasons for the rank.
    order_reason: Option<String>,
    /// For an apiary: `answer: colonies`.
    colonies: Option<Vec<String>>,
    /// For an apiary: one dose for all.
    one_dose: Option<String>,
}

#[test]
fn every_case_gets_its_answer() {
    let called = |ask: &Ask| format!("{} from {}", ask.leaflet.as_deref().unwrap_or("all"), ask.from);
    ask_all("tests/options/cases", called, faults);
}

fn faults(holding: &Holding, ask: &Ask) -> Vec<String> {
    let span = Span::new(ask.from, ask.to.unwrap_or(ask.from)).unwrap();
    let question = Question {
        span,
        as_of: ask.as_of.unwrap_or(ask.from),
        what_if: ask.what_if.clone().unwrap_or_default(),
    };
    if let Some(apiary) = &ask.apiary {
        let report = apiary_report(holding, &apiary.parse().unwrap(), &question).unwrap();
        return of_apiary(&report, ask);
    }
    let colony = ask.colony.as_deref().unwrap_or("A1").parse().unwrap();
    let report = colony_report(holding, &colony, &question);
    let mut compare = Compare::default();
    let order = report.options.iter().map(|option| option.leaflet.to_string());
    compare.list("order", ask.order.as_ref(), order);
    let Some(leaflet) = &ask.leaflet else { return compare.faults };
    let meant = |option: &&OptionReport| {
        option.leaflet.as_str() == leaflet
            && option.method.as_ref().map(ToString::to_string) == ask.method
            && option.revision == ask.revision
    };
    let Some(option) = report.options.iter().find(meant) else {
        return vec![format!("there is no such option, method or revision among {:?}", ids(&report))];
    };
    of_option(option, report.asked.jurisdiction.as_ref(), ask, compare)
}

/// The answer for a colony in words.
fn colony_report(holding: &Holding, colony: &ColonyName, ask: &Question) -> OptionsReport {
    let answer = ColonyOptions::of(holding, leaflets(), colony, ask);
    OptionsReport::of(Words::english(), holding, answer)
}

/// The answer for an apiary in words; `None` if it does not exist.
fn apiary_report(holding: &Holding, apiary: &ApiaryName, ask: &Question) -> Option<ApiaryReport> {
    let answer = ApiaryOptions::of(holding, leaflets(), apiary, ask)?;
    Some(ApiaryReport::of(Words::english(), holding, answer))
}

fn amount_of(amount: Quantity, unit: &str) -> String {
    combclear_wording::amounts::amount_of(Words::english(), amount, unit)
}

fn ids(report: &OptionsReport) -> Vec<String> {
    let id = |option: &OptionReport| format!("{} {:?} {:?}", option.leaflet, option.method, option.revision);
    report.options.iter().map(id).collect()
}

fn of_option(
    option: &OptionReport,
    jurisdiction: Option<&Jurisdiction>,
    ask: &Ask,
    mut compare: Compare,
) -> Vec<String> {
    compare.one("answer", ask.answer.as_ref(), word(option.answer));
    let days = option.days.iter().map(|days| {
        let usual = match days.in_a_usual_year {
            Some(true) => " usual",
            Some(false) => " unusual",
            None => "",
        };
        format!("{} {} {}{usual}", days.from, days.to, word(days.answer))
    });
    compare.list("days", ask.days.as_ref(), days);
    let on_first = |binds: bool, wanted: State| {
        let conditions = option.conditions.iter().filter(move |condition| condition.binds == binds);
        let of_state = conditions.filter(move |condition| {
            let run = condition.runs.iter().find(|run| run.from <= ask.from && ask.from <= run.to);
            run.is_some_and(|run| run.state == wanted)
        });
        of_state.map(|condition| condition.about.to_owned())
    };
    compare.list("broken", ask.broken.as_ref(), on_first(true, State::Broken));
    compare.list("unknown", ask.unknown.as_ref(), on_first(true, State::Unknown));
    compare.list("met", ask.met.as_ref(), on_first(true, State::Met));
    compare.list("advice broken", ask.advice_broken.as_ref(), on_first(false, State::Broken));
    for (about, wanted) in ask.runs_of.iter().flatten() {
        let conditions =
            option.conditions.iter().filter(|condition| condition.binds && condition.about == about);
        let runs = conditions.flat_map(|condition| &condition.runs);
        let runs = runs.map(|run| format!("{} {} {}", run.from, run.to, word(run.state)));
        compare.list("runs", Some(wanted), runs);
    }
    let runs = option.conditions.iter().flat_map(|condition| &condition.runs);
    let whys: Vec<&String> =
        runs.filter(|run| run.from <= ask.from && ask.from <= run.to).map(|run| &run.why).collect();
    compare.part("why", ask.why.as_ref(), &whys);
    let values: Vec<&String> =
        option.conditions.iter().filter_map(|condition| condition.says.as_ref()).collect();
    compare.all("says", ask.says.as_ref(), &values);
    let missing = option.missing.iter().map(|missing| missing.supplied_by.unwrap_or("-").to_owned());
    compare.list("missing", ask.missing.as_ref(), missing);
    compare.list("asks for", ask.asks_for.as_ref(), option.missing.iter().map(asked_for));
    compare.one("first open day", ask.first_open_day.as_ref(), day(option.first_open_day));
    compare.part("change", ask.change.as_ref(), &option.would_have_to_change.iter().collect::<Vec<_>>());
    compare.part("order", ask.order_reason.as_ref(), &option.order.iter().collect::<Vec<_>>());
    start_and_dose(option, ask, &mut compare);
    compare.all("see to", ask.see_to.as_ref(), &option.see_to.iter().collect::<Vec<_>>());
    compare.all("cautions", ask.cautions.as_ref(), &option.cautions.iter().collect::<Vec<_>>());
    compare.part("title", ask.title.as_ref(), &[&option.title]);
    if ask.strength.is_some() {
        let of_id = |leaflet: &&Arc<Leaflet>| {
            Some(&leaflet.jurisdiction) == jurisdiction && leaflet.id == option.leaflet
        };
        let leaflet = leaflets().iter().find(of_id).expect("an option has a leaflet");
        compare.part("strength", ask.strength.as_ref(), &[&leaflet.strength]);
    }
    compare.faults
}

fn start_and_dose(option: &OptionReport, ask: &Ask, compare: &mut Compare) {
    let of_start = option.starts.first();
    let start = of_start.map(|report| &report.start);
    compare.one("out from", ask.out_from.as_ref(), day(start.and_then(|start| start.out_from)));
    compare.one("out by", ask.out_by.as_ref(), day(start.and_then(|start| start.out_by)));
    let brood = start.and_then(|start| start.out_from_if_brood_is_seen);
    compare.one("out if brood", ask.out_if_brood.as_ref(), day(brood));
    let established = start.and_then(|start| start.stay_confidence).map(|confidence| confidence.to_string());
    compare.one("stay confidence", ask.stay_confidence.as_ref(), established.unwrap_or("-".to_owned()));
    compare.one(
        "last blocked",
        ask.last_blocked.as_ref(),
        day(start.and_then(|start| start.last_blocked_day)),
    );
    compare.one("first free", ask.first_free.as_ref(), day(start.and_then(|start| start.first_free_day)));
    let margins = start.iter().flat_map(|start| &start.before_flow);
    let margins = margins.map(|margin| format!("{} {}", margin.year, margin.days_to_spare));
    compare.list("flow", ask.flow.as_ref(), margins);
    let latest = option.latest_start.iter().map(|latest| {
        let answer = latest.answer.map(word).unwrap_or_default();
        format!("{} {} {answer}", latest.year, day(latest.start)).trim_end().to_owned()
    });
    compare.list("latest", ask.latest.as_ref(), latest);
    let visits = || of_start.iter().flat_map(|start| &start.visits);
    compare.list("visit days", ask.visit_days.as_ref(), visits().map(|visit| day(visit.visit.from)));
    let visits =
        visits().map(|visit| format!("{} {} {}", day(visit.visit.from), day(visit.visit.by), visit.what));
    compare.list("visits", ask.visits.as_ref(), visits);
    let of_dose = option.dose.dose.as_ref();
    let dose = of_dose.map(|dose| &dose.portion);
    let amount = dose.map_or("-".to_owned(), |dose| match dose.each_at_most {
        Some(most) => format!("{} to {}", dose.each, amount_of(most, &dose.unit)),
        None => amount_of(dose.each, &dose.unit),
    });
    compare.one("dose", ask.dose.as_ref(), amount);
    let facts: Vec<&String> = option.dose.missing.iter().map(|missing| &missing.fact).collect();
    compare.part("dose missing", ask.dose_missing.as_ref(), &facts);
    let supplied = option.dose.missing.iter().map(|missing| missing.supplied_by.unwrap_or("-").to_owned());
    compare.list("dose missing by", ask.dose_missing_by.as_ref(), supplied);
    let course = dose.and_then(|dose| Some(amount_of(dose.course?, &dose.unit)));
    compare.one("course", ask.course.as_ref(), course.unwrap_or("-".to_owned()));
    compare.one("sum", ask.dose_sum.as_ref(), of_dose.map(|dose| dose.sum.clone()).unwrap_or_default());
    compare.list("otherwise", ask.otherwise.as_ref(), of_dose.iter().flat_map(|dose| dose.otherwise.clone()));
    let solution = option.dose.solution.as_ref().map(|solution| {
        let mixture = &solution.mixture;
        let other = |of: Option<Quantity>| of.map_or("-".to_owned(), |of| of.to_string());
        format!("{}, {}, {}", mixture.medicine, other(mixture.water_ml), other(mixture.sugar_g))
    });
    compare.one("solution", ask.solution.as_ref(), solution.unwrap_or("-".to_owned()));
    let stock = amount_of(option.dose.stock.in_date, &option.dose.stock.unit);
    compare.one("in stock", ask.in_stock.as_ref(), stock);
}

fn asked_for(missing: &Missing) -> String {
    let lots: Vec<String> = missing.lots.iter().map(|lot| format!(" {lot}")).collect();
    let from = missing.from.map(|from| format!(" from {from}")).unwrap_or_default();
    format!(
        "{} {} {} {}{}{from}",
        missing.supplied_by.unwrap_or("-"),
        if missing.fields.is_empty() { "-".to_owned() } else { missing.fields.join("+") },
        day(missing.on_from),
        day(missing.on_by),
        lots.concat()
    )
}

fn of_apiary(report: &ApiaryReport, ask: &Ask) -> Vec<String> {
    let mut compare = Compare::default();
    compare.list("order", ask.order.as_ref(), report.options.iter().map(|option| option.leaflet.to_string()));
    let Some(leaflet) = &ask.leaflet else { return compare.faults };
    let option = report.options.iter().find(|option| {
        option.leaflet.as_str() == leaflet && option.method.as_ref().map(ToString::to_string) == ask.method
    });
    let Some(option) = option else { return vec!["there is no such option".to_owned()] };
    compare.one("answer", ask.answer.as_ref(), word(option.answer));
    let days = option.days.iter().map(|days| format!("{} {} {}", days.from, days.to, word(days.answer)));
    compare.list("days", ask.days.as_ref(), days);
    let groups = option.colonies.iter().map(|group| {
        let names: Vec<String> = group.colonies.iter().map(ToString::to_string).collect();
        format!("{}: {}", word(group.answer), names.join(" "))
    });
    compare.list("colonies", ask.colonies.as_ref(), groups);
    let whys: Vec<&String> =
        option.colonies.iter().flat_map(|group| &group.why).map(|why| &why.why).collect();
    compare.part("why", ask.why.as_ref(), &whys);
    let one_dose = option.one_dose.map_or("-".to_owned(), |sum| amount_of(sum, &option.unit));
    compare.one("one dose", ask.one_dose.as_ref(), one_dose);
    let course = option.course.map_or("-".to_owned(), |sum| amount_of(sum, &option.unit));
    compare.one("course", ask.course.as_ref(), course);
    let supplied = option.dose_missing.iter().map(|missing| missing.supplied_by.unwrap_or("-").to_owned());
    compare.list("dose missing by", ask.dose_missing_by.as_ref(), supplied);
    let start = option.start.as_ref().map(|report| &report.start);
    compare.one("first free", ask.first_free.as_ref(), day(start.and_then(|start| start.first_free_day)));
    compare.one("in stock", ask.in_stock.as_ref(), amount_of(option.stock.in_date, &option.stock.unit));
    compare.faults
}

/// The built-in leaflets, and those invented for these tests. The jurisdiction `zz` holds those of `leaflets/zz` here and
/// nothing else.
fn leaflets() -> &'static Leaflets {
    static LEAFLETS: OnceLock<Leaflets> = OnceLock::new();
    LEAFLETS.get_or_init(|| {
        leaflets_and(&[
            ("tests/options/leaflets/zz", "zz"),
            ("tests/options/leaflets/xy", "xy"),
            ("tests/options/leaflets/xx", "xx"),
        ])
    })
}
