//! The balance of a lot: acquired, given, disposed of, and left.

use std::collections::BTreeMap;

use super::holding::{Holding, Record, mentions};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::quantity::Quantity;
use crate::basics::words::LotName;
use crate::journal::event::{Administration, Body, Disposal, Event};

/// The quantities in and out of a lot, in the unit of its medicine.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Balance {
    /// The quantity acquired.
    pub acquired: Quantity,
    /// The quantity given.
    pub given: Quantity,
    /// The quantity disposed of without being given.
    pub disposed: Quantity,
    /// Whether the lot is of a vet's own stock: nothing of it was ever the keeper's, so nothing is left.
    pub of_a_vet: bool,
}

/// More of a lot is gone than was acquired, so an amount on record is wrong, and how much is left is not known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Overdrawn {
    /// The quantity gone beyond what was acquired; never zero.
    pub by: Quantity,
}

/// The quantity left of a lot: zero once it is used up, and not known if the lot is overdrawn.
pub type Left = Fact<Quantity, Overdrawn>;

/// Whether an entry corrects the balance of its lots after a count.
pub(crate) fn corrects_count(event: &Event) -> bool {
    Administration::of(event).is_some_and(|body| body.count_corrected)
        || Disposal::of(event).is_some_and(|body| body.count_corrected)
}

/// How one entry changes a balance.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Movement {
    /// Acquired.
    Acquired(Quantity),
    /// Given.
    Given(Quantity),
    /// Disposed of.
    Disposed(Quantity),
    /// A vet brought it and kept the rest.
    OfVet,
}

impl Balance {
    /// The quantity given or disposed of.
    #[must_use]
    pub const fn gone(&self) -> Quantity {
        self.given.plus(self.disposed)
    }

    /// The quantity left.
    #[must_use]
    pub fn left(&self) -> Left {
        if self.of_a_vet {
            return Fact::Known(Quantity::ZERO);
        }
        let overdrawn = Overdrawn { by: self.gone().apart(self.acquired) };
        Fact::stated(self.acquired.minus(self.gone()), overdrawn)
    }

    /// Whether some may be left. If more is gone than was acquired, that is not known.
    #[must_use]
    pub fn may_be_left(&self) -> bool {
        match self.left() {
            Fact::Known(left) => !left.is_zero(),
            Fact::NotKnown(Overdrawn { .. }) => true,
        }
    }

    /// The balance of each lot over these events, by name.
    pub(crate) fn of_events<'e>(
        events: impl IntoIterator<Item = &'e Event>,
    ) -> BTreeMap<&'e LotName, Balance> {
        let mut balances: BTreeMap<&LotName, Balance> = BTreeMap::new();
        for (lot, movement) in events.into_iter().flat_map(|event| mentions::of(event).moves) {
            balances.entry(lot).or_default().add(movement);
        }
        balances
    }

    pub(super) fn add(&mut self, movement: Movement) {
        match self.sum_of(movement) {
            Some((sum, amount)) => *sum = sum.plus(amount),
            None => self.of_a_vet = true,
        }
    }

    pub(super) fn take_back(&mut self, movement: Movement) {
        match self.sum_of(movement) {
            // It was added before, so the subtraction succeeds.
            Some((sum, amount)) => *sum = sum.minus(amount).unwrap_or_default(),
            None => self.of_a_vet = false,
        }
    }

    /// The sum to which a movement adds. None for one that says whose the lot is.
    fn sum_of(&mut self, movement: Movement) -> Option<(&mut Quantity, Quantity)> {
        match movement {
            Movement::Acquired(amount) => Some((&mut self.acquired, amount)),
            Movement::Given(amount) => Some((&mut self.given, amount)),
            Movement::Disposed(amount) => Some((&mut self.disposed, amount)),
            Movement::OfVet => None,
        }
    }
}

impl Holding {
    /// The balance of a lot at the end of a day. `None` if it was not here by then.
    pub(crate) fn balance_on(&self, lot: &LotName, on: Day) -> Option<Balance> {
        self.lot(lot).filter(|(record, _)| record.on <= on)?;
        Some(self.balances(lot, on).last().map(|(_, balance)| balance).unwrap_or_default())
    }

    /// The entries that changed a lot by the end of a day, each with the balance after it.
    pub(crate) fn balances(&self, lot: &LotName, on: Day) -> impl Iterator<Item = (&Record, Balance)> {
        let mut balance = Balance::default();
        self.lot_file(lot).iter().filter(move |record| record.on <= on).filter_map(move |record| {
            let moves = mentions::of(&record.event).moves.into_iter().filter(|(of, _)| *of == lot);
            let count = moves.map(|(_, movement)| balance.add(movement)).count();
            (count > 0).then_some((&**record, balance))
        })
    }
}
