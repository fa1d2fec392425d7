//! Why a command failed. How to fix it is often a [`Label`].

use std::io::{Error, ErrorKind};

use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName, Jurisdiction};
use combclear_domain::{Day, Instant};

use crate::{Label, Words};

super::sentences! {
    /// The manual cannot be written.
    FailureCannotWriteManual: cannot_write_manual(folder: &str, why: &str);
    /// Where the manual is.
    FailureManualWritten: manual_written(folder: &str);
    /// A failure.
    FailureError: error(message: &str);
    /// Something that was left out.
    FailureWarning: warning(message: &str);
    /// A clock that says it is earlier than when an entry was recorded.
    ClockIsBehind: clock_is_behind(today: Day, seq: u64, recorded_at: Instant);
    /// How to fix it.
    FailureHelp: help(help: &str);
    /// How to fix it, and what else to do.
    FailureHelpAnd: help_and(help: &str, more: &str);

    /// A file that cannot be read.
    FileCannotRead: cannot_read(file: &str, why: &str);
    /// A file that cannot be created.
    FileCannotMake: cannot_make(file: &str, why: &str);
    /// A file that cannot be written.
    FileCannotWrite: cannot_write(file: &str, why: &str);
    /// A file that already exists.
    FileIsThere: is_there(file: &str);
    /// A file named for two purposes.
    FileNamedTwice: named_twice(file: &str);
    /// Standard output that cannot be written.
    OutputCannotWrite: cannot_write_out(why: &str);
    /// A value that cannot be written as JSON.
    OutputNotJson: not_json(why: &str);

    /// A holding without entries.
    JournalNoEntryUnder: no_entry_under(holding: &HoldingName);
    /// A database without a journal.
    JournalNoneKept: no_journal(address: &str);
    /// A database without a journal of this holding.
    JournalNoneOfHolding: no_journal_of(address: &str, holding: &HoldingName);
    /// A database with several journals.
    JournalOfSeveral: several_journals(address: &str);
    /// The holdings with journals in a database.
    JournalKeeps: keeps(holdings: &str);
    /// The holdings of which one must be named.
    JournalSayWhich: say_which(holdings: &str);
    /// A database that does not exist.
    JournalNoDatabase: no_database(place: &str);
    /// A folder of leaflets that cannot be read.
    RulesCannotReadFolder: cannot_read_leaflets(folder: &str, why: &str);
    /// The number of faults in the leaflets of a folder.
    RulesFaultsInFolder: faults_in_leaflets(faults: usize, folder: &str);

    /// A name that may have been meant.
    RefusalDidYouMeanHelp: did_you_mean(near: &str);
    /// Several names in backticks, one of which may have been meant.
    AskedDidYouMeanOneOf: did_you_mean_one_of(names: &str);
    /// A list of names, and the last one.
    AskedOr: or(names: &str, name: &str);
    /// The allowed words.
    AskedWriteOneOf: write_one_of(list: &str);
    /// An apiary that is not recorded.
    RefusalNoSuchApiary: no_apiary(apiary: &ApiaryName);
    /// The recorded apiaries.
    AskedApiariesAre: apiaries_are(names: &str);
    /// A colony that is not recorded.
    RefusalNoSuchColony: no_colony(colony: &ColonyName);
    /// No colony is named.
    RefusalNoColonyNamed: no_colony_named();
    /// A leaflet that does not exist.
    AskedNoLeaflet: no_leaflet(leaflet: &str);
    /// A leaflet that yields no option.
    AskedNoOption: no_option(leaflet: &str);
    /// A law that is not built in.
    AskedNoLaw: no_law(jurisdiction: &Jurisdiction);
    /// The built-in laws.
    AskedLawsAre: laws_are(names: &str);
    /// An assumption that ends before the first day asked about.
    AskedSiteUntilTooEarly: site_until_too_early(until: Day, from: Day);
    /// Characters that the PDF fonts do not contain.
    AskedNoShape: no_shape(signs: &str);

    /// The address of the service.
    ServeAnswers: serves(address: &str);
    /// The address of a service that encrypts.
    ServeAnswersEncrypted: serves_encrypted(address: &str);
    /// The address of a service that asks for keys.
    ServeAnswersKeyed: serves_keyed(address: &str);
    /// A certificate that cannot be used.
    ServeBadCertificate: bad_certificate(why: &str);
    /// The system gives this program no threads to work with.
    ServeNoThreads: no_threads(why: &str);
    /// System signals cannot be received.
    ServeNoSignals: no_signals(why: &str);
    /// An address in use by another program.
    ServeInUse: in_use(address: &str);
    /// An address that cannot be listened at.
    ServeCannotListen: cannot_listen(address: &str, why: &str);
    /// An address that other machines can reach.
    ServeOpenToOthers: open_to_others(address: &str);
    /// How to let others in safely, or nobody.
    ServeThisMachineOnly: this_machine_only(port: u16);
}

/// The operating system's error about a file. An error without a message of its own is passed on as it is.
#[must_use]
pub fn why(words: &Words, error: &Error) -> String {
    let label = match error.kind() {
        ErrorKind::NotFound => Label::SystemNoSuchFile,
        ErrorKind::PermissionDenied => Label::SystemRefuses,
        ErrorKind::IsADirectory => Label::SystemIsAFolder,
        ErrorKind::NotADirectory => Label::SystemNoFolder,
        ErrorKind::StorageFull => Label::SystemDiskFull,
        ErrorKind::InvalidData => Label::SystemNotText,
        _ => return error.to_string(),
    };
    words.label(label).to_owned()
}
