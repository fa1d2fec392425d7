//! Values that do not go together, within a rule or between two.

use super::keys::TableName;
use crate::basics::calendar::Day;
use crate::basics::topic::Topic;
use crate::rules::law::words::{Field, Occasion, RecordSort};

type Key = &'static str;

/// What does not go together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum RuleFault {
    /// A number is not above another.
    NotAbove {
        /// The key of the lower one.
        least: Key,
        /// The key of the one that would have to be above it.
        most: Key,
        /// How it is mended.
        mend: SwapOr,
    },
    /// A number is less than another.
    Less {
        /// The key of the least.
        least: Key,
        /// The least.
        low: i64,
        /// The key of the most.
        most: Key,
        /// The most.
        high: i64,
    },
    /// None of several keys is there.
    NoneOf {
        /// The rule.
        rule: TableName,
        /// What the rule lacks without them.
        lacking: Lacking,
        /// The keys.
        keys: &'static [Key],
    },
    /// A key is missing that a word of another needs.
    Needed {
        /// The rule.
        rule: TableName,
        /// The key.
        key: Key,
        /// The key of the word.
        of: Key,
        /// The word.
        word: &'static str,
    },
    /// A key stands beside a word with which it does not go.
    Misplaced {
        /// The key.
        key: Key,
        /// The key of the word.
        of: Key,
        /// The word.
        written: &'static str,
        /// The word with which it goes.
        word: &'static str,
    },
    /// A withdrawal period in days stands beside the statement that the label knows none.
    DaysBesideNone {
        /// The key of the days.
        key: Key,
    },
    /// A single dose has a rule about what stays in the hive.
    NothingStays {
        /// What the rule is about.
        topic: Topic,
    },
    /// Two values of one thing are in force on one day.
    TwoInForce {
        /// Of what.
        of: ValueOf,
        /// The first such day; none if both are open to the past.
        on: Option<Day>,
        /// The line of the other.
        line: u32,
        /// How they are kept apart.
        apart: KeepApart,
    },
    /// A rule for any brood stands beside one for one state of it.
    AnyBrood {
        /// What both are about.
        topic: Topic,
        /// The line of the other.
        line: u32,
    },
    /// The least stay is above the longest.
    StayBounds {
        /// The least, in days.
        least: u16,
        /// The longest.
        most: u16,
        /// The line of the other.
        line: u32,
    },
}

/// How two numbers in the wrong order are mended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SwapOr {
    /// Swap or correct them.
    Swap,
    /// Correct the greater one, or leave it out.
    LeaveOut,
}

/// What a rule lacks without any of some keys.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lacking {
    /// A limit of temperature.
    Limit,
    /// A size of the colony.
    Size,
    /// For how many bees it is.
    Bees,
}

/// What a value is of, where there can be only one on a day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ValueOf {
    /// A topic of a leaflet.
    Topic(Topic),
    /// A field of a record.
    Field {
        /// The field.
        field: Field,
        /// The occasion of the record.
        occasion: Occasion,
    },
    /// How many years these records must be kept.
    Years(Vec<RecordSort>),
    /// Within how many days an entry must be made on this occasion.
    WithinDays(Occasion),
}

/// How two values of one thing are kept apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum KeepApart {
    /// The one without a label revision holds for every revision.
    EveryRevision,
    /// The one without a method holds for every method.
    EveryMethod,
    /// Both limits of one temperature belong in one rule.
    OneWindow,
    /// One of them is dropped, or begins later.
    OneOfTwo,
    /// The older one ends.
    Until {
        /// On this day.
        until: Day,
        /// The day on which it begins; none if it is open to the past.
        since: Option<Day>,
    },
}

impl KeepApart {
    /// How two values that begin on these days are kept apart. An unknown start counts as the earliest.
    pub(in crate::rules) fn by_days(one: Option<Day>, two: Option<Day>) -> KeepApart {
        let (since, newer) = (one.min(two), one.max(two));
        newer
            .filter(|_| since != newer)
            .map_or(KeepApart::OneOfTwo, |newer| KeepApart::Until { until: newer.before(), since })
    }
}
