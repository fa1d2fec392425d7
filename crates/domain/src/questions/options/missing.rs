//! Something that is not known, and what would supply it.

use super::about::About;
use super::reason::{Because, Counting};
use crate::basics::calendar::Day;
use crate::basics::topic::Topic;
use crate::basics::words::LotName;
use crate::facts::history::Term;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;

/// Something that is not known.
#[derive(Debug, Clone, PartialEq)]
pub struct Missing {
    /// What it bears on.
    pub about: About,
    /// The rule of the leaflet whose condition is not known to hold, by its index.
    pub rule: Option<usize>,
    /// Why it is not known.
    pub because: Because,
    /// What would supply it.
    pub remedy: Remedy,
    /// Where it concerns later start days alone: the first of them.
    pub from: Option<Day>,
}

/// What would supply something.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Remedy {
    /// An entry.
    Entry(EntryToMake),
    /// No entry can; what to do instead.
    NoEntry(NoEntry),
}

/// An entry that would supply it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EntryToMake {
    /// Its kind.
    pub kind: Kind,
    /// The fields that it must fill in, `field=value` where only that value would do.
    pub fields: Vec<&'static str>,
    /// The first and the last day on which it can lie; of temperatures and flows, which are recorded when they are known, the
    /// days of which it must tell.
    pub on: Option<(Day, Day)>,
    /// The lots whose leaflets are to be read, each of them.
    pub lots: Vec<LotName>,
    /// The entries that it is about: a first dose that is to come out, an entry to be corrected.
    pub entries: Vec<EntryId>,
    /// What is done and recorded.
    pub what: ToRecord,
}

/// What is done and recorded.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ToRecord {
    /// Something is looked at in the colony.
    Look(Look),
    /// The brood is looked at: any that is seen after this day ends a time without brood.
    BroodSince {
        /// The last course.
        last: Day,
    },
    /// What was measured, or the forecast.
    Temperatures,
    /// The flows that are expected in a year.
    FlowsOf {
        /// The year.
        year: i32,
    },
    /// The next flow that is expected.
    NextFlow {
        /// From this day on.
        from: Day,
    },
    /// A flow, once it is seen.
    FlowSeen {
        /// What is in flower.
        forage: String,
    },
    /// A fact of the site.
    Site {
        /// Which.
        fact: SiteFact,
        /// The day on which it is so.
        on: Day,
    },
    /// What is in is taken out.
    Removal {
        /// The day of its placing.
        placed: Day,
        /// The last day for it.
        by: Day,
        /// Whether a vet may know that the two may be in together.
        or_ask_the_vet: bool,
    },
    /// An entry is corrected, once whoever kept the colony before was asked.
    WhatItCameWith {
        /// The entry with which it came.
        entry: EntryId,
    },
    /// The leaflet of a medicine is named, so that its class is known.
    LeafletOfMedicine,
    /// Something is read on the leaflet of each lot; on that of the next lot, where none is in stock.
    Reading(Reading),
}

/// Something to be looked at in a colony.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Look {
    /// The brood.
    Brood,
    /// Whether a feeder is on.
    Feeder,
    /// Something to be counted.
    Count(Counting),
}

/// A fact of a site.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SiteFact {
    /// The power there.
    Power,
    /// How it can be reached.
    Access,
    /// The ground at the stands.
    Ground,
}

/// Something to be read on a leaflet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Reading {
    /// What it says on a topic.
    Topic(Topic),
    /// How a course runs.
    Course(Vec<Term>),
    /// Whether it says the same as the leaflet here.
    Confirmation {
        /// The topic.
        topic: Topic,
        /// The value in the words in which it is confirmed.
        says: String,
    },
}

/// What to do where no entry can carry it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NoEntry {
    /// Go by the leaflet on the pack.
    Pack,
    /// Go by the leaflet on the pack, or load one of one's own.
    PackOrOwnLeaflet,
    /// Ask how the year is counted.
    AskHowTheYearIsCounted,
    /// Look at the brood: no day asked about is late enough to tell.
    LookForBroodSince {
        /// The last course.
        last: Day,
    },
    /// Inspect while it is in: nothing tells beforehand whether there will be brood.
    BroodShowsMeanwhile,
    /// Ask with what the ground will be once what was assumed of it has ended.
    AskWithTheGround,
    /// Wait until the next dose of what was begun can no longer be given, or give it.
    WaitForNextDose,
    /// Ask the vet whether two medicines may be given on one day, or start on another.
    AskTheVetOrAnotherDay,
    /// Ask anew about the days from a day on.
    AskFrom {
        /// The day.
        day: Day,
    },
    /// Ask about days on which it is on record where the colony stands.
    AskOnceItsApiaryIsKnown,
    /// Look on the day after a split or a uniting, and ask anew about the days from then on.
    LookAfterParting(Look),
    /// It was in until this day: ask about days from then on, or correct it.
    WasInUntil {
        /// The day on which it came out.
        out: Day,
    },
    /// A later dose of it was given: ask about days from then on, or correct it.
    LaterDose {
        /// The day of that dose.
        given: Day,
    },
    /// What is known leaves nothing to supply.
    NothingToSupply,
}

impl Missing {
    /// Whether one entry of a kind would supply both, apart from the days of it.
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
        // By the word for programs: two needs of power are one.
        self.about.as_str() == other.about.as_str() && same
    }
}
