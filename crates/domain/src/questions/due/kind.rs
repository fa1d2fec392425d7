//! The kinds of item, and how important an item is.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::basics::words::word_lists;

word_lists! {
    /// The kind of task.
    DueKind {
        /// Take off harvest supers that are on while they must be off.
        TakeSupersOff = "take_supers_off",
        /// Record where the strips went when a colony was split or united, or what became of them when it ended.
        RecordWhereabouts = "record_whereabouts",
        /// Give the next dose of a course.
        GiveDose = "give_dose",
        /// Take a course out.
        TakeOut = "take_out",
        /// A course is used up; nothing needs to be taken out.
        UsedUp = "used_up",
        /// The first free day for supers.
        SupersFree = "supers_free",
        /// Count mites after a course.
        CountMites = "count_mites",
        /// Record a missing fact that the supering question needs.
        RecordMissing = "record_missing",
        /// Last day to use an opened lot.
        LotLastDay = "lot_last_day",
        /// Last day before a lot expires.
        LotExpires = "lot_expires",
        /// Dispose of a lot that may no longer be used.
        DisposeOfLot = "dispose_of_lot",
        /// Record something that the law requires.
        LegalGap = "legal_gap",
    }

    /// How important an item is.
    Weight {
        /// It must be done.
        Must = "must",
        /// It is advice.
        Advice = "advice",
        /// It is optional from then on, or good to know; nothing has to be done.
        May = "may",
    }
}
