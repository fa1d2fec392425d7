//! The journal as JSON Lines: a header, then one entry per line.
//!
//! A *sealed* file is an export: its entries carry place, instant and hash, and re-import byte for byte. A file of *drafts*
//! was written elsewhere: its entries are sealed on import.

use serde::{Deserialize, Serialize};

use crate::basics::node::why_not;
use crate::basics::words::HoldingName;
use crate::journal::entry::{Draft, Entry, EntryFault};
use crate::journal::fault::{FileKind, HeaderFault, Unreadable};
use crate::journal::seal::Hash;

/// The version of the journal format that this program reads and writes.
pub const VERSION: u32 = 1;

/// The first line of a journal file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Header {
    /// The version of the format.
    pub combclear_journal: u32,
    /// The holding whose journal it is.
    pub holding: HoldingName,
    /// Whether the entries are sealed.
    pub sealed: bool,
    /// Number of entries that follow; only in sealed files, where it shows whether the file was cut.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub entries: Option<u64>,
    /// The hash of the last entry; only in sealed files.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub head: Option<Hash>,
    /// Number of document contents after the entries; only in sealed files, absent if there are none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub contents: Option<u64>,
}

impl Header {
    /// The header of an export.
    #[must_use]
    pub fn sealed(holding: HoldingName, entries: u64, head: Option<Hash>) -> Header {
        Header {
            combclear_journal: VERSION,
            holding,
            sealed: true,
            entries: Some(entries),
            head,
            contents: None,
        }
    }

    /// The header of a file of drafts.
    #[must_use]
    pub fn drafts(holding: HoldingName) -> Header {
        Header {
            combclear_journal: VERSION,
            holding,
            sealed: false,
            entries: None,
            head: None,
            contents: None,
        }
    }

    /// The same, with this number of contents after the entries.
    #[must_use]
    pub fn with_contents(self, contents: u64) -> Header {
        Header { contents: (contents > 0).then_some(contents), ..self }
    }

    /// The header as one line of JSON, without a line break.
    #[must_use]
    pub fn to_json(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Reads the first line of a journal file.
    ///
    /// # Errors
    /// The line is not a header, or has another version.
    pub fn from_json(line: &str) -> Result<Header, EntryFault> {
        #[derive(Deserialize)]
        struct Version {
            combclear_journal: u32,
        }
        let fault = |pointer: &str, what: HeaderFault| {
            EntryFault::at(pointer, Unreadable::Header { of: FileKind::Journal, what })
        };
        let Version { combclear_journal: found } =
            serde_json::from_str(line).map_err(|_| fault("", HeaderFault::NotAHeader))?;
        if found != VERSION {
            return Err(fault("/combclear_journal", HeaderFault::Version { found, known: VERSION }));
        }
        // The line is short: where in it a field stands is of no help.
        let header: Header = serde_json::from_str(line).map_err(|error| {
            let why = why_not::<Header>(line, &error).what;
            fault("", HeaderFault::Misread { why, near: None })
        })?;
        match (header.sealed, header.entries) {
            (true, None) => Err(fault("/entries", HeaderFault::NoNumber)),
            (false, _) if header.contents.is_some() => Err(fault("/contents", HeaderFault::ContentsInDrafts)),
            _ => Ok(header),
        }
    }
}

/// One entry of a journal file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Line {
    /// From an export.
    Sealed(Entry),
    /// Not yet sealed.
    Draft(Draft),
}

impl Line {
    /// Reads one line below the header.
    ///
    /// # Errors
    /// The line is not an entry of the form stated in the header: everything that is wrong with it, at least one fault.
    pub fn from_json(header: &Header, line: &str) -> Result<Line, Vec<EntryFault>> {
        if header.sealed {
            Entry::from_json(line).map(Line::Sealed).map_err(|fault| vec![fault])
        } else {
            Draft::from_json(line, None).map(Line::Draft)
        }
    }

    /// The entry as written.
    #[must_use]
    pub fn draft(&self) -> &Draft {
        match self {
            Line::Sealed(entry) => &entry.draft,
            Line::Draft(draft) => draft,
        }
    }
}
