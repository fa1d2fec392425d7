//! What nobody wrote and the record has: the person named last, the lot in stock, the strips that are in.

use std::collections::BTreeMap;

use serde_json::Value;

use super::wrong::{InsideCourse, WrongWith};
use crate::basics::calendar::Day;
use crate::basics::words::{ColonyName, LotName, Person};
use crate::facts::history::{Course, Histories, Presence};
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::Event;
use crate::rules::leaflet::Leaflets;

/// The person who recorded the last entry.
#[must_use]
pub fn person_named_last(holding: &Holding) -> Option<&Person> {
    let (last, _) = holding.tip()?;
    Some(&holding.entry_numbered(last)?.recorded_by)
}

/// The only lot of which something is left on a day.
pub(super) fn lot_in_stock(holding: &Holding, on: Day) -> Result<Value, WrongWith> {
    let left = |lot: &&LotName| holding.balance_on(lot, on).is_some_and(|balance| balance.may_be_left());
    let lots: Vec<&LotName> = holding.lots().filter(left).collect();
    match lots.as_slice() {
        [] => Err(WrongWith::NoLotInStock),
        [only] => Ok(only.as_str().into()),
        several => Err(WrongWith::SeveralLots { lots: several.iter().copied().cloned().collect() }),
    }
}

/// The id of an entry that is named by its number in the journal, or by its id.
pub(super) fn entry_named(holding: &Holding, text: &str) -> Result<Value, WrongWith> {
    let by_number = text.parse::<u64>().ok();
    let id = match by_number {
        Some(number) => holding.entry_numbered(number).map(|record| record.id),
        None => text.parse::<EntryId>().ok().filter(|id| holding.entry(*id).is_some()),
    };
    let last = holding.tip().map_or(0, |(last, _)| last);
    id.map(|id| id.to_string().into()).ok_or_else(|| WrongWith::NoSuchEntry { text: text.to_owned(), last })
}

/// What is in each of these colonies, or may be, in their order.
#[must_use]
pub fn what_is_inside(
    holding: &Holding,
    leaflets: &Leaflets,
    colonies: &[ColonyName],
    on: Day,
) -> Vec<Vec<InsideCourse>> {
    let mut inside = Inside::of(holding, leaflets);
    let of_colony = |colony| {
        let courses = inside.courses(colony, None, on);
        courses.into_iter().filter_map(|course| inside.named(course)).collect()
    };
    colonies.iter().map(of_colony).collect()
}

/// The colonies in which something is, or may be.
pub(super) fn with_something_in(
    holding: &Holding,
    leaflets: &Leaflets,
    colonies: &[ColonyName],
    on: Day,
) -> Vec<ColonyName> {
    let mut inside = Inside::of(holding, leaflets);
    colonies.iter().filter(|colony| !inside.courses(colony, None, on).is_empty()).cloned().collect()
}

/// The colonies of a split or a uniting of which something is in, and the event does not say where that went.
#[must_use]
pub fn strips_not_said(
    holding: &Holding,
    leaflets: &Leaflets,
    event: &Event,
    on: Day,
) -> Option<(ColonyName, ColonyName)> {
    let (from, into) = if let Event::ColonySplit(split) = event
        && split.strips.is_none()
    {
        (&split.colony, &split.into)
    } else if let Event::ColonyUnited(united) = event
        && united.strips.is_none()
    {
        (&united.colony, &united.into)
    } else {
        return None;
    };
    let inside = with_something_in(holding, leaflets, std::slice::from_ref(from), on);
    (!inside.is_empty()).then(|| (from.clone(), into.clone()))
}

/// The course that is in each of these colonies, and the colonies of each course, in the order of their names as given.
/// With a lot, only courses of its medicine.
pub(super) fn courses_inside(
    holding: &Holding,
    leaflets: &Leaflets,
    colonies: &[String],
    of_lot: Option<&str>,
    on: Day,
) -> Result<Vec<(EntryId, Vec<String>)>, WrongWith> {
    let mut inside = Inside::of(holding, leaflets);
    let mut by_course: Vec<(EntryId, Vec<String>)> = Vec::new();
    let mut without: Vec<ColonyName> = Vec::new();
    for name in colonies {
        // A text that is no name is reported with the colonies.
        let Ok(colony) = ColonyName::new(name) else { continue };
        let courses = inside.courses(&colony, of_lot, on);
        match courses.as_slice() {
            [] => without.push(colony),
            [only] => match by_course.iter_mut().find(|(known, _)| known == only) {
                Some((_, names)) => names.push(name.clone()),
                None => by_course.push((*only, vec![name.clone()])),
            },
            several => {
                let courses = several.iter().filter_map(|course| inside.named(*course)).collect();
                return Err(WrongWith::SeveralInside { colony, courses });
            }
        }
    }
    if without.is_empty() { Ok(by_course) } else { Err(WrongWith::NothingInside { colonies: without }) }
}

/// What is in colonies.
struct Inside<'h> {
    holding: &'h Holding,
    histories: Histories<'h>,
    named: BTreeMap<EntryId, InsideCourse>,
}

impl<'h> Inside<'h> {
    fn of(holding: &'h Holding, leaflets: &'h Leaflets) -> Inside<'h> {
        Inside { holding, histories: Histories::new(holding, leaflets), named: BTreeMap::new() }
    }

    /// The courses that are in a colony or may be, each once. With a lot, those of its medicine that are in or still lack a
    /// dose.
    fn courses(&mut self, colony: &ColonyName, of_lot: Option<&str>, on: Day) -> Vec<EntryId> {
        let history = self.histories.of(colony);
        let medicine =
            of_lot.and_then(|lot| self.holding.lot(&lot.parse().ok()?)).map(|(_, lot)| lot.medicine);
        let mut found: Vec<EntryId> = Vec::new();
        for course in history.courses_on(on) {
            let is_in = history.presence(course, on) != Presence::Out;
            let counts = match medicine {
                None => is_in && !course.terms.nothing_stays(),
                Some(medicine) => {
                    course.medicine.known() == Some(medicine) && (is_in || course.next_dose(on).is_some())
                }
            };
            if counts && !found.contains(&course.entry) {
                found.push(course.entry);
                self.name(course);
            }
        }
        found
    }

    fn name(&mut self, course: &Course) {
        let number = self.holding.entry(course.entry).map_or(0, |record| record.seq);
        let (medicine, placed) = (course.medicine.clone(), course.placed);
        self.named.insert(course.entry, InsideCourse { number, medicine, placed });
    }

    fn named(&self, course: EntryId) -> Option<InsideCourse> {
        self.named.get(&course).cloned()
    }
}
