//! What may go into an archive, what went, and what is wrong with an archive file.

use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;

super::sentences! {
    /// A day that has not come.
    ArchiveAfterToday: after_today(day: Day, today: Day);
    /// Why nothing was moved.
    ArchiveNothingMoved: nothing_moved(why: &str);
    /// A journal that was changed.
    ArchiveJournalBroken: journal_broken(holding: &HoldingName);
    /// A file that differs from what was written.
    ArchiveNotAsWritten: not_as_written(file: &str);
    /// A file that proves nothing.
    ArchiveDoesNotReadBack: does_not_read_back(file: &str, what: &str);
    /// A document whose content is not kept.
    ArchiveDocumentMissing: document_missing(hash: Hash);
    /// A document whose content was changed.
    ArchiveDocumentAltered: document_altered(hash: Hash);
    /// The head. The day has its name.
    ArchiveHead: head(day: &str, holding: &HoldingName);
    /// Lots whose story stays.
    ArchiveHeldBack: held_back(lots: &str, why: &str);
    /// That nothing could go.
    ArchiveNothing: nothing(day: Day);
    /// What would go.
    ArchiveWouldMove: would_move(entries: u64, documents: usize, file: &str, places: &str);
    /// What went.
    ArchiveMoved: moved(entries: u64, documents: usize, file: &str, places: &str, entry: &str);
    /// A file of another holding.
    ArchiveOfOtherHolding: of_other_holding(file: &str, of: &HoldingName, holding: &HoldingName);
    /// What is wrong with a line.
    ArchiveLine: line(line: u64, what: &str);
    /// An entry that was changed.
    ArchiveEntryChanged: entry_changed(seq: u64);
    /// An entry in the wrong place.
    ArchiveEntryOutOfOrder: entry_out_of_order(seq: u64);
    /// A document that belongs to nothing.
    ArchiveDocumentOfNone: document_of_none(hash: Hash);
    /// Entries or documents that are missing, or too many.
    ArchivePromised: promised(entries: u64, documents: u64, entries_here: usize, documents_here: usize);
}
