use super::untrue;

untrue! {
    /// What cannot be true of a document.
    Documents {
        /// It has no content.
        Empty = "document_is_empty",
        /// It is larger than what is kept.
        TooLarge = "document_too_large" {
            /// Its bytes.
            bytes: u32,
        },
        /// It belongs neither to a lot nor to a prescription.
        OfNothing = "document_of_nothing",
        /// It would belong to a lot and to a prescription.
        OfTwoThings = "document_of_two_things",
    }
}
