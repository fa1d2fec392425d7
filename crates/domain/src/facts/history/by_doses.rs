//! The medicine, pack and terms of a course, worked out from its doses.

use std::collections::HashMap;
use std::sync::Arc;

use super::stated::{GivenDose, prescriptions, said_of_lots};
use super::terms::{Named, Stated, Terms};
use crate::basics::fact::Fact;
use crate::facts::holding::{Holding, Record};
use crate::facts::{MedicineGiven, NotOnRecord};
use crate::journal::entry::EntryId;
use crate::journal::event::Administration;
use crate::rules::leaflet::Leaflets;

/// The medicine, pack and terms of a course. Colonies with the same doses share them.
#[derive(Clone)]
pub(super) struct ByDoses {
    pub(super) medicine: MedicineGiven,
    pub(super) pack_name: Arc<str>,
    pub(super) terms: Arc<Terms>,
}

/// Cache of what follows from the doses of each course in a holding, so that its colonies share the work.
pub(super) struct Known<'h> {
    holding: &'h Holding,
    leaflets: &'h Leaflets,
    /// Keyed by the entry of the first dose. One key may hold several results: colonies can differ in later doses and
    /// in lots.
    courses: HashMap<EntryId, Vec<(Vec<GivenDose<'h>>, ByDoses)>>,
}

impl<'h> Known<'h> {
    pub(super) fn new(holding: &'h Holding, leaflets: &'h Leaflets) -> Known<'h> {
        Known { holding, leaflets, courses: HashMap::new() }
    }

    /// The medicine, pack and terms of the course that `given` began, after these doses.
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
        let medicine = lot.and_then(|lot| holding.medicine(lot.medicine));
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
            medicine: Fact::stated(lot.map(|lot| lot.medicine.clone()), NotOnRecord::Lot),
            pack_name: medicine.map_or("", |(_, medicine)| medicine.pack_name.as_str()).into(),
            terms: Arc::new(Terms::of(&named, placed, given.method.as_ref(), &stated)),
        }
    }
}
