//! Writes the messages of a language out as data: texts, places for arguments, and choices between variants.

use std::collections::BTreeMap;
use std::error::Error;
use std::fmt::Write as _;

use fluent_syntax::ast::{Expression, InlineExpression, Pattern, PatternElement, Resource, VariantKey};
use fluent_syntax::unicode::unescape_unicode_to_string;
use intl_pluralrules::{PluralRuleType, PluralRules};

use super::{Messages, messages};

/// How deep messages may refer to others; deeper is taken for one that refers to itself.
const DEEPEST: usize = 20;

/// The sentences of a language, as a `static` with its name in capitals: the labels, the texts found by their ids, and the other
/// messages, each in the order of their ids.
pub(super) fn of(
    language: &str,
    resource: &Resource<&str>,
    arguments: &Messages,
    is_label: impl Fn(&str) -> bool,
    is_named: impl Fn(&str) -> bool,
) -> Result<String, Box<dyn Error>> {
    let known = PluralRules::get_locales(PluralRuleType::CARDINAL);
    if !known.iter().any(|locale| *locale == language) {
        return Err(format!("it is not known how `{language}` counts").into());
    }
    let patterns = messages(resource).filter_map(|message| Some((message.id.name, message.value.as_ref()?)));
    let patterns: BTreeMap<&str, &Pattern<&str>> = patterns.collect();
    let (mut labels, mut named, mut sentences, mut asked) =
        (String::new(), String::new(), String::new(), String::new());
    for (id, names) in arguments {
        let pattern = patterns.get(id.as_str()).ok_or_else(|| format!("`{id}` says nothing"))?;
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        let file = File { patterns: &patterns, names: &names };
        let pieces = file.pieces(pattern, 0).map_err(|fault| format!("`{id}`: {fault}"))?;
        let text = || {
            let texts = pieces.iter().map(|piece| match piece {
                Piece::Text(text) => Ok(text.as_str()),
                Piece::Argument(_) | Piece::Choice { .. } => Err(format!("`{id}` takes in no fact")),
            });
            texts.collect::<Result<String, _>>()
        };
        if is_label(id) {
            writeln!(labels, "        {:?},", text()?)?;
        } else if is_named(id) {
            writeln!(named, "        ({id:?}, {:?}),", text()?)?;
        } else {
            writeln!(sentences, "        {},", written(&pieces)?)?;
            writeln!(asked, "    ({id:?}, &{names:?}),")?;
        }
    }
    let name = language.replace('-', "_").to_uppercase();
    Ok(format!(
        "/// The sentences of `{language}`.\n\
         pub(crate) static {name}: Sentences = Sentences {{\n    language: \"{language}\",\n    \
         labels: &[\n{labels}    ],\n    named: &[\n{named}    ],\n    messages: &[\n{sentences}    ],\n}};\n\
         /// The id and the arguments of each sentence of `{language}`.\n\
         #[cfg(test)]\npub(crate) static ASKED_OF_{name}: &[(&str, &[&str])] = &[\n{asked}];\n"
    ))
}

enum Piece {
    Text(String),
    /// The argument at this place among the names.
    Argument(usize),
    Choice {
        of: usize,
        variants: Vec<(Key, Vec<Piece>)>,
        otherwise: usize,
    },
}

enum Key {
    Word(String),
    Number(i64),
}

/// What a message is written out from.
struct File<'f> {
    patterns: &'f BTreeMap<&'f str, &'f Pattern<&'f str>>,
    /// The names of its arguments.
    names: &'f [&'f str],
}

impl File<'_> {
    fn pieces(&self, pattern: &Pattern<&str>, depth: usize) -> Result<Vec<Piece>, String> {
        let mut pieces = Vec::new();
        for element in &pattern.elements {
            match element {
                PatternElement::TextElement { value } => add(&mut pieces, Piece::Text((*value).to_owned())),
                PatternElement::Placeable { expression } => {
                    self.expression(expression, depth)?.into_iter().for_each(|piece| add(&mut pieces, piece));
                }
            }
        }
        Ok(pieces)
    }

    fn expression(&self, expression: &Expression<&str>, depth: usize) -> Result<Vec<Piece>, String> {
        let (selector, variants) = match expression {
            Expression::Inline(inline) => return self.inline(inline, depth),
            Expression::Select { selector, variants } => (selector, variants),
        };
        let InlineExpression::VariableReference { id } = selector else {
            return Err("only an argument can choose between variants".to_owned());
        };
        let otherwise =
            variants.iter().position(|variant| variant.default).ok_or("no variant is marked `*`")?;
        let variants = variants.iter().map(|variant| {
            let key = match variant.key {
                VariantKey::Identifier { name } => Key::Word(name.to_owned()),
                VariantKey::NumberLiteral { value } => {
                    Key::Number(value.parse().map_err(|_| format!("`{value}` is not a whole number"))?)
                }
            };
            Ok((key, self.pieces(&variant.value, depth)?))
        });
        let variants = variants.collect::<Result<_, String>>()?;
        Ok(vec![Piece::Choice { of: self.place(id.name)?, variants, otherwise }])
    }

    fn inline(&self, inline: &InlineExpression<&str>, depth: usize) -> Result<Vec<Piece>, String> {
        match inline {
            InlineExpression::StringLiteral { value } => {
                Ok(vec![Piece::Text(unescape_unicode_to_string(value).into_owned())])
            }
            InlineExpression::NumberLiteral { value } => Ok(vec![Piece::Text((*value).to_owned())]),
            InlineExpression::VariableReference { id } => Ok(vec![Piece::Argument(self.place(id.name)?)]),
            InlineExpression::MessageReference { id, attribute: None } => {
                let pattern =
                    self.patterns.get(id.name).ok_or_else(|| format!("no message `{}`", id.name))?;
                if depth > DEEPEST {
                    return Err("it refers to itself".to_owned());
                }
                self.pieces(pattern, depth + 1)
            }
            InlineExpression::Placeable { expression } => self.expression(expression, depth),
            InlineExpression::MessageReference { attribute: Some(_), .. }
            | InlineExpression::TermReference { .. }
            | InlineExpression::FunctionReference { .. } => {
                Err("terms, attributes and functions are not in use here".to_owned())
            }
        }
    }

    fn place(&self, name: &str) -> Result<usize, String> {
        self.names.iter().position(|known| *known == name).ok_or_else(|| format!("no argument `{name}`"))
    }
}

/// Adds a piece; a text that follows another becomes one with it.
fn add(pieces: &mut Vec<Piece>, piece: Piece) {
    match (pieces.last_mut(), piece) {
        (Some(Piece::Text(before)), Piece::Text(text)) => before.push_str(&text),
        (_, piece) => pieces.push(piece),
    }
}

/// The pieces in the language of the program.
fn written(pieces: &[Piece]) -> Result<String, Box<dyn Error>> {
    let mut out = String::from("&[");
    for piece in pieces {
        match piece {
            Piece::Text(text) => write!(out, "Piece::Text({text:?}), ")?,
            Piece::Argument(place) => write!(out, "Piece::Argument({place}), ")?,
            Piece::Choice { of, variants, otherwise } => {
                write!(out, "Piece::Choice(&Choice {{ of: {of}, otherwise: {otherwise}, variants: &[")?;
                for (key, variant) in variants {
                    let key = match key {
                        Key::Word(word) => format!("Key::Word({word:?})"),
                        Key::Number(number) => format!("Key::Number({number})"),
                    };
                    write!(out, "({key}, {}), ", written(variant)?)?;
                }
                out.push_str("] }), ");
            }
        }
    }
    out.push(']');
    Ok(out)
}
