//! Constraints between the keys of a rule: how they are checked, and which of them a JSON Schema can express.

use serde_json::{Value, json};

use super::schema::Keys;
use super::written::Reading;

/// A constraint between keys of one rule.
pub(super) enum Together {
    /// The second number, if both are there, is above the first.
    Above(Key, Key, Mend),
    /// The second number, if both are there, is not less than the first.
    NotBelow(Key, Key),
    /// At least one of the keys is there. The texts complete the message ("the rule ...") and give the help.
    AnyOf(&'static [Key], &'static str, &'static str),
    /// The key is required with this word, and refused with any other.
    NeededBeside(Key, Beside),
    /// At least one of the keys is required with this word, and all are refused with any other. The text completes the
    /// message.
    AnyBeside(&'static [Key], Beside, &'static str),
}

type Key = &'static str;
/// A key, and a word as its value.
type Beside = (Key, &'static str);

/// How to fix two numbers in the wrong order.
pub(super) enum Mend {
    /// Swap or correct them.
    Swap,
    /// Correct the greater one, or leave it out.
    LeaveOut,
}

pub(super) use Mend::{LeaveOut, Swap};
pub(super) use Together::{Above, AnyBeside, AnyOf, NeededBeside, NotBelow};

impl Together {
    /// Reports a breach of the constraint.
    pub(super) fn check(&self, rule: &mut Reading<'_, '_, '_>) {
        match self {
            Above(least, most, mend) => {
                if numbers(rule, least, most).is_some_and(|(least, most)| most <= least) {
                    let help = match mend {
                        Swap => "swap or correct them".to_owned(),
                        LeaveOut => format!("correct it, or leave `{most}` out"),
                    };
                    rule.fault(most, format!("`{most}` is not above `{least}`"), help);
                }
            }
            NotBelow(least, most) => {
                if let Some((low, high)) = numbers(rule, least, most).filter(|(low, high)| high < low) {
                    let message = format!("`{most}` {high} is less than `{least}` {low}");
                    rule.fault(most, message, "swap or correct them");
                }
            }
            AnyOf(keys, does, help) => {
                if !rule.has_any(keys) {
                    rule.fault("", format!("{} {does}", rule.table.name()), *help);
                }
            }
            NeededBeside(key, (of, word)) => {
                if rule.word(of) == Some(word) && !rule.has_any(&[key]) {
                    let message = format!("{} lacks `{key}`", rule.table.name());
                    rule.fault(of, message, format!("add `{key}`: `{of} = \"{word}\"` needs it"));
                }
                nothing_beside_others(rule, key, (of, word));
            }
            AnyBeside(keys, (of, word), does) => {
                for key in *keys {
                    nothing_beside_others(rule, key, (of, word));
                }
                if rule.word(of) == Some(word) && !rule.has_any(keys) {
                    let keys: Vec<_> = keys.iter().map(|key| format!("`{key}`")).collect();
                    let help = format!("add {} or both", keys.join(", "));
                    rule.fault(of, format!("{} {does}", rule.table.name()), help);
                }
            }
        }
    }

    /// Adds the part that a JSON Schema can express.
    pub(super) fn describe(&self, keys: Keys) -> Keys {
        match self {
            Above(..) | NotBelow(..) => keys,
            AnyOf(any, ..) => keys.any_of(any),
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

/// Reports a key that is written beside the wrong word.
fn nothing_beside_others(rule: &mut Reading<'_, '_, '_>, key: &str, (of, word): (&str, &str)) {
    if let Some(written) = rule.word(of).filter(|written| *written != word && rule.has_any(&[key])) {
        let message = format!("`{key}` does not go with `{of} = \"{written}\"`");
        rule.fault(key, message, format!("drop it, or write `{of} = \"{word}\"`"));
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
