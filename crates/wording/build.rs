//! Makes a type of each message in `messages/en.ftl`, with a field for each of its arguments: a message that is not there, one that
//! nobody says, and an argument that is left out do not compile. A message whose id begins with `label-` becomes a variant of `Label`
//! instead; one whose id begins with `part-` is only a part of others. Every other language must have the same messages and arguments.

use std::collections::{BTreeMap, BTreeSet};
use std::error::Error;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::{env, fs};

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use fluent_syntax::parser;

/// The arguments of each message, by its id.
type Messages = BTreeMap<String, BTreeSet<String>>;

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo::rerun-if-changed=messages");
    let english = read(Path::new("messages/en.ftl"))?;
    for entry in fs::read_dir("messages")? {
        let path = entry?.path();
        let other = read(&path)?;
        let differing: Vec<&String> =
            english.keys().chain(other.keys()).filter(|id| english.get(*id) != other.get(*id)).collect();
        if !differing.is_empty() {
            return Err(format!("{}: not as in English: {differing:?}", path.display()).into());
        }
    }
    let out = PathBuf::from(env::var("OUT_DIR")?);
    let (labels, others): (Messages, Messages) = english
        .into_iter()
        .filter(|(id, _)| !id.starts_with(PART))
        .partition(|(id, _)| id.starts_with(LABEL));
    fs::write(out.join("messages.rs"), types(&others)?)?;
    fs::write(out.join("labels.rs"), label_type(&labels)?)?;
    Ok(())
}

/// How the id of a label begins.
const LABEL: &str = "label-";

/// How the id of a part of other messages begins.
const PART: &str = "part-";

fn read(path: &Path) -> Result<Messages, Box<dyn Error>> {
    let text = fs::read_to_string(path)?;
    let resource = parser::parse(text.as_str()).map_err(|(_, faults)| {
        let line = |at: usize| text.bytes().take(at).filter(|byte| *byte == b'\n').count() + 1;
        let faults: Vec<String> =
            faults.iter().map(|fault| format!("line {}: {fault}", line(fault.pos.start))).collect();
        format!("{}: {}", path.display(), faults.join("; "))
    })?;
    let mut messages = Messages::new();
    for entry in &resource.body {
        let Entry::Message(message) = entry else { continue };
        let mut arguments = BTreeSet::new();
        if let Some(pattern) = &message.value {
            in_pattern(pattern, &mut arguments);
        }
        let id = message.id.name.to_owned();
        if messages.insert(id.clone(), arguments).is_some() {
            return Err(format!("{}: `{id}` is there twice", path.display()).into());
        }
    }
    let mut parts = BTreeSet::new();
    for entry in &resource.body {
        let Entry::Message(message) = entry else { continue };
        if let Some(pattern) = &message.value {
            references(pattern, &mut parts);
        }
    }
    if let Some(id) = messages.keys().find(|id| id.starts_with(PART) && !parts.contains(*id)) {
        return Err(format!("{}: no message takes `{id}`", path.display()).into());
    }
    // What a message takes from another needs that one's arguments too, and those which that one takes from a third.
    loop {
        let before: usize = messages.values().map(BTreeSet::len).sum();
        for entry in &resource.body {
            let Entry::Message(message) = entry else { continue };
            let mut named = BTreeSet::new();
            if let Some(pattern) = &message.value {
                references(pattern, &mut named);
            }
            let inherited: BTreeSet<String> =
                named.iter().filter_map(|id| messages.get(id)).flatten().cloned().collect();
            if let Some(arguments) = messages.get_mut(message.id.name) {
                arguments.extend(inherited);
            }
        }
        if messages.values().map(BTreeSet::len).sum::<usize>() == before {
            return Ok(messages);
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
    let mut all = String::new();
    for (id, arguments) in labels {
        if !arguments.is_empty() {
            return Err(format!("`{id}` is a label, so nothing can be put in: {arguments:?}").into());
        }
        let name = type_name(id.strip_prefix(LABEL).unwrap_or(id));
        writeln!(variants, "    /// The message `{id}`.\n    {name},")?;
        writeln!(all, "        (Label::{name}, \"{id}\"),")?;
    }
    let mut out = String::new();
    writeln!(
        out,
        "/// What stands fixed: the head of a table, the label of a value, a sentence without a fact in it."
    )?;
    writeln!(out, "#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]")?;
    writeln!(out, "pub enum Label {{\n{variants}}}")?;
    writeln!(out, "impl Label {{")?;
    writeln!(out, "    /// Every label with the id of its message.")?;
    writeln!(out, "    pub(crate) const ALL: [(Label, &'static str); {}] = [\n{all}    ];", labels.len())?;
    writeln!(out, "}}")?;
    Ok(out)
}

fn types(messages: &Messages) -> Result<String, Box<dyn Error>> {
    let mut out = String::new();
    for (id, arguments) in messages {
        let name = type_name(id);
        let life = if arguments.is_empty() { "" } else { "<'a>" };
        writeln!(out, "pub(crate) struct {name}{life} {{")?;
        for argument in arguments {
            writeln!(out, "    pub(crate) {}: FluentValue<'a>,", argument.replace('-', "_"))?;
        }
        writeln!(out, "}}")?;
        writeln!(out, "impl<'a> Message<'a> for {name}{life} {{")?;
        writeln!(out, "    const ID: &'static str = \"{id}\";")?;
        writeln!(out, "    fn arguments(self) -> FluentArgs<'a> {{")?;
        if arguments.is_empty() {
            writeln!(out, "        FluentArgs::new()")?;
        } else {
            writeln!(out, "        let mut arguments = FluentArgs::with_capacity({});", arguments.len())?;
            for argument in arguments {
                let field = argument.replace('-', "_");
                writeln!(out, "        arguments.set(\"{argument}\", self.{field});")?;
            }
            writeln!(out, "        arguments")?;
        }
        writeln!(out, "    }}\n}}")?;
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
