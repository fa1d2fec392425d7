//! What due says of a lot, until its own words are made at the edge with those of the stock.

use crate::basics::quantity::Quantity;
use crate::questions::options::amount_of;
use crate::questions::stock::{Lot, OpenedBy, WhyDispose};

/// An amount of a lot with its unit.
pub(super) fn amount(lot: &Lot, amount: Quantity) -> String {
    lot.unit.map_or_else(|| amount.to_string(), |unit| amount_of(amount, unit.as_str()))
}

/// Why a lot is to be disposed of; none if it is not.
pub(super) fn why_dispose(lot: &Lot) -> Option<String> {
    Some(match WhyDispose::of(lot)? {
        WhyDispose::Expired { expiry } => format!("it expired on {expiry}"),
        WhyDispose::PastLifeInUse { opened, until, documented, says } => {
            let open = match opened.told_by {
                OpenedBy::LotOpened => format!("it was opened on {}", opened.on),
                OpenedBy::FirstAdministration => {
                    format!("it was first given on {}, so it was open", opened.on)
                }
            };
            let doubt = if documented { "" } else { "; not documented, check the pack" };
            let says = says.trim_end_matches('.');
            format!(
                "{open}; what was opened was to be used by {until} (\"{says}\"{doubt}). Packs still sealed are not meant: \
                 write the amount that was opened"
            )
        }
    })
}
