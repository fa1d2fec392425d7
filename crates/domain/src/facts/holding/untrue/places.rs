use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::words::ApiaryName;

untrue! {
    /// Why an entry about apiaries, sites or flows is refused.
    Places {
        /// No apiary has this name.
        NoSuchApiary = "no_such_apiary" {
            /// The name.
            apiary: ApiaryName,
            /// An apiary with a similar name, if any.
            near: Option<ApiaryName>,
        },
        /// The apiary is already recorded.
        ApiaryIsRecorded = "apiary_is_recorded" {
            /// The apiary.
            apiary: ApiaryName,
        },
        /// The last day is before the first.
        DaysAreBackwards = "days_are_backwards" {
            /// The first day.
            from: Day,
            /// The last day.
            to: Day,
        },
        /// A seen flow begins after the day of the entry.
        FlowNotYetSeen = "flow_not_yet_seen" {
            /// The day it begins.
            from: Day,
            /// The day of the entry.
            on: Day,
        },
        /// A seen flow began on one day, and has no early or late years.
        SeenFlowHasOneDay = "seen_flow_has_one_day",
        /// The flow begins later in an early year than in a usual one.
        EarlyAfterUsual = "early_after_usual" {
            /// The first day in an early year.
            early: Day,
            /// The first day in a usual year.
            usual: Day,
        },
        /// The flow begins sooner in a late year than in a usual one.
        LateBeforeUsual = "late_before_usual" {
            /// The first day in a late year.
            late: Day,
            /// The first day in a usual year.
            usual: Day,
        },
        /// The flow begins after its end in a late year.
        LateAfterEnd = "late_after_end" {
            /// The first day in a late year.
            late: Day,
            /// The last day of the flow.
            to: Day,
        },
    }
}
