//! Parts shared by the sentences of several questions: amounts, numbers of days, and lists of names.

use combclear_domain::Quantity;
use combclear_domain::basics::words::{ColonyName, LotName, Unit};

use crate::amounts::amount_of;
pub(crate) use crate::amounts::days;
use crate::words::Words;

/// An amount with its unit, or the bare amount if the unit was not stated.
pub(crate) fn amount(words: &Words, quantity: Quantity, unit: Option<Unit>) -> String {
    unit.map_or_else(|| quantity.to_string(), |unit| amount_of(words, quantity, unit.as_str()))
}

/// Colonies separated by commas.
pub(crate) fn names(colonies: &[ColonyName]) -> String {
    listed(colonies.iter().map(ColonyName::as_str))
}

/// Lots separated by commas.
pub(crate) fn lots(lots: &[LotName]) -> String {
    listed(lots.iter().map(LotName::as_str))
}

fn listed<'a>(names: impl Iterator<Item = &'a str>) -> String {
    names.collect::<Vec<_>>().join(", ")
}
