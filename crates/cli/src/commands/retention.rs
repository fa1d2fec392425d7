//! `combclear retention`: until which day the medicine records must be kept, and what could go.

use combclear_domain::questions::retention;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::Words;
use combclear_wording::retention::{DecidedBy, KeepUntil, KeptStory, RetentionReport};

use super::{counted, print, print_json, table};
use crate::args::{Place, Retention};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, ask: &Retention) -> Result<Outcome, Failure> {
    let leaflets: &Leaflets = &place::leaflets(at)?;
    let laws = place::laws()?;
    let on = ask.on.unwrap_or_else(clock::today);
    let report = place::with_holding(at, async |holdings, name| {
        let read = |holding: &_| {
            let answer = retention::Retention::of(holding, leaflets, laws, on);
            RetentionReport::of(Words::english(), &answer)
        };
        let report = holdings.read(&name, read).await?;
        report.ok_or_else(|| {
            Failure::new(
                format!("no entry is recorded under `{name}`"),
                "take a journal in first: combclear import FILE",
            )
        })
    })
    .await?;
    if ask.json {
        print_json(&report)?;
    } else {
        print(&written(&report))?;
    }
    Ok(Outcome::Done)
}

fn written(report: &RetentionReport) -> String {
    let RetentionReport { holding, on, .. } = report;
    let mut text =
        format!("How long the medicine records must be kept. Holding {holding}, {on} ({})\n", on.weekday());
    let mut rows = table(["lots", "entries", "last used or disposed of", "keep until", "why"]);
    for story in &report.stories {
        rows.add_row([
            lots(story),
            story.entries.len().to_string(),
            last_use(story),
            until(&story.keep),
            why(&story.keep),
        ]);
    }
    text.push_str(&format!("\n{}\n\n", rows.trim_fmt()));
    let could: Vec<String> = report.stories.iter().filter(|story| story.could_go).map(lots).collect();
    let line = match could.as_slice() {
        [] => format!("Nothing could go on {on}."),
        some => format!("{} could go on {on}: {}.", counted_stories(some.len()), some.join("; ")),
    };
    text.push_str(&line);
    text.push_str(" Nothing goes by itself. The day given is the last on which the records must be kept.\n");
    let sources = sources(report);
    if !sources.is_empty() {
        text.push_str(&format!("Sources:\n{}\n", sources.join("\n")));
    }
    text.push_str(&report.notice);
    text
}

fn counted_stories(number: usize) -> String {
    counted(u64::try_from(number).unwrap_or(u64::MAX), "story", "stories")
}

fn lots(story: &KeptStory) -> String {
    if story.lots.is_empty() {
        return "(a prescription of its own)".to_owned();
    }
    story.lots.iter().map(|lot| lot.lot.as_str()).collect::<Vec<_>>().join(", ")
}

fn last_use(story: &KeptStory) -> String {
    let last = story.lots.iter().filter_map(|lot| lot.last_use_or_disposal).max();
    last.map_or_else(|| "-".to_owned(), |day| day.to_string())
}

fn until(keep: &KeepUntil) -> String {
    match keep {
        KeepUntil::Until { day, .. } => day.to_string(),
        KeepUntil::AtLeast { day, .. } => format!("at least {day}"),
        KeepUntil::NotKnown { .. } => "not known: keep it".to_owned(),
    }
}

fn why(keep: &KeepUntil) -> String {
    let said = |by: &DecidedBy| format!("{} ({})", by.statement, by.confidence.as_str().replace('_', " "));
    match keep {
        KeepUntil::Until { decided_by, .. } => said(decided_by),
        KeepUntil::AtLeast { decided_by, because, .. } => {
            format!("{}\n{}", said(decided_by), because.join("\n"))
        }
        KeepUntil::NotKnown { missing } => missing.join("\n"),
    }
}

/// Where the rules that decided were read, each once.
fn sources(report: &RetentionReport) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for story in &report.stories {
        let (KeepUntil::Until { decided_by, .. } | KeepUntil::AtLeast { decided_by, .. }) = &story.keep
        else {
            continue;
        };
        for source in &decided_by.sources {
            let line = format!("  {}: {source}", decided_by.jurisdiction);
            if !lines.contains(&line) {
                lines.push(line);
            }
        }
    }
    lines
}
