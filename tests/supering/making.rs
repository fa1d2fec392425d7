//! Journals as lists of drafts, and the days and colonies for the properties.

use std::fmt;
use std::sync::OnceLock;

use combclear_domain::basics::calendar::{Day, Instant};
use combclear_domain::basics::words::ColonyName;
use combclear_domain::facts::holding::{Holding, Refusal};
use combclear_domain::journal::entry::Envelope;
use combclear_domain::journal::{Draft, Entry};
use combclear_domain::rules::leaflet::Leaflets;
use serde_json::{Value, json};

use super::{leaflets, uuid_of};

/// Days of plans count from here.
const FIRST_DAY: &str = "2026-03-01";
/// Days in a plan.
pub(super) const SPAN: u16 = 90;
/// Leaflets of strips that must come out, keep supers off meanwhile, and are fully documented.
pub(super) const PLAIN_STRIPS: [&str; 2] = ["strip-42-56", "strip-withdrawal-10"];
const WRITTEN: &str = "2027-01-01T00:00:00.000Z";

/// The entries of a holding, in the order of recording.
#[derive(Clone)]
pub(super) struct Journal(pub(super) Vec<Draft>);

impl fmt::Debug for Journal {
    /// One line per entry, so that a failure can be read and turned into a case.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|draft| {
            write!(f, "\n  {} {} {} {}", draft.id, draft.on, draft.kind().as_str(), draft.body)?;
            draft.at.map_or(Ok(()), |at| write!(f, " at {at}"))?;
            draft.correction.as_ref().map_or(Ok(()), |correction| write!(f, " corrects {}", correction.of))
        })
    }
}

impl Journal {
    /// The holding with these entries.
    pub(super) fn holding(&self) -> Holding {
        self.try_holding().unwrap_or_else(|refusal| panic!("{refusal:?} in {self:?}"))
    }

    /// The holding with these entries, unless one is refused.
    pub(super) fn try_holding(&self) -> Result<Holding, Refusal> {
        let mut holding = Holding::new("test".parse().unwrap());
        self.0.iter().try_for_each(|draft| record(&mut holding, draft))?;
        Ok(holding)
    }

    /// The same entries and one more.
    pub(super) fn and(&self, draft: Draft) -> Journal {
        Journal(self.0.iter().cloned().chain([draft]).collect())
    }
}

/// Records an entry.
pub(super) fn record(holding: &mut Holding, draft: &Draft) -> Result<(), Refusal> {
    let written: Instant = WRITTEN.parse().unwrap();
    let entry = Entry::seal(holding.name(), draft.clone(), written, holding.tip());
    holding.accept(&entry)
}

/// The leaflets, loaded once for all properties.
pub(super) fn all_leaflets() -> &'static Leaflets {
    static LEAFLETS: OnceLock<Leaflets> = OnceLock::new();
    LEAFLETS.get_or_init(leaflets)
}

/// A day of a plan.
pub(super) fn day(ahead: u16) -> Day {
    FIRST_DAY.parse::<Day>().unwrap().plus(ahead)
}

/// Every day of a plan, with some before and many after it.
pub(super) fn days() -> impl Iterator<Item = Day> {
    let before = ["2024-12-31", "2025-01-01", "2026-02-28"].map(|day| day.parse().unwrap());
    before.into_iter().chain((0..SPAN + 45).map(day))
}

/// Every colony of a holding, and one that is not in it.
pub(super) fn colonies(holding: &Holding) -> Vec<ColonyName> {
    holding.colonies().cloned().chain(["nobody".parse().unwrap()]).collect()
}

/// An entry in the wire format, with a word as id.
pub(super) fn draft(id: &str, on: Day, kind: &str, body: &Value) -> Draft {
    let envelope =
        json!({ "id": uuid_of(id), "on": on, "recorded_by": "tester", "kind": kind, "body": body });
    read(&envelope)
}

fn read(envelope: &Value) -> Draft {
    Envelope::from_json(&envelope.to_string())
        .and_then(Envelope::read)
        .unwrap_or_else(|fault| panic!("{envelope}: {}: {fault}", fault.pointer))
}
