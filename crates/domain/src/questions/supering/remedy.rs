//! What would answer an open question: the entry that can be recorded as it is asked for here, and then the question is gone.

use super::grounds::{Ground, Reason, Term};
use super::wording;
use crate::basics::calendar::Day;
use crate::basics::words::LotName;
use crate::facts::history::{BROOD_TELLS_DAYS, Course, Doubt, Fact, Stay};
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::{Event, Kind};
use crate::rules::leaflet::Leaflets;

/// The entry that supplies what is missing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Remedy {
    /// Its kind.
    pub(crate) kind: Kind,
    /// The entry that it corrects, where one says what is wrong or not said.
    pub(crate) corrects: Option<EntryId>,
    /// The first dose of the course that it is about.
    pub(crate) administration: Option<EntryId>,
    /// The lots that it is about, an entry for each.
    pub(crate) lots: Vec<LotName>,
    /// The fields of its terms that are asked for.
    pub(crate) fields: Vec<&'static str>,
    /// The day it is of: on this one or later.
    pub(crate) from: Option<Day>,
    /// The day it is of: on this one or earlier.
    pub(crate) by: Option<Day>,
    /// The same in words.
    pub(crate) how: String,
}

impl Remedy {
    pub(super) fn new(kind: Kind, how: impl Into<String>) -> Remedy {
        Remedy {
            kind,
            corrects: None,
            administration: None,
            lots: Vec::new(),
            fields: Vec::new(),
            from: None,
            by: None,
            how: how.into(),
        }
    }

    fn correcting(self, entry: EntryId) -> Remedy {
        Remedy { corrects: Some(entry), ..self }
    }

    pub(super) fn of_course(self, course: &Course) -> Remedy {
        Remedy { administration: Some(course.entry), ..self }
    }

    /// A reading of the leaflet of each lot of a course.
    fn reading(holding: &Holding, course: &Course, fields: &[&'static str], what: &str) -> Remedy {
        let lots = lots(holding, course);
        let named: Vec<String> = lots.iter().map(|lot| format!("`{lot}`")).collect();
        let how = format!("read {what} on the leaflet of lot {} and record it", named.join(" and lot "));
        Remedy { lots, fields: fields.to_vec(), ..Remedy::new(Kind::LeafletReading, how) }.of_course(course)
    }
}

/// What would answer the open question of a ground; none if nothing is open, or nothing that anybody could record.
pub(crate) fn of(holding: &Holding, leaflets: &Leaflets, ground: &Ground<'_>) -> Option<Remedy> {
    match (&ground.reason, ground.course) {
        (Reason::ColonyNotRecorded, _) => {
            Some(Remedy::new(Kind::ColonyEstablished, "record when it came into the holding"))
        }
        (Reason::NotYetBegun { entry, .. }, _) => {
            let kind = holding.record(*entry)?.event.kind();
            let how = format!("correct entry {entry} if the colony was here earlier");
            Some(Remedy::new(kind, how).correcting(*entry))
        }
        (Reason::CameWithUnknown { entry }, _) => {
            let root = holding.unknown_root(*entry)?;
            let how = format!("ask whoever kept it before, then correct entry {root}");
            Some(Remedy::new(Kind::ColonyEstablished, how).correcting(root))
        }
        (
            Reason::WhereaboutsNotSaid { entry, .. }
            | Reason::BarredEitherWay { doubt: Doubt::NotSaid { entry, .. }, .. },
            Some(course),
        ) => {
            let how = format!("look into the hive: record a removal, or correct entry {entry}");
            Some(Remedy::new(Kind::Removal, how).of_course(course))
        }
        (Reason::NothingStaysYetStays { said }, Some(course)) => {
            let entry = said.authority.entry()?;
            let how = format!(
                "look at the pack again: correct entry {entry}, which says that nothing stays, or what states a least stay"
            );
            let kind = holding.record(entry)?.event.kind();
            Some(Remedy::new(kind, how).correcting(entry).of_course(course))
        }
        (Reason::UsedBeforeFlow { flow: None, out, .. }, Some(course)) => {
            let how = "record the next nectar flow there, as it was seen or is expected";
            Some(Remedy { from: Some(*out), ..Remedy::new(Kind::NectarFlow, how).of_course(course) })
        }
        (Reason::UsedBeforeFlow { flow: Some(_), .. }, Some(course)) => {
            let what =
                "or ask the prescriber or the supplier how many days before a flow are meant, 0 if none are,";
            Some(Remedy::reading(holding, course, &["flow_before_days"], what))
        }
        (Reason::StayTurnsOnBrood { until, .. }, Some(course)) => {
            let from = course.placed.minus(BROOD_TELLS_DAYS).max(course.here_from.min(*until));
            let how = format!("record the brood that was seen between {from} and {until}, if it was");
            Some(Remedy {
                from: Some(from),
                by: Some(*until),
                ..Remedy::new(Kind::Inspection, how).of_course(course)
            })
        }
        (Reason::NotEstablished { topic, .. }, Some(course)) => {
            Some(establishing(holding, leaflets, course, *topic))
        }
        (
            Reason::BarredEitherWay { doubt: Doubt::UsedUp, .. }
            | Reason::Ended { .. }
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

/// What would establish a term of a course.
fn establishing(holding: &Holding, leaflets: &Leaflets, course: &Course, topic: Term) -> Remedy {
    let described = holding.medicine(&course.medicine);
    let leaflet = described.and_then(|(_, medicine)| medicine.leaflet.as_ref());
    if leaflet.is_some() && holding.jurisdiction(course.placed).is_none() {
        let how = "record the holding's jurisdiction, so that its leaflets are used";
        return Remedy::new(Kind::HoldingDetails, how);
    }
    let fields = match topic {
        Term::SupersDuring => vec!["supers_during"],
        Term::Withdrawal => vec!["withdrawal_days"],
        Term::Wait => vec!["wait_after_removal_days"],
        Term::Removal => vec!["removal"],
        Term::FlowBefore => vec!["flow_before_days"],
        Term::StayMin => vec!["stay_min_days"],
        Term::StayMax => vec!["stay_max_days"],
        Term::UsedUp => stays_to_read(course),
    };
    if let Some(id) = leaflet.filter(|_| course.terms.leaflet.is_none()) {
        let near =
            leaflets.nearest_to(id.as_str()).map(|near| format!(", or name `{near}`")).unwrap_or_default();
        let how = format!("this program has no leaflet `{id}` here{near}: record what the pack says");
        return Remedy { how, ..Remedy::reading(holding, course, &fields, "") };
    }
    let zero = match topic {
        Term::Withdrawal | Term::Wait | Term::FlowBefore => ", 0 included,",
        Term::SupersDuring | Term::Removal | Term::UsedUp | Term::StayMin | Term::StayMax => "",
    };
    let what = match topic {
        Term::UsedUp => "how long it must and may stay".to_owned(),
        Term::SupersDuring
        | Term::Withdrawal
        | Term::Wait
        | Term::Removal
        | Term::StayMin
        | Term::StayMax
        | Term::FlowBefore => format!("the {}{zero}", wording::topic_words(topic)),
    };
    Remedy::reading(holding, course, &fields, &what)
}

/// The stays that are not documented; the longest, if none is known: by them it is told when a carrier is used up.
fn stays_to_read(course: &Course) -> Vec<&'static str> {
    let open = |stay: &Stay| {
        let facts = [&stay.absent_or_lowest, &stay.present];
        facts.into_iter().flatten().any(|fact: &Fact<u16>| !fact.is_documented())
    };
    let mut fields = Vec::new();
    if open(&course.terms.stay_min) {
        fields.push("stay_min_days");
    }
    if open(&course.terms.stay_max) || fields.is_empty() {
        fields.push("stay_max_days");
    }
    fields
}

/// The lots that were given in a course, by name.
fn lots(holding: &Holding, course: &Course) -> Vec<LotName> {
    let mut lots: Vec<LotName> = Vec::new();
    for dose in &course.doses {
        let Some(record) = holding.record(dose.entry) else { continue };
        if let Event::Administration(body) = &record.event {
            lots.extend(body.given.iter().map(|given| given.lot.clone()));
        }
    }
    lots.sort_unstable();
    lots.dedup();
    lots
}
