//! The supering answer in words.
//!
//! - `report.rs`: the whole answer, ready for JSON; `written.rs`: its grounds, values and steps
//! - `sentences.rs`: the answer and its grounds in sentences; `next.rs`: what must happen first, and what is missing
//! - `names.rs`: how sentences name a course and its terms

mod names;
mod next;
mod report;
mod sentences;
mod written;

pub use report::{
    CourseReport, DaySpan, GroundReport, MissingReport, StepReport, SuperingReport, SuperingSummary,
    ValueReport, WholeApiaryReport,
};

pub(crate) use names::{course_name, no_earliest_day, question, term};
pub(crate) use next::asked_for;
