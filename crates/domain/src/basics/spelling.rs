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
///
/// Whatever is written, it takes no longer than the candidates are long: a text is at least as far from another as it is longer.
#[must_use]
pub fn nearest<'a>(written: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let length = written.chars().count();
    let mut lower: Option<String> = None;
    candidates
        .into_iter()
        .filter_map(|candidate| {
            let of_candidate = candidate.chars().count();
            let near_enough = 1 + of_candidate / 4;
            // Letters may change in number with their case.
            if length.abs_diff(of_candidate) > 2 * near_enough {
                return None;
            }
            let written = lower.get_or_insert_with(|| written.to_lowercase());
            let distance = strsim::damerau_levenshtein(written, &candidate.to_lowercase());
            (distance <= near_enough).then_some((distance, candidate))
        })
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}
