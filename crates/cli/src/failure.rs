//! Why a command failed, with help.

use std::fmt;

use combclear_domain::questions::options::BadSpan;
use combclear_domain::questions::register::BadPeriod;
use combclear_store::{DocumentFault, RecordError, StoreError};
use combclear_wording::quoted::shortened;
use combclear_wording::refusals::Refused;
use combclear_wording::terminal::failures as say;
use combclear_wording::{Label, Words, keeping, unreadable};

use crate::commands::seen;

/// Something to be said to people: a label, or a sentence that [`combclear_wording`] made.
pub(crate) trait Said {
    fn said(self) -> String;
}

impl Said for Label {
    fn said(self) -> String {
        Words::english().label(self).to_owned()
    }
}

impl Said for String {
    fn said(self) -> String {
        self
    }
}

/// A message with help, for people. The faults may follow.
#[derive(Debug)]
pub(crate) struct Failure {
    message: String,
    help: Option<String>,
    found: Option<String>,
}

impl Failure {
    pub(crate) fn new(message: impl Said, help: impl Said) -> Failure {
        Failure { message: message.said(), help: Some(help.said()), found: None }
    }

    /// Says more about how it is mended.
    pub(crate) fn and(self, more: Label) -> Failure {
        let more = more.said();
        let help = match self.help {
            None => more,
            Some(first) => say::help_and(Words::english(), &first, &more),
        };
        Failure { help: Some(help), ..self }
    }

    /// The same, its message as the reason in another one.
    pub(crate) fn told(self, message: impl FnOnce(&str) -> String) -> Failure {
        Failure { message: message(&self.message), ..self }
    }

    /// Its message and its help.
    pub(crate) fn parts(self) -> (String, String) {
        (self.message, self.help.unwrap_or_default())
    }

    /// A failure with the faults below it. Each of them says itself how it is mended, so a help may be missing here.
    pub(crate) fn listing(message: String, help: Option<Label>, found: String) -> Failure {
        Failure { message, help: help.map(Said::said), found: Some(found) }
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let words = Words::english();
        f.write_str(&say::error(words, &seen(&shortened(&self.message))))?;
        if let Some(help) = &self.help {
            write!(f, "\n  {}", say::help(words, &seen(&shortened(help))))?;
        }
        self.found.as_ref().map_or(Ok(()), |found| write!(f, "\n{}", seen(&shortened(found))))
    }
}

impl From<DocumentFault> for Failure {
    fn from(fault: DocumentFault) -> Failure {
        let Refused { message, help } = keeping::document(Words::english(), &fault);
        Failure::new(message, help)
    }
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Failure {
        let Refused { message, help } = keeping::store(Words::english(), &error);
        Failure::new(message, help)
    }
}

impl From<RecordError> for Failure {
    fn from(error: RecordError) -> Failure {
        match error {
            RecordError::Store(error) => error.into(),
            error => Failure::new(not_recorded(&error), Label::FailureTryAgainUnrecorded),
        }
    }
}

impl From<BadSpan> for Failure {
    fn from(span: BadSpan) -> Failure {
        let Refused { message, help } = Refused::of_span(Words::english(), span);
        match span {
            BadSpan::Backwards { .. } => Failure::new(message, Label::FailureSwapDays),
            BadSpan::TooLong { .. } => Failure::new(message, help),
        }
    }
}

impl From<BadPeriod> for Failure {
    fn from(period: BadPeriod) -> Failure {
        Failure::new(Refused::of_period(Words::english(), period).message, Label::FailureSwapDays)
    }
}

/// Why entries were not recorded.
pub(crate) fn not_recorded(error: &RecordError) -> String {
    let words = Words::english();
    match error {
        RecordError::Refused { refusal, .. } => Refused::of(words, refusal).message,
        RecordError::Conflict { id, .. } => keeping::conflict(words, *id),
        RecordError::NotNext(broken) => unreadable::broken(words, broken),
        RecordError::NoHolding { near: None, .. } => Label::JournalIsEmpty.said(),
        RecordError::NoHolding { near: Some(near), .. } => say::did_you_mean(words, near.as_str()),
        RecordError::BegunBefore { .. } => Label::ProblemHoldingExists.said(),
        RecordError::Busy => keeping::busy(words).to_owned(),
        RecordError::Store(error) => keeping::store(words, error).message,
    }
}

/// What the system says about a file.
pub(crate) fn why(error: &std::io::Error) -> String {
    say::why(Words::english(), error)
}
