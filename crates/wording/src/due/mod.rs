//! Due tasks in words.
//!
//! - `report.rs`: the whole answer, ready for JSON, a table or a calendar
//! - `sentences.rs`: each task in a few words, and in a sentence with its dates

mod report;
mod sentences;

pub use report::{DueItem, DueReport, DueVisit};
pub(crate) use sentences::lots_named;
