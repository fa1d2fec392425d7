//! The sheet that a keeper carries round an apiary: one line for each colony in walking order, and above them what is due there.
//!
//! It asks the existing questions and takes their answers together; it computes nothing of its own.

use combclear_domain::Day;
use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName, LotName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::{EntryId, Event};
use combclear_domain::questions::due::{Due, DueKind, Weight};
use combclear_domain::recording::{InsideCourse, what_is_inside};
use combclear_domain::rules::leaflet::Leaflets;
use serde::Serialize;

use crate::due::DueReport;
use crate::supering::SuperingReport;
use crate::terminal::verdict;
use crate::words::say;
use crate::{Words, notice, pieces};

/// The sheet of one visit to one apiary.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct VisitSheet {
    /// The holding.
    pub holding: HoldingName,
    /// The apiary.
    pub apiary: ApiaryName,
    /// The day.
    pub on: Day,
    /// What must or may be done there on that day; what is overdue first.
    pub due: Vec<VisitTask>,
    /// The colonies, in walking order: by the mark on the hive, or by name where there is none; numbers in it count as numbers.
    pub colonies: Vec<VisitLine>,
    /// The last day on which every answer on the sheet is still the same, if nothing else is recorded.
    pub holds_through: Day,
    /// The notice: the leaflet on the pack, the prescriber and local law decide.
    pub notice: String,
}

/// Something to do at the apiary.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct VisitTask {
    /// The kind of task.
    pub kind: DueKind,
    /// Identifies the task, also when its days move.
    pub key: String,
    /// The task in a line: what, in which colonies, by when.
    pub line: String,
    /// The colonies.
    pub colonies: Vec<ColonyName>,
    /// The number of the entry of the first dose, if the task is about a course.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub first_dose: Option<u64>,
    /// The lots whose leaflet is to be read, if that is the task.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub leaflets_of: Vec<LotName>,
    /// Whether it must be done, is advised or is optional.
    pub weight: Weight,
    /// Whether its last day is past.
    pub overdue: bool,
}

/// One colony on the sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct VisitLine {
    /// The colony.
    pub colony: ColonyName,
    /// The mark on its hive, as first recorded.
    pub hive_mark: Option<String>,
    /// May it be supered: yes, no or unknown.
    pub answer: Verdict,
    /// The answer as a word to be shown.
    pub word: String,
    /// The main reason in a few words. Absent for a yes without reservation.
    pub why: Option<String>,
    /// What must happen next, or what would settle the answer.
    pub next: Option<String>,
    /// The first free day. With `if_out_on`, only if everything comes out on that day.
    pub first_free_day: Option<Day>,
    /// The earliest day on which everything inside may be out. Present if the first free day depends on it.
    pub if_out_on: Option<Day>,
    /// What is in it, or may be: the medicine and the day on which it was placed, one line for each.
    pub inside: Vec<String>,
    /// The last day on which this answer is still the same, if nothing else is recorded.
    pub holds_through: Day,
}

impl VisitSheet {
    /// Takes the answers together. `due` is what is due at this apiary from `on` to `on`, and `colonies` are those that stand there.
    #[must_use]
    pub fn of(
        words: &Words,
        holding: &Holding,
        leaflets: &Leaflets,
        apiary: &ApiaryName,
        colonies: &[ColonyName],
        due: Due,
        on: Day,
    ) -> VisitSheet {
        let due = DueReport::of(words, holding, due);
        let board = SuperingReport::board(words, holding, leaflets, colonies, on);
        let inside = what_is_inside(holding, leaflets, colonies, on);
        let mut lines: Vec<VisitLine> = board
            .into_iter()
            .zip(inside)
            .map(|(report, inside)| {
                let inside = inside.iter().map(|course| in_a_line(words, course)).collect();
                VisitLine::of(words, holding, report, inside)
            })
            .collect();
        sort_naturally(&mut lines, VisitLine::mark);
        let holds_through = lines.iter().map(|line| line.holds_through).min().unwrap_or(on);
        let tasks = due.visits.iter().flat_map(|visit| {
            visit.items.iter().map(|due| VisitTask {
                kind: due.item.kind,
                key: due.item.key.clone(),
                line: visit.in_brief(words, due, on),
                colonies: due.item.colonies.clone(),
                first_dose: first_dose(holding, due.item.anchor),
                leaflets_of: due.item.to_do.leaflets_of().to_vec(),
                weight: due.item.weight,
                overdue: due.item.overdue,
            })
        });
        VisitSheet {
            holding: holding.name().clone(),
            apiary: apiary.clone(),
            on,
            due: tasks.collect(),
            colonies: lines,
            holds_through,
            notice: notice(words),
        }
    }
}

impl VisitLine {
    fn of(words: &Words, holding: &Holding, report: SuperingReport, inside: Vec<String>) -> VisitLine {
        let brief = report.in_brief;
        VisitLine {
            hive_mark: holding.hive_mark(&report.colony).map(str::to_owned),
            colony: report.colony,
            answer: brief.answer,
            word: verdict(words, brief.answer).to_owned(),
            why: report.at_a_glance.why,
            next: report.at_a_glance.next,
            first_free_day: brief.first_free_day,
            if_out_on: brief.if_out_on,
            inside,
            holds_through: report.ahead.first().map_or(report.on, |span| span.to),
        }
    }

    fn mark(&self) -> &str {
        self.hive_mark.as_deref().unwrap_or(self.colony.as_str())
    }
}

fn in_a_line(words: &Words, InsideCourse { medicine, placed, number: _ }: &InsideCourse) -> String {
    say!(words, VisitInside, medicine = &*pieces::medicine(words, medicine), placed = placed)
}

fn first_dose(holding: &Holding, anchor: EntryId) -> Option<u64> {
    let record = holding.entry(anchor)?;
    matches!(record.event, Event::Administration(_)).then_some(record.seq)
}
