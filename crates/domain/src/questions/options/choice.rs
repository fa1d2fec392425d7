//! The choices: every leaflet of the jurisdiction, split by method and label revision, with its stock and terms.

use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use std::collections::BTreeMap;
use std::sync::Arc;

use super::date_range::Ask;
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::quantity::Quantity;
use crate::basics::words::{Jurisdiction, LotName, Method};
use crate::facts::Overdrawn;
use crate::facts::history::{Plan, Term, Terms, label_revision};
use crate::facts::holding::Holding;
use crate::journal::event::{Confirmed, LeafletReading};
use crate::rules::leaflet::rule::BroodState;
use crate::rules::leaflet::{Leaflet, Leaflets, Rule};

/// One way of treating.
pub(super) struct Choice {
    pub(super) leaflet: Arc<Leaflet>,
    pub(super) method: Option<Method>,
    pub(super) revision: Option<String>,
    /// The rules that may be in force on a start day, by index in the leaflet.
    pub(super) rules: Vec<usize>,
    /// The terms on the first days, and on all days before.
    first: Held,
    /// The terms on later days, in order.
    later: Vec<Held>,
    pub(super) stock: Vec<LotsAtHand>,
    /// The lots whose leaflets give the terms: in stock, in date, with this label revision.
    pub(super) to_read: Vec<LotName>,
    /// Lots without a recorded label revision, if the leaflet has several.
    pub(super) unlabelled: Vec<LotName>,
    /// For each of these lots, the values that the keeper confirmed on its leaflet.
    confirmed: Vec<Vec<Confirmed>>,
}

/// Terms from a day on, with the plan of a course under them: without a brood inspection, and for each state of
/// brood.
struct Held {
    from: Day,
    terms: Terms,
    unseen: Plan,
    without_brood: Plan,
    with_brood: Plan,
}

/// A lot with stock left according to the journal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct LotsAtHand {
    pub(super) lot: LotName,
    pub(super) left: Quantity,
    pub(super) expiry: Option<Day>,
}

impl Choice {
    /// All choices of a jurisdiction, in the order of the leaflets.
    pub(super) fn all(
        holding: &Holding,
        leaflets: &Leaflets,
        jurisdiction: &Jurisdiction,
        ask: &Ask,
    ) -> Vec<Choice> {
        let lots = lots_by_leaflet(holding, ask.as_of);
        let mut choices = Vec::new();
        for leaflet in leaflets.holding_in(jurisdiction) {
            let lots = lots.get(leaflet.id.as_str()).map_or(&[][..], Vec::as_slice);
            for method in each(&leaflet.methods) {
                for revision in each(&leaflet.revisions) {
                    choices.push(Choice::of(holding, leaflet, method, revision, lots, ask));
                }
            }
        }
        choices
    }

    fn of(
        holding: &Holding,
        leaflet: &Arc<Leaflet>,
        method: Option<&Method>,
        revision: Option<&String>,
        lots: &[LotName],
        ask: &Ask,
    ) -> Choice {
        let span = ask.span;
        let labelled = |lot: &&LotName| {
            revision.is_none_or(|revision| label_revision(holding, lot, None) == Some(revision.as_str()))
        };
        let of_it: Vec<LotName> = lots.iter().filter(labelled).cloned().collect();
        let all_stock = of_it.iter().filter_map(|lot| stock(holding, lot, ask.as_of)).collect();
        // Readings of an expired lot say nothing about the lot that will be given.
        let of_it: Vec<LotName> =
            of_it.into_iter().filter(|lot| !has_expired(holding, lot, ask.as_of)).collect();
        let known = |lot: &LotName| {
            label_revision(holding, lot, None)
                .is_some_and(|of| leaflet.revisions.iter().any(|known| known == of))
        };
        let unlabelled = lots.iter().filter(|lot| revision.is_some() && !known(lot));
        let unlabelled = unlabelled.cloned().collect();
        let rules = leaflet.rules.iter().enumerate().filter(|(_, rule)| {
            let in_time = rule.from.is_none_or(|from| from <= span.to())
                && rule.until.is_none_or(|until| span.from() <= until);
            in_time && rule.fits(method, revision.map(String::as_str))
        });
        let rules: Vec<usize> = rules.map(|(index, _)| index).collect();
        let mut changes: Vec<Day> = rules
            .iter()
            .filter_map(|index| leaflet.rules.get(*index))
            .flat_map(|rule| [rule.from, rule.until.map(Day::next)])
            .flatten()
            .filter(|day| span.from() < *day && *day <= span.to())
            .collect();
        changes.sort_unstable();
        changes.dedup();
        let held = |from: Day| {
            let terms = Terms::if_given(holding, leaflet, from, method, revision.map(String::as_str), &of_it);
            Held {
                from,
                unseen: Plan::of(&terms, None),
                without_brood: Plan::of(&terms, Some(BroodState::AbsentOrLowest)),
                with_brood: Plan::of(&terms, Some(BroodState::Present)),
                terms,
            }
        };
        Choice {
            leaflet: Arc::clone(leaflet),
            method: method.cloned(),
            revision: revision.cloned(),
            rules,
            first: held(span.from()),
            later: changes.into_iter().map(held).collect(),
            stock: all_stock,
            unlabelled,
            confirmed: confirmed(holding, &of_it),
            to_read: of_it,
        }
    }

    /// The terms that would apply if it were given on a day.
    pub(super) fn terms(&self, on: Day) -> &Terms {
        &self.held(on).terms
    }

    /// Number of doses in a course that begins on a day, at least.
    pub(super) fn doses(&self, on: Day) -> Fact<u8, Term> {
        self.terms(on).doses.as_ref().map(|fact| fact.value.count)
    }

    /// The plan of a course from `start`, for the brood that was seen.
    pub(super) fn plan(&self, start: Day, brood: Option<BroodState>) -> &Plan {
        let held = self.held(start);
        match brood {
            None => &held.unseen,
            Some(BroodState::AbsentOrLowest) => &held.without_brood,
            Some(BroodState::Present) => &held.with_brood,
        }
    }

    fn held(&self, on: Day) -> &Held {
        self.later.iter().rfind(|held| held.from <= on).unwrap_or(&self.first)
    }

    /// The rules on a topic that may be in force on a start day, with their index.
    pub(super) fn rules_on(&self, topic: Topic) -> impl Iterator<Item = (usize, &Rule)> {
        self.leaflet.rules_on(topic).filter(|(index, _)| self.rules.binary_search(index).is_ok())
    }

    /// Whether a value can support a yes: read in a document for this country, or confirmed on every lot in stock.
    pub(super) fn is_documented(&self, rule: &Rule) -> bool {
        rule.confidence == Confidence::Document
            || (!self.confirmed.is_empty()
                && self
                    .confirmed
                    .iter()
                    .all(|of_lot| of_lot.iter().any(|confirmed| confirmed.is(&rule.says, self.leaflet.unit))))
    }
}

/// Each item of a list, or `None` once if the list is empty.
fn each<T>(list: &[T]) -> Vec<Option<&T>> {
    if list.is_empty() { vec![None] } else { list.iter().map(Some).collect() }
}

fn lots_by_leaflet(holding: &Holding, on: Day) -> BTreeMap<String, Vec<LotName>> {
    let mut by_leaflet: BTreeMap<String, Vec<LotName>> = BTreeMap::new();
    for lot in holding.lots() {
        let medicine = holding.lot(lot).and_then(|(_, acquired)| holding.medicine(acquired.medicine));
        if let Some(leaflet) = medicine.and_then(|(_, medicine)| medicine.leaflet.as_ref()) {
            by_leaflet.entry(leaflet.to_string()).or_default().push(lot.clone());
        }
    }
    // Readings of a used-up lot say nothing about the lot that will be given.
    for lots in by_leaflet.values_mut() {
        lots.retain(|lot| holding.balance_on(lot, on).is_some_and(|balance| balance.may_be_left()));
    }
    by_leaflet
}

/// The stock of a lot at the end of a day. `None` if the lot had not arrived yet, nothing is left, or how much is left
/// is not known.
fn stock(holding: &Holding, lot: &LotName, on: Day) -> Option<LotsAtHand> {
    let (_, acquired) = holding.lot(lot)?;
    match holding.balance_on(lot, on)?.left() {
        Fact::Known(left) if !left.is_zero() => {
            Some(LotsAtHand { lot: lot.clone(), left, expiry: acquired.expiry })
        }
        Fact::Known(_) | Fact::NotKnown(Overdrawn { .. }) => None,
    }
}

fn has_expired(holding: &Holding, lot: &LotName, on: Day) -> bool {
    let expiry = holding.lot(lot).and_then(|(_, acquired)| acquired.expiry);
    expiry.is_some_and(|expiry| expiry < on)
}

/// The values that the keeper confirmed on the leaflet of each of these lots.
fn confirmed(holding: &Holding, lots: &[LotName]) -> Vec<Vec<Confirmed>> {
    let of_lot = |lot: &LotName| {
        let readings = holding.reading_file(lot).iter().filter_map(|record| record.body::<LeafletReading>());
        readings.flat_map(|reading| &reading.confirms).cloned().collect()
    };
    lots.iter().map(of_lot).collect()
}
