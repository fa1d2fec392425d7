//! Why a condition holds, is broken or is not known: what was read.

use crate::basics::calendar::{Day, YearDay};
use crate::basics::confidence::Confidence;
use crate::basics::degrees::Celsius;
use crate::basics::topic::Topic;
use crate::facts::apiary::Origin;
use crate::facts::history::Term;
use crate::journal::entry::EntryId;
use crate::rules::leaflet::rule::Need;

use crate::basics::words::{Access, Brood, Ground, MedicineName, Power, SupersDuring};

/// Who told a fact about the apiary.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ToldBy {
    /// An entry.
    Entry(EntryId),
    /// The question itself, as a what-if.
    Question,
}

/// Which temperature of a day is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// The highest of the day.
    Maximum,
    /// The mean of lowest and highest, over all the days.
    Mean,
    /// Any moment of the day.
    SomeMoment,
}

/// What is counted at an inspection.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Counting {
    /// Seams of bees.
    SeamsOfBees,
    /// Bees, as estimated.
    Bees,
    /// Brood boxes.
    BroodBoxes,
    /// Litres that the hive holds.
    LitresOfHive,
}

/// The time within which courses are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Within {
    /// From January to December.
    CalendarYear,
    /// Any twelve months on end.
    TwelveMonths,
    /// A year that the leaflet does not describe: both ways of counting agree.
    Year,
    /// A time without brood.
    TimeWithoutBrood,
}

/// Why a condition came out as it did.
#[derive(Debug, Clone, PartialEq)]
#[expect(missing_docs, reason = "the fields are what is told of the reason")]
pub enum Because {
    /// The colony is not alive, or not yet.
    NotHere,
    /// The colony stands here.
    Here,
    /// It is not on record where the colony stands.
    ApiaryNotKnown,
    /// The colony was moved to another apiary within the days asked about.
    Moved { on: Day, entry: EntryId },
    /// The leaflet has directions for that day.
    HasDirections,
    /// The leaflet has none for that day.
    NoDirections,
    /// The leaflet does not say it, and it matters.
    NotStated { topic: Topic },
    /// The condition would hold, but the value was not read in a document for this country.
    NotDocumented { confidence: Confidence },
    /// No flow would come while it is in, but how long it stays was not read in a document for this country.
    StayNotDocumented { confidence: Confidence, lacks: Vec<Term> },
    /// The days that were looked at would do, but how long it stays was not read in a document for this country.
    MayStayLonger { confidence: Confidence, lacks: Vec<Term> },
    /// The rule is not in force on that day.
    NotInForce,

    /// No harvest supers are on.
    NoSupersOn,
    /// Harvest supers are on.
    SupersOn { since: Day, entry: EntryId, value: SupersDuring },
    /// No flow while it would be in.
    NoFlow { next: Option<(Day, EntryId)> },
    /// A flow while it would be in.
    InFlow { early: Day, from: Day, entry: EntryId },
    /// A flow may have begun while it would be in.
    PerhapsInFlow { early: Day, late: Day, forage: String, entry: EntryId },
    /// It would be out before the flow only if no brood is seen while it is in.
    FlowTurnsOnBrood { without: Day, with: Day, entry: EntryId },
    /// It is not stated how long it stays, and a flow comes while it may still be in.
    FlowBeforeStayIsKnown { from: Day, entry: EntryId, lacks: Vec<Term> },
    /// It would be out right before a flow, which the leaflet forbids.
    RightBeforeFlow { out: Day, from: Day, entry: EntryId },
    /// A flow comes later in the year in which it would be out. The leaflet forbids the time right before a flow and names no days.
    PerhapsBeforeFlow { out: Day, from: Day, entry: EntryId },
    /// The leaflet forbids the time right before a flow, and none is on record from the day on which it would be out.
    NoFlowOnRecordSince { out: Day },
    /// No flow of that year is on record.
    FlowsNotRecorded { year: i32 },
    /// The leaflet allows it.
    FlowAllowed,
    /// All the flows of the year are over and no supers are on.
    AfterLastFlow { last: Day },
    /// A flow of the year is still to come or not over.
    FlowStillToCome { from: Day, entry: EntryId },

    /// A medicine is in; nothing of it stays beyond the day of a dose, or something does.
    AlreadyIn { medicine: MedicineName, placed: Day, entry: EntryId, stays: bool },
    /// Another medicine is in, and nobody says whether the two may be in together.
    BesideIsNotStated { medicine: MedicineName, placed: Day, entry: EntryId, stays: bool },
    /// It is in doubt whether a medicine is in, or a further dose of it may still be given.
    PerhapsIn { medicine: MedicineName, placed: Day, entry: EntryId, stays: bool },
    /// It is not known what the colony came with, or was given before.
    CameWithUnknown { since: Day, entry: EntryId },
    /// Nothing is in.
    NothingIn,
    /// A feeder is on.
    Feeder { seen: Day, entry: EntryId },
    /// No feeder is on.
    NoFeeder { seen: Day, entry: EntryId },
    /// Nobody has recorded whether a feeder is on.
    FeederNotSeen,

    /// Brood as seen.
    BroodSeen { brood: Brood, on: Day, entry: EntryId },
    /// The brood was last seen too long ago, or never.
    BroodNotSeen { last: Option<Day> },
    /// Bees or boxes as counted.
    Counted { what: Counting, count: u32, on: Day, entry: EntryId },
    /// The count was made too long ago, or never, or lets both be.
    NotCounted { what: Counting, last: Option<(u32, Day)> },

    /// Courses within a time.
    Courses { given: u8, most: u8, within: Within, last: Option<Day> },
    /// The two ways of counting a year give different answers, and the leaflet does not say which holds.
    CoursesTurnOnYear { in_calendar_year: u8, in_twelve_months: u8, most: u8 },
    /// A course was given, and nobody has seen brood since.
    SameBroodlessPeriod { last: Day, seen_absent: bool },
    /// Brood was seen since the last course.
    BroodSince { last: Day, seen: Day },
    /// No course before.
    NoCourseBefore,
    /// Days since the last course ended.
    SinceLast { ended: Day, days: i64, least: u16 },
    /// The last course has no end on record.
    LastNotEnded { placed: Day, entry: EntryId },
    /// The day of the year.
    InSeason { from: YearDay, to: YearDay, inside: bool },
    /// The class of the last courses.
    ClassRepeats { class: String, medicine: MedicineName, placed: Day },
    /// None of the last two courses is known to be of this class.
    ClassDiffers { class: String },
    /// The class of a last course is not known.
    ClassNotKnown { medicine: MedicineName, placed: Day },

    /// Power at the apiary.
    Power { need: Need, has: Option<Power>, by: Option<ToldBy> },
    /// Access to the apiary on a day.
    Access { has: Option<Access>, by: Option<ToldBy>, on: Day },
    /// Ground at the stands.
    Ground { has: Option<Ground>, by: Option<ToldBy> },

    /// Temperatures, all looked at; `untold` are the first and the last day of which only usual years tell.
    Warm {
        measure: Measure,
        lowest: Celsius,
        highest: Celsius,
        origin: Origin,
        entry: Option<EntryId>,
        untold: Untold,
    },
    /// The temperature that breaks it.
    OutOfBounds {
        measure: Measure,
        on: Day,
        value: Celsius,
        origin: Origin,
        entry: Option<EntryId>,
        untold: Untold,
    },
    /// The first day of which no temperature is known.
    NoTemperature { measure: Measure, first: Day, untold: Untold },
    /// How long it stays, or when it is given again, is not known, so neither is which days count.
    StayNotKnown { lacks: Vec<Term> },
}

/// The first and the last of the days of which no temperature was told, neither measured nor forecast.
pub type Untold = Option<(Day, Day)>;

impl Because {
    /// Whether two start days that follow one another are told together.
    pub(super) fn goes_on_with(&self, next: &Because) -> bool {
        match (self, next) {
            // Each start day looks at temperatures of its own: a run is told with the range of all of them.
            (Because::Warm { measure: a, origin: o, .. }, Because::Warm { measure: b, origin: p, .. }) => {
                a == b && o == p
            }
            (
                Because::OutOfBounds { measure: a, origin: o, .. },
                Because::OutOfBounds { measure: b, origin: p, .. },
            ) => a == b && o == p,
            (Because::FlowTurnsOnBrood { entry: a, .. }, Because::FlowTurnsOnBrood { entry: b, .. }) => {
                a == b
            }
            (Because::NoTemperature { measure: a, .. }, Because::NoTemperature { measure: b, .. }) => a == b,
            (Because::SinceLast { ended: a, .. }, Because::SinceLast { ended: b, .. }) => a == b,
            (Because::Access { has: a, by: x, .. }, Because::Access { has: b, by: y, .. }) => {
                a == b && x == y
            }
            _ => self == next,
        }
    }

    /// The entry that was read.
    #[must_use]
    pub fn entry(&self) -> Option<EntryId> {
        match self {
            Because::SupersOn { entry, .. }
            | Because::InFlow { entry, .. }
            | Because::RightBeforeFlow { entry, .. }
            | Because::PerhapsBeforeFlow { entry, .. }
            | Because::PerhapsInFlow { entry, .. }
            | Because::FlowTurnsOnBrood { entry, .. }
            | Because::FlowBeforeStayIsKnown { entry, .. }
            | Because::NoFlow { next: Some((_, entry)) }
            | Because::FlowStillToCome { entry, .. }
            | Because::AlreadyIn { entry, .. }
            | Because::PerhapsIn { entry, .. }
            | Because::CameWithUnknown { entry, .. }
            | Because::Moved { entry, .. }
            | Because::BesideIsNotStated { entry, .. }
            | Because::Feeder { entry, .. }
            | Because::NoFeeder { entry, .. }
            | Because::BroodSeen { entry, .. }
            | Because::Counted { entry, .. }
            | Because::LastNotEnded { entry, .. } => Some(*entry),
            Because::OutOfBounds { entry, .. } | Because::Warm { entry, .. } => *entry,
            Because::Power { by, .. } | Because::Access { by, .. } | Because::Ground { by, .. } => match by {
                Some(ToldBy::Entry(entry)) => Some(*entry),
                Some(ToldBy::Question) | None => None,
            },
            Because::NotHere
            | Because::Here
            | Because::ApiaryNotKnown
            | Because::HasDirections
            | Because::NoDirections
            | Because::NotStated { .. }
            | Because::NotDocumented { .. }
            | Because::StayNotDocumented { .. }
            | Because::MayStayLonger { .. }
            | Because::NotInForce
            | Because::NoSupersOn
            | Because::NoFlow { next: None }
            | Because::NoFlowOnRecordSince { .. }
            | Because::FlowsNotRecorded { .. }
            | Because::FlowAllowed
            | Because::AfterLastFlow { .. }
            | Because::NothingIn
            | Because::FeederNotSeen
            | Because::BroodNotSeen { .. }
            | Because::NotCounted { .. }
            | Because::Courses { .. }
            | Because::CoursesTurnOnYear { .. }
            | Because::SameBroodlessPeriod { .. }
            | Because::BroodSince { .. }
            | Because::NoCourseBefore
            | Because::SinceLast { .. }
            | Because::InSeason { .. }
            | Because::ClassRepeats { .. }
            | Because::ClassDiffers { .. }
            | Because::ClassNotKnown { .. }
            | Because::NoTemperature { .. }
            | Because::StayNotKnown { .. } => None,
        }
    }

    /// The days of which a temperature would tell more.
    pub(super) fn untold(&self) -> Untold {
        let (Because::Warm { untold, .. }
        | Because::OutOfBounds { untold, .. }
        | Because::NoTemperature { untold, .. }) = self
        else {
            return None;
        };
        *untold
    }

    /// Asks for the temperatures of further days as well.
    pub(super) fn also_untold(&mut self, days: Untold) {
        if let Because::Warm { untold, .. }
        | Because::OutOfBounds { untold, .. }
        | Because::NoTemperature { untold, .. } = self
        {
            *untold = both(*untold, days);
        }
    }

    /// Takes in what is told of a further start day of the run.
    pub(super) fn widen(&mut self, next: &Because) {
        if let (Because::Warm { lowest, highest, .. }, Because::Warm { lowest: low, highest: high, .. }) =
            (self, next)
        {
            *lowest = (*lowest).min(*low);
            *highest = (*highest).max(*high);
        }
    }
}

/// The days from the earlier first to the later last.
pub(super) fn both(one: Untold, two: Untold) -> Untold {
    match (one, two) {
        (Some((from, to)), Some((first, last))) => Some((from.min(first), to.max(last))),
        (one, two) => one.or(two),
    }
}
