//! The contents of documents. In a journal file they follow the entries, one line each.

use std::borrow::Cow;
use std::fmt;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::{Deserialize, Serialize};

use super::entry::EntryFault;
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
        const AGAIN: &str = "the file was cut or changed; export the journal again";
        let line: Line<'_> = read_json(text).map_err(|fault| EntryFault {
            help: format!("a line with a document has content, bytes and base64; {AGAIN}"),
            ..fault
        })?;
        let bytes = STANDARD
            .decode(line.base64.as_bytes())
            .map_err(|_| EntryFault::at("/base64", "the bytes of the document are not base64", AGAIN))?;
        let (found, promised) = (bytes.len(), line.bytes);
        if u64::try_from(found) != Ok(promised) {
            let message = format!("the document has {found} bytes; the line promises {promised}");
            return Err(EntryFault::at("/bytes", message, AGAIN));
        }
        if !(1..=u64::from(DOCUMENT_MOST)).contains(&promised) {
            let message = format!("the document has {promised} bytes; it has 1 at least and 10 MB at most");
            return Err(EntryFault::at("/bytes", message, AGAIN));
        }
        let content = Content::new(bytes);
        if content.hash != line.content {
            let message = format!("the bytes of the document do not give its hash, `{}`", line.content);
            return Err(EntryFault::at("/content", message, AGAIN));
        }
        // As with entries, only one spelling is accepted, so that an import exports byte for byte.
        if content.to_json() != text {
            return Err(EntryFault::at("", "the document is not written as it was exported", AGAIN));
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
