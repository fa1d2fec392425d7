//! The sheets of what the law still misses.

use combclear_domain::basics::verdict::Verdict;
use combclear_domain::questions::gaps::GapWeight;
use combclear_wording::gaps::GapsReport;
use combclear_wording::register::RegisterReport;

use crate::sheet::{Cell, Fact, Paper, Piece, Sheet};
use crate::sheets::{keeper, sheet};

impl Paper {
    /// The gaps alone, with the holding and the keeper of the register that they were found in.
    #[must_use]
    pub fn of_gaps(gaps: &GapsReport, report: &RegisterReport) -> Paper {
        let laws: Vec<String> =
            gaps.laws.iter().map(|law| format!("{} ({})", law.title, law.jurisdiction)).collect();
        let laws = if laws.is_empty() { "none".to_owned() } else { laws.join("; ") };
        let time = format!("{} to {}, both days included; as of {}", gaps.from, gaps.to, gaps.as_of);
        Paper {
            title: "What the register still misses",
            holding: gaps.holding.to_string(),
            keeper: keeper(report),
            period: format!("{} to {}", gaps.from, gaps.to),
            facts: vec![
                Fact { head: "Keeper", says: keeper(report) },
                Fact { head: "Time", says: time },
                Fact { head: "Laws asked", says: laws },
            ],
            sheets: sheets(gaps).into(),
            notice: gaps.notice.clone(),
        }
    }
}

/// The gaps, and whether the book of each lot comes out even.
pub(crate) fn sheets(report: &GapsReport) -> [Sheet; 2] {
    [gaps(report), books(report)]
}

fn gaps(report: &GapsReport) -> Sheet {
    let columns =
        [("weight", 12), ("entry", 20), ("what is missing", 28), ("how to supply it", 24), ("law", 16)];
    let rows = report.gaps.iter().map(|gap| {
        [
            Cell::text(weight(gap.weight)),
            Cell::text(&gap.about),
            Cell::text(&gap.statement),
            Cell::text(&gap.supply),
            if gap.law.is_empty() { Cell::text("none") } else { Cell::text(gap.law.join("; ")) },
        ]
    });
    let mut sheet = sheet("gaps", "What the register still misses", columns, rows);
    let complete = match report.complete {
        Verdict::Yes => "Complete: yes. Everything that these laws require is recorded.",
        Verdict::No => "Complete: no. Something that the law requires is missing.",
        Verdict::Unknown => "Complete: unknown. For some entry no law could be asked.",
    };
    sheet.notes.push(complete.to_owned());
    sheet.notes.extend(report.summary.iter().cloned());
    sheet
}

fn weight(weight: GapWeight) -> &'static str {
    match weight {
        GapWeight::Required => "required",
        GapWeight::Amiss => "not as it should be",
        GapWeight::WhereApplicable => "required where it applies",
        GapWeight::Advised => "advised",
    }
}

fn books(report: &GapsReport) -> Sheet {
    let columns = [
        ("lot", 16),
        ("medicine", 16),
        ("acquired", 11),
        ("given", 11),
        ("disposed of", 11),
        ("left by the book", 14),
        ("count", 21),
    ];
    let rows = report.lots.iter().map(|lot| {
        let amount = |quantity| Cell::of(Piece::Amount(quantity, lot.unit));
        let left = match (lot.left, lot.over) {
            (Some(left), _) => amount(left),
            (None, Some(over)) => {
                Cell::default().and("more is gone than was acquired, by", Piece::Amount(over, lot.unit))
            }
            (None, None) => Cell::text("not known"),
        };
        let count = match lot.count_corrected_by.len() {
            0 => "not corrected".to_owned(),
            1 => "corrected by 1 entry".to_owned(),
            entries => format!("corrected by {entries} entries"),
        };
        [
            Cell::text(lot.lot.to_string()),
            Cell::text(lot.medicine.to_string()),
            amount(lot.acquired),
            amount(lot.given),
            amount(lot.disposed),
            left,
            Cell::text(count),
        ]
    });
    sheet("books", "The book of each lot", columns, rows)
}
