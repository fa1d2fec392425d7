//! Texts that stand where something should be written and say nothing: `?`, `-`, `n/a`.

/// Words that people write where they have nothing to write. Common practice, no source.
const NOTHING: [&str; 14] = [
    "k.a.",
    "n.a.",
    "n/a",
    "na",
    "n/k",
    "nil",
    "none",
    "not known",
    "not recorded",
    "tba",
    "tbc",
    "tbd",
    "unknown",
    "xxx",
];

/// Whether a text says anything: it has a letter or a digit, and is no word for "nothing".
#[must_use]
pub fn says_something(text: &str) -> bool {
    let text = text.trim().trim_end_matches(['?', '!']).trim_end();
    let words = || text.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
    text.contains(char::is_alphanumeric) && !NOTHING.contains(&words().as_str())
}
