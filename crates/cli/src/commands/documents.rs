//! `combclear documents`: lists the attached documents, or saves one of them.

use std::fs::OpenOptions;
use std::io::Write;
use std::path::Path;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::document::in_short;
use combclear_store::{Attached, ContentState, Holdings};
use combclear_wording::terminal::documents as say;
use combclear_wording::{Label, Words};
use serde::Serialize;

use super::attach::belongs_to;
use super::output::cannot_make;
use super::{print, print_json};
use crate::args::{Documents, Place};
use crate::failure::{Failure, why};
use crate::layout::Table;
use crate::{Outcome, place};

/// Fewest digits of a hash that may be searched for.
const DIGITS_LEAST: usize = 8;

#[derive(Serialize)]
struct Row {
    content: String,
    state: &'static str,
    media_type: &'static str,
    bytes: u32,
    file_name: Option<String>,
    lot: Option<String>,
    prescription: Option<String>,
    on: String,
    recorded_by: String,
    seq: u64,
    id: String,
    superseded_by: Option<String>,
    #[serde(skip)]
    to: String,
    #[serde(skip)]
    kind: &'static str,
    #[serde(skip)]
    shown: Label,
}

pub(crate) async fn run(at: &Place, ask: &Documents) -> Result<Outcome, Failure> {
    place::with_holding(at, async |holdings, holding| {
        let attached = combclear_store::documents(holdings.journal().as_ref(), &holding).await?;
        match (&ask.hash, &ask.save) {
            (Some(hash), Some(file)) => save(holdings, &holding, &attached, hash, file).await?,
            _ => list(holdings, &holding, attached, ask.json).await?,
        }
        Ok(Outcome::Done)
    })
    .await
}

async fn list(
    holdings: &Holdings,
    holding: &HoldingName,
    attached: Vec<Attached>,
    json: bool,
) -> Result<(), Failure> {
    let words = Words::english();
    let rows: Vec<Row> = holdings
        .read(holding, |folded| {
            let row = |Attached { entry, document, state }: Attached| Row {
                content: document.content.to_string(),
                state: state.as_str(),
                media_type: document.media_type.as_str(),
                bytes: document.bytes,
                to: belongs_to(words, &document),
                shown: label(state),
                kind: in_short(document.media_type),
                file_name: document.file_name.clone(),
                lot: document.lot.as_ref().map(ToString::to_string),
                prescription: document.prescription.as_ref().map(ToString::to_string),
                on: entry.draft.on.to_string(),
                recorded_by: entry.draft.recorded_by.to_string(),
                seq: entry.seq,
                id: entry.draft.id.to_string(),
                superseded_by: folded.superseded_by(entry.draft.id).map(|id| id.to_string()),
            };
            attached.into_iter().map(row).collect()
        })
        .await?
        .unwrap_or_default();
    if json {
        return print_json(&rows);
    }
    if rows.is_empty() {
        return print(words.label(Label::DocumentNone));
    }
    let mut shown = Table::headed(
        words,
        [
            Label::DocumentAttached,
            Label::DocumentTo,
            Label::PackFile,
            Label::What,
            Label::DocumentContent,
            Label::Document,
        ],
    );
    for row in &rows {
        let to = row.superseded_by.as_ref().map(|by| say::corrected(words, &row.to, by));
        // Enough of it to save the document by.
        let hash: String = row.content.chars().take(16).collect();
        shown.row([
            say::attached_on(words, &row.on, &row.recorded_by),
            to.unwrap_or_else(|| row.to.clone()),
            row.file_name.clone().unwrap_or_default(),
            say::kind_and_size(words, row.kind, row.bytes),
            words.label(row.shown).to_owned(),
            hash,
        ]);
    }
    let lacking = rows.iter().filter(|row| row.shown != Label::DocumentKept).count();
    let total = match lacking {
        0 => say::in_all(words, rows.len()),
        some => say::lacking(words, rows.len(), some),
    };
    print(&format!("{shown}\n{total}"))
}

fn label(state: ContentState) -> Label {
    match state {
        ContentState::Kept => Label::DocumentKept,
        ContentState::Missing => Label::DocumentMissing,
        ContentState::Altered => Label::DocumentAltered,
    }
}

/// Saves one document to a new file.
async fn save(
    holdings: &Holdings,
    holding: &HoldingName,
    attached: &[Attached],
    hash: &str,
    file: &Path,
) -> Result<(), Failure> {
    let found = find(attached, hash)?;
    if let Some(fault) = found.fault() {
        return Err(Failure::from(fault));
    }
    let bytes = holdings.journal().content(holding, found.document.content).await?.unwrap_or_default();
    let (words, path) = (Words::english(), file.display().to_string());
    let opened = OpenOptions::new().write(true).create_new(true).open(file);
    let mut out = opened.map_err(|error| cannot_make(file, &error))?;
    out.write_all(&bytes).and_then(|()| out.sync_all()).map_err(|error| {
        drop(std::fs::remove_file(file));
        Failure::new(say::cannot_save(words, &path, &why(&error)), Label::DocumentSaveAgain)
    })?;
    let (kind, bytes) = (in_short(found.document.media_type), found.document.bytes);
    print(&say::saved(words, &path, kind, bytes, &belongs_to(words, &found.document)))
}

/// The document with this hash, or the only one whose hash begins with it.
fn find<'a>(attached: &'a [Attached], hash: &str) -> Result<&'a Attached, Failure> {
    let words = Words::english();
    if hash.len() < DIGITS_LEAST {
        return Err(Failure::new(say::hash_too_short(words, hash), Label::DocumentGive8Digits));
    }
    let begins = |attached: &&Attached| attached.document.content.to_string().starts_with(hash);
    let mut found = attached.iter().filter(begins);
    let Some(first) = found.next() else {
        return Err(Failure::new(say::no_such(words, hash), Label::DocumentList));
    };
    if found.any(|other| other.document.content != first.document.content) {
        return Err(Failure::new(say::several(words, hash), Label::DocumentGiveMoreDigits));
    }
    // All these entries share one content; prefer one whose content is stored.
    let kept = attached.iter().filter(begins).find(|attached| attached.state == ContentState::Kept);
    Ok(kept.unwrap_or(first))
}
