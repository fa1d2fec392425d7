//! The question: what else can I use here, and will it be out before the nectar flow?
//!
//! Every leaflet of the holding's jurisdiction, each method and each label revision by itself, is held against the apiary and
//! the colony for every start day of a span. Each condition is met, broken or unknown; one that is broken rules the day out,
//! one that is unknown leaves it open. A condition that holds only because of a value that was not read in a document for
//! this country is unknown: the keeper's own reading of the pack lifts that.
//!
//! - [`Ask`], [`Span`], [`WhatIf`]: what is asked
//! - [`Board`]: the question prepared for a holding; it judges colony after colony
//! - [`OptionsReport`], [`ApiaryReport`]: answers written out
//!
//! What is not judged: rules in words (entrances, combs, weak colonies). They are told among the things to see to.

mod apiary;
mod board;
mod choice;
mod colony;
mod dose;
mod reason;
use crate::facts::flow;
mod conditions;
mod date_range;
mod effect;
mod need;
mod order;
mod place;
mod remedy;
mod report;
mod short;
mod starts;
mod state;
mod weather;
mod wording;

pub use crate::facts::history::Lack;
pub use apiary::{ApiaryOption, ApiaryReport, ColoniesOfAnswer, WhyNot};
pub use board::{Board, Judged};
pub use colony::{BROOD_NEED_TELLS_DAYS, COUNT_TELLS_DAYS};
pub use date_range::{Ask, BadSpan, Span};
pub use dose::{DoseSum, Solution};
pub(crate) use need::{CourseNeed, one_course_of_all};
pub use place::WhatIf;
pub use reason::{Because, Measure, Origin, ToldBy, Untold};
pub use report::{
    ConditionReport, DoseOfColony, FlowReport, Missing, OptionReport, OptionsReport, RunReport,
    StockOfMedicine,
};
pub use short::{amount_of, says as in_few_words};
pub use starts::{LatestStart, Margin, StartReport, Visit};
pub use state::{Condition, Run, StartDays, State, Usability};
