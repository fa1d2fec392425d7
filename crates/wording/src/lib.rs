//! Reports in words: every sentence that a person reads is made here, from one message file per language.
//!
//! A question of [`combclear_domain`] answers with a typed report. What stands here says it: in sentences for people, and in words for
//! programs, ready for JSON, a table or a page. No other code makes a sentence, and none looks into one.
//!
//! The sentences of a language stand together in `messages/`, for a native reader to go over. The build makes a type of each message:
//! a message that nobody says, and one that lacks an argument, do not compile.
#![deny(missing_docs)]

pub mod amounts;
pub mod calendar;
pub mod due;
pub mod exchange;
pub mod gaps;
mod labels;
pub mod law;
pub mod leaflet;
mod messages;
mod notice;
pub mod options;
pub mod pack;
pub mod paper;
mod pieces;
pub mod register;
pub mod retention;
pub mod stock;
pub mod supering;
pub mod terminal;
mod words;

pub use labels::Label;
pub use notice::notice;
pub use words::Words;
