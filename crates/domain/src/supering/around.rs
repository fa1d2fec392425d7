//! The condition on the whole apiary: most leaflets want all colonies of an apiary treated together, so an answer for
//! one colony names those that were left out.

use crate::calendar::Day;
use crate::history::Course;
use crate::holding::{Holding, Record};
use crate::journal::event::Administration;
use crate::leaflet::{Rule, Topic};
use crate::words::{ApiaryName, ColonyName, MedicineName};

/// How many days apart two placings may be and still count as one treatment of the apiary.
///
/// Common practice, no source: a round of the apiaries takes up to a week.
pub(super) const SAME_ROUND_DAYS: i64 = 7;

/// What stood around a colony when a course was placed.
#[derive(Debug, Clone)]
pub struct Surroundings<'h> {
    /// The apiary it stood at.
    pub apiary: &'h ApiaryName,
    /// The leaflet's rule on the whole apiary.
    pub rule: &'h Rule,
    /// Colonies that stood there and got none of the medicine in the same round.
    pub left_out: Vec<&'h ColonyName>,
}

impl<'h> Surroundings<'h> {
    /// What stood around `colony` when `course` was placed; none if its leaflet says nothing of the whole apiary.
    #[must_use]
    pub fn of(holding: &'h Holding, colony: &ColonyName, course: &'h Course) -> Option<Surroundings<'h>> {
        let leaflet = course.terms.leaflet.as_ref()?;
        let rule = leaflet.in_force(Topic::WholeApiary, course.placed, None).next()?;
        // A course that came with a split was given where the old colony stood.
        let treated = holding.record(course.entry).and_then(|record| {
            record.body::<Administration>()?.given.iter().flat_map(|given| &given.colonies).next()
        });
        let stood = |colony| holding.apiary_of(colony, course.placed);
        let apiary = stood(colony).or_else(|| treated.and_then(stood))?;
        let left_out = holding
            .colonies_at(apiary, course.placed)
            .filter(|other| {
                *other != colony && !given_in_round(holding, other, &course.medicine, course.placed)
            })
            .collect();
        Some(Surroundings { apiary, rule, left_out })
    }
}

fn given_in_round(holding: &Holding, colony: &ColonyName, medicine: &MedicineName, placed: Day) -> bool {
    let in_round = |record: &Record| record.on.days_since(placed).abs() <= SAME_ROUND_DAYS;
    holding
        .colony_file(colony)
        .iter()
        .filter(|record| in_round(record))
        .filter_map(|record| record.body::<Administration>())
        .any(|body| {
            body.given.iter().any(|given| {
                let same = || holding.lot(&given.lot).is_some_and(|(_, lot)| lot.medicine == *medicine);
                given.colonies.contains(colony) && same()
            })
        })
}
