//! The answer to a yes-or-no question when not everything is known.

/// The answer to a yes-or-no question when not everything is known.
// Neither `Default` nor an order: there is no answer before it is worked out, and none is less than another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, serde::Serialize)]
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
    /// Both must be yes.
    #[must_use]
    pub const fn and(self, other: Verdict) -> Verdict {
        match (self, other) {
            // One no is enough, whatever is missing about the other.
            (Verdict::No, Verdict::Yes | Verdict::Unknown | Verdict::No)
            | (Verdict::Yes | Verdict::Unknown, Verdict::No) => Verdict::No,
            // What is missing may still turn out to be a no.
            (Verdict::Unknown, Verdict::Yes | Verdict::Unknown) | (Verdict::Yes, Verdict::Unknown) => {
                Verdict::Unknown
            }
            (Verdict::Yes, Verdict::Yes) => Verdict::Yes,
        }
    }

    /// What several possibilities have in common: unknown unless all agree.
    #[must_use]
    pub(crate) const fn agreed(self, other: Verdict) -> Verdict {
        match (self, other) {
            (Verdict::Yes, Verdict::Yes) => Verdict::Yes,
            (Verdict::No, Verdict::No) => Verdict::No,
            // One of two possibilities holds, and nobody knows which.
            (Verdict::Yes, Verdict::No | Verdict::Unknown)
            | (Verdict::No, Verdict::Yes | Verdict::Unknown)
            | (Verdict::Unknown, Verdict::Yes | Verdict::No | Verdict::Unknown) => Verdict::Unknown,
        }
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
