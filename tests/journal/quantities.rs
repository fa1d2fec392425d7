//! Amounts: exact to a thousandth, as text and in JSON.

use combclear_domain::Quantity;
use proptest::prelude::*;

use super::told::said;

#[test]
fn an_amount_is_written_without_idle_zeros() {
    for (text, written) in [
        ("0", "0"),
        ("2", "2"),
        ("2.0", "2"),
        ("2.300", "2.3"),
        ("0.125", "0.125"),
        ("0.001", "0.001"),
        ("10.05", "10.05"),
        ("1000000", "1000000"),
        ("999999.999", "999999.999"),
        ("2.3000000", "2.3"),
    ] {
        assert_eq!(Quantity::parse(text).map(|amount| amount.to_string()), Ok(written.to_owned()), "{text}");
    }
}

#[test]
fn what_is_no_amount_is_refused_with_the_reason() {
    for (text, why) in [
        ("", "write a number of zero or more"),
        ("-1", "write a number of zero or more"),
        ("+1", "write a number of zero or more"),
        (".5", "write a number of zero or more"),
        ("5.", "write a number of zero or more"),
        ("1,5", "write a number of zero or more"),
        ("1e3", "write a number of zero or more"),
        ("1.2.3", "write a number of zero or more"),
        (" 1", "write a number of zero or more"),
        ("two", "write a number of zero or more"),
        ("٢", "write a number of zero or more"),
        ("NaN", "write a number of zero or more"),
        ("0.0001", "at most three decimals are kept"),
        ("0.1234", "at most three decimals are kept"),
        ("1000000.001", "at most 1000000 is kept"),
        ("1000001", "at most 1000000 is kept"),
        ("99999999999999999999999999", "at most 1000000 is kept"),
    ] {
        let message = said(Quantity::parse(text).map(|amount| amount.to_string()).unwrap_err());
        assert!(message.starts_with(&format!("`{text}` is not an amount: {why}")), "{message}");
    }
}

#[test]
fn sums_neither_wrap_nor_go_below_nothing() {
    let most = Quantity::whole(u32::MAX);
    assert_eq!(Quantity::whole(2).minus(Quantity::whole(3)), None);
    assert_eq!(Quantity::whole(3).minus(Quantity::whole(3)), Some(Quantity::ZERO));
    assert!(Quantity::ZERO.is_zero() && !Quantity::parse("0.001").unwrap().is_zero());
    assert!(most.times(u64::MAX) >= most, "a product stops at the top");
    assert!(most.times(u64::MAX).plus(most) >= most.times(u64::MAX), "a sum stops at the top");
    let third = Quantity::parse("0.1").unwrap();
    assert_eq!(third.times(3), Quantity::parse("0.3").unwrap(), "tenths add up, as floats do not");
}

#[test]
fn in_json_an_amount_is_a_number_and_nothing_else() {
    for (json, written) in [("2", "2"), ("2.0", "2"), ("0.5", "0.5"), ("1e3", "1000"), ("12.125", "12.125")] {
        let amount: Quantity = serde_json::from_str(json).unwrap();
        assert_eq!(serde_json::to_string(&amount).unwrap(), written, "{json}");
    }
    for bad in ["\"2\"", "-1", "null", "true", "[2]", "0.0001", "1e9", "1e-9"] {
        assert!(serde_json::from_str::<Quantity>(bad).is_err(), "{bad}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn an_amount_comes_back_from_text_and_from_json(whole in 0..1_000_000_u32, thousandths in 0..1_000_u32) {
        let amount = Quantity::parse(&format!("{whole}.{thousandths:03}")).unwrap();
        prop_assert_eq!(Quantity::parse(&amount.to_string()), Ok(amount));
        let json = serde_json::to_string(&amount).unwrap();
        prop_assert_eq!(serde_json::from_str::<Quantity>(&json).unwrap(), amount);
        prop_assert_eq!(json, amount.to_string());
    }

    #[test]
    fn taking_away_undoes_adding(one in 0..1_000_000_u32, two in 0..1_000_000_u32, thousandths in 0..1_000_u32) {
        let one = Quantity::parse(&format!("{one}.{thousandths:03}")).unwrap();
        let two = Quantity::whole(two);
        prop_assert_eq!(one.plus(two).minus(two), Some(one));
        prop_assert_eq!(one.plus(two), two.plus(one));
        prop_assert_eq!(one.times(3), one.plus(one).plus(one));
    }

    #[test]
    fn no_text_makes_the_reader_fall_over(text in "\\PC{0,30}") {
        if let Ok(amount) = Quantity::parse(&text) {
            prop_assert_eq!(Quantity::parse(&amount.to_string()), Ok(amount));
        }
    }
}
