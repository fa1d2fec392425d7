//! Outside temperatures in degrees Celsius, exact to a tenth.

use std::fmt;

use serde::de::{self, Deserializer};
use serde::{Deserialize, Serialize, Serializer};

use super::misread::{Misread, NotATemperature, TemperatureFault};

/// Degrees Celsius in tenths, from -60.0 to 50.0. Anything beyond is no outdoor temperature, and more likely
/// Fahrenheit.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Celsius(i16);

impl Celsius {
    const LOWEST: i64 = -600;
    const HIGHEST: i64 = 500;

    /// This many tenths of a degree, if in range.
    #[must_use]
    pub(crate) fn from_tenths(tenths: i16) -> Option<Celsius> {
        (Celsius::LOWEST..=Celsius::HIGHEST).contains(&i64::from(tenths)).then_some(Celsius(tenths))
    }

    /// In tenths of a degree.
    #[must_use]
    pub const fn tenths(self) -> i16 {
        self.0
    }

    /// Reads `12`, `-0.5` or `29.5`.
    ///
    /// # Errors
    /// Text that is not a number, has more than one decimal, or lies outside the range; in the last case with the value it
    /// would be if it was meant in Fahrenheit.
    pub fn parse(text: &str) -> Result<Celsius, NotATemperature> {
        let fail = |why| NotATemperature { text: text.to_owned(), why };
        let (sign, digits) = text.strip_prefix('-').map_or((1, text), |digits| (-1, digits));
        let (whole, decimals) = digits.split_once('.').unwrap_or((digits, "0"));
        let decimals = decimals.trim_end_matches('0');
        let number = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
        if whole.is_empty() || !number(whole) || !number(decimals) {
            return Err(fail(TemperatureFault::NotANumber));
        }
        if decimals.len() > 1 {
            return Err(fail(TemperatureFault::Decimals));
        }
        let tenths: i64 =
            format!("{whole}{decimals:0<1}").parse::<i64>().map_or(i64::MAX, |tenths| sign * tenths);
        let within = i16::try_from(tenths).ok().and_then(Celsius::from_tenths);
        within.ok_or_else(|| {
            // To the nearest tenth, which is enough to show what was meant.
            let from_fahrenheit = (0..=1400).contains(&tenths).then(|| ((tenths - 320) * 10 + 9) / 18);
            fail(TemperatureFault::OutOfRange { from_fahrenheit })
        })
    }
}

impl fmt::Display for Celsius {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let tenths = self.0.unsigned_abs();
        match tenths % 10 {
            0 => write!(f, "{sign}{}", tenths / 10),
            decimal => write!(f, "{sign}{}.{decimal}", tenths / 10),
        }
    }
}

impl fmt::Debug for Celsius {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl Serialize for Celsius {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0 % 10 {
            0 => serializer.serialize_i16(self.0 / 10),
            _ => (f64::from(self.0) / 10.0).serialize(serializer),
        }
    }
}

impl<'de> Deserialize<'de> for Celsius {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Celsius, D::Error> {
        let number = serde_json::Number::deserialize(deserializer)?;
        Celsius::parse(&number.to_string()).map_err(|fault| de::Error::custom(Misread::from(fault)))
    }
}
