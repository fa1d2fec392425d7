//! `combclear register`: the legal register of a period, on the terminal and as files.

use std::cell::LazyCell;
use std::path::{Path, PathBuf};

use combclear_domain::basics::calendar::Day;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Hash;
use combclear_domain::questions::gaps::Gaps;
use combclear_domain::questions::register::{Period, Register};
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_papers::exchange::Exchange;
use combclear_papers::{Paper, Sheet, flat, html};
use combclear_wording::gaps::GapsReport;
use combclear_wording::register::RegisterReport;
use combclear_wording::terminal::{self, failures};
use combclear_wording::{Label, Words};

use super::{output, print, print_json};
use crate::args::{self, Place, RegisterTime};
use crate::failure::Failure;
use crate::layout::Table;
use crate::layout::tell;
use crate::{Outcome, clock, place, typesetter};

pub(crate) async fn run(at: &Place, ask: &args::Register) -> Result<Outcome, Failure> {
    one_to_standard_output(ask)?;
    output::must_be_new(named(ask))?;
    let register = read(at, ask).await?.counted_by(ask.counting);
    let files = files(ask, &register)?;
    for (path, bytes) in &files {
        output::write(path, bytes)?;
    }
    if ask.json {
        print_json(&RegisterReport::of(Words::english(), &register))?;
    } else if files.is_empty() {
        print(text(&Paper::of(Words::english(), &register, None)).trim_end())?;
    } else {
        say_written(&register, &files)?;
    }
    Ok(Outcome::Done)
}

/// Says which files were written; not if the register itself went to standard output.
fn say_written(register: &Register, files: &[(&Path, Vec<u8>)]) -> Result<(), Failure> {
    if files.iter().any(|(path, _)| output::is_standard_output(path)) {
        return Ok(());
    }
    let Register { holding, from, to, .. } = register;
    for (path, _) in files {
        let file = path.display().to_string();
        print(&terminal::register_written(Words::english(), &file, holding, *from, *to))?;
    }
    Ok(())
}

/// The register of the period.
async fn read(at: &Place, ask: &args::Register) -> Result<Register, Failure> {
    let leaflets = &place::leaflets(at)?;
    let (period, as_of) = period(&ask.time)?;
    place::with_holding(at, async |holdings, holding| {
        let read = |holding: &_| Register::of(holding, leaflets, period, as_of);
        place::read_with(holdings, &holding, &ask.read_back, read).await
    })
    .await
}

/// The register of a period, and its gaps. Both come from one state of the journal.
pub(super) fn both(
    holding: &Holding,
    leaflets: &Leaflets,
    laws: &Laws,
    (period, as_of): (Period, Day),
    not_kept: &[Hash],
) -> (Register, GapsReport) {
    let register = Register::of(holding, leaflets, period, as_of);
    let gaps = Gaps::in_register(holding, leaflets, laws, &register, not_kept);
    (register, GapsReport::of(Words::english(), gaps))
}

/// The period, and the day after which events are ignored.
pub(super) fn period(ask: &RegisterTime) -> Result<(Period, Day), Failure> {
    let today = clock::today();
    let to = ask.to.unwrap_or(today);
    let from = ask.from.unwrap_or_else(|| to.first_of_year());
    let period = Period::new(from, to)?;
    Ok((period, ask.as_of.unwrap_or(today)))
}

/// The failure for a format that could not be made.
pub(super) fn not_made(error: impl std::fmt::Display) -> Failure {
    Failure::new(error.to_string(), Label::AskedRegisterAsJson)
}

/// The files named.
fn named(ask: &args::Register) -> impl Iterator<Item = &Path> {
    let exchange = [&ask.exchange_treatments, &ask.exchange_transactions];
    [&ask.csv, &ask.html, &ask.pdf].into_iter().chain(exchange).flatten().map(PathBuf::as_path)
}

/// Two outputs on standard output could not be told apart.
fn one_to_standard_output(ask: &args::Register) -> Result<(), Failure> {
    let there = named(ask).filter(|path| output::is_standard_output(path)).count() + usize::from(ask.json);
    if there <= 1 {
        return Ok(());
    }
    Err(Failure::new(Label::AskedOneToStandardOutput, Label::AskedNameFiles))
}

/// Everything asked for, made before the first file is written.
fn files<'a>(ask: &'a args::Register, register: &Register) -> Result<Vec<(&'a Path, Vec<u8>)>, Failure> {
    let mut files: Vec<(&Path, Vec<u8>)> = Vec::new();
    if let Some(path) = &ask.csv {
        files.push((path, flat::csv(register).map_err(not_made)?));
    }
    if let Some(path) = &ask.html {
        files.push((path, html::page(&Paper::of(Words::english(), register, None)).into_bytes()));
    }
    if let Some(path) = &ask.pdf {
        let typesetter = typesetter::built_in()
            .ok_or_else(|| Failure::new(Label::AskedNoTypesetter, Label::AskedPrintThePage))?;
        let pdf =
            typesetter.set(&Paper::of(Words::english(), register, None), clock::now()).map_err(not_made)?;
        if !pdf.missing.is_empty() {
            let signs = pdf.missing.join(", ");
            tell(&failures::no_shape(Words::english(), &signs));
        }
        files.push((path, pdf.bytes));
    }
    let exchange = LazyCell::new(|| Exchange::of(register));
    if let Some(path) = &ask.exchange_treatments {
        files.push((path, serde_json::to_vec_pretty(&exchange.treatments).map_err(not_made)?));
    }
    if let Some(path) = &ask.exchange_transactions {
        files.push((path, serde_json::to_vec_pretty(&exchange.transactions).map_err(not_made)?));
    }
    Ok(files)
}

/// The sheets as text.
fn text(paper: &Paper) -> String {
    let mut text = format!("{}: {}\n", paper.title, paper.holding);
    for fact in &paper.facts {
        text.push_str(&format!("{}: {}\n", fact.head, combclear_wording::visible::visible(&fact.says)));
    }
    for sheet in &paper.sheets {
        text.push_str(&format!("\n{}\n{}\n", sheet.title, one(sheet)));
    }
    text.push_str(&format!("\n{}\n", paper.notice));
    text
}

fn one(sheet: &Sheet) -> String {
    if sheet.rows.is_empty() {
        return Sheet::empty(Words::english()).to_owned();
    }
    let mut table = Table::new(sheet.columns.iter().map(|column| column.head));
    for row in &sheet.rows {
        table.row(row.iter().map(|cell| cell.plain(Words::english())).collect::<Vec<_>>());
    }
    let table = table.to_string();
    let parts: Vec<&str> = sheet.notes.iter().map(String::as_str).chain([table.as_str()]).collect();
    parts.join("\n")
}
