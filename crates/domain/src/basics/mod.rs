//! The vocabulary of everything else: days and counting, quantities, temperatures, names and word lists, sources.
//!
//! - [`calendar`]: civil days, and the counting policy `calendar-1`
//! - [`words`]: names and closed word lists of the trade
//! - `rule_kinds`: the kinds of rule, declared once; it makes [`topic`], what rules are about, and [`says`], what they say
//! - [`rule_words`]: the word lists of the kinds of rule
//! - [`source`], [`confidence`]: where a value was read, and how well it is established
//! - [`sourced`]: a value with its origin; [`entry_id`]: the id of an entry
//! - [`fact`]: a fact, or what is missing to know it; [`verdict`]: yes, no or unknown
//! - [`quantity`], [`degrees`]: amounts of a medicine, temperatures
//! - [`natural`]: the order in which people count names
//! - [`misread`]: why a text or a value in JSON cannot be read; [`node`]: how that is found in JSON
//! - [`spelling`]: what was probably meant by a word that there is not

pub mod calendar;
pub mod confidence;
pub mod degrees;
pub mod entry_id;
pub mod fact;
pub mod misread;
pub mod natural;
pub mod node;
pub mod placeholder;
pub mod quantity;
pub(crate) mod rule_kinds;
pub mod rule_words;
pub mod says;
pub mod source;
pub mod sourced;
pub mod spelling;
pub(crate) mod text;
pub mod topic;
pub mod verdict;
pub mod words;
