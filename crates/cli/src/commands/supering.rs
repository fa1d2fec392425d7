//! `combclear supering`: the question, for named colonies or for all that are alive.

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::spelling::nearest;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::supering::Outcome as Came;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::supering::{MissingReport, SuperingReport};
use combclear_wording::terminal::{
    confidence, day, days_counted_by, failures, said_in, said_with, supering as say, verdict,
};
use combclear_wording::{Label, Words};

use super::{headed, print, print_json};
use crate::args::{Place, Supering};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, ask: &Supering) -> Result<Outcome, Failure> {
    let leaflets = &place::leaflets(at)?;
    let words = Words::english();
    let on = ask.on.unwrap_or_else(clock::today);
    let (name, reports) = place::with_holding(at, async |holdings, holding| {
        let reports = holdings.read(&holding, |holding| reports(words, holding, leaflets, ask, on)).await?;
        Ok((holding, reports.unwrap_or_else(|| Ok(Vec::new()))?))
    })
    .await?;
    match (ask.json, ask.colonies.is_empty()) {
        (true, _) => print_json(&reports)?,
        (false, true) => print(&board(words, &name, &reports, on))?,
        (false, false) => {
            for report in &reports {
                print(&one(words, report))?;
            }
        }
    }
    Ok(if ask.colonies.is_empty() { Outcome::Done } else { outcome(&reports) })
}

fn reports(
    words: &Words,
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
    Ok(SuperingReport::board(words, holding, leaflets, &colonies, on))
}

/// The colonies alive on the day, by apiary.
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

/// The failure for an apiary that is not recorded.
pub(super) fn no_apiary(holding: &Holding, apiary: &ApiaryName) -> Failure {
    let words = Words::english();
    let names: Vec<&str> = holding.apiaries().map(ApiaryName::as_str).collect();
    let help = nearest(apiary.as_str(), names.iter().copied()).map_or_else(
        || failures::apiaries_are(words, &names.join(", ")),
        |near| failures::did_you_mean(words, near),
    );
    Failure::new(failures::no_apiary(words, apiary), help)
}

pub(super) fn known(holding: &Holding, wanted: &[ColonyName]) -> Result<Vec<ColonyName>, Failure> {
    let words = Words::english();
    for colony in wanted {
        if holding.colony_file(colony).is_empty() {
            let names = holding.colonies().map(ColonyName::as_str);
            let help = nearest(colony.as_str(), names).map_or_else(
                || words.label(Label::AskedListColonies).to_owned(),
                |near| failures::did_you_mean(words, near),
            );
            return Err(Failure::new(failures::no_colony(words, colony), help));
        }
    }
    Ok(wanted.to_vec())
}

fn outcome(reports: &[SuperingReport]) -> Outcome {
    match reports.iter().map(|report| report.in_brief.answer).fold(Verdict::Yes, Verdict::and) {
        Verdict::Yes => Outcome::Done,
        Verdict::Unknown => Outcome::Unknown,
        Verdict::No => Outcome::No,
    }
}

/// The heads of the board.
const HEADS: [Label; 5] =
    [Label::Colony, Label::SupersAsked, Label::LastBlocked, Label::FirstFree, Label::NextAndWhy];

/// All colonies, one table for each apiary.
fn board(words: &Words, holding: &HoldingName, reports: &[SuperingReport], on: Day) -> String {
    let mut text = say::board(words, holding, &day(words, on)) + "\n";
    for apiary in reports.chunk_by(|one, other| one.apiary == other.apiary) {
        let name = apiary
            .first()
            .and_then(|report| report.apiary.as_ref())
            .map(ToString::to_string)
            .unwrap_or_default();
        let mut rows = headed(words, HEADS);
        for report in apiary {
            rows.add_row([
                report.colony.to_string(),
                verdict(words, report.in_brief.answer).to_owned(),
                report.in_brief.last_blocked_day.map_or_else(|| "-".to_owned(), |day| day.to_string()),
                first_free(words, report),
                next(words, report),
            ]);
        }
        let section = format!("\n{name}\n{}\n", rows.trim_fmt());
        text.push_str(&section);
    }
    let count = |verdict: Verdict| reports.iter().filter(|report| report.in_brief.answer == verdict).count();
    let (yes, no, unknown) = (count(Verdict::Yes), count(Verdict::No), count(Verdict::Unknown));
    let notice = reports.first().map(|report| report.notice.as_str()).unwrap_or_default();
    text.push_str(&format!("\n{}\n{notice}", say::sums(words, reports.len(), yes, no, unknown)));
    text
}

fn first_free(words: &Words, report: &SuperingReport) -> String {
    match (report.in_brief.first_free_day, report.in_brief.if_out_on) {
        (None, _) => words.label(Label::NotKnown).to_owned(),
        (Some(day), None) => day.to_string(),
        (Some(day), Some(_)) => format!("({day})"),
    }
}

/// The next steps; the deciding grounds if there are none or the answer is unknown; and the number of breaches.
fn next(words: &Words, report: &SuperingReport) -> String {
    let decides = match report.in_brief.answer {
        Verdict::Yes => None,
        Verdict::No => Some(Came::Broken),
        Verdict::Unknown => Some(Came::Unknown),
    };
    let deciding = report.grounds.iter().filter(|ground| ground.decides && Some(ground.outcome) == decides);
    let mut lines: Vec<String> = report.steps.iter().map(|step| step.statement.clone()).collect();
    if lines.is_empty() || report.in_brief.answer == Verdict::Unknown {
        lines.extend(deciding.map(|ground| ground.statement.clone()));
    }
    let breaches =
        report.grounds.iter().filter(|ground| !ground.decides && ground.outcome == Came::Broken).count();
    if breaches > 0 {
        lines.push(say::breaches(words, breaches));
    }
    lines.join("\n")
}

/// One colony with all the grounds of its answer.
fn one(words: &Words, report: &SuperingReport) -> String {
    let answer = verdict(words, report.in_brief.answer);
    let mut text = say::one(words, &report.colony, &day(words, report.on), answer) + "\n";
    let mut line = |indent: usize, said: &str| {
        text.push_str(&" ".repeat(indent));
        text.push_str(said);
        text.push('\n');
    };
    line(2, &report.in_brief.summary);
    let label = |label| words.label(label);
    let or =
        |known: Option<Day>, none| known.map_or_else(|| label(none).to_owned(), |known| day(words, known));
    let last = or(report.in_brief.last_blocked_day, Label::NoneOnRecord);
    line(2, &format!("{}: {last}", label(Label::LastBlockedDay)));
    let free = or(report.in_brief.first_free_day, Label::NotKnown);
    let free = report.in_brief.if_out_on.map_or_else(|| free.clone(), |out| say::if_out(words, &free, out));
    line(2, &format!("{}: {free}", label(Label::FirstFreeDay)));
    line(2, &format!("{}:", label(Label::Grounds)));
    for ground in &report.grounds {
        let came = match (ground.decides, ground.outcome) {
            (true, Came::Met | Came::Noted) => Label::Yes,
            (true, Came::Broken) => Label::No,
            (true, Came::Unknown) => Label::Unknown,
            (false, Came::Met) => Label::SuperingKept,
            (false, Came::Broken) => Label::SuperingBroken,
            (false, Came::Unknown) => Label::SuperingOpen,
            (false, Came::Noted) => Label::SuperingNote,
        };
        line(4, &format!("[{}] {}", label(came), ground.statement));
        for value in &ground.values {
            let from = match value.entry {
                Some(entry) => said_in(words, value.said_by, entry),
                None => said_with(words, value.said_by, &value.sources.join("; ")),
            };
            let sure = confidence(words, value.confidence);
            line(8, &format!("{} = {} ({sure}; {from})", value.of, value.value));
        }
        if !ground.entries.is_empty() {
            let entries: Vec<String> = ground.entries.iter().map(ToString::to_string).collect();
            line(8, &format!("{}: {}", label(Label::Entries), entries.join(", ")));
        }
    }
    let mut list = |head: Label, said: Vec<String>| {
        if !said.is_empty() {
            line(2, &format!("{}:", label(head)));
            for said in said {
                line(4, &said);
            }
        }
    };
    let first = report.in_brief.answer != Verdict::Yes;
    let next = if first { Label::SuperingMustHappenFirst } else { Label::SuperingComesNext };
    list(next, report.steps.iter().map(|step| step.statement.clone()).collect());
    let missing = report.missing.iter();
    let gap = |gap: &MissingReport| format!("{}: {} ({})", gap.fact, gap.how, gap.remedy.kind.as_str());
    list(Label::SuperingMissing, missing.clone().filter(|gap| gap.decides).map(gap).collect());
    list(Label::SuperingMissingElse, missing.filter(|gap| !gap.decides).map(gap).collect());
    let around = report.whole_apiary.iter().filter(|around| !around.left_out.is_empty()).map(|around| {
        let names: Vec<&str> = around.left_out.iter().map(ColonyName::as_str).collect();
        say::left_out(words, &around.asks, &around.apiary, &names.join(", "))
    });
    list(Label::SuperingWholeApiary, around.collect());
    let ahead = report.ahead.iter();
    list(
        Label::SuperingIfNothingElse,
        ahead.map(|span| say::ahead(words, span.from, span.to, verdict(words, span.answer))).collect(),
    );
    line(2, &days_counted_by(words, &report.notice, report.policy));
    text
}
