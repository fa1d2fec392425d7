//! The questions that a keeper or an inspector asks, each answered from facts and rules.
//!
//! - [`supering`]: may this colony be supered: answer, grounds, what must happen first
//! - [`options`]: what else can be used here, on which days, and is it out before the nectar flow
//! - [`due`]: what must or may be done, from when, by when, apiary by apiary
//! - [`timeline`]: what a picture of a colony's season shows
//! - [`stock`]: what is left of each lot, what to dispose of, what to reorder
//! - [`register`]: the legal register: acquisitions, administrations, removals, disposals, corrections
//! - [`gaps`]: what is missing from the legal record, entry by entry, and what else is irregular
//! - [`against`]: what the record says against an entry, before it is recorded
//! - [`retention`]: until which day each record must be kept, and which entries belong together

pub mod against;
pub mod due;
pub mod gaps;
mod named;
pub mod options;
pub mod register;
pub mod retention;
pub mod stock;
pub mod supering;
pub mod timeline;

pub use named::NamedEntry;
