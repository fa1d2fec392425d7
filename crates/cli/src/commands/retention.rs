//! `combclear retention`: how long medicine records must be kept, and what may be archived.

use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::questions::retention;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::colonies;
use combclear_wording::retention::{DecidedBy, KeepUntil, KeptSet, RetentionReport};
use combclear_wording::terminal::{at_least, confidence, day, retention as say};
use combclear_wording::{Label, Words};

use super::show;
use crate::args::{Place, Retention};
use crate::failure::Failure;
use crate::layout::Table;
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, ask: &Retention) -> Result<Outcome, Failure> {
    let words = Words::english();
    let leaflets: &Leaflets = &place::leaflets(at)?;
    let laws = place::laws()?;
    let on = ask.on.unwrap_or_else(clock::today);
    let retention = |holding: &_| retention::Retention::of(holding, leaflets, laws, on);
    let report = place::ask(at, |holding| RetentionReport::of(words, retention(holding))).await?;
    let said = if ask.full { written } else { at_a_glance };
    show(ask.json, &report, |report| said(words, report))
}

/// Until when each lot must be kept, and what may be archived.
fn at_a_glance(words: &Words, report: &RetentionReport) -> String {
    let mut text = say::head(words, &report.holding, &day(words, report.on)) + "\n";
    text.push_str(&format!("{}\n", may_go(words, report)));
    let mut rows: Vec<[String; 2]> =
        report.sets.iter().map(|set| [lots(words, set), until(words, &set.keep)]).collect();
    sort_naturally(&mut rows, |[lots, _]| lots);
    let mut table = Table::headed(words, [Label::Lots, Label::KeepUntil]);
    for row in rows {
        table.row(row);
    }
    text.push_str(&format!("\n{table}\n"));
    if report.sets.iter().any(|set| matches!(set.keep, KeepUntil::AtLeast { .. })) {
        text.push_str(&format!("\n{}\n", words.label(Label::RetentionAtLeast)));
    }
    text.push_str(&format!("\n{}\n{}", words.label(Label::RetentionMore), report.notice));
    text
}

/// What may be archived on the day.
fn may_go(words: &Words, report: &RetentionReport) -> String {
    let could = report.sets.iter().filter(|set| set.could_go);
    let mut could: Vec<String> = could.map(|set| lots(words, set)).collect();
    sort_naturally(&mut could, String::as_str);
    match could.as_slice() {
        [] => say::nothing_could_go(words, report.on),
        some => say::could_go(words, some.len(), report.on, &some.join("; ")),
    }
}

fn written(words: &Words, report: &RetentionReport) -> String {
    let RetentionReport { holding, on, .. } = report;
    let mut text = say::head(words, holding, &day(words, *on)) + "\n";
    let heads = [Label::Lots, Label::Entries, Label::LastUsedOrDisposed, Label::KeepUntil, Label::Why];
    let mut rows = Table::headed(words, heads);
    let mut sets: Vec<(String, &KeptSet)> = report.sets.iter().map(|set| (lots(words, set), set)).collect();
    sort_naturally(&mut sets, |(lots, _)| lots);
    for (lots, set) in sets {
        rows.row([
            lots,
            set.entries.len().to_string(),
            last_use(set),
            until(words, &set.keep),
            why(words, &set.keep),
        ]);
    }
    text.push_str(&format!("\n{rows}\n\n"));
    text.push_str(&may_go(words, report));
    text.push('\n');
    let sources = sources(report);
    if !sources.is_empty() {
        text.push_str(&format!("{}:\n{}\n", words.label(Label::Sources), sources.join("\n")));
    }
    text.push_str(&report.notice);
    text
}

fn lots(words: &Words, set: &KeptSet) -> String {
    if set.lots.is_empty() {
        return words.label(Label::RetentionOwnPrescription).to_owned();
    }
    colonies::lots(words, set.lots.iter().map(|lot| &lot.lot.lot))
}

fn last_use(set: &KeptSet) -> String {
    let last = set.lots.iter().filter_map(|lot| lot.lot.last_use_or_disposal).max();
    last.map_or_else(|| "-".to_owned(), |day| day.to_string())
}

fn until(words: &Words, keep: &KeepUntil) -> String {
    match keep {
        KeepUntil::Until { day, .. } => day.to_string(),
        KeepUntil::AtLeast { day, .. } => at_least(words, &day.to_string()),
        KeepUntil::NotKnown { .. } => words.label(Label::RetentionKeepIt).to_owned(),
    }
}

fn why(words: &Words, keep: &KeepUntil) -> String {
    let said = |by: &DecidedBy| format!("{} ({})", by.statement, confidence(words, by.rule.confidence));
    match keep {
        KeepUntil::Until { decided_by, .. } => said(decided_by),
        KeepUntil::AtLeast { decided_by, because, .. } => {
            format!("{}\n{}", said(decided_by), because.join("\n"))
        }
        KeepUntil::NotKnown { missing } => missing.join("\n"),
    }
}

/// The sources of the deciding rules, each once.
fn sources(report: &RetentionReport) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for set in &report.sets {
        let (KeepUntil::Until { decided_by, .. } | KeepUntil::AtLeast { decided_by, .. }) = &set.keep else {
            continue;
        };
        for source in &decided_by.rule.sources {
            let line = format!("  {}: {source}", decided_by.rule.jurisdiction);
            if !lines.contains(&line) {
                lines.push(line);
            }
        }
    }
    lines
}
