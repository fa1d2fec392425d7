//! `combclear import`: a journal file taken in, whole or not at all.

use std::fs::File;
use std::io::{BufRead, BufReader, IsTerminal};
use std::path::Path;

use combclear_domain::diagnostic::Diagnostic;
use combclear_domain::journal::entry::EntryFault;
use combclear_domain::journal::lines::{Header, Line};
use combclear_domain::journal::{Draft, Entry};
use combclear_domain::words::HoldingName;
use combclear_store::{OnRefusal, RecordError, Recorded, Register};
use indicatif::{ProgressBar, ProgressStyle};
use serde::Serialize;

use super::{print, print_json};
use crate::args::{Import, Place};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

/// How many faults are printed before the rest is only counted.
const FAULTS_SHOWN: usize = 20;

#[derive(Serialize)]
struct Report {
    holding: HoldingName,
    added: usize,
    known: usize,
    left_out: Vec<Diagnostic>,
    entries: u64,
    head: Option<String>,
}

pub(crate) async fn run(at: &Place, import: &Import) -> Result<Outcome, Failure> {
    let name = import.file.display().to_string();
    let file = read(&import.file, &name)?;
    if let Some(wanted) = at.holding.as_ref().filter(|wanted| **wanted != file.header.holding) {
        let message = format!("`{name}` is the journal of `{}`, not of `{wanted}`", file.header.holding);
        return Err(Failure::new(message, "leave --holding out, or name the right file"));
    }
    if import.keep_going && file.header.sealed {
        let help = "leave --keep-going out; an export is taken in whole or not at all";
        return Err(Failure::new(format!("`{name}` is sealed, so no entry can be left out"), help));
    }
    if !file.faults.is_empty() && !import.keep_going {
        return Err(nothing_imported(&file.faults, file.header.sealed));
    }
    let register = Register::new(place::open(at).await?);
    let holding = file.header.holding.clone();
    let mut left_out = file.faults;
    let (added, known) = if file.header.sealed {
        restore(&register, &holding, file.lines, &name).await?
    } else {
        record(&register, &holding, file.lines, import.keep_going, &name, &mut left_out).await?
    };
    let tip = register.journal().tip(&holding).await?;
    left_out.sort_by_key(|fault| fault.line);
    let report = Report {
        holding,
        added,
        known,
        left_out,
        entries: tip.map_or(0, |(seq, _)| seq),
        head: tip.map(|(_, head)| head.to_string()),
    };
    if import.json { print_json(&report)? } else { print(&said(&report))? }
    Ok(if report.left_out.is_empty() { Outcome::Done } else { Outcome::InPart })
}

fn said(report: &Report) -> String {
    let mut text = format!("{}: {} entries added", report.holding, report.added);
    if report.known > 0 {
        text.push_str(&format!(", {} were there already", report.known));
    }
    text.push_str(&format!("; the journal has {} entries", report.entries));
    if let Some(head) = &report.head {
        text.push_str(&format!(", head {head}"));
    }
    if !report.left_out.is_empty() {
        text.push_str(&format!("\nleft out, {}:\n{}", report.left_out.len(), listed(&report.left_out)));
    }
    text
}

fn listed(faults: &[Diagnostic]) -> String {
    let mut lines: Vec<String> = faults.iter().take(FAULTS_SHOWN).map(ToString::to_string).collect();
    let more = faults.len().saturating_sub(FAULTS_SHOWN);
    if more > 0 {
        lines.push(format!("... and {more} more"));
    }
    lines.join("\n")
}

fn nothing_imported(faults: &[Diagnostic], sealed: bool) -> Failure {
    let help = if sealed {
        "nothing was imported; export the journal again"
    } else {
        "nothing was imported; mend these lines, or take in the others with --keep-going"
    };
    Failure::new(format!("{} faults\n{}", faults.len(), listed(faults)), help)
}

/// A journal file as far as it could be read.
struct JournalFile {
    header: Header,
    lines: Vec<(u32, Line)>,
    faults: Vec<Diagnostic>,
}

fn read(path: &Path, name: &str) -> Result<JournalFile, Failure> {
    let help = "name a journal file, or - for standard input";
    let cannot = |error: std::io::Error| Failure::new(format!("cannot read `{name}`: {error}"), help);
    let (reader, size): (Box<dyn BufRead>, u64) = if path == Path::new("-") {
        (Box::new(std::io::stdin().lock()), 0)
    } else {
        let file = File::open(path).map_err(cannot)?;
        let size = file.metadata().map(|metadata| metadata.len()).unwrap_or_default();
        (Box::new(BufReader::new(file)), size)
    };
    let bar = progress(size, "reading");
    let mut rows = reader.split(b'\n').zip(1_u32..);
    let (first, _) = rows.next().ok_or_else(|| Failure::new(format!("`{name}` is empty"), help))?;
    let fault = |line: u32, fault: EntryFault| diagnostic(name, line, &fault);
    let header = text_of(first.map_err(cannot)?).and_then(|line| Header::from_json(&line));
    let header = header.map_err(|found| Failure::new(fault(1, found).to_string(), "nothing was imported"))?;
    let mut file = JournalFile { header, lines: Vec::new(), faults: Vec::new() };
    for (row, number) in rows {
        let row = row.map_err(cannot)?;
        bar.inc(u64::try_from(row.len()).unwrap_or(0).saturating_add(1));
        if row.iter().all(u8::is_ascii_whitespace) {
            continue;
        }
        match text_of(row).and_then(|line| Line::from_json(&file.header, &line)) {
            Ok(line) => file.lines.push((number, line)),
            Err(found) => file.faults.push(fault(number, found)),
        }
    }
    bar.finish_and_clear();
    check_complete(&mut file, name);
    Ok(file)
}

fn text_of(row: Vec<u8>) -> Result<String, EntryFault> {
    String::from_utf8(row).map_err(|_| EntryFault {
        pointer: String::new(),
        message: "the line is not UTF-8 text".to_owned(),
        help: "save the file as UTF-8".to_owned(),
    })
}

/// An export says how many entries it has and which is the last, so that a cut file shows.
fn check_complete(file: &mut JournalFile, name: &str) {
    let Some(promised) = file.header.entries.filter(|_| file.faults.is_empty()) else { return };
    let found = u64::try_from(file.lines.len()).unwrap_or(u64::MAX);
    let head = match file.lines.last() {
        Some((_, Line::Sealed(entry))) => Some(entry.hash),
        _ => None,
    };
    if found != promised || head != file.header.head {
        let message = format!("the header promises {promised} entries and a head hash; {found} entries are here");
        let help = "the file was cut or added to; export the journal again".to_owned();
        file.faults.push(Diagnostic { file: name.to_owned(), line: 1, column: 0, message, help });
    }
}

fn diagnostic(name: &str, line: u32, fault: &EntryFault) -> Diagnostic {
    let place = if fault.pointer.is_empty() { String::new() } else { format!("{}: ", fault.pointer) };
    let (message, help) = (format!("{place}{}", fault.message), fault.help.clone());
    Diagnostic { file: name.to_owned(), line, column: 0, message, help }
}

async fn restore(
    register: &Register,
    holding: &HoldingName,
    lines: Vec<(u32, Line)>,
    name: &str,
) -> Result<(usize, usize), Failure> {
    let entries: Vec<Entry> = lines
        .into_iter()
        .filter_map(|(_, line)| match line {
            Line::Sealed(entry) => Some(entry),
            Line::Draft(_) => None,
        })
        .collect();
    let spinner = waiting("taking the journal in");
    let restored = register.restore(holding, &entries).await;
    spinner.finish_and_clear();
    let added = restored.map_err(|error| {
        let help = "nothing was imported; take in an unchanged export, or one that goes on from this journal";
        match error {
            RecordError::Store(error) => error.into(),
            error => Failure::new(format!("`{name}`: {error}"), help),
        }
    })?;
    Ok((added, entries.len().saturating_sub(added)))
}

async fn record(
    register: &Register,
    holding: &HoldingName,
    lines: Vec<(u32, Line)>,
    keep_going: bool,
    name: &str,
    left_out: &mut Vec<Diagnostic>,
) -> Result<(usize, usize), Failure> {
    let (numbers, drafts): (Vec<u32>, Vec<Draft>) =
        lines.into_iter().map(|(number, line)| (number, line.draft().clone())).unzip();
    let spinner = waiting("recording");
    let on_refusal = if keep_going { OnRefusal::LeaveOut } else { OnRefusal::Collect };
    let outcome = register.record_each(holding, &drafts, clock::now(), on_refusal).await;
    spinner.finish_and_clear();
    let (recorded, refused) = outcome?;
    left_out.extend(refused.iter().map(|error| refusal(name, &numbers, error)));
    if !refused.is_empty() && !keep_going {
        return Err(nothing_imported(left_out, false));
    }
    let known = recorded.iter().filter(|entry| matches!(entry, Recorded::Known(_))).count();
    Ok((recorded.len().saturating_sub(known), known))
}

fn refusal(name: &str, numbers: &[u32], error: &RecordError) -> Diagnostic {
    let (index, pointer, help) = match error {
        RecordError::Refused { index, refusal, .. } => (*index, refusal.pointer.as_str(), refusal.help.clone()),
        RecordError::Conflict { index, .. } => (*index, "/id", "make a new id for a new entry".to_owned()),
        _ => (usize::MAX, "", String::new()),
    };
    let line = numbers.get(index).copied().unwrap_or_default();
    let message = if pointer.is_empty() { error.to_string() } else { format!("{pointer}: {error}") };
    Diagnostic { file: name.to_owned(), line, column: 0, message, help }
}

/// A bar on the terminal; nothing when the output goes elsewhere or the file is small.
fn progress(bytes: u64, what: &'static str) -> ProgressBar {
    const LONG: u64 = 1_000_000;
    if bytes < LONG || !std::io::stderr().is_terminal() {
        return ProgressBar::hidden();
    }
    let style = ProgressStyle::with_template("{msg} {wide_bar} {bytes}/{total_bytes} {eta} left");
    let bar = ProgressBar::new(bytes).with_message(what);
    style.map(|style| bar.clone().with_style(style)).unwrap_or(bar)
}

fn waiting(what: &'static str) -> ProgressBar {
    if !std::io::stderr().is_terminal() {
        return ProgressBar::hidden();
    }
    let spinner = ProgressBar::new_spinner().with_message(what);
    spinner.enable_steady_tick(std::time::Duration::from_millis(120));
    spinner
}
