//! Answers in words: every sentence of an answer is made here, from one message file per language.
//!
//! A question of [`combclear_domain`] gives a typed answer. This crate turns it into a report: sentences for people
//! and identifiers for clients, ready for JSON, a table or a page. No other code makes these sentences, and no code
//! parses them.
//!
//! The sentences of a language are together in `messages/`, so that a native reader can review them. The build makes
//! a type for each message: a missing argument does not compile, and an unused message fails the lints.
#![deny(missing_docs)]

pub mod amounts;
pub mod calendar;
pub mod colonies;
pub mod diagnostics;
pub mod due;
pub mod exchange;
pub mod forms;
pub mod gaps;
pub mod http;
pub mod keeping;
mod labels;
pub mod law;
pub mod leaflet;
mod messages;
mod notice;
pub mod options;
pub mod pack;
pub mod paper;
mod pieces;
pub mod quoted;
pub mod recording;
pub mod refusals;
pub mod register;
pub mod reports;
pub mod retention;
mod sentences;
pub mod stock;
pub mod supering;
pub mod terminal;
pub mod timeline;
pub mod today;
pub mod unreadable;
pub mod visible;
pub mod visit;
mod words;

pub use labels::Label;
pub use notice::notice;
pub use words::Words;

/// The example of a library, compiled with the tests.
#[cfg(doctest)]
#[doc = include_str!("../../domain/LIBRARY.md")]
pub struct Library;
