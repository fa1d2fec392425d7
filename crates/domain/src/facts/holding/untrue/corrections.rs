use super::{Untrue, untrue};
use crate::basics::calendar::Day;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;

untrue! {
    /// Why a correction or strike-out is refused.
    Corrections {
        /// The entry to correct is not in the journal.
        NoSuchEntry = "no_entry_to_correct" {
            /// The entry to correct.
            of: EntryId,
        },
        /// Another entry has already corrected it or struck it out.
        CorrectedBefore = "corrected_before" {
            /// The entry to correct.
            of: EntryId,
            /// The entry that did so.
            by: EntryId,
        },
        /// The entry to correct is an archive step.
        OfArchiveStep = "correction_of_archive_step" {
            /// The entry to correct.
            of: EntryId,
        },
        /// The entry to correct was moved into an archive.
        OfMovedEntry = "correction_of_moved_entry" {
            /// The entry to correct.
            of: EntryId,
        },
        /// The entry to correct is a strike-out.
        OfStrikeOut = "correction_of_strike_out" {
            /// The entry to correct.
            of: EntryId,
        },
        /// The entry to correct is of another kind.
        OfOtherKind = "correction_of_other_kind" {
            /// The entry to correct.
            of: EntryId,
            /// The kind of that entry.
            was: Kind,
            /// The kind of the correction.
            now: Kind,
        },
        /// The correction makes another entry impossible.
        OfAnother = "another_becomes_untrue" {
            /// The kind of that entry.
            kind: Kind,
            /// The day of that entry.
            on: Day,
            /// The id of that entry.
            entry: EntryId,
            /// Why it is impossible.
            why: Box<Untrue>,
        },
    }
}
