//! What everything else is made of: civil days and counting, quantities, temperatures, the words and names of the trade, sources.
//!
//! - [`calendar`]: civil days, and the counting policy `calendar-1`
//! - [`words`]: names and closed word lists of the trade
//! - [`topic`]: the topics on which leaflets speak
//! - [`source`], [`confidence`]: where a value was read, and how well it is established
//! - [`verdict`]: yes, no or unknown
//! - [`quantity`], [`degrees`]: amounts of a medicine, temperatures
//! - [`diagnostic`]: what is wrong in a file, where, and how to mend it

pub mod calendar;
pub mod confidence;
pub mod degrees;
pub mod diagnostic;
pub mod quantity;
pub mod source;
pub(crate) mod text;
pub mod topic;
pub mod verdict;
pub mod words;
