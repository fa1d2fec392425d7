//! Where an entry was copied from, if a paper register is taken over.

use serde::Serialize;

use super::entry::EntryFault;
use super::fault::Unreadable;
use crate::basics::calendar::Day;

/// The record on paper from which an entry was copied. It was made at the time; the entry was not.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CopiedFrom {
    /// What it was copied from, such as `red notebook 2025`. Never blank.
    pub what: String,
    /// The day on which it was written there.
    pub written_on: Day,
}

impl CopiedFrom {
    /// From the two fields of an entry, which come together or not at all.
    ///
    /// # Errors
    /// One of them without the other, or nothing but blanks.
    pub fn of(what: Option<String>, written_on: Option<Day>) -> Result<Option<CopiedFrom>, EntryFault> {
        match (what, written_on) {
            (None, None) => Ok(None),
            (Some(_), None) => Err(EntryFault::at("/written_on", Unreadable::NotSaidWhenWritten)),
            (Some(what), Some(written_on)) if !what.trim().is_empty() => {
                Ok(Some(CopiedFrom { what, written_on }))
            }
            (_, Some(_)) => Err(EntryFault::at("/copied_from", Unreadable::CopiedFromNothing)),
        }
    }

    /// The two fields of an entry, as [`CopiedFrom::of`] reads them.
    #[must_use]
    pub fn fields(copied: Option<&CopiedFrom>) -> (Option<String>, Option<Day>) {
        copied.map(|copied| (copied.what.clone(), copied.written_on)).unzip()
    }
}
