//! May this hive be supered today?
//!
//! Combclear answers that from two things: the **journal** of a holding (what happened) and the **leaflets** (the
//! directions of each varroa medicine, as dated and sourced data). This crate is the pure core: no clock, no async
//! runtime, no files, no SQL and no HTTP. Days are arguments, answers are values.
//!
//! Each floor uses only the floors below it:
//!
//! | floor | contents |
//! | --- | --- |
//! | [`questions`] | supering, options, due, stock, register, gaps, retention: reports from facts and rules |
//! | [`recording`] | from a form that somebody filled in to the entries that it records |
//! | [`facts`] | what the journal says: the fold with its refusals, the courses of a colony |
//! | [`rules`] | leaflets and laws as dated, sourced data |
//! | [`journal`] | what happened: entries, their bodies, the hash chain, JSON Lines |
//! | [`basics`] | civil days, quantities, words and names, sources, verdicts |
//!
//! It is an aid to record-keeping. The leaflet on the pack, the prescriber and local law decide.
#![deny(missing_docs)]
// For a new kind of entry, rule or reason, the compiler then reports every place that distinguishes kinds.
#![warn(clippy::wildcard_enum_match_arm)]

pub mod basics;
pub mod facts;
pub mod journal;
pub mod questions;
pub mod recording;
pub mod rules;

pub use basics::calendar::{Day, Instant, TimeOfDay};
pub use basics::quantity::Quantity;
pub use rules::fault::{Diagnostic, Faults};
