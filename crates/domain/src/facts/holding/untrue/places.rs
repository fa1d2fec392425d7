use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::words::ApiaryName;

untrue! {
    /// What cannot be true of apiaries, their sites and the flows there.
    Places {
        /// No apiary has this name.
        NoSuchApiary = "no_such_apiary" {
            /// The name.
            apiary: ApiaryName,
            /// An apiary whose name is written much like it.
            near: Option<ApiaryName>,
        },
        /// The apiary is recorded already.
        ApiaryIsRecorded = "apiary_is_recorded" {
            /// The apiary.
            apiary: ApiaryName,
        },
        /// The last day lies before the first.
        DaysAreBackwards = "days_are_backwards" {
            /// The first day.
            from: Day,
            /// The last day.
            to: Day,
        },
        /// A flow was seen that begins only later.
        FlowNotYetSeen = "flow_not_yet_seen" {
            /// The day on which it would begin.
            from: Day,
            /// The day of the entry.
            on: Day,
        },
        /// A flow that was seen began on one day, and has no early or late years.
        SeenFlowHasOneDay = "seen_flow_has_one_day",
        /// In an early year the flow would begin later than in a usual one.
        EarlyAfterUsual = "early_after_usual" {
            /// When it would begin in an early year.
            early: Day,
            /// When it begins in a usual year.
            usual: Day,
        },
        /// In a late year the flow would begin sooner than in a usual one.
        LateBeforeUsual = "late_before_usual" {
            /// When it would begin in a late year.
            late: Day,
            /// When it begins in a usual year.
            usual: Day,
        },
        /// In a late year the flow would begin after its end.
        LateAfterEnd = "late_after_end" {
            /// When it would begin in a late year.
            late: Day,
            /// The last day of the flow.
            to: Day,
        },
    }
}
