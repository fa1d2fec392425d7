//! From a form that somebody filled in to the entries that it records.
//!
//! Commands, sheets and pages hand over texts by the key of their field ([`FilledIn`]). [`write`](FilledIn::write) reads
//! them, takes what nobody wrote from the record where the form says so (the lot in stock, the strips that are in), and
//! makes one event for each entry. It reports everything that is wrong at once. Whether the entries can be true is
//! asked of the holding: [`refusals`].

mod corrected;
mod from_record;
mod leaflet;
mod names;
mod values;
mod wrong;

use std::collections::BTreeMap;

use serde_json::{Map, Value};

use crate::basics::calendar::{Day, Instant, TimeOfDay};
use crate::basics::misread::Named;
use crate::basics::words::{ApiaryName, ColonyName, Person};
use crate::facts::holding::{Holding, Refusal};
use crate::journal::copied::CopiedFrom;
use crate::journal::entry::{Draft, EntryId};
use crate::journal::event::{Event, Kind};
use crate::journal::form::{self, Blank, Input, Origin, blanks};
use crate::rules::leaflet::Leaflets;

pub use corrected::{Changes, corrected};
pub use from_record::{person_named_last, strips_not_said, what_is_inside};
pub use leaflet::{LeafletQuestions, SaysNothing};
pub use names::colonies_asked;
pub use wrong::{InsideCourse, LeftOut, Wrong, WrongWith};

/// A form as somebody filled it in.
#[derive(Debug, Clone)]
pub struct FilledIn {
    /// The kind of entry.
    pub kind: Kind,
    /// The day on which it happened.
    pub on: Day,
    /// The time of day, if noted.
    pub at: Option<TimeOfDay>,
    /// Who records it; the person who recorded the last entry if not stated.
    pub recorded_by: Option<Person>,
    /// What it is copied from, if a paper register is taken over.
    pub copied_from: Option<String>,
    /// The day on which it was written there.
    pub written_on: Option<Day>,
    /// What was written in each field, by its key: several texts where a field takes several names.
    pub texts: BTreeMap<String, Vec<String>>,
    /// Colonies chosen otherwise than by name.
    pub chosen: Option<Chosen>,
}

/// Colonies chosen otherwise than by name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Chosen {
    /// All that are at this apiary.
    At(ApiaryName),
    /// All with something in.
    WithSomethingIn,
    /// All that are alive.
    All,
}

/// The entries of a form, before each is given an id.
#[derive(Debug, Clone)]
pub struct Written {
    /// The day on which it happened.
    pub on: Day,
    /// The time of day, if noted.
    pub at: Option<TimeOfDay>,
    /// Who records it.
    pub recorded_by: Person,
    /// The record on paper from which it is copied, if it is.
    pub copied_from: Option<CopiedFrom>,
    /// What happened, one for each entry.
    pub events: Vec<Event>,
    /// Colonies of a range that are left out, each with the reason.
    pub left_out: Vec<LeftOut>,
}

impl Written {
    /// The entries, with ids.
    pub fn drafts(&self, mut new_id: impl FnMut() -> EntryId) -> Vec<Draft> {
        let draft = |event: &Event| Draft {
            at: self.at,
            copied_from: self.copied_from.clone().map(Box::new),
            ..Draft::new(new_id(), self.on, self.recorded_by.clone(), event.clone())
        };
        self.events.iter().map(draft).collect()
    }
}

/// Which of these entries cannot be true, each with its index, if they were recorded in this order at this time. The
/// holding is unchanged.
#[must_use]
pub fn refusals(holding: &Holding, drafts: &[Draft], at: Instant) -> Vec<(usize, Refusal)> {
    let mut tried = holding.clone();
    let refused = drafts.iter().enumerate().filter_map(|(index, draft)| {
        let refusal = tried.record(draft.clone(), at).err()?;
        Some((index, refusal))
    });
    refused.collect()
}

/// The record on paper, from the two fields that come together.
///
/// # Errors
/// The one that is missing.
pub fn copied(what: Option<String>, written_on: Option<Day>) -> Result<Option<CopiedFrom>, Wrong> {
    CopiedFrom::of(what, written_on)
        .map_err(|fault| Wrong::at(fault.pointer.trim_start_matches('/'), WrongWith::Missing))
}

impl FilledIn {
    /// The entries that it records.
    ///
    /// # Errors
    /// Everything that is wrong with it, field by field.
    pub fn write(&self, holding: &Holding, leaflets: &Leaflets) -> Result<Written, Vec<Wrong>> {
        let blanks = blanks(self.kind);
        let mut wrong = self.unknown_fields(&blanks);
        let mut left_out = Vec::new();
        let subject = blanks.iter().find(|blank| is_subject(blank));
        let names = match subject {
            Some(subject) => self.subject_names(holding, leaflets, subject, &mut left_out, &mut wrong),
            None => Vec::new(),
        };
        let recorded_by = self.recorded_by.clone().or_else(|| person_named_last(holding).cloned());
        if recorded_by.is_none() {
            wrong.push(Wrong::at("recorded_by", WrongWith::NobodyYet));
        }
        let copied_from =
            copied(self.copied_from.clone(), self.written_on).map_err(|fault| wrong.push(fault));
        let mut filled: BTreeMap<String, Value> = BTreeMap::new();
        for blank in blanks.iter().filter(|blank| subject.is_none_or(|subject| subject.key != blank.key)) {
            match self.value(holding, blank) {
                Ok(Some(value)) => {
                    filled.insert(blank.key.clone(), value);
                }
                Ok(None) if !blank.needed || blank.origin == Origin::Inside => {}
                Ok(None) => wrong.push(Wrong::at(&blank.key, WrongWith::Missing)),
                Err(with) => wrong.push(Wrong::at(&blank.key, with)),
            }
        }
        let groups = self.groups(holding, leaflets, &blanks, subject, names, &mut filled, &mut wrong);
        let mut events = Vec::new();
        for group in groups {
            let body = body(self.kind, &blanks, subject, &group, &filled).to_string();
            for fault in form::faults(self.kind, &body) {
                let found = Wrong::of_fault(&blanks, fault);
                if !wrong.iter().any(|known| known.key == found.key) {
                    wrong.push(found);
                }
            }
            if wrong.is_empty() {
                match Event::read(self.kind, &body) {
                    Ok(event) => events.push(event),
                    Err(fault) => wrong.push(Wrong::at("", WrongWith::Misread(fault.what))),
                }
            }
        }
        match (recorded_by, copied_from, wrong.is_empty()) {
            (Some(recorded_by), Ok(copied_from), true) => {
                Ok(Written { on: self.on, at: self.at, recorded_by, copied_from, events, left_out })
            }
            _ => Err(wrong),
        }
    }

    fn unknown_fields(&self, blanks: &[Blank]) -> Vec<Wrong> {
        let unknown = self.texts.keys().filter(|key| !blanks.iter().any(|blank| blank.key == **key));
        unknown.map(|key| Wrong::at(key, WrongWith::NoSuchField)).collect()
    }

    /// The names of colonies or apiaries that the form is about.
    fn subject_names(
        &self,
        holding: &Holding,
        leaflets: &Leaflets,
        subject: &Blank,
        left_out: &mut Vec<LeftOut>,
        wrong: &mut Vec<Wrong>,
    ) -> Vec<String> {
        let texts = self.texts.get(&subject.key).map(Vec::as_slice).unwrap_or_default();
        let new = subject.origin == Origin::New;
        let mut found: Vec<String> = match (&self.chosen, subject.input) {
            (Some(chosen), Input::Name(Named::Colony) | Input::Names(Named::Colony)) if !new => {
                let colonies = names::chosen(holding, leaflets, chosen, self.on);
                if colonies.is_empty() {
                    wrong.push(Wrong::at(&subject.key, WrongWith::NobodyThere(chosen.clone())));
                }
                colonies.iter().map(ColonyName::to_string).collect()
            }
            _ => Vec::new(),
        };
        for text in texts {
            let of_colonies =
                matches!(subject.input, Input::Name(Named::Colony) | Input::Names(Named::Colony));
            let read = if of_colonies {
                names::colonies(holding, text, self.on, new)
            } else {
                Ok(names::Read { names: vec![text.trim().to_owned()], left_out: Vec::new() })
            };
            match read {
                Ok(read) => {
                    found.extend(read.names);
                    left_out.extend(read.left_out);
                }
                Err(with) => wrong.push(Wrong::at(&subject.key, with)),
            }
        }
        let nothing = texts.is_empty() && self.chosen.is_none();
        if nothing && subject.needed {
            wrong.push(Wrong::at(&subject.key, WrongWith::Missing));
        }
        found
    }

    /// The value of a field, if somebody wrote one or the record has it.
    fn value(&self, holding: &Holding, blank: &Blank) -> Result<Option<Value>, WrongWith> {
        let texts = self.texts.get(&blank.key).map(Vec::as_slice).unwrap_or_default();
        let texts: Vec<&str> = texts.iter().map(|text| text.trim()).filter(|text| !text.is_empty()).collect();
        match (texts.as_slice(), blank.origin, blank.input) {
            ([], Origin::InStock, _) => from_record::lot_in_stock(holding, self.on).map(Some),
            // Which course is meant depends on the colonies.
            ([], _, _) | (["yes"], Origin::Inside, _) => Ok(None),
            ([text], _, Input::FirstDose) => from_record::entry_named(holding, text).map(Some),
            ([text], _, _) => Ok(Some(values::value(blank, text))),
            (several, _, Input::Parts(_)) => Ok(Some(values::value(blank, &several.join(";")))),
            (several, _, _) => Err(WrongWith::OneOnly { given: several.len() }),
        }
    }

    /// The names of each entry: all together, one by one, or by the course that is in them.
    #[expect(clippy::too_many_arguments, reason = "what was read so far, from which the groups follow")]
    fn groups(
        &self,
        holding: &Holding,
        leaflets: &Leaflets,
        blanks: &[Blank],
        subject: Option<&Blank>,
        names: Vec<String>,
        filled: &mut BTreeMap<String, Value>,
        wrong: &mut Vec<Wrong>,
    ) -> Vec<Group> {
        let Some(subject) = subject else { return vec![Group::default()] };
        if names.is_empty() {
            // What is wrong with the other fields is still to be told.
            return vec![Group::default()];
        }
        if matches!(subject.input, Input::Name(_)) {
            return names.into_iter().map(|name| Group { names: vec![name], course: None }).collect();
        }
        let all = Group { names, course: None };
        let Some(course) = blanks.iter().find(|blank| blank.origin == Origin::Inside) else {
            return vec![all];
        };
        let wanted = course.needed || self.texts.contains_key(&course.key);
        if !wanted || filled.contains_key(&course.key) {
            return vec![all];
        }
        let of_lot = if course.needed { None } else { filled.get("lot").and_then(Value::as_str) };
        match from_record::courses_inside(holding, leaflets, &all.names, of_lot, self.on) {
            Ok(courses) => courses
                .into_iter()
                .map(|(course_id, names)| Group { names, course: Some((course.key.clone(), course_id)) })
                .collect(),
            Err(with) => {
                wrong.push(Wrong::at(&course.key, with));
                vec![all]
            }
        }
    }
}

/// The names of one entry, and the course that is in them.
#[derive(Debug, Default)]
struct Group {
    names: Vec<String>,
    course: Option<(String, EntryId)>,
}

/// Whether a field says what the entry is about: the first colony, colonies or new apiaries.
fn is_subject(blank: &Blank) -> bool {
    let of_colonies = matches!(blank.input, Input::Names(_) | Input::Name(Named::Colony));
    let of_apiary = matches!(blank.input, Input::Name(Named::Apiary));
    of_colonies || (of_apiary && blank.origin == Origin::New)
}

/// The body of one entry as JSON.
fn body(
    kind: Kind,
    blanks: &[Blank],
    subject: Option<&Blank>,
    group: &Group,
    filled: &BTreeMap<String, Value>,
) -> Value {
    let mut body = Map::new();
    for blank in blanks {
        let of_group = subject.filter(|subject| subject.key == blank.key && !group.names.is_empty());
        let value = match (of_group.map(|subject| subject.input), &group.course) {
            (Some(Input::Names(_)), _) => Some(group.names.clone().into()),
            (Some(_), _) => group.names.first().map(|name| name.as_str().into()),
            (None, Some((key, course))) if *key == blank.key => Some(course.to_string().into()),
            (None, _) => filled.get(&blank.key).cloned(),
        };
        if let Some(value) = value {
            put(&mut body, blank, value);
        }
    }
    // A part that must be there is there even if nothing was filled in.
    for part in kind.fields().iter().filter(|field| field.needed && matches!(field.input, Input::Part(_))) {
        body.entry(part.name).or_insert_with(|| Value::Object(Map::new()));
    }
    Value::Object(body)
}

/// Puts a value at its place in a body.
fn put(body: &mut Map<String, Value>, blank: &Blank, value: Value) {
    match blank.path.as_slice() {
        [name] => {
            body.insert((*name).to_owned(), value);
        }
        [part, name] => {
            let group = || {
                if blank.in_list {
                    Value::Array(vec![Value::Object(Map::new())])
                } else {
                    Value::Object(Map::new())
                }
            };
            let part = body.entry(*part).or_insert_with(group);
            let part = if let Value::Array(items) = part { items.first_mut() } else { Some(part) };
            if let Some(Value::Object(fields)) = part {
                fields.insert((*name).to_owned(), value);
            }
        }
        _ => {}
    }
}
