//! The consequences of a start: visits, the day out, when supers may go on, and the margin to the nectar flow.

use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use serde::Serialize;

use super::choice::Choice;
use super::colony::Colony;
use super::effect::{Effect, FreeAfterwards};
use super::place::Place;
use super::state::{StartDays, Usability};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::facts::apiary::Flow;
use crate::facts::history::{Ends, Plan};
use crate::rules::leaflet::Says;
use crate::rules::leaflet::rule::Need;

/// The consequences of starting on the first day of a range.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Start {
    /// The start day.
    pub start: Day,
    /// The answer for that day.
    pub answer: Usability,
    /// The earliest day out, or the first day on which nothing of it is left.
    pub out_from: Option<Day>,
    /// The earliest day out with brood absent or at its lowest, if the brood was not inspected and it matters; `out_from`
    /// then applies with brood.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub out_from_without_brood: Option<Day>,
    /// If the last inspection found brood absent or at its lowest: the earliest day out if more is seen while it
    /// is in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub out_from_if_brood_is_seen: Option<Day>,
    /// The day by which it must be out.
    pub out_by: Option<Day>,
    /// The confidence of `out_from`. Absent if it is established.
    pub stay_confidence: Option<Confidence>,
    /// The last blocked day if it comes out on the earliest day. A lower bound if a period is not established.
    pub last_blocked_day: Option<Day>,
    /// The first day on which supers may go on, if it comes out on the earliest day.
    pub first_free_day: Option<Day>,
    /// When supers may go on.
    #[serde(skip)]
    pub supers: FreeAfterwards,
    /// Whether the keeper must come back to take it out, as far as is known.
    #[serde(skip)]
    pub is_taken_out: bool,
    /// The margin before the next nectar flow, for each kind of year.
    pub before_flow: Vec<Margin>,
    /// The visits.
    #[serde(skip)]
    pub visits: Vec<PlannedVisit>,
}

/// The margin between a first free day and a flow.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Margin {
    /// `early`, `usual` or `late` year; `seen` for a flow that has begun.
    pub year: &'static str,
    /// The first day of the flow.
    pub flow: Day,
    /// Days to spare; negative if days short.
    #[cfg_attr(feature = "openapi", schema(minimum = -200_000, maximum = 200_000))]
    pub days_to_spare: i64,
}

/// A visit to the hive.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PlannedVisit {
    /// The first day for it. Absent if not stated.
    pub from: Option<Day>,
    /// The last day for it, if stated.
    pub by: Option<Day>,
    /// The task.
    #[serde(skip)]
    pub task: Task,
    /// Whether the hive is opened, as far as the leaflet says.
    pub hive_opened: bool,
}

/// The task of a visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Task {
    /// Give a dose.
    Dose {
        /// Number of the dose, counted from 1. Absent if there is only one, or the number of doses is not stated.
        number: Option<usize>,
        /// Whether it is placed and stays in the hive.
        is_placed: bool,
        /// Whether the interval before it is stated.
        wait_is_stated: bool,
    },
    /// Look up on the leaflet whether further doses follow, and when.
    SeeFurtherDoses,
    /// Take it out on the earliest day.
    TakeOut,
    /// Take it out; no least stay is stated.
    TakeOutAtSomeTime,
    /// Take it out; how long after the last dose is not known.
    TakeOutAfterLastDose,
    /// Look up on the leaflet whether it must come out.
    SeeRemoval,
}

/// The latest start that is out before a flow.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LatestStart {
    /// `early`, `usual` or `late` year; `seen` for a flow that has begun.
    pub year: &'static str,
    /// The first day of the flow.
    pub flow: Day,
    /// The latest start day asked about whose first free day is not after the first day of the flow. Absent if there
    /// is none.
    pub start: Option<Day>,
    /// The answer for that day.
    pub answer: Option<Usability>,
}

/// Everything needed to work out the consequences of a start.
pub(super) struct Starting<'a> {
    pub(super) choice: &'a Choice,
    pub(super) colony: &'a Colony<'a>,
    pub(super) place: Option<&'a Place<'a>>,
    pub(super) flow: Option<&'a Flow>,
}

impl Starting<'_> {
    pub(super) fn plan(&self, start: Day) -> &Plan {
        self.choice.plan(start, self.colony.brood_state(start))
    }

    /// The effect of a start on supers, together with the medicines already in and the periods that still run.
    pub(super) fn effect(&self, start: Day) -> Effect {
        Effect::of(self.choice.terms(start), self.plan(start), start, self.colony, self.place)
    }

    /// The first day on which supers may go on and, if they may stay on throughout, nothing of it is in.
    fn clear(&self, start: Day) -> Option<Day> {
        let effect = self.effect(start);
        let free = effect.free.day(start)?;
        effect.out.map(|out| out.max(free))
    }

    /// Whether nothing of it is in from the first day of a flow on, and supers may go on that day.
    fn is_over_by(&self, start: Day, flow: Day) -> Option<bool> {
        let clear = self.clear(start)?;
        Some(clear <= flow && self.plan(start).in_through(start) < flow)
    }

    pub(super) fn on(&self, days: &StartDays) -> Start {
        let start = days.from;
        let (plan, effect) = (self.plan(start), self.effect(start));
        let first_free_day = effect.free.day(start);
        let before_flow = self.clear(start).map(|clear| self.margins(clear)).unwrap_or_default();
        Start {
            start,
            answer: days.answer,
            out_from: effect.out,
            out_from_without_brood: plan
                .turns_on_brood
                .filter(|_| plan.least.is_known())
                .map(|(shorter, _)| start.plus(shorter)),
            out_from_if_brood_is_seen: self.longer_out(start, &effect),
            out_by: effect.out_by,
            stay_confidence: plan.confidence.known().copied(),
            last_blocked_day: effect.last_blocked,
            first_free_day,
            supers: effect.free,
            is_taken_out: plan.ends.in_a_visit(),
            before_flow,
            visits: self.visits(plan, start),
        }
    }

    /// The earliest day out with brood, if that is later than without and the inspection found brood absent or at its
    /// lowest.
    fn longer_out(&self, start: Day, effect: &Effect) -> Option<Day> {
        self.colony.brood_state(start)?;
        let with_brood = self.choice.plan(start, None).least.known().map(|days| start.plus(*days));
        with_brood.filter(|out| effect.out.is_some_and(|shorter| shorter < *out))
    }

    fn margins(&self, free: Day) -> Vec<Margin> {
        let years = self.flow.map(years).unwrap_or_default();
        let margin =
            |(year, flow): (&'static str, Day)| Margin { year, flow, days_to_spare: flow.days_since(free) };
        years.into_iter().map(margin).collect()
    }

    /// Searches from the last start day back to the first: a subtraction is not enough if the stay depends on brood.
    pub(super) fn latest(&self, days: &[StartDays]) -> Vec<LatestStart> {
        let years = self.flow.map(years).unwrap_or_default();
        let latest = years.into_iter().map(|(year, flow)| {
            let fits = |start: &Day| self.is_over_by(*start, flow) == Some(true);
            let starts = days.iter().rev().flat_map(|range| {
                let count = usize::try_from(range.to.days_since(range.from) + 1).unwrap_or_default();
                std::iter::successors(Some(range.to), |day| Some(day.before()))
                    .take(count)
                    .map(move |day| (day, range.answer))
            });
            let found = starts.into_iter().find(|(start, _)| fits(start));
            LatestStart {
                year,
                flow,
                start: found.map(|(start, _)| start),
                answer: found.map(|(_, answer)| answer),
            }
        });
        latest.collect()
    }

    /// Whether a start is out before the flow in a usual year. Not known if that depends on brood that may still
    /// appear.
    pub(super) fn out_before_flow(&self, start: Day) -> Option<bool> {
        let flow = self.flow?;
        let effect = self.effect(start);
        let before = self.is_over_by(start, flow.usual)?;
        let longer = self.longer_out(start, &effect).is_some_and(|out| out > flow.usual);
        if before && longer { None } else { Some(before) }
    }

    /// The visits of a course, as far as stated. A day that is not stated is absent.
    pub(super) fn visits(&self, plan: &Plan, start: Day) -> Vec<PlannedVisit> {
        let opened = self.needs(start).contains(&Need::HiveOpened);
        let visit = |from: Option<u16>, by: Option<u16>, task: Task| PlannedVisit {
            from: from.map(|days| start.plus(days)),
            by: by.map(|days| start.plus(days)),
            task,
            hive_opened: opened,
        };
        let many = plan.count.known().is_some_and(|count| *count > 1);
        let mut visits: Vec<PlannedVisit> = plan
            .each_dose()
            .into_iter()
            .enumerate()
            .map(|(index, dose)| {
                let task = Task::Dose {
                    number: many.then_some(index + 1),
                    is_placed: plan.ends != Ends::AtOnce,
                    wait_is_stated: dose.from.is_some(),
                };
                // The first dose can only be given on the day of the start.
                let by = dose.by.filter(|_| dose.from != Some(0));
                visit(dose.from, by, task)
            })
            .collect();
        if !plan.count.is_known() {
            visits.push(visit(None, None, Task::SeeFurtherDoses));
        }
        if plan.ends.in_a_visit() {
            let task = match (plan.ends == Ends::TakenOut, plan.least, plan.stay) {
                (true, Fact::Known(_), _) => Task::TakeOut,
                (true, Fact::NotKnown(_), Fact::NotKnown(_)) => Task::TakeOutAtSomeTime,
                (true, Fact::NotKnown(_), Fact::Known(_)) => Task::TakeOutAfterLastDose,
                (false, ..) => Task::SeeRemoval,
            };
            visits.push(visit(plan.least.known().copied(), plan.most.known().copied(), task));
        }
        visits
    }

    /// What the treatment requires, from every rule that applies.
    pub(super) fn needs(&self, start: Day) -> Vec<Need> {
        let rules = self.choice.rules_on(Topic::Needs).filter(|(_, rule)| rule.is_in_force(start));
        let mut needs: Vec<Need> = rules
            .filter_map(|(_, rule)| {
                let Says::Needs { list } = &rule.says else { return None };
                Some(list.clone())
            })
            .flatten()
            .collect();
        needs.sort_unstable();
        needs.dedup();
        needs
    }
}

/// The first days of a flow for each kind of year.
fn years(flow: &Flow) -> Vec<(&'static str, Day)> {
    use crate::basics::words::FlowStage;
    match flow.stage {
        FlowStage::Seen => vec![("seen", flow.usual)],
        FlowStage::Expected => {
            let years = [("early", flow.early), ("usual", Some(flow.usual)), ("late", flow.late)];
            let told = years.into_iter().filter_map(|(year, day)| Some((year, day?)));
            told.filter(|(year, day)| *year == "usual" || *day != flow.usual).collect()
        }
    }
}
