//! Chooses the media type that a client prefers (RFC 9110, section 12.5.1).

use axum::http::HeaderMap;
use axum::http::header::ACCEPT;

/// The type of `offered` that the client prefers; the earlier of two equals; `None` if it accepts none. A client without
/// `Accept` gets the first.
pub(crate) fn preferred<T: Copy>(headers: &HeaderMap, offered: &[(&str, T)]) -> Option<T> {
    let lines: Vec<&str> = headers.get_all(ACCEPT).iter().filter_map(|value| value.to_str().ok()).collect();
    let ranges: Vec<Range<'_>> =
        lines.iter().flat_map(|line| line.split(',')).filter_map(Range::read).collect();
    if ranges.is_empty() {
        return offered.first().map(|(_, first)| *first);
    }
    let mut best: Option<(u16, T)> = None;
    for (media_type, form) in offered {
        // The most specific matching range decides.
        let fits = ranges.iter().filter_map(|range| Some((range.exactness(media_type)?, range.weight)));
        let weight = fits.max_by_key(|(exactness, _)| *exactness).map_or(0, |(_, weight)| weight);
        if weight > best.map_or(0, |(best, _)| best) {
            best = Some((weight, *form));
        }
    }
    best.map(|(_, form)| form)
}

/// A media range with its weight in thousandths.
struct Range<'a> {
    main: &'a str,
    sub: &'a str,
    weight: u16,
}

impl Range<'_> {
    fn read(text: &str) -> Option<Range<'_>> {
        let mut parts = text.split(';').map(str::trim);
        let (main, sub) = parts.next()?.split_once('/')?;
        Some(Range { main, sub, weight: weight(parts) })
    }

    /// How specifically it matches a type: 0 to 2; `None` if it does not.
    fn exactness(&self, media_type: &str) -> Option<u8> {
        let (main, sub) = media_type.split_once('/')?;
        let same = |range: &str, part: &str| range.eq_ignore_ascii_case(part);
        match (self.main, self.sub) {
            ("*", "*") => Some(0),
            (own, "*") if same(own, main) => Some(1),
            (own, other) if same(own, main) && same(other, sub) => Some(2),
            _ => None,
        }
    }
}

/// The weight among the parameters of a range, in thousandths (RFC 9110, section 12.4.2).
pub(crate) fn weight<'p>(mut parameters: impl Iterator<Item = &'p str>) -> u16 {
    let weight = parameters.find_map(|part| part.strip_prefix("q=").or_else(|| part.strip_prefix("Q=")));
    weight.map_or(1_000, thousandths)
}

/// `0.8` in thousandths. An unreadable weight counts as 0.
fn thousandths(weight: &str) -> u16 {
    let (whole, decimals) = weight.split_once('.').unwrap_or((weight, ""));
    let digits = decimals.len() <= 3 && decimals.bytes().all(|byte| byte.is_ascii_digit());
    match whole {
        "1" => 1_000,
        "0" if digits => format!("{decimals:0<3}").parse().unwrap_or(0),
        _ => 0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_type_that_weighs_most_is_sent() {
        let cases = [
            ("nothing said", "", Some('j')),
            ("anything", "*/*", Some('j')),
            ("one type", "text/csv", Some('c')),
            ("a browser", "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8", Some('h')),
            ("weights", "application/json;q=0.5, application/pdf;q=0.9", Some('p')),
            ("a range of types", "text/*", Some('c')),
            ("the more exact range speaks", "text/*;q=0.9, text/csv;q=0", Some('h')),
            ("letters of any size", "Application/PDF", Some('p')),
            ("none of them", "image/png", None),
            ("refused", "application/json;q=0", None),
            ("a weight that cannot be read", "application/pdf;q=x, text/csv;q=0.1", Some('c')),
        ];
        let offered =
            [("application/json", 'j'), ("text/csv", 'c'), ("text/html", 'h'), ("application/pdf", 'p')];
        for (name, accept, expected) in cases {
            let mut headers = HeaderMap::new();
            if !accept.is_empty() {
                headers.insert(ACCEPT, accept.parse().unwrap());
            }
            assert_eq!(preferred(&headers, &offered), expected, "{name}");
        }
    }
}
