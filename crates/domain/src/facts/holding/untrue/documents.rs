use super::untrue;
use crate::basics::calendar::Day;

untrue! {
    /// Why a document is refused.
    Documents {
        /// It has no content.
        Empty = "document_is_empty",
        /// It is larger than the limit.
        TooLarge = "document_too_large" {
            /// Its size, in bytes.
            bytes: u32,
        },
        /// It is attached for a day before its lot was acquired, or its prescription written.
        BeforeItsSubject = "document_before_its_subject" {
            /// The first day for which it can be attached.
            from: Day,
        },
        /// It belongs neither to a lot nor to a prescription.
        OfNothing = "document_of_nothing",
        /// It belongs to both a lot and a prescription.
        OfTwoThings = "document_of_two_things",
    }
}
