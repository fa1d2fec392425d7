//! An apiary as the journal tells it: site, temperatures, nectar flows. Each is worked out here, for all questions.

mod flows;
mod site;
mod weather;

use crate::basics::calendar::Day;
use crate::basics::words::ApiaryName;
use crate::facts::holding::Holding;

pub(crate) use flows::Meets;
pub use flows::{Flow, FlowSpan};
pub(crate) use site::Site;
pub use site::SiteView;
pub use weather::Origin;
pub(crate) use weather::{Sky, Weather};

/// What happened at an apiary up to the end of a day.
pub(crate) struct Apiary<'h> {
    pub(crate) site: Site<'h>,
    pub(crate) weather: Weather,
    /// The flows, by first day.
    pub(crate) flows: Vec<Flow>,
    /// The same as spans of days.
    pub(crate) flow_spans: Vec<FlowSpan>,
}

impl Holding {
    /// An apiary by what was recorded to have happened up to the end of a day.
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
