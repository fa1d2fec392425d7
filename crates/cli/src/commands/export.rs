//! `combclear export`: the journal as JSON Lines, to the byte what an import takes in again.

use std::fs::OpenOptions;
use std::io::{BufWriter, Write};

use combclear_domain::journal::lines::Header;

use crate::args::{Export, Place};
use crate::failure::Failure;
use crate::{Outcome, place};

const PAGE: u32 = 5_000;

pub(crate) async fn run(at: &Place, export: &Export) -> Result<Outcome, Failure> {
    let (register, holding) = place::open_holding(at).await?;
    let journal = register.journal();
    // Entries recorded while this runs are left for the next export: the header promises a number and a head.
    let tip = journal.tip(&holding).await?;
    let (entries, head) = tip.map_or((0, None), |(seq, head)| (seq, Some(head)));
    let mut out = output(export)?;
    let mut write = |line: &str| {
        let written = writeln!(out, "{line}");
        written.map_err(|error| Failure::new(format!("cannot write the export: {error}"), "look at the disk, then try again"))
    };
    write(&Header::sealed(holding.clone(), entries, head).to_json())?;
    let mut after = 0;
    while after < entries {
        let page = journal.page(&holding, after, PAGE).await?;
        let Some(last) = page.last() else { break };
        after = last.seq;
        for entry in page.iter().filter(|entry| entry.seq <= entries) {
            write(&entry.to_json())?;
        }
    }
    out.flush().map_err(|error| Failure::new(format!("cannot write the export: {error}"), "look at the disk"))?;
    Ok(Outcome::Done)
}

fn output(export: &Export) -> Result<Box<dyn Write>, Failure> {
    let Some(file) = &export.file else { return Ok(Box::new(BufWriter::new(std::io::stdout()))) };
    let opened = OpenOptions::new().write(true).create_new(true).open(file);
    let opened = opened.map_err(|error| {
        Failure::new(format!("cannot make `{}`: {error}", file.display()), "name a file that is not there yet")
    })?;
    Ok(Box::new(BufWriter::new(opened)))
}
