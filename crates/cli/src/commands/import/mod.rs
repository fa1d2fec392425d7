//! `combclear import`: imports a journal file or a filled-in sheet, as a whole or not at all.

mod file;
mod sheet;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::lines::Line;
use combclear_domain::journal::{Draft, Entry};
use combclear_store::{Holdings, IfNew, OnRefusal, RecordError, Recorded};
use combclear_wording::diagnostics::Diagnosed;
use combclear_wording::refusals::Refused;
use combclear_wording::terminal::import::{self as say, Imported};
use combclear_wording::{Label, Words};
use serde::Serialize;

use self::file::JournalFile;
pub(crate) use self::sheet::Format;
use super::progress;
use super::{print, print_json};
use crate::args::{Import, Place};
use crate::failure::{Failure, Said, not_recorded};
use crate::{Outcome, clock, place};

/// Faults printed in full; the others are only counted.
const FAULTS_SHOWN: usize = 20;

#[derive(Serialize)]
struct Report {
    holding: HoldingName,
    added: usize,
    known: usize,
    left_out: Vec<Diagnosed>,
    /// Documents imported with the entries.
    documents: usize,
    entries: u64,
    head: Option<String>,
}

pub(crate) async fn run(at: &Place, import: &Import) -> Result<Outcome, Failure> {
    if let Some(format) = Format::of(&import.file) {
        return sheet::run(at, import, format).await;
    }
    let words = Words::english();
    let file = JournalFile::read(&import.file)?;
    let (name, holding) = (file.name.as_str(), file.header.holding.clone());
    if let Some(wanted) = at.holding.as_ref().filter(|wanted| **wanted != holding) {
        let message = say::other_holding(words, name, &holding, wanted);
        return Err(Failure::new(message, Label::ImportNameTheRightFile));
    }
    if import.keep_going && file.header.sealed {
        return Err(Failure::new(say::sealed(words, name), Label::ImportLeaveKeepGoingOut));
    }
    if !file.faults.is_empty() && !import.keep_going {
        return Err(nothing_imported(
            name,
            &file.faults,
            (!file.header.sealed).then_some(Label::ImportMendFirst),
        ));
    }
    let mut left_out = file.faults.clone();
    let (added, known, tip) = place::with_holdings(at, async |holdings| {
        check_begun(holdings, import, &holding, name).await?;
        let (added, known) = if file.header.sealed {
            restore(holdings, &file).await?
        } else {
            record(holdings, &file, import.keep_going, &mut left_out).await?
        };
        Ok((added, known, holdings.journal().tip(&holding).await?))
    })
    .await?;
    left_out.sort_by_key(|fault| fault.line);
    let report = Report {
        holding,
        added,
        known,
        left_out,
        documents: file.contents.len(),
        entries: tip.map_or(0, |(seq, _)| seq),
        head: tip.map(|(_, head)| head.to_string()),
    };
    if import.json {
        print_json(&report)?;
    } else {
        print(&said(words, &report))?;
    }
    Ok(if report.left_out.is_empty() { Outcome::Done } else { Outcome::InPart })
}

/// Refuses a file of a holding that is not on record, unless it is to be begun or is the first.
async fn check_begun(
    holdings: &Holdings,
    import: &Import,
    holding: &HoldingName,
    file: &str,
) -> Result<(), Failure> {
    let kept = holdings.journal().holdings().await?;
    if import.begin || kept.is_empty() || kept.contains(holding) {
        return Ok(());
    }
    let kept: Vec<&str> = kept.iter().map(HoldingName::as_str).collect();
    let message = say::no_holding(Words::english(), file, holding, &kept.join(", "));
    Err(Failure::new(message, Label::ImportNoHoldingHelp))
}

fn said(words: &Words, report: &Report) -> String {
    let Report { holding, added, known, left_out, documents, entries, head } = report;
    let imported = Imported {
        holding,
        added: *added,
        known: *known,
        documents: *documents,
        entries: *entries,
        head: head.as_deref(),
    };
    let mut text = say::imported(words, &imported);
    if !left_out.is_empty() {
        text += &format!("\n{}\n{}", say::left_out(words, left_out.len()), listed(words, left_out));
    }
    text
}

fn listed(words: &Words, faults: &[Diagnosed]) -> String {
    let mut lines: Vec<String> = faults.iter().take(FAULTS_SHOWN).map(|fault| fault.said(words)).collect();
    let more = faults.len().saturating_sub(FAULTS_SHOWN);
    if more > 0 {
        lines.push(say::and_more(words, more));
    }
    lines.join("\n")
}

/// The faults of a file of which nothing went in.
fn nothing_imported(name: &str, faults: &[Diagnosed], help: Option<Label>) -> Failure {
    let words = Words::english();
    Failure::listing(say::faults(words, faults.len(), name), help, listed(words, faults))
}

/// Imports sealed entries of an export. Returns how many were added, and how many were already there.
async fn restore(holdings: &Holdings, file: &JournalFile) -> Result<(usize, usize), Failure> {
    let sealed = file.lines.iter().filter_map(|(_, line)| match line {
        Line::Sealed(entry) => Some(entry.clone()),
        Line::Draft(_) => None,
    });
    let entries: Vec<Entry> = sealed.collect();
    let spinner = progress::spinner(Label::ImportTakingIn);
    let restored = holdings.restore(&file.header.holding, &entries, &file.contents).await;
    spinner.finish_and_clear();
    match restored {
        Ok(added) => Ok((added, entries.len().saturating_sub(added))),
        Err(RecordError::Store(error)) => Err(error.into()),
        Err(RecordError::Busy) => Err(RecordError::Busy.into()),
        Err(error) => Err(nothing_imported(&file.name, &[refusal(file, &error)], None)),
    }
}

/// Seals and records drafts. Returns how many were added, and how many were already there.
async fn record(
    holdings: &Holdings,
    file: &JournalFile,
    keep_going: bool,
    left_out: &mut Vec<Diagnosed>,
) -> Result<(usize, usize), Failure> {
    let drafts: Vec<Draft> = file.lines.iter().map(|(_, line)| line.draft().clone()).collect();
    let spinner = progress::spinner(Label::ImportRecording);
    let on_refusal = if keep_going { OnRefusal::LeaveOut } else { OnRefusal::Collect };
    let outcome =
        holdings.record_each(&file.header.holding, drafts, clock::now(), on_refusal, IfNew::Begin).await;
    spinner.finish_and_clear();
    let (recorded, refused) = outcome?;
    left_out.extend(refused.iter().map(|error| refusal(file, error)));
    if !refused.is_empty() && !keep_going {
        return Err(nothing_imported(&file.name, left_out, Some(Label::ImportMend)));
    }
    let known = recorded.iter().filter(|entry| matches!(entry, Recorded::Known(_))).count();
    Ok((recorded.len().saturating_sub(known), known))
}

/// The refused line, and why.
fn refusal(file: &JournalFile, error: &RecordError) -> Diagnosed {
    let at = |index: usize| file.lines.get(index).map(|(number, _)| *number).unwrap_or_default();
    let (line, pointer, Refused { message, help }) = match error {
        RecordError::Refused { index, refusal, .. } => {
            (at(*index), refusal.pointer.as_str(), Refused::of(Words::english(), refusal))
        }
        RecordError::Conflict { index, .. } => (at(*index), "/id", mended(error, Label::ImportNewId)),
        RecordError::NotNext(broken) => {
            let line = file.line_of(|line| line.draft().id == broken.id);
            (line, "", mended(error, Label::ImportJournalsPart))
        }
        RecordError::NoHolding { .. }
        | RecordError::BegunBefore { .. }
        | RecordError::Busy
        | RecordError::Store(_) => (0, "", mended(error, Label::ImportTryAgain)),
    };
    let message = say::at(Words::english(), pointer, &message);
    Diagnosed { file: file.name.clone(), line, column: 0, message, help }
}

fn mended(error: &RecordError, help: Label) -> Refused {
    Refused { message: not_recorded(error), help: help.said() }
}
