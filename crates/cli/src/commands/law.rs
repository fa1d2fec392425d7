//! `combclear law`: what the law asks of a medicine record.

use combclear_domain::basics::words::Jurisdiction;
use combclear_domain::rules::law::{KeepingForce, LawStanding, Occasion};
use combclear_wording::Words;
use combclear_wording::law::{self, LawBasis, LawField, LawReport};
use serde::Serialize;

use super::{counted, print, print_json, table};
use crate::args::Law;
use crate::failure::Failure;
use crate::{Outcome, clock, place};

/// A jurisdiction in the list for programs.
#[derive(Serialize)]
struct Item<'a> {
    jurisdiction: &'a str,
    title: &'a str,
    includes: Vec<&'a str>,
}

pub(crate) fn run(ask: &Law) -> Result<Outcome, Failure> {
    let laws = place::laws()?;
    let Some(jurisdiction) = &ask.jurisdiction else {
        let items = laws.iter().map(|law| Item {
            jurisdiction: law.jurisdiction.as_str(),
            title: &law.title,
            includes: law.includes.iter().map(Jurisdiction::as_str).collect(),
        });
        let items: Vec<Item<'_>> = items.collect();
        if ask.json {
            print_json(&items)?;
        } else {
            print(&list(&items))?;
        }
        return Ok(Outcome::Done);
    };
    let on = ask.on.unwrap_or_else(clock::today);
    let profile = laws.profile(jurisdiction, on).ok_or_else(|| {
        let help = format!("the laws built in are: {}", laws.listed());
        Failure::new(format!("there is no law of `{jurisdiction}`"), help)
    })?;
    let report = LawReport::of(Words::english(), &profile);
    if ask.json {
        print_json(&report)?;
    } else {
        print(&one(Words::english(), &report))?;
    }
    Ok(Outcome::Done)
}

fn list(items: &[Item<'_>]) -> String {
    let mut rows = table(["where", "what", "with the rules of"]);
    for item in items {
        rows.add_row([item.jurisdiction.to_owned(), item.title.to_owned(), item.includes.join(", ")]);
    }
    format!("{}\nA member state of the Union that is not listed has the rules of eu.", rows.trim_fmt())
}

fn one(words: &Words, report: &LawReport) -> String {
    let LawReport { jurisdiction, on, .. } = report;
    let mut text = format!("What the law asks in {jurisdiction} on {on} ({})\n", on.weekday());
    for part in &report.parts {
        let line = format!("  {}: {}: {}\n", part.jurisdiction, part.title, standing(part.standing));
        text.push_str(&line);
    }
    if report.standing != LawStanding::InForce {
        text.push_str(
            "No rule known here is in force on that day. That is not to say that nothing was asked.\n",
        );
    }
    for occasion in Occasion::ALL {
        let fields: Vec<&LawField> =
            report.fields.iter().filter(|field| field.occasion == *occasion).collect();
        if fields.is_empty() {
            continue;
        }
        let mut rows =
            table([law::occasion(words, *occasion).as_str(), "need", "where", "how sure", "since", "source"]);
        for field in fields {
            for (index, by) in field.by.iter().enumerate() {
                let first = index == 0;
                let note = by.basis.note.as_ref().map(|note| format!("\n{note}")).unwrap_or_default();
                let name = if first { field.name.as_str() } else { "" };
                let need = by.need.map(|need| law::need(words, need)).unwrap_or_default();
                rows.add_row([
                    format!("{name}{note}"),
                    need,
                    by.jurisdiction.to_string(),
                    sure(by),
                    by.basis.from.to_string(),
                    by.basis.source.join(", "),
                ]);
            }
        }
        text.push_str(&format!("\n{}\n", rows.trim_fmt()));
    }
    text.push_str(&lists(words, report));
    text.push_str(&sources(report));
    text.push_str(&report.notice);
    text
}

/// How soon, in what form, for how long.
fn lists(words: &Words, report: &LawReport) -> String {
    let mut text = String::new();
    let mut list = |head: &str, lines: Vec<String>| {
        if !lines.is_empty() {
            text.push_str(&format!("\n{head}\n{}\n", lines.join("\n")));
        }
    };
    let about = |by: &LawBasis| {
        let note = by.basis.note.as_ref().map(|note| format!("\n      {note}")).unwrap_or_default();
        format!("[{} {}; {}]{note}", by.jurisdiction, by.basis.source.join(", "), sure(by))
    };
    let soon = report.time_limits.iter().map(|limit| {
        let within = match limit.within_days {
            0 => "at the time".to_owned(),
            days => format!("within {}", counted(days, "day", "days")),
        };
        format!("  {}: {within} {}", law::occasion(words, limit.occasion), about(&limit.by))
    });
    list("How soon:", soon.collect());
    list(
        "In what form:",
        report.forms.iter().map(|form| format!("  {} {}", form.text, about(&form.by))).collect(),
    );
    let long = report.retentions.iter().map(|kept| {
        let records: Vec<String> = kept.records.iter().map(|sort| law::record_sort(words, *sort)).collect();
        let force = if kept.force == KeepingForce::Scheme { " (a scheme or advice)" } else { "" };
        let years = counted(kept.years, "year", "years");
        let from = law::counted_from(words, kept.counted_from);
        format!("  {}: {years} from {from}{force} {}", records.join(", "), about(&kept.by))
    });
    list("How long to keep it (the longest wins):", long.collect());
    text
}

fn sources(report: &LawReport) -> String {
    let mut text = "\nSources:\n".to_owned();
    for part in &report.parts {
        for source in &part.sources {
            text.push_str(&format!("  {} {}: {source}\n", part.jurisdiction, source.id));
        }
    }
    text
}

fn sure(by: &LawBasis) -> String {
    by.basis.confidence.as_str().replace('_', " ")
}

fn standing(standing: LawStanding) -> String {
    match standing {
        LawStanding::InForce => "in force".to_owned(),
        LawStanding::NotYet { from } => format!("not in force yet, from {from}"),
        LawStanding::Over { until } => format!("no longer in force, until {until}"),
    }
}
