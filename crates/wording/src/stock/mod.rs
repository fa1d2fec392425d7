//! The stock in words.

use combclear_domain::Quantity;

use crate::words::{Words, say};

/// The sum of a lot of which more is gone than was acquired.
pub(crate) fn sum_with_too_many(
    words: &Words,
    acquired: Quantity,
    given: Quantity,
    disposed: Quantity,
    over: Quantity,
) -> String {
    say!(words, StockSumTooMany, acquired = acquired, given = given, disposed = disposed, over = over)
}
