//! What is sent as an answer to a question about a holding, wherever it is worked out: by the service, or on a phone without signal.
//!
//! - [`colonies`], [`apiaries`], [`medicines`]: what is on record, and what follows from it
//! - [`history`]: what was written down of a colony
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
pub mod history;
pub mod lot_leaflet;
pub mod medicines;
mod unanswered;

use combclear_domain::journal::Hash;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;

pub use clock::{ClockBehind, Dated};
pub use course::{ColonyCourse, Happened};
pub use unanswered::{Fault, Unanswered, Why};

/// What tells these leaflets and laws from others: by other ones, the same question may have another answer.
#[must_use]
pub fn rules(leaflets: &Leaflets, laws: &Laws) -> Hash {
    Hash::of_content(format!("{leaflets:?}{laws:?}").as_bytes())
}
