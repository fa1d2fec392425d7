//! Amounts of a medicine: exact to a thousandth, never a float, so that a lot adds up exactly.

use std::fmt;

use serde::de::{self, Deserializer};
use serde::{Deserialize, Serialize, Serializer};

use super::misread::{AmountFault, Misread, NotAnAmount};

/// An amount in the unit of its medicine (strips, g, ml), `0` to `1_000_000`, in steps of a thousandth.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Quantity {
    thousandths: u64,
}

impl Quantity {
    /// Zero.
    pub const ZERO: Quantity = Quantity { thousandths: 0 };
    const MOST: u64 = 1_000_000_000;

    /// A whole number of units.
    #[must_use]
    pub const fn whole(units: u32) -> Quantity {
        Quantity { thousandths: units as u64 * 1_000 }
    }

    /// This many thousandths of a unit.
    #[must_use]
    pub const fn from_thousandths(thousandths: u64) -> Quantity {
        Quantity { thousandths }
    }

    /// In thousandths of a unit.
    #[must_use]
    pub const fn thousandths(self) -> u64 {
        self.thousandths
    }

    /// Rounded up to a whole number of `step`s; unchanged if `step` is zero.
    #[must_use]
    pub(crate) fn up_to(self, step: Quantity) -> Quantity {
        let steps = self.thousandths.checked_next_multiple_of(step.thousandths);
        Quantity { thousandths: steps.filter(|_| step.thousandths > 0).unwrap_or(self.thousandths) }
    }

    /// Rounded to the nearest whole number of `step`s, halves up; unchanged if `step` is zero.
    #[must_use]
    pub fn nearest(self, step: Quantity) -> Quantity {
        let half = step.thousandths / 2;
        let steps = (self.thousandths.saturating_add(half)).checked_div(step.thousandths);
        steps.map_or(self, |steps| Quantity { thousandths: steps.saturating_mul(step.thousandths) })
    }

    /// This amount times `by` divided by `over`, to the nearest thousandth; zero if `over` is zero.
    #[must_use]
    pub(crate) fn scaled(self, by: Quantity, over: Quantity) -> Quantity {
        let (a, b, c) =
            (u128::from(self.thousandths), u128::from(by.thousandths), u128::from(over.thousandths));
        let scaled = (a * b + c / 2).checked_div(c).unwrap_or_default();
        Quantity { thousandths: u64::try_from(scaled).unwrap_or(u64::MAX) }
    }

    /// Whether this is zero.
    #[must_use]
    pub const fn is_zero(self) -> bool {
        self.thousandths == 0
    }

    /// The sum of two amounts.
    #[must_use]
    pub const fn plus(self, other: Quantity) -> Quantity {
        Quantity { thousandths: self.thousandths.saturating_add(other.thousandths) }
    }

    /// What is left after subtracting `other`; none if `other` is more.
    #[must_use]
    pub fn minus(self, other: Quantity) -> Option<Quantity> {
        self.thousandths.checked_sub(other.thousandths).map(|thousandths| Quantity { thousandths })
    }

    /// How far two amounts are apart.
    #[must_use]
    pub(crate) const fn apart(self, other: Quantity) -> Quantity {
        Quantity { thousandths: self.thousandths.abs_diff(other.thousandths) }
    }

    /// This amount times `count`.
    #[must_use]
    pub const fn times(self, count: u64) -> Quantity {
        Quantity { thousandths: self.thousandths.saturating_mul(count) }
    }

    /// Reads `2`, `2.3` or `0.125`.
    ///
    /// # Errors
    /// Text that is not such a number, has more than three decimals, or lies outside the range.
    pub fn parse(text: &str) -> Result<Quantity, NotAnAmount> {
        let fail = |why| NotAnAmount { text: text.to_owned(), why };
        let (whole, decimals) = text.split_once('.').unwrap_or((text, "0"));
        let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
        if !digits(whole) || !digits(decimals) {
            return Err(fail(AmountFault::NotANumber));
        }
        let decimals = decimals.trim_end_matches('0');
        if decimals.len() > 3 {
            return Err(fail(AmountFault::Decimals));
        }
        let scaled = format!("{whole}{decimals:0<3}");
        match scaled.parse() {
            Ok(thousandths) if thousandths <= Quantity::MOST => Ok(Quantity { thousandths }),
            _ => Err(fail(AmountFault::TooMuch)),
        }
    }
}

impl fmt::Display for Quantity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (whole, rest) = (self.thousandths / 1_000, self.thousandths % 1_000);
        if rest == 0 {
            return write!(f, "{whole}");
        }
        let decimals = format!("{rest:03}");
        write!(f, "{whole}.{}", decimals.trim_end_matches('0'))
    }
}

impl fmt::Debug for Quantity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl Serialize for Quantity {
    /// A JSON number: `2`, not `2.0`. Three decimals below a million survive a double unharmed.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.thousandths % 1_000 {
            0 => serializer.serialize_u64(self.thousandths / 1_000),
            _ => self.to_string().parse::<f64>().map_err(serde::ser::Error::custom)?.serialize(serializer),
        }
    }
}

impl<'de> Deserialize<'de> for Quantity {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Quantity, D::Error> {
        let number = serde_json::Number::deserialize(deserializer)?;
        Quantity::parse(&number.to_string()).map_err(|fault| de::Error::custom(Misread::from(fault)))
    }
}
