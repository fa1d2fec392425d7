//! The question: what else can I use here, and will it be out before the nectar flow?
//!
//! Every leaflet of the holding's jurisdiction, split by method and label revision, is checked against the apiary and
//! the colony for every start day of a span. Each condition is met, broken or unknown: a broken one rules the day
//! out, an unknown one leaves it open. A condition that is met only because of a value not read in a document for
//! this country is unknown, until the keeper reads the pack.
//!
//! - [`Ask`], [`Span`], [`WhatIf`]: the question
//! - [`Board`]: the question prepared for a holding; it judges colony after colony
//! - [`ColonyOptions`], [`ApiaryOptions`]: the answers
//!
//! Rules in words (entrances, combs, weak colonies) are not judged. They are listed under `see_to`.

mod about;
mod answer;
mod apiary;
mod board;
mod change;
mod choice;
mod colony;
mod conditions;
mod date_range;
mod dose;
mod effect;
mod missing;
mod need;
mod order;
mod place;
mod reason;
mod remedy;
mod same_reason;
mod starts;
mod state;
mod weather;

pub use crate::facts::apiary::{Flow, Origin, SiteFact};
pub use crate::facts::history::Term;
pub use about::About;
pub use answer::{
    Asked, ColonyOption, ColonyOptions, DoseForColony, NearestDay, NoLeaflets, StockOfMedicine,
};
pub use apiary::{ApiaryOptions, OfAnswer, OptionForAll, WithColonies};
pub use board::{Board, Judged};
pub use change::Change;
pub use colony::{BROOD_NEED_TELLS_DAYS, COUNT_TELLS_DAYS};
pub use date_range::{Ask, BadSpan, Span};
pub use dose::{Base, DoseWhen, Mixture, NoDose, Portion, Rounding, Sum};
pub use effect::FreeAfterwards;
pub use missing::{EntryToMake, Look, Missing, NoEntry, Reading, Remedy, ToRecord};
pub(crate) use need::{CourseNeed, one_course_of_all};
pub use order::{OrderReason, OutBeforeFlow, Visits};
pub use place::WhatIf;
pub use reason::{Because, Counting, Measure, Told, ToldBy, Untold, Within};
pub use starts::{LatestStart, Margin, PlannedVisit, Start, Task};
pub use state::{Condition, Run, StartDays, State, Usability};
