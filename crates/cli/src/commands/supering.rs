//! `combclear supering`: the question, for named colonies or for all that are alive.

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::diagnostic::nearest;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::supering::Outcome as Came;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::Words;
use combclear_wording::supering::{MissingReport, SuperingReport};

use super::{print, print_json, table};
use crate::args::{Place, Supering};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, ask: &Supering) -> Result<Outcome, Failure> {
    let leaflets = &place::leaflets(at)?;
    let on = ask.on.unwrap_or_else(clock::today);
    let (name, reports) = place::with_holding(at, async |holdings, holding| {
        let reports = holdings.read(&holding, |holding| reports(holding, leaflets, ask, on)).await?;
        Ok((holding, reports.unwrap_or_else(|| Ok(Vec::new()))?))
    })
    .await?;
    match (ask.json, ask.colonies.is_empty()) {
        (true, _) => print_json(&reports)?,
        (false, true) => print(&board(&name, &reports, on))?,
        (false, false) => {
            for report in &reports {
                print(&one(report))?;
            }
        }
    }
    Ok(if ask.colonies.is_empty() { Outcome::Done } else { outcome(&reports) })
}

fn reports(
    holding: &Holding,
    leaflets: &Leaflets,
    ask: &Supering,
    on: Day,
) -> Result<Vec<SuperingReport>, Failure> {
    let colonies: Vec<ColonyName> = match &ask.apiary {
        Some(apiary) => at_apiary(holding, apiary, on)?,
        None if ask.colonies.is_empty() => alive(holding, on),
        None => known(holding, &ask.colonies)?,
    };
    Ok(SuperingReport::board(Words::english(), holding, leaflets, &colonies, on))
}

/// The colonies that live on the day, apiary by apiary.
fn alive(holding: &Holding, on: Day) -> Vec<ColonyName> {
    holding
        .apiaries()
        .flat_map(|apiary| holding.colonies_at(apiary, on).cloned().collect::<Vec<_>>())
        .collect()
}

fn at_apiary(holding: &Holding, apiary: &ApiaryName, on: Day) -> Result<Vec<ColonyName>, Failure> {
    if holding.apiaries().any(|known| known == apiary) {
        return Ok(holding.colonies_at(apiary, on).cloned().collect());
    }
    Err(no_apiary(holding, apiary))
}

/// The failure of an apiary that is not recorded.
pub(super) fn no_apiary(holding: &Holding, apiary: &ApiaryName) -> Failure {
    let names: Vec<&str> = holding.apiaries().map(ApiaryName::as_str).collect();
    let help = nearest(apiary.as_str(), names.iter().copied()).map_or_else(
        || format!("the apiaries are: {}", names.join(", ")),
        |near| format!("did you mean `{near}`?"),
    );
    Failure::new(format!("there is no apiary `{apiary}`"), help)
}

pub(super) fn known(holding: &Holding, wanted: &[ColonyName]) -> Result<Vec<ColonyName>, Failure> {
    for colony in wanted {
        if holding.colony_file(colony).is_empty() {
            let names = holding.colonies().map(ColonyName::as_str);
            let help = nearest(colony.as_str(), names).map_or_else(
                || "list them all: combclear supering".to_owned(),
                |near| format!("did you mean `{near}`?"),
            );
            return Err(Failure::new(format!("there is no colony `{colony}`"), help));
        }
    }
    Ok(wanted.to_vec())
}

fn outcome(reports: &[SuperingReport]) -> Outcome {
    match reports.iter().map(|report| report.answer).fold(Verdict::Yes, Verdict::and) {
        Verdict::Yes => Outcome::Done,
        Verdict::Unknown => Outcome::Unknown,
        Verdict::No => Outcome::No,
    }
}

/// All colonies, one table for each apiary.
fn board(holding: &HoldingName, reports: &[SuperingReport], on: Day) -> String {
    let mut text = format!("May they be supered? Holding {holding}, {on} ({})\n", on.weekday());
    for apiary in reports.chunk_by(|one, other| one.apiary == other.apiary) {
        let name = apiary
            .first()
            .and_then(|report| report.apiary.as_ref())
            .map(ToString::to_string)
            .unwrap_or_default();
        let mut rows = table(["colony", "supers?", "last blocked", "first free", "what is next, and why"]);
        for report in apiary {
            rows.add_row([
                report.colony.to_string(),
                report.answer.as_str().to_owned(),
                report.last_blocked_day.map_or_else(|| "-".to_owned(), |day| day.to_string()),
                first_free(report),
                next(report),
            ]);
        }
        let section = format!("\n{name}\n{}\n", rows.trim_fmt());
        text.push_str(&section);
    }
    let count = |verdict: Verdict| reports.iter().filter(|report| report.answer == verdict).count();
    let (yes, no, unknown) = (count(Verdict::Yes), count(Verdict::No), count(Verdict::Unknown));
    let notice = reports.first().map(|report| report.notice.as_str()).unwrap_or_default();
    let sums = format!(
        "\n{} colonies: {yes} yes, {no} no, {unknown} unknown. A first free day in brackets holds if what is in comes out as \
         early as it may.\n{notice}",
        reports.len(),
    );
    text.push_str(&sums);
    text
}

fn first_free(report: &SuperingReport) -> String {
    match (report.first_free_day, report.if_out_on) {
        (None, _) => "not known".to_owned(),
        (Some(day), None) => day.to_string(),
        (Some(day), Some(_)) => format!("({day})"),
    }
}

/// What must happen first; where nothing can be done, what decides; and how many breaches stand.
fn next(report: &SuperingReport) -> String {
    let decides = match report.answer {
        Verdict::Yes => None,
        Verdict::No => Some(Came::Broken),
        Verdict::Unknown => Some(Came::Unknown),
    };
    let deciding = report.grounds.iter().filter(|ground| ground.decides && Some(ground.outcome) == decides);
    let mut lines: Vec<String> = report.steps.iter().map(|step| step.statement.clone()).collect();
    if lines.is_empty() || report.answer == Verdict::Unknown {
        lines.extend(deciding.map(|ground| ground.statement.clone()));
    }
    let breaches =
        report.grounds.iter().filter(|ground| !ground.decides && ground.outcome == Came::Broken).count();
    if breaches > 0 {
        let noun = if breaches == 1 { "breach" } else { "breaches" };
        lines.push(format!("{breaches} {noun} on record"));
    }
    lines.join("\n")
}

/// One colony with everything behind its answer.
fn one(report: &SuperingReport) -> String {
    let mut text =
        format!("{} on {} ({}): {}\n", report.colony, report.on, report.on.weekday(), report.answer.as_str());
    let mut line = |indent: usize, said: &str| {
        text.push_str(&" ".repeat(indent));
        text.push_str(said);
        text.push('\n');
    };
    line(2, &report.summary);
    let day = |day: Option<Day>, none: &str| {
        day.map_or_else(|| none.to_owned(), |day| format!("{day} ({})", day.weekday()))
    };
    line(2, &format!("last blocked day: {}", day(report.last_blocked_day, "none on record")));
    let condition = report.if_out_on.map(|out| format!(", if all is out on {out}")).unwrap_or_default();
    line(2, &format!("first free day: {}{condition}", day(report.first_free_day, "not known")));
    line(2, "grounds:");
    for ground in &report.grounds {
        let came = match (ground.decides, ground.outcome) {
            (true, Came::Met | Came::Noted) => "yes",
            (true, Came::Broken) => "no",
            (true, Came::Unknown) => "unknown",
            (false, Came::Met) => "on record, kept",
            (false, Came::Broken) => "on record, broken",
            (false, Came::Unknown) => "on record, open",
            (false, Came::Noted) => "note",
        };
        line(4, &format!("[{came}] {}", ground.statement));
        for value in &ground.values {
            let from = match value.entry {
                Some(entry) => format!("{} {entry}", value.said_by.replace('_', " ")),
                None => format!("{}, {}", value.said_by, value.sources.join("; ")),
            };
            let confidence =
                format!("{:?}", value.confidence).to_lowercase().replace("secondhand", "second hand");
            line(8, &format!("{} = {} ({confidence}; {from})", value.of, value.value));
        }
        if !ground.entries.is_empty() {
            let entries: Vec<String> = ground.entries.iter().map(ToString::to_string).collect();
            line(8, &format!("entries: {}", entries.join(", ")));
        }
    }
    let mut list = |head: &str, said: Vec<String>| {
        if !said.is_empty() {
            line(2, head);
            for said in said {
                line(4, &said);
            }
        }
    };
    let next = if report.answer == Verdict::Yes { "what comes next:" } else { "what must happen first:" };
    list(next, report.steps.iter().map(|step| step.statement.clone()).collect());
    let missing = report.missing.iter();
    let gap = |gap: &MissingReport| format!("{}: {} ({})", gap.fact, gap.how, gap.supplied_by);
    list("what is missing for an answer:", missing.clone().filter(|gap| gap.decides).map(gap).collect());
    list("what else is missing:", missing.filter(|gap| !gap.decides).map(gap).collect());
    let around = report.whole_apiary.iter().filter(|around| !around.left_out.is_empty()).map(|around| {
        let names: Vec<&str> = around.left_out.iter().map(ColonyName::as_str).collect();
        format!("{} At {} these got none in that round: {}", around.asks, around.apiary, names.join(", "))
    });
    list("the whole apiary:", around.collect());
    let ahead = report.ahead.iter();
    list(
        "if nothing else is recorded:",
        ahead.map(|span| format!("{} to {}: {}", span.from, span.to, span.answer.as_str())).collect(),
    );
    line(2, &format!("{} Days counted by {}.", report.notice, report.policy));
    text
}
