//! What `record` says.

use combclear_domain::basics::words::HoldingName;

use crate::Words;
use crate::words::say;

use super::sentences;

sentences! {
    /// How many things are to be fixed before anything is recorded.
    RecordFaults: faults(count: usize);
    /// The change that a correction makes: the entry as it was.
    RecordWas: was(number: u64, entry: &str);
    /// The entry as it is with the correction.
    RecordIsNow: is_now(entry: &str);
    /// The entry that is struck out.
    RecordStruckOut: struck_out(number: u64, entry: &str);
    /// What was recorded.
    RecordRecorded: recorded(count: usize, first: u64, last: u64);
    /// A holding that was begun.
    BeginBegun: begun(holding: &HoldingName);
    /// A holding that exists already.
    BeginExists: exists(holding: &HoldingName);
    /// The leaflet that is built in for a lot.
    RecordLeafletInHand: leaflet_in_hand(title: &str);
    /// A term with the built-in value.
    RecordLeafletSame: leaflet_same(label: &str, value: &str);
    /// A term without one.
    RecordLeafletWhat: leaflet_what(label: &str, hint: &str);
    /// A ban on use right before a flow that names no days.
    RecordLeafletBarred: leaflet_barred(label: &str);
    /// Another value of the built-in leaflet, where it is tapped.
    LeafletSaysToo: leaflet_says_too(value: &str);
    /// Another value of the built-in leaflet.
    RecordLeafletToo: leaflet_too(value: &str);
    /// What a leaflet says nothing about.
    RecordStillOpen: still_open(what: &str);
    /// A text that is no day.
    RecordNotADay: not_a_day(why: &str);
    /// Nobody can be asked.
    RecordCannotAsk: cannot_ask(why: &str);
    /// There is no entry with this number.
    RecordingNoEntry: no_entry(text: &str, last: u64);
}

/// One thing to fix, at its option if it has one.
#[must_use]
pub fn fault(words: &Words, option: &str, message: &str, help: &str) -> String {
    let message = match option {
        "" => say!(words, RecordFault, message = message),
        option => say!(words, RecordFaultAt, option = option, message = message),
    };
    say!(words, RecordFaultHelp, message = message, help = help)
}

/// What to fill in for a field, with its choices or else an example.
#[must_use]
pub fn field_help(words: &Words, hint: &str, example: &str, choices: &[&str], needed: bool) -> String {
    let needed = if needed { "yes" } else { "no" };
    if choices.is_empty() {
        say!(words, RecordFieldHelp, hint = hint, example = example, needed = needed)
    } else {
        say!(words, RecordFieldChoices, hint = hint, choices = choices.join(", "), needed = needed)
    }
}
