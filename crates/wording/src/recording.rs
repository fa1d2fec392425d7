//! What is wrong with a form as it was filled in, and an entry in one line before it is recorded.

use combclear_domain::Day;
use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::misread::{Found, Misread, Wanted};
use combclear_domain::basics::words::{ColonyName, LotName};
use combclear_domain::facts::holding::{Holding, Refusal};
use combclear_domain::facts::same_doses;
use combclear_domain::journal::event::{Administration, Body, Event, Kind};
use combclear_domain::journal::form::{Blank, Field, Input, blanks};
use combclear_domain::questions::against::Against;
use combclear_domain::recording::{
    Chosen, InsideCourse, LeftOut, Written, Wrong, WrongWith, strips_not_said,
};
use combclear_domain::rules::leaflet::Leaflets;
use serde_json::Value;

use crate::colonies::{self, counted};
use crate::forms::{self, FieldWords};
use crate::paper;
use crate::pieces;
use crate::refusals::Refused;
use crate::unreadable::misread;
use crate::words::say;
use crate::{Label, Words};

/// What is wrong with a field of a form, and how to fix it.
#[must_use]
pub fn wrong(words: &Words, kind: Kind, Wrong { key, with }: &Wrong) -> Refused {
    let FieldWords { label, hint, example } = words_of(words, kind, key);
    let help = |help: Label| words.label(help).to_owned();
    let (message, help) = match with {
        WrongWith::Missing => (
            say!(words, RecordingMissing, field = label),
            say!(words, RecordingMissingHelp, hint = hint, example = example),
        ),
        WrongWith::NoSuchField => {
            let keys: Vec<String> = blanks(kind).into_iter().map(|blank| blank.key).collect();
            (
                say!(words, RecordingNoSuchField, key = key),
                say!(words, RecordingNoSuchFieldHelp, keys = keys.join(", ")),
            )
        }
        WrongWith::Misread(why) => {
            let why = as_written(words, kind, key, why).unwrap_or_else(|| misread(words, why));
            let message =
                if label.is_empty() { why } else { say!(words, RecordingMisread, field = label, why = why) };
            (message, say!(words, RecordingMisreadHelp, hint = hint, example = example))
        }
        WrongWith::OneOnly { given } => {
            (say!(words, RecordingOneOnly, field = label, given = *given), help(Label::RecordingOneOnlyHelp))
        }
        WrongWith::RangeIsBackwards { text } => {
            (say!(words, RecordingRangeBackwards, text = text), help(Label::RecordingRangeBackwardsHelp))
        }
        WrongWith::RangeTooLong { text, most } => (
            say!(words, RecordingRangeTooLong, text = text, most = *most),
            help(Label::RecordingRangeTooLongHelp),
        ),
        WrongWith::RangeEndNotOnRecord { text, colony, near } => (
            say!(words, RecordingRangeEnd, text = text, colony = colony),
            near.as_ref().map_or_else(
                || help(Label::RecordingRangeEndHelp),
                |near| say!(words, RecordingDidYouMean, near = near),
            ),
        ),
        WrongWith::NobodyInRange { text } => {
            (say!(words, RecordingNobodyInRange, text = text), help(Label::RecordingNobodyInRangeHelp))
        }
        WrongWith::NobodyThere(chosen) => {
            let message = match chosen {
                Chosen::At(apiary) => say!(words, RecordingNobodyAt, apiary = apiary),
                Chosen::WithSomethingIn => help(Label::RecordingNobodyWithSomethingIn),
                Chosen::All => help(Label::RecordingNobodyAlive),
            };
            (message, help(Label::RecordingNobodyThereHelp))
        }
        WrongWith::NobodyYet => (help(Label::RecordingNobodyYet), help(Label::RecordingNobodyYetHelp)),
        WrongWith::NoLotInStock => (help(Label::RecordingNoLot), help(Label::RecordingNoLotHelp)),
        WrongWith::SeveralLots { lots } => {
            let lots: Vec<&str> = lots.iter().map(LotName::as_str).collect();
            (say!(words, RecordingSeveralLots, lots = lots.join(", ")), help(Label::RecordingSeveralLotsHelp))
        }
        WrongWith::NoSuchEntry { text, last } => {
            (say!(words, RecordingNoEntry, text = text, last = *last), help(Label::RecordingNoEntryHelp))
        }
        WrongWith::NothingInside { colonies } => (
            say!(words, RecordingNothingInside, colonies = colonies::colonies(words, colonies)),
            help(Label::RecordingNothingInsideHelp),
        ),
        WrongWith::SeveralInside { colony, courses } => {
            let courses: Vec<String> = courses.iter().map(|course| inside(words, course)).collect();
            (
                say!(words, RecordingSeveralInside, colony = colony, courses = courses.join(", ")),
                help(Label::RecordingSeveralInsideHelp),
            )
        }
    };
    Refused { message, help }
}

/// What a filled-in form would record, as it is shown before.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Preview {
    /// What its entries say, in as few lines as they can be said.
    pub lines: Vec<String>,
    /// What it leaves open, and what the record says against it.
    pub doubts: Vec<String>,
    /// What is on record already.
    pub twice: Vec<String>,
}

impl Preview {
    /// Puts what was written into words.
    #[must_use]
    pub fn of(
        words: &Words,
        holding: &Holding,
        leaflets: &Leaflets,
        written: &Written,
        today: Day,
    ) -> Preview {
        let mut lines = in_lines(words, holding, written.on, &written.events);
        lines.extend(written.copied_from.as_ref().map(|copied| paper::copied_from(words, copied)));
        lines.extend(written.left_out.iter().map(|left_out| self::left_out(words, left_out)));
        let not_said =
            written.events.iter().filter_map(|event| strips_not_said(holding, leaflets, event, written.on));
        let left_open = not_said.map(|(from, into)| not_said_where(words, &from, &into));
        let against = Against::of(holding, leaflets, written, today);
        let doubts = left_open.chain(against.iter().map(|against| self::against(words, against))).collect();
        let given = written.events.iter().filter_map(Administration::of);
        let same = given.flat_map(|given| same_doses(holding, given, written.on, written.at));
        let twice = same
            .map(|(entry, colonies)| same_dose(words, entry.seq, &colonies.into_iter().collect::<Vec<_>>()));
        Preview { lines, doubts, twice: twice.collect() }
    }
}

/// Why entries cannot be true, each reason once.
#[must_use]
pub fn refused(words: &Words, refusals: &[(usize, Refusal)]) -> Vec<Refused> {
    let mut said: Vec<Refused> = Vec::new();
    for (_, refusal) in refusals {
        let refused = Refused::of(words, refusal);
        if !said.contains(&refused) {
            said.push(refused);
        }
    }
    said
}

/// A colony of a range that is left out, with the reason.
#[must_use]
pub fn left_out(words: &Words, left_out: &LeftOut) -> String {
    match left_out {
        LeftOut::NotOnRecord { colony } => say!(words, RecordingLeftOutNotOnRecord, colony = colony),
        LeftOut::NotYetThere { colony, begun } => {
            say!(words, RecordingLeftOutNotYet, colony = colony, begun = begun)
        }
        LeftOut::Ended { colony, ended } => {
            say!(words, RecordingLeftOutEnded, colony = colony, ended = ended)
        }
    }
}

/// A split or a uniting that does not say where the strips went.
fn not_said_where(words: &Words, from: &ColonyName, into: &ColonyName) -> String {
    say!(words, RecordingStripsNotSaid, from = from, into = into)
}

/// What the record says against what was written down.
fn against(words: &Words, against: &Against) -> String {
    let named = |colonies: &[ColonyName]| colonies::colonies(words, colonies);
    match against {
        Against::SupersOn { colonies, answer } => {
            say!(words, RecordingSupersBarred, answer = answer.as_str(), colonies = named(colonies))
        }
        Against::DoseToCome { colonies } => say!(words, RecordingDoseToCome, colonies = named(colonies)),
        Against::HoneyTaken { colonies, answer } => {
            say!(words, RecordingHoneyBarred, answer = answer.as_str(), colonies = named(colonies))
        }
        Against::GivenUnderSupers { colonies } => {
            say!(words, RecordingGivenUnderSupers, colonies = named(colonies))
        }
        Against::Expired { lot, expiry } => say!(words, RecordingExpired, lot = lot, expiry = expiry),
        Against::NoSuchLeaflet { leaflet, near: None } => {
            say!(words, RecordingNoLeaflet, leaflet = leaflet)
        }
        Against::NoSuchLeaflet { leaflet, near: Some(near) } => {
            say!(words, RecordingNoLeafletButNear, leaflet = leaflet, near = near)
        }
        Against::StillToCome => words.label(Label::RecordingStillToCome).to_owned(),
    }
}

/// An entry records such a dose already.
fn same_dose(words: &Words, entry: u64, of: &[ColonyName]) -> String {
    say!(words, RecordingSameDose, entry = entry, colonies = colonies::colonies(words, of))
}

/// Entries of one day, in as few lines as they can be said: those that differ only in the colony that they are about are said
/// together.
#[must_use]
pub fn in_lines(words: &Words, holding: &Holding, on: Day, events: &[Event]) -> Vec<String> {
    let mut groups: Vec<Alike> = Vec::new();
    for event in events {
        let (kind, fields) = (event.kind(), fields(words, holding, event));
        let (first, rest) = match fields.split_first() {
            Some((first, rest)) => (Some(first.clone()), rest.to_vec()),
            None => (None, Vec::new()),
        };
        let same = groups.iter_mut().find(|group| group.kind == kind && group.rest == rest);
        match (same, first) {
            (Some(group), Some((_, subject))) => group.subjects.push(subject),
            (_, first) => {
                let (label, subjects) =
                    first.map_or_else(Default::default, |(label, subject)| (label, vec![subject]));
                groups.push(Alike { kind, label, subjects, rest });
            }
        }
    }
    let day = crate::terminal::day(words, on);
    let line = |Alike { kind, label, subjects, rest }: Alike| {
        let title = forms::title(words, kind);
        if subjects.is_empty() {
            return say!(words, RecordingTitleOnly, title = title, day = &day);
        }
        let subject = counted(words, subjects.iter().map(String::as_str));
        let all = std::iter::once((label, subject)).chain(rest);
        let values = all.map(|(label, value)| say!(words, RecordingValue, label = label, value = value));
        let what = values.collect::<Vec<_>>().join("; ");
        say!(words, RecordingInOneLine, title = title, day = &day, what = what)
    };
    groups.into_iter().map(line).collect()
}

/// Entries that differ only in what they are about.
struct Alike {
    kind: Kind,
    /// The label of what they are about.
    label: String,
    /// What they are about.
    subjects: Vec<String>,
    /// The other fields, each with its label.
    rest: Vec<(String, String)>,
}

/// The fields of an entry that are filled in, each with its label.
fn fields(words: &Words, holding: &Holding, event: &Event) -> Vec<(String, String)> {
    let kind = event.kind();
    let body: Value = serde_json::from_str(&event.to_body()).unwrap_or_default();
    let filled = blanks(kind).into_iter().filter_map(|blank| {
        let value = value_at(&body, &blank)?;
        let value = match blank.input {
            Input::FirstDose => first_dose(words, holding, value),
            input => text(words, input, value),
        };
        Some((words.inside(forms::field(words, kind, &blank).label), value))
    });
    filled.collect()
}

/// The question for a field, with its choices if there is a list.
#[must_use]
pub fn question(words: &Words, kind: Kind, key: &str, choices: &[String]) -> String {
    let FieldWords { label, hint, .. } = words_of(words, kind, key);
    if choices.is_empty() {
        say!(words, RecordQuestion, label = label, hint = hint)
    } else {
        say!(words, RecordQuestionChoices, label = label, hint = hint, choices = choices.join(", "))
    }
}

/// What is wrong with a number or a yes: people write a form, so nothing is said of JSON. None for other fields.
fn as_written(words: &Words, kind: Kind, key: &str, why: &Misread) -> Option<String> {
    let blank = blanks(kind).into_iter().find(|blank| blank.key == key)?;
    let (Misread::WrongType { found, wanted } | Misread::WrongValue { found, wanted }) = why else {
        return None;
    };
    let text = match found {
        Found::Text(text) | Found::Whole(text) | Found::Decimal(text) => text.clone(),
        Found::Boolean(yes) => yes.to_string(),
        Found::Null | Found::List | Found::Object | Found::Other(_) => return None,
    };
    match (blank.input, wanted) {
        (Input::Whole, Wanted::Whole { most: Some(most) }) => {
            Some(say!(words, RecordingNotWholeTo, text = text, most = *most))
        }
        (Input::Whole, _) => Some(say!(words, RecordingNotWhole, text = text)),
        (Input::Amount | Input::Temperature, _) => Some(say!(words, RecordingNotANumber, text = text)),
        (Input::YesNo, _) => Some(say!(words, RecordingNeitherYesNorNo, text = text)),
        _ => None,
    }
}

fn words_of(words: &Words, kind: Kind, key: &str) -> FieldWords {
    let blank = blanks(kind).into_iter().find(|blank| blank.key == key);
    let around = || Field::ENVELOPE.iter().find(|field| field.name == key);
    match (blank, around()) {
        (Some(blank), _) => forms::field(words, kind, &blank),
        (None, Some(field)) => forms::around(words, kind, field),
        (None, None) => FieldWords { label: "", hint: "", example: "" },
    }
}

fn value_at<'b>(body: &'b Value, blank: &Blank) -> Option<&'b Value> {
    let mut found = body;
    for name in &blank.path {
        let here = match found {
            Value::Array(items) => items.first()?,
            other => other,
        };
        found = here.get(*name)?;
    }
    Some(found)
}

fn text(words: &Words, input: Input, value: &Value) -> String {
    match value {
        Value::String(text) => match input {
            Input::Word(_) => forms::choice(words, text).to_owned(),
            Input::Day => text.parse().map_or_else(|_| text.clone(), |day| words.day(day)),
            _ => text.clone(),
        },
        Value::Bool(true) => words.label(Label::RecordingYes).to_owned(),
        Value::Bool(false) => words.label(Label::RecordingNo).to_owned(),
        Value::Array(items) if items.iter().all(Value::is_string) => {
            counted(words, items.iter().filter_map(Value::as_str))
        }
        Value::Array(items) => {
            items.iter().map(|item| text(words, input, item)).collect::<Vec<_>>().join("; ")
        }
        Value::Object(fields) => {
            fields.values().map(|value| text(words, input, value)).collect::<Vec<_>>().join(" ")
        }
        Value::Number(number) => words.decimal(&number.to_string()).into_owned(),
        other => other.to_string(),
    }
}

/// The course that an entry builds on, by the number of its first entry.
fn first_dose(words: &Words, holding: &Holding, value: &Value) -> String {
    let id = value.as_str().and_then(|text| text.parse().ok());
    let Some(record) = id.and_then(|id| holding.effective(id)) else { return value.to_string() };
    let given = record.body::<Administration>().and_then(|given| given.given.first());
    let lot = given.and_then(|given| holding.lot(&given.lot));
    match lot {
        Some((_, lot)) => {
            let (number, medicine, placed) = (record.seq, Fact::Known(lot.medicine.clone()), record.on);
            inside(words, &InsideCourse { number, medicine, placed })
        }
        None => say!(words, RecordingEntry, number = record.seq),
    }
}

fn inside(words: &Words, InsideCourse { number, medicine, placed }: &InsideCourse) -> String {
    say!(
        words,
        RecordingCourse,
        number = *number,
        medicine = &*pieces::medicine(words, medicine),
        placed = placed
    )
}
