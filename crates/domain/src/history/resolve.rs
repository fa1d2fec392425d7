//! Which statement on a topic is used: the highest authority that speaks, and among equals the strictest.

use std::cmp::Ordering;

use super::terms::{Authority, Fact, Stated};
use crate::calendar::Day;
use crate::journal::entry::EntryId;
use crate::journal::event::StatedTerms;
use crate::leaflet::{Confidence, Force, Leaflet, Rule, Topic};
use crate::words::Method;

/// The built-in leaflet, on the day of placing, for the method that was noted.
pub(super) struct BuiltIn<'a> {
    pub(super) leaflet: Option<&'a Leaflet>,
    pub(super) placed: Day,
    pub(super) method: Option<&'a Method>,
}

/// Everything that speaks about one course.
pub(super) struct Resolver<'a> {
    pub(super) stated: &'a Stated<'a>,
    pub(super) built_in: &'a BuiltIn<'a>,
}

impl Resolver<'_> {
    /// The fact in use on one topic. `stricter` orders values: the greater one is the stricter.
    pub(super) fn topic<T: Copy + PartialEq>(
        &self,
        stated: impl Fn(&StatedTerms) -> Option<T>,
        on_packs: &[(T, Authority)],
        from_rule: impl Fn(&Rule) -> Option<T>,
        topic: Topic,
        stricter: impl Fn(&T, &T) -> Ordering + Copy,
    ) -> Option<Fact<T>> {
        let built_in = self.built_in(from_rule, topic, stricter);
        let documented = built_in.as_ref().filter(|fact| fact.is_documented()).map(|fact| fact.value);
        let said = |value: T, authority: Authority| Fact {
            value,
            authority,
            confidence: Confidence::Document,
            looser_than: documented.filter(|built_in| stricter(built_in, &value) == Ordering::Greater),
        };
        if let Some((entry, terms)) = self.stated.prescription
            && let Some(value) = stated(terms)
        {
            return Some(said(value, Authority::Prescription(entry)));
        }
        let read = self.newest_reading(&stated, stricter).into_iter().chain(on_packs.iter().copied());
        if let Some((value, authority)) = strictest(read, |a, b| stricter(&a.0, &b.0)) {
            return Some(said(value, authority));
        }
        built_in.or_else(|| {
            let (entry, terms) = self.stated.declared?;
            Some(said(stated(terms)?, Authority::Declared(entry)))
        })
    }

    /// What the newest reading says; of several made on one day, the strictest.
    fn newest_reading<T: Copy>(
        &self,
        stated: impl Fn(&StatedTerms) -> Option<T>,
        stricter: impl Fn(&T, &T) -> Ordering,
    ) -> Option<(T, Authority)> {
        let mut newest: Option<(Day, T, EntryId)> = None;
        for (record, terms) in &self.stated.readings {
            let Some(value) = stated(terms) else { continue };
            let better = newest.as_ref().is_none_or(|(on, known, _)| {
                record.on > *on || (record.on == *on && stricter(&value, known) == Ordering::Greater)
            });
            if better {
                newest = Some((record.on, value, record.id));
            }
        }
        newest.map(|(_, value, entry)| (value, Authority::Reading(entry)))
    }

    /// What the built-in leaflet says. Where methods differ and none was noted, the strictest value is used, as well
    /// established as the weakest of them.
    fn built_in<T: Copy>(
        &self,
        from_rule: impl Fn(&Rule) -> Option<T>,
        topic: Topic,
        stricter: impl Fn(&T, &T) -> Ordering,
    ) -> Option<Fact<T>> {
        let BuiltIn { leaflet, placed, method } = *self.built_in;
        let leaflet = leaflet?;
        let fits = |rule: &Rule| match (&rule.method, method) {
            (Some(of), Some(given)) => of == given,
            _ => true,
        };
        let in_force = leaflet.rules.iter().enumerate().filter(|(_, rule)| {
            rule.says.topic() == topic
                && rule.force != Force::Advice
                && rule.is_in_force(placed)
                && fits(rule)
        });
        let values: Vec<_> =
            in_force.filter_map(|(index, rule)| Some((from_rule(rule)?, index, rule.confidence))).collect();
        let weakest = values.iter().map(|(_, _, confidence)| *confidence).max_by_key(|c| weakness(*c))?;
        let (value, index, _) = strictest(values.into_iter(), |a, b| stricter(&a.0, &b.0))?;
        Some(Fact { value, authority: Authority::Leaflet(index), confidence: weakest, looser_than: None })
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
