//! `combclear leaflets`: the built-in leaflets, with the confidence of each value.

use combclear_domain::basics::confidence::Confidence;
use combclear_domain::rules::leaflet::{Leaflet, Leaflets as Set};
use combclear_wording::leaflet::says;
use combclear_wording::terminal::{confidence, failures, force, label_revision};
use combclear_wording::{Label, Words};

use super::{print, print_json};
use crate::args::{Leaflets, Place};
use crate::failure::Failure;
use crate::layout::Table;
use crate::{Outcome, place};

pub(crate) fn run(at: &Place, ask: &Leaflets) -> Result<Outcome, Failure> {
    if ask.schema {
        print_json(&combclear_domain::rules::leaflet::schema::schema())?;
        return Ok(Outcome::Done);
    }
    let words = Words::english();
    let set = &place::leaflets(at)?;
    let Some(id) = &ask.id else {
        if ask.json {
            print_json(&set.iter().map(AsRef::as_ref).collect::<Vec<&Leaflet>>())?;
        } else {
            print(&list(words, set))?;
        }
        return Ok(Outcome::Done);
    };
    let found: Vec<&Leaflet> =
        set.iter().map(AsRef::as_ref).filter(|leaflet| leaflet.id.as_str() == id).collect();
    if found.is_empty() {
        return Err(Failure::new(failures::no_leaflet(words, id), instead(words, set, id)));
    }
    if ask.json {
        print_json(&found)?;
    } else {
        for leaflet in found {
            print(&one(words, leaflet))?;
        }
    }
    Ok(Outcome::Done)
}

/// What may have been meant: the id nearest in spelling, else every id that holds what was written.
fn instead(words: &Words, set: &Set, written: &str) -> String {
    if let Some(near) = set.nearest_to(written) {
        return failures::did_you_mean(words, near);
    }
    let ids = set.iter().map(|leaflet| leaflet.id.as_str());
    let mut holding: Vec<String> =
        ids.filter(|id| id.contains(&written.to_lowercase())).map(|id| format!("`{id}`")).collect();
    // An id may occur in several jurisdictions.
    holding.sort();
    holding.dedup();
    match holding.as_slice() {
        [first, rest @ ..] if !written.is_empty() => {
            let names = rest.iter().fold(first.clone(), |names, name| failures::or(words, &names, name));
            failures::did_you_mean_one_of(words, &names)
        }
        [..] => words.label(Label::AskedListLeaflets).to_owned(),
    }
}

fn list(words: &Words, set: &Set) -> String {
    let heads = [
        Label::Where,
        Label::Leaflet,
        Label::What,
        Label::Rules,
        Label::ConfidenceDocument,
        Label::ConfidenceSecondHand,
        Label::ConfidenceUnconfirmed,
    ];
    let mut rows = Table::headed(words, heads);
    for leaflet in set.iter() {
        let count = |wanted: Confidence| {
            leaflet.rules.iter().filter(|rule| rule.confidence == wanted).count().to_string()
        };
        rows.row([
            leaflet.jurisdiction.to_string(),
            leaflet.id.to_string(),
            leaflet.title.clone(),
            leaflet.rules.len().to_string(),
            count(Confidence::Document),
            count(Confidence::SecondHand),
            count(Confidence::Unconfirmed),
        ]);
    }
    format!("{}\n{}", rows, words.label(Label::LeafletsNote))
}

fn one(words: &Words, leaflet: &Leaflet) -> String {
    let mut rows = Table::headed(words, [Label::Rule, Label::Says, Label::HowSure, Label::Since, Label::Source]);
    for rule in &leaflet.rules {
        let limits = rule.method.as_ref().map(ToString::to_string).into_iter();
        let limits = limits.chain(rule.revision.as_ref().map(|revision| label_revision(words, revision)));
        let limits: Vec<String> = limits.collect();
        let method = if limits.is_empty() { String::new() } else { format!(" ({})", limits.join(", ")) };
        let note = rule.note.as_ref().map(|note| format!("\n{note}")).unwrap_or_default();
        rows.row([
            format!("{}{method}", rule.says.topic().as_str()),
            format!("{}{note}", says(words, &rule.says, leaflet.unit)),
            format!("{}\n{}", confidence(words, rule.confidence), force(words, rule.force)),
            rule.from.map_or_else(|| words.label(Label::NotKnown).to_owned(), |from| from.to_string()),
            rule.source.join(", "),
        ]);
    }
    let sources = leaflet.sources.iter().map(|source| format!("  {}: {source}", source.id));
    let sources: Vec<String> = sources.collect();
    let Leaflet { title, jurisdiction, id, .. } = leaflet;
    let head = words.label(Label::Sources);
    format!("{title} [{jurisdiction} {id}]\n{}\n{head}:\n{}", rows, sources.join("\n"))
}
