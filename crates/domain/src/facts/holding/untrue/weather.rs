use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::degrees::Celsius;

untrue! {
    /// Why temperatures are refused.
    Weather {
        /// The list is empty, or has too many days.
        NumberOfDays = "number_of_days" {
            /// The number of days.
            days: usize,
            /// The limit.
            most: usize,
        },
        /// A day is in the list twice.
        DayTwice = "day_twice" {
            /// The day.
            day: Day,
        },
        /// A measured day is in the future.
        NotYetMeasured = "day_not_yet_measured" {
            /// The day.
            day: Day,
            /// The day of the entry.
            on: Day,
        },
        /// No month is in the list.
        NoMonths = "no_months",
        /// There is no month with this number.
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
