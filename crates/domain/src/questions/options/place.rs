//! An apiary, as recorded and with the question's assumptions.

use serde::{Deserialize, Serialize};

use super::date_range::Ask;
use super::reason::{Told, ToldBy};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::words::{Access, ApiaryName, Ground, Power};
use crate::facts::apiary::{Apiary, SiteFact};
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;

/// Assumed site conditions. They replace the recorded ones for one question and are not recorded.
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
    /// The last day of the assumption. It begins on the first day asked about; without a last day it does not end.
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

/// An apiary prepared for questions about days.
pub(super) struct Place<'h> {
    pub(super) apiary: Apiary<'h>,
    what_if: (&'h WhatIf, Day),
}

impl<'h> Place<'h> {
    pub(super) fn of(holding: &'h Holding, apiary: &ApiaryName, ask: &'h Ask) -> Place<'h> {
        Place { apiary: holding.apiary_by(apiary, ask.as_of), what_if: (&ask.what_if, ask.span.from()) }
    }

    pub(super) fn power(&self, on: Day) -> Told<Power> {
        let assumed = self.assumed(SiteFact::Power, on, |what_if| what_if.power);
        assumed.or_else(|| self.apiary.site.power(on).map(by_entry))
    }

    pub(super) fn access(&self, on: Day) -> Told<Access> {
        let assumed = self.assumed(SiteFact::Access, on, |what_if| what_if.access);
        assumed.or_else(|| self.apiary.site.access(on).map(by_entry))
    }

    pub(super) fn ground(&self, on: Day) -> Told<Ground> {
        let assumed = self.assumed(SiteFact::Ground, on, |what_if| what_if.ground);
        if self.assumed_wet(on) {
            assumed
        } else {
            assumed.or_else(|| self.apiary.site.ground(on).map(by_entry))
        }
    }

    /// Whether the ground was assumed to be wet by then: once the assumption ends, the ground is not known to be dry.
    pub(super) fn assumed_wet(&self, on: Day) -> bool {
        let (what_if, from) = self.what_if;
        what_if.ground.is_some_and(|ground| ground != Ground::Dry) && on >= from
    }

    /// A fact as the question assumes it.
    fn assumed<T>(&self, fact: SiteFact, on: Day, pick: impl Fn(&WhatIf) -> Option<T>) -> Told<T> {
        let (what_if, from) = self.what_if;
        let holds = on >= from && what_if.until.is_none_or(|until| on <= until);
        let assumed = pick(what_if).filter(|_| holds);
        Fact::stated(assumed, fact).map(|value| (value, ToldBy::Question))
    }
}

fn by_entry<T>((value, entry): (T, EntryId)) -> (T, ToldBy) {
    (value, ToldBy::Entry(entry))
}
