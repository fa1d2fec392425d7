use super::{Untrue, untrue};
use crate::basics::calendar::Day;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;

untrue! {
    /// What cannot be true of a correction or strike-out.
    Corrections {
        /// What it corrects is not in the journal.
        NoSuchEntry = "no_entry_to_correct" {
            /// What it would correct.
            of: EntryId,
        },
        /// Another entry corrected it before, or struck it out.
        CorrectedBefore = "corrected_before" {
            /// What it would correct.
            of: EntryId,
            /// The entry that did so.
            by: EntryId,
        },
        /// What it corrects moved others into an archive.
        OfArchiveStep = "correction_of_archive_step" {
            /// What it would correct.
            of: EntryId,
        },
        /// What it corrects was moved into an archive.
        OfMovedEntry = "correction_of_moved_entry" {
            /// What it would correct.
            of: EntryId,
        },
        /// What it corrects is a strike-out.
        OfStrikeOut = "correction_of_strike_out" {
            /// What it would correct.
            of: EntryId,
        },
        /// What it corrects is of another kind.
        OfOtherKind = "correction_of_other_kind" {
            /// What it would correct.
            of: EntryId,
            /// The kind of that entry.
            was: Kind,
            /// The kind of the correction.
            now: Kind,
        },
        /// With it, another entry could not be true.
        OfAnother = "another_becomes_untrue" {
            /// The kind of the other entry.
            kind: Kind,
            /// The day on which that happened.
            on: Day,
            /// Its id.
            entry: EntryId,
            /// What could not be true of it.
            why: Box<Untrue>,
        },
    }
}
