//! Lists of colonies and lots as people say them: in the order in which they count, with runs of numbers in one.

use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::basics::words::{ColonyName, LotName};

use crate::Words;
use crate::words::say;

/// Colonies in natural order, runs of numbers in one, with their number if there are several: `R1-R15 (15)`.
#[must_use]
pub fn colonies<'n>(words: &Words, names: impl IntoIterator<Item = &'n ColonyName>) -> String {
    counted(words, names.into_iter().map(ColonyName::as_str))
}

/// Lots, in the same way.
#[must_use]
pub fn lots<'n>(words: &Words, names: impl IntoIterator<Item = &'n LotName>) -> String {
    counted(words, names.into_iter().map(LotName::as_str))
}

/// The same without their number, where that is said beside them or they stand in brackets.
#[must_use]
pub fn runs<'n>(words: &Words, names: impl IntoIterator<Item = &'n ColonyName>) -> String {
    in_runs(words, &in_order(names.into_iter().map(ColonyName::as_str)))
}

/// Names in natural order, runs of numbers in one, with their number if there are several.
#[must_use]
pub fn counted<'n>(words: &Words, names: impl IntoIterator<Item = &'n str>) -> String {
    let names = in_order(names);
    let said = in_runs(words, &names);
    if names.len() > 1 { say!(words, ColoniesCounted, names = said, count = names.len()) } else { said }
}

/// The names in natural order, each once.
fn in_order<'n>(names: impl IntoIterator<Item = &'n str>) -> Vec<&'n str> {
    let mut names: Vec<&str> = names.into_iter().collect();
    sort_naturally(&mut names, |name| *name);
    names.dedup();
    names
}

/// How many consecutive names make a run: two are as short side by side.
const SHORTEST_RUN: usize = 3;

fn in_runs(words: &Words, names: &[&str]) -> String {
    let mut said: Vec<String> = Vec::new();
    for run in names.chunk_by(|one, next| follows(one, next)) {
        match run {
            [first, .., last] if run.len() >= SHORTEST_RUN => {
                // A hyphen in the name itself would hide where the run begins and ends.
                said.push(if first.contains('-') {
                    say!(words, ColoniesRunOfHyphens, first = *first, last = *last)
                } else {
                    say!(words, ColoniesRun, first = *first, last = *last)
                });
            }
            few => said.extend(few.iter().map(|name| (*name).to_owned())),
        }
    }
    said.join(", ")
}

/// Whether a name has the number after that of another, with the same letters before it and written in the same way: `R09` is
/// followed by `R10`, but `R9` and `R010` are not of one run.
fn follows(one: &str, next: &str) -> bool {
    let ((before, number), (before_next, number_next)) = (numbered(one), numbered(next));
    let padded = |digits: &str| digits.len() > 1 && digits.starts_with('0');
    let alike = number.len() == number_next.len() || !(padded(number) || padded(number_next));
    // A number too long to be read stands alone.
    let read = |digits: &str| digits.parse::<u64>().ok();
    let after = |number: u64| number.checked_add(1);
    let consecutive = read(number_next).is_some_and(|it| read(number).and_then(after) == Some(it));
    before == before_next && alike && consecutive
}

/// A name without the digits at its end, and these digits.
fn numbered(name: &str) -> (&str, &str) {
    let before = name.trim_end_matches(|letter: char| letter.is_ascii_digit());
    (before, name.strip_prefix(before).unwrap_or_default())
}
