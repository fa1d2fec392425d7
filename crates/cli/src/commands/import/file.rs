//! Reads a journal file. Reports every unreadable line, and keeps the others with their numbers.

use std::collections::HashSet;
use std::fs::File;
use std::io::{BufRead, BufReader, IsTerminal};
use std::path::Path;

use combclear_domain::journal::archive::{Archives, Rest};
use combclear_domain::journal::fault::{EntryFault, Unreadable};
use combclear_domain::journal::lines::{Header, Line};
use combclear_domain::journal::{Content, Entry, Event, Hash};
use combclear_wording::diagnostics::Diagnosed;
use combclear_wording::refusals::Refused;
use combclear_wording::terminal::import as say;
use combclear_wording::unreadable::{self, JOURNAL_HEADER};
use combclear_wording::{Label, Words};
use indicatif::{ProgressBar, ProgressStyle};

use super::nothing_imported;
use crate::failure::{Failure, Said, why};

/// The byte order mark that some editors put before UTF-8 text.
const BYTE_ORDER_MARK: &[u8] = b"\xef\xbb\xbf";

/// The readable part of a journal file.
pub(super) struct JournalFile {
    /// Its name on the command line.
    pub(super) name: String,
    pub(super) header: Header,
    /// The entries, each with its line number.
    pub(super) lines: Vec<(u32, Line)>,
    /// The documents of an export.
    pub(super) contents: Vec<Content>,
    pub(super) faults: Vec<Diagnosed>,
}

impl JournalFile {
    /// Reads a file, or standard input for `-`.
    pub(super) fn read(path: &Path) -> Result<JournalFile, Failure> {
        let (words, name) = (Words::english(), path.display().to_string());
        let cannot = |error: std::io::Error| {
            Failure::new(say::cannot_read(words, &name, &why(&error)), Label::ImportNameAFile)
        };
        let (reader, size): (Box<dyn BufRead>, u64) = if path == Path::new("-") {
            (Box::new(std::io::stdin().lock()), 0)
        } else {
            let file = File::open(path).map_err(cannot)?;
            let size = file.metadata().map(|metadata| metadata.len()).unwrap_or_default();
            (Box::new(BufReader::new(file)), size)
        };
        let bar = progress(size);
        let mut rows = reader.split(b'\n').zip(1_u32..);
        let Some((first, _)) = rows.next() else {
            return Err(Failure::new(say::empty(words, &name), say::begins_like(words, JOURNAL_HEADER)));
        };
        let header = header(first.map_err(cannot)?)
            .map_err(|found| nothing_imported(&name, &[diagnostic(&name, 1, &found)], None))?;
        let mut file = JournalFile {
            name: name.clone(),
            header,
            lines: Vec::new(),
            contents: Vec::new(),
            faults: Vec::new(),
        };
        let mut content_lines = Vec::new();
        for (row, number) in rows {
            let row = row.map_err(cannot)?;
            bar.inc(u64::try_from(row.len()).unwrap_or(0).saturating_add(1));
            if row.iter().all(u8::is_ascii_whitespace) {
                continue;
            }
            let of_content = file.header.sealed && row.starts_with(CONTENT_BEGINS);
            let read = match text(row) {
                Err(found) => Err(vec![found]),
                Ok(line) if of_content => Content::from_json(&line)
                    .map(|content| {
                        content_lines.push(number);
                        file.contents.push(content);
                    })
                    .map_err(|found| vec![found]),
                Ok(line) => Line::from_json(&file.header, &line).map(|line| file.lines.push((number, line))),
            };
            let found = read.err().unwrap_or_default();
            file.faults.extend(found.iter().map(|found| diagnostic(&name, number, found)));
        }
        bar.finish_and_clear();
        // These checks would only repeat earlier faults.
        if file.faults.is_empty() {
            file.check_chain();
        }
        if file.faults.is_empty() {
            file.check_complete();
            file.check_contents(&content_lines);
        }
        Ok(file)
    }

    /// The number of the line with this entry.
    pub(super) fn line_of(&self, wanted: impl Fn(&Line) -> bool) -> u32 {
        self.lines.iter().find(|(_, line)| wanted(line)).map(|(number, _)| *number).unwrap_or_default()
    }

    fn sealed(&self) -> impl Iterator<Item = (u32, &Entry)> {
        self.lines.iter().filter_map(|(number, line)| match line {
            Line::Sealed(entry) => Some((*number, entry)),
            Line::Draft(_) => None,
        })
    }

    fn fault(&mut self, line: u32, message: String, help: Label) {
        self.faults.push(Diagnosed { file: self.name.clone(), line, column: 0, message, help: help.said() });
    }

    /// Checks that each sealed entry is as sealed and follows the previous one, whatever the journal already holds. An
    /// export may be cut from the middle of a journal: only the journal knows what its first entry follows.
    fn check_chain(&mut self) {
        let words = Words::english();
        let mut broken = Vec::new();
        let mut tip = None;
        let mut archives = Archives::default();
        for (number, entry) in self.sealed() {
            let middle = || (entry.seq > 1).then(|| (entry.seq.saturating_sub(1), entry.prev));
            if let Err(found) = entry.follows(&self.header.holding, tip.or_else(middle)) {
                broken.push((number, unreadable::broken(words, &found)));
            }
            if entry.is_in_archive() {
                archives.without_body(Rest::of(&self.header.holding, entry));
            }
            if let Event::Archived(body) = &entry.draft.event
                && let Err(found) = archives.archived(entry.seq, entry.draft.id, body)
            {
                broken.push((number, unreadable::broken(words, &found)));
            }
            tip = Some(entry.tip());
        }
        if broken.is_empty()
            && let Err(found) = archives.end()
        {
            let at = self.line_of(|line| line.draft().id == found.id);
            broken.push((at, unreadable::broken(words, &found)));
        }
        if broken.len() > 1 && broken.len() == self.lines.len() {
            let message = say::none_sealed_here(Words::english(), &self.header.holding);
            return self.fault(1, message, Label::ImportHoldingChanged);
        }
        for (number, found) in broken {
            self.fault(number, found, Label::ImportNeverEdited);
        }
    }

    /// Checks the number of entries and the head in the header of an export, to detect a cut file.
    fn check_complete(&mut self) {
        let Some(promised) = self.header.entries else { return };
        let found = u64::try_from(self.lines.len()).unwrap_or(u64::MAX);
        if found != promised {
            let message = say::entries_promised(Words::english(), promised, found);
            return self.fault(1, message, Label::ImportCut);
        }
        let last = self.sealed().last().map(|(_, entry)| entry.hash);
        if last != self.header.head {
            let message = say::other_head(Words::english(), self.header.head, last);
            self.fault(1, message, Label::ImportChanged);
        }
    }

    /// Checks the number of documents in the header, and that an entry of the file attaches each.
    fn check_contents(&mut self, lines: &[u32]) {
        let words = Words::english();
        let promised = self.header.contents.unwrap_or(0);
        let found = u64::try_from(self.contents.len()).unwrap_or(u64::MAX);
        if found != promised {
            let message = say::documents_promised(words, promised, found);
            return self.fault(1, message, Label::ImportCut);
        }
        let attached: HashSet<Hash> = self
            .sealed()
            .filter_map(|(_, entry)| match &entry.draft.event {
                Event::DocumentAttached(document) => Some(document.content),
                _ => None,
            })
            .collect();
        let last_entry = self.lines.last().map(|(number, _)| *number).unwrap_or_default();
        let mut seen = HashSet::new();
        let mut found = Vec::new();
        for (number, content) in lines.iter().zip(&self.contents) {
            let hash = content.hash();
            if *number < last_entry {
                found.push((*number, say::document_among_entries(words, hash)));
            } else if !attached.contains(&hash) {
                found.push((*number, say::document_of_none(words, hash)));
            } else if !seen.insert(hash) {
                found.push((*number, say::document_twice(words, hash)));
            }
        }
        for (number, message) in found {
            self.fault(number, message, Label::ImportCut);
        }
    }
}

/// The beginning of a line with a document; a sealed entry begins with its place.
const CONTENT_BEGINS: &[u8] = br#"{"content":"#;

fn header(mut row: Vec<u8>) -> Result<Header, EntryFault> {
    if row.starts_with(BYTE_ORDER_MARK) {
        row.drain(..BYTE_ORDER_MARK.len());
    }
    Header::from_json(&text(row)?)
}

fn text(row: Vec<u8>) -> Result<String, EntryFault> {
    String::from_utf8(row).map_err(|_| EntryFault { pointer: String::new(), what: Unreadable::NotText })
}

fn diagnostic(name: &str, line: u32, fault: &EntryFault) -> Diagnosed {
    let words = Words::english();
    let Refused { message, help } = unreadable::line(words, fault);
    let message = say::at(words, &fault.pointer, &message);
    Diagnosed { file: name.to_owned(), line, column: 0, message, help }
}

/// A progress bar; hidden for a small file or if standard error is not a terminal.
fn progress(bytes: u64) -> ProgressBar {
    const LONG: u64 = 1_000_000;
    if bytes < LONG || !std::io::stderr().is_terminal() {
        return ProgressBar::hidden();
    }
    let left = say::left(Words::english(), "{eta}");
    let style =
        ProgressStyle::with_template(&format!("{{msg}} {{wide_bar}} {{bytes}}/{{total_bytes}} {left}"));
    let bar = ProgressBar::new(bytes).with_message(Label::ImportReading.said());
    style.map(|style| bar.clone().with_style(style)).unwrap_or(bar)
}
