//! Which statement on a topic is used: the highest authority that speaks, and among equals the strictest.

use std::cmp::Ordering;

use super::terms::{Authority, Fact, LotSaid, Stated};
use crate::calendar::Day;
use crate::holding::Record;
use crate::journal::event::StatedTerms;
use crate::leaflet::rule::BroodState;
use crate::leaflet::{Confidence, Force, Leaflet, Rule, Says, Topic};
use crate::words::Method;

/// The built-in leaflet, on the day of placing, for the method that was noted.
pub(super) struct BuiltIn<'a> {
    pub(super) leaflet: Option<&'a Leaflet>,
    pub(super) placed: Day,
    pub(super) method: Option<&'a Method>,
}

impl BuiltIn<'_> {
    /// Whether the leaflet states a least stay for colonies with brood in particular.
    pub(super) fn distinguishes_brood(&self) -> bool {
        let Some(leaflet) = self.leaflet else { return false };
        let mut stays = leaflet.in_force(Topic::StayMin, self.placed, self.method);
        stays.any(|rule| matches!(rule.says, Says::StayMin { brood: Some(BroodState::Present), .. }))
    }
}

/// Everything that speaks about one course.
pub(super) struct Resolver<'a> {
    pub(super) stated: &'a Stated<'a>,
    pub(super) built_in: &'a BuiltIn<'a>,
}

/// How one topic is read in what speaks about a course, and which of two values is the stricter.
pub(super) struct Reading<S, R, O> {
    pub(super) topic: Topic,
    /// Picks the value that a person stated.
    pub(super) stated: S,
    /// Picks the value of a leaflet rule.
    pub(super) rule: R,
    /// Orders values: the greater one is the stricter.
    pub(super) order: O,
}

impl<T, S, R, O> Reading<S, R, O>
where
    T: Copy + PartialEq,
    S: Fn(&StatedTerms) -> Option<T>,
    R: Fn(&Rule) -> Option<T>,
    O: Fn(&T, &T) -> Ordering,
{
    /// The fact in use.
    pub(super) fn resolve(&self, resolver: &Resolver<'_>) -> Option<Fact<T>> {
        self.resolve_with(resolver, |_| Vec::new())
    }

    /// The fact in use, where packs were read too: `on_packs` gives what was read when a lot was given.
    ///
    /// Every dose must be covered: by its prescription, else by what its lots' leaflets say. The strictest value is
    /// used, as well established as the weakest part.
    pub(super) fn resolve_with(
        &self,
        resolver: &Resolver<'_>,
        on_packs: impl Fn(&LotSaid<'_>) -> Vec<(T, Authority)>,
    ) -> Option<Fact<T>> {
        let Stated { prescriptions, all_prescribed, lots, declared } = resolver.stated;
        let any_revision = self.built_in(resolver.built_in, None);
        let said = |value: T, authority: Authority, built_in: Option<&Fact<T>>| {
            let documented = built_in.filter(|fact| fact.is_documented()).map(|fact| fact.value);
            Fact {
                value,
                authority,
                confidence: Confidence::Document,
                looser_than: documented
                    .filter(|built_in| (self.order)(built_in, &value) == Ordering::Greater),
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
            let built_in = self.built_in(resolver.built_in, lot.revision);
            let said = |value, authority| said(value, authority, built_in.as_ref());
            let placed = resolver.built_in.placed;
            let read = self.reading_that_holds(&lot.readings, placed).into_iter().chain(on_packs(lot));
            let read = strictest(read, |a, b| (self.order)(&a.0, &b.0)).map(|(value, by)| said(value, by));
            let declared = || {
                declared
                    .and_then(|(entry, terms)| Some(said((self.stated)(terms)?, Authority::Declared(entry))))
            };
            read.or(built_in).or_else(declared)
        };
        let mut parts: Vec<Option<Fact<T>>> = prescribed.into_iter().flatten().map(Some).collect();
        if !every_dose {
            parts.extend(lots.iter().map(of_lot));
        }
        let weakest =
            parts.iter().map(|part| part.as_ref().map_or(Confidence::Unconfirmed, |fact| fact.confidence));
        let confidence = weakest.max_by_key(|confidence| weakness(*confidence))?;
        let strictest = strictest(parts.into_iter().flatten(), |a, b| (self.order)(&a.value, &b.value))?;
        Some(Fact { confidence, ..strictest })
    }

    /// What was read of a lot when the course began: the newest reading by then, of several made on one day the strictest. A
    /// reading made later may only be stricter: what held for a treatment is not loosened afterwards, unless the reading
    /// that was wrong is corrected.
    fn reading_that_holds(
        &self,
        readings: &[(&Record, &StatedTerms)],
        placed: Day,
    ) -> Option<(T, Authority)> {
        let stated = readings.iter().filter_map(|(record, terms)| {
            Some((record.on, (self.stated)(terms)?, Authority::Reading(record.id)))
        });
        let newest_by_then = stated.clone().map(|(on, ..)| on).filter(|on| *on <= placed).max();
        let holds = stated.filter(|(on, ..)| newest_by_then.is_none_or(|newest| *on >= newest));
        let strictest = strictest(holds, |a, b| (self.order)(&a.1, &b.1));
        strictest.map(|(_, value, authority)| (value, authority))
    }

    /// What the built-in leaflet says. Where methods or revisions of the label differ and none was noted, the strictest
    /// value is used, as well established as the weakest of them.
    pub(super) fn built_in(&self, built_in: &BuiltIn<'_>, revision: Option<&str>) -> Option<Fact<T>> {
        let BuiltIn { leaflet, placed, method } = *built_in;
        let leaflet = leaflet?;
        let in_force = leaflet.rules.iter().enumerate().filter(|(_, rule)| {
            rule.says.topic() == self.topic
                && rule.force != Force::Advice
                && rule.is_in_force(placed)
                && rule.fits(method, revision)
        });
        let values: Vec<_> =
            in_force.filter_map(|(index, rule)| Some(((self.rule)(rule)?, index, rule.confidence))).collect();
        let confidence = values.iter().map(|(_, _, confidence)| *confidence).max_by_key(|c| weakness(*c))?;
        let (value, index, _) = strictest(values.into_iter(), |a, b| (self.order)(&a.0, &b.0))?;
        Some(Fact { value, authority: Authority::Leaflet(index), confidence, looser_than: None })
    }
}

const fn weakness(confidence: Confidence) -> u8 {
    match confidence {
        Confidence::Document => 0,
        Confidence::SecondHand => 1,
        Confidence::Unconfirmed => 2,
    }
}

/// The greatest item; the first one among equals.
fn strictest<T>(items: impl Iterator<Item = T>, order: impl Fn(&T, &T) -> Ordering) -> Option<T> {
    items.reduce(|best, next| if order(&next, &best) == Ordering::Greater { next } else { best })
}
