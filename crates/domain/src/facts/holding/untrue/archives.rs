use super::untrue;
use crate::basics::calendar::Day;
use crate::facts::holding::Tie;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;
use crate::journal::places::Places;

untrue! {
    /// What cannot be true of archives.
    Archives {
        /// Entries of this kind come about by the archive step alone.
        ByItsStepOnly = "by_archive_step_only" {
            /// The kind.
            kind: Kind,
        },
        /// An archive step would correct something.
        StepCorrects = "archive_step_corrects",
        /// An archive step would reach beyond its own day.
        ThroughAfterStep = "through_after_archive_step" {
            /// Through which day it would reach.
            through: Day,
            /// The day of the step.
            on: Day,
        },
        /// The number of entries is not that of the places.
        NumberDiffers = "number_of_places_differs" {
            /// How many entries are promised.
            entries: u64,
            /// How many places are named.
            places: u64,
        },
        /// Not all of the places are in the journal.
        PlacesNotThere = "places_not_there" {
            /// The places.
            places: Places,
        },
        /// The entry at a place tells of an archive, and stays.
        TellsOfArchive = "tells_of_archive" {
            /// The place.
            seq: u64,
        },
        /// The entry at a place was moved before.
        MovedBefore = "moved_before" {
            /// The place.
            seq: u64,
        },
        /// The entry at a place should be in an archive, but its body is still here.
        StillWhole = "still_whole" {
            /// The place.
            seq: u64,
        },
        /// What would go is tied to what stays.
        Tied = "tied" {
            /// By what.
            tie: Tie,
        },
        /// An entry without body corrects one that is not without body beside it.
        NotBesideIt = "not_beside_what_it_corrects" {
            /// What it corrects.
            of: EntryId,
        },
    }
}
