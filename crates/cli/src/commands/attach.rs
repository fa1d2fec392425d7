//! `combclear attach`: attaches a proof of purchase to its lot, or a copy to its prescription.

use std::fs::File;
use std::io::Read;
use std::path::Path;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::document::DOCUMENT_MOST;
use combclear_domain::journal::document::{Unfit, in_short, media_type};
use combclear_domain::journal::event::DocumentAttached;
use combclear_domain::journal::{Content, Draft, Event};
use combclear_papers::look::cautions;
use combclear_store::{Attached, ContentState, Holdings, RecordError};
use combclear_wording::refusals::Refused;
use combclear_wording::terminal::{documents as say, failures};
use combclear_wording::{Label, Words, unreadable};

use super::print;
use crate::args::{Attach, Place};
use crate::failure::{Failure, why};
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, attach: &Attach) -> Result<Outcome, Failure> {
    let words = Words::english();
    let name = attach.file.display().to_string();
    let bytes = read(&attach.file)?;
    let media_type = media_type(&bytes).map_err(|unfit| not_attached(&name, &unfit))?;
    let cautions = cautions(media_type, &bytes);
    let content = Content::new(bytes);
    let document = DocumentAttached {
        content: content.hash(),
        media_type,
        bytes: u32::try_from(content.bytes().len()).unwrap_or(u32::MAX),
        file_name: file_name(&attach.file),
        lot: attach.lot.clone(),
        prescription: attach.prescription.clone(),
    };
    let to = belongs_to(words, &document);
    let said = place::with_holding(at, async |holdings, holding| {
        if let Some(known) = same(holdings, &holding, &document).await? {
            return supply(holdings, &holding, &known, content).await;
        }
        let event = Event::from(document.clone());
        let on = attach.on.unwrap_or_else(clock::today);
        let draft = Draft::new(clock::new_id(), on, attach.by.clone(), event);
        let recorded = holdings.attach(&holding, draft, content, clock::now()).await;
        let recorded = recorded.map_err(|error| match error {
            RecordError::Refused { refusal, .. } => {
                let Refused { message, help } = Refused::of(words, &refusal);
                Failure::new(say::not_attached(words, &name, &message), help)
            }
            error => error.into(),
        })?;
        let (kind, bytes) = (in_short(media_type), document.bytes);
        let (hash, id) = (document.content, recorded.entry().draft.id);
        Ok(say::attached(words, &name, kind, bytes, &to, hash, id))
    })
    .await?;
    print(&said)?;
    if !cautions.is_empty() {
        let cautions =
            cautions.into_iter().map(|caution| words.label(caution)).collect::<Vec<_>>().join("; ");
        print(&say::caution(words, &cautions))?;
    }
    Ok(Outcome::Done)
}

/// Reads a file, up to just above the size limit.
fn read(path: &Path) -> Result<Vec<u8>, Failure> {
    let (words, name) = (Words::english(), path.display().to_string());
    let cannot = |error: std::io::Error| {
        Failure::new(failures::cannot_read(words, &name, &why(&error)), Label::DocumentNameAFile)
    };
    let most = u64::from(DOCUMENT_MOST);
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(cannot)?;
    file.take(most.saturating_add(1)).read_to_end(&mut bytes).map_err(cannot)?;
    if u64::try_from(bytes.len()).map_or(true, |length| length > most) {
        return Err(not_attached(&name, &Unfit::TooLarge));
    }
    Ok(bytes)
}

fn not_attached(name: &str, unfit: &Unfit) -> Failure {
    let words = Words::english();
    let Refused { message, help } = unreadable::unfit(words, unfit);
    Failure::new(say::not_attached(words, name, &message), help)
}

fn file_name(path: &Path) -> Option<String> {
    let name = path.file_name()?.to_string_lossy();
    Some(name.chars().filter(|sign| !sign.is_control()).collect())
}

pub(super) fn belongs_to(words: &Words, document: &DocumentAttached) -> String {
    say::belongs_to(words, document.lot.as_ref(), document.prescription.as_ref())
}

/// The standing entry that already attaches this content to the same lot or prescription.
async fn same(
    holdings: &Holdings,
    holding: &HoldingName,
    document: &DocumentAttached,
) -> Result<Option<Attached>, Failure> {
    let attached = combclear_store::documents(holdings.journal().as_ref(), holding).await?;
    let found = holdings.read(holding, |folded| {
        attached.into_iter().find(|attached| {
            attached.document.content == document.content
                && attached.document.lot == document.lot
                && attached.document.prescription == document.prescription
                && folded.superseded_by(attached.entry.draft.id).is_none()
        })
    });
    Ok(found.await?.flatten())
}

/// For a document attached before: adds its content if that is missing.
async fn supply(
    holdings: &Holdings,
    holding: &HoldingName,
    known: &Attached,
    content: Content,
) -> Result<String, Failure> {
    let words = Words::english();
    let draft = &known.entry.draft;
    let to = belongs_to(words, &known.document);
    match (known.state, known.fault()) {
        (ContentState::Missing, _) => {
            holdings.attach(holding, draft.clone(), content, clock::now()).await?;
            Ok(say::supplied(words, &to, draft.on, &draft.recorded_by, draft.id))
        }
        (_, Some(fault)) => Err(Failure::from(fault)),
        (_, None) => Ok(say::attached_before(words, &to, draft.on, &draft.recorded_by, draft.id)),
    }
}
