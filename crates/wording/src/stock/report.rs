//! The stock, as a report in words.

use combclear_domain::basics::calendar::POLICY;
use combclear_domain::basics::words::{ColonyName, HoldingName, LotName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Kind;
use combclear_domain::questions::NamedEntry;
use combclear_domain::questions::stock::{EXPIRING_WITHIN_DAYS, Lot, Need, Stock, ToDispose, Way};
use combclear_domain::{Day, Quantity};
use serde::Serialize;

use super::{in_brief, lot_in_words, note, sum, why_dispose, why_not_counted};
use crate::options::dose;
use crate::pieces;
use crate::words::Words;

/// The stock: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StockReport {
    /// The holding.
    pub holding: HoldingName,
    /// The day asked about.
    pub on: Day,
    /// A lot is called expiring this many days before its expiry.
    pub expiring_within_days: u16,
    /// The lots, in journal order.
    pub lots: Vec<LotReport>,
    /// The lots to dispose of, each with a prepared entry.
    pub dispose: Vec<DisposalReport>,
    /// The amount for one course of all colonies, medicine by medicine.
    pub needs: Vec<NeedReport>,
    /// Points to check again. None of them is a gap in the record.
    pub notes: Vec<String>,
    /// The entries named above, with their numbers in the journal.
    pub named_entries: Vec<NamedEntry>,
    /// The counting policy.
    pub policy: &'static str,
    /// The notice: the leaflet on the pack, the prescriber and local law decide.
    pub notice: String,
}

/// A lot on a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LotReport {
    /// The lot.
    #[serde(flatten)]
    pub lot: Lot,
    /// The balance in words.
    pub sum: String,
    /// The state in words.
    pub says: String,
}

/// A lot to dispose of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DisposalReport {
    /// The lot and the prepared entry.
    #[serde(flatten)]
    pub to_dispose: ToDispose,
    /// The reason, in a sentence.
    pub why: String,
}

/// A medicine, and whether the stock is enough for one course of all colonies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct NeedReport {
    /// The medicine and its stock.
    #[serde(flatten)]
    pub need: Need,
    /// Lots with stock that is not usable, with the reason.
    pub not_counted: Vec<NotCounted>,
    /// The amount for a course, for each method and label revision.
    pub ways: Vec<WayReport>,
}

/// A lot that is not counted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct NotCounted {
    /// The lot.
    pub lot: LotName,
    /// The reason.
    pub why: String,
}

/// The amount for one course of all colonies, by one method and label revision.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct WayReport {
    /// The method and the amount.
    #[serde(flatten)]
    pub way: Way,
    /// What must be known first, and for which colonies.
    pub not_known: Vec<NotKnown>,
}

/// A fact that must be known before the amount for some colonies is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct NotKnown {
    /// The missing fact.
    pub fact: String,
    /// The kind of entry that would supply it. Absent if no entry can.
    pub supplied_by: Option<&'static str>,
    /// How to supply it.
    pub how: String,
    /// The colonies.
    pub colonies: Vec<ColonyName>,
}

impl StockReport {
    /// Puts the answer into words. `of` must be the holding that was asked about.
    #[must_use]
    pub fn of(words: &Words, of: &Holding, stock: Stock) -> StockReport {
        let named_entries = NamedEntry::all(of, stock.lots.iter().flat_map(Lot::entries));
        let Stock { holding, on, lots, dispose, needs, notes } = stock;
        StockReport {
            named_entries,
            holding,
            on,
            expiring_within_days: EXPIRING_WITHIN_DAYS,
            lots: lots.into_iter().map(|lot| LotReport::of(words, lot, on)).collect(),
            dispose: dispose.into_iter().map(|lot| DisposalReport::of(words, lot)).collect(),
            needs: needs.into_iter().map(|need| NeedReport::of(words, need)).collect(),
            notes: notes.iter().map(|of| note(words, of)).collect(),
            policy: POLICY,
            notice: crate::notice(words),
        }
    }
}

impl LotReport {
    fn of(words: &Words, lot: Lot, on: Day) -> LotReport {
        LotReport { sum: sum(words, &lot), says: lot_in_words(words, &lot, on), lot }
    }

    /// The state in few words.
    #[must_use]
    pub fn in_brief(&self, words: &Words) -> String {
        in_brief(words, &self.lot)
    }

    /// An amount of this lot with its unit.
    #[must_use]
    pub fn amount(&self, words: &Words, amount: Quantity) -> String {
        pieces::amount(words, amount, self.lot.unit)
    }
}

impl DisposalReport {
    fn of(words: &Words, to_dispose: ToDispose) -> DisposalReport {
        DisposalReport { why: why_dispose(words, &to_dispose.why), to_dispose }
    }
}

impl NeedReport {
    fn of(words: &Words, need: Need) -> NeedReport {
        let not_counted = need.not_counted.iter().filter_map(|lot| {
            Some(NotCounted { lot: lot.lot.clone(), why: why_not_counted(words, lot.state)? })
        });
        NeedReport {
            not_counted: not_counted.collect(),
            ways: need.ways.iter().cloned().map(|way| WayReport::of(words, way)).collect(),
            need,
        }
    }
}

impl WayReport {
    fn of(words: &Words, way: Way) -> WayReport {
        let not_known = way.not_known.iter().map(|(missing, colonies)| NotKnown {
            fact: dose::fact(words, missing),
            supplied_by: missing.supplied_by().map(Kind::as_str),
            how: dose::how(words, missing),
            colonies: colonies.clone(),
        });
        WayReport { not_known: not_known.collect(), way }
    }
}
