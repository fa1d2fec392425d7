//! One lot: its balance, its state, its in-use life.

use serde::Serialize;

use super::EXPIRING_WITHIN_DAYS;
use super::life::{LifeInUse, Opened, leaflet_of};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::quantity::Quantity;
use crate::basics::words::{LotName, MedicineName, Unit};
use crate::facts::holding::Holding;
use crate::facts::{Balance, Left, Overdrawn, corrects_count};
use crate::journal::entry::EntryId;
use crate::rules::leaflet::Leaflets;

/// A lot on a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Lot {
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
    /// The day it was acquired.
    pub acquired_on: Day,
    /// The unit of the quantities.
    pub unit: Option<Unit>,
    /// The quantity acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 20))]
    pub acquired: Quantity,
    /// The quantity given.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 12))]
    pub given: Quantity,
    /// The quantity disposed of without being given.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 0))]
    pub disposed: Quantity,
    /// The quantity left. Absent if more is gone than was acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, example = 8))]
    left: Option<Quantity>,
    /// The quantity gone beyond what was acquired. Absent if the lot balances.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    over: Option<Quantity>,
    /// The entries that corrected the balance after a count.
    pub count_corrected: Vec<EntryId>,
    /// The entries that took more than was left.
    pub over_by: Vec<EntryId>,
    /// When it was opened.
    pub opened: Option<Opened>,
    /// How long it may be used after opening. Absent if no leaflet is known or it does not say.
    pub in_use: Option<LifeInUse>,
    /// Its state.
    pub state: LotState,
}

/// The state of a lot on a day. If several apply, the most serious one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum LotState {
    /// More is gone than was acquired.
    Overdrawn,
    /// Nothing is left.
    Empty,
    /// It has expired, and some of it is left.
    Expired,
    /// It was opened, and its in-use life is over.
    PastLifeInUse,
    /// It expires soon.
    Expiring,
    /// It is opened.
    InUse,
    /// No entry shows that it was opened.
    Sealed,
}

impl LotState {
    /// Whether the rest of it may still be given.
    #[must_use]
    pub(crate) const fn is_usable(self) -> bool {
        matches!(self, LotState::Expiring | LotState::InUse | LotState::Sealed)
    }
}

impl Lot {
    /// A lot at the end of a day. `None` if it had not been acquired yet, or is a vet's.
    pub(super) fn of(holding: &Holding, leaflets: &Leaflets, lot: &LotName, on: Day) -> Option<Lot> {
        let (record, of) = holding.lot(lot).filter(|(record, _)| record.on <= on)?;
        let body = of.acquired()?;
        let medicine = holding.medicine(&body.medicine).map(|(_, medicine)| medicine);
        let moved: Vec<_> = holding.balances(lot, on).collect();
        let balance = moved.last().map(|(_, balance)| *balance).unwrap_or_default();
        let corrected = moved.iter().filter(|(record, _)| corrects_count(&record.event));
        let over = moved.iter().filter(|(_, balance)| balance.gone() > body.quantity);
        let opened = Opened::of(holding, lot, on);
        let day = opened.map_or(on, |opened| opened.on);
        let in_use = leaflet_of(holding, leaflets, &body.medicine, day)
            .and_then(|leaflet| LifeInUse::of(holding, leaflet, lot, opened.as_ref(), on));
        let mut found = Lot {
            lot: lot.clone(),
            entry: record.id,
            medicine: body.medicine.clone(),
            pack_name: medicine
                .map_or_else(|| body.medicine.to_string(), |medicine| medicine.pack_name.clone()),
            batch: body.batch.clone(),
            expiry: body.expiry,
            acquired_on: record.on,
            unit: medicine.map(|medicine| medicine.unit),
            acquired: balance.acquired,
            given: balance.given,
            disposed: balance.disposed,
            left: balance.left().known().copied(),
            over: balance.left().missing().map(|overdrawn| overdrawn.by),
            count_corrected: corrected.map(|(record, _)| record.id).collect(),
            over_by: over.map(|(record, _)| record.id).collect(),
            opened,
            in_use,
            state: LotState::Sealed,
        };
        found.state = found.state_on(on);
        Some(found)
    }

    /// Every entry that it names.
    pub fn entries(&self) -> impl Iterator<Item = EntryId> {
        let balance = self.count_corrected.iter().chain(&self.over_by).copied();
        let opened = self.opened.iter().map(|opened| opened.entry);
        let confirmed = self.in_use.iter().filter_map(|life| life.confirmed_by);
        std::iter::once(self.entry).chain(balance).chain(opened).chain(confirmed)
    }

    fn state_on(&self, on: Day) -> LotState {
        let past = |day: Option<Day>| day.is_some_and(|last| last < on);
        let expires_soon = self.expiry.is_some_and(|expiry| expiry <= on.plus(EXPIRING_WITHIN_DAYS));
        match self.left() {
            Fact::NotKnown(Overdrawn { .. }) => LotState::Overdrawn,
            Fact::Known(left) if left.is_zero() => LotState::Empty,
            Fact::Known(_) if past(self.expiry) => LotState::Expired,
            Fact::Known(_) if past(self.usable_until()) => LotState::PastLifeInUse,
            Fact::Known(_) if expires_soon => LotState::Expiring,
            Fact::Known(_) if self.opened.is_some() => LotState::InUse,
            Fact::Known(_) => LotState::Sealed,
        }
    }

    /// The quantities in and out of it.
    pub(crate) const fn balance(&self) -> Balance {
        Balance { acquired: self.acquired, given: self.given, disposed: self.disposed, of_a_vet: false }
    }

    /// The quantity left.
    #[must_use]
    pub fn left(&self) -> Left {
        self.balance().left()
    }

    /// The last day of its in-use life, if known.
    #[must_use]
    pub fn usable_until(&self) -> Option<Day> {
        self.in_use.as_ref().and_then(|in_use| in_use.until)
    }
}
