//! The answer for one colony written out: owned, in words, ready for JSON, a table or a page.

use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use serde::Serialize;

use super::board::{Board, Judged};
use super::choice::Choice;
use super::colony::Colony;
use super::date_range::{Ask, Span};
use super::dose::{self, DoseSum, NoDose, Solution};
use super::flow::Flow;
use super::order::Rank;
use super::place::WhatIf;
use super::remedy::Blank;
use super::starts::{LatestStart, StartReport, Starting};
use super::state::{Condition, StartDays, State, Usability};
use super::{short, wording};
use crate::basics::calendar::{Day, POLICY};
use crate::basics::quantity::Quantity;
use crate::basics::words::{
    ApiaryName, ColonyName, FlowStage, Ground, HoldingName, Jurisdiction, LeafletId, LotName, Method,
};
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;
use crate::rules::leaflet::rule::Need;
use crate::rules::leaflet::{Force, Leaflets, Rule, Says};

/// What else can be used in this colony: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct OptionsReport {
    /// The holding.
    pub holding: HoldingName,
    /// The colony.
    pub colony: ColonyName,
    /// Where it stands on the first day.
    pub apiary: Option<ApiaryName>,
    /// Whose leaflets these are; none if the holding's jurisdiction is not on record, and then there are no options.
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
    pub options: Vec<OptionReport>,
    /// What is missing before there can be any option.
    pub missing: Vec<Missing>,
    /// The counting policy.
    pub policy: &'static str,
    /// What this answer is not.
    pub notice: &'static str,
}

/// A nectar flow.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FlowReport {
    /// What is in flower.
    pub forage: String,
    /// Expected or seen.
    pub stage: FlowStage,
    /// Its first day in an early year; absent where nobody told it apart.
    pub early: Option<Day>,
    /// Its first day in a usual year.
    pub usual: Day,
    /// Its first day in a late year; absent where nobody told it apart.
    pub late: Option<Day>,
    /// The entry that says so.
    pub entry: EntryId,
}

/// One way of treating, held against the colony.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct OptionReport {
    /// The leaflet.
    pub leaflet: LeafletId,
    /// Active, form and strength in words.
    pub title: String,
    /// Whether the leaflet comes from the keeper's own folder.
    pub own: bool,
    /// The method, where there are several.
    pub method: Option<Method>,
    /// The revision of the label on the pack, where the leaflet has several.
    pub revision: Option<String>,
    /// The best answer of any start day.
    pub answer: Usability,
    /// Why it stands where it stands in the list.
    pub order: Vec<String>,
    /// The start days with their answers, all of those asked about.
    pub days: Vec<StartDays>,
    /// Every condition.
    pub conditions: Vec<ConditionReport>,
    /// What is not known, and which entry would supply it.
    pub missing: Vec<Missing>,
    /// For one that is ruled out: the first day after those asked about on which no condition is broken, as far as can be seen.
    pub first_open_day: Option<Day>,
    /// For one that is ruled out: the start day asked about with the fewest broken conditions, the first of them.
    pub nearest_day: Option<Day>,
    /// For one that is ruled out: what would have to change for that day.
    pub would_have_to_change: Vec<String>,
    /// What a start on the first day of each range that is not ruled out would mean.
    pub starts: Vec<StartReport>,
    /// The latest start that is out before the next flow.
    pub latest_start: Vec<LatestStart>,
    /// What the colony would get.
    pub dose: DoseOfColony,
    /// What has to be carried there.
    pub carry: Vec<String>,
    /// What the leaflet asks for in words and nobody can judge from the record.
    pub see_to: Vec<String>,
    /// Cautions for the user.
    pub cautions: Vec<String>,
}

/// A condition.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ConditionReport {
    /// What it is about, as a word for programs: a kind of leaflet rule, or what else was looked at.
    pub about: &'static str,
    /// Whether the answer turns on it; advice does not decide.
    pub binds: bool,
    /// The value, in words; absent where no rule of the leaflet speaks.
    pub says: Option<String>,
    /// How much the rule binds.
    pub force: Option<Force>,
    /// How well the value is established.
    pub confidence: Option<Confidence>,
    /// Where it was read.
    pub sources: Vec<String>,
    /// When it was last checked.
    pub checked_on: Option<Day>,
    /// What a reader must know about it.
    pub note: Option<String>,
    /// What it says of the start days, in order.
    pub runs: Vec<RunReport>,
}

/// Start days of which a condition says the same.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RunReport {
    /// The first of them.
    pub from: Day,
    /// The last of them.
    pub to: Day,
    /// Met, broken or unknown.
    pub state: State,
    /// Of what is not known: whether it would hold in a usual year.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_a_usual_year: Option<bool>,
    /// Why, in a sentence.
    pub why: String,
    /// The entries that were read.
    pub entries: Vec<EntryId>,
}

/// Something that is not known.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Missing {
    /// What it bears on.
    pub about: &'static str,
    /// What is not known.
    pub fact: String,
    /// The kind of entry that would supply it; absent where no entry can.
    pub supplied_by: Option<&'static str>,
    /// The fields that such an entry must fill in, `field=value` where only that value would do.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub fields: Vec<String>,
    /// The first day on which it can lie; of temperatures and flows, which are recorded when they are known, the first day of
    /// which it must tell.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub on_from: Option<Day>,
    /// The last such day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub on_by: Option<Day>,
    /// The lots whose leaflets are to be read, each of them.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub lots: Vec<LotName>,
    /// The entries that it is about: a first dose that is to come out, an entry to be corrected.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub entries: Vec<EntryId>,
    /// How to supply it, in words.
    pub how: String,
    /// Where it concerns later start days alone: the first of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<Day>,
}

impl Missing {
    /// Whether one entry of a kind would supply both, apart from the days of it.
    fn asks_for_the_same(&self, other: &Missing) -> bool {
        let days = |missing: &Missing| match missing.supplied_by {
            Some("nectar_flow") => missing.on_from.zip(missing.on_by),
            _ => None,
        };
        self.about == other.about
            && self.supplied_by == other.supplied_by
            && self.fields == other.fields
            && self.lots == other.lots
            && self.entries == other.entries
            && days(self) == days(other)
            && (self.supplied_by.is_some() || self.how == other.how)
    }

    /// Something that is not known, and nothing yet that would supply it.
    pub(super) fn new(about: &'static str, fact: String) -> Missing {
        Missing {
            about,
            fact,
            supplied_by: None,
            fields: Vec::new(),
            on_from: None,
            on_by: None,
            lots: Vec::new(),
            entries: Vec::new(),
            how: String::new(),
            from: None,
        }
    }
}

/// What a colony would get, and what is in stock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DoseOfColony {
    /// The dose; none if something must be counted first.
    pub dose: Option<DoseSum>,
    /// What must be known first, of the dose or of the number of doses, and what would supply it.
    pub missing: Vec<Missing>,
    /// What has to be mixed for one dose.
    pub solution: Option<Solution>,
    /// What is in stock of it.
    pub stock: StockOfMedicine,
}

/// What is in stock of one medicine on a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StockOfMedicine {
    /// In date, in the unit of the medicine.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub in_date: Quantity,
    /// In what.
    pub unit: String,
    /// The lots of it.
    pub lots: Vec<LotName>,
    /// Lots that expire before, or whose expiry is not recorded.
    pub not_counted: Vec<LotName>,
    /// Lots whose label revision is not recorded, where the leaflet has several: record it, or read it on the pack.
    pub label_not_recorded: Vec<LotName>,
}

impl OptionsReport {
    /// Asks the question of a holding and writes the answer out.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, colony: &ColonyName, ask: &Ask) -> OptionsReport {
        let span = ask.span;
        let board = Board::of_colony(holding, leaflets, ask, colony);
        let subject = board.colony(colony);
        let place = board.place(subject.apiary.as_ref());
        let flow = place.and_then(|place| Flow::next_from(&place.flows, span.from()));
        let judged = board.judge_colony(&subject);
        let mut ranked: Vec<(Rank, OptionReport)> = judged
            .iter()
            .map(|judged| {
                let starting = Starting { choice: judged.choice, colony: &subject, place, flow };
                let rank = Rank::of(judged, &starting);
                let report = option(&board, judged, &starting, &rank);
                (rank, report)
            })
            .collect();
        // Stable: ties stay in the order of the leaflets.
        ranked.sort_by_key(|(rank, _)| rank.key());
        OptionsReport {
            holding: holding.name().clone(),
            colony: colony.clone(),
            apiary: subject.apiary.clone(),
            jurisdiction: board.jurisdiction.cloned(),
            from: span.from(),
            to: span.to(),
            as_of: ask.as_of,
            what_if: (!ask.what_if.is_empty()).then(|| ask.what_if.clone()),
            flow: flow.map(FlowReport::of),
            options: ranked.into_iter().map(|(_, report)| report).collect(),
            missing: no_jurisdiction(&board),
            policy: POLICY,
            notice: wording::NOTICE,
        }
    }
}

impl FlowReport {
    pub(super) fn of(flow: &Flow) -> FlowReport {
        FlowReport {
            forage: flow.forage.clone(),
            stage: flow.stage,
            early: flow.early,
            usual: flow.usual,
            late: flow.late,
            entry: flow.entry,
        }
    }
}

/// Without a jurisdiction nobody knows whose leaflets hold.
pub(super) fn no_jurisdiction(board: &Board<'_>) -> Vec<Missing> {
    let (fact, how) = match board.jurisdiction {
        None => (
            "whose leaflets hold in this holding".to_owned(),
            "record the holding's jurisdiction, so that its leaflets are used".to_owned(),
        ),
        Some(jurisdiction) if board.choices.is_empty() => (
            format!("leaflets of the jurisdiction `{jurisdiction}`: this program has none"),
            "correct the jurisdiction, or load leaflets of your own".to_owned(),
        ),
        Some(_) => return Vec::new(),
    };
    let supplied_by = Some(Kind::HoldingDetails.as_str());
    vec![Missing { supplied_by, how, ..Missing::new("jurisdiction", fact) }]
}

fn option(board: &Board<'_>, judged: &Judged<'_>, starting: &Starting<'_>, rank: &Rank) -> OptionReport {
    let choice = judged.choice;
    let open = judged.days.iter().filter(|days| days.answer != Usability::RuledOut);
    let starts: Vec<StartReport> = open.filter_map(|days| starting.report(days)).collect();
    let start = starts.first().map_or(board.ask.span.from(), |first| first.start);
    let ruled_out = judged.answer() == Usability::RuledOut;
    let nearest = if ruled_out { nearest_day(judged) } else { None };
    OptionReport {
        leaflet: choice.leaflet.id.clone(),
        title: choice.leaflet.title.clone(),
        own: choice.leaflet.own,
        method: choice.method.clone(),
        revision: choice.revision.clone(),
        answer: judged.answer(),
        order: rank.reasons(),
        days: judged.days.clone(),
        conditions: judged.conditions().map(|condition| ConditionReport::of(choice, condition)).collect(),
        missing: missing(choice, starting.colony, judged),
        first_open_day: if ruled_out { first_open_day(board, starting) } else { None },
        nearest_day: nearest.as_ref().map(|(day, _)| *day),
        would_have_to_change: nearest.map(|(_, changes)| changes).unwrap_or_default(),
        latest_start: starting.latest(&judged.days),
        starts,
        dose: dose_report(choice, starting.colony, start),
        carry: carry(starting, start),
        see_to: see_to(choice, start),
        cautions: cautions(choice, starting, start),
    }
}

impl ConditionReport {
    fn of(choice: &Choice, condition: &Condition) -> ConditionReport {
        let rule = condition.rule.and_then(|index| choice.leaflet.rules.get(index));
        let sources = rule.map(|rule| {
            let named = rule.source.iter().map(|key| {
                choice.leaflet.source(key).map_or_else(|| key.clone(), |source| source.title.clone())
            });
            named.collect()
        });
        ConditionReport {
            about: condition.about,
            binds: condition.binds,
            says: rule.map(|rule| says(choice, condition, rule)),
            force: rule.map(|rule| rule.force),
            confidence: rule.map(|rule| rule.confidence),
            sources: sources.unwrap_or_default(),
            checked_on: rule.map(|rule| rule.checked_on),
            note: rule.and_then(|rule| rule.note.clone()),
            runs: condition
                .runs
                .iter()
                .map(|run| RunReport {
                    from: run.from,
                    to: run.to,
                    state: run.state,
                    in_a_usual_year: run.expected,
                    why: wording::because(&run.because),
                    entries: wording::entries(&run.because),
                })
                .collect(),
        }
    }
}

/// The value of a condition's rule in words; of what is needed, only what this condition is about.
fn says(choice: &Choice, condition: &Condition, rule: &Rule) -> String {
    if let Says::Needs { .. } = rule.says {
        return wording::need(condition).to_owned();
    }
    short::says(&rule.says, choice.leaflet.unit)
}

/// What is not known on days that no condition rules out; if all are ruled out, nothing that is asked would help. What concerns
/// later days alone says from when on.
fn missing(choice: &Choice, colony: &Colony<'_>, judged: &Judged<'_>) -> Vec<Missing> {
    let first = judged.days.first().map(|days| days.from);
    let mut missing: Vec<Missing> = Vec::new();
    for condition in judged.conditions().filter(|condition| condition.binds) {
        for run in condition.runs.iter().filter(|run| run.state == State::Unknown) {
            let open = judged.days.iter().filter(|days| days.answer == Usability::Unknown);
            let mut bears_on = open.filter(|days| days.from <= run.to && run.from <= days.to);
            let Some(days) = bears_on.next() else { continue };
            let (from, to) = (days.from.max(run.from), days.to.min(run.to));
            let rule = condition.rule.and_then(|index| choice.leaflet.rules.get(index));
            let says = rule.map(|rule| says(choice, condition, rule));
            let topic = rule.map(|rule| rule.says.topic()).or_else(|| topic_of(condition.about));
            let why = wording::because(&run.because);
            let fact = says.as_ref().map_or_else(|| why.clone(), |says| format!("{says}: {why}"));
            let blank = Blank { choice, colony, run, from, to, topic, says: says.as_deref() };
            let mut lack = blank.missing(condition.about, fact);
            lack.from = lack.from.filter(|from| Some(*from) != first);
            // Runs come in the order of their days, so that the first to ask for something names the first day.
            if !missing.iter().any(|known| known.asks_for_the_same(&lack)) {
                missing.push(lack);
            }
        }
    }
    missing
}

fn topic_of(about: &str) -> Option<Topic> {
    Topic::ALL.iter().copied().find(|topic| topic.as_str() == about)
}

/// How far ahead a day is looked for on which nothing is broken.
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

/// The start day with the fewest broken conditions, the first of them, and what would have to change for it.
fn nearest_day(judged: &Judged<'_>) -> Option<(Day, Vec<String>)> {
    let broken_on = |day: Day| {
        let binding = judged.conditions().filter(|condition| condition.binds);
        let runs = binding.filter_map(move |condition| condition.on(day));
        runs.filter(|run| run.state == State::Broken)
    };
    // Answers change where runs do, so the first days of runs stand for all.
    let mut days: Vec<Day> =
        judged.conditions().flat_map(|condition| condition.runs.iter().map(|run| run.from)).collect();
    days.sort_unstable();
    days.dedup();
    let day = days.into_iter().min_by_key(|day| (broken_on(*day).count(), *day))?;
    let mut changes: Vec<String> = broken_on(day).map(|run| wording::change(&run.because)).collect();
    changes.dedup();
    Some((day, changes))
}

pub(super) fn dose_report(choice: &Choice, colony: &Colony<'_>, start: Day) -> DoseOfColony {
    let stock = stock(choice, start);
    match dose::of(choice, colony, start) {
        Ok(dose) => {
            let most = dose.each_at_most.unwrap_or(dose.each);
            let solution = (dose.unit == "ml").then(|| dose::solution(choice, start, most)).flatten();
            let open = dose.doses.is_none().then(|| NoDose::CountNotStated.missing());
            DoseOfColony { dose: Some(dose), missing: open.into_iter().collect(), solution, stock }
        }
        Err(missing) => DoseOfColony { dose: None, missing: vec![missing.missing()], solution: None, stock },
    }
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

/// What has to be carried, by what the leaflet needs. Amounts stand with the dose.
fn carry(starting: &Starting<'_>, start: Day) -> Vec<String> {
    let needs = starting.needs(start);
    let mut carry =
        vec!["the medicine in its pack with the leaflet, and what the cautions ask you to wear".to_owned()];
    let words = |need: &Need| match need {
        Need::CarryInKit => Some("the kit for giving it, which can be carried in"),
        Need::Battery => Some("the vaporiser and a 12 V car battery of more than 40 Ah, about 12 kg"),
        Need::MainsOrGenerator => Some("the device, and a generator where there are no mains"),
        Need::HiveOpened => Some("smoker and hive tool: the hive is opened"),
        Need::ReturnVisit | Need::DryGround => None,
    };
    carry.extend(needs.iter().filter_map(words).map(str::to_owned));
    carry
}

/// What the leaflet asks for in words, and what has to be done to the product.
pub(super) fn see_to(choice: &Choice, on: Day) -> Vec<String> {
    let rules = choice.rules.iter().filter_map(|index| choice.leaflet.rules.get(*index));
    let words = rules.filter(|rule| rule.is_in_force(on)).filter_map(|rule| {
        let text = match &rule.says {
            Says::WholeApiary { text }
            | Says::Entrance { text }
            | Says::CombRule { text }
            | Says::NotWith { text, .. }
            | Says::Contraindication { text }
            | Says::ColonySize { text: Some(text), min_bees: None, min_brood_frames: None } => text.clone(),
            Says::Temperature { window: crate::rules::leaflet::rule::TemperatureWindow::Product, .. }
            | Says::FlowBefore { .. }
            | Says::HarvestDuring { value: crate::basics::words::Permission::Forbidden } => {
                short::says(&rule.says, choice.leaflet.unit)
            }
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
            | Says::Disposal { .. } => return None,
        };
        Some(if rule.force == Force::Advice { format!("advice: {text}") } else { text })
    });
    words.collect()
}

fn cautions(choice: &Choice, starting: &Starting<'_>, on: Day) -> Vec<String> {
    let rules = choice.rules.iter().filter_map(|index| choice.leaflet.rules.get(*index));
    let mut cautions: Vec<String> = rules
        .filter(|rule| rule.is_in_force(on))
        .filter_map(|rule| {
            let Says::UserSafety { text } = &rule.says else { return None };
            Some(text.clone())
        })
        .collect();
    let ground = starting.place.and_then(|place| place.ground(on)).map(|(ground, _)| ground);
    if ground == Some(Ground::Flooded) {
        cautions.push(
            "flooded ground: keep the medicine and what comes out of the hive out of the water, and store none there".to_owned(),
        );
    }
    if cautions.is_empty() {
        cautions.push("follow the cautions on the pack".to_owned());
    }
    cautions
}
