//! The whole board, and one colony with all its grounds.

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::questions::supering::Outcome as Came;
use combclear_wording::colonies::colonies;
use combclear_wording::supering::{MissingReport, SuperingReport};
use combclear_wording::terminal::{
    confidence, day, days_counted_by, said_in, said_with, supering as say, verdict,
};
use combclear_wording::{Label, Words};

use crate::layout::Table;

/// The heads of the board.
const HEADS: [Label; 5] =
    [Label::Colony, Label::SupersAsked, Label::LastBlocked, Label::FirstFree, Label::NextAndWhy];

/// All colonies, one table for each apiary.
pub(super) fn board(words: &Words, holding: &HoldingName, reports: &[SuperingReport], on: Day) -> String {
    let mut text = say::board(words, holding, &day(words, on)) + "\n";
    for apiary in reports.chunk_by(|one, other| one.apiary == other.apiary) {
        let name = apiary
            .first()
            .and_then(|report| report.apiary.as_ref())
            .map(ToString::to_string)
            .unwrap_or_default();
        let mut rows = Table::headed(words, HEADS);
        for report in apiary {
            rows.row([
                report.colony.to_string(),
                verdict(words, report.in_brief.answer).to_owned(),
                report.in_brief.last_blocked_day.map_or_else(|| "-".to_owned(), |day| day.to_string()),
                first_free(words, report),
                next(words, report),
            ]);
        }
        let section = format!("\n{name}\n{rows}\n");
        text.push_str(&section);
    }
    let count = |verdict: Verdict| reports.iter().filter(|report| report.in_brief.answer == verdict).count();
    let (yes, no, unknown) = (count(Verdict::Yes), count(Verdict::No), count(Verdict::Unknown));
    let notice = reports.first().map(|report| report.notice.as_str()).unwrap_or_default();
    let sums = say::sums(words, reports.len(), yes, no, unknown);
    text.push_str(&format!("\n{sums}. {}\n{notice}", words.label(Label::SuperingInBrackets)));
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
pub(super) fn one(words: &Words, report: &SuperingReport) -> String {
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
    let around =
        report.whole_apiary.iter().filter(|around| !around.left_out.is_empty()).map(|around| {
            say::left_out(words, &around.asks, &around.apiary, &colonies(words, &around.left_out))
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
