//! An entry as stored, before it is parsed.

use std::str::FromStr;

use combclear_domain::basics::calendar::{Day, Instant, TimeOfDay};
use combclear_domain::basics::misread::Misread;
use combclear_domain::basics::words::Person;
use combclear_domain::journal::entry::Correction;
use combclear_domain::journal::misfit::{Misfit, OptionalColumn};
use combclear_domain::journal::places::Places;
use combclear_domain::journal::seal::Fields;
use combclear_domain::journal::{Draft, Entry, EntryId, Event, Hash, Kept, Kind};
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
            prev: row.try_get_unchecked("prev")?,
            hash: row.try_get_unchecked("hash")?,
        })
    }
}

impl Row {
    /// Its place; 0, which no entry has, for a number that cannot be one.
    pub(crate) fn place(&self) -> u64 {
        u64::try_from(self.seq).unwrap_or(0)
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
    ///
    /// The hash takes "nothing noted" and empty text for the same, so the difference is looked at here.
    pub(crate) fn fields<'a>(&'a self, holding: &'a str) -> Result<Fields<'a>, Misfit> {
        let at = self.happened_at.as_deref();
        let (corrects, reason) = (self.corrects.as_deref(), self.reason.as_deref());
        if at.is_some_and(<[u8]>::is_empty) {
            return Err(Misfit::EmptyColumn { column: OptionalColumn::HappenedAt });
        }
        if corrects.is_some_and(<[u8]>::is_empty) {
            return Err(Misfit::EmptyColumn { column: OptionalColumn::Corrects });
        }
        if corrects.is_some() != reason.is_some() {
            return Err(Misfit::HalfACorrection);
        }
        Ok(Fields {
            holding,
            seq: self.place(),
            id: &self.id,
            on: text("happened_on", &self.happened_on)?,
            at: text("happened_at", at.unwrap_or_default())?,
            recorded_at: text("recorded_at", &self.recorded_at)?,
            recorded_by: text("recorded_by", &self.recorded_by)?,
            kind: text("kind", &self.kind)?,
            body: text("body", &self.body)?,
            corrects: corrects.unwrap_or_default(),
            reason: text("reason", reason.unwrap_or_default())?,
        })
    }

    /// The row understood as an entry, or what cannot be understood about it.
    pub(crate) fn entry(&self) -> Result<Entry, Misfit> {
        let fields = self.fields("")?;
        let kind = Kind::from_word(fields.kind)
            .ok_or_else(|| Misfit::UnknownKind { kind: fields.kind.to_owned() })?;
        let event = if self.is_without_body() {
            Event::InArchive(kind)
        } else {
            Event::read(kind, fields.body).map_err(Misfit::Body)?
        };
        let correction = match &self.corrects {
            Some(of) => Some(Correction { of: id("corrects", of)?, reason: fields.reason.to_owned() }),
            None => None,
        };
        let at = match &self.happened_at {
            Some(_) => Some(read::<TimeOfDay>("happened_at", fields.at)?),
            None => None,
        };
        let draft = Draft {
            id: id("id", &self.id)?,
            on: read::<Day>("happened_on", fields.on)?,
            at,
            recorded_by: read::<Person>("recorded_by", fields.recorded_by)?,
            event,
            body: fields.body.into(),
            correction: correction.map(Box::new),
        };
        let seq = u64::try_from(self.seq).map_err(|_| Misfit::Place { seq: self.seq })?;
        let recorded_at = read::<Instant>("recorded_at", fields.recorded_at)?;
        Ok(Entry { draft, seq, recorded_at, prev: self.prev()?, hash: self.hash()? })
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

/// The columns of [`crate::sql::KEPT`] as an entry. Nothing is copied that the fold does not keep.
///
/// # Errors
/// What cannot be understood: in short, since the row is then read again as a [`Row`], which says it in full.
pub(crate) fn kept<'r, R>(row: &'r R) -> Result<Kept, NotUnderstood>
where
    R: sqlx::Row,
    usize: ColumnIndex<R>,
    i64: sqlx::Decode<'r, R::Database>,
    &'r str: sqlx::Decode<'r, R::Database>,
    &'r [u8]: sqlx::Decode<'r, R::Database>,
    Option<&'r str>: sqlx::Decode<'r, R::Database>,
    Option<&'r [u8]>: sqlx::Decode<'r, R::Database>,
{
    let text = |column: usize| row.try_get_unchecked::<&str, _>(column);
    let bytes = |column: usize| row.try_get_unchecked::<&[u8], _>(column);
    let (seq, id, on) = (row.try_get_unchecked::<i64, _>(0)?, bytes(1)?, text(2)?);
    let at: Option<&str> = row.try_get_unchecked(3)?;
    let (recorded_at, recorded_by, kind, body) = (text(4)?, text(5)?, text(6)?, text(7)?);
    let (corrects, reason): (Option<&[u8]>, Option<&str>) =
        (row.try_get_unchecked(8)?, row.try_get_unchecked(9)?);
    let kind = Kind::from_word(kind).ok_or(NotUnderstood)?;
    let correction = match (corrects, reason) {
        (None, None) => None,
        (Some(of), Some(reason)) => {
            let of = EntryId(Uuid::from_slice(of).map_err(|_| NotUnderstood)?);
            Some(Box::new(Correction { of, reason: reason.to_owned() }))
        }
        (Some(_), None) | (None, Some(_)) => return Err(NotUnderstood),
    };
    Ok(Kept {
        id: EntryId(Uuid::from_slice(id).map_err(|_| NotUnderstood)?),
        seq: u64::try_from(seq).map_err(|_| NotUnderstood)?,
        on: on.parse().map_err(|_| NotUnderstood)?,
        at: at.map(str::parse).transpose().map_err(|_| NotUnderstood)?,
        recorded_at: recorded_at.parse().map_err(|_| NotUnderstood)?,
        recorded_by: recorded_by.parse().map_err(|_| NotUnderstood)?,
        event: match body {
            "" => Event::InArchive(kind),
            body => Event::read(kind, body).map_err(|_| NotUnderstood)?,
        },
        correction,
        hash: Hash(bytes(10)?.try_into().map_err(|_| NotUnderstood)?),
    })
}

/// A row that cannot be understood.
pub(crate) struct NotUnderstood;

impl From<sqlx::Error> for NotUnderstood {
    fn from(_: sqlx::Error) -> NotUnderstood {
        NotUnderstood
    }
}
