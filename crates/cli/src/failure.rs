//! Why a command could not be carried out, and how to mend it.

use std::fmt;

use combclear_store::{RecordError, StoreError};

/// A message and a help, for people.
#[derive(Debug)]
pub(crate) struct Failure {
    message: String,
    help: Option<String>,
}

impl Failure {
    pub(crate) fn new(message: impl Into<String>, help: impl Into<String>) -> Failure {
        Failure { message: message.into(), help: Some(help.into()) }
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "error: {}", self.message)?;
        self.help.as_ref().map_or(Ok(()), |help| write!(f, "\n  help: {help}"))
    }
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Failure {
        Failure { message: error.to_string(), help: Some(error.help().to_owned()) }
    }
}

impl From<RecordError> for Failure {
    fn from(error: RecordError) -> Failure {
        match error {
            RecordError::Store(error) => error.into(),
            error => Failure { message: error.to_string(), help: None },
        }
    }
}
