//! Outside temperatures: exact to a tenth, as text and in JSON.

use combclear_domain::basics::degrees::Celsius;
use combclear_domain::basics::misread::TemperatureFault;

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
    let why = |text| Celsius::parse(text).unwrap_err().why;
    let meant = |tenths| TemperatureFault::OutOfRange { from_fahrenheit: tenths };
    assert_eq!(why("75"), meant(Some(239)));
    assert_eq!(why("50.1"), meant(Some(101)));
    assert_eq!(why("-60.1"), meant(None));
    assert_eq!(why("12.34"), TemperatureFault::Decimals);
    assert_eq!(why("1e3"), TemperatureFault::NotANumber);
}
