//! `combclear export`: the journal as JSON Lines, to the byte what an import takes in again.

use std::fs::{File, OpenOptions};
use std::io::{BufWriter, ErrorKind, Write};
use std::path::Path;

use combclear_domain::journal::Hash;
use combclear_domain::journal::lines::Header;
use combclear_domain::words::HoldingName;
use combclear_store::{Journal, StoreError};

use super::output;
use crate::args::{Export, Place};
use crate::failure::{Failure, why};
use crate::{Outcome, place};

const PAGE: u32 = 5_000;

pub(crate) async fn run(at: &Place, export: &Export) -> Result<Outcome, Failure> {
    place::with_holding(at, async |register, holding| {
        let journal = register.journal().as_ref();
        // Entries recorded while this runs are left for the next export: the header promises a number and a head.
        let tip = journal.tip(&holding).await?;
        match &export.file {
            Some(path) => to_file(path, journal, &holding, tip).await?,
            None => match write(&mut BufWriter::new(std::io::stdout()), journal, &holding, tip).await {
                // A reader that has gone away (`| head`) is no failure.
                Err(Unfinished::Write(error)) if error.kind() == ErrorKind::BrokenPipe => {}
                done => done.map_err(|unfinished| unfinished.at("standard output"))?,
            },
        }
        Ok(Outcome::Done)
    })
    .await
}

/// Writes a file of its own: what was there is left alone, and what could not be finished is taken away again.
async fn to_file(
    path: &Path,
    journal: &dyn Journal,
    holding: &HoldingName,
    tip: Option<(u64, Hash)>,
) -> Result<(), Failure> {
    let opened = OpenOptions::new().write(true).create_new(true).open(path);
    let file = opened.map_err(|error| output::cannot_make(path, &error))?;
    let mut out = BufWriter::new(file);
    let mut done = write(&mut out, journal, holding, tip).await;
    if done.is_ok() {
        // An export is often the only copy.
        done = out.get_ref().sync_all().map_err(Unfinished::Write);
    }
    done.map_err(|unfinished| {
        discard(out);
        let kept = std::fs::remove_file(path).is_err();
        let failure = unfinished.at(&format!("`{}`", path.display()));
        if kept { failure.and("what was written so far is not a whole export; delete it") } else { failure }
    })
}

/// Gives up what is still buffered: to write it now would only fail again.
fn discard(out: BufWriter<File>) {
    drop(out.into_parts());
}

/// Why an export could not be finished.
enum Unfinished {
    Read(StoreError),
    Write(std::io::Error),
}

impl Unfinished {
    fn at(self, place: &str) -> Failure {
        match self {
            Unfinished::Read(error) => error.into(),
            Unfinished::Write(error) => {
                let help = "look where it goes, then export again";
                Failure::new(format!("cannot write the export to {place}: {}", why(&error)), help)
            }
        }
    }
}

async fn write(
    out: &mut impl Write,
    journal: &dyn Journal,
    holding: &HoldingName,
    tip: Option<(u64, Hash)>,
) -> Result<(), Unfinished> {
    let (entries, head) = tip.map_or((0, None), |(seq, head)| (seq, Some(head)));
    let header = Header::sealed(holding.clone(), entries, head);
    writeln!(out, "{}", header.to_json()).map_err(Unfinished::Write)?;
    let mut after = 0;
    while after < entries {
        let page = journal.page(holding, after, PAGE).await.map_err(Unfinished::Read)?;
        let Some(last) = page.last() else { break };
        after = last.seq;
        for entry in page.iter().filter(|entry| entry.seq <= entries) {
            writeln!(out, "{}", entry.to_json()).map_err(Unfinished::Write)?;
        }
    }
    out.flush().map_err(Unfinished::Write)
}
