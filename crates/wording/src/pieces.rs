//! Pieces that the sentences of several questions put in: amounts, numbers of days, and names in a row.

use combclear_domain::Quantity;
use combclear_domain::basics::words::{ColonyName, Unit};

use crate::amounts::amount_of;
pub(crate) use crate::amounts::days;
use crate::words::Words;

/// An amount with its unit, or the bare amount where nobody said what it is counted in.
pub(crate) fn amount(words: &Words, quantity: Quantity, unit: Option<Unit>) -> String {
    unit.map_or_else(|| quantity.to_string(), |unit| amount_of(words, quantity, unit.as_str()))
}

/// Names with commas between them.
pub(crate) fn names(colonies: &[ColonyName]) -> String {
    colonies.iter().map(ColonyName::as_str).collect::<Vec<_>>().join(", ")
}
