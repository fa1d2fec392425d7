//! `combclear due`: what must or may be done, with first and last day, by apiary.

use std::path::Path;

use combclear_domain::basics::words::ColonyName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::due::{self, Weight};
use combclear_domain::questions::options::Span;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::due::{DueItem, DueReport, DueVisit};
use combclear_wording::terminal::{day, due as say, failures};
use combclear_wording::{Label, Words};

use super::supering::no_apiary;
use super::{headed, print, print_as_is, print_json};
use crate::args::{Due, Place};
use crate::failure::{Failure, why};
use crate::{Outcome, clock, place};

/// Days asked about by default.
const DAYS_IF_NOT_SAID: u16 = 60;

pub(crate) async fn run(at: &Place, ask: &Due) -> Result<Outcome, Failure> {
    let words = Words::english();
    let (leaflets, laws) = (&place::leaflets(at)?, place::laws()?);
    let from = ask.from.unwrap_or_else(clock::today);
    let to = ask.to.unwrap_or_else(|| from.plus(DAYS_IF_NOT_SAID - 1));
    let span = Span::new(from, to)?;
    let report = place::ask(at, |holding| report(words, holding, leaflets, laws, ask, span)).await??;
    match &ask.calendar {
        Some(file) => write(file, &combclear_papers::calendar::calendar(&report))?,
        None if ask.json => print_json(&report)?,
        None => print(&all(words, &report))?,
    }
    Ok(Outcome::Done)
}

fn report(
    words: &Words,
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
            Ok(DueReport::of(words, due))
        }
    }
}

/// Overwrites the file: a subscriber wants the newest calendar.
fn write(file: &Path, calendar: &str) -> Result<(), Failure> {
    if file == Path::new("-") {
        // Printing adds the last line break again.
        return print_as_is(calendar.strip_suffix('\n').unwrap_or(calendar));
    }
    std::fs::write(file, calendar).map_err(|error| {
        let message = failures::cannot_write(Words::english(), &file.display().to_string(), &why(&error));
        Failure::new(message, Label::FileNameAFolder)
    })
}

fn all(words: &Words, report: &DueReport) -> String {
    let (from, to) = (day(words, report.from), day(words, report.to));
    let mut text = say::head(words, &report.holding, &from, &to) + "\n";
    for visit in &report.visits {
        text.push_str(&one(words, visit));
    }
    let items = || report.items();
    let count = |weight: Weight| items().filter(|due| due.item.weight == weight).count();
    let overdue = items().filter(|due| due.item.overdue).count();
    let [must, advice, may] = [Weight::Must, Weight::Advice, Weight::May].map(count);
    let sums = say::sums(words, items().count(), overdue, must, advice, may);
    text.push_str(&format!("\n{sums}\n{}", report.notice));
    text
}

fn one(words: &Words, visit: &DueVisit) -> String {
    let place =
        visit.apiary.as_ref().map_or_else(|| words.label(Label::AtHome).to_owned(), ToString::to_string);
    let when = match (visit.from, visit.by) {
        _ if visit.overdue => words.label(Label::Overdue).to_owned(),
        (Some(from), Some(by)) if by == from => say::on(words, &day(words, by)),
        (Some(from), Some(by)) => say::between(words, &day(words, from), &day(words, by)),
        (Some(from), None) => say::from(words, &day(words, from)),
        (None, Some(by)) => say::by(words, &day(words, by)),
        (None, None) => words.label(Label::OnUnknownDay).to_owned(),
    };
    let mut rows = headed(words, [Label::Blank, Label::Colonies, Label::From, Label::By, Label::What]);
    for DueItem { item, text, .. } in &visit.items {
        let colonies: Vec<&str> = item.colonies.iter().map(ColonyName::as_str).collect();
        rows.add_row([
            say::weight(words, item.weight).to_owned(),
            if colonies.is_empty() { "-".to_owned() } else { colonies.join(", ") },
            item.from.map_or_else(|| words.label(Label::NotKnown).to_owned(), |from| from.to_string()),
            item.by.map_or_else(|| "-".to_owned(), |by| by.to_string()),
            text.clone(),
        ]);
    }
    format!("\n{place}, {when}\n{}\n", rows.trim_fmt())
}
