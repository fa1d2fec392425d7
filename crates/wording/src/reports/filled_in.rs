//! The forms: what there is to fill in for each kind of entry, and a form that somebody filled in as the entries that it records.
//!
//! A page makes its input from the first, and sends what was filled in to the second. It gets back what the entries say in a line and
//! the entries themselves, gives each an id of its own, and records them like any others. Nothing is recorded here.

use std::collections::BTreeMap;

use combclear_domain::basics::misread::Named;
use combclear_domain::basics::node::read_object;
use combclear_domain::basics::words::{ApiaryName, Person};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::copied::CopiedFrom;
use combclear_domain::journal::event::Confirmed;
use combclear_domain::journal::form::{Blank, Input, Origin, blanks, is_filled_in};
use combclear_domain::journal::{Draft, EntryId, Kind};
use combclear_domain::recording::{Chosen, FilledIn, SaysNothing, Written, Wrong, refusals};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_domain::{Day, Instant, TimeOfDay};
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use super::{Fault, Unanswered, Why};
use crate::recording::{self, Preview};
use crate::refusals::Refused;
use crate::{Label, Words, forms, http, unreadable};

/// The forms.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FormList {
    /// One for each kind of entry that people fill in.
    items: Vec<EntryForm>,
    /// What an entry of each kind records, also of those that nobody fills in.
    titles: BTreeMap<&'static str, &'static str>,
}

/// What there is to fill in for a kind of entry.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct EntryForm {
    /// The kind.
    kind: Kind,
    /// What such an entry records.
    title: &'static str,
    /// Its fields, in order.
    fields: Vec<EntryFormField>,
}

/// A field of a form.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub(super) struct EntryFormField {
    /// The key under which it is filled in.
    key: String,
    /// Its label.
    label: &'static str,
    /// What to fill in.
    hint: &'static str,
    /// An example of what is filled in.
    example: &'static str,
    /// How it is filled in.
    input: InputKind,
    /// What to choose from. Empty if it is filled in otherwise.
    choices: Vec<EntryFormChoice>,
    /// What the name is of, if it takes a name or several.
    #[serde(skip_serializing_if = "Option::is_none")]
    of: Option<&'static str>,
    /// Whether there is no entry without it.
    needed: bool,
    /// Whether the record may have the value if nobody gives one: the lot in stock, the strips that are in.
    found: bool,
}

/// A choice of a field.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct EntryFormChoice {
    /// The word that is filled in.
    word: &'static str,
    /// What it means.
    said: &'static str,
}

/// How a field is filled in.
#[derive(Debug, Clone, Copy, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
enum InputKind {
    /// In words.
    Text,
    /// With one of the choices.
    Choice,
    /// With `yes` or `no`.
    YesNo,
    /// With a day.
    Day,
    /// With a time of day.
    Time,
    /// With a whole number.
    Whole,
    /// With an amount, to a thousandth.
    Amount,
    /// With a temperature in °C, to a tenth.
    Temperature,
    /// With a name.
    Name,
    /// With several names.
    Names,
    /// With the number of the entry of a first dose.
    FirstDose,
    /// With several lines, each as the hint says.
    Lines,
}

/// A form as somebody filled it in.
#[derive(Debug, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct NewForm {
    /// The day on which it happened; today if left out.
    #[serde(default)]
    on: Option<Day>,
    /// The time of day, if it was noted.
    #[serde(default)]
    at: Option<TimeOfDay>,
    /// Who records it; the person who recorded the last entry if left out.
    #[serde(default)]
    recorded_by: Option<Person>,
    /// What it is copied from, if a paper register is taken over.
    #[serde(default)]
    copied_from: Option<String>,
    /// The day on which it was written there.
    #[serde(default)]
    written_on: Option<Day>,
    /// What was written in each field, by its key: several texts where a field takes several names.
    #[serde(default)]
    fields: BTreeMap<String, Vec<String>>,
    /// For the reading of a leaflet: the other built-in values that it says too.
    #[serde(default)]
    confirms: Vec<Confirmed>,
    /// All colonies at this apiary, instead of names.
    #[serde(default)]
    all_at: Option<ApiaryName>,
}

/// What a form records, if its entries are sent.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FilledForm {
    /// What the entries say, in as few lines as they can be said.
    lines: Vec<String>,
    /// What should be looked at again before they are sent: the same dose is on record, or something is left open.
    doubts: Vec<String>,
    /// The entries, without ids: whoever records them gives each its own.
    entries: Vec<UnsentEntry>,
}

/// An entry that has no id yet.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct UnsentEntry {
    /// The day on which it happened.
    on: Day,
    /// The time of day, if it was noted.
    #[serde(skip_serializing_if = "Option::is_none")]
    at: Option<TimeOfDay>,
    /// Who records it.
    recorded_by: Person,
    /// The kind of entry.
    kind: Kind,
    /// What happened, in the fields of that kind.
    #[cfg_attr(feature = "openapi", schema(value_type = Object))]
    body: Box<RawValue>,
    /// What it was copied from, if a paper register is taken over.
    #[serde(skip_serializing_if = "Option::is_none")]
    copied_from: Option<String>,
    /// The day on which it was written there.
    #[serde(skip_serializing_if = "Option::is_none")]
    written_on: Option<Day>,
}

impl FormList {
    /// Every form that people fill in.
    #[must_use]
    pub fn all(words: &'static Words) -> FormList {
        let filled_in =
            Kind::ALL.iter().copied().filter(|kind| is_filled_in(*kind) && *kind != Kind::StrikeOut);
        let titles = Kind::ALL.iter().map(|kind| (kind.as_str(), forms::title(words, *kind)));
        FormList {
            items: filled_in.map(|kind| EntryForm::of(words, kind)).collect(),
            titles: titles.collect(),
        }
    }
}

impl EntryForm {
    fn of(words: &'static Words, kind: Kind) -> EntryForm {
        let fields = blanks(kind).iter().map(|blank| EntryFormField::of(words, kind, blank)).collect();
        EntryForm { kind, title: forms::title(words, kind), fields }
    }
}

impl EntryFormField {
    pub(super) fn of(words: &'static Words, kind: Kind, blank: &Blank) -> EntryFormField {
        let forms::FieldWords { label, hint, example } = forms::field(words, kind, blank);
        let named = |named: Named| Some(named.as_str());
        let (input, choices, of) = match blank.input {
            Input::Text | Input::Part(_) | Input::Made => (InputKind::Text, Vec::new(), None),
            Input::Word(choices) => (InputKind::Choice, choices(), None),
            Input::YesNo => (InputKind::YesNo, Vec::new(), None),
            Input::Day => (InputKind::Day, Vec::new(), None),
            Input::TimeOfDay => (InputKind::Time, Vec::new(), None),
            Input::Whole => (InputKind::Whole, Vec::new(), None),
            Input::Amount => (InputKind::Amount, Vec::new(), None),
            Input::Temperature => (InputKind::Temperature, Vec::new(), None),
            Input::Name(of) => (InputKind::Name, Vec::new(), named(of)),
            Input::Names(of) => (InputKind::Names, Vec::new(), named(of)),
            Input::FirstDose => (InputKind::FirstDose, Vec::new(), None),
            Input::Parts(_) => (InputKind::Lines, Vec::new(), None),
        };
        let found =
            matches!(blank.origin, Origin::InStock | Origin::Inside | Origin::NamedLast | Origin::Today);
        let said = |word| EntryFormChoice { word, said: forms::choice(words, word) };
        let choices = choices.into_iter().map(said).collect();
        EntryFormField {
            key: blank.key.clone(),
            label,
            hint,
            example,
            input,
            choices,
            of,
            needed: blank.needed,
            found,
        }
    }
}

impl NewForm {
    /// A form as it was sent.
    ///
    /// # Errors
    /// It is none.
    pub fn read(words: &Words, text: &str) -> Result<NewForm, Unanswered> {
        read_object(text).map_err(|reading| {
            let detail = http::not_a_form(words, &unreadable::misread(words, &reading.what));
            let fault = Fault::at(&reading.pointer, detail.clone(), words.label(Label::HttpNotAFormHelp));
            Unanswered { why: Why::UnreadableForm, detail, faults: vec![fault] }
        })
    }

    /// The entries that it records, and what they say. A form without a day is of today.
    ///
    /// # Errors
    /// Everything that is wrong with it, field by field, or that cannot be true if it were recorded now.
    pub fn fill_in(
        self,
        words: &Words,
        holding: &Holding,
        leaflets: &Leaflets,
        kind: Kind,
        now: (Day, Instant),
    ) -> Result<FilledForm, Unanswered> {
        let (today, now) = now;
        let form = FilledIn {
            kind,
            on: self.on.unwrap_or(today),
            at: self.at,
            recorded_by: self.recorded_by,
            copied_from: self.copied_from,
            written_on: self.written_on,
            texts: self.fields,
            chosen: self.all_at.map(Chosen::At),
        };
        // Only the reading of a leaflet confirms anything.
        let may_confirm = self.confirms.is_empty() || kind == Kind::LeafletReading;
        let fits =
            |written| if may_confirm { Ok(written) } else { Err(vec![Wrong::no_such_field("confirms")]) };
        let written = form.write(holding, leaflets).and_then(fits).map_err(|wrong| {
            let faults = wrong.iter().map(|wrong| {
                let Refused { message, help } = recording::wrong(words, kind, wrong);
                Fault::at(pointer_to(&form, &wrong.key), message, help)
            });
            let (why, detail) = (Why::UnreadableForm, http::form_faults(words, wrong.len()));
            Unanswered { why, detail, faults: faults.collect() }
        })?;
        let written = written.confirming(&self.confirms).map_err(|SaysNothing| {
            let (empty, help) = (Label::RecordLeafletEmpty, Label::RecordingLeafletEmptyHelp);
            let (detail, help) = (words.label(empty).to_owned(), words.label(help));
            let faults = vec![Fault::at("", detail.clone(), help)];
            Unanswered { why: Why::UnreadableForm, detail, faults }
        })?;
        let drafts = drafts(&written);
        let refused = recording::refused(words, &refusals(holding, &drafts, now));
        if !refused.is_empty() {
            let fault = |Refused { message, help }| Fault::at(String::new(), message, help);
            let (why, detail) = (Why::UntrueForm, words.label(Label::HttpFormUntrue).to_owned());
            return Err(Unanswered { why, detail, faults: refused.into_iter().map(fault).collect() });
        }
        let Preview { lines, doubts, twice } = Preview::of(words, holding, leaflets, &written, today);
        let doubts = [doubts, twice].concat();
        Ok(FilledForm { lines, doubts, entries: drafts.iter().map(UnsentEntry::of).collect() })
    }
}

/// Where a field stands in what was sent. Those that every form has stand beside the fields of their own.
fn pointer_to(form: &FilledIn, key: &str) -> String {
    let is_own = blanks(form.kind).iter().any(|blank| blank.key == key) || form.texts.contains_key(key);
    let escaped = key.replace('~', "~0").replace('/', "~1");
    match (is_own, key) {
        (true, _) => format!("/fields/{escaped}"),
        // The form as a whole.
        (false, "") => String::new(),
        (false, _) => format!("/{escaped}"),
    }
}

/// The entries under ids that stand for those that they will be given.
fn drafts(written: &Written) -> Vec<Draft> {
    let mut last = 0;
    written.drafts(|| {
        last += 1;
        EntryId::stand_in(last)
    })
}

impl UnsentEntry {
    fn of(draft: &Draft) -> UnsentEntry {
        let (copied_from, written_on) = CopiedFrom::fields(draft.copied_from.as_deref());
        UnsentEntry {
            on: draft.on,
            at: draft.at,
            recorded_by: draft.recorded_by.clone(),
            kind: draft.kind(),
            // A body is valid JSON, since it was made from what was read.
            body: RawValue::from_string(draft.body.as_ref().to_owned()).unwrap_or_default(),
            copied_from,
            written_on,
        }
    }
}
