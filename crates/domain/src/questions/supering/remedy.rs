//! The entry that resolves an unknown. It can be recorded exactly as asked for here, and then the unknown is
//! resolved.

use serde::Serialize;

use super::Answer;
use super::grounds::{Ground, Outcome, Reason};
use super::steps::Step;
use crate::basics::calendar::Day;
use crate::basics::sourced::Sourced;
use crate::basics::words::{LeafletId, LotName};
use crate::facts::history::{BROOD_TELLS_DAYS, Course, Doubt, Stay, Term};
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::{Event, Kind};
use crate::rules::leaflet::Leaflets;

/// A missing fact, and the entry that would supply it.
#[derive(Debug, Clone)]
pub struct Missing<'h> {
    /// The missing fact.
    pub lack: Lack<'h>,
    /// Whether the answer depends on it. If not, supplying it still completes the record or moves a day.
    pub decides: bool,
    /// The entry that would supply it.
    pub remedy: Remedy,
}

/// A missing fact.
#[derive(Debug, Clone, Copy)]
pub enum Lack<'h> {
    /// The fact that this ground leaves open.
    OfGround(Ground<'h>),
    /// The state of brood, which decides the earliest day out of a course.
    Brood {
        /// The course.
        course: &'h Course,
        /// The earliest day with brood absent or at its lowest.
        absent_or_lowest: Day,
        /// The earliest day with brood present.
        present: Day,
    },
}

/// The entry that supplies a missing fact.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Remedy {
    /// The kind of entry.
    #[serde(rename = "supplied_by")]
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub kind: Kind,
    /// The entry to correct, if an existing one is wrong or incomplete.
    pub corrects: Option<EntryId>,
    /// The first dose of the course concerned.
    pub administration: Option<EntryId>,
    /// The lots concerned; each needs its own entry.
    pub lots: Vec<LotName>,
    /// The fields of the terms to fill in.
    pub fields: Vec<&'static str>,
    /// The first day that the entry may have.
    pub from: Option<Day>,
    /// The last day that the entry may have.
    pub by: Option<Day>,
    /// The information the keeper is asked for.
    #[serde(skip)]
    pub asks_for: AskedFor,
}

/// The information the keeper is asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AskedFor {
    /// The day the colony came into the holding.
    Arrival,
    /// A correction of the entry that began the colony, if it was here earlier.
    EarlierArrival {
        /// The entry to correct.
        entry: EntryId,
    },
    /// The medicine inside, from the former keeper: a correction of the entry that left it open.
    FormerKeeper {
        /// The entry to correct.
        entry: EntryId,
    },
    /// A look into the hive: a removal, or a correction of the entry that does not say where the strips went.
    LookInside {
        /// The entry that does not say.
        entry: EntryId,
    },
    /// A correction of the entry that does not say where the strips went: they are out by now, but not known since when.
    WhereStripsWent {
        /// That entry.
        entry: EntryId,
    },
    /// A second look at the pack: a correction of the entry that says that nothing stays, or of the one that states a
    /// least stay.
    LookAtPack {
        /// The entry that says that nothing stays.
        entry: EntryId,
    },
    /// The next nectar flow.
    NextFlow,
    /// How many days before a nectar flow the leaflet means, read on it or asked of an expert.
    DaysBeforeFlow,
    /// An inspection of the brood between two days, if there was one.
    BroodBetween {
        /// The first of these days.
        from: Day,
        /// The last of these days.
        until: Day,
    },
    /// An inspection of the brood now.
    Brood,
    /// The holding's jurisdiction.
    Jurisdiction,
    /// The terms on the pack, because the leaflet named for the medicine is unknown.
    PackOfUnknownLeaflet {
        /// The leaflet named.
        leaflet: LeafletId,
        /// A known leaflet with a similar name, if any.
        near: Option<String>,
    },
    /// A term, read on the leaflet.
    Term(Term),
    /// The least and longest stay, read on the leaflet.
    Stays,
}

impl AskedFor {
    /// Whether it asks for readings of the leaflets of lots.
    pub(crate) const fn names_lots(&self) -> bool {
        match self {
            AskedFor::DaysBeforeFlow | AskedFor::Term(_) | AskedFor::Stays => true,
            AskedFor::Arrival
            | AskedFor::EarlierArrival { .. }
            | AskedFor::FormerKeeper { .. }
            | AskedFor::LookInside { .. }
            | AskedFor::WhereStripsWent { .. }
            | AskedFor::LookAtPack { .. }
            | AskedFor::NextFlow
            | AskedFor::BroodBetween { .. }
            | AskedFor::Brood
            | AskedFor::Jurisdiction
            | AskedFor::PackOfUnknownLeaflet { .. } => false,
        }
    }
}

impl Remedy {
    fn new(kind: Kind, asks_for: AskedFor) -> Remedy {
        Remedy {
            kind,
            corrects: None,
            administration: None,
            lots: Vec::new(),
            fields: Vec::new(),
            from: None,
            by: None,
            asks_for,
        }
    }

    fn correcting(self, entry: EntryId) -> Remedy {
        Remedy { corrects: Some(entry), ..self }
    }

    fn of_course(self, course: &Course) -> Remedy {
        Remedy { administration: Some(course.entry), ..self }
    }

    /// A reading of the leaflet of each lot of a course.
    fn reading(holding: &Holding, course: &Course, fields: Vec<&'static str>, asks_for: AskedFor) -> Remedy {
        let lots = lots(holding, course);
        Remedy { lots, fields, ..Remedy::new(Kind::LeafletReading, asks_for) }.of_course(course)
    }
}

/// The missing fact of each open ground, with the entry that would supply it.
pub(super) fn missing<'h>(holding: &Holding, leaflets: &Leaflets, answer: &Answer<'h>) -> Vec<Missing<'h>> {
    // A colony that has ended needs nothing more.
    if answer.history.ended.is_some_and(|(ended, _)| ended <= answer.on) {
        return Vec::new();
    }
    let open = answer.grounds.iter().filter(|ground| ground.outcome == Outcome::Unknown);
    let grounds = open.filter_map(|ground| {
        let remedy = of(holding, leaflets, ground)?;
        Some(Missing { lack: Lack::OfGround(*ground), decides: ground.decides, remedy })
    });
    let steps = answer.steps();
    let broods = steps.iter().filter_map(|step| missing_brood(step, answer.on));
    let mut missing: Vec<Missing<'_>> = Vec::new();
    for asked in grounds.chain(broods) {
        // One entry may supply the missing facts of several grounds.
        let same = |known: &Missing<'_>| known.decides == asked.decides && known.remedy == asked.remedy;
        if !missing.iter().any(same) {
            missing.push(asked);
        }
    }
    missing
}

/// Brood that was not inspected affects the earliest day on which strips may come out.
fn missing_brood<'h>(step: &Step<'h>, on: Day) -> Option<Missing<'h>> {
    let Step::TakeOut { course, earliest, .. } = step else { return None };
    let (absent_or_lowest, present) = earliest.both_days()?;
    earliest.brood_seen().is_none().then(|| {
        let lack = Lack::Brood { course, absent_or_lowest, present };
        let remedy = Remedy::new(Kind::Inspection, AskedFor::Brood).of_course(course);
        Missing { lack, decides: false, remedy: Remedy { by: Some(on), ..remedy } }
    })
}

/// The entry that would resolve an open ground. `None` if nothing is open, or no entry could resolve it.
pub(crate) fn of(holding: &Holding, leaflets: &Leaflets, ground: &Ground<'_>) -> Option<Remedy> {
    match (&ground.reason, ground.course) {
        (Reason::ColonyNotRecorded, _) => Some(Remedy::new(Kind::ColonyEstablished, AskedFor::Arrival)),
        (Reason::NotYetBegun { entry, .. }, _) => {
            let kind = holding.entry(*entry)?.event.kind();
            Some(Remedy::new(kind, AskedFor::EarlierArrival { entry: *entry }).correcting(*entry))
        }
        (Reason::CameWithUnknown { entry }, _) => {
            let root = holding.unknown_root(*entry)?;
            let asks_for = AskedFor::FormerKeeper { entry: root };
            Some(Remedy::new(Kind::ColonyEstablished, asks_for).correcting(root))
        }
        (
            Reason::WhereaboutsNotSaid { entry, .. }
            | Reason::BarredEitherWay { doubt: Doubt::NotSaid { entry, .. }, .. },
            Some(course),
        ) => {
            // It is out by now; what is open is since when, and no look into the hive tells that.
            if course.out().is_some() {
                let kind = holding.entry(*entry)?.event.kind();
                let asks_for = AskedFor::WhereStripsWent { entry: *entry };
                return Some(Remedy::new(kind, asks_for).correcting(*entry).of_course(course));
            }
            let asks_for = AskedFor::LookInside { entry: *entry };
            Some(Remedy::new(Kind::Removal, asks_for).of_course(course))
        }
        (Reason::NothingStaysYetStays { said }, Some(course)) => {
            let entry = said.authority.entry()?;
            let kind = holding.entry(entry)?.event.kind();
            Some(Remedy::new(kind, AskedFor::LookAtPack { entry }).correcting(entry).of_course(course))
        }
        (Reason::UsedBeforeFlow { flow: None, out, .. }, Some(course)) => {
            let remedy = Remedy::new(Kind::NectarFlow, AskedFor::NextFlow).of_course(course);
            Some(Remedy { from: Some(*out), ..remedy })
        }
        (Reason::UsedBeforeFlow { flow: Some(_), .. }, Some(course)) => {
            Some(Remedy::reading(holding, course, vec!["flow_before_days"], AskedFor::DaysBeforeFlow))
        }
        (Reason::StayTurnsOnBrood { until, .. }, Some(course)) => {
            let from = course.placed.minus(BROOD_TELLS_DAYS).max(course.here_from.min(*until));
            let asks_for = AskedFor::BroodBetween { from, until: *until };
            Some(Remedy {
                from: Some(from),
                by: Some(*until),
                ..Remedy::new(Kind::Inspection, asks_for).of_course(course)
            })
        }
        (Reason::NotEstablished { topic, .. }, Some(course)) => {
            Some(establishing(holding, leaflets, course, *topic))
        }
        (
            Reason::BarredEitherWay { doubt: Doubt::UsedUp, .. }
            | Reason::Ended { .. }
            | Reason::RecordsInArchive { .. }
            | Reason::NothingGiven { .. }
            | Reason::StillIn { .. }
            | Reason::InWithSupersAllowed { .. }
            | Reason::WithdrawalRuns { .. }
            | Reason::WaitRuns { .. }
            | Reason::PeriodsOver { .. }
            | Reason::HarvestBarred { .. }
            | Reason::StayedAtLeast { .. }
            | Reason::StayedAtMost { .. }
            | Reason::DosesGiven { .. }
            | Reason::DoseOffTime { .. }
            | Reason::SupersWhileIn { .. }
            | Reason::CombsCarryOver { .. }
            | Reason::ReadAfterwards { .. }
            | Reason::LooserThanLeaflet { .. },
            _,
        )
        | (_, None) => None,
    }
}

/// The entry that would establish a term of a course.
fn establishing(holding: &Holding, leaflets: &Leaflets, course: &Course, topic: Term) -> Remedy {
    let described = course.medicine.known().and_then(|medicine| holding.medicine(medicine));
    let leaflet = described.and_then(|(_, medicine)| medicine.leaflet.as_ref());
    if leaflet.is_some() && holding.jurisdiction(course.placed).is_none() {
        return Remedy::new(Kind::HoldingDetails, AskedFor::Jurisdiction);
    }
    let fields = topic.field().map_or_else(|| stays_to_read(course), |field| vec![field]);
    let asks_for = match (leaflet.filter(|_| course.terms.leaflet.is_none()), topic) {
        (Some(id), _) => AskedFor::PackOfUnknownLeaflet {
            leaflet: id.clone(),
            near: leaflets.nearest_to(id.as_str()).map(str::to_owned),
        },
        (None, Term::UsedUp) => AskedFor::Stays,
        (None, _) => AskedFor::Term(topic),
    };
    Remedy::reading(holding, course, fields, asks_for)
}

/// The undocumented stays, or the longest stay if none is stated: they decide when a carrier is used up.
fn stays_to_read(course: &Course) -> Vec<&'static str> {
    let open = |stay: &Stay| !stay.stated().all(Sourced::is_documented);
    let mut fields = Vec::new();
    if open(&course.terms.stay_min) {
        fields.push("stay_min_days");
    }
    if open(&course.terms.stay_max) || fields.is_empty() {
        fields.push("stay_max_days");
    }
    fields
}

/// The lots given in a course, by name.
fn lots(holding: &Holding, course: &Course) -> Vec<LotName> {
    let mut lots: Vec<LotName> = Vec::new();
    for dose in &course.doses {
        let Some(record) = holding.entry(dose.entry) else { continue };
        if let Event::Administration(body) = &record.event {
            lots.extend(body.given.iter().map(|given| given.lot.clone()));
        }
    }
    lots.sort_unstable();
    lots.dedup();
    lots
}
