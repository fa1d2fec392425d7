//! The morning's page of a keeper: what is due, what may be supered, what is not known, and what the record lacks.
//!
//! It asks the existing questions and takes their answers together; it computes nothing of its own.

use std::collections::BTreeSet;

use combclear_domain::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ColonyName, HoldingName};
use combclear_domain::questions::due::DueKind;
use combclear_domain::questions::gaps::{GapWeight, Gaps};
use serde::Serialize;

use crate::due::{DueItem, DueReport, DueVisit};
use crate::supering::{BoardGroup, ColoniesAt, SuperingReport};
use crate::{Words, notice};

/// The morning's page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TodayReport {
    /// The holding.
    pub holding: HoldingName,
    /// The day.
    pub on: Day,
    /// What must or should be done in the coming days, visit by visit; overdue items first. What the other lists say is left
    /// out.
    pub visits: Vec<DueVisit>,
    /// The colonies that may be supered.
    pub may_be_supered: Vec<BoardGroup>,
    /// Those of them for which this is the first free day.
    pub free_from_today: Vec<ColoniesAt>,
    /// The number of colonies that may not be supered.
    pub may_not_be_supered: usize,
    /// The colonies for which it is not known, with what would settle it.
    pub not_known: Vec<BoardGroup>,
    /// What the record of this year lacks.
    pub records: Records,
    /// The notice: the leaflet on the pack, the prescriber and local law decide.
    pub notice: String,
}

/// What the record lacks, in numbers.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Records {
    /// Whether it meets every requirement of the law.
    pub complete: Verdict,
    /// Items that the law requires and that are missing.
    pub required: usize,
    /// Irregularities.
    pub irregular: usize,
}

impl TodayReport {
    /// Takes the answers together: what is due from `on`, the board of that day, and the gaps of the year so far.
    #[must_use]
    pub fn of(words: &Words, on: Day, due: DueReport, board: &[SuperingReport], gaps: &Gaps) -> TodayReport {
        let groups = BoardGroup::all(board);
        let of = |answer: Verdict| -> Vec<BoardGroup> {
            groups.iter().filter(|group| group.answer == answer).cloned().collect()
        };
        let not_known = of(Verdict::Unknown);
        let settled: BTreeSet<&ColonyName> =
            not_known.iter().flat_map(|group| &group.places).flat_map(|place| &place.colonies).collect();
        let is_free = |report: &&SuperingReport| {
            report.in_brief.answer == Verdict::Yes && report.in_brief.first_free_day == Some(on)
        };
        let new: Vec<SuperingReport> = board.iter().filter(is_free).cloned().collect();
        let visits = due.visits.into_iter().filter_map(|visit| to_do(visit, &settled)).collect();
        let count = |weight: GapWeight| gaps.gaps.iter().filter(|gap| gap.weight == weight).count();
        TodayReport {
            holding: due.holding,
            on,
            visits,
            may_be_supered: of(Verdict::Yes),
            free_from_today: BoardGroup::all(&new).into_iter().flat_map(|group| group.places).collect(),
            may_not_be_supered: of(Verdict::No).iter().map(BoardGroup::count).sum(),
            not_known,
            records: Records {
                complete: gaps.complete,
                required: count(GapWeight::Required),
                irregular: count(GapWeight::Irregular),
            },
            notice: notice(words),
        }
    }
}

/// A visit without the items that other parts of the page say: colonies that become free, facts that settle an unknown answer
/// on supers, and records that lack something. `None` if nothing is left.
fn to_do(visit: DueVisit, settled: &BTreeSet<&ColonyName>) -> Option<DueVisit> {
    let is_said_below = |due: &DueItem| match due.item.kind {
        DueKind::SupersFree | DueKind::LegalGap => true,
        DueKind::RecordMissing | DueKind::RecordWhereabouts => {
            !due.item.colonies.is_empty() && due.item.colonies.iter().all(|colony| settled.contains(colony))
        }
        DueKind::TakeSupersOff
        | DueKind::GiveDose
        | DueKind::TakeOut
        | DueKind::UsedUp
        | DueKind::CountMites
        | DueKind::LotLastDay
        | DueKind::LotExpires
        | DueKind::DisposeOfLot => false,
    };
    let items: Vec<DueItem> = visit.items.into_iter().filter(|due| !is_said_below(due)).collect();
    (!items.is_empty()).then_some(DueVisit { items, ..visit })
}
