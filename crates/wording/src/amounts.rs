//! Amounts of medicine with their units.

use combclear_domain::Quantity;

use crate::Words;
use crate::words::say;

/// An amount with its unit, in the plural if needed.
#[must_use]
pub fn amount_of(words: &Words, amount: Quantity, unit: &str) -> String {
    let number = if amount == Quantity::whole(1) { Number::One } else { Number::Several };
    counted(words, &amount.to_string(), number, unit)
}

/// A number of days.
#[must_use]
pub fn days(words: &Words, days: u32) -> String {
    say!(words, Days, days = days)
}

/// Singular or plural.
#[derive(Clone, Copy)]
pub(crate) enum Number {
    One,
    Several,
}

/// An amount as it is written, with its unit.
pub(crate) fn counted(words: &Words, amount: &str, number: Number, unit: &str) -> String {
    let number = match number {
        Number::One => "one",
        Number::Several => "several",
    };
    say!(words, Amount, quantity = &*words.decimal(amount), number = number, unit = unit)
}
