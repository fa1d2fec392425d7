//! Texts that stand where something should be written and say nothing. Common practice, no source.

use combclear_domain::basics::placeholder::says_something;

#[test]
fn what_stands_for_nothing_says_nothing() {
    for text in
        ["", " ", "?", "??", "-", "--", "/", "…", "N/A", "n.a.", "None", "unknown?", "not  known", "TBC"]
    {
        assert!(!says_something(text), "{text}");
    }
}

#[test]
fn a_short_or_odd_text_that_says_something_counts() {
    for text in [
        "B 1234",
        "0",
        "7",
        "é",
        "蜂",
        "None Such Farm Supplies",
        "invoice -",
        "Nash",
        "unknown seller at the fair",
    ] {
        assert!(says_something(text), "{text}");
    }
}
