//! Converts the errors of other crates into problems.

use combclear_domain::journal::entry::EntryFault;
use combclear_store::{RecordError, StoreError};
use combclear_wording::refusals::Refused;
use combclear_wording::reports::{Unanswered, Why};
use combclear_wording::{Label, http, keeping, unreadable};

use super::{Fault, Problem, ProblemKind, label};
use crate::app::App;
use crate::language::words;

impl From<StoreError> for Problem {
    /// The location of the database goes to the log only: it concerns only the operator.
    fn from(error: StoreError) -> Problem {
        tracing::error!(%error, "the journal could not be read or written");
        let kind = match &error {
            StoreError::Locked { .. } => ProblemKind::StoreBusy,
            StoreError::Unreachable { .. } => ProblemKind::StoreUnreachable,
            StoreError::Full { .. } => ProblemKind::StoreFull,
            StoreError::Guards { .. }
            | StoreError::Broken { .. }
            | StoreError::Lost { .. }
            | StoreError::Damaged { .. } => ProblemKind::StoreUntrusted,
            _ => ProblemKind::StoreFailed,
        };
        let Refused { message, help } = http::store(words(), &error);
        let fault = Fault::anywhere(message.clone(), help);
        Problem::new(kind, message).with(vec![fault])
    }
}

impl From<Unanswered> for Problem {
    fn from(unanswered: Unanswered) -> Problem {
        let Unanswered { why, detail, faults } = unanswered;
        let problem = match why {
            Why::UnknownApiary => Problem::new(ProblemKind::UnknownApiary, detail),
            Why::UnknownColony => Problem::new(ProblemKind::UnknownColony, detail),
            Why::UnknownLot => Problem::new(ProblemKind::UnknownLot, detail),
            Why::BadParameter => Problem::new(ProblemKind::BadParameter, detail),
            Why::UnreadableForm => Problem::nothing_recorded(ProblemKind::UnreadableEntry, &detail),
            Why::UntrueForm => Problem::nothing_recorded(ProblemKind::RefusedEntry, &detail),
        };
        problem.with(faults)
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

    /// That the entry with this index cannot be true.
    fn untrue(self, index: usize, why: &str) -> String {
        let words = words();
        match self {
            Sent::Alone | Sent::InAddress => http::untrue(words, why),
            Sent::Batch(of) => http::untrue_in_batch(words, index.saturating_add(1), of, why),
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
    pub(crate) fn unreadable(faults: Vec<Fault>) -> Problem {
        let detail = match faults.as_slice() {
            [] => String::new(),
            [only] => only.detail.clone(),
            [first, others @ ..] => http::and_more(words(), &first.detail, others.len()),
        };
        Problem::nothing_recorded(ProblemKind::UnreadableEntry, &detail).with(faults)
    }

    /// The fault of an entry that cannot be read.
    pub(crate) fn fault(self, index: usize, fault: &EntryFault) -> Fault {
        // The pointer places the fault; a column without its line would only mislead.
        let Refused { message, help } = unreadable::entry(words(), fault);
        Fault::at(self.pointer(index, &fault.pointer), message, help)
    }

    /// The problem for entries that were not recorded.
    pub(crate) fn not_recorded(self, error: RecordError) -> Problem {
        match error {
            RecordError::Refused { index, refusal, .. } => {
                let Refused { message, help } = Refused::of(words(), &refusal);
                let why = self.untrue(index, &message);
                let fault = self.fault_at(index, &refusal.pointer, message, help);
                Problem::nothing_recorded(ProblemKind::RefusedEntry, &why).with(vec![fault])
            }
            RecordError::Conflict { index, id } => {
                let why = keeping::conflict(words(), id);
                let problem = Problem::nothing_recorded(ProblemKind::SameIdOtherContent, &why);
                problem.with(vec![self.fault_at(index, "/id", why, label(Label::HttpNewId).to_owned())])
            }
            RecordError::NoHolding { holding, near } => App::no_holding(&holding, near.as_ref()),
            RecordError::BegunBefore { holding } => {
                let why = http::holding_exists(words(), &holding);
                Problem::nothing_recorded(ProblemKind::HoldingExists, &why)
            }
            RecordError::Busy => Problem::new(ProblemKind::StoreBusy, keeping::busy(words())),
            RecordError::NotNext(broken) => {
                tracing::error!(%broken, "an entry was sealed in the wrong place");
                Problem::internal()
            }
            RecordError::Store(error) => error.into(),
        }
    }
}
