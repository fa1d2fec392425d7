//! May this hive be supered today?
//!
//! Combclear answers that from two things: the **journal** of a holding (what happened) and the **leaflets** (what
//! the directions of each varroa medicine say, kept as dated and sourced data). This crate is the pure middle: it
//! knows no clock, no async runtime, no files, no SQL and no HTTP. Days come in as arguments, answers go out as values.
//!
//! One floor rests on the floors below it only:
//!
//! | floor | what is in it |
//! | --- | --- |
//! | [`questions`] | supering, options, due, stock, register, gaps, retention: reports from facts and rules |
//! | [`facts`] | what the journal says, each thing worked out once: the fold with its refusals, the courses of a colony |
//! | [`rules`] | leaflets and laws as dated, sourced data |
//! | [`journal`] | what happened: entries, their bodies, the hash chain, JSON Lines |
//! | [`basics`] | civil days, quantities, words and names of the trade, sources, yes-no-unknown |
//!
//! It is an aid to record-keeping. The leaflet on the pack, the prescriber and local law decide.
#![deny(missing_docs)]
// A new kind of entry, rule or reason must lead the compiler to every place that tells kinds apart.
#![warn(clippy::wildcard_enum_match_arm)]

pub mod basics;
pub mod facts;
pub mod journal;
pub mod questions;
pub mod rules;

pub use basics::calendar::{Day, Instant, TimeOfDay};
pub use basics::diagnostic::{Diagnostic, Faults};
pub use basics::quantity::Quantity;
