//! Entries whose bodies were moved into an archive file, and that file.
//!
//! The journal keeps everything else of such an entry: its place, id, day, time and kind, who recorded it and when, what it
//! corrects, and both hashes. Its own hash cannot be recomputed without the body, so a later [`Archived`] entry vouches for
//! it: its `digest` covers everything that is kept ([`Rest`]). [`Archives`] checks one against the other.
//!
//! The file is JSON Lines: a [`Header`], the entries as they were sealed, then the contents of documents. Together with the
//! journal, or with any export or checkpoint of it, it proves what was recorded.
//!
//! # What changes in answers
//!
//! Only whole sets that no law asks for any more are moved, so no colony's supering depends on them. Their content is no
//! longer available: registers, treatment labels and stock of that time show that something was archived, but not what.
//! Advice that looks at earlier courses (such as the last class of medicine) sees only those still there. The name of an
//! archived lot can be used for a new lot.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use super::entry::{Entry, EntryFault, EntryId};
use super::event::Archived;
use super::fault::{FileKind, HeaderFault, TextFault, Unreadable};
use super::misfit::Misfit;
use super::read::read_json;
use super::seal::{Broken, Checkpoint, Fields, Hash, hash_of};
use crate::basics::words::HoldingName;

/// The version of the archive file that this program reads and writes.
pub const VERSION: u32 = 1;

/// What stays of an entry whose body is in an archive.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rest {
    /// Its place.
    pub seq: u64,
    /// Its id.
    pub id: EntryId,
    /// The hash of its fields with an empty body.
    pub fields: Hash,
    /// The hash that it carries, made with the body.
    pub hash: Hash,
}

impl Rest {
    /// What is kept of an entry, with or without a body.
    #[must_use]
    pub fn of(holding: &HoldingName, entry: &Entry) -> Rest {
        let fields = hash_of(holding, &entry.without_body());
        Rest { seq: entry.seq, id: entry.draft.id, fields, hash: entry.hash }
    }

    /// The same from a stored row.
    #[must_use]
    pub fn of_fields(fields: Fields<'_>, id: EntryId, prev: Hash, hash: Hash) -> Rest {
        Rest { seq: fields.seq, id, fields: Fields { body: "", ..fields }.hash(prev), hash }
    }
}

/// The hash over what is kept of entries, in journal order.
///
/// `SHA-256(0x02 ‖ fields ‖ hash ‖ fields ‖ hash ...)`. All parts have the same length; the first byte separates it from
/// entry hashes.
#[must_use]
pub fn digest<'r>(rests: impl IntoIterator<Item = &'r Rest>) -> Hash {
    let mut sha = Sha256::new();
    sha.update([2_u8]);
    for rest in rests {
        sha.update(rest.fields.0);
        sha.update(rest.hash.0);
    }
    Hash(sha.finalize().into())
}

/// Matches the entries without bodies of a journal with the `archived` entries that name them. Feed it every entry in order.
#[derive(Debug, Default)]
pub struct Archives {
    open: BTreeMap<u64, Rest>,
}

impl Archives {
    /// Adds an entry without a body.
    pub fn without_body(&mut self, rest: Rest) {
        self.open.insert(rest.seq, rest);
    }

    /// Checks an `archived` entry against the entries that it names.
    ///
    /// # Errors
    /// It names an entry that still has its body, does not exist or was archived before; or something that the journal keeps
    /// was changed.
    pub fn archived(&mut self, seq: u64, id: EntryId, body: &Archived) -> Result<(), Broken> {
        let broken = |what| Err(Broken { seq, id, what });
        if body.entries != body.places.count() {
            return broken(Misfit::NumberDiffers);
        }
        let known = self.open.keys().filter(|place| body.places.contains(**place)).count();
        if u64::try_from(known) != Ok(body.places.count()) {
            let whole = body.places.iter().find(|place| !self.open.contains_key(place)).unwrap_or_default();
            return broken(Misfit::NotBorneOut { seq: whole });
        }
        let named: Vec<Rest> = body.places.iter().filter_map(|place| self.open.remove(&place)).collect();
        if digest(&named) != body.digest {
            return broken(Misfit::DigestDiffers { places: body.places.clone() });
        }
        Ok(())
    }

    /// Checks that every entry without a body was named.
    ///
    /// # Errors
    /// The first entry without a body that no `archived` entry names.
    pub fn end(&self) -> Result<(), Broken> {
        match self.open.first_key_value() {
            None => Ok(()),
            Some((seq, rest)) => Err(Broken { seq: *seq, id: rest.id, what: Misfit::BodyGone }),
        }
    }
}

/// The first line of an archive file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Header {
    /// The version of the format.
    pub combclear_archive: u32,
    /// The holding.
    pub holding: HoldingName,
    /// Number of entries that follow.
    pub entries: u64,
    /// Number of document contents that follow the entries.
    pub contents: u64,
    /// The checkpoint of the journal before archiving.
    #[serde(with = "three_lines")]
    pub checkpoint: Checkpoint,
}

mod three_lines {
    use serde::{Deserialize, Deserializer, Serializer, de};

    use super::Checkpoint;
    use crate::basics::misread::Misread;

    pub(super) fn serialize<S: Serializer>(checkpoint: &Checkpoint, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(checkpoint)
    }

    pub(super) fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Checkpoint, D::Error> {
        let text = String::deserialize(from)?;
        text.parse().map_err(|fault| de::Error::custom(Misread::from(fault)))
    }
}

impl Header {
    /// The header as one line of JSON, without a line break.
    #[must_use]
    pub fn to_json(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Reads the first line of an archive file.
    ///
    /// # Errors
    /// The line is not a header, or has another version.
    pub fn from_json(line: &str) -> Result<Header, EntryFault> {
        #[derive(Deserialize)]
        struct Version {
            combclear_archive: u32,
        }
        let fault = |pointer: &str, what: HeaderFault| {
            EntryFault::at(pointer, Unreadable::Header { of: FileKind::Archive, what })
        };
        let Version { combclear_archive: found } =
            serde_json::from_str(line).map_err(|_| fault("", HeaderFault::NotAHeader))?;
        if found != VERSION {
            return Err(fault("/combclear_archive", HeaderFault::Version { found, known: VERSION }));
        }
        read_json(line).map_err(|TextFault { found, near }| {
            fault(&found.pointer, HeaderFault::Misread { why: found.what, near })
        })
    }
}

/// The SHA-256 hash of a file, computed piece by piece.
#[derive(Debug, Clone, Default)]
pub struct FileHash(Sha256);

impl FileHash {
    /// Adds the next bytes.
    pub fn update(&mut self, bytes: &[u8]) {
        self.0.update(bytes);
    }

    /// The hash of all bytes so far.
    #[must_use]
    pub fn finish(self) -> Hash {
        Hash(self.0.finalize().into())
    }
}
