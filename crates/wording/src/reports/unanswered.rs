//! Why there is no answer.

use combclear_domain::basics::spelling::nearest;
use combclear_domain::basics::words::{ApiaryName, ColonyName, LotName};
use combclear_domain::facts::holding::Holding;
use serde::Serialize;

use crate::terminal::failures::did_you_mean;
use crate::{Label, Words, http};

/// Why there is no answer, or why nothing would be recorded.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unanswered {
    /// Why.
    pub why: Why,
    /// The same in a sentence.
    pub detail: String,
    /// What is wrong, one by one, each with how to mend it.
    pub faults: Vec<Fault>,
}

/// What kind of thing stands against an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// No such apiary is on record.
    UnknownApiary,
    /// No such colony is on record.
    UnknownColony,
    /// No such lot is on record.
    UnknownLot,
    /// A part of the question cannot be used.
    BadParameter,
    /// What was filled in lacks something, or cannot be read.
    UnreadableForm,
    /// What was filled in cannot be true.
    UntrueForm,
}

/// One fault of a request.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Fault {
    /// Its place in the body, as a JSON pointer (RFC 6901). Empty for the whole body.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pointer: Option<String>,
    /// The part of the path, or the query parameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub parameter: Option<String>,
    /// What is wrong.
    pub detail: String,
    /// How to fix it.
    pub help: String,
}

impl Fault {
    /// A fault at a place of what was sent.
    pub fn at(pointer: impl Into<String>, detail: impl Into<String>, help: impl Into<String>) -> Fault {
        Fault { pointer: Some(pointer.into()), parameter: None, detail: detail.into(), help: help.into() }
    }

    /// A fault that is nowhere in what was sent.
    pub fn anywhere(detail: impl Into<String>, help: impl Into<String>) -> Fault {
        Fault { pointer: None, parameter: None, detail: detail.into(), help: help.into() }
    }
}

impl Unanswered {
    /// For an apiary that is not on record, with the nearest name of one that is.
    #[must_use]
    pub fn no_apiary(words: &Words, holding: &Holding, apiary: &ApiaryName) -> Unanswered {
        let near = nearest(apiary.as_str(), holding.apiaries().map(ApiaryName::as_str));
        let detail = http::no_apiary(words, holding.name(), apiary);
        let help = help(words, near, Label::HttpNoApiaryHelp);
        Unanswered::at_parameter(Why::UnknownApiary, "apiary", detail, help)
    }

    /// For a colony that no standing entry mentions, with the nearest name of one that is on record.
    #[must_use]
    pub fn no_colony(words: &Words, holding: &Holding, colony: &ColonyName) -> Unanswered {
        let near = nearest(colony.as_str(), holding.colonies().map(ColonyName::as_str));
        let detail = http::no_colony(words, holding.name(), colony);
        let help = help(words, near, Label::HttpNoColonyHelp);
        Unanswered::at_parameter(Why::UnknownColony, "colony", detail, help)
    }

    /// For a lot that is not on record, with the nearest name of one that is.
    #[must_use]
    pub fn no_lot(words: &Words, holding: &Holding, lot: &LotName) -> Unanswered {
        let near = nearest(lot.as_str(), holding.lots().map(LotName::as_str));
        let detail = http::no_lot(words, holding.name(), lot);
        let help = help(words, near, Label::HttpNoLotHelp);
        Unanswered::at_parameter(Why::UnknownLot, "lot", detail, help)
    }

    /// For a part of the question that cannot be used.
    #[must_use]
    pub fn bad_parameter(parameter: &str, detail: impl Into<String>, help: impl Into<String>) -> Unanswered {
        Unanswered::at_parameter(Why::BadParameter, parameter, detail.into(), help.into())
    }

    fn at_parameter(why: Why, parameter: &str, detail: String, help: String) -> Unanswered {
        let parameter = Some(parameter.to_owned());
        let fault = Fault { pointer: None, parameter, detail: detail.clone(), help };
        Unanswered { why, detail, faults: vec![fault] }
    }
}

fn help(words: &Words, near: Option<&str>, otherwise: Label) -> String {
    near.map_or_else(|| words.label(otherwise).to_owned(), |near| did_you_mean(words, near))
}
