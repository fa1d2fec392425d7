//! Verification of a journal, its documents and an archive.

use combclear_domain::Instant;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::EntryId;

use crate::Words;
use crate::words::say;

super::sentences! {
    /// How many documents are missing or altered.
    VerifyDocumentsBad: documents_bad(bad: usize);
    /// Entries pass verification, but documents fail.
    VerifyLacking: lacking(holding: &HoldingName, entries: u64, bad: usize);
    /// A journal that was changed.
    VerifyBroken: broken(holding: &HoldingName, broken: &str);
    /// A journal that does not match a checkpoint.
    VerifyMissed: missed(holding: &HoldingName, missed: &str);
    /// An archive that fails verification, as part of a sentence.
    VerifyArchiveFault: archive_fault(file: &str, what: &str);
    /// An archive that fails verification.
    VerifyArchiveBroken: archive_broken(file: &str, what: &str);
    /// Two faults.
    VerifyBoth: both(first: &str, second: &str);
    /// An archive that passes verification.
    VerifyArchiveHolds: archive_holds(file: &str, entries: u64, documents: u64, seq: u64, id: EntryId);
    /// An archive that no entry records.
    VerifyArchiveUntold: archive_untold(holding: &HoldingName);
    /// Entries whose archive is another file.
    VerifyArchiveOtherFile: archive_other_file(seq: u64, id: EntryId);
    /// An archive with other entries than those moved.
    VerifyArchiveOtherEntries: archive_other_entries(seq: u64, id: EntryId);
    /// An entry recorded at an earlier time than the one before it.
    VerifyClockSetBack: clock_set_back(seq: u64, recorded_at: Instant, before: Instant);
    /// A checkpoint that cannot be read.
    CheckpointCannotRead: cannot_read_checkpoint(file: &str, why: &str);
    /// A checkpoint of another holding.
    CheckpointOtherHolding: other_checkpoint(file: &str, of: &HoldingName, holding: &HoldingName);
}

/// A journal that passes verification, with or without a checkpoint.
#[must_use]
pub fn holds(words: &Words, holding: &HoldingName, entries: u64, checkpoint: bool) -> String {
    if checkpoint {
        say!(words, VerifyHoldsWithCheckpoint, holding = holding, entries = entries)
    } else {
        say!(words, VerifyHolds, holding = holding, entries = entries)
    }
}
