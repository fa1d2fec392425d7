//! An answer as an owned report in words, ready for JSON, a table or a page.

use combclear_domain::Day;
use combclear_domain::basics::calendar::POLICY;
use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName, LeafletId};
use combclear_domain::facts::MedicineGiven;
use combclear_domain::facts::history::{Histories, History};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::EntryId;
use combclear_domain::questions::NamedEntry;
use combclear_domain::questions::supering::{
    Answer, DAYS_AHEAD, FirstFree, Missing, NamedDays, Outcome, Remedy, Rounds, Step, Surroundings,
};
use combclear_domain::rules::leaflet::{Force, Leaflets};
use serde::Serialize;

use super::glance::AtAGlance;
use super::{next, sentences};
use crate::{Words, notice};

/// Whether this colony may be supered on this day: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SuperingReport {
    /// The holding.
    pub holding: HoldingName,
    /// The colony.
    pub colony: ColonyName,
    /// Its apiary on that day.
    pub apiary: Option<ApiaryName>,
    /// The day asked about.
    pub on: Day,
    /// The answer without its grounds.
    #[serde(flatten)]
    pub in_brief: SuperingSummary,
    /// Why and what next, in a line each.
    #[serde(skip)]
    pub at_a_glance: AtAGlance,
    /// The first day on which honey may be taken, if supers may stay on but honey may not be taken yet. Absent if
    /// honey is not barred, if the end is not known, or while supers are barred.
    pub harvest_free_from: Option<Day>,
    /// The grounds.
    pub grounds: Vec<GroundReport>,
    /// What must happen before supers go on, the most urgent first.
    pub steps: Vec<StepReport>,
    /// The missing facts, with the entry that would supply each.
    pub missing: Vec<MissingReport>,
    /// The answer over the coming days if nothing else is recorded.
    pub ahead: Vec<DaySpan>,
    /// Rules on the whole apiary.
    pub whole_apiary: Vec<WholeApiaryReport>,
    /// The entries named above, with their numbers in the journal.
    pub named_entries: Vec<NamedEntry>,
    /// The counting policy.
    pub policy: &'static str,
    /// The notice: the leaflet on the pack, the prescriber and local law decide.
    pub notice: String,
}

/// One ground.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GroundReport {
    /// The outcome of the check.
    pub outcome: Outcome,
    /// Whether the answer depends on it.
    pub decides: bool,
    /// The identifier of the check.
    pub about: &'static str,
    /// The ground in a sentence.
    pub statement: String,
    /// The course it is about.
    pub course: Option<CourseReport>,
    /// The values used, with their sources.
    pub values: Vec<ValueReport>,
    /// The entries that support it.
    pub entries: Vec<EntryId>,
}

/// A course, by its identity.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CourseReport {
    /// The entry of the first dose.
    pub administration: EntryId,
    /// The medicine.
    #[serde(serialize_with = "Fact::or_null")]
    #[cfg_attr(feature = "openapi", schema(value_type = combclear_domain::basics::words::MedicineName))]
    pub medicine: MedicineGiven,
    /// The name on the pack.
    pub pack_name: String,
    /// The built-in leaflet, if it has one.
    pub leaflet: Option<LeafletId>,
    /// The day of the first dose.
    pub placed: Day,
}

/// A value used, with its source.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ValueReport {
    /// The term that it is a value of.
    pub of: &'static str,
    /// The value.
    pub value: String,
    /// The source: `prescription`, `leaflet_reading`, `pack`, `leaflet` (built in), `own_leaflet` (from the keeper's
    /// own folder) or `declared`.
    pub said_by: &'static str,
    /// The entry that stated it. Absent for the built-in leaflet.
    pub entry: Option<EntryId>,
    /// How well it is established.
    pub confidence: Confidence,
    /// How binding it is, for the built-in leaflet.
    pub force: Option<Force>,
    /// Where it was read, for the built-in leaflet.
    pub sources: Vec<String>,
    /// When it was last checked, for the built-in leaflet.
    pub checked_on: Option<Day>,
    /// A note for the reader.
    pub note: Option<String>,
}

/// A step before supers go on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StepReport {
    /// The identifier of the step.
    pub what: &'static str,
    /// The step in a sentence.
    pub statement: String,
    /// The course it is about.
    pub administration: Option<EntryId>,
    /// First day for it, if stated.
    pub from: Option<Day>,
    /// Last day for it, if stated.
    pub by: Option<Day>,
    /// First day with brood absent or at its lowest, if brood makes a difference.
    pub from_without_brood: Option<Day>,
    /// First day with brood present, if brood makes a difference.
    pub from_with_brood: Option<Day>,
}

/// A missing fact.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MissingReport {
    /// Whether the answer depends on it. If not, supplying it still completes the record or moves a day.
    pub decides: bool,
    /// The missing fact.
    pub fact: String,
    /// How to supply it.
    pub how: String,
    /// The entry that would supply it.
    #[serde(flatten)]
    pub remedy: Remedy,
}

/// Consecutive days with the same answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DaySpan {
    /// The first day.
    pub from: Day,
    /// The last day.
    pub to: Day,
    /// The answer.
    pub answer: Verdict,
}

/// A leaflet's rule on the whole apiary, with the colonies left out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct WholeApiaryReport {
    /// The course.
    pub administration: EntryId,
    /// The apiary.
    pub apiary: ApiaryName,
    /// The rule.
    pub asks: String,
    /// Other colonies there that got none of the medicine in the same round.
    pub left_out: Vec<ColonyName>,
}

/// The answer without its grounds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SuperingSummary {
    /// Yes, no or unknown.
    pub answer: Verdict,
    /// The answer in one sentence.
    pub summary: String,
    /// The last blocked day, of current periods or of those that are over. Absent if none is on record.
    pub last_blocked_day: Option<Day>,
    /// The first free day. With `if_out_on`, only if everything comes out on that day.
    pub first_free_day: Option<Day>,
    /// The earliest day on which everything inside may be out. Present if the first free day depends on it.
    pub if_out_on: Option<Day>,
}

impl SuperingReport {
    /// Answers the question for a colony, in words.
    #[must_use]
    pub fn ask(
        words: &Words,
        holding: &Holding,
        leaflets: &Leaflets,
        colony: &ColonyName,
        on: Day,
    ) -> SuperingReport {
        let history = History::of(holding, leaflets, colony);
        SuperingReport::of(words, holding, leaflets, &Rounds::of(holding), &history.supering(on))
    }

    /// The answers for several colonies, in their order. Work common to them is done once.
    #[must_use]
    pub fn board<'c>(
        words: &Words,
        holding: &Holding,
        leaflets: &Leaflets,
        colonies: impl IntoIterator<Item = &'c ColonyName>,
        on: Day,
    ) -> Vec<SuperingReport> {
        let rounds = Rounds::of(holding);
        let mut histories = Histories::new(holding, leaflets);
        let report = |colony| {
            let history = histories.of(colony);
            SuperingReport::of(words, holding, leaflets, &rounds, &history.supering(on))
        };
        colonies.into_iter().map(report).collect()
    }

    /// Puts an answer into words. `holding` and `leaflets` must be those that its history was derived from, and
    /// `rounds` those of the holding.
    #[must_use]
    pub fn of(
        words: &Words,
        holding: &Holding,
        leaflets: &Leaflets,
        rounds: &Rounds<'_>,
        answer: &Answer<'_>,
    ) -> SuperingReport {
        let (history, on) = (answer.history, answer.on);
        let steps = answer.steps();
        let grounds = GroundReport::of(words, answer);
        let why = sentences::deciding(answer).and_then(|place| grounds.get(place));
        let why = why.map(|why| why.statement.as_str());
        let missing = answer.missing(holding, leaflets);
        let ahead = history.supering_ahead(on, DAYS_AHEAD);
        let mut report = SuperingReport {
            holding: holding.name().clone(),
            colony: history.colony.clone(),
            apiary: holding.apiary_of(&history.colony, on).cloned(),
            on,
            in_brief: SuperingSummary::with(words, answer, why, &steps),
            at_a_glance: AtAGlance::of(words, answer, &steps, &missing),
            harvest_free_from: answer.harvest_free_from(),
            grounds,
            steps: steps.iter().map(|step| StepReport::of(words, step, on)).collect(),
            missing: missing.into_iter().map(|missing| MissingReport::of(words, missing)).collect(),
            ahead: ahead.into_iter().map(|(from, to, answer)| DaySpan { from, to, answer }).collect(),
            whole_apiary: answer.whole_apiary(rounds).iter().map(WholeApiaryReport::of).collect(),
            named_entries: Vec::new(),
            policy: POLICY,
            notice: notice(words),
        };
        report.named_entries = NamedEntry::all(holding, report.entries());
        report
    }

    /// Every entry that it names; some stand in it several times.
    fn entries(&self) -> impl Iterator<Item = EntryId> {
        let values = self.grounds.iter().flat_map(|ground| &ground.values);
        let remedies = self.missing.iter().map(|missing| &missing.remedy);
        let grounds = self.grounds.iter().flat_map(|ground| &ground.entries);
        grounds
            .copied()
            .chain(self.grounds.iter().filter_map(|ground| Some(ground.course.as_ref()?.administration)))
            .chain(values.filter_map(|value| value.entry))
            .chain(self.steps.iter().filter_map(|step| step.administration))
            .chain(remedies.flat_map(|remedy| remedy.corrects.into_iter().chain(remedy.administration)))
            .chain(self.whole_apiary.iter().map(|rule| rule.administration))
    }
}

impl SuperingSummary {
    /// Puts an answer into one sentence.
    #[must_use]
    pub fn of(words: &Words, answer: &Answer<'_>) -> SuperingSummary {
        let why = sentences::deciding(answer).and_then(|place| answer.grounds.get(place));
        let why = why.map(|why| sentences::statement(words, why));
        SuperingSummary::with(words, answer, why.as_deref(), &answer.steps())
    }

    /// The same, with the statement of the deciding ground and the steps, which the caller already has.
    fn with(words: &Words, answer: &Answer<'_>, why: Option<&str>, steps: &[Step<'_>]) -> SuperingSummary {
        let NamedDays { last_blocked, first_free } = answer.named_days();
        let (first_free_day, if_out_on) = match first_free {
            FirstFree::OnRecord(day) => (Some(day), None),
            FirstFree::OnceOut { out, free } => (Some(free), Some(out)),
            FirstFree::NotKnown => (None, None),
        };
        SuperingSummary {
            answer: answer.verdict,
            summary: sentences::summary(words, answer, why, steps, first_free),
            last_blocked_day: last_blocked,
            first_free_day,
            if_out_on,
        }
    }
}

impl MissingReport {
    fn of(words: &Words, missing: Missing<'_>) -> MissingReport {
        let Missing { lack, decides, remedy } = missing;
        let how = next::asked_for(words, &remedy.asks_for, &remedy.lots);
        MissingReport { decides, fact: next::lack(words, &lack), how, remedy }
    }
}

impl WholeApiaryReport {
    fn of(around: &Surroundings<'_>) -> WholeApiaryReport {
        WholeApiaryReport {
            administration: around.course.entry,
            apiary: around.apiary.clone(),
            asks: around.asks.to_owned(),
            left_out: around.left_out.iter().copied().cloned().collect(),
        }
    }
}
