//! The board and one colony at a glance: the answer, why in a line, what next.

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ColonyName, HoldingName};
use combclear_wording::colonies::colonies;
use combclear_wording::supering::{BoardGroup, SuperingReport};
use combclear_wording::terminal::{day, supering as say, verdict};
use combclear_wording::{Label, Words};

use crate::layout::fits;

/// Colonies of which the same is said, together.
pub(super) fn board(words: &Words, holding: &HoldingName, reports: &[SuperingReport], on: Day) -> String {
    let groups = BoardGroup::all(reports);
    let count = |of: Verdict| groups.iter().filter(|group| group.answer == of).map(BoardGroup::count).sum();
    let (yes, no, unknown) = (count(Verdict::Yes), count(Verdict::No), count(Verdict::Unknown));
    let mut text = say::board(words, holding, &day(words, on)) + "\n";
    text.push_str(&format!("{}\n", say::sums(words, reports.len(), yes, no, unknown)));
    for groups in groups.chunk_by(|one, other| one.answer == other.answer) {
        if let Some(first) = groups.first() {
            text.push_str(&format!("\n{}\n", say::answer(words, first.answer)));
        }
        for group in groups {
            text.push_str(&together(words, group));
        }
    }
    let breaches: Vec<&ColonyName> = reports
        .iter()
        .filter(|report| report.at_a_glance.breaches > 0)
        .map(|report| &report.colony)
        .collect();
    if !breaches.is_empty() {
        text.push_str(&format!("\n{}\n", say::breaches_in(words, &colonies(words, breaches))));
    }
    let notice = reports.first().map(|report| report.notice.as_str()).unwrap_or_default();
    text.push_str(&format!("\n{}\n{notice}", words.label(Label::SuperingMore)));
    text
}

/// Colonies of which the same is said, why, and what is next. The reason stands beside them if there is room.
pub(in crate::commands) fn together(words: &Words, group: &BoardGroup) -> String {
    let colonies = format!("  {}", group.said(words));
    let mut lines = match &group.why {
        Some(why) if fits(&format!("{colonies}: {why}")) => vec![format!("{colonies}: {why}")],
        Some(why) => vec![format!("{colonies}:"), format!("    {why}")],
        None => vec![colonies],
    };
    lines.extend(group.next.iter().map(|next| format!("    {}", say::next(words, next))));
    lines.join("\n") + "\n"
}

/// One colony: the answer, what next, the days, and what is missing for an answer.
pub(super) fn one(words: &Words, report: &SuperingReport) -> String {
    let label = |label| words.label(label);
    let answer = verdict(words, report.in_brief.answer);
    let mut text = say::one(words, &report.colony, &day(words, report.on), answer) + "\n";
    let mut line = |said: &str| text.push_str(&format!("  {said}\n"));
    line(&report.in_brief.summary);
    match report.in_brief.answer {
        Verdict::Yes => {}
        Verdict::No => report.steps.iter().for_each(|step| line(&say::next(words, &step.statement))),
        Verdict::Unknown => {
            report.at_a_glance.next.iter().for_each(|next| line(&say::next(words, next)));
        }
    }
    let or =
        |known: Option<Day>, none| known.map_or_else(|| label(none).to_owned(), |known| known.to_string());
    line(&format!(
        "{}: {}",
        label(Label::LastBlockedDay),
        or(report.in_brief.last_blocked_day, Label::NoneOnRecord)
    ));
    let free = or(report.in_brief.first_free_day, Label::NotKnown);
    let free = report.in_brief.if_out_on.map_or_else(|| free.clone(), |out| say::if_out(words, &free, out));
    line(&format!("{}: {free}", label(Label::FirstFreeDay)));
    if report.at_a_glance.breaches > 0 {
        line(&say::breaches(words, report.at_a_glance.breaches));
    }
    line(&say::more(words, &report.colony));
    line(&report.notice);
    text
}
