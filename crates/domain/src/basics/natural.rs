//! The order in which people count names: `H2` before `H10`.

use std::cmp::Ordering;

/// Compares two names as people count: digits by their number, everything else letter by letter. Names that count the
/// same (`H7`, `H07`) are told apart by their spelling, so the order is total.
#[must_use]
pub fn natural_order(one: &str, other: &str) -> Ordering {
    let (mut left, mut right) = (one, other);
    loop {
        let ((left_text, left_number, left_rest), (right_text, right_number, right_rest)) =
            (part(left), part(right));
        // Without digits to follow, the text of one may go on where digits begin in the other.
        let ordering = left_text.cmp(right_text).then_with(|| compare_numbers(left_number, right_number));
        if ordering != Ordering::Equal {
            return ordering;
        }
        if left_rest.is_empty() || right_rest.is_empty() {
            return left_rest.cmp(right_rest).then_with(|| one.cmp(other));
        }
        (left, right) = (left_rest, right_rest);
    }
}

/// Sorts by a name, as people count.
pub fn sort_naturally<T>(items: &mut [T], name: impl Fn(&T) -> &str) {
    items.sort_by(|one, other| natural_order(name(one), name(other)));
}

/// The text up to the first digit, the digits, and the rest.
fn part(text: &str) -> (&str, &str, &str) {
    let from = text.find(|letter: char| letter.is_ascii_digit()).unwrap_or(text.len());
    let (before, rest) = text.split_at(from);
    let until = rest.find(|letter: char| !letter.is_ascii_digit()).unwrap_or(rest.len());
    let (digits, rest) = rest.split_at(until);
    (before, digits, rest)
}

/// Compares numbers of any length. No number comes before every number.
fn compare_numbers(one: &str, other: &str) -> Ordering {
    let (left, right) = (one.trim_start_matches('0'), other.trim_start_matches('0'));
    (!one.is_empty()).cmp(&!other.is_empty()).then(left.len().cmp(&right.len())).then_with(|| left.cmp(right))
}
