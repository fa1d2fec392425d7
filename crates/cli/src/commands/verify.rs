//! `combclear verify`: that nothing was changed since it was recorded.

use std::path::Path;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::seal::NotACheckpoint;
use combclear_domain::journal::{Checkpoint, EntryId};
use combclear_store::{DocumentFault, Holdings, Verified};
use serde::Serialize;

use super::archive::Unsound;
use super::{counted, print, print_json};
use crate::args::{Place, Verify};
use crate::failure::{Failure, why};
use crate::{Outcome, place};

#[derive(Serialize)]
struct Report {
    holding: String,
    sound: bool,
    entries: Option<u64>,
    head: Option<String>,
    fault: Option<String>,
    first_bad_entry: Option<u64>,
    /// Those that are missing or altered.
    documents: Vec<DocumentFault>,
    /// The entry that tells of the archive asked about, which holds.
    archive: Option<String>,
}

pub(crate) async fn run(at: &Place, verify: &Verify) -> Result<Outcome, Failure> {
    let (holding, since, verified, archive) = place::with_holding(at, async |holdings, holding| {
        let since = verify.since.as_ref().map(|file| checkpoint(file, &holding)).transpose()?;
        let verified = holdings.journal().verify(&holding, since.as_ref()).await?;
        let archive = match (&verify.archive, &verified) {
            (Some(file), Verified::Sound { .. } | Verified::Lacking { .. }) => {
                Some(archive(holdings, &holding, file).await?)
            }
            _ => None,
        };
        Ok((holding, since, verified, archive))
    })
    .await?;
    let mut report = Report {
        holding: holding.to_string(),
        sound: false,
        entries: None,
        head: None,
        fault: None,
        first_bad_entry: None,
        documents: Vec::new(),
        archive: archive.as_ref().and_then(|proved| Some(proved.as_ref().ok()?.1.to_string())),
    };
    let said = match &verified {
        Verified::Sound { entries, head } => {
            report.sound = true;
            report.entries = Some(*entries);
            report.head = head.map(|head| head.to_string());
            let kept = head.map(|head| Checkpoint { holding: holding.clone(), entries: *entries, head });
            let kept =
                kept.map(|kept| format!("\nKeep these three lines elsewhere as a checkpoint:\n{kept}"));
            let before = if since.is_some() { ", and it agrees with the checkpoint" } else { "" };
            let entries = counted(*entries, "entry", "entries");
            format!(
                "The journal of {holding} holds: {entries}, each as it was recorded{before}.{}",
                kept.unwrap_or_default()
            )
        }
        Verified::Lacking { entries, head, documents } => {
            report.entries = Some(*entries);
            report.head = head.map(|head| head.to_string());
            let bad = counted(documents.len(), "document is", "documents are");
            report.fault = Some(format!("{bad} missing or altered"));
            report.documents.clone_from(documents);
            let listed: Vec<String> =
                documents.iter().map(|fault| format!("{fault}\n  help: {}", fault.help())).collect();
            let entries = counted(*entries, "entry", "entries");
            format!(
                "The entries of {holding} hold: {entries}, each as it was recorded. But {bad} NOT THERE as attached:\n{}",
                listed.join("\n")
            )
        }
        Verified::Broken(broken) => {
            report.first_bad_entry = Some(broken.seq);
            report.fault = Some(broken.to_string());
            format!("The journal of {holding} DOES NOT HOLD. First bad one: {broken}")
        }
        Verified::CheckpointMissed(missed) => {
            report.fault = Some(missed.to_string());
            format!("The journal of {holding} DOES NOT HOLD against the checkpoint: {missed}")
        }
    };
    let said = match (&archive, &verify.archive) {
        (Some(Ok((of_archive, _))), _) => format!("{}\n{of_archive}", said.trim_end()),
        (Some(Err(what)), Some(path)) => {
            report.sound = false;
            let fault = format!("the archive `{}` does not hold: {what}", path.display());
            let said = format!("{}\nThe archive `{}` DOES NOT HOLD: {what}", said.trim_end(), path.display());
            report.fault =
                Some(report.fault.map_or_else(|| fault.clone(), |first| format!("{first}; {fault}")));
            said
        }
        _ => said,
    };
    if verify.json {
        print_json(&report)?;
    } else {
        print(said.trim_end())?;
    }
    Ok(if report.sound { Outcome::Done } else { Outcome::No })
}

/// An archive file that holds: what is said of it, and the entry that tells of it; or what does not hold.
type Proved = Result<(String, EntryId), String>;

/// Proves an archive file with a journal that holds: it is the very file that an entry names, and its entries are those of
/// which the rest stays in the journal.
async fn archive(holdings: &Holdings, holding: &HoldingName, path: &Path) -> Result<Proved, Failure> {
    let file = match super::archive::read_file(path, holding) {
        Ok(file) => file,
        Err(Unsound::NotRead(failure)) => return Err(failure),
        Err(Unsound::DoesNotHold(what)) => return Ok(Err(what)),
    };
    let told = holdings.read(holding, |folded| {
        let archives = folded.archives();
        archives.into_iter().map(|(record, body)| (record.id, record.seq, body.clone())).collect::<Vec<_>>()
    });
    let told = told.await?.unwrap_or_default();
    let Some((id, seq, body)) = told.iter().find(|(_, _, body)| body.file == file.hash) else {
        let near = told.iter().find(|(_, _, body)| body.digest == file.digest());
        return Ok(Err(near.map_or_else(
            || format!("no entry of the journal of {holding} tells of it"),
            |(id, seq, _)| format!("entry {seq} ({id}) tells of these entries in another file"),
        )));
    };
    let contents = u64::try_from(file.contents.len()).unwrap_or(u64::MAX);
    if body.digest != file.digest() || body.contents != contents {
        return Ok(Err(format!("its entries are not those that entry {seq} ({id}) tells of")));
    }
    let entries = counted(body.entries, "entry", "entries");
    let documents = counted(contents, "document", "documents");
    let said = format!(
        "The archive {} holds: {entries} and {documents}, as entry {seq} ({id}) tells.",
        path.display()
    );
    Ok(Ok((said, *id)))
}

/// Reads a checkpoint of this holding: the three lines alone, or all that `combclear verify` printed with them.
fn checkpoint(file: &Path, holding: &HoldingName) -> Result<Checkpoint, Failure> {
    let help = "give the three lines that `combclear verify` printed";
    let cannot =
        |why: &str| Failure::new(format!("cannot read the checkpoint `{}`: {why}", file.display()), help);
    let text = std::fs::read_to_string(file).map_err(|error| cannot(&why(&error)))?;
    let begins: Vec<usize> = text
        .lines()
        .enumerate()
        .filter_map(|(number, line)| line.starts_with(FIRST_LINE).then_some(number))
        .collect();
    let three: Vec<&str> = match begins.as_slice() {
        [] => text.lines().collect(),
        [begin] => text.lines().skip(*begin).take(3).collect(),
        [..] => return Err(cannot("it holds several; keep each in a file of its own")),
    };
    let found: Checkpoint =
        three.join("\n").parse().map_err(|error: NotACheckpoint| cannot(&error.to_string()))?;
    if found.holding != *holding {
        let message =
            format!("`{}` is a checkpoint of `{}`, not of `{holding}`", file.display(), found.holding);
        return Err(Failure::new(message, "name the right file, or the holding with --holding"));
    }
    Ok(found)
}

/// How a checkpoint begins.
const FIRST_LINE: &str = "combclear journal of ";
