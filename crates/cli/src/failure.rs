//! Why a command failed, with help.

use std::fmt;
use std::io::ErrorKind;

use combclear_domain::questions::options::BadSpan;
use combclear_domain::questions::register::BadPeriod;
use combclear_store::{RecordError, StoreError};
use combclear_wording::Words;
use combclear_wording::refusals::Refused;

use crate::commands::seen;

/// The help for days in the wrong order, with the names of the options.
const SWAP_DAYS: &str = "swap --from and --to, or correct one of them";

/// A message with help, for people. The faults may follow.
#[derive(Debug)]
pub(crate) struct Failure {
    message: String,
    help: Option<String>,
    found: Option<String>,
}

impl Failure {
    pub(crate) fn new(message: impl Into<String>, help: impl Into<String>) -> Failure {
        Failure { message: message.into(), help: Some(help.into()), found: None }
    }

    /// Adds to the help.
    pub(crate) fn and(self, help: &str) -> Failure {
        let help = self.help.map_or_else(|| help.to_owned(), |first| format!("{first}; {help}"));
        Failure { help: Some(help), ..self }
    }

    /// A failure with its faults below. Each fault has its own help, so the common one may be missing.
    pub(crate) fn listing(message: impl Into<String>, help: Option<&str>, found: String) -> Failure {
        Failure { message: message.into(), help: help.map(ToOwned::to_owned), found: Some(found) }
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "error: {}", seen(&self.message))?;
        if let Some(help) = &self.help {
            write!(f, "\n  help: {}", seen(help))?;
        }
        self.found.as_ref().map_or(Ok(()), |found| write!(f, "\n{}", seen(found)))
    }
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Failure {
        Failure::new(error.to_string(), error.help())
    }
}

impl From<RecordError> for Failure {
    fn from(error: RecordError) -> Failure {
        match error {
            RecordError::Store(error) => error.into(),
            RecordError::Refused { refusal, .. } => {
                let Refused { message, .. } = Refused::of(Words::english(), &refusal);
                Failure::new(message, "nothing was recorded; try again")
            }
            error => Failure::new(error.to_string(), "nothing was recorded; try again"),
        }
    }
}

impl From<BadSpan> for Failure {
    fn from(span: BadSpan) -> Failure {
        let Refused { message, help } = Refused::of_span(Words::english(), span);
        match span {
            BadSpan::Backwards { .. } => Failure::new(message, SWAP_DAYS),
            BadSpan::TooLong { .. } => Failure::new(message, help),
        }
    }
}

impl From<BadPeriod> for Failure {
    fn from(period: BadPeriod) -> Failure {
        Failure::new(Refused::of_period(Words::english(), period).message, SWAP_DAYS)
    }
}

/// An I/O error in the words of this program.
pub(crate) fn why(error: &std::io::Error) -> String {
    match error.kind() {
        ErrorKind::NotFound => "there is no such file or folder".to_owned(),
        ErrorKind::PermissionDenied => "the system refuses access to it".to_owned(),
        ErrorKind::IsADirectory => "it is a folder".to_owned(),
        ErrorKind::NotADirectory => "a part of its path is not a folder".to_owned(),
        ErrorKind::StorageFull => "no room is left on the disk".to_owned(),
        ErrorKind::InvalidData => "it is not UTF-8 text".to_owned(),
        _ => error.to_string(),
    }
}
