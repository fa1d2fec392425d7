//! A type for each message of the message file, made by the build script.

use fluent_bundle::{FluentArgs, FluentValue};

/// A message with its arguments.
pub(crate) trait Message<'a> {
    /// Its id in the message file.
    const ID: &'static str;

    /// Its arguments, by name.
    fn arguments(self) -> FluentArgs<'a>;
}

include!(concat!(env!("OUT_DIR"), "/messages.rs"));
