//! `combclear archive`: moves entries that no law asks for any more into a sealed file, for good.
//!
//! The file is written, synced to disk and read back before anything is removed from the journal. If any of that fails, the
//! journal is unchanged.

mod file;
mod read_back;

use std::io::Write;
use std::path::Path;

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::archive::Header;
use combclear_domain::journal::event::Archived;
use combclear_domain::journal::places::Places;
use combclear_domain::journal::{Checkpoint, Content, Draft, Entry, Event, Hash};
use combclear_domain::questions::retention::{ArchivePlan, KeepUntil, KeptSet, LawNotRead};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_store::{ContentState, Holdings, Journal, RecordError, Verified};
use combclear_wording::colonies;
use combclear_wording::refusals::Refused;
use combclear_wording::retention::{ArchivePlanReport, held_back as why_held_back};
use combclear_wording::terminal::{archive as say, day, failures};
use combclear_wording::{Label, Words, unreadable};
use serde::Serialize;

pub(crate) use file::{Unsound, read as read_file};
pub(crate) use read_back::{prove, whole};

use super::{print, print_json};
use crate::args::{Archive, Place};
use crate::failure::Failure;
use crate::layout::Table;
use crate::{Outcome, clock, place};

const PAGE: u32 = 5_000;

/// The result.
struct Done {
    plan: ArchivePlan,
    /// Absent if nothing was moved.
    moved: Option<Moved>,
}

/// The result as JSON.
#[derive(Serialize)]
struct Report {
    plan: ArchivePlanReport,
    /// Absent if nothing was moved.
    moved: Option<Moved>,
}

#[derive(Serialize)]
struct Moved {
    /// The `archived` entry.
    entry: String,
    /// The hash of the file.
    file: Hash,
    /// The checkpoint of the journal with that entry.
    checkpoint: String,
}

pub(crate) async fn run(at: &Place, ask: &Archive) -> Result<Outcome, Failure> {
    let words = Words::english();
    let leaflets: &Leaflets = &place::leaflets(at)?;
    let laws = place::laws()?;
    let today = clock::today();
    if ask.through > today {
        return Err(Failure::new(say::after_today(words, ask.through, today), Label::ArchiveEarlierDay));
    }
    let not_read = if ask.law_checked.is_some() { LawNotRead::IsAnsweredFor } else { LawNotRead::HoldsBack };
    let done = place::with_holding(at, async |holdings, name| {
        let planned = holdings.read(&name, |holding| {
            (ArchivePlan::of(holding, leaflets, laws, ask.through, today, not_read), holding.tip())
        });
        let Some((plan, Some(tip))) = planned.await? else {
            return Err(Failure::new(failures::no_entry_under(words, &name), Label::JournalImportFirst));
        };
        let moved = match &plan.places {
            Some(places) if ask.move_for_good => {
                Some(move_out(holdings, &name, ask, &plan, places, tip).await?)
            }
            _ => None,
        };
        Ok(Done { plan, moved })
    })
    .await?;
    if ask.json {
        let plan = ArchivePlanReport::of(words, done.plan);
        print_json(&Report { plan, moved: done.moved })?;
    } else {
        print(said(words, &done, &ask.file).trim_end())?;
    }
    Ok(Outcome::Done)
}

/// Writes the file, reads it back, and only then moves the entries.
async fn move_out(
    holdings: &Holdings,
    holding: &HoldingName,
    ask: &Archive,
    plan: &ArchivePlan,
    places: &Places,
    tip: (u64, Hash),
) -> Result<Moved, Failure> {
    let words = Words::english();
    let journal = holdings.journal().as_ref();
    // Altered entries must not be archived as if they had been recorded that way.
    if !matches!(journal.verify(holding, None).await?, Verified::Sound { .. }) {
        return Err(Failure::new(say::journal_broken(words, holding), Label::ArchiveSeeWhatIsWrong));
    }
    let entries = entries_at(journal, holding, places).await?;
    let contents = contents_of(journal, holding, &plan.contents).await?;
    let checkpoint = Checkpoint { holding: holding.clone(), entries: tip.0, head: tip.1 };
    let header = Header {
        combclear_archive: combclear_domain::journal::archive::VERSION,
        holding: holding.clone(),
        entries: places.count(),
        contents: u64::try_from(contents.len()).unwrap_or(u64::MAX),
        checkpoint,
    };
    file::write(&ask.file, |out| {
        lines(out, &header, &entries, &contents).map_err(|error| file::cannot_write(&ask.file, &error))
    })?;
    let written = match file::read(&ask.file, holding) {
        Ok(written) => written,
        Err(Unsound::NotRead(failure)) => {
            return Err(file::discard(&ask.file, failure.and(Label::ArchiveNothingMoved)));
        }
        Err(Unsound::DoesNotHold(what)) => {
            let message = say::does_not_read_back(words, &ask.file.display().to_string(), &what);
            let failure = Failure::new(message, Label::FileLookTryAgain);
            return Err(file::discard(&ask.file, failure));
        }
    };
    let same = written.header == header
        && written.rests.iter().map(|rest| rest.seq).eq(places.iter())
        && written.contents.iter().map(Content::hash).eq(plan.contents.iter().copied());
    if !same {
        let message = say::not_as_written(words, &ask.file.display().to_string());
        return Err(file::discard(&ask.file, Failure::new(message, Label::FileLookTryAgain)));
    }
    let event = Event::from(Archived {
        through: ask.through,
        places: places.clone(),
        entries: header.entries,
        digest: written.digest(),
        file: written.hash,
        contents: header.contents,
        law_checked: ask.law_checked.clone(),
    });
    let draft = Draft::new(clock::new_id(), clock::today(), ask.by.clone(), event);
    let id = draft.id;
    match holdings.archive(holding, tip, draft, &plan.contents, clock::now()).await {
        Ok(entry) => Ok(moved(holding, &entry, written.hash)),
        Err(error) => match journal.entry(holding, id).await {
            // It was recorded although the call reported an error.
            Ok(Some(entry)) => Ok(moved(holding, &entry, written.hash)),
            Ok(None) => Err(file::discard(&ask.file, not_moved(error))),
            Err(_) => Err(not_moved(error).and(Label::ArchiveKeepTheFile)),
        },
    }
}

fn moved(holding: &HoldingName, entry: &Entry, file: Hash) -> Moved {
    let checkpoint = Checkpoint { holding: holding.clone(), entries: entry.seq, head: entry.hash };
    Moved { entry: entry.draft.id.to_string(), file, checkpoint: checkpoint.to_string() }
}

fn not_moved(error: RecordError) -> Failure {
    let words = Words::english();
    match error {
        RecordError::Busy => Failure::new(Label::ArchiveSomebodyWrote, Label::ArchiveWhenNobodyWrites),
        RecordError::Refused { refusal, .. } => {
            let Refused { message, help } = Refused::of(words, &refusal);
            Failure::new(say::nothing_moved(words, &message), help)
        }
        RecordError::NotNext(broken) => Failure::new(
            say::nothing_moved(words, &unreadable::broken(words, &broken)),
            Label::ArchiveSeeWhat,
        ),
        error => Failure::from(error).and(Label::ArchiveNothingMoved),
    }
}

async fn entries_at(
    journal: &dyn Journal,
    holding: &HoldingName,
    places: &Places,
) -> Result<Vec<Entry>, Failure> {
    let mut entries = Vec::new();
    let mut after = 0;
    loop {
        let page = journal.page(holding, after, PAGE).await?;
        let Some(last) = page.last() else { break };
        after = last.seq;
        entries.extend(page.into_iter().filter(|entry| places.contains(entry.seq)));
    }
    Ok(entries)
}

async fn contents_of(
    journal: &dyn Journal,
    holding: &HoldingName,
    wanted: &[Hash],
) -> Result<Vec<Content>, Failure> {
    let (contents, failing) = combclear_store::contents_of(journal, holding, wanted).await?;
    match failing.first() {
        None => Ok(contents),
        Some((hash, state)) => {
            let words = Words::english();
            let message = match state {
                ContentState::Missing => say::document_missing(words, *hash),
                ContentState::Kept | ContentState::Altered => say::document_altered(words, *hash),
            };
            Err(Failure::new(message, Label::ArchiveSeeWhatIsWrong))
        }
    }
}

fn lines(
    out: &mut dyn Write,
    header: &Header,
    entries: &[Entry],
    contents: &[Content],
) -> std::io::Result<()> {
    writeln!(out, "{}", header.to_json())?;
    for entry in entries {
        writeln!(out, "{}", entry.to_json())?;
    }
    for content in contents {
        writeln!(out, "{}", content.to_json())?;
    }
    Ok(())
}

fn said(words: &Words, done: &Done, file: &Path) -> String {
    let Done { plan, moved } = done;
    let ArchivePlan { holding, through, sets, held_back, places, contents } = plan;
    let file = file.display().to_string();
    let mut text = say::head(words, &day(words, *through), holding) + "\n";
    if !sets.is_empty() {
        let mut rows = Table::headed(
            words,
            [Label::Lots, Label::Entries, Label::ArchiveDocuments, Label::ArchiveLastDay],
        );
        let mut sets: Vec<(String, &KeptSet)> = sets.iter().map(|set| (lots(words, set), set)).collect();
        sort_naturally(&mut sets, |(lots, _)| lots);
        for (lots, set) in sets {
            rows.row([lots, set.entries.len().to_string(), documents(set), last_day(words, set)]);
        }
        text.push_str(&format!("\n{rows}\n\n"));
    }
    for held in held_back {
        let why = why_held_back(words, &held.because);
        text += &(say::held_back(words, &lots(words, &held.set), &why) + "\n");
    }
    let Some(places) = places else {
        return text + &say::nothing(words, *through);
    };
    let (entries, documents, places) = (places.count(), contents.len(), places.to_string());
    let lines = match moved {
        None => vec![
            say::would_move(words, entries, documents, &file, &places),
            words.label(Label::ArchiveNotMovedYet).to_owned(),
        ],
        Some(Moved { entry, file: hash, checkpoint }) => vec![
            say::moved(words, entries, documents, &file, &places, entry),
            words.label(Label::ArchiveKeepACopy).to_owned(),
            hash.to_string(),
            words.label(Label::VerifyKeepCheckpoint).to_owned(),
            checkpoint.clone(),
        ],
    };
    text + &lines.join("\n")
}

fn lots(words: &Words, set: &KeptSet) -> String {
    if set.lots.is_empty() {
        return words.label(Label::RetentionOwnPrescription).to_owned();
    }
    colonies::lots(words, set.lots.iter().map(|lot| &lot.lot))
}

fn documents(set: &KeptSet) -> String {
    use combclear_domain::journal::Kind;
    set.entries.iter().filter(|kept| kept.kind == Kind::DocumentAttached).count().to_string()
}

fn last_day(words: &Words, set: &KeptSet) -> String {
    let day: Option<Day> = match &set.keep {
        KeepUntil::Until { day, .. } | KeepUntil::AtLeast { day, .. } => Some(*day),
        KeepUntil::NotKnown { .. } => None,
    };
    day.map_or_else(|| words.label(Label::NotKnown).to_owned(), |day| day.to_string())
}
