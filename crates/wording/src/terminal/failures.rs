//! Why a command could not be carried out. How to mend it is often a [`Label`].

use std::io::{Error, ErrorKind};

use combclear_domain::Day;
use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName, Jurisdiction};

use crate::{Label, Words};

super::sentences! {
    /// A failure.
    FailureError: error(message: &str);
    /// Something that was left out.
    FailureWarning: warning(message: &str);
    /// How to mend it.
    FailureHelp: help(help: &str);
    /// How to mend it, and what else is to be done.
    FailureHelpAnd: help_and(help: &str, more: &str);

    /// A file that cannot be read.
    FileCannotRead: cannot_read(file: &str, why: &str);
    /// A file that cannot be made.
    FileCannotMake: cannot_make(file: &str, why: &str);
    /// A file that cannot be written.
    FileCannotWrite: cannot_write(file: &str, why: &str);
    /// A file that is there already.
    FileIsThere: is_there(file: &str);
    /// A file that is named for two things.
    FileNamedTwice: named_twice(file: &str);
    /// Standard output that cannot be written.
    OutputCannotWrite: cannot_write_out(why: &str);
    /// A value that cannot be written as JSON.
    OutputNotJson: not_json(why: &str);

    /// A holding without entries.
    JournalNoEntryUnder: no_entry_under(holding: &HoldingName);
    /// A database without a journal.
    JournalNoneKept: no_journal(address: &str);
    /// A database without the journal of this holding.
    JournalNoneOfHolding: no_journal_of(address: &str, holding: &HoldingName);
    /// A database with several journals.
    JournalOfSeveral: several_journals(address: &str);
    /// The holdings whose journals it keeps.
    JournalKeeps: keeps(holdings: &str);
    /// The holdings one of which is to be named.
    JournalSayWhich: say_which(holdings: &str);
    /// A database that is not there.
    JournalNoDatabase: no_database(place: &str);
    /// A folder of leaflets that cannot be read.
    RulesCannotReadFolder: cannot_read_leaflets(folder: &str, why: &str);
    /// How many faults the leaflets of a folder have.
    RulesFaultsInFolder: faults_in_leaflets(faults: usize, folder: &str);

    /// A name that may have been meant.
    RefusalDidYouMeanHelp: did_you_mean(near: &str);
    /// Several names in backticks, one of which may have been meant.
    AskedDidYouMeanOneOf: did_you_mean_one_of(names: &str);
    /// Names, and one more.
    AskedOr: or(names: &str, name: &str);
    /// The words of a list.
    AskedWriteOneOf: write_one_of(list: &str);
    /// An apiary that is not recorded.
    RefusalNoSuchApiary: no_apiary(apiary: &ApiaryName);
    /// Those that are.
    AskedApiariesAre: apiaries_are(names: &str);
    /// A colony that is not recorded.
    RefusalNoSuchColony: no_colony(colony: &ColonyName);
    /// That no colony is named.
    RefusalNoColonyNamed: no_colony_named();
    /// A leaflet that is not there.
    AskedNoLeaflet: no_leaflet(leaflet: &str);
    /// A leaflet that makes no option.
    AskedNoOption: no_option(leaflet: &str);
    /// A law that is not built in.
    AskedNoLaw: no_law(jurisdiction: &Jurisdiction);
    /// Those that are.
    AskedLawsAre: laws_are(names: &str);
    /// An assumption that ends before the first day asked about.
    AskedSiteUntilTooEarly: site_until_too_early(until: Day, from: Day);
    /// Signs that the fonts of the PDF do not have.
    AskedNoShape: no_shape(signs: &str);

    /// Where the service answers.
    ServeAnswers: serves(address: &str);
    /// That the service ended by itself.
    ServeEnded: server_ended(why: &str);
    /// That signals of the system cannot be listened for.
    ServeNoSignals: no_signals(why: &str);
    /// An address that another program has.
    ServeInUse: in_use(address: &str);
    /// An address that cannot be listened at.
    ServeCannotListen: cannot_listen(address: &str, why: &str);
    /// An address that other machines reach.
    ServeOpenToOthers: open_to_others(address: &str);
    /// The same port where only this machine reaches it.
    ServeThisMachineOnly: this_machine_only(port: u16);
}

/// What the system says about a file. What this program has no words for stands as the system says it.
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
