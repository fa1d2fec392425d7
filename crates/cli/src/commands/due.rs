//! `combclear due`: what must or may be done, from when, by when, apiary by apiary.

use std::path::Path;

use combclear_domain::basics::words::ColonyName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::due::{self, Weight};
use combclear_domain::questions::options::Span;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::Words;
use combclear_wording::due::{DueItem, DueReport, DueVisit};

use super::supering::no_apiary;
use super::{counted, print, print_as_is, print_json, table};
use crate::args::{Due, Place};
use crate::failure::{Failure, why};
use crate::{Outcome, clock, place};

/// How many days are asked about if nothing is said.
const DAYS_IF_NOT_SAID: u16 = 60;

pub(crate) async fn run(at: &Place, ask: &Due) -> Result<Outcome, Failure> {
    let (leaflets, laws) = (&place::leaflets(at)?, place::laws()?);
    let from = ask.from.unwrap_or_else(clock::today);
    let to = ask.to.unwrap_or_else(|| from.plus(DAYS_IF_NOT_SAID - 1));
    let span = Span::new(from, to)?;
    let report = place::with_holding(at, async |holdings, holding| {
        let report = holdings.read(&holding, |holding| report(holding, leaflets, laws, ask, span)).await?;
        report.unwrap_or_else(|| Err(Failure::new("the journal is empty", "take a journal in first")))
    })
    .await?;
    match &ask.calendar {
        Some(file) => write(file, &combclear_papers::calendar::calendar(&report))?,
        None if ask.json => print_json(&report)?,
        None => print(&all(&report))?,
    }
    Ok(Outcome::Done)
}

fn report(
    holding: &Holding,
    leaflets: &Leaflets,
    laws: &Laws,
    ask: &Due,
    span: Span,
) -> Result<DueReport, Failure> {
    match &ask.apiary {
        Some(apiary) if !holding.apiaries().any(|known| known == apiary) => Err(no_apiary(holding, apiary)),
        apiary => {
            let due = due::Due::of(holding, leaflets, laws, span, apiary.as_ref());
            Ok(DueReport::of(Words::english(), due))
        }
    }
}

/// A calendar is written anew each time: whoever subscribes to the file wants the newest.
fn write(file: &Path, calendar: &str) -> Result<(), Failure> {
    if file == Path::new("-") {
        // The line break after the last line is written anew.
        return print_as_is(calendar.strip_suffix('\n').unwrap_or(calendar));
    }
    std::fs::write(file, calendar).map_err(|error| {
        let message = format!("cannot write `{}`: {}", file.display(), why(&error));
        Failure::new(message, "name a file in a folder that is there")
    })
}

fn all(report: &DueReport) -> String {
    let mut text = format!(
        "What is due in {}, {} ({}) to {} ({})\n",
        report.holding,
        report.from,
        report.from.weekday(),
        report.to,
        report.to.weekday()
    );
    for visit in &report.visits {
        text.push_str(&one(visit));
    }
    let items = || report.items();
    let count = |weight: Weight| items().filter(|item| item.weight == weight).count();
    let overdue = items().filter(|item| item.overdue).count();
    text.push_str(&format!(
        "\n{}: {overdue} overdue. {} must be done, {} advice, {} may be. Dates are the days between which; both count.\n{}",
        counted(items().count(), "item", "items"),
        count(Weight::Must),
        count(Weight::Advice),
        count(Weight::May),
        report.notice
    ));
    text
}

fn one(visit: &DueVisit) -> String {
    let place = visit.apiary.as_ref().map_or_else(|| "At home".to_owned(), ToString::to_string);
    let when = match (visit.from, visit.by) {
        _ if visit.overdue => "overdue".to_owned(),
        (Some(from), Some(by)) if by == from => format!("on {by} ({})", by.weekday()),
        (Some(from), Some(by)) => format!("{from} ({}) to {by} ({})", from.weekday(), by.weekday()),
        (Some(from), None) => format!("from {from} ({})", from.weekday()),
        (None, Some(by)) => format!("by {by} ({}); the first day is not known", by.weekday()),
        (None, None) => "on a day that is not known".to_owned(),
    };
    let mut rows = table(["", "colonies", "from", "by", "what"]);
    for item in &visit.items {
        let colonies: Vec<&str> = item.colonies.iter().map(ColonyName::as_str).collect();
        rows.add_row([
            item.weight.as_str().to_owned(),
            if colonies.is_empty() { "-".to_owned() } else { colonies.join(", ") },
            item.from.map_or_else(|| "not known".to_owned(), |from| from.to_string()),
            by(item),
            item.text.clone(),
        ]);
    }
    format!("\n{place}, {when}\n{}\n", rows.trim_fmt())
}

fn by(item: &DueItem) -> String {
    item.by.map_or_else(|| "-".to_owned(), |by| by.to_string())
}
