//! `combclear export`: the journal as JSON Lines, which imports byte for byte.

use std::fs::{File, OpenOptions};
use std::io::{BufWriter, ErrorKind, Write};
use std::path::Path;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::lines::Header;
use combclear_domain::journal::{Content, Hash};
use combclear_store::{Attached, ContentState, DocumentFault, Journal, StoreError};
use combclear_wording::refusals::Refused;
use combclear_wording::terminal::{documents as say, failures};
use combclear_wording::{Label, Words, keeping};

use super::output;
use super::output::is_standard_output;
use crate::args::{Export, Place};
use crate::failure::{Failure, Said, why};
use crate::layout::tell;
use crate::{Outcome, place};

const PAGE: u32 = 5_000;

pub(crate) async fn run(at: &Place, export: &Export) -> Result<Outcome, Failure> {
    place::with_holding(at, async |holdings, holding| {
        let journal = holdings.journal().as_ref();
        // Entries recorded during the export are left for the next one: the header states a number and a head.
        let whole = Whole::of(journal, &holding).await?;
        match &export.file {
            Some(path) if !is_standard_output(path) => to_file(path, journal, &whole).await?,
            Some(_) | None => match write(&mut BufWriter::new(std::io::stdout()), journal, &whole).await {
                // A closed pipe (`| head`) is no failure.
                Err(Unfinished::Write(error)) if error.kind() == ErrorKind::BrokenPipe => {}
                done => done.map_err(|unfinished| unfinished.at(&Label::OutputStandard.said()))?,
            },
        }
        for fault in &whole.lacking {
            let words = Words::english();
            let Refused { message, help } = keeping::document(words, fault);
            let said = say::without(words, &message);
            let said = failures::warning(words, &super::seen(&said));
            let help = failures::help(words, &super::seen(&help));
            tell(&format!("{said}\n  {help}"));
        }
        Ok(if whole.lacking.is_empty() { Outcome::Done } else { Outcome::InPart })
    })
    .await
}

/// The content of an export.
struct Whole {
    holding: HoldingName,
    entries: u64,
    head: Option<Hash>,
    /// The documents, each once, in the order of attaching.
    contents: Vec<Hash>,
    /// The missing or altered documents. The entries are worth exporting without them.
    lacking: Vec<DocumentFault>,
}

impl Whole {
    async fn of(journal: &dyn Journal, holding: &HoldingName) -> Result<Whole, StoreError> {
        let tip = journal.tip(holding).await?;
        let (entries, head) = tip.map_or((0, None), |(seq, head)| (seq, Some(head)));
        let attached = combclear_store::documents(journal, holding).await?;
        let attached: Vec<Attached> =
            attached.into_iter().filter(|attached| attached.entry.seq <= entries).collect();
        let mut contents = Vec::new();
        for found in attached.iter().filter(|attached| attached.state == ContentState::Kept) {
            if !contents.contains(&found.document.content) {
                contents.push(found.document.content);
            }
        }
        let lacking = attached.iter().filter_map(Attached::fault).collect();
        Ok(Whole { holding: holding.clone(), entries, head, contents, lacking })
    }
}

/// Writes a new file. An existing file is left alone; an incomplete one is removed.
async fn to_file(path: &Path, journal: &dyn Journal, whole: &Whole) -> Result<(), Failure> {
    let opened = OpenOptions::new().write(true).create_new(true).open(path);
    let file = opened.map_err(|error| output::cannot_make(path, &error))?;
    let mut out = BufWriter::new(file);
    let mut done = write(&mut out, journal, whole).await;
    if done.is_ok() {
        // An export is often the only copy, so sync it to disk.
        done = out.get_ref().sync_all().map_err(Unfinished::Write);
    }
    done.map_err(|unfinished| {
        discard(out);
        let kept = std::fs::remove_file(path).is_err();
        let failure = unfinished.at(&say::file(Words::english(), &path.display().to_string()));
        if kept { failure.and(Label::ExportNotWhole) } else { failure }
    })
}

/// Drops the buffer: flushing it would only fail again.
fn discard(out: BufWriter<File>) {
    drop(out.into_parts());
}

/// Why an export could not be finished.
enum Unfinished {
    Read(StoreError),
    /// A document changed or disappeared during the export.
    Changed(Hash),
    Write(std::io::Error),
}

impl Unfinished {
    fn at(self, place: &str) -> Failure {
        match self {
            Unfinished::Read(error) => error.into(),
            Unfinished::Changed(hash) => {
                Failure::new(say::changed(Words::english(), hash, place), Label::ExportVerifyFirst)
            }
            Unfinished::Write(error) => {
                let message = say::cannot_export(Words::english(), place, &why(&error));
                Failure::new(message, Label::ExportLookAgain)
            }
        }
    }
}

async fn write(out: &mut impl Write, journal: &dyn Journal, whole: &Whole) -> Result<(), Unfinished> {
    let Whole { holding, entries, head, contents, .. } = whole;
    let (entries, promised) = (*entries, u64::try_from(contents.len()).unwrap_or(u64::MAX));
    let header = Header::sealed(holding.clone(), entries, *head).with_contents(promised);
    writeln!(out, "{}", header.to_json()).map_err(Unfinished::Write)?;
    let mut tip = None;
    // An export is taken for what was recorded, so it must be: each entry as it was sealed, up to the last one promised.
    while tip.is_none_or(|(last, _)| last < entries) && entries > 0 {
        let after = tip.map_or(0, |(last, _)| last);
        let page = journal.page(holding, after, PAGE).await.map_err(Unfinished::Read)?;
        if page.is_empty() {
            let (holding, by_place, by_id) = (holding.clone(), after, entries);
            return Err(Unfinished::Read(StoreError::Lost { holding, by_place, by_id }));
        }
        for entry in page.iter().filter(|entry| entry.seq <= entries) {
            let broken = |broken| StoreError::Broken { holding: holding.clone(), broken: Box::new(broken) };
            entry.follows(holding, tip).map_err(|why| Unfinished::Read(broken(why)))?;
            tip = Some(entry.tip());
            writeln!(out, "{}", entry.to_json()).map_err(Unfinished::Write)?;
        }
    }
    journal.is_whole(holding, entries, false).await.map_err(Unfinished::Read)?;
    for hash in contents {
        let bytes = journal.content(holding, *hash).await.map_err(Unfinished::Read)?.unwrap_or_default();
        let content = Content::new(bytes);
        if content.hash() != *hash {
            return Err(Unfinished::Changed(*hash));
        }
        writeln!(out, "{}", content.to_json()).map_err(Unfinished::Write)?;
    }
    out.flush().map_err(Unfinished::Write)
}
