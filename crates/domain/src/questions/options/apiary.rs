//! The answer for a whole apiary: usable for all its colonies, for some, or for none, and for which not and why.

use serde::Serialize;

use super::board::{Board, Judged};
use super::colony::Colony;
use super::date_range::{Ask, Span};
use super::dose::{self, NoDose, Solution};
use super::flow::Flow;
use super::order::Rank;
use super::place::WhatIf;
use super::report::{FlowReport, Missing, StockOfMedicine, no_jurisdiction, see_to, stock};
use super::starts::{StartReport, Starting};
use super::state::{StartDays, State, Usability};
use super::wording;
use crate::basics::calendar::{Day, POLICY};
use crate::basics::quantity::Quantity;
use crate::basics::words::{ApiaryName, ColonyName, HoldingName, Jurisdiction, LeafletId, Method};
use crate::facts::holding::Holding;
use crate::rules::leaflet::Leaflets;

/// What can be used at this apiary: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryReport {
    /// The holding.
    pub holding: HoldingName,
    /// The apiary.
    pub apiary: ApiaryName,
    /// The colonies that stand there on the first day.
    pub colonies: Vec<ColonyName>,
    /// Whose leaflets these are.
    pub jurisdiction: Option<Jurisdiction>,
    /// The first start day asked about.
    pub from: Day,
    /// The last start day asked about.
    pub to: Day,
    /// What happened after this day does not bear on the answer.
    pub as_of: Day,
    /// What was assumed of the site.
    pub what_if: Option<WhatIf>,
    /// The next nectar flow on record from the first day on.
    pub flow: Option<FlowReport>,
    /// The options, in the order that each one's reasons give.
    pub options: Vec<ApiaryOption>,
    /// What is missing before there can be any option.
    pub missing: Vec<Missing>,
    /// The counting policy.
    pub policy: &'static str,
    /// What this answer is not.
    pub notice: &'static str,
}

/// One way of treating, held against every colony of the apiary.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryOption {
    /// The leaflet.
    pub leaflet: LeafletId,
    /// Active, form and strength in words.
    pub title: String,
    /// The method, where there are several.
    pub method: Option<Method>,
    /// The revision of the label on the pack, where the leaflet has several.
    pub revision: Option<String>,
    /// The best answer of any start day for all colonies together.
    pub answer: Usability,
    /// Why it stands where it stands in the list.
    pub order: Vec<String>,
    /// The start days with their answers for all colonies together: the worst of any colony.
    pub days: Vec<StartDays>,
    /// The colonies by the best answer of any start day.
    pub colonies: Vec<ColoniesOfAnswer>,
    /// What a start on the first day of the first range that is not ruled out means, for the colony for which it takes longest.
    pub start: Option<StartReport>,
    /// The colony for which it takes longest.
    pub longest_for: Option<ColonyName>,
    /// What all colonies together would get at one dose; none while something must be counted in one of them.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub one_dose: Option<Quantity>,
    /// In what.
    pub unit: String,
    /// How many doses a course has, at least; absent where nobody has stated it.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 255))]
    pub doses: Option<u8>,
    /// What all colonies together would get in a course, at least; absent while something must be counted, or where nobody has
    /// stated how many doses there are.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub course: Option<Quantity>,
    /// What must be known before that is, and what would supply it.
    pub dose_missing: Vec<Missing>,
    /// The colonies in which something must be counted first, and what.
    pub not_counted: Vec<WhyNot>,
    /// What has to be mixed for one dose of all of them.
    pub solution: Option<Solution>,
    /// What is in stock of it.
    pub stock: StockOfMedicine,
    /// What the leaflet asks for in words.
    pub see_to: Vec<String>,
}

/// Colonies with one answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ColoniesOfAnswer {
    /// The answer.
    pub answer: Usability,
    /// The colonies.
    pub colonies: Vec<ColonyName>,
    /// For an answer other than usable: why, colony by colony where it differs.
    pub why: Vec<WhyNot>,
}

/// Why not, and for which colonies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct WhyNot {
    /// Why, in a sentence.
    pub why: String,
    /// The colonies.
    pub colonies: Vec<ColonyName>,
}

impl ApiaryReport {
    /// Asks the question of an apiary and writes the answer out; none if the holding has no such apiary.
    #[must_use]
    pub fn of(
        holding: &Holding,
        leaflets: &Leaflets,
        apiary: &ApiaryName,
        ask: &Ask,
    ) -> Option<ApiaryReport> {
        let span = ask.span;
        let known = holding.apiaries().find(|known| *known == apiary)?;
        let board = Board::of(holding, leaflets, ask, [known]);
        let colonies: Vec<Colony<'_>> =
            holding.colonies_at(apiary, ask.stands_on()).map(|colony| board.colony(colony)).collect();
        let place = board.place(Some(apiary));
        let flow = place.and_then(|place| Flow::next_from(&place.flows, span.from()));
        let mut rows: Vec<Vec<Judged<'_>>> = board.choices.iter().map(|_| Vec::new()).collect();
        for colony in &colonies {
            for (row, judged) in rows.iter_mut().zip(board.judge_colony(colony)) {
                row.push(judged);
            }
        }
        let mut ranked: Vec<(Rank, ApiaryOption)> = rows
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
        Some(ApiaryReport {
            holding: holding.name().clone(),
            apiary: apiary.clone(),
            colonies: colonies.iter().map(|colony| colony.name.clone()).collect(),
            jurisdiction: board.jurisdiction.cloned(),
            from: span.from(),
            to: span.to(),
            as_of: ask.as_of,
            what_if: (!ask.what_if.is_empty()).then(|| ask.what_if.clone()),
            flow: flow.map(FlowReport::of),
            options: ranked.into_iter().map(|(_, option)| option).collect(),
            missing: no_jurisdiction(&board),
            policy: POLICY,
            notice: wording::NOTICE,
        })
    }
}

fn option<'a>(
    span: Span,
    row: &'a [Judged<'a>],
    colonies: &'a [Colony<'a>],
    starting: impl Fn(&'a Judged<'a>, &'a Colony<'a>) -> Starting<'a>,
) -> Option<(Rank, ApiaryOption)> {
    let first = row.first()?;
    let choice = first.choice;
    let days = all_together(row, span);
    let answer = days.iter().map(|days| days.answer).min().unwrap_or(Usability::RuledOut);
    let open = days.iter().find(|days| days.answer == answer && days.answer != Usability::RuledOut);
    let start = open.map_or(span.from(), |days| days.from);
    let each = || row.iter().zip(colonies).map(|(judged, colony)| (judged, starting(judged, colony)));
    // The one that is free last speaks for all; one whose first free day is not known, before all others.
    let longest =
        each().max_by_key(|(_, starting)| match starting.effect(start).map(|e| e.free.day(start)) {
            Some(Some(day)) => (0, Some(day)),
            _ => (1, None),
        });
    let (judged, of_longest) = longest?;
    let mut rank = Rank::of(judged, &of_longest);
    rank.answer = answer;
    // A change of class is one only if it is one in every colony.
    let classes = each().map(|(judged, starting)| Rank::of(judged, &starting).class);
    rank.class = classes.fold(rank.class, State::max);
    let doses: Vec<_> = colonies.iter().map(|colony| (colony, dose::of(choice, colony, start))).collect();
    let mut not_counted: Vec<WhyNot> = Vec::new();
    let mut one_dose = Some(Quantity::ZERO);
    let mut most = Quantity::ZERO;
    let mut unit = choice.leaflet.unit.to_string();
    let count = choice.doses(start);
    let mut dose_missing: Vec<Missing> = Vec::new();
    for (colony, dose) in &doses {
        match dose {
            Ok(dose) => {
                one_dose = one_dose.map(|sum| sum.plus(dose.each));
                most = most.plus(dose.each_at_most.unwrap_or(dose.each));
                unit.clone_from(&dose.unit);
            }
            Err(missing) => {
                one_dose = None;
                because(&mut not_counted, missing.fact(), &colony.name);
                let missing = missing.missing();
                if !dose_missing.contains(&missing) {
                    dose_missing.push(missing);
                }
            }
        }
    }
    dose_missing.extend(count.is_none().then(|| NoDose::CountNotStated.missing()));
    let solution = one_dose.filter(|_| unit == "ml").and_then(|_| dose::solution(choice, start, most));
    let report = ApiaryOption {
        leaflet: choice.leaflet.id.clone(),
        title: choice.leaflet.title.clone(),
        method: choice.method.clone(),
        revision: choice.revision.clone(),
        answer,
        order: rank.reasons(),
        colonies: by_answer(row, colonies),
        start: open.and_then(|days| of_longest.report(days)),
        longest_for: (colonies.len() > 1).then(|| of_longest.colony.name.clone()),
        one_dose,
        unit,
        doses: count,
        course: one_dose.zip(count).map(|(sum, count)| sum.times(u64::from(count))),
        dose_missing,
        not_counted,
        solution,
        stock: stock(choice, start),
        see_to: see_to(choice, start),
        days,
    };
    Some((rank, report))
}

/// The worst answer of any colony, day by day.
fn all_together(row: &[Judged<'_>], span: Span) -> Vec<StartDays> {
    let mut ranges: Vec<StartDays> = Vec::new();
    for day in span.days() {
        let on_day = row
            .iter()
            .filter_map(|judged| judged.days.iter().find(|days| days.from <= day && day <= days.to));
        let (mut answer, mut usual) = (Usability::Usable, Some(true));
        for days in on_day {
            answer = answer.max(days.answer);
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

fn by_answer(row: &[Judged<'_>], colonies: &[Colony<'_>]) -> Vec<ColoniesOfAnswer> {
    let mut groups = Vec::new();
    for answer in [Usability::Usable, Usability::Unknown, Usability::RuledOut] {
        let of_it = || row.iter().zip(colonies).filter(|(judged, _)| judged.answer() == answer);
        let names: Vec<ColonyName> = of_it().map(|(_, colony)| colony.name.clone()).collect();
        if names.is_empty() {
            continue;
        }
        let mut why: Vec<WhyNot> = Vec::new();
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
                because(&mut why, wording::because(&run.because), &colony.name);
            }
        }
        groups.push(ColoniesOfAnswer { answer, colonies: names, why });
    }
    groups
}

fn because(list: &mut Vec<WhyNot>, why: String, colony: &ColonyName) {
    match list.iter_mut().find(|known| known.why == why) {
        Some(known) if known.colonies.contains(colony) => {}
        Some(known) => known.colonies.push(colony.clone()),
        None => list.push(WhyNot { why, colonies: vec![colony.clone()] }),
    }
}
