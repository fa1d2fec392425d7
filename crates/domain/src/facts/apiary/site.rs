//! Power, access and ground of an apiary, field by field, as recorded.

use std::sync::Arc;

use serde::Serialize;

use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::words::{Access, Ground, Power};
use crate::facts::holding::Record;
use crate::journal::entry::EntryId;
use crate::journal::event::{Event, SiteConditions};

/// A fact about a site, which nobody need have recorded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SiteFact {
    /// The power available there.
    Power,
    /// How it can be reached.
    Access,
    /// The ground at the stands.
    Ground,
}

impl SiteFact {
    /// The field of the entry that states it.
    #[must_use]
    pub const fn field(self) -> &'static str {
        match self {
            SiteFact::Power => "power",
            SiteFact::Access => "access",
            SiteFact::Ground => "ground",
        }
    }
}

/// The site on a day; an absent field is not known.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SiteView {
    /// Electric power there.
    pub power: Option<Power>,
    /// How it can be reached.
    pub access: Option<Access>,
    /// The ground at the stands.
    pub ground: Option<Ground>,
}

/// The entries about the site of one apiary, in order of the events.
#[derive(Debug, Clone)]
pub(crate) struct Site<'h>(Vec<&'h Arc<Record>>);

impl<'h> Site<'h> {
    /// The entries about the site in the file of an apiary.
    pub(crate) fn of(file: &'h [Arc<Record>]) -> Site<'h> {
        Site(file.iter().filter(|record| matches!(record.event, Event::SiteConditions(_))).collect())
    }
}

impl Site<'_> {
    pub(crate) fn view(&self, on: Day) -> SiteView {
        SiteView {
            power: self.power(on).known().map(|(power, _)| *power),
            access: self.access(on).known().map(|(access, _)| *access),
            ground: self.ground(on).known().map(|(ground, _)| *ground),
        }
    }

    /// The power on a day, with the entry that states it.
    pub(crate) fn power(&self, on: Day) -> Fact<(Power, EntryId), SiteFact> {
        self.newest(SiteFact::Power, on, |site| site.power).map(with_entry)
    }

    /// The access on a day, with the entry that states it.
    pub(crate) fn access(&self, on: Day) -> Fact<(Access, EntryId), SiteFact> {
        self.newest(SiteFact::Access, on, |site| site.access).map(with_entry)
    }

    /// The ground on a day. Once flooded or wet ground has ended, it is not known until recorded again.
    pub(crate) fn ground(&self, on: Day) -> Fact<(Ground, EntryId), SiteFact> {
        self.newest(SiteFact::Ground, on, |site| site.ground).and_then(|(ground, stated)| {
            let wet_since = self.by(on).any(|(_, site)| {
                let ended = site.until.filter(|until| stated.on <= *until && *until < on);
                site.ground.is_some_and(|ground| ground != Ground::Dry) && ended.is_some()
            });
            if ground == Ground::Dry && wet_since {
                Fact::NotKnown(SiteFact::Ground)
            } else {
                Fact::Known(with_entry((ground, stated)))
            }
        })
    }

    /// The newest stated value that still applies, with its entry.
    fn newest<T>(
        &self,
        fact: SiteFact,
        on: Day,
        pick: impl Fn(&SiteConditions) -> Option<T>,
    ) -> Fact<(T, &Record), SiteFact> {
        let stated = self.by(on).find_map(|(record, site)| {
            let holds = site.until.is_none_or(|until| on <= until);
            pick(site).filter(|_| holds).map(|value| (value, record))
        });
        Fact::stated(stated, fact)
    }

    /// The entries by the end of a day, the newest first.
    fn by(&self, on: Day) -> impl Iterator<Item = (&Record, &SiteConditions)> {
        let known = self.0.iter().rev().filter(move |record| record.on <= on);
        known.filter_map(|record| Some((&***record, record.body()?)))
    }
}

fn with_entry<T>((value, stated): (T, &Record)) -> (T, EntryId) {
    (value, stated.id)
}
