//! The entry that would supply a missing fact: its kind, its content and its days.
//!
//! Every entry can be recorded as asked for, and then the fact is no longer missing. If no entry can supply it, none
//! is named.

use super::choice::Choice;
use super::colony::{BROOD_NEED_TELLS_DAYS, COUNT_TELLS_DAYS, Colony, FEEDER_TELLS_DAYS};
use super::missing::{EntryToMake, Look, Missing, NoEntry, Reading, Remedy, ToRecord};
use super::reason::{Because, Counting, Untold};
use super::state::{Condition, Run};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::topic::Topic;
use crate::facts::apiary::SiteFact;
use crate::facts::confirmed;
use crate::facts::history::{End, Term};
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;
use crate::rules::leaflet::Rule;

/// A missing fact.
pub(super) struct Blank<'a> {
    pub(super) choice: &'a Choice,
    pub(super) colony: &'a Colony<'a>,
    pub(super) condition: &'a Condition,
    /// The run of start days with the open condition.
    pub(super) run: &'a Run,
    /// The first of its start days concerned.
    pub(super) from: Day,
    pub(super) to: Day,
}

impl EntryToMake {
    fn new(kind: Kind, fields: &[&'static str], what: ToRecord) -> EntryToMake {
        EntryToMake { kind, fields: fields.to_vec(), on: None, lots: Vec::new(), entries: Vec::new(), what }
    }

    fn on(self, from: Day, by: Day) -> EntryToMake {
        EntryToMake { on: Some((from, by)), ..self }
    }
}

/// The entry that would supply it, or what to do if no entry can.
type Found = Result<EntryToMake, NoEntry>;

impl Blank<'_> {
    /// The missing fact, with what would supply it.
    pub(super) fn missing(&self) -> Missing {
        let mut from = self.from;
        let remedy = match self.remedy(&mut from) {
            Ok(entry) => Remedy::Entry(entry),
            Err(instead) => Remedy::NoEntry(instead),
        };
        Missing {
            about: self.condition.about,
            rule: self.condition.rule,
            because: self.run.because.clone(),
            remedy,
            from: Some(from),
        }
    }

    fn rule(&self) -> Option<&Rule> {
        self.condition.rule.and_then(|index| self.choice.leaflet.rules.get(index))
    }

    /// What would supply it. `from` is the first start day concerned; it moves if the entry can only help a later
    /// one.
    #[expect(clippy::too_many_lines, reason = "one arm for each reason")]
    fn remedy(&self, from: &mut Day) -> Found {
        match &self.run.because {
            Because::NotDocumented { .. } => {
                self.read(self.rule().map(|rule| rule.says.topic()).or(self.condition.about.topic()))
            }
            Because::NotStated { topic } => self.read(Some(*topic)),
            Because::StayNotDocumented { lacks, .. }
            | Because::MayStayLonger { lacks, .. }
            | Because::FlowBeforeStayIsKnown { lacks, .. }
            | Because::StayNotKnown { lacks } => self.read_course(lacks),
            Because::NoDirections => Err(NoEntry::PackOrOwnLeaflet),
            Because::CoursesTurnOnYear { .. } => Err(NoEntry::AskHowTheYearIsCounted),

            Because::BroodNotSeen { .. } => self.look(from, BROOD_NEED_TELLS_DAYS, "brood", Look::Brood),
            Because::NotCounted { what, .. } => {
                let field = match what {
                    Counting::SeamsOfBees => "seams",
                    Counting::Bees => "bees",
                    Counting::BroodBoxes => "brood_boxes",
                    Counting::LitresOfHive => "hive_litres",
                };
                self.look(from, COUNT_TELLS_DAYS, field, Look::Count(*what))
            }
            Because::FeederNotSeen => self.look(from, FEEDER_TELLS_DAYS, "feeder", Look::Feeder),
            Because::SameBroodlessPeriod { last, .. } => {
                // Only an inspection shows whether brood came and went again since.
                let since = self.colony.since().map_or(last.next(), |since| since.max(last.next()));
                let day = self.from.max(since);
                if day > self.to {
                    return Err(NoEntry::LookForBroodSince { last: *last });
                }
                *from = day;
                let what = ToRecord::BroodSince { last: *last };
                Ok(EntryToMake::new(Kind::Inspection, &["brood=present"], what).on(since, day))
            }
            Because::FlowTurnsOnBrood { .. } => Err(NoEntry::BroodShowsMeanwhile),

            Because::NoTemperature { untold, .. }
            | Because::OutOfBounds { untold, .. }
            | Because::Warm { untold, .. } => Ok(self.temperatures(*untold)),

            Because::FlowsNotRecorded { year } => {
                let what = ToRecord::FlowsOf { year: *year };
                let entry = EntryToMake::new(Kind::NectarFlow, &["from"], what);
                Ok(match (Day::new(*year, 1, 1), Day::new(*year, 12, 31)) {
                    (Some(first), Some(last)) => entry.on(first, last),
                    _ => entry,
                })
            }
            Because::NoFlowOnRecordSince { out } => {
                let what = ToRecord::NextFlow { from: *out };
                Ok(EntryToMake::new(Kind::NectarFlow, &["from"], what).on(*out, Day::LAST))
            }
            Because::PerhapsBeforeFlow { .. } => self.read(Some(Topic::FlowBefore)),
            Because::PerhapsInFlow { early, late, forage, .. } => {
                let what = ToRecord::FlowSeen { forage: forage.clone() };
                let fields = ["stage=seen", "forage", "from", "to"];
                Ok(EntryToMake::new(Kind::NectarFlow, &fields, what).on(*early, *late))
            }

            Because::Power { has: Fact::NotKnown(fact), .. }
            | Because::Access { has: Fact::NotKnown(fact), .. }
            | Because::Ground { has: Fact::NotKnown(fact) } => Ok(self.site(*fact)),
            Because::GroundOnceAssumedWet => Err(NoEntry::AskWithTheGround),

            Because::PerhapsIn { placed, entry, stays: true, .. }
            | Because::LastNotEnded { placed, entry } => self.take_out(*placed, *entry, false),
            Because::BesideIsNotStated { placed, entry, stays: true, .. } => {
                self.take_out(*placed, *entry, true)
            }
            Because::PerhapsIn { stays: false, .. } => Err(NoEntry::WaitForNextDose),
            Because::BesideIsNotStated { stays: false, .. } => Err(NoEntry::AskTheVetOrAnotherDay),

            Because::CameWithUnknown { entry, .. } => {
                let what = ToRecord::WhatItCameWith { entry: *entry };
                let made = EntryToMake::new(Kind::ColonyEstablished, &["medicines"], what);
                Ok(EntryToMake { entries: vec![*entry], ..made })
            }
            Because::Moved { on, .. } => Err(NoEntry::AskFrom { day: *on }),
            Because::RecordsInArchive { through, .. } => Err(NoEntry::AskFrom { day: through.next() }),
            Because::ApiaryNotKnown => Err(NoEntry::AskOnceItsApiaryIsKnown),
            Because::ClassNotKnown { .. } => {
                Ok(EntryToMake::new(Kind::MedicineDescribed, &["leaflet"], ToRecord::LeafletOfMedicine))
            }

            // These facts are known, so nothing is missing.
            Because::NotHere
            | Because::Here
            | Because::HasDirections
            | Because::NotInForce
            | Because::NoSupersOn
            | Because::SupersOn { .. }
            | Because::NoFlow { .. }
            | Because::InFlow { .. }
            | Because::FlowAllowed
            | Because::RightBeforeFlow { .. }
            | Because::AfterLastFlow { .. }
            | Because::FlowStillToCome { .. }
            | Because::AlreadyIn { .. }
            | Because::NothingIn
            | Because::Feeder { .. }
            | Because::NoFeeder { .. }
            | Because::BroodSeen { .. }
            | Because::Counted { .. }
            | Because::Courses { .. }
            | Because::BroodSince { .. }
            | Because::NoCourseBefore
            | Because::SinceLast { .. }
            | Because::InSeason { .. }
            | Because::ClassRepeats { .. }
            | Because::ClassDiffers { .. }
            | Because::Power { has: Fact::Known(_), .. }
            | Because::Access { has: Fact::Known(_), .. }
            | Because::Ground { has: Fact::Known(_) } => Err(NoEntry::NothingToSupply),
        }
    }

    /// An inspection at most `tells` days before the start day, on a day when the colony is the same as at the start.
    fn look(&self, from: &mut Day, tells: u16, field: &'static str, look: Look) -> Found {
        let mut day = self.from;
        while let Some(since) = self.colony.since_parted(day).filter(|since| *since > day) {
            if since > self.to {
                return Err(NoEntry::LookAfterParting(look));
            }
            day = since;
        }
        let since = self.colony.since_parted(day);
        let earliest = since.map_or(day.minus(tells), |since| since.max(day.minus(tells)));
        *from = day;
        Ok(EntryToMake::new(Kind::Inspection, &[field], ToRecord::Look(look)).on(earliest, day))
    }

    /// Temperatures of the days that count. They move on with the start day.
    fn temperatures(&self, untold: Untold) -> EntryToMake {
        let later = u16::try_from(self.from.days_since(self.run.from)).unwrap_or(u16::MAX);
        let entry = EntryToMake::new(Kind::Temperature, &["days"], ToRecord::Temperatures);
        match untold.map(|(first, last)| (first.max(self.from), last.plus(later))) {
            Some((first, last)) => entry.on(first, last),
            None => entry,
        }
    }

    fn site(&self, fact: SiteFact) -> EntryToMake {
        let what = ToRecord::Site { fact, on: self.from };
        EntryToMake::new(Kind::SiteConditions, &[fact.field()], what).on(self.from, self.from)
    }

    /// The removal of a medicine by the start day, unless the record says that it came out later.
    fn take_out(&self, placed: Day, entry: EntryId, or_ask_the_vet: bool) -> Found {
        let lines = self.colony.history.courses.iter().filter(|course| course.entry == entry);
        let later = lines.filter_map(|course| match course.end {
            End::Out { on, .. } => Some(on),
            End::Open => None,
        });
        if let Some(out) = later.filter(|out| *out > self.from).max() {
            return Err(NoEntry::WasInUntil { out });
        }
        let lines = self.colony.history.courses.iter().filter(|course| course.entry == entry);
        // A removal on the day of a dose takes out the carrier before it.
        let later = lines.flat_map(|course| &course.doses).map(|dose| dose.on);
        let later_dose = later.filter(|on| *on >= self.from && *on > placed).max();
        if let Some(given) = later_dose {
            return Err(NoEntry::LaterDose { given });
        }
        let what = ToRecord::Removal { placed, by: self.from, or_ask_the_vet };
        let made = EntryToMake::new(Kind::Removal, &["administration", "colonies"], what);
        Ok(EntryToMake { entries: vec![entry], ..made.on(placed, self.from) })
    }

    /// A reading of the leaflet of every lot in stock.
    fn read(&self, topic: Option<Topic>) -> Found {
        let Some(topic) = topic else { return Err(NoEntry::Pack) };
        match (term_of(topic).and_then(Term::field_of_reading), self.confirmed()) {
            (Some(field), _) => Ok(self.on_the_leaflet(&[field], Reading::Topic(topic))),
            (None, Some(says)) => {
                Ok(self.on_the_leaflet(&["confirms"], Reading::Confirmation { topic, says }))
            }
            (None, None) => Err(NoEntry::Pack),
        }
    }

    /// The value of the rule, in the words used to confirm it.
    fn confirmed(&self) -> Option<String> {
        self.rule().map(|rule| confirmed::in_words(&rule.says, self.choice.leaflet.unit))
    }

    fn read_course(&self, lacks: &[Term]) -> Found {
        let fields: Option<Vec<&'static str>> = lacks.iter().map(|term| term.field_of_reading()).collect();
        match fields.filter(|fields| !fields.is_empty()) {
            Some(fields) => Ok(self.on_the_leaflet(&fields, Reading::Course(lacks.to_vec()))),
            None => Err(NoEntry::PackOrOwnLeaflet),
        }
    }

    fn on_the_leaflet(&self, fields: &[&'static str], reading: Reading) -> EntryToMake {
        let lots = self.choice.to_read.clone();
        // Without a lot there is nothing to read yet.
        let made = if lots.is_empty() {
            EntryToMake::new(Kind::LotAcquired, &[], ToRecord::Reading(reading))
        } else {
            EntryToMake::new(Kind::LeafletReading, fields, ToRecord::Reading(reading))
        };
        EntryToMake { lots, ..made }
    }
}

/// The term that a topic states. `None` if the keeper confirms it in words.
const fn term_of(topic: Topic) -> Option<Term> {
    match topic {
        Topic::SupersDuring => Some(Term::SupersDuring),
        Topic::FlowDuring => Some(Term::FlowDuring),
        Topic::FlowBefore => Some(Term::FlowBefore),
        Topic::Withdrawal => Some(Term::Withdrawal),
        Topic::WaitAfterRemoval => Some(Term::Wait),
        Topic::Removal => Some(Term::Removal),
        Topic::StayMin => Some(Term::StayMin),
        Topic::StayMax => Some(Term::StayMax),
        Topic::Doses => Some(Term::Doses),
        Topic::HarvestDuring
        | Topic::CombRule
        | Topic::CoursesPerYear
        | Topic::CoursesPerBroodlessPeriod
        | Topic::GapBetweenCourses
        | Topic::Season
        | Topic::Timing
        | Topic::Temperature
        | Topic::BroodNeed
        | Topic::ColonySize
        | Topic::BroodBoxes
        | Topic::Entrance
        | Topic::Dose
        | Topic::DoseCap
        | Topic::Recipe
        | Topic::Needs
        | Topic::NotWith
        | Topic::Contraindication
        | Topic::Class
        | Topic::WholeApiary
        | Topic::UserSafety
        | Topic::AfterOpening
        | Topic::Storage
        | Topic::Disposal => None,
    }
}
