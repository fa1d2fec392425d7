//! The archive plan, the result of an archive step, and faults of an archive file.

use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;

super::sentences! {
    /// A day in the future.
    ArchiveAfterToday: after_today(day: Day, today: Day);
    /// Why nothing was moved.
    ArchiveNothingMoved: nothing_moved(why: &str);
    /// A journal that was changed.
    ArchiveJournalBroken: journal_broken(holding: &HoldingName);
    /// A file that differs from what was written to it.
    ArchiveNotAsWritten: not_as_written(file: &str);
    /// A file that fails verification after writing.
    ArchiveDoesNotReadBack: does_not_read_back(file: &str, what: &str);
    /// A document whose content is missing.
    ArchiveDocumentMissing: document_missing(hash: Hash);
    /// A document whose content was changed.
    ArchiveDocumentAltered: document_altered(hash: Hash);
    /// The heading. The day includes its name.
    ArchiveHead: head(day: &str, holding: &HoldingName);
    /// Lots whose set is held back.
    ArchiveHeldBack: held_back(lots: &str, why: &str);
    /// Nothing can be archived.
    ArchiveNothing: nothing(day: Day);
    /// The entries and documents to archive.
    ArchiveWouldMove: would_move(entries: u64, documents: usize, file: &str, places: &str);
    /// The entries and documents archived.
    ArchiveMoved: moved(entries: u64, documents: usize, file: &str, places: &str, entry: &str);
    /// A file of another holding.
    ArchiveOfOtherHolding: of_other_holding(file: &str, of: &HoldingName, holding: &HoldingName);
    /// A fault in a line.
    ArchiveLine: line(line: u64, what: &str);
    /// An entry that was changed.
    ArchiveEntryChanged: entry_changed(seq: u64);
    /// An entry at the wrong position.
    ArchiveEntryOutOfOrder: entry_out_of_order(seq: u64);
    /// A document that no entry attaches.
    ArchiveDocumentOfNone: document_of_none(hash: Hash);
    /// Missing or extra entries or documents.
    ArchivePromised: promised(entries: u64, documents: u64, entries_here: usize, documents_here: usize);
}
