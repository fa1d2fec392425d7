use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::degrees::Celsius;

untrue! {
    /// What cannot be true of temperatures.
    Weather {
        /// No day is in the list, or too many are.
        NumberOfDays = "number_of_days" {
            /// How many are.
            days: usize,
            /// How many may be.
            most: usize,
        },
        /// A day is in the list twice.
        DayTwice = "day_twice" {
            /// The day.
            day: Day,
        },
        /// A day was measured that comes only later.
        NotYetMeasured = "day_not_yet_measured" {
            /// The day.
            day: Day,
            /// The day of the entry.
            on: Day,
        },
        /// No month is in the list.
        NoMonths = "no_months",
        /// The year has no month of this number.
        NoSuchMonth = "no_such_month" {
            /// The number.
            month: u8,
        },
        /// A month is in the list twice.
        MonthTwice = "month_twice" {
            /// Its number.
            month: u8,
        },
        /// The lowest temperature is above the highest.
        LowestAboveHighest = "lowest_above_highest" {
            /// The lowest.
            min: Celsius,
            /// The highest.
            max: Celsius,
        },
    }
}
