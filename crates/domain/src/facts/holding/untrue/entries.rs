use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::words::Jurisdiction;
use crate::journal::entry::EntryId;

untrue! {
    /// Why an entry is refused by itself.
    Entries {
        /// Another entry has its id.
        IdIsTaken = "id_is_taken" {
            /// The id.
            id: EntryId,
        },
        /// It is dated after the day it was recorded, in every time zone.
        InTheFuture = "in_the_future" {
            /// The day of the event.
            on: Day,
            /// The latest possible day of recording.
            today: Day,
        },
        /// It was written on paper before the day it happened.
        WrittenBefore = "written_before" {
            /// The day on which it was written there.
            written_on: Day,
            /// The day of the event.
            on: Day,
        },
        /// It was written on paper after the day it was recorded here.
        WrittenLater = "written_later" {
            /// The day on which it was written there.
            written_on: Day,
            /// The latest possible day of recording.
            today: Day,
        },
        /// A new name has a sign that cannot be seen.
        NameHasInvisibleSign = "name_has_invisible_sign" {
            /// The name.
            name: String,
            /// The sign, by its code point.
            sign: String,
        },
        /// A new name looks like another, and is not the same.
        NameLooksLikeAnother = "name_looks_like_another" {
            /// The name.
            name: String,
            /// The other.
            other: String,
        },
        /// The program has no leaflets and no law for this jurisdiction.
        JurisdictionIsUnknown = "jurisdiction_is_unknown" {
            /// The code as written.
            jurisdiction: Jurisdiction,
            /// The code that was probably meant, if any.
            meant: Option<&'static str>,
        },
    }
}
