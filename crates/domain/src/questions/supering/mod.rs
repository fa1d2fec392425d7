//! The question: may this colony be supered on this day?
//!
//! [`History::may_be_supered`] gives only the verdict. [`History::supering`] gives the whole answer: the effect of
//! each course, breaches on record, the last blocked and first free day, and what must happen first.
//! [`Answer::missing`] names the entries that would supply missing facts. The crate `combclear-wording` puts the
//! answer into words.
//!
//! The verdict and the grounds always agree (a property test). Events after the day asked about are ignored.

mod assess;
mod grounds;
pub(crate) mod harvest;
mod outlook;
mod plan;
mod remedy;
mod steps;
mod whole_apiary;

use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;
use crate::facts::history::{Course, History, Presence, inside};
use crate::facts::holding::Holding;
use crate::journal::EntryId;
use crate::rules::leaflet::Leaflets;

pub use crate::facts::history::{EarliestOut, Term};
pub use grounds::{Ground, Outcome, Reason};
pub use harvest::HarvestBar;
pub(crate) use outlook::{Blocked, Outlook};
pub(crate) use plan::Ahead;
pub(crate) use remedy::of as remedy_of;
pub use remedy::{AskedFor, Lack, Missing, Remedy};
pub use steps::Step;
pub use whole_apiary::{Rounds, Surroundings};

/// How many days an answer covers, including the day asked about.
pub const DAYS_AHEAD: u16 = 120;

/// The answer for one colony and one day.
#[derive(Debug, Clone)]
pub struct Answer<'h> {
    /// The history it was derived from.
    pub history: &'h History,
    /// The day asked about.
    pub on: Day,
    /// Yes, no or unknown.
    pub verdict: Verdict,
    /// The grounds, course by course: first those that decide, then everything else on record about the course.
    pub grounds: Vec<Ground<'h>>,
}

/// The last blocked and the first free day. They are worked out together, since both need the record as of the day
/// asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NamedDays {
    /// The day before the current or next free days. If no day is known to be free, the last day that is certainly
    /// blocked. `None` if no day was ever blocked, or no end is recorded.
    pub last_blocked: Option<Day>,
    /// From when the colony is free.
    pub first_free: FirstFree,
}

/// From when the colony is free, as far as the record shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FirstFree {
    /// From this day on, according to the record.
    OnRecord(Day),
    /// From `free` on, if everything inside comes out on `out`, the earliest lawful day, and nothing else happens.
    OnceOut {
        /// The earliest day on which everything may be out.
        out: Day,
        /// The first free day after that.
        free: Day,
    },
    /// A missing fact leaves it open.
    NotKnown,
}

impl History {
    /// The verdict without grounds. Cheaper than [`History::supering`].
    #[must_use]
    pub fn may_be_supered(&self, on: Day) -> Verdict {
        let colony = self.colony_verdict(on);
        if colony == Verdict::No {
            return colony;
        }
        self.courses_on(on).fold(colony, |verdict, course| verdict.and(assess::verdict(self, course, on)))
    }

    /// The answer with its grounds.
    #[must_use]
    pub fn supering(&self, on: Day) -> Answer<'_> {
        let mut grounds = Vec::with_capacity(4 + 6 * self.courses.len());
        assess::colony(self, on, &mut grounds);
        for course in self.courses_on(on) {
            assess::course(self, course, on, &mut grounds);
        }
        let verdict = grounds.iter().fold(Verdict::Yes, |verdict, ground| verdict.and(ground.verdict()));
        Answer { history: self, on, verdict, grounds }
    }

    /// The verdict for this and the following days, with equal neighbours joined: first day, last day (inclusive),
    /// verdict.
    #[must_use]
    pub fn supering_ahead(&self, on: Day, days: u16) -> Vec<(Day, Day, Verdict)> {
        let Some(further) = days.checked_sub(1) else { return Vec::new() };
        Outlook::of(self).between(on, on.plus(further))
    }

    /// The entry since which the medicine inside is not known, if that applies on this day.
    fn unknown_on(&self, on: Day) -> Option<EntryId> {
        self.unknown_since.filter(|(since, _)| *since <= on).map(|(_, entry)| entry)
    }

    /// The last day on which courses in an archive may affect the answer, if it is this day or a later one, and the archive entry.
    pub(crate) fn archived_on(&self, on: Day) -> Option<(Day, EntryId)> {
        self.archived_through.filter(|(through, _)| on <= *through)
    }

    /// The verdict on the colony itself, apart from its courses.
    fn colony_verdict(&self, on: Day) -> Verdict {
        match (self.begun, self.ended) {
            (_, Some((ended, _))) if ended <= on => Verdict::No,
            (Some((begun, _)), _)
                if begun <= on && self.unknown_on(on).is_none() && self.archived_on(on).is_none() =>
            {
                Verdict::Yes
            }
            _ => Verdict::Unknown,
        }
    }
}

impl<'h> Answer<'h> {
    /// The last blocked and the first free day, as of the day asked about.
    #[must_use]
    pub fn named_days(&self) -> NamedDays {
        let ahead = Ahead::of(self.history, self.on);
        NamedDays { last_blocked: ahead.on_record.last, first_free: ahead.first_free }
    }

    /// From when the colony is free, as of the day asked about.
    #[must_use]
    pub fn first_free(&self) -> FirstFree {
        self.named_days().first_free
    }

    /// The first day on which honey may be taken, if supers may be on but honey may not be taken yet. `None` if honey
    /// is not barred, if the end is not known, or while supers are barred.
    #[must_use]
    pub fn harvest_free_from(&self) -> Option<Day> {
        Some(self.harvest_barred()?.through?.next())
    }

    /// Whether honey is barred although supers may be on.
    #[must_use]
    pub fn harvest_barred(&self) -> Option<HarvestBar> {
        let bars = self.courses().filter_map(|course| harvest::barred(course, self.on));
        let bar = bars.reduce(HarvestBar::and)?;
        (self.verdict == Verdict::Yes).then_some(bar)
    }

    /// Whether supers must be off again for a dose of this course that is still to come. A dose that leaves nothing in the
    /// hive bars supers on its own day only, so between two of them the answer may be yes.
    #[must_use]
    pub fn must_be_off_for_next_dose(&self, course: &Course) -> bool {
        course.next_dose(self.on).is_some()
            && self.history.presence(course, self.on) != Presence::Out
            && inside(&course.terms) != Verdict::Yes
    }

    /// The courses that affect the day.
    #[must_use = "iterators are lazy"]
    pub fn courses(&self) -> impl DoubleEndedIterator<Item = &'h Course> + use<'h> {
        self.history.courses_on(self.on)
    }

    /// What must happen before supers go on, the most urgent first.
    #[must_use]
    pub fn steps(&self) -> Vec<Step<'h>> {
        steps::of(self)
    }

    /// The missing facts, with the entry that would supply each. Pass the `holding` and `leaflets` that the history
    /// was derived from.
    #[must_use]
    pub fn missing(&self, holding: &Holding, leaflets: &Leaflets) -> Vec<Missing<'h>> {
        remedy::missing(holding, leaflets, self)
    }

    /// The leaflets' rules on the whole apiary, for every course that is not over and for the latest one. `rounds`
    /// must be those of the holding that the history was derived from.
    #[must_use]
    pub fn whole_apiary<'r: 'h>(&self, rounds: &Rounds<'r>) -> Vec<Surroundings<'h>> {
        whole_apiary::of(rounds, self)
    }
}
