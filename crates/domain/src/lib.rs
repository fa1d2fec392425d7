//! May this hive be supered today?
//!
//! Combclear answers that from two things: the **journal** of a holding (what happened) and the **leaflets** (what
//! the directions of each varroa medicine say, kept as dated and sourced data). This crate is the pure middle: it
//! knows no clock, no async runtime, no files, no SQL and no HTTP. Days come in as arguments, answers go out as values.
//!
//! | module | what is in it |
//! | --- | --- |
//! | [`calendar`] | civil days, and the counting policy `calendar-1` |
//! | [`words`] | names and closed word lists of the trade |
//! | [`journal`] | entries, their bodies, the hash chain, JSON Lines |
//! | [`leaflet`] | the leaflet format, its loader, the set of leaflets |
//! | [`holding`] | the journal folded into apiaries, colonies, medicines and lots; what is refused |
//! | [`history`] | the courses of one colony, each with the terms that rule it |
//! | [`supering`] | the question itself: answer, grounds, what must happen first |
//! | [`register`] | the legal register: acquisitions, administrations, removals, disposals, corrections |
//! | [`options`] | what else can be used here, on which days, and is it out before the nectar flow |
//! | [`stock`] | what is left of each lot, what to dispose of, what to reorder |
//! | [`law`] | what the law asks of a medicine record: fields, times, form, kept as dated and sourced data |
//! | [`gaps`] | what the legal record still misses, entry by entry, and what else is amiss |
//! | [`retention`] | until which day each record must be kept, and which entries belong together |
//! | [`due`] | what must or may be done, from when, by when, apiary by apiary |
//!
//! It is an aid to record-keeping. The leaflet on the pack, the prescriber and local law decide.
#![deny(missing_docs)]
// A new kind of entry, rule or reason must lead the compiler to every place that tells kinds apart.
#![warn(clippy::wildcard_enum_match_arm)]

pub mod calendar;
pub mod degrees;
pub mod diagnostic;
pub mod due;
mod flow;
pub mod gaps;
pub mod history;
pub mod holding;
pub mod journal;
pub mod law;
pub mod leaflet;
pub mod options;
pub mod quantity;
pub mod register;
pub mod retention;
mod sources;
pub mod stock;
pub mod supering;
mod table;
pub mod words;

pub use calendar::{Day, Instant, TimeOfDay};
pub use diagnostic::Diagnostic;
pub use quantity::Quantity;

/// The examples of the README, compiled with the tests.
#[cfg(doctest)]
#[doc = include_str!("../../../README.md")]
pub struct Readme;
