//! Journals as lists of drafts, with the names used in them.

use std::fmt;

use combclear_domain::basics::calendar::{Day, Instant};
use combclear_domain::facts::holding::{Holding, Refusal};
use combclear_domain::journal::entry::Envelope;
use combclear_domain::journal::{Draft, Entry};
use combclear_domain::rules::leaflet::Leaflet;
use serde_json::{Value, json};

use super::entries::uuid_of;
use super::leaflets;

/// Days of plans count from here, so that they run over the new year.
const FIRST_DAY: &str = "2025-10-01";
/// Days in a plan.
pub(super) const SPAN: u16 = 120;
const WRITTEN: &str = "2027-06-01T00:00:00.000Z";

/// A day of a plan.
pub(super) fn day(ahead: u16) -> Day {
    FIRST_DAY.parse::<Day>().unwrap().plus(ahead)
}

/// The invented leaflets for the properties, in order.
pub(super) fn invented() -> Vec<&'static Leaflet> {
    let here = leaflets().iter().filter(|leaflet| leaflet.jurisdiction.as_str() == "xy");
    here.map(|leaflet| &**leaflet).collect()
}

/// The entries of a holding, in the order of recording, with the names used in them.
#[derive(Clone)]
pub(super) struct Journal {
    pub(super) drafts: Vec<Draft>,
    pub(super) colonies: Vec<String>,
    pub(super) apiaries: Vec<String>,
    /// Lots, each with the leaflet of its medicine.
    pub(super) lots: Vec<(String, &'static Leaflet)>,
    /// First doses, each with its lot.
    pub(super) courses: Vec<(String, String)>,
}

impl fmt::Debug for Journal {
    /// One line per entry, so that a failure can be read and turned into a case.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.drafts
            .iter()
            .try_for_each(|draft| write!(f, "\n  {} {} {}", draft.on, draft.kind().as_str(), draft.body))
    }
}

impl Journal {
    pub(super) fn holding(&self) -> Holding {
        self.try_holding().unwrap_or_else(|refusal| panic!("{refusal:?} in {self:?}"))
    }

    pub(super) fn try_holding(&self) -> Result<Holding, Refusal> {
        let mut holding = Holding::new("test".parse().unwrap());
        self.drafts.iter().try_for_each(|draft| record(&mut holding, draft))?;
        Ok(holding)
    }

    /// The same entries and one more.
    pub(super) fn and(&self, draft: Draft) -> Journal {
        let mut more = self.clone();
        more.drafts.push(draft);
        more
    }
}

/// Records an entry.
pub(super) fn record(holding: &mut Holding, draft: &Draft) -> Result<(), Refusal> {
    let written: Instant = WRITTEN.parse().unwrap();
    let entry = Entry::seal(holding.name(), draft.clone(), written, holding.tip());
    holding.accept(&entry)
}

/// An entry in the wire format, with a word as id and without null fields.
pub(super) fn draft(word: &str, on: Day, kind: &str, body: &Value) -> Draft {
    let mut body = body.clone();
    body.as_object_mut().unwrap().retain(|_, value| !value.is_null());
    let envelope =
        json!({ "id": uuid_of(word), "on": on, "recorded_by": "tester", "kind": kind, "body": body });
    Envelope::from_json(&envelope.to_string())
        .and_then(Envelope::read)
        .unwrap_or_else(|fault| panic!("{envelope}: {}: {fault}", fault.pointer))
}
