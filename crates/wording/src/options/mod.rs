//! The question in words: what else can I use here, and will it be out before the nectar flow?
//!
//! - [`OptionsReport`]: the answer for one colony
//! - [`ApiaryReport`]: the answer for a whole apiary

mod apiary;
mod because;
mod change;
mod colony;
mod condition;
pub(crate) mod dose;
mod how;
mod missing;
mod order;
mod start;
mod to_do;

use combclear_domain::rules::leaflet::{Leaflet, Rule};

use crate::Words;
use crate::words::say;

pub use apiary::{ApiaryOption, ApiaryReport, ColoniesOfAnswer, WhyNot};
pub use colony::{OptionReport, OptionsReport};
pub use condition::{ConditionReport, RunReport};
pub use dose::{DoseOfColony, DoseSum, Solution};
pub use missing::Missing;
pub use start::{StartReport, Visit};

/// The notice on every answer.
fn notice(words: &Words) -> String {
    say!(words, OptionsNotice, notice = say!(words, Notice))
}

/// The rules of a leaflet with these indices.
fn rules<'l>(leaflet: &'l Leaflet, indexes: &'l [usize]) -> impl Iterator<Item = &'l Rule> {
    indexes.iter().filter_map(|index| leaflet.rules.get(*index))
}
