//! What was probably meant by a word that there is not.

use std::str::FromStr;

/// The name nearest in spelling, if one is near enough to be meant.
#[must_use]
pub fn nearest_name<'a, Name: FromStr>(
    written: &str,
    names: impl IntoIterator<Item = &'a str>,
) -> Option<Name> {
    nearest(written, names)?.parse().ok()
}

/// The candidate nearest in spelling, if one is near enough to be meant.
#[must_use]
pub fn nearest<'a>(written: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    candidates
        .into_iter()
        .map(|candidate| {
            (strsim::damerau_levenshtein(&written.to_lowercase(), &candidate.to_lowercase()), candidate)
        })
        .filter(|(distance, candidate)| *distance <= 1 + candidate.chars().count() / 4)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}
