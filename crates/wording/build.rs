//! Makes a type of each message in `messages/en.ftl`, with a field for each of its arguments: a message that is not there, one that
//! nobody says, and an argument that is left out do not compile. A message whose id begins with `label-` becomes a variant of `Label`
//! instead; one whose id begins with `part-` is only a part of others; those whose ids begin with `form-`, `tab-`, `field-`, `choice-`, `mark-` and `page-` are
//! found by their ids. Every other language must have the same messages and arguments.
//!
//! The sentences of each language are written out as data, so that a program reads no message file when it starts, and says a
//! sentence by putting its pieces together.

#[path = "build/sentences.rs"]
mod sentences;

use std::collections::{BTreeMap, BTreeSet};
use std::error::Error;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::{env, fs};

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Message, Pattern, PatternElement, Resource};
use fluent_syntax::parser;

/// The arguments of each message, by its id.
type Messages = BTreeMap<String, BTreeSet<String>>;

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo::rerun-if-changed=messages");
    let text = fs::read_to_string("messages/en.ftl")?;
    let english = arguments(&parse(Path::new("messages/en.ftl"), &text)?)?;
    let is_label = |id: &str| id.starts_with(LABEL);
    let named = |id: &str| NAMED.iter().any(|beginning| id.starts_with(beginning));
    let mut written = String::new();
    for entry in fs::read_dir("messages")? {
        let path = entry?.path();
        let fault = |fault: Box<dyn Error>| format!("{}: {fault}", path.display());
        let text = fs::read_to_string(&path)?;
        let resource = parse(&path, &text)?;
        let other = arguments(&resource).map_err(fault)?;
        let differing: Vec<&String> =
            english.keys().chain(other.keys()).filter(|id| english.get(*id) != other.get(*id)).collect();
        if !differing.is_empty() {
            return Err(format!("{}: not as in English: {differing:?}", path.display()).into());
        }
        let language = path.file_stem().and_then(|stem| stem.to_str()).unwrap_or_default();
        written += &sentences::of(language, &resource, &spoken(other), is_label, named).map_err(fault)?;
    }
    let out = PathBuf::from(env::var("OUT_DIR")?);
    let (labels, mut others): (Messages, Messages) =
        spoken(english).into_iter().partition(|(id, _)| is_label(id));
    others.retain(|id, _| !named(id));
    fs::write(out.join("messages.rs"), types(&others)?)?;
    fs::write(out.join("labels.rs"), label_type(&labels)?)?;
    fs::write(out.join("sentences.rs"), written)?;
    Ok(())
}

/// How the id of a label begins.
const LABEL: &str = "label-";

/// How the id of a part of other messages begins.
const PART: &str = "part-";

/// How the ids of texts begin that are found by their ids.
const NAMED: [&str; 6] = ["form-", "tab-", "field-", "choice-", "mark-", "page-"];

/// The messages that are said by themselves.
fn spoken(mut messages: Messages) -> Messages {
    messages.retain(|id, _| !id.starts_with(PART));
    messages
}

fn parse<'t>(path: &Path, text: &'t str) -> Result<Resource<&'t str>, Box<dyn Error>> {
    parser::parse(text).map_err(|(_, faults)| {
        let line = |at: usize| text.bytes().take(at).filter(|byte| *byte == b'\n').count() + 1;
        let faults: Vec<String> =
            faults.iter().map(|fault| format!("line {}: {fault}", line(fault.pos.start))).collect();
        format!("{}: {}", path.display(), faults.join("; ")).into()
    })
}

/// The messages of a file, in its order.
fn messages<'r, 't>(resource: &'r Resource<&'t str>) -> impl Iterator<Item = &'r Message<&'t str>> {
    resource.body.iter().filter_map(|entry| match entry {
        Entry::Message(message) => Some(message),
        _ => None,
    })
}

fn arguments(resource: &Resource<&str>) -> Result<Messages, Box<dyn Error>> {
    let mut known = Messages::new();
    for message in messages(resource) {
        let mut arguments = BTreeSet::new();
        if let Some(pattern) = &message.value {
            in_pattern(pattern, &mut arguments);
        }
        let id = message.id.name.to_owned();
        if known.insert(id.clone(), arguments).is_some() {
            return Err(format!("`{id}` is there twice").into());
        }
    }
    let mut parts = BTreeSet::new();
    for pattern in messages(resource).filter_map(|message| message.value.as_ref()) {
        references(pattern, &mut parts);
    }
    if let Some(id) = known.keys().find(|id| id.starts_with(PART) && !parts.contains(*id)) {
        return Err(format!("no message takes `{id}`").into());
    }
    // What a message takes from another needs that one's arguments too, and those which that one takes from a third.
    loop {
        let before: usize = known.values().map(BTreeSet::len).sum();
        for message in messages(resource) {
            let mut named = BTreeSet::new();
            if let Some(pattern) = &message.value {
                references(pattern, &mut named);
            }
            let inherited: BTreeSet<String> =
                named.iter().filter_map(|id| known.get(id)).flatten().cloned().collect();
            if let Some(arguments) = known.get_mut(message.id.name) {
                arguments.extend(inherited);
            }
        }
        if known.values().map(BTreeSet::len).sum::<usize>() == before {
            return Ok(known);
        }
    }
}

fn in_pattern(pattern: &Pattern<&str>, arguments: &mut BTreeSet<String>) {
    for element in &pattern.elements {
        let PatternElement::Placeable { expression } = element else { continue };
        in_expression(expression, arguments);
    }
}

fn in_expression(expression: &Expression<&str>, arguments: &mut BTreeSet<String>) {
    match expression {
        Expression::Inline(inline) => in_inline(inline, arguments),
        Expression::Select { selector, variants } => {
            in_inline(selector, arguments);
            for variant in variants {
                in_pattern(&variant.value, arguments);
            }
        }
    }
}

fn in_inline(inline: &InlineExpression<&str>, arguments: &mut BTreeSet<String>) {
    match inline {
        InlineExpression::VariableReference { id } => {
            arguments.insert(id.name.to_owned());
        }
        InlineExpression::Placeable { expression } => in_expression(expression, arguments),
        _ => {}
    }
}

fn references(pattern: &Pattern<&str>, named: &mut BTreeSet<String>) {
    for element in &pattern.elements {
        let PatternElement::Placeable { expression } = element else { continue };
        match expression {
            Expression::Inline(InlineExpression::MessageReference { id, .. }) => {
                named.insert(id.name.to_owned());
            }
            Expression::Inline(_) => {}
            Expression::Select { variants, .. } => {
                for variant in variants {
                    references(&variant.value, named);
                }
            }
        }
    }
}

fn label_type(labels: &Messages) -> Result<String, Box<dyn Error>> {
    let mut variants = String::new();
    for (id, arguments) in labels {
        if !arguments.is_empty() {
            return Err(format!("`{id}` is a label, so nothing can be put in: {arguments:?}").into());
        }
        let name = type_name(id.strip_prefix(LABEL).unwrap_or(id));
        writeln!(variants, "    /// The message `{id}`.\n    {name},")?;
    }
    let mut out = String::new();
    writeln!(
        out,
        "/// What stands fixed: the head of a table, the label of a value, a sentence without a fact in it."
    )?;
    writeln!(out, "#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]")?;
    writeln!(out, "pub enum Label {{\n{variants}}}")?;
    Ok(out)
}

fn types(messages: &Messages) -> Result<String, Box<dyn Error>> {
    let mut out = String::new();
    for (place, (id, arguments)) in messages.iter().enumerate() {
        let name = type_name(id);
        let life = if arguments.is_empty() { "" } else { "<'a>" };
        let fields: Vec<String> = arguments.iter().map(|argument| argument.replace('-', "_")).collect();
        writeln!(out, "/// The message `{id}`.")?;
        writeln!(out, "pub(crate) struct {name}{life} {{")?;
        for field in &fields {
            writeln!(out, "    pub(crate) {field}: Value<'a>,")?;
        }
        writeln!(out, "}}")?;
        writeln!(out, "impl<'a> Message<'a> for {name}{life} {{")?;
        writeln!(out, "    const PLACE: usize = {place};")?;
        let values: Vec<String> = fields.iter().map(|field| format!("self.{field}")).collect();
        writeln!(out, "    type Values = [Value<'a>; {}];", values.len())?;
        writeln!(out, "    fn values(self) -> Self::Values {{ [{}] }}\n}}", values.join(", "))?;
    }
    Ok(out)
}

fn type_name(id: &str) -> String {
    id.split('-').map(capital).collect()
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}
