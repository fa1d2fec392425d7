//! The value of a rule in a few words, as it is shown and as a keeper may confirm it.

use crate::basics::quantity::Quantity;
// What is shown is what an answer asks to confirm, so these are the words of journals.
pub use crate::facts::confirmed::in_words as says;

/// An amount with its unit, in the plural where it is not one.
#[must_use]
pub fn amount_of(amount: Quantity, unit: &str) -> String {
    let plural = amount != Quantity::whole(1) && !matches!(unit, "g" | "ml");
    format!("{amount} {unit}{}", if plural { "s" } else { "" })
}
