//! `combclear documents`: lists the attached documents, or saves one of them.

use std::fs::OpenOptions;
use std::io::{ErrorKind, Write};
use std::path::Path;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::document::in_short;
use combclear_store::{Attached, ContentState, Holdings};
use serde::Serialize;

use super::attach::belongs_to;
use super::{counted, print, print_json, table};
use crate::args::{Documents, Place};
use crate::failure::{Failure, why};
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
    let rows: Vec<Row> = holdings
        .read(holding, |folded| {
            let row = |Attached { entry, document, state }: Attached| Row {
                content: document.content.to_string(),
                state: state.as_str(),
                media_type: document.media_type.as_str(),
                bytes: document.bytes,
                to: belongs_to(&document),
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
        return print("No document is attached.");
    }
    let mut shown = table(["attached", "to", "file", "what", "content", "document"]);
    for row in &rows {
        let corrected = row.superseded_by.as_ref().map(|by| format!("\ncorrected by entry {by}"));
        // Enough digits to save the document by.
        let hash: String = row.content.chars().take(16).collect();
        shown.add_row([
            format!("{}\nby {}", row.on, row.recorded_by),
            format!("{}{}", row.to, corrected.unwrap_or_default()),
            row.file_name.clone().unwrap_or_default(),
            format!("{}, {} bytes", row.kind, row.bytes),
            row.state.to_owned(),
            hash,
        ]);
    }
    let lacking = rows.iter().filter(|row| row.state != ContentState::Kept.as_str()).count();
    let lacking = match lacking {
        0 => String::new(),
        some => format!("; {} missing or altered, see combclear verify", counted(some, "is", "are")),
    };
    let total = counted(rows.len(), "document", "documents");
    print(&format!("{}\n{total}{lacking}", shown.trim_fmt()))
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
        return Err(Failure::new(fault.to_string(), fault.help()));
    }
    let bytes = holdings.journal().content(holding, found.document.content).await?.unwrap_or_default();
    let path = file.display();
    let mut out = OpenOptions::new().write(true).create_new(true).open(file).map_err(|error| {
        if error.kind() == ErrorKind::AlreadyExists {
            let message = format!("`{path}` is there already; it was left as it is");
            return Failure::new(message, "name a file that is not there yet");
        }
        let help = "name a file in a folder that is there and can be written";
        Failure::new(format!("cannot make `{path}`: {}", why(&error)), help)
    })?;
    out.write_all(&bytes).and_then(|()| out.sync_all()).map_err(|error| {
        drop(std::fs::remove_file(file));
        let help = "look where it goes, then save it again";
        Failure::new(format!("cannot write the document to `{path}`: {}", why(&error)), help)
    })?;
    let (kind, bytes) = (in_short(found.document.media_type), found.document.bytes);
    print(&format!("`{path}`: {kind}, {bytes} bytes, attached to {}", belongs_to(&found.document)))
}

/// The document with this hash, or the only one whose hash begins with it.
fn find<'a>(attached: &'a [Attached], hash: &str) -> Result<&'a Attached, Failure> {
    const LIST: &str = "list them: combclear documents";
    if hash.len() < DIGITS_LEAST {
        let message = format!("`{hash}` is too short to find a document by");
        return Err(Failure::new(message, "give 8 digits of its hash at least"));
    }
    let begins = |attached: &&Attached| attached.document.content.to_string().starts_with(hash);
    let mut found = attached.iter().filter(begins);
    let Some(first) = found.next() else {
        return Err(Failure::new(format!("no document `{hash}` is attached"), LIST));
    };
    if found.any(|other| other.document.content != first.document.content) {
        let message = format!("the hashes of several documents begin with `{hash}`");
        return Err(Failure::new(message, "give more digits of the one that is meant"));
    }
    // All these entries share one content; prefer one whose content is stored.
    let kept = attached.iter().filter(begins).find(|attached| attached.state == ContentState::Kept);
    Ok(kept.unwrap_or(first))
}
