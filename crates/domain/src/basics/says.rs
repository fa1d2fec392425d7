//! What a rule of each kind says.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::calendar::YearDay;
use super::quantity::Quantity;
use super::rule_kinds::rule_kinds;
use super::rule_words::{self, BroodState, DosePer, Need, Other, TemperatureWindow, YearCounting};
use super::topic::Topic;
use super::words::{self, Brood, NoWithdrawal, Permission, RemovalNeed};

/// A withdrawal period as a label states it.
///
/// A label that knows no withdrawal period is not one that states 0 days: in the United States labels state a wait before
/// supers instead.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(untagged)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum WithdrawalPeriod {
    /// The label knows none.
    None(NoWithdrawal),
    /// So many days, 0 included.
    Days(u16),
}

impl WithdrawalPeriod {
    /// The label knows none.
    pub const NONE_BY_LABEL: WithdrawalPeriod = WithdrawalPeriod::None(NoWithdrawal::NoneByLabel);

    /// The number of days it bars honey for; 0 if the label has no period.
    #[must_use]
    pub const fn days(self) -> u16 {
        match self {
            WithdrawalPeriod::None(NoWithdrawal::NoneByLabel) => 0,
            WithdrawalPeriod::Days(days) => days,
        }
    }
}

macro_rules! says {
    ($(
        $(#[$doc:meta])+
        $kind:ident = $text:literal, $known:ident, $number:ident $(per $apart:tt)? {
            $($(#[$meta:meta])+ $field:ident $(as $key:literal)?: $type:ty = $form:expr,)+
        } $(together $together:tt)?
    )+) => {
        /// What a rule says.
        #[derive(Debug, Clone, PartialEq, Eq, Serialize)]
        #[serde(tag = "kind")]
        #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(rename_all = "snake_case"))]
        pub enum Says {
            $($(#[$doc])+ #[serde(rename = $text)] $kind { $($(#[$meta])+ $field: $type),+ },)+
        }

        impl Says {
            /// What it is about.
            #[must_use]
            pub const fn topic(&self) -> Topic {
                match self { $(Says::$kind { .. } => Topic::$kind,)+ }
            }

            /// Reads the fields of a rule on this topic, without the topic itself.
            ///
            /// # Errors
            /// An unknown, missing or wrong field.
            pub(crate) fn read_fields<'de, D: Deserializer<'de>>(topic: Topic, fields: D) -> Result<Says, D::Error> {
                match topic {
                    $(Topic::$kind => {
                        let fields::$kind { $($field),+ } = fields::$kind::deserialize(fields)?;
                        Ok(Says::$kind { $($field),+ })
                    })+
                }
            }

            /// Writes its fields, without the topic.
            ///
            /// # Errors
            /// Those of the serializer.
            pub(crate) fn write_fields<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                match self.clone() {
                    $(Says::$kind { $($field),+ } => fields::$kind { $($field),+ }.serialize(serializer),)+
                }
            }
        }

        /// The fields of each kind.
        mod fields {
            use super::*;

            $(
                #[derive(Serialize, Deserialize)]
                #[serde(deny_unknown_fields)]
                #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
                pub(super) struct $kind { $($(#[$meta])+ pub(super) $field: $type),+ }
            )+
        }
    };
}

rule_kinds!(says);
