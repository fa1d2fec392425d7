//! Leaflets: texts around their rules.

use combclear_domain::basics::words::{HoldingName, Jurisdiction};

super::sentences! {
    /// That only the leaflets of the holding's jurisdiction are shown.
    TerminalLeafletsElsewhere: elsewhere(jurisdiction: &Jurisdiction, holding: &HoldingName);
}
