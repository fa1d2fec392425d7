//! The envelope of an entry: a [`Draft`] as its writer made it, and an [`Entry`] once it is sealed into the chain.

use std::sync::Arc;

use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use crate::basics::calendar::{Day, Instant, TimeOfDay};
pub use crate::basics::entry_id::{EntryId, NotAnId};
use crate::basics::words::{HoldingName, Person};
use crate::journal::event::{Event, Kind};
pub use crate::journal::fault::EntryFault;
use crate::journal::fault::Unreadable;
use crate::journal::read::{read_json, unknown_kind};
use crate::journal::seal::{self, Hash};

/// Says which entry a new one corrects, and why. An entry that corrects is of the same kind, or a strike-out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Correction {
    /// The entry that was wrong. It stays visible.
    pub of: EntryId,
    /// Why it was wrong.
    pub reason: String,
}

/// An entry as its writer made it, read and understood, not yet part of a journal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Draft {
    /// Made by the writer.
    pub id: EntryId,
    /// The civil day on which it happened.
    pub on: Day,
    /// The time of day, if it was noted.
    pub at: Option<TimeOfDay>,
    /// Who writes it down.
    pub recorded_by: Person,
    /// What happened.
    pub event: Event,
    /// The text of the body, exactly as it is hashed and kept.
    pub body: Arc<str>,
    /// Which entry this one corrects, if any.
    pub correction: Option<Box<Correction>>,
}

impl Draft {
    /// An entry made by a program rather than read from text.
    #[must_use]
    pub fn new(id: EntryId, on: Day, recorded_by: Person, event: Event) -> Draft {
        let body = event.to_body().into();
        Draft { id, on, at: None, recorded_by, event, body, correction: None }
    }

    /// The same entry, correcting another.
    #[must_use]
    pub fn correcting(self, of: EntryId, reason: &str) -> Draft {
        Draft { correction: Some(Box::new(Correction { of, reason: reason.to_owned() })), ..self }
    }

    /// The same entry, at a time of day.
    #[must_use]
    pub fn at(self, at: TimeOfDay) -> Draft {
        Draft { at: Some(at), ..self }
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
    /// What its writer wrote.
    pub draft: Draft,
    /// Its place in the journal, counted from 1 without gaps.
    pub seq: u64,
    /// When it was recorded; not when it happened.
    pub recorded_at: Instant,
    /// The hash of the entry before it.
    pub prev: Hash,
    /// The hash of this entry, which covers everything above and the name of the holding.
    pub hash: Hash,
}

impl Entry {
    /// Seals a draft as the next entry after `tip` (the last place and hash; none for the first entry).
    #[must_use]
    pub fn seal(
        holding: &HoldingName,
        draft: Draft,
        recorded_at: Instant,
        tip: Option<(u64, Hash)>,
    ) -> Entry {
        let (seq, prev) = tip.map_or((1, Hash::GENESIS), |(seq, hash)| (seq.saturating_add(1), hash));
        let mut entry = Entry { draft, seq, recorded_at, prev, hash: Hash::GENESIS };
        entry.hash = seal::hash_of(holding, &entry);
        entry
    }

    /// Whether its body is in an archive, and not in the journal.
    #[must_use]
    pub fn is_in_archive(&self) -> bool {
        matches!(self.draft.event, Event::InArchive(_))
    }

    /// What stays of it in the journal once its body is in an archive.
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

    /// The entry as one line of JSON, without line break. A body that is in an archive is written `null`.
    #[must_use]
    pub fn to_json(&self) -> String {
        // Text, numbers and a body that is already JSON: writing them to a string cannot fail.
        serde_json::to_string(&Sealed::of(self)).unwrap_or_default()
    }

    /// Reads a sealed entry from JSON. The body text is kept as it stands, since the hash covers it; `null` stands for one
    /// that is in an archive.
    ///
    /// # Errors
    /// Text that is not such an entry. The hash is *not* checked here; see [`seal::follows`].
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
            corrects: sealed.corrects,
            reason: sealed.reason,
        }
        .into_draft(id, if sealed.body.get() == "null" { Body::InArchive } else { Body::AsWritten })?;
        let (seq, recorded_at, prev, hash) = (sealed.seq, sealed.recorded_at, sealed.prev, sealed.hash);
        let entry = Entry { draft, seq, recorded_at, prev, hash };
        // The hash covers what was understood. What is written otherwise but understood the same would go unseen.
        if entry.to_json() == text {
            return Ok(entry);
        }
        Err(EntryFault::at("", Unreadable::OtherSpelling))
    }
}

/// An entry as it travels before it is sealed.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = NewEntry))]
pub struct Envelope {
    /// The id made by the writer. May be left out where the address already names it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub id: Option<EntryId>,
    /// The civil day on which it happened.
    pub on: Day,
    /// The time of day, if it was noted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Option<TimeOfDay>,
    /// Who writes it down.
    pub recorded_by: Person,
    /// The kind of entry, such as `administration`.
    #[cfg_attr(feature = "openapi", schema(value_type = Kind))]
    pub kind: String,
    /// What happened, in the fields of that kind.
    #[cfg_attr(feature = "openapi", schema(value_type = Object))]
    pub body: Box<RawValue>,
    /// The entry that this one corrects.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub corrects: Option<EntryId>,
    /// Why it is corrected. Needed with `corrects`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reason: Option<String>,
}

/// Whether the body text is kept to the letter or written anew in canonical form.
#[derive(Clone, Copy)]
enum Body {
    AsWritten,
    Canonical,
    /// There is none.
    InArchive,
}

impl Envelope {
    /// Reads an entry from JSON text.
    ///
    /// # Errors
    /// Text that is not such an object.
    pub fn from_json(text: &str) -> Result<Envelope, EntryFault> {
        Ok(read_json(text)?)
    }

    /// The envelope of a draft, for writing it out.
    #[must_use]
    pub fn of(draft: &Draft) -> Envelope {
        Envelope {
            id: Some(draft.id),
            on: draft.on,
            at: draft.at,
            recorded_by: draft.recorded_by.clone(),
            kind: draft.kind().as_str().to_owned(),
            body: RawValue::from_string(draft.body.as_ref().to_owned()).unwrap_or_default(),
            corrects: draft.correction.as_ref().map(|correction| correction.of),
            reason: draft.correction.as_ref().map(|correction| correction.reason.clone()),
        }
    }

    /// Understands the entry: its kind, its body, and that a correction gives its reason.
    ///
    /// # Errors
    /// An unknown kind, a body that does not fit it, a missing id, a correction without reason or a reason without
    /// correction.
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
        let correction = match (self.corrects, self.reason) {
            (None, None) => None,
            (Some(of), Some(reason)) if !reason.trim().is_empty() => Some(Correction { of, reason }),
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
            correction: correction.map(Box::new),
        })
    }
}

/// An entry as it travels once it is sealed. Field order is part of the export format.
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
    kind: std::borrow::Cow<'a, str>,
    #[serde(borrow)]
    body: &'a RawValue,
    #[serde(skip_serializing_if = "Option::is_none")]
    corrects: Option<EntryId>,
    #[serde(skip_serializing_if = "Option::is_none")]
    reason: Option<String>,
    prev: Hash,
    hash: Hash,
}

impl Sealed<'_> {
    fn of(entry: &Entry) -> Sealed<'_> {
        let Draft { id, on, at, recorded_by, event, body, correction } = &entry.draft;
        Sealed {
            seq: entry.seq,
            id: *id,
            on: *on,
            at: *at,
            recorded_at: entry.recorded_at,
            recorded_by: recorded_by.clone(),
            kind: event.kind().as_str().into(),
            body: serde_json::from_str(body).unwrap_or(RawValue::NULL),
            corrects: correction.as_ref().map(|correction| correction.of),
            reason: correction.as_ref().map(|correction| correction.reason.clone()),
            prev: entry.prev,
            hash: entry.hash,
        }
    }
}
