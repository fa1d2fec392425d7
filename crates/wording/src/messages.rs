//! A type for each message of the message file, made by the build script.

use crate::sentences::Value;

/// A message with its arguments.
pub(crate) trait Message<'a> {
    /// Its place among the sentences of each language.
    const PLACE: usize;

    /// An array with so many values as it has arguments.
    type Values: AsRef<[Value<'a>]>;

    /// Its arguments, in the order of their names.
    fn values(self) -> Self::Values;
}

include!(concat!(env!("OUT_DIR"), "/messages.rs"));
