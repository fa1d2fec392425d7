//! What the doses of a course say of it: medicine, pack and terms.

use std::collections::HashMap;
use std::sync::Arc;

use super::stated::{GivenDose, prescriptions, said_of_lots};
use super::terms::{Named, Stated, Terms};
use crate::basics::words::MedicineName;
use crate::facts::holding::{Holding, Record};
use crate::journal::entry::EntryId;
use crate::journal::event::Administration;
use crate::rules::leaflet::Leaflets;

/// What the doses of a course say of it. It is the same in each colony that was given the same.
#[derive(Clone)]
pub(super) struct ByDoses {
    pub(super) medicine: MedicineName,
    pub(super) pack_name: Arc<str>,
    pub(super) terms: Arc<Terms>,
}

/// What is known by their doses of the courses of a holding, each worked out once for all its colonies.
pub(super) struct Known<'h> {
    holding: &'h Holding,
    leaflets: &'h Leaflets,
    /// By the first dose: a colony may have got other doses of the course, or other lots, than the next.
    courses: HashMap<EntryId, Vec<(Vec<GivenDose<'h>>, ByDoses)>>,
}

impl<'h> Known<'h> {
    pub(super) fn new(holding: &'h Holding, leaflets: &'h Leaflets) -> Known<'h> {
        Known { holding, leaflets, courses: HashMap::new() }
    }

    /// What these doses say of the course that `given` began.
    pub(super) fn of(&mut self, first: &Record, given: &Administration, doses: &[GivenDose<'h>]) -> ByDoses {
        let of_course = self.courses.entry(first.id).or_default();
        if let Some((_, known)) = of_course.iter().find(|(known, _)| known.as_slice() == doses) {
            return known.clone();
        }
        let by_doses = ByDoses::of(self.holding, self.leaflets, first, given, doses);
        of_course.push((doses.to_vec(), by_doses.clone()));
        by_doses
    }
}

impl ByDoses {
    fn of<'h>(
        holding: &'h Holding,
        leaflets: &Leaflets,
        first: &Record,
        given: &Administration,
        doses: &[GivenDose<'h>],
    ) -> ByDoses {
        let placed = first.on;
        let lot = doses.iter().flat_map(|given| &given.lots).next();
        let lot = lot.and_then(|lot| holding.lot(lot)).map(|(_, lot)| lot);
        let medicine = lot.and_then(|lot| holding.medicine(&lot.medicine));
        let jurisdiction = holding.jurisdiction(placed);
        let named = match medicine.and_then(|(_, medicine)| medicine.leaflet.as_ref()) {
            None => Named::None {
                knows_withdrawal: jurisdiction.is_some_and(|known| leaflets.know_withdrawal(known)),
            },
            Some(id) => {
                let found = jurisdiction.and_then(|jurisdiction| leaflets.get(jurisdiction, id));
                found.map_or(Named::NotFound, |leaflet| Named::Found(Arc::clone(leaflet)))
            }
        };
        let (prescriptions, all_prescribed) = prescriptions(doses, holding);
        let stated = Stated {
            prescriptions,
            all_prescribed,
            lots: said_of_lots(doses, holding),
            declared: medicine.and_then(|(record, medicine)| Some((record.id, medicine.terms.as_ref()?))),
        };
        ByDoses {
            // A lot that is not in the record is refused on entry, but a history never fails.
            medicine: lot.map_or_else(MedicineName::unknown, |lot| lot.medicine.clone()),
            pack_name: medicine.map_or("", |(_, medicine)| medicine.pack_name.as_str()).into(),
            terms: Arc::new(Terms::of(&named, placed, given.method.as_ref(), &stated)),
        }
    }
}
