//! The envelope of an entry: a [`Draft`] as written, and an [`Entry`] once sealed into the chain.

use std::borrow::Cow;
use std::sync::Arc;

use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use crate::basics::calendar::{Day, Instant, TimeOfDay};
pub use crate::basics::entry_id::{EntryId, NotAnId, WhichEntry};
use crate::basics::words::{HoldingName, Person};
use crate::journal::copied::CopiedFrom;
use crate::journal::event::{Event, Kind};
pub use crate::journal::fault::EntryFault;
use crate::journal::fault::Unreadable;
use crate::journal::form::Input;
use crate::journal::key::{KeyId, Stamp};
use crate::journal::read::{RawFields, all_faults, read_json, unknown_kind};
use crate::journal::seal::{self, Hash};

/// Which entry this one corrects, and why. A correction has the kind of the corrected entry, or is a strike-out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Correction {
    /// The entry that was wrong. It stays visible.
    pub of: EntryId,
    /// The reason.
    pub reason: String,
}

/// A parsed entry that is not yet part of a journal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Draft {
    /// Its id, made by the writer.
    pub id: EntryId,
    /// The civil day on which it happened.
    pub on: Day,
    /// The time of day, if it was noted.
    pub at: Option<TimeOfDay>,
    /// Who recorded it.
    pub recorded_by: Person,
    /// What happened.
    pub event: Event,
    /// The text of the body, exactly as hashed and stored.
    pub body: Arc<str>,
    /// The record on paper from which it was copied, if it was.
    pub copied_from: Option<Box<CopiedFrom>>,
    /// The entry that this one corrects, with the reason.
    pub correction: Option<Box<Correction>>,
}

impl Draft {
    /// An entry made by the program rather than read from text.
    #[must_use]
    pub fn new(id: EntryId, on: Day, recorded_by: Person, event: Event) -> Draft {
        let body = event.to_body().into();
        Draft { id, on, at: None, recorded_by, event, body, copied_from: None, correction: None }
    }

    /// Reads an entry from JSON. `id` is the id of an entry that does not state its own.
    ///
    /// # Errors
    /// Everything that is wrong with the entry: at least one fault.
    pub fn from_json(text: &str, id: Option<EntryId>) -> Result<Draft, Vec<EntryFault>> {
        Draft::from_json_where(text, id, |_| Err(Unreadable::NumberedNowhere))
    }

    /// The same, where a number names an entry: the one that is corrected, or a first dose in the body. `numbered` looks it up.
    ///
    /// # Errors
    /// As [`Draft::from_json`].
    pub fn from_json_where(
        text: &str,
        id: Option<EntryId>,
        numbered: impl Fn(u64) -> Result<EntryId, Unreadable>,
    ) -> Result<Draft, Vec<EntryFault>> {
        let all = |first| all_faults(text, first);
        let mut envelope = Envelope::from_json(text).map_err(all)?;
        envelope.id = envelope.id.or(id);
        if !envelope.name_by_id(numbered).map_err(all)? {
            return envelope.read().map_err(all);
        }
        // The numbers are none of its faults.
        let by_id = serde_json::to_string(&envelope).unwrap_or_default();
        envelope.read().map_err(|first| all_faults(&by_id, first))
    }

    /// The same entry, as a correction of another.
    #[must_use]
    pub fn correcting(self, of: EntryId, reason: &str) -> Draft {
        Draft { correction: Some(Box::new(Correction { of, reason: reason.to_owned() })), ..self }
    }

    /// The same entry with a time of day.
    #[must_use]
    pub fn at(self, at: TimeOfDay) -> Draft {
        Draft { at: Some(at), ..self }
    }

    /// The same entry, copied from a record on paper.
    #[must_use]
    pub fn copied_from(self, from: CopiedFrom) -> Draft {
        Draft { copied_from: Some(Box::new(from)), ..self }
    }

    /// The kind of entry.
    #[must_use]
    pub fn kind(&self) -> Kind {
        self.event.kind()
    }
}

/// An entry sealed into the journal of a holding.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// The entry as written.
    pub draft: Draft,
    /// Its place in the journal, from 1 without gaps.
    pub seq: u64,
    /// When it was recorded; not when it happened.
    pub recorded_at: Instant,
    /// The key with which it was recorded, where a key was asked for.
    pub key: Option<KeyId>,
    /// The hash of the previous entry.
    pub prev: Hash,
    /// The hash of this entry. It covers everything above and the name of the holding.
    pub hash: Hash,
}

impl Entry {
    /// Seals a draft as the next entry after `tip`, the place and hash of the last entry; `None` for the first.
    #[must_use]
    pub fn seal(
        holding: &HoldingName,
        draft: Draft,
        recorded_at: Instant,
        tip: Option<(u64, Hash)>,
    ) -> Entry {
        Entry::seal_with(holding, draft, recorded_at.into(), tip)
    }

    /// The same, recorded with a key.
    #[must_use]
    pub fn seal_with(
        holding: &HoldingName,
        draft: Draft,
        recorded: Stamp,
        tip: Option<(u64, Hash)>,
    ) -> Entry {
        let (seq, prev) = tip.map_or((1, Hash::GENESIS), |(seq, hash)| (seq.saturating_add(1), hash));
        let Stamp { at: recorded_at, key } = recorded;
        let mut entry = Entry { draft, seq, recorded_at, key, prev, hash: Hash::GENESIS };
        entry.hash = seal::hash_of(holding, &entry);
        entry
    }

    /// Whether its body was moved from the journal into an archive.
    #[must_use]
    pub fn is_in_archive(&self) -> bool {
        matches!(self.draft.event, Event::InArchive(_))
    }

    /// The entry as the journal keeps it once its body is in an archive.
    #[must_use]
    pub fn without_body(&self) -> Entry {
        let mut entry = self.clone();
        entry.draft.event = Event::InArchive(self.draft.kind());
        entry.draft.body = "".into();
        entry
    }

    /// Its place and hash, for sealing the next one.
    #[must_use]
    pub fn tip(&self) -> (u64, Hash) {
        (self.seq, self.hash)
    }

    /// The entry as one line of JSON, without a line break. An archived body is written as `null`.
    #[must_use]
    pub fn to_json(&self) -> String {
        // Text, numbers and a body that is already JSON always serialize.
        serde_json::to_string(&Sealed::of(self)).unwrap_or_default()
    }

    /// Reads a sealed entry from JSON. The body text is kept exactly, since the hash covers it; `null` means that it is in
    /// an archive.
    ///
    /// # Errors
    /// The text is not a sealed entry. The hash is *not* checked here; see [`seal::follows`].
    pub fn from_json(text: &str) -> Result<Entry, EntryFault> {
        let sealed: Sealed<'_> = read_json(text)?;
        let id = sealed.id;
        let draft = Envelope {
            id: Some(id),
            on: sealed.on,
            at: sealed.at,
            recorded_by: sealed.recorded_by,
            kind: sealed.kind.into_owned(),
            body: sealed.body.to_owned(),
            copied_from: sealed.copied_from,
            written_on: sealed.written_on,
            corrects: sealed.corrects.map(WhichEntry::Id),
            reason: sealed.reason,
        }
        .into_draft(id, if sealed.body.get() == "null" { Body::InArchive } else { Body::AsWritten })?;
        let (seq, recorded_at, prev, hash) = (sealed.seq, sealed.recorded_at, sealed.prev, sealed.hash);
        let entry = Entry { draft, seq, recorded_at, key: sealed.key, prev, hash };
        // The hash covers the parsed fields. A different spelling with the same fields would go unnoticed.
        if entry.to_json() == text {
            return Ok(entry);
        }
        Err(EntryFault::at("", Unreadable::OtherSpelling))
    }
}

/// An entry as JSON before it is sealed.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = NewEntry))]
pub struct Envelope {
    /// The id made by the writer. Optional if the URL names it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<EntryId>,
    /// The civil day on which it happened.
    pub on: Day,
    /// The time of day, if it was noted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Option<TimeOfDay>,
    /// Who recorded it.
    pub recorded_by: Person,
    /// The kind of entry, such as `administration`.
    #[cfg_attr(feature = "openapi", schema(value_type = Kind))]
    pub kind: String,
    /// What happened, in the fields of that kind.
    #[cfg_attr(feature = "openapi", schema(value_type = Object))]
    pub body: Box<RawValue>,
    /// What it was copied from, such as a notebook, if a paper register is taken over.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(pattern = r"^[^\u0000]*$"))]
    pub copied_from: Option<String>,
    /// The day on which it was written there. Required with `copied_from`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub written_on: Option<Day>,
    /// The entry that this one corrects: its id, or over HTTP its number in the journal.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub corrects: Option<WhichEntry>,
    /// Why it is corrected. Required with `corrects`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(pattern = r"^[^\u0000]*$"))]
    pub reason: Option<String>,
}

/// Whether the body text is kept exactly or rewritten in canonical form.
#[derive(Clone, Copy)]
enum Body {
    AsWritten,
    Canonical,
    /// There is no body.
    InArchive,
}

impl Envelope {
    /// Reads an entry from JSON text.
    ///
    /// # Errors
    /// The text is not such an object.
    pub fn from_json(text: &str) -> Result<Envelope, EntryFault> {
        Ok(read_json(text)?)
    }

    /// The envelope of a draft, for output.
    #[must_use]
    pub fn of(draft: &Draft) -> Envelope {
        let (copied_from, written_on) = CopiedFrom::fields(draft.copied_from.as_deref());
        Envelope {
            id: Some(draft.id),
            on: draft.on,
            at: draft.at,
            recorded_by: draft.recorded_by.clone(),
            kind: draft.kind().as_str().to_owned(),
            body: RawValue::from_string(draft.body.as_ref().to_owned()).unwrap_or_default(),
            copied_from,
            written_on,
            corrects: draft.correction.as_ref().map(|correction| correction.of.into()),
            reason: draft.correction.as_ref().map(|correction| correction.reason.clone()),
        }
    }

    /// Names each entry by its id that it names by its number. Returns whether there is one.
    fn name_by_id(
        &mut self,
        numbered: impl Fn(u64) -> Result<EntryId, Unreadable>,
    ) -> Result<bool, EntryFault> {
        let mut changed = false;
        if let Some(WhichEntry::Number(number)) = self.corrects {
            let id = numbered(number).map_err(|why| EntryFault::at("/corrects", why))?;
            self.corrects = Some(id.into());
            changed = true;
        }
        let fields = Kind::from_word(&self.kind).map_or(&[][..], Kind::fields);
        for field in fields.iter().filter(|field| matches!(field.input, Input::FirstDose)) {
            let Ok(mut written) = serde_json::from_str::<RawFields<'_>>(self.body.get()) else { break };
            let Some((value, number)) = written.number(field.name) else { continue };
            let at = |why| EntryFault::at(&format!("/body/{}", field.name), why);
            *value = Cow::Owned(format!("\"{}\"", numbered(number).map_err(at)?));
            self.body = RawValue::from_string(written.to_json()).unwrap_or_default();
            changed = true;
        }
        Ok(changed)
    }

    /// Parses kind and body, and checks that `corrects` and `reason` come together.
    ///
    /// # Errors
    /// The kind is unknown, the body does not fit it, the id is missing, or a correction and its reason do not come
    /// together.
    pub fn read(self) -> Result<Draft, EntryFault> {
        let id = self.id.ok_or_else(|| EntryFault::at("/id", Unreadable::NoId))?;
        self.into_draft(id, Body::Canonical)
    }

    fn into_draft(self, id: EntryId, text: Body) -> Result<Draft, EntryFault> {
        let kind = Kind::from_word(&self.kind).ok_or_else(|| unknown_kind(&self.kind))?;
        let event = match text {
            Body::InArchive => Ok(Event::InArchive(kind)),
            Body::AsWritten | Body::Canonical => Event::read(kind, self.body.get()),
        };
        let event = event.map_err(|fault| EntryFault {
            pointer: format!("/body{}", fault.pointer),
            what: Unreadable::Body { kind, why: fault.what },
        })?;
        let body = match text {
            Body::AsWritten => self.body.get().into(),
            Body::Canonical | Body::InArchive => event.to_body().into(),
        };
        // Not every database keeps it. Entries that were sealed with one are read as they are.
        let texts = [("/copied_from", &self.copied_from), ("/reason", &self.reason)];
        for (pointer, text) in texts.into_iter().filter(|_| matches!(text, Body::Canonical)) {
            if text.as_ref().is_some_and(|text| text.contains('\0')) {
                return Err(EntryFault::at(pointer, Unreadable::NullCharacter));
            }
        }
        let copied_from = CopiedFrom::of(self.copied_from, self.written_on)?;
        let correction = match (self.corrects, self.reason) {
            (None, None) => None,
            (Some(WhichEntry::Number(_)), _) => {
                return Err(EntryFault::at("/corrects", Unreadable::NumberedNowhere));
            }
            (Some(WhichEntry::Id(of)), Some(reason)) if !reason.trim().is_empty() => {
                Some(Correction { of, reason })
            }
            (Some(_), _) => {
                return Err(EntryFault::at("/reason", Unreadable::NoReason));
            }
            (None, Some(_)) => {
                return Err(EntryFault::at("/corrects", Unreadable::NothingCorrected));
            }
        };
        if kind == Kind::StrikeOut && correction.is_none() {
            return Err(EntryFault::at("/corrects", Unreadable::NothingStruckOut));
        }
        Ok(Draft {
            id,
            on: self.on,
            at: self.at,
            recorded_by: self.recorded_by,
            event,
            body,
            copied_from: copied_from.map(Box::new),
            correction: correction.map(Box::new),
        })
    }
}

/// A sealed entry as JSON. Field order is part of the export format.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Sealed<'a> {
    seq: u64,
    id: EntryId,
    on: Day,
    #[serde(skip_serializing_if = "Option::is_none")]
    at: Option<TimeOfDay>,
    recorded_at: Instant,
    recorded_by: Person,
    #[serde(skip_serializing_if = "Option::is_none")]
    key: Option<KeyId>,
    kind: Cow<'a, str>,
    #[serde(borrow)]
    body: &'a RawValue,
    #[serde(skip_serializing_if = "Option::is_none")]
    copied_from: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    written_on: Option<Day>,
    #[serde(skip_serializing_if = "Option::is_none")]
    corrects: Option<EntryId>,
    #[serde(skip_serializing_if = "Option::is_none")]
    reason: Option<String>,
    prev: Hash,
    hash: Hash,
}

impl Sealed<'_> {
    fn of(entry: &Entry) -> Sealed<'_> {
        let Draft { id, on, at, recorded_by, event, body, copied_from, correction } = &entry.draft;
        let (copied_from, written_on) = CopiedFrom::fields(copied_from.as_deref());
        Sealed {
            seq: entry.seq,
            id: *id,
            on: *on,
            at: *at,
            recorded_at: entry.recorded_at,
            recorded_by: recorded_by.clone(),
            key: entry.key,
            kind: event.kind().as_str().into(),
            body: serde_json::from_str(body).unwrap_or(RawValue::NULL),
            copied_from,
            written_on,
            corrects: correction.as_ref().map(|correction| correction.of),
            reason: correction.as_ref().map(|correction| correction.reason.clone()),
            prev: entry.prev,
            hash: entry.hash,
        }
    }
}
