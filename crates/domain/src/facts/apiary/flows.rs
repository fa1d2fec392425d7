//! The nectar flows of an apiary, seen or expected, with their early, usual and late dates.

use std::sync::Arc;

use serde::Serialize;

use crate::basics::calendar::Day;
use crate::basics::words::FlowStage;
use crate::facts::holding::Record;
use crate::journal::entry::EntryId;
use crate::journal::event::Event;

/// A nectar flow.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = FlowReport))]
pub struct Flow {
    /// The forage plant.
    pub forage: String,
    /// Expected or seen.
    pub stage: FlowStage,
    /// Its first day in an early year. Absent if not stated separately.
    pub early: Option<Day>,
    /// Its first day in a usual year.
    pub usual: Day,
    /// Its first day in a late year. Absent if not stated separately.
    pub late: Option<Day>,
    /// Its last day, if known.
    #[serde(skip)]
    pub to: Option<Day>,
    /// The year in which it usually begins.
    #[serde(skip)]
    pub(crate) year: i32,
    /// The entry that records it.
    pub entry: EntryId,
}

/// The days of a nectar flow that concern a colony.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FlowSpan {
    /// The first day; for an expected flow, in an early year. Not before the colony arrived.
    pub from: Day,
    /// The last day on which it may go on. Not after the colony left.
    pub last: Day,
    /// The entry that records it.
    pub entry: EntryId,
}

/// How a range of days overlaps the flows.
pub(crate) enum Meets<'f> {
    /// No flow is on record for this year.
    NotRecorded(i32),
    /// No day is in a flow.
    None,
    /// At least one day is in a flow, whether the year is early or late.
    Surely(&'f Flow),
    /// At least one day may be in a flow: in some years, or because the end of the flow is not recorded.
    Perhaps(&'f Flow),
}

/// The longest duration of a flow. Common practice, no source.
const NO_FLOW_LASTS_DAYS: u16 = 90;

impl Flow {
    /// The flows of an apiary by first day. A seen flow replaces the one expected that year from the same forage; of
    /// several expectations the newest counts.
    pub(crate) fn all(file: &[Arc<Record>]) -> Vec<Flow> {
        let mut flows: Vec<Flow> = Vec::new();
        for record in file {
            let Event::NectarFlow(body) = &record.event else { continue };
            let flow = Flow {
                forage: body.forage.clone(),
                stage: body.stage,
                early: body.from_early,
                usual: body.from,
                late: body.from_late,
                to: body.to,
                year: body.from.year(),
                entry: record.id,
            };
            let same = |known: &Flow| known.forage == flow.forage && known.touches(&flow);
            let seen = |known: &Flow| known.stage == FlowStage::Seen;
            if flow.stage == FlowStage::Seen {
                // A flow is recorded again once its end is seen: the newer entry replaces the older.
                flows.retain(|known| !same(known) || (seen(known) && known.usual != flow.usual));
            } else if flows.iter().any(|known| same(known) && seen(known)) {
                continue;
            } else {
                flows.retain(|known| !same(known));
            }
            flows.push(flow);
        }
        flows.sort_by_key(|flow| (flow.usual, flow.entry));
        flows
    }

    /// The first day on which it may begin, as stated; the usual one if no early day is stated.
    pub(crate) fn earliest(&self) -> Day {
        self.early.unwrap_or(self.usual)
    }

    /// The last day on which it may begin, as stated; the usual one if no late day is stated.
    pub(crate) fn latest(&self) -> Day {
        self.late.unwrap_or(self.usual)
    }

    /// The last day on which it may still go on; for an expected flow, in a late year. Without a recorded end it may go
    /// on until the end of the year, and for at least three months.
    pub(crate) fn last(&self) -> Day {
        let delay = u16::try_from(self.latest().days_since(self.usual)).unwrap_or_default();
        let ended = self.to.map(|to| if self.stage == FlowStage::Expected { to.plus(delay) } else { to });
        let year_ends = || Day::new(self.latest().year(), 12, 31).unwrap_or(Day::LAST);
        ended.unwrap_or_else(|| year_ends().max(self.latest().plus(NO_FLOW_LASTS_DAYS)))
    }

    /// All its days, from the first possible to the last possible.
    pub(crate) fn span(&self) -> FlowSpan {
        FlowSpan { from: self.earliest(), last: self.last(), entry: self.entry }
    }

    /// Whether two flows of one forage overlap and so are the same. A flow without an end counts as a month here.
    fn touches(&self, other: &Flow) -> bool {
        let end = |flow: &Flow| flow.to.unwrap_or_else(|| flow.latest().plus(30));
        self.earliest() <= end(other) && other.earliest() <= end(self)
    }

    /// How the days from `from` to `to` (inclusive) overlap the flows.
    pub(crate) fn meeting(flows: &[Flow], from: Day, to: Day) -> Meets<'_> {
        let surely = |flow: &&Flow| flow.latest() <= to && from <= flow.to.unwrap_or(flow.latest());
        let perhaps = |flow: &&Flow| flow.earliest() <= to && from <= flow.last();
        if let Some(flow) = flows.iter().find(surely) {
            return Meets::Surely(flow);
        }
        if let Some(flow) = flows.iter().find(perhaps) {
            return Meets::Perhaps(flow);
        }
        let mut years = from.year()..=to.year();
        let bare = years.find(|year| !flows.iter().any(|flow| flow.year == *year));
        bare.map_or(Meets::None, Meets::NotRecorded)
    }

    /// The next flow that begins on or after a day, in a usual year.
    pub(crate) fn next_from(flows: &[Flow], on: Day) -> Option<&Flow> {
        flows.iter().find(|flow| flow.usual >= on)
    }
}
