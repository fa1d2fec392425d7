//! What a picture of a colony's season shows: answers day by day, what was in and how long it may stay, supers and flows.
//!
//! It works nothing out that another question does not: the answers are those of [`supering`](super::supering), the days of a course
//! those by which it may and must come out.

use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::verdict::Verdict;
use crate::basics::words::ColonyName;
use crate::facts::MedicineGiven;
use crate::facts::history::{Course, History, Presence, SuperSpan};
use crate::facts::holding::Holding;
use crate::rules::leaflet::Leaflets;

/// Days before the day asked about, and after it. A season of honey and the treatments on both sides of it fit in.
pub const DAYS_AROUND: u16 = 120;

/// The season of a colony around a day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Timeline {
    /// The colony.
    pub colony: ColonyName,
    /// The day asked about.
    pub on: Day,
    /// The first day shown.
    pub from: Day,
    /// The last day shown.
    pub to: Day,
    /// May it be supered, in runs of days with the same answer: first day, last day (inclusive), answer. Of a day that is past they
    /// say what is on record now; of one to come, what holds if nothing else is recorded.
    pub answers: Vec<(Day, Day, Verdict)>,
    /// The courses of which something is shown, in the order of placing.
    pub courses: Vec<Band>,
    /// When harvest supers were on. Those that are still on have no end.
    pub supers: Vec<SuperSpan>,
    /// The nectar flows at its site: first and last day on which each may go on.
    pub flows: Vec<(Day, Day)>,
}

/// A course as a band of days.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Band {
    /// The medicine, by the keeper's name.
    pub medicine: MedicineGiven,
    /// The name on its pack; empty if the medicine is not described.
    pub pack_name: String,
    /// The day of the first dose.
    pub placed: Day,
    /// The days of the doses.
    pub doses: Vec<Day>,
    /// The day on which all of it was out, according to the record. `None` while it is in or may be.
    pub out: Option<Day>,
    /// Whether it is in on the day asked about, or may be.
    pub inside: bool,
    /// Whether nothing of it stays in the hive: it has doses and no band.
    pub leaves_nothing: bool,
    /// The first day on which it may come out, if it is in and that is known.
    pub may_come_out: Option<Day>,
    /// The last day by which it must be out, if it is in and that is known.
    pub must_be_out: Option<Day>,
}

impl Timeline {
    /// The season of a colony around a day.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, colony: &ColonyName, on: Day) -> Timeline {
        let history = History::of(holding, leaflets, colony);
        let (from, to) = (on.minus(DAYS_AROUND), on.plus(DAYS_AROUND));
        let off = |span: &SuperSpan| span.off.filter(|off| *off <= on);
        let supers = history.supers.iter().filter(|span| span.from <= on);
        let courses = history.courses_on(on).map(|course| Band::of(&history, course, on));
        Timeline {
            colony: colony.clone(),
            on,
            from,
            to,
            answers: history.supering_ahead(from, 2 * DAYS_AROUND + 1),
            courses: courses.filter(|band| band.is_within(from, to)).collect(),
            supers: supers
                .map(|span| SuperSpan { off: off(span), ..*span })
                .filter(|span| span.off.is_none_or(|off| off >= from))
                .collect(),
            flows: history
                .flows
                .iter()
                .filter(|flow| flow.from <= to && flow.last >= from)
                .map(|flow| (flow.from, flow.last))
                .collect(),
        }
    }
}

impl Band {
    fn of(history: &History, course: &Course, on: Day) -> Band {
        let leaves_nothing = course.terms.nothing_stays();
        let inside = !leaves_nothing && history.presence(course, on) != Presence::Out;
        let known = |day: Fact<Day, _>| match day {
            Fact::Known(day) => Some(day),
            Fact::NotKnown(_) => None,
        };
        Band {
            medicine: course.medicine.clone(),
            pack_name: course.pack_name.to_string(),
            placed: course.placed,
            doses: course.doses_by(on).map(|dose| dose.on).collect(),
            out: course.out_since(on).filter(|_| !inside),
            inside,
            leaves_nothing,
            may_come_out: inside.then(|| known(history.earliest_out(course, on).day)).flatten(),
            must_be_out: inside.then(|| history.latest_out(course, on)).flatten(),
        }
    }

    fn is_within(&self, from: Day, to: Day) -> bool {
        let last = match (self.out, self.doses.last()) {
            _ if self.inside => to,
            (Some(out), _) => out,
            (None, dose) => dose.copied().unwrap_or(self.placed),
        };
        self.placed <= to && last >= from
    }
}
