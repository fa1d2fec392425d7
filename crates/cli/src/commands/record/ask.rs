//! Asks on the terminal for what is missing, one field after the other.

use std::io::{BufRead, Write};

use combclear_domain::basics::misread::Named;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Kind;
use combclear_domain::journal::form::{Input, blanks};
use combclear_domain::recording::{Wrong, WrongWith};
use combclear_wording::terminal::record as say;
use combclear_wording::{Label, Words, recording};

use super::commands::{Record, What};
use crate::commands::seen;
use crate::failure::{Failure, Said, why};

/// Asks for each missing field and puts the answers in.
pub(super) fn for_missing(
    record: &mut Record,
    kind: Kind,
    wrong: &[Wrong],
    holding: &Holding,
) -> Result<(), Failure> {
    let words = Words::english();
    for wrong in wrong {
        let choices = choices(kind, wrong, holding);
        let question = recording::question(words, kind, &wrong.key, &choices);
        let answer = line(&question)?;
        match wrong.key.as_str() {
            "recorded_by" => record.by = Some(answer),
            "copied_from" => record.copied_from = Some(answer),
            "written_on" => record.written_on = Some(answer),
            _ => {
                if let What::Form { texts, .. } = &mut record.what {
                    texts.insert(wrong.key.clone(), vec![answer]);
                }
            }
        }
    }
    Ok(())
}

/// Asks whether to record.
pub(super) fn may_record(asks: bool) -> Result<bool, Failure> {
    let words = Words::english();
    if !asks {
        return Err(Failure::new(Label::RecordNobodyToAsk, Label::RecordNobodyToAskHelp));
    }
    loop {
        let answer = line(words.label(Label::RecordMayIt))?.to_lowercase();
        match answer.as_str() {
            answer if answer == words.label(Label::RecordingYes) || answer == "y" => return Ok(true),
            answer if answer == words.label(Label::RecordingNo) || answer == "n" => return Ok(false),
            _ => {}
        }
    }
}

/// What may be answered, as far as there is a list.
fn choices(kind: Kind, wrong: &Wrong, holding: &Holding) -> Vec<String> {
    if let WrongWith::SeveralLots { lots } = &wrong.with {
        return lots.iter().map(ToString::to_string).collect();
    }
    let blank = blanks(kind).into_iter().find(|blank| blank.key == wrong.key);
    match blank.map(|blank| blank.input) {
        Some(Input::Word(list)) => list().into_iter().map(str::to_owned).collect(),
        Some(Input::Name(Named::Apiary)) => holding.apiaries().map(ToString::to_string).collect(),
        Some(Input::Name(Named::Medicine)) => holding.medicines().map(ToString::to_string).collect(),
        _ => Vec::new(),
    }
}

/// One line from the terminal, which is not empty. If the terminal is closed, nothing is recorded.
pub(super) fn line(question: &str) -> Result<String, Failure> {
    let words = Words::english();
    let cannot = |error: &std::io::Error| {
        Failure::new(say::cannot_ask(words, &why(error)), Label::RecordNobodyToAskHelp)
    };
    loop {
        let mut out = std::io::stdout();
        write!(out, "{} ", seen(question)).and_then(|()| out.flush()).map_err(|error| cannot(&error))?;
        let mut answer = String::new();
        if std::io::stdin().lock().read_line(&mut answer).map_err(|error| cannot(&error))? == 0 {
            return Err(Failure::new(Label::RecordTerminalClosed.said(), Label::RecordTerminalClosedHelp));
        }
        if !answer.trim().is_empty() {
            return Ok(answer.trim().to_owned());
        }
    }
}
