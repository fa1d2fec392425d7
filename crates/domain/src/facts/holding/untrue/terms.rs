use super::untrue;
use crate::basics::topic::Topic;

untrue! {
    /// Why stated terms of a leaflet, label or prescription are refused.
    Terms {
        /// More days than any leaflet states; perhaps hours were meant.
        TooManyDays = "too_many_days" {
            /// The number of days.
            days: u16,
            /// The limit.
            most: u16,
        },
        /// The label is said to have no withdrawal period, but one is stated in days.
        WithdrawalTwice = "withdrawal_stated_twice",
        /// A stay of 0 days is not a stay.
        StayOfNoDays = "stay_of_no_days",
        /// Nothing stays in the hive, but a least stay is stated.
        NothingStaysYetStays = "nothing_stays_yet_stays" {
            /// The least stay, in days.
            least: u16,
        },
        /// The longest stay is shorter than the least.
        LeastAboveMost = "least_stay_above_longest" {
            /// The least stay, in days.
            least: u16,
            /// The longest stay, in days.
            most: u16,
        },
        /// A confirmation without words.
        NothingIsConfirmed = "nothing_is_confirmed",
        /// A value that decides about supers must be stated, not confirmed.
        StatedNotConfirmed = "stated_not_confirmed" {
            /// The topic of the confirmation.
            topic: Topic,
        },
    }
}
