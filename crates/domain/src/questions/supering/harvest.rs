//! Bans on taking honey while supers may stay on.

use crate::basics::calendar::{Day, last_blocked_day};
use crate::basics::topic::Topic;
use crate::basics::verdict::Verdict;
use crate::basics::words::{Permission, SupersDuring};
use crate::facts::history::{Course, Line, Terms, Whereabouts, inside, used_up, whereabouts};
use crate::rules::leaflet::{Force, Says};

/// A course bars taking honey but not supers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HarvestBar {
    /// The last barred day. `None` if not known.
    pub through: Option<Day>,
}

impl HarvestBar {
    /// Both bars together: until the later day, and without a known end if either has none.
    pub(super) fn and(self, other: HarvestBar) -> HarvestBar {
        HarvestBar { through: self.through.zip(other.through).map(|(one, other)| one.max(other)) }
    }
}

/// Whether a course whose supers may stay on bars honey on a day.
pub(crate) fn barred(line: &impl Line, on: Day) -> Option<HarvestBar> {
    if inside(line.terms()) != Verdict::Yes {
        return None;
    }
    let bars = whereabouts(line, on).filter_map(|carrier| match carrier {
        Whereabouts::Out(out) | Whereabouts::NotKnown { may_be_in: false, last: out, .. } => {
            let last =
                last_blocked_day(out, line.terms().withdrawal.known()?.value).filter(|last| on <= *last)?;
            Some(HarvestBar { through: Some(last) })
        }
        Whereabouts::In | Whereabouts::NotKnown { may_be_in: true, .. } => {
            bars_while_in(line).then(|| HarvestBar { through: through_when_used_up(line, on) })
        }
    });
    bars.reduce(HarvestBar::and)
}

/// The last day on which a course bars honey though supers may stay on, as known on a day. `None` if it bars none, or
/// its end is not known.
pub(crate) fn last_day(course: &Course, on: Day) -> Option<Day> {
    let withdrawal = course.terms.withdrawal.known().filter(|_| inside(&course.terms) == Verdict::Yes)?.value;
    let last = whereabouts(course, on).map(|carrier| match carrier {
        Whereabouts::Out(out) | Whereabouts::NotKnown { may_be_in: false, last: out, .. } => {
            last_blocked_day(out, withdrawal)
        }
        Whereabouts::In | Whereabouts::NotKnown { may_be_in: true, .. } => through_when_used_up(course, on),
    });
    last.flatten().max()
}

/// Whether honey is barred while it is in: the label says so, a withdrawal period follows the treatment, or it is not
/// known whether one does.
fn bars_while_in(line: &impl Line) -> bool {
    let Terms { supers_during, withdrawal, leaflet, .. } = line.terms();
    let no_harvest = supers_during.known().is_some_and(|fact| fact.value == SupersDuring::OnNoHarvest);
    let forbidden = leaflet.as_ref().zip(line.doses().next()).is_some_and(|(leaflet, placed)| {
        leaflet.in_force(Topic::HarvestDuring, placed, None).any(|rule| {
            rule.force != Force::Advice
                && matches!(rule.says, Says::HarvestDuring { value: Permission::Forbidden })
        })
    });
    no_harvest || forbidden || withdrawal.known().is_none_or(|fact| fact.value > 0)
}

/// The last day barred by a carrier that is in and has a documented day on which it is used up.
fn through_when_used_up(line: &impl Line, on: Day) -> Option<Day> {
    let (days, sure) = used_up(line.terms())?;
    let spent = line.doses().rfind(|dose| *dose <= on)?.plus(days);
    let withdrawal = line.terms().withdrawal.known()?.value;
    sure.then(|| last_blocked_day(spent, withdrawal).unwrap_or_else(|| spent.before()))
}
