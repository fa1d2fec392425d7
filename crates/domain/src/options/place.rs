//! An apiary as far as treatments turn on it: power, access, ground, temperatures, nectar flows.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::because::ToldBy;
use super::flow::Flow;
use super::span::Ask;
use super::weather::Weather;
use crate::calendar::Day;
use crate::holding::{Holding, Record};
use crate::journal::event::{Event, SiteConditions};
use crate::words::{Access, ApiaryName, Ground, Power};

/// Conditions at the site as they might be: they stand in for what is recorded, and are not recorded themselves.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct WhatIf {
    /// Electric power there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub power: Option<Power>,
    /// How it can be reached.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub access: Option<Access>,
    /// The ground at the stands.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ground: Option<Ground>,
    /// The last day on which that holds; without it, from the first day asked about on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub until: Option<Day>,
}

impl WhatIf {
    /// Whether nothing is assumed.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.power.is_none() && self.access.is_none() && self.ground.is_none()
    }
}

/// An apiary, ready to be asked about days.
pub(super) struct Place<'h> {
    site: Vec<&'h Arc<Record>>,
    what_if: (&'h WhatIf, Day),
    pub(super) weather: Weather,
    pub(super) flows: Vec<Flow>,
}

/// A fact about the site, with who told it; none if nobody did.
pub(super) type Told<T> = Option<(T, ToldBy)>;

impl<'h> Place<'h> {
    pub(super) fn of(holding: &'h Holding, apiary: &ApiaryName, ask: &'h Ask) -> Place<'h> {
        let file = holding.apiary_file(apiary);
        let known = file.iter().take_while(|record| record.on <= ask.as_of).count();
        let file = file.get(..known).unwrap_or_default();
        let site = file.iter().filter(|record| matches!(*record.event, Event::SiteConditions(_)));
        Place {
            site: site.collect(),
            what_if: (&ask.what_if, ask.span.from()),
            weather: Weather::of(file),
            flows: Flow::all(file),
        }
    }

    pub(super) fn power(&self, on: Day) -> Told<Power> {
        self.assumed(on, |what_if| what_if.power).or_else(|| self.recorded(on, |site| site.power))
    }

    pub(super) fn access(&self, on: Day) -> Told<Access> {
        self.assumed(on, |what_if| what_if.access).or_else(|| self.recorded(on, |site| site.access))
    }

    /// After a flood or wet ground that has an end, nobody knows how dry it is until it is recorded again.
    pub(super) fn ground(&self, on: Day) -> Told<Ground> {
        let assumed = self.assumed(on, |what_if| what_if.ground);
        let (what_if, from) = self.what_if;
        let assumed_wet = what_if.ground.is_some_and(|ground| ground != Ground::Dry);
        if assumed.is_some() || (assumed_wet && on >= from) {
            return assumed;
        }
        let stated = self.site.iter().filter(|record| record.on <= on).rev().find_map(|record| {
            let Event::SiteConditions(site) = &*record.event else { return None };
            Some((site.ground?, site.until, record.id))
        });
        let (ground, until, entry) = stated?;
        match until {
            Some(until) if until < on && ground != Ground::Dry => None,
            Some(until) if until < on => self.recorded(on, |site| site.ground),
            _ => Some((ground, ToldBy::Entry(entry))),
        }
    }

    fn assumed<T>(&self, on: Day, pick: impl Fn(&WhatIf) -> Option<T>) -> Told<T> {
        let (what_if, from) = self.what_if;
        let holds = on >= from && what_if.until.is_none_or(|until| on <= until);
        pick(what_if).filter(|_| holds).map(|fact| (fact, ToldBy::Question))
    }

    /// The newest entry that states it and still holds.
    fn recorded<T>(&self, on: Day, pick: impl Fn(&SiteConditions) -> Option<T>) -> Told<T> {
        self.site.iter().filter(|record| record.on <= on).rev().find_map(|record| {
            let Event::SiteConditions(site) = &*record.event else { return None };
            let holds = site.until.is_none_or(|until| on <= until);
            pick(site).filter(|_| holds).map(|fact| (fact, ToldBy::Entry(record.id)))
        })
    }
}
