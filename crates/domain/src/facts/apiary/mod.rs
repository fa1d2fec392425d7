//! An apiary according to the journal: site, temperatures, nectar flows. Worked out here for all questions.

mod flows;
mod site;
mod weather;

use crate::basics::calendar::Day;
use crate::basics::words::ApiaryName;
use crate::facts::holding::Holding;

pub(crate) use flows::Meets;
pub use flows::{Flow, FlowSpan};
pub(crate) use site::Site;
pub use site::{SiteFact, SiteView};
pub use weather::Origin;
pub(crate) use weather::{Sky, Weather};

/// An apiary at the end of a day.
pub(crate) struct Apiary<'h> {
    pub(crate) site: Site<'h>,
    pub(crate) weather: Weather,
    /// The flows, by first day.
    pub(crate) flows: Vec<Flow>,
    /// The flows as spans of days.
    pub(crate) flow_spans: Vec<FlowSpan>,
}

impl Holding {
    /// An apiary at the end of a day; later events are ignored.
    pub(crate) fn apiary_by(&self, apiary: &ApiaryName, as_of: Day) -> Apiary<'_> {
        let file = self.apiary_file(apiary);
        let known = file.partition_point(|record| record.on <= as_of);
        let file = file.get(..known).unwrap_or_default();
        let flows = Flow::all(file);
        Apiary {
            site: Site::of(file),
            weather: Weather::of(file),
            flow_spans: flows.iter().map(Flow::span).collect(),
            flows,
        }
    }
}
