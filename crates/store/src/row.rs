//! An entry as stored, before it is parsed.

use std::str::FromStr;

use combclear_domain::basics::calendar::{Day, Instant, TimeOfDay};
use combclear_domain::basics::misread::Misread;
use combclear_domain::basics::words::Person;
use combclear_domain::journal::copied::CopiedFrom;
use combclear_domain::journal::entry::Correction;
use combclear_domain::journal::misfit::{Misfit, OptionalColumn};
use combclear_domain::journal::places::Places;
use combclear_domain::journal::seal::{Broken, Fields, Link, follows};
use combclear_domain::journal::{Draft, Entry, EntryId, Event, Hash, Kept, KeyId, Kind};
use sqlx::ColumnIndex;
use uuid::Uuid;

/// A row of `entries`. All columns except the place are read as bytes, so that any content can be read and named, text or
/// not.
pub(crate) struct Row {
    pub(crate) seq: i64,
    id: Vec<u8>,
    happened_on: Vec<u8>,
    happened_at: Option<Vec<u8>>,
    recorded_at: Vec<u8>,
    recorded_by: Vec<u8>,
    kind: Vec<u8>,
    body: Vec<u8>,
    corrects: Option<Vec<u8>>,
    reason: Option<Vec<u8>>,
    copied_from: Option<Vec<u8>>,
    written_on: Option<Vec<u8>>,
    key: Option<Vec<u8>>,
    prev: Vec<u8>,
    hash: Vec<u8>,
}

impl<'r, R> sqlx::FromRow<'r, R> for Row
where
    R: sqlx::Row,
    &'static str: ColumnIndex<R>,
    i64: sqlx::Decode<'r, R::Database>,
    Vec<u8>: sqlx::Decode<'r, R::Database>,
    Option<Vec<u8>>: sqlx::Decode<'r, R::Database>,
{
    fn from_row(row: &'r R) -> sqlx::Result<Row> {
        // Unchecked: reads text columns as raw bytes.
        Ok(Row {
            seq: row.try_get_unchecked("seq")?,
            id: row.try_get_unchecked("id")?,
            happened_on: row.try_get_unchecked("happened_on")?,
            happened_at: row.try_get_unchecked("happened_at")?,
            recorded_at: row.try_get_unchecked("recorded_at")?,
            recorded_by: row.try_get_unchecked("recorded_by")?,
            kind: row.try_get_unchecked("kind")?,
            body: row.try_get_unchecked("body")?,
            corrects: row.try_get_unchecked("corrects")?,
            reason: row.try_get_unchecked("reason")?,
            copied_from: row.try_get_unchecked("copied_from")?,
            written_on: row.try_get_unchecked("written_on")?,
            key: row.try_get_unchecked("key")?,
            prev: row.try_get_unchecked("prev")?,
            hash: row.try_get_unchecked("hash")?,
        })
    }
}

impl Row {
    /// Its place; 0, which no entry has, for a number that cannot be one.
    pub(crate) fn place(&self) -> u64 {
        self.columns().place()
    }

    /// Its id; the nil id for bytes that are not one.
    pub(crate) fn id(&self) -> EntryId {
        EntryId(Uuid::from_slice(&self.id).unwrap_or_default())
    }

    /// The hash it says came before.
    pub(crate) fn prev(&self) -> Result<Hash, Misfit> {
        hash("prev", &self.prev)
    }

    /// The hash it carries.
    pub(crate) fn hash(&self) -> Result<Hash, Misfit> {
        hash("hash", &self.hash)
    }

    /// Whether its body is missing, archived or not.
    pub(crate) fn is_without_body(&self) -> bool {
        self.body.is_empty()
    }

    /// Whether it is of this kind.
    pub(crate) fn is(&self, kind: Kind) -> bool {
        self.kind == kind.as_str().as_bytes()
    }

    /// The places that it moved into an archive, if it is a readable `archived` entry.
    pub(crate) fn moves(&self) -> Option<Places> {
        match Event::read(Kind::Archived, str::from_utf8(&self.body).ok()?) {
            Ok(Event::Archived(body)) => Some(body.places.clone()),
            _ => None,
        }
    }

    /// The fields that the hash covers.
    pub(crate) fn fields<'a>(&'a self, holding: &'a str) -> Result<Fields<'a>, Misfit> {
        self.columns().fields(holding)
    }

    /// The row understood as an entry, or what cannot be understood about it.
    pub(crate) fn entry(&self) -> Result<Entry, Misfit> {
        let columns = self.columns();
        let kept = columns.kept(&columns.fields("")?)?;
        let Kept { id, seq, on, at, recorded_at, recorded_by, event, copied_from, correction, hash, .. } =
            kept;
        let body = text("body", columns.body)?.into();
        let draft = Draft { id, on, at, recorded_by, event, body, copied_from, correction };
        let key = match &self.key {
            Some(key) => Some(read::<KeyId>("key", text("key", key)?)?),
            None => None,
        };
        Ok(Entry { draft, seq, recorded_at, key, prev: self.prev()?, hash })
    }

    fn columns(&self) -> Columns<'_> {
        Columns {
            seq: self.seq,
            id: &self.id,
            happened_on: &self.happened_on,
            happened_at: self.happened_at.as_deref(),
            recorded_at: &self.recorded_at,
            recorded_by: &self.recorded_by,
            kind: &self.kind,
            body: &self.body,
            corrects: self.corrects.as_deref(),
            reason: self.reason.as_deref(),
            copied_from: self.copied_from.as_deref(),
            written_on: self.written_on.as_deref(),
            key: self.key.as_deref(),
            hash: &self.hash,
        }
    }
}

/// A row without the hash before it, where it lies: nothing is copied that an entry does not keep.
pub(crate) struct Columns<'a> {
    pub(crate) seq: i64,
    pub(crate) id: &'a [u8],
    pub(crate) happened_on: &'a [u8],
    pub(crate) happened_at: Option<&'a [u8]>,
    pub(crate) recorded_at: &'a [u8],
    pub(crate) recorded_by: &'a [u8],
    pub(crate) kind: &'a [u8],
    pub(crate) body: &'a [u8],
    pub(crate) corrects: Option<&'a [u8]>,
    pub(crate) reason: Option<&'a [u8]>,
    pub(crate) copied_from: Option<&'a [u8]>,
    pub(crate) written_on: Option<&'a [u8]>,
    pub(crate) key: Option<&'a [u8]>,
    pub(crate) hash: &'a [u8],
}

impl<'a> Columns<'a> {
    /// The columns of [`crate::sql::KEPT`].
    pub(crate) fn of<R>(row: &'a R) -> sqlx::Result<Columns<'a>>
    where
        R: sqlx::Row,
        usize: ColumnIndex<R>,
        i64: sqlx::Decode<'a, R::Database>,
        &'a [u8]: sqlx::Decode<'a, R::Database>,
        Option<&'a [u8]>: sqlx::Decode<'a, R::Database>,
    {
        // Unchecked: reads text columns as raw bytes. By place: a name would be looked up in every row.
        Ok(Columns {
            seq: row.try_get_unchecked(0)?,
            id: row.try_get_unchecked(1)?,
            happened_on: row.try_get_unchecked(2)?,
            happened_at: row.try_get_unchecked(3)?,
            recorded_at: row.try_get_unchecked(4)?,
            recorded_by: row.try_get_unchecked(5)?,
            kind: row.try_get_unchecked(6)?,
            body: row.try_get_unchecked(7)?,
            corrects: row.try_get_unchecked(8)?,
            reason: row.try_get_unchecked(9)?,
            copied_from: row.try_get_unchecked(10)?,
            written_on: row.try_get_unchecked(11)?,
            key: row.try_get_unchecked(12)?,
            hash: row.try_get_unchecked(13)?,
        })
    }

    /// Its place; 0, which no entry has, for a number that cannot be one.
    pub(crate) fn place(&self) -> u64 {
        u64::try_from(self.seq).unwrap_or(0)
    }

    /// The entry as the fold takes it in, or what cannot be understood about it.
    fn kept(&self, fields: &Fields<'_>) -> Result<Kept, Misfit> {
        let kind = Kind::from_word(fields.kind)
            .ok_or_else(|| Misfit::UnknownKind { kind: fields.kind.to_owned() })?;
        let event = match fields.body {
            "" => Event::InArchive(kind),
            body => Event::read(kind, body).map_err(Misfit::Body)?,
        };
        let correction = match self.corrects {
            Some(of) => Some(Correction { of: id("corrects", of)?, reason: fields.reason.to_owned() }),
            None => None,
        };
        let copied_from = match fields.copied {
            Some((what, day)) => {
                Some(CopiedFrom { what: what.to_owned(), written_on: read::<Day>("written_on", day)? })
            }
            None => None,
        };
        let at = match self.happened_at {
            Some(_) => Some(read::<TimeOfDay>("happened_at", fields.at)?),
            None => None,
        };
        Ok(Kept {
            at,
            id: id("id", self.id)?,
            on: read::<Day>("happened_on", fields.on)?,
            recorded_by: read::<Person>("recorded_by", fields.recorded_by)?,
            event,
            copied_from: copied_from.map(Box::new),
            correction: correction.map(Box::new),
            seq: u64::try_from(self.seq).map_err(|_| Misfit::Place { seq: self.seq })?,
            recorded_at: read::<Instant>("recorded_at", fields.recorded_at)?,
            hash: hash("hash", self.hash)?,
            text_bytes: self.body.len(),
        })
    }

    /// The hash takes "nothing noted" and empty text for the same, so the difference is looked at here.
    fn fields(&self, holding: &'a str) -> Result<Fields<'a>, Misfit> {
        let (at, corrects, reason) = (self.happened_at, self.corrects, self.reason);
        if at.is_some_and(<[u8]>::is_empty) {
            return Err(Misfit::EmptyColumn { column: OptionalColumn::HappenedAt });
        }
        if corrects.is_some_and(<[u8]>::is_empty) {
            return Err(Misfit::EmptyColumn { column: OptionalColumn::Corrects });
        }
        if corrects.is_some() != reason.is_some() {
            return Err(Misfit::HalfACorrection);
        }
        let copied = match (self.copied_from, self.written_on) {
            (None, None) => None,
            (Some(what), Some(day)) => Some((text("copied_from", what)?, text("written_on", day)?)),
            (Some(_), None) | (None, Some(_)) => return Err(Misfit::HalfCopied),
        };
        Ok(Fields {
            holding,
            seq: self.place(),
            id: self.id,
            on: text("happened_on", self.happened_on)?,
            at: text("happened_at", at.unwrap_or_default())?,
            recorded_at: text("recorded_at", self.recorded_at)?,
            recorded_by: text("recorded_by", self.recorded_by)?,
            kind: text("kind", self.kind)?,
            body: text("body", self.body)?,
            corrects: corrects.unwrap_or_default(),
            reason: text("reason", reason.unwrap_or_default())?,
            copied,
            key: self.key.map(|key| text("key", key)).transpose()?,
        })
    }
}

/// The chain of a holding as it is read: each entry must be as sealed and follow the one before it.
pub(crate) struct Chain {
    tip: Option<(u64, Hash)>,
}

/// Why an entry is not taken in.
pub(crate) enum NotKept {
    /// It is not as sealed, or does not follow.
    Broken(Broken),
    /// It cannot be understood.
    Unreadable(u64, Misfit),
}

impl Chain {
    /// Begins after an entry; `None` is before the first.
    pub(crate) fn after(tip: Option<(u64, Hash)>) -> Chain {
        Chain { tip }
    }

    /// The place from which it is read on; `None` if there can be none.
    pub(crate) fn next_place(&self) -> Option<i64> {
        self.tip.map_or(Some(1), |(seq, _)| i64::try_from(seq).ok()?.checked_add(1))
    }

    /// The next entry. The hash of one without a body cannot be worked out again; the entry that moved it vouches for it, and a
    /// walk over the journal checks that.
    pub(crate) fn next(&mut self, holding: &str, columns: &Columns<'_>) -> Result<Kept, NotKept> {
        let seq = columns.place();
        let unreadable = |what| NotKept::Unreadable(seq, what);
        let fields = columns.fields(holding).map_err(unreadable)?;
        let kept = columns.kept(&fields).map_err(unreadable)?;
        let (_, prev) = self.tip.unwrap_or((0, Hash::GENESIS));
        let content = if fields.body.is_empty() { kept.hash } else { fields.hash(prev) };
        let link = Link { seq, id: kept.id, prev, hash: kept.hash };
        follows(self.tip, link, content).map_err(NotKept::Broken)?;
        self.tip = Some((seq, kept.hash));
        Ok(kept)
    }
}

/// A hash from the bytes of a column.
pub(crate) fn hash(column: &'static str, bytes: &[u8]) -> Result<Hash, Misfit> {
    let bytes = bytes.try_into().map_err(|_| Misfit::Bytes { column, found: bytes.len(), wanted: 32 })?;
    Ok(Hash(bytes))
}

fn id(column: &'static str, bytes: &[u8]) -> Result<EntryId, Misfit> {
    let id = Uuid::from_slice(bytes).map_err(|_| Misfit::Bytes { column, found: bytes.len(), wanted: 16 })?;
    Ok(EntryId(id))
}

fn text<'a>(column: &'static str, bytes: &'a [u8]) -> Result<&'a str, Misfit> {
    str::from_utf8(bytes).map_err(|_| Misfit::NotText { column })
}

/// Reads a value; what is read here has one spelling only.
fn read<T>(column: &'static str, text: &str) -> Result<T, Misfit>
where
    T: FromStr<Err: Into<Misread>>,
{
    text.parse().map_err(|fault: T::Err| Misfit::Misread { column, why: fault.into() })
}
