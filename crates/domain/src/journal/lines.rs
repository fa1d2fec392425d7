//! The journal as JSON Lines: a header, then one entry per line.
//!
//! A *sealed* file is an export: its entries carry place, instant and hash, and re-import byte for byte. A file of *drafts*
//! was written elsewhere: its entries are sealed on import.

use serde::{Deserialize, Serialize};

use crate::basics::words::HoldingName;
use crate::journal::entry::{Draft, Entry, EntryFault, Envelope};
use crate::journal::read::without_position;
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
        let fault = |pointer: &str, message: String, help: &str| EntryFault {
            pointer: pointer.to_owned(),
            message,
            help: help.to_owned(),
        };
        let help = r#"the first line reads like {"combclear_journal":1,"holding":"...","sealed":false}"#;
        let Version { combclear_journal: version } = serde_json::from_str(line)
            .map_err(|_| fault("", "the first line is not a journal header".to_owned(), help))?;
        if version != VERSION {
            let message =
                format!("the journal has format version `{version}`; this program reads version {VERSION}");
            let help = "use the program that wrote the file, or one that reads its version";
            return Err(fault("/combclear_journal", message, help));
        }
        let header: Header = serde_json::from_str(line)
            .map_err(|error| fault("", without_position(&error.to_string()), help))?;
        match (header.sealed, header.entries) {
            (true, None) => {
                let help = "export the journal again";
                Err(fault("/entries", "a sealed journal says how many entries follow".to_owned(), help))
            }
            (false, _) if header.contents.is_some() => {
                let help = "leave `contents` out; attach each document once the entries are taken in";
                Err(fault("/contents", "a file of drafts carries no contents of documents".to_owned(), help))
            }
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
    /// The line is not an entry of the form stated in the header.
    pub fn from_json(header: &Header, line: &str) -> Result<Line, EntryFault> {
        if header.sealed {
            Entry::from_json(line).map(Line::Sealed)
        } else {
            Envelope::from_json(line)?.read().map(Line::Draft)
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
