//! Taking care of a database: backups, restored ones, and what the doctor finds.

use combclear_domain::Day;
use combclear_domain::basics::words::{HoldingName, Person};
use combclear_domain::journal::key::KeyId;

super::sentences! {
    /// A backup was written.
    CareBackedUp: backed_up(file: &str, bytes: u64, keys: usize);
    /// A backup was restored.
    CareRestored: restored(file: &str, db: &str, keys: usize);
    /// A holding that was copied.
    CareOfHolding: of_holding(holding: &HoldingName, entries: u64, documents: usize, head: &str);
    /// No backup was made.
    CareNotBackedUp: not_backed_up(why: &str);
    /// Nothing was restored.
    CareNotRestored: not_restored(why: &str);
    /// A holding that is not in the copy.
    CareLost: lost(holding: &HoldingName);
    /// A database that keeps something already.
    CareNotEmpty: not_empty(db: &str);
    /// A database that opens and is in order.
    CareOpens: opens(db: &str);
    /// A journal that passes verification.
    CareJournalHolds: journal_holds(holding: &HoldingName, entries: u64, documents: usize, head: &str);
    /// A file that others can read.
    CareOpenToOthers: open_to_others(file: &str);
    /// How to close it to them.
    CareOpenToOthersHelp: open_to_others_help(file: &str);
    /// A setting of the server that loses entries.
    CareSettingOff: setting_off(setting: &str);
    /// How to turn it on.
    CareSettingOffHelp: setting_off_help(setting: &str);
    /// A right that is lacking.
    CareNoRight: no_right(right: &str, table: &str);
    /// How to give it.
    CareNoRightHelp: no_right_help(right: &str, table: &str);
    /// A key that ran out.
    CareKeyRanOut: key_ran_out(id: KeyId, holder: &Person, until: Day);
    /// What to do with it.
    CareKeyRanOutHelp: key_ran_out_help(id: KeyId);
    /// A key that ends soon.
    CareKeyEndsSoon: key_ends_soon(id: KeyId, holder: &Person, until: Day);
    /// How many things are wrong.
    CareWrongInAll: wrong(wrong: usize);
}
