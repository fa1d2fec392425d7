//! Why a condition is met, broken or unknown, with the facts used.

use ecow::EcoString;

use crate::basics::calendar::{Day, YearDay};
use crate::basics::confidence::Confidence;
use crate::basics::degrees::Celsius;
use crate::basics::fact::Fact;
use crate::basics::topic::Topic;
use crate::basics::words::{Access, Brood, Ground, Power, SupersDuring};
use crate::facts::MedicineGiven;
use crate::facts::apiary::{Origin, SiteFact};
use crate::facts::history::Term;
use crate::journal::entry::EntryId;
use crate::rules::leaflet::rule::Need;

/// The source of a fact about the apiary.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ToldBy {
    /// An entry.
    Entry(EntryId),
    /// The question itself, as an assumption.
    Question,
}

/// A fact about the site with its source, or which fact is missing.
pub type Told<T> = Fact<(T, ToldBy), SiteFact>;

/// Which temperature of a day counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// The maximum of the day.
    Maximum,
    /// The mean of minimum and maximum, over all days.
    Mean,
    /// The temperature at any time of the day.
    SomeMoment,
}

/// What is counted at an inspection.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Counting {
    /// Seams of bees.
    SeamsOfBees,
    /// Number of bees, as estimated.
    Bees,
    /// Brood boxes.
    BroodBoxes,
    /// Hive volume, in litres.
    LitresOfHive,
}

/// The period in which courses are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Within {
    /// From January to December.
    CalendarYear,
    /// Any twelve consecutive months.
    TwelveMonths,
    /// A year that the leaflet does not define: both ways of counting agree.
    Year,
    /// A broodless period.
    TimeWithoutBrood,
}

/// Why a condition is met, broken or unknown.
#[derive(Debug, Clone, PartialEq)]
#[expect(missing_docs, reason = "the fields are what is told of the reason")]
pub enum Because {
    /// The colony is not in the holding on that day.
    NotHere,
    /// The colony is in the holding.
    Here,
    /// The colony's apiary is not on record.
    ApiaryNotKnown,
    /// The colony was moved to another apiary within the days asked about.
    Moved { on: Day, entry: EntryId },
    /// The leaflet has directions for that day.
    HasDirections,
    /// The leaflet has no directions for that day.
    NoDirections,
    /// The leaflet does not state this, and it matters.
    NotStated { topic: Topic },
    /// The condition would be met, but the value was not read in a document for this country.
    NotDocumented { confidence: Confidence },
    /// No flow comes during the stay, but the length of the stay was not read in a document for this country.
    StayNotDocumented { confidence: Confidence, lacks: Vec<Term> },
    /// The days that were checked are suitable, but the length of the stay was not read in a document for this
    /// country.
    MayStayLonger { confidence: Confidence, lacks: Vec<Term> },
    /// The rule is not in force on that day.
    NotInForce,

    /// No harvest supers are on.
    NoSupersOn,
    /// Harvest supers are on.
    SupersOn { since: Day, entry: EntryId, value: SupersDuring },
    /// No flow comes while it would be in.
    NoFlow { next: Option<(Day, EntryId)> },
    /// A flow comes while it would be in.
    InFlow { early: Day, from: Day, entry: EntryId },
    /// A flow may have begun while it would be in.
    PerhapsInFlow { early: Day, late: Day, forage: String, entry: EntryId },
    /// It is out before the flow only if no brood is seen while it is in.
    FlowTurnsOnBrood { without: Day, with: Day, entry: EntryId },
    /// The length of the stay is not stated, and a flow comes while it may still be in.
    FlowBeforeStayIsKnown { from: Day, entry: EntryId, lacks: Vec<Term> },
    /// It would come out right before a flow, which the leaflet forbids.
    RightBeforeFlow { out: Day, from: Day, entry: EntryId },
    /// A flow comes later in the year in which it would come out. The leaflet forbids use right before a flow but
    /// gives no number of days.
    PerhapsBeforeFlow { out: Day, from: Day, entry: EntryId },
    /// The leaflet forbids use right before a flow, and no flow is on record from the day it would come out.
    NoFlowOnRecordSince { out: Day },
    /// No flow is on record for that year.
    FlowsNotRecorded { year: i32 },
    /// The leaflet allows use during a flow.
    FlowAllowed,
    /// All flows of the year are over and no supers are on.
    AfterLastFlow { last: Day },
    /// A flow of the year is still to come, or is not over.
    FlowStillToCome { from: Day, entry: EntryId },

    /// A medicine is in. `stays` says whether anything of it stays beyond the day of a dose.
    AlreadyIn { medicine: MedicineGiven, placed: Day, entry: EntryId, stays: bool },
    /// Another medicine is in, and it is not stated whether the two may be combined.
    BesideIsNotStated { medicine: MedicineGiven, placed: Day, entry: EntryId, stays: bool },
    /// A medicine may be in, or a further dose of it may still be given.
    PerhapsIn { medicine: MedicineGiven, placed: Day, entry: EntryId, stays: bool },
    /// The medicines that the colony arrived with, or got before, are not known.
    CameWithUnknown { since: Day, entry: EntryId },
    /// Courses that may have been in by then are in an archive.
    RecordsInArchive { through: Day, entry: EntryId },
    /// No other medicine is in.
    NothingIn,
    /// A feeder is on.
    Feeder { seen: Day, entry: EntryId },
    /// No feeder is on.
    NoFeeder { seen: Day, entry: EntryId },
    /// No recorded inspection says whether a feeder is on.
    FeederNotSeen,

    /// Brood, as inspected.
    BroodSeen { brood: Brood, on: Day, entry: EntryId },
    /// The brood was last inspected too long ago, or never.
    BroodNotSeen { last: Option<Day> },
    /// Bees or boxes, as counted.
    Counted { what: Counting, count: u32, on: Day, entry: EntryId },
    /// The count is too old, missing, or too close to the limit to decide.
    NotCounted { what: Counting, last: Option<(u32, Day)> },

    /// The number of courses in a period.
    Courses { given: u8, most: u8, within: Within, last: Option<Day> },
    /// The two ways of counting a year give different answers, and the leaflet does not say which applies.
    CoursesTurnOnYear { in_calendar_year: u8, in_twelve_months: u8, most: u8 },
    /// A course was given, and no brood has been seen since.
    SameBroodlessPeriod { last: Day, seen_absent: bool },
    /// Brood was seen since the last course.
    BroodSince { last: Day, seen: Day },
    /// No course was given before.
    NoCourseBefore,
    /// Days since the last course ended.
    SinceLast { ended: Day, days: i64, least: u16 },
    /// The end of the last course is not on record.
    LastNotEnded { placed: Day, entry: EntryId },
    /// Whether the day is in season.
    InSeason { from: YearDay, to: YearDay, inside: bool },
    /// The last courses were of the same class.
    ClassRepeats { class: EcoString, medicine: MedicineGiven, placed: Day },
    /// Neither of the last two courses is known to be of this class.
    ClassDiffers { class: EcoString },
    /// The class of a recent course is not known.
    ClassNotKnown { medicine: MedicineGiven, placed: Day },

    /// Power at the apiary.
    Power { need: Need, has: Told<Power> },
    /// Access to the apiary on a day.
    Access { has: Told<Access>, on: Day },
    /// Ground at the stands.
    Ground { has: Told<Ground> },
    /// The question assumed wet ground, and its assumption ended: the ground is not known to be dry.
    GroundOnceAssumedWet,

    /// All temperatures are suitable. `untold` gives the first and last day known only from usual years.
    Warm {
        measure: Measure,
        lowest: Celsius,
        highest: Celsius,
        origin: Origin,
        entry: Option<EntryId>,
        untold: Untold,
    },
    /// A temperature breaks the rule.
    OutOfBounds {
        measure: Measure,
        on: Day,
        value: Celsius,
        origin: Origin,
        entry: Option<EntryId>,
        untold: Untold,
    },
    /// The first day without a temperature.
    NoTemperature { measure: Measure, first: Day, untold: Untold },
    /// How long it stays, or when it is given again, is not known, so the days that count are not known.
    StayNotKnown { lacks: Vec<Term> },
}

/// The first and last day whose temperature was neither measured nor forecast.
pub type Untold = Option<(Day, Day)>;

impl Because {
    /// Whether two consecutive start days are reported together.
    pub(super) fn goes_on_with(&self, next: &Because) -> bool {
        match (self, next) {
            // Each start day checks its own temperatures: a run shows the range of all of them.
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
            (Because::Access { has: a, .. }, Because::Access { has: b, .. }) => a == b,
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
            | Because::RecordsInArchive { entry, .. }
            | Because::Moved { entry, .. }
            | Because::BesideIsNotStated { entry, .. }
            | Because::Feeder { entry, .. }
            | Because::NoFeeder { entry, .. }
            | Because::BroodSeen { entry, .. }
            | Because::Counted { entry, .. }
            | Because::LastNotEnded { entry, .. } => Some(*entry),
            Because::OutOfBounds { entry, .. } | Because::Warm { entry, .. } => *entry,
            Because::Power { has, .. } => entry_of(has),
            Because::Access { has, .. } => entry_of(has),
            Because::Ground { has } => entry_of(has),
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
            | Because::GroundOnceAssumedWet
            | Because::NoTemperature { .. }
            | Because::StayNotKnown { .. } => None,
        }
    }

    /// The days for which a temperature would help.
    pub(super) fn untold(&self) -> Untold {
        let (Because::Warm { untold, .. }
        | Because::OutOfBounds { untold, .. }
        | Because::NoTemperature { untold, .. }) = self
        else {
            return None;
        };
        *untold
    }

    /// Also asks for the temperatures of these days.
    pub(super) fn also_untold(&mut self, days: Untold) {
        if let Because::Warm { untold, .. }
        | Because::OutOfBounds { untold, .. }
        | Because::NoTemperature { untold, .. } = self
        {
            *untold = both(*untold, days);
        }
    }

    /// Extends the reason to a further start day of the run.
    pub(super) fn widen(&mut self, next: &Because) {
        if let (Because::Warm { lowest, highest, .. }, Because::Warm { lowest: low, highest: high, .. }) =
            (self, next)
        {
            *lowest = (*lowest).min(*low);
            *highest = (*highest).max(*high);
        }
    }
}

/// The entry that states a fact about the site.
fn entry_of<T>(has: &Told<T>) -> Option<EntryId> {
    match has {
        Fact::Known((_, ToldBy::Entry(entry))) => Some(*entry),
        Fact::Known((_, ToldBy::Question)) | Fact::NotKnown(_) => None,
    }
}

/// The days from the earlier first to the later last.
pub(super) fn both(one: Untold, two: Untold) -> Untold {
    match (one, two) {
        (Some((from, to)), Some((first, last))) => Some((from.min(first), to.max(last))),
        (one, two) => one.or(two),
    }
}
