//! The code that is measured, apart from the measuring, so that tests can check that it gives the same answers.
//!
//! - [`plain`]: the question as a careful programmer would write it by hand, as the yardstick
//! - [`scene`]: a colony with a number of courses, recorded entry by entry
#![deny(missing_docs)]
#![expect(
    clippy::missing_panics_doc,
    clippy::panic,
    reason = "a scene that cannot be set up ends the measuring"
)]

pub mod apiaries;
pub mod plain;
pub mod scene;
