//! The sheets of the gaps.

use combclear_domain::basics::verdict::Verdict;
use combclear_domain::questions::register::Register;
use combclear_wording::gaps::GapsReport;
use combclear_wording::{Label, Words, paper};

use crate::sheet::{Cell, Fact, Paper, Sheet};
use crate::sheets::{keeper, keepers, sheet, size};

impl Paper {
    /// The gaps alone, with holding and keeper from the register in which they were found.
    #[must_use]
    pub fn of_gaps(words: &'static Words, gaps: &GapsReport, register: &Register) -> Paper {
        let laws: Vec<String> =
            gaps.laws.iter().map(|law| format!("{} ({})", law.title, law.jurisdiction)).collect();
        let laws = if laws.is_empty() { words.label(Label::None).to_owned() } else { laws.join("; ") };
        let archived = gaps
            .archived
            .iter()
            .map(|part| Fact { head: words.label(Label::InAnArchive), says: paper::archived(words, part) });
        let time = paper::time_as_of(words, gaps.from, gaps.to, gaps.as_of);
        Paper {
            words,
            title: words.label(Label::GapsTitle),
            holding: gaps.holding.to_string(),
            keeper: keeper(words, register),
            period: paper::period(words, gaps.from, gaps.to),
            facts: keepers(words, register)
                .into_iter()
                .chain([
                    Fact { head: words.label(Label::Time), says: time },
                    Fact { head: words.label(Label::LawsAsked), says: laws },
                ])
                .chain(archived)
                .collect(),
            sheets: vec![self::gaps(words, gaps)],
            notice: gaps.notice.clone(),
            size: size(register),
        }
    }
}

/// What is missing or irregular.
pub(crate) fn gaps(words: &'static Words, report: &GapsReport) -> Sheet {
    let columns = [
        (Label::Weight, 12),
        (Label::Entry, 20),
        (Label::WhatIsMissing, 28),
        (Label::HowToSupplyIt, 24),
        (Label::Law, 16),
    ];
    let rows = report.gaps.iter().map(|gap| {
        [
            Cell::text(paper::gap_weight(words, gap.gap.weight)),
            Cell::text(&gap.about),
            Cell::text(&gap.statement),
            Cell::text(&gap.supply),
            if gap.law.is_empty() {
                Cell::text(words.label(Label::None))
            } else {
                Cell::text(gap.law.join("; "))
            },
        ]
    });
    let mut sheet = sheet(words, "gaps", Label::GapsTitle, columns, rows);
    let complete = match report.complete {
        Verdict::Yes => Label::CompleteYes,
        Verdict::No => Label::CompleteNo,
        Verdict::Unknown => Label::CompleteUnknown,
    };
    sheet.notes.push(words.label(complete).to_owned());
    sheet.notes.extend(report.summary.iter().cloned());
    sheet
}
