//! An answer written out: owned, in words, ready for JSON, a table or a page.

use crate::basics::confidence::Confidence;
use crate::basics::verdict::Verdict;
use serde::Serialize;

use super::grounds::{Outcome, Reason};
use super::remedy::{self, Remedy};
use super::steps::Step;
use super::{Answer, Course, DAYS_AHEAD, FirstFree, Rounds, Surroundings, wording};
use crate::basics::calendar::{Day, POLICY};
use crate::basics::words::{ApiaryName, ColonyName, HoldingName, LeafletId, LotName, MedicineName};
use crate::facts::history::History;
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;
use crate::rules::leaflet::{Force, Leaflets};

/// May this colony be supered on this day: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SuperingReport {
    /// The holding.
    pub holding: HoldingName,
    /// The colony.
    pub colony: ColonyName,
    /// Where it stands on that day.
    pub apiary: Option<ApiaryName>,
    /// The day asked about.
    pub on: Day,
    /// Yes, no or unknown.
    pub answer: Verdict,
    /// The answer in one sentence.
    pub summary: String,
    /// The last blocked day: of what runs, or of what is over. Absent if none is on record.
    pub last_blocked_day: Option<Day>,
    /// The first free day. With `if_out_on`, only if everything comes out on that day.
    pub first_free_day: Option<Day>,
    /// The earliest day on which everything that is in may be out; present if the first free day turns on it.
    pub if_out_on: Option<Day>,
    /// The first day on which honey may be taken, where supers may stay on though no honey may be taken yet. Absent if honey is
    /// not barred, if it is not known until when, or while supers themselves are barred.
    pub harvest_free_from: Option<Day>,
    /// Why.
    pub grounds: Vec<GroundReport>,
    /// What must happen first.
    pub steps: Vec<StepReport>,
    /// What is missing, and which entry would supply it.
    pub missing: Vec<MissingReport>,
    /// The answer over the coming days if nothing else is recorded.
    pub ahead: Vec<DaySpan>,
    /// Conditions on the whole apiary.
    pub whole_apiary: Vec<WholeApiaryReport>,
    /// The counting policy.
    pub policy: &'static str,
    /// What this answer is not.
    pub notice: &'static str,
}

/// One ground.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GroundReport {
    /// How it came out.
    pub outcome: Outcome,
    /// Whether the answer turns on it.
    pub decides: bool,
    /// What was looked at, as a word for programs.
    pub about: &'static str,
    /// The same in a sentence.
    pub statement: String,
    /// The course it speaks of.
    pub course: Option<CourseReport>,
    /// The values used, with who said them.
    pub values: Vec<ValueReport>,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
}

/// A course, by what identifies it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CourseReport {
    /// The entry of the first dose.
    pub administration: EntryId,
    /// The medicine.
    pub medicine: MedicineName,
    /// The name on the pack.
    pub pack_name: String,
    /// The built-in leaflet, if it has one.
    pub leaflet: Option<LeafletId>,
    /// The day of the first dose.
    pub placed: Day,
}

/// A value used, and who said it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ValueReport {
    /// What it is a value of.
    pub of: &'static str,
    /// The value.
    pub value: String,
    /// Who said it: `prescription`, `leaflet_reading`, `pack`, `leaflet` (built in), `own_leaflet` (from the keeper's own
    /// folder) or `declared`.
    pub said_by: &'static str,
    /// The entry in which it was said; absent for the built-in leaflet.
    pub entry: Option<EntryId>,
    /// How well it is established.
    pub confidence: Confidence,
    /// How much it binds, for the built-in leaflet.
    pub force: Option<Force>,
    /// Where it was read, for the built-in leaflet.
    pub sources: Vec<String>,
    /// When it was last checked, for the built-in leaflet.
    pub checked_on: Option<Day>,
    /// What a reader must know about it.
    pub note: Option<String>,
}

/// Something that must happen first.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StepReport {
    /// What, as a word for programs.
    pub what: &'static str,
    /// The same in a sentence.
    pub statement: String,
    /// The course it is about.
    pub administration: Option<EntryId>,
    /// First day for it, if stated.
    pub from: Option<Day>,
    /// Last day for it, if stated.
    pub by: Option<Day>,
    /// First day with brood absent or at its lowest, where brood makes a difference.
    pub from_without_brood: Option<Day>,
    /// First day with brood present, where brood makes a difference.
    pub from_with_brood: Option<Day>,
}

/// Something that is missing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MissingReport {
    /// Whether the answer turns on it. What does not would still mend the record or move a day.
    pub decides: bool,
    /// What is not known.
    pub fact: String,
    /// The kind of entry that would supply it.
    pub supplied_by: &'static str,
    /// How to supply it.
    pub how: String,
    /// The entry that it corrects, where one says what is wrong or leaves out what is missing.
    pub corrects: Option<EntryId>,
    /// The first dose of the course that it is about.
    pub administration: Option<EntryId>,
    /// The lots that it is about, an entry for each.
    pub lots: Vec<LotName>,
    /// The fields of the terms that are asked for.
    pub fields: Vec<&'static str>,
    /// The entry is of this day or a later one.
    pub from: Option<Day>,
    /// The entry is of this day or an earlier one.
    pub by: Option<Day>,
}

/// Days with one answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DaySpan {
    /// The first of them.
    pub from: Day,
    /// The last of them.
    pub to: Day,
    /// The answer.
    pub answer: Verdict,
}

/// What a leaflet asks of the whole apiary, and who was left out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct WholeApiaryReport {
    /// The course.
    pub administration: EntryId,
    /// The apiary.
    pub apiary: ApiaryName,
    /// What the leaflet asks.
    pub asks: String,
    /// Colonies there that got none in the same round.
    pub left_out: Vec<ColonyName>,
}

impl SuperingReport {
    /// Asks the question of a holding and writes the answer out.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, colony: &ColonyName, on: Day) -> SuperingReport {
        SuperingReport::among(&Rounds::of(holding), holding, leaflets, colony, on)
    }

    /// The answers for several colonies, in their order. What they have in common is worked out once.
    #[must_use]
    pub fn board<'c>(
        holding: &Holding,
        leaflets: &Leaflets,
        colonies: impl IntoIterator<Item = &'c ColonyName>,
        on: Day,
    ) -> Vec<SuperingReport> {
        let rounds = Rounds::of(holding);
        let report = |colony| SuperingReport::among(&rounds, holding, leaflets, colony, on);
        colonies.into_iter().map(report).collect()
    }

    fn among(
        rounds: &Rounds<'_>,
        holding: &Holding,
        leaflets: &Leaflets,
        colony: &ColonyName,
        on: Day,
    ) -> SuperingReport {
        let history = History::of(holding, leaflets, colony);
        let answer = history.supering(on);
        let first_free = answer.first_free();
        let (first_free_day, if_out_on) = match first_free {
            FirstFree::OnRecord(day) => (Some(day), None),
            FirstFree::OnceOut { out, free } => (Some(free), Some(out)),
            FirstFree::NotKnown => (None, None),
        };
        let ahead = history.supering_ahead(on, DAYS_AHEAD);
        SuperingReport {
            holding: holding.name().clone(),
            colony: colony.clone(),
            apiary: holding.apiary_of(colony, on).cloned(),
            on,
            answer: answer.verdict,
            summary: wording::summary(&answer, first_free),
            last_blocked_day: answer.last_blocked_day(),
            first_free_day,
            if_out_on,
            harvest_free_from: answer.harvest_free_from(),
            grounds: answer.grounds.iter().map(GroundReport::of).collect(),
            steps: answer.steps().iter().map(|step| StepReport::of(step, on)).collect(),
            missing: missing(holding, leaflets, &answer),
            ahead: ahead.into_iter().map(|(from, to, answer)| DaySpan { from, to, answer }).collect(),
            whole_apiary: whole_apiary(rounds, &answer),
            policy: POLICY,
            notice: wording::NOTICE,
        }
    }
}

/// What each open question lacks, and how to supply it.
fn missing(holding: &Holding, leaflets: &Leaflets, answer: &Answer<'_>) -> Vec<MissingReport> {
    // Of a colony that has ended nothing is asked any more.
    if answer.history.ended.is_some_and(|(ended, _)| ended <= answer.on) {
        return Vec::new();
    }
    let open = answer.grounds.iter().filter(|ground| ground.outcome == Outcome::Unknown);
    let grounds = open.filter_map(|ground| {
        let remedy = remedy::of(holding, leaflets, ground)?;
        Some(MissingReport::of(remedy, ground.decides, wording::statement(ground)))
    });
    let mut missing: Vec<MissingReport> = Vec::new();
    for asked in grounds.chain(answer.steps().iter().filter_map(|step| missing_brood(step, answer.on))) {
        // One entry may supply what several grounds lack.
        let same =
            |known: &MissingReport| MissingReport { fact: asked.fact.clone(), ..known.clone() } == asked;
        if !missing.iter().any(same) {
            missing.push(asked);
        }
    }
    missing
}

/// Brood that nobody recorded moves the earliest day on which strips may come out.
fn missing_brood(step: &Step<'_>, on: Day) -> Option<MissingReport> {
    let Step::TakeOut { course, earliest, .. } = step else { return None };
    let (absent, present) = earliest.brood_absent_or_lowest.zip(earliest.brood_present)?;
    (earliest.brood_seen.is_none()).then(|| {
        let fact = format!(
            "{}: whether there is brood, which makes the earliest day {absent} or {present}",
            wording::named(course)
        );
        let remedy = Remedy::new(Kind::Inspection, "record the brood that is seen").of_course(course);
        MissingReport::of(Remedy { by: Some(on), ..remedy }, false, fact)
    })
}

impl MissingReport {
    fn of(remedy: Remedy, decides: bool, fact: String) -> MissingReport {
        let Remedy { kind, corrects, administration, lots, fields, from, by, how } = remedy;
        let supplied_by = kind.as_str();
        MissingReport { decides, fact, supplied_by, how, corrects, administration, lots, fields, from, by }
    }
}

/// The whole-apiary condition of every course that is not over, and of the latest one.
fn whole_apiary<'h: 'a, 'a>(rounds: &Rounds<'h>, answer: &Answer<'a>) -> Vec<WholeApiaryReport> {
    let latest = answer.courses().last().map(|course| course.entry);
    let not_over = |course: &Course| {
        let mut deciding = answer.grounds.iter().filter(|ground| ground.decides);
        deciding.any(|ground| {
            ground.course.is_some_and(|of| of.entry == course.entry)
                && !matches!(ground.reason, Reason::PeriodsOver { .. })
        })
    };
    let courses = answer.courses().filter(|course| Some(course.entry) == latest || not_over(course));
    courses
        .filter_map(|course| {
            let around = Surroundings::of(rounds, &answer.history.colony, course)?;
            let crate::rules::leaflet::Says::WholeApiary { text } = &around.rule.says else { return None };
            Some(WholeApiaryReport {
                administration: course.entry,
                apiary: around.apiary.clone(),
                asks: text.clone(),
                left_out: around.left_out.into_iter().cloned().collect(),
            })
        })
        .collect()
}
