//! Entries whose bodies were moved into an archive file, and that file.
//!
//! Of such an entry its place, id, day, time, kind, who recorded it and when, what it corrects and both hashes stay in
//! the journal. Its own hash cannot be worked out anew without the body, so an [`Archived`] entry further on vouches for
//! it: its `digest` covers all that stays ([`Rest`]). [`Archives`] holds the two against each other.
//!
//! The file is JSON Lines: a [`Header`], the entries as they were sealed, then the contents of documents. Whoever has
//! it can prove with the journal, or with any export or checkpoint of it, that it is what was recorded.
//!
//! # What changes in answers
//!
//! Whole stories go, of which the law asks nothing any more, so no colony's supering turns on them. But what went cannot
//! be asked about: registers, labels of treatments and stock of that time show that something is in an archive, not what;
//! advice that looks at earlier courses (which class of medicine was used last) knows those that are left; and
//! the name of a lot that went can be taken for a new lot.

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
    /// The hash of its fields as if its body were empty.
    pub fields: Hash,
    /// The hash that it carries, made when the body was there.
    pub hash: Hash,
}

impl Rest {
    /// What stays of an entry, whether its body went already or not.
    #[must_use]
    pub fn of(holding: &HoldingName, entry: &Entry) -> Rest {
        let fields = hash_of(holding, &entry.without_body());
        Rest { seq: entry.seq, id: entry.draft.id, fields, hash: entry.hash }
    }

    /// The same from a row as it is kept.
    #[must_use]
    pub fn of_fields(fields: Fields<'_>, id: EntryId, prev: Hash, hash: Hash) -> Rest {
        Rest { seq: fields.seq, id, fields: Fields { body: "", ..fields }.hash(prev), hash }
    }
}

/// The hash over what stays of entries, in the order of the journal.
///
/// `SHA-256(0x02 ‖ fields ‖ hash ‖ fields ‖ hash ...)`: all parts are of one length, and the first byte keeps it apart
/// from the hashes of entries.
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

/// The entries without body of a journal, held against the entries that say why, from the first on.
#[derive(Debug, Default)]
pub struct Archives {
    open: BTreeMap<u64, Rest>,
}

impl Archives {
    /// Notes an entry without body.
    pub fn without_body(&mut self, rest: Rest) {
        self.open.insert(rest.seq, rest);
    }

    /// Holds an entry that tells of an archive against those that it names.
    ///
    /// # Errors
    /// It names an entry that is whole, not there, or went before; or something of what stays was changed.
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

    /// That nothing is left over.
    ///
    /// # Errors
    /// The first entry without body of which no entry says why.
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
    /// How many entries follow.
    pub entries: u64,
    /// How many contents of documents follow them.
    pub contents: u64,
    /// The checkpoint of the journal before the step.
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
    /// The header as one line of JSON, without line break.
    #[must_use]
    pub fn to_json(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Reads the first line of an archive file.
    ///
    /// # Errors
    /// A line that is no header, or one of another version.
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

/// The SHA-256 hash of a file, worked out piece by piece.
#[derive(Debug, Clone, Default)]
pub struct FileHash(Sha256);

impl FileHash {
    /// Takes the next bytes in.
    pub fn update(&mut self, bytes: &[u8]) {
        self.0.update(bytes);
    }

    /// The hash of all bytes so far.
    #[must_use]
    pub fn finish(self) -> Hash {
        Hash(self.0.finalize().into())
    }
}
