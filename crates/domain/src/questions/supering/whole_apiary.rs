//! The condition on the whole apiary: most leaflets want all colonies of an apiary treated together, so the answer for
//! one colony names the colonies that were left out.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use super::Answer;
use super::grounds::Reason;
use crate::basics::calendar::Day;
use crate::basics::topic::Topic;
use crate::basics::words::{ApiaryName, ColonyName, MedicineName};
use crate::facts::history::Course;
use crate::facts::holding::{Holding, between};
use crate::journal::event::Administration;
use crate::rules::leaflet::Says;

/// How many days apart two placings may be and still count as one round of the apiary.
///
/// Common practice, no source: going round the apiaries takes up to a week.
pub(super) const SAME_ROUND_DAYS: u16 = 7;

/// Who was left out of each round, worked out once for all colonies of a board.
#[derive(Debug)]
pub struct Rounds<'h> {
    holding: &'h Holding,
    left_out: RefCell<BTreeMap<Round<'h>, Rc<[&'h ColonyName]>>>,
}

/// A round: the apiary, the medicine, and the day of placing.
type Round<'h> = (&'h ApiaryName, MedicineName, Day);

impl<'h> Rounds<'h> {
    /// Starts with nothing worked out.
    #[must_use]
    pub fn of(holding: &'h Holding) -> Rounds<'h> {
        Rounds { holding, left_out: RefCell::default() }
    }

    /// The colonies that stood there and were not treated, by name.
    fn left_out(&self, apiary: &'h ApiaryName, course: &Course) -> Rc<[&'h ColonyName]> {
        let round = (apiary, course.medicine.clone(), course.placed);
        if let Some(known) = self.left_out.borrow().get(&round) {
            return Rc::clone(known);
        }
        let there = self.holding.colonies_at(apiary, course.placed);
        let left_out =
            there.filter(|other| !given_in_round(self.holding, other, &course.medicine, course.placed));
        let left_out: Rc<[&ColonyName]> = left_out.collect();
        self.left_out.borrow_mut().insert(round, Rc::clone(&left_out));
        left_out
    }
}

/// The apiary around a colony when a course was placed.
#[derive(Debug, Clone)]
pub struct Surroundings<'h> {
    /// The course.
    pub course: &'h Course,
    /// The apiary it stood at.
    pub apiary: &'h ApiaryName,
    /// What the leaflet asks of the whole apiary, in the words of our leaflet data.
    pub asks: &'h str,
    /// Colonies that stood there and got none of the medicine in the same round.
    pub left_out: Vec<&'h ColonyName>,
}

impl<'c> Surroundings<'c> {
    /// The apiary around `colony` when `course` was placed; none if its leaflet says nothing about the whole apiary.
    #[must_use]
    pub fn of<'h: 'c>(
        rounds: &Rounds<'h>,
        colony: &ColonyName,
        course: &'c Course,
    ) -> Option<Surroundings<'c>> {
        let holding = rounds.holding;
        let leaflet = course.terms.leaflet.as_ref()?;
        let rule = leaflet.in_force(Topic::WholeApiary, course.placed, None).next()?;
        let Says::WholeApiary { text: asks } = &rule.says else { return None };
        // A course that came with a split was given where the old colony stood.
        let treated = holding.entry(course.entry).and_then(|record| {
            record.body::<Administration>()?.given.iter().flat_map(|given| &given.colonies).next()
        });
        let stood = |colony| holding.apiary_of(colony, course.placed);
        let apiary = stood(colony).or_else(|| treated.and_then(stood))?;
        let left_out = rounds.left_out(apiary, course);
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
                let same = || holding.lot(&given.lot).is_some_and(|(_, lot)| lot.medicine == *medicine);
                // Cheaper first: a round may have hundreds of colonies.
                same() && (body.given.len() == 1 || given.colonies.contains(colony))
            })
        })
}
