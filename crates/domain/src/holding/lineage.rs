//! Where a colony came from, where it stood, when it ended, and which courses reached it.

use std::sync::Arc;

use super::{Holding, Record};
use crate::calendar::Day;
use crate::journal::event::Event;
use crate::words::{ApiaryName, ColonyName};

/// How many splits and unitings back a line of descent is followed.
///
/// Dates keep real lines far shorter; this bounds the work on a journal made by hand.
pub(crate) const GENERATIONS: u8 = 40;

/// The beginning and the end of a colony.
#[derive(Debug, Clone, Copy, Default)]
pub struct Life<'h> {
    /// The entry by which it came into the record: established, or split off.
    pub begun: Option<&'h Arc<Record>>,
    /// The entry by which it ended: ended, or united into another.
    pub ended: Option<&'h Arc<Record>>,
}

impl Holding {
    /// The beginning and the end of a colony; both absent for a colony nobody ever entered.
    #[must_use]
    pub fn life(&self, colony: &ColonyName) -> Life<'_> {
        let mut life = Life::default();
        for record in self.colony_file(colony) {
            match &*record.event {
                Event::ColonyEstablished(_) => life.begun = Some(record),
                Event::ColonySplit(split) if split.into == *colony => life.begun = Some(record),
                Event::ColonyEnded(_) => life.ended = Some(record),
                Event::ColonyUnited(united) if united.colony == *colony => life.ended = Some(record),
                _ => {}
            }
        }
        life
    }

    /// Where a colony stood at the end of a day.
    #[must_use]
    pub fn apiary_of(&self, colony: &ColonyName, on: Day) -> Option<&ApiaryName> {
        self.apiary_of_line(colony, on, GENERATIONS)
    }

    fn apiary_of_line(&self, colony: &ColonyName, on: Day, generations: u8) -> Option<&ApiaryName> {
        let mut stands = None;
        for record in self.colony_file(colony).iter().filter(|record| record.on <= on) {
            match &*record.event {
                Event::ColonyEstablished(body) => stands = Some(&body.apiary),
                Event::ColonyMoved(body) => stands = Some(&body.to),
                Event::ColonySplit(body) if body.into == *colony => {
                    stands = body.to.as_ref().or_else(|| {
                        let older = generations.checked_sub(1)?;
                        self.apiary_of_line(&body.colony, record.on, older)
                    });
                }
                _ => {}
            }
        }
        stands
    }

    /// The colonies that stood at an apiary and lived at the end of a day, by name.
    pub fn colonies_at<'h>(
        &'h self,
        apiary: &'h ApiaryName,
        on: Day,
    ) -> impl Iterator<Item = &'h ColonyName> {
        self.colonies().filter(move |colony| {
            let life = self.life(colony);
            let begun = life.begun.is_some_and(|record| record.on <= on);
            let ended = life.ended.is_some_and(|record| record.on <= on);
            begun && !ended && self.apiary_of(colony, on) == Some(apiary)
        })
    }

    /// Whether a course reached a colony by a day: given to it, or brought along by a split or a uniting.
    pub(super) fn course_reached(&self, colony: &ColonyName, first_dose: &Record, by: Day) -> bool {
        self.course_reached_line(colony, first_dose, by, GENERATIONS)
    }

    fn course_reached_line(
        &self,
        colony: &ColonyName,
        first_dose: &Record,
        by: Day,
        generations: u8,
    ) -> bool {
        let Event::Administration(given) = &*first_dose.event else { return false };
        if first_dose.on <= by && given.given.iter().any(|given| given.colonies.contains(colony)) {
            return true;
        }
        let Some(older) = generations.checked_sub(1) else { return false };
        self.colony_file(colony).iter().filter(|record| record.on <= by).any(|record| match &*record.event {
            Event::ColonySplit(split) if split.into == *colony => {
                self.course_reached_line(&split.colony, first_dose, record.on, older)
            }
            Event::ColonyUnited(united) if united.into == *colony => {
                self.course_reached_line(&united.colony, first_dose, record.on, older)
            }
            _ => false,
        })
    }
}
