//! The hash chain: any later change to an entry is detected, and `verify` names the first bad one.
//!
//! `hash = SHA-256(0x00 ‖ prev ‖ fields)`. The zero byte separates entry hashes from other uses of the function, as in RFC
//! 6962. Each field is preceded by its length, so that different fields never give the same bytes. The holding's name and
//! the place in the journal are included, so that entries cannot be moved.
//!
//! An entry copied from a record on paper has two more fields at the end, what it was copied from and the day on which it was
//! written there, and 0x01 for 0x00. An entry that was recorded with a key has the id of the key after that, and 0x10 is added to
//! the first byte.

use std::fmt;
use std::str::FromStr;

use sha2::{Digest, Sha256};

pub use crate::basics::misread::{NotACheckpoint, NotAHash};
use crate::basics::text::text_in_json;
use crate::basics::words::HoldingName;
use crate::journal::entry::{Entry, EntryId};
use crate::journal::key::KeyId;
use crate::journal::misfit::Misfit;

/// A SHA-256 hash, written as 64 hexadecimal digits.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(value_type = String, min_length = 64, max_length = 64, pattern = "^[0-9a-f]{64}$"))]
pub struct Hash(pub [u8; 32]);

impl Hash {
    /// The `prev` of the first entry: 32 zero bytes.
    pub const GENESIS: Hash = Hash([0; 32]);

    /// The hash of a document's bytes and nothing else, so that any other program computes the same.
    #[must_use]
    pub fn of_content(bytes: &[u8]) -> Hash {
        Hash(Sha256::digest(bytes).into())
    }
}

impl fmt::Display for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&hex::encode(self.0))
    }
}

impl fmt::Debug for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for Hash {
    type Err = NotAHash;

    fn from_str(text: &str) -> Result<Hash, NotAHash> {
        // Lower case only: one spelling keeps exports identical byte for byte.
        let lower = text.bytes().all(|byte| !byte.is_ascii_uppercase());
        let mut bytes = [0; 32];
        match hex::decode_to_slice(text, &mut bytes) {
            Ok(()) if lower => Ok(Hash(bytes)),
            _ => Err(NotAHash(text.to_owned())),
        }
    }
}

text_in_json!(Hash);

/// Everything a hash covers except the previous hash, as stored text.
///
/// A journal is verified from these rather than from parsed entries, so that a change that makes an entry unreadable is
/// still found and named.
#[derive(Debug, Clone, Copy)]
pub struct Fields<'a> {
    /// The holding.
    pub holding: &'a str,
    /// The place in the journal.
    pub seq: u64,
    /// The id.
    pub id: &'a [u8],
    /// The civil day.
    pub on: &'a str,
    /// The time of day; empty if none was noted.
    pub at: &'a str,
    /// When it was recorded.
    pub recorded_at: &'a str,
    /// Who recorded it.
    pub recorded_by: &'a str,
    /// The kind.
    pub kind: &'a str,
    /// The body, exactly as stored.
    pub body: &'a str,
    /// The id of the corrected entry; empty if none.
    pub corrects: &'a [u8],
    /// The reason of the correction; empty if none.
    pub reason: &'a str,
    /// What it was copied from and the day on which it was written there, if it was copied.
    pub copied: Option<(&'a str, &'a str)>,
    /// The key that recorded it, if it was recorded with one.
    pub key: Option<&'a str>,
}

impl Fields<'_> {
    /// The hash of these fields after `prev`.
    #[must_use]
    pub fn hash(&self, prev: Hash) -> Hash {
        let mut hash = Sha256::new();
        hash.update([u8::from(self.copied.is_some()) | (u8::from(self.key.is_some()) << 4)]);
        hash.update(prev.0);
        let seq = self.seq.to_be_bytes();
        let fields: [&[u8]; 11] = [
            self.holding.as_bytes(),
            &seq,
            self.id,
            self.on.as_bytes(),
            self.at.as_bytes(),
            self.recorded_at.as_bytes(),
            self.recorded_by.as_bytes(),
            self.kind.as_bytes(),
            self.body.as_bytes(),
            self.corrects,
            self.reason.as_bytes(),
        ];
        let copied = self.copied.map(|(what, written_on)| [what.as_bytes(), written_on.as_bytes()]);
        let key = self.key.map(str::as_bytes);
        for field in fields.into_iter().chain(copied.into_iter().flatten()).chain(key) {
            hash.update(u64::try_from(field.len()).unwrap_or(u64::MAX).to_be_bytes());
            hash.update(field);
        }
        Hash(hash.finalize().into())
    }
}

/// The hash that this entry must carry in the journal of this holding.
#[must_use]
pub fn hash_of(holding: &HoldingName, entry: &Entry) -> Hash {
    let draft = &entry.draft;
    let (of, reason) = draft
        .correction
        .as_ref()
        .map_or((&[][..], ""), |correction| (&correction.of.0.as_bytes()[..], correction.reason.as_str()));
    let written_on =
        draft.copied_from.as_ref().map(|copied| copied.written_on.to_string()).unwrap_or_default();
    let fields = Fields {
        holding: holding.as_str(),
        seq: entry.seq,
        id: draft.id.0.as_bytes(),
        on: &draft.on.to_string(),
        at: &draft.at.map(|at| at.to_string()).unwrap_or_default(),
        recorded_at: &entry.recorded_at.to_string(),
        recorded_by: draft.recorded_by.as_str(),
        kind: draft.kind().as_str(),
        body: &draft.body,
        corrects: of,
        reason,
        copied: draft.copied_from.as_ref().map(|copied| (copied.what.as_str(), written_on.as_str())),
        key: entry.key.as_ref().map(KeyId::as_str),
    };
    fields.hash(entry.prev)
}

/// The id derived from these parts. It lets a program prepare an entry that is recorded once even if it is sent twice. A
/// UUID of version 8 (RFC 9562, section 5.8) over SHA-256.
pub(crate) fn derived_id(parts: &[&str]) -> EntryId {
    let mut sha = Sha256::new();
    for part in parts {
        sha.update(u64::try_from(part.len()).unwrap_or(u64::MAX).to_be_bytes());
        sha.update(part.as_bytes());
    }
    let mut first = [0_u8; 16];
    first.iter_mut().zip(sha.finalize()).for_each(|(byte, of)| *byte = of);
    EntryId(uuid::Builder::from_custom_bytes(first).into_uuid())
}

/// The first entry of a journal that breaks the chain, and why.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("entry {seq} ({id}): {what:?}")]
pub struct Broken {
    /// Its place in the journal.
    pub seq: u64,
    /// Its id.
    pub id: EntryId,
    /// What does not fit.
    pub what: Misfit,
}

/// The position that an entry claims in the chain.
#[derive(Debug, Clone, Copy)]
pub struct Link {
    /// Its place.
    pub seq: u64,
    /// Its id.
    pub id: EntryId,
    /// The hash that it names as the previous one.
    pub prev: Hash,
    /// The hash it carries.
    pub hash: Hash,
}

/// Checks that an entry is as sealed and directly follows `tip`. `content` is the hash of its fields.
///
/// # Errors
/// A gap or repeat in the count, a `prev` that is not the previous hash, or a hash that does not match the content.
pub fn follows(tip: Option<(u64, Hash)>, link: Link, content: Hash) -> Result<(), Broken> {
    let (last, prev) = tip.unwrap_or((0, Hash::GENESIS));
    let broken = |what| Err(Broken { seq: link.seq, id: link.id, what });
    let next = last.saturating_add(1);
    if link.seq != next {
        return broken(Misfit::OutOfPlace { last, next });
    }
    if link.prev != prev {
        return broken(Misfit::OtherPrev);
    }
    if link.hash != content {
        return broken(Misfit::Changed);
    }
    Ok(())
}

impl Entry {
    /// Checks that this entry is as sealed and directly follows `tip` in the journal of `holding`. For an archived entry
    /// this checks only its position in the chain; [`super::archive::Archives`] checks the rest.
    ///
    /// # Errors
    /// As [`follows`].
    pub fn follows(&self, holding: &HoldingName, tip: Option<(u64, Hash)>) -> Result<(), Broken> {
        let link = Link { seq: self.seq, id: self.draft.id, prev: self.prev, hash: self.hash };
        // The hash of an archived entry cannot be recomputed.
        let content = if self.is_in_archive() { self.hash } else { hash_of(holding, self) };
        follows(tip, link, content)
    }
}

/// Three lines that fix the state of a journal: holding, number of entries, hash of the last.
///
/// Kept elsewhere (printed, sent to somebody), they prove later that nothing up to there was changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Checkpoint {
    /// The holding.
    pub holding: HoldingName,
    /// Number of entries in the journal.
    pub entries: u64,
    /// The hash of the last entry.
    pub head: Hash,
}

impl fmt::Display for Checkpoint {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "combclear journal of {}", self.holding)?;
        writeln!(f, "{}", self.entries)?;
        writeln!(f, "{}", self.head)
    }
}

impl FromStr for Checkpoint {
    type Err = NotACheckpoint;

    fn from_str(text: &str) -> Result<Checkpoint, NotACheckpoint> {
        let mut lines = text.lines();
        let (Some(first), Some(count), Some(head), None) =
            (lines.next(), lines.next(), lines.next(), lines.next())
        else {
            return Err(NotACheckpoint);
        };
        let holding = first.strip_prefix("combclear journal of ").ok_or(NotACheckpoint)?;
        Ok(Checkpoint {
            holding: holding.parse().map_err(|_| NotACheckpoint)?,
            entries: count.trim().parse().map_err(|_| NotACheckpoint)?,
            head: head.trim().parse().map_err(|_| NotACheckpoint)?,
        })
    }
}
