use super::untrue;
use crate::basics::calendar::Day;
use crate::facts::holding::Tie;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;
use crate::journal::places::Places;

untrue! {
    /// Why an archive entry is refused.
    Archives {
        /// Only the archive step itself makes entries of this kind.
        ByItsStepOnly = "by_archive_step_only" {
            /// The kind.
            kind: Kind,
        },
        /// An archive step cannot be a correction.
        StepCorrects = "archive_step_corrects",
        /// The archive step reaches beyond its own day.
        ThroughAfterStep = "through_after_archive_step" {
            /// The last day that it covers.
            through: Day,
            /// The day of the step.
            on: Day,
        },
        /// The number of entries differs from the number of positions.
        NumberDiffers = "number_of_places_differs" {
            /// The stated number of entries.
            entries: u64,
            /// The number of positions.
            places: u64,
        },
        /// Some positions are not in the journal.
        PlacesNotThere = "places_not_there" {
            /// The positions.
            places: Places,
        },
        /// The entry at a position records an archive, and must be retained.
        TellsOfArchive = "tells_of_archive" {
            /// The position.
            seq: u64,
        },
        /// The entry at a position was moved before.
        MovedBefore = "moved_before" {
            /// The position.
            seq: u64,
        },
        /// The entry at a position should be in an archive, but its body is still in the journal.
        StillWhole = "still_whole" {
            /// The position.
            seq: u64,
        },
        /// An entry to archive is tied to a retained one.
        Tied = "tied" {
            /// The tie.
            tie: Tie,
        },
        /// An entry without a body corrects one that was not archived with it.
        NotBesideIt = "not_beside_what_it_corrects" {
            /// The entry that it corrects.
            of: EntryId,
        },
    }
}
