//! What is measured, kept apart from the measuring, so that tests can hold it to the same answers.
//!
//! - [`plain`]: the question as a careful programmer would write it by hand, the yardstick
//! - [`scene`]: a colony with so many courses, taken in entry by entry
#![deny(missing_docs)]
#![expect(
    clippy::missing_panics_doc,
    clippy::panic,
    reason = "a scene that cannot be set up ends the measuring"
)]

pub mod apiaries;
pub mod plain;
pub mod scene;
