//! The supering answer in words.
//!
//! - `report.rs`: the whole answer, ready for JSON; `written.rs`: its grounds, values and steps
//! - `sentences.rs`: the answer and its grounds in sentences; `next.rs`: what must happen first, and what is missing
//! - `glance.rs`: why and what next, in a line each; `board.rs`: colonies of which the same is said, together
//! - `names.rs`: how sentences name a course and its terms

mod board;
mod glance;
mod names;
mod next;
mod report;
mod sentences;
mod written;

pub use board::{BoardGroup, ColoniesAt, in_order};
pub use glance::AtAGlance;
pub use report::{
    CourseReport, DaySpan, GroundReport, MissingReport, StepReport, SuperingReport, SuperingSummary,
    ValueReport, WholeApiaryReport,
};

pub(crate) use names::{course_name, no_earliest_day, question, term};
pub(crate) use next::asked_for;
