//! `combclear due`: what must or may be done, with first and last day, by apiary.

use std::path::Path;

use combclear_domain::Day;
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::due::{self, DueKind, Weight};
use combclear_domain::questions::options::Span;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::colonies::colonies;
use combclear_wording::due::{DueItem, DueReport, DueVisit};
use combclear_wording::terminal::{day, due as say, failures};
use combclear_wording::{Label, Words};

use super::supering::no_apiary;
use super::{print, print_as_is, print_json};
use crate::args::{Due, Place};
use crate::failure::{Failure, why};
use crate::layout::Table;
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
        Some(file) => write(file, &combclear_papers::calendar::calendar(Words::english(), &report))?,
        None if ask.json => print_json(&report)?,
        None if ask.full => print(&in_full(words, &report))?,
        None => print(&at_a_glance(words, &report))?,
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
            Ok(DueReport::of(words, holding, due))
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

/// What is due, visit by visit, a line for each task.
fn at_a_glance(words: &Words, report: &DueReport) -> String {
    let mut text = head(words, report) + &sums(words, report) + "\n";
    for visit in &report.visits {
        text.push_str(&format!("\n{}\n{}", heading(words, visit), brief(words, visit, report.from)));
    }
    text.push_str(&format!("\n{}\n{}", words.label(Label::DueMore), report.notice));
    text
}

/// The tasks of a visit, a line for each. Those to complete the record are taken together.
pub(super) fn brief(words: &Words, visit: &DueVisit, asked: Day) -> String {
    let (records, tasks): (Vec<&DueItem>, Vec<&DueItem>) =
        visit.items.iter().partition(|due| due.item.kind == DueKind::LegalGap);
    // The words for the weight have six letters at most.
    let line = |weight: Weight, said: &str| format!("  {:6}  {said}\n", say::weight(words, weight));
    let mut lines: Vec<String> =
        tasks.iter().map(|due| line(due.item.weight, &visit.in_brief(words, due, asked))).collect();
    lines.extend(records.first().map(|due| line(due.item.weight, &say::entries_lack(words, records.len()))));
    lines.concat()
}

fn in_full(words: &Words, report: &DueReport) -> String {
    let mut text = head(words, report);
    for visit in &report.visits {
        text.push_str(&one(words, visit));
    }
    let (sums, both) = (sums(words, report), words.label(Label::DueBothDays));
    text.push_str(&format!("\n{sums} {both}\n{}", report.notice));
    text
}

fn head(words: &Words, report: &DueReport) -> String {
    say::head(words, &report.holding, &day(words, report.from), &day(words, report.to)) + "\n"
}

fn sums(words: &Words, report: &DueReport) -> String {
    let items = || report.items();
    let count = |weight: Weight| items().filter(|due| due.item.weight == weight).count();
    let overdue = items().filter(|due| due.item.overdue).count();
    let [must, advice, may] = [Weight::Must, Weight::Advice, Weight::May].map(count);
    say::sums(words, items().count(), overdue, must, advice, may)
}

/// Where, and when.
pub(super) fn heading(words: &Words, visit: &DueVisit) -> String {
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
    format!("{place}, {when}")
}

fn one(words: &Words, visit: &DueVisit) -> String {
    let mut rows = Table::headed(words, [Label::Blank, Label::Colonies, Label::From, Label::By, Label::What]);
    for DueItem { item, text, .. } in &visit.items {
        rows.row([
            say::weight(words, item.weight).to_owned(),
            if item.colonies.is_empty() { "-".to_owned() } else { colonies(words, &item.colonies) },
            item.from.map_or_else(|| words.label(Label::NotKnown).to_owned(), |from| from.to_string()),
            item.by.map_or_else(|| "-".to_owned(), |by| by.to_string()),
            text.clone(),
        ]);
    }
    format!("\n{}\n{rows}\n", heading(words, visit))
}
