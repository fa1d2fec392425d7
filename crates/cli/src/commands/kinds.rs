//! `combclear kinds`: every kind of entry, with an example of the command that records it.

use combclear_domain::journal::Kind;
use combclear_domain::journal::form::blanks;
use combclear_wording::{Words, forms};

use super::print;
use super::record::commands::{command_of, main_field, option_of};
use crate::Outcome;
use crate::failure::Failure;

/// Optional fields shown in an example that needs no other.
const SHOWN: usize = 2;

pub(crate) fn run() -> Result<Outcome, Failure> {
    print(&examples())?;
    Ok(Outcome::Done)
}

/// What each kind records, and a command that records it.
pub(crate) fn examples() -> String {
    let of_kind =
        |kind: &Kind| Some(format!("{}\n  {}", forms::title(Words::english(), *kind), example(*kind)?));
    Kind::ALL.iter().filter_map(of_kind).collect::<Vec<_>>().join("\n")
}

/// A command that records an entry of a kind. None if no command of `record` does.
pub(crate) fn example(kind: Kind) -> Option<String> {
    let name = command_of(kind)?;
    let words = Words::english();
    let blanks = blanks(kind);
    let main = main_field(&blanks).map(|blank| blank.key.clone());
    let mut command = format!("combclear record {name}");
    let mut optional = SHOWN;
    let others_needed = blanks.iter().any(|blank| blank.needed && main.as_deref() != Some(&blank.key));
    for blank in &blanks {
        let example = quoted(forms::field(words, kind, blank).example);
        if main.as_deref() == Some(&blank.key) {
            command += &format!(" {example}");
        } else if blank.needed {
            command += &format!(" --{} {example}", option_of(&blank.key));
        } else if !others_needed && optional > 0 {
            optional -= 1;
            command += &format!(" --{} {example}", option_of(&blank.key));
        }
    }
    Some(command)
}

/// A value as it is typed in a shell.
fn quoted(value: &str) -> String {
    let plain = value.chars().all(|letter| letter.is_alphanumeric() || "-_./:".contains(letter));
    if plain { value.to_owned() } else { format!("\"{value}\"") }
}
