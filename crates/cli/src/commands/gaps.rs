//! `combclear gaps`: what the law still misses in the record, and what was amiss.

use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;
use combclear_domain::questions::gaps::{Gap, GapWeight, GapsReport, LotCheck};
use combclear_domain::questions::options::amount_of;
use combclear_store::{Attached, Holdings, documents};

use super::register::period;
use super::{print, print_json, table};
use crate::args::{Gaps, Place};
use crate::failure::Failure;
use crate::{Outcome, place};

pub(crate) async fn run(at: &Place, ask: &Gaps) -> Result<Outcome, Failure> {
    let (leaflets, laws) = (&place::leaflets(at)?, place::laws()?);
    let (period, as_of) = period(&ask.time)?;
    let report = place::with_holding(at, async |holdings, holding| {
        let not_kept = not_kept(holdings, &holding).await?;
        let read = |holding: &_| GapsReport::of(holding, leaflets, laws, period, as_of, &not_kept);
        let report = holdings.read(&holding, read).await?;
        report.ok_or_else(|| Failure::new("the journal is empty", "take a journal in first"))
    })
    .await?;
    if ask.json {
        print_json(&report)?;
    } else {
        print(&all(&report))?;
    }
    Ok(match report.complete {
        Verdict::Yes => Outcome::Done,
        Verdict::No => Outcome::No,
        Verdict::Unknown => Outcome::Unknown,
    })
}

/// The contents of documents that are not kept as they were attached.
pub(super) async fn not_kept(holdings: &Holdings, holding: &HoldingName) -> Result<Vec<Hash>, Failure> {
    let attached = documents(holdings.journal().as_ref(), holding).await?;
    Ok(attached.iter().filter_map(Attached::fault).map(|fault| fault.content).collect())
}

fn all(report: &GapsReport) -> String {
    let laws: Vec<&str> = report.laws.iter().map(|law| law.title.as_str()).collect();
    let mut text =
        format!("Is the record complete? Holding {}, {} to {}\n", report.holding, report.from, report.to);
    for law in laws {
        text.push_str(&format!("  by {law}\n"));
    }
    text.push_str(&format!("\n{}\n", report.summary.join("\n")));
    for (weight, head) in [
        (GapWeight::Required, "Missing: the law wants it"),
        (GapWeight::Amiss, "Not as it should be"),
        (GapWeight::WhereApplicable, "Missing, if it applies"),
        (GapWeight::Advised, "Advised"),
    ] {
        let gaps: Vec<&Gap> = report.gaps.iter().filter(|gap| gap.weight == weight).collect();
        let lines = if weight == GapWeight::Advised { in_short(&gaps) } else { told_together(&gaps) };
        let lines = lines.concat();
        if !lines.is_empty() {
            text.push_str(&format!("\n{head}\n{lines}"));
        }
    }
    if !report.lots.is_empty() {
        text.push_str(&format!("\nThe book of each lot\n{}\n", lots(&report.lots)));
    }
    text.push_str(&format!("\n{}", report.notice));
    text
}

/// Each gap in one line, and below it how to supply what is missing: once where the next ones say the same.
fn told_together(gaps: &[&Gap]) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut gaps = gaps.iter().peekable();
    while let Some(gap) = gaps.next() {
        lines.push(format!("  {}\n", gap.statement));
        if gaps.peek().is_none_or(|next| next.supply != gap.supply) {
            lines.push(format!("    -> {}\n", gap.supply));
        }
    }
    lines
}

/// Advice of one sort in one line, with the numbers of the entries: it would drown the rest.
fn in_short(gaps: &[&Gap]) -> Vec<String> {
    let mut sorts: Vec<&str> = gaps.iter().map(|gap| gap.missing).collect();
    sorts.dedup();
    let mut known: Vec<&str> = Vec::new();
    let mut lines = Vec::new();
    for sort in sorts {
        if known.contains(&sort) {
            continue;
        }
        known.push(sort);
        let of_sort: Vec<&Gap> = gaps.iter().copied().filter(|gap| gap.missing == sort).collect();
        match of_sort.as_slice() {
            [_, _, _, ..] => {
                let numbers: Vec<String> = of_sort.iter().map(|gap| gap.place.to_string()).collect();
                // The sort only: what one of them says beyond it holds for that one alone.
                let what = sort.replace('_', " ");
                let count = of_sort.len();
                lines.push(format!("  {count} times: {what}\n    entries no. {}\n", numbers.join(", ")));
            }
            few => lines.extend(told_together(few)),
        }
    }
    lines
}

fn lots(lots: &[LotCheck]) -> String {
    let mut rows = table(["lot", "acquired", "given", "disposed of", "left", ""]);
    for lot in lots {
        let unit = lot.unit.map_or("", |unit| unit.as_str());
        let note = match (lot.over, lot.count_corrected_by.is_empty()) {
            (Some(over), _) => format!("{} more gone than acquired", amount_of(over, unit)),
            (None, false) => "the count was corrected".to_owned(),
            (None, true) => String::new(),
        };
        let left = lot.left.map_or_else(|| "-".to_owned(), |left| amount_of(left, unit));
        rows.add_row([
            lot.lot.to_string(),
            amount_of(lot.acquired, unit),
            amount_of(lot.given, unit),
            amount_of(lot.disposed, unit),
            left,
            note,
        ]);
    }
    rows.to_string()
}
