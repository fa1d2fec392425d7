//! The amount of a medicine that one course of all colonies needs, by the doses of its leaflet.

use super::board::Board;
use super::choice::Choice;
use super::date_range::{Ask, Span};
use super::dose::{self, NoDose};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::quantity::Quantity;
use crate::basics::topic::Topic;
use crate::basics::words::{ColonyName, LeafletId, Method, Unit};
use crate::facts::history::Term;
use crate::facts::holding::Holding;
use crate::rules::leaflet::Leaflets;

/// The amount for one course of all colonies, for one method and one label revision.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct CourseNeed {
    pub(crate) method: Option<Method>,
    pub(crate) revision: Option<String>,
    /// Number of doses in the course, at least.
    pub(crate) doses: Fact<u8, Term>,
    /// The amount for the colonies whose dose is known: for all doses, or for one dose if the number of doses is not
    /// stated. Of a range, the most.
    pub(crate) takes: Quantity,
    /// The number of colonies whose dose is known.
    pub(crate) counted: usize,
    /// What must be known first, and for which colonies.
    pub(crate) not_known: Vec<(NoDose, Vec<ColonyName>)>,
}

/// The amount for one course of these colonies, for each method and label revision with a dose. Empty if the leaflet
/// states no dose, or belongs to another jurisdiction than the holding. `unit` is the unit of the medicine.
pub(crate) fn one_course_of_all(
    holding: &Holding,
    leaflets: &Leaflets,
    leaflet: &LeafletId,
    unit: Unit,
    colonies: &[ColonyName],
    on: Day,
) -> Vec<CourseNeed> {
    let Ok(span) = Span::new(on, on) else { return Vec::new() };
    let ask = Ask::about(span);
    let board = Board::of_some(holding, leaflets, &ask, [], |choice| choice.leaflet.id == *leaflet);
    let states_dose = |choice: &&Choice| choice.rules_on(Topic::Dose).any(|(_, rule)| rule.is_in_force(on));
    let mut needs: Vec<CourseNeed> = Vec::new();
    for choice in board.choices.iter().filter(states_dose) {
        let need = of_choice(&board, choice, unit, colonies, on);
        let same = |known: &&mut CourseNeed| {
            CourseNeed { revision: need.revision.clone(), ..(**known).clone() } == need
        };
        // Label revisions that need the same share one line.
        match needs.iter_mut().find(same) {
            Some(known) => known.revision = None,
            None => needs.push(need),
        }
    }
    needs
}

fn of_choice(board: &Board<'_>, choice: &Choice, unit: Unit, colonies: &[ColonyName], on: Day) -> CourseNeed {
    let mut need = CourseNeed {
        method: choice.method.clone(),
        revision: choice.revision.clone(),
        doses: choice.doses(on),
        takes: Quantity::ZERO,
        counted: 0,
        not_known: Vec::new(),
    };
    // The solution is mixed for all colonies together.
    let mut millilitres = Quantity::ZERO;
    for name in colonies {
        match dose::of(choice, &board.colony(name), on) {
            Ok(dose) => {
                // If the number of doses is not stated, one dose is certain.
                let sure = need.doses.known().map_or(1, |doses| (*doses).max(1));
                let each = dose.each_at_most.unwrap_or(dose.each).times(u64::from(sure));
                if dose.unit == unit.as_str() {
                    need.takes = need.takes.plus(each);
                } else if dose::mixture(choice, on, each)
                    .is_some_and(|mixed| dose.unit == "ml" && mixed.unit == unit.as_str())
                {
                    millilitres = millilitres.plus(each);
                } else {
                    need.lacks(NoDose::OtherUnit { unit, counted_in: dose.unit }, name);
                    continue;
                }
                need.counted += 1;
                if !need.doses.is_known() {
                    need.lacks(NoDose::CountNotStated, name);
                }
            }
            Err(missing) => need.lacks(missing, name),
        }
    }
    if let Some(mixed) = dose::mixture(choice, on, millilitres).filter(|_| !millilitres.is_zero()) {
        need.takes = need.takes.plus(mixed.medicine);
    }
    need
}

impl CourseNeed {
    fn lacks(&mut self, missing: NoDose, colony: &ColonyName) {
        match self.not_known.iter_mut().find(|(known, _)| *known == missing) {
            Some((_, colonies)) => colonies.push(colony.clone()),
            None => self.not_known.push((missing, vec![colony.clone()])),
        }
    }
}
