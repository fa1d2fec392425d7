//! A missing fact, and what would supply it.

use super::about::About;
use super::reason::{Because, Counting};
use crate::basics::calendar::Day;
use crate::basics::topic::Topic;
use crate::basics::words::LotName;
use crate::facts::apiary::SiteFact;
use crate::facts::history::Term;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;

/// A missing fact.
#[derive(Debug, Clone, PartialEq)]
pub struct Missing {
    /// The subject of the open condition.
    pub about: About,
    /// The leaflet rule that the condition comes from, by index.
    pub rule: Option<usize>,
    /// Why it is not known.
    pub because: Because,
    /// What would supply it.
    pub remedy: Remedy,
    /// The first start day concerned, if only later ones are.
    pub from: Option<Day>,
}

/// What would supply a missing fact.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Remedy {
    /// An entry.
    Entry(EntryToMake),
    /// No entry can supply it; what to do instead.
    NoEntry(NoEntry),
}

/// An entry that would supply a missing fact.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EntryToMake {
    /// The kind of entry.
    pub kind: Kind,
    /// The fields to fill in; `field=value` if only that value would help.
    pub fields: Vec<&'static str>,
    /// The first and last day that the entry may have. For temperatures and flows, which are recorded when they are
    /// known, the days that the entry must cover.
    pub on: Option<(Day, Day)>,
    /// The lots whose leaflets must be read, all of them.
    pub lots: Vec<LotName>,
    /// The existing entries concerned: the first dose of a course to take out, or an entry to correct.
    pub entries: Vec<EntryId>,
    /// What to do and record.
    pub what: ToRecord,
}

/// What to do and record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ToRecord {
    /// Inspect the colony.
    Look(Look),
    /// Inspect the brood: brood seen after this day ends the broodless period.
    BroodSince {
        /// The day of the last course.
        last: Day,
    },
    /// Measured temperatures, or the forecast.
    Temperatures,
    /// The flows expected in a year.
    FlowsOf {
        /// The year.
        year: i32,
    },
    /// The next flow expected.
    NextFlow {
        /// From this day on.
        from: Day,
    },
    /// The beginning of a flow, once it is seen.
    FlowSeen {
        /// The forage plant.
        forage: String,
    },
    /// A fact about the site.
    Site {
        /// The fact.
        fact: SiteFact,
        /// The day for which it is needed.
        on: Day,
    },
    /// The removal of a medicine that is in.
    Removal {
        /// The day it was placed.
        placed: Day,
        /// The last day for the removal.
        by: Day,
        /// Whether a vet may know that the two can be combined.
        or_ask_the_vet: bool,
    },
    /// A correction of an entry, after asking the former keeper.
    WhatItCameWith {
        /// The entry with which the colony arrived.
        entry: EntryId,
    },
    /// The leaflet of a medicine, which gives its class.
    LeafletOfMedicine,
    /// A reading of the leaflet of each lot; of the next lot, if none is in stock.
    Reading(Reading),
}

/// Something to inspect in a colony.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Look {
    /// The brood.
    Brood,
    /// Whether a feeder is on.
    Feeder,
    /// A count.
    Count(Counting),
}

/// Something to read on a leaflet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Reading {
    /// The leaflet's rule on a topic.
    Topic(Topic),
    /// How a course runs.
    Course(Vec<Term>),
    /// Whether it agrees with the built-in leaflet.
    Confirmation {
        /// The topic.
        topic: Topic,
        /// The value, in the words used to confirm it.
        says: String,
    },
}

/// What to do if no entry can supply it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NoEntry {
    /// Follow the leaflet in the pack.
    Pack,
    /// Follow the leaflet in the pack, or load one's own leaflet file.
    PackOrOwnLeaflet,
    /// Ask how the year is counted.
    AskHowTheYearIsCounted,
    /// Inspect the brood: none of the days asked about is late enough to decide.
    LookForBroodSince {
        /// The day of the last course.
        last: Day,
    },
    /// Inspect while it is in: whether there will be brood cannot be known beforehand.
    BroodShowsMeanwhile,
    /// Ask again with the ground as it will be once the assumption ends.
    AskWithTheGround,
    /// Wait until the next dose of the course already begun can no longer be given, or give it.
    WaitForNextDose,
    /// Ask the vet whether two medicines may be given on one day, or start on another day.
    AskTheVetOrAnotherDay,
    /// Ask again about the days from this day on.
    AskFrom {
        /// The day.
        day: Day,
    },
    /// Ask about days for which the colony's apiary is on record.
    AskOnceItsApiaryIsKnown,
    /// Inspect on the day after a split or uniting, and ask again about the days from then on.
    LookAfterParting(Look),
    /// It was in until this day: ask about days from then on, or correct it.
    WasInUntil {
        /// The day it came out.
        out: Day,
    },
    /// A later dose was given: ask about days after it, or correct it.
    LaterDose {
        /// The day of that dose.
        given: Day,
    },
    /// Nothing is missing.
    NothingToSupply,
}

impl Missing {
    /// Whether one entry would supply both, apart from its day.
    pub(super) fn asks_for_the_same(&self, other: &Missing) -> bool {
        let same = match (&self.remedy, &other.remedy) {
            (Remedy::Entry(one), Remedy::Entry(two)) => {
                one.kind == two.kind
                    && one.fields == two.fields
                    && one.lots == two.lots
                    && one.entries == two.entries
                    && (one.kind != Kind::NectarFlow || one.on == two.on)
            }
            (Remedy::NoEntry(one), Remedy::NoEntry(two)) => one == two,
            (Remedy::Entry(_), Remedy::NoEntry(_)) | (Remedy::NoEntry(_), Remedy::Entry(_)) => false,
        };
        // Compared by identifier: two power requirements count as one.
        self.about.as_str() == other.about.as_str() && same
    }
}
