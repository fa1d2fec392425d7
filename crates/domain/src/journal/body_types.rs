//! Parts of bodies.

use serde::{Deserialize, Serialize};

use super::form::parts;
use crate::basics::calendar::Day;
use crate::basics::degrees::Celsius;
use crate::basics::quantity::Quantity;
use crate::basics::words::{ColonyName, LotName, NoWithdrawal, Permission, RemovalNeed, SupersDuring, Unit};

parts! {
    /// The lowest and the highest outside temperature of a day.
    #[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
    pub struct DayTemperature {
        /// The day.
        pub day: Day,
        /// The lowest, in °C.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = -60, maximum = 50))]
        pub min_c: Celsius,
        /// The highest, in °C.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = -60, maximum = 50))]
        pub max_c: Celsius,
    }

    /// A month in usual years: the means of the daily lowest and highest temperatures.
    #[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
    pub struct MonthNormal {
        /// The month, 1 to 12.
        #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 12))]
        pub month: u8,
        /// The mean daily lowest, in °C.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = -60, maximum = 50))]
        pub min_c: Celsius,
        /// The mean daily highest, in °C.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = -60, maximum = 50))]
        pub max_c: Celsius,
    }

    /// Who supplied a lot.
    #[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
    pub struct Supplier {
        /// Name.
        pub name: String,
        /// Address.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub address: Option<String>,
    }

    /// What was given from one lot.
    #[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
    pub struct Given {
        /// The lot.
        pub lot: LotName [InStock],
        /// Amount for each colony, in the unit of the medicine.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 2))]
        pub each: Quantity,
        /// The unit of the amount. If stated, it must be the unit of the medicine.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub unit: Option<Unit>,
        /// The colonies treated.
        #[cfg_attr(feature = "openapi", schema(min_items = 1))]
        pub colonies: Vec<ColonyName>,
    }

    /// Terms as stated by a person: a keeper who read a leaflet, or a vet who prescribed. Absent means not stated.
    #[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
    pub struct StatedTerms {
        /// Whether honey supers may be on while it is in the hive.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub supers_during: Option<SupersDuring>,
        /// Whether it may be used during a nectar flow.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub flow_during: Option<Permission>,
        /// Withdrawal period for honey, in days, 0 included.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 400))]
        pub withdrawal_days: Option<u16>,
        /// States that the label has no withdrawal period, as in the United States. Not together with `withdrawal_days`.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub withdrawal: Option<NoWithdrawal>,
        /// Days before a nectar flow on which it must not be used; 0 if the label does not bar use before a flow.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 400))]
        pub flow_before_days: Option<u16>,
        /// Days between removal and supers, 0 included.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 400))]
        pub wait_after_removal_days: Option<u16>,
        /// Whether it must be taken out.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub removal: Option<RemovalNeed>,
        /// Least stay in days; also with brood, unless the next field says otherwise.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 400))]
        pub stay_min_days: Option<u16>,
        /// Least stay in days with brood.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 400))]
        pub stay_min_days_with_brood: Option<u16>,
        /// Longest stay in days.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 400))]
        pub stay_max_days: Option<u16>,
        /// Doses in a course.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(maximum = 255))]
        pub doses: Option<u8>,
    }
}

impl Given {
    /// The total taken from the lot; saturates.
    #[must_use]
    pub fn total(&self) -> Quantity {
        self.each.times(u64::try_from(self.colonies.len()).unwrap_or(u64::MAX))
    }
}
