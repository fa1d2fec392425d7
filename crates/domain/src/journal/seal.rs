//! The hash chain: any later change to an entry shows, and `verify` names the first bad one.
//!
//! `hash = SHA-256(0x00 ‖ prev ‖ fields)`. The zero byte keeps entry hashes apart from any other use of the function
//! (the habit of RFC 6962). Every field goes in with its length before it, so that no two entries share bytes; the
//! holding's name and the place in the journal go in too, so that entries cannot be moved.

use std::fmt;
use std::str::FromStr;

use sha2::{Digest, Sha256};

pub use crate::basics::misread::{NotACheckpoint, NotAHash};
use crate::basics::text::text_in_json;
use crate::basics::words::HoldingName;
use crate::journal::entry::{Entry, EntryId};
use crate::journal::misfit::Misfit;

/// A SHA-256 hash, written as 64 hexadecimal digits.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(value_type = String, min_length = 64, max_length = 64))]
pub struct Hash(pub [u8; 32]);

impl Hash {
    /// What stands before the first entry: 32 zero bytes.
    pub const GENESIS: Hash = Hash([0; 32]);

    /// The hash of a document's content: of its bytes and nothing else, so that any other program gives the same.
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
        // Lower case only: one spelling, so that an export is the same to the byte.
        let lower = text.bytes().all(|byte| !byte.is_ascii_uppercase());
        let mut bytes = [0; 32];
        match hex::decode_to_slice(text, &mut bytes) {
            Ok(()) if lower => Ok(Hash(bytes)),
            _ => Err(NotAHash(text.to_owned())),
        }
    }
}

text_in_json!(Hash);

/// Everything a hash covers but the hash before, as the text that is kept.
///
/// A journal is verified from these and not from understood entries, so that a change that makes an entry unreadable
/// is still found and named.
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
    /// The body, exactly as it is kept.
    pub body: &'a str,
    /// The id of the corrected entry; empty if none.
    pub corrects: &'a [u8],
    /// The reason of the correction; empty if none.
    pub reason: &'a str,
}

impl Fields<'_> {
    /// The hash of these fields after `prev`.
    #[must_use]
    pub fn hash(&self, prev: Hash) -> Hash {
        let mut hash = Sha256::new();
        hash.update([0u8]);
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
        for field in fields {
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
    };
    fields.hash(entry.prev)
}

/// The id that these parts always give: for an entry that a program prepares, so that recording it twice records it once. A UUID of
/// version 8 (RFC 9562, section 5.8) over SHA-256.
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

/// The first entry of a journal that does not fit, and what does not fit about it.
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

/// What an entry claims about its place in the chain.
#[derive(Debug, Clone, Copy)]
pub struct Link {
    /// Its place.
    pub seq: u64,
    /// Its id.
    pub id: EntryId,
    /// The hash it says came before.
    pub prev: Hash,
    /// The hash it carries.
    pub hash: Hash,
}

/// Checks that an entry is what was sealed and follows directly after `tip`. `content` is the hash of its fields.
///
/// # Errors
/// A gap or a repeat in the count, a `prev` that is not the hash before, or content that does not give its hash.
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
    /// Checks that this entry is what was sealed and follows directly after `tip` in the journal of `holding`. Of an entry
    /// whose body is in an archive only its place in the chain shows here; the rest is for [`super::archive::Archives`].
    ///
    /// # Errors
    /// As [`follows`].
    pub fn follows(&self, holding: &HoldingName, tip: Option<(u64, Hash)>) -> Result<(), Broken> {
        let link = Link { seq: self.seq, id: self.draft.id, prev: self.prev, hash: self.hash };
        // The hash of an entry whose body is in an archive cannot be worked out anew.
        let content = if self.is_in_archive() { self.hash } else { hash_of(holding, self) };
        follows(tip, link, content)
    }
}

/// Three lines that fix a journal as it stood: holding, number of entries, hash of the last.
///
/// Kept elsewhere (printed, sent to somebody), they prove later that nothing before them was changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Checkpoint {
    /// The holding.
    pub holding: HoldingName,
    /// How many entries the journal had.
    pub entries: u64,
    /// The hash of the last of them.
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
