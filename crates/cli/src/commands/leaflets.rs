//! `combclear leaflets`: the built-in leaflets, with the confidence of each value.

use std::str::FromStr;

use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::words::{HoldingName, Jurisdiction, LeafletId};
use combclear_domain::facts::holding::Holding;
use combclear_domain::rules::leaflet::{Leaflet, Leaflets as Set, Rule};
use combclear_wording::leaflet::says;
use combclear_wording::terminal::{about, confidence, failures, force, label_revision, leaflets as say};
use combclear_wording::{Label, Words};

use super::{print, print_json};
use crate::args::{Leaflets, Place};
use crate::failure::Failure;
use crate::layout::Table;
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, ask: &Leaflets) -> Result<Outcome, Failure> {
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
            let holding = if ask.all_countries { None } else { holding(at).await };
            let leaflets: Vec<&Leaflet> = match &holding {
                Some((_, jurisdiction)) => {
                    set.holding_in(jurisdiction).into_iter().map(AsRef::as_ref).collect()
                }
                None => set.iter().map(AsRef::as_ref).collect(),
            };
            let said = if ask.full { list } else { at_a_glance };
            print(&said(words, &leaflets))?;
            if let Some((holding, jurisdiction)) = &holding {
                print(&say::elsewhere(words, jurisdiction, holding))?;
            }
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
        return Ok(Outcome::Done);
    }
    let one = if ask.full { one } else { one_at_a_glance };
    let holding = if ask.all_countries { None } else { holding(at).await };
    let applies = |jurisdiction: &Jurisdiction| set.get(jurisdiction, &LeafletId::from_str(id).ok()?);
    match holding.and_then(|(name, jurisdiction)| Some((applies(&jurisdiction)?, jurisdiction, name))) {
        Some((leaflet, jurisdiction, name)) => {
            print(&one(words, leaflet))?;
            if found.len() > 1 {
                print(&say::elsewhere(words, &jurisdiction, &name))?;
            }
        }
        None => found.into_iter().try_for_each(|leaflet| print(&one(words, leaflet)))?,
    }
    Ok(Outcome::Done)
}

/// The holding at hand and its jurisdiction. None without a database, or with several holdings of which none is named: leaflets
/// can be read without.
async fn holding(at: &Place) -> Option<(HoldingName, Jurisdiction)> {
    let today = clock::today();
    let of = |holding: &Holding| Some((holding.name().clone(), holding.jurisdiction(today)?.clone()));
    place::ask(at, of).await.ok()?
}

/// The leaflets of each jurisdiction.
fn at_a_glance(words: &Words, leaflets: &[&Leaflet]) -> String {
    let mut text = String::new();
    for of in leaflets.chunk_by(|one, other| one.jurisdiction == other.jurisdiction) {
        let mut rows = Table::headed(words, [Label::Leaflet, Label::What]);
        for leaflet in of {
            rows.row([leaflet.id.to_string(), leaflet.title.clone()]);
        }
        let jurisdiction = of.first().map(|leaflet| leaflet.jurisdiction.to_string()).unwrap_or_default();
        text.push_str(&format!("{jurisdiction}\n{rows}\n\n"));
    }
    text + &format!("{}\n{}", words.label(Label::LeafletsMore), words.label(Label::LeafletsNote))
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

fn list(words: &Words, leaflets: &[&Leaflet]) -> String {
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
    for leaflet in leaflets {
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
    format!("{rows}\n{}", words.label(Label::LeafletsNote))
}

/// What a leaflet says, and how well each value is established.
fn one_at_a_glance(words: &Words, leaflet: &Leaflet) -> String {
    let mut rows = Table::headed(words, [Label::Rule, Label::Says, Label::HowSure]);
    for rule in &leaflet.rules {
        let said = says(words, &rule.says, leaflet.unit);
        rows.row([subject(words, rule), said, confidence(words, rule.confidence).to_owned()]);
    }
    let Leaflet { title, jurisdiction, id, .. } = leaflet;
    format!("{title} [{jurisdiction} {id}]\n{rows}\n{}", words.label(Label::LeafletsOneMore))
}

/// What a rule is about, with its method and label revision.
fn subject(words: &Words, rule: &Rule) -> String {
    let limits = rule.method.as_ref().map(ToString::to_string).into_iter();
    let limits = limits.chain(rule.revision.as_ref().map(|revision| label_revision(words, revision)));
    let limits: Vec<String> = limits.collect();
    let limits = if limits.is_empty() { String::new() } else { format!(" ({})", limits.join(", ")) };
    format!("{}{limits}", about(words, rule.says.topic().as_str()))
}

fn one(words: &Words, leaflet: &Leaflet) -> String {
    let mut rows =
        Table::headed(words, [Label::Rule, Label::Says, Label::HowSure, Label::Since, Label::Source]);
    for rule in &leaflet.rules {
        let note = rule.note.as_ref().map(|note| format!("\n{note}")).unwrap_or_default();
        rows.row([
            subject(words, rule),
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
