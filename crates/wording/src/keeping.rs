//! Faults of a journal in the store, in words.

use combclear_domain::journal::EntryId;
use combclear_domain::journal::keeping::{
    BadAddress, ContentState, DocumentFault, Missed, NotOpened, StoreError,
};

use crate::refusals::Refused;
use crate::terminal::documents::belongs_to;
use crate::unreadable::{misfit, misread};
use crate::words::say;
use crate::{Label, Words};

/// Why journals could not be opened, read or written.
#[must_use]
pub fn store(words: &Words, error: &StoreError) -> Refused {
    let (message, help) = match error {
        StoreError::Address(bad) => return address(words, bad),
        StoreError::CannotOpen { place, why } => {
            let why = match why {
                NotOpened::IsAFolder => "folder",
                NotOpened::NoFolder => "no-folder",
                NotOpened::NoFile => "no-file",
                NotOpened::Refused => "refused",
            };
            (say!(words, StoreCannotOpen, place = place, why = why), Label::StoreCannotOpenHelp)
        }
        StoreError::ReadOnly { place } => {
            (say!(words, StoreReadOnly, place = place), Label::StoreReadOnlyHelp)
        }
        StoreError::NotADatabase { place } => {
            (say!(words, StoreNotADatabase, place = place), Label::StoreOtherFileHelp)
        }
        StoreError::Foreign { place } => {
            (say!(words, StoreForeign, place = place), Label::StoreOtherFileHelp)
        }
        StoreError::Newer { place, version, known } => (
            say!(words, StoreNewer, place = place, version = *version, known = *known),
            Label::StoreNewerHelp,
        ),
        StoreError::Altered { place, version } => {
            (say!(words, StoreAltered, place = place, version = *version), Label::StoreAlteredHelp)
        }
        StoreError::Full { place } => (say!(words, StoreFull, place = place), Label::StoreFullHelp),
        StoreError::Locked { place } => (say!(words, StoreLocked, place = place), Label::StoreLockedHelp),
        StoreError::Unreachable { place, what } => {
            (say!(words, StoreUnreachable, place = place, what = what), Label::StoreUnreachableHelp)
        }
        StoreError::NotAdmitted { place, what } => {
            (say!(words, StoreNotAdmitted, place = place, what = what), Label::StoreNotAdmittedHelp)
        }
        StoreError::Follows { place } => (say!(words, StoreFollows, place = place), Label::StoreFollowsHelp),
        StoreError::TooOld { place, version, least } => {
            let (version, least) = (i64::from(*version), i64::from(*least));
            (
                say!(words, StoreTooOld, place = place, version = version, least = least),
                Label::StoreTooOldHelp,
            )
        }
        StoreError::OtherEncoding { place, encoding } => (
            say!(words, StoreOtherEncoding, place = place, encoding = encoding),
            Label::StoreOtherEncodingHelp,
        ),
        StoreError::Damaged { place, what } => {
            (say!(words, StoreDamaged, place = place, what = what), Label::StoreDamagedHelp)
        }
        StoreError::Device { place, what } => {
            (say!(words, StoreDevice, place = place, what = what), Label::StoreDeviceHelp)
        }
        StoreError::Replaced { place } => {
            (say!(words, StoreReplaced, place = place), Label::StoreReplacedHelp)
        }
        StoreError::Guards { place, names } => {
            (say!(words, StoreGuards, place = place, names = names.join(", ")), Label::StoreGuardsHelp)
        }
        StoreError::Broken { holding, broken } => {
            let what = misfit(words, &broken.what);
            (
                say!(words, StoreBroken, holding = holding, seq = broken.seq, what = what),
                Label::StoreBrokenHelp,
            )
        }
        StoreError::Lost { holding, by_place, by_id } => (
            say!(words, StoreLost, holding = holding, by_place = *by_place, by_id = *by_id),
            Label::StoreDamagedHelp,
        ),
        StoreError::Unreadable { holding, seq, what } => {
            let what = misfit(words, what);
            (
                say!(words, StoreUnreadable, holding = holding, seq = *seq, what = what),
                Label::StoreUnreadableHelp,
            )
        }
        StoreError::UnreadableName(name) => {
            let what = misread(words, &name.clone().into());
            (say!(words, StoreUnreadableName, what = what), Label::StoreUnreadableHelp)
        }
        StoreError::UnreadableKey { id, what } => {
            let what = misfit(words, what);
            (say!(words, StoreUnreadableKey, id = id, what = what), Label::StoreUnreadableHelp)
        }
        StoreError::Database { place, what } => {
            (say!(words, StoreDatabase, place = place, what = what), Label::StoreDatabaseHelp)
        }
    };
    Refused { message, help: words.label(help).to_owned() }
}

fn address(words: &Words, bad: &BadAddress) -> Refused {
    let label = |label: Label| words.label(label).to_owned();
    let (message, help) = match bad {
        BadAddress::NoKind { address } => {
            let help = if address.is_empty() {
                label(Label::AddressNameAFile)
            } else {
                say!(words, AddressForAFile, address = address)
            };
            (say!(words, AddressNoKind, address = address), help)
        }
        BadAddress::OtherKind { kind } => {
            (say!(words, AddressOtherKind, kind = kind), label(Label::AddressNameAFile))
        }
        BadAddress::UnreadableServer => {
            (label(Label::AddressUnreadableServer), label(Label::AddressUnreadableServerHelp))
        }
        BadAddress::OtherParameter { parameter } => (
            say!(words, AddressOtherParameter, parameter = parameter),
            label(Label::AddressOtherParameterHelp),
        ),
        BadAddress::NoFile => (label(Label::AddressNoFile), label(Label::AddressNoFileHelp)),
        BadAddress::NotAPath { file } => {
            (say!(words, AddressNotAPath, file = file), label(Label::AddressNotAPathHelp))
        }
        BadAddress::OtherAsked { asked } => {
            (say!(words, AddressOtherAsked, asked = asked), label(Label::AddressOtherAskedHelp))
        }
        BadAddress::UnreadablePath { file } => {
            (say!(words, AddressUnreadablePath, file = file), label(Label::AddressUnreadablePathHelp))
        }
    };
    Refused { message, help }
}

/// A document whose content is missing or altered.
#[must_use]
pub fn document(words: &Words, fault: &DocumentFault) -> Refused {
    let DocumentFault { content, seq, id, lot, prescription, state } = fault;
    let of = belongs_to(words, lot.as_ref(), prescription.as_ref());
    let message = match state {
        ContentState::Kept => {
            say!(words, KeepingKept, hash = content, of = of, seq = *seq, id = id)
        }
        ContentState::Missing => {
            say!(words, KeepingMissing, hash = content, of = of, seq = *seq, id = id)
        }
        ContentState::Altered => {
            say!(words, KeepingAltered, hash = content, of = of, seq = *seq, id = id)
        }
    };
    Refused { message, help: document_help(words, *state).to_owned() }
}

/// How to fix a document whose content is missing or altered.
#[must_use]
pub fn document_help(words: &Words, state: ContentState) -> &str {
    words.label(match state {
        ContentState::Kept | ContentState::Missing => Label::KeepingMissingHelp,
        ContentState::Altered => Label::KeepingAlteredHelp,
    })
}

/// How a journal differs from a checkpoint.
#[must_use]
pub fn missed(words: &Words, missed: &Missed) -> String {
    match missed {
        Missed::OtherHolding { of } => say!(words, MissedOtherHolding, of = of),
        Missed::Shorter { had, has } => say!(words, MissedShorter, had = *had, has = *has),
        Missed::Differs { seq, had: _, has: _ } => say!(words, MissedDiffers, seq = *seq),
    }
}

/// The id belongs to another entry.
#[must_use]
pub fn conflict(words: &Words, id: EntryId) -> String {
    say!(words, KeepingConflict, id = id)
}

/// Others keep adding to the journal.
#[must_use]
pub fn busy(words: &Words) -> &str {
    words.label(Label::KeepingBusy)
}
