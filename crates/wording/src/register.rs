//! The register in words: the rows of the journal as they are, with the notice.

use combclear_domain::questions::register::Register;
use serde::Serialize;

use crate::words::Words;

/// The register of a holding for a time.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RegisterReport<'r> {
    /// The register.
    #[serde(flatten)]
    pub register: &'r Register,
    /// The limits of this answer.
    pub notice: String,
}

impl RegisterReport<'_> {
    /// Adds the notice.
    #[must_use]
    pub fn of<'r>(words: &Words, register: &'r Register) -> RegisterReport<'r> {
        RegisterReport { register, notice: crate::notice(words) }
    }
}
