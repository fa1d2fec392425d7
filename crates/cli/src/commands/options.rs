//! `combclear options`: what else can be used in a colony, or at an apiary.

mod apiary;
mod colony;
mod glance;

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::words::{LeafletId, Method};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::options::{
    ApiaryOptions, Ask, Asked, ColonyOptions, Flow, Mixture, Span, StartDays, Usability, WhatIf,
};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::options::{ApiaryReport, Missing, OptionsReport, StartReport};
use combclear_wording::terminal::{failures, label_revision, options as say};
use combclear_wording::{Label, Words, paper};

use super::supering::{known, no_apiary};
use super::{print, print_json};
use crate::args::{Options, Place};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

/// Days asked about by default.
const DAYS_IF_NOT_SAID: u16 = 60;

/// The answer.
enum Report {
    Colony(Box<OptionsReport>),
    Apiary(Box<ApiaryReport>),
}

pub(crate) async fn run(at: &Place, ask: &Options) -> Result<Outcome, Failure> {
    let words = Words::english();
    let leaflets = &place::leaflets(at)?;
    let from = ask.from.unwrap_or_else(clock::today);
    let to = ask.to.unwrap_or_else(|| from.plus(DAYS_IF_NOT_SAID - 1));
    let span = Span::new(from, to)?;
    let asked = &Ask { span, as_of: ask.as_of.unwrap_or(from), what_if: what_if(ask, from)? };
    let report = match place::ask(at, |holding| report(words, holding, leaflets, ask, asked)).await?? {
        Report::Colony(report) => Report::Colony(Box::new(colony::only(*report, ask.leaflet.as_deref())?)),
        apiary @ Report::Apiary(_) => apiary,
    };
    match (&report, ask.json) {
        (Report::Colony(report), true) => print_json(report)?,
        (Report::Apiary(report), true) => print_json(report)?,
        (Report::Colony(report), false) => match &ask.leaflet {
            Some(_) => print(&colony::in_full(words, report))?,
            None if ask.full => print(&colony::all(words, report))?,
            None => print(&glance::of_colony(words, report))?,
        },
        (Report::Apiary(report), false) if ask.full => print(&apiary::all(words, report))?,
        (Report::Apiary(report), false) => print(&glance::of_apiary(words, report))?,
    }
    let answers: Vec<Usability> = match &report {
        Report::Colony(report) => report.options.iter().map(|option| option.answer).collect(),
        Report::Apiary(report) => report.options.iter().map(|option| option.answer).collect(),
    };
    if answers.is_empty() {
        return Ok(Outcome::Unknown);
    }
    Ok(match Usability::on_one_of(answers) {
        Usability::Usable => Outcome::Done,
        Usability::Unknown => Outcome::Unknown,
        Usability::RuledOut => Outcome::No,
    })
}

fn what_if(ask: &Options, from: Day) -> Result<WhatIf, Failure> {
    let what_if = WhatIf { power: ask.power, access: ask.access, ground: ask.ground, until: ask.site_until };
    match what_if.until {
        Some(_) if what_if.is_empty() => {
            Err(Failure::new(Label::AskedSiteUntilAlone, Label::AskedAssumeSomething))
        }
        Some(until) if until < from => Err(Failure::new(
            failures::site_until_too_early(Words::english(), until, from),
            Label::AskedGiveALaterDay,
        )),
        _ => Ok(what_if),
    }
}

fn report(
    words: &Words,
    holding: &Holding,
    leaflets: &Leaflets,
    ask: &Options,
    asked: &Ask,
) -> Result<Report, Failure> {
    if let Some(apiary) = &ask.apiary {
        let answer = ApiaryOptions::of(holding, leaflets, apiary, asked);
        return answer
            .map(|answer| Report::Apiary(Box::new(ApiaryReport::of(words, holding, answer))))
            .ok_or_else(|| no_apiary(holding, apiary));
    }
    let colony = ask.colony.as_slice();
    let Some(colony) = known(holding, colony)?.into_iter().next() else {
        return Err(Failure::new(failures::no_colony_named(words), Label::AskedNameAColony));
    };
    let answer = ColonyOptions::of(holding, leaflets, &colony, asked);
    Ok(Report::Colony(Box::new(OptionsReport::of(words, holding, answer))))
}

/// The start days with this answer, one line per range.
fn starts(words: &Words, days: &[StartDays], of: Usability) -> Vec<String> {
    let of_it = days.iter().filter(|days| days.answer == of);
    let said = |days: &StartDays| {
        let range = range(words, days.from, days.to);
        match days.in_a_usual_year {
            Some(true) => say::in_a_usual_year(words, &range),
            Some(false) => say::not_in_a_usual_year(words, &range),
            None => range,
        }
    };
    of_it.map(said).collect()
}

/// A range of days, or a single day.
fn range(words: &Words, from: Day, to: Day) -> String {
    if from == to { from.to_string() } else { paper::period(words, from, to) }
}

/// The leaflet, with method and label revision if it has several.
fn name(words: &Words, leaflet: &LeafletId, method: Option<&Method>, revision: Option<&str>) -> String {
    let mut parts = vec![leaflet.to_string()];
    parts.extend(method.map(ToString::to_string));
    parts.extend(revision.map(|revision| label_revision(words, revision)));
    parts.join(", ")
}

/// A missing fact, and the entry that would supply it.
fn gap(words: &Words, missing: &Missing) -> String {
    let fact = missing.from.map(|from| say::missing_from(words, from, &missing.fact));
    let fact = fact.as_deref().unwrap_or(&missing.fact);
    let supplied_by = missing.supplied_by.map(|kind| format!("{kind}: ")).unwrap_or_default();
    format!("{fact} ({supplied_by}{})", missing.how)
}

/// A dose, with the number of doses unless it is one.
fn with_times(words: &Words, dose: String, doses: Option<u8>) -> String {
    match doses {
        Some(0 | 1) => dose,
        Some(doses) => format!("{dose}, {}", say::times(words, doses)),
        None => format!("{dose}, {}", words.label(Label::OptionsTimesNotStated)),
    }
}

/// The ingredients of a mixture: medicine, water, sugar.
fn mixture(words: &Words, mixture: &Mixture) -> String {
    let mut parts = vec![say::medicine(words, mixture.medicine, &mixture.unit)];
    parts.extend(mixture.water_ml.map(|ml| say::water(words, ml)));
    parts.extend(mixture.sugar_g.map(|g| say::sugar(words, g)));
    parts.join(", ")
}

/// When supers may go on after a start, and when it is out relative to the flow.
fn free(words: &Words, start: Option<&StartReport>) -> String {
    let Some(report) = start else { return "-".to_owned() };
    let start = &report.start;
    let mut lines = vec![match (start.first_free_day, &report.supers_all_along) {
        (None, _) => words.label(Label::NotKnown).to_owned(),
        // Supers may stay on through the flow; only the day out is compared with the flow.
        (Some(_), Some(all_along)) => all_along.clone(),
        (Some(day), None) => day.to_string(),
    }];
    if let Some(day) = start.out_from_if_brood_is_seen.or(start.out_from_without_brood.and(start.out_from)) {
        lines.push(say::out_if_brood(words, day));
    }
    for margin in &start.before_flow {
        lines.push(format!("{}: {}", margin.year, say::to_spare(words, margin.days_to_spare)));
    }
    lines.join("\n")
}

/// The head of the answer, and the next flow.
fn head(words: &Words, what: &str, asked: &Asked) -> String {
    let mut head = say::head(words, what, asked.from, asked.to) + "\n";
    if let Some(what_if) = &asked.what_if {
        let mut assumed: Vec<String> = Vec::new();
        assumed.extend(what_if.power.map(|power| say::power(words, &power.to_string())));
        assumed.extend(what_if.access.map(|access| say::access(words, &access.to_string())));
        assumed.extend(what_if.ground.map(|ground| say::ground(words, &ground.to_string())));
        let assumed = assumed.join(", ");
        let said = what_if.until.map(|until| say::assumed_until(words, &assumed, until));
        head += &format!("  {}\n", said.unwrap_or_else(|| say::assumed(words, &assumed)));
    }
    head + &flow(words, asked.flow.as_ref())
}

/// The next flow in words.
fn flow(words: &Words, flow: Option<&Flow>) -> String {
    let Some(flow) = flow else { return format!("  {}\n", words.label(Label::OptionsNoFlow)) };
    let other = |day: &Day| *day != flow.usual;
    let mut years: Vec<String> = Vec::new();
    years.extend(flow.early.filter(other).map(|early| say::flow_early(words, early)));
    years.extend(flow.late.filter(other).map(|late| say::flow_late(words, late)));
    let stage = flow.stage.to_string();
    let said = if years.is_empty() {
        say::flow(words, &flow.forage, &stage, flow.usual)
    } else {
        say::flow_years(words, &flow.forage, &stage, flow.usual, &years.join(", "))
    };
    format!("  {said}\n")
}
