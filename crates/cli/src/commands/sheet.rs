//! `combclear sheet`: writes a spreadsheet to fill in. `combclear import` takes it in.

use combclear_domain::journal::Kind;
use combclear_store::Holdings;
use combclear_wording::terminal::sheet as say;
use combclear_wording::{Label, Words, forms};
use combclear_workbook::columns::TABS;
use combclear_workbook::template::{self, Choices, NotWritten};

use super::import::Format;
use super::record::command_of;
use super::{output, print};
use crate::args::{Place, Sheet};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, sheet: &Sheet) -> Result<Outcome, Failure> {
    let words = Words::english();
    let file = sheet.file.display().to_string();
    let written = match (Format::of(&sheet.file), sheet.kind) {
        (Some(Format::Csv), Some(kind)) => {
            let bytes = template::csv(words, kind).map_err(|error| not_written(&file, &error))?;
            (bytes, say::written_csv(words, &file, forms::tab(words, kind)))
        }
        (Some(Format::Xlsx), None) => {
            let choices = choices(at, sheet.new).await?;
            let bytes = template::xlsx(words, &choices).map_err(|error| not_written(&file, &error))?;
            (bytes, say::written(words, &file, TABS.len()))
        }
        (Some(Format::Csv), None) => {
            return Err(Failure::new(Label::SheetKindForCsv, Label::SheetKindForCsvHelp));
        }
        (Some(Format::Xlsx), Some(_)) => {
            return Err(Failure::new(Label::SheetKindForXlsx, Label::SheetKindForXlsxHelp));
        }
        (Some(Format::Other) | None, _) => {
            return Err(Failure::new(say::other_format(words, &file), Label::SheetOtherFormatHelp));
        }
    };
    let (bytes, done) = written;
    output::save(&sheet.file, &bytes)?;
    print(&done)?;
    Ok(Outcome::Done)
}

/// What the sheet offers to choose from.
async fn choices(at: &Place, is_new: bool) -> Result<Choices, Failure> {
    let (leaflets, today) = (place::leaflets(at)?, clock::today());
    if is_new {
        return Ok(Choices::of_nobody(at.holding.clone(), &leaflets, today));
    }
    let asked = place::with_holding(at, async |holdings: &Holdings, name| {
        place::read(holdings, &name, |holding| Choices::of(holding, &leaflets, today)).await
    });
    asked.await.map_err(|failure| failure.and(Label::SheetIsForNew))
}

/// Reads the name of a kind of entry, which is that of the command that records one.
pub(crate) fn kind(text: &str) -> Result<Kind, String> {
    let found = TABS.into_iter().find(|kind| command_of(*kind) == Some(text));
    found.ok_or_else(|| {
        let kinds: Vec<&str> = TABS.into_iter().filter_map(command_of).collect();
        say::unknown_kind(Words::english(), text, &kinds.join(", "))
    })
}

fn not_written(file: &str, error: &NotWritten) -> Failure {
    let words = Words::english();
    let message = combclear_wording::terminal::failures::cannot_write(words, file, &error.to_string());
    Failure::new(message, Label::FileLookTryAgain)
}
