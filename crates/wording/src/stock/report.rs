//! The stock, as a report in words.

use combclear_domain::basics::calendar::POLICY;
use combclear_domain::basics::words::{
    ColonyName, HoldingName, LeafletId, LotName, MedicineName, Method, Unit,
};
use combclear_domain::journal::{EntryId, Kind};
use combclear_domain::questions::stock::{
    DisposalRule, EXPIRING_WITHIN_DAYS, LifeInUse, Lot, LotState, Need, Opened, PreparedDisposal, Stock,
    ToDispose, Way,
};
use combclear_domain::{Day, Quantity};
use serde::Serialize;

use super::{lot_in_words, note, sum, why_dispose, why_not_counted};
use crate::options::dose;
use crate::pieces;
use crate::words::Words;

/// What is in stock: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StockReport {
    /// The holding.
    pub holding: HoldingName,
    /// The day asked about.
    pub on: Day,
    /// How many days before its expiry a lot is called expiring.
    pub expiring_within_days: u16,
    /// The lots, in the order of the journal.
    pub lots: Vec<LotReport>,
    /// What is to be disposed of, each with the entry prepared.
    pub dispose: Vec<DisposalReport>,
    /// What one course of all colonies would take, medicine by medicine.
    pub needs: Vec<NeedReport>,
    /// What a reader should look at again. None of it is a gap in the record.
    pub notes: Vec<String>,
    /// The counting policy.
    pub policy: &'static str,
    /// What this answer is not.
    pub notice: String,
}

/// A lot on a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LotReport {
    /// Its name.
    pub lot: LotName,
    /// The entry that recorded the acquisition.
    pub entry: EntryId,
    /// The medicine.
    pub medicine: MedicineName,
    /// The name on the pack.
    pub pack_name: String,
    /// The batch number as printed.
    pub batch: Option<String>,
    /// The expiry date as printed.
    pub expiry: Option<Day>,
    /// The day on which it was acquired.
    pub acquired_on: Day,
    /// What it is counted in.
    pub unit: Option<Unit>,
    /// How much was acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 20))]
    pub acquired: Quantity,
    /// How much was given.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 12))]
    pub given: Quantity,
    /// How much was disposed of without being given.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 0))]
    pub disposed: Quantity,
    /// What is left; absent when more is gone than was acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, example = 8))]
    pub left: Option<Quantity>,
    /// By how much more is gone than was acquired; absent when the sum comes out.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub over: Option<Quantity>,
    /// The sum in words.
    pub sum: String,
    /// The entries that say that the count was corrected.
    pub count_corrected: Vec<EntryId>,
    /// The entries that took more than was left.
    pub over_by: Vec<EntryId>,
    /// When it was opened.
    pub opened: Option<Opened>,
    /// How long it may be used once opened; absent where no leaflet is known or it does not say.
    pub in_use: Option<LifeInUse>,
    /// How it stands.
    pub state: LotState,
    /// The same in words.
    pub says: String,
}

/// A lot that is to be disposed of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DisposalReport {
    /// The lot.
    pub lot: LotName,
    /// Why, in a sentence.
    pub why: String,
    /// What the leaflet says of disposing of it, each with its sources; empty where it says nothing.
    pub leaflet_says: Vec<DisposalRule>,
    /// The entry, but for how and where, which the keeper writes. It is not recorded.
    pub prepared: PreparedDisposal,
}

/// A medicine, and whether it suffices for one course of all colonies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct NeedReport {
    /// The medicine.
    pub medicine: MedicineName,
    /// The name on the pack.
    pub pack_name: String,
    /// The leaflet that states the dose.
    pub leaflet: LeafletId,
    /// What it is counted in.
    pub unit: Unit,
    /// How many colonies live on the day.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 9_007_199_254_740_991i64))]
    pub colonies: usize,
    /// What is left and may still be used.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 8))]
    pub usable: Quantity,
    /// The lots of that.
    pub lots: Vec<LotName>,
    /// Lots with something left that is not counted, and why.
    pub not_counted: Vec<NotCounted>,
    /// What a course takes, for each way of giving it.
    pub ways: Vec<WayReport>,
}

/// A lot that is not counted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct NotCounted {
    /// The lot.
    pub lot: LotName,
    /// Why.
    pub why: String,
}

/// What one course of all colonies takes by one way of giving it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct WayReport {
    /// The method, where there are several.
    pub method: Option<Method>,
    /// The revision of the label, where they differ.
    pub revision: Option<String>,
    /// How many doses make the course, at least; absent where nobody has stated it.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 255))]
    pub doses: Option<u8>,
    /// What it takes in all; where the leaflet gives a range, the most. Absent where it is not known for every colony.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, example = 74))]
    pub takes: Option<Quantity>,
    /// What it takes for the colonies whose dose is known; for one dose, where nobody has stated how many there are.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 20))]
    pub takes_at_least: Quantity,
    /// How many those are.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 9_007_199_254_740_991i64))]
    pub counted: usize,
    /// What must be known first, and of which colonies.
    pub not_known: Vec<NotKnown>,
    /// How much is short, 0 if nothing; absent where it is not known for every colony.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, example = 66))]
    pub short: Option<Quantity>,
    /// How much is short for the colonies whose dose is known.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 12))]
    pub short_at_least: Quantity,
}

/// Something that must be known before what some colonies take is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct NotKnown {
    /// What is not known.
    pub fact: String,
    /// The kind of entry that would supply it; absent where no entry can.
    pub supplied_by: Option<&'static str>,
    /// How to supply it.
    pub how: String,
    /// Of which colonies.
    pub colonies: Vec<ColonyName>,
}

impl StockReport {
    /// Puts the answer into words.
    #[must_use]
    pub fn of(words: &Words, stock: &Stock) -> StockReport {
        StockReport {
            holding: stock.holding.clone(),
            on: stock.on,
            expiring_within_days: EXPIRING_WITHIN_DAYS,
            lots: stock.lots.iter().map(|lot| LotReport::of(words, lot, stock.on)).collect(),
            dispose: stock.dispose.iter().map(|lot| DisposalReport::of(words, lot)).collect(),
            needs: stock.needs.iter().map(|need| NeedReport::of(words, need)).collect(),
            notes: stock.notes.iter().map(|of| note(words, of)).collect(),
            policy: POLICY,
            notice: crate::notice(words),
        }
    }
}

impl LotReport {
    /// Puts one lot into words, as of a day.
    #[must_use]
    pub fn of(words: &Words, lot: &Lot, on: Day) -> LotReport {
        LotReport {
            lot: lot.lot.clone(),
            entry: lot.entry,
            medicine: lot.medicine.clone(),
            pack_name: lot.pack_name.clone(),
            batch: lot.batch.clone(),
            expiry: lot.expiry,
            acquired_on: lot.acquired_on,
            unit: lot.unit,
            acquired: lot.acquired,
            given: lot.given,
            disposed: lot.disposed,
            left: lot.left,
            over: lot.over,
            sum: sum(words, lot),
            count_corrected: lot.count_corrected.clone(),
            over_by: lot.over_by.clone(),
            opened: lot.opened,
            in_use: lot.in_use.clone(),
            state: lot.state,
            says: lot_in_words(words, lot, on),
        }
    }

    /// An amount of this lot with its unit.
    #[must_use]
    pub fn amount(&self, words: &Words, amount: Quantity) -> String {
        pieces::amount(words, amount, self.unit)
    }
}

impl DisposalReport {
    fn of(words: &Words, lot: &ToDispose) -> DisposalReport {
        DisposalReport {
            lot: lot.lot.clone(),
            why: why_dispose(words, &lot.why),
            leaflet_says: lot.leaflet_says.clone(),
            prepared: lot.prepared.clone(),
        }
    }
}

impl NeedReport {
    fn of(words: &Words, need: &Need) -> NeedReport {
        let not_counted = need.not_counted.iter().filter_map(|lot| {
            Some(NotCounted { lot: lot.lot.clone(), why: why_not_counted(words, lot.state)? })
        });
        NeedReport {
            medicine: need.medicine.clone(),
            pack_name: need.pack_name.clone(),
            leaflet: need.leaflet.clone(),
            unit: need.unit,
            colonies: need.colonies,
            usable: need.usable,
            lots: need.lots.clone(),
            not_counted: not_counted.collect(),
            ways: need.ways.iter().map(|way| WayReport::of(words, way)).collect(),
        }
    }
}

impl WayReport {
    fn of(words: &Words, way: &Way) -> WayReport {
        let not_known = way.not_known.iter().map(|(missing, colonies)| NotKnown {
            fact: dose::fact(words, missing),
            supplied_by: missing.supplied_by().map(Kind::as_str),
            how: dose::how(words, missing),
            colonies: colonies.clone(),
        });
        WayReport {
            method: way.method.clone(),
            revision: way.revision.clone(),
            doses: way.doses,
            takes: way.takes,
            takes_at_least: way.takes_at_least,
            counted: way.counted,
            not_known: not_known.collect(),
            short: way.short,
            short_at_least: way.short_at_least,
        }
    }
}
