//! The contents of documents. In a journal file they follow the entries, one line each.

use std::borrow::Cow;
use std::fmt;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::{Deserialize, Serialize};

use super::entry::EntryFault;
use super::fault::{ContentFault, TextFault, Unreadable};
use super::read::read_json;
use super::seal::Hash;
use crate::journal::document::DOCUMENT_MOST;

/// The bytes of a document with their hash. They always match: the hash is made from the bytes.
#[derive(Clone, PartialEq, Eq)]
pub struct Content {
    hash: Hash,
    bytes: Vec<u8>,
}

impl fmt::Debug for Content {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Content({}, {} bytes)", self.hash, self.bytes.len())
    }
}

impl Content {
    /// The content with these bytes.
    #[must_use]
    pub fn new(bytes: Vec<u8>) -> Content {
        Content { hash: Hash::of_content(&bytes), bytes }
    }

    /// The hash under which it is kept.
    #[must_use]
    pub fn hash(&self) -> Hash {
        self.hash
    }

    /// The bytes.
    #[must_use]
    pub fn bytes(&self) -> &[u8] {
        &self.bytes
    }

    /// The bytes, without copying.
    #[must_use]
    pub fn into_bytes(self) -> Vec<u8> {
        self.bytes
    }

    /// The content as one line of a journal file, without a line break.
    #[must_use]
    pub fn to_json(&self) -> String {
        let bytes = u64::try_from(self.bytes.len()).unwrap_or(u64::MAX);
        let line = Line { content: self.hash, bytes, base64: STANDARD.encode(&self.bytes).into() };
        serde_json::to_string(&line).unwrap_or_default()
    }

    /// Reads a content from a line of a journal file. Checks its length and hash.
    ///
    /// # Errors
    /// The line is not a content, or its bytes are not those exported.
    pub fn from_json(text: &str) -> Result<Content, EntryFault> {
        let fault = |pointer: &str, what: ContentFault| EntryFault::at(pointer, Unreadable::Content(what));
        let line: Line<'_> = read_json(text).map_err(|TextFault { found, near }| {
            fault(&found.pointer, ContentFault::Misread { why: found.what, near })
        })?;
        let bytes =
            STANDARD.decode(line.base64.as_bytes()).map_err(|_| fault("/base64", ContentFault::NotBase64))?;
        let (found, promised) = (bytes.len(), line.bytes);
        if u64::try_from(found) != Ok(promised) {
            return Err(fault("/bytes", ContentFault::OtherLength { found, promised }));
        }
        if !(1..=u64::from(DOCUMENT_MOST)).contains(&promised) {
            return Err(fault("/bytes", ContentFault::Size { bytes: promised }));
        }
        let content = Content::new(bytes);
        if content.hash != line.content {
            return Err(fault("/content", ContentFault::OtherHash { promised: line.content }));
        }
        // As with entries, only one spelling is accepted, so that an import exports byte for byte.
        if content.to_json() != text {
            return Err(fault("", ContentFault::OtherSpelling));
        }
        Ok(content)
    }
}

/// A content as a line of JSON. Field order is part of the export format.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Line<'a> {
    content: Hash,
    bytes: u64,
    #[serde(borrow)]
    base64: Cow<'a, str>,
}
