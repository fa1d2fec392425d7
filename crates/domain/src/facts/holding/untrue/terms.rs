use super::untrue;
use crate::basics::topic::Topic;

untrue! {
    /// What cannot be true of the terms that a leaflet, a label or a prescription states.
    Terms {
        /// More days than any leaflet states: hours, perhaps.
        TooManyDays = "too_many_days" {
            /// The days.
            days: u16,
            /// The most that may be stated.
            most: u16,
        },
        /// The label knows no withdrawal period, yet states one in days.
        WithdrawalTwice = "withdrawal_stated_twice",
        /// A stay of 0 days, which is none.
        StayOfNoDays = "stay_of_no_days",
        /// Nothing stays in the hive, yet a least stay is stated.
        NothingStaysYetStays = "nothing_stays_yet_stays" {
            /// The least stay in days.
            least: u16,
        },
        /// The longest stay is shorter than the least.
        LeastAboveMost = "least_stay_above_longest" {
            /// The least stay in days.
            least: u16,
            /// The longest stay in days.
            most: u16,
        },
        /// A confirmation without words.
        NothingIsConfirmed = "nothing_is_confirmed",
        /// What the supers turn on is stated, not confirmed.
        StatedNotConfirmed = "stated_not_confirmed" {
            /// What would be confirmed.
            topic: Topic,
        },
    }
}
