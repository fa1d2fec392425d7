//! The kinds of item, and how much an item weighs.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::basics::words::word_lists;

word_lists! {
    /// What is to be done.
    DueKind {
        /// Honey supers are on while they must be off.
        TakeSupersOff = "take_supers_off",
        /// Nobody recorded where strips went when a colony was split or united, or what became of them when it ended.
        RecordWhereabouts = "record_whereabouts",
        /// The next dose of a course.
        GiveDose = "give_dose",
        /// What was placed comes out.
        TakeOut = "take_out",
        /// What was placed is used up; nothing has to be taken out.
        UsedUp = "used_up",
        /// The first free day for supers.
        SupersFree = "supers_free",
        /// Mites are counted after a course.
        CountMites = "count_mites",
        /// Something is not recorded without which the supering question has no answer.
        RecordMissing = "record_missing",
        /// The last day on which what was opened of a lot may be used.
        LotLastDay = "lot_last_day",
        /// The last day before a lot expires.
        LotExpires = "lot_expires",
        /// A lot that may not be used any more.
        DisposeOfLot = "dispose_of_lot",
        /// Something that the law requires and the record lacks.
        LegalGap = "legal_gap",
    }

    /// How much an item weighs.
    Weight {
        /// It must be done.
        Must = "must",
        /// It is advice.
        Advice = "advice",
        /// It may be done from then on, or is good to know; nothing has to be done.
        May = "may",
    }
}
