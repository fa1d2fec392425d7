//! `combclear options`: what else can be used in a colony, or at an apiary.

mod apiary;
mod colony;

use combclear_domain::Quantity;
use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::words::{LeafletId, Method};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::options::{
    ApiaryOptions, Ask, ColonyOptions, FlowReport, Span, StartDays, Usability, WhatIf,
};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::Words;
use combclear_wording::options::{ApiaryReport, Missing, OptionsReport, Solution, StartReport};

use super::supering::{known, no_apiary};
use super::{print, print_json};
use crate::args::{Options, Place};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

/// How many days are asked about if nothing is said.
const DAYS_IF_NOT_SAID: u16 = 60;

/// What was asked, answered.
enum Report {
    Colony(Box<OptionsReport>),
    Apiary(Box<ApiaryReport>),
}

pub(crate) async fn run(at: &Place, ask: &Options) -> Result<Outcome, Failure> {
    let leaflets = &place::leaflets(at)?;
    let from = ask.from.unwrap_or_else(clock::today);
    let to = ask.to.unwrap_or_else(|| from.plus(DAYS_IF_NOT_SAID - 1));
    let span = Span::new(from, to)?;
    let asked = &Ask { span, as_of: ask.as_of.unwrap_or(from), what_if: what_if(ask, from)? };
    let report = place::with_holding(at, async |holdings, holding| {
        let report = holdings.read(&holding, |holding| report(holding, leaflets, ask, asked)).await?;
        report.unwrap_or_else(|| Err(Failure::new("the journal is empty", "take a journal in first")))
    })
    .await?;
    let report = match report {
        Report::Colony(report) => Report::Colony(Box::new(colony::only(*report, ask.leaflet.as_deref())?)),
        apiary @ Report::Apiary(_) => apiary,
    };
    match (&report, ask.json) {
        (Report::Colony(report), true) => print_json(report)?,
        (Report::Apiary(report), true) => print_json(report)?,
        (Report::Colony(report), false) => match &ask.leaflet {
            Some(_) => print(&colony::in_full(report))?,
            None => print(&colony::all(report))?,
        },
        (Report::Apiary(report), false) => print(&apiary::all(report))?,
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
        Some(_) if what_if.is_empty() => Err(Failure::new(
            "`--site-until` is given, but nothing is assumed of the site",
            "give --power, --access or --ground as well, or leave it out",
        )),
        Some(until) if until < from => Err(Failure::new(
            format!("what is assumed would end on {until}, before the first day, {from}"),
            "give a later day, or leave it out",
        )),
        _ => Ok(what_if),
    }
}

fn report(holding: &Holding, leaflets: &Leaflets, ask: &Options, asked: &Ask) -> Result<Report, Failure> {
    if let Some(apiary) = &ask.apiary {
        let answer = ApiaryOptions::of(holding, leaflets, apiary, asked);
        return answer
            .map(|answer| Report::Apiary(Box::new(ApiaryReport::of(Words::english(), &answer))))
            .ok_or_else(|| no_apiary(holding, apiary));
    }
    let colony = ask.colony.as_slice();
    let Some(colony) = known(holding, colony)?.into_iter().next() else {
        return Err(Failure::new("no colony is named", "name a colony, or an apiary with --apiary"));
    };
    let answer = ColonyOptions::of(holding, leaflets, &colony, asked);
    Ok(Report::Colony(Box::new(OptionsReport::of(Words::english(), &answer))))
}

/// The word for an answer.
const fn answer(answer: Usability) -> &'static str {
    match answer {
        Usability::Usable => "usable",
        Usability::Unknown => "unknown",
        Usability::RuledOut => "ruled out",
    }
}

/// Start days of one answer, a line for each range.
fn starts(days: &[StartDays], of: Usability) -> Vec<String> {
    let of_it = days.iter().filter(|days| days.answer == of);
    let said = |days: &StartDays| {
        let range = range(days.from, days.to);
        match days.in_a_usual_year {
            Some(true) => format!("{range} (usable in a usual year)"),
            Some(false) => format!("{range} (not in a usual year)"),
            None => range,
        }
    };
    of_it.map(said).collect()
}

/// Days from one to another, or the one day.
fn range(from: Day, to: Day) -> String {
    if from == to { from.to_string() } else { format!("{from} to {to}") }
}

/// How long before the flow it is out, or how much too late.
fn to_spare(days: i64) -> String {
    if days < 0 { format!("{} days short", -days) } else { format!("{days} days to spare") }
}

/// The leaflet, and what tells the option from others of the same leaflet.
fn name(leaflet: &LeafletId, method: Option<&Method>, revision: Option<&str>) -> String {
    let method = method.map(|method| format!(", {method}")).unwrap_or_default();
    let revision = revision.map(|revision| format!(", label {revision}")).unwrap_or_default();
    format!("{leaflet}{method}{revision}")
}

/// Something that is not known, and the entry that would supply it.
fn gap(missing: &Missing) -> String {
    let from = missing.from.map(|from| format!("from {from} on, ")).unwrap_or_default();
    let supplied_by = missing.supplied_by.map(|kind| format!("{kind}: ")).unwrap_or_default();
    format!("{from}{} ({supplied_by}{})", missing.fact, missing.how)
}

/// How often a dose is given, where it is not once.
fn times(doses: Option<u8>) -> String {
    match doses {
        Some(0 | 1) => String::new(),
        Some(doses) => format!(", {doses} times"),
        None => ", how often is not stated".to_owned(),
    }
}

/// What has to be mixed, of the medicine and of what goes with it.
fn mixture(solution: &Solution) -> String {
    let part = |of: Option<Quantity>, unit: &str| of.map(|of| format!(", {of} {unit}")).unwrap_or_default();
    format!(
        "{} {}{}{}",
        solution.medicine,
        solution.unit,
        part(solution.water_ml, "ml water"),
        part(solution.sugar_g, "g sugar")
    )
}

/// When supers may go on after a start, and how that lies to the flow.
fn free(start: Option<&StartReport>) -> String {
    let Some(start) = start else { return "-".to_owned() };
    let mut lines = vec![match (start.first_free_day, &start.supers_all_along) {
        (None, _) => "not known".to_owned(),
        // They may lie over it; what is told of the flow is when it is out.
        (Some(_), Some(all_along)) => all_along.clone(),
        (Some(day), None) => day.to_string(),
    }];
    if let Some(day) = start.out_from_if_brood_is_seen.or(start.out_from_without_brood.and(start.out_from)) {
        lines.push(format!("out from {day} if brood is seen"));
    }
    for margin in &start.before_flow {
        lines.push(format!("{}: {}", margin.year, to_spare(margin.days_to_spare)));
    }
    lines.join("\n")
}

/// What the answer as a whole is about.
fn head(what: &str, from: Day, to: Day, what_if: Option<&WhatIf>) -> String {
    let mut head = format!("What can be used? {what}, to be started from {from} to {to}\n");
    if let Some(what_if) = what_if {
        let mut assumed: Vec<String> = Vec::new();
        assumed.extend(what_if.power.map(|power| format!("power {power}")));
        assumed.extend(what_if.access.map(|access| format!("access {access}")));
        assumed.extend(what_if.ground.map(|ground| format!("ground {ground}")));
        let until = what_if.until.map(|until| format!(", until {until}")).unwrap_or_default();
        head += &format!("  assumed of the site, not recorded: {}{until}\n", assumed.join(", "));
    }
    head
}

/// The next flow in words.
fn flow(flow: Option<&FlowReport>) -> String {
    let Some(flow) = flow else { return "  next nectar flow: none on record\n".to_owned() };
    let other = |day: &Day| *day != flow.usual;
    let mut years: Vec<String> = Vec::new();
    years.extend(flow.early.filter(other).map(|early| format!("early {early}")));
    years.extend(flow.late.filter(other).map(|late| format!("late {late}")));
    let years = if years.is_empty() { String::new() } else { format!(" ({})", years.join(", ")) };
    format!("  next nectar flow: {}, {} from {}{years}\n", flow.forage, flow.stage, flow.usual)
}
