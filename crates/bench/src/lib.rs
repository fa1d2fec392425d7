//! The code that is measured, apart from the measuring, so that tests can check that it gives the same answers.
//!
//! - [`plain`]: the question as a careful programmer would write it by hand, the yardstick
//! - [`scene`]: a colony, or many of them, with so many courses, taken in entry by entry
//! - [`apiaries`]: many apiaries with weather, flows and colonies
#![deny(missing_docs)]
#![expect(
    clippy::missing_panics_doc,
    clippy::panic,
    reason = "a scene that cannot be set up ends the measuring"
)]

pub mod apiaries;
pub mod plain;
pub mod scene;
