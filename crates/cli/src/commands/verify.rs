//! `combclear verify`: checks that nothing was changed since it was recorded.

use std::path::Path;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::seal::NotACheckpoint;
use combclear_domain::journal::{Checkpoint, ClockSetBack, EntryId};
use combclear_store::{DocumentFault, Holdings, Journal, StoreError, Verified};
use combclear_wording::refusals::Refused;
use combclear_wording::terminal::{failures, verify as say};
use combclear_wording::unreadable;
use combclear_wording::{Label, Words, keeping};
use serde::Serialize;

use super::archive::{Unsound, prove, read_file};
use super::{print, print_json};
use crate::args::{Place, Verify};
use crate::failure::{Failure, Said, why};
use crate::{Outcome, place};

#[derive(Serialize)]
struct Report {
    holding: String,
    sound: bool,
    entries: Option<u64>,
    head: Option<String>,
    fault: Option<String>,
    first_bad_entry: Option<u64>,
    /// The entries recorded at an earlier time than the one before them.
    clock_set_back: Vec<ClockSetBack>,
    /// The missing or altered documents.
    documents: Vec<DocumentFault>,
    /// The entry of the verified archive.
    archive: Option<String>,
}

pub(crate) async fn run(at: &Place, verify: &Verify) -> Result<Outcome, Failure> {
    let words = Words::english();
    let (holding, since, verified, archive, set_back) = place::with_holding(at, async |holdings, holding| {
        let since = verify.since_checkpoint.as_ref().map(|file| checkpoint(file, &holding)).transpose()?;
        let verified = holdings.journal().verify(&holding, since.as_ref()).await?;
        let archive = match (&verify.archive, &verified) {
            (Some(file), Verified::Sound { .. } | Verified::Lacking { .. }) => {
                Some(archive(holdings, &holding, file).await?)
            }
            _ => None,
        };
        let set_back = match &verified {
            Verified::Sound { .. } | Verified::Lacking { .. } => {
                clock_set_back(holdings.journal().as_ref(), &holding).await?
            }
            // What cannot be trusted says nothing of a clock.
            Verified::Broken(_) | Verified::CheckpointMissed(_) => Vec::new(),
        };
        Ok((holding, since, verified, archive, set_back))
    })
    .await?;
    let mut report = Report {
        holding: holding.to_string(),
        sound: false,
        entries: None,
        head: None,
        fault: None,
        first_bad_entry: None,
        clock_set_back: set_back,
        documents: Vec::new(),
        archive: archive.as_ref().and_then(|proved| Some(proved.as_ref().ok()?.1.to_string())),
    };
    let said = match &verified {
        Verified::Sound { entries, head } => {
            report.sound = true;
            report.entries = Some(*entries);
            report.head = head.map(|head| head.to_string());
            let kept = head.map(|head| Checkpoint { holding: holding.clone(), entries: *entries, head });
            let kept = kept.map(|kept| format!("\n{}\n{kept}", words.label(Label::VerifyKeepCheckpoint)));
            let clock = clock(words, &report.clock_set_back);
            say::holds(words, &holding, *entries, since.is_some()) + &clock + &kept.unwrap_or_default()
        }
        Verified::Lacking { entries, head, documents } => {
            report.entries = Some(*entries);
            report.head = head.map(|head| head.to_string());
            report.fault = Some(say::documents_bad(words, documents.len()));
            report.documents.clone_from(documents);
            let mut lines = vec![say::lacking(words, &holding, *entries, documents.len())];
            for fault in documents {
                let Refused { message, help } = keeping::document(words, fault);
                lines.extend([message, format!("  {}", failures::help(words, &help))]);
            }
            lines.join("\n") + &clock(words, &report.clock_set_back)
        }
        Verified::Broken(broken) => {
            report.first_bad_entry = Some(broken.seq);
            report.fault = Some(unreadable::broken(words, broken));
            say::broken(words, &holding, &unreadable::broken(words, broken))
        }
        Verified::CheckpointMissed(missed) => {
            report.fault = Some(keeping::missed(words, missed));
            say::missed(words, &holding, &keeping::missed(words, missed))
        }
    };
    let said = match (&archive, &verify.archive) {
        (Some(Ok((of_archive, _))), _) => format!("{}\n{of_archive}", said.trim_end()),
        (Some(Err(what)), Some(path)) => {
            report.sound = false;
            let path = path.display().to_string();
            let fault = say::archive_fault(words, &path, what);
            report.fault = Some(match report.fault {
                None => fault,
                Some(first) => say::both(words, &first, &fault),
            });
            format!("{}\n{}", said.trim_end(), say::archive_broken(words, &path, what))
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

/// Entries read at a time.
const PAGE: u32 = 5_000;

/// The entries at which the clock was set back, in the order of the journal.
pub(crate) async fn clock_set_back(
    journal: &dyn Journal,
    holding: &HoldingName,
) -> Result<Vec<ClockSetBack>, StoreError> {
    let (mut found, mut after, mut before) = (Vec::new(), None, None);
    loop {
        let page = journal.kept(holding, after, PAGE).await?;
        let Some(last) = page.last() else { return Ok(found) };
        after = Some((last.seq, last.hash));
        for entry in &page {
            found.extend(before.and_then(|before| entry.clock_set_back(before)));
            before = Some(entry.recorded_at);
        }
    }
}

/// The entries at which the clock was set back, each on a line.
fn clock(words: &Words, set_back: &[ClockSetBack]) -> String {
    let line = |one: &ClockSetBack| say::clock_set_back(words, one.seq, one.recorded_at, one.before);
    set_back.iter().fold(String::new(), |said, one| said + "\n" + &line(one))
}

/// A verified archive: its description and the entry that names it. Otherwise, what is wrong with it.
type Described = Result<(String, EntryId), String>;

/// Checks an archive file against a sound journal.
async fn archive(holdings: &Holdings, holding: &HoldingName, path: &Path) -> Result<Described, Failure> {
    let file = match read_file(path, holding) {
        Ok(file) => file,
        Err(Unsound::NotRead(failure)) => return Err(failure),
        Err(Unsound::DoesNotHold(what)) => return Ok(Err(what)),
    };
    Ok(prove(holdings, holding, &file).await?.map(|(id, seq, body)| {
        let name = path.display().to_string();
        let said = say::archive_holds(Words::english(), &name, body.entries, body.contents, seq, id);
        (said, id)
    }))
}

/// Reads a checkpoint of this holding: the three lines alone, or within the output of `combclear verify`.
fn checkpoint(file: &Path, holding: &HoldingName) -> Result<Checkpoint, Failure> {
    let (words, name) = (Words::english(), file.display().to_string());
    let cannot = |why: &str| {
        Failure::new(say::cannot_read_checkpoint(words, &name, why), Label::CheckpointGiveThreeLines)
    };
    let text = std::fs::read_to_string(file).map_err(|error| cannot(&why(&error)))?;
    let begins: Vec<usize> = text
        .lines()
        .enumerate()
        .filter_map(|(number, line)| line.starts_with(FIRST_LINE).then_some(number))
        .collect();
    let three: Vec<&str> = match begins.as_slice() {
        [] => text.lines().collect(),
        [begin] => text.lines().skip(*begin).take(3).collect(),
        [..] => return Err(cannot(&Label::CheckpointSeveral.said())),
    };
    let found: Checkpoint = three
        .join("\n")
        .parse()
        .map_err(|error: NotACheckpoint| cannot(&unreadable::misread(words, &error.into())))?;
    if found.holding != *holding {
        let message = say::other_checkpoint(words, &name, &found.holding, holding);
        return Err(Failure::new(message, Label::NameTheRightFile));
    }
    Ok(found)
}

/// The beginning of a checkpoint.
const FIRST_LINE: &str = "combclear journal of ";
