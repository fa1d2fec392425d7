//! What the record says against an entry that could be true all the same.
//!
//! It is told before the entry is recorded, and refuses nothing: what was done was done, and belongs on record.

use std::collections::BTreeSet;

use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;
use crate::basics::words::{ColonyName, LeafletId, LotName, SuperPurpose, SupersDuring};
use crate::facts::history::{Course, Histories, History, Terms, inside, label_revision};
use crate::facts::holding::Holding;
use crate::journal::event::{Administration, Body, Harvest, Kind, MedicineDescribed, SupersOn};
use crate::recording::Written;
use crate::rules::leaflet::Leaflets;

/// Something that the record says against an entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Against {
    /// Harvest supers go on where they may not, or where nobody knows whether they may.
    SupersOn {
        /// The colonies.
        colonies: Vec<ColonyName>,
        /// Whether supers may go on: no, or not known.
        answer: Verdict,
    },
    /// Supers go on between two doses, and must be off for the next one.
    DoseToCome {
        /// The colonies.
        colonies: Vec<ColonyName>,
    },
    /// Honey is taken where none may be, or where nobody knows whether it may.
    HoneyTaken {
        /// The colonies.
        colonies: Vec<ColonyName>,
        /// Whether honey may be taken: no, or not known.
        answer: Verdict,
    },
    /// A dose is given under harvest supers, and no document on record allows that.
    GivenUnderSupers {
        /// The colonies with supers on.
        colonies: Vec<ColonyName>,
    },
    /// A lot is used after its expiry date.
    Expired {
        /// The lot.
        lot: LotName,
        /// Its expiry date.
        expiry: Day,
    },
    /// There is no such leaflet where the holding is.
    NoSuchLeaflet {
        /// The leaflet that the medicine names.
        leaflet: LeafletId,
        /// The leaflet whose id is written much like it.
        near: Option<String>,
    },
    /// What was done is dated after today.
    StillToCome,
}

impl Against {
    /// What the record says against what somebody wrote down.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, written: &Written, today: Day) -> Vec<Against> {
        let (on, events) = (written.on, written.events.as_slice());
        let mut histories = Histories::new(holding, leaflets);
        let mut supers = ByAnswer::default();
        let mut honey = ByAnswer::default();
        let mut between: Vec<ColonyName> = Vec::new();
        let mut under_supers: Vec<ColonyName> = Vec::new();
        let mut others: Vec<Against> = Vec::new();
        for event in events {
            if let Some(body) = SupersOn::of(event).filter(|body| body.purpose == SuperPurpose::Harvest) {
                supers.ask(&mut histories, &body.colonies, |history| {
                    let answer = history.supering(on);
                    let dose = |course: &Course| answer.must_be_off_for_next_dose(course);
                    if answer.verdict == Verdict::Yes && answer.courses().any(dose) {
                        between.push(history.colony.clone());
                    }
                    answer.verdict
                });
            }
            if let Some(body) = Harvest::of(event) {
                honey.ask(&mut histories, &body.colonies, |history| {
                    let answer = history.supering(on);
                    if answer.harvest_barred().is_some() { Verdict::No } else { answer.verdict }
                });
            }
            if let Some(given) = Administration::of(event) {
                others.extend(given.given.iter().filter_map(|part| expired(holding, &part.lot, on)));
                under_supers.extend(under_supers_in(holding, leaflets, &mut histories, given, on));
            }
            others.extend(
                MedicineDescribed::of(event).and_then(|body| no_leaflet(holding, leaflets, body, on)),
            );
        }
        if on > today && events.iter().any(|event| is_deed(event.kind())) {
            others.push(Against::StillToCome);
        }
        others.dedup();
        let mut all = supers.said(|colonies, answer| Against::SupersOn { colonies, answer });
        all.extend(honey.said(|colonies, answer| Against::HoneyTaken { colonies, answer }));
        if !between.is_empty() {
            all.push(Against::DoseToCome { colonies: between });
        }
        if !under_supers.is_empty() {
            all.push(Against::GivenUnderSupers { colonies: under_supers });
        }
        all.extend(others);
        all
    }
}

/// The colonies of which the answer is not yes.
#[derive(Default)]
struct ByAnswer {
    no: Vec<ColonyName>,
    unknown: Vec<ColonyName>,
}

impl ByAnswer {
    fn ask(
        &mut self,
        histories: &mut Histories<'_>,
        colonies: &[ColonyName],
        mut question: impl FnMut(&History) -> Verdict,
    ) {
        for colony in colonies {
            match question(&histories.of(colony)) {
                Verdict::Yes => {}
                Verdict::No => self.no.push(colony.clone()),
                Verdict::Unknown => self.unknown.push(colony.clone()),
            }
        }
    }

    fn said(self, say: impl Fn(Vec<ColonyName>, Verdict) -> Against) -> Vec<Against> {
        let each = [(self.no, Verdict::No), (self.unknown, Verdict::Unknown)];
        let some = each.into_iter().filter(|(colonies, _)| !colonies.is_empty());
        some.map(|(colonies, answer)| say(colonies, answer)).collect()
    }
}

fn expired(holding: &Holding, lot: &LotName, on: Day) -> Option<Against> {
    let expiry = holding.lot(lot)?.1.expiry.filter(|expiry| *expiry < on)?;
    Some(Against::Expired { lot: lot.clone(), expiry })
}

fn no_leaflet(
    holding: &Holding,
    leaflets: &Leaflets,
    medicine: &MedicineDescribed,
    on: Day,
) -> Option<Against> {
    let (leaflet, place) = medicine.leaflet.as_ref().zip(holding.jurisdiction(on))?;
    let near = || leaflets.nearest_to(leaflet.as_str()).map(str::to_owned);
    let is_there = leaflets.get(place, leaflet).is_some();
    (!is_there).then(|| Against::NoSuchLeaflet { leaflet: leaflet.clone(), near: near() })
}

/// The colonies that get a dose while harvest supers are on, unless a document allows supers with every lot that is given.
fn under_supers_in(
    holding: &Holding,
    leaflets: &Leaflets,
    histories: &mut Histories<'_>,
    given: &Administration,
    on: Day,
) -> Vec<ColonyName> {
    let barred = given.given.iter().filter(|part| !allows_supers(holding, leaflets, given, &part.lot, on));
    // One that gets of two lots is named once.
    let colonies: BTreeSet<&ColonyName> = barred.flat_map(|part| &part.colonies).collect();
    let under_supers = colonies.into_iter().filter(|colony| histories.of(colony).supers_on(on).is_some());
    under_supers.cloned().collect()
}

/// Whether a document on record allows supers while medicine from this lot is in.
fn allows_supers(
    holding: &Holding,
    leaflets: &Leaflets,
    given: &Administration,
    lot: &LotName,
    on: Day,
) -> bool {
    let medicine = holding.lot(lot).and_then(|(_, lot)| holding.medicine(lot.medicine));
    let Some((_, medicine)) = medicine else { return false };
    let of_leaflet = medicine.leaflet.as_ref().zip(holding.jurisdiction(on));
    let Some(leaflet) = of_leaflet.and_then(|(id, place)| leaflets.get(place, id)) else {
        let declared = medicine.terms.as_ref().and_then(|terms| terms.supers_during);
        // What was read in the pack counts before what was declared, and may forbid it.
        let nothing_read = holding.reading_file(lot).is_empty();
        return nothing_read && declared.is_some_and(|value| value != SupersDuring::Off);
    };
    let revision = label_revision(holding, lot, None);
    let lots = std::slice::from_ref(lot);
    let terms = Terms::if_given(holding, leaflet, on, given.method.as_ref(), revision, lots);
    inside(&terms) == Verdict::Yes
}

/// Whether an entry of this kind says what was done or seen, which no day to come can hold. Others say what is expected, or what
/// holds from a day on.
const fn is_deed(kind: Kind) -> bool {
    match kind {
        Kind::Administration
        | Kind::Removal
        | Kind::SupersOn
        | Kind::SupersOff
        | Kind::Inspection
        | Kind::MiteCount
        | Kind::ColonyEstablished
        | Kind::ColonySplit
        | Kind::ColonyUnited
        | Kind::ColonyEnded
        | Kind::ColonyMoved
        | Kind::LotOpened
        | Kind::LotAcquired
        | Kind::VetLot
        | Kind::LeafletReading
        | Kind::Disposal
        | Kind::Harvest => true,
        Kind::HoldingDetails
        | Kind::ApiaryDetails
        | Kind::SiteConditions
        | Kind::NectarFlow
        | Kind::Temperature
        | Kind::TemperatureNormals
        | Kind::MedicineDescribed
        | Kind::DocumentAttached
        | Kind::Prescription
        | Kind::StrikeOut
        | Kind::Archived => false,
    }
}
