//! Which statement on a topic applies: the one with the highest authority, and the strictest among equals.

use crate::basics::confidence::Confidence;
use crate::basics::sourced::{Authority, Sourced};
use crate::basics::topic::Topic;
use std::cmp::Ordering;

use super::terms::{LotSaid, Stated};
use crate::basics::calendar::Day;
use crate::basics::words::Method;
use crate::journal::event::StatedTerms;
use crate::rules::leaflet::{Force, Leaflet, Rule};

/// The built-in leaflet on the day of placing, for the recorded method.
pub(super) struct BuiltIn<'a> {
    pub(super) leaflet: Option<&'a Leaflet>,
    pub(super) placed: Day,
    pub(super) method: Option<&'a Method>,
}

impl<'a> BuiltIn<'a> {
    /// The binding rules on a topic for a label revision, each with its index in the leaflet.
    fn on(&self, topic: Topic, revision: Option<&str>) -> impl Iterator<Item = (usize, &'a Rule)> {
        let rules = self.leaflet.into_iter().flat_map(move |leaflet| leaflet.rules_on(topic));
        rules.filter(move |(_, rule)| {
            rule.force != Force::Advice && rule.is_in_force(self.placed) && rule.fits(self.method, revision)
        })
    }
}

/// Every statement about one course.
pub(super) struct Resolver<'a> {
    pub(super) stated: &'a Stated<'a>,
    pub(super) built_in: &'a BuiltIn<'a>,
}

/// How to read one topic from statements and leaflet rules, and which of two values is stricter.
pub(super) struct Reading<S, R, O> {
    pub(super) topic: Topic,
    /// Picks the value from a person's statement.
    pub(super) stated: S,
    /// Picks the value from a leaflet rule.
    pub(super) rule: R,
    /// Orders values: the greater one is stricter.
    pub(super) order: O,
}

impl<T, S, R, O> Reading<S, R, O>
where
    T: Copy + PartialEq,
    S: Fn(&StatedTerms) -> Option<T>,
    R: Fn(&Rule) -> Option<T>,
    O: Fn(&T, &T) -> Ordering,
{
    /// The fact that applies.
    pub(super) fn resolve(&self, resolver: &Resolver<'_>) -> Option<Sourced<T>> {
        self.resolve_with(resolver, |_| Vec::new())
    }

    /// The fact that applies, taking packs into account: `on_packs` returns the values read when a lot was given.
    ///
    /// Every dose must be covered: by its prescription, or else by the leaflets of its lots. The strictest value
    /// applies, with the confidence of the weakest part.
    pub(super) fn resolve_with(
        &self,
        resolver: &Resolver<'_>,
        on_packs: impl Fn(&LotSaid<'_>) -> Vec<(Day, T, Authority)>,
    ) -> Option<Sourced<T>> {
        let Stated { prescriptions, all_prescribed, lots, declared } = resolver.stated;
        let any_revision = self.built_in(resolver.built_in, None);
        // Nobody stated anything, and the label revision of no lot is known: the built-in leaflet alone speaks, for each lot alike.
        let silent =
            |lot: &LotSaid<'_>| lot.readings.is_empty() && lot.revision.is_none() && on_packs(lot).is_empty();
        if !lots.is_empty() && prescriptions.is_empty() && declared.is_none() && lots.iter().all(silent) {
            return any_revision;
        }
        let said = |value: T, authority: Authority, built_in: Option<&Sourced<T>>| {
            let documented = built_in.filter(|fact| fact.is_documented()).map(|fact| fact.value);
            Sourced {
                value,
                authority,
                confidence: Confidence::Document,
                looser_than: documented
                    .filter(|built_in| (self.order)(built_in, &value) == Ordering::Greater),
                set_aside: None,
            }
        };
        let prescribed: Vec<_> = prescriptions
            .iter()
            .map(|(entry, terms)| {
                let value = (self.stated)(terms)?;
                Some(said(value, Authority::Prescription(*entry), any_revision.as_ref()))
            })
            .collect();
        let every_dose = *all_prescribed && prescribed.iter().all(Option::is_some);
        let of_lot = |lot: &LotSaid<'_>| {
            let built_in = match lot.revision {
                None => any_revision,
                Some(_) => self.built_in(resolver.built_in, lot.revision),
            };
            let said = |value, authority| said(value, authority, built_in.as_ref());
            let declared = || {
                declared
                    .and_then(|(entry, terms)| Some(said((self.stated)(terms)?, Authority::Declared(entry))))
            };
            let read = self.read_of(lot, on_packs(lot));
            let stricter = |a: &T, b: &T| (self.order)(a, b) == Ordering::Greater;
            match (read.by_then, read.later) {
                (Some((value, _)), Some((later, by))) if stricter(&later, &value) => Some(said(later, by)),
                (Some((value, by)), Some(_) | None) => Some(said(value, by)),
                // A reading made after a treatment never relaxes the terms of that treatment. To do so, the wrong
                // entry must be corrected.
                (None, Some((later, by))) => {
                    let documented = built_in.filter(Sourced::is_documented);
                    let held = if built_in.is_some() { documented } else { declared() };
                    let held = held.filter(|held| stricter(&held.value, &later));
                    Some(
                        held.map_or_else(
                            || said(later, by),
                            |held| Sourced { set_aside: by.entry(), ..held },
                        ),
                    )
                }
                (None, None) => built_in.or_else(declared),
            }
        };
        let lots = lots.iter().filter(|_| !every_dose);
        self.together(prescribed.into_iter().flatten().map(Some).chain(lots.map(of_lot)))
    }

    /// The strictest of several statements, with the confidence of the weakest. A silent part makes the result
    /// unconfirmed.
    fn together(&self, parts: impl Iterator<Item = Option<Sourced<T>>>) -> Option<Sourced<T>> {
        let mut strictest: Option<Sourced<T>> = None;
        let mut weakest = Confidence::Document;
        for part in parts {
            let confidence = part.as_ref().map_or(Confidence::Unconfirmed, |fact| fact.confidence);
            if weakness(confidence) > weakness(weakest) {
                weakest = confidence;
            }
            let stricter = |fact: &Sourced<T>| {
                let than = |best: &Sourced<T>| (self.order)(&fact.value, &best.value) == Ordering::Greater;
                strictest.as_ref().is_none_or(than)
            };
            if part.as_ref().is_some_and(stricter) {
                strictest = part;
            }
        }
        strictest.map(|strictest| Sourced { confidence: weakest, ..strictest })
    }

    /// The statements about a lot, split at the day on which some of it was first given.
    ///
    /// By that day: the newest reading (of several on one day the strictest) and the packs. Later: the strictest of
    /// all.
    fn read_of(&self, lot: &LotSaid<'_>, packs: Vec<(Day, T, Authority)>) -> ReadOf<T> {
        let stated = lot.readings.iter().filter_map(|(record, terms)| {
            Some((record.on, (self.stated)(terms)?, Authority::Reading(record.id)))
        });
        let by_then = |on: Day| lot.first_given.is_none_or(|given| on <= given);
        let newest = stated.clone().map(|(on, ..)| on).filter(|on| by_then(*on)).max();
        let (held_packs, later_packs): (Vec<_>, Vec<_>) =
            packs.into_iter().partition(|(on, ..)| by_then(*on));
        let held = stated.clone().filter(|(on, ..)| Some(*on) == newest).chain(held_packs);
        let later = stated.filter(|(on, ..)| !by_then(*on)).chain(later_packs);
        let strictest = |read: &mut dyn Iterator<Item = (Day, T, Authority)>| {
            let found = strictest(read, |a, b| (self.order)(&a.1, &b.1));
            found.map(|(_, value, authority)| (value, authority))
        };
        ReadOf { by_then: strictest(&mut held.into_iter()), later: strictest(&mut later.into_iter()) }
    }

    /// The built-in leaflet's statement. If it differs between methods or label revisions and none was recorded, the
    /// strictest value applies, with the confidence of the weakest.
    pub(super) fn built_in(&self, built_in: &BuiltIn<'_>, revision: Option<&str>) -> Option<Sourced<T>> {
        let said = built_in.on(self.topic, revision).filter_map(|(index, rule)| {
            Some(Sourced {
                value: (self.rule)(rule)?,
                authority: Authority::Leaflet(index),
                confidence: rule.confidence,
                looser_than: None,
                set_aside: None,
            })
        });
        self.together(said.map(Some))
    }
}

/// The statements about a lot on one topic, with their authority.
struct ReadOf<T> {
    by_then: Option<(T, Authority)>,
    later: Option<(T, Authority)>,
}

const fn weakness(confidence: Confidence) -> u8 {
    match confidence {
        Confidence::Document => 0,
        Confidence::SecondHand => 1,
        Confidence::Unconfirmed => 2,
    }
}

/// The greatest item, and the first among equals.
fn strictest<T>(items: impl Iterator<Item = T>, order: impl Fn(&T, &T) -> Ordering) -> Option<T> {
    items.reduce(|best, next| if order(&next, &best) == Ordering::Greater { next } else { best })
}
