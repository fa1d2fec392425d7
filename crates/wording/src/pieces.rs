//! Parts shared by the sentences of several questions: amounts, numbers of days, and lists of names.

use combclear_domain::Quantity;
use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::basics::words::{LotName, Unit};

use crate::amounts::amount_of;
pub(crate) use crate::amounts::days;
use crate::words::Words;

/// An amount with its unit, or the bare amount if the unit was not stated.
pub(crate) fn amount(words: &Words, quantity: Quantity, unit: Option<Unit>) -> String {
    unit.map_or_else(|| quantity.to_string(), |unit| amount_of(words, quantity, unit.as_str()))
}

/// Lots separated by commas, in the order in which people count.
pub(crate) fn lots(lots: &[LotName]) -> String {
    let mut names: Vec<&str> = lots.iter().map(LotName::as_str).collect();
    sort_naturally(&mut names, |name| name);
    names.join(", ")
}
