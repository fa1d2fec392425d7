//! `combclear archive`: moves what the law asks nothing of any more into a sealed file, for good.
//!
//! The file is written, brought to the disk and read back before anything is taken out of the journal. If anything fails
//! before, the journal is as it was.

mod file;

use std::io::Write;
use std::path::Path;

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::archive::Header;
use combclear_domain::journal::event::Archived;
use combclear_domain::journal::places::Places;
use combclear_domain::journal::{Checkpoint, Content, Draft, Entry, Event, Hash};
use combclear_domain::questions::retention::{ArchivePlan, KeepUntil, KeptStory};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_store::{Holdings, Journal, RecordError, Verified};
use combclear_wording::Words;
use combclear_wording::refusals::Refused;
use combclear_wording::retention::{ArchivePlanReport, held_back as why_held_back};
use serde::Serialize;

pub(crate) use file::{Unsound, read as read_file};

use super::{counted, print, print_json, table};
use crate::args::{Archive, Place};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

const PAGE: u32 = 5_000;

/// What came of it.
struct Done {
    plan: ArchivePlan,
    /// Absent if nothing was moved.
    moved: Option<Moved>,
}

/// The same for programs.
#[derive(Serialize)]
struct Report {
    plan: ArchivePlanReport,
    /// Absent if nothing was moved.
    moved: Option<Moved>,
}

#[derive(Serialize)]
struct Moved {
    /// The entry that says so.
    entry: String,
    /// The hash of the file.
    file: Hash,
    /// The journal with that entry.
    checkpoint: String,
}

pub(crate) async fn run(at: &Place, ask: &Archive) -> Result<Outcome, Failure> {
    let leaflets: &Leaflets = &place::leaflets(at)?;
    let laws = place::laws()?;
    let today = clock::today();
    if ask.through > today {
        let message = format!("{} lies after today, {today}", ask.through);
        return Err(Failure::new(message, "name today or an earlier day with --through"));
    }
    let done = place::with_holding(at, async |holdings, name| {
        let planned = holdings.read(&name, |holding| {
            (ArchivePlan::of(holding, leaflets, laws, ask.through, today), holding.tip())
        });
        let Some((plan, Some(tip))) = planned.await? else {
            let help = "take a journal in first: combclear import FILE";
            return Err(Failure::new(format!("no entry is recorded under `{name}`"), help));
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
        let plan = ArchivePlanReport::of(Words::english(), done.plan);
        print_json(&Report { plan, moved: done.moved })?;
    } else {
        print(said(Words::english(), &done, &ask.file).trim_end())?;
    }
    Ok(Outcome::Done)
}

/// Writes the file, reads it back, and only then moves.
async fn move_out(
    holdings: &Holdings,
    holding: &HoldingName,
    ask: &Archive,
    plan: &ArchivePlan,
    places: &Places,
    tip: (u64, Hash),
) -> Result<Moved, Failure> {
    let journal = holdings.journal().as_ref();
    // What was changed must not be moved as if it had been recorded so.
    if !matches!(journal.verify(holding, None).await?, Verified::Sound { .. }) {
        let message = format!("nothing was moved: the journal of {holding} does not hold");
        return Err(Failure::new(message, "see what is wrong with it: combclear verify"));
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
            return Err(file::discard(&ask.file, failure.and("nothing was moved")));
        }
        Err(Unsound::DoesNotHold(what)) => {
            let message = format!("nothing was moved: `{}` does not read back: {what}", ask.file.display());
            let failure = Failure::new(message, "look where it goes, then try again");
            return Err(file::discard(&ask.file, failure));
        }
    };
    let same = written.header == header
        && written.rests.iter().map(|rest| rest.seq).eq(places.iter())
        && written.contents == plan.contents;
    if !same {
        let message =
            format!("nothing was moved: `{}` does not read back as it was written", ask.file.display());
        return Err(file::discard(&ask.file, Failure::new(message, "look where it goes, then try again")));
    }
    let event = Event::from(Archived {
        through: ask.through,
        places: places.clone(),
        entries: header.entries,
        digest: written.digest(),
        file: written.hash,
        contents: header.contents,
    });
    let draft = Draft::new(clock::new_id(), clock::today(), ask.by.clone(), event);
    let id = draft.id;
    match holdings.archive(holding, tip, draft, &plan.contents, clock::now()).await {
        Ok(entry) => Ok(moved(holding, &entry, written.hash)),
        Err(error) => match journal.entry(holding, id).await {
            // It was written as a whole although its writer was not told.
            Ok(Some(entry)) => Ok(moved(holding, &entry, written.hash)),
            Ok(None) => Err(file::discard(&ask.file, not_moved(error))),
            Err(_) => Err(not_moved(error).and(
                "whether it was moved cannot be read: keep the file until `combclear verify --archive` tells",
            )),
        },
    }
}

fn moved(holding: &HoldingName, entry: &Entry, file: Hash) -> Moved {
    let checkpoint = Checkpoint { holding: holding.clone(), entries: entry.seq, head: entry.hash };
    Moved { entry: entry.draft.id.to_string(), file, checkpoint: checkpoint.to_string() }
}

fn not_moved(error: RecordError) -> Failure {
    match error {
        RecordError::Busy => Failure::new(
            "nothing was moved: somebody recorded something meanwhile",
            "try again when nobody else writes",
        ),
        RecordError::Refused { refusal, .. } => {
            let Refused { message, help } = Refused::of(Words::english(), &refusal);
            Failure::new(format!("nothing was moved: {message}"), help)
        }
        RecordError::NotNext(broken) => {
            Failure::new(format!("nothing was moved: {broken}"), "see what is wrong: combclear verify")
        }
        error => Failure::from(error).and("nothing was moved"),
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
            let message = format!("nothing was moved: document {hash} is {}", state.as_str());
            Err(Failure::new(message, "see what is wrong with it: combclear verify"))
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
    let ArchivePlan { holding, through, stories, held_back, places, contents } = plan;
    let mut text =
        format!("What need not be kept after {through} ({}). Holding {holding}\n", through.weekday());
    if !stories.is_empty() {
        let mut rows = table(["lots", "entries", "documents", "last day to keep"]);
        for story in stories {
            rows.add_row([lots(story), story.entries.len().to_string(), documents(story), last_day(story)]);
        }
        text.push_str(&format!("\n{}\n\n", rows.trim_fmt()));
    }
    for held in held_back {
        text.push_str(&format!(
            "Held back: {}: {}.\n",
            lots(&held.story),
            why_held_back(words, &held.because)
        ));
    }
    let Some(places) = places else {
        text.push_str(&format!("Nothing could go by {through}; no file was made.\n"));
        return text;
    };
    let entries = counted(places.count(), "entry", "entries");
    let documents = counted(u64::try_from(contents.len()).unwrap_or(u64::MAX), "document", "documents");
    match moved {
        None => text.push_str(&format!(
            "{entries} and {documents} would go into {}: places {places}.\n\
             NOTHING WAS MOVED YET. It cannot be taken back: afterwards the file alone holds what these entries say, \
             and the journal only their places, ids, days, kinds and hashes. Choose a place that lasts as long as you \
             may be asked, keep a copy of the file elsewhere, and take an export before. Then say --move-for-good.\n",
            file.display()
        )),
        Some(Moved { entry, file: hash, checkpoint }) => text.push_str(&format!(
            "{entries} and {documents} were moved into {}: places {places}. Entry {entry} says so.\n\
             Keep a copy of the file elsewhere; prove it with `combclear verify --archive`. Its SHA-256 hash:\n{hash}\n\
             Keep these three lines elsewhere as a checkpoint:\n{checkpoint}",
            file.display()
        )),
    }
    text
}

fn lots(story: &KeptStory) -> String {
    if story.lots.is_empty() {
        return "(a prescription of its own)".to_owned();
    }
    story.lots.iter().map(|lot| lot.lot.as_str()).collect::<Vec<_>>().join(", ")
}

fn documents(story: &KeptStory) -> String {
    use combclear_domain::journal::Kind;
    story.entries.iter().filter(|kept| kept.kind == Kind::DocumentAttached).count().to_string()
}

fn last_day(story: &KeptStory) -> String {
    let day: Option<Day> = match &story.keep {
        KeepUntil::Until { day, .. } | KeepUntil::AtLeast { day, .. } => Some(*day),
        KeepUntil::NotKnown { .. } => None,
    };
    day.map_or_else(|| "not known".to_owned(), |day| day.to_string())
}
