//! The answer to a yes-or-no question when not everything is known.

/// The answer to a yes-or-no question when not everything is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum Verdict {
    /// Yes, on documented facts.
    Yes,
    /// Not known.
    Unknown,
    /// No.
    No,
}

impl Verdict {
    /// Both must be yes: a no outweighs all, an unknown outweighs a yes.
    #[must_use]
    pub fn and(self, other: Verdict) -> Verdict {
        self.max(other)
    }

    /// What several possibilities have in common: nothing is known unless all agree.
    #[must_use]
    pub fn agreed(self, other: Verdict) -> Verdict {
        if self == other { self } else { Verdict::Unknown }
    }

    /// The word for it.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Verdict::Yes => "yes",
            Verdict::Unknown => "unknown",
            Verdict::No => "no",
        }
    }
}
