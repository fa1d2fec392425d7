//! What the legal record still misses: field by field what the law of the day wants, and what else is amiss.

mod report;

pub use report::{Gap, GapWeight, GapsReport, LawPart, LotCheck};
