//! The answers of the service, worked out on a phone without signal.
//!
//! The page keeps a copy of the journal and the entries that were written down and not sent yet. This crate answers from both, with the
//! same leaflets, laws and words as the service, and to the same paths: whoever asks does not see who answered. To follow one question,
//! begin at [`Phone::do_as_told`]; `exports.rs` is what the page calls when all this is WebAssembly.
//!
//! - [`Phone`] holds the copies of journals; [`struct@Copy`] is one of them
//! - `question.rs` reads a path, `answer.rs` answers it
#![deny(missing_docs)]

mod answer;
mod copy;
mod exports;
mod phone;
mod question;

pub use answer::Answer;
pub use copy::Copy;
pub use phone::Phone;
