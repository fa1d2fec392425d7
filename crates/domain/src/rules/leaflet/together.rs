//! What the keys of a rule mean to each other: what is checked once they were read, and what of it a JSON Schema can say.

use serde_json::{Value, json};

use super::schema::Keys;
use super::written::Reading;

/// What keys of one rule mean to each other.
pub(super) enum Together {
    /// The second number is above the first, where both are there.
    Above(Key, Key, Mend),
    /// The second number is not less than the first, where both are there.
    NotBelow(Key, Key),
    /// One of them at least is there; else the rule does what is said.
    AnyOf(&'static [Key], &'static str, &'static str),
    /// The key is needed beside a word, and means nothing beside the others.
    NeededBeside(Key, Beside),
    /// One of the keys at least is needed beside a word, else the rule does what is said; they mean nothing beside the others.
    AnyBeside(&'static [Key], Beside, &'static str),
}

type Key = &'static str;
/// A key and a word that is written there.
type Beside = (Key, &'static str);

/// How two numbers in the wrong order are mended.
pub(super) enum Mend {
    /// Either may be wrong.
    Swap,
    /// The greater one may be left out.
    LeaveOut,
}

pub(super) use Mend::{LeaveOut, Swap};
pub(super) use Together::{Above, AnyBeside, AnyOf, NeededBeside, NotBelow};

impl Together {
    /// Notes what of it the rule does not keep.
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

    /// Adds what a JSON Schema can say of it.
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

/// Notes a key that means nothing but beside one word of another key.
fn nothing_beside_others(rule: &mut Reading<'_, '_, '_>, key: &str, (of, word): (&str, &str)) {
    if let Some(written) = rule.word(of).filter(|written| *written != word && rule.has_any(&[key])) {
        let message = format!("`{key}` does not go with `{of} = \"{written}\"`");
        rule.fault(key, message, format!("drop it, or write `{of} = \"{word}\"`"));
    }
}

/// Keys that are needed beside one word, or mean something only beside it.
fn beside((of, word): Beside, needed: &[&str], only: &[&str]) -> Value {
    let none: Vec<Value> = only.iter().map(|key| json!({ "required": [key] })).collect();
    json!({
        "if": { "properties": { of: { "const": word } }, "required": [of] },
        "then": { "required": needed },
        "else": { "not": { "anyOf": none } },
    })
}
