//! What the declaration of rule kinds (`basics/rule_kinds.rs`) means for leaflets: how a rule of each kind is read, its keys
//! in the JSON Schema, and which fields tell rules of one kind apart.

use serde_json::{Value, json};

use super::schema::Keys;
use super::together::{Above, AnyBeside, AnyOf, NeededBeside, NotBelow};
use super::written::{
    BEES, DAYS_MOST, DaysOrNone, IN_USE_MOST, Reading, Written, amount, degrees, may, may_list, must,
    must_list, one_of, text, whole, word, year_day,
};
use crate::basics::calendar::YearDay;
use crate::basics::quantity::Quantity;
use crate::basics::rule_kinds::rule_kinds;
use crate::basics::rule_words::{self, BroodState, DosePer, Need, Other, TemperatureWindow, YearCounting};
use crate::basics::says::{Says, WithdrawalPeriod};
use crate::basics::topic::Topic;
use crate::basics::words::{self, Brood, Permission, RemovalNeed};
use crate::rules::fault::SwapOr::{LeaveOut, Swap};
use crate::rules::fault::{Lacking, WordsOf};

/// The key of a field in leaflets: its name, unless another is declared.
macro_rules! key {
    ($field:ident) => {
        stringify!($field)
    };
    ($field:ident $key:literal) => {
        $key
    };
}

/// The fields that must differ between rules of a kind that are in force together; `None` if any number may be.
macro_rules! apart {
    (several) => { None };
    (one $($field:ident)*) => { Some(vec![$(json!($field)),*]) };
}

macro_rules! kinds {
    ($(
        $(#[$doc:meta])+
        $kind:ident = $text:literal, $known:ident, $number:ident $(per ($($apart:ident),+))? {
            $($(#[$meta:meta])+ $field:ident $(as $key:literal)?: $type:ty = $form:expr,)+
        } $(together [$($together:expr,)+])?
    )+) => {
        /// Reads the content of a rule. All fields are read, even after a fault, so that every fault is reported at once.
        pub(super) fn read(rule: &mut Reading<'_, '_, '_>, topic: Topic) -> Option<Says> {
            Some(match topic {
                $(Topic::$kind => {
                    let ($($field,)+) = ($($form.read(rule, key!($field $($key)?)),)+);
                    $($($together.check(rule);)+)?
                    Says::$kind { $($field: $field?),+ }
                })+
            })
        }

        /// Adds the keys of a kind.
        pub(super) fn describe(topic: Topic, keys: Keys) -> Keys {
            match topic {
                $(Topic::$kind => {
                    $(let keys = field::<$type>(&$form, keys, key!($field $($key)?));)+
                    $($(let keys = $together.describe(keys);)+)?
                    keys
                })+
            }
        }

        /// The values that must differ between two rules of a kind that are in force on one day. `None` if several rules of
        /// the kind may be in force together.
        pub(super) fn apart(says: &Says) -> Option<Vec<Value>> {
            match says {
                $(Says::$kind { $($($apart,)+)? .. } => apart!($number $($($apart)+)?),)+
            }
        }
    };
}

rule_kinds!(kinds);

/// Adds the key of a field. `T` lets the compiler infer the word list of its form.
fn field<T>(form: &impl Written<Field = T>, keys: Keys, key: &'static str) -> Keys {
    form.describe(keys, key)
}
