//! What would supply something that is not known: which entry, with what in it, on which days.
//!
//! Whatever is asked for can be recorded as it is asked for, and then that blank is gone. Where no entry can carry it, none is
//! named.

use super::choice::Choice;
use super::colony::{BROOD_NEED_TELLS_DAYS, COUNT_TELLS_DAYS, Colony, FEEDER_TELLS_DAYS};
use super::reason::{Because, ToldBy, Untold};
use super::report::Missing;
use super::state::Run;
use super::wording::{lack_words, topic_words};
use crate::basics::calendar::Day;
use crate::basics::topic::Topic;
use crate::basics::words::LotName;
use crate::facts::history::End;
use crate::facts::history::Lack;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;

/// Of what something is not known.
pub(super) struct Blank<'a> {
    pub(super) choice: &'a Choice,
    pub(super) colony: &'a Colony<'a>,
    /// What the condition says of the start days.
    pub(super) run: &'a Run,
    /// Those of its start days that it concerns.
    pub(super) from: Day,
    pub(super) to: Day,
    /// The topic of the condition, and the value of its rule in words.
    pub(super) topic: Option<Topic>,
    pub(super) says: Option<&'a str>,
}

/// An entry that would supply it.
struct EntryToMake {
    kind: Kind,
    /// The fields of its body that it must fill in; one value alone where only that would do.
    fields: Vec<String>,
    on: Option<(Day, Day)>,
    how: String,
}

impl EntryToMake {
    fn new(kind: Kind, fields: &[&str], how: impl Into<String>) -> EntryToMake {
        EntryToMake {
            kind,
            fields: fields.iter().map(|field| (*field).to_owned()).collect(),
            on: None,
            how: how.into(),
        }
    }

    fn on(self, from: Day, by: Day) -> EntryToMake {
        EntryToMake { on: Some((from, by)), ..self }
    }
}

impl Blank<'_> {
    /// What is missing, with what would supply it.
    pub(super) fn missing(&self, about: &'static str, fact: String) -> Missing {
        let mut missing = Missing::new(about, fact);
        missing.from = Some(self.from);
        match self.remedy(&mut missing) {
            Ok(entry) => {
                missing.supplied_by = Some(entry.kind.as_str());
                missing.fields = entry.fields;
                missing.on_from = entry.on.map(|(from, _)| from);
                missing.on_by = entry.on.map(|(_, by)| by);
                missing.how = entry.how;
            }
            Err(how) => missing.how = how,
        }
        missing
    }

    /// The entry that would supply it; if there is none, what to do all the same.
    #[expect(clippy::too_many_lines, reason = "one arm for each reason")]
    fn remedy(&self, missing: &mut Missing) -> Result<EntryToMake, String> {
        match &self.run.because {
            Because::NotDocumented { .. } => self.read(self.topic, missing),
            Because::NotStated { topic } => self.read(Some(*topic), missing),
            Because::StayNotDocumented { lacks, .. }
            | Because::MayStayLonger { lacks, .. }
            | Because::FlowBeforeStayIsKnown { lacks, .. }
            | Because::StayNotKnown { lacks } => self.read_course(lacks, missing),
            Because::NoDirections => {
                Err("no entry can carry it: go by the leaflet on the pack, or load one of your own".to_owned())
            }
            Because::CoursesTurnOnYear { .. } => Err(
                "no entry can carry it: ask the supplier or the vet how the year is counted; until then count the \
                 stricter way"
                    .to_owned(),
            ),

            Because::BroodNotSeen { .. } => {
                self.look(missing, BROOD_NEED_TELLS_DAYS, "brood", "look at the brood")
            }
            Because::NotCounted { what, .. } => {
                let field = match *what {
                    "seams of bees" => "seams",
                    "brood boxes" => "brood_boxes",
                    other => other,
                };
                self.look(missing, COUNT_TELLS_DAYS, field, &format!("count the {what}"))
            }
            Because::FeederNotSeen => {
                self.look(missing, FEEDER_TELLS_DAYS, "feeder", "see whether a feeder is on")
            }
            Because::SameBroodlessPeriod { last, .. } => {
                // Whether brood came and went again since, only a sight of it tells.
                let since = self.colony.since().map_or(last.next(), |since| since.max(last.next()));
                let how = format!(
                    "look at the brood and record it: brood that is seen after {last} ends the time without brood; none \
                     seen leaves it open unless it was looked at every three weeks"
                );
                let day = self.from.max(since);
                if day > self.to {
                    return Err(how);
                }
                missing.from = Some(day);
                Ok(EntryToMake::new(Kind::Inspection, &["brood=present"], how).on(since, day))
            }
            Because::FlowTurnsOnBrood { .. } => Err(
                "nothing tells it beforehand: inspections while it is in do, and brood that is seen then makes it stay \
                 longer"
                    .to_owned(),
            ),

            Because::NoTemperature { untold, .. }
            | Because::OutOfBounds { untold, .. }
            | Because::Warm { untold, .. } => Ok(self.temperatures(*untold)),

            Because::FlowsNotRecorded { year } => {
                let how = format!("record the flows that are expected there in {year}, early, usual and late");
                let entry = EntryToMake::new(Kind::NectarFlow, &["from"], how);
                Ok(match (Day::new(*year, 1, 1), Day::new(*year, 12, 31)) {
                    (Some(first), Some(last)) => entry.on(first, last),
                    _ => entry,
                })
            }
            Because::NoFlowOnRecordSince { out } => {
                let how = format!("record the next flow that is expected there from {out} on, early, usual and late");
                Ok(EntryToMake::new(Kind::NectarFlow, &["from"], how).on(*out, Day::LAST))
            }
            Because::PerhapsBeforeFlow { .. } => self.read(Some(Topic::FlowBefore), missing),
            Because::PerhapsInFlow { early, late, forage, .. } => {
                let how = format!(
                    "once it is seen, record the flow of {forage} as seen, with its first day, and with its last once it is \
                     over"
                );
                let fields = ["stage=seen", "forage", "from", "to"];
                Ok(EntryToMake::new(Kind::NectarFlow, &fields, how).on(*early, *late))
            }

            Because::Power { .. } => Ok(self.site("power", "the power there")),
            Because::Access { .. } => Ok(self.site("access", "how the apiary can be reached")),
            Because::Ground { by: Some(ToldBy::Question), .. } => Err(
                "it turns on what was assumed in the question: ask with what the ground will be then".to_owned(),
            ),
            Because::Ground { .. } => Ok(self.site("ground", "the ground at the stands")),

            Because::PerhapsIn { placed, entry, stays: true, .. }
            | Because::LastNotEnded { placed, entry } => self.take_out(missing, *placed, *entry, ""),
            Because::BesideIsNotStated { placed, entry, stays: true, .. } => {
                self.take_out(missing, *placed, *entry, "ask the vet whether the two may be in together, or ")
            }
            Because::PerhapsIn { stays: false, .. } => Err(
                "wait until its next dose can no longer be given, or give that dose first and record it".to_owned(),
            ),
            Because::BesideIsNotStated { stays: false, .. } => {
                Err("ask the vet whether the two may be given on one day, or start on another".to_owned())
            }

            Because::CameWithUnknown { entry, .. } => {
                missing.entries.push(*entry);
                let how = format!("ask whoever kept it before, then correct entry {entry}");
                Ok(EntryToMake::new(Kind::ColonyEstablished, &["medicines"], how))
            }
            Because::Moved { on, .. } => Err(format!("ask anew about the days from {on} on")),
            Because::ApiaryNotKnown => {
                Err("ask anew about days on which it is on record where the colony stands".to_owned())
            }
            Because::ClassNotKnown { .. } => Ok(EntryToMake::new(
                Kind::MedicineDescribed,
                &["leaflet"],
                "name the leaflet of that medicine, so that its class is known",
            )),

            // What is known leaves nothing to supply.
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
            | Because::ClassDiffers { .. } => Err(String::new()),
        }
    }

    /// A look at the colony, so many days before the start day at most, on a day on which the colony is what it is then.
    fn look(
        &self,
        missing: &mut Missing,
        tells: u16,
        field: &str,
        what: &str,
    ) -> Result<EntryToMake, String> {
        let mut day = self.from;
        while let Some(since) = self.colony.since_parted(day).filter(|since| *since > day) {
            if since > self.to {
                return Err(format!(
                    "no inspection tells on the day on which a colony is split or united: {what} on the day after, and ask \
                     anew about the days from then on"
                ));
            }
            day = since;
        }
        let since = self.colony.since_parted(day);
        let earliest = since.map_or(day.minus(tells), |since| since.max(day.minus(tells)));
        missing.from = Some(day);
        let when =
            if earliest == day { format!("on {day}") } else { format!("between {earliest} and {day}") };
        let how = format!("{what} of {} {when} and record it", self.colony.name);
        Ok(EntryToMake::new(Kind::Inspection, &[field], how).on(earliest, day))
    }

    /// Temperatures of the days that count. A later start day looks at days that lie as much later.
    fn temperatures(&self, untold: Untold) -> EntryToMake {
        let later = u16::try_from(self.from.days_since(self.run.from)).unwrap_or(u16::MAX);
        let how = |days: String| {
            format!(
                "record what was measured of {days}, or the forecast as soon as it reaches those days; monthly normals tell \
                 what is to be expected"
            )
        };
        match untold.map(|(first, last)| (first.max(self.from), last.plus(later))) {
            Some((first, last)) if first == last => {
                EntryToMake::new(Kind::Temperature, &["days"], how(first.to_string())).on(first, last)
            }
            Some((first, last)) => {
                EntryToMake::new(Kind::Temperature, &["days"], how(format!("{first} to {last}")))
                    .on(first, last)
            }
            None => EntryToMake::new(Kind::Temperature, &["days"], how("those days".to_owned())),
        }
    }

    fn site(&self, field: &str, what: &str) -> EntryToMake {
        let how = format!("record {what} as it is on {}, or give it in the question", self.from);
        EntryToMake::new(Kind::SiteConditions, &[field], how).on(self.from, self.from)
    }

    /// What is in is taken out by the start day, unless it is on record that it came out later.
    fn take_out(
        &self,
        missing: &mut Missing,
        placed: Day,
        entry: EntryId,
        or: &str,
    ) -> Result<EntryToMake, String> {
        let lines = self.colony.history.courses.iter().filter(|course| course.entry == entry);
        let later = lines.filter_map(|course| match course.end {
            End::Out { on, .. } => Some(on),
            End::Open => None,
        });
        if let Some(out) = later.filter(|out| *out > self.from).max() {
            return Err(format!(
                "it was in until {out}: ask about days from then on, or correct that day if it is wrong"
            ));
        }
        let lines = self.colony.history.courses.iter().filter(|course| course.entry == entry);
        let later_dose =
            lines.flat_map(|course| &course.doses).map(|dose| dose.on).filter(|on| *on > self.from).max();
        if let Some(given) = later_dose {
            return Err(format!(
                "a later dose of it was given on {given}: ask about days from then on, or correct that dose if it is wrong"
            ));
        }
        missing.entries.push(entry);
        let how = format!(
            "{or}take out what was placed on {placed} and record it as out, on {} at the latest",
            self.from
        );
        Ok(EntryToMake::new(Kind::Removal, &["administration", "colonies"], how).on(placed, self.from))
    }

    /// Something to be read on the leaflet of every lot that is in stock.
    fn read(&self, topic: Option<Topic>, missing: &mut Missing) -> Result<EntryToMake, String> {
        let (Some(topic), says) = (topic, self.says) else {
            return Err("no entry can carry it: go by the leaflet on the pack".to_owned());
        };
        let (field, what) = match (field_of(topic), says) {
            (Some(field), _) => (field, format!("{} and record it", topic_words(topic))),
            (None, Some(says)) => {
                let entry = serde_json::json!({ "topic": topic.as_str(), "says": says });
                (
                    "confirms",
                    format!(
                        "whether it says the same; if it does, record it with empty `terms`, in `confirms`: {entry}"
                    ),
                )
            }
            (None, None) => return Err("no entry can carry it: go by the leaflet on the pack".to_owned()),
        };
        Ok(self.on_the_leaflet(&[field], &what, missing))
    }

    fn read_course(&self, lacks: &[Lack], missing: &mut Missing) -> Result<EntryToMake, String> {
        let fields: Option<Vec<&str>> = lacks.iter().map(|lack| field_of_lack(*lack)).collect();
        match fields.filter(|fields| !fields.is_empty()) {
            Some(fields) => {
                let what = format!("{} and record it", lack_words(lacks));
                Ok(self.on_the_leaflet(&fields, &what, missing))
            }
            None => {
                Err("no entry can carry it: go by the leaflet on the pack, or load one of your own"
                    .to_owned())
            }
        }
    }

    fn on_the_leaflet(&self, fields: &[&str], what: &str, missing: &mut Missing) -> EntryToMake {
        missing.lots.clone_from(&self.choice.to_read);
        let names: Vec<&str> = self.choice.to_read.iter().map(LotName::as_str).collect();
        match names.as_slice() {
            [] => EntryToMake::new(
                Kind::LotAcquired,
                &[],
                format!("no lot of it is in stock: once one is, read on its leaflet {what}"),
            ),
            [lot] => EntryToMake::new(
                Kind::LeafletReading,
                fields,
                format!("read on the leaflet of lot {lot} {what}"),
            ),
            lots => {
                let how = format!("read on the leaflet of each of the lots {} {what}", lots.join(", "));
                EntryToMake::new(Kind::LeafletReading, fields, how)
            }
        }
    }
}

/// The field of a leaflet reading that states a topic; none where it is confirmed in words.
const fn field_of(topic: Topic) -> Option<&'static str> {
    match topic {
        Topic::SupersDuring => Some("terms.supers_during"),
        Topic::FlowDuring => Some("terms.flow_during"),
        Topic::FlowBefore => Some("terms.flow_before_days"),
        Topic::Withdrawal => Some("terms.withdrawal_days"),
        Topic::WaitAfterRemoval => Some("terms.wait_after_removal_days"),
        Topic::Removal => Some("terms.removal"),
        Topic::StayMin => Some("terms.stay_min_days"),
        Topic::StayMax => Some("terms.stay_max_days"),
        Topic::Doses => Some("terms.doses"),
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

/// The field of a leaflet reading that states what is lacking; none where no reading can.
const fn field_of_lack(lack: Lack) -> Option<&'static str> {
    match lack {
        Lack::Doses => field_of(Topic::Doses),
        Lack::DoseInterval => None,
        Lack::Removal => field_of(Topic::Removal),
        Lack::StayMin => field_of(Topic::StayMin),
        Lack::StayMinWithBrood => Some("terms.stay_min_days_with_brood"),
        Lack::StayMax => field_of(Topic::StayMax),
    }
}
