//! What is said of something that cannot be read.

use combclear_domain::basics::misread::Misread;
use combclear_domain::journal::document::Unfit;
use combclear_domain::journal::entry::EntryFault;
use combclear_wording::Words;
use combclear_wording::refusals::Refused;
use combclear_wording::unreadable;

/// A fault in words, with its place.
#[derive(Debug)]
pub(crate) struct Told {
    pub(crate) pointer: String,
    pub(crate) message: String,
    pub(crate) help: String,
}

pub(crate) fn told(fault: &EntryFault) -> Told {
    let Refused { message, help } = unreadable::line(Words::english(), fault);
    Told { pointer: fault.pointer.clone(), message, help }
}

pub(crate) fn said(fault: impl Into<Misread>) -> String {
    unreadable::misread(Words::english(), &fault.into())
}

pub(crate) fn unfit(fault: &Unfit) -> Refused {
    unreadable::unfit(Words::english(), fault)
}
