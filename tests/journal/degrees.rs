//! Outside temperatures: exact to a tenth, as text and in JSON.

use combclear_domain::basics::degrees::Celsius;

#[test]
fn degrees_are_kept_to_a_tenth_and_written_as_they_came() {
    for (text, tenths) in
        [("12", 120), ("12.5", 125), ("-0.5", -5), ("0", 0), ("12.0", 120), ("-60", -600), ("50", 500)]
    {
        assert_eq!(Celsius::parse(text).unwrap().tenths(), tenths, "{text}");
    }
    assert_eq!(Celsius::parse("-0.5").unwrap().to_string(), "-0.5");
    assert_eq!(serde_json::to_string(&Celsius::parse("29.5").unwrap()).unwrap(), "29.5");
    assert_eq!(serde_json::to_string(&Celsius::parse("12.0").unwrap()).unwrap(), "12");
}

#[test]
fn fahrenheit_is_refused_with_what_it_would_be() {
    // 75 F are 23.9 C, 50.1 F are 10.1 C.
    let why = |text| Celsius::parse(text).unwrap_err();
    assert!(why("75").ends_with("if it is in Fahrenheit, write 23.9"), "{}", why("75"));
    assert!(why("50.1").ends_with("write 10.1"), "{}", why("50.1"));
    assert!(why("-60.1").ends_with("between -60 and 50"), "{}", why("-60.1"));
    assert!(why("12.34").ends_with("one decimal is kept; round it"));
    assert!(why("1e3").contains("write degrees Celsius"));
}
