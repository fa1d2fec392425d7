//! Converts the errors of other crates into problems.

use combclear_domain::journal::entry::EntryFault;
use combclear_store::{RecordError, StoreError};
use combclear_wording::refusals::Refused;
use combclear_wording::{Words, keeping, unreadable};

use super::{Fault, Problem, ProblemKind};

impl From<StoreError> for Problem {
    /// The location of the database goes to the log only: it concerns only the operator.
    fn from(error: StoreError) -> Problem {
        let words = Words::english();
        tracing::error!(%error, "the journal could not be read or written");
        let (kind, detail) = match &error {
            StoreError::Locked { .. } => {
                (ProblemKind::StoreBusy, "the journal is locked by another writer".to_owned())
            }
            StoreError::Full { .. } => (
                ProblemKind::StoreFailed,
                "no room is left to write the journal; nothing was recorded".to_owned(),
            ),
            StoreError::ReadOnly { .. } => (
                ProblemKind::StoreFailed,
                "the journal can be read but not written; nothing was recorded".to_owned(),
            ),
            StoreError::Unreadable { .. } => {
                (ProblemKind::StoreFailed, keeping::store(words, &error).message)
            }
            _ => (ProblemKind::StoreFailed, "the journal could not be read or written".to_owned()),
        };
        let fault = Fault {
            pointer: None,
            parameter: None,
            detail: detail.clone(),
            help: keeping::store(words, &error).help,
        };
        Problem::new(kind, detail).with(vec![fault])
    }
}

/// Where an entry was in the request.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Sent {
    /// It was the body.
    Alone,
    /// It was built from path and query: the fields of its body are query parameters.
    InAddress,
    /// It was in a batch of this many.
    Batch(usize),
}

impl Sent {
    /// The JSON pointer to a place in the entry with this index.
    pub(crate) fn pointer(self, index: usize, within: &str) -> String {
        match self {
            Sent::Alone | Sent::InAddress => within.to_owned(),
            Sent::Batch(_) => format!("/{index}{within}"),
        }
    }

    fn which(self, index: usize) -> String {
        match self {
            Sent::Alone | Sent::InAddress => "the entry".to_owned(),
            Sent::Batch(of) => format!("entry {} of the {of} in the batch", index.saturating_add(1)),
        }
    }

    /// The fault at a place in the entry with this index.
    fn fault_at(self, index: usize, within: &str, detail: String, help: String) -> Fault {
        match self {
            Sent::InAddress => {
                let parameter = match within.rsplit('/').next().unwrap_or_default() {
                    // The name of the id in the path.
                    "id" => "document",
                    name => name,
                };
                Fault { pointer: None, parameter: Some(parameter.to_owned()), detail, help }
            }
            Sent::Alone | Sent::Batch(_) => Fault::at(self.pointer(index, within), detail, help),
        }
    }

    /// The problem for unreadable entries.
    pub(crate) fn unreadable(self, faults: Vec<Fault>) -> Problem {
        let first = faults.first().map(|fault| fault.detail.clone()).unwrap_or_default();
        let detail = match (self, faults.len()) {
            (_, 0 | 1) => format!("{first}; nothing was recorded"),
            (_, many) => format!("{first}, and {} more; nothing was recorded", many.saturating_sub(1)),
        };
        Problem::new(ProblemKind::UnreadableEntry, detail).with(faults)
    }

    /// The fault of an entry that cannot be read.
    pub(crate) fn fault(self, index: usize, fault: &EntryFault) -> Fault {
        // The pointer places the fault; a column without its line would only mislead.
        let Refused { message, help } = unreadable::entry(Words::english(), fault);
        Fault::at(self.pointer(index, &fault.pointer), message, help)
    }

    /// The problem for entries that were not recorded.
    pub(crate) fn not_recorded(self, error: RecordError) -> Problem {
        match error {
            RecordError::Refused { index, refusal, .. } => {
                let Refused { message, help } = Refused::of(Words::english(), &refusal);
                let detail = format!("{} cannot be true: {message}; nothing was recorded", self.which(index));
                let fault = self.fault_at(index, &refusal.pointer, message, help);
                Problem::new(ProblemKind::RefusedEntry, detail).with(vec![fault])
            }
            RecordError::Conflict { index, id } => {
                let what = keeping::conflict(Words::english(), id);
                let help = "make a new id for a new entry, or correct the recorded one by another entry";
                let fault = self.fault_at(index, "/id", what.clone(), help.to_owned());
                Problem::new(ProblemKind::SameIdOtherContent, format!("{what}; nothing was recorded"))
                    .with(vec![fault])
            }
            RecordError::Busy => Problem::new(ProblemKind::StoreBusy, keeping::busy(Words::english())),
            RecordError::NotNext(broken) => {
                tracing::error!(%broken, "an entry was sealed in the wrong place");
                Problem::internal()
            }
            RecordError::Store(error) => error.into(),
        }
    }
}
