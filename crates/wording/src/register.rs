//! The register with its notice; its rows are those of the journal.

use combclear_domain::questions::register::Register;
use serde::Serialize;

use crate::words::Words;

/// The register of a holding for a period.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RegisterReport<'r> {
    /// The register.
    #[serde(flatten)]
    pub register: &'r Register,
    /// The notice: the leaflet on the pack, the prescriber and local law decide.
    pub notice: String,
}

impl RegisterReport<'_> {
    /// Adds the notice.
    #[must_use]
    pub fn of<'r>(words: &Words, register: &'r Register) -> RegisterReport<'r> {
        RegisterReport { register, notice: crate::notice(words) }
    }
}
