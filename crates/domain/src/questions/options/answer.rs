//! The answer for one colony.

use std::sync::Arc;

use serde::Serialize;

use super::board::{Board, Judged};
use super::change::Change;
use super::choice::Choice;
use super::colony::Colony;
use super::date_range::{Ask, Span};
use super::dose::{self, Mixture, NoDose, Portion};
use super::missing::Missing;
use super::order::{OrderReason, Rank};
use super::place::{Place, WhatIf};
use super::remedy::Blank;
use super::starts::{LatestStart, Start, Starting};
use super::state::{Condition, StartDays, State, Usability};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::quantity::Quantity;
use crate::basics::words::{
    ApiaryName, ColonyName, Ground, HoldingName, Jurisdiction, LotName, Method, Permission,
};
use crate::facts::apiary::Flow;
use crate::facts::holding::Holding;
use crate::rules::leaflet::rule::{Need, TemperatureWindow};
use crate::rules::leaflet::{Leaflet, Leaflets, Says};

/// The question asked of a holding, and the facts common to all options.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = OptionsAsked))]
pub struct Asked {
    /// The holding.
    pub holding: HoldingName,
    /// The jurisdiction whose leaflets apply. Absent if the holding has none on record; there are no options then.
    pub jurisdiction: Option<Jurisdiction>,
    /// The first start day asked about.
    pub from: Day,
    /// The last start day asked about.
    pub to: Day,
    /// Events after this day are ignored.
    pub as_of: Day,
    /// Assumed site conditions.
    pub what_if: Option<WhatIf>,
    /// The next nectar flow on record that is not over on the first day.
    pub flow: Option<Flow>,
}

/// The options for a colony.
#[derive(Debug, Clone)]
pub struct ColonyOptions {
    /// The question.
    pub asked: Asked,
    /// The colony.
    pub colony: ColonyName,
    /// Its apiary on the first day.
    pub apiary: Option<ApiaryName>,
    /// The options, ranked; each gives the reasons for its rank.
    pub options: Vec<ColonyOption>,
    /// The reason why there are no options, if so.
    pub no_leaflets: Option<NoLeaflets>,
}

/// One way of treating, judged for the colony. Rules are named by their index in the leaflet.
#[derive(Debug, Clone)]
pub struct ColonyOption {
    /// The leaflet.
    pub leaflet: Arc<Leaflet>,
    /// The method, if the leaflet has several.
    pub method: Option<Method>,
    /// The label revision on the pack, if the leaflet has several.
    pub revision: Option<String>,
    /// The best answer of any start day.
    pub answer: Usability,
    /// The reasons for its rank.
    pub order: Vec<OrderReason>,
    /// The answer for every start day asked about.
    pub days: Vec<StartDays>,
    /// Every condition that was checked.
    pub conditions: Vec<Condition>,
    /// The missing facts, with what would supply each.
    pub missing: Vec<Missing>,
    /// If it is ruled out: the first day after those asked about on which no condition is broken, as far as can be
    /// foreseen.
    pub first_open_day: Option<Day>,
    /// If it is ruled out: the first of the start days asked about with the fewest broken conditions.
    pub nearest: Option<NearestDay>,
    /// The consequences of starting on the first day of each range that is not ruled out.
    pub starts: Vec<Start>,
    /// For each kind of year, the latest start that is out before the next flow.
    pub latest_start: Vec<LatestStart>,
    /// The dose for the colony.
    pub dose: DoseForColony,
    /// What the treatment requires of the site.
    pub needs: Vec<Need>,
    /// The rules that cannot be judged from the record, and those on preparing the product.
    pub see_to: Vec<usize>,
    /// The rules that caution the user.
    pub cautions: Vec<usize>,
    /// Whether the ground at the stands is flooded on the first day that is not ruled out.
    pub is_flooded: bool,
}

/// A day on which the fewest conditions are broken.
#[derive(Debug, Clone, PartialEq)]
pub struct NearestDay {
    /// The day.
    pub day: Day,
    /// The changes it would take to meet them.
    pub changes: Vec<Change>,
}

/// Why there are no options.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NoLeaflets {
    /// The holding's jurisdiction is not on record, so it is not known which leaflets apply.
    NoJurisdiction,
    /// No leaflet of this jurisdiction is loaded.
    NoneOf(Jurisdiction),
}

/// The dose for a colony, and the stock.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DoseForColony {
    /// The dose, or why it cannot be worked out.
    pub dose: Result<Portion, NoDose>,
    /// The solution to mix for one dose.
    pub mixture: Option<Mixture>,
    /// The stock of the medicine.
    pub stock: StockOfMedicine,
}

/// The stock of one medicine on a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StockOfMedicine {
    /// The amount in date.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub in_date: Quantity,
    /// The unit of that amount.
    pub unit: String,
    /// The lots that are counted.
    pub lots: Vec<LotName>,
    /// Lots that are not counted: expired, or without a recorded expiry.
    pub not_counted: Vec<LotName>,
    /// Lots without a recorded label revision, if the leaflet has several: record it, or read it on the pack.
    pub label_not_recorded: Vec<LotName>,
}

impl ColonyOptions {
    /// Answers the question for a colony.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, colony: &ColonyName, ask: &Ask) -> ColonyOptions {
        let span = ask.span;
        let board = Board::of_colony(holding, leaflets, ask, colony);
        let subject = board.colony(colony);
        let place = board.place(subject.apiary.as_ref());
        let flow = place.and_then(|place| Flow::next_from(&place.apiary.flows, span.from()));
        let judged = board.judge_colony(&subject);
        let mut ranked: Vec<(Rank, ColonyOption)> = judged
            .iter()
            .map(|judged| {
                let starting = Starting { choice: judged.choice, colony: &subject, place, flow };
                let rank = Rank::of(judged, &starting);
                let option = option(&board, judged, &starting, &rank);
                (rank, option)
            })
            .collect();
        // The sort is stable: ties stay in the order of the leaflets.
        ranked.sort_by_key(|(rank, _)| rank.key());
        ColonyOptions {
            asked: Asked::of(&board, flow),
            colony: colony.clone(),
            apiary: subject.apiary.clone(),
            options: ranked.into_iter().map(|(_, option)| option).collect(),
            no_leaflets: no_leaflets(&board),
        }
    }
}

impl Asked {
    pub(super) fn of(board: &Board<'_>, flow: Option<&Flow>) -> Asked {
        let Ask { span, as_of, what_if } = board.ask;
        Asked {
            holding: board.holding.name().clone(),
            jurisdiction: board.jurisdiction.cloned(),
            from: span.from(),
            to: span.to(),
            as_of: *as_of,
            what_if: (!what_if.is_empty()).then(|| what_if.clone()),
            flow: flow.cloned(),
        }
    }
}

impl DoseForColony {
    fn of(choice: &Choice, colony: &Colony<'_>, start: Day) -> DoseForColony {
        let dose = dose::of(choice, colony, start);
        let in_millilitres = dose.as_ref().ok().filter(|dose| dose.unit == "ml");
        let most = in_millilitres.map(|dose| dose.each_at_most.unwrap_or(dose.each));
        let mixture = most.and_then(|most| dose::mixture(choice, start, most));
        DoseForColony { dose, mixture, stock: stock(choice, start) }
    }
}

/// Without a jurisdiction it is not known which leaflets apply.
pub(super) fn no_leaflets(board: &Board<'_>) -> Option<NoLeaflets> {
    match board.jurisdiction {
        None => Some(NoLeaflets::NoJurisdiction),
        Some(jurisdiction) => board.choices.is_empty().then(|| NoLeaflets::NoneOf(jurisdiction.clone())),
    }
}

fn option(board: &Board<'_>, judged: &Judged<'_>, starting: &Starting<'_>, rank: &Rank) -> ColonyOption {
    let choice = judged.choice;
    let open = judged.days.iter().filter(|days| days.answer != Usability::RuledOut);
    let starts: Vec<Start> = open.map(|days| starting.on(days)).collect();
    let start = starts.first().map_or(board.ask.span.from(), |first| first.start);
    let ruled_out = judged.answer() == Usability::RuledOut;
    let flooded = |place: &Place<'_>| matches!(place.ground(start), Fact::Known((Ground::Flooded, _)));
    ColonyOption {
        leaflet: Arc::clone(&choice.leaflet),
        method: choice.method.clone(),
        revision: choice.revision.clone(),
        answer: judged.answer(),
        order: rank.reasons(),
        days: judged.days.clone(),
        conditions: judged.conditions().cloned().collect(),
        missing: missing(choice, starting.colony, judged),
        first_open_day: if ruled_out { first_open_day(board, starting) } else { None },
        nearest: if ruled_out { nearest_day(judged) } else { None },
        latest_start: starting.latest(&judged.days),
        starts,
        dose: DoseForColony::of(choice, starting.colony, start),
        needs: starting.needs(start),
        see_to: see_to(choice, start),
        cautions: cautions(choice, start),
        is_flooded: starting.place.is_some_and(flooded),
    }
}

/// The missing facts on days that no condition rules out. If all days are ruled out there are none: no fact asked for
/// would help. A fact needed only for later days names the first of them.
fn missing(choice: &Choice, colony: &Colony<'_>, judged: &Judged<'_>) -> Vec<Missing> {
    let first = judged.days.first().map(|days| days.from);
    let mut missing: Vec<Missing> = Vec::new();
    for condition in judged.conditions().filter(|condition| condition.binds) {
        for run in condition.runs.iter().filter(|run| run.state == State::Unknown) {
            let open = judged.days.iter().filter(|days| days.answer == Usability::Unknown);
            let mut bears_on = open.filter(|days| days.from <= run.to && run.from <= days.to);
            let Some(days) = bears_on.next() else { continue };
            let (from, to) = (days.from.max(run.from), days.to.min(run.to));
            let mut lack = Blank { choice, colony, condition, run, from, to }.missing();
            lack.from = lack.from.filter(|from| Some(*from) != first);
            // Runs are in order of their days, so the first to ask for a fact names the first day.
            if !missing.iter().any(|known| known.asks_for_the_same(&lack)) {
                missing.push(lack);
            }
        }
    }
    missing
}

/// How many days ahead to look for a day without a broken condition.
const AHEAD_DAYS: u16 = 300;

fn first_open_day(board: &Board<'_>, starting: &Starting<'_>) -> Option<Day> {
    let from = board.ask.span.to().next();
    let span = Span::new(from, from.plus(AHEAD_DAYS)).ok()?;
    let apiary = starting.colony.apiary.as_ref();
    let ask = board.later(span);
    let same = |choice: &Choice| {
        choice.leaflet.id == starting.choice.leaflet.id
            && choice.method == starting.choice.method
            && choice.revision == starting.choice.revision
    };
    let later = Board::of_some(board.holding, board.leaflets, &ask, apiary, same);
    let judged = later.judge_colony(starting.colony).into_iter().next()?;
    judged.days.iter().find(|days| days.answer != Usability::RuledOut).map(|days| days.from)
}

/// The first start day with the fewest broken conditions, and the changes it would take.
fn nearest_day(judged: &Judged<'_>) -> Option<NearestDay> {
    let broken_on = |day: Day| {
        let binding = judged.conditions().filter(|condition| condition.binds);
        let runs = binding.filter_map(move |condition| condition.on(day));
        runs.filter(|run| run.state == State::Broken)
    };
    // Answers change only at the start of a run, so those days are enough.
    let mut days: Vec<Day> =
        judged.conditions().flat_map(|condition| condition.runs.iter().map(|run| run.from)).collect();
    days.sort_unstable();
    days.dedup();
    let day = days.into_iter().min_by_key(|day| (broken_on(*day).count(), *day))?;
    let mut changes: Vec<Change> = broken_on(day).map(|run| Change::of(&run.because)).collect();
    changes.dedup();
    Some(NearestDay { day, changes })
}

pub(super) fn stock(choice: &Choice, on: Day) -> StockOfMedicine {
    let (in_date, others): (Vec<_>, Vec<_>) =
        choice.stock.iter().partition(|stock| stock.expiry.is_some_and(|expiry| on <= expiry));
    StockOfMedicine {
        in_date: in_date.iter().fold(Quantity::ZERO, |sum, stock| sum.plus(stock.left)),
        unit: choice.leaflet.unit.to_string(),
        lots: in_date.iter().map(|stock| stock.lot.clone()).collect(),
        not_counted: others.iter().map(|stock| stock.lot.clone()).collect(),
        label_not_recorded: choice.unlabelled.clone(),
    }
}

/// The rules in words, and those on preparing the product.
pub(super) fn see_to(choice: &Choice, on: Day) -> Vec<usize> {
    in_force(choice, on, |says| match says {
        Says::WholeApiary { .. }
        | Says::Entrance { .. }
        | Says::CombRule { .. }
        | Says::NotWith { .. }
        | Says::Contraindication { .. }
        | Says::ColonySize { text: Some(_), min_bees: None, min_brood_frames: None }
        | Says::Temperature { window: TemperatureWindow::Product, .. }
        | Says::FlowBefore { .. }
        | Says::HarvestDuring { value: Permission::Forbidden } => true,
        Says::SupersDuring { .. }
        | Says::FlowDuring { .. }
        | Says::Withdrawal { .. }
        | Says::WaitAfterRemoval { .. }
        | Says::HarvestDuring { .. }
        | Says::Removal { .. }
        | Says::StayMin { .. }
        | Says::StayMax { .. }
        | Says::Doses { .. }
        | Says::CoursesPerYear { .. }
        | Says::CoursesPerBroodlessPeriod { .. }
        | Says::GapBetweenCourses { .. }
        | Says::Season { .. }
        | Says::Timing { .. }
        | Says::Temperature { .. }
        | Says::BroodNeed { .. }
        | Says::ColonySize { .. }
        | Says::BroodBoxes { .. }
        | Says::Dose { .. }
        | Says::DoseCap { .. }
        | Says::Recipe { .. }
        | Says::Needs { .. }
        | Says::Class { .. }
        | Says::UserSafety { .. }
        | Says::AfterOpening { .. }
        | Says::Storage { .. }
        | Says::Disposal { .. } => false,
    })
}

fn cautions(choice: &Choice, on: Day) -> Vec<usize> {
    in_force(choice, on, |says| matches!(says, Says::UserSafety { .. }))
}

/// The rules in force on a day that match `which`, by index.
fn in_force(choice: &Choice, on: Day, which: impl Fn(&Says) -> bool) -> Vec<usize> {
    let rules = choice.rules.iter().filter_map(|index| Some((*index, choice.leaflet.rules.get(*index)?)));
    rules.filter(|(_, rule)| rule.is_in_force(on) && which(&rule.says)).map(|(index, _)| index).collect()
}
