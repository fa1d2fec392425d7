//! Imports a filled-in sheet: all rows are recorded, or none.

use std::path::Path;

use combclear_domain::basics::misread::Misread;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_store::{Holdings, IfNew, OnRefusal};
use combclear_wording::refusals::Refused;
use combclear_wording::terminal::import::{self as import_say, Imported};
use combclear_wording::terminal::sheet as say;
use combclear_wording::unreadable::misread;
use combclear_wording::{Label, Words, forms, recording};
use combclear_workbook::entries::{Entries, entries};
use combclear_workbook::faults::{Fault, Unfit};
use combclear_workbook::read::{self, FILE_MOST_MB, Sheet};
use serde::Serialize;

use crate::args::{Import, Place};
use crate::commands::{print, print_json};
use crate::failure::{Failure, Said, why};
use crate::{Outcome, clock, place};

/// Faults printed in full; the others are only counted.
const FAULTS_SHOWN: usize = 50;

/// The format of a sheet, by the end of its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Format {
    Xlsx,
    Csv,
    /// A spreadsheet that is not read here.
    Other,
}

impl Format {
    /// The format of a file; none if it is no spreadsheet.
    pub(crate) fn of(path: &Path) -> Option<Format> {
        match path.extension()?.to_str()?.to_lowercase().as_str() {
            "xlsx" => Some(Format::Xlsx),
            "csv" => Some(Format::Csv),
            "xls" | "xlsb" | "xlsm" | "ods" | "numbers" | "tsv" => Some(Format::Other),
            _ => None,
        }
    }
}

#[derive(Serialize)]
struct Report {
    holding: HoldingName,
    added: usize,
    known: usize,
    entries: u64,
    head: Option<String>,
    #[serde(skip)]
    lines: Vec<String>,
}

pub(super) async fn run(at: &Place, import: &Import, format: Format) -> Result<Outcome, Failure> {
    let words = Words::english();
    let file = import.file.display().to_string();
    if import.keep_going {
        return Err(Failure::new(Label::SheetKeepGoing, Label::SheetKeepGoingHelp));
    }
    let bytes = bytes(&import.file)?;
    let sheet = match format {
        Format::Xlsx => read::xlsx(words, &bytes),
        Format::Csv => read::csv(words, &bytes),
        Format::Other => {
            return Err(Failure::new(say::other_format(words, &file), Label::SheetOtherFormatHelp));
        }
    };
    let sheet = sheet.map_err(|unfit| refused(&unfit, &file))?;
    let leaflets = place::leaflets(at)?;
    let report = place::with_holdings(at, async |holdings| {
        let name = holding(at, holdings, &sheet, &file).await?;
        super::check_begun(holdings, import, &name, &file).await?;
        let found = holdings.snapshot(&name).await?;
        let found = found.as_deref().cloned().unwrap_or_else(|| Holding::new(name.clone()));
        let entries = entries(&sheet, &found, &leaflets, clock::now())
            .map_err(|faults| nothing_imported(&file, &faults))?;
        let lines = lines(&sheet, &entries);
        let Entries { drafts, known, .. } = entries;
        let added = drafts.len();
        if added > 0 {
            let (_, refused) =
                holdings.record_each(&name, drafts, clock::now(), OnRefusal::Stop, IfNew::Begin).await?;
            // Somebody else recorded in between.
            if let Some(error) = refused.into_iter().next() {
                return Err(error.into());
            }
        }
        let tip = holdings.journal().tip(&name).await?;
        let head = tip.map(|(_, head)| head.to_string());
        Ok(Report { holding: name, added, known, entries: tip.map_or(0, |(last, _)| last), head, lines })
    })
    .await?;
    if import.json {
        print_json(&report)?;
    } else {
        print(&said(words, &report))?;
    }
    Ok(Outcome::Done)
}

/// The content of the file, unless it is too large to be looked at.
fn bytes(path: &Path) -> Result<Vec<u8>, Failure> {
    let file = path.display().to_string();
    let cannot = |error: std::io::Error| {
        Failure::new(import_say::cannot_read(Words::english(), &file, &why(&error)), Label::ImportNameAFile)
    };
    let length = std::fs::metadata(path).map_err(cannot)?.len();
    if length > FILE_MOST_MB * 1_000_000 {
        return Err(refused(&Unfit::TooLarge { most: FILE_MOST_MB }, &file));
    }
    std::fs::read(path).map_err(cannot)
}

/// The holding that the sheet is for: the one named on the command line or in the sheet, or the only one on record.
async fn holding(at: &Place, holdings: &Holdings, sheet: &Sheet, file: &str) -> Result<HoldingName, Failure> {
    let words = Words::english();
    let in_sheet = sheet.holding.as_deref().map(str::parse::<HoldingName>).transpose().map_err(|fault| {
        let why = misread(words, &Misread::from(fault));
        Failure::new(import_say::cannot_read(words, file, &why), Label::SheetNoHoldingHelp)
    })?;
    match (&at.holding, in_sheet) {
        (Some(wanted), Some(named)) if *wanted != named => {
            let message = say::other_holding(words, file, &named, wanted);
            Err(Failure::new(message, Label::ImportNameTheRightFile))
        }
        (Some(name), _) => Ok(name.clone()),
        (None, Some(name)) => Ok(name),
        (None, None) => match holdings.journal().holdings().await?.as_slice() {
            [only] => Ok(only.clone()),
            _ => Err(Failure::new(say::no_holding(words, file), Label::SheetNoHoldingHelp)),
        },
    }
}

/// What there is to say beside the numbers of entries.
fn lines(sheet: &Sheet, entries: &Entries) -> Vec<String> {
    let words = Words::english();
    if sheet.rows.is_empty() {
        return vec![Label::SheetNothingFilledIn.said()];
    }
    let mut lines = Vec::new();
    let by_tab: Vec<String> = entries
        .by_kind()
        .into_iter()
        .map(|(kind, count)| say::by_tab(words, forms::tab(words, kind), count))
        .collect();
    if !by_tab.is_empty() {
        lines.push(say::all_tabs(words, &by_tab.join(", ")));
    }
    if entries.rows_known > 0 {
        lines.push(say::rows_known(words, entries.rows_known));
    }
    lines.extend(entries.left_out.iter().map(|(row, of_row)| {
        say::left_out(words, &row.tab, row.number, &recording::left_out(words, of_row))
    }));
    lines
}

fn said(words: &Words, report: &Report) -> String {
    let Report { holding, added, known, entries, head, lines } = report;
    let imported = Imported {
        holding,
        added: *added,
        known: *known,
        documents: 0,
        entries: *entries,
        head: head.as_deref(),
    };
    std::iter::once(import_say::imported(words, &imported))
        .chain(lines.iter().cloned())
        .collect::<Vec<_>>()
        .join("\n")
}

fn refused(unfit: &Unfit, file: &str) -> Failure {
    let Refused { message, help } = unfit.said(Words::english(), file);
    Failure::new(message, help)
}

/// The faults of a sheet of which nothing was recorded.
fn nothing_imported(file: &str, faults: &[Fault]) -> Failure {
    let words = Words::english();
    let mut listed: Vec<String> = faults.iter().take(FAULTS_SHOWN).map(|fault| fault.said(words)).collect();
    let more = faults.len().saturating_sub(FAULTS_SHOWN);
    if more > 0 {
        listed.push(say::and_more(words, more));
    }
    let can_be_read = faults.iter().all(Fault::depends_on_the_record);
    let help = if can_be_read { Label::SheetFix } else { Label::SheetFixFirst };
    Failure::listing(import_say::faults(words, faults.len(), file), Some(help), listed.join("\n"))
}
