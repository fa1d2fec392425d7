//! Worked examples for the document: one entry of each kind that people fill in, made from its form and the examples in
//! the words of the forms. They make one holding, and each can be recorded after those before it.

use std::collections::{BTreeMap, BTreeSet};

use combclear_domain::basics::misread::Named;
use combclear_domain::basics::words::{HoldingName, Person};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::entry::{Draft, Envelope};
use combclear_domain::journal::form::{Blank, Field, Input, Origin, blanks, is_filled_in};
use combclear_domain::journal::{EntryId, Kind};
use combclear_domain::recording::{FilledIn, refusals};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_domain::{Day, Instant};
use combclear_wording::{Label, forms};
use serde_json::Value;

use crate::language::words;
use crate::problem::label;

/// The examples, each as its JSON.
#[derive(Default)]
pub(crate) struct Examples {
    /// The entry that begins the holding.
    pub(crate) first: Value,
    /// Entries for a batch after it: what the other examples speak of and none of them records.
    pub(crate) batch: Vec<Value>,
    /// One of each kind, the first two included.
    pub(crate) of_kind: BTreeMap<Kind, Value>,
}

/// Fields that stand in for another one, which the example has: terms for a medicine without a leaflet, the vet if not the
/// keeper gave it, and the method where a leaflet names several.
const INSTEAD: [(Kind, &str); 3] =
    [(Kind::MedicineDescribed, "terms"), (Kind::Administration, "vet"), (Kind::Administration, "method")];

/// All of them. A kind whose example cannot be recorded is missing, which a test would find.
pub(crate) fn examples() -> Examples {
    Book::begun().map(Book::filled).unwrap_or_default()
}

/// A holding while its examples are recorded.
struct Book {
    holding: Holding,
    leaflets: Leaflets,
    on: Day,
    now: Instant,
    made: Examples,
}

impl Book {
    fn begun() -> Option<Book> {
        let on: Day = around(Kind::HoldingDetails, "on")?.parse().ok()?;
        let now = format!("{on}T12:00:00.000Z").parse().ok()?;
        let holding = Holding::new(HoldingName::new("heathside").ok()?);
        Some(Book { holding, leaflets: Leaflets::default(), on, now, made: Examples::default() })
    }

    fn filled(mut self) -> Examples {
        if let Some(first) = self.example(Kind::HoldingDetails) {
            self.made.first = first;
        }
        let apiary = self.example(Kind::ApiaryDetails);
        self.made.batch.extend(apiary);
        for (kind, named) in [(Kind::ApiaryDetails, Named::Apiary), (Kind::ColonyEstablished, Named::Colony)]
        {
            for name in spoken_of(named) {
                let (mut form, _) = self.form(kind);
                let new = blanks(kind).into_iter().find(|blank| is_name_of(blank, named, true));
                form.texts.extend(new.map(|blank| (blank.key, vec![name])));
                let entry = self.draft(&form).and_then(|draft| self.recorded(draft));
                self.made.batch.extend(entry);
            }
        }
        // A colony ends after all that happens in it; an entry is struck out after it was recorded.
        let last = [Kind::ColonyEnded, Kind::StrikeOut];
        for kind in Kind::ALL.iter().filter(|kind| !last.contains(kind)).chain(&last) {
            if is_filled_in(*kind) && !self.made.of_kind.contains_key(kind) {
                self.example(*kind);
            }
        }
        self.made
    }

    /// Records the example of a kind.
    fn example(&mut self, kind: Kind) -> Option<Value> {
        let draft = self.entry(kind)?;
        let entry = self.recorded(draft)?;
        self.made.of_kind.insert(kind, entry.clone());
        Some(entry)
    }

    fn recorded(&mut self, draft: Draft) -> Option<Value> {
        let entry = serde_json::to_value(Envelope::of(&draft)).ok()?;
        self.holding.record(draft, self.now).ok()?;
        Some(entry)
    }

    /// An entry in which every field is filled in that can be.
    fn entry(&self, kind: Kind) -> Option<Draft> {
        let (mut form, others) = self.form(kind);
        let mut draft = self.draft(&form);
        for blank in others.iter().filter(|blank| !stands_in(kind, blank)) {
            let mut tried = form.clone();
            tried.texts.extend([text(kind, blank)]);
            if let Some(better) = self.draft(&tried) {
                (form, draft) = (tried, Some(better));
            }
        }
        draft
    }

    /// A form in which every field is filled in that must be, and the other fields.
    fn form(&self, kind: Kind) -> (FilledIn, Vec<Blank>) {
        let (needed, others): (Vec<Blank>, Vec<Blank>) =
            blanks(kind).into_iter().partition(|blank| blank.needed);
        // The course is the one that is in the colonies: the form finds it.
        let needed = needed.iter().filter(|blank| blank.origin != Origin::Inside);
        let form = FilledIn {
            kind,
            on: self.on,
            at: around(kind, "at").and_then(|at| at.parse().ok()),
            recorded_by: around(kind, "recorded_by").and_then(|by| Person::new(by).ok()),
            copied_from: None,
            written_on: None,
            texts: needed.map(|blank| text(kind, blank)).collect(),
            chosen: None,
        };
        (form, others)
    }

    /// The entry of a form, if it can be recorded.
    fn draft(&self, form: &FilledIn) -> Option<Draft> {
        let number = self.holding.tip().map_or(1, |(last, _)| last.saturating_add(1));
        let id: EntryId = format!("01964c7e-6f00-7000-8000-{number:012}").parse().ok()?;
        let written = form.write(&self.holding, &self.leaflets).ok()?;
        let draft = written.drafts(|| id).into_iter().next()?;
        let draft = if form.kind == Kind::StrikeOut {
            let (last, _) = self.holding.tip()?;
            draft.correcting(self.holding.entry_numbered(last)?.id, label(Label::ExampleReason))
        } else {
            draft
        };
        refusals(&self.holding, std::slice::from_ref(&draft), self.now).is_empty().then_some(draft)
    }
}

/// The example of a field, with its key.
fn text(kind: Kind, blank: &Blank) -> (String, Vec<String>) {
    (blank.key.clone(), vec![forms::field(words(), kind, blank).example.to_owned()])
}

fn stands_in(kind: Kind, blank: &Blank) -> bool {
    INSTEAD.iter().any(|(of, field)| *of == kind && blank.path.first() == Some(field))
}

/// The example of a field around the body.
fn around(kind: Kind, name: &str) -> Option<&'static str> {
    let field = Field::ENVELOPE.iter().find(|field| field.name == name)?;
    Some(forms::around(words(), kind, field).example)
}

/// The names in the examples that are there before, since no example gives them for the first time.
fn spoken_of(named: Named) -> BTreeSet<String> {
    let names = |new: bool| -> BTreeSet<String> {
        let blanks =
            Kind::ALL.iter().flat_map(|kind| blanks(*kind).into_iter().map(move |blank| (*kind, blank)));
        let examples = blanks
            .filter(|(_, blank)| is_name_of(blank, named, new))
            .map(|(kind, blank)| forms::field(words(), kind, &blank).example);
        examples.flat_map(|names| names.split(',')).map(|name| name.trim().to_owned()).collect()
    };
    names(false).difference(&names(true)).cloned().collect()
}

/// Whether a field takes names of this sort: new ones, or those of what is there.
fn is_name_of(blank: &Blank, named: Named, new: bool) -> bool {
    let sort = match blank.input {
        Input::Name(sort) | Input::Names(sort) => sort == named,
        _ => false,
    };
    sort && (blank.origin == Origin::New) == new
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_stands_in_for_another_field_is_a_field() {
        for (kind, field) in INSTEAD {
            assert!(blanks(kind).iter().any(|blank| stands_in(kind, blank)), "{kind:?} {field}");
            assert!(kind.fields().iter().any(|known| known.name == field), "{kind:?} {field}");
        }
    }
}
