//! `combclear record`: writes down what happened.
//!
//! The forms of the kinds of entry say what there is to fill in ([`commands`]). What is missing is asked for on a terminal
//! ([`ask`]), and named all at once elsewhere. The entries are shown in as few lines as they can be said, and recorded
//! together or not at all.

mod ask;
pub(crate) mod commands;
mod day;
mod leaflet;

use std::io::IsTerminal;

use combclear_domain::basics::words::{HoldingName, Person};
use combclear_domain::facts::holding::{Holding, Record as Entry};
use combclear_domain::journal::event::Confirmed;
use combclear_domain::journal::event::{Event, StrikeOut};
use combclear_domain::journal::{Draft, Kind};
use combclear_domain::recording::{
    Changes, FilledIn, SaysNothing, Wrong, WrongWith, copied, corrected, person_named_last, refusals,
};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_domain::{Day, TimeOfDay};
use combclear_store::{Holdings, RecordError};
use combclear_wording::recording::Preview;
use combclear_wording::refusals::Refused;
use combclear_wording::terminal::record as say;
use combclear_wording::unreadable::misread;
use combclear_wording::{Label, Words, paper, recording};

use crate::args::Place;
use crate::commands::print;
use crate::failure::{Failure, Said};
use crate::place::{leaflets, with_holding, with_holdings};
use crate::{Outcome, clock};
pub(crate) use commands::{Begin, Record, command_of};
use commands::{What, option_of};
pub(crate) use day::beside_today;

pub(crate) async fn run(place: &Place, record: &Record) -> Result<Outcome, Failure> {
    let leaflets = leaflets(place)?;
    with_holding(place, async |holdings, name| {
        let Some(holding) = holdings.snapshot(&name).await? else {
            return Err(Failure::new(Label::JournalIsEmpty, Label::JournalTakeOneIn));
        };
        match agreed(record, &holding, &leaflets)? {
            Some(ready) => write(holdings, &name, ready).await,
            None => Ok(Outcome::InPart),
        }
    })
    .await
}

/// Begins a holding with its first entry.
pub(crate) async fn begin(place: &Place, begin: &Begin) -> Result<Outcome, Failure> {
    let (leaflets, words) = (leaflets(place)?, Words::english());
    with_holdings(place, async |holdings| {
        let name = &begin.holding;
        let exists = || Failure::new(say::exists(words, name), Label::BeginExistsHelp);
        if holdings.journal().holdings().await?.contains(name) {
            return Err(exists());
        }
        let mut first = begin.first.clone();
        if first.by.is_none() {
            // Nobody was named before the keeper.
            first.by = first.keeper();
        }
        let Some(ready) = agreed(&first, &Holding::new(name.clone()), &leaflets)? else {
            return Ok(Outcome::InPart);
        };
        for draft in ready.drafts {
            match holdings.begin(name, draft, clock::now()).await {
                Err(RecordError::BegunBefore { .. }) => return Err(exists()),
                begun => begun?,
            };
        }
        print(&say::begun(words, name))?;
        Ok(Outcome::Done)
    })
    .await
}

/// The entries to record, once nothing is missing and somebody has agreed. None if somebody has not.
fn agreed(record: &Record, holding: &Holding, leaflets: &Leaflets) -> Result<Option<Ready>, Failure> {
    clock::doubt(holding);
    let mut record = record.clone();
    let asks = can_ask();
    let open = if asks { leaflet::ask(&mut record, holding, leaflets)? } else { Vec::new() };
    let ready = loop {
        match prepare(&record, holding, leaflets) {
            Ok(ready) => break ready,
            Err(NotReady::Wrong(kind, wrong)) if asks && wrong.iter().all(is_asked_for) => {
                ask::for_missing(&mut record, kind, &wrong, holding)?;
            }
            Err(not_ready) => return Err(not_ready.into()),
        }
    };
    if record.yes && !record.again && !ready.twice.is_empty() {
        return Err(Failure::new(ready.twice.join("; "), Label::RecordTwiceHelp));
    }
    preview(&ready)?;
    if record.yes || ask::may_record(asks)? {
        if !open.is_empty() {
            print(&say::still_open(Words::english(), &open.join(", ")))?;
        }
        return Ok(Some(ready));
    }
    print(&Label::RecordNothingRecorded.said())?;
    Ok(None)
}

/// Whether somebody can be asked: both ends are a terminal.
fn can_ask() -> bool {
    std::io::stdin().is_terminal() && std::io::stdout().is_terminal()
}

/// Whether a fault goes away once somebody is asked.
fn is_asked_for(wrong: &Wrong) -> bool {
    match wrong.with {
        WrongWith::Missing | WrongWith::SeveralLots { .. } | WrongWith::NobodyYet => true,
        WrongWith::NoSuchField
        | WrongWith::Misread(_)
        | WrongWith::OneOnly { .. }
        | WrongWith::RangeIsBackwards { .. }
        | WrongWith::RangeTooLong { .. }
        | WrongWith::RangeEndNotOnRecord { .. }
        | WrongWith::NobodyInRange { .. }
        | WrongWith::NobodyThere(_)
        | WrongWith::NoLotInStock
        | WrongWith::NoSuchEntry { .. }
        | WrongWith::NothingInside { .. }
        | WrongWith::SeveralInside { .. } => false,
    }
}

/// Entries that can be recorded, with what is shown before.
struct Ready {
    drafts: Vec<Draft>,
    lines: Vec<String>,
    /// What is on record already, so that it is asked about.
    twice: Vec<String>,
}

/// Why entries cannot be recorded yet.
enum NotReady {
    Wrong(Kind, Vec<Wrong>),
    Failed(Failure),
}

impl From<NotReady> for Failure {
    fn from(not_ready: NotReady) -> Failure {
        let (kind, wrong) = match not_ready {
            NotReady::Failed(failure) => return failure,
            NotReady::Wrong(kind, wrong) => (kind, wrong),
        };
        let words = Words::english();
        let said = wrong.iter().map(|wrong| {
            let Refused { message, help } = recording::wrong(words, kind, wrong);
            say::fault(words, &option_of(&wrong.key), &message, &help)
        });
        listing(&said.collect::<Vec<_>>())
    }
}

fn listing(faults: &[String]) -> Failure {
    let words = Words::english();
    Failure::listing(say::faults(words, faults.len()), None, faults.join("\n"))
}

impl From<Failure> for NotReady {
    fn from(failure: Failure) -> NotReady {
        NotReady::Failed(failure)
    }
}

fn prepare(record: &Record, holding: &Holding, leaflets: &Leaflets) -> Result<Ready, NotReady> {
    let words = Words::english();
    let day = |text: &Option<String>| {
        let day = text.as_deref().map(|text| day::day(text, clock::today())).transpose();
        day.map_err(|why| NotReady::Failed(Failure::new(why, Label::RecordDayHelp)))
    };
    let (on, written_on) = (day(&record.on)?, day(&record.written_on)?);
    let copied_from = record.copied_from.clone();
    let at = record.at.as_deref().map(str::parse::<TimeOfDay>).transpose().map_err(|fault| {
        NotReady::Failed(Failure::new(misread(words, &fault.into()), Label::RecordTimeHelp))
    })?;
    let by = record.by.as_deref().map(str::parse::<Person>).transpose().map_err(|fault| {
        NotReady::Failed(Failure::new(misread(words, &fault.into()), Label::RecordByHelp))
    })?;
    let mut twice = Vec::new();
    let (drafts, mut lines) = match &record.what {
        What::Form { kind, texts, chosen } => {
            let filled = FilledIn {
                kind: *kind,
                on: on.unwrap_or_else(clock::today),
                at,
                recorded_by: by,
                copied_from,
                written_on,
                texts: texts.clone(),
                chosen: chosen.clone(),
            };
            let written = filled.write(holding, leaflets).map_err(|wrong| NotReady::Wrong(*kind, wrong))?;
            let confirms: Vec<Confirmed> = record.confirms.iter().cloned().map(Confirmed::Value).collect();
            let written = written.confirming(&confirms).map_err(|SaysNothing| {
                Failure::new(Label::RecordLeafletEmpty, Label::RecordLeafletEmptyHelp)
            })?;
            let Preview { mut lines, doubts, twice: again } =
                Preview::of(words, holding, leaflets, &written, clock::today());
            lines.extend(doubts);
            twice = again;
            (written.drafts(clock::new_id), lines)
        }
        What::Correction { number, changes, reason } => {
            let old = entry(holding, number)?;
            let reason = stated(reason.as_deref())?;
            let texts = changes.clone();
            let changes = Changes { on, at, recorded_by: by, copied_from, written_on, texts };
            let draft = corrected(holding, old, &changes, reason, clock::new_id())
                .map_err(|wrong| NotReady::Wrong(old.event.kind(), wrong))?;
            let mut lines = vec![
                say::was(words, old.seq, &one_line(holding, old.on, &old.event)),
                say::is_now(words, &one_line(holding, draft.on, &draft.event)),
            ];
            lines.extend(draft.copied_from.as_ref().map(|copied| paper::copied_from(words, copied)));
            (vec![draft], lines)
        }
        What::StrikeOut { number, reason } => {
            let old = entry(holding, number)?;
            let reason = stated(reason.as_deref())?;
            let by = by.or_else(|| person_named_last(holding).cloned());
            let Some(by) = by else {
                return Err(Failure::new(Label::RecordingNobodyYet, Label::RecordingNobodyYetHelp).into());
            };
            let copied_from = copied(copied_from, written_on)
                .map_err(|wrong| NotReady::Wrong(Kind::StrikeOut, vec![wrong]))?;
            let event = Event::from(StrikeOut {});
            let draft = Draft::new(clock::new_id(), on.unwrap_or(old.on), by, event);
            let draft = Draft { copied_from: copied_from.map(Box::new), ..draft.correcting(old.id, reason) };
            let mut lines = vec![say::struck_out(words, old.seq, &one_line(holding, old.on, &old.event))];
            lines.extend(draft.copied_from.as_ref().map(|copied| paper::copied_from(words, copied)));
            (vec![draft], lines)
        }
    };
    let refused = refusals(holding, &drafts, clock::now());
    if refused.is_empty() {
        lines.extend(twice.iter().cloned());
        return Ok(Ready { drafts, lines, twice });
    }
    let refused = recording::refused(words, &refused).into_iter();
    let said: Vec<String> =
        refused.map(|Refused { message, help }| say::fault(words, "", &message, &help)).collect();
    Err(listing(&said).into())
}

fn one_line(holding: &Holding, on: Day, event: &Event) -> String {
    recording::in_lines(Words::english(), holding, on, std::slice::from_ref(event)).join("; ")
}

/// The entry with a number, or an id.
fn entry<'h>(holding: &'h Holding, text: &str) -> Result<&'h Entry, Failure> {
    let by_number = text.parse().ok().and_then(|number| holding.entry_numbered(number));
    let found = by_number.or_else(|| text.parse().ok().and_then(|id| holding.entry(id)));
    found.map(AsRef::as_ref).ok_or_else(|| {
        let last = holding.tip().map_or(0, |(last, _)| last);
        let message = say::no_entry(Words::english(), text, last);
        Failure::new(message, Label::RecordingNoEntryHelp)
    })
}

fn stated(reason: Option<&str>) -> Result<&str, Failure> {
    reason
        .filter(|reason| !reason.trim().is_empty())
        .ok_or_else(|| Failure::new(Label::RecordNoReason, Label::RecordNoReasonHelp))
}

fn preview(ready: &Ready) -> Result<(), Failure> {
    print(&ready.lines.join("\n"))
}

async fn write(holdings: &Holdings, name: &HoldingName, ready: Ready) -> Result<Outcome, Failure> {
    let recorded = holdings.record(name, ready.drafts, clock::now()).await?;
    let numbers: Vec<u64> = recorded.iter().map(|recorded| recorded.entry().seq).collect();
    if let (Some(first), Some(last)) = (numbers.first(), numbers.last()) {
        print(&say::recorded(Words::english(), numbers.len(), *first, *last))?;
    }
    Ok(Outcome::Done)
}
