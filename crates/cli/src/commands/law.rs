//! `combclear law`: the law on medicine records.

use combclear_domain::basics::words::Jurisdiction;
use combclear_domain::rules::law::{LawStanding, Occasion};
use combclear_wording::law::{self, LawBasis, LawField, LawReport, LawRetention};
use combclear_wording::terminal::{confidence, day, failures, law as say};
use combclear_wording::{Label, Words};
use serde::Serialize;

use super::show;
use crate::args::Law;
use crate::failure::Failure;
use crate::layout::Table;
use crate::{Outcome, clock, place};

/// A jurisdiction in the list, as JSON.
#[derive(Serialize)]
struct Item<'a> {
    jurisdiction: &'a str,
    title: &'a str,
    includes: Vec<&'a str>,
}

pub(crate) fn run(ask: &Law) -> Result<Outcome, Failure> {
    let words = Words::english();
    let laws = place::laws()?;
    let Some(jurisdiction) = &ask.jurisdiction else {
        let items = laws.iter().map(|law| Item {
            jurisdiction: law.jurisdiction.as_str(),
            title: &law.title,
            includes: law.includes.iter().map(Jurisdiction::as_str).collect(),
        });
        let items: Vec<Item<'_>> = items.collect();
        return show(ask.json, &items, |items| list(words, items));
    };
    let on = ask.on.unwrap_or_else(clock::today);
    let profile = laws.profile(jurisdiction, on).ok_or_else(|| {
        let help = failures::laws_are(words, &laws.listed());
        Failure::new(failures::no_law(words, jurisdiction), help)
    })?;
    let report = LawReport::of(words, &profile);
    show(ask.json, &report, |report| one(words, report))
}

fn list(words: &Words, items: &[Item<'_>]) -> String {
    let mut rows = Table::headed(words, [Label::Where, Label::What, Label::WithRulesOf]);
    for item in items {
        rows.row([item.jurisdiction.to_owned(), item.title.to_owned(), item.includes.join(", ")]);
    }
    format!("{rows}\n{}", words.label(Label::LawUnion))
}

fn one(words: &Words, report: &LawReport) -> String {
    let LawReport { jurisdiction, on, .. } = report;
    let mut text = say::head(words, jurisdiction, &day(words, *on)) + "\n";
    for part in &report.parts {
        let standing = say::standing(words, part.standing);
        text.push_str(&format!("  {}: {}: {standing}\n", part.jurisdiction, part.title));
    }
    if report.standing != LawStanding::InForce {
        text.push_str(&format!("{}\n", words.label(Label::LawNoneInForce)));
    }
    for occasion in Occasion::ALL {
        let fields: Vec<&LawField> =
            report.fields.iter().filter(|field| field.occasion == *occasion).collect();
        if fields.is_empty() {
            continue;
        }
        let heads = [Label::Need, Label::Where, Label::HowSure, Label::Since, Label::Source];
        let of = law::occasion(words, *occasion);
        let mut rows = Table::new([of.as_str()].into_iter().chain(heads.map(|head| words.label(head))));
        for field in fields {
            for (index, by) in field.by.iter().enumerate() {
                let first = index == 0;
                let note = by.basis.note.as_ref().map(|note| format!("\n{note}")).unwrap_or_default();
                let name = if first { field.name.as_str() } else { "" };
                let need = by.need.map(|need| law::need(words, need)).unwrap_or_default();
                rows.row([
                    format!("{name}{note}"),
                    need,
                    by.jurisdiction.to_string(),
                    sure(words, by).to_owned(),
                    by.basis.from.to_string(),
                    by.basis.source.join(", "),
                ]);
            }
        }
        text.push_str(&format!("\n{rows}\n"));
    }
    text.push_str(&lists(words, report));
    text.push_str(&sources(words, report));
    text.push_str(&report.notice);
    text
}

/// Time limits, forms and retention.
fn lists(words: &Words, report: &LawReport) -> String {
    let mut text = String::new();
    let mut list = |head: Label, lines: Vec<String>| {
        if !lines.is_empty() {
            text.push_str(&format!("\n{}\n{}\n", words.label(head), lines.join("\n")));
        }
    };
    let about = |by: &LawBasis| {
        let note = by.basis.note.as_ref().map(|note| format!("\n      {note}")).unwrap_or_default();
        format!("[{} {}; {}]{note}", by.jurisdiction, by.basis.source.join(", "), sure(words, by))
    };
    let soon = report.time_limits.iter().map(|limit| {
        let within = say::within(words, limit.within_days);
        format!("  {}: {within} {}", law::occasion(words, limit.occasion), about(&limit.by))
    });
    list(Label::LawHowSoon, soon.collect());
    list(
        Label::LawInWhatForm,
        report.forms.iter().map(|form| format!("  {} {}", form.text, about(&form.by))).collect(),
    );
    let long = report.retentions.iter().map(|LawRetention { rule: kept, by }| {
        let records: Vec<String> = kept.records.iter().map(|sort| law::record_sort(words, *sort)).collect();
        let from = law::counted_from(words, kept.counted_from);
        let keep = say::keep(words, kept.years, &from, kept.force);
        format!("  {}: {keep} {}", records.join(", "), about(by))
    });
    list(Label::LawHowLong, long.collect());
    text
}

fn sources(words: &Words, report: &LawReport) -> String {
    let mut text = format!("\n{}:\n", words.label(Label::Sources));
    for part in &report.parts {
        for source in &part.sources {
            text.push_str(&format!("  {} {}: {source}\n", part.jurisdiction, source.id));
        }
    }
    text
}

fn sure<'w>(words: &'w Words, by: &LawBasis) -> &'w str {
    confidence(words, by.basis.confidence)
}
