//! Asks what the leaflet of a lot says, question by question, with the built-in value beside each.

use combclear_domain::basics::words::LotName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Kind;
use combclear_domain::journal::form::blanks;
use combclear_domain::recording::LeafletQuestions;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::terminal::record as say;
use combclear_wording::{Label, Words, forms};

use super::ask;
use super::commands::{Record, What};
use super::day;
use crate::clock;
use crate::commands::print;
use crate::failure::{Failure, Said};

/// The field that names the lot, and those that are no questions.
const LOT: &str = "lot";
const REVISION: &str = "revision";
/// The field of a ban on use right before a nectar flow, which takes days.
const FLOW_BEFORE: &str = "flow_before_days";

/// Asks the questions for the lot, unless terms were given. Returns the labels of what the leaflet says nothing about.
pub(super) fn ask(
    record: &mut Record,
    holding: &Holding,
    leaflets: &Leaflets,
) -> Result<Vec<String>, Failure> {
    let What::Form { kind: Kind::LeafletReading, texts, .. } = &mut record.what else {
        return Ok(Vec::new());
    };
    if texts.keys().any(|key| key != LOT && key != REVISION) {
        return Ok(Vec::new());
    }
    let on = record.on.as_deref().and_then(|text| day::day(text, clock::today()).ok());
    let lot = texts.get(LOT).and_then(|lots| lots.first()).and_then(|lot| lot.parse::<LotName>().ok());
    let on = on.unwrap_or_else(clock::today);
    let Some(questions) = lot.and_then(|lot| LeafletQuestions::of(holding, leaflets, &lot, on)) else {
        return Ok(Vec::new());
    };
    let words = Words::english();
    if let Some(leaflet) = &questions.leaflet {
        print(&say::leaflet_in_hand(words, &leaflet.title))?;
    }
    print(&Label::RecordLeafletHow.said())?;
    let mut open = Vec::new();
    for blank in blanks(Kind::LeafletReading) {
        if blank.key == LOT || blank.key == REVISION {
            continue;
        }
        // Whoever states a period has answered whether there is one.
        if blank.key == "withdrawal" && texts.contains_key("withdrawal_days") {
            continue;
        }
        let label = forms::field(words, Kind::LeafletReading, &blank).label;
        let built_in = questions.terms.get(blank.key.as_str());
        let barred = blank.key == FLOW_BEFORE && questions.barred_before_flow;
        let question = match built_in {
            None if barred => say::leaflet_barred(words, label),
            Some(value) => say::leaflet_same(words, label, &value.replace('_', " ")),
            None => say::leaflet_what(words, label, forms::field(words, Kind::LeafletReading, &blank).hint),
        };
        match answer(&question, built_in)? {
            Answer::Nothing => open.push(label.to_lowercase()),
            Answer::Says(value) => {
                texts.insert(blank.key, vec![value]);
            }
        }
    }
    let Some(leaflet) = &questions.leaflet else { return Ok(open) };
    for says in questions.others {
        let value = combclear_wording::leaflet::says(words, &says, leaflet.unit);
        let said = ask::line(&say::leaflet_too(words, &value))?.to_lowercase();
        if said == words.label(Label::RecordingYes) || said == "y" {
            record.confirms.push(says);
        } else {
            open.push(value);
        }
    }
    Ok(open)
}

/// What a leaflet says of a term.
enum Answer {
    Says(String),
    Nothing,
}

/// Asks until the answer is a value, `nothing`, or `yes` to a value that is built in.
fn answer(question: &str, built_in: Option<&String>) -> Result<Answer, Failure> {
    let words = Words::english();
    loop {
        let answer = ask::line(question)?;
        let said = answer.to_lowercase();
        let is = |label: Label| said == words.label(label);
        match built_in {
            _ if is(Label::RecordLeafletNothing) => return Ok(Answer::Nothing),
            Some(value) if is(Label::RecordingYes) => return Ok(Answer::Says(value.clone())),
            // A bare yes or no states no value.
            Some(_) | None if is(Label::RecordingYes) || is(Label::RecordingNo) => {
                print(&Label::RecordLeafletHow.said())?;
            }
            Some(_) | None => return Ok(Answer::Says(answer)),
        }
    }
}
