//! The rule on the whole apiary: most leaflets require all colonies of an apiary to be treated together, so the
//! answer for one colony names the colonies left out.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use super::Answer;
use super::grounds::Reason;
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::topic::Topic;
use crate::basics::words::{ApiaryName, ColonyName, MedicineName};
use crate::facts::history::Course;
use crate::facts::holding::{Holding, between};
use crate::journal::event::Administration;
use crate::rules::leaflet::Says;

/// How many days apart two placings may be to count as one round of the apiary.
///
/// Common practice, no source: going round the apiaries takes up to a week.
pub(super) const SAME_ROUND_DAYS: u16 = 7;

/// The colonies left out of each round, cached for all colonies of a board.
#[derive(Debug)]
pub struct Rounds<'h> {
    holding: &'h Holding,
    left_out: RefCell<BTreeMap<Round<'h>, Rc<[&'h ColonyName]>>>,
}

/// A round: the apiary, the medicine, and the day of placing.
type Round<'h> = (&'h ApiaryName, MedicineName, Day);

impl<'h> Rounds<'h> {
    /// An empty cache for this holding.
    #[must_use]
    pub fn of(holding: &'h Holding) -> Rounds<'h> {
        Rounds { holding, left_out: RefCell::default() }
    }

    /// The colonies at the apiary that were not treated in the round, by name.
    fn left_out(&self, apiary: &'h ApiaryName, medicine: &MedicineName, placed: Day) -> Rc<[&'h ColonyName]> {
        let round = (apiary, medicine.clone(), placed);
        if let Some(known) = self.left_out.borrow().get(&round) {
            return Rc::clone(known);
        }
        let there = self.holding.colonies_at(apiary, placed);
        let left_out = there.filter(|other| !given_in_round(self.holding, other, medicine, placed));
        let left_out: Rc<[&ColonyName]> = left_out.collect();
        self.left_out.borrow_mut().insert(round, Rc::clone(&left_out));
        left_out
    }
}

/// The rest of the apiary when a course was placed.
#[derive(Debug, Clone)]
pub struct Surroundings<'h> {
    /// The course.
    pub course: &'h Course,
    /// The apiary where the colony was.
    pub apiary: &'h ApiaryName,
    /// The leaflet's rule on the whole apiary, as worded in the built-in leaflet.
    pub asks: &'h str,
    /// The other colonies there that got none of the medicine in the same round, by name.
    pub left_out: Vec<&'h ColonyName>,
}

impl<'c> Surroundings<'c> {
    /// The rest of the apiary when `course` was placed in `colony`. `None` if the leaflet has no rule on the whole
    /// apiary.
    #[must_use]
    pub fn of<'h: 'c>(
        rounds: &Rounds<'h>,
        colony: &ColonyName,
        course: &'c Course,
    ) -> Option<Surroundings<'c>> {
        let holding = rounds.holding;
        let leaflet = course.terms.leaflet.as_ref()?;
        // A course of a medicine that is not known has no leaflet either.
        let Fact::Known(medicine) = &course.medicine else { return None };
        let rule = leaflet.in_force(Topic::WholeApiary, course.placed, None).next()?;
        let Says::WholeApiary { text: asks } = &rule.says else { return None };
        // A course that came with a split was given where the old colony was.
        let treated = holding.entry(course.entry).and_then(|record| {
            record.body::<Administration>()?.given.iter().flat_map(|given| &given.colonies).next()
        });
        let stood = |colony| holding.apiary_of(colony, course.placed);
        let apiary = stood(colony).or_else(|| treated.and_then(stood))?;
        let left_out = rounds.left_out(apiary, medicine, course.placed);
        let left_out = left_out.iter().copied().filter(|other| *other != colony).collect();
        Some(Surroundings { course, apiary, asks, left_out })
    }
}

/// The surroundings of every course of an answer that is not over, and of the latest one.
pub(super) fn of<'r: 'h, 'h>(rounds: &Rounds<'r>, answer: &Answer<'h>) -> Vec<Surroundings<'h>> {
    let latest = answer.courses().last().map(|course| course.entry);
    let not_over = |course: &Course| {
        let mut deciding = answer.grounds.iter().filter(|ground| ground.decides);
        deciding.any(|ground| {
            ground.course.is_some_and(|of| of.entry == course.entry)
                && !matches!(ground.reason, Reason::PeriodsOver { .. })
        })
    };
    let courses = answer.courses().filter(|course| Some(course.entry) == latest || not_over(course));
    courses.filter_map(|course| Surroundings::of(rounds, &answer.history.colony, course)).collect()
}

fn given_in_round(holding: &Holding, colony: &ColonyName, medicine: &MedicineName, placed: Day) -> bool {
    let (first, last) = (placed.minus(SAME_ROUND_DAYS), placed.plus(SAME_ROUND_DAYS));
    between(holding.colony_file(colony), first, last)
        .iter()
        .filter_map(|record| record.body::<Administration>())
        .any(|body| {
            body.given.iter().any(|given| {
                let same = || holding.lot(&given.lot).is_some_and(|(_, lot)| lot.medicine == medicine);
                // The cheaper check first: a round may have hundreds of colonies.
                same() && (body.given.len() == 1 || given.colonies.contains(colony))
            })
        })
}
