//! What to ask somebody who has the leaflet of a lot in hand, question by question beside what is built in.

use combclear_domain::Day;
use combclear_domain::basics::words::{HoldingName, LotName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Kind;
use combclear_domain::journal::event::Confirmed;
use combclear_domain::journal::form::{Blank, Input, blanks};
use combclear_domain::recording::LeafletQuestions;
use combclear_domain::rules::leaflet::{Leaflets, Says};
use serde::Serialize;

use super::Unanswered;
use super::filled_in::EntryFormField;
use crate::leaflet::says;
use crate::terminal::record::{
    leaflet_barred, leaflet_in_hand, leaflet_same, leaflet_says_too, leaflet_what,
};
use crate::{Words, forms};

/// The questions for the leaflet of a lot.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LotLeaflet {
    /// The holding.
    holding: HoldingName,
    /// The lot.
    lot: LotName,
    /// The day.
    on: Day,
    /// Which leaflet is built in for it. Absent if none is.
    #[serde(skip_serializing_if = "Option::is_none")]
    in_hand: Option<String>,
    /// A question for each term.
    terms: Vec<LeafletQuestion>,
    /// The other values that are built in and were not read in a document for this country.
    others: Vec<LeafletValue>,
}

/// A question about a term.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct LeafletQuestion {
    /// The field of the form `leaflet_reading` that takes what the leaflet says.
    #[serde(flatten)]
    field: EntryFormField,
    /// The question.
    question: String,
    /// What is built in, as it is filled in. Absent if nothing is.
    #[serde(skip_serializing_if = "Option::is_none")]
    built_in: Option<String>,
}

/// A value that is built in.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct LeafletValue {
    /// The question.
    question: String,
    /// What goes into `confirms` of the form `leaflet_reading` if the leaflet says so too.
    confirms: Confirmed,
}

impl LotLeaflet {
    /// The questions for a lot on a day.
    ///
    /// # Errors
    /// The lot is not on record.
    pub fn of(
        words: &'static Words,
        holding: &Holding,
        leaflets: &Leaflets,
        lot: &LotName,
        on: Day,
    ) -> Result<LotLeaflet, Unanswered> {
        let questions = LeafletQuestions::of(holding, leaflets, lot, on)
            .ok_or_else(|| Unanswered::no_lot(words, holding, lot))?;
        let terms = blanks(Kind::LeafletReading);
        let terms = terms.iter().filter(|blank| !NO_QUESTIONS.contains(&blank.key.as_str()));
        let terms = terms.map(|blank| LeafletQuestion::of(words, &questions, blank)).collect();
        let unit = questions.leaflet.as_ref().map(|leaflet| leaflet.unit);
        let other = |said: Says| {
            let question = leaflet_says_too(words, &says(words, &said, unit?));
            Some(LeafletValue { question, confirms: Confirmed::Value(said) })
        };
        Ok(LotLeaflet {
            holding: holding.name().clone(),
            lot: lot.clone(),
            on,
            in_hand: questions.leaflet.as_ref().map(|leaflet| leaflet_in_hand(words, &leaflet.title)),
            terms,
            others: questions.others.into_iter().filter_map(other).collect(),
        })
    }
}

impl LeafletQuestion {
    fn of(words: &'static Words, questions: &LeafletQuestions, blank: &Blank) -> LeafletQuestion {
        let field = EntryFormField::of(words, Kind::LeafletReading, blank);
        let built_in = questions.terms.get(blank.key.as_str());
        let in_words = |value: &String| match blank.input {
            Input::Word(_) => forms::choice(words, value).to_owned(),
            _ => value.clone(),
        };
        let label = forms::field(words, Kind::LeafletReading, blank);
        let question = match built_in {
            None if blank.key == FLOW_BEFORE && questions.barred_before_flow => {
                leaflet_barred(words, label.label)
            }
            Some(value) => leaflet_same(words, label.label, &in_words(value)),
            None => leaflet_what(words, label.label, label.hint),
        };
        LeafletQuestion { field, question, built_in: built_in.cloned() }
    }
}

/// The fields that are no questions.
const NO_QUESTIONS: [&str; 2] = ["lot", "revision"];
/// The field of a ban on use right before a nectar flow, which takes days.
const FLOW_BEFORE: &str = "flow_before_days";
