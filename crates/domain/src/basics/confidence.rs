//! How well a value is established.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::words::word_lists;

word_lists! {
    /// How well a value is established. Only a `document` can carry a yes.
    Confidence {
        /// Read in the authority's document for this jurisdiction, or a faithful copy of it.
        Document = "document",
        /// Read in another text that reports it, or in another country's document.
        SecondHand = "second_hand",
        /// From memory or inferred.
        Unconfirmed = "unconfirmed",
    }
}
