//! The sentences of each language as data, written out by the build script, and how one is put together.

use std::borrow::Cow;
use std::fmt::Write;

use combclear_domain::Day;
use intl_pluralrules::{PluralCategory, PluralRules};

/// The sentences of one language.
pub(crate) struct Sentences {
    /// Its code: `en`.
    pub(crate) language: &'static str,
    /// The labels, in the order of `Label`.
    pub(crate) labels: &'static [&'static str],
    /// The other messages, each at its place.
    pub(crate) messages: &'static [Sentence],
}

include!(concat!(env!("OUT_DIR"), "/sentences.rs"));

/// What a sentence is put together from.
pub(crate) type Sentence = &'static [Piece];

/// A piece of a sentence.
pub(crate) enum Piece {
    Text(&'static str),
    /// The argument at this place.
    Argument(usize),
    Choice(&'static Choice),
}

/// Variants, of which an argument chooses one.
pub(crate) struct Choice {
    /// The place of that argument.
    pub(crate) of: usize,
    pub(crate) variants: &'static [(Key, Sentence)],
    /// The place of the variant that is said if none fits.
    pub(crate) otherwise: usize,
}

/// For which value a variant is said.
pub(crate) enum Key {
    /// This text, or a number of this plural category.
    Word(&'static str),
    /// This number.
    Number(i64),
}

/// A value that is put into a sentence.
#[derive(Clone)]
pub(crate) enum Value<'a> {
    Text(Cow<'a, str>),
    Number(i64),
    Day(Day),
}

impl Value<'_> {
    /// About how long it is when written.
    fn length(&self) -> usize {
        const NUMBER: usize = 4;
        const DAY: usize = "2026-04-11".len();
        match self {
            Value::Text(text) => text.len(),
            Value::Number(_) => NUMBER,
            Value::Day(_) => DAY,
        }
    }
}

/// Puts a sentence together.
pub(crate) fn said(sentence: Sentence, values: &[Value<'_>], plurals: Option<&PluralRules>) -> String {
    let length = |piece: &Piece| match piece {
        Piece::Text(text) => text.len(),
        Piece::Argument(place) => values.get(*place).map_or(0, Value::length),
        Piece::Choice(_) => 0,
    };
    let mut said = String::with_capacity(sentence.iter().map(length).sum());
    add(&mut said, sentence, values, plurals);
    said
}

fn add(said: &mut String, sentence: Sentence, values: &[Value<'_>], plurals: Option<&PluralRules>) {
    for piece in sentence {
        match piece {
            Piece::Text(text) => said.push_str(text),
            // Each message has its arguments: the build has counted them. Writing to a string never fails.
            Piece::Argument(place) => match values.get(*place) {
                Some(Value::Text(text)) => said.push_str(text),
                Some(Value::Number(number)) => write!(said, "{number}").unwrap_or_default(),
                Some(Value::Day(day)) => write!(said, "{day}").unwrap_or_default(),
                None => {}
            },
            Piece::Choice(choice) => {
                let value = values.get(choice.of);
                let fits = |(key, _): &&(Key, Sentence)| value.is_some_and(|value| key.fits(value, plurals));
                let chosen = choice.variants.iter().find(fits);
                let variant = chosen.or_else(|| choice.variants.get(choice.otherwise));
                if let Some((_, variant)) = variant {
                    add(said, variant, values, plurals);
                }
            }
        }
    }
}

impl Key {
    fn fits(&self, value: &Value<'_>, plurals: Option<&PluralRules>) -> bool {
        match (self, value) {
            (Key::Word(word), Value::Text(text)) => *word == text.as_ref(),
            (Key::Word(word), Value::Number(number)) => {
                let category = plurals.and_then(|plurals| plurals.select(*number).ok());
                category.is_some_and(|category| *word == category_word(&category))
            }
            (Key::Number(key), Value::Number(number)) => key == number,
            (Key::Number(_), Value::Text(_)) | (_, Value::Day(_)) => false,
        }
    }
}

const fn category_word(category: &PluralCategory) -> &'static str {
    match category {
        PluralCategory::ZERO => "zero",
        PluralCategory::ONE => "one",
        PluralCategory::TWO => "two",
        PluralCategory::FEW => "few",
        PluralCategory::MANY => "many",
        PluralCategory::OTHER => "other",
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use fluent_bundle::{FluentArgs, FluentBundle, FluentResource, FluentValue};
    use intl_pluralrules::PluralRuleType;
    use unic_langid::langid;

    use super::*;

    /// Every value that a choice of a sentence turns on, at each place.
    fn chosen(sentence: Sentence, found: &mut Vec<(usize, String)>) {
        for piece in sentence {
            let Piece::Choice(choice) = piece else { continue };
            for (key, variant) in choice.variants {
                let key = match key {
                    Key::Word(word) => (*word).to_owned(),
                    Key::Number(number) => number.to_string(),
                };
                found.push((choice.of, key));
                chosen(variant, found);
            }
        }
    }

    /// Every combination of one value for each place.
    fn combined(choices: &[Vec<Value<'static>>]) -> Vec<Vec<Value<'static>>> {
        choices.iter().fold(vec![Vec::new()], |before, values| {
            let with = |known: &Vec<Value<'static>>, value: &Value<'static>| {
                known.iter().cloned().chain([value.clone()]).collect::<Vec<_>>()
            };
            before.iter().flat_map(|known| values.iter().map(move |value| with(known, value))).collect()
        })
    }

    #[test]
    fn every_sentence_is_said_as_the_library_says_it() {
        let mut library = FluentBundle::new(vec![langid!("en")]);
        library.set_use_isolating(false);
        let file = FluentResource::try_new(include_str!("../messages/en.ftl").to_owned()).unwrap();
        library.add_resource(file).unwrap();
        let plurals = PluralRules::create(langid!("en"), PluralRuleType::CARDINAL).unwrap();
        assert_eq!(EN.messages.len(), ASKED_OF_EN.len());
        let mut told = BTreeSet::new();
        for (sentence, (id, names)) in EN.messages.iter().zip(ASKED_OF_EN) {
            let mut keys = Vec::new();
            chosen(sentence, &mut keys);
            let values_at = |place: usize| {
                let text = |text: &str| Value::Text(text.to_owned().into());
                let words: BTreeSet<&str> =
                    keys.iter().filter(|(of, _)| *of == place).map(|(_, key)| key.as_str()).collect();
                if words.is_empty() {
                    return vec![text("{ $so } \"1\"\\u0041")];
                }
                let numbers = [0, 1, 2, 3, 5, 11, 21, 100, 1_500, -1].map(Value::Number);
                words.into_iter().map(text).chain([text("1"), text("no such word")]).chain(numbers).collect()
            };
            let choices: Vec<_> = (0..names.len()).map(values_at).collect();
            for values in combined(&choices) {
                let mut arguments = FluentArgs::new();
                for (name, value) in names.iter().zip(&values) {
                    arguments.set(
                        *name,
                        match value {
                            Value::Text(text) => FluentValue::String(text.clone()),
                            Value::Number(number) => FluentValue::from(*number),
                            Value::Day(day) => FluentValue::String(day.to_string().into()),
                        },
                    );
                }
                let pattern = library.get_message(id).unwrap().value().unwrap();
                let mut faults = Vec::new();
                let expected = library.format_pattern(pattern, Some(&arguments), &mut faults);
                assert!(faults.is_empty(), "{id}: {faults:?}");
                let said = said(sentence, &values, Some(&plurals));
                assert_eq!(said, expected, "{id}");
                told.insert(said);
            }
        }
        assert!(told.len() > EN.messages.len(), "the variants are told apart");
    }

    #[test]
    fn every_label_is_said_as_the_library_says_it() {
        let mut library = FluentBundle::new(vec![langid!("en")]);
        library.set_use_isolating(false);
        let file = FluentResource::try_new(include_str!("../messages/en.ftl").to_owned()).unwrap();
        let ids: BTreeSet<String> = file
            .entries()
            .filter_map(|entry| match entry {
                fluent_syntax::ast::Entry::Message(message) => Some(message.id.name.to_owned()),
                _ => None,
            })
            .filter(|id| id.starts_with("label-"))
            .collect();
        library.add_resource(file).unwrap();
        let expected: Vec<String> = ids
            .iter()
            .map(|id| {
                let pattern = library.get_message(id).unwrap().value().unwrap();
                library.format_pattern(pattern, None, &mut Vec::new()).into_owned()
            })
            .collect();
        assert_eq!(EN.labels, expected);
    }

    #[test]
    fn a_day_stands_in_a_sentence_as_it_is_written_everywhere() {
        let day: Day = "2026-04-11".parse().unwrap();
        let sentence: Sentence = &[Piece::Text("on "), Piece::Argument(0), Piece::Text(".")];
        assert_eq!(said(sentence, &[Value::Day(day)], None), "on 2026-04-11.");
    }
}
