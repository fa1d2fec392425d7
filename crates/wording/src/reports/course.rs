//! Courses and their terms, as sent.

use combclear_domain::Day;
use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::source::Source;
use combclear_domain::basics::sourced::Sourced;
use combclear_domain::basics::words::{RemovalNeed, SupersDuring};
use combclear_domain::facts::history::{Course, Doses, End, Stay, Terms};
use combclear_domain::journal::EntryId;
use combclear_domain::questions::register::SaidBy;
use combclear_domain::rules::leaflet::{Force, Rule};
use serde::Serialize;

use crate::supering::CourseReport;

/// A course in one colony at the end of a day.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ColonyCourse {
    /// Which course it is.
    #[serde(flatten)]
    course: CourseReport,
    /// The doses given by that day, in order.
    doses: Vec<Happened>,
    /// How it stands on that day.
    end: EndReport,
    /// The first day on which this colony had part in it.
    here_from: Day,
    /// The entry that brought it from another colony; null if it began here.
    came_by: Option<EntryId>,
    /// Its terms. Null means not known, never zero.
    terms: TermsReport,
}

/// A day, and the entry that recorded the event.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Happened {
    /// The day.
    pub on: Day,
    /// The entry.
    pub entry: EntryId,
}

/// The end of a course in a colony.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(tag = "state", rename_all = "snake_case")]
enum EndReport {
    /// No end is recorded: a strip or another carrier is still in.
    Open,
    /// All of it is out.
    Out {
        /// The day.
        on: Day,
        /// The entry that recorded it.
        entry: EntryId,
    },
    /// The record of a split or a uniting does not say where it went.
    NotSaid {
        /// The day of the split or uniting.
        since: Day,
        /// The entry.
        entry: EntryId,
    },
}

/// The terms of a course, each with its origin.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct TermsReport {
    /// Whether honey supers may be on while it is in.
    supers_during: Option<SupersTerm>,
    /// Withdrawal period for honey, in days.
    withdrawal_days: Option<DaysTerm>,
    /// Days between removal and supers.
    wait_after_removal_days: Option<DaysTerm>,
    /// Whether it must be taken out.
    removal: Option<RemovalTerm>,
    /// Least stay.
    stay_min_days: StayReport,
    /// Longest stay.
    stay_max_days: StayReport,
    /// Doses in a course.
    doses: Option<DosesTerm>,
}

/// A length of stay, which may depend on brood.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct StayReport {
    /// With brood absent or at its lowest.
    absent_or_lowest: Option<DaysTerm>,
    /// With brood present.
    present: Option<DaysTerm>,
}

macro_rules! terms {
    ($($(#[$doc:meta])+ $term:ident($value:ty);)+) => {$(
        $(#[$doc])+
        #[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
        struct $term {
            /// The value in use.
            value: $value,
            /// Its origin.
            said_by: SaidBy,
            /// The entry that states it; null for the built-in leaflet.
            entry: Option<EntryId>,
            /// How well it is established. Only a `document` can support a yes.
            confidence: Confidence,
            /// How binding it is; only for the built-in leaflet.
            force: Option<Force>,
            /// Its sources; only for the built-in leaflet.
            sources: Vec<Source>,
            /// When it was last checked; only for the built-in leaflet.
            checked_on: Option<Day>,
            /// What a reader must know about it.
            note: Option<String>,
            /// A stricter documented value of the built-in leaflet that it overrules.
            looser_than: Option<$value>,
        }

        impl $term {
            fn of(terms: &Terms, fact: Option<&Sourced<$value>>) -> Option<$term> {
                let fact = fact?;
                let rule = terms.rule(fact);
                let (said_by, entry) = SaidBy::of(fact.authority);
                Some($term {
                    value: fact.value,
                    said_by,
                    entry,
                    confidence: fact.confidence,
                    force: rule.map(|rule| rule.force),
                    sources: sources(terms, rule),
                    checked_on: rule.map(|rule| rule.checked_on),
                    note: rule.and_then(|rule| rule.note.clone()),
                    looser_than: fact.looser_than,
                })
            }
        }
    )+};
}

// Separate types rather than a generic one: with that, the document would not say that the value may be null.
terms! {
    /// A number of days with its origin.
    DaysTerm(u16);
    /// A statement on supers with its origin.
    SupersTerm(SupersDuring);
    /// A statement on removal with its origin.
    RemovalTerm(RemovalNeed);
    /// A number of doses with its origin.
    DosesTerm(Doses);
}

impl ColonyCourse {
    /// The course at the end of a day.
    pub(super) fn of(course: &Course, on: Day) -> ColonyCourse {
        ColonyCourse {
            course: CourseReport::of(course),
            doses: course.doses_by(on).map(|dose| Happened { on: dose.on, entry: dose.entry }).collect(),
            end: EndReport::by(course, on),
            here_from: course.here_from,
            came_by: course.came_by,
            terms: TermsReport::of(&course.terms),
        }
    }
}

impl ColonyCourse {
    /// Every entry that it names; some stand in it several times.
    pub(super) fn entries(&self) -> Vec<EntryId> {
        let end = match self.end {
            EndReport::Open => None,
            EndReport::Out { entry, .. } | EndReport::NotSaid { entry, .. } => Some(entry),
        };
        let mut entries = vec![self.course.administration];
        entries.extend(self.doses.iter().map(|dose| dose.entry));
        entries.extend(end.into_iter().chain(self.came_by));
        entries.extend(self.terms.entries());
        entries
    }
}

impl EndReport {
    fn by(course: &Course, day: Day) -> EndReport {
        match (course.end, course.in_doubt) {
            (End::Out { on, entry }, _) if on <= day => EndReport::Out { on, entry },
            (_, Some((since, entry))) if since <= day => EndReport::NotSaid { since, entry },
            _ => EndReport::Open,
        }
    }
}

impl TermsReport {
    fn of(terms: &Terms) -> TermsReport {
        TermsReport {
            supers_during: SupersTerm::of(terms, terms.supers_during.known()),
            withdrawal_days: DaysTerm::of(terms, terms.withdrawal.known()),
            wait_after_removal_days: DaysTerm::of(terms, terms.wait.known()),
            removal: RemovalTerm::of(terms, terms.removal.known()),
            stay_min_days: StayReport::of(terms, &terms.stay_min),
            stay_max_days: StayReport::of(terms, &terms.stay_max),
            doses: DosesTerm::of(terms, terms.doses.known()),
        }
    }

    /// The entries that state them.
    fn entries(&self) -> impl Iterator<Item = EntryId> {
        let stays = [&self.stay_min_days, &self.stay_max_days];
        let stays = stays.into_iter().flat_map(|stay| [&stay.absent_or_lowest, &stay.present]);
        let days = [&self.withdrawal_days, &self.wait_after_removal_days].into_iter().chain(stays);
        days.filter_map(|term| term.as_ref()?.entry)
            .chain(self.supers_during.iter().filter_map(|term| term.entry))
            .chain(self.removal.iter().filter_map(|term| term.entry))
            .chain(self.doses.iter().filter_map(|term| term.entry))
    }
}

impl StayReport {
    fn of(terms: &Terms, stay: &Stay) -> StayReport {
        StayReport {
            absent_or_lowest: DaysTerm::of(terms, stay.absent_or_lowest.known()),
            present: DaysTerm::of(terms, stay.present.known()),
        }
    }
}

fn sources(terms: &Terms, rule: Option<&Rule>) -> Vec<Source> {
    let Some((rule, leaflet)) = rule.zip(terms.leaflet.as_ref()) else { return Vec::new() };
    rule.source.iter().filter_map(|id| leaflet.source(id)).cloned().collect()
}
