//! The courses that reached a colony: given to it, or brought along by a split or a uniting.

use std::sync::Arc;

use super::terms::{Stated, Terms};
use super::{Course, Dose, End};
use crate::calendar::Day;
use crate::holding::{GENERATIONS, Holding, Record};
use crate::journal::entry::EntryId;
use crate::journal::event::{Administration, Event, StatedTerms};
use crate::leaflet::Leaflets;
use crate::words::{ColonyName, LotName, MedicineName, StripsAtSplit, StripsAtUniting};

/// The courses of a colony, in the order of placing; those placed on one day in the order of their entries.
pub(super) fn of(holding: &Holding, leaflets: &Leaflets, colony: &ColonyName) -> Vec<Course> {
    let mut courses: Vec<Course> = traces(holding, colony, Day::LAST, GENERATIONS)
        .iter()
        .map(|trace| trace.course(holding, leaflets))
        .collect();
    courses.sort_by_key(|course| course.placed);
    courses
}

/// A course in a colony before its terms are worked out.
struct Trace<'h> {
    first: &'h Arc<Record>,
    given: &'h Administration,
    doses: Vec<Dose>,
    lots: Vec<&'h LotName>,
    end: End,
    here_from: Day,
    came_by: Option<EntryId>,
}

/// What happened to the courses of a colony by the end of a day.
fn traces<'h>(holding: &'h Holding, colony: &ColonyName, by: Day, generations: u8) -> Vec<Trace<'h>> {
    let mut traces: Vec<Trace<'h>> = Vec::new();
    let Some(older) = generations.checked_sub(1) else { return traces };
    for record in holding.colony_file(colony).iter().filter(|record| record.on <= by) {
        match &*record.event {
            Event::Administration(given) => dose(holding, &mut traces, record, given, colony),
            Event::Removal(removal) if removal.left_inside == 0 && removal.colonies.contains(colony) => {
                let first = holding.effective(removal.administration).map(|first| first.id);
                if let Some(trace) = traces.iter_mut().find(|trace| Some(trace.first.id) == first) {
                    trace.end = End::Out { on: record.on, entry: record.id };
                }
            }
            Event::ColonySplit(split) if split.colony == *colony => {
                let end = match split.strips {
                    Some(StripsAtSplit::Stayed | StripsAtSplit::Both) => None,
                    Some(StripsAtSplit::Went) => Some(End::Out { on: record.on, entry: record.id }),
                    None => Some(End::NotSaid { since: record.on, entry: record.id }),
                };
                close(&mut traces, end);
            }
            Event::ColonySplit(split) if split.into == *colony => {
                let end = match split.strips {
                    Some(StripsAtSplit::Went | StripsAtSplit::Both) => None,
                    Some(StripsAtSplit::Stayed) => Some(End::Out { on: record.on, entry: record.id }),
                    None => Some(End::NotSaid { since: record.on, entry: record.id }),
                };
                // What the old colony looked like the moment before the split.
                let before = traces_before(holding, &split.colony, record, older);
                bring(&mut traces, before, end, record);
            }
            Event::ColonyUnited(united) if united.into == *colony => {
                let end = match united.strips {
                    Some(StripsAtUniting::WentAlong) => None,
                    Some(StripsAtUniting::TakenOut) => Some(End::Out { on: record.on, entry: record.id }),
                    None => Some(End::NotSaid { since: record.on, entry: record.id }),
                };
                let before = traces_before(holding, &united.colony, record, older);
                bring(&mut traces, before, end, record);
            }
            _ => {}
        }
    }
    traces
}

/// The courses of `colony` at the end of the day of `event`, but before `event` itself did anything to them.
fn traces_before<'h>(
    holding: &'h Holding,
    colony: &ColonyName,
    event: &Record,
    generations: u8,
) -> Vec<Trace<'h>> {
    let mut before = traces(holding, colony, event.on, generations);
    for trace in &mut before {
        let undone = match trace.end {
            End::Out { entry, .. } | End::NotSaid { entry, .. } => entry == event.id,
            End::Open => false,
        };
        if undone {
            trace.end = End::Open;
        }
    }
    before
}

/// Ends every open course in the same way; leaves them open if there is no end.
fn close(traces: &mut [Trace<'_>], end: Option<End>) {
    let Some(end) = end else { return };
    for trace in traces.iter_mut().filter(|trace| trace.end == End::Open) {
        trace.end = end;
    }
}

fn bring<'h>(traces: &mut Vec<Trace<'h>>, mut brought: Vec<Trace<'h>>, end: Option<End>, by: &Record) {
    close(&mut brought, end);
    for mut trace in brought {
        trace.came_by = Some(by.id);
        trace.here_from = by.on;
        match traces.iter_mut().find(|known| known.first.id == trace.first.id) {
            // Both colonies had a part in the course: the one that is further from being over rules.
            Some(known) => known.end = later(known.end, trace.end),
            None => traces.push(trace),
        }
    }
}

fn later(one: End, two: End) -> End {
    match (one, two) {
        (End::Open, _) | (_, End::Open) => End::Open,
        (unsaid @ End::NotSaid { .. }, _) | (_, unsaid @ End::NotSaid { .. }) => unsaid,
        (End::Out { on: a, .. }, End::Out { on: b, .. }) => {
            if b > a {
                two
            } else {
                one
            }
        }
    }
}

fn dose<'h>(
    holding: &'h Holding,
    traces: &mut Vec<Trace<'h>>,
    record: &'h Arc<Record>,
    given: &'h Administration,
    colony: &ColonyName,
) {
    let part = given.given.iter().filter(|part| part.colonies.contains(colony)).map(|part| &part.lot);
    let dose = Dose { on: record.on, entry: record.id };
    let first = given.continues.and_then(|first| holding.effective(first)).map(|first| first.id);
    match traces.iter_mut().find(|trace| Some(trace.first.id) == first) {
        Some(trace) => {
            trace.doses.push(dose);
            trace.lots.extend(part);
        }
        // A dose whose first one is not to be found still went in: it stands as a course of its own.
        None => traces.push(Trace {
            first: record,
            given,
            doses: vec![dose],
            lots: part.collect(),
            end: End::Open,
            here_from: record.on,
            came_by: None,
        }),
    }
}

impl<'h> Trace<'h> {
    fn course(&self, holding: &'h Holding, leaflets: &Leaflets) -> Course {
        let placed = self.first.on;
        let lot = self.lots.first().and_then(|lot| holding.lot(lot)).map(|(_, lot)| lot);
        let medicine = lot.and_then(|lot| holding.medicine(&lot.medicine));
        let leaflet = medicine.and_then(|(_, medicine)| medicine.leaflet.as_ref()).and_then(|id| {
            let jurisdiction = holding.jurisdiction(placed)?;
            leaflets.get(jurisdiction, id).cloned()
        });
        let declared = medicine.and_then(|(record, medicine)| Some((record.id, medicine.terms.as_ref()?)));
        let stated = Stated {
            prescription: self.prescription(holding),
            readings: self.readings(holding),
            packs: self.packs(holding),
            declared,
        };
        Course {
            entry: self.first.id,
            medicine: lot.map_or_else(MedicineName::unknown, |lot| lot.medicine.clone()),
            pack_name: medicine.map_or("", |(_, medicine)| medicine.pack_name.as_str()).into(),
            placed,
            doses: self.doses.clone(),
            end: self.end,
            here_from: self.here_from,
            came_by: self.came_by,
            terms: Terms::of(leaflet, placed, self.given.method.as_ref(), &stated),
        }
    }

    fn prescription(&self, holding: &'h Holding) -> Option<(EntryId, &'h StatedTerms)> {
        let name = self.given.prescription.as_ref()?;
        holding.prescription_file(name).iter().find_map(|record| match &*record.event {
            Event::Prescription(body) => Some((record.id, &body.terms)),
            _ => None,
        })
    }

    fn readings(&self, holding: &'h Holding) -> Vec<(&'h Record, &'h StatedTerms)> {
        let mut lots: Vec<&LotName> = self.lots.clone();
        lots.sort_unstable();
        lots.dedup();
        let files = lots.iter().flat_map(|lot| holding.lot_file(lot));
        files
            .filter_map(|record| match &*record.event {
                Event::LeafletReading(reading) => Some((&**record, &reading.terms)),
                _ => None,
            })
            .collect()
    }

    fn packs(&self, holding: &Holding) -> Vec<(EntryId, u16)> {
        let doses = self.doses.iter().filter_map(|dose| holding.record(dose.entry));
        doses
            .filter_map(|record| match &*record.event {
                Event::Administration(given) => Some((record.id, given.withdrawal_days?)),
                _ => None,
            })
            .collect()
    }
}
