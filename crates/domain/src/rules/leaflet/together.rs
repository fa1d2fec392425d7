//! Constraints between the keys of a rule: how they are checked, and which of them a JSON Schema can express.

use serde_json::{Value, json};

use super::schema::Keys;
use super::written::Reading;
use crate::rules::fault::{Lacking, RuleFault, SwapOr};

/// A constraint between keys of one rule.
pub(super) enum Together {
    /// The second number, if both are there, is above the first.
    Above(Key, Key, SwapOr),
    /// The second number, if both are there, is not less than the first.
    NotBelow(Key, Key),
    /// At least one of the keys is there; what the rule lacks without them.
    AnyOf(&'static [Key], Lacking),
    /// The key is required with this word, and refused with any other.
    NeededBeside(Key, Beside),
    /// At least one of the keys is required with this word, and all are refused with any other.
    AnyBeside(&'static [Key], Beside, Lacking),
}

type Key = &'static str;
/// A key, and a word as its value.
type Beside = (Key, &'static str);

pub(super) use Together::{Above, AnyBeside, AnyOf, NeededBeside, NotBelow};

impl Together {
    /// Reports a breach of the constraint.
    pub(super) fn check(&self, rule: &mut Reading<'_, '_, '_>) {
        match *self {
            Above(least, most, mend) => {
                if numbers(rule, least, most).is_some_and(|(least, most)| most <= least) {
                    rule.fault(most, RuleFault::NotAbove { least, most, mend });
                }
            }
            NotBelow(least, most) => {
                if let Some((low, high)) = numbers(rule, least, most).filter(|(low, high)| high < low) {
                    rule.fault(most, RuleFault::Less { least, low, most, high });
                }
            }
            AnyOf(keys, lacking) => none_of(rule, "", keys, lacking),
            NeededBeside(key, (of, word)) => {
                if rule.word(of) == Some(word) && !rule.has_any(&[key]) {
                    rule.fault(of, RuleFault::Needed { rule: rule.table.name(), key, of, word });
                }
                nothing_beside_others(rule, key, (of, word));
            }
            AnyBeside(keys, (of, word), lacking) => {
                for key in keys {
                    nothing_beside_others(rule, key, (of, word));
                }
                if rule.word(of) == Some(word) {
                    none_of(rule, of, keys, lacking);
                }
            }
        }
    }

    /// Adds the part that a JSON Schema can express.
    pub(super) fn describe(&self, keys: Keys) -> Keys {
        match self {
            Above(..) | NotBelow(..) => keys,
            AnyOf(any, _) => keys.any_of(any),
            NeededBeside(key, of) => keys.all_of(beside(*of, &[key], &[key])),
            AnyBeside(any, (of, word), _) => {
                let any_of: Vec<Value> = any.iter().map(|key| json!({ "required": [key] })).collect();
                keys.all_of(beside((of, word), &[], any)).all_of(json!({
                    "if": { "properties": { *of: { "const": word } }, "required": [of] },
                    "then": { "anyOf": any_of },
                }))
            }
        }
    }
}

fn numbers(rule: &Reading<'_, '_, '_>, least: &str, most: &str) -> Option<(i64, i64)> {
    rule.number(least).zip(rule.number(most))
}

/// Reports, at a key, that none of these is there.
fn none_of(rule: &mut Reading<'_, '_, '_>, at: &str, keys: &'static [Key], lacking: Lacking) {
    if !rule.has_any(keys) {
        rule.fault(at, RuleFault::NoneOf { rule: rule.table.name(), lacking, keys });
    }
}

/// Reports a key that is written beside the wrong word.
fn nothing_beside_others(rule: &mut Reading<'_, '_, '_>, key: Key, (of, word): Beside) {
    if let Some(written) = rule.word(of).filter(|written| *written != word && rule.has_any(&[key])) {
        rule.fault(key, RuleFault::Misplaced { key, of, written, word });
    }
}

/// Keys that are required beside one word, or permitted only there.
fn beside((of, word): Beside, needed: &[&str], only: &[&str]) -> Value {
    let none: Vec<Value> = only.iter().map(|key| json!({ "required": [key] })).collect();
    json!({
        "if": { "properties": { of: { "const": word } }, "required": [of] },
        "then": { "required": needed },
        "else": { "not": { "anyOf": none } },
    })
}
