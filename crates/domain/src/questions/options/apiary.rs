//! The answer for a whole apiary: usable for all its colonies, for some or for none, with the reasons.

use std::sync::Arc;

use serde::Serialize;

use super::answer::{Asked, NoLeaflets, StockOfMedicine, no_leaflets, see_to, stock};
use super::board::{Board, Judged};
use super::colony::Colony;
use super::date_range::{Ask, Span};
use super::dose::{self, Mixture, NoDose};
use super::order::{OrderReason, Rank};
use super::reason::Because;
use super::starts::{Start, Starting};
use super::state::{StartDays, State, Usability};
use crate::basics::quantity::Quantity;
use crate::basics::words::{ApiaryName, ColonyName, Method};
use crate::facts::apiary::Flow;
use crate::facts::holding::Holding;
use crate::rules::leaflet::{Leaflet, Leaflets};

/// The options for an apiary.
#[derive(Debug, Clone)]
pub struct ApiaryOptions {
    /// The question.
    pub asked: Asked,
    /// The apiary.
    pub apiary: ApiaryName,
    /// The colonies there on the first day.
    pub colonies: Vec<ColonyName>,
    /// The options, ranked; each gives the reasons for its rank.
    pub options: Vec<OptionForAll>,
    /// The reason why there are no options, if so.
    pub no_leaflets: Option<NoLeaflets>,
}

/// One way of treating, judged for every colony of the apiary. Rules are named by their index in the leaflet.
#[derive(Debug, Clone)]
pub struct OptionForAll {
    /// The leaflet.
    pub leaflet: Arc<Leaflet>,
    /// The method, if the leaflet has several.
    pub method: Option<Method>,
    /// The label revision on the pack, if the leaflet has several.
    pub revision: Option<String>,
    /// The best answer of any start day for all colonies together.
    pub answer: Usability,
    /// The reasons for its rank.
    pub order: Vec<OrderReason>,
    /// The answer for every start day: the worst of any colony.
    pub days: Vec<StartDays>,
    /// The colonies, grouped by the best answer of any start day.
    pub colonies: Vec<OfAnswer>,
    /// The consequences of starting on the first day that is not ruled out, for the colony that takes longest.
    pub start: Option<Start>,
    /// The colony that takes longest.
    pub longest_for: Option<ColonyName>,
    /// The amount for one dose of all colonies together. Absent if something must first be counted in one of them.
    pub one_dose: Option<Quantity>,
    /// The unit of the amounts.
    pub unit: String,
    /// Number of doses in a course, at least. Absent if not stated.
    pub doses: Option<u8>,
    /// The amount for a whole course of all colonies, at least. Absent if something must first be counted, or if the
    /// number of doses is not stated.
    pub course: Option<Quantity>,
    /// What must be known before these amounts can be worked out, without repeats.
    pub dose_missing: Vec<NoDose>,
    /// What must first be counted, and in which colonies.
    pub not_counted: Vec<WithColonies<NoDose>>,
    /// The solution to mix for one dose of all colonies.
    pub mixture: Option<Mixture>,
    /// The stock of the medicine.
    pub stock: StockOfMedicine,
    /// The rules that cannot be judged from the record, and those on preparing the product.
    pub see_to: Vec<usize>,
}

/// Colonies with the same answer.
#[derive(Debug, Clone)]
pub struct OfAnswer {
    /// The answer.
    pub answer: Usability,
    /// The colonies.
    pub colonies: Vec<ColonyName>,
    /// Unless the answer is usable: the reasons, each with its colonies.
    pub why: Vec<WithColonies<Because>>,
}

/// A reason and the colonies it applies to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = WhyNot))]
pub struct WithColonies<Why> {
    /// The reason.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub why: Why,
    /// The colonies.
    pub colonies: Vec<ColonyName>,
}

impl<Why> WithColonies<Why> {
    /// The same, with the reason put into words.
    #[must_use]
    pub fn said<Said>(self, say: impl FnOnce(&Why) -> Said) -> WithColonies<Said> {
        WithColonies { why: say(&self.why), colonies: self.colonies }
    }
}

impl ApiaryOptions {
    /// Answers the question for an apiary. `None` if the holding has no such apiary.
    #[must_use]
    pub fn of(
        holding: &Holding,
        leaflets: &Leaflets,
        apiary: &ApiaryName,
        ask: &Ask,
    ) -> Option<ApiaryOptions> {
        let span = ask.span;
        let known = holding.apiaries().find(|known| *known == apiary)?;
        let board = Board::of(holding, leaflets, ask, [known]);
        let colonies: Vec<Colony<'_>> =
            holding.colonies_at(apiary, ask.stands_on()).map(|colony| board.colony(colony)).collect();
        let place = board.place(Some(apiary));
        let flow = place.and_then(|place| Flow::next_from(&place.apiary.flows, span.from()));
        let mut rows: Vec<Vec<Judged<'_>>> = board.choices.iter().map(|_| Vec::new()).collect();
        for colony in &colonies {
            for (row, judged) in rows.iter_mut().zip(board.judge_colony(colony)) {
                row.push(judged);
            }
        }
        let mut ranked: Vec<(Rank, OptionForAll)> = rows
            .iter()
            .filter_map(|row| {
                option(span, row, &colonies, |judged, colony| Starting {
                    choice: judged.choice,
                    colony,
                    place,
                    flow,
                })
            })
            .collect();
        ranked.sort_by_key(|(rank, _)| rank.key());
        Some(ApiaryOptions {
            asked: Asked::of(&board, flow),
            apiary: apiary.clone(),
            colonies: colonies.iter().map(|colony| colony.name.clone()).collect(),
            options: ranked.into_iter().map(|(_, option)| option).collect(),
            no_leaflets: no_leaflets(&board),
        })
    }
}

fn option<'a>(
    span: Span,
    row: &'a [Judged<'a>],
    colonies: &'a [Colony<'a>],
    starting: impl Fn(&'a Judged<'a>, &'a Colony<'a>) -> Starting<'a>,
) -> Option<(Rank, OptionForAll)> {
    let first = row.first()?;
    let choice = first.choice;
    let days = all_together(row, span);
    let answer = Usability::on_one_of(days.iter().map(|days| days.answer));
    let open = days.iter().find(|days| days.answer == answer && days.answer != Usability::RuledOut);
    let start = open.map_or(span.from(), |days| days.from);
    let each = || row.iter().zip(colonies).map(|(judged, colony)| (judged, starting(judged, colony)));
    // The colony that is free last stands for all. One whose first free day is not known comes before all others.
    let longest = each().max_by_key(|(_, starting)| match starting.effect(start).free.day(start) {
        Some(day) => (0, Some(day)),
        None => (1, None),
    });
    let (judged, of_longest) = longest?;
    let mut rank = Rank::of(judged, &of_longest);
    rank.answer = answer;
    // The class changes only if it changes in every colony.
    let classes = each().map(|(judged, starting)| Rank::of(judged, &starting).class);
    rank.class = classes.fold(rank.class, State::and);
    let doses: Vec<_> = colonies.iter().map(|colony| (colony, dose::of(choice, colony, start))).collect();
    let mut not_counted: Vec<WithColonies<NoDose>> = Vec::new();
    let mut one_dose = Some(Quantity::ZERO);
    let mut most = Quantity::ZERO;
    let mut unit = choice.leaflet.unit.to_string();
    let count = choice.doses(start).known().copied();
    let mut dose_missing: Vec<NoDose> = Vec::new();
    for (colony, dose) in doses {
        match dose {
            Ok(dose) => {
                one_dose = one_dose.map(|sum| sum.plus(dose.each));
                most = most.plus(dose.each_at_most.unwrap_or(dose.each));
                unit = dose.unit;
            }
            Err(missing) => {
                one_dose = None;
                if !dose_missing.contains(&missing) {
                    dose_missing.push(missing.clone());
                }
                with(&mut not_counted, missing, &colony.name, NoDose::eq);
            }
        }
    }
    dose_missing.extend(count.is_none().then_some(NoDose::CountNotStated));
    let mixture = one_dose.filter(|_| unit == "ml").and_then(|_| dose::mixture(choice, start, most));
    let option = OptionForAll {
        leaflet: Arc::clone(&choice.leaflet),
        method: choice.method.clone(),
        revision: choice.revision.clone(),
        answer,
        order: rank.reasons(),
        colonies: by_answer(row, colonies),
        start: open.map(|days| of_longest.on(days)),
        longest_for: (colonies.len() > 1).then(|| of_longest.colony.name.clone()),
        one_dose,
        unit,
        doses: count,
        course: one_dose.zip(count).map(|(sum, count)| sum.times(u64::from(count))),
        dose_missing,
        not_counted,
        mixture,
        stock: stock(choice, start),
        see_to: see_to(choice, start),
        days,
    };
    Some((rank, option))
}

/// The worst answer of any colony for each day.
fn all_together(row: &[Judged<'_>], span: Span) -> Vec<StartDays> {
    let mut ranges: Vec<StartDays> = Vec::new();
    for day in span.days() {
        let on_day = row
            .iter()
            .filter_map(|judged| judged.days.iter().find(|days| days.from <= day && day <= days.to));
        let (mut answer, mut usual) = (Usability::Usable, Some(true));
        for days in on_day {
            answer = answer.and(days.answer);
            if days.answer == Usability::Unknown {
                usual = match (usual, days.in_a_usual_year) {
                    (Some(false), _) | (_, Some(false)) => Some(false),
                    (Some(true), Some(true)) => Some(true),
                    _ => None,
                };
            }
        }
        let in_a_usual_year = usual.filter(|_| answer == Usability::Unknown);
        match ranges.last_mut() {
            Some(last) if last.answer == answer && last.in_a_usual_year == in_a_usual_year => last.to = day,
            _ => ranges.push(StartDays { from: day, to: day, answer, in_a_usual_year }),
        }
    }
    ranges
}

fn by_answer(row: &[Judged<'_>], colonies: &[Colony<'_>]) -> Vec<OfAnswer> {
    let mut groups = Vec::new();
    for answer in [Usability::Usable, Usability::Unknown, Usability::RuledOut] {
        let of_it = || row.iter().zip(colonies).filter(|(judged, _)| judged.answer() == answer);
        let names: Vec<ColonyName> = of_it().map(|(_, colony)| colony.name.clone()).collect();
        if names.is_empty() {
            continue;
        }
        let mut why: Vec<WithColonies<Because>> = Vec::new();
        let sought = match answer {
            Usability::Usable => None,
            Usability::Unknown => Some(State::Unknown),
            Usability::RuledOut => Some(State::Broken),
        };
        for (judged, colony) in of_it() {
            let day = judged.days.iter().find(|days| days.answer == answer).map(|days| days.from);
            let binding = judged.conditions().filter(|condition| condition.binds);
            let runs = binding.filter_map(|condition| condition.on(day?));
            for run in runs.filter(|run| Some(run.state) == sought) {
                with(&mut why, run.because.clone(), &colony.name, Because::is_the_same_reason);
            }
        }
        groups.push(OfAnswer { answer, colonies: names, why });
    }
    groups
}

/// Adds a colony to a reason.
fn with<T>(
    list: &mut Vec<WithColonies<T>>,
    why: T,
    colony: &ColonyName,
    is_the_same: impl Fn(&T, &T) -> bool,
) {
    match list.iter_mut().find(|known| is_the_same(&known.why, &why)) {
        Some(known) if known.colonies.contains(colony) => {}
        Some(known) => known.colonies.push(colony.clone()),
        None => list.push(WithColonies { why, colonies: vec![colony.clone()] }),
    }
}
