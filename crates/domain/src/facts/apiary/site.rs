//! Power, access and ground of an apiary, field by field, as recorded.

use std::sync::Arc;

use serde::Serialize;

use crate::basics::calendar::Day;
use crate::basics::words::{Access, Ground, Power};
use crate::facts::holding::Record;
use crate::journal::entry::EntryId;
use crate::journal::event::{Event, SiteConditions};

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
            power: self.power(on).map(|(power, _)| power),
            access: self.access(on).map(|(access, _)| access),
            ground: self.ground(on).map(|(ground, _)| ground),
        }
    }

    pub(crate) fn power(&self, on: Day) -> Option<(Power, EntryId)> {
        self.newest(on, |site| site.power)
    }

    pub(crate) fn access(&self, on: Day) -> Option<(Access, EntryId)> {
        self.newest(on, |site| site.access)
    }

    /// The ground on a day. Once flooded or wet ground has ended, it is not known until recorded again.
    pub(crate) fn ground(&self, on: Day) -> Option<(Ground, EntryId)> {
        let (ground, entry) = self.newest(on, |site| site.ground)?;
        let stated_on = self.by(on).find(|(record, _)| record.id == entry).map(|(record, _)| record.on)?;
        let wet_since = self.by(on).any(|(_, site)| {
            let ended = site.until.filter(|until| stated_on <= *until && *until < on);
            site.ground.is_some_and(|ground| ground != Ground::Dry) && ended.is_some()
        });
        (ground != Ground::Dry || !wet_since).then_some((ground, entry))
    }

    /// The newest stated value that still applies.
    fn newest<T>(&self, on: Day, pick: impl Fn(&SiteConditions) -> Option<T>) -> Option<(T, EntryId)> {
        self.by(on).find_map(|(record, site)| {
            let holds = site.until.is_none_or(|until| on <= until);
            pick(site).filter(|_| holds).map(|fact| (fact, record.id))
        })
    }

    /// The entries by the end of a day, the newest first.
    fn by(&self, on: Day) -> impl Iterator<Item = (&Record, &SiteConditions)> {
        let known = self.0.iter().rev().filter(move |record| record.on <= on);
        known.filter_map(|record| Some((&***record, record.body()?)))
    }
}
