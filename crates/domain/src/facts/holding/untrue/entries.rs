use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::words::Jurisdiction;
use crate::journal::entry::EntryId;

untrue! {
    /// What cannot be true of an entry by itself.
    Entries {
        /// Another entry has its id.
        IdIsTaken = "id_is_taken" {
            /// The id.
            id: EntryId,
        },
        /// It would have happened after it was recorded, wherever on earth that was.
        InTheFuture = "in_the_future" {
            /// The day on which it would have happened.
            on: Day,
            /// The latest day on which it was recorded.
            today: Day,
        },
        /// There are no leaflets and no law for this jurisdiction.
        JurisdictionIsUnknown = "jurisdiction_is_unknown" {
            /// As it was written.
            jurisdiction: Jurisdiction,
            /// The code that is meant, if that can be told.
            meant: Option<&'static str>,
        },
    }
}
