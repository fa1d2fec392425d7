//! Journals as lists of drafts, with the names used in them.

use std::fmt;

use combclear_domain::basics::calendar::Day;
use combclear_domain::facts::holding::{Holding, Refusal};
use combclear_domain::journal::Draft;
use combclear_domain::rules::leaflet::Leaflet;
use combclear_testkit::entries::{self, holding_of};

use super::leaflets;

/// Days of plans count from here, so that they run over the new year.
const FIRST_DAY: &str = "2025-10-01";
/// Days in a plan.
pub(super) const SPAN: u16 = 120;

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
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        entries::Journal(self.drafts.clone()).fmt(f)
    }
}

impl Journal {
    pub(super) fn holding(&self) -> Holding {
        self.try_holding().unwrap_or_else(|refusal| panic!("{refusal:?} in {self:?}"))
    }

    pub(super) fn try_holding(&self) -> Result<Holding, Refusal> {
        holding_of(&self.drafts)
    }

    /// The same entries and one more.
    pub(super) fn and(&self, draft: Draft) -> Journal {
        let mut more = self.clone();
        more.drafts.push(draft);
        more
    }
}
