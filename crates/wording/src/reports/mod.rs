//! What is sent as an answer to a question about a holding, wherever it is worked out: by the service, or on a phone without signal.
//!
//! - [`colonies`], [`apiaries`], [`medicines`]: what is on record, and what follows from it
//! - [`filled_in`]: the forms, and what a filled-in one would record
//! - [`asked`]: what a question asks for
//! - [`lot_leaflet`]: what to ask somebody who has the leaflet of a lot in hand
//! - [`ClockBehind`]: what an answer about today says if the clock is wrong
//! - [`Unanswered`]: why there is no answer

pub mod apiaries;
pub mod asked;
mod clock;
pub mod colonies;
mod course;
pub mod filled_in;
pub mod lot_leaflet;
pub mod medicines;
mod unanswered;

pub use clock::{ClockBehind, Dated};
pub use course::{ColonyCourse, Happened};
pub use unanswered::{Fault, Unanswered, Why};
