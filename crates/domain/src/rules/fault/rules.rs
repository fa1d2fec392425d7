//! Values that do not go together, within a rule or between two.

use super::keys::TableName;
use crate::basics::calendar::Day;
use crate::basics::topic::Topic;
use crate::rules::law::words::{Field, Occasion, RecordSort};

type Key = &'static str;

/// What does not go together.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(missing_docs, reason = "the fields are what is told of the fault")]
pub enum RuleFault {
    /// The number under the key `most` is not above that under `least`.
    NotAbove { least: Key, most: Key, mend: SwapOr },
    /// The number `high` under the key `most` is less than `low` under `least`.
    Less { least: Key, low: i64, most: Key, high: i64 },
    /// None of several keys is there; what the rule lacks without them.
    NoneOf { rule: TableName, lacking: Lacking, keys: &'static [Key] },
    /// A key is missing that goes with the word under the key `of`.
    Needed { rule: TableName, key: Key, of: Key, word: &'static str },
    /// A key goes with a `word` under the key `of`, where another is written.
    Misplaced { key: Key, of: Key, written: &'static str, word: &'static str },
    /// A withdrawal period in days stands beside the statement that the label knows none.
    DaysBesideNone { key: Key },
    /// A single dose has a rule about what stays in the hive.
    NothingStays { topic: Topic },
    /// Two values of one thing are in force, first on this day, or always if both are open to the past. The line of the other.
    TwoInForce { of: ValueOf, on: Option<Day>, line: u32, apart: KeepApart },
    /// A rule for any brood stands beside one for one state of it, in this line.
    AnyBrood { topic: Topic, line: u32 },
    /// The least stay in days is above the longest; one of them is in this line.
    StayBounds { least: u16, most: u16, line: u32 },
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
#[expect(missing_docs, reason = "the fields are what is told of it")]
pub enum ValueOf {
    /// A topic of a leaflet.
    Topic(Topic),
    /// A field of a record on an occasion.
    Field { field: Field, occasion: Occasion },
    /// How many years these records must be kept.
    Years(Vec<RecordSort>),
    /// Within how many days an entry must be made on this occasion.
    WithinDays(Occasion),
}

/// How two values of one thing are kept apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[expect(missing_docs, reason = "the fields are what is told of it")]
pub enum KeepApart {
    /// The one without a label revision holds for every revision.
    EveryRevision,
    /// The one without a method holds for every method.
    EveryMethod,
    /// Both limits of one temperature belong in one rule.
    OneWindow,
    /// One of them is dropped, or begins later.
    OneOfTwo,
    /// The older one ends on this day; since when it is in force, if that is known.
    Until { until: Day, since: Option<Day> },
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
