//! What a journal is written in: days and amounts, entries as they are read, lines, and the chain of hashes.

mod clock;
mod confirmed;
mod contents;
mod days;
mod degrees;
mod documents;
mod drafts;
mod forms;
mod lines;
mod places;
mod quantities;
mod ranges;
mod reading;
mod sealed;
mod ties;
mod told;
